/* SPDX-License-Identifier: MIT */
#ifndef SY_GEAR_FACTS_H
#define SY_GEAR_FACTS_H

#include "sy-rig-facts.h"

/* The facts of one item of gear as the register keeps them: masses in kg or lb, lengths in mm or in, dates as
   "2027-03-01". Texts and lists live in the memory of the facts. */

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
  SyNumber wll;         /* as marked, over 0 */
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
  SyNumber interval_months; /* between examinations; whole, over 0 */
  int condition;        /* SyCondition or -1 */
  int withdrawn;        /* 1, 0, -1 */
  const char *withdrawn_why;
  SyList examinations;  /* of SyExamination, in any order */
} SyGearFacts;

/* When the examination falls due, "2027-03-01": as given, else as the newest report says; NULL: not known. Borrowed from
   the facts. */
const char *sy_gear_due (const SyGearFacts *facts);

#endif
