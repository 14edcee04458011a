/* SPDX-License-Identifier: MIT */
#include "sy-cart.h"

#include <math.h>

#define RADIAN (3.14159265358979323846 / 180)

SyRolling
sy_cart_rolling (SyWheel wheel)
{
  static const SyRolling wheels[SY_N_WHEELS] = {
    [SY_WHEEL_STEEL_ON_RAIL] = { 0.002, 0.003, "physics teaching page on rolling friction", false },
    [SY_WHEEL_RUBBER] = { 0.01, 0.02, "physics teaching page on rolling friction", false },
    [SY_WHEEL_POLYURETHANE] = { 0.01, 0.03, "polyurethane on smooth concrete", true },
    [SY_WHEEL_ROLLERS] = { 0.01, 0.05, "ball or roller lifters on a bolster", true },
  };

  return wheels[wheel];
}

double
sy_cart_weight (double mass, SyUnits units)
{
  return units == SY_UNITS_US ? mass : mass * SY_GRAVITY;
}

double
sy_cart_arm (double track, double wheelbase)
{
  return fmin (track, wheelbase) / 2;
}

void
sy_cart_forces (const SyCart *cart, SyCartForces *out)
{
  double c = cos (cart->slope_deg * RADIAN), s = sin (cart->slope_deg * RADIAN);
  double w = cart->weight, push, slope, brake;

  out->initial = w * (cart->start_factor * cart->rolling * c + s);
  out->sustained = w * (cart->rolling * c + s);
  out->hold = w * s;
  out->tip_push = w * cart->arm / cart->push_height;
  out->tip_deceleration = cart->arm / cart->cg_height;
  out->tip_slope_deg = atan (out->tip_deceleration) / RADIAN;

  push = out->initial / out->tip_push;
  slope = cart->slope_deg / out->tip_slope_deg;
  brake = (cart->deceleration / c + s / c) / out->tip_deceleration;
  /* fmax passes over what is not known. */
  out->tipping = fmax (push, fmax (slope, brake));
}

double
sy_cart_wheel_load (double gross_mass, int wheels)
{
  return gross_mass / (wheels < 3 ? wheels : 3);
}
