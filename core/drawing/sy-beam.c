/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>

#include "sy-drawing-text.h"

/*
 * The steelyard. In the arm's own frame the pivot is 0,0 and x runs out along the long arm; what
 * hangs from it hangs straight down. @k scales the iron parts with the height of the drawing, not
 * the text.
 */
#define MAX_TILT 0.122 /* radians: 7 degrees, enough to see and never steep */
#define TALLEST 180.0
#define PI 3.14159265358979323846

typedef struct
{
  cairo_t *cr;
  const SyPalette *palette;
  const char *font;
  double width, height, k;
  double foot;             /* the ground the stand is on */
  double x, y;             /* pivot */
  double short_arm, zero, end; /* along the arm: load, graduation 0, last graduation */
  double angle;            /* of the arm; below 0 the load is down */
  double last;             /* value of the last graduation */
  SyTextSize digit;
} Arm;

/* 0 at a ratio of 1, -1 and 1 as bounds: the side that is too heavy goes down, and never
   further. */
static double
swing_of (double ratio)
{
  if (isnan (ratio))
    return 0;
  if (!(ratio > 0))
    return -1;
  if (!isfinite (ratio))
    return 1;

  double swing = tanh (1.6 * log (ratio));

  /* A difference too small to see is still a difference: at least a sixteenth of the whole. */
  if (ratio == 1)
    return 0;
  return copysign (fmax (fabs (swing), 0.0625), swing);
}

static SyPoint
arm_point (const Arm *arm, double along, double down)
{
  return (SyPoint) { arm->x + along * cos (arm->angle) - down * sin (arm->angle),
                     arm->y + along * sin (arm->angle) + down * cos (arm->angle) };
}

static void
enter_arm (const Arm *arm)
{
  cairo_save (arm->cr);
  cairo_translate (arm->cr, arm->x, arm->y);
  cairo_rotate (arm->cr, arm->angle);
}

static double
half_thickness (const Arm *arm, double along)
{
  double part = along < 0 ? -along / arm->short_arm : along / (arm->end + 8);

  return arm->k * (5.0 - 2.0 * fmin (1, part));
}

static double
along_of (const Arm *arm, double value)
{
  return arm->zero + value / arm->last * (arm->end - arm->zero);
}

/* Where the stop stands: the poise of an index past the last graduation leans on it. */
static double
stop_of (const Arm *arm)
{
  return arm->end + 11 * arm->k;
}

static double
poise_of (const Arm *arm, double index)
{
  return index > arm->last ? stop_of (arm) - 5 * arm->k : along_of (arm, fmax (0, index));
}

/* ---- parts ---- */

/* Marks on which the ends of the arm stand when it is level; what is between is left to the text. */
static void
draw_level_marks (const Arm *arm)
{
  double far_end = arm->x + stop_of (arm), near_end = arm->x - arm->short_arm;

  sy_palette_use (arm->cr, &arm->palette->ink, 0.6);
  cairo_set_line_width (arm->cr, 0.8);
  cairo_move_to (arm->cr, fmax (1, near_end - 24 * arm->k), arm->y);
  cairo_line_to (arm->cr, near_end - 8 * arm->k, arm->y);
  cairo_move_to (arm->cr, far_end + 5 * arm->k, arm->y);
  cairo_line_to (arm->cr, fmin (arm->width - 1, far_end + 21 * arm->k), arm->y);
  cairo_stroke (arm->cr);
}

static void
draw_stand (const Arm *arm)
{
  cairo_t *cr = arm->cr;
  double k = arm->k, foot = arm->foot;

  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_set_line_width (cr, 1.2);
  cairo_move_to (cr, arm->x, arm->y + 4 * k);
  cairo_line_to (cr, arm->x + 6 * k, arm->y + 15 * k);
  cairo_line_to (cr, arm->x + 2.2 * k, arm->y + 15 * k);
  cairo_line_to (cr, arm->x + 2.2 * k, foot);
  cairo_line_to (cr, arm->x - 2.2 * k, foot);
  cairo_line_to (cr, arm->x - 2.2 * k, arm->y + 15 * k);
  cairo_line_to (cr, arm->x - 6 * k, arm->y + 15 * k);
  cairo_close_path (cr);
  sy_palette_use (cr, &arm->palette->paper, 1);
  cairo_fill_preserve (cr);
  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_stroke (cr);
  cairo_set_line_width (cr, 1.8);
  cairo_move_to (cr, arm->x - 20 * k, foot);
  cairo_line_to (cr, arm->x + 20 * k, foot);
  cairo_stroke (cr);
}

