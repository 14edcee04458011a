/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-drawing.h"

#define THIN 4.0
#define HEAVY 8.0
#define ARROW 8.0

void
sy_drawing_limit_bar (cairo_t *cr, double width, double height, const SyLimitBar *bar, const SyPalette *palette)
{
  double end = bar->end > 1 ? bar->end : 1, room = width - ARROW, middle = height / 2;
  double thick = bar->governs ? HEAVY : THIN;
  double length = fmax (1, fmin (fmax (bar->part, 0), end) / end * room), goal = floor (room / end) + 0.5;

  if (room <= 0 || isnan (bar->part))
    return;
  sy_palette_use (cr, &palette->hairline, 1);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, 0, middle);
  cairo_line_to (cr, room, middle);
  cairo_stroke (cr);
  sy_palette_use (cr, &palette->ink, 1);
  cairo_rectangle (cr, 0, middle - thick / 2, length, thick);
  if (bar->governs)
    cairo_fill (cr);
  else
    {
      cairo_set_line_width (cr, 1);
      cairo_stroke (cr);
    }
  if (bar->part > end)
    {
      cairo_move_to (cr, room, middle - HEAVY / 2);
      cairo_line_to (cr, width, middle);
      cairo_line_to (cr, room, middle + HEAVY / 2);
      cairo_close_path (cr);
      cairo_fill (cr);
    }
  /* Beside the ink on paper, inside it as a gap: it is read against either. */
  for (int side = 0; side < 2; side++)
    {
      sy_palette_use (cr, side == 0 ? &palette->paper : &palette->ink, 1);
      cairo_set_line_width (cr, side == 0 ? 4 : 1.6);
      cairo_move_to (cr, goal, 0);
      cairo_line_to (cr, goal, height);
      cairo_stroke (cr);
    }
}
