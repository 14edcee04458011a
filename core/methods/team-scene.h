/* SPDX-License-Identifier: MIT */
#ifndef TEAM_SCENE_H
#define TEAM_SCENE_H

#include "sy-method.h"

/* A load in the hands of a team, from above, or from the side with the slope under it. @facts: SyTeamFacts, checked. */
void sy_team_scene (const void *facts, SyUnits units, const SySink *sink, bool side, SyScene *scene);

#endif
