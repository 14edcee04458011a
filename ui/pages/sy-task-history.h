/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_HISTORY_H
#define SY_TASK_HISTORY_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/* The revisions of a task, newest first. Signal "revise" (gint64 revision): make a new one from this. */
#define SY_TYPE_TASK_HISTORY (sy_task_history_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskHistory, sy_task_history, SY, TASK_HISTORY, GtkBox)

GtkWidget *sy_task_history_new (SyDesk *desk);
/* Of SyRevision, oldest first; takes a reference; NULL: none yet. */
void sy_task_history_set (SyTaskHistory *self, GPtrArray *revisions);
const SyRevision *sy_task_history_find (SyTaskHistory *self, gint64 revision);
/* Shows a revision as it was stored; 0: back to the list. */
void sy_task_history_show (SyTaskHistory *self, gint64 revision);

#endif
