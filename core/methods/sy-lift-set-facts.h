/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_SET_FACTS_H
#define SY_LIFT_SET_FACTS_H

#include "sy-lift-facts.h"
#include "sy-lift-set.h"

/* The facts of a set of lifts, and what the files of its method share. */

typedef enum { SY_COMBINE_COMPOSITE, SY_COMBINE_SEQUENCE, SY_COMBINE_VARIABLE } SyCombine;
#define SY_LIFT_PERSONS_MAX 40
#define SY_LIFT_TURNS_MAX 96

typedef struct
{
  const char *lift;           /* label of a lift, or its number from 1 */
  SyNumber minutes, recovery; /* of lifting, of light work after it    */
} SyLiftTurn;

/* Who does what for how long. */
typedef struct
{
  const char *label;
  SyList turns; /* of SyLiftTurn, in the order of the day */
} SyLiftPerson;

typedef struct
{
  SyCommonFacts common;
  int combine;        /* SyCombine or -1                               */
  SyLiftTimes times;  /* of the whole                                  */
  SyNumber frequency; /* of all lifts together                         */
  int assigned;       /* SyAssigned or -1; lifts may say their own     */
  SySet conditions;   /* of lifts that do not say their own            */
  SyNumber categories;
  SyList lifts;       /* of SyLiftOfSet  */
  SyList rota;        /* of SyLiftPerson */
} SyLiftSetFacts;

#define SY_N_LIFT_SET_FIELDS 12
extern const SyField sy_lift_set_fields[SY_N_LIFT_SET_FIELDS];

/* Symbols of the method's quantities. */
enum
{
  SY_SET_CLI, SY_SET_SLI, SY_SET_VLI, SY_SET_VLI_EQUAL, SY_SET_VLI_NTILE, SY_SET_K, SY_SET_LIFTS, SY_SET_F,
  SY_SET_INDEX_LIMIT, SY_SET_MR_RATIO, SY_SET_MASS_EACH, SY_SET_M_REF, SY_SET_PERSONS, SY_SET_LIFTS_PER_DAY,
  SY_SET_N_SYMBOLS
};

/* One lift of a set in the shape of the equation. */
typedef struct
{
  SyUnits units;
  double heaviest, typical; /* kg or lb */
  double persons;
  double reference;         /* kg or lb: mass of who may be assigned                                  */
  bool assigned_default;
  bool control_assumed;     /* a destination, and not said whether it is placed with control          */
  double per_min;           /* its own; its part of the set's                                         */
  int n_ends;
  SyLiftPosition at[2];
  double travel;
  SyCoupling coupling;
} SyLiftOne;

/* Facts that passed the check. */
void sy_lift_one (const SyLiftSetFacts *facts, size_t lift, const SyContext *context, SyLiftOne *out);
/* The end with the lower FIRWL × FM in that class, the first of equals; @fm false: with the lower FIRWL. */
int sy_lift_one_end (const SyLiftOne *one, SyDuration duration, bool fm, SyLiftEnd *out);
/* Name of the smallest multiplier of an end: "HM". Static. */
const char *sy_lift_end_factor (const SyLiftEnd *end);

/* What a lift is called: its label, or "#3". Into SY_LIFT_NAME_MAX bytes. */
#define SY_LIFT_NAME_MAX 64
void sy_lift_name (const SyLiftSetFacts *facts, size_t lift, char *name);
/* The lift that a turn names; the number of lifts when there is none. */
size_t sy_lift_of_turn (const SyLiftSetFacts *facts, const SyLiftTurn *turn);

/* A person's part of a rota as elements of a sequence. */
typedef struct
{
  size_t n;                                /* lifts that the person has a turn at  */
  size_t lifts[SY_LIFT_TASKS_MAX];         /* which                                */
  SyDuration own[SY_LIFT_TASKS_MAX];       /* class of the longest turn at it      */
  double minutes[SY_LIFT_TASKS_MAX];
  SyDuration whole;
  double all_minutes;
  bool beyond;                             /* over eight hours                     */
} SyLiftDay;
void sy_lift_day (const SyLiftSetFacts *facts, const SyLiftPerson *person, SyLiftDay *out);

/* See SyMethod. */
void sy_lift_set_check (const void *facts, SyUnits units, SyProblems *problems);
bool sy_lift_set_formula (const SySink *sink, size_t symbol, SyUnits units, char *text);
bool sy_lift_set_named_formula (const SySink *sink, const SyNamed *named, SyUnits units, char *text);
void sy_lift_set_scene (const void *facts, SyUnits units, const SySink *sink, size_t view, SyScene *scene);

/* Cautions and conditions of all lifts; what is the same of several is said once, with their names. */
void sy_lift_set_notes (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink);

#endif
