/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_PRIVATE_H
#define SY_LEDGER_PRIVATE_H

#include "sy-ledger.h"

/* What recording revisions and attaching files have in common. */

/* How often a save is tried again when another program wrote in between. */
#define SY_LEDGER_TRIES_MAX 16

/* Asserts that it is the ledger's own thread. */
SyStore *sy_ledger_store (SyLedger *ledger);

/* A text of a request, as messages call it. */
typedef struct
{
  const char *name, *value;
  gboolean is_needed;
} SyLedgerText;
gboolean sy_ledger_check_texts (const SyLedgerText *texts, gsize n_texts, GError **error);

typedef struct
{
  const char *by, *role, *why, *now;
  gboolean clock_set;
} SyLedgerAuthor;
SyEvent *sy_ledger_begin_event (SyEventKind kind, const SyLedgerAuthor *author);

#endif
