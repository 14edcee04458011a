/* SPDX-License-Identifier: MIT */
#include "sy-lanes.h"

#include <math.h>

#include "sy-drawing-text.h"

#define EDGE 6.0
#define GAP 8.0
#define NAME_PART 0.22   /* of the width: names at most       */
#define PAD 5.0          /* over and under a bar in its lane  */
#define SHAPE 14.0
#define SHAPE_GAP 4.0
#define TICK_ROOM 46.0   /* between two figures of the axis   */
#define LEAST 3.0        /* a step that takes no time         */
#define SLACK 4.0
#define HATCH 5.0
#define SAMPLE 22.0
#define HEAVY 2.6
#define WIDE_WORDS 56.0  /* free for words after the number, below that the number stands alone */

/* Where things lie */

static bool
has_key (const SyLanes *lanes)
{
  return lanes->keys[0] != NULL;
}

double
sy_drawing_lanes_height (const SyLanes *lanes)
{
  return SY_LANES_HEAD + lanes->n_lanes * SY_LANE_HEIGHT + SY_LANES_AXIS + (has_key (lanes) ? SY_LANES_KEY : 0);
}

/* Minutes from tick to tick: such as clocks have. */
static double
find_tick (double scale)
{
  static const double ticks[] = { 1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 1440, 2880, 5760, 14400 };

  for (size_t i = 0; i < G_N_ELEMENTS (ticks); i++)
    if (ticks[i] * scale >= TICK_ROOM)
      return ticks[i];
  return 43200;
}

SyLanesFit
sy_drawing_lanes_fit (cairo_t *cr, double width, double height, const SyLanes *lanes, const char *font)
{
  SyLanesFit fit = { .right = fmax (0, width - 14), .top = SY_LANES_HEAD };
  double names = sy_text_measure (cr, lanes->machine_text, font, true).width, end = fmax (1, lanes->end);

  for (int i = 0; i < lanes->n_lanes; i++)
    names = fmax (names, sy_text_measure (cr, lanes->lanes[i], font, false).width);
  for (int i = 0; i < lanes->n_bars; i++)
    end = fmax (end, lanes->bars[i].end);
  fit.left = EDGE + fmin (ceil (names), width * NAME_PART) + GAP;
  fit.scale = fmax (0, fit.right - fit.left) / end;
  fit.key = height - (has_key (lanes) ? SY_LANES_KEY : 0);
  fit.axis = fit.key - SY_LANES_AXIS;
  fit.lane = lanes->n_lanes > 0 ? fmax (0, fit.axis - fit.top) / lanes->n_lanes : 0;
  fit.tick = find_tick (fit.scale);
  return fit;
}

typedef struct
{
  double x, y, width, height;
} Box;

static bool
takes (const SyLaneBar *bar, int lane)
{
  return (bar->lanes & 1u << lane) != 0;
}

/* The lanes from @lane on that a bar covers in one piece. */
static int
count_run (const SyLanes *lanes, const SyLaneBar *bar, int lane)
{
  int n = 0;

  while (lane + n < lanes->n_lanes && takes (bar, lane + n))
    n++;
  return n;
}

static bool
begins_run (const SyLaneBar *bar, int lane)
{
  return takes (bar, lane) && (lane == 0 || !takes (bar, lane - 1));
}

static Box
box_of (const SyLanesFit *fit, const SyLaneBar *bar, int lane, int run)
{
  const double x = fit->left + bar->start * fit->scale;
  const double width = (bar->end - bar->start) * fit->scale;

  /* half a unit free to either side, so that two bars in a row are two */
  return (Box) { x + 0.5, fit->top + lane * fit->lane + PAD, fmax (LEAST, width - 1), run * fit->lane - 2 * PAD };
}

int
sy_drawing_lanes_at (const SyLanes *lanes, const SyLanesFit *fit, double x, double y)
{
  const double at = fit->lane > 0 ? floor ((y - fit->top) / fit->lane) : -1;
  double best = SLACK;
  int found = -1;

  if (at < 0 || at >= lanes->n_lanes)
    return -1;
  for (int i = 0; i < lanes->n_bars; i++)
    {
      const double from = fit->left + lanes->bars[i].start * fit->scale, to = fit->left + lanes->bars[i].end * fit->scale;
      const double away = fmax (0, fmax (from - x, x - to));
      const bool is_point = to - from < LEAST;

      if (!takes (&lanes->bars[i], (int) at) || (away > 0 && !is_point))
        continue;
      /* one that takes no time would else lie behind its neighbours */
      if (is_point ? away <= SLACK : away < best)
        {
          found = i;
          best = is_point ? -1 : away;
        }
    }
  return found;
}

/* From bar to bar */

