/* SPDX-License-Identifier: MIT */
#include "sy-population.h"

static double
in_units (double kg, SyUnits units)
{
  return units == SY_UNITS_US ? kg / SY_KG_PER_LB : kg;
}

double
sy_population_shift_multiplier (double hours, SyDuration duration, double per_min)
{
  /* ISO 11228-1:2021, from memory: over 8 to 9, 10, 11 and 12 hours. */
  static const struct
  {
    double hours, multiplier;
  } rows[] = { { 8, 1 }, { 9, 0.97 }, { 10, 0.93 }, { 11, 0.89 }, { SY_ISO_SHIFT_MAX, 0.85 } };
  bool counts = duration == SY_DURATION_LONG && per_min >= 0.2;

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    if (hours <= rows[i].hours)
      return counts ? rows[i].multiplier : 1;
  return 0;
}

double
sy_population_day_limit (SyUnits units)
{
  return in_units (10000, units);
}

double
sy_population_hour_limit (SyUnits units)
{
  return in_units (7200, units);
}

double
sy_population_en_mass (SyAssigned assigned, SyUnits units)
{
  return in_units (assigned == SY_ASSIGNED_ANY_AGE ? 15 : 25, units);
}
