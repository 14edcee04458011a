/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_AUDIT_H
#define SY_WORKER_AUDIT_H

#include "sy-ledger-audit.h"
#include "sy-worker-journal.h"

/* The register as at a day, on the worker's thread, as sy_ledger_audit() has it. Says how far it is and stops as what is in
   sy-worker-journal.h does. @day is copied. */
void sy_worker_audit_async (SyWorker *worker, const char *day, GCancellable *cancellable, SyWorkerProgress progress,
                            gpointer progress_data, GAsyncReadyCallback callback, gpointer user_data);
/* New; NULL with the error. */
SyAudit *sy_worker_audit_finish (SyWorker *worker, GAsyncResult *result, GError **error);

#endif
