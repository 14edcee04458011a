/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_H
#define SY_LIFT_H

#include "sy-units.h"

/*
 * The revised NIOSH lifting equation.
 * Source: Waters, Putz-Anderson, Garg: Applications Manual for the Revised NIOSH Lifting Equation,
 * DHHS (NIOSH) Publication 94-110 (1994, revised 9/2021). Metric and US constants are each system's own.
 * The ISO 11228-1 reference masses and m_R use the same multipliers.
 *
 * Topics: multipliers, frequency, duration, one lift
 */

typedef enum { SY_DURATION_SHORT, SY_DURATION_MODERATE, SY_DURATION_LONG } SyDuration;
typedef enum { SY_COUPLING_GOOD, SY_COUPLING_FAIR, SY_COUPLING_POOR } SyCoupling;
typedef enum { SY_ASSIGNED_ANY_AGE, SY_ASSIGNED_MIXED_ADULTS, SY_ASSIGNED_MEN_20_45 } SyAssigned;

/* Published constants of one unit system; lengths in cm or in, masses in kg or lb. */
typedef struct
{
  double load_constant; /* 23 kg · 51 lb                              */
  double reach_min;     /* H at or below counts as this: 25 · 10      */
  double reach_max;     /* HM is 0 above: 63 · 25                     */
  double height_ideal;  /* 75 · 30, also where the FM/CM column switches */
  double height_slope;  /* 0.003 · 0.0075 a unit                      */
  double height_max;    /* VM is 0 above: 175 · 70                    */
  double travel_min;    /* D at or below counts as this: 25 · 10      */
  double travel_max;    /* DM is 0 above: 175 · 70                    */
  double travel_base;   /* 0.82                                       */
  double travel_gain;   /* 4.5 cm · 1.8 in                            */
  double twist_slope;   /* 0.0032 a degree                            */
  double twist_max;     /* AM is 0 above 135 degrees                  */
} SyLiftConstants;

const SyLiftConstants *sy_lift_constants (SyUnits units);

/**
 * sy_lift_hm / _vm / _dm / _am / _cm:
 * One multiplier, 0 to 1. Lengths in the unit of @units (cm or in), angle in degrees.
 * Outside its limit a multiplier is 0; H and D below the minimum count as the minimum.
 * Inputs below 0 (H: not above 0) are the caller's error and give 0.
 * Source: 94-110 section 1.3 (formulas), table 7 (coupling; by V against 75 cm / 30 in).
 */
double sy_lift_hm (double reach, SyUnits units);
double sy_lift_vm (double height, SyUnits units);
double sy_lift_dm (double travel, SyUnits units);
double sy_lift_am (double twist_deg, SyUnits units);
double sy_lift_cm (SyCoupling coupling, double height, SyUnits units);

/**
 * sy_lift_fm:
 * Frequency multiplier, table 5 of 94-110; linear between rows, 0 beyond the last non-zero row,
 * the first row at or below 0.2 lifts/min, within 1e-9 of a row that row.
 * Parameters:   per_min  lifts a minute, >= 0.
 *               height   V of the end that is judged; at 75 cm / 30 in the upper column.
 */
double sy_lift_fm (double per_min, SyDuration duration, double height, SyUnits units);

/**
 * sy_lift_fm_inverse:
 * The largest frequency (lifts/min) at which sy_lift_fm is at least @wanted.
 * Return value: false when even the first row is below @wanted.
 */
bool sy_lift_fm_inverse (double wanted, SyDuration duration, double height, SyUnits units,
                         double *per_min);

/* One period of work and the recovery (light work) right after it, minutes. */
typedef struct
{
  double work;     /* > 0  */
  double recovery; /* >= 0 */
} SyWorkPeriod;

/**
 * sy_lift_duration_sessions / _pattern:
 * Duration class of a day. Work periods add up until a recovery is long enough for the class of the
 * sum (1.2 times a sum up to 60 min, 0.3 times a sum up to 120 min); over 120 min is long, to 480.
 * What is left open when the day ends is classed by its sum. The pattern repeats until @shift_min is full
 * (a work period longer than the shift is not cut).
 * Parameters:   beyond  receives true when more than 480 min of work add up: outside the equation. Not NULL.
 *               day_min receives the minutes of work in the whole day; may be NULL.
 * Source: 94-110 section 1.2 (duration); the 1.2 and 0.3 ratios: reference text "from memory".
 */
SyDuration sy_lift_duration_sessions (const SyWorkPeriod *periods, size_t n, bool *beyond,
                                      double *day_min);
SyDuration sy_lift_duration_pattern (double work_min, double recovery_min, double shift_min,
                                     bool *beyond, double *day_min);

/**
 * sy_lift_reference_mass:
 * ISO 11228-1 reference mass of who may be assigned, in kg or (divided by 0.45359237) lb.
 * 15, 20 and 25 kg. Source: ISO 11228-1:2003 Annex C; values from memory, not checked against the standard.
 */
double sy_lift_reference_mass (SyAssigned assigned, SyUnits units);

/* One end of one lift as measured. */
typedef struct
{
  double reach;     /* H: mid-ankles to grip, horizontal, cm or in, > 0  */
  double height;    /* V: floor to grip, cm or in, >= 0                  */
  double twist_deg; /* A: degrees from the sagittal plane, >= 0          */
} SyLiftPosition;

typedef struct
{
  double travel;  /* D, cm or in, >= 0           */
  double per_min; /* F, lifts a minute, >= 0     */
  SyDuration duration;
  SyCoupling coupling;
  double reference_mass; /* kg or lb, > 0        */
} SyLiftPace;

/* What comes out for one end. An index over a limit of 0 is INFINITY here. */
typedef struct
{
  double hm, vm, dm, am, fm, cm;
  double firwl; /* kg or lb: RWL with FM = 1 */
  double rwl;   /* kg or lb                  */
  double li;    /* heaviest / RWL            */
  double fili;  /* heaviest / FIRWL          */
  double mr;    /* kg or lb, ISO m_R         */
  double mr_ratio;
} SyLiftEnd;

/**
 * sy_lift_end:
 * Parameters:   heaviest  kg or lb, > 0.
 * Source: 94-110 section 1.1 (RWL = LC·HM·VM·DM·AM·FM·CM), section 1.4 (LI); ISO 11228-1:2003 A.7 (m_R).
 * Special considerations: pure; any thread; no allocation.
 */
void sy_lift_end (const SyLiftPosition *at, const SyLiftPace *pace, double heaviest, SyUnits units,
                  SyLiftEnd *out);

#endif
