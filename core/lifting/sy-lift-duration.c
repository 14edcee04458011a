/* SPDX-License-Identifier: MIT */
#include "sy-lift.h"

#include <math.h>

/* 94-110 section 1.2: limits of the classes in minutes of work. */
#define SHORT_MAX 60.0
#define MODERATE_MAX 120.0
#define LONG_MAX 480.0
/* From memory (0.3 also read): recovery as a multiple of the work before it. */
#define SHORT_RECOVERY 1.2
#define MODERATE_RECOVERY 0.3
#define TOLERANCE 1e-9

static bool
at_most (double sum, double limit)
{
  return sum <= limit * (1 + TOLERANCE);
}

static bool
recovers (double sum, double recovery)
{
  if (at_most (sum, SHORT_MAX))
    return recovery >= SHORT_RECOVERY * sum * (1 - TOLERANCE);
  if (at_most (sum, MODERATE_MAX))
    return recovery >= MODERATE_RECOVERY * sum * (1 - TOLERANCE);
  return false;
}

static SyDuration
class_of (double sum)
{
  if (at_most (sum, SHORT_MAX))
    return SY_DURATION_SHORT;
  return at_most (sum, MODERATE_MAX) ? SY_DURATION_MODERATE : SY_DURATION_LONG;
}

SyDuration
sy_lift_duration_sessions (const SyWorkPeriod *periods, size_t n, bool *beyond, double *day_min)
{
  double sum = 0, longest = 0, all = 0;

  for (size_t i = 0; i < n; i++)
    {
      sum += periods[i].work;
      all += periods[i].work;
      longest = fmax (longest, sum);
      if (recovers (sum, periods[i].recovery))
        sum = 0;
    }
  /* More than eight hours of work are outside, however they are broken up. */
  *beyond = !at_most (all, LONG_MAX);
  if (day_min != NULL)
    *day_min = all;
  return class_of (longest);
}

SyDuration
sy_lift_duration_pattern (double work_min, double recovery_min, double shift_min, bool *beyond,
                          double *day_min)
{
  double pair = work_min + recovery_min;
  double shift = fmax (shift_min, work_min);
  double whole = floor (shift / pair * (1 + TOLERANCE));
  double rest = fmax (0, shift - whole * pair);
  double all = whole * work_min + fmin (rest, work_min);

  /* The sum after n pairs is n × work. A recovery that does not do after the first pair, while the sum is in the
     short class, does even less after more of them; in the moderate class the smallest sum is the easiest. */
  double longest = all;
  if (recovers (work_min, recovery_min))
    longest = work_min;
  else
    {
      double pairs = floor (SHORT_MAX * (1 + TOLERANCE) / work_min) + 1;
      if (recovers (pairs * work_min, recovery_min))
        longest = fmin (all, pairs * work_min);
    }
  *beyond = !at_most (all, LONG_MAX);
  if (day_min != NULL)
    *day_min = all;
  return class_of (longest);
}
