/* SPDX-License-Identifier: MIT */
#ifndef CHANGEOVER_PEOPLE_H
#define CHANGEOVER_PEOPLE_H

#include "sy-changeover-facts.h"

/* What the lifts of the whole change add up to for one person. */
typedef struct
{
  size_t lifts;  /* how many of the steps are lifts of that person                     */
  double cli;    /* composite index; INFINITY: unbounded                               */
  size_t worst;  /* the step whose lift comes first in the sum                         */
} SyPersonLifts;

/**
 * sy_changeover_person:
 * The composite index of the lifts (method "lift") in the steps that the @person-th of the people does; a step that names
 * nobody counts for everybody. The class of duration is the longest of theirs.
 * Source: 94-110 section 2.4 (as sy_lift_composite); that a die change is one such set: our choice.
 */
void sy_changeover_person (const SyChangeoverFacts *facts, size_t person, const SyContext *context, SyPersonLifts *out);

#endif
