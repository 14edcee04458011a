/* SPDX-License-Identifier: MIT */
#ifndef SY_QUARTERS_VIEW_H
#define SY_QUARTERS_VIEW_H

#include <gtk/gtk.h>

#include "sy-quarters.h"

/*
 * Totals by quarter as bars, what is totalled side by side: one image whose description says it in a sentence. Left and right
 * step from quarter to quarter; the quarter's words are then the description.
 * Signal: "told" (const char *words: of the quarter under the pointer or with the focus, else the sentence about the whole).
 */
#define SY_TYPE_QUARTERS_VIEW (sy_quarters_view_get_type ())
G_DECLARE_FINAL_TYPE (SyQuartersView, sy_quarters_view, SY, QUARTERS_VIEW, GtkDrawingArea)

/* @name: for assistive technology, translated. */
GtkWidget *sy_quarters_view_new (const char *name);
/* Everything is copied. @quarters: heavy and hot are the view's own; NULL: nothing, and the view is hidden. @words: of each
   quarter, as many as there are. @sentence: about the whole. */
void sy_quarters_view_set (SyQuartersView *view, const SyQuarters *quarters, const char *const *words, const char *sentence);
/* To the next quarter (@by 1) or back (-1); from none to the first or the last. */
void sy_quarters_view_step (SyQuartersView *view, int by);
/* The quarter that is told about, -1 none. */
int sy_quarters_view_get_hot (SyQuartersView *view);

#endif
