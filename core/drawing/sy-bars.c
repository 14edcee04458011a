/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-drawing-text.h"

#define EDGE 6.0       /* free to either side           */
#define GAP 8.0        /* between columns               */
#define BAR_HEIGHT 12.0
#define TICK_HEIGHT 16.0

/* Where the columns of the label stand. */
typedef struct
{
  double symbol, fact, factor_right, bars, bars_width;
  double ascent, descent;
} Columns;

/* "× 0.45"; a factor that is not quite 0 or 1 does not look like it. */
static void
format_factor (double factor, char buffer[SY_TEXT_NUMBER_MAX])
{
  static const char *const formats[] = { "%.2f", "%.3f", "%.4f" };
  gsize at = g_strlcpy (buffer, "\303\227 ", SY_TEXT_NUMBER_MAX);

  for (size_t i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      double step = pow (10, -2 - (double) i);

      g_ascii_formatd (buffer + at, (int) (SY_TEXT_NUMBER_MAX - at), formats[i], factor);
      if (factor <= 0 || factor == 1 || (factor >= step / 2 && fabs (1 - factor) >= step / 2))
        return;
    }
}

/* The smallest multiplier below 1 is the one that governs, wherever it stands in the row of
   products. */
static int
largest_step (const SyBars *bars)
{
  int largest = -1;

  for (int i = 0; i < bars->n_bars; i++)
    if (bars->bars[i].factor < (largest < 0 ? 1.0 : bars->bars[largest].factor))
      largest = i;
  return largest;
}

static Columns
measure_columns (cairo_t *cr, double width, const SyBars *bars, const char *font)
{
  double symbol = 0, fact = 0, factor = 0;
  char text[SY_TEXT_NUMBER_MAX];
  SyTextSize start = sy_text_measure (cr, bars->start_text, font, false);
  SyTextSize end = sy_text_measure (cr, bars->end_text, font, true);

  for (int i = 0; i < bars->n_bars; i++)
    {
      symbol = fmax (symbol, sy_text_measure (cr, bars->bars[i].symbol, font, true).width);
      fact = fmax (fact, sy_text_measure (cr, bars->bars[i].fact, font, true).width);
      format_factor (bars->bars[i].factor, text);
      factor = fmax (factor, sy_text_measure (cr, text, font, true).width);
    }

  Columns columns = { .symbol = EDGE, .ascent = end.ascent, .descent = end.descent };

  columns.fact = columns.symbol + symbol + GAP;
  columns.factor_right = columns.fact + fact + GAP + factor;
  columns.factor_right = fmax (columns.factor_right, EDGE + fmax (start.width, end.width));
  columns.bars = columns.factor_right + 2 * GAP;
  columns.bars_width = fmax (0, width - columns.bars - EDGE);
  return columns;
}

static double
row_baseline (const Columns *columns, int row)
{
  double middle = (row + 0.5) * SY_BAR_ROW;

  return middle + (columns->ascent - columns->descent) / 2;
}

/* The piece from @from to @to of the whole; a tick where nothing is left of it or nothing was
   taken. */
static void
draw_piece (cairo_t *cr, const Columns *columns, int row, double from, double to,
            const SyPalette *palette, bool heavy)
{
  double middle = (row + 0.5) * SY_BAR_ROW;
  double x0 = columns->bars + from * columns->bars_width;
  double x1 = columns->bars + to * columns->bars_width;
  SyColour tone = sy_colour_tone (palette, 0.22);

  if (x1 - x0 < 1)
    {
      sy_palette_use (cr, &palette->ink, 1);
      cairo_set_line_width (cr, heavy ? 3 : 1);
      cairo_move_to (cr, x0, middle - TICK_HEIGHT / 2);
      cairo_line_to (cr, x0, middle + TICK_HEIGHT / 2);
      cairo_stroke (cr);
      return;
    }
  cairo_rectangle (cr, x0, middle - BAR_HEIGHT / 2, x1 - x0, BAR_HEIGHT);
  sy_palette_use (cr, heavy ? &palette->ink : &tone, 1);
  cairo_fill_preserve (cr);
  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, heavy ? 2 : 0.8);
  cairo_stroke (cr);
}

