/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-facts.h"
#include "sy-lift-solve.h"
#include "sy-population.h"

/*
 * What would bring one lift down, factor by factor, in closed form. Values are proposed here and judged by
 * the equation itself elsewhere, so a value proposed in vain costs nothing.
 */

typedef enum
{
  FACTOR_ORIGIN_H, FACTOR_ORIGIN_V, FACTOR_ORIGIN_A,
  FACTOR_DESTINATION_H, FACTOR_DESTINATION_V, FACTOR_DESTINATION_A,
  FACTOR_TRAVEL, FACTOR_FREQUENCY, FACTOR_DURATION, FACTOR_RECOVERY, FACTOR_COUPLING, FACTOR_CONTROL,
} Factor;

typedef struct
{
  const SyLiftFacts *facts;
  const SyGoal *goal;
  SyLiftCase lift;
  SyChange *changes;
  size_t n;
  SyChange *best;
  bool *has_best;
} Search;

/* Of EN 1005-2, so that heaviest / (constant · multipliers) is its index: each of two persons holds half. */
static double
en_constant (const SyLiftCase *lift)
{
  return lift->en_mass * lift->en_one_hand * lift->en_two_persons * lift->en_additional * lift->persons;
}

/* The product of multipliers that reaches the goal at every end alike: mass / (goal · constant). */
static double
needed_product (const Search *search)
{
  const SyLiftCase *lift = &search->lift;
  double by_index = lift->heaviest / (search->goal->index * sy_lift_constants (lift->units)->load_constant);
  double by_ratio = lift->heaviest / (search->goal->ratio * lift->pace.reference_mass * lift->shift_multiplier);
  double by_en = lift->has_en ? lift->heaviest / (search->goal->limits[SY_LIFT_LIMIT_EN] * en_constant (lift)) : 0;

  return fmax (fmax (by_index, by_ratio), by_en);
}

/* The product of an end's multipliers without those that are left out; the column of FM and CM by @height. */
typedef enum { WITHOUT_H = 1, WITHOUT_V = 2, WITHOUT_D = 4, WITHOUT_A = 8, WITHOUT_F = 16 } Without;

static double
product (const SyLiftCase *lift, int end, double height, unsigned without)
{
  const SyLiftPosition *at = &lift->at[end];
  double p = sy_lift_cm (lift->pace.coupling, height, lift->units);

  if (!(without & WITHOUT_H))
    p *= sy_lift_hm (at->reach, lift->units);
  if (!(without & WITHOUT_V))
    p *= sy_lift_vm (height, lift->units);
  if (!(without & WITHOUT_D))
    p *= sy_lift_dm (lift->pace.travel, lift->units);
  if (!(without & WITHOUT_A))
    p *= sy_lift_am (at->twist_deg, lift->units);
  if (!(without & WITHOUT_F))
    p *= sy_lift_fm (lift->pace.per_min, lift->pace.duration, height, lift->units);
  return p;
}

/* What the left-out multipliers must give at an end; over 1: they cannot. */
static double
needed (const Search *search, int end, double height, unsigned without)
{
  double rest = product (&search->lift, end, height, without);

  return rest > 0 ? needed_product (search) / rest : INFINITY;
}

static void
propose (Search *search, SyChange change, double value)
{
  if (search->n == SY_CHANGES_MAX)
    return;
  change.value = value;
  search->changes[search->n++] = change;
}

static void
set_best (Search *search, SyChange change, double value)
{
  change.value = value;
  *search->best = change;
  *search->has_best = true;
}

#define NUMBER_CHANGE(path_, factor_, kind_, member_)                                                    \
  ((SyChange) { .path = path_, .factor = factor_, .type = SY_CHANGE_NUMBER, .kind = kind_,              \
                .offset = offsetof (SyLiftFacts, member_) })

static void
reach (Search *search, int end)
{
  SyChange change = end == 0 ? NUMBER_CHANGE ("origin.H", "HM", SY_KIND_REACH, origin.H)
                             : NUMBER_CHANGE ("destination.H", "HM", SY_KIND_REACH, destination.H);
  const SyLiftPosition *at = &search->lift.at[end];
  double closest = sy_lift_constants (search->lift.units)->reach_min;
  double value;

  if (end >= search->lift.n_ends || at->reach <= closest)
    return;
  set_best (search, change, closest);
  if (sy_lift_solve_reach (needed (search, end, at->height, WITHOUT_H), search->lift.units, &value)
      && value < at->reach)
    propose (search, change, value);
  propose (search, change, closest);
}

