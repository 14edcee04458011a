/* SPDX-License-Identifier: MIT */
#include "sy-worker-journal-private.h"

/* The journal as a list, actions, verifying and making anew, on the worker's thread. */

/* Topics: the lines as a list */

typedef struct
{
  char *by, *from, *to, *item; /* of the filter: its own */
  SyJournalFilter filter;
  guint64 before, line, count;
  guint limit;
  GPtrArray *rows;
  GArray *numbers;
  char **people;
  char *text;
} Reading;

static void
free_reading (gpointer data)
{
  Reading *reading = data;

  g_free (reading->by);
  g_free (reading->from);
  g_free (reading->to);
  g_free (reading->item);
  g_clear_pointer (&reading->rows, g_ptr_array_unref);
  g_clear_pointer (&reading->numbers, g_array_unref);
  g_strfreev (reading->people);
  g_free (reading->text);
  g_free (reading);
}

static Reading *
new_reading (const SyJournalFilter *filter)
{
  Reading *reading = g_new0 (Reading, 1);

  if (filter == NULL)
    return reading;
  reading->by = g_strdup (filter->by);
  reading->from = g_strdup (filter->from);
  reading->to = g_strdup (filter->to);
  reading->item = g_strdup (filter->item);
  reading->filter = (SyJournalFilter) {
    .by = reading->by, .from = reading->from, .to = reading->to, .kind = filter->kind, .item = reading->item,
  };
  return reading;
}

static gboolean
run_rows (SyLedger *ledger, gpointer data, GError **error)
{
  Reading *reading = data;

  reading->rows = sy_ledger_journal (ledger, &reading->filter, reading->before, reading->limit, error);
  return reading->rows != NULL;
}

static gboolean
run_numbers (SyLedger *ledger, gpointer data, GError **error)
{
  Reading *reading = data;

  reading->numbers = sy_ledger_journal_numbers (ledger, &reading->filter, error);
  return reading->numbers != NULL;
}

static gboolean
run_count (SyLedger *ledger, gpointer data, GError **error)
{
  Reading *reading = data;
  const SyJournalFilter *filter = &reading->filter;
  SyHead head;

  if (filter->by != NULL || filter->from != NULL || filter->to != NULL || filter->kind != 0 || filter->item != NULL)
    return sy_ledger_journal_count (ledger, filter, &reading->count, error);
  /* Every line counts, and they are numbered. */
  if (!sy_ledger_head (ledger, &head, error))
    return FALSE;
  reading->count = head.number;
  return TRUE;
}

static gboolean
run_people (SyLedger *ledger, gpointer data, GError **error)
{
  Reading *reading = data;

  reading->people = sy_ledger_people (ledger, error);
  return reading->people != NULL;
}

static gboolean
run_policy (SyLedger *ledger, gpointer data, GError **error)
{
  Reading *reading = data;
  g_autoptr (GError) failed = NULL;
  SyRevision *line;

  if (reading->line > 0)
    {
      line = sy_ledger_line (ledger, reading->line, error);
      if (line == NULL)
        return FALSE;
      if (line->event->kind == SY_EVENT_POLICY)
        reading->text = g_strdup (line->event->facts);
      sy_revision_free (line);
      return TRUE;
    }
  reading->text = sy_ledger_policy (ledger, &failed);
  if (failed == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&failed));
  return FALSE;
}

static const SyWorkerCall call_rows = { run_rows, free_reading, FALSE, FALSE };
static const SyWorkerCall call_numbers = { run_numbers, free_reading, FALSE, FALSE };
static const SyWorkerCall call_count = { run_count, free_reading, FALSE, FALSE };
static const SyWorkerCall call_people = { run_people, free_reading, FALSE, FALSE };
static const SyWorkerCall call_policy = { run_policy, free_reading, FALSE, FALSE };

void
sy_worker_journal_async (SyWorker *self, const SyJournalFilter *filter, guint64 before, guint limit,
                         GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  Reading *reading = new_reading (filter);

  reading->before = before;
  reading->limit = limit;
  sy_worker_call_async (self, &call_rows, reading, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_journal_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_rows, error);

  return reading != NULL ? g_steal_pointer (&reading->rows) : NULL;
}

void
sy_worker_journal_numbers_async (SyWorker *self, const SyJournalFilter *filter, GCancellable *cancellable,
                                 GAsyncReadyCallback callback, gpointer user_data)
{
  sy_worker_call_async (self, &call_numbers, new_reading (filter), cancellable, callback, user_data);
}

GArray *
sy_worker_journal_numbers_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_numbers, error);

  return reading != NULL ? g_steal_pointer (&reading->numbers) : NULL;
}

void
sy_worker_journal_count_async (SyWorker *self, const SyJournalFilter *filter, GCancellable *cancellable,
                               GAsyncReadyCallback callback, gpointer user_data)
{
  sy_worker_call_async (self, &call_count, new_reading (filter), cancellable, callback, user_data);
}

gboolean
sy_worker_journal_count_finish (SyWorker *self, GAsyncResult *result, guint64 *count, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_count, error);

  if (reading != NULL)
    *count = reading->count;
  return reading != NULL;
}

void
sy_worker_people_async (SyWorker *self, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  sy_worker_call_async (self, &call_people, new_reading (NULL), cancellable, callback, user_data);
}

char **
sy_worker_people_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_people, error);

  return reading != NULL ? g_steal_pointer (&reading->people) : NULL;
}

void
sy_worker_policy_async (SyWorker *self, guint64 line, GCancellable *cancellable, GAsyncReadyCallback callback,
                        gpointer user_data)
{
  Reading *reading = new_reading (NULL);

  reading->line = line;
  sy_worker_call_async (self, &call_policy, reading, cancellable, callback, user_data);
}

