/* SPDX-License-Identifier: MIT */
#ifndef SY_STEP_DEEDS_H
#define SY_STEP_DEEDS_H

#include "sy-form.h"

/* What is done with an item of a list whose items hold facts of their own, in its form: one step of undo each. FALSE, and nothing
   changed: the list is full. */

/* A new one in place @at, named by its kind, with a name that no other has; a kind that the list does not know leaves it blank. */
gboolean sy_step_insert (SyForm *form, const char *list, guint at, const char *kind);
/* A copy right behind it, with a name of its own. */
gboolean sy_step_duplicate (SyForm *form, const char *list, guint item);
/* Two of one: their names end in (1) and (2), each has half of the minutes, what came after it comes after the second. All else
   both have: whoever splits a step says then what each of them does. */
gboolean sy_step_split (SyForm *form, const char *list, guint item);

#endif
