/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-scene-canvas.h"

/*
 * Dimensions as in ISO 128 and ISO 129-1: thin lines, filled slim arrows, extension lines that
 * start clear of what is measured, text along the line and readable from below or from the right.
 * (Habits, from memory; the standards leave sizes open.)
 */

#define PI 3.14159265358979323846
#define CLEAR 3.0     /* from the point to the extension line            */
#define OVERRUN 4.0   /* of the extension line past the dimension line   */
#define TEXT_PAD 2.5  /* paper around a text                             */

static double
line_width (const SySceneCanvas *view, const SyMark *mark)
{
  return (mark->governing ? 2.2 : 0.8) * view->weight;
}

static double
head_length (const SySceneCanvas *view, const SyMark *mark)
{
  return SY_SCENE_ARROW * view->weight * (mark->governing ? 1.5 : 1);
}

/* A dimension line on the sheet. */
typedef struct
{
  SyPoint from, to, middle;
  double length, angle; /* direction, y down */
  SyPoint along, left;  /* unit vectors      */
} Line;

static Line
place_line (const SySceneCanvas *view, const SyMark *mark)
{
  SyPoint a = sy_scene_on_sheet (view, mark->points[0]),
          b = sy_scene_on_sheet (view, mark->points[1]);
  Line line = { .length = hypot (b.x - a.x, b.y - a.y) };

  line.angle = line.length > 0 ? atan2 (b.y - a.y, b.x - a.x) : 0;
  line.along = (SyPoint) { cos (line.angle), sin (line.angle) };
  line.left = (SyPoint) { line.along.y, -line.along.x };

  double away = mark->offset * view->scale;

  line.from = (SyPoint) { a.x + away * line.left.x, a.y + away * line.left.y };
  line.to = (SyPoint) { b.x + away * line.left.x, b.y + away * line.left.y };
  line.middle = (SyPoint) { (line.from.x + line.to.x) / 2, (line.from.y + line.to.y) / 2 };
  return line;
}

static void
draw_extension (SySceneCanvas *view, SyPoint point, SyPoint on_line)
{
  double length = hypot (on_line.x - point.x, on_line.y - point.y);

  if (length <= CLEAR)
    return;

  double dx = (on_line.x - point.x) / length, dy = (on_line.y - point.y) / length;

  cairo_set_line_width (view->cr, 0.8 * view->weight);
  cairo_move_to (view->cr, point.x + CLEAR * dx, point.y + CLEAR * dy);
  cairo_line_to (view->cr, on_line.x + OVERRUN * dx, on_line.y + OVERRUN * dy);
  cairo_stroke (view->cr);
}

void
sy_scene_draw_dimension (SySceneCanvas *view, const SyMark *mark)
{
  cairo_t *cr = view->cr;
  Line line = place_line (view, mark);
  double head = head_length (view, mark);
  /* Too short for two heads: they point at each other from outside. */
  bool inside = line.length >= 2.4 * head;
  double more = inside ? -0.8 * head : 1.9 * head;

  sy_palette_use (cr, &view->palette->ink, 1);
  draw_extension (view, sy_scene_on_sheet (view, mark->points[0]), line.from);
  draw_extension (view, sy_scene_on_sheet (view, mark->points[1]), line.to);

  cairo_set_line_width (cr, line_width (view, mark));
  if (!(line.length > 0.5))
    {
      /* A measure of nothing: a dot where it was taken. */
      cairo_arc (cr, line.from.x, line.from.y, 1.6 * view->weight, 0, 2 * PI);
      cairo_fill (cr);
      return;
    }
  if (inside)
    {
      cairo_move_to (cr, line.from.x - more * line.along.x, line.from.y - more * line.along.y);
      cairo_line_to (cr, line.to.x + more * line.along.x, line.to.y + more * line.along.y);
    }
  else
    {
      cairo_move_to (cr, line.from.x - more * line.along.x, line.from.y - more * line.along.y);
      cairo_line_to (cr, line.from.x - 0.8 * head * line.along.x,
                     line.from.y - 0.8 * head * line.along.y);
      cairo_move_to (cr, line.to.x + 0.8 * head * line.along.x,
                     line.to.y + 0.8 * head * line.along.y);
      cairo_line_to (cr, line.to.x + more * line.along.x, line.to.y + more * line.along.y);
    }
  cairo_stroke (cr);
  sy_scene_arrow_head (cr, line.from, line.angle + (inside ? PI : 0), head);
  sy_scene_arrow_head (cr, line.to, line.angle + (inside ? 0 : PI), head);
}

