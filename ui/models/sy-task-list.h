/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_LIST_H
#define SY_TASK_LIST_H

#include <gio/gio.h>

#include "sy-task-row.h"
#include "sy-worker.h"

/*
 * All items of a store, of every kind: a GListModel of SyTaskRow, first those that the store held when it was opened, then
 * others in the order in which they became known; a row keeps its place. Asks the worker for everything, which comes as one
 * list made ready on its thread, then what changed: every two seconds and whenever this program saved.
 * A row that changed is announced as replaced by itself, so that what shows it looks at it again. When a new day
 * begins, all are.
 *
 * Properties: "loading" (bool, until the first answer), "error" (string, NULL while the store answers).
 */
#define SY_TYPE_TASK_LIST (sy_task_list_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskList, sy_task_list, SY, TASK_LIST, GObject)

SyTaskList *sy_task_list_new (SyWorker *worker);
/* The row at a place, borrowed; the array of all, borrowed until the list announces a change. */
SyTaskRow *sy_task_list_peek (SyTaskList *list, guint place);
const GPtrArray *sy_task_list_rows (SyTaskList *list);
/* The places of all rows in the order of sy_task_order_name(): as many as there are rows. Borrowed until the list announces
   a change. */
const guint32 *sy_task_list_by_name (SyTaskList *list);
/* Likewise in the order of sy_task_order_rest(). */
const guint32 *sy_task_list_by_rest (SyTaskList *list);
SyWorker *sy_task_list_get_worker (SyTaskList *list);
/* How many of the items are of the kind and not retired; they do not change their kind. */
guint sy_task_list_count (SyTaskList *list, SyRegister which);
guint sy_task_list_count_retired (SyTaskList *list, SyRegister which);
/* From now on also reads what the lists of die changes and of cases show of the findings: rows are announced as it comes. */
void sy_task_list_want_figures (SyTaskList *list);
/* Ask now, e.g. after an error. */
void sy_task_list_refresh (SyTaskList *list);
gboolean sy_task_list_get_loading (SyTaskList *list);
const char *sy_task_list_get_error (SyTaskList *list);
/* Fold tasks into the list: what an answer of the worker does. @tasks: GPtrArray of SyTask. */
void sy_task_list_merge (SyTaskList *list, GPtrArray *tasks);
/* The day it is for all rows, in days since 1970; the list sets it itself from the clock of the session. */
void sy_task_list_set_today (SyTaskList *list, double today);

#endif
