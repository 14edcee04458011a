/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_WORKSHEET_H
#define SY_LIFT_WORKSHEET_H

#include "sy-findings.h"

/* One end of a lift as a person fills in the printed manual's worksheet. */
typedef struct
{
  double multipliers[6]; /* HM VM DM AM FM CM, rounded half-up to 2 decimals  */
  double rwl;            /* kg or lb: their product with LC, to 1 decimal     */
  double li;             /* to 1 decimal; INFINITY: RWL is 0                  */
} SyLiftWorksheet;

/**
 * sy_lift_worksheet:
 * Parameters:   end  0 origin, 1 destination; sy_lift_worksheet_has says whether the findings have it.
 * Source: NIOSH 94-110, job analysis worksheet. HM comes from the formula, not from the printed table, which
 *         differs at 22 and 23 in.
 */
bool sy_lift_worksheet_has (const SyFindings *findings, int end);
void sy_lift_worksheet (const SyFindings *findings, int end, SyLiftWorksheet *out);

#endif