char *
sy_worker_policy_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_policy, error);

  return reading != NULL ? g_steal_pointer (&reading->text) : NULL;
}

/* Topics: actions */

typedef struct
{
  char *item, *assigned;
  SyActionFilter filter;
  GPtrArray *actions;
} Actions;

static void
free_actions (gpointer data)
{
  Actions *actions = data;

  g_free (actions->item);
  g_free (actions->assigned);
  g_clear_pointer (&actions->actions, g_ptr_array_unref);
  g_free (actions);
}

static gboolean
run_actions (SyLedger *ledger, gpointer data, GError **error)
{
  Actions *actions = data;

  actions->actions = sy_ledger_actions (ledger, &actions->filter, error);
  return actions->actions != NULL;
}

static const SyWorkerCall call_actions = { run_actions, free_actions, FALSE, FALSE };

void
sy_worker_actions_async (SyWorker *self, const SyActionFilter *filter, GCancellable *cancellable,
                         GAsyncReadyCallback callback, gpointer user_data)
{
  Actions *actions = g_new0 (Actions, 1);

  actions->item = g_strdup (filter->item);
  actions->assigned = g_strdup (filter->assigned);
  actions->filter = (SyActionFilter) { .open = filter->open, .item = actions->item, .assigned = actions->assigned };
  sy_worker_call_async (self, &call_actions, actions, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_actions_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Actions *actions = sy_worker_call_finish (self, result, &call_actions, error);

  return actions != NULL ? g_steal_pointer (&actions->actions) : NULL;
}

/* Topics: verifying, making the lists anew */

typedef struct
{
  SyWatched *watched;
  char *store;
  gboolean has_known;
  SyHash known;
  SyVerification verification;
  SyRebuild rebuild;
} Check;

static void
free_check (gpointer data)
{
  Check *check = data;

  sy_watched_free (check->watched);
  g_free (check->store);
  sy_verification_clear (&check->verification);
  sy_rebuild_clear (&check->rebuild);
  g_free (check);
}

static Check *
new_check (SyWorker *self, GCancellable *cancellable, SyWorkerProgress progress, gpointer progress_data)
{
  Check *check = g_new0 (Check, 1);

  check->watched = sy_watched_new (cancellable, progress, progress_data);
  check->store = g_strdup (sy_worker_get_store (self));
  return check;
}

static gboolean
run_verify (SyLedger *ledger, gpointer data, GError **error)
{
  Check *check = data;
  g_autoptr (SyLedger) fresh = NULL;

  if (!sy_watched_begin (check->watched, error))
    return FALSE;
  /* What SQLite remembers of the file would hide what another program did to it since. */
  if (!g_str_equal (check->store, "memory:") || ledger == NULL)
    {
      fresh = sy_ledger_open_damaged (check->store, error);
      if (fresh == NULL)
        return FALSE;
    }
  return sy_watched_done (sy_ledger_verify (fresh != NULL ? fresh : ledger, check->has_known ? &check->known : NULL,
                                            sy_watched_step, check->watched, &check->verification, error),
                          error);
}

static gboolean
run_rebuild (SyLedger *ledger, gpointer data, GError **error)
{
  Check *check = data;
  g_autoptr (SyLedger) damaged = NULL;

  if (!sy_watched_begin (check->watched, error))
    return FALSE;
  if (ledger == NULL)
    {
      damaged = sy_ledger_open_damaged (check->store, error);
      if (damaged == NULL)
        return FALSE;
    }
  return sy_watched_done (sy_ledger_rebuild (ledger != NULL ? ledger : damaged, sy_watched_step, check->watched,
                                             &check->rebuild, error),
                          error);
}

static const SyWorkerCall call_verify = { run_verify, free_check, FALSE, TRUE };
static const SyWorkerCall call_rebuild = { run_rebuild, free_check, TRUE, TRUE };

static Check *
finish_check (SyWorker *self, GAsyncResult *result, const SyWorkerCall *call, GError **error)
{
  Check *check = sy_worker_call_finish (self, result, call, error);

  if (check != NULL)
    sy_watched_end (check->watched);
  return check;
}

void
sy_worker_verify_async (SyWorker *self, const SyHash *known_head, GCancellable *cancellable, SyWorkerProgress progress,
                        gpointer progress_data, GAsyncReadyCallback callback, gpointer user_data)
{
  Check *check = new_check (self, cancellable, progress, progress_data);

  check->has_known = known_head != NULL;
  if (known_head != NULL)
    check->known = *known_head;
  sy_worker_call_async (self, &call_verify, check, cancellable, callback, user_data);
}

gboolean
sy_worker_verify_finish (SyWorker *self, GAsyncResult *result, SyVerification *out, GError **error)
{
  Check *check = finish_check (self, result, &call_verify, error);

  if (check == NULL)
    return FALSE;
  *out = check->verification;
  check->verification = (SyVerification) { 0 };
  return TRUE;
}

void
sy_worker_rebuild_async (SyWorker *self, GCancellable *cancellable, SyWorkerProgress progress, gpointer progress_data,
                         GAsyncReadyCallback callback, gpointer user_data)
{
  Check *check = new_check (self, cancellable, progress, progress_data);

  sy_worker_call_async (self, &call_rebuild, check, cancellable, callback, user_data);
}

gboolean
sy_worker_rebuild_finish (SyWorker *self, GAsyncResult *result, SyRebuild *out, GError **error)
{
  Check *check = finish_check (self, result, &call_rebuild, error);

  if (check == NULL)
    return FALSE;
  *out = check->rebuild;
  check->rebuild = (SyRebuild) { 0 };
  return TRUE;
}
