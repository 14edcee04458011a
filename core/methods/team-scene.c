/* SPDX-License-Identifier: MIT */
#include "team-scene.h"

#include "load-sketch.h"
#include "sy-team-facts.h"

/* Shares are arrows to one scale; that of the heavy end is drawn heavy. */

/* Length of the longest arrow, how far a person stands behind the hands: parts of the distance between the hands. By eye. */
#define LONGEST 0.35
#define BEHIND 0.12
#define HEAD 0.06
#define RADIAN (3.14159265358979323846 / 180)

typedef struct
{
  SyLoadSketch sketch;
  const SyTeamFacts *facts;
  SyTeamCase team;
  double mass, size;      /* size: between the hands that are farthest apart */
  double largest;         /* part of the mass that the longest arrow shows   */
  int heaviest;           /* -1: it tips                                     */
} Drawing;

static void
begin (Drawing *drawing, const SyTeamFacts *facts, SyUnits units, bool side, SyScene *scene)
{
  const SyTeam *team = &drawing->team.team;

  *drawing = (Drawing) { .facts = facts, .mass = facts->mass.value, .heaviest = -1 };
  sy_team_case (facts, units, &drawing->team);
  sy_load_begin (&drawing->sketch, scene, side ? SY_LOAD_FRONT : SY_LOAD_ABOVE);
  for (int i = 0; i < team->n; i++)
    for (int k = 0; k < i; k++)
      {
        double dx = team->x[i] - team->x[k], dy = team->y[i] - team->y[k];

        drawing->size = fmax (drawing->size, sqrt (dx * dx + dy * dy));
      }
  if (drawing->team.shares.balanced)
    {
      drawing->heaviest = sy_team_heaviest (&drawing->team);
      drawing->largest = drawing->team.shares.worst[drawing->heaviest];
    }
}

static const char *
place_path (int i)
{
  static const char *const paths[SY_TEAM_MAX] = { "people[0].at", "people[1].at", "people[2].at", "people[3].at" };

  return paths[i];
}

/* "A 38 kg" */
static void
say_share (const Drawing *drawing, SyMark *mark, int i)
{
  if (mark == NULL)
    return;
  SyText text = { mark->text, sizeof mark->text, 0 };

  sy_text_add (&text, drawing->team.people[i].label);
  if (drawing->heaviest < 0)
    return;
  sy_text_add (&text, " ");
  sy_text_add_measure (&text, drawing->team.shares.worst[i] * drawing->mass, 1, SY_KIND_MASS, drawing->sketch.scene->units);
}

static void
put_arrow (Drawing *drawing, int i, SyPoint from, double dx, double dy)
{
  double part = drawing->heaviest < 0 ? 0 : drawing->team.shares.worst[i] / drawing->largest;
  double length = part * LONGEST * drawing->size;
  SyMark *mark;

  if (!(length > 0))
    return;
  mark = sy_load_line (&drawing->sketch, SY_MARK_ARROW, SY_ROLE_TENSION, from,
                       (SyPoint) { from.x + dx * length, from.y + dy * length });
  if (mark != NULL)
    mark->governing = i == drawing->heaviest;
}

static void
put_scale (Drawing *drawing)
{
  SyScene *scene = drawing->sketch.scene;
  double mass = drawing->heaviest < 0 ? 0 : drawing->largest * drawing->mass, step = 1;

  if (!(mass > 1e-3) || mass > 1e6) /* a slip of the pen: no scale would fit its text */
    return;
  while (step * 10 <= mass)
    step *= 10;
  while (step > mass)
    step /= 10;
  step *= 5 * step <= mass ? 5 : 2 * step <= mass ? 2 : 1;
  SyText text = { scene->force_text, sizeof scene->force_text, 0 };
  sy_text_add_measure (&text, step, 4, SY_KIND_MASS, scene->units);
  scene->force_length = step / mass * LONGEST * drawing->size;
}

/* ---- from above ---- */

static void
put_person_above (Drawing *drawing, int i, double mx, double my)
{
  SyLoadSketch *sketch = &drawing->sketch;
  SyVec3 at = sy_vec3 (drawing->team.team.x[i], drawing->team.team.y[i], 0);
  double dx = at.x - mx, dy = at.y - my, away = sqrt (dx * dx + dy * dy);
  SyPoint hand = { at.x, at.y };
  SyMark *mark;

  /* One in the middle of the others stands to one side. */
  dx = away > 0 ? dx / away : 0;
  dy = away > 0 ? dy / away : 1;
  mark = sy_scene_add (sketch->scene, SY_MARK_CIRCLE, SY_ROLE_FIGURE);
  if (mark != NULL)
    {
      double behind = BEHIND * drawing->size, radius = HEAD * drawing->size;
      SyPoint centre = { at.x + dx * behind, at.y + dy * behind };

      mark->points[0] = centre;
      mark->n_points = 1;
      mark->radius = radius;
      sy_scene_include (sketch->scene, centre.x - radius, centre.y - radius);
      sy_scene_include (sketch->scene, centre.x + radius, centre.y + radius);
    }
  put_arrow (drawing, i, hand, dx, dy);
  mark = sy_load_sign (sketch, SY_ROLE_POINT, hand, "");
  say_share (drawing, mark, i);
  sy_load_handle (sketch, mark, place_path (i), at);
  if (mark != NULL)
    mark->governing = i == drawing->heaviest;
}

