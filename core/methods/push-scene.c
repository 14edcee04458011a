/* SPDX-License-Identifier: MIT */
#include "push-scene.h"

#include <math.h>
#include <string.h>

#include "lift-scene.h"
#include "sy-text.h"

#define RADIAN (3.14159265358979323846 / 180)

/* All sizes in cm, drawn by eye. */
#define REACH 38.0
#define LOAD_LENGTH 120.0
#define LOAD_HEIGHT 45.0
#define LANE 20.0
#define LONGEST_ARROW 100.0
#define STATURE 170.0
#define SLOPE_LENGTH 250.0
#define SHALLOW_DEG 6.0

typedef struct
{
  SyScene *scene;
  double cm;       /* a centimetre in the scene's unit                 */
  double c, s;     /* of the way in front, rising: s over 0            */
  double foot;     /* where the slope begins, cm                       */
} View;

/* A place along the slope and over it, as it stands in the room. */
static SyPoint
on_slope (const View *view, double along, double over)
{
  return (SyPoint) { view->foot + along * view->c - over * view->s, along * view->s + over * view->c };
}

static SyMark *
put (View *view, SyMarkType type, SyRole role, int n, const SyPoint *points)
{
  SyMark *mark = sy_scene_add (view->scene, type, role);

  for (int i = 0; i < n && mark != NULL; i++)
    {
      mark->points[mark->n_points++] = (SyPoint) { points[i].x * view->cm, points[i].y * view->cm };
      sy_scene_include (view->scene, points[i].x * view->cm, points[i].y * view->cm);
    }
  return mark;
}

static void
line (View *view, SyRole role, SyPoint from, SyPoint to)
{
  put (view, SY_MARK_LINE, role, 2, (const SyPoint[]) { from, to });
}

static void
box (View *view, SyRole role, double from, double to, double low, double high)
{
  put (view, SY_MARK_POLYGON, role, 4,
       (const SyPoint[]) { on_slope (view, from, low), on_slope (view, to, low), on_slope (view, to, high),
                           on_slope (view, from, high) });
}

static void
wheel (View *view, double along, double radius)
{
  SyPoint at = on_slope (view, along, radius);
  SyMark *mark = put (view, SY_MARK_CIRCLE, SY_ROLE_OUTLINE, 1, &at);

  if (mark != NULL)
    mark->radius = radius * view->cm;
}

static void
say (View *view, SyMark *mark, const char *symbol, double value, int decimals, SyKind kind, const char *fact)
{
  if (mark == NULL)
    return;
  SyText text = { mark->text, sizeof mark->text, 0 };

  sy_text_add (&text, symbol);
  if (kind == SY_KIND_SLOPE)
    {
      sy_text_add_rounded (&text, value, decimals);
      sy_text_add (&text, "\302\260");
    }
  else
    sy_text_add_measure (&text, value, decimals, kind, view->scene->units);
  mark->fact = fact;
}

/* Draws cart or die. Return value: how high over the slope the load reaches. */
static double
put_load (View *view, const SyPushPicture *picture)
{
  double hands = picture->handle_height / view->cm, low, radius;

  if (!picture->wheels)
    {
      /* the die is on its bolster with its middle about the hands */
      low = fmax (10, hands - LOAD_HEIGHT / 2);
      box (view, SY_ROLE_SUPPORT, -5, SLOPE_LENGTH - 15, low - 8, low);
      line (view, SY_ROLE_SUPPORT, on_slope (view, 10, low - 8), (SyPoint) { on_slope (view, 10, low - 8).x, 0 });
      box (view, SY_ROLE_ORIGIN, 2, LOAD_LENGTH - 20, low, low + LOAD_HEIGHT);
      return low + LOAD_HEIGHT;
    }
  radius = isnan (picture->wheel_diameter)
             ? 7.5
             : sy_unit_convert (SY_KIND_LENGTH, picture->wheel_diameter, view->scene->units, SY_UNITS_METRIC) / 20;
  radius = fmin (25, fmax (2, radius));
  low = 2 * radius + 2;
  wheel (view, 22, radius);
  wheel (view, LOAD_LENGTH - 12, radius);
  box (view, SY_ROLE_OUTLINE, 2, LOAD_LENGTH, low, low + 7);
  box (view, SY_ROLE_ORIGIN, 18, LOAD_LENGTH - 10, low + 7, low + 7 + LOAD_HEIGHT);
  /* the handle: from the deck up to the hands */
  line (view, SY_ROLE_OUTLINE, on_slope (view, 4, low + 7), (SyPoint) { REACH, hands });
  return low + 7 + LOAD_HEIGHT;
}

typedef struct
{
  const char *symbol, *fact;
  double force;
  const char *part; /* end of the ids of the limits that are about it */
} Arrow;

static bool
governs (const char *governing, const char *part)
{
  size_t length = strlen (governing), tail = strlen (part);

  return length > tail && strcmp (governing + length - tail, part) == 0;
}

