/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_EXCHANGE_PRIVATE_H
#define SY_LEDGER_EXCHANGE_PRIVATE_H

#include "sy-bundle.h"
#include "sy-ledger-exchange.h"
#include "sy-ledger-private.h"

/* What the parts of an exchange have in common. */

/* The caller's progress function, called for every so many steps. */
typedef struct
{
  SyProgressFunc func; /* may be NULL */
  gpointer user_data;
} SyWatch;

/* FALSE, with SY_STORE_ERROR_STOPPED, when the caller says so. */
gboolean sy_watch (const SyWatch *watch, guint64 done, guint64 of, GError **error);

/* The id and version of a policy's text as revisions name it, "steelyard-default 2"; NULL for none. New string. */
char *sy_policy_key (const char *text);

/* Topic: finding out what a bundle adds to a journal */

typedef struct
{
  GPtrArray *events;    /* of SyEvent, in the bundle's order, numbered as here; borrowed from @owned and the bundle */
  GPtrArray *owned;
  GPtrArray *conflicts; /* of char *                                              */
  guint64 known, hashes_only, left;
} SyMerge;
void sy_merge_clear (SyMerge *merge);

/* NULL where an edition of this program could have written such a line, else “expected …, found …”; new string. */
char *sy_merge_check_event (const SyEvent *event);

/* Reads the journal up to @head and holds the bundle against it; nothing is written. */
gboolean sy_merge_read (SyStore *store, const SyHead *head, const SyBundle *bundle, const SyWatch *watch, SyMerge *out,
                        GError **error);

#endif
