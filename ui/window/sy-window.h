/* SPDX-License-Identifier: MIT */
#ifndef SY_WINDOW_H
#define SY_WINDOW_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/*
 * One window on one store: a rail on the left (tasks, changeovers, cases, dies, gear, actions, journal, register as at a
 * day, what lifts what, measuring sheet, limits; one for which there is no method is left out), a page beside it; a task opens in the place of the list, as does the choice of what to begin.
 *
 * Actions: "win.new" (a lift), "win.new-item" (s: method), "win.new-from" (asks from which), "win.new-from-item" (s: the start of a new one is a copy of
 * its latest revision), "win.choose-new" (a changeover, a case, a die or gear where those are listed),
 * "win.open-task" (s), "win.open-history", "win.open-follow-up" (s: the same at that tab), "win.open-draft" (s), "win.back", "win.search",
 * "win.survey", "win.print" (the sheets of what is open, else "win.survey"), "win.print-task", "win.page" (s: as
 * sy_window_get_page() has them, but for "new" and "task"), "win.export",
 * "win.import-bundle", "win.import-lifts", "win.save", "win.undo", "win.redo", "win.units", "win.default-units" (s),
 * "win.close". Those of an open task are off while none is open.
 */
#define SY_TYPE_WINDOW (sy_window_get_type ())
G_DECLARE_FINAL_TYPE (SyWindow, sy_window, SY, WINDOW, GtkApplicationWindow)

/* Takes a reference on the worker and stops it at the end. */
GtkWidget *sy_window_new (GtkApplication *application, SyWorker *worker);
SyWorker *sy_window_get_worker (SyWindow *window);
/* "tasks", "changeovers", "cases", "dies", "gear", "actions", "journal", "register", "matrix", "survey", "limits", "new" or "task". */
const char *sy_window_get_page (SyWindow *window);
/* The open task, NULL for none. */
GtkWidget *sy_window_get_task_page (SyWindow *window);
/* The model of the primary menu. */
GMenuModel *sy_window_menu_model (void); /* new reference */

#endif
