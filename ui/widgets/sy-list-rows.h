/* SPDX-License-Identifier: MIT */
#ifndef SY_LIST_ROWS_H
#define SY_LIST_ROWS_H

#include "sy-fact.h"

/*
 * The items of a list in a form, with lists inside them, that can be added, taken away, duplicated and moved: a row each
 * where an item is a few figures, otherwise a group each (SyListItem). Nothing is asked: everything can be undone. What is
 * wrong with the list itself stands under it, and its path is the widget name of the button that adds.
 */
#define SY_TYPE_LIST_ROWS (sy_list_rows_get_type ())
G_DECLARE_FINAL_TYPE (SyListRows, sy_list_rows, SY, LIST_ROWS, GtkBox)

GtkWidget *sy_list_rows_new (SyForm *form, const char *path);
/* The label above; hidden until it is asked for, since most lists stand under a heading that says the same. */
GtkWidget *sy_list_rows_get_caption (SyListRows *self);
/* Opens the folds over a path below the list. Return value: whether one was opened. */
gboolean sy_list_rows_reveal (SyListRows *self, const char *path);

#endif
