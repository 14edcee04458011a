/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-scene-canvas.h"

/* The largest of 1, 2, 5 times a power of ten that is at most @limit. */
static double
round_length (double limit)
{
  double power = pow (10, floor (log10 (limit)));
  double lead = limit / power;

  return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
}

static void
draw_grid_lines (SySceneCanvas *view, double step, double alpha)
{
  cairo_t *cr = view->cr;

  sy_palette_use (cr, &view->palette->hairline, alpha);
  cairo_set_line_width (cr, 0.6);
  for (double x = view->left + ceil (-view->left / step) * step; x < view->width; x += step)
    {
      cairo_move_to (cr, x, 0);
      cairo_line_to (cr, x, view->height);
    }
  for (double y = view->bottom + ceil (-view->bottom / step) * step; y < view->height; y += step)
    {
      cairo_move_to (cr, 0, y);
      cairo_line_to (cr, view->width, y);
    }
  cairo_stroke (cr);
}

/* Notebook paper, ruled in round measures from the scene's own zero. */
void
sy_scene_draw_paper (SySceneCanvas *view)
{
  double fine = round_length (20 / view->scale) * view->scale;
  double lead = fine / view->scale / pow (10, floor (log10 (fine / view->scale) + 1e-9));

  sy_palette_use (view->cr, &view->palette->paper, 1);
  cairo_paint (view->cr);
  draw_grid_lines (view, fine, 0.35);
  draw_grid_lines (view, fine * (lead > 4.5 && lead < 5.5 ? 2 : lead > 1.5 ? 5 : 10), 0.5);
}

void
sy_scene_draw_floor (SySceneCanvas *view, const SyMark *mark)
{
  cairo_t *cr = view->cr;
  SyPoint from = sy_scene_on_sheet (view, mark->points[0]);
  SyPoint to = sy_scene_on_sheet (view, mark->points[1]);
  double deep = 7 * view->weight, apart = 6 * view->weight;
  double length = hypot (to.x - from.x, to.y - from.y);

  cairo_save (cr);
  sy_palette_use (cr, &view->palette->ink, 1);
  cairo_translate (cr, from.x, from.y);
  cairo_rotate (cr, atan2 (to.y - from.y, to.x - from.x));
  cairo_set_line_width (cr, 2 * view->weight);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, length, 0);
  cairo_stroke (cr);

  cairo_rectangle (cr, 0, 0, length, deep);
  cairo_clip (cr);
  cairo_set_line_width (cr, 0.6);
  for (double x = 0; x < length + deep; x += apart)
    {
      cairo_move_to (cr, x, 0);
      cairo_line_to (cr, x - deep, deep);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

double
sy_scene_scale_strip (const SySceneCanvas *view)
{
  return view->text_height + 8;
}

/* The scale of forces: an arrow to the right of the bar of lengths, which ends at @from. */
static void
draw_forces (SySceneCanvas *view, double from, double middle)
{
  cairo_t *cr = view->cr;
  SyTextSize size = sy_text_measure (cr, view->scene->force_text, view->font, false);
  double length = view->scene->force_length * view->scale, x = fmax (from + 14, 0.45 * view->width);

  if (!(length > 0) || !isfinite (length) || x + length + 7 + size.width > view->width - 4)
    return;
  sy_palette_use (cr, &view->palette->paper, 1);
  cairo_rectangle (cr, x - 4, middle - view->text_height / 2 - 1, length + size.width + 15, view->text_height + 2);
  cairo_fill (cr);
  sy_palette_use (cr, &view->palette->ink, 1);
  cairo_set_line_width (cr, 1.3 * view->weight);
  cairo_move_to (cr, x, middle);
  cairo_line_to (cr, x + length - 0.8 * fmin (SY_SCENE_ARROW, length), middle);
  cairo_stroke (cr);
  sy_scene_arrow_head (cr, (SyPoint) { x + length, middle }, 0, fmin (SY_SCENE_ARROW, length));
  sy_text_draw (cr, x + length + 7, middle + (size.ascent - size.descent) / 2, 0, view->scene->force_text, view->font,
                false);
}

/* A bar of a round length in two halves, one filled, and how long it is. */
void
sy_scene_draw_scale (SySceneCanvas *view)
{
  cairo_t *cr = view->cr;
  double length = round_length (fmin (0.24 * view->width, 150) / view->scale);
  double half = length / 2 * view->scale, x = 10, thick = 3.5;
  SyTextSize size;
  char number[SY_TEXT_NUMBER_MAX];
  char *text;
  double middle;

  if (view->scene->kind == SY_KIND_RATIO)
    return; /* a diagram has no lengths */
  g_ascii_formatd (number, sizeof number, "%.6g", length);
  text = g_strconcat (number, " ", sy_unit_name (view->scene->kind, view->scene->units), NULL);
  size = sy_text_measure (cr, text, view->font, false);
  middle = view->height - 5 - size.descent - (size.ascent - size.descent) / 2;

  sy_palette_use (cr, &view->palette->paper, 1);
  cairo_rectangle (cr, x - 4, middle - view->text_height / 2 - 1, 2 * half + size.width + 16,
                   view->text_height + 2);
  cairo_fill (cr);
  sy_palette_use (cr, &view->palette->ink, 1);
  cairo_rectangle (cr, x, middle - thick / 2, half, thick);
  cairo_fill (cr);
  cairo_set_line_width (cr, 0.8);
  cairo_rectangle (cr, x + 0.4, middle - thick / 2 + 0.4, 2 * half - 0.8, thick - 0.8);
  cairo_stroke (cr);
  sy_text_draw (cr, x + 2 * half + 7, middle + (size.ascent - size.descent) / 2, 0, text,
                view->font, false);
  g_free (text);
  draw_forces (view, x + 2 * half + 7 + size.width, middle);
}
