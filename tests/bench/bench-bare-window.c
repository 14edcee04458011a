/* SPDX-License-Identifier: MIT */
#include <gtk/gtk.h>

/* What GTK itself needs for a window of the same size: the yardstick of the first frame. */
int
main (void)
{
  g_autoptr (GMainLoop) loop = g_main_loop_new (NULL, FALSE);

  gtk_init ();

  GtkWidget *window = gtk_window_new ();

  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 760);
  gtk_window_present (GTK_WINDOW (window));
  g_main_loop_run (loop);
  return 0;
}
