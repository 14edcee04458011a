/* SPDX-License-Identifier: MIT */
#include "sy-timeline.h"

#include <math.h>

#include "sy-drawing-text.h"

#define EDGE 6.0
#define LEFT 64.0   /* for the words of the goal                      */
#define RIGHT 34.0  /* for half the last word                         */
#define SHAPE 16.0
#define REACH 16.0  /* how near to a revision counts as on it         */
/* Two revisions that were made within a minute must still be two; the rest is only a tick. */
#define GAP_SHAPE 22.0
#define GAP_TICK 7.0
#define ROW 15.0    /* of words under the axis                        */
#define TICK 5.0
#define ARROW 4.0
#define PI 3.14159265358979323846

/* Where things stand from the top. */
typedef struct
{
  double stop, base;  /* of the line: its top, 0                       */
  double axis;        /* the middle of the shapes                      */
  double signs, days; /* baselines of the two rows of words            */
} Levels;

static Levels
find_levels (double height)
{
  const double days = height - 4, signs = days - ROW, axis = signs - ROW - SHAPE / 2;

  return (Levels) { .stop = 22, .base = axis - SHAPE / 2 - 6, .axis = axis, .signs = signs, .days = days };
}

static double
gap_before (const SyTimeline *timeline, int mark)
{
  const bool is_shape
    = timeline->marks[mark].kind != SY_TIMELINE_OTHER || timeline->marks[mark - 1].kind != SY_TIMELINE_OTHER;

  return is_shape ? GAP_SHAPE : GAP_TICK;
}

/*
 * In proportion to time, but never nearer to the mark before than is readable: every gap gets its least, and what is left is
 * shared out by time. Where not even the least fits, all gaps shrink alike.
 */
double
sy_drawing_timeline_place (double width, const SyTimeline *timeline, int mark)
{
  const SyTimelineMark *marks = timeline->marks;
  const int last = timeline->n_marks - 1;
  const double room = fmax (0, width - LEFT - RIGHT);
  const double span = last > 0 ? marks[last].time - marks[0].time : 0;
  double least = 0, before = 0, scale, left;

  for (int i = 1; i <= last; i++)
    {
      least += gap_before (timeline, i);
      before += i <= mark ? gap_before (timeline, i) : 0;
    }
  scale = least > room ? room / least : 1;
  left = room - least * scale;
  if (last <= 0)
    return LEFT + room / 2;
  /* All at one moment: an even row. */
  if (!(span > 0))
    return LEFT + before * scale + left * mark / last;
  return LEFT + before * scale + left * (marks[mark].time - marks[0].time) / span;
}

int
sy_drawing_timeline_at (double width, const SyTimeline *timeline, double x)
{
  double best = REACH;
  int found = -1;

  for (int i = 0; i < timeline->n_marks; i++)
    {
      double away = fabs (sy_drawing_timeline_place (width, timeline, i) - x);

      if (timeline->marks[i].kind == SY_TIMELINE_REVISION && away < best)
        {
          best = away;
          found = i;
        }
    }
  return found;
}

static double
level_of (const Levels *levels, const SyTimeline *timeline, double index)
{
  double part = fmax (0, fmin (1, index / timeline->top));

  return levels->base - part * (levels->base - levels->stop);
}

static double
snap (double at)
{
  return floor (at) + 0.5;
}

static void
draw_goal (cairo_t *cr, double width, const Levels *levels, const SyTimeline *timeline, const SyPalette *palette,
           const char *font)
{
  static const double dashes[] = { 5, 3 };
  const double y = snap (level_of (levels, timeline, timeline->goal));

  if (isnan (timeline->goal))
    return;
  cairo_save (cr);
  sy_palette_use (cr, &palette->ink, 0.75);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dashes, 2, 0);
  cairo_move_to (cr, LEFT - 8, y);
  cairo_line_to (cr, width - EDGE, y);
  cairo_stroke (cr);
  cairo_restore (cr);
  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw (cr, LEFT - 12, y + 4, 1, timeline->goal_text, font, false);
}

