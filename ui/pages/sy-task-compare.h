/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_COMPARE_H
#define SY_TASK_COMPARE_H

#include <gtk/gtk.h>

#include "sy-item-log.h"

/* Any two revisions of an item side by side, each chosen from a list. */
#define SY_TYPE_TASK_COMPARE (sy_task_compare_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskCompare, sy_task_compare, SY, TASK_COMPARE, GtkBox)

/* @log has two revisions at least. */
GtkWidget *sy_task_compare_new (SyItemLog *log, gint64 before, gint64 after);

#endif