static void
twist (Search *search, int end)
{
  SyChange change = end == 0 ? NUMBER_CHANGE ("origin.A", "AM", SY_KIND_ANGLE, origin.A)
                             : NUMBER_CHANGE ("destination.A", "AM", SY_KIND_ANGLE, destination.A);
  const SyLiftPosition *at = &search->lift.at[end];
  double value;

  if (end >= search->lift.n_ends || at->twist_deg <= 0)
    return;
  set_best (search, change, 0);
  if (sy_lift_solve_twist (needed (search, end, at->height, WITHOUT_A), search->lift.units, &value)
      && value < at->twist_deg)
    propose (search, change, value);
  propose (search, change, 0);
  for (double step = 45; step <= 90 && search->lift.has_filter; step += 45)
    if (step < at->twist_deg)
      propose (search, change, step);
}

/* A hair off a height at which the filter's figure changes, over or under it. */
#define OVER (1 + 1e-12)
#define UNDER (1 - 1e-12)

/* Heights that keep the hands within one zone of the guideline filter; without a destination the way up and down counts too. */
static void
filter_heights (Search *search, SyChange change)
{
  const SyLiftCase *lift = &search->lift;
  double away = lift->has_destination ? 0 : lift->pace.travel;
  double edges[SY_FILTER_EDGES];

  if (!lift->has_filter)
    return;
  sy_filter_edges (lift->units, edges);
  for (size_t i = 0; i < SY_FILTER_EDGES; i++)
    propose (search, change, i % 2 ? (edges[i] + away) * OVER : (edges[i] - away) * UNDER);
  propose (search, change, sy_lift_constants (lift->units)->height_max - away);
}

/* The same of the way alone. */
static void
filter_travels (Search *search, SyChange change)
{
  const SyLiftCase *lift = &search->lift;
  double height = lift->at[0].height;
  double edges[SY_FILTER_EDGES];

  if (!lift->has_filter)
    return;
  sy_filter_edges (lift->units, edges);
  for (size_t i = 0; i < SY_FILTER_EDGES; i++)
    {
      double way = i % 2 ? height - edges[i] : edges[i] - height;
      if (way > 0)
        propose (search, change, way * (1 - 1e-11));
    }
  propose (search, change, sy_lift_constants (lift->units)->height_max - height);
}

/* Moving the hands up or down at one end changes VM there, DM at both ends, and the column of FM and CM. */
static void
height (Search *search, int end)
{
  const SyLiftCase *lift = &search->lift;
  const SyLiftConstants *c = sy_lift_constants (lift->units);
  bool counts = end < lift->n_ends;
  SyChange change = end == 0 ? NUMBER_CHANGE ("origin.V", "VM", SY_KIND_REACH, origin.V)
                             : NUMBER_CHANGE ("destination.V", "VM", SY_KIND_REACH, destination.V);
  double other = lift->at[1 - end].height;
  double low = c->height_ideal - 1, high = c->height_ideal;
  double heights[SY_LIFT_HEIGHTS_MAX];

  if (end == 1 && !lift->has_destination)
    return;
  if (!counts)
    change.factor = "DM";
  filter_heights (search, change);
  for (int column = 0; column < 2 && counts; column++)
    {
      unsigned without = WITHOUT_V | (lift->has_destination ? WITHOUT_D : 0);
      double wanted = needed (search, end, column == 0 ? low : high, without);
      size_t n = isfinite (wanted) ? sy_lift_solve_height (wanted, other, lift->has_destination,
                                                           lift->units, heights)
                                   : 0;
      for (size_t i = 0; i < n; i++)
        propose (search, change, heights[i]);
    }
  if (!lift->has_destination)
    return;

  /* The other end sees only the travel. */
  for (int e = 0; e < lift->n_ends; e++)
    {
      double travel;
      if (e == end || !sy_lift_solve_travel (needed (search, e, lift->at[e].height, WITHOUT_D),
                                             lift->units, &travel))
        continue;
      propose (search, change, other - travel);
      propose (search, change, other + travel);
    }
  propose (search, change, other - c->travel_min);
  propose (search, change, other + c->travel_min);
  /* Where both ends count alike VM here equals the ratio of what is left: neither can be better without the
     other getting worse. */
  if (lift->n_ends == 2)
    for (int column = 0; column < 2; column++)
      {
        double here = product (lift, end, column == 0 ? low : high, WITHOUT_V | WITHOUT_D);
        double there = product (lift, 1 - end, other, WITHOUT_D);
        double away = here > 0 ? (1 - there / here) / c->height_slope : -1;
        if (away >= 0)
          {
            propose (search, change, c->height_ideal - away);
            propose (search, change, c->height_ideal + away);
          }
      }
}