static void
put_forces (View *view, const SyPushPicture *picture, double top)
{
  const SyPushNeeds *needs = &picture->push->needs;
  const Arrow arrows[] = { { "Fi ", "initial", needs->initial, "-start" },
                           { "Fs ", "sustained", needs->sustained, "-moving" },
                           { "Fh ", NULL, needs->hold, "-hold" },
                           { "Fb ", NULL, needs->stop, "-stop" } };
  const char *name = picture->governing ? picture->governing : "";
  bool pulls = picture->push->task.way == SY_WAY_PULL;
  double most = 0;

  for (size_t i = 0; i < SY_LEN (arrows); i++)
    most = fmax (most, arrows[i].force);
  if (!(most > 0))
    return;
  for (size_t i = 0; i < SY_LEN (arrows); i++)
    {
      double length = arrows[i].force / most * LONGEST_ARROW, over = top + LANE * (double) (SY_LEN (arrows) - i);

      if (!(arrows[i].force > 0))
        continue;
      /* Pushed, the way goes to the right; pulled, to the left. A slope is held against its fall. */
      double from = pulls ? LOAD_LENGTH : 10, to = pulls ? from - length : from + length;
      SyMark *mark = put (view, SY_MARK_ARROW, SY_ROLE_TENSION, 2,
                          (const SyPoint[]) { on_slope (view, from, over), on_slope (view, to, over) });
      if (mark != NULL)
        mark->governing = governs (name, arrows[i].part);
      SyPoint beside = on_slope (view, LOAD_LENGTH + 8, over - 3);
      say (view, put (view, SY_MARK_TEXT, SY_ROLE_MEASURE, 1, &beside), arrows[i].symbol, arrows[i].force, 0,
           SY_KIND_HAND_FORCE, picture->wheels ? arrows[i].fact : NULL);
    }
  view->scene->force_length = LONGEST_ARROW * view->cm;
  SyText text = { view->scene->force_text, sizeof view->scene->force_text, 0 };
  sy_text_add_measure (&text, most, 0, SY_KIND_HAND_FORCE, view->scene->units);
}

void
sy_push_scene_side (SyScene *scene, const SyPushPicture *picture)
{
  /* Pushed, it goes away from whoever stands there; pulled, towards them. Steeper than this is not drawn. */
  bool away = picture->push->task.way == SY_WAY_PUSH;
  double slope = fmin (picture->slope_deg, 35), rises = away != picture->downhill ? 1 : -1;
  View view = { .scene = scene, .cm = scene->units == SY_UNITS_US ? 1 / SY_CM_PER_IN : 1, .c = cos (slope * RADIAN),
                .s = rises * sin (slope * RADIAN), .foot = REACH + 6 };
  double hands = picture->handle_height / view.cm;
  SyPoint far = on_slope (&view, SLOPE_LENGTH, 0);

  line (&view, SY_ROLE_FLOOR, (SyPoint) { -95, 0 }, (SyPoint) { picture->wheels ? view.foot : far.x, 0 });
  if (picture->wheels)
    line (&view, SY_ROLE_FLOOR, (SyPoint) { view.foot, 0 }, far);
  sy_lift_scene_figure (scene, 0, REACH * view.cm, picture->handle_height);
  double top = put_load (&view, picture);
  put_forces (&view, picture, fmax (fmax (top + LANE / 2, hands), 60));

  if (slope > 0 && picture->wheels)
    line (&view, SY_ROLE_THIN, (SyPoint) { view.foot, 0 }, (SyPoint) { far.x + 10, 0 });
  if (slope > 0 && slope < SHALLOW_DEG && picture->wheels)
    {
      /* between two lines so close there is no room for words */
      SyPoint under = { far.x - 22, fmin (far.y, 0) - 9 };

      say (&view, put (&view, SY_MARK_TEXT, SY_ROLE_MEASURE, 1, &under), "s ", picture->slope_deg, 1, SY_KIND_SLOPE,
           picture->slope_fact);
    }
  else if (slope > 0 && picture->wheels)
    {
      say (&view,
           put (&view, SY_MARK_ANGLE, SY_ROLE_MEASURE, 3,
                (const SyPoint[]) { { view.foot, 0 }, { view.foot + SLOPE_LENGTH * 0.9, 0 },
                                    on_slope (&view, SLOPE_LENGTH * 0.9, 0) }),
           "s ", picture->slope_deg, 1, SY_KIND_SLOPE, picture->slope_fact);
    }
  if (!isnan (picture->mass))
    {
      SyPoint at = on_slope (&view, 45, top + 8);
      say (&view, put (&view, SY_MARK_TEXT, SY_ROLE_MEASURE, 1, &at), "m ", picture->mass, 0, SY_KIND_MASS,
           picture->mass_fact);
    }
  line (&view, SY_ROLE_THIN, (SyPoint) { REACH, hands }, (SyPoint) { -84, hands });
  say (&view, put (&view, SY_MARK_DIMENSION, SY_ROLE_MEASURE, 2, (const SyPoint[]) { { -80, 0 }, { -80, hands } }),
       "h ", picture->handle_height, 1, SY_KIND_REACH, "handle_height");
  sy_scene_include (scene, -100 * view.cm, -LANE * view.cm);
  sy_scene_include (scene, (far.x + 30) * view.cm, fmax (STATURE, far.y) * view.cm);
}
