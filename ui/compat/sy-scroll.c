/* SPDX-License-Identifier: MIT */
#include "sy-scroll.h"

/* GTK 4.8 keeps the rows in a list view inside the column view and says nothing of it in its interface. */
static GtkWidget *
find_rows (GtkColumnView *view)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (view)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_LIST_VIEW (child))
      return child;
  return NULL;
}

gboolean
sy_scroll_to_row (GtkColumnView *view, guint position)
{
  GtkWidget *rows = find_rows (view);

  return rows != NULL && gtk_widget_activate_action (rows, "list.scroll-to-item", "u", position);
}

gboolean
sy_focus_rows (GtkColumnView *view)
{
  GtkWidget *rows = find_rows (view);

  return rows != NULL && gtk_widget_child_focus (rows, GTK_DIR_TAB_FORWARD);
}

void
sy_name_rows (GtkColumnView *view, const char *name)
{
  GtkWidget *rows = find_rows (view);

  if (rows != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (rows), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}
