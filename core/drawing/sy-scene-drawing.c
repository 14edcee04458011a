/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-scene-canvas.h"

#define PI 3.14159265358979323846
#define EDGE 8.0 /* free around the scene */

SyPoint
sy_scene_on_sheet (const SySceneCanvas *view, SyPoint world)
{
  return (SyPoint) { view->left + view->scale * world.x, view->bottom - view->scale * world.y };
}

void
sy_scene_take (SySceneCanvas *view, const SySceneBox *box)
{
  SySceneBox *taken = &view->taken[view->n_taken];

  if (view->n_taken >= SY_SCENE_BOXES_MAX)
    return;
  *taken = *box;
  taken->c = cos (box->angle);
  taken->s = sin (box->angle);
  view->n_taken++;
}

void
sy_scene_arrow_head (cairo_t *cr, SyPoint tip, double angle, double length)
{
  double half = length / 6;

  cairo_save (cr);
  cairo_translate (cr, tip.x, tip.y);
  cairo_rotate (cr, angle);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, -length, -half);
  cairo_line_to (cr, -length, half);
  cairo_close_path (cr);
  cairo_fill (cr);
  cairo_restore (cr);
}

/* ---- lines ---- */

static void
use_line (SySceneCanvas *view, const SyMark *mark)
{
  static const double chain[] = { 14, 3, 2.5, 3 }, dashed[] = { 5, 3 };
  cairo_t *cr = view->cr;
  double width = 0.8;

  cairo_set_dash (cr, NULL, 0, 0);
  sy_palette_use (cr, &view->palette->ink, 1);
  switch (mark->role)
    {
    case SY_ROLE_OUTLINE:
    case SY_ROLE_FLOOR:
    case SY_ROLE_ORIGIN:
      width = 2.0;
      break;
    case SY_ROLE_DESTINATION:
    case SY_ROLE_SUPPORT:
      width = 1.5;
      break;
    case SY_ROLE_BODY:
      width = 1.1;
      break;
    case SY_ROLE_LEG:
      width = 1.3;
      break;
    case SY_ROLE_TENSION:
      width = mark->governing ? 3.2 : 2.2;
      break;
    case SY_ROLE_PATH:
      width = 1.3;
      cairo_set_dash (cr, dashed, 2, 0);
      break;
    case SY_ROLE_CENTRE:
    case SY_ROLE_POINTS:
      cairo_set_dash (cr, chain, 4, 0);
      break;
    case SY_ROLE_HIDDEN:
    case SY_ROLE_POCKET:
    case SY_ROLE_SLACK:
    case SY_ROLE_SECTION:
      cairo_set_dash (cr, dashed, 2, 0);
      break;
    case SY_ROLE_GOVERNING:
      width = 2.4;
      break;
    case SY_ROLE_FIGURE:
    case SY_ROLE_THIN:
    case SY_ROLE_MEASURE:
    case SY_ROLE_POINT:
    case SY_ROLE_GRAVITY:
    case SY_ROLE_HOOK:
      break;
    }
  if (mark->governing)
    width = fmax (width, 2.4);
  cairo_set_line_width (cr, width * view->weight);
}

static void
trace_points (SySceneCanvas *view, const SyMark *mark)
{
  for (int i = 0; i < mark->n_points; i++)
    {
      SyPoint at = sy_scene_on_sheet (view, mark->points[i]);

      if (i == 0)
        cairo_move_to (view->cr, at.x, at.y);
      else
        cairo_line_to (view->cr, at.x, at.y);
    }
}

static void
fill_by_role (SySceneCanvas *view, const SyMark *mark, bool small)
{
  SyColour tone = view->palette->paper;
  double alpha = 1;

  switch (mark->role)
    {
    case SY_ROLE_ORIGIN: /* the hands are solid; what they hold is toned, so that they stay visible
                          */
      tone = sy_colour_tone (view->palette, small ? 1 : 0.22);
      break;
    case SY_ROLE_GOVERNING:
      tone = view->palette->ink;
      break;
    case SY_ROLE_SUPPORT:
      tone = sy_colour_tone (view->palette, 0.1);
      break;
    case SY_ROLE_OUTLINE:
    case SY_ROLE_DESTINATION:
    case SY_ROLE_FIGURE:
      break;
    case SY_ROLE_BODY: /* one body is seen through another */
      tone = view->palette->ink;
      alpha = 0.07;
      break;
    case SY_ROLE_POINTS:
      tone = view->palette->ink;
      alpha = 0.04;
      break;
    case SY_ROLE_POCKET:
    case SY_ROLE_POINT:
    case SY_ROLE_GRAVITY:
    case SY_ROLE_LEG:
    case SY_ROLE_SLACK:
    case SY_ROLE_TENSION:
    case SY_ROLE_HOOK:
    case SY_ROLE_SECTION:
    case SY_ROLE_THIN:
    case SY_ROLE_CENTRE:
    case SY_ROLE_HIDDEN:
    case SY_ROLE_FLOOR:
    case SY_ROLE_PATH:
    case SY_ROLE_MEASURE:
      return;
    }
  sy_palette_use (view->cr, &tone, alpha);
  cairo_fill_preserve (view->cr);
}

