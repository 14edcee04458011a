/* SPDX-License-Identifier: MIT */
#ifndef SY_SHOW_H
#define SY_SHOW_H

#include <gtk/gtk.h>

/* Scrolls until @widget is seen as a whole, or from its top where it is higher than there is room; as soon as it has a place,
   for what has just been shown has none yet. Nothing happens where nothing scrolls. */
void sy_show_whole (GtkWidget *widget);

/* Greys a button, or the entry in which Enter does the same, while what it began is done. Unlike gtk_widget_set_sensitive()
   alone it does not lose the keyboard: the focus comes back unless it went elsewhere meanwhile. */
void sy_button_set_busy (GtkWidget *button, gboolean busy);

#endif
