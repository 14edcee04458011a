/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-push-duty.h"

/* What would bring the force of pushing or sliding under every limit. Values are proposed here and judged elsewhere. */

/* The ratios that are sought: at the limits, and below them for a policy that asks for more. */
static const double rungs[SY_PUSH_RUNGS - 1] = { 1, 0.75, 0.5 };

/* The part of the way from @from to @to at which the ratio first is @target; false: not even there. */
static bool
meets (const SyPushLever *lever, const void *facts, SyUnits units, SyPushTry ratio, double target, double *value)
{
  double low = 0, high = 1;

  if (!(ratio (facts, units, lever->offset, lever->best) <= target))
    return false;
  for (int i = 0; i < 52; i++)
    {
      double middle = (low + high) / 2;
      if (ratio (facts, units, lever->offset, lever->now + middle * (lever->best - lever->now)) <= target)
        high = middle;
      else
        low = middle;
    }
  *value = lever->now + high * (lever->best - lever->now);
  return true;
}

size_t
sy_push_pull_lever (const SyPushLever *lever, const void *facts, SyUnits units, SyPushTry ratio, SyChange *changes)
{
  const SyChange change = { .path = lever->path, .factor = lever->factor, .type = SY_CHANGE_NUMBER, .kind = lever->kind,
                            .offset = lever->offset };
  size_t n = 0;

  for (size_t i = 0; i < SY_LEN (rungs); i++)
    {
      double value;
      if (!meets (lever, facts, units, ratio, rungs[i], &value))
        break;
      changes[n] = change;
      changes[n++].value = value;
    }
  changes[n] = change;
  changes[n++].value = lever->best;
  return n;
}

/* Once in half an hour: what is done as seldom is no longer a matter of pace (common practice, no source). */
#define SELDOM (1.0 / 30)
/* The shortest way of the tables. */
#define SHORTEST_M 2.1

static size_t
heights (const SyPushDuty *duty, size_t base, SyUnits units, SyChange *changes)
{
  /* Handles of the tables for women and men, and the edges of the guideline. */
  static const double handles_cm[] = { 75, 89, 95, 135 };
  size_t n = 0;

  for (size_t i = 0; i < SY_LEN (handles_cm); i++)
    {
      double value = sy_unit_convert (SY_KIND_REACH, handles_cm[i], SY_UNITS_METRIC, units);
      if (value != duty->handle_height.value)
        changes[n++] = (SyChange) { .path = "handle_height", .factor = "handle_height", .type = SY_CHANGE_NUMBER,
                                    .kind = SY_KIND_REACH, .offset = base + offsetof (SyPushDuty, handle_height),
                                    .value = value };
    }
  return n;
}

size_t
sy_push_duty_candidates (const SyPushDuty *duty, size_t base, const void *facts, SyUnits units, SyPushTry ratio,
                         size_t factor, SyChange *changes, SyChange *best, bool *has_best)
{
  SyPushLever lever = { .path = "frequency", .factor = "frequency", .kind = SY_KIND_FREQUENCY,
                        .offset = base + offsetof (SyPushDuty, frequency), .now = duty->frequency.value,
                        .best = SELDOM };

  (void) best;
  *has_best = false;
  if (factor == 2)
    return heights (duty, base, units, changes);
  if (factor == 3)
    {
      changes[0] = (SyChange) { .path = "way", .factor = "way", .type = SY_CHANGE_CHOICE,
                                .offset = base + offsetof (SyPushDuty, way), .value = 1 - duty->way };
      return 1;
    }
  if (factor == 1)
    lever = (SyPushLever) { .path = "distance", .factor = "distance", .kind = SY_KIND_DISTANCE,
                            .offset = base + offsetof (SyPushDuty, distance), .now = duty->distance.value,
                            .best = sy_unit_convert (SY_KIND_DISTANCE, SHORTEST_M, SY_UNITS_METRIC, units) };
  return lever.now > lever.best ? sy_push_pull_lever (&lever, facts, units, ratio, changes) : 0;
}

bool
sy_push_heaviest (const void *facts, SyUnits units, SyPushTry ratio, size_t offset, double *mass)
{
  /* Every force grows with the mass, none faster than in proportion. */
  double high = 1, low = 0;

  while (high < 1e9 && ratio (facts, units, offset, high) <= 1)
    high *= 2;
  if (!(high < 1e9))
    return false;
  for (int i = 0; i < 80; i++)
    {
      double middle = (low + high) / 2;
      if (ratio (facts, units, offset, middle) <= 1)
        low = middle;
      else
        high = middle;
    }
  *mass = low;
  return low > 0;
}