static void
draw_area (SySceneCanvas *view, const SyMark *mark)
{
  if (mark->type == SY_MARK_CIRCLE)
    {
      SyPoint at = sy_scene_on_sheet (view, mark->points[0]);

      cairo_new_sub_path (view->cr);
      cairo_arc (view->cr, at.x, at.y, mark->radius * view->scale, 0, 2 * PI);
    }
  else
    {
      trace_points (view, mark);
      cairo_close_path (view->cr);
    }
  fill_by_role (view, mark, mark->type == SY_MARK_CIRCLE);
  use_line (view, mark);
  cairo_stroke (view->cr);
}

static void
draw_arrow (SySceneCanvas *view, const SyMark *mark)
{
  SyPoint from = sy_scene_on_sheet (view, mark->points[0]);
  SyPoint to = sy_scene_on_sheet (view, mark->points[1]);
  double length = hypot (to.x - from.x, to.y - from.y),
         angle = atan2 (to.y - from.y, to.x - from.x);
  double head = fmin (SY_SCENE_ARROW * (mark->role == SY_ROLE_TENSION ? 1.8 : 1.3) * view->weight, length);

  if (!(length > 0))
    return;
  use_line (view, mark);
  cairo_move_to (view->cr, from.x, from.y);
  cairo_line_to (view->cr, to.x - head * 0.8 * cos (angle), to.y - head * 0.8 * sin (angle));
  cairo_stroke (view->cr);
  cairo_set_dash (view->cr, NULL, 0, 0);
  sy_scene_arrow_head (view->cr, to, angle, head);
}

/* ---- the figure: limbs that follow one another make one outline ---- */

static bool
is_limb (const SyMark *mark)
{
  return mark->type == SY_MARK_POLYLINE && mark->role == SY_ROLE_FIGURE && mark->radius > 0;
}

