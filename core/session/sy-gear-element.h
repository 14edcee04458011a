/* SPDX-License-Identifier: MIT */
#ifndef SY_GEAR_ELEMENT_H
#define SY_GEAR_ELEMENT_H

#include <glib.h>

#include "sy-gear-facts.h"
#include "sy-json.h"

/* What an item of gear is as an element of a rigged lift: one mapping, for what tries gear in a plan and for what takes it
   into one. */

/* A member of an element. */
typedef struct
{
  const char *name; /* "wll"; static                              */
  char *text;       /* as typed; "2500 kg" in a plan in lb        */
  gboolean quoted;  /* a text in JSON; else a number or a boolean */
} SyGearMember;

/**
 * sy_gear_element:
 * Parameters:   gear     a document of the method "gear", as typed.
 *               facts    the same, read; NULL where it cannot be assessed.
 *               units    of the document.
 *               label    what the element is called, of sy_gear_element_label().
 *               in_leg   FALSE: above the hook, where no reduction is asked for.
 *               planned  units of the plan: bare numbers in others get the unit that was meant.
 * Return value: new array of SyGearMember that clears its elements; members that the document does not have are left
 *               out, and so is what is a matter of the place.
 */
GArray *sy_gear_element (const SyJson *gear, const SyGearFacts *facts, SyUnits units, const char *label, gboolean in_leg,
                         SyUnits planned);

/* The member of an element that is a matter of the place and stays when the item changes: how it is pulled, what it hangs
   from. */
const char *sy_gear_element_kept (gboolean in_leg);

/**
 * sy_gear_element_label:
 * What the item is called in a place: its identity, else its name, else what is planned there, each cut between characters
 * to SY_RIG_LABEL_MAX bytes; else "#1" and on.
 * Parameters:   others  labels that the list of the place has beside it, ended by NULL.
 * Return value: new string, unlike all others.
 */
char *sy_gear_element_label (const char *identity, const char *name, const char *planned, const char *const *others);
/* Whether an item of one kind may stand where one of the other does: a swivel hoist ring where an eyebolt is screwed in, and
   the other way round. */
gboolean sy_gear_kinds_stand_in (SyGearKind kind, SyGearKind other);
/* As much of a name as a label holds. New string. */
char *sy_gear_element_cut (const char *name);

#endif
