/* SPDX-License-Identifier: MIT */
#ifndef SY_CARRY_H
#define SY_CARRY_H

#include "sy-units.h"

/*
 * Carrying by one person with both hands on the level: the published limits beside each other.
 * Every source is metric: distances are m and heights cm here whatever the document's units; masses are kg or lb, a
 * limit in lb being the one in kg divided by 0.45359237.
 *
 * Topics: the task, what it comes to, the limits, the largest ratio
 */

typedef enum { SY_CARRY_WOMEN, SY_CARRY_MEN } SyCarrySex;

typedef struct
{
  SyUnits units;         /* of the masses                                                             */
  double mass;           /* the heaviest load, over 0                                                 */
  double mass_each;      /* the same by person, over 0                                                */
  double mean_mass;      /* what the sums are made with, over 0, not over @mass                       */
  double distance_m;     /* over 0                                                                    */
  double per_min;        /* carries a minute, over 0                                                  */
  double minutes;        /* of carrying in the day, over 0                                            */
  double height_cm;      /* floor to hands, 0 or more                                                 */
  double reference_mass; /* of who may be assigned, over 0                                            */
  bool reduced;          /* lifted from below the knee or above the shoulder, or bad surroundings     */
  SyCarrySex sex;        /* whose figures judge                                                       */
  int percent;           /* of them who shall be able to: 90, 75 or 50                                */
} SyCarry;

/* What is held against a limit. */
typedef enum
{
  SY_CARRY_REFERENCE,  /* one mass against the reference mass                                                 */
  SY_CARRY_PACE,       /* carries a minute: ISO 11228-1:2003 table 1                                          */
  SY_CARRY_MINUTE, SY_CARRY_HOUR, SY_CARRY_DAY, /* sums of mass: the same                                     */
  SY_CARRY_MINUTE_2021, SY_CARRY_HOUR_2021, SY_CARRY_HALF_2021, SY_CARRY_DAY_2021, /* ISO 11228-1:2021        */
  SY_CARRY_TABLE,      /* one mass: carry tables of Snook and Ciriello 1991                                   */
  SY_CARRY_EQUATION,   /* one mass: equations of Potvin and others 2021                                       */
  SY_CARRY_UK,         /* one mass: UK guideline figures                                                      */
  SY_CARRY_N_LIMITS
} SyCarryLimit;

/* Where the task leaves what a source is made for: the figure of the last row stands, and the true one is lower. */
typedef struct
{
  bool over_20_m;       /* no row of table 1                                                                  */
  bool over_uk;         /* farther than about 10 m: the guideline asks for a full assessment                  */
  bool below_knuckle;   /* hands lower than any row; the guideline asks for a full assessment                 */
  bool above_elbow;     /* hands higher than any row                                                          */
  bool faster_than_tables; /* than the first column at this distance                                          */
  bool farther_than_tables; /* over 8.5 m: the equations go on alone                                          */
} SyCarryBeyond;

typedef struct
{
  double value[SY_CARRY_N_LIMITS], limit[SY_CARRY_N_LIMITS]; /* kg or lb, or carries a minute                 */
  double ratio[SY_CARRY_N_LIMITS];                           /* INFINITY over a limit of 0                    */
  double largest;                                            /* of the ratios                                 */
  SyCarryLimit governing;                                    /* the one that has it; the first of equals      */
  SyCarryBeyond beyond;
} SyCarryResult;

/**
 * sy_carry:
 * Between two rows of a source the next more demanding one is taken; no limit is ever higher for a task that is
 * heavier, farther, faster, longer or (from the knuckles up) higher.
 * Source: ISO 11228-1:2003 table 1 and its notes (from memory); ISO 11228-1:2021 (from memory, low confidence);
 *         UK HSE L23 guideline figures (read second-hand; women above the elbow from memory); Snook and Ciriello
 *         1991, Potvin, Ciriello, Snook and others 2021 (both from memory).
 * Special considerations: pure; any thread; no allocation.
 */
void sy_carry (const SyCarry *carry, SyCarryResult *out);

/**
 * sy_carry_accepts:
 * Percentage of women or men, 0 to 100, who could carry the mass so: the lower of the table's and the equation's.
 * Where the task is beyond the tables, as in sy_carry, the true one is lower.
 */
double sy_carry_accepts (const SyCarry *carry, SyCarrySex sex);

/**
 * sy_carry_knuckle / _elbow:
 * Heights of hands at knuckles and elbows, cm, as the carry tables have them (72 and 105 women, 79 and 111 men; from
 * memory). That they part the zones of the guideline, which gives no heights, is assumed, no source.
 */
double sy_carry_knuckle (SyCarrySex sex);
double sy_carry_elbow (SyCarrySex sex);

/* A row of the carry tables: what 90, 75 and 50 % of the people could, kg, by how seldom. */
typedef struct
{
  double p90, p75, p50;
} SyCarryCell;
#define SY_CARRY_COLUMNS 7
#define SY_CARRY_ROWS_MAX 6 /* of one sex */
typedef struct
{
  SyCarrySex sex;
  double height_cm, distance_m;
  const double *every_min; /* SY_CARRY_COLUMNS: one carry every so many minutes, the fastest first */
  SyCarryCell cells[SY_CARRY_COLUMNS];
} SyCarryRow;

/**
 * sy_carry_row:
 * Row @i of the tables that are recalled, from 0; NULL behind the last.
 * Source: Snook and Ciriello 1991 (from memory; women at 4.3 m not recalled).
 */
const SyCarryRow *sy_carry_row (size_t i);

#endif
