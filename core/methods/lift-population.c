/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-lift-facts.h"
#include "sy-population.h"

/* What other publications say of one lift, beside the equation: ISO 11228-1, EN 1005-2, the filter of L23. */

void
sy_lift_case_population (const SyLiftFacts *facts, const SyContext *context, SyLiftCase *lift)
{
  double hours = facts->shift_hours.given ? facts->shift_hours.value : 8;
  bool one_hand = facts->hands.given && facts->hands.value < 2;

  lift->lifts_per_day = facts->lifts_per_day.given ? facts->lifts_per_day.value : lift->pace.per_min * lift->day_min;
  lift->extended = hours > 8;
  lift->shift_multiplier = sy_population_shift_multiplier (hours, lift->pace.duration, lift->pace.per_min);
  lift->has_en = lift->persons <= 2;
  lift->en_mass = sy_population_en_mass (lift->assigned, lift->units);
  lift->en_one_hand = one_hand ? SY_EN_ONE_HAND : 1;
  lift->en_two_persons = lift->persons > 1 ? SY_EN_TWO_PERSONS : 1;
  lift->en_additional = facts->additional_tasks == 1 ? SY_EN_ADDITIONAL_TASKS : 1;
  lift->has_filter = context->wants_filter && !one_hand && lift->persons < 2;
}

void
sy_lift_case_filter (const SyLiftCase *lift, SyFilter *out)
{
  const SyLiftPosition *from = &lift->at[0], *to = lift->has_destination ? &lift->at[1] : from;
  double away = lift->has_destination ? 0 : lift->pace.travel;
  const SyFilterLift hands = {
    .low = fmax (0, fmin (from->height, to->height) - away),
    .high = fmax (from->height, to->height) + away,
    .reach = fmax (from->reach, to->reach),
    .twist_deg = fmax (from->twist_deg, to->twist_deg),
    .per_min = lift->pace.per_min,
  };

  sy_filter_lift (&hands, lift->assigned == SY_ASSIGNED_MEN_20_45, lift->units, out);
}

static double
over (double value, double limit)
{
  return limit > 0 ? value / limit : INFINITY;
}

static void
put_multiplier (SySink *sink, size_t symbol, double multiplier)
{
  if (multiplier < 1)
    sy_sink_value (sink, symbol, multiplier);
}

void
sy_lift_population (const SyLiftCase *lift, const SyLiftEnd *end, SySink *sink)
{
  /* Of what one person handles: each their part of it. An hour's mass is told where its limit is the stricter one. */
  double typical_each = lift->typical / lift->persons, heaviest_each = lift->heaviest / lift->persons;
  double day = typical_each * lift->lifts_per_day, day_limit = sy_population_day_limit (lift->units);
  double hour = typical_each * lift->pace.per_min * 60, hour_limit = sy_population_hour_limit (lift->units);

  sy_sink_value (sink, SY_LIFT_ALL_MASS, lift->heaviest);
  put_multiplier (sink, SY_LIFT_ALL_SHIFT_MULTIPLIER, lift->shift_multiplier);
  sy_sink_value (sink, SY_LIFT_ALL_DAY_MASS, day);
  sy_sink_value (sink, SY_LIFT_ALL_DAY_LIMIT, day_limit);
  sy_sink_value (sink, SY_LIFT_ALL_DAY_RATIO, day / day_limit);
  if (hour / hour_limit > day / day_limit)
    {
      sy_sink_value (sink, SY_LIFT_ALL_HOUR_MASS, hour);
      sy_sink_value (sink, SY_LIFT_ALL_HOUR_LIMIT, hour_limit);
      sy_sink_value (sink, SY_LIFT_ALL_HOUR_RATIO, hour / hour_limit);
    }

  if (lift->has_en)
    {
      double limit = lift->en_mass * end->hm * end->vm * end->dm * end->am * end->fm * end->cm * lift->en_one_hand
                     * lift->en_two_persons * lift->en_additional;

      sy_sink_value (sink, SY_LIFT_ALL_EN_MASS, lift->en_mass);
      put_multiplier (sink, SY_LIFT_ALL_EN_ONE_HAND, lift->en_one_hand);
      put_multiplier (sink, SY_LIFT_ALL_EN_TWO_PERSONS, lift->en_two_persons);
      put_multiplier (sink, SY_LIFT_ALL_EN_ADDITIONAL, lift->en_additional);
      sy_sink_value (sink, SY_LIFT_ALL_EN_LIMIT, limit);
      sy_sink_value (sink, SY_LIFT_ALL_EN_INDEX, over (heaviest_each, limit));
    }
  if (lift->has_filter)
    {
      SyFilter filter;

      sy_lift_case_filter (lift, &filter);
      sy_sink_value (sink, SY_LIFT_ALL_FILTER_BASE, filter.base);
      put_multiplier (sink, SY_LIFT_ALL_FILTER_TWIST, filter.twist);
      put_multiplier (sink, SY_LIFT_ALL_FILTER_PACE, filter.pace);
      sy_sink_value (sink, lift->assigned == SY_ASSIGNED_MEN_20_45 ? SY_LIFT_ALL_FILTER_MEN : SY_LIFT_ALL_FILTER_WOMEN,
                     filter.mass);
      sy_sink_value (sink, SY_LIFT_ALL_FILTER_RATIO, over (lift->heaviest, filter.mass));
    }
}
