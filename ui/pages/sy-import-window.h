/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPORT_WINDOW_H
#define SY_IMPORT_WINDOW_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/* Taking over a bundle of another record, or many lifts from a table: what a file would do is looked through first, and is done
   only when it is confirmed with by whom and why. */
#define SY_TYPE_IMPORT_WINDOW (sy_import_window_get_type ())
G_DECLARE_FINAL_TYPE (SyImportWindow, sy_import_window, SY, IMPORT_WINDOW, GtkWindow)

typedef enum
{
  SY_IMPORT_BUNDLE,
  SY_IMPORT_LIFTS,
} SyImportWhat;

GtkWidget *sy_import_window_new (GtkWindow *parent, SyWorker *worker, SyImportWhat what);
/* What the button does once a file was chosen: looks through it. */
void sy_import_window_look (SyImportWindow *window, GFile *file);
/* By whom and why, as typed. */
void sy_import_window_set_author (SyImportWindow *window, const char *by, const char *why);
/* What the file holds and was fine is recorded; what lacks for it is marked. */
void sy_import_window_take (SyImportWindow *window);
gboolean sy_import_window_can_take (SyImportWindow *window);
/* What was found or came of it; "" at first. */
const char *sy_import_window_get_words (SyImportWindow *window);

#endif
