/* SPDX-License-Identifier: MIT */
#ifndef SY_COMPARE_PAGE_H
#define SY_COMPARE_PAGE_H

#include <gtk/gtk.h>

#include "sy-task-list.h"

/*
 * Any two revisions of any two items beside each other: what changed, and what it bought. Each side is chosen from the record.
 * Widget actions: "compare.choose" (i: side, 0 or 1), "compare.swap", "compare.improve" (opens the form that puts the
 * two in the improvement log), "compare.print", "compare.save" (as PDF; asks where).
 */
#define SY_TYPE_COMPARE_PAGE (sy_compare_page_get_type ())
G_DECLARE_FINAL_TYPE (SyComparePage, sy_compare_page, SY, COMPARE_PAGE, GtkWidget)

/* @list: of all items of the worker's store. */
GtkWidget *sy_compare_page_new (SyWorker *worker, SyTaskList *list, SyUnits units);
/* @side: 0 or 1. @item: its id, NULL: to be chosen yet. @revision: 0 the newest. What it has to show is read from the record. */
void sy_compare_page_set (SyComparePage *page, int side, const char *item, gint64 revision);
/* NULL: to be chosen yet. */
const char *sy_compare_page_get_item (SyComparePage *page, int side);
/* Asks for the item of a side in a window over this one. */
void sy_compare_page_choose (SyComparePage *page, int side);
/* Writes what is shown as a PDF; says in the page how it went. FALSE also while there is nothing to write. */
gboolean sy_compare_page_write (SyComparePage *page, const char *path);

#endif