static void
draw_above (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;
  const SyTeam *team = &drawing->team.team;
  SyVec3 hands[SY_TEAM_MAX], cg = sy_vec3 (team->cg[0], team->cg[1], 0);
  double mx = 0, my = 0;
  SyPoint low = { team->x[0], team->y[0] }, high = low;

  for (int i = 0; i < team->n; i++)
    {
      hands[i] = sy_vec3 (team->x[i], team->y[i], 0);
      mx += team->x[i] / team->n;
      my += team->y[i] / team->n;
      low = (SyPoint) { fmin (low.x, team->x[i]), fmin (low.y, team->y[i]) };
      high = (SyPoint) { fmax (high.x, team->x[i]), fmax (high.y, team->y[i]) };
    }
  if (team->n > 2)
    sy_load_hull (sketch, SY_ROLE_POINTS, hands, team->n);
  else
    sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_CENTRE, (SyPoint) { hands[0].x, hands[0].y },
                  (SyPoint) { hands[1].x, hands[1].y });
  for (int i = 0; i < team->n; i++)
    put_person_above (drawing, i, mx, my);
  sy_load_handle (sketch, sy_load_sign (sketch, SY_ROLE_GRAVITY, (SyPoint) { cg.x, cg.y }, ""), "cg",
                  sy_vec3 (cg.x, cg.y, team->cg[2]));
  sy_load_extent (sketch, low, high);
  sy_load_frame (sketch);
}

/* ---- from the side ---- */

/* Seen square to the way up or, on the level, to the line between the hands that are farthest apart. */
static void
side_direction (const SyTeam *team, double *ux, double *uy)
{
  double longest = 0, x = team->slope_deg > 0 ? team->uphill[0] : 0, y = team->slope_deg > 0 ? team->uphill[1] : 0;

  for (int i = 0; i < team->n && team->slope_deg == 0; i++)
    for (int k = 0; k < i; k++)
      {
        double dx = team->x[i] - team->x[k], dy = team->y[i] - team->y[k], length = sqrt (dx * dx + dy * dy);

        if (length > longest)
          {
            longest = length;
            x = dx;
            y = dy;
          }
      }
  double length = sqrt (x * x + y * y);
  *ux = x / length;
  *uy = y / length;
}

static void
put_ground (Drawing *drawing, double from, double to)
{
  SyLoadSketch *sketch = &drawing->sketch;
  double slope = drawing->team.team.slope_deg * RADIAN, rise = tan (slope), edge = 0.2 * drawing->size;
  SyPoint low = { from - edge, (from - edge) * rise }, high = { to + edge, (to + edge) * rise };
  SyMark *mark;

  sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_FLOOR, low, high);
  if (!(slope > 0))
    return;
  double arc = 0.4 * drawing->size;
  sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_THIN, low, (SyPoint) { low.x + 1.2 * arc, low.y });
  mark = sy_load_line (sketch, SY_MARK_ANGLE, SY_ROLE_MEASURE, low, (SyPoint) { low.x + arc, low.y });
  if (mark == NULL)
    return;
  mark->points[mark->n_points++] = (SyPoint) { low.x + arc * cos (slope), low.y + arc * sin (slope) };
  mark->fact = "slope";
  sy_load_say_angle (mark, drawing->team.team.slope_deg);
}

static void
draw_side (Drawing *drawing)
{
  SyLoadSketch *sketch = &drawing->sketch;
  const SyTeam *team = &drawing->team.team;
  double c = cos (team->slope_deg * RADIAN), rise = tan (team->slope_deg * RADIAN), ux, uy;
  double along[SY_TEAM_MAX];
  SyPoint hand[SY_TEAM_MAX];
  int first = 0, last = 0;

  side_direction (team, &ux, &uy);
  for (int i = 0; i < team->n; i++)
    {
      along[i] = team->x[i] * ux + team->y[i] * uy;
      hand[i] = (SyPoint) { along[i] * c, along[i] * c * rise + team->height[i] };
      first = along[i] < along[first] ? i : first;
      last = along[i] > along[last] ? i : last;
    }
  double dx = hand[last].x - hand[first].x, dy = hand[last].y - hand[first].y, length = sqrt (dx * dx + dy * dy);
  double ex = dx / length, ey = dy / length, to = team->cg[0] * ux + team->cg[1] * uy - along[first];
  SyPoint foot = { hand[first].x + ex * to, hand[first].y + ey * to };
  SyPoint cg = { foot.x - ey * team->cg[2], foot.y + ex * team->cg[2] };

  put_ground (drawing, hand[first].x, hand[last].x);
  sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_OUTLINE, hand[first], hand[last]);
  if (team->cg[2] != 0)
    {
      sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_THIN, foot, cg);
      /* where the weight meets the line of the hands */
      sy_load_line (sketch, SY_MARK_LINE, SY_ROLE_CENTRE, cg,
                    (SyPoint) { cg.x, hand[first].y + (cg.x - hand[first].x) * ey / ex });
    }
  for (int i = 0; i < team->n; i++)
    {
      SyMark *mark;

      put_arrow (drawing, i, hand[i], 0, 1);
      mark = sy_load_dimension (sketch, (SyPoint) { hand[i].x, hand[i].x * rise }, hand[i], 0, "V");
      if (mark != NULL && !drawing->team.people[i].height.given)
        mark->role = SY_ROLE_HIDDEN;
      mark = sy_load_sign (sketch, SY_ROLE_POINT, hand[i], "");
      say_share (drawing, mark, i);
      if (mark != NULL)
        mark->governing = i == drawing->heaviest;
    }
  sy_load_sign (sketch, SY_ROLE_GRAVITY, cg, "");
  sy_load_frame (sketch);
}

void
sy_team_scene (const void *data, SyUnits units, const SySink *sink, bool side, SyScene *scene)
{
  Drawing drawing;

  (void) sink;
  begin (&drawing, data, units, side, scene);
  if (!drawing.team.can_lie)
    return;
  if (side)
    draw_side (&drawing);
  else
    draw_above (&drawing);
  put_scale (&drawing);
}
