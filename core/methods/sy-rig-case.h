/* SPDX-License-Identifier: MIT */
#ifndef SY_RIG_CASE_H
#define SY_RIG_CASE_H

#include "sy-hang.h"
#include "sy-rig-facts.h"

/* The facts of a rigged lift brought into the shape of statics, and what comes of them; all in the units of the document. */

/* Sling lengths are matched to 0.25 %: marine-warranty guidelines for lifting, from memory. A leg that is loose by less may
   be taut. */
#define SY_RIG_MATCHED 0.0025

typedef struct
{
  const SyRigLeg *leg;
  size_t leg_at;          /* in facts->legs */
  const SyRigPoint *point;
} SyRigPart;

typedef struct
{
  SyUnits units;
  double mass;            /* kg or lb, of the load with allowance and dynamic factor */
  double allowance;       /* percent, 0 or more                                      */
  double dynamic;         /* factor, 1 or more                                       */
  bool dynamic_assumed;
  bool level;             /* held level under a hook; otherwise it hangs free */
  int n;
  SyRigPart parts[SY_PARTS_MAX];
  SyPart at[SY_PARTS_MAX];
  bool hangs;             /* statics was asked; false: a basket that hangs free, or a length not given */
  bool free_basket;       /* it does not hang for that reason */
  SyHang hang;            /* the answer, where it hangs       */
} SyRigCase;

/* @facts passed sy_rig_check() and outlive @out, which points into them. */
void sy_rig_case (const SyRigFacts *facts, const SyContext *context, SyRigCase *out);
/* Straight length from the point of @part (0 to under n) to the hook as the load hangs, mm or in. */
double sy_rig_part_length (const SyRigCase *rig, int part);
/* The weight of a mass: kN = kg × 9.80665 / 1000; lbf = lb. */
double sy_rig_force (double mass, SyUnits units);

/* Symbols that every rigged lift has. */
enum
{
  SY_RIG_MASS, SY_RIG_HOOK_LOAD, SY_RIG_TILT, SY_RIG_HEADROOM, SY_RIG_UTILISATION, SY_RIG_VALID_UNTIL,
  SY_RIG_ANGLE_MAX, SY_RIG_MARGIN, SY_RIG_US_CAPACITY, SY_RIG_US_UTILISATION, SY_RIG_EN_CAPACITY,
  SY_RIG_EN_UTILISATION, SY_RIG_SKEW_ERROR, SY_RIG_HOOK_X, SY_RIG_HOOK_Y, SY_RIG_HOOK_Z,
  SY_RIG_N_SYMBOLS
};

/* What holds the load, into @sink: capacities (kg or lb), utilisations (ratios), due dates (days since 1970), and their
   notes. @rig: of the same facts. */
void sy_rig_judge_path (const SyRigFacts *facts, const SyRigCase *rig, const SyContext *context, SySink *sink);

/* Formulas of the method; see SyMethod. */
bool sy_rig_formula (const SySink *sink, size_t symbol, SyUnits units, char *text);
bool sy_rig_named_formula (const SySink *sink, const SyNamed *named, SyUnits units, char *text);

#endif
