/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_H
#define SY_WORKER_H

#include <gio/gio.h>

#include "sy-ledger.h"

/*
 * The one thread that owns the ledger. Calls queue; results come back on the caller's main context.
 * Owned by ui/models; pages only use this interface.
 */
#define SY_TYPE_WORKER (sy_worker_get_type ())
G_DECLARE_FINAL_TYPE (SyWorker, sy_worker, SY, WORKER, GObject)

/* Starts the thread and opens the ledger there; open errors arrive with the first call's error. */
SyWorker *sy_worker_new (const char *store_uri, SyDesk *desk);
SyDesk *sy_worker_get_desk (SyWorker *worker);
const char *sy_worker_get_store (SyWorker *worker);

/* Waits for what is queued, closes the ledger, joins the thread. Idempotent. */
void sy_worker_stop (SyWorker *worker);

/* Current tasks, dies and gear: GPtrArray of SyTask. */
void sy_worker_tasks_async (SyWorker *worker, GCancellable *cancellable,
                            GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_tasks_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* The same, those touched after line @since: GPtrArray of SyTask (how a second program's work is seen);
   @head receives the journal's end. */
void sy_worker_changed_async (SyWorker *worker, guint64 since, GCancellable *cancellable,
                              GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_changed_finish (SyWorker *worker, GAsyncResult *result, SyHead *head,
                                     GError **error);

/* Revisions of a task, oldest first: GPtrArray of SyRevision. */
void sy_worker_history_async (SyWorker *worker, const char *task, GCancellable *cancellable,
                              GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_history_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* What is typed is kept by the caller until this has succeeded. The clock is read on the worker. */
typedef struct
{
  char *task, *rename, *by, *role, *why; /* as in SyRecordRequest */
  gint64 base;
  gboolean is_new;
  char *facts;                           /* JSON */
} SySaveRequest;
SySaveRequest *sy_save_request_new (void);
void sy_save_request_free (SySaveRequest *request);
/* Takes @request. */
void sy_worker_save_async (SyWorker *worker, SySaveRequest *request, GCancellable *cancellable,
                           GAsyncReadyCallback callback, gpointer user_data);
/* @saved is filled on TRUE; clear it with sy_record_result_clear. Emits "changed" on the worker too. */
gboolean sy_worker_save_finish (SyWorker *worker, GAsyncResult *result, SyRecordResult *saved,
                                GError **error);

/* Files that belong to an item; as in sy-ledger.h. @request and @content are copied or kept; the clock is read on the
   worker, whatever the request says. Attaching emits "changed" too. */
void sy_worker_attach_async (SyWorker *worker, const SyAttachRequest *request, GBytes *content,
                             GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data);
SyAttachment *sy_worker_attach_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* Oldest first: GPtrArray of SyAttachment. @item: its id. */
void sy_worker_attachments_async (SyWorker *worker, const char *item, GCancellable *cancellable,
                                  GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_attachments_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* @line: of the journal, 0 for the latest of that name. */
void sy_worker_attachment_content_async (SyWorker *worker, const char *item, const char *name, guint64 line,
                                         GCancellable *cancellable, GAsyncReadyCallback callback,
                                         gpointer user_data);
GBytes *sy_worker_attachment_content_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* Every die or piece of gear (@item_kind) as it stands, NULL: dies, then gear: GPtrArray of SyRegisterItem. */
void sy_worker_register_async (SyWorker *worker, const char *item_kind, GCancellable *cancellable,
                               GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_register_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* Signal "changed" (main context): the journal has moved on; list models then ask for what changed. */

#endif