static bool
comes_before (const SyLanes *lanes, int a, int b)
{
  return lanes->bars[a].start < lanes->bars[b].start || (lanes->bars[a].start == lanes->bars[b].start && a < b);
}

int
sy_drawing_lanes_beside (const SyLanes *lanes, int bar, int by)
{
  int found = -1;

  for (int i = 0; i < lanes->n_bars; i++)
    {
      if (bar >= 0 && (i == bar || comes_before (lanes, by > 0 ? i : bar, by > 0 ? bar : i)))
        continue;
      if (found < 0 || comes_before (lanes, by > 0 ? i : found, by > 0 ? found : i))
        found = i;
    }
  return found;
}

/* Minutes between two bars; 0: at the same time. */
static double
gap_between (const SyLaneBar *a, const SyLaneBar *b)
{
  return fmax (0, fmax (a->start - b->end, b->start - a->end));
}

int
sy_drawing_lanes_across (const SyLanes *lanes, int bar, int by)
{
  int lane, found = -1;
  double best = INFINITY;

  if (bar < 0 || bar >= lanes->n_bars)
    return -1;
  lane = by > 0 ? lanes->n_lanes - 1 : 0;
  while (lane >= 0 && lane < lanes->n_lanes && !takes (&lanes->bars[bar], lane))
    lane -= by;
  for (lane += by; lane >= 0 && lane < lanes->n_lanes && found < 0; lane += by)
    for (int i = 0; i < lanes->n_bars; i++)
      if (i != bar && takes (&lanes->bars[i], lane) && gap_between (&lanes->bars[bar], &lanes->bars[i]) < best)
        {
          best = gap_between (&lanes->bars[bar], &lanes->bars[i]);
          found = i;
        }
  return found;
}

/* Drawing */

static double
snap (double at)
{
  return floor (at) + 0.5;
}

static void
draw_line (cairo_t *cr, double x0, double y0, double x1, double y1)
{
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_stroke (cr);
}

