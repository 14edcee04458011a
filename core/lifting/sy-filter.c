/* SPDX-License-Identifier: MIT */
#include "sy-filter.h"

#include <math.h>

#define N_ZONES 5
#define CM_PER_IN 2.54

/* Mid lower leg, knuckle, elbow and shoulder height in cm. Knuckle height is the equation's ideal height (94-110; that it is
   the knuckles', from memory); the others: assumed, no source. People differ, hence the band. */
static const double borders_cm[N_ZONES - 1] = { 25, 75, 105, 140 };
/* Within so much of a border both zones count: assumed, no source. The guidance asks for an in-between figure there; the
   smaller one is stricter. */
#define BAND_CM 10.0

/* From the floor up; close to the body, at arm's length. L23, INDG143. */
static const double men_kg[N_ZONES][2] = { { 10, 5 }, { 20, 10 }, { 25, 15 }, { 20, 10 }, { 10, 5 } }; /* secondary source */
static const double women_kg[N_ZONES][2] = { { 7, 3 }, { 13, 7 }, { 16, 10 }, { 13, 7 }, { 7, 3 } };   /* from memory */

static double
length (double cm, SyUnits units)
{
  return units == SY_UNITS_US ? cm / CM_PER_IN : cm;
}

double
sy_filter_twist (double twist_deg)
{
  return twist_deg > 90 ? 0.8 : twist_deg > 45 ? 0.9 : 1;
}

double
sy_filter_pace (double per_min)
{
  return per_min > 8 ? 0.2 : per_min > 2 ? 0.5 : per_min > 0.5 ? 0.7 : 1;
}

void
sy_filter_edges (SyUnits units, double edges[SY_FILTER_EDGES])
{
  for (size_t i = 0; i < N_ZONES - 1; i++)
    {
      edges[2 * i] = length (borders_cm[i] - BAND_CM, units);
      edges[2 * i + 1] = length (borders_cm[i] + BAND_CM, units);
    }
}

void
sy_filter_lift (const SyFilterLift *lift, bool men, SyUnits units, SyFilter *out)
{
  const SyLiftConstants *c = sy_lift_constants (units);
  const double (*figures)[2] = men ? men_kg : women_kg;
  size_t column = lift->reach <= c->reach_min ? 0 : 1;
  double smallest = INFINITY;
  double edges[SY_FILTER_EDGES];

  sy_filter_edges (units, edges);
  for (size_t zone = 0; zone < N_ZONES; zone++)
    {
      bool over_bottom = zone == 0 || lift->high >= edges[2 * (zone - 1)];
      bool under_top = zone == N_ZONES - 1 || lift->low <= edges[2 * zone + 1];
      if (over_bottom && under_top)
        smallest = fmin (smallest, figures[zone][column]);
    }
  if (lift->reach > c->reach_max || lift->high > c->height_max)
    smallest = 0;
  out->base = units == SY_UNITS_US ? smallest / SY_KG_PER_LB : smallest;
  out->twist = sy_filter_twist (lift->twist_deg);
  out->pace = sy_filter_pace (lift->per_min);
  out->mass = out->base * out->twist * out->pace;
}
