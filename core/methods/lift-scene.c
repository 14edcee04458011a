/* SPDX-License-Identifier: MIT */
#include "lift-scene.h"

#include <math.h>
#include <string.h>

#include "sy-text.h"

/*
 * The figure is there for size only. Its parts are shares of a stature of 170 cm after the body
 * segment lengths of Drillis and Contini 1966 (from memory); widths, and how it bends to reach, are
 * drawn by eye.
 */
#define STATURE 170.0
#define ANKLE (0.039 * STATURE)
#define SHANK (0.246 * STATURE)
#define THIGH (0.245 * STATURE)
#define TRUNK (0.288 * STATURE)
#define UPPER_ARM (0.186 * STATURE)
#define FOREARM (0.200 * STATURE) /* to the grip in the closed hand */
#define HEAD_RADIUS 10.5
#define HEAD_OVER_SHOULDER (STATURE - ANKLE - SHANK - THIGH - TRUNK - HEAD_RADIUS)

#define DEG (3.14159265358979323846 / 180.0)

/* Room between dimension lines, cm: wide enough for a line of text at 1.2 pixels a cm. */
#define LANE 18.0

#define HAND_RADIUS 4.0

/* A scene and the length of a centimetre in its unit. */
typedef struct
{
  SyScene *scene;
  double cm;
  double x; /* what is drawn is moved by so much, cm */
  const char *governing;
} View;

/* ---- marks ---- */

static View
begin_view (SyScene *scene, const char *governing)
{
  View view = {
    .scene = scene,
    .cm = scene->units == SY_UNITS_US ? 1.0 / SY_CM_PER_IN : 1.0,
    .governing = governing ? governing : "",
  };

  return view;
}

/* Points are given in cm throughout this file and put into the scene's unit here. */
static void
put_point (View *view, SyMark *mark, double x, double y)
{
  if (mark->n_points >= SY_MARK_POINTS_MAX)
    return;
  x += view->x;
  mark->points[mark->n_points++] = (SyPoint) { x * view->cm, y * view->cm };
  sy_scene_include (view->scene, x * view->cm, y * view->cm);
}

static SyMark *
put_segment (View *view, SyMarkType type, SyRole role, SyPoint from, SyPoint to)
{
  SyMark *mark = sy_scene_add (view->scene, type, role);

  if (mark)
    {
      put_point (view, mark, from.x, from.y);
      put_point (view, mark, to.x, to.y);
    }
  return mark;
}

static void
put_line (View *view, SyRole role, double x0, double y0, double x1, double y1)
{
  put_segment (view, SY_MARK_LINE, role, (SyPoint) { x0, y0 }, (SyPoint) { x1, y1 });
}

static void
put_circle (View *view, SyRole role, SyPoint centre, double radius)
{
  SyMark *mark = sy_scene_add (view->scene, SY_MARK_CIRCLE, role);

  if (!mark)
    return;
  put_point (view, mark, centre.x, centre.y);
  mark->radius = radius * view->cm;
  centre.x += view->x;
  sy_scene_include (view->scene, (centre.x - radius) * view->cm, (centre.y - radius) * view->cm);
  sy_scene_include (view->scene, (centre.x + radius) * view->cm, (centre.y + radius) * view->cm);
}

/* A part of the figure: a line with round ends, @radius thick to either side. */
static void
put_limb (View *view, double radius, int n, const SyPoint *points)
{
  SyMark *mark = sy_scene_add (view->scene, SY_MARK_POLYLINE, SY_ROLE_FIGURE);

  if (!mark)
    return;
  mark->radius = radius * view->cm;
  for (int i = 0; i < n; i++)
    {
      put_point (view, mark, points[i].x, points[i].y);
      double px = points[i].x + view->x;
      sy_scene_include (view->scene, (px - radius) * view->cm, (points[i].y - radius) * view->cm);
      sy_scene_include (view->scene, (px + radius) * view->cm, (points[i].y + radius) * view->cm);
    }
}

