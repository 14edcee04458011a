/* SPDX-License-Identifier: MIT */
#include "rig-scene.h"

#include <string.h>

#include "load-sketch.h"
#include "sy-rig-case.h"

/* A rigged lift from above and from two sides, as it hangs. */

/* Length of the longest pull in the drawing, part of its leg. By eye. */
#define LONGEST_PULL 0.5

typedef struct
{
  SyLoadSketch sketch;
  const SyRigFacts *facts;
  const SySink *sink;
  SyRigCase rig;
  SyVec3 cg, hook;          /* as they hang                               */
  SyVec3 at[SY_PARTS_MAX];  /* where each part takes hold, as it hangs    */
  double pull[SY_PARTS_MAX]; /* force; NAN not known                      */
  bool hook_known, balanced;
  int governing;            /* part; -1 none                              */
  double length_of_force;   /* real measure a unit of force               */
} Drawing;

/* ---- what is known ---- */

static double
quantity (const SySink *sink, const char *prefix, const char *name, const char *suffix)
{
  char symbol[SY_NAMED_TEXT_MAX];
  SyText text = { symbol, sizeof symbol, 0 };
  const char *const parts[] = { prefix, ".", name, ".", suffix };
  const SyQuantity *found;

  for (size_t i = 0; i < SY_LEN (parts); i++)
    sy_text_add (&text, parts[i]);
  found = sy_sink_quantity (sink, symbol);
  return found != NULL && found->state == SY_STATE_VALUE ? found->value : (double) NAN;
}

static bool
begins (const char *text, const char *prefix, const char *name)
{
  size_t a = strlen (prefix), b = strlen (name);

  return strncmp (text, prefix, a) == 0 && strncmp (text + a, name, b) == 0
         && (text[a + b] == '\0' || text[a + b] == '.');
}

/* The leg that is named as what governs; where that is something else, the leg that pulls most. */
static int
governing_part (const Drawing *drawing)
{
  const char *named = drawing->sink->governing;
  int most = -1;

  for (int i = 0; i < drawing->rig.n; i++)
    {
      const char *label = drawing->rig.parts[i].point->label;

      if (named != NULL && (begins (named, "leg.", label) || begins (named, "element.", label)))
        return i;
      if (drawing->pull[i] > 0 && (most < 0 || drawing->pull[i] > drawing->pull[most]))
        most = i;
    }
  return most;
}

static void
begin (Drawing *drawing, const SyRigFacts *facts, SyUnits units, const SySink *sink, SyLoadView view, SyScene *scene)
{
  /* Allowances do not change where anything is; the figures of pulls are those that were judged. */
  const SyContext context = { .units = units, .today = (double) NAN };
  SyRigCase *rig = &drawing->rig;

  *drawing = (Drawing) { .facts = facts, .sink = sink };
  sy_rig_case (facts, &context, rig);
  sy_load_begin (&drawing->sketch, scene, view);
  drawing->balanced = rig->hangs && (rig->hang.status == SY_HANG_BALANCED || rig->hang.status == SY_HANG_TIPS);
  drawing->hook_known = rig->hangs && isfinite (rig->hang.hook.x + rig->hang.hook.y + rig->hang.hook.z);
  drawing->cg = sy_vector_vec3 (&facts->cg);
  if (!rig->level && drawing->balanced)
    sy_load_turn (&drawing->sketch, rig->hang.up, drawing->cg);
  if (drawing->hook_known)
    drawing->hook = sy_load_hung (&drawing->sketch, rig->hang.hook);
  for (int i = 0; i < rig->n; i++)
    {
      drawing->at[i] = sy_load_hung (&drawing->sketch, rig->at[i].at);
      drawing->pull[i] = drawing->balanced && !rig->hang.slack[i]
                           ? quantity (sink, "leg", rig->parts[i].point->label, "tension")
                           : (double) NAN;
    }
  drawing->governing = drawing->balanced ? governing_part (drawing) : -1;
}

/* ---- the load ---- */