/* The thin line that carries a value down to the next row. */
static void
draw_carry (cairo_t *cr, const Columns *columns, int row, double value, const SyPalette *palette)
{
  double x = columns->bars + value * columns->bars_width;
  SyColour tone = sy_colour_tone (palette, 0.6);

  sy_palette_use (cr, &tone, 1);
  cairo_set_line_width (cr, 0.8);
  cairo_move_to (cr, x, (row + 0.5) * SY_BAR_ROW + BAR_HEIGHT / 2);
  cairo_line_to (cr, x, (row + 1.5) * SY_BAR_ROW - BAR_HEIGHT / 2);
  cairo_stroke (cr);
}

static void
draw_hot (cairo_t *cr, double width, int row, const SyPalette *palette)
{
  sy_palette_use (cr, &palette->accent, 1);
  cairo_set_line_width (cr, 1.6);
  cairo_rectangle (cr, 1.5, row * SY_BAR_ROW + 1.5, width - 3, SY_BAR_ROW - 3);
  cairo_stroke (cr);
}

static void
draw_row (cairo_t *cr, const Columns *columns, const SyBars *bars, int i, double before,
          double after, bool heavy, const SyPalette *palette, const char *font)
{
  const SyBar *bar = &bars->bars[i];
  double baseline = row_baseline (columns, i + 1);
  char factor[SY_TEXT_NUMBER_MAX];

  format_factor (bar->factor, factor);
  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw (cr, columns->symbol, baseline, 0, bar->symbol, font, true);
  sy_text_draw (cr, columns->fact, baseline, 0, bar->fact, font, heavy);
  sy_text_draw (cr, columns->factor_right, baseline, 1, factor, font, heavy);
  draw_piece (cr, columns, i + 1, after, before, palette, heavy);
  draw_carry (cr, columns, i + 1, after, palette);
  if (i == bars->hot)
    draw_hot (cr, columns->bars + columns->bars_width + EDGE, i + 1, palette);
}

void
sy_drawing_bars (cairo_t *cr, double width, double height, const SyBars *bars,
                 const SyPalette *palette, const char *font)
{
  Columns columns = measure_columns (cr, width, bars, font);
  int largest = largest_step (bars);
  double left = bars->start > 0 ? 1 : 0; /* share of the start that is left */

  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);

  sy_palette_use (cr, &palette->hairline, 1);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, columns.bars, SY_BAR_ROW / 2 - TICK_HEIGHT / 2);
  cairo_line_to (cr, columns.bars, (bars->n_bars + 1.5) * SY_BAR_ROW + TICK_HEIGHT / 2);
  cairo_stroke (cr);

  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw (cr, columns.symbol, row_baseline (&columns, 0), 0, bars->start_text, font, false);
  draw_piece (cr, &columns, 0, 0, left, palette, false);
  draw_carry (cr, &columns, 0, left, palette);
  for (int i = 0; i < bars->n_bars; i++)
    {
      double after = left * fmin (1, fmax (0, bars->bars[i].factor));

      draw_row (cr, &columns, bars, i, left, after, i == largest, palette, font);
      left = after;
    }
  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw (cr, columns.symbol, row_baseline (&columns, bars->n_bars + 1), 0, bars->end_text,
                font, true);
  draw_piece (cr, &columns, bars->n_bars + 1, 0, left, palette, false);
  cairo_restore (cr);
}

int
sy_drawing_bars_at (const SyBars *bars, double y)
{
  double row = floor (y / SY_BAR_ROW) - 1;

  return row >= 0 && row < bars->n_bars ? (int) row : -1;
}