static void
draw_band (const Arm *arm, double p5, double p95)
{
  if (isnan (p5) || isnan (p95) || p95 < p5)
    return;

  double from = p5 > arm->last ? arm->end : along_of (arm, fmax (0, p5));
  double to = p95 > arm->last ? stop_of (arm) : along_of (arm, fmax (0, p95));
  SyColour tone = sy_colour_tone (arm->palette, 0.2);

  enter_arm (arm);
  sy_palette_use (arm->cr, &tone, 1);
  cairo_rectangle (arm->cr, from, -9 * arm->k, fmax (to - from, 2), 18 * arm->k);
  cairo_fill (arm->cr);
  cairo_restore (arm->cr);
}

static void
draw_bar (const Arm *arm, double right)
{
  cairo_t *cr = arm->cr;
  double tip = half_thickness (arm, right), butt = half_thickness (arm, -arm->short_arm);
  double left = -arm->short_arm - 5 * arm->k, middle = half_thickness (arm, 0);

  enter_arm (arm);
  cairo_move_to (cr, left, -butt);
  cairo_line_to (cr, 0, -middle);
  cairo_line_to (cr, right, -tip);
  cairo_line_to (cr, right, tip);
  cairo_line_to (cr, 0, middle);
  cairo_line_to (cr, left, butt);
  cairo_close_path (cr);
  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_set_line_width (cr, 1.4);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
  cairo_arc (cr, 0, 0, 2.2 * arm->k, 0, 2 * PI);
  cairo_fill (cr);
  cairo_restore (cr);
}

static void
draw_tick (const Arm *arm, double value, double length, double line)
{
  double along = along_of (arm, value), top = -half_thickness (arm, along);

  cairo_set_line_width (arm->cr, line);
  cairo_move_to (arm->cr, along, top);
  cairo_line_to (arm->cr, along, top - length * arm->k);
  cairo_stroke (arm->cr);
}

static void
draw_graduations (const Arm *arm)
{
  double unit = (arm->end - arm->zero) / arm->last;
  /* Tenths, fifths or halves: what leaves three pixels between two lines. */
  int parts = unit >= 40 ? 10 : unit >= 18 ? 5 : 2;
  /* Whole numbers that leave room for their digits. */
  int every = (int) fmax (1, ceil (2.2 * arm->digit.width / unit));
  int last = (int) floor (arm->last + 1e-9);

  if (last > 1000)
    return; /* no scale of an index */

  enter_arm (arm);
  sy_palette_use (arm->cr, &arm->palette->ink, 1);
  for (int i = 0; i <= last * parts; i++)
    if (i % parts == 0)
      draw_tick (arm, (double) i / parts, 9, 1.2);
    else
      draw_tick (arm, (double) i / parts, 2 * i == parts * (2 * (i / parts) + 1) ? 6 : 3.5, 0.8);
  cairo_restore (arm->cr);

  for (int i = 0; i <= last; i += every)
    {
      char text[16];
      SyPoint at = arm_point (arm, along_of (arm, i),
                              -half_thickness (arm, along_of (arm, i)) - 9 * arm->k);

      snprintf (text, sizeof text, "%d", i);
      sy_text_draw (arm->cr, at.x, at.y - arm->digit.descent * 0.5 - 1, 0.5, text, arm->font,
                    false);
    }
}

static void
draw_notch (const Arm *arm, double goal)
{
  cairo_t *cr = arm->cr;

  if (!(goal > 0) || goal > arm->last)
    return;

  double along = along_of (arm, goal), top = -half_thickness (arm, along);

  enter_arm (arm);
  cairo_move_to (cr, along - 5 * arm->k, top);
  cairo_line_to (cr, along, top + 7 * arm->k);
  cairo_line_to (cr, along + 5 * arm->k, top);
  cairo_close_path (cr);
  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_fill (cr);
  cairo_restore (cr);
}

static void
draw_stop (const Arm *arm)
{
  double along = stop_of (arm);

  enter_arm (arm);
  sy_palette_use (arm->cr, &arm->palette->ink, 1);
  cairo_rectangle (arm->cr, along - 1.5 * arm->k, -9 * arm->k, 3 * arm->k, 18 * arm->k);
  cairo_fill (arm->cr);
  cairo_restore (arm->cr);
}

static void
draw_load (const Arm *arm, double block_width, double block_height, bool filled)
{
  cairo_t *cr = arm->cr;
  double k = arm->k;
  SyPoint at = arm_point (arm, -arm->short_arm, 0);
  SyColour tone = sy_colour_tone (arm->palette, 0.14);

  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_set_line_width (cr, 1.1);
  cairo_move_to (cr, at.x, at.y);
  cairo_line_to (cr, at.x, at.y + 8 * k);
  cairo_line_to (cr, at.x - block_width / 2 + 1, at.y + 16 * k);
  cairo_move_to (cr, at.x, at.y + 8 * k);
  cairo_line_to (cr, at.x + block_width / 2 - 1, at.y + 16 * k);
  cairo_stroke (cr);
  cairo_arc (cr, at.x, at.y, 1.6 * k, 0, 2 * PI);
  cairo_fill (cr);
  cairo_rectangle (cr, at.x - block_width / 2, at.y + 16 * k, block_width, block_height);
  sy_palette_use (cr, filled ? &arm->palette->ink : &tone, 1);
  cairo_fill_preserve (cr);
  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_set_line_width (cr, 1.6);
  cairo_stroke (cr);
}

