/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_LIST_H
#define SY_TASK_LIST_H

#include <gio/gio.h>

#include "sy-worker.h"

/*
 * One row: a task as it now stands. The object stays the same as long as the list knows the task; its properties
 * notify only when they change.
 *
 * Properties: "id" (string, for ever the same), "name", "place", "verdict" (int, SyVerdict), "index", "rank",
 * "mass" (doubles; kg), "revision" (int64), "by", "when" (strings). Read-only.
 */
#define SY_TYPE_TASK_ROW (sy_task_row_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskRow, sy_task_row, SY, TASK_ROW, GObject)

SyTaskRow *sy_task_row_new (const SyTask *task);
const SyTask *sy_task_row_get_task (SyTaskRow *row);
/* The name as a key for natural order and the search text folded for comparison; made once a change. */
const char *sy_task_row_get_name_key (SyTaskRow *row);
const char *sy_task_row_get_folded (SyTaskRow *row);
/* Takes over @task, which must have the row's id. Return value: whether anything changed. */
gboolean sy_task_row_update (SyTaskRow *row, const SyTask *task);

/*
 * All tasks of a store in the order in which they became known: a GListModel of SyTaskRow. Asks the worker what
 * changed, first for everything, then every two seconds and whenever this program saved.
 * A row that changed is announced as replaced by itself, so that sorters and filters look at it again.
 *
 * Properties: "loading" (bool, until the first answer), "error" (string, NULL while the store answers).
 */
#define SY_TYPE_TASK_LIST (sy_task_list_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskList, sy_task_list, SY, TASK_LIST, GObject)

SyTaskList *sy_task_list_new (SyWorker *worker);
/* Ask now, e.g. after an error. */
void sy_task_list_refresh (SyTaskList *list);
gboolean sy_task_list_get_loading (SyTaskList *list);
const char *sy_task_list_get_error (SyTaskList *list);
/* Fold tasks into the list: what an answer of the worker does. @tasks: GPtrArray of SyTask. */
void sy_task_list_merge (SyTaskList *list, GPtrArray *tasks);

#endif
