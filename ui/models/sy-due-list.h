/* SPDX-License-Identifier: MIT */
#ifndef SY_DUE_LIST_H
#define SY_DUE_LIST_H

#include "sy-due-row.h"
#include "sy-task-list.h"

/*
 * What is to be done: the open actions of the record and the reviews that are set, in one GListModel of SyDueRow, by the day on
 * which they are due. Follows the list of items; a row that did not change stays the same object.
 *
 * Properties: "loading" (bool, until the first answer), "error" (string, NULL while the store answers).
 */
#define SY_TYPE_DUE_LIST (sy_due_list_get_type ())
G_DECLARE_FINAL_TYPE (SyDueList, sy_due_list, SY, DUE_LIST, GObject)

SyDueList *sy_due_list_new (SyWorker *worker, SyTaskList *items);
/* NULL: whoever it is. Reviews are nobody's. */
void sy_due_list_set_assigned (SyDueList *list, const char *assigned);
/* Each of the words must be in it; NULL or "": any. */
void sy_due_list_set_search (SyDueList *list, const char *words);
/* Closed actions too, at the end. */
void sy_due_list_set_closed (SyDueList *list, gboolean closed);
/* Reads anew, at once when it is looked at. */
void sy_due_list_refresh (SyDueList *list);
/* While nobody looks, nothing is read. */
void sy_due_list_set_watched (SyDueList *list, gboolean is_watched);
gboolean sy_due_list_get_loading (SyDueList *list);
const char *sy_due_list_get_error (SyDueList *list);
/* How many there are of one kind, whatever is searched for; closed ones only while they are shown. */
guint sy_due_list_count (SyDueList *list, SyDueWhen when);
/* Everybody to whom something is assigned, by name: free with g_strfreev(). */
char **sy_due_list_people (SyDueList *list);

#endif
