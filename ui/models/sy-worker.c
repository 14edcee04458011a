/* SPDX-License-Identifier: MIT */
#include "sy-worker-private.h"

#include <string.h>

typedef enum
{
  JOB_TASKS,
  JOB_CHANGED,
  JOB_HISTORY,
  JOB_SAVE,
  JOB_CALL,
  JOB_QUIT,
} JobKind;

/* One call on its way to the thread and back. Its task is let go only on the caller's context: the last reference
   to the worker must never be dropped by the thread that the worker waits for. */
typedef struct
{
  JobKind kind;
  GTask *task;
  SyWorker *worker; /* for "changed" after a save */
  guint64 since;
  char *item;
  SySaveRequest *save;
  const SyWorkerCall *call;
  gpointer data; /* the call's */

  GPtrArray *rows;
  SyHead head;
  SyRecordResult saved;
  gboolean done;
  GError *error;
} Job;

struct _SyWorker
{
  GObject parent_instance;
  char *store_uri;
  SyDesk *desk;
  GAsyncQueue *queue; /* of Job */
  GThread *thread;    /* NULL once stopped */
};

G_DEFINE_FINAL_TYPE (SyWorker, sy_worker, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* What the thread owns. */
typedef struct
{
  char *store_uri;
  SyDesk *desk;
  GAsyncQueue *queue;
  SyLedger *ledger;
} Room;

static void
free_job (Job *job)
{
  g_clear_object (&job->task);
  g_free (job->item);
  sy_save_request_free (job->save);
  if (job->call != NULL)
    job->call->free_data (job->data);
  g_clear_pointer (&job->rows, g_ptr_array_unref);
  sy_record_result_clear (&job->saved);
  g_clear_error (&job->error);
  g_free (job);
}

/* The problems of facts that the form should not have let through, in one message. */
static GError *
problems_error (const GError *why, const SyProblems *problems)
{
  g_autoptr (GString) text = g_string_new (why->message);

  for (int i = 0; i < problems->count; i++)
    {
      g_autofree char *words = sy_words_problem (&problems->items[i]);

      g_string_append_printf (text, "\n%s", words);
    }
  return g_error_new_literal (why->domain, why->code, text->str);
}

static void
run_save (Room *room, Job *job)
{
  const SySaveRequest *save = job->save;
  gboolean clock_set = FALSE;
  g_autofree char *now = sy_clock_now (&clock_set, &job->error);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GError) error = NULL;
  SyRecordRequest request = {
    .task = save->task,
    .rename = save->rename,
    .by = save->by,
    .role = save->role,
    .why = save->why,
    .base = save->base,
    .is_new = save->is_new,
    .now = now,
    .clock_set = clock_set,
  };

  if (now == NULL)
    return;
  if (sy_ledger_record (room->ledger, room->desk, &request, save->facts, strlen (save->facts),
                        problems, &job->saved, &error))
    job->done = TRUE;
  else if (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_PROBLEMS))
    job->error = problems_error (error, problems);
  else
    job->error = g_steal_pointer (&error);
}

/* Writes to the journal. */
static gboolean
is_save (const Job *job)
{
  return job->kind == JOB_SAVE || (job->kind == JOB_CALL && job->call->is_save);
}

static void
run_job (Room *room, Job *job)
{
  const SyTaskFilter any = { .search = NULL };

  /* A save that was asked for is made, whether or not somebody still waits for it. */
  if (!is_save (job)
      && g_cancellable_set_error_if_cancelled (g_task_get_cancellable (job->task), &job->error))
    return;

  /* A store that could not be opened may be there the next time: a disk that was mounted since. */
  if (room->ledger == NULL)
    room->ledger = sy_ledger_open (room->store_uri, &job->error);
  if (room->ledger == NULL)
    {
      if (job->kind != JOB_CALL || !job->call->is_for_damaged)
        return;
      g_clear_error (&job->error);
    }

  switch (job->kind)
    {
    case JOB_TASKS:
      job->rows = sy_ledger_tasks (room->ledger, &any, &job->error);
      job->done = job->rows != NULL;
      break;
    case JOB_CHANGED:
      /* The head first: what is written in between is then told twice, never not at all. */
      if (sy_ledger_head (room->ledger, &job->head, &job->error)
          && job->head.number != job->since)
        job->rows = sy_ledger_changed_since (room->ledger, MIN (job->since, job->head.number),
                                             &job->error);
      else if (job->error == NULL)
        job->rows = g_ptr_array_new ();
      job->done = job->rows != NULL;
      break;
    case JOB_HISTORY:
      job->rows = sy_ledger_history (room->ledger, job->item, NULL, &job->error);
      job->done = job->rows != NULL;
      break;
    case JOB_SAVE:
      run_save (room, job);
      break;
    case JOB_CALL:
      job->done = job->call->run (room->ledger, job->data, &job->error);
      break;
    case JOB_QUIT:
      break;
    }
}

