/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_DEEDS_PRIVATE_H
#define SY_LEDGER_DEEDS_PRIVATE_H

#include "sy-deed.h"
#include "sy-ledger-deeds.h"
#include "sy-ledger-private.h"

/* A deed on its way into the record. */
typedef struct SyDeedWork SyDeedWork;
struct SyDeedWork
{
  SyEventKind kind;
  const SyDeedRequest *request;
  gboolean needs_role, needs_why;
  /* Looks whether it can be done about the item as it stands, and says what of it the event and its facts do not know yet.
     Texts of @deed are copied with sy_event_set() and freed by the caller. */
  gboolean (*prepare) (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event,
                       SyDeed *deed, GError **error);
  gconstpointer data; /* of @prepare */
  SyHead *head;       /* receives the new end; may be NULL */
};

/* @texts: what is to be checked beside who, role and why. */
gboolean sy_ledger_do (SyLedger *ledger, const SyDeedWork *work, const SyLedgerText *texts, gsize n_texts, GError **error);

/* A day that is given for what is still to come: a date, and not before that of the request. "" and NULL are fine. */
gboolean sy_ledger_check_due (const SyDeedRequest *request, const char *due, GError **error);
/* A revision of an item; NULL with the error where there is none. */
SyRevision *sy_ledger_need_revision (SyStore *store, const SyTask *item, gint64 revision, GError **error);
/* The id of what is begun with this, 16 hex digits, new string: the same for the same said about the same item at the same
   head, and as good as never the same otherwise. @what names the kind of thing. */
char *sy_ledger_make_id (const char *what, const SyDeedRequest *request, const SyTask *item, const char *text,
                         const SyHead *head);
/* The day of the request, "2026-11-26"; new string. */
char *sy_ledger_day (const SyDeedRequest *request);

#endif
