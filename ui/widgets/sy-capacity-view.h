/* SPDX-License-Identifier: MIT */
#ifndef SY_CAPACITY_VIEW_H
#define SY_CAPACITY_VIEW_H

#include <gtk/gtk.h>

/*
 * Load against capacity, a bar a thing that carries, in the order in which they are added. A bar is pressed with the
 * pointer, or chosen with Up and Down and pressed with Return. An image whose description is its bars in words.
 * Signal "pressed" (string path of the fact).
 */
#define SY_TYPE_CAPACITY_VIEW (sy_capacity_view_get_type ())
G_DECLARE_FINAL_TYPE (SyCapacityView, sy_capacity_view, SY, CAPACITY_VIEW, GtkDrawingArea)

GtkWidget *sy_capacity_view_new (void);
/* Empties it, then a call a bar, then the end. @notice: where its notch stands, NAN for none; @notice_text: "75 %". */
void sy_capacity_view_begin (SyCapacityView *self, double notice, const char *notice_text);
/* @ratio, @said: as in SyCapacityBar. @governs: drawn heavy. */
void sy_capacity_view_add (SyCapacityView *self, const char *name, const char *figures, const char *percent,
                           double ratio, const char *said, gboolean governs, const char *path);
void sy_capacity_view_end (SyCapacityView *self);
guint sy_capacity_view_count (SyCapacityView *self);
/* Bar @i in words: "E1 at A: 519 / 500 kg, 103.7 %". New string. */
char *sy_capacity_view_dup_words (SyCapacityView *self, guint i);
/* As if bar @i had been pressed. */
void sy_capacity_view_press (SyCapacityView *self, int i);

#endif