/* ---- angles ---- */

typedef struct
{
  SyPoint centre;
  double radius, start, sweep; /* on the sheet, y down; sweep is the shorter way round */
} Arc;

static Arc
place_arc (const SySceneCanvas *view, const SyMark *mark)
{
  SyPoint centre = sy_scene_on_sheet (view, mark->points[0]);
  SyPoint a = sy_scene_on_sheet (view, mark->points[1]),
          b = sy_scene_on_sheet (view, mark->points[2]);
  Arc arc = { .centre = centre, .radius = hypot (a.x - centre.x, a.y - centre.y) };

  arc.start = atan2 (a.y - centre.y, a.x - centre.x);
  arc.sweep = remainder (atan2 (b.y - centre.y, b.x - centre.x) - arc.start, 2 * PI);
  return arc;
}

static SyPoint
arc_point (const Arc *arc, double part, double more)
{
  double angle = arc->start + part * arc->sweep;

  return (SyPoint) { arc->centre.x + (arc->radius + more) * cos (angle),
                     arc->centre.y + (arc->radius + more) * sin (angle) };
}

void
sy_scene_draw_angle (SySceneCanvas *view, const SyMark *mark)
{
  cairo_t *cr = view->cr;
  Arc arc = place_arc (view, mark);
  double head = head_length (view, mark), sign = arc.sweep < 0 ? -1 : 1;
  bool heads = fabs (arc.sweep) * arc.radius >= 2.4 * head;
  double end = arc.start + arc.sweep;

  if (!(fabs (arc.sweep) * arc.radius > 0.5))
    return;
  sy_palette_use (cr, &view->palette->ink, 1);
  cairo_set_line_width (cr, line_width (view, mark));
  cairo_new_sub_path (cr);
  if (arc.sweep < 0)
    cairo_arc_negative (cr, arc.centre.x, arc.centre.y, arc.radius, arc.start, end);
  else
    cairo_arc (cr, arc.centre.x, arc.centre.y, arc.radius, arc.start, end);
  cairo_stroke (cr);
  if (!heads)
    return;

  /* A head lies on the arc at its own middle, not along the tangent at its tip. */
  double bend = head / arc.radius / 2;

  sy_scene_arrow_head (cr, arc_point (&arc, 0, 0), arc.start - sign * (PI / 2 - bend), head);
  sy_scene_arrow_head (cr, arc_point (&arc, 1, 0), end + sign * (PI / 2 - bend), head);
}

/* ---- where a text goes ---- */

typedef struct
{
  SyPoint middle;
  double angle;
} Place;

#define PLACES_MAX 20
typedef struct
{
  int n;
  Place places[PLACES_MAX];
} Places;

static void
offer (Places *places, SyPoint from, SyPoint direction, double distance, double angle)
{
  if (places->n < PLACES_MAX)
    places->places[places->n++]
      = (Place) { { from.x + distance * direction.x, from.y + distance * direction.y }, angle };
}

/* Readable from below, or from the right where it stands upright: never upside down. */
static double
readable (double angle)
{
  while (angle >= PI / 2 - 1e-6)
    angle -= PI;
  while (angle < -PI / 2 - 1e-6)
    angle += PI;
  return angle;
}

static SySceneBox
box_of (const Place *place, double width, double height)
{
  return (SySceneBox) { .middle = place->middle, .half_width = width / 2,
                        .half_height = height / 2, .angle = place->angle, .weight = 1 };
}

