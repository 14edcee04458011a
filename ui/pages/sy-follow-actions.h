/* SPDX-License-Identifier: MIT */
#ifndef SY_FOLLOW_ACTIONS_H
#define SY_FOLLOW_ACTIONS_H

#include <gtk/gtk.h>

#include "sy-deed-form.h"
#include "sy-item-log.h"

/* The actions of one item: open ones with what can be done about them, closed ones with by what it can be seen. */
#define SY_TYPE_FOLLOW_ACTIONS (sy_follow_actions_get_type ())
G_DECLARE_FINAL_TYPE (SyFollowActions, sy_follow_actions, SY, FOLLOW_ACTIONS, GtkBox)

GtkWidget *sy_follow_actions_new (SyWorker *worker);
void sy_follow_actions_set (SyFollowActions *actions, SyItemLog *log);
/* Opens the form for a new action; @about a reason's or remedy's id, NULL for none; @what to begin with, NULL for nothing. */
void sy_follow_actions_begin (SyFollowActions *actions, const char *about, const char *what);
/* Its forms, so that only one of a page is open at a time: NULL-terminated, borrowed. */
SyDeedForm *const *sy_follow_actions_get_forms (SyFollowActions *actions);

#endif
