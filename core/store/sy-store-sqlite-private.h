/* SPDX-License-Identifier: MIT */
#ifndef SY_STORE_SQLITE_PRIVATE_H
#define SY_STORE_SQLITE_PRIVATE_H

#include <sqlite3.h>

#include "sy-store-private.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3, sqlite3_close)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3_stmt, sqlite3_finalize)

/**
 * sy_sqlite_open:
 * A connection to a record that is ours and of this edition, set up as the journal needs it; the file is
 * created when absent or empty.
 * Return value: NULL with the error set, and a file that was there before as it was, to the last byte.
 */
sqlite3 *sy_sqlite_open (const char *path, GError **error);

/**
 * sy_sqlite_fail:
 * Puts the connection's last error into words.
 * Parameters:   code  for everything but damage, which is always CORRUPT.
 * Return value: FALSE, so that it can end a function.
 */
gboolean sy_sqlite_fail (sqlite3 *db, const char *path, SyStoreError code, GError **error);
gboolean sy_sqlite_fail_corrupt (const char *path, const char *what, GError **error);

/* What a row of the table of tasks holds, in the order of sy_sqlite_take_task(); sy_sqlite_bind_task() binds
   seat, line and name_key before them. */
#define SY_SQLITE_TASK_COLUMNS \
  "id, name, place, method, units, verdict, index_value, index_unbounded, index_symbol, mass_kg," \
  " persons, lifts_per_day, rank_value, rank_unbounded, revision, clash, lineage, done_by, why," \
  " done_at, search_text"

/* The task in the row that a statement stands on; NULL when it is none of ours. */
SyTask *sy_sqlite_take_task (sqlite3_stmt *statement);
/* @seat 0: a new one. */
void sy_sqlite_bind_task (sqlite3_stmt *statement, const SyTask *task, guint64 line, gint64 seat);
void sy_sqlite_bind_text (sqlite3_stmt *statement, int place, const char *text);

#endif
