/* SPDX-License-Identifier: MIT */
#ifndef SY_TAKE_H
#define SY_TAKE_H

#include "sy-form.h"
#include "sy-register.h"

/* Dies and gear of the register taken into the form of a lift plan, each as one step of undo. Numbers stay as they were
   typed; where the plan has other units, the unit that was meant is written behind them. */

/**
 * sy_take_die:
 * Its name, its mass with how that is known, where it balances, its points, and what ties its halves. Points that the plan
 * had are replaced, legs stay. What the die does not say stays as the plan has it.
 * Return value: FALSE with the error where the item is no die that can be read.
 */
gboolean sy_take_die (SyForm *plan, const SyRegisterItem *die, GError **error);

/* Where an item of gear can stand in a plan. */
typedef struct
{
  char *path;    /* "legs[0].elements[1]", "suspension[0]"; one behind the last: a new one     */
  char *leg;     /* the point that the leg is at, "" above the hook                            */
  char *element; /* label of what stands there, "" for nothing yet                             */
  char *kind;    /* of what stands there, "" for nothing yet                                   */
} SyTakePlace;
void sy_take_place_free (SyTakePlace *place);

/* Places in a plan for gear of that kind, in the order of the plan, those with an element that it may stand in for before
   those for a new one (none for what is screwed into the load where a leg has elements: it does not come after them);
   new array that frees its elements. */
GPtrArray *sy_take_places (SyForm *plan, const char *kind);
/* The place in the leg at that point (@leg "": above the hook) where @element stands, or a new one for ""; NULL: there is
   none. New. */
SyTakePlace *sy_take_find_place (SyForm *plan, const char *leg, const char *element);

/**
 * sy_take_gear:
 * What is marked on it, and when its examination is due, under a label that no other in its list has. A sling gives the
 * leg its material. A sling of several legs goes into every leg that has a sling, in the place of the first.
 * Parameters:   place  of sy_take_places(); what stands there is replaced.
 * Return value: FALSE with the error where the item is no gear that can be read.
 */
gboolean sy_take_gear (SyForm *plan, const SyRegisterItem *gear, const SyTakePlace *place, GError **error);

#endif