/* From the sides: the box about the points, down to the underside where that is known. */
static void
put_load (Drawing *drawing)
{
  const SyRigPoint *points = drawing->facts->points.items;
  SyVec3 low, high, corners[8];

  if (drawing->facts->points.count == 0)
    return;
  low = high = sy_vector_vec3 (&points[0].at);
  for (size_t i = 1; i < drawing->facts->points.count; i++)
    {
      SyVec3 at = sy_vector_vec3 (&points[i].at);

      low = sy_vec3 (fmin (low.x, at.x), fmin (low.y, at.y), fmin (low.z, at.z));
      high = sy_vec3 (fmax (high.x, at.x), fmax (high.y, at.y), fmax (high.z, at.z));
    }
  if (drawing->facts->bottom.given)
    low.z = fmin (low.z, drawing->facts->bottom.value);
  for (int i = 0; i < 8; i++)
    corners[i] = sy_load_hung (&drawing->sketch, sy_vec3 (i & 1 ? low.x : high.x, i & 2 ? low.y : high.y,
                                                          i & 4 ? low.z : high.z));
  sy_load_hull (&drawing->sketch, SY_ROLE_BODY, corners, 8);
}

/* What the margin is measured to: the points, those below the centre where their legs pass its height. Legs with length
   to spare do not hold (sy_hang_free). @section: it is not the outline of all points. */
static bool
holding (const Drawing *drawing, SyOutline *outline, bool *section)
{
  const SyHang *hang = &drawing->rig.hang;
  SyVec3 plan[SY_PARTS_MAX];
  double longest = 0, rise = drawing->hook.z - drawing->cg.z;
  int n = 0;

  *section = false;
  for (int i = 0; i < drawing->rig.n; i++)
    longest = fmax (longest, drawing->rig.at[i].length);
  for (int i = 0; i < drawing->rig.n; i++)
    {
      SyVec3 at = drawing->at[i], d = sy_vec3_sub (drawing->hook, at);
      double below = drawing->cg.z - at.z;

      if (!drawing->rig.level && hang->slack_by[i] > SY_RIG_MATCHED * longest)
        {
          *section = true;
          continue;
        }
      if (below > 0 && rise > 0)
        {
          at = sy_vec3_add (at, sy_vec3_scale (d, below / d.z));
          *section = true;
        }
      plan[n++] = sy_vec3 (at.x, at.y, 0);
    }
  return n > 2 && sy_outline_make (plan, n, outline) && outline->n > 2;
}

static void
put_outline (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;
  const SyQuantity *margin = sy_sink_quantity (drawing->sink, "margin");
  SyOutline outline;
  bool section;

  sy_load_hull (sketch, SY_ROLE_POINTS, drawing->at, drawing->rig.n);
  if (!drawing->balanced || !holding (drawing, &outline, &section))
    return;
  if (section)
    sy_load_polygon (sketch, SY_ROLE_SECTION, outline.corner, outline.n);
  if (margin != NULL && margin->state == SY_STATE_VALUE)
    sy_load_margin (sketch, &outline, sy_load_seen (sketch, drawing->cg), margin->value);
}

/* ---- legs and pulls ---- */

static void
put_legs (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;

  for (int i = 0; i < drawing->rig.n && drawing->hook_known; i++)
    {
      bool taut = drawing->balanced && !drawing->rig.hang.slack[i];
      SyMark *leg = sy_load_line (sketch, SY_MARK_LINE, taut ? SY_ROLE_LEG : SY_ROLE_SLACK,
                                  sy_load_seen (sketch, drawing->at[i]), sy_load_seen (sketch, drawing->hook));

      if (leg != NULL)
        leg->governing = i == drawing->governing;
    }
}

static void
scale_forces (Drawing *drawing)
{
  double scale = (double) INFINITY;

  for (int i = 0; i < drawing->rig.n; i++)
    if (drawing->pull[i] > 0)
      scale = fmin (scale, LONGEST_PULL * sy_vec3_length (sy_vec3_sub (drawing->hook, drawing->at[i])) / drawing->pull[i]);
  drawing->length_of_force = isfinite (scale) ? scale : 0;
}

