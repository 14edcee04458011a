/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_REMEDIES_H
#define SY_TASK_REMEDIES_H

#include <gtk/gtk.h>

#include "sy-form.h"
#include "sy-trial.h"

/*
 * What would help: each remedy can be tried on a copy of the facts, which is then shown beside the facts as they are.
 * Only "Use these values" changes the form, as one step of undo. Signal "used".
 */
#define SY_TYPE_TASK_REMEDIES (sy_task_remedies_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskRemedies, sy_task_remedies, SY, TASK_REMEDIES, GtkBox)

GtkWidget *sy_task_remedies_new (SyForm *form);
/* Tries remedy @i of the present findings; what is tried now, NULL: nothing (borrowed). */
void sy_task_remedies_try (SyTaskRemedies *self, int i);
void sy_task_remedies_use (SyTaskRemedies *self);
void sy_task_remedies_leave (SyTaskRemedies *self);

#endif
