/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_PRIVATE_H
#define SY_WORKER_PRIVATE_H

#include "sy-worker.h"

/* A call of another file of ui/models, made on the worker's thread. */
typedef struct
{
  /* On the thread that owns the ledger; @data holds what is asked and receives the answer. */
  gboolean (*run) (SyLedger *ledger, gpointer data, GError **error);
  GDestroyNotify free_data;
  gboolean is_save; /* it writes: made even when nobody waits for it any more, and "changed" is emitted */
  gboolean is_for_damaged; /* also run for a record that cannot be opened, with @ledger NULL */
} SyWorkerCall;

/* @call: static. Takes @data. */
void sy_worker_call_async (SyWorker *worker, const SyWorkerCall *call, gpointer data, GCancellable *cancellable,
                           GAsyncReadyCallback callback, gpointer user_data);
/* The data, which is still the call's; NULL with the error. */
gpointer sy_worker_call_finish (SyWorker *worker, GAsyncResult *result, const SyWorkerCall *call, GError **error);

#endif
