/* SPDX-License-Identifier: MIT */
#ifndef SY_SCENE_MOVE_H
#define SY_SCENE_MOVE_H

#include "sy-scene-view.h"

/* What becomes of a fact when its handle is moved, and what it is called. No widget is needed to test it. */

/* 1 mm or 0.05 in: half a sixteenth is finer than a tape is read. (Common practice, no source.) */
double sy_scene_step (SyUnits units);

/**
 * sy_scene_move_make:
 * Parameters:   dx, dy  in the drawing's real measure, to the right and up.
 *               out     written only on TRUE.
 * Return value: FALSE where the fact would leave the range of its field.
 */
gboolean sy_scene_move_make (const SyMethod *method, const SyHandle *handle, SyUnits units, double dx, double dy,
                             SySceneMove *out);

/* "Lifting points A: x 100 mm, y 200 mm, z 0 mm" (translated). New string. */
char *sy_scene_move_describe (const SyMethod *method, const SyMark *mark, SyUnits units);

/* Into the form; @joins as of sy_form_set_on. */
gboolean sy_scene_move_apply (const SySceneMove *move, SyForm *form, gboolean joins);

#endif