/* The stop over which nothing is drawn: two strokes, as at the end of the arm. */
static void
draw_stop (cairo_t *cr, double width, const Levels *levels, const SyTimeline *timeline, const SyPalette *palette,
           const char *font)
{
  char top[SY_TEXT_NUMBER_MAX];

  cairo_set_line_width (cr, 1);
  sy_palette_use (cr, &palette->hairline, 1);
  for (int i = 0; i < 2; i++)
    {
      cairo_move_to (cr, LEFT - 8, snap (levels->stop - 3 * i));
      cairo_line_to (cr, width - EDGE, snap (levels->stop - 3 * i));
    }
  cairo_move_to (cr, LEFT - 8, snap (levels->base));
  cairo_line_to (cr, width - EDGE, snap (levels->base));
  cairo_stroke (cr);
  sy_palette_use (cr, &palette->ink, 1);
  sy_text_number (timeline->top, timeline->top, top);
  sy_text_draw (cr, LEFT - 12, levels->stop + 4, 1, top, font, false);
  sy_text_draw (cr, EDGE, levels->base + 4, 0, timeline->title, font, true);
}

static bool
has_index (const SyTimelineMark *mark)
{
  return mark->kind == SY_TIMELINE_REVISION && !isnan (mark->index);
}

/* From revision to revision; one without an index breaks the line. */
static void
draw_trend (cairo_t *cr, double width, const Levels *levels, const SyTimeline *timeline, const SyPalette *palette)
{
  bool drawing = false;

  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, 1.4);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  for (int i = 0; i < timeline->n_marks; i++)
    {
      const SyTimelineMark *mark = &timeline->marks[i];

      if (mark->kind != SY_TIMELINE_REVISION)
        continue;
      if (!has_index (mark))
        {
          drawing = false;
          continue;
        }
      double x = sy_drawing_timeline_place (width, timeline, i), y = level_of (levels, timeline, mark->index);

      if (drawing)
        cairo_line_to (cr, x, y);
      else
        cairo_move_to (cr, x, y);
      drawing = true;
    }
  cairo_stroke (cr);
}

static void
draw_point (cairo_t *cr, double x, double y, bool is_over, bool is_hot)
{
  if (is_over)
    {
      cairo_move_to (cr, x - ARROW, y + ARROW);
      cairo_line_to (cr, x, y - ARROW);
      cairo_line_to (cr, x + ARROW, y + ARROW);
      cairo_close_path (cr);
    }
  else
    cairo_arc (cr, x, y, is_hot ? 4.5 : 3, 0, 2 * PI);
  cairo_fill (cr);
}

/* The points, and what they stand for where it does not run into the figure before. */
static void
draw_points (cairo_t *cr, double width, const Levels *levels, const SyTimeline *timeline, const SyPalette *palette,
             const char *font)
{
  double taken = -1;

  sy_palette_use (cr, &palette->ink, 1);
  for (int i = 0; i < timeline->n_marks; i++)
    {
      const SyTimelineMark *mark = &timeline->marks[i];

      if (!has_index (mark))
        continue;
      double x = sy_drawing_timeline_place (width, timeline, i), y = level_of (levels, timeline, mark->index);
      double half = sy_text_measure (cr, mark->text, font, i == timeline->hot).width / 2;

      draw_point (cr, x, y, mark->index > timeline->top, i == timeline->hot);
      if (x - half < taken && i != timeline->hot)
        continue;
      /* Under the point where the stop is near. */
      sy_text_draw (cr, x, y - levels->stop > 2 && y - levels->stop < 16 ? y + 17 : y - 7, 0.5, mark->text, font,
                    i == timeline->hot);
      taken = x + half + 4;
    }
}

