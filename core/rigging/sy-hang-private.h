/* SPDX-License-Identifier: MIT */
#ifndef SY_HANG_PRIVATE_H
#define SY_HANG_PRIVATE_H

#include "sy-hang.h"

/* What the level and the free load have in common. For core/rigging only. */

/* How parts that pull along known directions share one upright load. */
typedef struct
{
  bool balanced; /* false: no set of pulls balances it; the rest is then not to be read */
  double worst[SY_PARTS_MAX];
  double elastic[SY_PARTS_MAX];
  double residual;
  bool determinate;
  double skew;
  double skew_change[SY_PARTS_MAX];
  double depth; /* where all that can pull lies in one plane: how far under the hook the highest place is that the load
                   can swing about; 0 where three directions hold it */
} SyShare;

/**
 * sy_hang_share:
 * Every answer T >= 0 of sum T·u = up: its corners, and the one of least sum of squares.
 * Parameters:   u       unit vectors from the points to the hook; length from each to it, over 0; @n of them.
 *               up      unit vector.
 * Tolerances:   a pull of -1e-10 of the load counts as 0. Parts within 1e-6 of their spread of one plane count as lying
 *               in it, and @up through the hook then has to pass the points within 1e-6 of the distance between
 *               them (of parts in one direction: to be within 1e-6 rad of it).
 *               Ours, no source: rounding stays well under them, a workshop's tape well over.
 */
void sy_hang_share (const SyVec3 *u, const double *length, int n, SyVec3 up, SyShare *out);

/**
 * sy_hang_margin:
 * SyHang's margin of @cg inside the outline of @n points seen along @up. A point lower than the centre counts where its
 * leg passes the height of the centre; a higher one where it is. 0 where the points have no area.
 */
double sy_hang_margin (const SyVec3 *at, int n, SyVec3 cg, SyVec3 hook, SyVec3 up);

/* Angle between two directions in degrees; within 1e-9 of a limit of the trade (0, 30, 45, 60, 90) it is that limit, so
   that rounding cannot put an exact limit over itself. */
double sy_hang_angle_deg (SyVec3 a, SyVec3 b);

/* 1 / cos; exact at the limits above, INFINITY from 90 on. @length and @rise of the same leg. */
double sy_hang_factor (double angle_deg, double length, double rise);

/* @out emptied: no answer yet, every figure NAN. */
void sy_hang_clear (SyHang *out, int n);

/* The answer of @share for the parts whose places are in @index, the others 0. */
void sy_hang_take_share (SyHang *out, const SyShare *share, const int *index, int n);

#endif
