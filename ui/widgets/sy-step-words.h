/* SPDX-License-Identifier: MIT */
#ifndef SY_STEP_WORDS_H
#define SY_STEP_WORDS_H

#include <glib.h>

#include "sy-form.h"

/*
 * What is said of one item of a list whose items hold facts of their own (a step of a die change, an option of a case) before it
 * is looked into, and what follows of its kind. Paths are those of the form; @item is one of the list's: "steps[3]".
 */

/* Members that such a list may have. NULL: it has none. */
const SyField *sy_step_member (const SyField *list, const char *name);
/* The first member that holds facts; NULL: it is no such list. */
const SyField *sy_step_facts_member (const SyField *list);

/* How an item stands. */
typedef struct
{
  gboolean said;       /* something is said of it */
  SyVerdict verdict;
  char *words;         /* the verdict's, or what is still needed */
  guint missing;       /* checks that it lacks, as far as the whole could be assessed */
} SyStepState;
void sy_step_state_clear (SyStepState *state);
/* @at: its number, from 0. */
void sy_step_state_of (SyForm *form, const char *list, guint at, SyStepState *state);

/* "Lift · Machine stopped", "5 min"; "" where nothing of it is said. New strings. */
char *sy_step_dup_note (SyForm *form, const char *list, guint at);
char *sy_step_dup_minutes (SyForm *form, const char *list, guint at);
/* A name that no other item has: "Lift", "Lift 2". New string. */
char *sy_step_dup_unique (SyForm *form, const char *list, const char *name);
/* The parts of a number before and after it is halved: "10 min" becomes "5 min"; "" where it is no such number. New string. */
char *sy_step_dup_half (const char *text);

/* Which checks a step must have by its kind, and why: words for each of the field's choices, NULL where it is not asked for; NULL where
   nothing is known. Free with sy_step_asked_free. */
char **sy_step_dup_asked (SyForm *form, const char *list, guint at);
void sy_step_asked_free (char **asked);

/* Ids of the methods by which a step of that kind is mostly assessed, NULL-terminated; common practice, no source. Static. */
const char *const *sy_step_suggested (const char *kind);

#endif
