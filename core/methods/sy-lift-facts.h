/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_FACTS_H
#define SY_LIFT_FACTS_H

#include "sy-filter.h"
#include "sy-lift.h"
#include "sy-method.h"

#define SY_N_LIFT_FIELDS 23
#define SY_N_LIFT_OF_SET_FIELDS 22
#define SY_N_LIFT_CONDITIONS 14

/* The facts of one lift as measured, in the document's units: masses kg or lb, lengths cm or in. */

typedef struct
{
  SyNumber H, V, A; /* cm or in, cm or in, degrees */
} SyLiftEndFacts;

typedef struct
{
  SyHad H, V, A;
  int H_given, V_given, A_given;
} SyLiftEndHad;

typedef struct
{
  SyCommonFacts common;
  struct
  {
    SyNumber typical, heaviest;
  } load;
  int load_given;
  SyLiftEndFacts origin, destination;
  int origin_given, destination_given;
  SyNumber travel;
  int control_at_destination; /* 0, 1, -1 */
  SyNumber frequency;
  SyNumber lifts, in_minutes;
  int duration; /* SyDuration or -1 */
  SyNumber work_minutes, recovery_minutes, shift_minutes;
  SyList sessions; /* of SyLiftSession */
  int coupling;    /* SyCoupling or -1 */
  SyNumber hands, persons;
  SyNumber lifts_per_day;
  int assigned; /* SyAssigned or -1 */
  SyNumber shift_hours;   /* of a shift over eight hours          */
  int additional_tasks;   /* other hard work beside it: 0, 1, -1  */
  struct
  {
    SyNumber body_mass;                       /* kg or lb                                         */
    SyNumber trunk_origin, trunk_destination; /* degrees from the horizontal: 90 upright          */
    SyNumber arm_origin, arm_destination;     /* hands to the low back along the floor, cm or in  */
  } back;
  int back_given;
  SySet conditions;
  struct
  {
    SyHad load, travel, frequency;
    int load_given, travel_given, frequency_given;
    SyLiftEndHad origin, destination;
    int origin_given, destination_given;
  } had;
  int had_given;
} SyLiftFacts;

typedef struct
{
  SyNumber work, recovery; /* minutes */
} SyLiftSession;

/* One lift of a set of lifts: the lift's facts first, so that their offsets are the same. */
typedef struct
{
  SyLiftFacts lift;
  const char *label;
  SyNumber share; /* of the time of a rotation, over 0 to 1 */
} SyLiftOfSet;

/* Their tables of fields. */
extern const SyField sy_lift_fields[SY_N_LIFT_FIELDS], sy_lift_of_set_fields[SY_N_LIFT_OF_SET_FIELDS];
/* What the equation leaves out; the ids are the notes' ids too. */
extern const SyChoice sy_lift_condition_choices[SY_N_LIFT_CONDITIONS];
extern const SyChoice sy_lift_duration_choices[3], sy_lift_assigned_choices[3], sy_lift_coupling_choices[3];
extern const SyField sy_lift_session_members[2];

/* Symbols of the method's quantities: fifteen for each end, then those of the whole lift. */
enum
{
  SY_LIFT_REACH, SY_LIFT_HEIGHT, SY_LIFT_TWIST,
  SY_LIFT_HM, SY_LIFT_VM, SY_LIFT_DM, SY_LIFT_AM, SY_LIFT_FM, SY_LIFT_CM, SY_LIFT_FIRWL, SY_LIFT_RWL,
  SY_LIFT_LI, SY_LIFT_FILI, SY_LIFT_MR, SY_LIFT_MR_RATIO,
  SY_LIFT_PER_END,
  SY_LIFT_ALL_D = 2 * SY_LIFT_PER_END, SY_LIFT_ALL_F, SY_LIFT_ALL_RWL, SY_LIFT_ALL_LI,
  SY_LIFT_ALL_LI_TYPICAL, SY_LIFT_ALL_MR, SY_LIFT_ALL_MR_RATIO, SY_LIFT_ALL_M_REF,
  SY_LIFT_ALL_MASS_EACH, SY_LIFT_ALL_PERSONS, SY_LIFT_ALL_LIFTS_PER_DAY,
  /* limits by population */
  SY_LIFT_ALL_MASS, SY_LIFT_ALL_SHIFT_MULTIPLIER,
  SY_LIFT_ALL_DAY_MASS, SY_LIFT_ALL_DAY_LIMIT, SY_LIFT_ALL_DAY_RATIO,
  SY_LIFT_ALL_HOUR_MASS, SY_LIFT_ALL_HOUR_LIMIT, SY_LIFT_ALL_HOUR_RATIO,
  SY_LIFT_ALL_EN_MASS, SY_LIFT_ALL_EN_ONE_HAND, SY_LIFT_ALL_EN_TWO_PERSONS, SY_LIFT_ALL_EN_ADDITIONAL,
  SY_LIFT_ALL_EN_LIMIT, SY_LIFT_ALL_EN_INDEX,
  SY_LIFT_ALL_FILTER_BASE, SY_LIFT_ALL_FILTER_TWIST, SY_LIFT_ALL_FILTER_PACE,
  SY_LIFT_ALL_FILTER_MEN, SY_LIFT_ALL_FILTER_WOMEN, SY_LIFT_ALL_FILTER_RATIO,
  /* back compression, an estimate of another kind */
  SY_LIFT_ALL_BACK_ORIGIN, SY_LIFT_ALL_BACK_DESTINATION, SY_LIFT_ALL_BACK,
  SY_LIFT_ALL_BACK_TRUNK, SY_LIFT_ALL_BACK_LOAD, SY_LIFT_ALL_BACK_DIRECT, SY_LIFT_ALL_BACK_LIMIT,
  SY_LIFT_ALL_BACK_RATIO,
  SY_LIFT_N_SYMBOLS
};

