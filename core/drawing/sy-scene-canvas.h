/* SPDX-License-Identifier: MIT */
#ifndef SY_SCENE_CANVAS_H
#define SY_SCENE_CANVAS_H

#include "sy-drawing-text.h"

/*
 * One rendering of a scene: the view onto the world and the places on the sheet that are taken.
 * Shared by the files of this room that draw scenes.
 */

/* A place on the sheet that text keeps off: a rectangle about @middle, turned by @angle. */
typedef struct
{
  SyPoint middle;
  double half_width, half_height, angle;
  double weight;       /* how much it matters to be covered by text: 1 for text */
  const SyMark *owner; /* its own text may cover it; NULL for none              */
  double c, s;         /* of @angle; sy_scene_take fills them                   */
} SySceneBox;

#define SY_SCENE_BOXES_MAX 128
typedef struct
{
  cairo_t *cr;
  const SyScene *scene;
  const SyPalette *palette;
  const char *font;
  double width, height;
  double scale, left, bottom; /* sheet x = left + scale · x, sheet y = bottom - scale · y */
  double weight;              /* of lines: 1 for a drawing of 320 points                   */
  double text_height;
  int n_taken;
  SySceneBox taken[SY_SCENE_BOXES_MAX];
} SySceneCanvas;

#define SY_SCENE_ARROW 9.0 /* length of an arrow head; a third as wide */

/* ---- sy-scene-drawing.c ---- */
SyPoint sy_scene_on_sheet (const SySceneCanvas *view, SyPoint world);
void sy_scene_take (SySceneCanvas *view, const SySceneBox *box);
/* A filled slim head with its tip at @tip, pointing along @angle (radians on the sheet, y down). */
void sy_scene_arrow_head (cairo_t *cr, SyPoint tip, double angle, double length);

/* ---- sy-scene-sign.c: what is drawn of one size ---- */
void sy_scene_draw_sign (SySceneCanvas *view, const SyMark *mark);
double sy_scene_sign_radius (const SySceneCanvas *view, const SyMark *mark);

/* ---- sy-scene-paper.c: what is not in the scene itself ---- */
void sy_scene_draw_paper (SySceneCanvas *view);
void sy_scene_draw_floor (SySceneCanvas *view, const SyMark *mark);
void sy_scene_draw_scale (SySceneCanvas *view);
/* Height of the strip at the foot that the scale bar needs. */
double sy_scene_scale_strip (const SySceneCanvas *view);

/* ---- sy-scene-dimension.c: dimension lines, angles, texts ---- */
void sy_scene_draw_dimension (SySceneCanvas *view, const SyMark *mark);
void sy_scene_draw_angle (SySceneCanvas *view, const SyMark *mark);
void sy_scene_draw_label (SySceneCanvas *view, const SyMark *mark);
/* Whether the text has room on its own line. */
bool sy_scene_label_fits (const SySceneCanvas *view, const SyMark *mark);
/* The line of a dimension or the arc of an angle, to be kept clear of other texts. */
void sy_scene_take_dimension (SySceneCanvas *view, const SyMark *mark);

#endif
