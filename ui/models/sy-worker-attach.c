/* SPDX-License-Identifier: MIT */
#include "sy-worker-private.h"

/* Files that belong to an item: attached, listed and read on the worker's thread. */

typedef struct
{
  char *item, *name, *by, *role, *why;
  guint64 line;
  GBytes *content;          /* what is attached, or what was read */
  SyAttachment *attachment;
  GPtrArray *attachments;
} Files;

static void
free_files (gpointer data)
{
  Files *files = data;

  g_free (files->item);
  g_free (files->name);
  g_free (files->by);
  g_free (files->role);
  g_free (files->why);
  g_clear_pointer (&files->content, g_bytes_unref);
  sy_attachment_free (files->attachment);
  g_clear_pointer (&files->attachments, g_ptr_array_unref);
  g_free (files);
}

static Files *
new_files (const char *item, const char *name)
{
  Files *files = g_new0 (Files, 1);

  files->item = g_strdup (item);
  files->name = g_strdup (name);
  return files;
}

static gboolean
run_attach (SyLedger *ledger, gpointer data, GError **error)
{
  Files *files = data;
  gboolean clock_set = FALSE;
  g_autofree char *now = sy_clock_now (&clock_set, error);
  const SyAttachRequest request = {
    .item = files->item,
    .name = files->name,
    .by = files->by,
    .role = files->role,
    .why = files->why,
    .now = now,
    .clock_set = clock_set,
  };

  if (now != NULL)
    files->attachment = sy_ledger_attach (ledger, &request, files->content, error);
  return files->attachment != NULL;
}

static gboolean
run_attachments (SyLedger *ledger, gpointer data, GError **error)
{
  Files *files = data;

  files->attachments = sy_ledger_attachments (ledger, files->item, NULL, error);
  return files->attachments != NULL;
}

static gboolean
run_content (SyLedger *ledger, gpointer data, GError **error)
{
  Files *files = data;

  files->content = sy_ledger_attachment_content (ledger, files->item, NULL, files->name, files->line, error);
  return files->content != NULL;
}

static const SyWorkerCall call_attach = { run_attach, free_files, TRUE };
static const SyWorkerCall call_attachments = { run_attachments, free_files, FALSE };
static const SyWorkerCall call_content = { run_content, free_files, FALSE };

void
sy_worker_attach_async (SyWorker *self, const SyAttachRequest *request, GBytes *content, GCancellable *cancellable,
                        GAsyncReadyCallback callback, gpointer user_data)
{
  Files *files;

  g_return_if_fail (SY_IS_WORKER (self));
  files = new_files (request->item, request->name);
  files->by = g_strdup (request->by);
  files->role = g_strdup (request->role);
  files->why = g_strdup (request->why);
  files->content = g_bytes_ref (content);
  sy_worker_call_async (self, &call_attach, files, cancellable, callback, user_data);
}

SyAttachment *
sy_worker_attach_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Files *files = sy_worker_call_finish (self, result, &call_attach, error);

  return files != NULL ? g_steal_pointer (&files->attachment) : NULL;
}

void
sy_worker_attachments_async (SyWorker *self, const char *item, GCancellable *cancellable,
                             GAsyncReadyCallback callback, gpointer user_data)
{
  g_return_if_fail (SY_IS_WORKER (self));
  sy_worker_call_async (self, &call_attachments, new_files (item, NULL), cancellable, callback, user_data);
}

GPtrArray *
sy_worker_attachments_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Files *files = sy_worker_call_finish (self, result, &call_attachments, error);

  return files != NULL ? g_steal_pointer (&files->attachments) : NULL;
}

void
sy_worker_attachment_content_async (SyWorker *self, const char *item, const char *name, guint64 line,
                                    GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  Files *files;

  g_return_if_fail (SY_IS_WORKER (self));
  files = new_files (item, name);
  files->line = line;
  sy_worker_call_async (self, &call_content, files, cancellable, callback, user_data);
}

GBytes *
sy_worker_attachment_content_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Files *files = sy_worker_call_finish (self, result, &call_content, error);

  return files != NULL ? g_steal_pointer (&files->content) : NULL;
}