/* A loop about the arm and the weight that hangs in it. Returns where its middle is. */
static SyPoint
draw_poise (const Arm *arm, double along)
{
  cairo_t *cr = arm->cr;
  double k = arm->k;
  SyPoint at = arm_point (arm, along, 0);
  double thick = half_thickness (arm, along);

  enter_arm (arm);
  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_rectangle (cr, along - 3 * k, -thick - 1.5 * k, 6 * k, 2 * thick + 3 * k);
  cairo_fill (cr);
  cairo_restore (cr);

  cairo_set_line_width (cr, 1.6);
  cairo_move_to (cr, at.x, at.y);
  cairo_line_to (cr, at.x, at.y + 13 * k);
  cairo_stroke (cr);
  cairo_move_to (cr, at.x - 3.5 * k, at.y + 12 * k);
  cairo_line_to (cr, at.x + 3.5 * k, at.y + 12 * k);
  cairo_curve_to (cr, at.x + 5 * k, at.y + 16 * k, at.x + 8 * k, at.y + 17 * k, at.x + 8 * k,
                  at.y + 22 * k);
  cairo_line_to (cr, at.x + 8 * k, at.y + 29 * k);
  cairo_line_to (cr, at.x - 8 * k, at.y + 29 * k);
  cairo_line_to (cr, at.x - 8 * k, at.y + 22 * k);
  cairo_curve_to (cr, at.x - 8 * k, at.y + 17 * k, at.x - 5 * k, at.y + 16 * k, at.x - 3.5 * k,
                  at.y + 12 * k);
  cairo_close_path (cr);
  cairo_fill (cr);
  return (SyPoint) { at.x, at.y + 22 * k };
}

static void
draw_beyond (const Arm *arm)
{
  cairo_t *cr = arm->cr;
  double from = stop_of (arm) + 5 * arm->k, to = from + 20 * arm->k;

  enter_arm (arm);
  sy_palette_use (cr, &arm->palette->ink, 1);
  cairo_set_line_width (cr, 2);
  cairo_move_to (cr, from, 0);
  cairo_line_to (cr, to - 7 * arm->k, 0);
  cairo_stroke (cr);
  cairo_move_to (cr, to, 0);
  cairo_line_to (cr, to - 9 * arm->k, -4 * arm->k);
  cairo_line_to (cr, to - 9 * arm->k, 4 * arm->k);
  cairo_close_path (cr);
  cairo_fill (cr);
  cairo_restore (cr);
}

/* "LI 2.1" beside the poise, or "LI 4.2 · beyond 3" on the side where it has room. */
static void
draw_reading (const Arm *arm, const SyBeam *beam, SyPoint poise)
{
  char number[SY_TEXT_NUMBER_MAX] = "";
  const char *remark = NULL;

  if (isinf (beam->index))
    remark = beam->unbounded_text;
  else
    {
      bool by_goal = fabs (beam->index - beam->goal) < fabs (beam->index - arm->last);

      sy_text_number (beam->index, by_goal ? beam->goal : arm->last, number);
      if (beam->index > arm->last)
        remark = beam->beyond_text;
    }

  const char *symbol = beam->symbol ? beam->symbol : "";
  char *reading = g_strconcat (symbol, *number && *symbol ? "\302\240" : "", number, NULL);
  double main_width = sy_text_measure (arm->cr, reading, arm->font, true).width;
  double gap = remark ? 8 : 0;
  double whole
      = main_width + gap + (remark ? sy_text_measure (arm->cr, remark, arm->font, false).width : 0);
  double clear = 13 * arm->k;
  double x = poise.x + clear;

  if (x + whole > arm->width - 4)
    x = fmax (arm->x + 10 * arm->k, poise.x - clear - whole);

  double baseline = poise.y + (arm->digit.ascent - arm->digit.descent) / 2;

  baseline = fmin (baseline, arm->height - arm->digit.descent - 2);
  sy_palette_use (arm->cr, &arm->palette->ink, 1);
  sy_text_draw (arm->cr, x, baseline, 0, reading, arm->font, true);
  if (remark)
    sy_text_draw (arm->cr, x + main_width + gap, baseline, 0, remark, arm->font, false);
  g_free (reading);
}

/* ---- the two arms ---- */

