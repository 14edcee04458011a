/* SPDX-License-Identifier: MIT */
#ifndef SY_SCENE_VIEW_H
#define SY_SCENE_VIEW_H

#include <gtk/gtk.h>

#include "sy-desk.h"

/* One view of what an assessment is about, to scale. An image whose description is its measures. */
#define SY_TYPE_SCENE_VIEW (sy_scene_view_get_type ())
G_DECLARE_FINAL_TYPE (SySceneView, sy_scene_view, SY, SCENE_VIEW, GtkDrawingArea)

GtkWidget *sy_scene_view_new (const SyMethod *method, gsize view);
/* NULL: nothing to draw yet. */
void sy_scene_view_set_assessment (SySceneView *self, const SyAssessment *assessment);

#endif