/* ---- words of a dimension: no locale, at most one decimal ---- */

static void
add_tenths (SyText *text, double value)
{
  char digits[SY_MARK_TEXT_MAX];
  size_t n = sizeof digits;

  /* Beyond this a double has no tenths left to show; no measured length comes near it. */
  if (!(value >= 0) || value > 1e12)
    {
      sy_text_add (text, value > 0 ? "> 1e12" : "?");
      return;
    }

  unsigned long long tenths = (unsigned long long) floor (value * 10 + 0.5);

  digits[--n] = '\0';
  if (tenths % 10 != 0)
    {
      digits[--n] = (char) ('0' + tenths % 10);
      digits[--n] = '.';
    }
  tenths /= 10;
  do
    {
      digits[--n] = (char) ('0' + tenths % 10);
      tenths /= 10;
    }
  while (tenths > 0);
  sy_text_add (text, digits + n);
}

static void
name_measure (View *view, SyMark *mark, const char *symbol, double value, SyKind kind,
              const char *fact, bool governing)
{
  if (!mark)
    return;

  SyText text = { mark->text, sizeof mark->text, 0 };

  sy_text_add (&text, symbol);
  sy_text_add (&text, " ");
  add_tenths (&text, value);
  if (kind != SY_KIND_ANGLE) /* the degree sign stands close */
    sy_text_add (&text, " ");
  sy_text_add (&text, kind == SY_KIND_ANGLE ? "\302\260" : sy_unit_name (kind, view->scene->units));
  mark->fact = fact;
  mark->governing = governing;
  if (governing)
    mark->role = SY_ROLE_GOVERNING;
}

static bool
governs (const View *view, const char *end, const char *factor)
{
  size_t length = strlen (end);

  return strncmp (view->governing, end, length) == 0 && view->governing[length] == '.'
         && strcmp (view->governing + length + 1, factor) == 0;
}

static void
put_length (View *view, SyPoint from, SyPoint to, double offset, const char *symbol, double value,
            const char *fact, bool governing)
{
  SyMark *mark = put_segment (view, SY_MARK_DIMENSION, SY_ROLE_MEASURE, from, to);

  if (mark)
    mark->offset = offset * view->cm;
  name_measure (view, mark, symbol, value, SY_KIND_REACH, fact, governing);
}

/* ---- the figure from the side ---- */

typedef struct
{
  SyPoint knee, hip, shoulder, head, elbow, hand;
} Pose;

static double
length_of (double dx, double dy)
{
  return sqrt (dx * dx + dy * dy);
}

static SyPoint
step (SyPoint from, double length, double lean)
{
  return (SyPoint) { from.x + length * sin (lean), from.y + length * cos (lean) };
}

/* @squat 0 to 1 bends the knees, @lean bends the trunk forward (radians). */
static Pose
bend (double squat, double lean)
{
  double back
      = 0.12 * lean; /* the legs go back as the trunk goes forward: it stays over its feet */
  Pose pose;

  pose.knee = step ((SyPoint) { 0, ANKLE }, SHANK, 35 * DEG * squat - back);
  pose.hip = step (pose.knee, THIGH, -78 * DEG * squat - back);
  pose.shoulder = step (pose.hip, TRUNK, lean);
  pose.head = step (pose.shoulder, HEAD_OVER_SHOULDER, 0.75 * lean + 6 * DEG);
  pose.elbow = pose.hand = pose.shoulder;
  return pose;
}