/* Places of the method's limits. */
enum
{
  SY_LIFT_LIMIT_NIOSH, SY_LIFT_LIMIT_ISO_MASS, SY_LIFT_LIMIT_REFERENCE, SY_LIFT_LIMIT_DAY, SY_LIFT_LIMIT_HOUR,
  SY_LIFT_LIMIT_EN, SY_LIFT_LIMIT_FILTER_MEN, SY_LIFT_LIMIT_FILTER_WOMEN, SY_LIFT_LIMIT_BACK,
  SY_LIFT_N_LIMITS
};

/* The facts brought into the shape of the equation. */
typedef struct
{
  SyUnits units;
  double heaviest, typical;
  double persons;
  int n_ends;       /* 1: origin only; 2: the destination counts too             */
  bool has_destination; /* measured, whether it counts or not                    */
  SyLiftPosition at[2];
  SyLiftPace pace;
  bool beyond;      /* more than eight hours of work                             */
  double day_min;   /* minutes of work a day                                     */
  bool assigned_default;
  SyAssigned assigned;
  double lifts_per_day;    /* as given, or pace × minutes of work                */
  bool extended;           /* a shift over eight hours                           */
  double shift_multiplier; /* on mR; 1 where none applies                        */
  bool has_en;             /* EN 1005-2 speaks of so many persons                */
  double en_mass;          /* M_c, kg or lb                                      */
  double en_one_hand, en_two_persons, en_additional; /* 1 where it does not apply */
  bool has_filter;         /* the guideline filter speaks of this: one person, both hands; and the policy asks for it */
} SyLiftCase;

/* Facts that passed the check. */
void sy_lift_case (const SyLiftFacts *facts, const SyContext *context, SyLiftCase *out);
/* Its part on limits by population, filled in by sy_lift_case: everything from lifts_per_day on. */
void sy_lift_case_population (const SyLiftFacts *facts, const SyContext *context, SyLiftCase *lift);
/* Quantities of other limits than the equation's, @end being the one that governs. */
void sy_lift_population (const SyLiftCase *lift, const SyLiftEnd *end, SySink *sink);
/* One end of it: sy_lift_end with the shift's multiplier on mR. */
void sy_lift_case_end (const SyLiftCase *lift, int end, SyLiftEnd *out);
/* Its figure of the guideline filter. Without a destination the hands may go up or down: both count. */
void sy_lift_case_filter (const SyLiftCase *lift, SyFilter *out);

/* Back compression: quantities, notes, cross-field check, and the load at which it is at its action level, in the unit of masses
   (INFINITY where it is not asked for; not above 0: the body alone is over it). */
void sy_lift_back (const SyLiftFacts *facts, const SyLiftCase *lift, SySink *sink);
void sy_lift_back_notes (const SyLiftFacts *facts, const SyLiftCase *lift, SySink *sink);
void sy_lift_check_back (const SyLiftFacts *facts, SyProblems *problems);
double sy_lift_back_mass (const SyLiftFacts *facts, const SyLiftCase *lift, const SyGoal *goal);

/* How long lifting goes on: a class, a pattern that repeats, or the sessions of a day. Of a lift, of a set of lifts. */
typedef struct
{
  int duration; /* SyDuration or -1 */
  SyNumber work_minutes, recovery_minutes, shift_minutes;
  SyList sessions; /* of SyLiftSession, at most SY_LIFT_SESSIONS_MAX */
} SyLiftTimes;
#define SY_LIFT_SESSIONS_MAX 96
SyLiftTimes sy_lift_times (const SyLiftFacts *facts);
/* The class of times that passed the check; @beyond: over eight hours; @day_min: minutes of work a day. Not NULL. */
SyDuration sy_lift_times_class (const SyLiftTimes *times, bool *beyond, double *day_min);

/* Cross-field checks of one lift; @at begins every path: "$", "$.lifts[3]". Load and way; pace; duration. */
void sy_lift_check (const SyLiftFacts *facts, const char *at, SyUnits units, SyProblems *problems);
void sy_lift_check_pace (const SyLiftFacts *facts, const char *at, SyProblems *problems);
void sy_lift_check_times (const SyLiftTimes *times, const char *at, SyProblems *problems);
/* Adds a problem at @at.@name. */
void sy_lift_problem (SyProblems *problems, SyProblemKind kind, const char *at, const char *name, const char *given,
                      const char *allowed, const char *unit);

/* The method's remedies; see SyMethod. */
#define SY_LIFT_N_FACTORS 12
size_t sy_lift_candidates (const void *facts, const SyContext *context, const SyGoal *goal, size_t factor,
                           SyChange *changes, SyChange *best, bool *has_best);
bool sy_lift_largest_mass (const void *facts, const SyContext *context, const SyGoal *goal, double *mass,
                           SyChange *change);

/* Formulas and the rounded worksheet of the method; see SyMethod. The worksheet's HM comes from the formula, not from
   the printed table, which differs from it at 22 and 23 in. Source: 94-110, job analysis worksheet. */
bool sy_lift_formula (const SySink *sink, size_t symbol, SyUnits units, char *text);
bool sy_lift_worksheet (const SySink *sink, SyUnits units, size_t part, SyWorksheetPart *out);

#endif
