/* SPDX-License-Identifier: MIT */
#ifndef SY_WORKER_JOURNAL_H
#define SY_WORKER_JOURNAL_H

#include "sy-ledger-deeds.h"
#include "sy-ledger-exchange.h"
#include "sy-worker.h"

/* What is asked of the whole record, made on the worker's thread, one after another. What takes a while says how far it is and
   stops when its cancellable is cancelled: nothing is changed then, and the error is G_IO_ERROR_CANCELLED. */

/* On the caller's main context, now and then; never after the call's callback. @of 0: not known. @user_data must stay until
   the callback. */
typedef void (*SyWorkerProgress) (guint64 done, guint64 of, gpointer user_data);

/* Topics: the lines as a list */

/* As sy_store_journal() has them: GPtrArray of SyJournalRow, newest first. @filter is copied. */
void sy_worker_journal_async (SyWorker *worker, const SyJournalFilter *filter, guint64 before, guint limit,
                              GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_journal_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* The numbers of the lines that a filter lets through, newest first: GArray of guint64. */
void sy_worker_journal_numbers_async (SyWorker *worker, const SyJournalFilter *filter, GCancellable *cancellable,
                                      GAsyncReadyCallback callback, gpointer user_data);
GArray *sy_worker_journal_numbers_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* How many they are; without a filter in no time. */
void sy_worker_journal_count_async (SyWorker *worker, const SyJournalFilter *filter, GCancellable *cancellable,
                                    GAsyncReadyCallback callback, gpointer user_data);
gboolean sy_worker_journal_count_finish (SyWorker *worker, GAsyncResult *result, guint64 *count, GError **error);

/* Everybody who wrote a line: free with g_strfreev(). */
void sy_worker_people_async (SyWorker *worker, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data);
char **sy_worker_people_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* Which policy stands in the journal as the one in force, as JSON: NULL without an error when there is none. @line 0: the one
   in force; else what was adopted with that line. New string. */
void sy_worker_policy_async (SyWorker *worker, guint64 line, GCancellable *cancellable, GAsyncReadyCallback callback,
                             gpointer user_data);
char *sy_worker_policy_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* As sy_store_actions() has them: GPtrArray of SyAction. @filter is copied. */
void sy_worker_actions_async (SyWorker *worker, const SyActionFilter *filter, GCancellable *cancellable,
                              GAsyncReadyCallback callback, gpointer user_data);
GPtrArray *sy_worker_actions_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* Topics: verifying, making the lists anew. Both are done for a record whose lists are damaged too, which answers nothing
   else. Verifying reads the file as it lies there, not what this program has read of it. */

/* @known_head: of a head kept elsewhere; NULL: none; copied. */
void sy_worker_verify_async (SyWorker *worker, const SyHash *known_head, GCancellable *cancellable,
                             SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                             gpointer user_data);
/* TRUE: it was carried out, whatever was found; clear @out with sy_verification_clear(). */
gboolean sy_worker_verify_finish (SyWorker *worker, GAsyncResult *result, SyVerification *out, GError **error);

/* Emits "changed" when it was done. */
void sy_worker_rebuild_async (SyWorker *worker, GCancellable *cancellable, SyWorkerProgress progress,
                              gpointer progress_data, GAsyncReadyCallback callback, gpointer user_data);
/* Clear @out with sy_rebuild_clear(). */
gboolean sy_worker_rebuild_finish (SyWorker *worker, GAsyncResult *result, SyRebuild *out, GError **error);

/* Topics: exchange, as sy-ledger-exchange.h has it */

/* @items: ids, NULL-terminated; NULL: everything. */
void sy_worker_export_async (SyWorker *worker, const char *const *items, GCancellable *cancellable,
                             SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                             gpointer user_data);
GBytes *sy_worker_export_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* The findings as a table. @filter is copied. */
void sy_worker_export_csv_async (SyWorker *worker, const SyTaskFilter *filter, GCancellable *cancellable,
                                 SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                                 gpointer user_data);
GBytes *sy_worker_export_csv_finish (SyWorker *worker, GAsyncResult *result, GError **error);

/* @request: copied; the clock is read on the worker, whatever it says. Emits "changed" when it was done. */
void sy_worker_import_async (SyWorker *worker, GBytes *bundle, const SyImportRequest *request, GCancellable *cancellable,
                             SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                             gpointer user_data);
/* Clear @out with sy_import_report_clear(). */
gboolean sy_worker_import_finish (SyWorker *worker, GAsyncResult *result, SyImportReport *out, GError **error);

void sy_worker_import_lifts_async (SyWorker *worker, GBytes *csv, const SyImportRequest *request, GCancellable *cancellable,
                                   SyWorkerProgress progress, gpointer progress_data, GAsyncReadyCallback callback,
                                   gpointer user_data);
/* TRUE also where cells are bad: nothing was recorded then. Clear @out with sy_lifts_report_clear(). */
gboolean sy_worker_import_lifts_finish (SyWorker *worker, GAsyncResult *result, SyLiftsReport *out, GError **error);

#endif
