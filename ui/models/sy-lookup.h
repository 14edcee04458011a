/* SPDX-License-Identifier: MIT */
#ifndef SY_LOOKUP_H
#define SY_LOOKUP_H

#include "sy-gear-finder.h"
#include "sy-matrix.h"
#include "sy-worker.h"

/* What is looked up in the registers: read on the worker's thread, worked out on one of its own, told on the caller's main
   context. The words are translated. */

/* What lifts what: GPtrArray of SyMatrixCell, as sy_matrix_make() gives them; @machine NULL: all. */
void sy_lookup_matrix_async (SyWorker *worker, const char *machine, GCancellable *cancellable,
                             GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_lookup_matrix_finish (GAsyncResult *result, GError **error);

/* Gear for a plan: GPtrArray of SyGearFit, as sy_gear_find() gives them. */
void sy_lookup_gear_async (SyWorker *worker, SyAssessment *plan, GCancellable *cancellable,
                           GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_lookup_gear_finish (GAsyncResult *result, GError **error);

#endif
