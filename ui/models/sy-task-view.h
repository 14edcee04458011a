/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_VIEW_H
#define SY_TASK_VIEW_H

#include "sy-task-list.h"
#include "sy-task-order.h"

/*
 * The rows of a SyTaskList that are chosen and found, in order: a GListModel of SyTaskRow for a list on screen.
 *
 * All rows of the kind stand in one order that is kept; what is shown of them is a test of a bit each. So a search changes the
 * model in one announcement of what lies between the first and the last difference, and a change of a few rows moves those and
 * no other. Words are looked up by the store, on the worker's thread: until it has answered, the former rows stay, and an answer
 * to what is no longer asked is dropped.
 *
 * Properties: "pending" (bool: a search has not been answered yet), "error" (string: why the last search failed; NULL).
 */
#define SY_TYPE_TASK_VIEW (sy_task_view_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskView, sy_task_view, SY, TASK_VIEW, GObject)

/* @item_kind: static; NULL: every kind. Without keys it stands as sy_task_order_rest() has it. */
SyTaskView *sy_task_view_new (SyTaskList *list, const char *item_kind, const SyTaskKey *keys, guint n_keys);
/* @choice is copied; its item_kind is the view's own. */
void sy_task_view_choose (SyTaskView *view, const SyTaskChoice *choice);
/* At most SY_TASK_KEYS_MAX, the first counts most. */
void sy_task_view_sort (SyTaskView *view, const SyTaskKey *keys, guint n_keys);
/* NULL or blank: everything. */
void sy_task_view_search (SyTaskView *view, const char *search);
gboolean sy_task_view_get_pending (SyTaskView *view);
const char *sy_task_view_get_error (SyTaskView *view);

#endif
