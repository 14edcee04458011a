/* SPDX-License-Identifier: MIT */
#include "sy-worker-improvements.h"

#include "sy-i18n.h"
#include "sy-worker-private.h"

typedef struct
{
  SyDesk *desk;
  GPtrArray *views;
  SyHead head;
} Reading;

static void
free_reading (gpointer data)
{
  Reading *reading = data;

  g_clear_pointer (&reading->views, g_ptr_array_unref);
  sy_desk_unref (reading->desk);
  g_free (reading);
}

static gboolean
run_improvements (SyLedger *ledger, gpointer data, GError **error)
{
  const SyImprovementFilter all = { .withdrawn = TRUE };
  Reading *reading = data;

  if (!sy_ledger_head (ledger, &reading->head, error))
    return FALSE;
  reading->views = sy_ledger_improvements (ledger, &all, sy_desk_policy (reading->desk), sy_translate, error);
  return reading->views != NULL;
}

static const SyWorkerCall call_improvements = { run_improvements, free_reading, FALSE };

void
sy_worker_improvements_async (SyWorker *self, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  Reading *reading;

  g_return_if_fail (SY_IS_WORKER (self));
  reading = g_new0 (Reading, 1);
  reading->desk = sy_desk_ref (sy_worker_get_desk (self));
  sy_worker_call_async (self, &call_improvements, reading, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_improvements_finish (SyWorker *self, GAsyncResult *result, SyHead *head, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_improvements, error);

  if (reading == NULL)
    return NULL;
  if (head != NULL)
    *head = reading->head;
  return g_steal_pointer (&reading->views);
}
