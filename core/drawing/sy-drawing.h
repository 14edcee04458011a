/* SPDX-License-Identifier: MIT */
#ifndef SY_DRAWING_H
#define SY_DRAWING_H

#include <pango/pangocairo.h>

#include "sy-palette.h"
#include "sy-scene.h"

/*
 * Drawings for screen and paper alike. All are pure functions of what they are given: they draw
 * into 0,0 .. width,height of @cr in points (pixels on screen) with text in @font (a Pango font
 * description text, "Sans 11"; NULL: Sans 10). No colour outside the palette.
 */

/* A scene to scale (equal scale on both axes), with a scale bar. */
void sy_drawing_scene (cairo_t *cr, double width, double height, const SyScene *scene,
                       const SyPalette *palette, const char *font);

/* Where a scene lies in a drawing of it: x = left + scale · x, y = bottom - scale · y. */
typedef struct
{
  double scale; /* 0: there is nothing to scale by */
  double left, bottom;
} SySceneFit;

/**
 * sy_drawing_scene_fit:
 * Parameters:   as of sy_drawing_scene; nothing is drawn.
 */
SySceneFit sy_drawing_scene_fit (cairo_t *cr, double width, double height, const SyScene *scene, const char *font);

/* How near to a handle counts as on it. */
#define SY_SCENE_GRIP 12.0
/* The mark of the nearest handle within SY_SCENE_GRIP of x, y in the drawing; -1 for none. */
int sy_drawing_scene_handle_at (const SyScene *scene, const SySceneFit *fit, double x, double y);

/* The steelyard: graduated arm 0 to 3 with a stop beyond; the poise stands at the index. */
typedef struct
{
  double index;     /* INFINITY: beyond the stop; NAN: none yet      */
  double goal;      /* the notch                                      */
  double p5, p95;   /* pale band on the arm; NAN: none                */
  double end;       /* last graduation (3)                            */
  const char *symbol;       /* "LI"                                    */
  const char *beyond_text;  /* translated: "beyond 3"                  */
  const char *unbounded_text; /* translated: "no limit holds"          */
  double tilt;      /* 0 .. 1: how far the arm has swung to its place (animation); 1 at rest */
} SyBeam;
void sy_drawing_beam (cairo_t *cr, double width, double height, const SyBeam *beam,
                      const SyPalette *palette, const char *font);

/* A smaller arm: a mass against a limit. */
typedef struct
{
  double mass, limit;       /* same unit                               */
  const char *mass_text;    /* translated and formatted: "30 kg"       */
  const char *limit_text;   /* "20 kg reference mass"                  */
} SyMassArm;
void sy_drawing_mass_arm (cairo_t *cr, double width, double height, const SyMassArm *arm,
                          const SyPalette *palette, const char *font);

/* What takes the load constant down to the RWL: one bar a multiplier, each from where the last
   ended. */
typedef struct
{
  const char *symbol;   /* "H"                     */
  const char *fact;     /* "55 cm", formatted      */
  double factor;        /* 0 .. 1                  */
} SyBar;
typedef struct
{
  double start;             /* 23                  */
  const char *start_text;   /* "23 kg"             */
  const char *end_text;     /* "8.6 kg RWL"        */
  int n_bars;
  const SyBar *bars;
  int hot;                  /* bar under the pointer or with the focus, -1 none */
} SyBars;
#define SY_BAR_ROW 26.0 /* height of a row; the whole is (n_bars + 2) rows */
void sy_drawing_bars (cairo_t *cr, double width, double height, const SyBars *bars,
                      const SyPalette *palette, const char *font);
/* The bar at y, -1 for none. */
int sy_drawing_bars_at (const SyBars *bars, double y);

/* Load against capacity: a line of notches on top, then one bar a thing that carries, each from 0 to its part of what it
   may carry. The one that governs is drawn heavy. */
typedef struct
{
  const char *name;     /* "A, eyebolt 1"                                               */
  const char *figures;  /* "519 / 500 kg", formatted; "" for none                       */
  const char *percent;  /* "103.7 %", formatted; "" for none                            */
  double ratio;         /* 1: all that it may carry; INFINITY: nothing is left that it may carry; NAN: not known */
  const char *said;     /* translated; stands in the bar's place where the ratio is not finite */
} SyCapacityBar;
typedef struct
{
  int n_bars;
  const SyCapacityBar *bars;
  int governing;            /* -1 none                                        */
  int hot;                  /* bar under the pointer or with the focus, -1 none */
  double notice;            /* a notch before the one at 1; NAN: none         */
  const char *notice_text;  /* "75 %", formatted                              */
  const char *full_text;    /* "100 %"                                        */
} SyCapacityBars;
/* The whole is (n_bars + 1) rows of SY_BAR_ROW high. */
void sy_drawing_capacity_bars (cairo_t *cr, double width, double height, const SyCapacityBars *bars,
                               const SyPalette *palette, const char *font);
/* The bar at y, -1 for none. */
int sy_drawing_capacity_bars_at (const SyCapacityBars *bars, double y);

/* One limit as a thin bar, with a notch where its goal is; the one that governs is drawn heavy. */
typedef struct
{
  double part;   /* of the goal: 1 is at it; INFINITY: no limit holds; NAN: nothing is drawn */
  double end;    /* the part at the right edge, at least 1; beyond it an arrow                */
  bool governs;
} SyLimitBar;
#define SY_LIMIT_BAR_HEIGHT 16.0
void sy_drawing_limit_bar (cairo_t *cr, double width, double height, const SyLimitBar *bar,
                           const SyPalette *palette);

/* The shape of a verdict in a square of @size: 0 by-hand/within-capacity … in the order of
   SyVerdict. */
typedef enum
{
  SY_SHAPE_LEVEL, SY_SHAPE_DOWN, SY_SHAPE_GAP, SY_SHAPE_OUTSIDE, SY_SHAPE_HOOK, SY_SHAPE_HOOK_STRUCK
} SyShape;
void sy_drawing_shape (cairo_t *cr, double size, SyShape shape, const SyPalette *palette);

/* A line of text; alignment 0 left .. 1 right about x; returns its width. */
double sy_drawing_text (cairo_t *cr, double x, double baseline, double alignment, const char *text,
                        const char *font);

#endif
