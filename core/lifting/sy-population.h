/* SPDX-License-Identifier: MIT */
#ifndef SY_POPULATION_H
#define SY_POPULATION_H

#include "sy-lift.h"

/*
 * Limits by population beside the lifting equation: the step model of ISO 11228-1 and the risk index of EN 1005-2.
 * None of these figures was checked against the standards: they stand from memory and may only tighten a verdict.
 * Masses in kg or (divided by 0.45359237) lb. The reference masses themselves: sy_lift_reference_mass.
 *
 * Topics: shifts over eight hours, cumulative mass, EN 1005-2
 */

/* ISO 11228-1:2003 step 2: the most lifts a minute of any task; from memory. The curve of mass against frequency below
   it is not at hand, so that the step is done for its ceiling only. */
#define SY_ISO_MOST_PER_MIN 15.0

/* The longest shift that ISO 11228-1:2021 speaks of, hours (read, in its scope). */
#define SY_ISO_SHIFT_MAX 12.0

/**
 * sy_population_shift_multiplier:
 * On mR in a shift of so many hours: 1 to 8 h, 0.97 to 9 h, 0.93 to 10 h, 0.89 to 11 h, 0.85 to 12 h, 0 beyond.
 * Only where lifting is of the long class and at 0.2 lifts a minute or more; 1 otherwise (0 beyond 12 h all the same).
 * Source: ISO 11228-1:2021; from memory.
 */
double sy_population_shift_multiplier (double hours, SyDuration duration, double per_min);

/**
 * sy_population_day_limit / _hour_limit:
 * Cumulative mass that one person may lift in a day of 8 h (10 000 kg), and in an hour where it is carried no
 * farther than 1 m (7 200 kg; the 120 kg a minute of the same row are the same at a steady pace).
 * Source: ISO 11228-1:2003 step 4 and Table 1; from memory.
 */
double sy_population_day_limit (SyUnits units);
double sy_population_hour_limit (SyUnits units);

/**
 * sy_population_en_mass:
 * M_c of EN 1005-2: 25 kg for professional adults, 15 kg for the general working population, young and old.
 * Source: EN 1005-2; from memory.
 */
double sy_population_en_mass (SyAssigned assigned, SyUnits units);

/* EN 1005-2 multipliers; from memory. Two persons: on each person's limit, held against each person's half. */
#define SY_EN_ONE_HAND 0.6
#define SY_EN_TWO_PERSONS 0.85
#define SY_EN_ADDITIONAL_TASKS 0.8

#endif
