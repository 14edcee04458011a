/* SPDX-License-Identifier: MIT */
#ifndef SY_REGISTER_H
#define SY_REGISTER_H

#include "sy-ledger.h"

/* The registers of dies and gear as they stand: what is looked up in them needs no store and any thread may do it. */

typedef struct
{
  char *id, *name, *item_kind;
  char *facts;     /* of the latest revision, as typed                          */
  gboolean clash;  /* two revisions have one base: which of them holds is open  */
} SyRegisterItem;
SyRegisterItem *sy_register_item_new (const char *id, const char *name, const char *item_kind, const char *facts);
void sy_register_item_free (SyRegisterItem *item); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyRegisterItem, sy_register_item_free)

/* Every item of a kind (SY_ITEM_DIE, SY_ITEM_GEAR) by name. On the ledger's thread. Return value: new array of
   SyRegisterItem that frees its elements; NULL with the error. */
GPtrArray *sy_register_read (SyLedger *ledger, const char *item_kind, GError **error);

/**
 * sy_register_assess:
 * The item as it stands on a day, whatever day its own facts were judged on.
 * Parameters:   day       days since 1970; NAN: today.
 *               problems  as in sy_desk_assess(). Not NULL.
 * Return value: a new assessment; NULL where its facts cannot be assessed (any more).
 */
SyAssessment *sy_register_assess (SyDesk *desk, const SyRegisterItem *item, double day, SyProblems *problems);

/* The texts of the reasons of an assessment that ask for at least (or, @below, for less than) @verdict, appended to
   @texts, each once. */
void sy_register_add_reasons (GPtrArray *texts, const SyFindings *findings, SyVerdict verdict, gboolean below,
                              SyTranslate translate);

/* Appends a text that is not there yet; consumes it. */
void sy_register_add_text (GPtrArray *texts, char *text);

/* Members of a JSON object: "NAME":"VALUE" and "NAME":["…"], with a comma before them where one is needed. */
void sy_register_write_text (GString *out, const char *name, const char *value);
void sy_register_write_texts (GString *out, const char *name, const GPtrArray *texts);

#endif
