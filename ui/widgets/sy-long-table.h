/* SPDX-License-Identifier: MIT */
#ifndef SY_LONG_TABLE_H
#define SY_LONG_TABLE_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * A long list of a form as a table to look at: how many items, their main figures, and what is wrong with which of
 * them. Nothing is typed in it; it follows the form.
 */
#define SY_TYPE_LONG_TABLE (sy_long_table_get_type ())
G_DECLARE_FINAL_TYPE (SyLongTable, sy_long_table, SY, LONG_TABLE, GtkBox)

/* @path: of the list. */
GtkWidget *sy_long_table_new (SyForm *form, const char *path);
/* Scrolls to an item and puts the keyboard into the rows. */
gboolean sy_long_table_show_item (SyLongTable *self, guint item);

#endif
