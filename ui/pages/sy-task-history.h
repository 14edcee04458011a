/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_HISTORY_H
#define SY_TASK_HISTORY_H

#include <gtk/gtk.h>

#include "sy-item-log.h"
#include "sy-worker.h"

/*
 * All that happened to an item: along time and in words, newest first; a revision as it was stored, judged again with what is in
 * force today, or beside another; and whether the journal holds.
 * Signals: "revise" (gint64 revision): make a new one from this; "judged" (gint64 revision): the same because it was judged
 * again, with that revision as its base.
 * Buttons ask the window for "win.compare-with" ("(sx)": item, revision or 0) and "win.new-variant".
 */
#define SY_TYPE_TASK_HISTORY (sy_task_history_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskHistory, sy_task_history, SY, TASK_HISTORY, GtkBox)

GtkWidget *sy_task_history_new (SyWorker *worker);
/* NULL: not saved yet. What is shown stays as long as it is there. */
void sy_task_history_set (SyTaskHistory *self, SyItemLog *log);
/* Shows a revision as it was stored; 0: back to the list. */
void sy_task_history_show (SyTaskHistory *self, gint64 revision);
/* Which revision is shown, as it was stored or judged again; 0: none is. */
gint64 sy_task_history_get_shown (SyTaskHistory *self);
/* Two revisions side by side. */
void sy_task_history_compare (SyTaskHistory *self, gint64 before, gint64 after);

#endif