static void
travel (Search *search)
{
  const SyLiftCase *lift = &search->lift;
  SyChange change = NUMBER_CHANGE ("travel", "DM", SY_KIND_REACH, travel);
  double least = sy_lift_constants (lift->units)->travel_min;
  double value;

  if (!lift->has_destination)
    filter_travels (search, change);
  if (lift->has_destination || lift->pace.travel <= least)
    return;
  set_best (search, change, least);
  if (sy_lift_solve_travel (needed (search, 0, lift->at[0].height, WITHOUT_D), lift->units, &value)
      && value < lift->pace.travel)
    propose (search, change, value);
  propose (search, change, least);
}

/* The pace at which the cumulative mass of a day and an hour is at its goal. */
static double
pace_by_mass (const Search *search)
{
  const SyLiftCase *lift = &search->lift;
  double each = lift->typical / lift->persons;
  double by_hour = search->goal->limits[SY_LIFT_LIMIT_HOUR] * sy_population_hour_limit (lift->units) / (each * 60);
  double by_day = search->goal->limits[SY_LIFT_LIMIT_DAY] * sy_population_day_limit (lift->units) / (each * lift->day_min);

  return fmin (by_hour, search->facts->lifts_per_day.given ? INFINITY : by_day);
}

static void
frequency (Search *search)
{
  /* the paces over which the guideline filter takes more off */
  static const double filter_paces[] = { 8, 2, 0.5 };
  const SyLiftCase *lift = &search->lift;
  bool counted = search->facts->lifts.given;
  SyChange change = counted ? NUMBER_CHANGE ("lifts", "FM", SY_KIND_COUNT, lifts)
                            : NUMBER_CHANGE ("frequency", "FM", SY_KIND_FREQUENCY, frequency);
  double scale = counted ? search->facts->in_minutes.value : 1;
  double slowest = 0.2; /* the first row of table 5 */
  double value = INFINITY;

  if (lift->pace.per_min <= slowest)
    return;
  set_best (search, change, slowest * scale);
  for (int end = 0; end < lift->n_ends; end++)
    {
      double most;
      if (!sy_lift_fm_inverse (needed (search, end, lift->at[end].height, WITHOUT_F), lift->pace.duration,
                               lift->at[end].height, lift->units, &most))
        most = 0;
      value = fmin (value, most);
    }
  value = fmin (value, pace_by_mass (search));
  if (value >= slowest && value < lift->pace.per_min)
    propose (search, change, value * scale);
  propose (search, change, slowest * scale);
  for (size_t i = 0; i < SY_LEN (filter_paces) && lift->has_filter; i++)
    if (filter_paces[i] < lift->pace.per_min)
      propose (search, change, filter_paces[i] * scale);
}

static void
duration (Search *search)
{
  SyChange change = { .path = "duration", .factor = "FM", .type = SY_CHANGE_CHOICE,
                      .offset = offsetof (SyLiftFacts, duration) };

  for (int shorter = search->facts->duration - 1; shorter >= 0; shorter--)
    propose (search, change, shorter);
  if (search->facts->duration > 0)
    set_best (search, change, SY_DURATION_SHORT);
}

/* A pattern of work and recovery: the recovery that puts it in a shorter class (1.2 or 0.3 times the work). */
static void
recovery (Search *search)
{
  const SyLiftFacts *facts = search->facts;
  SyChange change = NUMBER_CHANGE ("recovery_minutes", "FM", SY_KIND_MINUTES, recovery_minutes);
  double work = facts->work_minutes.value;
  double longest;

  if (!facts->work_minutes.given || work > 120)
    return;
  longest = (work <= 60 ? 1.2 : 0.3) * work;
  if (facts->recovery_minutes.value >= longest)
    return;
  set_best (search, change, longest);
  propose (search, change, longest);
  if (work <= 60)
    {
      double pairs = floor (60 / work) + 1;
      if (pairs * work <= 120 && 0.3 * pairs * work > facts->recovery_minutes.value)
        propose (search, change, 0.3 * pairs * work);
    }
}

