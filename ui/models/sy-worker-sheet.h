/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_SHEET_H
#define SY_WORKER_SHEET_H

#include "sy-binder.h"
#include "sy-worker.h"

/* What sheets of an item are printed of, read and worked out on the worker's thread. */
typedef struct
{
  SyBinder *binder;
  char *made;      /* when it was read, RFC 3339                                             */
  char *unreadable; /* NULL: it was worked out; else why its facts are none any more, in words */
} SySheetSource;
void sy_sheet_source_free (SySheetSource *source); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SySheetSource, sy_sheet_source_free)

/* @item: id. @revision 0: the latest. */
void sy_worker_sheet_async (SyWorker *worker, const char *item, gint64 revision, GCancellable *cancellable,
                            GAsyncReadyCallback callback, gpointer user_data);
/* The same of facts that are in no record, under the limits of the worker's desk. Where they have problems nothing but the
   words about them is there: the binder is NULL. */
void sy_worker_sheet_of_facts_async (SyWorker *worker, const char *name, const char *facts, GCancellable *cancellable,
                                     GAsyncReadyCallback callback, gpointer user_data);
/* New; NULL with the error. */
SySheetSource *sy_worker_sheet_finish (SyWorker *worker, GAsyncResult *result, GError **error);

#endif
