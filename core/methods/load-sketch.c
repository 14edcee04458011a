/* SPDX-License-Identifier: MIT */
#include "load-sketch.h"

#include <string.h>

/* ---- text ---- */

static SyText
behind (SyMark *mark)
{
  return (SyText) { mark->text, sizeof mark->text, strlen (mark->text) };
}

void
sy_load_say (SyMark *mark, const char *text)
{
  if (mark == NULL || text == NULL)
    return;
  SyText words = behind (mark);
  sy_text_add (&words, text);
}

/* To 1 mm or 0.01 in. */
static void
say_length (SyMark *mark, double length, SyUnits units)
{
  if (mark == NULL)
    return;
  SyText words = behind (mark);
  sy_text_add_measure (&words, length, units == SY_UNITS_US ? 2 : 0, SY_KIND_LENGTH, units);
}

void
sy_load_say_angle (SyMark *mark, double degrees)
{
  if (mark == NULL)
    return;
  SyText words = behind (mark);
  sy_text_add_rounded (&words, degrees, 1);
  sy_text_add (&words, "\302\260");
}

void
sy_load_force_text (double force, SyUnits units, char *text)
{
  double size = fabs (force);
  int decimals = units == SY_UNITS_US || size >= 100 ? 0 : size >= 10 ? 1 : 2;
  SyText words = { text, SY_SCENE_SCALE_TEXT_MAX, 0 };

  sy_text_add_measure (&words, force, decimals, SY_KIND_FORCE, units);
}

/* ---- views ---- */

void
sy_load_begin (SyLoadSketch *sketch, SyScene *scene, SyLoadView view)
{
  *sketch = (SyLoadSketch) {
    .scene = scene,
    .view = view,
    .row = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } },
  };
  scene->kind = SY_KIND_LENGTH;
}

void
sy_load_turn (SyLoadSketch *sketch, SyVec3 up, SyVec3 about)
{
  /* Rodrigues' formula with the axis up × z; upside down there is no shortest way: about x. */
  double c = up.z, x = up.y, y = -up.x;

  sketch->about = about;
  if (c < -1 + 1e-9)
    {
      sketch->row[0] = sy_vec3 (1, 0, 0);
      sketch->row[1] = sy_vec3 (0, -1, 0);
      sketch->row[2] = sy_vec3 (0, 0, -1);
      return;
    }

  double k = 1 / (1 + c);

  sketch->row[0] = sy_vec3 (c + k * x * x, k * x * y, y);
  sketch->row[1] = sy_vec3 (k * x * y, c + k * y * y, -x);
  sketch->row[2] = sy_vec3 (-y, x, c);
}

SyVec3
sy_load_hung (const SyLoadSketch *sketch, SyVec3 place)
{
  SyVec3 d = sy_vec3_sub (place, sketch->about);

  return sy_vec3_add (sketch->about, sy_vec3 (sy_vec3_dot (sketch->row[0], d), sy_vec3_dot (sketch->row[1], d),
                                              sy_vec3_dot (sketch->row[2], d)));
}

SyPoint
sy_load_seen (const SyLoadSketch *sketch, SyVec3 hung)
{
  return (SyPoint) { sketch->view == SY_LOAD_SIDE ? hung.y : hung.x, sketch->view == SY_LOAD_ABOVE ? hung.y : hung.z };
}

/* ---- marks ---- */

static void
put_point (SyLoadSketch *sketch, SyMark *mark, SyPoint at)
{
  if (mark->n_points >= SY_MARK_POINTS_MAX)
    return;
  mark->points[mark->n_points++] = at;
  sy_scene_include (sketch->scene, at.x, at.y);
}

SyMark *
sy_load_line (SyLoadSketch *sketch, SyMarkType type, SyRole role, SyPoint from, SyPoint to)
{
  SyMark *mark = sy_scene_add (sketch->scene, type, role);

  if (mark != NULL)
    {
      put_point (sketch, mark, from);
      put_point (sketch, mark, to);
    }
  return mark;
}

SyMark *
sy_load_sign (SyLoadSketch *sketch, SyRole role, SyPoint at, const char *text)
{
  SyMark *mark = sy_scene_add (sketch->scene, SY_MARK_SIGN, role);

  if (mark != NULL)
    {
      put_point (sketch, mark, at);
      sy_load_say (mark, text);
    }
  return mark;
}

void
sy_load_polygon (SyLoadSketch *sketch, SyRole role, const SyVec3 *corners, int n)
{
  SyMark *mark;

  if (n < 2)
    return;
  mark = sy_scene_add (sketch->scene, n > 2 ? SY_MARK_POLYGON : SY_MARK_LINE, role);
  for (int i = 0; i < n && mark != NULL; i++)
    put_point (sketch, mark, (SyPoint) { corners[i].x, corners[i].y });
}

void
sy_load_hull (SyLoadSketch *sketch, SyRole role, const SyVec3 *hung, int n)
{
  SyVec3 seen[SY_OUTLINE_MAX];
  SyOutline outline;

  for (int i = 0; i < n && i < SY_OUTLINE_MAX; i++)
    {
      SyPoint at = sy_load_seen (sketch, hung[i]);

      seen[i] = sy_vec3 (at.x, at.y, 0);
    }
  if (sy_outline_make (seen, n, &outline) && outline.n <= SY_MARK_POINTS_MAX)
    sy_load_polygon (sketch, role, outline.corner, outline.n);
}