static void
fill_bar (cairo_t *cr, const Box *box, bool stopped, bool can_run, const SyPalette *palette)
{
  const SyColour tone = sy_colour_tone (palette, 0.2);

  sy_palette_use (cr, stopped && !can_run ? &tone : &palette->paper, 1);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  cairo_fill (cr);
  if (!can_run)
    return;
  cairo_save (cr);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  cairo_clip (cr);
  sy_palette_use (cr, &palette->ink, 0.3);
  cairo_set_line_width (cr, 1);
  for (double at = box->x - box->height; at < box->x + box->width; at += HATCH)
    {
      cairo_move_to (cr, at, box->y + box->height);
      cairo_line_to (cr, at + box->height, box->y);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
outline_bar (cairo_t *cr, const Box *box, bool heavy, const SyPalette *palette)
{
  const double in = heavy ? HEAVY / 2 : 0.5;

  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, heavy ? HEAVY : 1);
  cairo_rectangle (cr, box->x + in, box->y + in, fmax (0, box->width - 2 * in), fmax (0, box->height - 2 * in));
  cairo_stroke (cr);
}

/* Letters on a hatched bar stand on paper. */
static void
clear_behind (cairo_t *cr, double x, double y, double width, double height, const SyPalette *palette)
{
  sy_palette_use (cr, &palette->paper, 1);
  cairo_rectangle (cr, x, y, width, height);
  cairo_fill (cr);
}

static void
draw_shape (cairo_t *cr, double x, double y, const SyLaneBar *bar, const SyPalette *palette)
{
  cairo_save (cr);
  cairo_translate (cr, floor (x), floor (y));
  sy_drawing_shape (cr, SHAPE, bar->shape, palette);
  cairo_restore (cr);
}

/* A wide bar has shape, number and words in a row, the next number and shape, a narrow one the number over the shape. */
static void
fill_in_words (cairo_t *cr, const Box *box, double lane, const SyLaneBar *bar, const SyPalette *palette, const char *font)
{
  const SyTextSize number = sy_text_measure (cr, bar->number, font, true);
  const double inside = bar->heavy ? HEAVY + 1.5 : 3, high = lane - 2 * PAD;
  const double line = number.ascent + number.descent;
  double x = box->x + inside, room = box->width - 2 * inside;
  const double before = (bar->has_shape ? SHAPE + SHAPE_GAP : 0) + number.width;
  const bool is_clear = bar->can_run;

  if (room >= before + SHAPE_GAP + WIDE_WORDS)
    {
      const double middle = box->y + high / 2, baseline = middle + (number.ascent - number.descent) / 2;
      const double words = fmin (room - before - SHAPE_GAP, sy_text_measure (cr, bar->label, font, bar->heavy).width);

      if (is_clear)
        clear_behind (cr, x, middle - line / 2, before + SHAPE_GAP + words + 2, line, palette);
      sy_palette_use (cr, &palette->ink, 1);
      if (bar->has_shape)
        draw_shape (cr, x, middle - SHAPE / 2, bar, palette);
      x += before - number.width;
      sy_palette_use (cr, &palette->ink, 1);
      sy_text_draw (cr, x, baseline, 0, bar->number, font, true);
      sy_text_draw_within (cr, x + number.width + SHAPE_GAP, baseline, room - before - SHAPE_GAP, bar->label, font,
                           bar->heavy);
      return;
    }
  const double middle = box->x + box->width / 2;

  if (room >= before)
    {
      const double left = middle - before / 2, centre = box->y + high / 2;

      if (is_clear)
        clear_behind (cr, left - 1, centre - line / 2, before + 2, line, palette);
      sy_palette_use (cr, &palette->ink, 1);
      sy_text_draw (cr, left, centre + (number.ascent - number.descent) / 2, 0, bar->number, font, true);
      if (bar->has_shape)
        draw_shape (cr, left + number.width + SHAPE_GAP, centre - SHAPE / 2, bar, palette);
      return;
    }
  const bool has_shape = bar->has_shape && box->width >= SHAPE + 2 && high >= line + SHAPE + inside;
  const bool has_number = box->width >= number.width + 1;
  const double both = (has_shape ? SHAPE : 0) + (has_number ? line : 0), top = box->y + (high - both) / 2;

  if (is_clear && both > 0)
    clear_behind (cr, middle - fmax (number.width, SHAPE) / 2, top, fmax (number.width, SHAPE), both, palette);
  sy_palette_use (cr, &palette->ink, 1);
  if (has_number)
    sy_text_draw (cr, middle, top + number.ascent, 0.5, bar->number, font, true);
  if (has_shape)
    draw_shape (cr, middle - SHAPE / 2, top + both - SHAPE, bar, palette);
}

static void
draw_bar (cairo_t *cr, const SyLanes *lanes, const SyLanesFit *fit, int at, const SyPalette *palette, const char *font)
{
  const SyLaneBar *bar = &lanes->bars[at];

  for (int lane = 0; lane < lanes->n_lanes; lane++)
    {
      if (!begins_run (bar, lane))
        continue;
      const Box box = box_of (fit, bar, lane, count_run (lanes, bar, lane));

      fill_bar (cr, &box, bar->stopped, bar->can_run, palette);
      fill_in_words (cr, &box, fit->lane, bar, palette, font);
      outline_bar (cr, &box, bar->heavy, palette);
      if (at != lanes->hot)
        continue;
      sy_palette_use (cr, &palette->accent, 1);
      cairo_set_line_width (cr, 2);
      cairo_rectangle (cr, box.x - 2, box.y - 3, box.width + 4, box.height + 6);
      cairo_stroke (cr);
    }
}

/* How long the machine stands: a ruled edge from end to end, with its words on it or beside it. */
static void
draw_machine (cairo_t *cr, const SyLanes *lanes, const SyLanesFit *fit, const SyPalette *palette, const char *font)
{
  const double from = fit->left + lanes->stands_from * fit->scale, to = fit->left + lanes->stands_to * fit->scale;
  const double y = SY_LANES_HEAD - 9;
  const SyTextSize size = sy_text_measure (cr, lanes->stands_text, font, true);
  const double half = size.width / 2;
  const double middle = fmax (fit->left + half, fmin ((from + to) / 2, fit->right - half));
  const double baseline = y + (size.ascent - size.descent) / 2;
  const bool is_inside = to - from > size.width + 2 * GAP + 12;

  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw_within (cr, EDGE, baseline, fit->left - EDGE - GAP, lanes->machine_text, font, true);
  if (!(lanes->stands_to > lanes->stands_from))
    {
      sy_text_draw_within (cr, fit->left, baseline, fit->right - fit->left, lanes->stands_text, font, false);
      return;
    }
  cairo_set_line_width (cr, 2.4);
  if (is_inside)
    {
      draw_line (cr, from, y, middle - half - GAP, y);
      draw_line (cr, middle + half + GAP, y, to, y);
      sy_text_draw (cr, middle, baseline, 0.5, lanes->stands_text, font, true);
    }
  else
    {
      draw_line (cr, from, y, to, y);
      if (fit->right - to > size.width + GAP)
        sy_text_draw (cr, to + GAP, baseline, 0, lanes->stands_text, font, true);
      else
        sy_text_draw (cr, from - GAP, baseline, 1, lanes->stands_text, font, true);
    }
  draw_line (cr, from, y - 6, from, y + 6);
  draw_line (cr, to, y - 6, to, y + 6);
}

static void
draw_stretch (cairo_t *cr, const SyLanes *lanes, const SyLanesFit *fit, const SyPalette *palette)
{
  const double from = fit->left + lanes->stands_from * fit->scale, to = fit->left + lanes->stands_to * fit->scale;
  const SyColour tone = sy_colour_tone (palette, 0.06), edge = sy_colour_tone (palette, 0.5);

  if (!(lanes->stands_to > lanes->stands_from))
    return;
  sy_palette_use (cr, &tone, 1);
  cairo_rectangle (cr, from, fit->top, to - from, fit->axis - fit->top);
  cairo_fill (cr);
  sy_palette_use (cr, &edge, 1);
  cairo_set_line_width (cr, 1);
  draw_line (cr, snap (from), fit->top - 3, snap (from), fit->axis);
  draw_line (cr, snap (to), fit->top - 3, snap (to), fit->axis);
}

static void
draw_axis (cairo_t *cr, const SyLanes *lanes, const SyLanesFit *fit, const SyPalette *palette, const char *font)
{
  const double baseline = fit->axis + SY_LANES_AXIS - 8;

  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, 1);
  draw_line (cr, fit->left, snap (fit->axis), fit->right, snap (fit->axis));
  sy_text_draw_within (cr, EDGE, baseline, fit->left - EDGE - GAP, lanes->minutes_text, font, false);
  for (double at = 0; fit->scale > 0 && fit->left + at * fit->scale <= fit->right + 0.5; at += fit->tick)
    {
      const double x = fit->left + at * fit->scale;
      char text[SY_TEXT_NUMBER_MAX];

      g_ascii_formatd (text, sizeof text, "%.0f", at);
      sy_palette_use (cr, &palette->ink, 1);
      draw_line (cr, snap (x), fit->axis, snap (x), fit->axis + 5);
      sy_text_draw (cr, x, baseline, 0.5, text, font, false);
    }
}

