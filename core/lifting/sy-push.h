/* SPDX-License-Identifier: MIT */
#ifndef SY_PUSH_H
#define SY_PUSH_H

#include <stdbool.h>

#include "sy-psychophysical-push.h"
#include "sy-units.h"

/*
 * Pushing, pulling and sliding by hand: the force it takes, and the figures it is held against. Forces in N or lbf,
 * angles in degrees, accelerations as parts of g.
 */

/* ---- what it takes ---- */

typedef struct
{
  double weight;       /* N or lbf, over 0                                                      */
  double start;        /* coefficient at the start, 0 or more                                   */
  double keep;         /* coefficient on the move, 0 or more                                    */
  double slope_deg;    /* 0 to under 90                                                         */
  bool downhill;       /* the slope helps                                                       */
  double acceleration; /* at the start, part of g, 0 or more                                    */
  double deceleration; /* of a stop by hand, part of g; NAN: none is judged                     */
} SyPushLoad;

typedef struct
{
  double initial;   /* W (start cos s ± sin s + a); never under 0                               */
  double sustained; /* W (keep cos s ± sin s); never under 0                                    */
  double hold;      /* W sin s: what resists may be less than published                         */
  double stop;      /* W (sin s + deceleration), down the slope; NAN: none                      */
} SyPushNeeds;

/**
 * sy_push_needs:
 * Source:         statics; hold and stop leave out what rolling or friction helps, the stricter.
 * Special considerations: pure; no allocation; any thread. @start or @keep that is not known is NAN and gives NAN.
 */
void sy_push_needs (const SyPushLoad *load, SyPushNeeds *out);

/**
 * sy_push_runs_away:
 * Whether the slope pulls harder than the least that resists: tan s over @least. On the level it never does.
 */
bool sy_push_runs_away (double slope_deg, double least);

/* ---- what is published for wheels ---- */

/* In the order of the ids of documents: hard-rubber, rubber, polyurethane, steel, steel-on-rail. */
typedef enum
{
  SY_TREAD_HARD_RUBBER, SY_TREAD_RUBBER, SY_TREAD_POLYURETHANE, SY_TREAD_STEEL, SY_TREAD_STEEL_ON_RAIL,
} SyTread;
#define SY_N_TREADS 5
/* smooth-concrete, tile, asphalt, carpet, soft-or-uneven */
typedef enum { SY_GROUND_CONCRETE, SY_GROUND_TILE, SY_GROUND_ASPHALT, SY_GROUND_CARPET, SY_GROUND_UNEVEN } SyGround;
#define SY_N_GROUNDS 5

typedef struct
{
  double coefficient;  /* force that keeps it moving on the level, over its weight; NAN: see @needs_diameter */
  double start_factor; /* force at the start over that                                    */
  double best_mm;      /* the diameter from which a larger wheel buys nothing more; NAN: the diameter does not count */
  double least;        /* the lowest that is published: for running away                  */
  bool needs_diameter; /* the figure is a lever arm, and no diameter was given; else there is none for the ground */
  bool from_memory;    /* that it takes no more than this stands from memory              */
  const char *source;
} SyRollingFigure;

/* Well-kept wheels on a level floor take at least this part of the weight, soft or uneven ground up to that. Source:
   HSE, assessing pushing and pulling. */
#define SY_PUSH_LEAST_ROLLING 0.02
#define SY_PUSH_UNEVEN_ROLLING 0.10
/* Force at the start over force on the move where nothing better is known: 2 to 3, from memory; the upper end. */
#define SY_PUSH_START_FACTOR 3.0

/**
 * sy_push_rolling:
 * The coefficient of a kind of wheel on a kind of floor: twice the lever arm over the diameter, or a coefficient; never
 * under 2 % of the weight, 10 % on soft or uneven ground.
 * Source: lever arms of hard rubber 2.2 mm on smooth concrete, 2.4 on tile, 3.3 on asphalt, 4.5 on industrial carpet,
 *         measured from standstill: Al-Eisawi and others 1999, Applied Ergonomics 30:235. Rubber on concrete 0.01 to
 *         0.02, steel on rail 0.001 to 0.003: physics teaching page. Polyurethane 0.8 to 1.5 mm or, without a diameter,
 *         0.01 to 0.03, and steel 0.5 mm, on hard floors: from memory.
 * Parameters:   tread, ground  -1: not known. diameter_mm  NAN: not known.
 * Return value: not known tread: 2 %, 10 % on soft or uneven ground; a tread without a figure for the ground: NAN.
 */
SyRollingFigure sy_push_rolling (int tread, int ground, double diameter_mm);

/* ---- what is published for a die that slides ---- */

/* steel-dry, steel-greased, rollers */
typedef enum { SY_SLIDE_STEEL_DRY, SY_SLIDE_STEEL_GREASED, SY_SLIDE_ROLLERS } SySlideSurface;
#define SY_N_SLIDE_SURFACES 3

typedef struct
{
  double start, keep, least; /* the highest that are published, and the lowest on the move */
  bool from_memory;
  const char *source;
} SySlideFigure;

/**
 * sy_push_sliding:
 * Source: hard steel on hard steel, dry: 0.78 at the start, 0.42 sliding; with light oil 0.23 and 0.10, with a friction
 *         modifier 0.029 sliding: Kirk-Othmer as quoted in a forum of chemists (second-hand). Mild steel sliding dry
 *         0.57, greasy 0.19; rollers or balls 0.01 to 0.05, start factor 3: from memory.
 */
SySlideFigure sy_push_sliding (SySlideSurface surface);

/* ---- what it is held against ---- */

/* Who does it: documents write women, men, mixed. */
typedef enum { SY_WHO_WOMEN, SY_WHO_MEN, SY_WHO_MIXED } SyPushWho;
#define SY_N_PUSH_WHO 3

typedef struct
{
  double start, moving; /* N or lbf */
} SyPushGuide;

/**
 * sy_push_guideline:
 * Force to start or stop and to keep moving: women 15 and 7 kg, men 20 and 10 kg; a mixed group by the women's. Hands
 * between knuckle and shoulder height, 20 m at most. Source: HSE, assessing pushing and pulling; L23.
 */
SyPushGuide sy_push_guideline (SyPushWho who, SyUnits units);

/* Where the guideline holds. Its heights are words; the figures in cm are assumed, no source. */
#define SY_PUSH_KNUCKLE_CM 75.0
#define SY_PUSH_SHOULDER_CM 135.0
#define SY_PUSH_GUIDE_M 20.0
bool sy_push_guideline_covers (const SyPushTask *task);

/**
 * sy_push_critical:
 * Forces from which the quick check calls pushing and pulling critical: men 360 and 250 N, women 240 and 150 N, a mixed
 * group by the women's. Source: ISO/TR 12295, from memory.
 */
SyPushGuide sy_push_critical (SyPushWho who, SyUnits units);

/**
 * sy_push_limit:
 * The force that a percentage of those who do it accept, N or lbf; of a mixed group the smaller of women's and men's.
 * Parameters:   percent  90, 75 or 50.
 * Return value: NAN where there is no figure.
 */
double sy_push_limit (const SyPushTask *task, SyPushWho who, SyPushForce force, int percent, SyUnits units);

/* A force of N or lbf in kgf, and back. */
double sy_push_kgf (double force, SyUnits units);
double sy_push_of_kgf (double kgf, SyUnits units);

#endif