double
sy_load_lane (const SyLoadSketch *sketch)
{
  const SyScene *scene = sketch->scene;
  double size = fmax (scene->x1 - scene->x0, scene->y1 - scene->y0);

  return size > 0 && isfinite (size) ? 0.1 * size : 0;
}

SyMark *
sy_load_dimension (SyLoadSketch *sketch, SyPoint from, SyPoint to, double offset, const char *symbol)
{
  double dx = to.x - from.x, dy = to.y - from.y, length = sqrt (dx * dx + dy * dy);
  SyMark *mark;

  if (!(length > 0))
    return NULL;
  mark = sy_load_line (sketch, SY_MARK_DIMENSION, SY_ROLE_MEASURE, from, to);
  if (mark == NULL)
    return NULL;
  mark->offset = offset;
  if (symbol[0] != '\0')
    {
      sy_load_say (mark, symbol);
      sy_load_say (mark, " ");
    }
  say_length (mark, length, sketch->scene->units);
  /* The line itself, to the left of its direction, with half a lane for its text. */
  double away = 1.5 * offset;
  sy_scene_include (sketch->scene, from.x - away * dy / length, from.y + away * dx / length);
  sy_scene_include (sketch->scene, to.x - away * dy / length, to.y + away * dx / length);
  return mark;
}

void
sy_load_extent (SyLoadSketch *sketch, SyPoint low, SyPoint high)
{
  double lane = sy_load_lane (sketch);

  /* To the left of the direction: downwards going to the left, to the left going up. */
  sy_load_dimension (sketch, low, (SyPoint) { high.x, low.y }, -lane, "");
  sy_load_dimension (sketch, low, (SyPoint) { low.x, high.y }, lane, "");
}

void
sy_load_frame (SyLoadSketch *sketch)
{
  SyScene *scene = sketch->scene;
  double edge = 0.6 * sy_load_lane (sketch);

  sy_scene_include (scene, scene->x0 - edge, scene->y0 - edge);
  sy_scene_include (scene, scene->x1 + edge, scene->y1 + edge);
}

void
sy_load_margin (SyLoadSketch *sketch, const SyOutline *outline, SyPoint from, double margin)
{
  SyVec3 p = sy_vec3 (from.x, from.y, 0), nearest = p;
  double least = (double) INFINITY;
  SyMark *mark;

  for (int i = 0; i < outline->n; i++)
    {
      SyVec3 a = outline->corner[i], ab = sy_vec3_sub (outline->corner[(i + 1) % outline->n], a);
      double square = sy_vec3_dot (ab, ab);
      double along = square > 0 ? fmin (1, fmax (0, sy_vec3_dot (sy_vec3_sub (p, a), ab) / square)) : 0;
      SyVec3 at = sy_vec3_add (a, sy_vec3_scale (ab, along));
      double away = sy_vec3_length (sy_vec3_sub (at, p));

      if (away < least)
        {
          least = away;
          nearest = at;
        }
    }
  if (!(least > 0) || !isfinite (least))
    return;
  mark = sy_load_line (sketch, SY_MARK_DIMENSION, SY_ROLE_MEASURE, from, (SyPoint) { nearest.x, nearest.y });
  say_length (mark, margin, sketch->scene->units);
}

/* ---- what can be moved ---- */

const char *
sy_load_point_path (size_t point)
{
#define PATH(n) "points[" #n "].at"
  static const char *const paths[SY_RIG_POINTS_MAX] = {
    PATH (0),  PATH (1),  PATH (2),  PATH (3),  PATH (4),  PATH (5),  PATH (6),  PATH (7),
    PATH (8),  PATH (9),  PATH (10), PATH (11), PATH (12), PATH (13), PATH (14), PATH (15),
    PATH (16), PATH (17), PATH (18), PATH (19), PATH (20), PATH (21), PATH (22), PATH (23),
    PATH (24), PATH (25), PATH (26), PATH (27), PATH (28), PATH (29), PATH (30), PATH (31),
  };

  return point < SY_RIG_POINTS_MAX ? paths[point] : NULL;
}

static void
copy (SyVec3 from, double to[3])
{
  to[0] = from.x;
  to[1] = from.y;
  to[2] = from.z;
}

void
sy_load_handle (const SyLoadSketch *sketch, SyMark *mark, const char *fact, SyVec3 value)
{
  if (mark == NULL || fact == NULL)
    return;
  /* The turn is orthogonal: its rows are what the axes of the room are in the coordinates of the load. */
  mark->handle.fact = fact;
  mark->fact = fact;
  copy (value, mark->handle.value);
  copy (sketch->row[sketch->view == SY_LOAD_SIDE ? 1 : 0], mark->handle.right);
  copy (sketch->row[sketch->view == SY_LOAD_ABOVE ? 1 : 2], mark->handle.up);
}

void
sy_load_points (SyLoadSketch *sketch, const SyList *points)
{
  const SyRigPoint *items = points->items;

  for (size_t i = 0; i < points->count; i++)
    {
      SyVec3 at = sy_vector_vec3 (&items[i].at);
      SyMark *mark
        = sy_load_sign (sketch, SY_ROLE_POINT, sy_load_seen (sketch, sy_load_hung (sketch, at)), items[i].label);

      sy_load_handle (sketch, mark, sy_load_point_path (i), at);
    }
}
