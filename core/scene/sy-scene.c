/* SPDX-License-Identifier: MIT */
#include "sy-scene.h"

#include <math.h>

void
sy_scene_begin (SyScene *scene, SyUnits units, SyMark *marks, int room)
{
  /* An empty part of the world: the first point included becomes all of it. */
  *scene = (SyScene) {
    .units = units,
    .kind = SY_KIND_REACH,
    .hot = -1,
    .x0 = (double) INFINITY,
    .y0 = (double) INFINITY,
    .x1 = (double) -INFINITY,
    .y1 = (double) -INFINITY,
    .room = room,
    .marks = marks,
  };
}

SyMark *
sy_scene_add (SyScene *scene, SyMarkType type, SyRole role)
{
  if (scene->count >= scene->room)
    return NULL;

  SyMark *mark = &scene->marks[scene->count++];

  *mark = (SyMark) { .type = type, .role = role };
  return mark;
}

void
sy_scene_include (SyScene *scene, double x, double y)
{
  if (!isfinite (x) || !isfinite (y))
    return;

  scene->x0 = fmin (scene->x0, x);
  scene->y0 = fmin (scene->y0, y);
  scene->x1 = fmax (scene->x1, x);
  scene->y1 = fmax (scene->y1, y);
}
