/* SPDX-License-Identifier: MIT */
#ifndef CARRY_SCENE_H
#define CARRY_SCENE_H

#include "sy-scene.h"

/**
 * sy_carry_scene:
 * Adds carrying from the side to a scene that was begun in the document's units: the figure with the load where the way
 * begins, the load where it ends, the way between drawn shorter than it is (its line is cut).
 * Parameters:   height    of the hands, cm or in.
 *               distance  m or ft. mass  kg or lb.
 *               governing symbol of the ratio that governs: its measure is drawn heavy; NULL or "" for none.
 */
void sy_carry_scene (SyScene *scene, double height, double distance, double mass, const char *governing);

#endif
