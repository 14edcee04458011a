/* SPDX-License-Identifier: MIT */
#ifndef BENCH_LIFTS_H
#define BENCH_LIFTS_H

#include <glib.h>

/**
 * bench_lift_append:
 * Appends one random lift as a facts document, without a newline: plausible measures in both unit systems,
 * some of them written as text, inside and outside the limits.
 */
void bench_lift_append (GString *out, GRand *random);

/* Monotonic seconds. */
double bench_seconds (void);

/* Keeps the shorter of two times. Not MIN(), which would run the measured call twice. */
void bench_keep_best (double *best, double seconds);

#endif
