/* SPDX-License-Identifier: MIT */
#ifndef CHANGEOVER_PEOPLE_H
#define CHANGEOVER_PEOPLE_H

#include "sy-changeover-facts.h"

/* What the lifts of the whole change add up to for one person. */
typedef struct
{
  size_t lifts;  /* how many lifts of the steps are that person's                        */
  double cli;    /* composite index; INFINITY: unbounded                                 */
  size_t worst;  /* the step whose lift comes first in the sum                           */
  bool too_many; /* more lifts than one index is worked out of: the rest is left out     */
  bool others;   /* does other handling as well, which no index of lifts adds up         */
} SyPersonLifts;

/**
 * sy_changeover_person:
 * The composite index of the lifts (methods "lift" and "lift-set", each lift of a set) in the steps that the @person-th of
 * the people does. A step that does not name as many as it takes counts for everybody: any of them may be the one. The class
 * of duration is the longest of theirs.
 * Source: 94-110 section 2.4 (as sy_lift_composite); that a die change is one such set: our choice.
 */
void sy_changeover_person (const SyChangeoverFacts *facts, size_t person, const SyContext *context, SyPersonLifts *out);

/* The heaviest mass that one person lifts or carries in a step by hand, kg or lb; NAN: no mass is known. */
double sy_part_heaviest (const SyPartFacts *part, const SyContext *context, const SySink *found);

#endif
