/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-drawing.h"

/*
 * The shapes are drawn on a field of 16 units. Horizontal and vertical strokes run through the
 * middle of a unit, so that a square of 16 or 32 pixels shows them crisp.
 */
#define FIELD 16.0
#define PI 3.14159265358979323846

static void
draw_pivot (cairo_t *cr, double apex)
{
  cairo_move_to (cr, 8, apex);
  cairo_line_to (cr, 11, 13.5);
  cairo_line_to (cr, 5, 13.5);
  cairo_close_path (cr);
  cairo_stroke (cr);
}

static void
draw_level (cairo_t *cr)
{
  cairo_set_line_width (cr, 1.0);
  cairo_move_to (cr, 1, 6.5);
  cairo_line_to (cr, 15, 6.5);
  cairo_move_to (cr, 1.5, 4);
  cairo_line_to (cr, 1.5, 9);
  cairo_move_to (cr, 14.5, 4);
  cairo_line_to (cr, 14.5, 9);
  cairo_stroke (cr);
  draw_pivot (cr, 7.5);
}

static void
draw_down (cairo_t *cr)
{
  cairo_set_line_width (cr, 1.6);
  cairo_move_to (cr, 1.6, 10.4);
  cairo_line_to (cr, 14.4, 3.6);
  cairo_stroke (cr);
  cairo_set_line_width (cr, 1.3);
  draw_pivot (cr, 8);
  /* the load that has gone down */
  cairo_rectangle (cr, 0.6, 10.6, 3.5, 3.6);
  cairo_fill (cr);
}

static void
draw_gap (cairo_t *cr)
{
  /* Seven of eight equal parts of the ring, dashed; the gap is up and to the right. */
  static const double dashes[] = { 3.0, 1.32 };

  cairo_set_line_width (cr, 1.4);
  cairo_set_dash (cr, dashes, 2, 0);
  cairo_arc (cr, 8, 8, 5.8, -0.02 * PI, 1.5 * PI);
  cairo_stroke (cr);
}

static void
draw_outside (cairo_t *cr)
{
  /* Side by side, so that the corners stay whole: three dashes and two gaps in 9.7 units. */
  static const double dashes[] = { 2.1, 1.7 };
  double near = 1.5, far = 10, low = 14.5, high = 6, half = 0.6;

  cairo_set_line_width (cr, 2 * half);
  cairo_set_dash (cr, dashes, 2, 0);
  cairo_move_to (cr, near - half, high);
  cairo_line_to (cr, far + half, high);
  cairo_move_to (cr, near - half, low);
  cairo_line_to (cr, far + half, low);
  cairo_move_to (cr, near, high - half);
  cairo_line_to (cr, near, low + half);
  cairo_move_to (cr, far, high - half);
  cairo_line_to (cr, far, low + half);
  cairo_stroke (cr);
  cairo_arc (cr, 13, 3, 2.2, 0, 2 * PI);
  cairo_fill (cr);
}

/* A crane hook: the eye, and a body that is thickest where it carries and thin at the tip. */
static void
draw_hook (cairo_t *cr)
{
  cairo_set_line_width (cr, 1.4);
  cairo_arc (cr, 8.2, 2.7, 1.7, 0, 2 * PI);
  cairo_stroke (cr);

  cairo_move_to (cr, 7.2, 4.2);
  cairo_line_to (cr, 9.2, 4.2);
  cairo_line_to (cr, 9.2, 5.7);
  cairo_curve_to (cr, 11.8, 6.2, 13.4, 8.0, 13.3, 10.3);
  cairo_curve_to (cr, 13.2, 13.3, 10.9, 15.4, 8.0, 15.4);
  cairo_curve_to (cr, 5.0, 15.4, 2.9, 13.4, 2.6, 10.4);
  cairo_line_to (cr, 4.6, 9.4);
  cairo_curve_to (cr, 5.0, 11.4, 6.2, 12.5, 7.9, 12.5);
  cairo_curve_to (cr, 9.4, 12.5, 10.4, 11.5, 10.4, 10.2);
  cairo_curve_to (cr, 10.4, 8.7, 9.3, 7.9, 7.2, 7.6);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_struck (cairo_t *cr, const SyPalette *palette)
{
  draw_hook (cr);
  /* The stroke stands clear of the hook, on a margin of paper. */
  sy_palette_use (cr, &palette->paper, 1);
  cairo_set_line_width (cr, 4.2);
  cairo_move_to (cr, 1.2, 1.8);
  cairo_line_to (cr, 14.6, 15.2);
  cairo_stroke (cr);
  sy_palette_use (cr, &palette->warning, 1);
  cairo_set_line_width (cr, 1.9);
  cairo_move_to (cr, 1.2, 1.8);
  cairo_line_to (cr, 14.6, 15.2);
  cairo_stroke (cr);
}

void
sy_drawing_shape (cairo_t *cr, double size, SyShape shape, const SyPalette *palette)
{
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, size, size);
  cairo_clip (cr);
  cairo_scale (cr, size / FIELD, size / FIELD);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  sy_palette_use (cr, shape == SY_SHAPE_HOOK_STRUCK ? &palette->warning : &palette->ink, 1);
  switch (shape)
    {
    case SY_SHAPE_LEVEL:
      draw_level (cr);
      break;
    case SY_SHAPE_DOWN:
      draw_down (cr);
      break;
    case SY_SHAPE_GAP:
      draw_gap (cr);
      break;
    case SY_SHAPE_OUTSIDE:
      draw_outside (cr);
      break;
    case SY_SHAPE_HOOK:
      draw_hook (cr);
      break;
    case SY_SHAPE_HOOK_STRUCK:
      draw_struck (cr, palette);
      break;
    }
  cairo_restore (cr);
}
