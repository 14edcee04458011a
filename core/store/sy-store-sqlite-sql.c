/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#define SELECT_TASK "SELECT " SY_SQLITE_TASK_COLUMNS " FROM task "

/* A rank that is none is NULL, which comes last. */
#define BY_RANK \
  " ORDER BY rank_unbounded DESC, rank_value DESC," \
  " rank_unbounded = 0 AND rank_value IS NULL AND verdict = 'do-not-lift' DESC, name_key, id LIMIT ?2"
#define BY_NAME " ORDER BY name_key, id LIMIT ?2"
#define BY_RECENT " ORDER BY line DESC LIMIT ?2"
#define LIST SELECT_TASK "WHERE (?1 IS NULL OR verdict = ?1) AND (?3 IS NULL OR item_kind = ?3)"
#define SEARCH \
  LIST " AND seat IN (SELECT rowid FROM task_search WHERE task_search MATCH ?4)"

static const char *const sql[N_SQL] = {
  [SQL_BEGIN] = "BEGIN IMMEDIATE",
  [SQL_COMMIT] = "COMMIT",
  [SQL_ROLLBACK] = "ROLLBACK",
  [SQL_HEAD] = "SELECT number, hash FROM journal ORDER BY number DESC LIMIT 1",
  [SQL_INSERT_LINE] =
    "INSERT INTO journal (number, hash, kind, item, event) VALUES (?1, ?2, ?3, ?4, ?5)",
  [SQL_SCAN] = "SELECT number, hash, event FROM journal WHERE number >= ?1 ORDER BY number",
  [SQL_SCAN_ITEM] =
    "SELECT number, hash, event FROM journal WHERE item = ?1 AND kind = ?2 ORDER BY number",
  [SQL_POLICY] =
    "SELECT number, hash, event FROM journal WHERE kind = 1 ORDER BY number DESC LIMIT 1",
  [SQL_SEAT] = "SELECT seat FROM task WHERE id = ?1",
  [SQL_TASK_BY_ID] = SELECT_TASK "WHERE id = ?1",
  [SQL_TASK_BY_NAME] =
    SELECT_TASK "WHERE name = ?1 AND (?2 IS NULL OR item_kind = ?2) ORDER BY seat LIMIT 1",
  [SQL_KINDS_OF_NAME] = "SELECT min (item_kind), max (item_kind) FROM task WHERE name = ?1",
  [SQL_PUT_TASK] =
    "INSERT OR REPLACE INTO task (seat, line, name_key, " SY_SQLITE_TASK_COLUMNS ") VALUES"
    " (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21,"
    " ?22, ?23, ?24, ?25, ?26, ?27, ?28, ?29, ?30, ?31, ?32, ?33, ?34, ?35, ?36, ?37)",
  [SQL_PUT_WORDS] = "INSERT OR REPLACE INTO task_search (rowid, words) VALUES (?1, ?2)",
  [SQL_TOUCH_TASK] = "UPDATE task SET line = ?2 WHERE id = ?1",
  [SQL_CHANGED_SINCE] = SELECT_TASK "WHERE line > ?1 ORDER BY line",
  [SQL_LIST + SY_ORDER_RANK] = LIST BY_RANK,
  [SQL_LIST + SY_ORDER_NAME] = LIST BY_NAME,
  [SQL_LIST + SY_ORDER_RECENT] = LIST BY_RECENT,
  [SQL_SEARCH + SY_ORDER_RANK] = SEARCH BY_RANK,
  [SQL_SEARCH + SY_ORDER_NAME] = SEARCH BY_NAME,
  [SQL_SEARCH + SY_ORDER_RECENT] = SEARCH BY_RECENT,
};

gboolean
sy_sqlite_prepare (SqliteStore *self, Sql which, sqlite3_stmt **statement)
{
  return sqlite3_prepare_v3 (self->db, sql[which], -1, SQLITE_PREPARE_PERSISTENT, statement, NULL)
         == SQLITE_OK;
}

gboolean
sy_sqlite_prepare_all (SqliteStore *self, GError **error)
{
  for (int i = 0; i < N_SQL; i++)
    {
      if (sy_sqlite_prepare (self, (Sql) i, &self->statements[i]))
        continue;
      if (sqlite3_errcode (self->db) == SQLITE_ERROR)
        return sy_sqlite_fail_corrupt (self->path, sqlite3_errmsg (self->db), error);
      return sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
    }
  return TRUE;
}

void
sy_sqlite_forget_statements (SqliteStore *self)
{
  for (int i = 0; i < N_SQL; i++)
    g_clear_pointer (&self->statements[i], sqlite3_finalize);
}
