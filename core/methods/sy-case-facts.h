/* SPDX-License-Identifier: MIT */
#ifndef SY_CASE_FACTS_H
#define SY_CASE_FACTS_H

#include "sy-method.h"

/* The facts of a case for an aid: a task or a die change as it is, against one to five ways to do it otherwise. */

#define SY_CASE_OPTIONS_MAX 5
#define SY_CASE_LABEL_MAX 80 /* bytes: an option's name stands in the names of its quantities */

/* What may be low, is expected, may be high. Only what is expected must be given; the others then are the same. */
typedef struct
{
  SyNumber low, expected, high;
} SyEstimate;

typedef enum
{
  SY_AID_HOIST, SY_AID_JIB, SY_AID_CART, SY_AID_TABLE, SY_AID_MANIPULATOR, SY_AID_ROBOT, SY_AID_ARM,
  SY_AID_TWO_PERSON, SY_AID_REDESIGN, SY_AID_OTHER,
} SyAidKind;
#define SY_N_AID_KINDS 10
extern const SyChoice sy_aid_kind_choices[SY_N_AID_KINDS];

typedef struct
{
  const char *label;
  int kind;          /* SyAidKind or -1                        */
  SyPartFacts part;  /* the facts as they would be             */
  SyPartFacts aid;   /* how the aid itself is assessed         */
  SyEstimate capital, training;                 /* once        */
  SyEstimate running, examination, maintenance; /* a year      */
  SyEstimate stopped, person;                   /* minutes a change */
  int capital_given, training_given, running_given, examination_given, maintenance_given, stopped_given, person_given;
  const char *quote_number, *quote_date;
  SyNumber lead_weeks;
  const char *when_down;
} SyCaseOption;

typedef struct
{
  SyPartFacts part;
  SyEstimate stopped, person;
  int stopped_given, person_given;
} SyCaseAsIs;

typedef struct
{
  const char *who, *role, *date;
} SyCaseApproval;

typedef struct
{
  SyCommonFacts common;
  SyCaseAsIs as_is;
  int as_is_given;
  SyList options; /* of SyCaseOption */
  const char *currency;
  SyEstimate changes, labour_rate, machine_rate;
  int changes_given, labour_rate_given, machine_rate_given;
  SyNumber discount_rate, years;
  SyCaseApproval approval;
  int approval_given;
} SyCaseFacts;

#define SY_N_CASE_FIELDS 9
extern const SyField sy_case_fields[SY_N_CASE_FIELDS];

/* Cross-field check; see SyMethod. */
void sy_case_check (const void *facts, SyUnits units, SyProblems *problems);

/* Whether what the option needs assessed is: an aid that bears a load has a plan of its own, in @aid or in the facts. */
bool sy_case_is_assessed (const SyCaseOption *option);

#endif
