/* SPDX-License-Identifier: MIT */
#ifndef SY_FACTS_H
#define SY_FACTS_H

#include "sy-json.h"
#include "sy-method.h"

/* A document as typed, read into the struct of its method through the table of fields. */
typedef struct
{
  const SyMethod *method;
  SyUnits units;
  void *values; /* method->facts_size bytes; begins with SyCommonFacts; in the memory given */
} SyFacts;

/**
 * sy_facts_read:
 * Parameters:   document  a scanned document.
 *               problems  receives every problem, unknown fields first; not cleared.
 * Return value: false when there is a problem; @out is then untouched.
 */
bool sy_facts_read (const SyJson *document, SyMemory *memory, SyFacts *out, SyProblems *problems);

#endif
