/* SPDX-License-Identifier: MIT */
#ifndef SY_LIMITS_WORDS_H
#define SY_LIMITS_WORDS_H

#include <glib.h>

#include "sy-policy.h"

/* The figures of a policy in words. Every function returns a new string. */

/* "Lifting index by the heaviest load (LI) over 1". */
char *sy_limits_row_words (const SyPolicyRow *row, SyUnits units);
/* "ISO … · figure from memory, not checked against its source". */
char *sy_source_words (const char *source, gboolean from_memory);
/* The fact that a tolerance is for: "Reach H". */
char *sy_tolerance_fact_words (const SyTolerance *tolerance);
/* "± 2 cm", "± 5 %", "does not vary". */
char *sy_tolerance_words (const SyTolerance *tolerance, SyHow how, SyUnits units);
/* Who may be assigned when a task does not say. */
char *sy_assigned_words (const SyPolicy *policy);

/* What is added to a mass by how it was had: "Weighed 0 % · From its plate 5 % …". */
char *sy_allowance_words (const SyPolicy *policy);
/* "Sling: every 6 months". */
char *sy_examination_words (const SyExaminationRule *rule);

#endif
