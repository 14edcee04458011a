/* SPDX-License-Identifier: MIT */
#include "sy-lift.h"

#include <math.h>

/* 94-110 section 1.1 and 1.3, tables 1 to 4: the two systems are printed beside each other and are not
   conversions of one another (25 in is not 63 cm). */
static const SyLiftConstants constants[SY_N_UNITS] = {
  [SY_UNITS_METRIC] = { .load_constant = 23, .reach_min = 25, .reach_max = 63, .height_ideal = 75,
                        .height_slope = 0.003, .height_max = 175, .travel_min = 25, .travel_max = 175,
                        .travel_base = 0.82, .travel_gain = 4.5, .twist_slope = 0.0032, .twist_max = 135 },
  [SY_UNITS_US] = { .load_constant = 51, .reach_min = 10, .reach_max = 25, .height_ideal = 30,
                    .height_slope = 0.0075, .height_max = 70, .travel_min = 10, .travel_max = 70,
                    .travel_base = 0.82, .travel_gain = 1.8, .twist_slope = 0.0032, .twist_max = 135 },
};

const SyLiftConstants *
sy_lift_constants (SyUnits units)
{
  return &constants[units];
}

double
sy_lift_hm (double reach, SyUnits units)
{
  const SyLiftConstants *c = &constants[units];

  if (!(reach > 0) || reach > c->reach_max)
    return 0;
  return reach <= c->reach_min ? 1 : c->reach_min / reach;
}

double
sy_lift_vm (double height, SyUnits units)
{
  const SyLiftConstants *c = &constants[units];

  if (!(height >= 0) || height > c->height_max)
    return 0;
  return 1 - c->height_slope * fabs (height - c->height_ideal);
}

double
sy_lift_dm (double travel, SyUnits units)
{
  const SyLiftConstants *c = &constants[units];

  if (!(travel >= 0) || travel > c->travel_max)
    return 0;
  return travel <= c->travel_min ? 1 : c->travel_base + c->travel_gain / travel;
}

double
sy_lift_am (double twist_deg, SyUnits units)
{
  const SyLiftConstants *c = &constants[units];

  if (!(twist_deg >= 0) || twist_deg > c->twist_max)
    return 0;
  return 1 - c->twist_slope * twist_deg;
}

double
sy_lift_cm (SyCoupling coupling, double height, SyUnits units)
{
  /* 94-110 table 7 */
  switch (coupling)
    {
    case SY_COUPLING_GOOD:
      return 1;
    case SY_COUPLING_FAIR:
      return height < constants[units].height_ideal ? 0.95 : 1;
    case SY_COUPLING_POOR:
      return 0.90;
    }
  return 0;
}

double
sy_lift_reference_mass (SyAssigned assigned, SyUnits units)
{
  /* ISO 11228-1:2003 Annex C; from memory. */
  static const double mass_kg[] = {
    [SY_ASSIGNED_ANY_AGE] = 15, [SY_ASSIGNED_MIXED_ADULTS] = 20, [SY_ASSIGNED_MEN_20_45] = 25
  };
  double kg = mass_kg[assigned];

  return units == SY_UNITS_US ? kg / SY_KG_PER_LB : kg;
}

void
sy_lift_end (const SyLiftPosition *at, const SyLiftPace *pace, double heaviest, SyUnits units,
             SyLiftEnd *out)
{
  out->hm = sy_lift_hm (at->reach, units);
  out->vm = sy_lift_vm (at->height, units);
  out->dm = sy_lift_dm (pace->travel, units);
  out->am = sy_lift_am (at->twist_deg, units);
  out->fm = sy_lift_fm (pace->per_min, pace->duration, at->height, units);
  out->cm = sy_lift_cm (pace->coupling, at->height, units);

  double posture = out->hm * out->vm * out->dm * out->am * out->cm;
  out->firwl = constants[units].load_constant * posture;
  out->rwl = out->firwl * out->fm;
  out->mr = pace->reference_mass * posture * out->fm;
  out->li = out->rwl > 0 ? heaviest / out->rwl : INFINITY;
  out->fili = out->firwl > 0 ? heaviest / out->firwl : INFINITY;
  out->mr_ratio = out->mr > 0 ? heaviest / out->mr : INFINITY;
}
