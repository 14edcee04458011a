/* SPDX-License-Identifier: MIT */
#ifndef SY_CART_H
#define SY_CART_H

#include "sy-units.h"

/*
 * A die cart on its own wheels: what it takes to start it, keep it moving and hold it, and what turns it over.
 * Lengths in one unit of the caller's choice, forces in the unit of the weight, angles in degrees, decelerations as
 * parts of g.
 */

/* In the order of the ids of documents: steel-on-rail, rubber, polyurethane, rollers. */
typedef enum { SY_WHEEL_STEEL_ON_RAIL, SY_WHEEL_RUBBER, SY_WHEEL_POLYURETHANE, SY_WHEEL_ROLLERS } SyWheel;
#define SY_N_WHEELS 4

/* Rolling resistance over weight, as published for good floors; the upper end is used where nothing was measured. */
typedef struct
{
  double low, high;
  const char *source;
  bool from_memory;
} SyRolling;

/**
 * sy_cart_rolling:
 * Source: steel wheel on steel rail 0.002 to 0.003 and rubber tyre on concrete 0.01 to 0.02: physics teaching page on
 *         rolling friction. Polyurethane on smooth concrete 0.01 to 0.03, ball or roller lifters on a bolster 0.01 to
 *         0.05: from memory.
 */
SyRolling sy_cart_rolling (SyWheel wheel);

/* Rolling resistance at the start over that on the move: 2 to 2.5, from memory; the upper end. */
#define SY_CART_START_FACTOR 2.5

/**
 * sy_cart_weight:
 * The weight of a mass as a hand force: N = kg × 9.80665; lbf = lb.
 */
double sy_cart_weight (double mass, SyUnits units);

/**
 * sy_cart_arm:
 * In plan from the centre of gravity, taken to be in the middle, to the nearest line of wheels over which the cart
 * can turn: half of the smaller of track and wheelbase.
 * Parameters:   NAN for one that is not known. Both: NAN.
 */
double sy_cart_arm (double track, double wheelbase);

/* A number that is not known is NAN: what depends on it is NAN too. */
typedef struct
{
  double weight;       /* of cart and load, over 0                           */
  double rolling;      /* coefficient, 0 or more                             */
  double start_factor; /* 1 or more                                          */
  double slope_deg;    /* 0 to under 90; pushed up it                        */
  double arm;          /* to the nearest tipping line, over 0: sy_cart_arm   */
  double cg_height;    /* over the floor, over 0                             */
  double push_height;  /* of the hands over the floor, over 0                */
  double deceleration; /* of braking or of a stop that is hit, part of g, 0 or more */
} SyCart;

typedef struct
{
  double initial;          /* W (start × C cos s + sin s)                                       */
  double sustained;        /* W (C cos s + sin s)                                               */
  double hold;             /* W sin s: rolling resistance may be less than published            */
  double tip_push;         /* W arm / push height                                               */
  double tip_slope_deg;    /* atan (arm / height of the centre)                                 */
  double tip_deceleration; /* arm / height of the centre, on the level                          */
  double tipping;          /* largest of initial / tip push, slope / tip slope, and braking down the slope:
                              (deceleration / cos s + tan s) / tip deceleration; of those that are known */
} SyCartForces;

/**
 * sy_cart_forces:
 * Source:         statics; the split of rolling and starting resistance is as in the table of rolling coefficients.
 * Special considerations: pure; no allocation; any thread.
 */
void sy_cart_forces (const SyCart *cart, SyCartForces *out);

/**
 * sy_cart_wheel_load:
 * On the worst wheel: a stiff cart stands on three, so of three or more wheels three carry (assumed, no source);
 * fewer: all.
 * Parameters:   gross_mass  of cart and load; wheels  1 or more.
 */
double sy_cart_wheel_load (double gross_mass, int wheels);

#endif