/* The upper and the fore arm to the hand; straight towards it when it is out of reach. */
static void
reach_out (Pose *pose, SyPoint hand)
{
  double dx = hand.x - pose->shoulder.x, dy = hand.y - pose->shoulder.y;
  double distance = length_of (dx, dy), longest = UPPER_ARM + FOREARM;

  if (!(distance < longest))
    {
      pose->elbow = (SyPoint) { pose->shoulder.x + dx / distance * UPPER_ARM,
                                pose->shoulder.y + dy / distance * UPPER_ARM };
      pose->hand = (SyPoint) { pose->shoulder.x + dx / distance * longest,
                               pose->shoulder.y + dy / distance * longest };
      return;
    }

  /* The corner of a triangle with three known sides, on the side towards the back. A hand in the
     shoulder makes none: the arm then stays folded at its least opening. */
  distance = fmax (distance, FOREARM - UPPER_ARM + 1);
  double along = (UPPER_ARM * UPPER_ARM - FOREARM * FOREARM + distance * distance) / (2 * distance);
  double aside = sqrt (fmax (0, UPPER_ARM * UPPER_ARM - along * along));

  pose->elbow = (SyPoint) { pose->shoulder.x + along * dx / distance + aside * dy / distance,
                            pose->shoulder.y + along * dy / distance - aside * dx / distance };
  pose->hand = hand;
}

/* The least bending at which the arms reach the hands' place, or get nearest to it. */
static Pose
pose_for (SyPoint hand)
{
  Pose best = bend (0, 0);
  double best_cost = (double) INFINITY;

  for (int i = 0; i <= 10; i++)
    for (int j = 0; j <= 20; j++)
      {
        double squat = i / 10.0, lean = j * 5 * DEG;
        Pose pose = bend (squat, lean);
        double missing = length_of (hand.x - pose.shoulder.x, hand.y - pose.shoulder.y)
                         - 0.97 * (UPPER_ARM + FOREARM);
        double cost = 0.8 * squat * squat + lean * lean + (missing > 0 ? 10 + missing : 0);

        if (cost < best_cost)
          {
            best_cost = cost;
            best = pose;
          }
      }
  reach_out (&best, hand);
  return best;
}

static void
put_figure_side (View *view, SyPoint hand)
{
  Pose pose = pose_for (hand);
  SyPoint neck = { (pose.shoulder.x + pose.head.x) / 2, (pose.shoulder.y + pose.head.y) / 2 };
  SyPoint ankle = { 0, ANKLE };

  put_limb (view, 2.8, 3, (SyPoint[]) { { -4, 2.8 }, { 2, 3.4 }, { 17, 2.8 } });
  put_limb (view, 4.4, 2, (SyPoint[]) { ankle, pose.knee });
  put_limb (view, 6.4, 2, (SyPoint[]) { pose.knee, pose.hip });
  put_limb (view, 9.0, 2, (SyPoint[]) { pose.hip, pose.shoulder });
  put_limb (view, 4.6, 2, (SyPoint[]) { pose.shoulder, neck });
  put_circle (view, SY_ROLE_FIGURE, pose.head, HEAD_RADIUS);
  put_limb (view, 3.8, 2, (SyPoint[]) { pose.shoulder, pose.elbow });
  put_limb (view, 3.2, 2, (SyPoint[]) { pose.elbow, pose.hand });
}

void
sy_lift_scene_figure (SyScene *scene, double x, double reach, double height)
{
  View view = begin_view (scene, NULL);

  view.x = x / view.cm;
  put_figure_side (&view, (SyPoint) { reach / view.cm, height / view.cm });
}

/* ---- the load: a block of no particular size about the hands, never drawn through the floor
   ---- */

static void
put_load_side (View *view, SyRole role, SyPoint hand)
{
  SyMark *mark = sy_scene_add (view->scene, SY_MARK_POLYGON, role);

  if (mark)
    {
      double bottom = fmax (0, hand.y - 9), top = fmax (hand.y + 7, bottom + 14);

      put_point (view, mark, hand.x - 13, bottom);
      put_point (view, mark, hand.x + 13, bottom);
      put_point (view, mark, hand.x + 13, top);
      put_point (view, mark, hand.x - 13, top);
    }
  put_circle (view, role, hand, HAND_RADIUS);
}

