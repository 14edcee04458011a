/* SPDX-License-Identifier: MIT */
#ifndef DIE_SCENE_H
#define DIE_SCENE_H

#include "sy-die-facts.h"

/* Views of a die: 0 from above, 1 from the front (x to the right), 2 from the side (y to the right); see SyMethod. */
void sy_die_scene (const void *facts, SyUnits units, const SySink *sink, size_t view, SyScene *scene);

#endif
