/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_PRIVATE_H
#define SY_LEDGER_PRIVATE_H

#include "sy-ledger.h"

/* What everything that writes to the record has in common. */

/* Asserts that it is the ledger's own thread. */
SyStore *sy_ledger_store (SyLedger *ledger);

/* Reads what it needs and appends; called anew as long as another program wrote in between (SY_STORE_ERROR_STALE), so it
   must leave nothing behind when it fails. */
typedef gboolean (*SyLedgerWrite) (SyStore *store, gpointer data, GError **error);
gboolean sy_ledger_write (SyLedger *ledger, SyLedgerWrite write, gpointer data, GError **error);

/* SyScanFunc that adds a SyRevision to an array. */
gboolean sy_ledger_add_line (const SyLine *line, gpointer revisions);

/* A text of a request, as messages call it. */
typedef struct
{
  const char *name, *value;
  gboolean is_needed;
  gboolean is_name; /* of somebody or something: one line, with nothing in it that cannot be seen to turn it about */
} SyLedgerText;
gboolean sy_ledger_check_texts (const SyLedgerText *texts, gsize n_texts, GError **error);

typedef struct
{
  const char *by, *role, *why, *now;
  gboolean clock_set;
} SyLedgerAuthor;
SyEvent *sy_ledger_begin_event (SyEventKind kind, const SyLedgerAuthor *author);

/* Whether an attachment's file has the size and the SHA-256 that its facts name, and a name that is one. */
gboolean sy_ledger_attachment_holds (const SyEvent *event);

/* The steps of recording a revision, for one and for many in one append. */

/* The item that a request means, NULL for a new one; FALSE where it cannot be that one. */
gboolean sy_ledger_find_item (SyStore *store, const SyRecordRequest *request, const SyMethod *method, SyTask **out,
                              GError **error);
/* Adds the adoption of the desk's policy where it is not the one in force. */
gboolean sy_ledger_add_policy (SyStore *store, SyDesk *desk, const SyRecordRequest *request, GPtrArray *events,
                               GError **error);
/* What a revision holds: the document as typed and its findings, JSON. */
typedef struct
{
  const SyMethod *method;
  const char *facts, *findings;
} SyLedgerContent;
/* @task NULL: the first of a new item, whose id follows from the request and @head. New; NULL with the error. */
SyEvent *sy_ledger_make_revision (SyDesk *desk, const SyRecordRequest *request, const SyLedgerContent *content,
                                  const SyTask *task, const SyHead *head, GError **error);

#endif