/* Half of what the box measures across and down the sheet. */
static SyPoint
reach_of (const SySceneBox *box)
{
  double c = fabs (cos (box->angle)), s = fabs (sin (box->angle));

  return (SyPoint) { c * box->half_width + s * box->half_height,
                     s * box->half_width + c * box->half_height };
}

static bool
covers (const SySceneBox *box, SyPoint at)
{
  double dx = at.x - box->middle.x, dy = at.y - box->middle.y;

  return fabs (dx * box->c + dy * box->s) < box->half_width && fabs (dy * box->c - dx * box->s) < box->half_height;
}

/* Too far apart to have anything in common. */
static bool
are_apart (const SySceneBox *a, const SySceneBox *b)
{
  double reach = a->half_width + a->half_height + b->half_width + b->half_height;

  return fabs (a->middle.x - b->middle.x) > reach || fabs (a->middle.y - b->middle.y) > reach;
}

/* How much of the text is lost at a place: over something taken, or off the drawing. */
static double
loss_of (const SySceneCanvas *view, const SySceneBox *box, const SyMark *mark)
{
  SyPoint reach = reach_of (box);
  double c = cos (box->angle), s = sin (box->angle), loss = 0;

  for (int i = 0; i < view->n_taken; i++)
    for (int u = -6; u <= 6 && view->taken[i].owner != mark && !are_apart (&view->taken[i], box); u++)
      for (int v = -2; v <= 2; v++)
        {
          double x = box->half_width * u / 6, y = box->half_height * v / 2;
          SyPoint at = { box->middle.x + x * c - y * s, box->middle.y + x * s + y * c };

          if (covers (&view->taken[i], at))
            loss += view->taken[i].weight;
        }

  double off = fmax (0, reach.x - box->middle.x) + fmax (0, box->middle.x + reach.x - view->width)
               + fmax (0, reach.y - box->middle.y)
               + fmax (0, box->middle.y + reach.y - view->height);

  return loss + off * 10;
}

/* What is left of a line beside its text and its heads. */
static double
spare_of (const SySceneCanvas *view, const SyMark *mark, double length, double text_width)
{
  return length - text_width - 2 * head_length (view, mark) - 6;
}

static void
offer_dimension (const SySceneCanvas *view, const SyMark *mark, const SyTextSize *size,
                 Places *places)
{
  Line line = place_line (view, mark);
  double height = size->ascent + size->descent, head = head_length (view, mark);
  double angle = readable (line.angle), aside = height / 2 + 2;
  double spare = spare_of (view, mark, line.length, size->width);
  SyPoint right = { -line.left.x, -line.left.y }, back = { -line.along.x, -line.along.y };

  if (!(line.length > 0.5))
    {
      SyPoint east = { 1, 0 }, north = { 0, -1 };

      offer (places, line.from, north, aside + 2, 0);
      offer (places, line.from, east, size->width / 2 + 6, 0);
      offer (places, line.from, north, 2 * aside + 2, 0);
      offer (places, line.from, east, -size->width / 2 - 6, 0);
      return;
    }
  if (spare >= 0)
    {
      offer (places, line.middle, line.along, 0, angle);
      for (int part = 1; part <= 2; part++)
        {
          offer (places, line.middle, line.along, spare / 4 * part, angle);
          offer (places, line.middle, line.along, -spare / 4 * part, angle);
        }
    }
  else
    {
      double past = size->width / 2 + 2.2 * head + 3;

      if (size->width < line.length)
        {
          offer (places, line.middle, line.left, aside, angle);
          offer (places, line.middle, right, aside, angle);
        }
      offer (places, line.to, line.along, past, angle);
    }
  offer (places, line.middle, line.left, aside, angle);
  offer (places, line.middle, right, aside, angle);
  offer (places, line.to, line.left, aside, angle);
  offer (places, line.to, right, aside, angle);
  offer (places, line.to, line.along, size->width / 2 + 6, angle);
  offer (places, line.to, line.along, size->width / 2 + 3 * head, angle);
  /* Behind the point that is measured from a text is easily taken for another's. */
  offer (places, line.from, back, size->width / 2 + (spare >= 0 ? 6 : 2.2 * head + 3), angle);
}

