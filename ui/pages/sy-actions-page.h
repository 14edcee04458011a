/* SPDX-License-Identifier: MIT */
#ifndef SY_ACTIONS_PAGE_H
#define SY_ACTIONS_PAGE_H

#include "sy-due-list.h"

#include <gtk/gtk.h>

/*
 * What is to be done: open actions and reviews by the day on which they are due. An action is assigned and closed here; any
 * row leads to its item ("win.open-task").
 */
#define SY_TYPE_ACTIONS_PAGE (sy_actions_page_get_type ())
G_DECLARE_FINAL_TYPE (SyActionsPage, sy_actions_page, SY, ACTIONS_PAGE, GtkWidget)

GtkWidget *sy_actions_page_new (SyWorker *worker, SyTaskList *list);
/* Of SyDueRow. */
GListModel *sy_actions_page_get_rows (SyActionsPage *page);
/* "loading", "list", "empty", "no-match" or "error". */
const char *sy_actions_page_get_state (SyActionsPage *page);
void sy_actions_page_set_search (SyActionsPage *page, const char *search);
void sy_actions_page_select (SyActionsPage *page, guint position);

#endif
