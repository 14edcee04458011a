/* SPDX-License-Identifier: MIT */
#ifndef SY_CHANGEOVER_FACTS_H
#define SY_CHANGEOVER_FACTS_H

#include "sy-method.h"

/* The facts of a die change as a whole: who is there, which dies go in and out, and the steps in their order. */

#define SY_CHANGEOVER_STEPS_MAX 60
#define SY_CHANGEOVER_PEOPLE_MAX 8
#define SY_CHANGEOVER_DIES_MAX 16
#define SY_STEP_LABEL_MAX 80   /* bytes: a step's name stands in the names of its quantities */
#define SY_PERSON_LABEL_MAX 40 /* bytes */

typedef enum { SY_DIE_OUT, SY_DIE_IN } SyDieGoes;
typedef enum { SY_WHEN_STOPPED, SY_WHEN_RUNNING } SyWhen;

/* What is done in a step. */
typedef enum
{
  SY_STEP_ISOLATE, SY_STEP_BLOCK, SY_STEP_UNCLAMP, SY_STEP_DISCONNECT, SY_STEP_DRAW, SY_STEP_LIFT, SY_STEP_CARRY,
  SY_STEP_ROLL, SY_STEP_TRUCK, SY_STEP_TURN, SY_STEP_STORE, SY_STEP_BRING, SY_STEP_SET, SY_STEP_CLAMP, SY_STEP_ADJUST,
  SY_STEP_FIRST_OFF, SY_STEP_RELEASE,
} SyStepKind;
#define SY_N_STEP_KINDS 17

/* What somebody makes sure of. */
typedef enum
{
  SY_CHECK_ISOLATED, SY_CHECK_BLOCKED, SY_CHECK_PRESSURE, SY_CHECK_HOT, SY_CHECK_TIED, SY_CHECK_NOBODY_UNDER,
  SY_CHECK_TAG_LINE, SY_CHECK_TRIAL_LIFT, SY_CHECK_WALKERS, SY_CHECK_TORQUED, SY_CHECK_BLOCKS_OUT, SY_CHECK_GUARDS,
} SyCheck;
#define SY_N_CHECKS 12
#define SY_CHECK_BIT(check) (1ul << (check))

/* What a machine or a die may be without; then the checks about it are not asked for. */
typedef enum { SY_WITHOUT_SLIDE, SY_WITHOUT_PRESSURE, SY_WITHOUT_HEAT, SY_WITHOUT_HALVES } SyWithout;
#define SY_N_WITHOUT 4

typedef struct
{
  const char *label;
  int goes; /* SyDieGoes or -1 */
  SyNumber mass;
} SyChangeoverDie;

typedef struct
{
  const char *label;
  int kind;         /* SyStepKind or -1 */
  int when;         /* SyWhen or -1     */
  SyNumber minutes;
  SyNumber persons;
  SyList by;        /* of const char *: which of the people                            */
  SyList after;     /* of const char *: steps that come first; not given: the one before */
  SySet checks;     /* of SyCheck                                                      */
  SyPartFacts part; /* what it is assessed by                                          */
} SyChangeoverStep;

typedef struct
{
  SyCommonFacts common;
  const char *machine;
  SySet without; /* of SyWithout        */
  SyList dies;   /* of SyChangeoverDie  */
  SyList people; /* of const char *     */
  SyNumber changes_per_year;
  SyList steps;  /* of SyChangeoverStep */
} SyChangeoverFacts;

extern const SyChoice sy_step_kind_choices[SY_N_STEP_KINDS], sy_check_choices[SY_N_CHECKS];
#define SY_N_CHANGEOVER_FIELDS 6
extern const SyField sy_changeover_fields[SY_N_CHANGEOVER_FIELDS];

/* Whether a load is moved in a step of this kind: without facts of its own nothing can be said of it. */
bool sy_step_handles (SyStepKind kind);

/* Whether a method says how hands move a load, rather than gear. */
bool sy_method_is_by_hand (const SyMethod *method);

/* How many people the facts of a part speak of: its team, its persons (what is more than may be
   there counts as one more than that); 1 by hand, 0 by gear or without facts. */
int sy_part_persons (const SyPartFacts *part);

/* How many people a step takes: as given, else as many as are named or as its own facts speak of, and at least one. */
int sy_step_persons (const SyChangeoverStep *step);

/* ---- Checks ---- */

/* Bits of SyCheck. */
typedef struct
{
  unsigned long here;   /* in this very step                                        */
  unsigned long before; /* in this step or in one that it comes after, and not undone since */
} SyStepNeeds;

/* What a step must have by its kind, by whether the machine stands and by how its load is moved. @step has a kind. */
SyStepNeeds sy_step_needs (const SyChangeoverStep *step);

/* The checks that are made in a step: those that it names, and those that the facts of its load name. */
unsigned long sy_step_checks (const SyChangeoverStep *step);

/* What asks for a check: information, not advice. Static. */
const char *sy_check_regulation (SyCheck check, bool *from_memory);

/* A note for every check that is missing. Facts that passed the check. */
void sy_changeover_missing_checks (const SyChangeoverFacts *facts, SySink *sink);

/* Cross-field check; see SyMethod. */
void sy_changeover_check (const void *facts, SyUnits units, SyProblems *problems);

#endif
