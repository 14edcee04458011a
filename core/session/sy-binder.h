/* SPDX-License-Identifier: MIT */
#ifndef SY_BINDER_H
#define SY_BINDER_H

#include "sy-dossier.h"
#include "sy-ledger.h"

/* A dossier with what it borrows from: what both doors print sheets of. Any thread once it is made, one at a time. */
typedef struct
{
  SyDossier dossier;
  SyDesk *desk;             /* it is judged under */
  SyAssessment *assessment; /* NULL: not worked out */
  SyEvent *document;        /* of a facts document; NULL otherwise, as what follows then is */
  SyTask *task;
  SyRevision *revision;
  GPtrArray *events;        /* of SyRevision: every line about the item, oldest first */
  SyHistoryLine *lines;
} SyBinder;

/**
 * sy_binder_of_record:
 * Reads what stands in the record; nothing is worked out yet.
 * Parameters:   item, item_kind  as sy_store_find() takes them.
 *               revision         0: the latest.
 * Return value: new, under the limits in force in the record (those of the program where it adopted none); NULL with the
 *               error of the ledger, or of a policy that this program cannot read.
 */
SyBinder *sy_binder_of_record (SyLedger *ledger, const char *item, const char *item_kind, gint64 revision, GError **error);

/* Of one facts document under @desk, worked out; NULL with the problems. */
SyBinder *sy_binder_of_facts (SyDesk *desk, const char *name, const char *text, gsize length, SyProblems *problems);

/* Works the revision out, with remedies, as the record does: facts and findings are there from then on. FALSE with the
   problems where the facts are none any more. Once. */
gboolean sy_binder_assess (SyBinder *binder, SyProblems *problems);

void sy_binder_free (SyBinder *binder); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyBinder, sy_binder_free)

#endif
