/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-drawing-text.h"

#define EDGE 6.0 /* free to either side */
#define GAP 12.0 /* between columns     */
#define BAR_HEIGHT 12.0
#define HEAVY_HEIGHT 15.0
#define NAME_PART 0.34  /* of the width, at most    */
#define BARS_LEAST 60.0
#define END_LEAST 1.15  /* the arm reaches past 100 % … */
#define END_MOST 1.6    /* … but no farther than this   */
#define ARROW 7.0

typedef struct
{
  double name_width, figures_right, percent_right, bars, bars_width;
  double ascent, descent;
  double end; /* ratio at the right edge */
} Columns;

static bool
needs_said (const SyCapacityBar *bar)
{
  return !isfinite (bar->ratio);
}

static Columns
measure_columns (cairo_t *cr, double width, const SyCapacityBars *bars, const char *font)
{
  double name = 0, figures = 0, percent = 0, worst = 0;
  Columns columns = { 0 };
  SyTextSize line = sy_text_measure (cr, bars->full_text, font, true);

  for (int i = 0; i < bars->n_bars; i++)
    {
      const SyCapacityBar *bar = &bars->bars[i];

      name = fmax (name, sy_text_measure (cr, bar->name, font, true).width);
      figures = fmax (figures, sy_text_measure (cr, bar->figures, font, true).width);
      percent = fmax (percent, sy_text_measure (cr, bar->percent, font, true).width);
      if (isfinite (bar->ratio))
        worst = fmax (worst, bar->ratio);
    }
  columns.ascent = line.ascent;
  columns.descent = line.descent;
  columns.end = fmin (fmax (END_LEAST, worst + 0.05), END_MOST);
  columns.name_width = fmin (name, NAME_PART * width);
  columns.figures_right = EDGE + columns.name_width + GAP + figures;
  columns.percent_right = columns.figures_right + GAP + percent;
  columns.bars = columns.percent_right + GAP;
  columns.bars_width = fmax (BARS_LEAST, width - columns.bars - EDGE);
  return columns;
}

static double
x_of (const Columns *columns, double ratio)
{
  return columns->bars + fmin (ratio, columns->end) / columns->end * columns->bars_width;
}

static double
row_middle (int row)
{
  return (row + 0.5) * SY_BAR_ROW;
}

static double
row_baseline (const Columns *columns, int row)
{
  return row_middle (row) + (columns->ascent - columns->descent) / 2;
}

/* A line through all rows with its figure on top. */
static void
draw_notch (cairo_t *cr, const Columns *columns, const SyCapacityBars *bars, double ratio, const char *text,
            double alignment, const SyPalette *palette, const char *font)
{
  double x = floor (x_of (columns, ratio)) + 0.5;
  double top = SY_BAR_ROW - 4, bottom = (bars->n_bars + 1) * SY_BAR_ROW;
  bool full = ratio >= 1;
  double dash[] = { 3, 3 };

  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, full ? 1.6 : 1);
  if (!full)
    cairo_set_dash (cr, dash, 2, 0);
  cairo_move_to (cr, x, top);
  cairo_line_to (cr, x, bottom);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  /* Where the arm is short the figure keeps inside the picture. */
  double wide = sy_text_measure (cr, text, font, full).width;
  double left = fmin (x - alignment * wide, columns->bars + columns->bars_width - wide);
  sy_text_draw (cr, left, row_baseline (columns, 0) - 3, 0, text, font, full);
}