static void
put_load_above (View *view, SyRole role, SyPoint hand, double turn)
{
  static const SyPoint corners[] = { { -17, -10 }, { 17, -10 }, { 17, 10 }, { -17, 10 } };
  SyMark *mark = sy_scene_add (view->scene, SY_MARK_POLYGON, role);

  for (int i = 0; mark && i < 4; i++)
    put_point (view, mark, hand.x + corners[i].x * cos (turn) + corners[i].y * sin (turn),
               hand.y - corners[i].x * sin (turn) + corners[i].y * cos (turn));
  put_circle (view, role, hand, HAND_RADIUS);
}

/* The way of the load, clear of both hands; nothing when they are too close to show one. */
static void
put_path (View *view, SyPoint from, SyPoint to, double clear)
{
  double dx = to.x - from.x, dy = to.y - from.y, length = length_of (dx, dy);

  if (!(length > 2 * clear + 6))
    return;
  dx /= length;
  dy /= length;
  put_segment (view, SY_MARK_ARROW, SY_ROLE_PATH,
               (SyPoint) { from.x + dx * clear, from.y + dy * clear },
               (SyPoint) { to.x - dx * clear, to.y - dy * clear });
}

/* ---- the two views ---- */

static SyPoint
hand_side (const View *view, const SyLiftPosition *at)
{
  return (SyPoint) { at->reach / view->cm, at->height / view->cm };
}

void
sy_lift_scene_side (SyScene *scene, const SyLiftPosition *origin,
                    const SyLiftPosition *destination, double travel, const char *governing)
{
  View view = begin_view (scene, governing);
  SyPoint from = hand_side (&view, origin);
  SyPoint to = destination ? hand_side (&view, destination)
                           : (SyPoint) { from.x, from.y + travel / view.cm };

  /* Dimension lines stand in lanes: reaches below the floor, heights in front of everything. */
  double lane = fmax (fmax (from.x, to.x), 30) + 26;
  double last_lane = lane + (destination ? 2 : 1) * LANE;
  double floor_end = last_lane + 8;
  double reach_lane = -20;

  put_line (&view, SY_ROLE_FLOOR, -50, 0, floor_end, 0);
  sy_scene_include (scene, -50 * view.cm, -8 * view.cm);
  put_figure_side (&view, from);
  put_line (&view, SY_ROLE_CENTRE, 0, reach_lane - (destination ? LANE : 0) - 4, 0, STATURE + 6);

  /* Where the tape was held. */
  put_line (&view, SY_ROLE_THIN, from.x, from.y, from.x, reach_lane - 3);
  put_line (&view, SY_ROLE_THIN, from.x, from.y, last_lane + 3, from.y);
  if (destination)
    put_line (&view, SY_ROLE_THIN, to.x, to.y, to.x, reach_lane - LANE - 3);
  put_line (&view, SY_ROLE_THIN, to.x, to.y, last_lane + 3, to.y);

  put_length (&view, (SyPoint) { 0, reach_lane }, (SyPoint) { from.x, reach_lane }, 0, "H",
              origin->reach, "origin.H", governs (&view, "origin", "HM"));
  put_length (&view, (SyPoint) { lane, 0 }, (SyPoint) { lane, from.y }, 0, "V", origin->height,
              "origin.V", governs (&view, "origin", "VM"));
  if (destination)
    {
      put_length (&view, (SyPoint) { 0, reach_lane - LANE }, (SyPoint) { to.x, reach_lane - LANE },
                  0, "H", destination->reach, "destination.H",
                  governs (&view, "destination", "HM"));
      put_length (&view, (SyPoint) { lane + LANE, 0 }, (SyPoint) { lane + LANE, to.y }, 0, "V",
                  destination->height, "destination.V", governs (&view, "destination", "VM"));
    }
  put_length (&view, (SyPoint) { last_lane, from.y }, (SyPoint) { last_lane, to.y }, 0, "D", travel,
              destination ? "destination.V" : "travel",
              governs (&view, "origin", "DM") || governs (&view, "destination", "DM"));

  if (destination)
    put_load_side (&view, SY_ROLE_DESTINATION, to);
  put_load_side (&view, SY_ROLE_ORIGIN, from);
  put_path (&view, from, to, 6);
}

