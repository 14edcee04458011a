/* SPDX-License-Identifier: MIT */
#ifndef SY_SCENE_VIEW_H
#define SY_SCENE_VIEW_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * One view of what an assessment is about, to scale. An image whose description is its measures.
 *
 * Once it is movable, what its scene lets be taken hold of is drawn as handles. They are dragged with the pointer; Tab
 * goes from one to the next and the arrow keys move the one with the focus: by 5 steps of 1 mm or 0.05 in, with Shift
 * by 25, with Control by one. The description then begins with the handle and where it stands.
 */
#define SY_TYPE_SCENE_VIEW (sy_scene_view_get_type ())
G_DECLARE_FINAL_TYPE (SySceneView, sy_scene_view, SY, SCENE_VIEW, GtkDrawingArea)

GtkWidget *sy_scene_view_new (const SyMethod *method, gsize view);
/* NULL: nothing to draw yet. While something is dragged the last drawing stays instead, and what is shown of the world
   stays the same. */
void sy_scene_view_set_assessment (SySceneView *self, const SyAssessment *assessment);

/* A change to one place or number, and to a second place that goes along. */
typedef struct
{
  const char *fact;      /* path; static                                 */
  gboolean number;       /* value[0] alone, not a place                  */
  double value[3];       /* rounded to 1 mm or 0.05 in where it changed  */
  gboolean changes[3];   /* which of value this handle moves             */
  const char *also;      /* NULL: none                                   */
  double also_value[3];  /* x and y change as those of @value            */
} SySceneMove;

void sy_scene_view_set_movable (SySceneView *self, gboolean movable);

/* Writes what is moved into the form, a drag as one step of undo, and makes the view movable. The view keeps the form. */
void sy_scene_view_bind_form (SySceneView *self, SyForm *form);

/* What the pointer and the keys do. @x, @y in the widget; FALSE: there is no handle. */
gboolean sy_scene_view_drag_begin (SySceneView *self, double x, double y);
void sy_scene_view_drag_update (SySceneView *self, double dx, double dy);
void sy_scene_view_drag_end (SySceneView *self);
/* Moves the handle with the focus by so many steps to the right and up. FALSE: none has it. */
gboolean sy_scene_view_move (SySceneView *self, int right, int up);

/* The handles of what is drawn now. The names are borrowed until the next drawing. */
guint sy_scene_view_count_handles (SySceneView *self);
const char *sy_scene_view_handle_fact (SySceneView *self, guint handle);
gboolean sy_scene_view_handle_place (SySceneView *self, guint handle, double *x, double *y); /* in the widget */
/* The fact of the handle with the focus; NULL: none. */
const char *sy_scene_view_get_focus_fact (SySceneView *self);

/* Signal: "moved" (const SySceneMove *move, gboolean dragging); @dragging: more will follow. */

#endif
