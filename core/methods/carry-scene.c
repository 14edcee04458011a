/* SPDX-License-Identifier: MIT */
#include "carry-scene.h"

#include <string.h>

#include "lift-scene.h"
#include "sy-text.h"

/* All sizes in cm, drawn by eye; the way is always drawn as long as this. */
#define WAY 260.0
#define REACH 28.0
#define HALF_WIDTH 17.0
#define HALF_HEIGHT 12.0
#define LANE 24.0

typedef struct
{
  SyScene *scene;
  double cm; /* a centimetre in the scene's unit */
} View;

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
line (View *view, SyRole role, double x0, double y0, double x1, double y1)
{
  put (view, SY_MARK_LINE, role, 2, (const SyPoint[]) { { x0, y0 }, { x1, y1 } });
}

/* The load about the hands, never through the floor. */
static void
put_load (View *view, SyRole role, double x, double y)
{
  double low = y - HALF_HEIGHT < 0 ? 0 : y - HALF_HEIGHT, high = low + 2 * HALF_HEIGHT;

  put (view, SY_MARK_POLYGON, role, 4,
       (const SyPoint[]) { { x - HALF_WIDTH, low }, { x + HALF_WIDTH, low }, { x + HALF_WIDTH, high },
                           { x - HALF_WIDTH, high } });
}

static void
say (View *view, SyMark *mark, const char *symbol, double value, SyKind kind, const char *fact, bool governs)
{
  if (mark == NULL)
    return;
  SyText text = { mark->text, sizeof mark->text, 0 };

  sy_text_add (&text, symbol);
  sy_text_add_measure (&text, value, 1, kind, view->scene->units);
  mark->fact = fact;
  mark->governing = governs;
  if (governs && mark->type == SY_MARK_DIMENSION)
    mark->role = SY_ROLE_GOVERNING;
}

/* Whether what governs is about the way with its pace, or else about the mass. */
static bool
is_of_the_way (const char *governing)
{
  return strncmp (governing, "iso", 3) == 0;
}

void
sy_carry_scene (SyScene *scene, double height, double distance, double mass, const char *governing)
{
  View view = { scene, scene->units == SY_UNITS_US ? 1 / SY_CM_PER_IN : 1 };
  double hands = height / view.cm, end = REACH + WAY, top = hands + HALF_HEIGHT + LANE, cut = REACH + WAY / 2;
  const char *name = governing ? governing : "";
  bool has_governing = *name != '\0';
  SyMark *mark;

  line (&view, SY_ROLE_FLOOR, -50, 0, cut - 6, 0);
  line (&view, SY_ROLE_FLOOR, cut + 6, 0, end + 80, 0);
  /* the way is cut: two short strokes across the floor */
  for (int side = -1; side <= 1; side += 2)
    line (&view, SY_ROLE_THIN, cut + side * 6 - 4, -9, cut + side * 6 + 4, 9);
  sy_lift_scene_figure (scene, 0, REACH * view.cm, height);

  put_load (&view, SY_ROLE_DESTINATION, end, hands);
  put_load (&view, SY_ROLE_ORIGIN, REACH, hands);
  put (&view, SY_MARK_ARROW, SY_ROLE_PATH, 2,
       (const SyPoint[]) { { REACH + HALF_WIDTH + 8, hands }, { end - HALF_WIDTH - 8, hands } });
  mark = put (&view, SY_MARK_TEXT, SY_ROLE_MEASURE, 1, (const SyPoint[]) { { REACH + HALF_WIDTH + 12, hands + 10 } });
  say (&view, mark, "m ", mass, SY_KIND_MASS, "mass", has_governing && !is_of_the_way (name));

  line (&view, SY_ROLE_THIN, REACH, 0, REACH, -LANE - 4);
  line (&view, SY_ROLE_THIN, end, 0, end, -LANE - 4);
  mark = put (&view, SY_MARK_DIMENSION, SY_ROLE_MEASURE, 2, (const SyPoint[]) { { REACH, -LANE }, { end, -LANE } });
  say (&view, mark, "d ", distance, SY_KIND_DISTANCE, "distance", has_governing && is_of_the_way (name));
  line (&view, SY_ROLE_THIN, end + HALF_WIDTH, hands, end + 2 * LANE + 4, hands);
  mark = put (&view, SY_MARK_DIMENSION, SY_ROLE_MEASURE, 2,
              (const SyPoint[]) { { end + 2 * LANE, 0 }, { end + 2 * LANE, hands } });
  say (&view, mark, "V ", height, SY_KIND_REACH, "height", false);
  sy_scene_include (scene, -50 * view.cm, -2 * LANE * view.cm);
  sy_scene_include (scene, (end + 80) * view.cm, top * view.cm);
}
