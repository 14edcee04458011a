/* SPDX-License-Identifier: MIT */
#include "die-scene.h"

void
sy_die_scene (const void *facts, SyUnits units, const SySink *sink, size_t view, SyScene *scene)
{
  const SyDieFacts *die = facts;
  const SyRigPoint *points = die->points.items;

  (void) units, (void) sink;
  for (size_t i = 0; i < die->points.count; i++)
    {
      const double *at = points[i].at.at;
      SyMark *mark = sy_scene_add (scene, SY_MARK_CIRCLE, SY_ROLE_OUTLINE);

      if (mark == NULL)
        return;
      mark->n_points = 1;
      mark->points[0] = (SyPoint) { view == 2 ? at[1] : at[0], view == 0 ? at[1] : at[2] };
      mark->radius = 10;
      sy_scene_include (scene, mark->points[0].x, mark->points[0].y);
    }
}
