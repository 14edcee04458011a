/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_DEEDS_H
#define SY_WORKER_DEEDS_H

#include "sy-ledger-deeds.h"
#include "sy-worker.h"

/* What is done about an item besides revising it, made on the worker's thread; the clock is read there. */

/* One deed to be recorded. Texts are owned; what stands in deed is as sy-deed.h says, without what the ledger itself finds
   out (line_hash, the id of an action that is opened). */
typedef struct
{
  char *item;           /* id                                                    */
  char *by, *role, *why;
  gint64 revision;      /* SIGNATURE, TOLD, IMPROVEMENT: which                   */
  SyDeed deed;          /* kind SIGNATURE, ACTION, REVIEW, RETIREMENT, TOLD or IMPROVEMENT */
} SyDeedAsk;
SyDeedAsk *sy_deed_ask_new (SyEventKind kind, const char *item, const char *by, const char *role, const char *why);
void sy_deed_ask_free (SyDeedAsk *ask); /* NULL is fine */

/* Takes @ask. Made whether or not somebody still waits for it; emits "changed" on the worker when it succeeded. In an ASSIGN a
   text "" leaves what was there. */
void sy_worker_deed_async (SyWorker *worker, SyDeedAsk *ask, GCancellable *cancellable, GAsyncReadyCallback callback,
                           gpointer user_data);
/* @id: receives the id of an action that was opened or an improvement that was added, new string, NULL for any other deed; may be NULL. Errors: those of
   sy-ledger-deeds.h. */
gboolean sy_worker_deed_finish (SyWorker *worker, GAsyncResult *result, char **id, GError **error);

/* Every line about an item, oldest first: GPtrArray of SyRevision, events of any kind; attachments without their content
   (facts ""). */
void sy_worker_events_async (SyWorker *worker, const char *item, GCancellable *cancellable,
                             GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_events_finish (SyWorker *worker, GAsyncResult *result, GError **error);

#endif
