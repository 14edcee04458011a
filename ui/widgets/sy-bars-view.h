/* SPDX-License-Identifier: MIT */
#ifndef SY_BARS_VIEW_H
#define SY_BARS_VIEW_H

#include <gtk/gtk.h>

/*
 * What takes the load constant down to the limit, a bar a multiplier. A bar is pressed with the pointer, or chosen
 * with Up and Down and pressed with Return. Signal "pressed" (string path of the fact).
 */
#define SY_TYPE_BARS_VIEW (sy_bars_view_get_type ())
G_DECLARE_FINAL_TYPE (SyBarsView, sy_bars_view, SY, BARS_VIEW, GtkDrawingArea)

GtkWidget *sy_bars_view_new (void);
/* Empties it, then a call a bar, then the end. */
void sy_bars_view_begin (SyBarsView *self, double start, const char *start_text, const char *end_text);
void sy_bars_view_add (SyBarsView *self, const char *symbol, const char *fact, double factor,
                       const char *path);
void sy_bars_view_end (SyBarsView *self);
/* As if bar @i had been pressed. */
void sy_bars_view_press (SyBarsView *self, int i);

#endif
