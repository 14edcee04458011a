/* SPDX-License-Identifier: MIT */
#ifndef SY_DEFERRING_H
#define SY_DEFERRING_H

#include "sy-findings.h"
#include "sy-json.h"
#include "sy-words.h"

/* What results defer to, gathered from one or from several. Of a result that is stored it is read from its findings: what held
   then, not what a policy says today. Information, and no legal advice. */
typedef struct
{
  gboolean said;   /* a policy with a region or with rules of the site is among them */
  GPtrArray *rows; /* of what is private to sy-deferring.c                           */
} SyDeferring;
SyDeferring *sy_deferring_new (void);
void sy_deferring_free (SyDeferring *deferring); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyDeferring, sy_deferring_free)

/* By the policy for a method. */
void sy_deferring_add_policy (SyDeferring *deferring, const SyPolicy *policy, const SyMethod *method);
/* Of findings as they are stored; those without say nothing, and so does what is no JSON. */
void sy_deferring_add_findings (SyDeferring *deferring, const char *findings);
/* A policy as the record keeps it, for the methods (ids, NULL-terminated). */
void sy_deferring_add_stored_policy (SyDeferring *deferring, const SyJson *policy, const char *const *methods);

/* All that another has gathered. */
void sy_deferring_add_all (SyDeferring *deferring, const SyDeferring *other);

/* "Defers to: TITLE SECTION, SECTION; TITLE SECTION (from memory); local regulations and a competent person."; "" where
   nothing is said of it. New string. */
char *sy_deferring_words (const SyDeferring *deferring, SyTranslate translate);

#endif