static void
begin_arm (Arm *arm, cairo_t *cr, double width, double height, const SyPalette *palette,
           const char *font)
{
  *arm = (Arm) { .cr = cr, .palette = palette, .font = font, .width = width };
  arm->height = fmin (height, TALLEST);
  arm->k = fmin (1.3, fmax (0.5, arm->height / 125));
  arm->digit = sy_text_measure (cr, "0", font, false);
  arm->foot = arm->height - 3;

  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  cairo_translate (cr, 0, (height - arm->height) / 2);
}

void
sy_drawing_beam (cairo_t *cr, double width, double height, const SyBeam *beam,
                 const SyPalette *palette, const char *font)
{
  Arm arm;

  begin_arm (&arm, cr, width, height, palette, font);

  double k = arm.k, block = fmin (34 * k, 0.09 * width);
  double text = arm.digit.ascent + arm.digit.descent;

  arm.last = beam->end > 0 ? beam->end : 3;
  arm.short_arm = fmin (0.13 * width, 110);
  arm.x = 8 + block / 2 + arm.short_arm;
  arm.zero = 26 * k;
  arm.end = fmax (arm.zero + 1, width - 8 - arm.x - 38 * k);

  /* The far end may rise to the edge of the drawing and no further. */
  double rise = fmin (0.14 * arm.height, sin (MAX_TILT) * (arm.end + 38 * k));
  double tilt = fmin (1, fmax (0, beam->tilt));
  double goal = beam->goal > 0 ? beam->goal : 1;

  arm.y = text + 14 * k + rise;
  arm.angle = -tilt * swing_of (beam->index / goal) * asin (rise / (arm.end + 38 * k));

  draw_level_marks (&arm);
  draw_stand (&arm);
  draw_band (&arm, beam->p5, beam->p95);
  draw_bar (&arm, stop_of (&arm));
  draw_graduations (&arm);
  draw_notch (&arm, beam->goal);
  draw_stop (&arm);
  if (!isnan (beam->index))
    {
      draw_load (&arm, block, 24 * k, false);
      if (beam->index > arm.last)
        draw_beyond (&arm);
      draw_reading (&arm, beam, draw_poise (&arm, poise_of (&arm, beam->index)));
    }
  cairo_restore (cr);
}

void
sy_drawing_mass_arm (cairo_t *cr, double width, double height, const SyMassArm *mass_arm,
                     const SyPalette *palette, const char *font)
{
  Arm arm;

  begin_arm (&arm, cr, width, height, palette, font);

  double k = arm.k, text = arm.digit.ascent + arm.digit.descent;
  double ratio = mass_arm->limit > 0 ? mass_arm->mass / mass_arm->limit : (double) INFINITY;
  double reach = fmin (0.3 * width, 170);
  double rise = fmin (0.12 * arm.height, sin (MAX_TILT) * reach);
  /* Equal heights, so that the widths are in proportion; the larger has its full width. */
  double full = fmin (56 * k, 0.4 * reach),
         block = fmax (8 * k, arm.height - text - 40 * k - 2 * rise);
  double mass_width = isnan (ratio) ? 0 : fmax (6 * k, full * fmin (1, ratio));
  double limit_width = ratio > 1 ? fmax (6 * k, full / ratio) : full;
  double baseline = arm.height - arm.digit.descent - 1;

  block = fmin (block, 26 * k);
  arm.foot = baseline - arm.digit.ascent - 3;
  arm.short_arm = reach;
  arm.last = 1;
  arm.zero = 0;
  arm.end = reach;
  arm.x = width / 2;
  arm.y = 8 * k + rise;
  arm.angle = -swing_of (ratio) * asin (rise / reach);

  draw_stand (&arm);
  draw_bar (&arm, reach + 5 * k);
  if (!isnan (ratio))
    draw_load (&arm, mass_width, block, ratio > 1);
  arm.short_arm = -reach; /* the other end of the same arm */
  draw_load (&arm, limit_width, block, false);

  sy_palette_use (cr, &palette->ink, 1);

  /* Each text under its block, as near as the edges and the other text allow. */
  double mass_half = sy_text_measure (cr, mass_arm->mass_text, font, ratio > 1).width / 2;
  double limit_half = sy_text_measure (cr, mass_arm->limit_text, font, false).width / 2;
  double mass_x = fmax (width / 2 - reach, mass_half + 4);
  double limit_x = fmin (width / 2 + reach, width - limit_half - 4);

  mass_x = fmax (mass_half, fmin (mass_x, limit_x - limit_half - mass_half - 10));
  if (!isnan (ratio))
    sy_text_draw (cr, mass_x, baseline, 0.5, mass_arm->mass_text, font, ratio > 1);
  sy_text_draw (cr, limit_x, baseline, 0.5, mass_arm->limit_text, font, false);
  cairo_restore (cr);
}
