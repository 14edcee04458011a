/* SPDX-License-Identifier: MIT */
#ifndef SY_LANES_H
#define SY_LANES_H

#include <stdbool.h>

#include "sy-drawing.h"

/*
 * Who does what when: one lane a person, the steps as bars along the minutes, over them how long the machine stands. A pure
 * function of what it is given, for screen and paper.
 *
 * A step with the machine stopped is toned, one with the machine running is paper with a thin outline, a stopped one that
 * could be done while the machine runs is hatched; the verdict stands in the bar as its shape, a strict one makes the
 * outline heavy. A step of several people is one bar over lanes that are next to each other, and stands again in those
 * that are not. Words that find no room in a bar end in an ellipsis, or the number stands alone: the whole words are beside the
 * drawing.
 */

typedef struct
{
  const char *number, *label; /* "12", "Lift the old halves out"                       */
  double start, end;          /* minutes, start ≤ end                                  */
  unsigned int lanes;         /* bit k: the k-th lane; at least one                    */
  bool stopped;               /* the machine is                                        */
  bool can_run;               /* could be done while it runs                           */
  bool has_shape;             /* something is said of it                               */
  SyShape shape;
  bool heavy;                 /* the verdict is a strict one                           */
} SyLaneBar;

#define SY_LANES_MAX 32
#define SY_LANE_KEYS 4
typedef struct
{
  int n_lanes;
  const char *const *lanes;   /* names                                                 */
  int n_bars;
  const SyLaneBar *bars;
  double end;                 /* minutes that the axis shows at least                  */
  double stands_from, stands_to; /* equal: it does not stand                           */
  const char *machine_text;   /* "Machine"                                             */
  const char *stands_text;    /* "stands 41 min"                                       */
  const char *minutes_text;   /* "min"                                                 */
  const char *keys[SY_LANE_KEYS]; /* what stopped, running, could run and strict look like, in words; NULL: no key */
  int hot;                    /* bar under the pointer or with the focus, -1 none      */
} SyLanes;

/* How high it is made for; more makes the lanes wider. */
#define SY_LANE_HEIGHT 46.0
#define SY_LANES_HEAD 28.0
#define SY_LANES_AXIS 24.0
#define SY_LANES_KEY 22.0
double sy_drawing_lanes_height (const SyLanes *lanes);

/* Where things lie in a drawing: x = left + scale · minutes; lane k from top + k · lane. */
typedef struct
{
  double left, right, scale;
  double top, lane;
  double axis, key;  /* their upper edges           */
  double tick;       /* minutes from tick to tick   */
} SyLanesFit;

/**
 * sy_drawing_lanes_fit:
 * Parameters:   as of sy_drawing_lanes; nothing is drawn.
 */
SyLanesFit sy_drawing_lanes_fit (cairo_t *cr, double width, double height, const SyLanes *lanes, const char *font);
void sy_drawing_lanes (cairo_t *cr, double width, double height, const SyLanes *lanes, const SyPalette *palette,
                       const char *font);

/* The bar at x, y; -1 for none. One that takes no time is found within 4 of it. */
int sy_drawing_lanes_at (const SyLanes *lanes, const SyLanesFit *fit, double x, double y);
/* The bar before (@by -1) or after (1) another in the order of their starts, within all lanes; of bars that begin together in
   the order given. From -1 the last or the first; -1 beyond the ends. */
int sy_drawing_lanes_beside (const SyLanes *lanes, int bar, int by);
/* The bar in the nearest lane over (@by -1) or under (1) those of a bar that is at work at its time, else the nearest in time;
   -1: there is none. */
int sy_drawing_lanes_across (const SyLanes *lanes, int bar, int by);

#endif
