/* SPDX-License-Identifier: MIT */
#ifndef SY_GEAR_PLACE_PRIVATE_H
#define SY_GEAR_PLACE_PRIVATE_H

#include "sy-gear-element.h"
#include "sy-register.h"

/* Putting an item of gear into a place of a plan, as a document. */

/* An item of the register on the day of the plan. */
typedef struct
{
  const SyRegisterItem *item;
  SyAssessment *assessment;  /* NULL: its facts cannot be assessed   */
  const SyGearFacts *facts;  /* NULL likewise                        */
  const SyJson *document;    /* as typed                             */
  SyUnits units;
  int kind;                  /* SyGearKind, -1 not known             */
  const char *identity;
  char *problem;             /* where its facts cannot be assessed   */
} SyGearCandidate;

#define SY_GEAR_PLACE_APPEND (-1) /* the plan has none there  */

typedef struct
{
  int leg;          /* in the plan; -1: suspension                     */
  int at;           /* in its list, or SY_GEAR_PLACE_APPEND            */
  SyGearKind kind;
  const char *element; /* label there, "" for none                     */
} SyGearPlace;

/* The label that the item gets there: its identity or name, cut to what a label may hold, unlike its neighbours'. */
char *sy_gear_place_label (const SyJson *plan, const SyGearPlace *place, const SyGearCandidate *candidate);

/* The plan with the item in place; @everywhere: the slings of the other legs replaced by it as well. New string. */
char *sy_gear_place_write (const SyJson *plan, SyUnits units, const SyGearPlace *place,
                           const SyGearCandidate *candidate, gboolean everywhere);

/* Where else in the plan the item is, by identity or name; new string, NULL nowhere. A sling of several legs may be in
   several legs, and so may a master link. */
char *sy_gear_place_elsewhere (const SyJson *plan, const SyGearPlace *place, const SyGearCandidate *candidate);

/* The elements of a leg or, -1, what the hook hangs from; NULL for none. */
const SyJson *sy_gear_place_list (const SyJson *plan, int leg);

#endif
