/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_PAGE_H
#define SY_TASK_PAGE_H

#include <gtk/gtk.h>

#include "sy-form.h"
#include "sy-worker.h"

/*
 * One task: the first question, the facts as a form, the drawings, the steelyard, what takes the limit down, findings,
 * what would help, history. Keeps its draft on disk while there are unsaved changes.
 *
 * Properties: "title" (string, translated), "subtitle" (string), "dirty" (bool).
 * Widget actions, installed on the class: "task.save", "task.undo", "task.redo", "task.units" (switch),
 * "task.discard".
 * Signals: "saved" (after a save).
 */
#define SY_TYPE_TASK_PAGE (sy_task_page_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskPage, sy_task_page, SY, TASK_PAGE, GtkWidget)

GtkWidget *sy_task_page_new (SyWorker *worker);
/* A new task (draft @draft_id, or NULL for an empty one), or an existing one by id (its draft is offered when there is
   one). Loading is asynchronous; the page says so while it lasts. */
void sy_task_page_begin_new (SyTaskPage *page, SyUnits units, const char *draft_id);
void sy_task_page_open (SyTaskPage *page, const char *task_id);
gboolean sy_task_page_get_dirty (SyTaskPage *page);
/* Save (asks for who and why in the page itself, not in a dialog); done is told by "saved". */
void sy_task_page_save (SyTaskPage *page);
/* Throw the unsaved changes and their draft away. */
void sy_task_page_discard (SyTaskPage *page);
/* Puts the keyboard focus on a fact, e.g. "origin.H". */
void sy_task_page_focus_fact (SyTaskPage *page, const char *path);

#endif
