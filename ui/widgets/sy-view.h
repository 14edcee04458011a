/* SPDX-License-Identifier: MIT */
#ifndef SY_VIEW_H
#define SY_VIEW_H

#include <gtk/gtk.h>

#include "sy-verdict.h"
#include "sy-drawing.h"

/* What the drawn widgets share. */

/* The widget's own font at @scale of its size, as a Pango font description text. New string. */
char *sy_view_font (GtkWidget *widget, double scale);

/* The shape that stands for a verdict. */
SyShape sy_view_shape (SyVerdict verdict);

/* A small drawing of a verdict's shape; the words beside it say the same, so it has no name of its own. */
GtkWidget *sy_shape_new (SyVerdict verdict, int size);
void sy_shape_set (GtkWidget *shape, SyVerdict verdict);

#endif
