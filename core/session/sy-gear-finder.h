/* SPDX-License-Identifier: MIT */
#ifndef SY_GEAR_FINDER_H
#define SY_GEAR_FINDER_H

#include "sy-register.h"

/* Which items of the register can stand in a place of a rigged lift. Each is put there and the plan is assessed anew, so
   that nothing is worked out twice and every reduction of that leg counts. */

typedef struct
{
  char *leg;         /* the point that the leg is at; "" above the hook (hoist, crane, beam, truck)          */
  char *kind;        /* "shackle"                                                                            */
  char *element;     /* what the plan has there, by its label: of several of the kind the one that carries
                        most; "" where the plan has none                                                     */
  char *item;        /* id                                                                                   */
  char *name, *identity;
  double utilisation; /* of the item in that place; INFINITY: no capacity there; NAN: not known              */
  gboolean fits;     /* in date, not withdrawn, and carries it: nothing in @why                              */
  GPtrArray *why;    /* texts: what keeps it out                                                             */
  GPtrArray *remarks; /* texts: what is to be thought of where it is used                                    */
} SyGearFit;
void sy_gear_fit_free (SyGearFit *fit); /* NULL is fine */

/**
 * sy_gear_find:
 * Places are the kinds of elements that a leg lists, a sling where it lists none, a shackle too where it lists nothing;
 * and the kinds that the hook hangs from, a hoist where that is not said.
 * Parameters:   plan       an assessed rigged lift.
 *               gear       of SyRegisterItem; those that are no gear are passed over.
 *               translate  for the texts; NULL: English.
 * Return value: new array of SyGearFit that frees its elements: by place in the order of the plan, those that fit
 *               first, largest margin first; empty for a plan of another method.
 * Discussion:   a rule for the sling as a whole (rule us, en) is asked as if every leg had such a sling, where the plan's
 *               other legs leave it open or break it.
 * Special considerations: any thread; one assessment a place and item, for slings up to two.
 */
GPtrArray *sy_gear_find (SyDesk *desk, const SyAssessment *plan, const GPtrArray *gear, SyTranslate translate);

/* JSON, one object without newline: as `steelyard-cli find-gear` prints it. */
void sy_gear_fit_write_json (GString *out, const SyGearFit *fit);

#endif
