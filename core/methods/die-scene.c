/* SPDX-License-Identifier: MIT */
#include "die-scene.h"

#include "load-sketch.h"
#include "sy-body.h"

/* A die from above and from two sides: its bodies seen through, pockets dashed, and where it can be taken hold of. */

/* Marks kept back for what comes after the bodies: the points, the outline, the centre and the dimensions. */
#define KEPT_BACK (SY_RIG_POINTS_MAX + 8)

/* Across the drawing, up it, and out of it, as coordinates 0 x, 1 y, 2 z. */
static const int seen_axes[][3] = {
  [SY_LOAD_ABOVE] = { 0, 1, 2 },
  [SY_LOAD_FRONT] = { 0, 2, 1 },
  [SY_LOAD_SIDE] = { 1, 2, 0 },
};

static double
coordinate (SyVec3 v, int axis)
{
  return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}

/* ---- bodies ---- */

static SyMark *
add_body (SyLoadSketch *sketch, SyMarkType type, SyRole role)
{
  return sketch->scene->room - sketch->scene->count > KEPT_BACK ? sy_scene_add (sketch->scene, type, role) : NULL;
}

static void
put_box (SyLoadSketch *sketch, SyRole role, SyVec3 at, const double size[3])
{
  const int *axes = seen_axes[sketch->view];
  double x = coordinate (at, axes[0]), y = coordinate (at, axes[1]), w = size[axes[0]] / 2, h = size[axes[1]] / 2;
  SyMark *mark = add_body (sketch, SY_MARK_POLYGON, role);

  sy_scene_include (sketch->scene, x - w, y - h);
  sy_scene_include (sketch->scene, x + w, y + h);
  if (mark == NULL)
    return;
  mark->n_points = 4;
  mark->points[0] = (SyPoint) { x - w, y - h };
  mark->points[1] = (SyPoint) { x + w, y - h };
  mark->points[2] = (SyPoint) { x + w, y + h };
  mark->points[3] = (SyPoint) { x - w, y + h };
}

static void
put_disc (SyLoadSketch *sketch, SyRole role, SyVec3 at, double diameter)
{
  const int *axes = seen_axes[sketch->view];
  double x = coordinate (at, axes[0]), y = coordinate (at, axes[1]), r = diameter / 2;
  SyMark *mark = add_body (sketch, SY_MARK_CIRCLE, role);

  sy_scene_include (sketch->scene, x - r, y - r);
  sy_scene_include (sketch->scene, x + r, y + r);
  if (mark == NULL)
    return;
  mark->n_points = 1;
  mark->points[0] = (SyPoint) { x, y };
  mark->radius = r;
}

/* A round body along one of the axes. */
static void
put_round (SyLoadSketch *sketch, SyRole role, SyVec3 at, double diameter, double height, int axis)
{
  double size[3] = { diameter, diameter, diameter };

  if (axis == seen_axes[sketch->view][2])
    {
      put_disc (sketch, role, at, diameter);
      return;
    }
  size[axis] = height;
  put_box (sketch, role, at, size);
}

static void
put_body (SyLoadSketch *sketch, const SyDieBody *body, SyVec3 at)
{
  const int *axes = seen_axes[sketch->view];
  SyRole role = body->cut == 1 ? SY_ROLE_POCKET : SY_ROLE_BODY;
  int axis = body->axis >= 0 ? body->axis : SY_AXIS_Z;
  double side, size[3];

  switch (body->shape)
    {
    case SY_BODY_BLOCK:
      put_box (sketch, role, at, body->size.at);
      return;
    case SY_BODY_CYLINDER:
      put_round (sketch, role, at, body->diameter.value, body->height.value, axis);
      return;
    case SY_BODY_TUBE:
      put_round (sketch, role, at, body->outer.value, body->height.value, axis);
      if (body->inner.value > 0)
        put_round (sketch, SY_ROLE_POCKET, at, body->inner.value, body->height.value, axis);
      return;
    case SY_BODY_PRISM: /* its section is known by its area only: a square */
      side = sqrt (body->area.value);
      for (int i = 0; i < 3; i++)
        size[i] = i == axis ? body->height.value : side;
      put_box (sketch, role, at, size);
      return;
    default:
      break;
    }
  if (sketch->scene->room - sketch->scene->count > KEPT_BACK)
    sy_load_sign (sketch, role, (SyPoint) { coordinate (at, axes[0]), coordinate (at, axes[1]) }, "");
}

/* Pockets over bodies. */
static void
put_bodies (SyLoadSketch *sketch, const SyDieFacts *facts)
{
  const SyDieBody *bodies = facts->bodies.items;

  for (int cut = 0; cut < 2; cut++)
    for (size_t i = 0; i < facts->bodies.count; i++)
      {
        const SyVector *at = bodies[i].at.items;

        if ((bodies[i].cut == 1) != (cut == 1))
          continue;
        for (size_t k = 0; k < bodies[i].at.count; k++)
          put_body (sketch, &bodies[i], sy_vector_vec3 (&at[k]));
      }
}

/* ---- points and centre ---- */

static bool
centre_of (const SySink *sink, SyVec3 *out)
{
  const SyQuantity *x = sy_sink_quantity (sink, "cg.x"), *y = sy_sink_quantity (sink, "cg.y"),
                   *z = sy_sink_quantity (sink, "cg.z");

  if (x == NULL || y == NULL || z == NULL || x->state != SY_STATE_VALUE || y->state != SY_STATE_VALUE
      || z->state != SY_STATE_VALUE)
    return false;
  *out = sy_vec3 (x->value, y->value, z->value);
  return true;
}

static void
put_outline (SyLoadSketch *sketch, const SyDieFacts *facts, const SySink *sink, const SyVec3 *cg)
{
  const SyRigPoint *points = facts->points.items;
  const SyQuantity *margin = sy_sink_quantity (sink, "points.margin");
  SyVec3 places[SY_RIG_POINTS_MAX];
  SyOutline outline;
  int n = 0;

  for (size_t i = 0; i < facts->points.count && i < SY_RIG_POINTS_MAX; i++)
    places[n++] = sy_vector_vec3 (&points[i].at);
  if (n < 2 || !sy_outline_make (places, n, &outline))
    return;
  if (outline.n <= SY_MARK_POINTS_MAX)
    sy_load_polygon (sketch, SY_ROLE_POINTS, outline.corner, outline.n);
  if (cg != NULL && margin != NULL && margin->state == SY_STATE_VALUE)
    sy_load_margin (sketch, &outline, (SyPoint) { cg->x, cg->y }, margin->value);
}

void
sy_die_scene (const void *facts, SyUnits units, const SySink *sink, size_t view, SyScene *scene)
{
  const SyDieFacts *die = facts;
  SyLoadSketch sketch;
  SyVec3 cg;
  bool has_cg = centre_of (sink, &cg);

  (void) units; /* the scene was begun in them */
  sy_load_begin (&sketch, scene, (SyLoadView) view);
  put_bodies (&sketch, die);
  if (die->bodies.count > 0)
    sy_load_extent (&sketch, (SyPoint) { scene->x0, scene->y0 }, (SyPoint) { scene->x1, scene->y1 });
  if (view == SY_LOAD_ABOVE)
    put_outline (&sketch, die, sink, has_cg ? &cg : NULL);
  sy_load_points (&sketch, &die->points);
  if (has_cg)
    sy_load_sign (&sketch, SY_ROLE_GRAVITY, sy_load_seen (&sketch, cg), "");
  sy_load_frame (&sketch);
}
