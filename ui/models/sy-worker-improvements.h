/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_IMPROVEMENTS_H
#define SY_WORKER_IMPROVEMENTS_H

#include "sy-ledger-improvement.h"
#include "sy-worker.h"

/* The improvement log, read on the worker's thread. */

/* As sy_ledger_improvements() has them, those withdrawn too, in the language of the screen and under the desk's policy: GPtrArray
   of SyImprovementView, the last put to work first. @head: the journal's end when they were read; may be NULL. */
void sy_worker_improvements_async (SyWorker *worker, GCancellable *cancellable, GAsyncReadyCallback callback,
                                   gpointer user_data);
GPtrArray *sy_worker_improvements_finish (SyWorker *worker, GAsyncResult *result, SyHead *head, GError **error);

#endif