static void
coupling (Search *search)
{
  SyChange change = { .path = "coupling", .factor = "CM", .type = SY_CHANGE_CHOICE,
                      .offset = offsetof (SyLiftFacts, coupling) };

  for (int better = search->facts->coupling - 1; better >= 0; better--)
    propose (search, change, better);
  if (search->facts->coupling > 0)
    set_best (search, change, SY_COUPLING_GOOD);
}

static void
control (Search *search)
{
  SyChange change = { .path = "control_at_destination", .factor = "control", .type = SY_CHANGE_BOOL,
                      .offset = offsetof (SyLiftFacts, control_at_destination) };

  if (search->lift.n_ends < 2)
    return;
  set_best (search, change, 0);
  propose (search, change, 0);
}

size_t
sy_lift_candidates (const void *facts, const SyContext *context, const SyGoal *goal, size_t factor,
                    SyChange *changes, SyChange *best, bool *has_best)
{
  Search search = { .facts = facts, .goal = goal, .changes = changes, .best = best, .has_best = has_best };

  *has_best = false;
  sy_lift_case (facts, context, &search.lift);
  switch ((Factor) factor)
    {
    case FACTOR_ORIGIN_H:
      reach (&search, 0);
      break;
    case FACTOR_ORIGIN_V:
      height (&search, 0);
      break;
    case FACTOR_ORIGIN_A:
      twist (&search, 0);
      break;
    case FACTOR_DESTINATION_H:
      reach (&search, 1);
      break;
    case FACTOR_DESTINATION_V:
      height (&search, 1);
      break;
    case FACTOR_DESTINATION_A:
      twist (&search, 1);
      break;
    case FACTOR_TRAVEL:
      travel (&search);
      break;
    case FACTOR_FREQUENCY:
      frequency (&search);
      break;
    case FACTOR_DURATION:
      duration (&search);
      break;
    case FACTOR_RECOVERY:
      recovery (&search);
      break;
    case FACTOR_COUPLING:
      coupling (&search);
      break;
    case FACTOR_CONTROL:
      control (&search);
      break;
    }
  return search.n;
}

/* The typical load at which the cumulative mass of a day and an hour is at its goal. */
static double
most_typical (const SyLiftCase *lift, const SyGoal *goal)
{
  double by_day = goal->limits[SY_LIFT_LIMIT_DAY] * sy_population_day_limit (lift->units) / lift->lifts_per_day;
  double by_hour = goal->limits[SY_LIFT_LIMIT_HOUR] * sy_population_hour_limit (lift->units) / (lift->pace.per_min * 60);

  return fmin (lift->lifts_per_day > 0 ? by_day : INFINITY, lift->pace.per_min > 0 ? by_hour : INFINITY)
         * lift->persons;
}

bool
sy_lift_largest_mass (const void *facts, const SyContext *context, const SyGoal *goal, double *mass,
                      SyChange *change)
{
  SyLiftCase lift;
  double largest;

  sy_lift_case (facts, context, &lift);
  largest = lift.pace.reference_mass * lift.persons;
  /* the typical load goes down with the heaviest, never up */
  double typical = most_typical (&lift, goal);
  if (lift.typical > typical)
    largest = fmin (largest, typical);
  if (lift.has_filter)
    {
      SyFilter filter;
      sy_lift_case_filter (&lift, &filter);
      largest = fmin (largest, goal->limits[SY_LIFT_LIMIT_FILTER_MEN] * filter.mass);
    }
  for (int end = 0; end < lift.n_ends; end++)
    {
      SyLiftEnd result;
      sy_lift_case_end (&lift, end, &result);
      largest = fmin (largest, fmin (goal->index * result.rwl, goal->ratio * result.mr));
      if (lift.has_en)
        largest = fmin (largest, goal->limits[SY_LIFT_LIMIT_EN] * en_constant (&lift) * result.hm * result.vm * result.dm
                                   * result.am * result.fm * result.cm);
    }
  largest = fmin (largest, sy_lift_back_mass (facts, &lift, goal));
  if (!(largest > 0))
    return false;
  *mass = largest;
  *change = NUMBER_CHANGE ("load.heaviest", "load", SY_KIND_MASS, load.heaviest);
  change->value = largest;
  change->also_offset = offsetof (SyLiftFacts, load.typical);
  change->also_path = "load.typical";
  return true;
}
