/* SPDX-License-Identifier: MIT */
#ifndef SY_SPREAD_H
#define SY_SPREAD_H

#include "sy-policy.h"

/* What repeated measurements would give. A share of repeated measurements, not a chance of injury. */

typedef struct
{
  bool present;
  double p5, median, p95;   /* of the index; INFINITY: unbounded             */
  double share_over_goal;   /* 0 .. 1                                        */
  double goal;
  int draws;
  const char *driver;       /* path of the fact that moves the index most; NULL: nothing varies */
  double driver_share;      /* 0 .. 1: its part of the summed squared widths */
} SySpread;

/**
 * sy_spread_run:
 * Draws every measured fact from a normal distribution (half-width of a 95 % interval = tolerance),
 * truncated at the field's range, and evaluates the method each time.
 * Parameters:   work     room for policy->draws doubles. Not NULL.
 *               scratch  method->facts_size bytes, aligned. Not NULL.
 * Special considerations: the generator and the inverse normal use + - × ÷ √ only: the same bits everywhere.
 *               Seed and draws are the policy's. Pure; any thread.
 */
void sy_spread_run (const SyMethod *method, const void *facts, const SyContext *context,
                    const SyPolicy *policy, double *work, void *scratch, SySpread *out);

/**
 * sy_normal_inverse: quantile of the standard normal distribution for 0 < p < 1.
 * Source: Wichura 1988, Algorithm AS 241 (PPND16), Applied Statistics 37:477.
 */
double sy_normal_inverse (double p);

#endif
