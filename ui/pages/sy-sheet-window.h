/* SPDX-License-Identifier: MIT */
#ifndef SY_SHEET_WINDOW_H
#define SY_SHEET_WINDOW_H

#include <gtk/gtk.h>

#include "sy-sheet-view.h"
#include "sy-worker.h"

/*
 * Sheets of one item, to be looked at, printed and saved as PDF: which kind, on which paper, of which revision. What is shown is
 * what the command line would write at the same moment.
 * Widget actions: "sheet.print", "sheet.save" (as PDF; asks where), "sheet.real", "sheet.width", "sheet.larger",
 * "sheet.smaller" (how large the pages are), "sheet.again" (reads the record once more). Escape closes it.
 */
#define SY_TYPE_SHEET_WINDOW (sy_sheet_window_get_type ())
G_DECLARE_FINAL_TYPE (SySheetWindow, sy_sheet_window, SY, SHEET_WINDOW, GtkWindow)

/* Empty; @parent may be NULL. */
GtkWidget *sy_sheet_window_new (GtkWindow *parent, SyWorker *worker);
/* What the record has about an item; @revision 0: the latest. @has_unsaved: what is typed is another thing. Read beside the
   window's thread. */
void sy_sheet_window_open (SySheetWindow *window, const char *item, gint64 revision, gboolean has_unsaved);
/* Of facts that were never saved. @problem: what is still needed or wrong with them, NULL for nothing. */
void sy_sheet_window_open_facts (SySheetWindow *window, const char *name, const char *facts, const char *problem);

/* Id of the kind that is chosen; NULL: there is none. */
const char *sy_sheet_window_get_kind (SySheetWindow *window);
/* FALSE: it is not offered. */
gboolean sy_sheet_window_choose (SySheetWindow *window, const char *kind, SyPaper paper);
SySheetView *sy_sheet_window_get_view (SySheetWindow *window);
/* Writes the PDF; how it went is said in the window. */
gboolean sy_sheet_window_write (SySheetWindow *window, const char *path);

#endif
