/* SPDX-License-Identifier: MIT */
#include "sy-worker-private.h"

#include "sy-register.h"

/* The registers of dies and gear, read on the worker's thread. */

typedef struct
{
  char *item_kind; /* NULL: dies and gear */
  GPtrArray *items;
} Reading;

static void
free_reading (gpointer data)
{
  Reading *reading = data;

  g_free (reading->item_kind);
  g_clear_pointer (&reading->items, g_ptr_array_unref);
  g_free (reading);
}

static gboolean
run_register (SyLedger *ledger, gpointer data, GError **error)
{
  Reading *reading = data;
  const gboolean all = reading->item_kind == NULL;
  GPtrArray *gear;

  reading->items = sy_register_read (ledger, all ? SY_ITEM_DIE : reading->item_kind, error);
  if (reading->items == NULL || !all)
    return reading->items != NULL;
  gear = sy_register_read (ledger, SY_ITEM_GEAR, error);
  if (gear == NULL)
    return FALSE;
  g_ptr_array_extend_and_steal (reading->items, gear);
  return TRUE;
}

static const SyWorkerCall call_register = { run_register, free_reading, FALSE };

void
sy_worker_register_async (SyWorker *self, const char *item_kind, GCancellable *cancellable,
                          GAsyncReadyCallback callback, gpointer user_data)
{
  Reading *reading = g_new0 (Reading, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  reading->item_kind = g_strdup (item_kind);
  sy_worker_call_async (self, &call_register, reading, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_register_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_register, error);

  return reading != NULL ? g_steal_pointer (&reading->items) : NULL;
}
