/* SPDX-License-Identifier: MIT */
#ifndef SY_STORE_SQLITE_PRIVATE_H
#define SY_STORE_SQLITE_PRIVATE_H

#include <sqlite3.h>
#include <sys/types.h>

#include "sy-store-private.h"

/* Topics: the file, its statements, rows, the projection, making it anew, older formats */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3, sqlite3_close)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3_stmt, sqlite3_finalize)

/* "Stly": says in the file's header whose it is. */
#define SY_SQLITE_APPLICATION_ID 0x53746C79
#define SY_SQLITE_SCHEMA_VERSION 4

/* SQL that makes a record, and that which makes the projection of an older one anew, empty. */
extern const char sy_sqlite_schema[];
extern const char sy_sqlite_schema_renewed[];
/* The journal's indices and triggers alone. */
extern const char sy_sqlite_schema_guards[];

/**
 * sy_sqlite_open:
 * A connection to a record that is ours and of this edition or an older one, set up as the journal needs it; the
 * file is created when absent or empty.
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

typedef enum
{
  SQL_BEGIN,
  SQL_COMMIT,
  SQL_ROLLBACK,
  SQL_HEAD,
  SQL_INSERT_LINE,
  SQL_SCAN,
  SQL_SCAN_ITEM,
  SQL_SCAN_RAW,
  SQL_LINE,
  SQL_HASH,
  SQL_POLICY,
  N_JOURNAL_SQL, /* so far of the journal alone; the others need the projection */
  SQL_SEAT = N_JOURNAL_SQL,
  SQL_TASK_BY_ID,
  SQL_TASK_BY_NAME,
  SQL_KINDS_OF_NAME,
  SQL_PUT_TASK,
  SQL_PUT_WORDS,
  SQL_TOUCH_TASK,
  SQL_CHANGED_SINCE,
  SQL_WORDS,
  SQL_LISTS_END,
  SQL_PUT_ENTRY,
  SQL_PEOPLE,
  SQL_AS_AT,
  SQL_ALL_TASKS,
  SQL_DAYS,
  SQL_ACTION_BY_ID,
  SQL_PUT_ACTION,
  SQL_ACTIONS,
  SQL_LIST,
  SQL_SEARCH = SQL_LIST + 3, /* both: one for each SyTaskOrder */
  N_SQL = SQL_SEARCH + 3,
} Sql;

typedef struct
{
  SyStore parent;
  sqlite3 *db;
  char *path;
  dev_t index_device; /* the log's index, as this connection knows it; 0 when there was none */
  ino_t index_inode;
  sqlite3_stmt *statements[N_SQL]; /* prepared when the store is opened */
} SqliteStore;

/* A cached statement in use; at the end of the block it is ready for the next. */
typedef sqlite3_stmt Use;

static inline void
end_use (Use *use)
{
  sqlite3_reset (use);
  sqlite3_clear_bindings (use);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Use, end_use)

/* Prepared beforehand, so that a record of which a part is missing is found when it is opened: those of the journal, or
   all. */
gboolean sy_sqlite_prepare_journal (SqliteStore *self, GError **error);
gboolean sy_sqlite_prepare_all (SqliteStore *self, GError **error);
void sy_sqlite_forget_statements (SqliteStore *self);
/* A statement of its own, for what may be nested; finalize it. */
gboolean sy_sqlite_prepare (SqliteStore *self, Sql which, sqlite3_stmt **statement);

/* What a row of the table of tasks holds, in the order of sy_sqlite_take_task(); sy_sqlite_bind_task() binds
   seat, line and name_key before them. */
#define SY_SQLITE_TASK_COLUMNS \
  "id, name, place, method, units, verdict, index_value, index_unbounded, index_symbol, mass_kg," \
  " persons, lifts_per_day, rank_value, rank_unbounded, revision, clash, lineage, done_by, why," \
  " done_at, search_text, item_kind, valid_until, mass_with_allowance_kg, cg_x_mm, cg_y_mm, cg_z_mm," \
  " machine, storage, gear_kind, identity, wll_kg, due, withdrawn, condition, role, edition, policy, program," \
  " loosened, begun, signed_revision, signed_by, signed_role, signed_when, signed_own, open_actions, n_open," \
  " action_due, review_due, review_trigger, retired, told_revision"
