/* SPDX-License-Identifier: MIT */
#include "sy-lift-solve.h"

#include <math.h>

bool
sy_lift_solve_reach (double wanted, SyUnits units, double *reach)
{
  const SyLiftConstants *c = sy_lift_constants (units);

  if (wanted > 1)
    return false;
  /* HM = min / H on [min, max], so the smallest multiplier that is not zero is min / max. */
  *reach = wanted * c->reach_max <= c->reach_min ? c->reach_max : c->reach_min / wanted;
  return true;
}

bool
sy_lift_solve_twist (double wanted, SyUnits units, double *twist_deg)
{
  const SyLiftConstants *c = sy_lift_constants (units);

  if (wanted > 1)
    return false;
  *twist_deg = fmin ((1 - wanted) / c->twist_slope, c->twist_max);
  return true;
}

bool
sy_lift_solve_travel (double wanted, SyUnits units, double *travel)
{
  const SyLiftConstants *c = sy_lift_constants (units);

  if (wanted > 1)
    return false;
  double at_max = c->travel_base + c->travel_gain / c->travel_max;
  *travel = wanted <= at_max ? c->travel_max : c->travel_gain / (wanted - c->travel_base);
  /* DM steps from 1 down to 0.82 + 4.5/25 = 1: continuous, so nothing lies below the minimum. */
  *travel = fmax (*travel, c->travel_min);
  return true;
}

typedef struct
{
  double *heights;
  size_t n;
  double max;
} Heights;

static void
add (Heights *to, double height)
{
  if (to->n < SY_LIFT_HEIGHTS_MAX && height >= 0 && height <= to->max)
    to->heights[to->n++] = height;
}

/* VM on one side of the ideal height is 1 + s·(V - ideal), s = +slope below and -slope above;
   D is t·(V - other), t = ±1. VM · (base + gain/D) = wanted, times D, is a quadratic in V. */
static void
add_roots (Heights *to, double s, double t, double other, double wanted, const SyLiftConstants *c)
{
  /* VM = p + s V with p = 1 - s·ideal; D = t V + q with q = -t·other */
  double p = 1 - s * c->height_ideal, q = -t * other;
  /* (p + s V)(base (t V + q) + gain) - wanted (t V + q) = 0 */
  double e = c->travel_base * q + c->travel_gain;
  double qa = s * c->travel_base * t;
  double qb = p * c->travel_base * t + s * e - wanted * t;
  double qc = p * e - wanted * q;
  double disc = qb * qb - 4 * qa * qc;

  if (disc < 0)
    return;
  /* the form that does not cancel */
  double r = -0.5 * (qb + copysign (sqrt (disc), qb));
  add (to, r / qa);
  if (r != 0)
    add (to, qc / r);

  /* where VM · DM neither rises nor falls: s·base·D² = t·gain·(p - s·t·q) */
  double square = t * c->travel_gain * (p - s * t * q) / (s * c->travel_base);
  if (square > 0)
    add (to, other + t * sqrt (square));
}

size_t
sy_lift_solve_height (double wanted, double other, bool moves_travel, SyUnits units,
                      double heights[SY_LIFT_HEIGHTS_MAX])
{
  const SyLiftConstants *c = sy_lift_constants (units);
  Heights to = { heights, 0, c->height_max };

  add (&to, c->height_ideal);
  add (&to, 0);
  add (&to, c->height_max);
  /* DM = 1: VM alone */
  add (&to, c->height_ideal - (1 - wanted) / c->height_slope);
  add (&to, c->height_ideal + (1 - wanted) / c->height_slope);
  if (!moves_travel)
    return to.n;
  for (int side = 0; side < 2; side++)
    {
      double s = side == 0 ? c->height_slope : -c->height_slope;
      add_roots (&to, s, 1, other, wanted, c);
      add_roots (&to, s, -1, other, wanted, c);
    }
  add (&to, other - c->travel_min);
  add (&to, other + c->travel_min);
  add (&to, other - c->travel_max);
  add (&to, other + c->travel_max);
  add (&to, other);
  return to.n;
}
