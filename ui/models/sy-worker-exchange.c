/* SPDX-License-Identifier: MIT */
#include "sy-worker-journal-private.h"

/* Handing the record over and taking over, on the worker's thread. */

/* Topics: handing over */

typedef struct
{
  SyWatched *watched;
  char **items;
  char *search, *item_kind;
  SyTaskFilter filter; /* its texts are the two above */
  GBytes *bytes;
} Export;

static void
free_export (gpointer data)
{
  Export *export = data;

  sy_watched_free (export->watched);
  g_strfreev (export->items);
  g_free (export->search);
  g_free (export->item_kind);
  g_clear_pointer (&export->bytes, g_bytes_unref);
  g_free (export);
}

static gboolean
run_export (SyLedger *ledger, gpointer data, GError **error)
{
  Export *export = data;

  export->bytes = sy_ledger_export (ledger, (const char *const *) export->items, sy_watched_step, export->watched, error);
  return sy_watched_done (export->bytes != NULL, error);
}

static gboolean
run_export_csv (SyLedger *ledger, gpointer data, GError **error)
{
  Export *export = data;

  export->bytes = sy_ledger_export_csv (ledger, &export->filter, sy_watched_step, export->watched, error);
  return sy_watched_done (export->bytes != NULL, error);
}

static const SyWorkerCall call_export = { run_export, free_export, FALSE, FALSE };
static const SyWorkerCall call_export_csv = { run_export_csv, free_export, FALSE, FALSE };

void
sy_worker_export_async (SyWorker *self, const char *const *items, GCancellable *cancellable, SyWorkerProgress progress,
                        gpointer progress_data, GAsyncReadyCallback callback, gpointer user_data)
{
  Export *export = g_new0 (Export, 1);

  export->watched = sy_watched_new (cancellable, progress, progress_data);
  export->items = g_strdupv ((char **) items);
  sy_worker_call_async (self, &call_export, export, cancellable, callback, user_data);
}

void
sy_worker_export_csv_async (SyWorker *self, const SyTaskFilter *filter, GCancellable *cancellable,
                            SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Export *export = g_new0 (Export, 1);

  export->watched = sy_watched_new (cancellable, progress, progress_data);
  export->search = g_strdup (filter->search);
  export->item_kind = g_strdup (filter->item_kind);
  export->filter = *filter;
  export->filter.search = export->search;
  export->filter.item_kind = export->item_kind;
  sy_worker_call_async (self, &call_export_csv, export, cancellable, callback, user_data);
}

static GBytes *
finish_export (SyWorker *self, GAsyncResult *result, const SyWorkerCall *call, GError **error)
{
  Export *export = sy_worker_call_finish (self, result, call, error);

  if (export == NULL)
    return NULL;
  sy_watched_end (export->watched);
  return g_steal_pointer (&export->bytes);
}

GBytes *
sy_worker_export_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  return finish_export (self, result, &call_export, error);
}

GBytes *
sy_worker_export_csv_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  return finish_export (self, result, &call_export_csv, error);
}

/* Topics: taking over */

typedef struct
{
  SyWatched *watched;
  SyDesk *desk;
  GBytes *bytes;
  char *by, *role, *why;
  gboolean dry_run;
  SyImportReport report;
  SyLiftsReport lifts;
} Import;

static void
free_import (gpointer data)
{
  Import *import = data;

  sy_watched_free (import->watched);
  sy_desk_unref (import->desk);
  g_bytes_unref (import->bytes);
  g_free (import->by);
  g_free (import->role);
  g_free (import->why);
  sy_import_report_clear (&import->report);
  sy_lifts_report_clear (&import->lifts);
  g_free (import);
}

static Import *
new_import (SyWorker *self, GBytes *bytes, const SyImportRequest *request, SyWatched *watched)
{
  Import *import = g_new0 (Import, 1);

  import->watched = watched;
  import->desk = sy_desk_ref (sy_worker_get_desk (self));
  import->bytes = g_bytes_ref (bytes);
  import->by = g_strdup (request->by);
  import->role = g_strdup (request->role);
  import->why = g_strdup (request->why);
  import->dry_run = request->dry_run;
  return import;
}

typedef gboolean (*Take) (SyLedger *ledger, Import *import, const SyImportRequest *request, GError **error);

static gboolean
take_bundle (SyLedger *ledger, Import *import, const SyImportRequest *request, GError **error)
{
  return sy_ledger_import (ledger, import->bytes, request, sy_watched_step, import->watched, &import->report, error);
}

static gboolean
take_lifts (SyLedger *ledger, Import *import, const SyImportRequest *request, GError **error)
{
  return sy_ledger_import_lifts (ledger, import->desk, import->bytes, request, sy_watched_step, import->watched,
                                 &import->lifts, error);
}

static gboolean
run_take (SyLedger *ledger, Import *import, Take take, GError **error)
{
  gboolean clock_set = FALSE;
  g_autofree char *now = NULL;

  if (!sy_watched_begin (import->watched, error))
    return FALSE;
  now = sy_clock_now (&clock_set, error);
  if (now == NULL)
    return FALSE;
  return sy_watched_done (take (ledger, import,
                                &(SyImportRequest) { .by = import->by, .role = import->role, .why = import->why,
                                                     .now = now, .clock_set = clock_set, .dry_run = import->dry_run },
                                error),
                          error);
}

static gboolean
run_import (SyLedger *ledger, gpointer data, GError **error)
{
  return run_take (ledger, data, take_bundle, error);
}

static gboolean
run_import_lifts (SyLedger *ledger, gpointer data, GError **error)
{
  return run_take (ledger, data, take_lifts, error);
}

/* Stopped by what is watched; whether something was written only the report says. */
static const SyWorkerCall call_import = { run_import, free_import, TRUE, FALSE };
static const SyWorkerCall call_import_lifts = { run_import_lifts, free_import, TRUE, FALSE };

static Import *
finish_import (SyWorker *self, GAsyncResult *result, const SyWorkerCall *call, GError **error)
{
  Import *import = sy_worker_call_finish (self, result, call, error);

  if (import != NULL)
    sy_watched_end (import->watched);
  return import;
}

void
sy_worker_import_async (SyWorker *self, GBytes *bundle, const SyImportRequest *request, GCancellable *cancellable,
                        SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                        gpointer user_data)
{
  Import *import = new_import (self, bundle, request, sy_watched_new (cancellable, progress, progress_data));

  sy_worker_call_async (self, &call_import, import, cancellable, callback, user_data);
}

gboolean
sy_worker_import_finish (SyWorker *self, GAsyncResult *result, SyImportReport *out, GError **error)
{
  Import *import = finish_import (self, result, &call_import, error);

  if (import == NULL)
    return FALSE;
  *out = import->report;
  import->report = (SyImportReport) { 0 };
  return TRUE;
}

void
sy_worker_import_lifts_async (SyWorker *self, GBytes *csv, const SyImportRequest *request, GCancellable *cancellable,
                              SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                              gpointer user_data)
{
  Import *import = new_import (self, csv, request, sy_watched_new (cancellable, progress, progress_data));

  sy_worker_call_async (self, &call_import_lifts, import, cancellable, callback, user_data);
}

gboolean
sy_worker_import_lifts_finish (SyWorker *self, GAsyncResult *result, SyLiftsReport *out, GError **error)
{
  Import *import = finish_import (self, result, &call_import_lifts, error);

  if (import == NULL)
    return FALSE;
  *out = import->lifts;
  import->lifts = (SyLiftsReport) { 0 };
  return TRUE;
}
