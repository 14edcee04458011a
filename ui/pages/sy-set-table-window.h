/* SPDX-License-Identifier: MIT */
#ifndef SY_SET_TABLE_WINDOW_H
#define SY_SET_TABLE_WINDOW_H

#include <gtk/gtk.h>

#include "sy-form.h"

/* The lifts of a set from a table: the file is looked through first, every cell that cannot be taken is listed, and the form
   gets the lifts when that is confirmed, in one step of undo. Nothing is recorded by it. */
#define SY_TYPE_SET_TABLE_WINDOW (sy_set_table_window_get_type ())
G_DECLARE_FINAL_TYPE (SySetTableWindow, sy_set_table_window, SY, SET_TABLE_WINDOW, GtkWindow)

/* @path: the list of lifts. */
GtkWidget *sy_set_table_window_new (GtkWindow *parent, SyForm *form, const char *path);
/* What the button does once a file was chosen: looks through it. */
void sy_set_table_window_look (SySetTableWindow *window, GFile *file);
gboolean sy_set_table_window_can_take (SySetTableWindow *window);
void sy_set_table_window_take (SySetTableWindow *window);
/* What was found; "" at first. */
const char *sy_set_table_window_get_words (SySetTableWindow *window);

#endif
