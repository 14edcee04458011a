/* SPDX-License-Identifier: MIT */
#ifndef SY_CHANGEOVER_FACTS_H
#define SY_CHANGEOVER_FACTS_H

#include "sy-method.h"

/* The facts of a die change as a whole: who is there, which dies go in and out, and the steps in their order. */

#define SY_CHANGEOVER_STEPS_MAX 60
#define SY_CHANGEOVER_PEOPLE_MAX 8
#define SY_CHANGEOVER_DIES_MAX 16

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
  SyList dies;   /* of SyChangeoverDie  */
  SyList people; /* of const char *     */
  SyNumber changes_per_year;
  SyList steps;  /* of SyChangeoverStep */
} SyChangeoverFacts;

extern const SyChoice sy_step_kind_choices[SY_N_STEP_KINDS], sy_check_choices[SY_N_CHECKS];
#define SY_N_CHANGEOVER_FIELDS 5
extern const SyField sy_changeover_fields[SY_N_CHANGEOVER_FIELDS];

/* Whether a load is moved in a step of this kind: without facts of its own nothing can be said of it. */
bool sy_step_handles (SyStepKind kind);

/* How many people a step takes: as given, else as many as are named, else one. */
int sy_step_persons (const SyChangeoverStep *step);

/* Checks that a step of this kind must have, itself or in a step before it. */
typedef struct
{
  SyCheck check;
  bool before;            /* made once, in this step or in one before it; false: in this very step */
  const char *regulation; /* information, not advice */
  bool from_memory;
} SyNeededCheck;
/* Return value: how many; *out points to static memory. */
size_t sy_step_needed_checks (SyStepKind kind, SyWhen when, const SyNeededCheck **out);

#endif
