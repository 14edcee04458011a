/* SPDX-License-Identifier: MIT */
#ifndef SY_BACK_H
#define SY_BACK_H

#include "sy-units.h"

/*
 * How hard a lift presses on the lowest disc of the back: an estimate of another kind than a limit on a mass.
 * Source: hand calculation of the University of Utah, F = 3 BW cos θ + 0.5 L HB + 0.8 (BW / 2 + L), pounds-force and
 *         inches; the formula from memory, that it exists and was revised twice since read. Static, both hands, no twist: a
 *         lower estimate (measured peaks of fast lifts are higher, read).
 */

/* NIOSH 1981: 3 400 N, from where on a task is to be changed, and 6 400 N, the most that is permissible, in kN. The print read has
   350 and 650 kgf (770 and 1 430 lb; 3.43 and 6.37 kN), which are not exact conversions; NIOSH 1991 keeps 3.4 kN (from memory). */
#define SY_BACK_ACTION_KN 3.4
#define SY_BACK_LIMIT_KN 6.4

typedef struct
{
  double body_mass; /* kg or lb, over 0                                                        */
  double trunk_deg; /* of the trunk from the horizontal: 90 upright, 0 bent level; 0 to 90     */
  double load;      /* kg or lb, 0 or more                                                     */
  double arm;       /* hands to the low back along the floor, cm or in, over 0                 */
} SyBackPose;

/* The three terms and their sum, kN or lbf. */
typedef struct
{
  double trunk;  /* muscles that hold the trunk       */
  double load;   /* muscles that hold the load        */
  double direct; /* what rests on the disc            */
  double sum;
} SyBack;

/**
 * sy_back_compression:
 * Special considerations: pure; any thread; no allocation.
 */
void sy_back_compression (const SyBackPose *pose, SyUnits units, SyBack *out);

/* A threshold above in the unit of @units, kN or lbf. */
double sy_back_threshold (double kilonewton, SyUnits units);

/**
 * sy_back_load:
 * The load, kg or lb, with which the estimate is @force (kN or lbf), all else as in @pose; below 0: the body alone is over it.
 */
double sy_back_load (const SyBackPose *pose, double force, SyUnits units);

#endif
