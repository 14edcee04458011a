/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_DEEDS_H
#define SY_LEDGER_DEEDS_H

#include "sy-difference.h"
#include "sy-ledger.h"

/* What is done about an item besides revising it, as both doors do it. Each is one line of the journal; each retries
   when another program wrote in between. Errors: SY_LEDGER_ERROR_MISSING, _DEED, those of the store. */

typedef struct
{
  const char *item;      /* id, or name as sy_store_find() takes it               */
  const char *item_kind; /* NULL: any                                             */
  const char *by, *role, *why; /* by must not be blank; role and why as each says */
  const char *now;       /* RFC 3339                                              */
  gboolean clock_set;
} SyDeedRequest;

/* Role must not be blank. The line's own hash is signed with it. Whoever made the revision may not be kept from signing
   it, but the record says so wherever it is shown. */
gboolean sy_ledger_sign (SyLedger *ledger, const SyDeedRequest *request, gint64 revision, const char *competence,
                         SyHead *head, GError **error);

/* Opens an action. @what must not be blank; @about a reason's or remedy's id, NULL for none; @assigned NULL: nobody yet;
   @due "2026-12-01", NULL for none. @id receives the new action's id, new string. */
gboolean sy_ledger_open_action (SyLedger *ledger, const SyDeedRequest *request, const char *what, const char *about,
                                const char *assigned, const char *due, char **id, SyHead *head, GError **error);
/* Of an open action: to whom, until when (NULL: as it was). */
gboolean sy_ledger_assign_action (SyLedger *ledger, const SyDeedRequest *request, const char *id, const char *assigned,
                                  const char *due, SyHead *head, GError **error);
/* @evidence must not be blank. */
gboolean sy_ledger_close_action (SyLedger *ledger, const SyDeedRequest *request, const char *id, const char *evidence,
                                 SyHead *head, GError **error);

/* @due is needed for SY_TRIGGER_DATE; for the others NULL means at once, today. Why must not be blank. */
gboolean sy_ledger_set_review (SyLedger *ledger, const SyDeedRequest *request, SyTrigger trigger, const char *due,
                               SyHead *head, GError **error);
/* Why must not be blank. */
gboolean sy_ledger_retire (SyLedger *ledger, const SyDeedRequest *request, gboolean retired, SyHead *head, GError **error);
/* @who, @mass, @heaviest_side must not be blank. */
gboolean sy_ledger_tell (SyLedger *ledger, const SyDeedRequest *request, gint64 revision, const char *who,
                         const char *mass, const char *heaviest_side, SyHead *head, GError **error);

/* As sy_store_find() says. */
SyTask *sy_ledger_find (SyLedger *ledger, const char *id_or_name, const char *item_kind, GError **error);

/* All lines about an item, of every kind, oldest first: new array of SyRevision (its event may be of any kind). */
GPtrArray *sy_ledger_events (SyLedger *ledger, const char *item, const char *item_kind, GError **error);
/* One revision of an item; NULL with SY_LEDGER_ERROR_BASE when there is none. */
SyRevision *sy_ledger_revision (SyLedger *ledger, const char *item, const char *item_kind, gint64 revision, GError **error);

/* One line of the journal, of whatever kind; NULL with SY_STORE_ERROR_NOT_FOUND when there is none of that number. */
SyRevision *sy_ledger_line (SyLedger *ledger, guint64 number, GError **error);

/* As sy-store.h has them, for the ledger's thread. */
char *sy_ledger_policy (SyLedger *ledger, GError **error);
GPtrArray *sy_ledger_actions (SyLedger *ledger, const SyActionFilter *filter, GError **error);
GPtrArray *sy_ledger_journal (SyLedger *ledger, const SyJournalFilter *filter, guint64 before, guint limit, GError **error);
gboolean sy_ledger_journal_count (SyLedger *ledger, const SyJournalFilter *filter, guint64 *count, GError **error);
GArray *sy_ledger_journal_numbers (SyLedger *ledger, const SyJournalFilter *filter, GError **error);
char **sy_ledger_people (SyLedger *ledger, GError **error);
GArray *sy_ledger_search (SyLedger *ledger, const char *words, GError **error);
gboolean sy_ledger_verify (SyLedger *ledger, const SyHash *known, SyProgressFunc progress, gpointer user_data,
                           SyVerification *out, GError **error);
gboolean sy_ledger_rebuild (SyLedger *ledger, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error);

/* What was verified and found, in words: the seal. "All 412 lines of the journal hold…", "Line 17 …: expected …, found …",
   and what an unkeyed chain cannot show. @translate NULL: English. New string. */
char *sy_verification_words (const SyVerification *verification, SyTranslate translate);

/* What is asked of a list beside SyTaskFilter. */
typedef struct
{
  const char *method;     /* id; NULL: any                                                                   */
  const char *machine;    /* of a die, or one that gear serves, whatever the case of its letters; NULL: any  */
  const char *review_due; /* only what is to be reviewed on that day or before, "2026-12-01"; NULL: any      */
} SyTaskSieve;
/* Takes out of an array of SyTask what does not fit. */
void sy_tasks_sieve (GPtrArray *tasks, const SyTaskSieve *sieve);

/* "hash", "number", "column", "event", "end", "head", "file"; "none". */
const char *sy_fault_id (SyFault fault);

/* JSON, one object without newline, as the command line prints them. */
/* A line of any kind: a revision as sy_revision_write_json(), anything else with its facts but for an attachment's content;
   member "event" says which kind. */
void sy_line_write_json (GString *out, const SyRevision *line);
void sy_action_write_json (GString *out, const SyAction *action, double today);
void sy_journal_row_write_json (GString *out, const SyJournalRow *row);

#endif
