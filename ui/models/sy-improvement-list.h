/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENT_LIST_H
#define SY_IMPROVEMENT_LIST_H

#include "sy-improvement-row.h"
#include "sy-worker-improvements.h"

/*
 * The improvement log in one GListModel of SyImprovementRow, the last put to work first. Follows the worker while it is looked
 * at; a row that did not change stays the same object.
 * Signal: "read": an answer came, or the error did.
 */
#define SY_TYPE_IMPROVEMENT_LIST (sy_improvement_list_get_type ())
G_DECLARE_FINAL_TYPE (SyImprovementList, sy_improvement_list, SY, IMPROVEMENT_LIST, GObject)

SyImprovementList *sy_improvement_list_new (SyWorker *worker);
/* Each of the words must be in it; NULL or "": any. */
void sy_improvement_list_set_search (SyImprovementList *list, const char *words);
/* Those withdrawn too; they are in no total. */
void sy_improvement_list_set_withdrawn (SyImprovementList *list, gboolean withdrawn);
/* Reads anew, at once when it is looked at. */
void sy_improvement_list_refresh (SyImprovementList *list);
/* While nobody looks, nothing is read. */
void sy_improvement_list_set_watched (SyImprovementList *list, gboolean is_watched);
/* NULL: the store answered, or was not asked yet. */
const char *sy_improvement_list_get_error (SyImprovementList *list);

/* Whatever is searched for. NULL: not read yet. Of SyImprovementView, those withdrawn too; borrowed until "read". */
GPtrArray *sy_improvement_list_get_views (SyImprovementList *list);
/* Of SyQuarter, oldest first; empty where nothing counts. Borrowed until "read". */
const GArray *sy_improvement_list_get_quarters (SyImprovementList *list);
/* The journal's end when it was read. */
const SyHead *sy_improvement_list_get_head (SyImprovementList *list);

#endif
