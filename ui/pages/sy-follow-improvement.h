/* SPDX-License-Identifier: MIT */
#ifndef SY_FOLLOW_IMPROVEMENT_H
#define SY_FOLLOW_IMPROVEMENT_H

#include <gtk/gtk.h>

#include "sy-deed-form.h"
#include "sy-item-log.h"

/* From an earlier revision of an item to its latest, put in the improvement log. Hidden for what the log does not take. */
#define SY_TYPE_FOLLOW_IMPROVEMENT (sy_follow_improvement_get_type ())
G_DECLARE_FINAL_TYPE (SyFollowImprovement, sy_follow_improvement, SY, FOLLOW_IMPROVEMENT, GtkBox)

GtkWidget *sy_follow_improvement_new (SyWorker *worker);
void sy_follow_improvement_set (SyFollowImprovement *follow, SyItemLog *log);
/* Borrowed, so that only one of a page is open at a time. */
SyDeedForm *sy_follow_improvement_get_form (SyFollowImprovement *follow);

#endif