static gboolean
deliver_cb (gpointer user_data)
{
  Job *job = user_data;
  g_autoptr (SyWorker) worker = g_object_ref (job->worker);
  gboolean moved_on = is_save (job) && job->done;

  if (job->done)
    g_task_return_boolean (job->task, TRUE);
  else
    g_task_return_error (job->task, g_steal_pointer (&job->error));
  /* The job lives as task data until the caller has finished. */
  g_object_unref (job->task);

  if (moved_on)
    g_signal_emit (worker, signals[CHANGED], 0);
  return G_SOURCE_REMOVE;
}

static gpointer
thread_main (gpointer data)
{
  Room *room = data;

  for (;;)
    {
      Job *job = g_async_queue_pop (room->queue);
      g_autoptr (GSource) source = NULL;

      if (job->kind == JOB_QUIT)
        {
          free_job (job);
          break;
        }
      run_job (room, job);
      source = g_idle_source_new ();
      g_source_set_priority (source, G_PRIORITY_DEFAULT);
      g_source_set_static_name (source, "[steelyard] answer of the worker");
      g_source_set_callback (source, deliver_cb, job, NULL);
      g_source_attach (source, g_task_get_context (job->task));
    }

  g_clear_pointer (&room->ledger, sy_ledger_close);
  g_async_queue_unref (room->queue);
  sy_desk_unref (room->desk);
  g_free (room->store_uri);
  g_free (room);
  return NULL;
}

static void
free_job_data (gpointer data)
{
  Job *job = data;

  job->task = NULL; /* it is being freed */
  free_job (job);
}

static void
send_job (SyWorker *self, Job *job, GCancellable *cancellable,
          GAsyncReadyCallback callback, gpointer user_data)
{
  GTask *task = g_task_new (self, cancellable, callback, user_data);

  g_task_set_source_tag (task, GINT_TO_POINTER ((int) job->kind + 1));
  g_task_set_task_data (task, job, free_job_data);
  if (is_save (job))
    g_task_set_check_cancellable (task, FALSE);
  job->task = task;
  job->worker = self;
  if (self->thread == NULL)
    {
      g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CLOSED, "The store is closed");
      g_object_unref (task);
      return;
    }
  g_async_queue_push (self->queue, job);
}

static Job *
finish_job (SyWorker *self, GAsyncResult *result, JobKind kind, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);
  g_return_val_if_fail (g_task_get_source_tag (G_TASK (result)) == GINT_TO_POINTER ((int) kind + 1),
                        NULL);

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return NULL;
  return g_task_get_task_data (G_TASK (result));
}

static void
sy_worker_dispose (GObject *object)
{
  sy_worker_stop (SY_WORKER (object));
  G_OBJECT_CLASS (sy_worker_parent_class)->dispose (object);
}

static void
sy_worker_finalize (GObject *object)
{
  SyWorker *self = SY_WORKER (object);

  g_clear_pointer (&self->queue, g_async_queue_unref);
  g_clear_pointer (&self->desk, sy_desk_unref);
  g_clear_pointer (&self->store_uri, g_free);
  G_OBJECT_CLASS (sy_worker_parent_class)->finalize (object);
}

