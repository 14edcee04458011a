/* SPDX-License-Identifier: MIT */
#ifndef LIFT_SCENE_H
#define LIFT_SCENE_H

#include "sy-lift.h"
#include "sy-scene.h"

/* The two views of one lift, from plain numbers. */

/* Marks that either view needs at most; with less room the last ones are missing. */
#define SY_LIFT_SCENE_MARKS 48

/**
 * sy_lift_scene_side / _above:
 * Adds one view to a scene that was begun in the document's units.
 * Side: x is the distance in front of the mid-point between the ankles, y the height over the floor.
 * Above: the mid-point between the ankles is at 0,0 and y is straight ahead. The facts do not say to
 * which side the twist is: the origin is drawn to the left and the destination to the right.
 * Parameters:   destination  NULL when only the travel is known: the load then goes up by @travel.
 *               travel       D.
 *               governing    "origin.HM" …: its dimension is drawn heavy; NULL or "" for none.
 */
void sy_lift_scene_side (SyScene *scene, const SyLiftPosition *origin,
                         const SyLiftPosition *destination, double travel, const char *governing);
void sy_lift_scene_above (SyScene *scene, const SyLiftPosition *origin,
                          const SyLiftPosition *destination, double travel, const char *governing);

/**
 * sy_lift_scene_figure:
 * Adds the figure for size from the side, mid-point between the ankles at @x, its hands so far in front of it and so high;
 * all in the scene's unit.
 */
void sy_lift_scene_figure (SyScene *scene, double x, double reach, double height);

#endif
