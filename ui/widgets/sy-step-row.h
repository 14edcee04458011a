/* SPDX-License-Identifier: MIT */
#ifndef SY_STEP_ROW_H
#define SY_STEP_ROW_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * One item of a list whose items hold facts of their own, told in two lines: number, name, kind, minutes, how it stands, the checks
 * that it lacks. A button: pressed, it is looked into. Has a handle to be dragged by; another row of the same list dropped on it
 * is the signal "dropped" (guint: that row's item).
 */
#define SY_TYPE_STEP_ROW (sy_step_row_get_type ())
G_DECLARE_FINAL_TYPE (SyStepRow, sy_step_row, SY, STEP_ROW, GtkButton)

GtkWidget *sy_step_row_new (SyForm *form, const char *list, guint item);
guint sy_step_row_get_item (SyStepRow *self);
/* To be called after every change of the form. */
void sy_step_row_follow (SyStepRow *self);
/* Whether what is inside is shown. */
void sy_step_row_set_open (SyStepRow *self, gboolean open);
/* The words of how it stands. */
const char *sy_step_row_get_state (SyStepRow *self);

#endif
