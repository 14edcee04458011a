/* SPDX-License-Identifier: MIT */
#include "sy-quarters.h"

#include <math.h>

#include "sy-drawing-text.h"

#define EDGE 6.0
#define TITLE 20.0  /* of a row: its words                             */
#define FIGURE 15.0 /* free over and under the bars for their figures  */
#define BAR_MOST 40.0
#define BAR_PART 0.6 /* of a column                                    */
#define HATCH 5.0
#define GAP 6.0      /* between two figures                            */

static double
column_width (double width, const SyQuarters *quarters)
{
  return quarters->n_quarters > 0 ? fmax (0, width - 2 * EDGE) / quarters->n_quarters : 0;
}

double
sy_drawing_quarters_place (double width, const SyQuarters *quarters, int quarter)
{
  return EDGE + (quarter + 0.5) * column_width (width, quarters);
}

int
sy_drawing_quarters_at (double width, const SyQuarters *quarters, double x)
{
  const double column = column_width (width, quarters);
  double at;

  if (!(column > 0))
    return -1;
  at = floor ((x - EDGE) / column);
  return at >= 0 && at < quarters->n_quarters ? (int) at : -1;
}

static double
snap (double at)
{
  return floor (at) + 0.5;
}

/* Where a value of a row stands; the zero line moves to where both signs find room. */
typedef struct
{
  double zero, scale;
} Scale;

static Scale
find_scale (const SyQuarterRow *row, int n, double top, double bottom)
{
  double high = 0, low = 0;

  for (int i = 0; i < n; i++)
    if (isfinite (row->values[i]))
      {
        high = fmax (high, row->values[i]);
        low = fmin (low, row->values[i]);
      }
  top += FIGURE;
  bottom -= low < 0 ? FIGURE : 0;
  Scale scale = { .zero = bottom, .scale = high > low ? fmax (0, bottom - top) / (high - low) : 0 };
  scale.zero = snap (bottom + low * scale.scale);
  return scale;
}

static void
hatch (cairo_t *cr, double x, double y, double width, double height)
{
  cairo_save (cr);
  cairo_rectangle (cr, x, y, width, height);
  cairo_clip (cr);
  cairo_set_line_width (cr, 0.8);
  for (double at = x - height; at < x + width; at += HATCH)
    {
      cairo_move_to (cr, at, y + height);
      cairo_line_to (cr, at + height, y);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_bar (cairo_t *cr, double middle, double wide, const Scale *scale, double value, bool heavy, const SyPalette *palette)
{
  const double end = scale->zero - value * scale->scale;
  const double top = fmin (end, scale->zero), high = fabs (end - scale->zero);
  const SyColour tone = sy_colour_tone (palette, 0.22);

  if (!(high > 0))
    return;
  if (value < 0)
    {
      sy_palette_use (cr, &palette->ink, heavy ? 1 : 0.6);
      hatch (cr, middle - wide / 2, top, wide, high);
    }
  else
    {
      sy_palette_use (cr, heavy ? &palette->ink : &tone, 1);
      cairo_rectangle (cr, middle - wide / 2, top, wide, high);
      cairo_fill (cr);
    }
  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, heavy ? 2 : 0.8);
  cairo_rectangle (cr, middle - wide / 2, top, wide, high);
  cairo_stroke (cr);
}

static void
draw_figures (cairo_t *cr, double width, const SyQuarters *quarters, const SyQuarterRow *row, const Scale *scale,
              const SyPalette *palette, const char *font)
{
  double taken = -INFINITY;

  sy_palette_use (cr, &palette->ink, 1);
  for (int i = 0; i < quarters->n_quarters; i++)
    {
      const char *text = row->texts != NULL ? row->texts[i] : NULL;
      const bool is_heavy = i == quarters->heavy;

      if (text == NULL || *text == '\0' || !isfinite (row->values[i]))
        continue;
      const SyTextSize size = sy_text_measure (cr, text, font, is_heavy);
      const double end = scale->zero - row->values[i] * scale->scale;
      double middle = sy_drawing_quarters_place (width, quarters, i);

      middle = fmax (EDGE + size.width / 2, fmin (middle, width - EDGE - size.width / 2));
      if (middle - size.width / 2 < taken)
        continue;
      sy_text_draw (cr, middle, row->values[i] < 0 ? end + 3 + size.ascent : end - 4, 0.5, text, font, is_heavy);
      taken = middle + size.width / 2 + GAP;
    }
}

static void
draw_row (cairo_t *cr, double width, double top, double bottom, const SyQuarters *quarters, const SyQuarterRow *row,
          const SyPalette *palette, const char *font)
{
  const Scale scale = find_scale (row, quarters->n_quarters, top + TITLE, bottom - 4);
  const double wide = fmin (BAR_MOST, column_width (width, quarters) * BAR_PART);

  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw_within (cr, EDGE, top + TITLE - 5, width - 2 * EDGE, row->title, font, true);
  for (int i = 0; i < quarters->n_quarters; i++)
    if (isfinite (row->values[i]))
      draw_bar (cr, sy_drawing_quarters_place (width, quarters, i), wide, &scale, row->values[i], i == quarters->heavy,
                palette);
  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, 1.2);
  cairo_move_to (cr, EDGE, scale.zero);
  cairo_line_to (cr, width - EDGE, scale.zero);
  cairo_stroke (cr);
  draw_figures (cr, width, quarters, row, &scale, palette, font);
}

/* As many names as find room, the latest always. */
static void
draw_names (cairo_t *cr, double width, double baseline, const SyQuarters *quarters, const SyPalette *palette,
            const char *font)
{
  const double column = column_width (width, quarters);
  double widest = 0;
  int every;

  for (int i = 0; i < quarters->n_quarters; i++)
    widest = fmax (widest, sy_text_measure (cr, quarters->quarters[i], font, true).width);
  every = column > 0 ? (int) fmax (1, ceil ((widest + GAP) / column)) : 1;
  sy_palette_use (cr, &palette->ink, 1);
  for (int i = quarters->n_quarters - 1; i >= 0; i -= every)
    {
      const double half = widest / 2, middle = sy_drawing_quarters_place (width, quarters, i);

      sy_text_draw (cr, fmax (EDGE + half, fmin (middle, width - EDGE - half)), baseline, 0.5, quarters->quarters[i], font,
                    i == quarters->heavy);
    }
}

void
sy_drawing_quarters (cairo_t *cr, double width, double height, const SyQuarters *quarters, const SyPalette *palette,
                     const char *font)
{
  double each;

  if (quarters->n_quarters <= 0 || quarters->n_rows <= 0)
    return;
  each = fmax (0, height - SY_QUARTER_FOOT) / quarters->n_rows;
  cairo_save (cr);
  for (int i = 0; i < quarters->n_rows; i++)
    draw_row (cr, width, i * each, (i + 1) * each, quarters, &quarters->rows[i], palette, font);
  draw_names (cr, width, height - 7, quarters, palette, font);
  if (quarters->hot >= 0 && quarters->hot < quarters->n_quarters)
    {
      sy_palette_use (cr, &palette->accent, 1);
      cairo_set_line_width (cr, 1.6);
      cairo_rectangle (cr, EDGE + quarters->hot * column_width (width, quarters) + 1, 1.5,
                       column_width (width, quarters) - 2, height - 3);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}
