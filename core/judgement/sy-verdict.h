/* SPDX-License-Identifier: MIT */
#ifndef SY_VERDICT_H
#define SY_VERDICT_H

#include "sy-method.h"

/* Weakest to strictest; by-hand and within-capacity are equally strict. */
typedef enum
{
  SY_VERDICT_BY_HAND,
  SY_VERDICT_WITHIN_CAPACITY,
  SY_VERDICT_IMPROVE,
  SY_VERDICT_INCOMPLETE,
  SY_VERDICT_OUTSIDE,
  SY_VERDICT_MECHANICAL,
  SY_VERDICT_DO_NOT_LIFT,
} SyVerdict;
#define SY_N_VERDICTS 7

/* "by-hand" … ; static text. */
const char *sy_verdict_id (SyVerdict verdict);
bool sy_verdict_from_id (const char *id, SyVerdict *verdict);
/* "Within the hand-handling limits" …: N_(), static. */
const char *sy_verdict_title (SyVerdict verdict);
/* One sentence on what it means; N_(), static. */
const char *sy_verdict_meaning (SyVerdict verdict);
/* The same as a method shows them; @method NULL: the verdict's own. N_(), static. */
const char *sy_verdict_title_for (const SyMethod *method, SyVerdict verdict);
const char *sy_verdict_meaning_for (const SyMethod *method, SyVerdict verdict);
/* 0 for by-hand and within-capacity, rising. */
int sy_verdict_rank (SyVerdict verdict);

#endif