static void
offer_angle (const SySceneCanvas *view, const SyMark *mark, const SyTextSize *size, Places *places)
{
  Arc arc = place_arc (view, mark);
  double height = size->ascent + size->descent;
  double arc_length = fabs (arc.sweep) * arc.radius;
  double spare = spare_of (view, mark, arc_length, size->width);
  SyPoint none = { 0, 0 }, east = { 1, 0 };
  double aside = (fabs (arc.sweep) > 0.01 ? 0 : size->width / 2 + 6);

  if (spare > 0)
    offer (places, arc_point (&arc, 0.5, 0), none, 0, 0);
  if (aside > 0)
    {
      offer (places, arc_point (&arc, 1, -height / 2), east, -aside, 0);
      offer (places, arc_point (&arc, 1, -height / 2), east, aside, 0);
    }
  offer (places, arc_point (&arc, 0.5, height / 2 + 4), none, 0, 0);
  offer (places, arc_point (&arc, 0.5, size->width / 2 + 4), none, 0, 0);
  offer (places, arc_point (&arc, 1, 0), east,
         arc_point (&arc, 1, 0).x < arc.centre.x ? -size->width : size->width, 0);
  offer (places, arc_point (&arc, 0.5, -height), none, 0, 0);
  offer (places, arc_point (&arc, 0.5, 0), none, 0, 0);
}

static void
offer_around (const SySceneCanvas *view, const SyMark *mark, const SyTextSize *size, Places *places)
{
  SyPoint at = sy_scene_on_sheet (view, mark->points[0]);
  double height = size->ascent + size->descent;

  for (double rings = 0; rings < 2; rings++)
    for (int i = 0; i < (rings > 0 ? 8 : 1); i++)
      {
        SyPoint direction = { rings * cos (i * PI / 4) * (size->width / 2 + 8),
                              rings * sin (i * PI / 4) * (height + 2) };

        offer (places, at, direction, 1, 0);
      }
}

/* Beside a sign, upright: to the right first, then round it. */
static void
offer_beside_sign (const SySceneCanvas *view, const SyMark *mark, const SyTextSize *size, Places *places)
{
  static const double round[][2] = { { 1, -1 }, { -1, -1 }, { 1, 1 }, { -1, 1 }, { 1, 0 }, { -1, 0 }, { 0, -1 }, { 0, 1 } };
  SyPoint at = sy_scene_on_sheet (view, mark->points[0]);
  double height = size->ascent + size->descent, clear = sy_scene_sign_radius (view, mark);

  for (int ring = 1; ring <= 2; ring++)
    for (size_t i = 0; i < sizeof round / sizeof round[0]; i++)
      {
        double aside = (size->width / 2 + clear + 5) * round[i][0], up = (height / 2 + clear * 0.7) * round[i][1];

        offer (places, at, (SyPoint) { aside + (ring - 1) * 6 * round[i][0], up * ring }, 1, 0);
      }
}

/* The figure of a pull stands upright beside its arrow, or past its end. */
static void
offer_beside_arrow (const SySceneCanvas *view, const SyMark *mark, const SyTextSize *size, Places *places)
{
  static const double parts[] = { 0.55, 1.0, 0.3, 1.35 };
  SyPoint a = sy_scene_on_sheet (view, mark->points[0]), b = sy_scene_on_sheet (view, mark->points[1]);
  double length = hypot (b.x - a.x, b.y - a.y), height = size->ascent + size->descent;
  SyPoint across = { length > 0 ? (b.y - a.y) / length : 0, length > 0 ? -(b.x - a.x) / length : -1 };
  /* So far from the line that a box that stands upright is clear of it. */
  double aside = fabs (across.x) * size->width / 2 + fabs (across.y) * height / 2 + 5;

  for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
    for (double side = -1; side <= 1; side += 2)
      offer (places, (SyPoint) { a.x + parts[i] * (b.x - a.x), a.y + parts[i] * (b.y - a.y) }, across,
             side * aside * (a.x <= b.x ? 1 : -1), 0);
}

