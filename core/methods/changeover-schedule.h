/* SPDX-License-Identifier: MIT */
#ifndef CHANGEOVER_SCHEDULE_H
#define CHANGEOVER_SCHEDULE_H

#include "sy-changeover-facts.h"

/* Who does what when: the steps in their order, never more people than there are. */

typedef struct
{
  double start, end;  /* minutes from the beginning        */
  unsigned int lanes; /* bit k: the k-th of the people     */
} SyScheduled;

typedef struct
{
  SyScheduled steps[SY_CHANGEOVER_STEPS_MAX];
  double end;            /* of the last step                                                              */
  double stands_from, stands_to; /* from the first to the last step with the machine stopped; equal: none */
} SySchedule;

/**
 * sy_changeover_schedule:
 * Each step begins as soon as the steps that it comes after are over and enough people are free; of those that are not
 * named the ones that have been free longest are taken, in the order in which they are named.
 * Parameters:   facts  passed the check: every name is known, and no step needs more people than there are.
 * Special considerations: pure; no allocation; any thread.
 */
void sy_changeover_schedule (const SyChangeoverFacts *facts, SySchedule *out);

/* The place of a step by name before @before, of a person by name; -1: there is none. */
int sy_changeover_find_step (const SyChangeoverFacts *facts, const char *label, size_t before);
int sy_changeover_find_person (const SyChangeoverFacts *facts, const char *name);

#endif
