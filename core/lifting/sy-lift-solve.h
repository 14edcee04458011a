/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_SOLVE_H
#define SY_LIFT_SOLVE_H

#include "sy-lift.h"

/*
 * The equation turned round, in closed form: which value of one fact gives a wanted multiplier.
 * Each function gives candidates; the caller judges them with the equation itself.
 */

/** Largest H with HM >= @wanted; false when @wanted is over 1 (not even the closest reach does it). */
bool sy_lift_solve_reach (double wanted, SyUnits units, double *reach);

/** Largest A with AM >= @wanted; false when @wanted is over 1. */
bool sy_lift_solve_twist (double wanted, SyUnits units, double *twist_deg);

/** Largest D with DM >= @wanted; false when @wanted is over 1. */
bool sy_lift_solve_travel (double wanted, SyUnits units, double *travel);

#define SY_LIFT_HEIGHTS_MAX 32
/**
 * sy_lift_solve_height:
 * Heights V at which VM(V) · DM(|V - other|) equals @wanted or has an extreme, on every piece of the two formulas,
 * and the breakpoints of the pieces themselves. With a fixed travel (@moves_travel false) DM is left out.
 * Return value: how many candidates were written to @heights; each is within 0 .. height_max.
 */
size_t sy_lift_solve_height (double wanted, double other, bool moves_travel, SyUnits units,
                             double heights[SY_LIFT_HEIGHTS_MAX]);

#endif