/* An arrow that lies on another and says the same is that other one. */
static SyMark *
drawn_already (const SyScene *scene, SyPoint from, SyPoint to, const char *text, double near)
{
  for (int i = 0; i < scene->count; i++)
    {
      SyMark *mark = &scene->marks[i];

      if (mark->role == SY_ROLE_TENSION && strcmp (mark->text, text) == 0 && fabs (mark->points[0].x - from.x) < near
          && fabs (mark->points[0].y - from.y) < near && fabs (mark->points[1].x - to.x) < near
          && fabs (mark->points[1].y - to.y) < near)
        return mark;
    }
  return NULL;
}

static void
put_pulls (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;

  scale_forces (drawing);
  for (int i = 0; i < drawing->rig.n; i++)
    {
      SyVec3 d = sy_vec3_sub (drawing->hook, drawing->at[i]);
      double length = drawing->length_of_force * drawing->pull[i], whole = sy_vec3_length (d);
      char text[SY_SCENE_SCALE_TEXT_MAX];
      SyPoint from, to;
      SyMark *mark;

      if (!(length > 0) || !(whole > 0))
        continue;
      sy_load_force_text (drawing->pull[i], sketch->scene->units, text);
      from = sy_load_seen (sketch, drawing->at[i]);
      to = sy_load_seen (sketch, sy_vec3_add (drawing->at[i], sy_vec3_scale (d, length / whole)));
      mark = drawn_already (sketch->scene, from, to, text, 1e-6 * whole);
      if (mark == NULL)
        {
          mark = sy_load_line (sketch, SY_MARK_ARROW, SY_ROLE_TENSION, from, to);
          sy_load_say (mark, text);
          if (mark != NULL)
            mark->fact = sy_load_point_path ((size_t) (drawing->rig.parts[i].point
                                                       - (const SyRigPoint *) drawing->facts->points.items));
        }
      if (mark != NULL)
        mark->governing = mark->governing || i == drawing->governing;
    }
}

/* A round force, 1, 2 or 5 by tens, that is drawn no longer than a fifth of the picture. */
static void
put_force_scale (Drawing *drawing)
{
  SyScene *scene = drawing->sketch.scene;
  double limit = 0.2 * fmax (scene->x1 - scene->x0, scene->y1 - scene->y0) / drawing->length_of_force, force = 1;

  if (!(drawing->length_of_force > 0) || !(limit > 0) || !isfinite (limit))
    return;
  while (force > limit)
    force /= 10;
  while (force * 10 <= limit)
    force *= 10;
  force *= 5 * force <= limit ? 5 : 2 * force <= limit ? 2 : 1;
  scene->force_length = force * drawing->length_of_force;
  sy_load_force_text (force, scene->units, scene->force_text);
}

/* ---- angle and heights, from the sides ---- */

static int
flattest_part (const Drawing *drawing)
{
  const SyHang *hang = &drawing->rig.hang;
  int flattest = -1;

  for (int i = 0; i < drawing->rig.n; i++)
    if (!hang->slack[i] && hang->angle_deg[i] > 0 && (flattest < 0 || hang->angle_deg[i] > hang->angle_deg[flattest]))
      flattest = i;
  return flattest;
}

/* In the view in which the flattest leg is seen better; the figure is the true angle, the arc that of the view. */
static void
put_angle (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;
  int part = flattest_part (drawing);

  if (part < 0)
    return;

  SyVec3 d = sy_vec3_sub (drawing->at[part], drawing->hook);
  bool front = fabs (d.x) >= fabs (d.y);
  SyPoint hook = sy_load_seen (sketch, drawing->hook), foot = sy_load_seen (sketch, drawing->at[part]);
  double dx = foot.x - hook.x, dy = foot.y - hook.y, length = sqrt (dx * dx + dy * dy);
  SyMark *mark;

  if (front != (sketch->view == SY_LOAD_FRONT) || !(length > 0))
    return;
  double radius = 0.36 * length;
  mark = sy_load_line (sketch, SY_MARK_ANGLE, SY_ROLE_MEASURE, hook, (SyPoint) { hook.x, hook.y - radius });
  if (mark == NULL)
    return;
  mark->points[mark->n_points++] = (SyPoint) { hook.x + dx / length * radius, hook.y + dy / length * radius };
  sy_load_say_angle (mark, drawing->rig.hang.angle_deg[part]);
}

