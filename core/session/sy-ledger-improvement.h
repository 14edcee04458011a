/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_IMPROVEMENT_H
#define SY_LEDGER_IMPROVEMENT_H

#include "sy-improvement.h"
#include "sy-ledger-deeds.h"

/* The improvement log, as both doors keep it. Errors: SY_LEDGER_ERROR_MISSING, _DEED, _BASE, those of the store. */

typedef struct
{
  gint64 revision;        /* after: of the item of the request; 0: its latest                                       */
  const char *from_item;  /* before: id, or name as sy_store_find() takes it; NULL: the item of the request         */
  const char *from_kind;  /* NULL: any                                                                              */
  gint64 from_revision;   /* 0: the latest of another item; of the same item it must be said, and be an earlier one */
  const char *what;       /* what was done; must not be blank                                                       */
  const char *idea_by;    /* who thought of it; must not be blank                                                   */
  const char *put_to_work; /* "2026-11-26", not after the day of the request; NULL or "": that day                   */
} SyImprovementAsk;

/* Both must be assessments of handling: a task or a changeover. The same two revisions are in the log once, unless it was
   withdrawn. @id receives the new one's id, new string. */
gboolean sy_ledger_add_improvement (SyLedger *ledger, const SyDeedRequest *request, const SyImprovementAsk *ask, char **id,
                                    SyHead *head, GError **error);
/* Why must not be blank. It stays in the journal and counts no more. */
gboolean sy_ledger_withdraw_improvement (SyLedger *ledger, const SyDeedRequest *request, const char *id, SyHead *head,
                                         GError **error);

typedef struct
{
  const char *item;      /* id: only those from or to it; NULL: any */
  gboolean withdrawn;    /* those too                               */
} SyImprovementFilter;

/* The last put to work first; new array of SyImprovementView. @policy, @translate as in sy_beside_new(). */
GPtrArray *sy_ledger_improvements (SyLedger *ledger, const SyImprovementFilter *filter, const SyPolicy *policy,
                                   SyTranslate translate, GError **error);

/* JSON, one object without newline; the contract is docs/facts.md. @view made with translate NULL. */
void sy_improvement_write_json (GString *out, const SyImprovementView *view);
/* A quarter; without "quarter" where it is the total. */
void sy_quarter_write_json (GString *out, const SyQuarter *quarter);

#endif
