/* SPDX-License-Identifier: MIT */
#ifndef SY_OUTLINE_H
#define SY_OUTLINE_H

#include "sy-vector.h"

/* The outline in plan of the points that hold a load: their convex hull in x and y. Source: plane geometry. */

#define SY_OUTLINE_MAX 64
typedef struct
{
  int n;                          /* corners: 1 or 2 where the points are one place or lie on a line */
  SyVec3 corner[SY_OUTLINE_MAX];  /* counter-clockwise seen from above; z is 0                       */
} SyOutline;

/**
 * sy_outline_make:
 * Parameters:   points  @n of them, 1 to SY_OUTLINE_MAX; z is not looked at.
 * Return value: false, and @out untouched, where @n is out of range.
 * Discussion:   an outline narrower than 1e-9 of its length is the straight line between its ends.
 */
bool sy_outline_make (const SyVec3 *points, int n, SyOutline *out);

/**
 * sy_outline_distance:
 * In plan, from the nearest edge: over 0 inside, 0 on the edge, negative outside. Of one point or a line it is never
 * over 0: nothing is inside.
 */
double sy_outline_distance (const SyOutline *outline, double x, double y);

/**
 * sy_outline_width:
 * The narrow width: the least distance between two parallel lines that hold the outline between them; 0 for one point
 * or a line.
 */
double sy_outline_width (const SyOutline *outline);

#endif