static void
put_heights (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;
  SyScene *scene = sketch->scene;
  SyPoint hook = sy_load_seen (sketch, drawing->hook);
  double lane = sy_load_lane (sketch), right = scene->x1, top = drawing->at[0].z;
  SyMark *mark;

  for (int i = 1; i < drawing->rig.n; i++)
    top = fmax (top, drawing->at[i].z);
  if (!(hook.y > top))
    return;
  sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_THIN, (SyPoint) { hook.x + 0.5 * lane, hook.y },
                (SyPoint) { right + 1.3 * lane, hook.y });
  sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_THIN, (SyPoint) { right + 0.2 * lane, top },
                (SyPoint) { right + 1.3 * lane, top });
  mark = sy_load_dimension (sketch, (SyPoint) { right + lane, top }, (SyPoint) { right + lane, hook.y }, 0, "");
  if (mark != NULL)
    mark->fact = drawing->facts->hook.at.given ? "hook.at" : drawing->facts->hook.above.given ? "hook.above" : NULL;
  sy_scene_include (scene, right + 1.8 * lane, hook.y);
}

/* ---- signs ---- */

static void
put_cg (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;
  const SyRigFacts *facts = drawing->facts;
  SyMark *mark = sy_load_sign (sketch, SY_ROLE_GRAVITY, sy_load_seen (sketch, drawing->cg), "");

  sy_load_handle (sketch, mark, "cg", sy_vector_vec3 (&facts->cg));
  if (mark != NULL && facts->hook_given && facts->hook.at.given)
    {
      /* A load held level hangs under its hook: the two stay over each other. */
      mark->handle.also = "hook.at";
      memcpy (mark->handle.also_value, facts->hook.at.at, sizeof mark->handle.also_value);
    }
}

/* From the sides; from above it would lie on the centre of gravity. */
static void
put_hook (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;
  const SyRigFacts *facts = drawing->facts;
  SyPoint at = sy_load_seen (sketch, drawing->hook);
  SyMark *mark = sy_load_sign (sketch, SY_ROLE_HOOK, at, "");

  sy_scene_include (sketch->scene, at.x, at.y + 1.2 * sy_load_lane (sketch));
  if (mark == NULL || !facts->hook_given)
    return;
  if (facts->hook.at.given)
    {
      sy_load_handle (sketch, mark, "hook.at", sy_vector_vec3 (&facts->hook.at));
      memset (mark->handle.right, 0, sizeof mark->handle.right);
      return;
    }
  mark->fact = "hook.above";
  mark->handle = (SyHandle) { .fact = "hook.above", .number = true, .value = { facts->hook.above.value },
                              .up = { 1, 0, 0 } };
}

/* From above: how far the points are apart. */
static void
put_spread (Drawing *drawing)
{
  SyVec3 low = drawing->at[0], high = low;

  for (int i = 1; i < drawing->rig.n; i++)
    {
      SyVec3 at = drawing->at[i];

      low = sy_vec3 (fmin (low.x, at.x), fmin (low.y, at.y), 0);
      high = sy_vec3 (fmax (high.x, at.x), fmax (high.y, at.y), 0);
    }
  sy_load_extent (&drawing->sketch, (SyPoint) { low.x, low.y }, (SyPoint) { high.x, high.y });
}

/* ---- the whole ---- */

void
sy_rig_scene (const void *facts, SyUnits units, const SySink *sink, size_t view, SyScene *scene)
{
  Drawing drawing;
  bool above = view == SY_LOAD_ABOVE;

  begin (&drawing, facts, units, sink, (SyLoadView) view, scene);
  if (above)
    put_outline (&drawing);
  else
    put_load (&drawing);
  put_legs (&drawing);
  if (drawing.balanced)
    put_pulls (&drawing);
  if (above)
    put_spread (&drawing);
  if (!above && drawing.balanced)
    {
      put_angle (&drawing);
      put_heights (&drawing);
    }
  sy_load_points (&drawing.sketch, &drawing.facts->points);
  put_cg (&drawing);
  if (!above && drawing.hook_known)
    put_hook (&drawing);
  sy_load_frame (&drawing.sketch);
  put_force_scale (&drawing);
}
