/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_JOURNAL_PRIVATE_H
#define SY_WORKER_JOURNAL_PRIVATE_H

#include "sy-worker-journal.h"
#include "sy-worker-private.h"

/* What a call that takes a while tells from the worker's thread, and by what it is stopped. Made, ended and freed on the
   caller's main context. */
typedef struct SyWatched SyWatched;

/* Any may be NULL. */
SyWatched *sy_watched_new (GCancellable *cancellable, SyWorkerProgress progress, gpointer user_data);
/* Nothing is told from here on. */
void sy_watched_end (SyWatched *watched);
void sy_watched_free (SyWatched *watched);
/* SyProgressFunc, on the worker's thread. */
gboolean sy_watched_step (guint64 done, guint64 of, gpointer watched);
/* On the worker's thread: FALSE with the error where the call was stopped before it began. */
gboolean sy_watched_begin (SyWatched *watched, GError **error);
/* On the worker's thread: stopping is said as GIO says it. Returns @done. */
gboolean sy_watched_done (gboolean done, GError **error);

#endif
