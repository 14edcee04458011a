/* SPDX-License-Identifier: MIT */
#include "sy-truck.h"

#include <math.h>

#define TOLERANCE 1e-9

double
sy_truck_capacity (double rating, double rated_centre, double actual_centre)
{
  return sy_truck_capacity_fulcrum (rating, rated_centre, actual_centre, 0);
}

double
sy_truck_capacity_fulcrum (double rating, double rated_centre, double actual_centre, double fulcrum)
{
  double share = (fulcrum + rated_centre) / (fulcrum + actual_centre);

  /* Not by fmin, which would make 1 of what is no number. */
  return share > 1 ? rating : rating * share;
}

bool
sy_truck_side_within (double side_shift, double side_limit)
{
  return fabs (side_shift) <= side_limit + TOLERANCE;
}