static void
draw_lane_lines (cairo_t *cr, const SyLanes *lanes, const SyLanesFit *fit, const SyPalette *palette, const char *font)
{
  for (int i = 0; i < lanes->n_lanes; i++)
    {
      const SyTextSize size = sy_text_measure (cr, lanes->lanes[i], font, false);
      const double middle = fit->top + (i + 0.5) * fit->lane;

      sy_palette_use (cr, &palette->ink, 1);
      sy_text_draw_within (cr, EDGE, middle + (size.ascent - size.descent) / 2, fit->left - EDGE - GAP, lanes->lanes[i], font,
                           false);
      sy_palette_use (cr, &palette->hairline, 1);
      cairo_set_line_width (cr, 1);
      draw_line (cr, EDGE, snap (fit->top + i * fit->lane), fit->right, snap (fit->top + i * fit->lane));
    }
}

/* What the bars look like, in words; what finds no room is left out from the end. */
static void
draw_key (cairo_t *cr, const SyLanes *lanes, const SyLanesFit *fit, const SyPalette *palette, const char *font)
{
  double x = EDGE;

  for (int i = 0; i < SY_LANE_KEYS && lanes->keys[i] != NULL; i++)
    {
      const SyTextSize size = sy_text_measure (cr, lanes->keys[i], font, false);
      const Box box = { x, fit->key + 4, SAMPLE, SY_LANES_KEY - 9 };

      if (x + SAMPLE + SHAPE_GAP + size.width > fit->right + 8)
        return;
      fill_bar (cr, &box, i != 1, i == 2, palette);
      outline_bar (cr, &box, i == 3, palette);
      sy_palette_use (cr, &palette->ink, 1);
      sy_text_draw (cr, x + SAMPLE + SHAPE_GAP + 2, box.y + box.height / 2 + (size.ascent - size.descent) / 2, 0,
                    lanes->keys[i], font, false);
      x += SAMPLE + SHAPE_GAP + 2 + size.width + GAP + 4;
    }
}

void
sy_drawing_lanes (cairo_t *cr, double width, double height, const SyLanes *lanes, const SyPalette *palette, const char *font)
{
  SyLanesFit fit;

  if (lanes->n_lanes <= 0)
    return;
  fit = sy_drawing_lanes_fit (cr, width, height, lanes, font);
  cairo_save (cr);
  draw_stretch (cr, lanes, &fit, palette);
  draw_lane_lines (cr, lanes, &fit, palette, font);
  draw_machine (cr, lanes, &fit, palette, font);
  for (int i = 0; i < lanes->n_bars; i++)
    if (i != lanes->hot)
      draw_bar (cr, lanes, &fit, i, palette, font);
  if (lanes->hot >= 0 && lanes->hot < lanes->n_bars)
    draw_bar (cr, lanes, &fit, lanes->hot, palette, font);
  draw_axis (cr, lanes, &fit, palette, font);
  if (has_key (lanes))
    draw_key (cr, lanes, &fit, palette, font);
  cairo_restore (cr);
}
