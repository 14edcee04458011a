/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_FORM_H
#define SY_TASK_FORM_H

#include <gtk/gtk.h>

#include "sy-form.h"

/* The facts of a task, in the order in which a person walks and measures. Signals "name-edited", "take" (string kind of
   item: a section is to be filled from the register). */
#define SY_TYPE_TASK_FORM (sy_task_form_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskForm, sy_task_form, SY, TASK_FORM, GtkBox)

GtkWidget *sy_task_form_new (SyForm *form);
/* Of facts inside others: without a name and the question whether they can be avoided. */
GtkWidget *sy_task_form_new_part (SyForm *form);
const char *sy_task_form_get_name (SyTaskForm *self);
void sy_task_form_set_name (SyTaskForm *self, const char *name);
/* After something was loaded. */
void sy_task_form_settle (SyTaskForm *self);
/* Whether there is a register to fill sections from. */
void sy_task_form_offer_register (SyTaskForm *self, gboolean offer);
/* Says under the name that it is missing or taken; NULL: nothing. */
void sy_task_form_mark_name (SyTaskForm *self, const char *words);
/* "name" is the task's name. FALSE: there is no such fact on the page. */
gboolean sy_task_form_focus (SyTaskForm *self, const char *path);

#endif
