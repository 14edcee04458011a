/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_SET_H
#define SY_LIFT_SET_H

#include <stdint.h>

#include "sy-lift.h"

/*
 * Indices of several lifts: composite (CLI), sequential (SLI), variable (VLI).
 * Sources: CLI: DHHS (NIOSH) 94-110 section 2.4, its outline read in a textbook, its rules on typical and heaviest loads
 * from memory. SLI: Waters, Lu, Occhipinti 2007, Ergonomics 50(11), formula from memory. VLI: Waters et al. 2016, Human
 * Factors 58(5), groupings as said at sy_lift_variable, formula from memory.
 * An index over a limit of 0 is INFINITY, and so is what it goes into. Pure; any thread; no allocation.
 *
 * Topics: composite, sequence, variable
 */

/* ---- Composite ---- */

/* A lift at the end that governs it: the lower FIRWL of those that count. */
typedef struct
{
  double firwl;             /* kg or lb, >= 0: RWL with FM = 1 */
  double height;            /* V of that end, cm or in         */
  double per_min;           /* its own F, >= 0                 */
  double heaviest, typical; /* kg or lb, > 0                   */
} SyLiftTask;

typedef struct
{
  double fm;    /* of its own F                     */
  double strwl; /* FIRWL × FM, kg or lb             */
  double fili;  /* heaviest / FIRWL                 */
  double stli;  /* typical / STRWL                  */
  size_t order; /* its place in the sum, from 0     */
} SyLiftTaskIndex;

/* One step of the sum. */
typedef struct
{
  size_t lift;                /* which task                                                     */
  double per_min;             /* F of it and of all before it                                   */
  double fm_before, fm_after; /* at F before it and with it, in the column of its own height; of the first FM before is 1 */
  double delta;               /* STLI of the first, then FILI × (1/FM after − 1/FM before)      */
} SyLiftTerm;

/* As many lifts as a composite or a sequential index is worked out of. */
#define SY_LIFT_TASKS_MAX 60

/**
 * sy_lift_composite:
 * Parameters:   tasks    @n of them, 1 to SY_LIFT_TASKS_MAX.
 *               indices  receives @n, in the order of @tasks. Not NULL.
 *               terms    receives @n, in the order of the sum: by STLI, largest first, ties as given. Not NULL.
 * Return value: the CLI.
 */
double sy_lift_composite (const SyLiftTask *tasks, size_t n, SyDuration duration, SyUnits units, SyLiftTaskIndex *indices,
                          SyLiftTerm *terms);

/**
 * sy_lift_composite_without: the CLI of the same set with the task @left_out taken out; 0 when nothing is left.
 * @terms are those of sy_lift_composite over all of them.
 */
double sy_lift_composite_without (const SyLiftTask *tasks, const SyLiftTaskIndex *indices, const SyLiftTerm *terms, size_t n,
                                  size_t left_out, SyDuration duration, SyUnits units);

/* ---- Sequence ---- */

/* One element of a rotation. */
typedef struct
{
  double li;     /* by the class of its own duration                       */
  double li_max; /* by the class of the whole; >= li                       */
  double share;  /* of the time, > 0; all shares together are 1            */
} SyLiftElement;

/**
 * sy_lift_sequence:
 * LI_1 + (LImax_1 − LI_1) × K, K = sum of LImax × share / LImax_1, ordered by LImax, largest first, ties as given.
 * Parameters:   order  receives each element's place, from 0: @n of them. Not NULL.
 *               k      receives K, NAN where LImax_1 is without bound. Not NULL.
 * Return value: the SLI: LI_1 <= SLI <= LImax_1.
 */
double sy_lift_sequence (const SyLiftElement *elements, size_t n, size_t *order, double *k);

/* ---- Variable ---- */

#define SY_LIFT_CATEGORIES_MAX 9
#define SY_LIFT_CATEGORIES_DEFAULT 6
#define SY_LIFT_VARIABLE_MAX 30000
/* Scratch of sy_lift_variable in uint32_t for @n lifts. */
#define SY_LIFT_VARIABLE_SCRATCH(n) (2 * (n))

typedef struct
{
  size_t count;   /* lifts in it; 0: skipped, and nothing else holds                    */
  double fili;    /* mean of their FILI, weighted by frequency                          */
  double per_min; /* sum of their frequencies                                           */
  double fm;      /* low column, at the frequency of it and of all higher ones          */
  double delta;   /* FILI / FM of the highest, then FILI × (1/FM − 1/FM of the higher)   */
} SyLiftCategory;

typedef struct
{
  int n;                                                  /* categories asked for */
  SyLiftCategory categories[SY_LIFT_CATEGORIES_MAX];      /* [0] the highest FILI */
  double vli;
} SyLiftGrouping;

/**
 * sy_lift_variable:
 * The index by two groupings: categories of equal width in FILI, category floor ((x − min) / ((max − min) / n)) and the
 * maximum in the highest; and n-tiles of cumulative frequency, where a lift, sorted by FILI with ties as given, belongs where
 * the middle of its share falls (within 1e-9 below an edge: above it). The two published rules differ; the larger index is
 * the stricter one.
 * Parameters:   fili, per_min  @n of them, 1 to UINT32_MAX; FILI > 0 or INFINITY, F >= 0. Where every F is 0, each lift
 *                              counts alike.
 *               categories     1 to SY_LIFT_CATEGORIES_MAX.
 *               scratch        room for SY_LIFT_VARIABLE_SCRATCH (n). Not NULL.
 *               equal, ntile   overwritten. A FILI without bound makes both indices INFINITY, without categories. Not NULL.
 * Special considerations: time grows as n: a radix sort of places, stable.
 */
void sy_lift_variable (const double *fili, const double *per_min, size_t n, int categories, SyDuration duration,
                       SyUnits units, uint32_t *scratch, SyLiftGrouping *equal, SyLiftGrouping *ntile);

#endif
