/* SPDX-License-Identifier: MIT */
#ifndef SY_CHANGE_PLAN_H
#define SY_CHANGE_PLAN_H

#include "sy-changeover-facts.h"
#include "sy-facts.h"
#include "sy-findings.h"
#include "sy-lanes.h"
#include "sy-words.h"

/* A die change for the eye, on screen and on paper: who does what when, how each step stands, in words and as lanes. */

typedef struct
{
  char *number;     /* "4"                                                                     */
  char *label;
  char *kind;       /* "Lift"; "" not said                                                     */
  char *minutes;    /* "4 min"                                                                 */
  char *span;       /* "10–14"                                                                 */
  char *people;     /* "Ann, Ben"                                                              */
  char *method;     /* "Manual lift"; "–": nothing of its own                                  */
  gboolean stopped; /* the machine is                                                          */
  gboolean has_verdict; /* something is said of it: of its load, or of what it lacks           */
  SyVerdict verdict; /* the strictest of its own method, its kind and its checks              */
  char *verdict_words; /* "no load moved" without one                                          */
  gboolean can_run; /* could be done while the machine runs                                    */
  GPtrArray *checks;  /* of char *: what is made sure of in it                                 */
  GPtrArray *missing; /* of char *: checks that it lacks, with what asks for them              */
  char *words;      /* all of it in a sentence                                                 */
} SyPlanStep;

typedef struct
{
  SyLanes lanes;     /* texts are the plan's */
  guint n_steps;
  SyPlanStep *steps; /* step i is bar i      */
  char *sentence;    /* the whole            */
  GPtrArray *texts;  /* what lanes points to */
} SyChangePlan;

/**
 * sy_change_plan_new:
 * Parameters:   facts      of method "changeover", without problems; not kept.
 *               findings   of @facts; not kept.
 *               translate  NULL: English.
 */
SyChangePlan *sy_change_plan_new (const SyFacts *facts, const SyFindings *findings, SyTranslate translate);
void sy_change_plan_free (SyChangePlan *plan); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyChangePlan, sy_change_plan_free)

/* Figures of the whole as rows of two: what it is, how much; those that are there, in the order in which they are read. */
typedef struct
{
  char *title, *value;
  gboolean heavy; /* over its goal */
} SyPlanFigure;
/* New array that frees its elements. */
GPtrArray *sy_change_plan_figures (const SyFindings *findings, SyTranslate translate);
/* The same of each person: lifts, minutes, composite index against its goal. */
GPtrArray *sy_change_plan_people (const SyFacts *facts, const SyFindings *findings, SyTranslate translate);

#endif