/* An arc is taken piece by piece. */
static void
take_arc (SySceneCanvas *view, const SyMark *mark)
{
  Arc arc = place_arc (view, mark);
  const int pieces = 8;

  for (int i = 0; i < pieces; i++)
    {
      SyPoint a = arc_point (&arc, (double)i / pieces, 0),
              b = arc_point (&arc, (i + 1.0) / pieces, 0);

      sy_scene_take (view, &(SySceneBox) { .middle = { (a.x + b.x) / 2, (a.y + b.y) / 2 },
                                           .half_width = hypot (b.x - a.x, b.y - a.y) / 2,
                                           .half_height = 4, .angle = atan2 (b.y - a.y, b.x - a.x),
                                           .weight = 0.5, .owner = mark });
    }
}

void
sy_scene_take_dimension (SySceneCanvas *view, const SyMark *mark)
{
  if (mark->type == SY_MARK_ANGLE)
    {
      take_arc (view, mark);
      return;
    }

  Line line = place_line (view, mark);

  sy_scene_take (view, &(SySceneBox) { .middle = line.middle, .half_width = line.length / 2,
                                       .half_height = 3, .angle = line.angle, .weight = 0.3,
                                       .owner = mark });
}

bool
sy_scene_label_fits (const SySceneCanvas *view, const SyMark *mark)
{
  SyTextSize size = sy_text_measure (view->cr, mark->text, view->font, mark->governing);

  if (mark->type == SY_MARK_DIMENSION)
    return spare_of (view, mark, place_line (view, mark).length, size.width) >= 0;
  if (mark->type == SY_MARK_ANGLE)
    {
      Arc arc = place_arc (view, mark);

      return spare_of (view, mark, fabs (arc.sweep) * arc.radius, size.width) >= 0;
    }
  return true;
}

void
sy_scene_draw_label (SySceneCanvas *view, const SyMark *mark)
{
  cairo_t *cr = view->cr;
  SyTextSize size = sy_text_measure (cr, mark->text, view->font, mark->governing);
  double width = size.width + 2 * TEXT_PAD, height = size.ascent + size.descent;
  Places places = { 0 };

  if (mark->type == SY_MARK_DIMENSION)
    offer_dimension (view, mark, &size, &places);
  else if (mark->type == SY_MARK_ANGLE)
    offer_angle (view, mark, &size, &places);
  else if (mark->type == SY_MARK_SIGN)
    offer_beside_sign (view, mark, &size, &places);
  else if (mark->type == SY_MARK_ARROW)
    offer_beside_arrow (view, mark, &size, &places);
  else
    offer_around (view, mark, &size, &places);

  Place best = places.places[0];
  double least = (double) INFINITY;

  /* The places are in order of preference: a little covered is better than far away. */
  for (int i = 0; i < places.n; i++)
    {
      SySceneBox box = box_of (&places.places[i], width, height);
      double loss = loss_of (view, &box, mark) + 0.5 * i;

      if (loss < least)
        {
          least = loss;
          best = places.places[i];
        }
    }

  /* Whatever was chosen, it is not cut off at the edge while there is room for it. */
  SySceneBox box = box_of (&best, width, height);
  SyPoint reach = reach_of (&box);

  best.middle.x = fmax (reach.x + 1, fmin (best.middle.x, view->width - reach.x - 1));
  best.middle.y = fmax (reach.y + 1, fmin (best.middle.y, view->height - reach.y - 1));
  box = box_of (&best, width, height);
  sy_scene_take (view, &box);

  cairo_save (cr);
  cairo_translate (cr, best.middle.x, best.middle.y);
  cairo_rotate (cr, best.angle);
  sy_palette_use (cr, &view->palette->paper, 1);
  cairo_rectangle (cr, -width / 2, -height / 2 + 1, width, height - 2);
  cairo_fill (cr);
  sy_palette_use (cr, &view->palette->ink, 1);
  sy_text_draw (cr, 0, (size.ascent - size.descent) / 2, 0.5, mark->text, view->font,
                mark->governing);
  cairo_restore (cr);
}
