/* SPDX-License-Identifier: MIT */
#include "sy-back.h"

#include <math.h>

#define RADIAN (3.14159265358979323846 / 180)

/* The formula is in pounds-force and inches, whatever the document's units. */
static double
pounds (double mass, SyUnits units)
{
  return units == SY_UNITS_US ? mass : mass / SY_KG_PER_LB;
}

static double
inches (double length, SyUnits units)
{
  return units == SY_UNITS_US ? length : length / SY_CM_PER_IN;
}

static double
force (double pounds_force, SyUnits units)
{
  return units == SY_UNITS_US ? pounds_force : pounds_force * SY_KG_PER_LB * SY_GRAVITY / 1000;
}

void
sy_back_compression (const SyBackPose *pose, SyUnits units, SyBack *out)
{
  double body = pounds (pose->body_mass, units), load = pounds (pose->load, units);

  out->trunk = force (3 * body * cos (pose->trunk_deg * RADIAN), units);
  out->load = force (0.5 * load * inches (pose->arm, units), units);
  out->direct = force (0.8 * (body / 2 + load), units);
  out->sum = out->trunk + out->load + out->direct;
}

double
sy_back_threshold (double kilonewton, SyUnits units)
{
  return units == SY_UNITS_US ? kilonewton * 1000 / (SY_KG_PER_LB * SY_GRAVITY) : kilonewton;
}

double
sy_back_load (const SyBackPose *pose, double wanted, SyUnits units)
{
  SyBackPose empty = *pose;
  SyBack body, with_one;

  empty.load = 0;
  sy_back_compression (&empty, units, &body);
  empty.load = 1;
  sy_back_compression (&empty, units, &with_one);
  return (wanted - body.sum) / (with_one.sum - body.sum);
}