/* One end from above; @side -1 turns to the left, +1 to the right. */
static void
put_end_above (View *view, const SyLiftPosition *at, double side, double arc, bool is_origin)
{
  double reach = at->reach / view->cm, turn = side * at->twist_deg * DEG;
  SyPoint middle = { 0, 0 }, hand = { reach * sin (turn), reach * cos (turn) };
  const char *end = is_origin ? "origin" : "destination";

  /* Straight ahead the dimension would lie on the sagittal line: it then stands beside the
     figure. */
  double offset = at->twist_deg < 12 ? -side * 38 : 0;

  if (at->twist_deg > 0)
    put_line (view, SY_ROLE_THIN, hand.x, hand.y, (arc + 5) * sin (turn), (arc + 5) * cos (turn));
  put_length (view, middle, hand, offset, "H", at->reach, is_origin ? "origin.H" : "destination.H",
              governs (view, end, "HM"));
  sy_scene_include (view->scene, (hand.x + side * (offset != 0 ? 46 : 22)) * view->cm,
                    hand.y * view->cm);

  SyMark *angle = sy_scene_add (view->scene, SY_MARK_ANGLE, SY_ROLE_MEASURE);

  if (angle)
    {
      put_point (view, angle, 0, 0);
      put_point (view, angle, 0, arc);
      put_point (view, angle, arc * sin (turn), arc * cos (turn));
      for (double a = 0; a < at->twist_deg; a += 15)
        sy_scene_include (view->scene, side * arc * sin (a * DEG) * view->cm,
                          arc * cos (a * DEG) * view->cm);
    }
  name_measure (view, angle, "A", at->twist_deg, SY_KIND_ANGLE,
                is_origin ? "origin.A" : "destination.A", governs (view, end, "AM"));
}

void
sy_lift_scene_above (SyScene *scene, const SyLiftPosition *origin,
                     const SyLiftPosition *destination, double travel, const char *governing)
{
  View view = begin_view (scene, governing);
  double turn = -origin->twist_deg * DEG, reach = origin->reach / view.cm;
  SyPoint hand = { reach * sin (turn), reach * cos (turn) };
  double arc = fmax (reach, destination ? destination->reach / view.cm : 0) + 20;

  (void) travel; /* a height: not to be seen from above */

  for (double side = -1; side <= 1; side += 2)
    put_limb (&view, 4.4, 2, (SyPoint[]) { { side * 9, -5 }, { side * 11, 17 } });
  put_line (&view, SY_ROLE_CENTRE, -38, 0, 38, 0);

  /* Arms only where they can be drawn without passing through the figure. */
  for (double side = -1; side <= 1 && origin->twist_deg <= 90; side += 2)
    put_limb (&view, 3.4, 2,
              (SyPoint[]) { { side * 18, 0 },
                            { hand.x + side * 9 * cos (turn), hand.y - side * 9 * sin (turn) } });
  put_limb (&view, 9.0, 2, (SyPoint[]) { { -18, 0 }, { 18, 0 } });
  put_circle (&view, SY_ROLE_FIGURE, (SyPoint) { 0, 3 }, 9.5);
  put_line (&view, SY_ROLE_CENTRE, 0, -24, 0, arc + 8);

  put_end_above (&view, origin, -1, arc, true);
  if (destination)
    {
      double to_turn = destination->twist_deg * DEG, to_reach = destination->reach / view.cm;
      SyPoint to = { to_reach * sin (to_turn), to_reach * cos (to_turn) };

      put_end_above (&view, destination, 1, arc, false);
      put_load_above (&view, SY_ROLE_DESTINATION, to, to_turn);
      put_load_above (&view, SY_ROLE_ORIGIN, hand, turn);
      put_path (&view, hand, to, 6);
    }
  else
    put_load_above (&view, SY_ROLE_ORIGIN, hand, turn);
  sy_scene_include (scene, -46 * view.cm, -24 * view.cm);
  sy_scene_include (scene, 46 * view.cm, (arc + 14) * view.cm);
}
