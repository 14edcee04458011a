/* SPDX-License-Identifier: MIT */
#ifndef RIG_SCENE_H
#define RIG_SCENE_H

#include "sy-rig-facts.h"

/* Views of a rigged lift: 0 from above, 1 from the front (x to the right), 2 from the side (y to the right); see SyMethod. */
void sy_rig_scene (const void *facts, SyUnits units, const SySink *sink, size_t view, SyScene *scene);

#endif
