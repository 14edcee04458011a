/* SPDX-License-Identifier: MIT */
#ifndef SY_FINDINGS_H
#define SY_FINDINGS_H

#include "sy-policy.h"
#include "sy-spread.h"

/* The one evaluator: facts and policy in, findings out. Screen, sheet and JSON show the same findings. */

typedef enum { SY_URGENCY_NONE, SY_URGENCY_SOON, SY_URGENCY_NOW } SyUrgency;

typedef struct
{
  const char *id;            /* template of its words                                    */
  SyVerdict verdict;         /* what this reason alone asks for                          */
  SyUrgency urgency;
  const SyQuantity *quantity; /* NULL: not about a quantity                              */
  const SyNote *note;        /* what it was said by; NULL: a row of the policy            */
  const struct SyPartShown *part; /* NULL: not about a part                              */
  bool has_value;
  double value;              /* INFINITY: unbounded                                      */
  bool has_limit;
  double limit;
  SyKind kind;               /* of value and limit                                       */
  const char *source;        /* NULL for none                                            */
  bool from_memory;
} SyReason;

typedef struct
{
  const char *id;            /* path of the fact ("origin.H"), "pair", "largest-mass"     */
  int n_changes;             /* 1 or 2                                                   */
  SyChange changes[2];
  double before[2];          /* the facts as they stand                                  */
  bool reaches;              /* the goal of the policy                                   */
  double index;              /* the index it gives; INFINITY: unbounded                  */
  double ratio;              /* mass / mR it gives                                       */
  SyVerdict verdict;         /* the verdict it gives                                     */
} SyRemedy;

/* What a part of the facts comes to by its own method. */
typedef struct SyPartShown
{
  const char *label;        /* of the facts                                              */
  const SyMethod *method;   /* NULL: it has no facts of its own, nothing is said of it   */
  SyVerdict verdict;
  const char *index_symbol; /* NULL for none                                             */
  double index;             /* NAN: not had; INFINITY: unbounded                         */
  bool counts;              /* in the verdict of the whole                               */
} SyPartShown;
#define SY_PARTS_SHOWN_MAX SY_METHOD_PARTS_MAX

/* A published limit of the method as it stands for these facts. */
typedef struct
{
  const SyLimit *limit;
  const SyQuantity *value, *at; /* what is held against what     */
  double ratio;                 /* INFINITY: no limit holds      */
  double goal;                  /* the policy's, 1 where it has none */
  bool governs;                 /* the farthest over (or nearest to) its goal of them all */
} SyLimitShown;

#define SY_REASONS_MAX 192
#define SY_REMEDIES_MAX 24

typedef struct
{
  const SyMethod *method;
  const SyPolicy *policy;
  SyUnits units;
  SySink sink;                       /* quantities, notes, governing */
  SyQuantity quantities[SY_QUANTITIES_MAX];
  SyNamed named[SY_NAMED_MAX];       /* quantities of what the facts name */
  char governing[SY_NAMED_TEXT_MAX]; /* "origin.HM", or the limit's id where mass governs */
  SyVerdict verdict;
  double as_of;                      /* day of a dated method, NAN not known or not dated */
  SyUrgency urgency;
  int n_reasons;
  SyReason reasons[SY_REASONS_MAX];  /* strictest first */
  int n_parts;
  SyPartShown parts[SY_PARTS_SHOWN_MAX];
  int n_limits;
  SyLimitShown limits[SY_LIMITS_MAX]; /* in the method's order; those whose limit could be had */
  bool has_remedies;                 /* they were sought; there may be none  */
  int n_remedies;
  SyRemedy remedies[SY_REMEDIES_MAX];
  SySpread spread;
} SyFindings;

typedef enum
{
  SY_JUDGE_PLAIN = 0,
  SY_JUDGE_RECORD = 1 << 0,   /* what was not asked makes the record incomplete        */
  SY_JUDGE_REMEDIES = 1 << 1,
  SY_JUDGE_SPREAD = 1 << 2,   /* needs work and scratch                                */
} SyJudgeFlags;

/* Memory for the parts that need it; all NULL with SY_JUDGE_PLAIN. */
typedef struct
{
  double *work;   /* policy->draws doubles                     */
  void *scratch;  /* 2 × method->facts_size bytes, aligned     */
} SyJudgeRoom;

/**
 * sy_judge:
 * Parameters:   facts  passed the field checks and method->check. Not NULL.
 *               today  days since 1970 on which due dates are judged where the facts name no day; NAN: not known.
 *               out    overwritten; points into @policy, @method and itself: never copy it. Not NULL.
 * Special considerations: pure; any thread; no allocation.
 */
void sy_judge (const SyMethod *method, const void *facts, SyUnits units, const SyPolicy *policy, double today,
               SyJudgeFlags flags, const SyJudgeRoom *room, SyFindings *out);

/* A quantity by symbol, NULL when the findings do not have it; @symbol NULL: a result without an index has none. */
const SyQuantity *sy_findings_quantity (const SyFindings *findings, const char *symbol);

#endif
