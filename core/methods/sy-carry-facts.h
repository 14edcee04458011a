/* SPDX-License-Identifier: MIT */
#ifndef SY_CARRY_FACTS_H
#define SY_CARRY_FACTS_H

#include "sy-carry.h"
#include "sy-method.h"

/* The facts of carrying, in the document's units: masses kg or lb, distances m or ft, heights cm or in. */
typedef struct
{
  SyCommonFacts common;
  SyNumber mass, typical_mass, distance, frequency, minutes, height;
  int assigned;           /* SyAssigned or -1      */
  int who;                /* SyCarrySex or -1      */
  SyNumber percent;
  SyNumber hands, persons;
  int poor_lift, poor_surroundings; /* 0, 1, -1 not given */
  SySet conditions;
} SyCarryFacts;

#define SY_CARRY_MINUTES 480 /* of carrying in the day where they were not given */

/* Quantities: those of the task, then a limit and a ratio for each of SyCarryLimit but the reference mass. */
enum
{
  SY_CARRY_MASS, SY_CARRY_MASS_EACH, SY_CARRY_M_REF, SY_CARRY_MASS_RATIO, SY_CARRY_MASS_SUMMED, SY_CARRY_F,
  SY_CARRY_DISTANCE, SY_CARRY_MINUTES_A_DAY, SY_CARRY_PERSONS,
  SY_CARRY_PER_MIN, SY_CARRY_PER_HOUR, SY_CARRY_PER_4H, SY_CARRY_PER_DAY,
  SY_CARRY_LIMITS, /* limit, ratio of SY_CARRY_PACE, and so on */
  SY_CARRY_PSYCHO_LIMIT = SY_CARRY_LIMITS + 2 * (SY_CARRY_N_LIMITS - 1), SY_CARRY_PSYCHO_RATIO,
  SY_CARRY_WOMEN_PERCENT, SY_CARRY_MEN_PERCENT, SY_CARRY_RATIO,
  SY_CARRY_N_SYMBOLS
};
#define SY_CARRY_LIMIT_OF(limit) ((size_t) SY_CARRY_LIMITS + 2 * ((size_t) (limit) - 1))
#define SY_CARRY_RATIO_OF(limit) (SY_CARRY_LIMIT_OF (limit) + 1)

/* Facts that passed the check, as the calculation takes them. */
void sy_carry_case (const SyCarryFacts *facts, const SyContext *context, SyCarry *out);

/* The method's remedies; see SyMethod. */
#define SY_CARRY_N_FACTORS 4
size_t sy_carry_candidates (const void *facts, const SyContext *context, const SyGoal *goal, size_t factor,
                            SyChange *changes, SyChange *best, bool *has_best);
bool sy_carry_largest_mass (const void *facts, const SyContext *context, const SyGoal *goal, double *mass,
                            SyChange *change);

#endif
