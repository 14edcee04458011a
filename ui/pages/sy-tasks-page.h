/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_PAGE_H
#define SY_TASKS_PAGE_H

#include <gtk/gtk.h>

#include "sy-task-list.h"

/*
 * The list of the items of one kind – tasks, dies or gear: search, choices (of a verdict, a machine, a kind of gear, what is
 * due and more), order by any column; drafts not yet saved above it. Its rows are made after the window was painted once.
 * Asks its window for what is to be done: "win.open-task" (s: id), "win.open-draft" (s: draft), "win.choose-new",
 * "win.new-item" (s: method), "win.survey".
 */
#define SY_TYPE_TASKS_PAGE (sy_tasks_page_get_type ())
G_DECLARE_FINAL_TYPE (SyTasksPage, sy_tasks_page, SY, TASKS_PAGE, GtkWidget)

/* @list: of all items of the worker's store; one for all pages. */
GtkWidget *sy_tasks_page_new (SyWorker *worker, SyTaskList *list, SyRegister which, SyUnits units);
/* Unit system in which masses and places are shown. */
void sy_tasks_page_set_units (SyTasksPage *page, SyUnits units);
void sy_tasks_page_focus_search (SyTasksPage *page);
void sy_tasks_page_set_search (SyTasksPage *page, const char *search);
/* A verdict's id, a machine or the id of a kind of gear; NULL, or what is not there to be chosen: any. */
void sy_tasks_page_set_choice (SyTasksPage *page, const char *key);
/* Only what is out of date or due soon, whatever of it falls due. */
void sy_tasks_page_set_due (SyTasksPage *page, gboolean due);
/* Reads the drafts anew. */
void sy_tasks_page_refresh_drafts (SyTasksPage *page);
/* The rows as shown, in order: a GListModel of SyTaskRow. */
GListModel *sy_tasks_page_get_rows (SyTasksPage *page);
/* Id of the row that is selected, which one with the keyboard on it becomes where none is; NULL: none. */
const char *sy_tasks_page_get_selected (SyTasksPage *page);
/* What is shown in the place of the list: "list", "empty", "no-match", "error", "loading". */
const char *sy_tasks_page_get_state (SyTasksPage *page);

#endif
