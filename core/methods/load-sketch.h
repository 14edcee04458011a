/* SPDX-License-Identifier: MIT */
#ifndef LOAD_SKETCH_H
#define LOAD_SKETCH_H

#include "sy-outline.h"
#include "sy-rig-facts.h"

/* What the drawings of a die and of a rigged lift share: three views of places in space, and the marks for them. */

typedef enum { SY_LOAD_ABOVE, SY_LOAD_FRONT, SY_LOAD_SIDE } SyLoadView;

typedef struct
{
  SyScene *scene;
  SyLoadView view;
  SyVec3 about;           /* stays where it is                         */
  SyVec3 row[3];          /* of the turn: the load as it hangs         */
} SyLoadSketch;

/* Begins a view of the load as it stands; lengths are mm or in. */
void sy_load_begin (SyLoadSketch *sketch, SyScene *scene, SyLoadView view);
/* From here on the load is turned the shortest way, about @about, so that its @up (a unit vector) is upright. */
void sy_load_turn (SyLoadSketch *sketch, SyVec3 up, SyVec3 about);
/* A place of the load as it hangs, and where that is in the view. */
SyVec3 sy_load_hung (const SyLoadSketch *sketch, SyVec3 place);
SyPoint sy_load_seen (const SyLoadSketch *sketch, SyVec3 hung);

/* Marks at places as they hang; all widen what is shown. NULL: no room. */
SyMark *sy_load_line (SyLoadSketch *sketch, SyMarkType type, SyRole role, SyPoint from, SyPoint to);
SyMark *sy_load_sign (SyLoadSketch *sketch, SyRole role, SyPoint at, const char *text);
/* The outline in the view of places as they hang: a polygon, or a line where that is all there is. */
void sy_load_hull (SyLoadSketch *sketch, SyRole role, const SyVec3 *hung, int n);
void sy_load_polygon (SyLoadSketch *sketch, SyRole role, const SyVec3 *corners, int n);
/* A dimension with its length as text; none for a length of nothing. */
SyMark *sy_load_dimension (SyLoadSketch *sketch, SyPoint from, SyPoint to, double offset, const char *symbol);
/* How wide and high dimensions stand off: a part of what is shown so far. */
double sy_load_lane (const SyLoadSketch *sketch);
/* Dimensions of the whole, below and to the left of what is between the corners. */
void sy_load_extent (SyLoadSketch *sketch, SyPoint low, SyPoint high);

/* Room around everything for the texts of signs. */
void sy_load_frame (SyLoadSketch *sketch);

/* From a place inside an outline to the nearest of its edge, with @margin as text. */
void sy_load_margin (SyLoadSketch *sketch, const SyOutline *outline, SyPoint from, double margin);

/* The lifting points as signs that can be moved, with their labels. */
void sy_load_points (SyLoadSketch *sketch, const SyList *points);
/* Makes a mark at a place of the load one that moves @fact; the path is static. */
void sy_load_handle (const SyLoadSketch *sketch, SyMark *mark, const char *fact, SyVec3 value);
/* "points[3].at"; static; NULL beyond SY_RIG_POINTS_MAX. */
const char *sy_load_point_path (size_t point);

/* Text of a mark, NULL for none: appends what fits, never half a character. An angle in degrees to 0.1. */
void sy_load_say (SyMark *mark, const char *text);
void sy_load_say_angle (SyMark *mark, double degrees);
/* A force in kN or lbf, to three figures or a whole number, into SY_SCENE_SCALE_TEXT_MAX bytes. */
void sy_load_force_text (double force, SyUnits units, char *text);

#endif
