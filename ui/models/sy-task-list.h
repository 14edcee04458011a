/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_LIST_H
#define SY_TASK_LIST_H

#include <gio/gio.h>

#include "sy-task-row.h"
#include "sy-worker.h"

/*
 * All items of a store, of every kind, in the order in which they became known: a GListModel of SyTaskRow. Asks the worker what
 * changed, first for everything, then every two seconds and whenever this program saved.
 * A row that changed is announced as replaced by itself, so that sorters and filters look at it again. When a new day
 * begins, all are.
 *
 * Properties: "loading" (bool, until the first answer), "error" (string, NULL while the store answers).
 */
#define SY_TYPE_TASK_LIST (sy_task_list_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskList, sy_task_list, SY, TASK_LIST, GObject)

SyTaskList *sy_task_list_new (SyWorker *worker);
/* How many of the items are of the kind; they do not change their kind. */
guint sy_task_list_count (SyTaskList *list, SyRegister which);
/* Ask now, e.g. after an error. */
void sy_task_list_refresh (SyTaskList *list);
gboolean sy_task_list_get_loading (SyTaskList *list);
const char *sy_task_list_get_error (SyTaskList *list);
/* Fold tasks into the list: what an answer of the worker does. @tasks: GPtrArray of SyTask. */
void sy_task_list_merge (SyTaskList *list, GPtrArray *tasks);
/* The day it is for all rows, in days since 1970; the list sets it itself from the clock of the session. */
void sy_task_list_set_today (SyTaskList *list, double today);

#endif
