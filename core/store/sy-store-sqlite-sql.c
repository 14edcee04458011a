/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#define SELECT_TASK "SELECT " SY_SQLITE_TASK_COLUMNS ", seat FROM task "
#define ACTION_COLUMNS \
  "id, item, item_kind, item_name, what, about, assigned, due, open, opened_by, opened_when, why, closed_by," \
  " closed_when, evidence, line"
/* The item is called as it is called now. */
#define SELECT_ACTION \
  "SELECT a.id, a.item, a.item_kind, ifnull (t.name, a.item_name), a.what, a.about, a.assigned, a.due, a.open," \
  " a.opened_by, a.opened_when, a.why, a.closed_by, a.closed_when, a.evidence, a.line" \
  " FROM action a LEFT JOIN task t ON t.id = a.item "

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
    "SELECT number, hash, event FROM journal WHERE item = ?1 AND (?2 = 0 OR kind = ?2) ORDER BY number",
  [SQL_SCAN_RAW] = "SELECT number, hash, kind, item, event FROM journal ORDER BY number",
  [SQL_LINE] = "SELECT event FROM journal WHERE number = ?1",
  [SQL_HASH] = "SELECT hash FROM journal WHERE number = ?1",
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
    " ?22, ?23, ?24, ?25, ?26, ?27, ?28, ?29, ?30, ?31, ?32, ?33, ?34, ?35, ?36, ?37, ?38, ?39, ?40, ?41, ?42,"
    " ?43, ?44, ?45, ?46, ?47, ?48, ?49, ?50, ?51, ?52, ?53, ?54, ?55, ?56)",
  [SQL_PUT_WORDS] = "INSERT OR REPLACE INTO task_search (rowid, words) VALUES (?1, ?2)",
  [SQL_TOUCH_TASK] = "UPDATE task SET line = ?2 WHERE id = ?1",
  [SQL_CHANGED_SINCE] = SELECT_TASK "WHERE line > ?1 ORDER BY line",
  [SQL_WORDS] = "SELECT rowid FROM task_search WHERE task_search MATCH ?1",
  [SQL_LISTS_END] =
    "SELECT max ((SELECT ifnull (max (line), 0) FROM task), (SELECT ifnull (max (number), 0) FROM entry),"
    " (SELECT ifnull (max (line), 0) FROM action))",
  [SQL_PUT_ENTRY] =
    "INSERT INTO entry (number, kind, item, item_kind, name, done_by, role, why, done_at, done_on, written_at,"
    " written_on, clock_set, revision, base, from_elsewhere, verdict, words) VALUES"
    " (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)",
  /* From one name to the next along the index. */
  [SQL_PEOPLE] =
    "WITH RECURSIVE person (name) AS (SELECT min (done_by) FROM entry UNION ALL"
    " SELECT (SELECT min (done_by) FROM entry WHERE done_by > person.name) FROM person WHERE name IS NOT NULL)"
    " SELECT name FROM person WHERE name IS NOT NULL",
  [SQL_AS_AT] =
    "SELECT number, kind, item, revision, base, done_by, done_at, from_elsewhere, written_on > ?1 FROM entry"
    " WHERE item <> '' OR kind = 9 ORDER BY number",
  [SQL_ALL_TASKS] = SELECT_TASK "ORDER BY seat",
  [SQL_DAYS] = "SELECT number, kind, written_on > ?1 FROM entry ORDER BY number",
  [SQL_ACTION_BY_ID] = SELECT_ACTION "WHERE a.id = ?1",
  [SQL_PUT_ACTION] =
    "INSERT INTO action (" ACTION_COLUMNS ", begun) VALUES"
    " (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?16)"
    " ON CONFLICT (id) DO UPDATE SET item_name = ?4, assigned = ?7, due = ?8, open = ?9, closed_by = ?13,"
    " closed_when = ?14, evidence = ?15, line = ?16",
  [SQL_ACTIONS] =
    SELECT_ACTION
    "WHERE (NOT ?1 OR a.open = 1) AND (?2 IS NULL OR a.item = ?2) AND (?3 IS NULL OR a.assigned = ?3)"
    " ORDER BY a.open DESC, a.due = '', a.due, a.begun",
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

static gboolean
prepare_some (SqliteStore *self, int first, int end, GError **error)
{
  for (int i = first; i < end; i++)
    {
      if (self->statements[i] != NULL || sy_sqlite_prepare (self, (Sql) i, &self->statements[i]))
        continue;
      if (sqlite3_errcode (self->db) == SQLITE_ERROR)
        return sy_sqlite_fail_corrupt (self->path, sqlite3_errmsg (self->db), error);
      return sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
    }
  return TRUE;
}

gboolean
sy_sqlite_prepare_journal (SqliteStore *self, GError **error)
{
  return prepare_some (self, 0, N_JOURNAL_SQL, error);
}

gboolean
sy_sqlite_prepare_all (SqliteStore *self, GError **error)
{
  return prepare_some (self, 0, N_SQL, error);
}

void
sy_sqlite_forget_statements (SqliteStore *self)
{
  for (int i = 0; i < N_SQL; i++)
    g_clear_pointer (&self->statements[i], sqlite3_finalize);
}
