/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_SECTION_H
#define SY_TASK_SECTION_H

#include <gtk/gtk.h>

#include "sy-form.h"
#include "sy-task-plan.h"

/* One group of facts on a task page, with its ways of giving them and how they were had. */
#define SY_TYPE_TASK_SECTION (sy_task_section_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskSection, sy_task_section, SY, TASK_SECTION, GtkBox)

GtkWidget *sy_task_section_new (SyForm *form, const SyPlanSection *plan); /* @plan: static */
void sy_task_section_add_first (SyTaskSection *self, GtkWidget *widget);
/* After something was loaded: shows the way that stands for the absence of the others where none is given. */
void sy_task_section_settle (SyTaskSection *self);
/* Shows the way, and opens the fold, that a fact of this section stands in. TRUE: something came into sight. */
gboolean sy_task_section_reveal (SyTaskSection *self, const char *path);

#endif