static void
draw_shape (cairo_t *cr, double x, const Levels *levels, const SyTimelineMark *mark, bool is_hot, const SyPalette *palette)
{
  cairo_save (cr);
  /* on paper, so that the axis does not run through it */
  sy_palette_use (cr, &palette->paper, 1);
  cairo_rectangle (cr, x - SHAPE / 2 - 1, levels->axis - SHAPE / 2, SHAPE + 2, SHAPE);
  cairo_fill (cr);
  cairo_translate (cr, floor (x - SHAPE / 2), floor (levels->axis - SHAPE / 2));
  sy_drawing_shape (cr, SHAPE, mark->shape, palette);
  cairo_restore (cr);
  if (!is_hot)
    return;
  sy_palette_use (cr, &palette->accent, 1);
  cairo_set_line_width (cr, 2);
  cairo_rectangle (cr, snap (x - SHAPE / 2 - 3), snap (levels->axis - SHAPE / 2 - 3), SHAPE + 6, SHAPE + 6);
  cairo_stroke (cr);
}

/* A hand's check mark on the axis, its word under it. */
static void
draw_signed (cairo_t *cr, double x, const Levels *levels, const SyPalette *palette)
{
  sy_palette_use (cr, &palette->paper, 1);
  cairo_rectangle (cr, x - 7, levels->axis - SHAPE / 2, 14, SHAPE);
  cairo_fill (cr);
  sy_palette_use (cr, &palette->ink, 1);
  cairo_set_line_width (cr, 2);
  cairo_move_to (cr, x - 5, levels->axis);
  cairo_line_to (cr, x - 1.5, levels->axis + 4.5);
  cairo_line_to (cr, x + 5.5, levels->axis - 5.5);
  cairo_stroke (cr);
}

static void
draw_marks (cairo_t *cr, double width, const Levels *levels, const SyTimeline *timeline, const SyPalette *palette,
            const char *font)
{
  double taken = -1;

  cairo_set_line_width (cr, 1);
  sy_palette_use (cr, &palette->hairline, 1);
  cairo_move_to (cr, LEFT - 8, snap (levels->axis));
  cairo_line_to (cr, width - EDGE, snap (levels->axis));
  cairo_stroke (cr);
  for (int i = 0; i < timeline->n_marks; i++)
    {
      const SyTimelineMark *mark = &timeline->marks[i];
      double x = sy_drawing_timeline_place (width, timeline, i);

      if (mark->kind == SY_TIMELINE_REVISION)
        draw_shape (cr, x, levels, mark, i == timeline->hot, palette);
      else if (mark->kind == SY_TIMELINE_OTHER)
        {
          sy_palette_use (cr, &palette->ink, 0.85);
          cairo_set_line_width (cr, 1);
          cairo_move_to (cr, snap (x), levels->axis - TICK);
          cairo_line_to (cr, snap (x), levels->axis + TICK);
          cairo_stroke (cr);
        }
      else
        {
          double half = sy_text_measure (cr, mark->text, font, false).width / 2;
          double middle = fmin (x, width - EDGE - half);

          draw_signed (cr, x, levels, palette);
          if (middle - half < taken)
            continue;
          sy_text_draw (cr, middle, levels->signs, 0.5, mark->text, font, false);
          taken = middle + half + 6;
        }
    }
}

void
sy_drawing_timeline (cairo_t *cr, double width, double height, const SyTimeline *timeline, const SyPalette *palette,
                     const char *font)
{
  const Levels levels = find_levels (height);
  bool has_trend = false;

  if (timeline->n_marks <= 0)
    return;
  for (int i = 0; i < timeline->n_marks; i++)
    has_trend = has_trend || has_index (&timeline->marks[i]);
  cairo_save (cr);
  if (has_trend)
    {
      draw_stop (cr, width, &levels, timeline, palette, font);
      draw_goal (cr, width, &levels, timeline, palette, font);
      draw_trend (cr, width, &levels, timeline, palette);
      draw_points (cr, width, &levels, timeline, palette, font);
    }
  draw_marks (cr, width, &levels, timeline, palette, font);
  sy_palette_use (cr, &palette->ink, 1);
  sy_text_draw (cr, LEFT - 8, levels.days, 0, timeline->first_text, font, false);
  if (timeline->last_text[0] != '\0')
    sy_text_draw (cr, width - EDGE, levels.days, 1, timeline->last_text, font, false);
  cairo_restore (cr);
}
