/* SPDX-License-Identifier: MIT */
#include "sy-show.h"

static gboolean
show_cb (GtkWidget *widget, GdkFrameClock *clock G_GNUC_UNUSED, gpointer user_data G_GNUC_UNUSED)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (widget, GTK_TYPE_VIEWPORT);
  GtkWidget *child = viewport != NULL ? gtk_viewport_get_child (GTK_VIEWPORT (viewport)) : NULL;
  GtkAdjustment *adjustment;
  graphene_rect_t bounds;
  double top;

  if (child == NULL)
    return G_SOURCE_REMOVE;
  if (gtk_widget_get_height (widget) == 0)
    return G_SOURCE_CONTINUE;
  if (!gtk_widget_compute_bounds (widget, child, &bounds))
    return G_SOURCE_REMOVE;
  adjustment = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (viewport));
  top = (double) bounds.origin.y;
  gtk_adjustment_clamp_page (adjustment, top,
                             top + MIN ((double) bounds.size.height, gtk_adjustment_get_page_size (adjustment)));
  return G_SOURCE_REMOVE;
}

void
sy_show_whole (GtkWidget *widget)
{
  gtk_widget_add_tick_callback (widget, show_cb, NULL, NULL);
}

void
sy_button_set_busy (GtkWidget *button, gboolean busy)
{
  GtkRoot *root = gtk_widget_get_root (button);
  gboolean had_focus = g_object_get_data (G_OBJECT (button), "sy-had-focus") != NULL;

  if (busy)
    g_object_set_data (G_OBJECT (button), "sy-had-focus", gtk_widget_is_focus (button) ? button : NULL);
  gtk_widget_set_sensitive (button, !busy);
  if (!busy && had_focus && root != NULL && gtk_root_get_focus (root) == NULL)
    gtk_widget_grab_focus (button);
}