/* Past the end of the arm: it goes on. */
static void
draw_arrow (cairo_t *cr, const Columns *columns, double middle, const SyPalette *palette)
{
  double x = columns->bars + columns->bars_width;

  sy_palette_use (cr, &palette->paper, 1);
  cairo_rectangle (cr, x - ARROW, middle - HEAVY_HEIGHT, ARROW + 2, 2 * HEAVY_HEIGHT);
  cairo_fill (cr);
  sy_palette_use (cr, &palette->ink, 1);
  cairo_move_to (cr, x - ARROW, middle - HEAVY_HEIGHT / 2);
  cairo_line_to (cr, x, middle);
  cairo_line_to (cr, x - ARROW, middle + HEAVY_HEIGHT / 2);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_bar (cairo_t *cr, const Columns *columns, double middle, double ratio, bool heavy, const SyPalette *palette)
{
  SyColour tone = sy_colour_tone (palette, 0.22);
  double height = heavy ? HEAVY_HEIGHT : BAR_HEIGHT;
  double length = x_of (columns, fmax (0, ratio)) - columns->bars;

  cairo_rectangle (cr, columns->bars, middle - height / 2, fmax (1, length), height);
  sy_palette_use (cr, heavy ? &palette->ink : &tone, 1);
  cairo_fill_preserve (cr);
  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, heavy ? 2 : 0.8);
  cairo_stroke (cr);
  if (ratio > columns->end)
    draw_arrow (cr, columns, middle, palette);
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
draw_row (cairo_t *cr, const Columns *columns, const SyCapacityBars *bars, int i, const SyPalette *palette,
          const char *font)
{
  const SyCapacityBar *bar = &bars->bars[i];
  bool heavy = i == bars->governing;
  double baseline = row_baseline (columns, i + 1);

  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw_within (cr, EDGE, baseline, columns->name_width, bar->name, font, heavy);
  sy_text_draw (cr, columns->figures_right, baseline, 1, bar->figures, font, heavy);
  sy_text_draw (cr, columns->percent_right, baseline, 1, bar->percent, font, heavy);
  if (!needs_said (bar))
    draw_bar (cr, columns, row_middle (i + 1), bar->ratio, heavy, palette);
}

/* Words in a bar's place stand on paper, so that the notches do not run through them. */
static void
draw_said (cairo_t *cr, const Columns *columns, const SyCapacityBars *bars, int i, const SyPalette *palette,
           const char *font)
{
  const SyCapacityBar *bar = &bars->bars[i];
  bool heavy = i == bars->governing;
  double width = fmin (sy_text_measure (cr, bar->said, font, heavy).width, columns->bars_width);

  sy_palette_use (cr, &palette->paper, 1);
  cairo_rectangle (cr, columns->bars - 2, (i + 1) * SY_BAR_ROW + 3, width + 4, SY_BAR_ROW - 6);
  cairo_fill (cr);
  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw_within (cr, columns->bars, row_baseline (columns, i + 1), columns->bars_width, bar->said, font, heavy);
}

void
sy_drawing_capacity_bars (cairo_t *cr, double width, double height, const SyCapacityBars *bars,
                          const SyPalette *palette, const char *font)
{
  Columns columns = measure_columns (cr, width, bars, font);
  bool has_notice = bars->notice > 0 && bars->notice < 1;

  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  sy_palette_use (cr, &palette->hairline, 1);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, columns.bars, SY_BAR_ROW - 4);
  cairo_line_to (cr, columns.bars, (bars->n_bars + 1) * SY_BAR_ROW);
  cairo_stroke (cr);
  for (int i = 0; i < bars->n_bars; i++)
    draw_row (cr, &columns, bars, i, palette, font);
  /* Over the bars: a notch is read against them. The two figures stand away from one another. */
  if (has_notice)
    draw_notch (cr, &columns, bars, bars->notice, bars->notice_text, 0.75, palette, font);
  draw_notch (cr, &columns, bars, 1, bars->full_text, has_notice ? 0.25 : 0.5, palette, font);
  for (int i = 0; i < bars->n_bars; i++)
    if (needs_said (&bars->bars[i]))
      draw_said (cr, &columns, bars, i, palette, font);
  if (bars->hot >= 0 && bars->hot < bars->n_bars)
    draw_hot (cr, width, bars->hot + 1, palette);
  cairo_restore (cr);
}

int
sy_drawing_capacity_bars_at (const SyCapacityBars *bars, double y)
{
  double row = floor (y / SY_BAR_ROW) - 1;

  return row >= 0 && row < bars->n_bars ? (int) row : -1;
}
