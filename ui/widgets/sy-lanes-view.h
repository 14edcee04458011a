/* SPDX-License-Identifier: MIT */
#ifndef SY_LANES_VIEW_H
#define SY_LANES_VIEW_H

#include <gtk/gtk.h>

#include "sy-lanes.h"

/*
 * A die change as lanes: one image whose description says it in a sentence. Left and right step from bar to bar in time, up and
 * down to another person's; the bar's words are then the description. Return or a press opens it.
 * Signals: "fact" (const char *path of the step, "steps[3]"); "told" (const char *words: of the bar under the pointer or with the
 * focus, else the sentence about the whole).
 */
#define SY_TYPE_LANES_VIEW (sy_lanes_view_get_type ())
G_DECLARE_FINAL_TYPE (SyLanesView, sy_lanes_view, SY, LANES_VIEW, GtkDrawingArea)

GtkWidget *sy_lanes_view_new (void);

/**
 * sy_lanes_view_set:
 * The bar that is told about stays, where there still is one with its number.
 * Parameters:   lanes     copied; its texts must live as long as @owner. NULL: nothing, and the view is hidden.
 *               words     of each bar, as many as there are; copied.
 *               sentence  about the whole; copied.
 *               owner     the view's from now on, freed by @free_owner.
 */
void sy_lanes_view_set (SyLanesView *view, const SyLanes *lanes, const char *const *words, const char *sentence,
                        gpointer owner, GDestroyNotify free_owner);
/* To the next bar in time (@by 1) or back (-1); from none to the first or the last. */
void sy_lanes_view_step (SyLanesView *view, int by);
/* To a bar of the lane under (1) or over (-1). */
void sy_lanes_view_cross (SyLanesView *view, int by);
/* The bar that is told about, -1 none. */
int sy_lanes_view_get_hot (SyLanesView *view);

#endif