static void
stroke_limb (SySceneCanvas *view, const SyMark *mark, double more, const SyColour *colour)
{
  trace_points (view, mark);
  sy_palette_use (view->cr, colour, 1);
  cairo_set_dash (view->cr, NULL, 0, 0);
  cairo_set_line_cap (view->cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (view->cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (view->cr, 2 * mark->radius * view->scale + more);
  cairo_stroke (view->cr);
  cairo_set_line_cap (view->cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (view->cr, CAIRO_LINE_JOIN_MITER);
}

/* Returns the mark after the last limb. */
static int
draw_limbs (SySceneCanvas *view, int first)
{
  const SyScene *scene = view->scene;
  SyColour edge = sy_colour_tone (view->palette, 0.5), body = sy_colour_tone (view->palette, 0.1);
  int end = first;

  while (end < scene->count && is_limb (&scene->marks[end]))
    end++;
  for (int i = first; i < end; i++)
    stroke_limb (view, &scene->marks[i], 0.9 * view->weight, &edge);
  for (int i = first; i < end; i++)
    stroke_limb (view, &scene->marks[i], -0.9 * view->weight, &body);
  return end;
}

static void
draw_figure_circle (SySceneCanvas *view, const SyMark *mark)
{
  SyPoint at = sy_scene_on_sheet (view, mark->points[0]);
  SyColour edge = sy_colour_tone (view->palette, 0.5), body = sy_colour_tone (view->palette, 0.1);

  cairo_new_sub_path (view->cr);
  cairo_arc (view->cr, at.x, at.y, mark->radius * view->scale, 0, 2 * PI);
  sy_palette_use (view->cr, &body, 1);
  cairo_fill_preserve (view->cr);
  sy_palette_use (view->cr, &edge, 1);
  cairo_set_dash (view->cr, NULL, 0, 0);
  cairo_set_line_width (view->cr, 0.9 * view->weight);
  cairo_stroke (view->cr);
}

/* ---- the whole ---- */

static bool
has_points (const SyMark *mark)
{
  static const int needed[] = {
    [SY_MARK_LINE] = 2, [SY_MARK_POLYLINE] = 2,  [SY_MARK_POLYGON] = 3, [SY_MARK_CIRCLE] = 1,
    [SY_MARK_DIMENSION] = 2, [SY_MARK_ANGLE] = 3, [SY_MARK_ARROW] = 2, [SY_MARK_TEXT] = 1, [SY_MARK_SIGN] = 1,
  };

  return mark->n_points >= needed[mark->type];
}

static void
draw_mark (SySceneCanvas *view, const SyMark *mark)
{
  switch (mark->type)
    {
    case SY_MARK_LINE:
    case SY_MARK_POLYLINE:
      if (mark->type == SY_MARK_LINE && mark->role == SY_ROLE_FLOOR)
        {
          sy_scene_draw_floor (view, mark);
          break;
        }
      trace_points (view, mark);
      use_line (view, mark);
      cairo_stroke (view->cr);
      break;
    case SY_MARK_POLYGON:
      draw_area (view, mark);
      break;
    case SY_MARK_CIRCLE:
      if (mark->role == SY_ROLE_FIGURE)
        draw_figure_circle (view, mark);
      else
        draw_area (view, mark);
      break;
    case SY_MARK_DIMENSION:
      sy_scene_draw_dimension (view, mark);
      break;
    case SY_MARK_ANGLE:
      sy_scene_draw_angle (view, mark);
      break;
    case SY_MARK_ARROW:
      draw_arrow (view, mark);
      break;
    case SY_MARK_SIGN:
      sy_scene_draw_sign (view, mark);
      break;
    case SY_MARK_TEXT:
      break; /* with the labels, after all lines */
    }
  cairo_set_dash (view->cr, NULL, 0, 0);
}

/* The rectangle about a polygon that lies along its first side. */
static SySceneBox
box_about (SySceneCanvas *view, const SyMark *mark)
{
  SyPoint first = sy_scene_on_sheet (view, mark->points[0]);
  SyPoint second = sy_scene_on_sheet (view, mark->points[1]);
  double angle = atan2 (second.y - first.y, second.x - first.x);
  double c = cos (angle), s = sin (angle), u0 = 0, u1 = 0, v0 = 0, v1 = 0;

  for (int i = 1; i < mark->n_points; i++)
    {
      SyPoint at = sy_scene_on_sheet (view, mark->points[i]);
      double u = (at.x - first.x) * c + (at.y - first.y) * s;
      double v = (at.y - first.y) * c - (at.x - first.x) * s;

      u0 = fmin (u0, u);
      u1 = fmax (u1, u);
      v0 = fmin (v0, v);
      v1 = fmax (v1, v);
    }

  double u = (u0 + u1) / 2, v = (v0 + v1) / 2;

  return (SySceneBox) { .middle = { first.x + u * c - v * s, first.y + u * s + v * c },
                        .half_width = (u1 - u0) / 2, .half_height = (v1 - v0) / 2,
                        .angle = angle, .weight = 0.35 };
}

/* Legs and pulls, end to end. */
static void
take_line (SySceneCanvas *view, const SyMark *mark, double weight)
{
  SyPoint a = sy_scene_on_sheet (view, mark->points[0]), b = sy_scene_on_sheet (view, mark->points[1]);

  sy_scene_take (view, &(SySceneBox) { .middle = { (a.x + b.x) / 2, (a.y + b.y) / 2 },
                                       .half_width = hypot (b.x - a.x, b.y - a.y) / 2, .half_height = 3,
                                       .angle = atan2 (b.y - a.y, b.x - a.x), .weight = weight });
}

static void
take_sign (SySceneCanvas *view, const SyMark *mark)
{
  double radius = sy_scene_sign_radius (view, mark);
  SyPoint at = sy_scene_on_sheet (view, mark->points[0]);

  sy_scene_take (view, &(SySceneBox) { .middle = at, .half_width = radius, .half_height = radius, .weight = 1,
                                       .owner = mark });
  if (mark->role == SY_ROLE_HOOK)
    sy_scene_take (view, &(SySceneBox) { .middle = { at.x, at.y - 2 * radius }, .half_width = radius,
                                         .half_height = radius, .weight = 1 });
}

/* Text keeps off the hands, the loads and the head, off legs and signs, and off the lines of other dimensions. */
static void
take_solids (SySceneCanvas *view)
{
  for (int i = 0; i < view->scene->count; i++)
    {
      const SyMark *mark = &view->scene->marks[i];

      if (!has_points (mark))
        continue;
      if (mark->type == SY_MARK_DIMENSION || mark->type == SY_MARK_ANGLE)
        sy_scene_take_dimension (view, mark);
      else if (mark->type == SY_MARK_SIGN)
        take_sign (view, mark);
      else if (mark->role == SY_ROLE_LEG || mark->role == SY_ROLE_SLACK || mark->role == SY_ROLE_TENSION)
        take_line (view, mark, mark->role == SY_ROLE_TENSION ? 0.5 : 0.3);
      else if (mark->role == SY_ROLE_BODY || mark->role == SY_ROLE_POCKET || mark->role == SY_ROLE_POINTS
               || mark->role == SY_ROLE_SECTION)
        continue; /* may be written on */
      else if (mark->type == SY_MARK_POLYGON)
        {
          SySceneBox box = box_about (view, mark);

          sy_scene_take (view, &box);
        }
      else if (mark->type == SY_MARK_CIRCLE)
        {
          double radius = mark->radius * view->scale;
          double weight
              = mark->role == SY_ROLE_FIGURE ? 0.15 : 0.6; /* the figure may be written on */

          sy_scene_take (view, &(SySceneBox) { .middle = sy_scene_on_sheet (view, mark->points[0]),
                                               .half_width = radius, .half_height = radius,
                                               .weight = weight });
        }
    }
}

static bool
begin_view (SySceneCanvas *view, cairo_t *cr, double width, double height, const SyScene *scene,
            const SyPalette *palette, const char *font)
{
  SyTextSize text = sy_text_measure (cr, "0", font, false);

  *view = (SySceneCanvas) { .cr = cr, .scene = scene, .palette = palette, .font = font,
                          .width = width, .height = height };
  view->text_height = text.ascent + text.descent;
  view->weight = fmin (1.25, fmax (0.8, fmin (width, height) / 320));

  double foot = sy_scene_scale_strip (view);
  double wide = scene->x1 - scene->x0, high = scene->y1 - scene->y0;
  double room_x = width - 2 * EDGE, room_y = height - EDGE - foot - 4;

  if (!(wide > 0) || !(high > 0) || !isfinite (wide) || !isfinite (high) || room_x <= 0
      || room_y <= 0)
    return false;
  view->scale = fmin (room_x / wide, room_y / high);
  view->left = EDGE + (room_x - view->scale * wide) / 2 - view->scale * scene->x0;
  view->bottom = EDGE + (room_y + view->scale * high) / 2 + view->scale * scene->y0;
  sy_scene_take (view, &(SySceneBox) { .middle = { 0.12 * width + 35, height - foot / 2 },
                                       .half_width = 0.12 * width + 35, .half_height = foot / 2,
                                       .weight = 1 });
  return true;
}

SySceneFit
sy_drawing_scene_fit (cairo_t *cr, double width, double height, const SyScene *scene, const char *font)
{
  SySceneCanvas view;

  if (!begin_view (&view, cr, width, height, scene, NULL, font))
    return (SySceneFit) { 0, 0, 0 };
  return (SySceneFit) { view.scale, view.left, view.bottom };
}

int
sy_drawing_scene_handle_at (const SyScene *scene, const SySceneFit *fit, double x, double y)
{
  double nearest = SY_SCENE_GRIP;
  int found = -1;

  for (int i = 0; i < scene->count; i++)
    {
      const SyMark *mark = &scene->marks[i];
      double away;

      if (mark->handle.fact == NULL || mark->n_points < 1)
        continue;
      away = hypot (fit->left + fit->scale * mark->points[0].x - x, fit->bottom - fit->scale * mark->points[0].y - y);
      if (away <= nearest)
        {
          nearest = away;
          found = i;
        }
    }
  return found;
}

void
sy_drawing_scene (cairo_t *cr, double width, double height, const SyScene *scene,
                  const SyPalette *palette, const char *font)
{
  SySceneCanvas view;

  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  if (!begin_view (&view, cr, width, height, scene, palette, font))
    {
      sy_palette_use (cr, &palette->paper, 1);
      cairo_paint (cr);
      cairo_restore (cr);
      return;
    }

  sy_scene_draw_paper (&view);
  for (int i = 0; i < scene->count;)
    if (is_limb (&scene->marks[i]))
      i = draw_limbs (&view, i);
    else
      {
        if (has_points (&scene->marks[i]))
          draw_mark (&view, &scene->marks[i]);
        i++;
      }

  /* Labels last, over every line; those that have room on their own line take it first. */
  take_solids (&view);
  for (int pass = 0; pass < 2; pass++)
    for (int i = 0; i < scene->count; i++)
      if (has_points (&scene->marks[i]) && scene->marks[i].text[0]
          && sy_scene_label_fits (&view, &scene->marks[i]) == (pass == 0))
        sy_scene_draw_label (&view, &scene->marks[i]);
  sy_scene_draw_scale (&view);
  cairo_restore (cr);
}
