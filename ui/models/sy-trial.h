/* SPDX-License-Identifier: MIT */
#ifndef SY_TRIAL_H
#define SY_TRIAL_H

#include "sy-form.h"

/* A remedy tried on a copy of the facts: the form itself stays as it is until sy_trial_use. */
typedef struct
{
  SyForm *form;     /* the copy with the changes in it */
  GPtrArray *paths; /* what is changed (char*)         */
  GPtrArray *texts; /* … to what (char*)               */
} SyTrial;

/**
 * sy_trial_new:
 * Puts the remedy's changes into a copy of @form as a person would write them: rounded to the fewest decimals with
 * which the remedy still does what it says, to the full number where rounding would spoil it.
 * Parameters:   remedy  of the present assessment of @form.
 */
SyTrial *sy_trial_new (SyForm *form, const SyRemedy *remedy);
void sy_trial_free (SyTrial *trial);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyTrial, sy_trial_free)

/* Into the form, as one step of undo. */
void sy_trial_use (SyTrial *trial, SyForm *form);

#endif
