/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_STATES_H
#define SY_TASKS_STATES_H

#include <gtk/gtk.h>

#include "sy-registers.h"

/* What a page of items shows in the place of its list: what it is for in words, and the next step. All new. */

/* A heading and prose under it; @prose_label, NULL for not wanted: the label of the prose, borrowed. */
GtkWidget *sy_tasks_state_new (const char *heading, const char *prose, GtkWidget **prose_label);
/* There is no item yet. */
GtkWidget *sy_tasks_state_empty (const SyRegisterPage *page);
/* Nothing of what there is was asked for. Out: the button for all of it, borrowed. */
GtkWidget *sy_tasks_state_no_match (const SyRegisterPage *page, GtkWidget **show_all);
/* The record cannot be read. @store: what was asked. Out: the label for the error, and the button to try again. */
GtkWidget *sy_tasks_state_error (const char *store, GtkWidget **error_words, GtkWidget **retry);
/* The button that begins a new item of the kind. */
GtkWidget *sy_tasks_begin_new (const SyRegisterPage *page);

#endif
