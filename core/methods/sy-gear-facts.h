/* SPDX-License-Identifier: MIT */
#ifndef SY_GEAR_FACTS_H
#define SY_GEAR_FACTS_H

#include "sy-rig-facts.h"

/* The facts of one item of gear as the register keeps them; lengths in mm or in. */

#define SY_GEAR_SERVES_MAX 64
#define SY_GEAR_EXAMINATIONS_MAX 128

typedef enum { SY_RESULT_PASS, SY_RESULT_REMARKS, SY_RESULT_FAIL } SyResult;
typedef enum { SY_CONDITION_GOOD, SY_CONDITION_WORN, SY_CONDITION_DAMAGED } SyCondition;

/* Report of a thorough examination. */
typedef struct
{
  const char *number;   /* of the report                      */
  const char *examiner;
  int result;           /* SyResult                           */
  const char *on, *next; /* dates; next is NULL where not said */
  const char *file;     /* of the report, as attached         */
  const char *sha256;   /* of that file                       */
} SyExamination;

typedef struct
{
  SyCommonFacts common;
  int kind;             /* SyGearKind */
  const char *identity; /* mark or serial number: what tells it from the next */
  SyNumber wll;
  int rated_as;         /* SyRatedAs or -1 */
  SyNumber legs;        /* of the tag      */
  int band;             /* SyBand or -1    */
  int material;         /* SySlingMaterial or -1 */
  SyNumber length, size, grade;
  int family;           /* SyEyeboltFamily or -1 */
  int shoulder;         /* 1, 0, -1 */
  SyNumber own_mass, lift_height, load_centre;
  SyList serves;        /* of const char *: machines */
  const char *storage;
  const char *last_examined, *due;
  SyNumber interval_months;
  int condition;        /* SyCondition or -1 */
  int withdrawn;        /* 1, 0, -1 */
  const char *withdrawn_why;
  SyList examinations;  /* of SyExamination, in any order */
} SyGearFacts;

/* The report with the latest day, the last listed of that day; NULL when there is none. */
const SyExamination *sy_gear_newest (const SyGearFacts *facts);
/* As given, else as the newest report says; NULL: not known. */
const char *sy_gear_last_examined (const SyGearFacts *facts);
const char *sy_gear_due (const SyGearFacts *facts);

#endif
