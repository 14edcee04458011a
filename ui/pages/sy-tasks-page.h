/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_PAGE_H
#define SY_TASKS_PAGE_H

#include <gtk/gtk.h>

#include "sy-task-list.h"

/*
 * The list of tasks: search, filter by verdict, order by any column; drafts not yet saved above it.
 * Asks its window for what is to be done: "win.open-task" (s: id), "win.open-draft" (s: draft), "win.new",
 * "win.survey".
 */
#define SY_TYPE_TASKS_PAGE (sy_tasks_page_get_type ())
G_DECLARE_FINAL_TYPE (SyTasksPage, sy_tasks_page, SY, TASKS_PAGE, GtkWidget)

GtkWidget *sy_tasks_page_new (SyWorker *worker, SyUnits units);
/* Unit system in which masses are shown. */
void sy_tasks_page_set_units (SyTasksPage *page, SyUnits units);
void sy_tasks_page_focus_search (SyTasksPage *page);
void sy_tasks_page_set_search (SyTasksPage *page, const char *search);
/* FALSE: any verdict. */
void sy_tasks_page_set_verdict (SyTasksPage *page, gboolean by_verdict, SyVerdict verdict);
/* Reads the drafts anew. */
void sy_tasks_page_refresh_drafts (SyTasksPage *page);
/* The rows as shown, in order: a GListModel of SyTaskRow. */
GListModel *sy_tasks_page_get_rows (SyTasksPage *page);
/* What is shown in the place of the list: "list", "empty", "no-match", "error", "loading". */
const char *sy_tasks_page_get_state (SyTasksPage *page);

#endif
