/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_LANES_H
#define SY_TASK_LANES_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * The tab "Timeline" of a die change: who does what when, what each step comes to, and the figures of the whole and of each
 * person. While something is missing or wrong it says of which step, in the drawing's place.
 * Signal "fact" (const char *path).
 */
#define SY_TYPE_TASK_LANES (sy_task_lanes_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskLanes, sy_task_lanes, SY, TASK_LANES, GtkBox)

GtkWidget *sy_task_lanes_new (SyForm *form);

#endif