/* How many these are; the seat stands behind them where a task is read. */
#define SY_SQLITE_N_TASK_COLUMNS 53

/* The task in the row that a statement stands on; NULL when it is none of ours. */
SyTask *sy_sqlite_take_task (sqlite3_stmt *statement);
/* @seat 0: a new one. */
void sy_sqlite_bind_task (sqlite3_stmt *statement, const SyTask *task, guint64 line, gint64 seat);
void sy_sqlite_bind_text (sqlite3_stmt *statement, int place, const char *text);
char *sy_sqlite_dup_text (sqlite3_stmt *statement, int column); /* NULL for NULL */

/* The lists of the journal's lines and of actions. */
gboolean sy_sqlite_put_entry (SqliteStore *self, const SyEvent *event, const char *verdict, guint64 line, GError **error);
gboolean sy_sqlite_project_action (SqliteStore *self, const SyEvent *event, guint64 line, GError **error);
GPtrArray *sy_sqlite_journal (SyStore *store, const SyJournalFilter *filter, guint64 before, guint limit, GError **error);
gboolean sy_sqlite_journal_count (SyStore *store, const SyJournalFilter *filter, guint64 *count, GError **error);
GArray *sy_sqlite_journal_numbers (SyStore *store, const SyJournalFilter *filter, GError **error);
char **sy_sqlite_people (SyStore *store, GError **error);
GPtrArray *sy_sqlite_actions (SyStore *store, const SyActionFilter *filter, GError **error);
SyAction *sy_sqlite_find_action (SyStore *store, const char *id, GError **error);

/* An earlier day. */
GPtrArray *sy_sqlite_as_at (SyStore *store, const char *day, SyProgressFunc progress, gpointer user_data, GError **error);
gboolean sy_sqlite_head_as_at (SyStore *store, const char *day, SyHead *head, GError **error);

/* The event in the row of a statement, its bytes in @column; NULL with the error. */
SyEvent *sy_sqlite_take_event (SqliteStore *self, sqlite3_stmt *statement, int column, guint64 number, GError **error);
gboolean sy_sqlite_take_hash (sqlite3_stmt *statement, int column, SyHash *hash);

/* Drops the projection, whatever is left of it, and makes it anew from the journal. Inside a transaction; afterwards no
   statement is prepared. @progress may be NULL. */
gboolean sy_sqlite_project_all (SqliteStore *self, SyProgressFunc progress, gpointer user_data, GError **error);
gboolean sy_sqlite_rebuild (SyStore *store, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error);

/* For a row that sy_sqlite_take_task() would not take; FALSE. */
gboolean sy_sqlite_fail_task (SqliteStore *self, GError **error);

/* The task that a statement finds by a key, with @item_kind as its second parameter where that is not NULL; *task
   stays NULL when it finds none. */
gboolean sy_sqlite_fetch_task (SqliteStore *self, Sql which, const char *key, const char *item_kind,
                               SyTask **task, GError **error);

/* What a line of the journal does to the list of current tasks. */
gboolean sy_sqlite_project (SqliteStore *self, const SyEvent *event, guint64 line, GError **error);

/**
 * sy_sqlite_upgrade:
 * A record of an older format is copied beside itself and its projection made anew from the journal, in one
 * transaction; one of this format is left alone. No statement is prepared before or after.
 */
gboolean sy_sqlite_upgrade (SqliteStore *self, GError **error);

/* As SyStoreBackend has it. */
gboolean sy_sqlite_astray (SyStore *store, SyAstray *out, GError **error);
/* The sums that it is given, from the table. */
gboolean sy_sqlite_sum_table (SqliteStore *self, SyAstray *sums, GError **error);
/* Adds, of char *, in words, what belongs to the journal and is not as a new record has it. */
gboolean sy_sqlite_find_strange (SqliteStore *self, GPtrArray *strange, gboolean also_missing, GError **error);
/* Drops what is in the way of the projection and makes the journal's indices and triggers anew. In a transaction, with no
   statement prepared. */
gboolean sy_sqlite_clear_way (SqliteStore *self, GError **error);

/* SQL that returns nothing, in a transaction that the caller holds. */
gboolean sy_sqlite_run (SqliteStore *self, const char *sql, GError **error);

#endif
