/* SPDX-License-Identifier: MIT */
#ifndef SY_FOLLOW_UP_H
#define SY_FOLLOW_UP_H

#include <gtk/gtk.h>

#include "sy-deed-form.h"
#include "sy-item-log.h"

/* What is done about an item besides revising it: signing off, actions, reviews, telling the workers, taking out of use. Each is
   a line of the journal. */
#define SY_TYPE_FOLLOW_UP (sy_follow_up_get_type ())
G_DECLARE_FINAL_TYPE (SyFollowUp, sy_follow_up, SY, FOLLOW_UP, GtkBox)

GtkWidget *sy_follow_up_new (SyWorker *worker);
/* NULL: not saved yet. */
void sy_follow_up_set (SyFollowUp *follow, SyItemLog *log);
/* Opens the form for a new action; as sy_follow_actions_begin(). */
void sy_follow_up_begin_action (SyFollowUp *follow, const char *about, const char *what);

#endif
