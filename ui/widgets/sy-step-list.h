/* SPDX-License-Identifier: MIT */
#ifndef SY_STEP_LIST_H
#define SY_STEP_LIST_H

#include "sy-fact.h"

/*
 * A list of a form whose items hold facts of their own: the steps of a die change, the options of a case. A row an item, which says
 * how it stands; the facts of one item at a time unfold under its row. Keys on a row: arrows, Home and End go from row
 * to row, Return opens and closes, Insert asks for a new one behind it, Delete takes it away; on a row and in its facts:
 * Alt with the arrows moves it, Ctrl+Shift+D doubles it, Ctrl+Return asks for a new one behind it. A row can be dragged
 * by its handle. Everything is one step of the form's undo.
 */
#define SY_TYPE_STEP_LIST (sy_step_list_get_type ())
G_DECLARE_FINAL_TYPE (SyStepList, sy_step_list, SY, STEP_LIST, GtkBox)

/* Whether the field at a path is such a list. */
gboolean sy_step_list_suits (SyForm *form, const char *path);
GtkWidget *sy_step_list_new (SyForm *form, const char *path);

/* Opens the item that a path is of, and the folds over it. Return value: whether something came into sight. */
gboolean sy_step_list_reveal (SyStepList *self, const char *path);
/* The item that is open; -1: none. */
int sy_step_list_get_open (SyStepList *self);

/* What keys and buttons do, for the item that the keyboard is on or in. Actions of the widget: "steps.add" (s: kind, "" for none) at
   the end, "steps.insert" (s) behind it, "steps.duplicate", "steps.split", "steps.up", "steps.down", "steps.remove". */

#endif