static void
sy_worker_class_init (SyWorkerClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = sy_worker_dispose;
  object_class->finalize = sy_worker_finalize;

  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sy_worker_init (SyWorker *self)
{
  self->queue = g_async_queue_new ();
}

SyWorker *
sy_worker_new (const char *store_uri, SyDesk *desk)
{
  SyWorker *self = g_object_new (SY_TYPE_WORKER, NULL);
  Room *room = g_new0 (Room, 1);

  self->store_uri = g_strdup (store_uri);
  self->desk = sy_desk_ref (desk);
  room->store_uri = g_strdup (store_uri);
  room->desk = sy_desk_ref (desk);
  room->queue = g_async_queue_ref (self->queue);
  self->thread = g_thread_new ("steelyard-ledger", thread_main, room);
  return self;
}

SyDesk *
sy_worker_get_desk (SyWorker *self)
{
  g_return_val_if_fail (SY_IS_WORKER (self), NULL);
  return self->desk;
}

const char *
sy_worker_get_store (SyWorker *self)
{
  g_return_val_if_fail (SY_IS_WORKER (self), NULL);
  return self->store_uri;
}

void
sy_worker_stop (SyWorker *self)
{
  Job *quit;

  g_return_if_fail (SY_IS_WORKER (self));
  if (self->thread == NULL)
    return;
  quit = g_new0 (Job, 1);
  quit->kind = JOB_QUIT;
  g_async_queue_push (self->queue, quit);
  g_thread_join (g_steal_pointer (&self->thread));
}

void
sy_worker_tasks_async (SyWorker *self, GCancellable *cancellable, GAsyncReadyCallback callback,
                       gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  job->kind = JOB_TASKS;
  send_job (self, job, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_tasks_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Job *job = finish_job (self, result, JOB_TASKS, error);

  return job != NULL ? g_steal_pointer (&job->rows) : NULL;
}

void
sy_worker_changed_async (SyWorker *self, guint64 since, GCancellable *cancellable,
                         GAsyncReadyCallback callback, gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  job->kind = JOB_CHANGED;
  job->since = since;
  send_job (self, job, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_changed_finish (SyWorker *self, GAsyncResult *result, SyHead *head, GError **error)
{
  Job *job = finish_job (self, result, JOB_CHANGED, error);

  if (job == NULL)
    return NULL;
  if (head != NULL)
    *head = job->head;
  return g_steal_pointer (&job->rows);
}

void
sy_worker_history_async (SyWorker *self, const char *task, GCancellable *cancellable,
                         GAsyncReadyCallback callback, gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  job->kind = JOB_HISTORY;
  job->item = g_strdup (task);
  send_job (self, job, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_history_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Job *job = finish_job (self, result, JOB_HISTORY, error);

  return job != NULL ? g_steal_pointer (&job->rows) : NULL;
}

SySaveRequest *
sy_save_request_new (void)
{
  return g_new0 (SySaveRequest, 1);
}

void
sy_save_request_free (SySaveRequest *request)
{
  if (request == NULL)
    return;
  g_free (request->task);
  g_free (request->rename);
  g_free (request->by);
  g_free (request->role);
  g_free (request->why);
  g_free (request->facts);
  g_free (request);
}

void
sy_worker_save_async (SyWorker *self, SySaveRequest *request, GCancellable *cancellable,
                      GAsyncReadyCallback callback, gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  g_return_if_fail (request != NULL && request->facts != NULL);
  job->kind = JOB_SAVE;
  job->save = request;
  send_job (self, job, cancellable, callback, user_data);
}

gboolean
sy_worker_save_finish (SyWorker *self, GAsyncResult *result, SyRecordResult *saved, GError **error)
{
  Job *job = finish_job (self, result, JOB_SAVE, error);

  if (job == NULL)
    return FALSE;
  if (saved != NULL)
    {
      *saved = job->saved;
      memset (&job->saved, 0, sizeof job->saved);
    }
  return TRUE;
}

void
sy_worker_call_async (SyWorker *self, const SyWorkerCall *call, gpointer data, GCancellable *cancellable,
                      GAsyncReadyCallback callback, gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  job->kind = JOB_CALL;
  job->call = call;
  job->data = data;
  send_job (self, job, cancellable, callback, user_data);
}

gpointer
sy_worker_call_finish (SyWorker *self, GAsyncResult *result, const SyWorkerCall *call, GError **error)
{
  Job *job = finish_job (self, result, JOB_CALL, error);

  g_return_val_if_fail (job == NULL || job->call == call, NULL);
  return job != NULL ? job->data : NULL;
}
