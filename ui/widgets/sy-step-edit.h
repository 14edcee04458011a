/* SPDX-License-Identifier: MIT */
#ifndef SY_STEP_EDIT_H
#define SY_STEP_EDIT_H

#include "sy-list-item.h"

/*
 * The facts of the one item of a list that is looked into: as in any list, with the checks that it must have first. Signals:
 * "act" (guint, SyListItemAction) as of SyListItem, "split".
 */
#define SY_TYPE_STEP_EDIT (sy_step_edit_get_type ())
G_DECLARE_FINAL_TYPE (SyStepEdit, sy_step_edit, SY, STEP_EDIT, GtkBox)

GtkWidget *sy_step_edit_new (SyForm *form, const char *list, guint item);
void sy_step_edit_set_count (SyStepEdit *self, guint n_items);
gboolean sy_step_edit_reveal (SyStepEdit *self, const char *path);
/* The member that has the focus ("minutes"); NULL: none. New string. */
char *sy_step_edit_dup_focus (SyStepEdit *self);
void sy_step_edit_focus (SyStepEdit *self, const char *member);

#endif
