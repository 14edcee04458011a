/* SPDX-License-Identifier: MIT */
#ifndef SY_SCROLL_H
#define SY_SCROLL_H

#include <gtk/gtk.h>

/* gtk_column_view_scroll_to (GTK 4.12). FALSE: the view has no such row, or its inside changed. */
gboolean sy_scroll_to_row (GtkColumnView *view, guint position);
/* Puts the keyboard into the rows of the view. */
gboolean sy_focus_rows (GtkColumnView *view);
/* Whether the focus is in the rows and is to leave them with Tab, with which GTK 4.8 would go through every one. */
gboolean sy_tab_leaves_rows (GtkColumnView *view, GtkDirectionType direction);
/* The heading of a column, where a later GTK has a title widget; NULL: the view has none. */
GtkWidget *sy_column_heading (GtkColumnView *view, guint column);
/* Puts the words of a heading where figures under it stand: at the end. */
void sy_align_heading_end (GtkColumnView *view, guint column);
/* Names row and cell around the child of a list item for assistive technology; either may be NULL. */
void sy_name_row_of (GtkWidget *child, const char *row, const char *cell);
/* Names the rows' list for assistive technology. */
void sy_name_rows (GtkColumnView *view, const char *name);

#endif
