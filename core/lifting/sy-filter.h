/* SPDX-License-Identifier: MIT */
#ifndef SY_FILTER_H
#define SY_FILTER_H

#include "sy-lift.h"

/*
 * The guideline filter for lifting and lowering of the UK guidance L23 (also INDG143): a mass by zone of the hands.
 * It is a filter and no limit: over it a fuller assessment is called for. One person, both hands.
 *
 * Men's figures were read in a secondary source, women's stand from memory (their largest, 16 kg, was read), and the
 * heights that part the zones, and the reach that counts as close, have no published figure: assumed, no source.
 *
 * Topics: zones, reductions, the figure for one lift
 */

/* What the hands do from the lowest to the highest point of their way. */
typedef struct
{
  double low, high; /* heights of the hands, cm or in, 0 <= low <= high              */
  double reach;     /* the longest H of the ends, cm or in, > 0                      */
  double twist_deg; /* the largest A of the ends, >= 0                               */
  double per_min;   /* lifts a minute, >= 0                                          */
} SyFilterLift;

typedef struct
{
  double base;  /* smallest figure of the zones that the hands enter, kg or lb; 0: they leave them all */
  double twist; /* 1, 0.9 or 0.8     */
  double pace;  /* 1, 0.7, 0.5, 0.2  */
  double mass;  /* base × twist × pace; that the two reductions multiply is our choice */
} SyFilter;

/**
 * sy_filter_lift:
 * Parameters:   men  figures for men alone; otherwise women's.
 * Close to the body is H up to the closest reach of the equation (25 cm · 10 in); over its farthest (63 cm · 25 in)
 * no figure holds, nor with the hands over its highest (175 cm · 70 in): the base is 0.
 * Special considerations: pure; any thread; no allocation.
 */
void sy_filter_lift (const SyFilterLift *lift, bool men, SyUnits units, SyFilter *out);

/* Reduction by twist: over 45 degrees 10 %, over 90 degrees 20 %. Source: L23 (read). */
double sy_filter_twist (double twist_deg);

/* Reduction by pace: none to 30 an hour (read, "about"), 30 % to 2 a minute, 50 % to 8, 80 % over 8. Source: L23 (read)
   gives 1 to 2, 5 to 8 and over 12 a minute; between them the stricter neighbour, our choice. */
double sy_filter_pace (double per_min);

/* Heights (cm or in) at which the figure can change, each zone's border less and plus the band in which both zones count. */
#define SY_FILTER_EDGES 8
void sy_filter_edges (SyUnits units, double edges[SY_FILTER_EDGES]);

#endif
