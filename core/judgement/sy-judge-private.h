/* SPDX-License-Identifier: MIT */
#ifndef SY_JUDGE_PRIVATE_H
#define SY_JUDGE_PRIVATE_H

#include "sy-findings.h"

/* A policy row that a set of quantities breaks. */
bool sy_row_broken (const SyPolicyRow *row, const SyMethod *method, SyUnits units,
                    const SyQuantity *quantities, double *value, double *limit);

/* What one set of facts comes to, without words. */
typedef struct
{
  double index, ratio;
  const char *index_symbol;
  bool reaches;      /* no row of the policy is broken */
  double excess;     /* of the broken row that is farthest over its limit, value over limit; 0: none is */
  SyVerdict verdict; /* with notes and all             */
} SyOutcome;
void sy_outcome_of (const SyMethod *method, const void *facts, const SyContext *context,
                    const SyPolicy *policy, SyJudgeFlags flags, SyOutcome *out);

/* Whether a value is on the wrong side of a row's own limit. */
bool sy_is_over (const SyPolicyRow *row, double value, SyUnits units);
SyVerdict sy_class_verdict (SyNoteClass note_class, SyJudgeFlags flags);
SyVerdict sy_stricter (SyVerdict a, SyVerdict b);

/* Parts are judged on the day of the whole. */
SyContext sy_part_context (const void *facts, const SyContext *context);
/* How a part with that verdict stands; @method NULL: it has no facts. */
SyPartStands sy_part_stands (const SyMethod *method, SyVerdict verdict);
/* Which of the @n parts count in the verdict of the whole. */
void sy_choose_parts (const SyMethod *method, const void *facts, const SyContext *context, const SyPartStands *stands,
                      size_t n, bool *counts, SySink *sink);

/* The verdict when nothing speaks against it. */
SyVerdict sy_base_verdict (const SyMethod *method);

/* Verdict of a note or of the answer to "can it be avoided"; by-hand for a mere caution. */
SyVerdict sy_note_verdict (const SyNote *note, SyJudgeFlags flags);
SyVerdict sy_avoid_verdict (const void *facts);

/* Fills findings->remedies. @scratch: 2 × facts_size bytes. */
void sy_remedies_find (const SyMethod *method, const void *facts, const SyContext *context,
                       const SyPolicy *policy, SyJudgeFlags flags, void *scratch, SyFindings *findings);

#endif
