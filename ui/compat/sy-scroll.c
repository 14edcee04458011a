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

  return rows != NULL && gtk_widget_grab_focus (rows);
}

gboolean
sy_tab_leaves_rows (GtkColumnView *view, GtkDirectionType direction)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (view));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  GtkWidget *rows = find_rows (view);

  return focus != NULL && rows != NULL && (focus == rows || gtk_widget_is_ancestor (focus, rows))
         && (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD);
}

void
sy_name_rows (GtkColumnView *view, const char *name)
{
  GtkWidget *rows = find_rows (view);

  if (rows != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (rows), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

GtkWidget *
sy_column_heading (GtkColumnView *view, guint column)
{
  GtkWidget *header = gtk_widget_get_first_child (GTK_WIDGET (view));
  GtkWidget *child = header != NULL ? gtk_widget_get_first_child (header) : NULL;

  while (child != NULL && column > 0)
    {
      child = gtk_widget_get_next_sibling (child);
      column--;
    }
  return child;
}

void
sy_align_heading_end (GtkColumnView *view, guint column)
{
  GtkWidget *heading = sy_column_heading (view, column);
  GtkWidget *words = heading != NULL ? gtk_widget_get_first_child (heading) : NULL;

  if (words != NULL)
    gtk_widget_set_halign (words, GTK_ALIGN_END);
}

static void
name_widget (GtkWidget *widget, const char *name)
{
  if (widget != NULL && name != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
sy_name_row_of (GtkWidget *child, const char *row, const char *cell)
{
  GtkWidget *cell_widget = gtk_widget_get_parent (child);

  if (cell_widget == NULL)
    return;
  name_widget (cell_widget, cell);
  name_widget (gtk_widget_get_parent (cell_widget), row);
}
