/* SPDX-License-Identifier: MIT */
#ifndef SY_HANG_H
#define SY_HANG_H

#include "sy-vector.h"

/*
 * How a stiff load hangs from one hook on legs that do not stretch: exact statics in three dimensions.
 * Lengths in one unit of the caller's choice, angles in degrees, loads as parts of the weight (1 = the whole load).
 * Coordinates are of the load as it was drawn: x and y in plan, z up.
 */

/* A straight part of a sling from a point of the load to the hook. A basket is two of them. */
#define SY_PARTS_MAX 8
typedef struct
{
  SyVec3 at;     /* where it takes hold of the load                       */
  double length; /* sy_hang_free only: to the hook, over 0                */
} SyPart;

typedef enum
{
  SY_HANG_BALANCED,
  SY_HANG_OUTSIDE,   /* no set of taut legs can balance it: the centre is outside the points              */
  SY_HANG_NO_MEET,   /* the legs do not meet: the hook is not above a point, or the lengths are too short */
  SY_HANG_TIPS,      /* it balances, but turns over at a touch: the centre is above what holds it (the point, or the
                        line through the points that pull), or not below the hook                          */
} SyHangStatus;

typedef struct
{
  SyHangStatus status;
  SyVec3 hook;                   /* in the coordinates of the load; NAN, like @up, @tilt_deg, @height and the angles,
                                    where a free load has none                                       */
  SyVec3 up;                     /* unit vector of the load that stands upright when it hangs        */
  double tilt_deg;               /* between @up and the load's own z                                 */
  double height;                 /* of the hook over the centre of gravity, along @up                */
  int n;
  double angle_deg[SY_PARTS_MAX]; /* of each part from the vertical, 0 to 180; within 1e-9 of 0, 30, 45, 60 or 90 it is
                                     that figure: rounding must not put an exact limit over itself   */
  double factor[SY_PARTS_MAX];    /* 1 / cos of that angle; INFINITY from 90 on                      */
  double worst[SY_PARTS_MAX];     /* largest over all balancing sets of at most three taut parts     */
  double elastic[SY_PARTS_MAX];   /* same stiffness in every part, none pushing: least sum of squares */
  bool slack[SY_PARTS_MAX];       /* cannot be taut in any balancing set; of a free load: hangs loose */
  double slack_by[SY_PARTS_MAX];  /* free load: length to spare, 0 where at its length; level: 0     */
  bool determinate;               /* worst and elastic are one answer                                */
  double residual;                /* of the elastic answer: force out of balance, part of the weight */
  double margin;                  /* least distance in plan of the centre from the edge of what holds it: the outline of
                                     the points, of which those lower than the centre count where their legs pass its
                                     height (the section of the pyramid); of a free load in the plane across @up, and
                                     without legs that have more than @possible to spare; negative outside; 0 for one or
                                     two points and points in a line                                 */
  double skew;                    /* elastic: largest |change of a leg| over all, as part of (stiffness × length
                                     error of one leg); 0 where determinate: see sy_hang_skew_error  */
  double skew_change[SY_PARTS_MAX]; /* that change, leg by leg, for the leg whose being longer or shorter slackens a leg
                                       first; signs as for longer                                    */
} SyHang;

/**
 * sy_hang_level:
 * The load held level with the hook at a given place over its centre of gravity.
 * Parameters:   parts  @n of them, 1 to SY_PARTS_MAX; lengths are not looked at.
 *               cg     centre of gravity.
 *               hook   must be over @cg in plan; how far off is the caller's to check (facts allow 1 mm).
 *               out    overwritten whole; with a status other than BALANCED or TIPS: angles, factors and margin only,
 *                      worst, elastic, residual and skew are NAN.
 * Discussion:   the first that applies: NO_MEET (an angle of 90 or more), OUTSIDE, TIPS. A centre level with the line
 *               through two points does not tip; one on the edge of the outline is not outside; on an edge, and above
 *               it, it tips.
 *               Tolerances, ours, no source: a pull of -1e-10 of the load counts as 0; legs within 1e-6 of their
 *               spread of one plane count as lying in it, and the hook then has to be over the line of the points
 *               within 1e-6 of the distance between them; of one leg within 1e-6 of its length over its point.
 * Source:       statics: sum of forces; hook and centre on one vertical, so that no moment is left.
 *               Worst: the sets of tensions form a convex set whose corners have at most three taut legs; two
 *               diagonal legs of a centred four carry everything (Nicholls's Seamanship, the same case first).
 * Special considerations: pure; no allocation; any thread.
 */
void sy_hang_level (const SyPart *parts, int n, SyVec3 cg, SyVec3 hook, SyHang *out);

/**
 * sy_hang_free:
 * The load on legs of given length, free to turn until it balances: the hook then is a place, no farther from any
 * point than its leg is long, from which the centre of gravity hangs lower than from all places round it. Of several
 * such places the one that turns the load least from how it was drawn: the load swings there, not on to the lowest of
 * all, which for a centre above the points is upside down.
 * Parameters:   possible  legs with no more than this length to spare count as possibly taut in @worst and @elastic
 *                         (0 for none); they keep their @slack and @slack_by.
 *               out       as above; OUTSIDE and TIPS are not used: what it finds balances and is stable. A load
 *                         that turns right over has a @tilt_deg over 90: how much is too much is the caller's.
 * Discussion:   a leg with no more than 1e-9 of its length to spare is at its length.
 * Source:       statics: least potential energy; the legs that pull are the multipliers of the lengths.
 */
void sy_hang_free (const SyPart *parts, int n, SyVec3 cg, double possible, SyHang *out);

/**
 * sy_hang_skew_error:
 * The length error of one leg at which the first leg of an over-determined set goes slack, with the same stiffness in
 * every leg.
 * Parameters:   weight     load, force; over 0.
 *               stiffness  of one leg, force / length; over 0.
 * Return value: length; INFINITY where the legs are determinate; 0 where one of the set is slack already with every
 *               length right; NAN where there is no answer.
 */
double sy_hang_skew_error (const SyHang *hang, double weight, double stiffness);

#endif
