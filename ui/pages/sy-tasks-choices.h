/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_CHOICES_H
#define SY_TASKS_CHOICES_H

#include <gtk/gtk.h>

#include "sy-registers.h"

/*
 * What a list of items is narrowed to beside words: in the bar the kind's own choice and what is due, the rest one press away
 * under "More", which says how much of it is on.
 * Signal "chosen": something else is asked for.
 */
#define SY_TYPE_TASKS_CHOICES (sy_tasks_choices_get_type ())
G_DECLARE_FINAL_TYPE (SyTasksChoices, sy_tasks_choices, SY, TASKS_CHOICES, GtkWidget)

GtkWidget *sy_tasks_choices_new (SyRegister which, SyTaskList *list);
/* Borrowed. */
const SyTaskChoice *sy_tasks_choices_get (SyTasksChoices *choices);
/* The key of one of the page's choices, in the bar or under "More"; NULL, or what is not there to be chosen: any. */
void sy_tasks_choices_set (SyTasksChoices *choices, SyNarrow narrow, const char *key);
/* Also what is retired. */
void sy_tasks_choices_set_retired (SyTasksChoices *choices, gboolean retired);
/* Everything is asked for, but what is retired. */
void sy_tasks_choices_clear (SyTasksChoices *choices);

#endif
