/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_PAGE_H
#define SY_TASK_PAGE_H

#include <gtk/gtk.h>

#include "sy-form.h"
#include "sy-worker.h"

/*
 * One task, die or piece of gear, whatever its method: the facts as a form, the result, the drawings, findings, reasons,
 * history, and what else the method has to show. Keeps its draft on disk while there are unsaved changes.
 *
 * Properties: "title" (string, translated), "subtitle" (string), "dirty" (bool).
 * Widget actions, installed on the class: "task.save", "task.undo", "task.redo", "task.units" (switch),
 * "task.discard"; "task.follow-up"; "task.open-action" ("(ss)": id of a reason or remedy or "", what is to be done);
 * "task.compare" ("(xx)": two revisions); "task.print" (its sheets, in a window).
 * Signals: "saved" (after a save).
 */
#define SY_TYPE_TASK_PAGE (sy_task_page_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskPage, sy_task_page, SY, TASK_PAGE, GtkWidget)

/* @method: what a new one is assessed by; NULL, or one that does not exist: "lift". What is opened brings its own. */
GtkWidget *sy_task_page_new (SyWorker *worker, const char *method);
const SyMethod *sy_task_page_get_method (SyTaskPage *page);
/* The facts as they stand; another one once an item of another method was opened. */
SyForm *sy_task_page_get_form (SyTaskPage *page);
/* A new task (draft @draft_id, or NULL for an empty one), or an existing one by id (its draft is offered when there is
   one). Loading is asynchronous; the page says so while it lasts. */
void sy_task_page_begin_new (SyTaskPage *page, SyUnits units, const char *draft_id);
void sy_task_page_open (SyTaskPage *page, const char *task_id);
/* A variant: what stands on the page as the start of a new item, with where it comes from in its notes. Free with
   sy_draft_free(). */
SyDraft *sy_task_page_dup_variant (SyTaskPage *page);
/* A new task that begins with @variant, whose method is the page's; where it comes from is proposed as the reason. */
void sy_task_page_begin_variant (SyTaskPage *page, const SyDraft *variant);
/* Id of the item; NULL: not saved yet. */
const char *sy_task_page_get_item (SyTaskPage *page);
gboolean sy_task_page_get_dirty (SyTaskPage *page);
/* Save (asks for who and why in the page itself, not in a dialog); done is told by "saved". */
void sy_task_page_save (SyTaskPage *page);
/* Throw the unsaved changes and their draft away. */
void sy_task_page_discard (SyTaskPage *page);
/* Puts the keyboard focus on a fact, e.g. "origin.H". */
void sy_task_page_focus_fact (SyTaskPage *page, const char *path);

/* Leaves the facts inside facts that are looked into. FALSE: there are none, the page itself is what can be left. */
gboolean sy_task_page_go_back (SyTaskPage *page);

/* Brings a tab to the front: "history", "follow-up" … */
void sy_task_page_show_tab (SyTaskPage *page, const char *name);

/* Filling a section from the register: with a chooser set, a button stands in each section that can be filled. It asks for
   an item of @item_kind ("die"); what was chosen is given to the page with sy_task_page_take, as one step of undo. */
typedef void (*SyTaskChoose) (SyTaskPage *page, const char *item_kind, gpointer user_data);
void sy_task_page_set_chooser (SyTaskPage *page, SyTaskChoose choose, gpointer user_data);
void sy_task_page_take (SyTaskPage *page, const char *const *paths, const char *const *texts, gsize n);

#endif
