/* SPDX-License-Identifier: MIT */
#ifndef SY_MARKING_H
#define SY_MARKING_H

#include "sy-reduction.h"

/*
 * A cross-check of what is marked on gear, never a substitute for it: the largest working load limit that one leg of a
 * nominal size can have. A marking well over it was misread, or is in another unit.
 * Sizes in mm, masses in kg. Nominal sizes are taken generously: a size between two rows counts as the larger.
 */

typedef struct
{
  double wll_kg;
  const char *source;
  bool from_memory; /* the figure was not checked against the publication */
} SyMarking;

/* Published tables of one and the same gear differ by up to 4 % in rounding; inch sizes by as much again in places. */
#define SY_MARKING_ROUNDING 1.05

/**
 * sy_marking_cannot_be:
 * Whether a marking is more than 5 % over the largest that its size can have.
 */
bool sy_marking_cannot_be (double wll_kg, const SyMarking *largest);

/**
 * sy_marking_chain:
 * One leg, straight.
 * Parameters:   diameter_mm  nominal, of the link's bar; an inch size (7/32 to 1 1/4) counts as the metric chain that
 *                            is sold as it: 1/2 in is 13 mm.
 *               grade        8, 10 or 12; anything else counts as 12, the largest.
 * Return value: false where the diameter is not over 0.
 * Source:       two sections × 200, 250, 300 N/mm²: the meaning of the grade at a design factor of 4; the first two
 *               give the single-leg figures of OSHA's chain tables to 100 lb, grade 12 is from memory.
 */
bool sy_marking_chain (double diameter_mm, int grade, SyMarking *out);

/**
 * sy_marking_wire_rope:
 * One leg, straight.
 * Source:       from memory: nominal strength × 0.95 for a mechanical splice (TM 5-3810-305-10 table 4, read) / 5;
 *               strength of 3/8 in 6×36 extra improved plow steel with a core of wire rope, 7.55 tons of 2,000 lb,
 *               the strongest for its size, by diameter squared, and × 1960/1770 for the largest common grade. EN
 *               13414-1 (0.356 d² × 1960 × 0.9 / 5) is a fifth less: it would call good US markings wrong.
 */
bool sy_marking_wire_rope (double diameter_mm, SyMarking *out);

/**
 * sy_marking_eyebolt:
 * Along the bolt's own axis.
 * Parameters:   diameter_mm  of the thread.
 * Return value: false over the largest row (M64, 2 in), and for bs-4278, of which no table is known.
 * Source:       from memory: DIN 580 load table, the larger figure where printings differ (M30, M36); ASME B18.15
 *               shoulder eyebolts of carbon steel.
 */
bool sy_marking_eyebolt (SyEyeboltFamily family, double diameter_mm, SyMarking *out);

#endif
