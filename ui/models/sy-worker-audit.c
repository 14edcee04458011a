/* SPDX-License-Identifier: MIT */
#include "sy-worker-audit.h"

#include "sy-worker-journal-private.h"

typedef struct
{
  SyWatched *watched;
  char *day;
  SyAudit *audit;
} Asked;

static void
free_asked (gpointer data)
{
  Asked *asked = data;

  sy_watched_free (asked->watched);
  g_free (asked->day);
  sy_audit_free (asked->audit);
  g_free (asked);
}

static gboolean
run_audit (SyLedger *ledger, gpointer data, GError **error)
{
  Asked *asked = data;

  if (!sy_watched_begin (asked->watched, error))
    return FALSE;
  asked->audit = sy_ledger_audit (ledger, asked->day, sy_watched_step, asked->watched, error);
  return sy_watched_done (asked->audit != NULL, error);
}

static const SyWorkerCall call_audit = { run_audit, free_asked, FALSE, FALSE };

void
sy_worker_audit_async (SyWorker *self, const char *day, GCancellable *cancellable, SyWorkerProgress progress,
                       gpointer progress_data, GAsyncReadyCallback callback, gpointer user_data)
{
  Asked *asked = g_new0 (Asked, 1);

  asked->watched = sy_watched_new (cancellable, progress, progress_data);
  asked->day = g_strdup (day);
  sy_worker_call_async (self, &call_audit, asked, cancellable, callback, user_data);
}

SyAudit *
sy_worker_audit_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Asked *asked = sy_worker_call_finish (self, result, &call_audit, error);

  if (asked == NULL)
    return NULL;
  sy_watched_end (asked->watched);
  return g_steal_pointer (&asked->audit);
}
