/* SPDX-License-Identifier: MIT */
#ifndef SY_PSYCHOPHYSICAL_H
#define SY_PSYCHOPHYSICAL_H

/*
 * What people accept of a task when they may choose the load themselves. The published figures are normal
 * distributions: a value for 90, 75 and 50 % of people; from them, what share of people accept a given load.
 * + − × ÷ √ alone, so that results are the same to the bit everywhere.
 */

/* Quantiles of the normal distribution: how far under the mean 75 % and 90 % of people still accept. */
#define SY_PSYCHO_Z75 0.6744897501960817
#define SY_PSYCHO_Z90 1.2815515655446004

/**
 * sy_psycho_ln:
 * The natural logarithm. Parameters: x  over 0 and finite, not subnormal.
 */
double sy_psycho_ln (double x);

/**
 * sy_psycho_share:
 * Percentage of people, normally distributed, who accept @load or more: 50 at the mean.
 * Parameters:   deviation  over 0. load  any; INFINITY: 0 %.
 * Return value: 0 to 100, within 2e-13; never more for a larger load, but for such a rounding.
 */
double sy_psycho_share (double mean, double deviation, double load);

/**
 * sy_psycho_quantile:
 * How many standard deviations under the mean a percentage of people accept: 90, 75 and 50 only; NAN for another.
 */
double sy_psycho_quantile (int percent);

#endif
