/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_SEARCH_H
#define SY_WORKER_SEARCH_H

#include "sy-task-row.h"
#include "sy-worker.h"

/* What the lists of items ask of the store beside what changed: everything at once, and what has certain words. */

/* Everything that a store holds, made ready on the worker's thread, so that taking it over costs a list nothing. */
typedef struct
{
  GPtrArray *rows;       /* of SyTaskRow, by name, then id              */
  GHashTable *positions; /* id, which is its row's → position in rows + 1 */
  guint32 *by_rest;      /* as sy_task_sort_rest() has them             */
  guint counts[SY_N_REGISTERS], retired[SY_N_REGISTERS]; /* in use, and no longer */
  SyHead head;           /* what is written after it may be in the rows and is told again */
} SyTaskFill;
void sy_task_fill_free (SyTaskFill *fill);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyTaskFill, sy_task_fill_free)

/* @today: for the rows, days since 1970. */
void sy_worker_fill_async (SyWorker *worker, double today, GCancellable *cancellable, GAsyncReadyCallback callback,
                           gpointer user_data);
SyTaskFill *sy_worker_fill_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* The seats of the items that have all the words of @search, as sy_store_search() has them. NULL with the error; NULL
   without one when there is nothing to search for. Ask once more with the former call cancelled: it is then not made. */
void sy_worker_search_async (SyWorker *worker, const char *search, GCancellable *cancellable, GAsyncReadyCallback callback,
                             gpointer user_data);
GArray *sy_worker_search_finish (SyWorker *worker, GAsyncResult *result, GError **error);

#endif
