/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-carry-facts.h"

/*
 * What would bring carrying within its limits. Every ratio only falls when a fact gets better, so the value that just
 * reaches the goals is found by halving.
 */

typedef enum { FACTOR_DISTANCE, FACTOR_FREQUENCY, FACTOR_MINUTES, FACTOR_HEIGHT } Factor;

/* How far a fact may sensibly be changed: the first row of table 1; twice an hour; an hour a day (assumed, no source). */
#define SHORTEST_M 1.0
#define SELDOM (1.0 / 30)
#define SHORTEST_MIN 60.0

#define HALVINGS 100

typedef struct
{
  const SyContext *context;
  const SyGoal *goal;
  SyCarryFacts facts;
} Search;

static bool
reaches (const Search *search)
{
  SyCarry carry;
  SyCarryResult result;

  sy_carry_case (&search->facts, search->context, &carry);
  sy_carry (&carry, &result);
  for (int i = 0; i < SY_CARRY_N_LIMITS; i++)
    {
      /* the row of the reference mass is on the mass itself: at most 1 */
      double goal = i == SY_CARRY_REFERENCE ? fmin (1, search->goal->limits[i]) : search->goal->limits[i];
      if (result.ratio[i] > goal)
        return false;
    }
  return true;
}

/* The largest value of a fact between @least and what it is now that reaches every goal; false: not even @least. */
static bool
solve (Search *search, SyNumber *fact, double least, double *value)
{
  double low = least, high = fact->value;

  fact->value = low;
  if (!reaches (search))
    return false;
  for (int i = 0; i < HALVINGS; i++)
    {
      double middle = low + (high - low) / 2;
      if (middle <= low || middle >= high)
        break;
      fact->value = middle;
      if (reaches (search))
        low = middle;
      else
        high = middle;
    }
  *value = low;
  return true;
}

#define CHANGE(path_, kind_, member_)                                                                              \
  ((SyChange) { .path = path_, .factor = path_, .type = SY_CHANGE_NUMBER, .kind = kind_,                          \
                .offset = offsetof (SyCarryFacts, member_) })

size_t
sy_carry_candidates (const void *data, const SyContext *context, const SyGoal *goal, size_t factor, SyChange *changes,
                     SyChange *best, bool *has_best)
{
  Search search = { context, goal, *(const SyCarryFacts *) data };
  bool us = context->units == SY_UNITS_US;
  SyNumber *fact = NULL;
  double least = 0, now, value;
  SyCarry carry;
  size_t n = 0;

  sy_carry_case (data, context, &carry);
  switch ((Factor) factor)
    {
    case FACTOR_DISTANCE:
      *best = CHANGE ("distance", SY_KIND_DISTANCE, distance);
      fact = &search.facts.distance;
      least = sy_unit_convert (SY_KIND_DISTANCE, SHORTEST_M, SY_UNITS_METRIC, context->units);
      break;
    case FACTOR_FREQUENCY:
      *best = CHANGE ("frequency", SY_KIND_FREQUENCY, frequency);
      fact = &search.facts.frequency;
      least = SELDOM;
      break;
    case FACTOR_MINUTES:
      *best = CHANGE ("minutes", SY_KIND_MINUTES, minutes);
      fact = &search.facts.minutes;
      *fact = (SyNumber) { carry.minutes, true };
      least = SHORTEST_MIN;
      break;
    case FACTOR_HEIGHT:
      *best = CHANGE ("height", SY_KIND_REACH, height);
      fact = &search.facts.height;
      least = us ? sy_carry_knuckle (carry.sex) / SY_CM_PER_IN : sy_carry_knuckle (carry.sex);
      break;
    }
  *has_best = fact != NULL && fact->value > least;
  if (!*has_best)
    return 0;
  best->value = least;
  now = fact->value;
  if (solve (&search, fact, least, &value) && value < now)
    {
      /* a round value first: a row counts a hair beyond its end, which is no value to write on a sheet */
      double round = floor (value * 1e6) / 1e6;
      changes[n] = *best;
      changes[n++].value = round > least ? round : value;
    }
  return n;
}

bool
sy_carry_largest_mass (const void *data, const SyContext *context, const SyGoal *goal, double *mass, SyChange *change)
{
  Search search = { context, goal, *(const SyCarryFacts *) data };
  SyCarry carry;
  double value;

  sy_carry_case (data, context, &carry);
  search.facts.mass.value = 2 * carry.reference_mass * (carry.mass / carry.mass_each);
  /* the least mass stands for none at all: what is broken then has nothing to do with the mass */
  if (!solve (&search, &search.facts.mass, 1e-9, &value))
    return false;
  *mass = value;
  *change = CHANGE ("mass", SY_KIND_MASS, mass);
  change->value = value;
  change->also_offset = offsetof (SyCarryFacts, typical_mass);
  change->also_path = "typical_mass";
  return true;
}
