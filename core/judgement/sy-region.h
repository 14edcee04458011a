/* SPDX-License-Identifier: MIT */
#ifndef SY_REGION_H
#define SY_REGION_H

#include "sy-method.h"

/* What results defer to in a part of the world: titles and sections, intervals of inspection, units. Plain data; core/exchange
   reads it. Information, and no legal advice: the text in force and a competent person come first. */

#define SY_REGION_ID_MAX 17
#define SY_REGION_TEXT_MAX 200
#define SY_DEFERS_TO_MAX 40
#define SY_INTERVALS_MAX 32

/* One title and section; or one of a site's own rules. */
typedef struct
{
  char title[SY_REGION_TEXT_MAX];
  char section[SY_REGION_TEXT_MAX]; /* "": a rule of a site without one                         */
  char about[SY_REGION_TEXT_MAX];   /* what it asks for, in short                               */
  char source[SY_REGION_TEXT_MAX];  /* where it was read; "": a rule of a site is its own       */
  bool from_memory;                 /* nobody has read the text for this                        */
  unsigned methods;                 /* that it is about, a bit by place (sy_method_at); 0: all  */
} SyDefersTo;

/* How often something is inspected: one of months, days and when is said. */
typedef struct
{
  char what[SY_REGION_TEXT_MAX];
  unsigned kinds;                   /* of gear, a bit by SyGearKind; 0: nothing that gear is registered as */
  int months, days;                 /* 0: not in these                                          */
  char when[SY_REGION_TEXT_MAX];    /* "": in months or days                                    */
  char title[SY_REGION_TEXT_MAX], section[SY_REGION_TEXT_MAX], source[SY_REGION_TEXT_MAX];
  bool from_memory;
} SyInterval;

typedef struct
{
  char id[SY_REGION_ID_MAX];
  char title[SY_REGION_TEXT_MAX], edition[SY_REGION_TEXT_MAX];
  bool has_units;                   /* which units a new document begins with; false: not said  */
  SyUnits units;
  int n_defers_to;
  SyDefersTo defers_to[SY_DEFERS_TO_MAX];
  int n_intervals;
  SyInterval intervals[SY_INTERVALS_MAX];
} SyRegion;

/* Whether it is about results of the method. */
bool sy_defers_to_is_of (const SyDefersTo *row, const SyMethod *method);

#endif
