/* SPDX-License-Identifier: MIT */
#ifndef SY_POLICY_H
#define SY_POLICY_H

#include "sy-region.h"
#include "sy-verdict.h"

/* A site's limits. Plain data; core/exchange reads it from a policy file. */

#define SY_POLICY_ID_MAX 64
#define SY_POLICY_SOURCE_MAX 200
#define SY_POLICY_ROWS_MAX 160
#define SY_POLICY_TOLERANCES_MAX 64
#define SY_POLICY_RULES_MAX 32

typedef enum { SY_OVER, SY_UNDER } SyComparator; /* strict: a bound equal to its limit is within it */

typedef struct
{
  char id[SY_POLICY_ID_MAX];       /* "index-goal": also the reason's id and words         */
  char method[SY_POLICY_ID_MAX];
  char symbol[SY_POLICY_ID_MAX];   /* "LI"; "element.*.utilisation": each of these         */
  SyComparator comparator;
  bool limit_is_symbol;            /* the limit is another quantity of the same findings   */
  char limit_symbol[SY_POLICY_ID_MAX];
  double limit[SY_N_UNITS];        /* metric, US                                            */
  SyVerdict verdict;
  char source[SY_POLICY_SOURCE_MAX];
  bool from_memory;                /* the figure was not checked against its source         */
  const SyMethod *of;              /* found by sy_policy_resolve                            */
  int symbol_at, limit_at;         /* places in the method's symbols, -1 for none           */
  bool each;                       /* of every named quantity that the symbol stands for    */
} SyPolicyRow;

/* A published limit of a method as the policy takes it; found by sy_policy_resolve, since judging looks at each. */
typedef struct
{
  const SyMethod *of;
  const SyLimit *limit;
  int value_at, limit_at, ratio_at; /* places in the method's symbols, -1 for none or a named one */
  double goal[SY_N_UNITS];          /* the lowest on its ratio; INFINITY: none                    */
  double value_goal[SY_N_UNITS];    /* else the lowest on the value itself, where no other limit holds it; INFINITY: none */
} SyPolicyLimit;
#define SY_POLICY_LIMITS_MAX 128

typedef struct
{
  char method[SY_POLICY_ID_MAX];
  char fact[SY_POLICY_ID_MAX];     /* SyMeasured.tolerance                    */
  bool percent;
  double by_how[SY_N_HOW][SY_N_UNITS]; /* half-width of a 95 % interval       */
  char source[SY_POLICY_SOURCE_MAX];
} SyTolerance;

typedef struct
{
  char id[SY_POLICY_ID_MAX];
  int version;
  char title[SY_POLICY_SOURCE_MAX];
  char loosened_because[SY_POLICY_SOURCE_MAX]; /* "" unless a limit is looser than the built-in one */
  int default_assigned;            /* SyAssigned                              */
  double soon_over, now_over;      /* index over which "improve" is urgent    */
  double allowance_percent[SY_N_BASES]; /* added to a mass by how it was had  */
  int n_examinations;
  SyExaminationRule examinations[SY_EXAMINATION_RULES_MAX];
  unsigned long long seed;         /* of the spread                           */
  int draws;                       /* 100 .. 100000                           */
  int n_rows;
  SyPolicyRow rows[SY_POLICY_ROWS_MAX];
  const SyMethod *row_of[SY_POLICY_ROWS_MAX]; /* rows[i].of once more, close together: judging looks at each */
  int n_limits;
  SyPolicyLimit limits[SY_POLICY_LIMITS_MAX]; /* of every method, in the method's order */
  int n_tolerances;
  SyTolerance tolerances[SY_POLICY_TOLERANCES_MAX];
  bool has_region;                 /* its intervals are among the examinations */
  SyRegion region;
  int n_rules;
  SyDefersTo rules[SY_POLICY_RULES_MAX]; /* the site's own                  */
} SyPolicy;

/**
 * sy_policy_resolve:
 * Finds every row's method and symbols once, so that judging need not search. To be called after a policy was
 * filled in and before it is used.
 * Return value: -1, or the place of the first row that names a method or symbol that does not exist.
 */
int sy_policy_resolve (SyPolicy *policy);

/**
 * sy_policy_goal:
 * The goals that a remedy must reach for @method: the lowest limit of any "improve" or stricter row on the
 * index (on any of them, where the facts say which it is), on the ratio and on the method's limits. INFINITY where the policy has no such row or the method no such symbol.
 */
SyGoal sy_policy_goal (const SyPolicy *policy, const SyMethod *method, SyUnits units);

/* The lowest limit of any "improve" or stricter row on a symbol of @method; INFINITY: none. */
double sy_policy_lowest (const SyPolicy *policy, const SyMethod *method, const char *symbol, SyUnits units);

/* What a calculation needs of the policy, and the day: days since 1970, NAN not known. Points into @policy. */
SyContext sy_policy_context (const SyPolicy *policy, SyUnits units, double today);

/* Whether the policy says what its results defer to; where it does there may still be nothing about a method. */
bool sy_policy_says_defers_to (const SyPolicy *policy);
/* What results of @method defer to: the @i-th, those of the region before the site's own rules; NULL: no more. */
const SyDefersTo *sy_policy_defers_to (const SyPolicy *policy, const SyMethod *method, int i);

/* The policy's tolerance for a fact, in the fact's unit (or percent); false: none, the fact does not vary. */
bool sy_policy_tolerance (const SyPolicy *policy, const SyMethod *method, const SyMeasured *measured,
                          int how, SyUnits units, double *half_width);

#endif
