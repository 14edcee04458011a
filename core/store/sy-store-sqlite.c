/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#include <string.h>

typedef enum
{
  SQL_BEGIN,
  SQL_COMMIT,
  SQL_ROLLBACK,
  SQL_HEAD,
  SQL_INSERT_LINE,
  SQL_SCAN,
  SQL_SCAN_ITEM,
  SQL_POLICY,
  SQL_SEAT,
  SQL_TASK_BY_ID,
  SQL_TASK_BY_NAME,
  SQL_PUT_TASK,
  SQL_PUT_WORDS,
  SQL_CHANGED_SINCE,
  SQL_LIST,
  SQL_SEARCH = SQL_LIST + 3, /* both: one for each SyTaskOrder */
  N_SQL = SQL_SEARCH + 3,
} Sql;

#define SELECT_TASK "SELECT " SY_SQLITE_TASK_COLUMNS " FROM task "

/* A rank that is none is NULL, which comes last. */
#define BY_RANK " ORDER BY rank_unbounded DESC, rank_value DESC, name_key, id LIMIT ?2"
#define BY_NAME " ORDER BY name_key, id LIMIT ?2"
#define BY_RECENT " ORDER BY line DESC LIMIT ?2"
#define LIST SELECT_TASK "WHERE (?1 IS NULL OR verdict = ?1)"
#define SEARCH \
  LIST " AND seat IN (SELECT rowid FROM task_search WHERE task_search MATCH ?3)"

static const char *const sql[N_SQL] = {
  [SQL_BEGIN] = "BEGIN IMMEDIATE",
  [SQL_COMMIT] = "COMMIT",
  [SQL_ROLLBACK] = "ROLLBACK",
  [SQL_HEAD] = "SELECT number, hash FROM journal ORDER BY number DESC LIMIT 1",
  [SQL_INSERT_LINE] =
    "INSERT INTO journal (number, hash, kind, item, event) VALUES (?1, ?2, ?3, ?4, ?5)",
  [SQL_SCAN] = "SELECT number, hash, event FROM journal WHERE number >= ?1 ORDER BY number",
  [SQL_SCAN_ITEM] =
    "SELECT number, hash, event FROM journal WHERE item = ?1 AND kind = 2 ORDER BY number",
  [SQL_POLICY] =
    "SELECT number, hash, event FROM journal WHERE kind = 1 ORDER BY number DESC LIMIT 1",
  [SQL_SEAT] = "SELECT seat FROM task WHERE id = ?1",
  [SQL_TASK_BY_ID] = SELECT_TASK "WHERE id = ?1",
  [SQL_TASK_BY_NAME] = SELECT_TASK "WHERE name = ?1 ORDER BY seat LIMIT 1",
  [SQL_PUT_TASK] =
    "INSERT OR REPLACE INTO task (seat, line, name_key, " SY_SQLITE_TASK_COLUMNS ") VALUES"
    " (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21,"
    " ?22, ?23, ?24)",
  [SQL_PUT_WORDS] = "INSERT OR REPLACE INTO task_search (rowid, words) VALUES (?1, ?2)",
  [SQL_CHANGED_SINCE] = SELECT_TASK "WHERE line > ?1 ORDER BY line",
  [SQL_LIST + SY_ORDER_RANK] = LIST BY_RANK,
  [SQL_LIST + SY_ORDER_NAME] = LIST BY_NAME,
  [SQL_LIST + SY_ORDER_RECENT] = LIST BY_RECENT,
  [SQL_SEARCH + SY_ORDER_RANK] = SEARCH BY_RANK,
  [SQL_SEARCH + SY_ORDER_NAME] = SEARCH BY_NAME,
  [SQL_SEARCH + SY_ORDER_RECENT] = SEARCH BY_RECENT,
};

typedef struct
{
  SyStore parent;
  sqlite3 *db;
  char *path;
  sqlite3_stmt *statements[N_SQL]; /* prepared when the store is opened */
} SqliteStore;

/* A cached statement in use; at the end of the block it is ready for the next. */
typedef sqlite3_stmt Use;

static void
end_use (Use *use)
{
  sqlite3_reset (use);
  sqlite3_clear_bindings (use);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Use, end_use)

static gboolean
fail (SqliteStore *self, SyStoreError code, GError **error)
{
  return sy_sqlite_fail (self->db, self->path, code, error);
}

static gboolean
fail_line (SqliteStore *self, guint64 number, const char *what, GError **error)
{
  g_autofree char *text
    = g_strdup_printf ("line %" G_GUINT64_FORMAT " of its journal cannot be read (%s)", number, what);

  return sy_sqlite_fail_corrupt (self->path, text, error);
}

static gboolean
prepare (SqliteStore *self, Sql which, sqlite3_stmt **statement)
{
  return sqlite3_prepare_v3 (self->db, sql[which], -1, SQLITE_PREPARE_PERSISTENT, statement, NULL)
         == SQLITE_OK;
}

/* Prepared beforehand, so that a record of which a part is missing is found when it is opened. */
static gboolean
prepare_all (SqliteStore *self, GError **error)
{
  for (int i = 0; i < N_SQL; i++)
    {
      if (prepare (self, (Sql) i, &self->statements[i]))
        continue;
      if (sqlite3_errcode (self->db) == SQLITE_ERROR)
        return sy_sqlite_fail_corrupt (self->path, sqlite3_errmsg (self->db), error);
      return fail (self, SY_STORE_ERROR_OPEN, error);
    }
  return TRUE;
}

static Use *
use_cached (SqliteStore *self, Sql which)
{
  return self->statements[which];
}

static gboolean
run (SqliteStore *self, Sql which, GError **error)
{
  g_autoptr (Use) use = use_cached (self, which);

  return sqlite3_step (use) == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

static gboolean
take_hash (sqlite3_stmt *statement, int column, SyHash *hash)
{
  if (sqlite3_column_bytes (statement, column) != SY_HASH_BYTES)
    return FALSE;
  memcpy (hash->bytes, sqlite3_column_blob (statement, column), SY_HASH_BYTES);
  return TRUE;
}

static SyTask *
read_task (SqliteStore *self, sqlite3_stmt *statement, GError **error)
{
  SyTask *task = sy_sqlite_take_task (statement);

  if (task == NULL)
    sy_sqlite_fail_corrupt (self->path, "a task has a verdict that does not exist", error);
  return task;
}

/* The task that a statement finds; *task stays NULL when it finds none. */
static gboolean
fetch_task (SqliteStore *self, Sql which, const char *key, SyTask **task, GError **error)
{
  g_autoptr (Use) use = use_cached (self, which);
  int status;

  sy_sqlite_bind_text (use, 1, key);
  status = sqlite3_step (use);
  if (status == SQLITE_ROW)
    *task = read_task (self, use, error);
  else if (status != SQLITE_DONE)
    return fail (self, SY_STORE_ERROR_OPEN, error);
  return status == SQLITE_DONE || *task != NULL;
}

static GPtrArray *
fetch_tasks (SqliteStore *self, Use *use, GError **error)
{
  g_autoptr (GPtrArray) tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);
  int status;

  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    {
      SyTask *task = read_task (self, use, error);

      if (task == NULL)
        return NULL;
      g_ptr_array_add (tasks, task);
    }
  if (status != SQLITE_DONE)
    {
      fail (self, SY_STORE_ERROR_OPEN, error);
      return NULL;
    }
  return g_steal_pointer (&tasks);
}

static SyEvent *
take_event (SqliteStore *self, sqlite3_stmt *statement, SyLine *line, GError **error)
{
  g_autoptr (GError) reason = NULL;
  g_autoptr (GBytes) bytes = g_bytes_new (sqlite3_column_blob (statement, 2),
                                          (gsize) sqlite3_column_bytes (statement, 2));
  SyEvent *event = sy_event_decode (bytes, &reason);

  line->number = (guint64) sqlite3_column_int64 (statement, 0);
  line->event = event;
  if (event == NULL)
    fail_line (self, line->number, reason->message, error);
  else if (!take_hash (statement, 1, &line->hash))
    {
      fail_line (self, line->number, "its hash has the wrong length", error);
      g_clear_pointer (&event, sy_event_free);
    }
  return event;
}

static gboolean
show_lines (SqliteStore *self, sqlite3_stmt *statement, SyScanFunc func, gpointer user_data,
            GError **error)
{
  int status;

  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    {
      SyLine line;
      g_autoptr (SyEvent) event = take_event (self, statement, &line, error);

      if (event == NULL)
        return FALSE;
      if (!func (&line, user_data))
        return TRUE;
    }
  return status == SQLITE_DONE || fail (self, SY_STORE_ERROR_OPEN, error);
}

/* The seat of a task in the list, 0 for a new one. */
static gboolean
find_seat (SqliteStore *self, const char *id, gint64 *seat, GError **error)
{
  g_autoptr (Use) use = use_cached (self, SQL_SEAT);
  int status;

  sy_sqlite_bind_text (use, 1, id);
  status = sqlite3_step (use);
  *seat = status == SQLITE_ROW ? sqlite3_column_int64 (use, 0) : 0;
  return status == SQLITE_ROW || status == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

static gboolean
put_task (SqliteStore *self, const SyTask *task, guint64 line, gint64 *seat, GError **error)
{
  g_autoptr (Use) use = use_cached (self, SQL_PUT_TASK);

  sy_sqlite_bind_task (use, task, line, *seat);
  if (sqlite3_step (use) != SQLITE_DONE)
    return fail (self, SY_STORE_ERROR_WRITE, error);
  *seat = sqlite3_last_insert_rowid (self->db);
  return TRUE;
}

static gboolean
put_words (SqliteStore *self, const SyTask *task, gint64 seat, GError **error)
{
  g_autoptr (Use) use = use_cached (self, SQL_PUT_WORDS);
  g_autofree char *words = sy_store_fold (task->search_text);

  sqlite3_bind_int64 (use, 1, seat);
  sy_sqlite_bind_text (use, 2, words);
  return sqlite3_step (use) == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

static gboolean
project (SqliteStore *self, const SyEvent *event, guint64 line, GError **error)
{
  g_autoptr (SyTask) task = NULL;
  gint64 seat;

  if (!fetch_task (self, SQL_TASK_BY_ID, event->item, &task, error))
    return FALSE;
  task = sy_task_apply (g_steal_pointer (&task), event);
  return find_seat (self, task->id, &seat, error) && put_task (self, task, line, &seat, error)
         && put_words (self, task, seat, error);
}

static gboolean
insert_line (SqliteStore *self, const SyHead *line, const SyEntry *entry, GError **error)
{
  g_autoptr (Use) use = use_cached (self, SQL_INSERT_LINE);
  gsize size;
  gconstpointer data = g_bytes_get_data (entry->bytes, &size);

  sqlite3_bind_int64 (use, 1, (gint64) line->number);
  sqlite3_bind_blob (use, 2, line->hash.bytes, SY_HASH_BYTES, SQLITE_STATIC);
  sqlite3_bind_int (use, 3, (int) entry->event->kind);
  sqlite3_bind_text (use, 4, entry->event->item, -1, SQLITE_STATIC);
  sqlite3_bind_blob64 (use, 5, data, size, SQLITE_STATIC);
  return sqlite3_step (use) == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

static gboolean
read_head (SqliteStore *self, SyHead *head, GError **error)
{
  g_autoptr (Use) use = use_cached (self, SQL_HEAD);
  int status = sqlite3_step (use);

  memset (head, 0, sizeof *head);
  if (status == SQLITE_DONE)
    return TRUE;
  if (status != SQLITE_ROW)
    return fail (self, SY_STORE_ERROR_OPEN, error);
  head->number = (guint64) sqlite3_column_int64 (use, 0);
  return take_hash (use, 1, &head->hash)
         || fail_line (self, head->number, "its hash has the wrong length", error);
}

/* Everything between BEGIN and COMMIT. */
static gboolean
write_entries (SqliteStore *self, const SyHead *expected, GPtrArray *entries, SyHead *end,
               GError **error)
{
  if (!read_head (self, end, error))
    return FALSE;
  if (!sy_head_equal (expected, end))
    {
      g_autofree char *name = g_filename_display_name (self->path);

      return sy_store_fail_stale (error, name, end);
    }
  for (guint i = 0; i < entries->len; i++)
    {
      const SyEntry *entry = g_ptr_array_index (entries, i);
      SyHash previous = end->hash;

      end->number++;
      sy_chain_next (&previous, end->number, entry->bytes, &end->hash);
      if (!insert_line (self, end, entry, error)
          || (entry->event->kind == SY_EVENT_REVISION
              && !project (self, entry->event, end->number, error)))
        return FALSE;
    }
  return TRUE;
}

static void
sqlite_close (SyStore *store)
{
  SqliteStore *self = (SqliteStore *) store;

  for (int i = 0; i < N_SQL; i++)
    sqlite3_finalize (self->statements[i]);
  sqlite3_close (self->db);
  g_free (self->path);
  g_free (self);
}

static gboolean
sqlite_head (SyStore *store, SyHead *head, GError **error)
{
  SyHead end;

  if (!read_head ((SqliteStore *) store, &end, error))
    return FALSE;
  *head = end;
  return TRUE;
}

static gboolean
sqlite_append (SyStore *store, const SyHead *expected, GPtrArray *entries, SyHead *head,
               GError **error)
{
  SqliteStore *self = (SqliteStore *) store;

  if (!run (self, SQL_BEGIN, error))
    return FALSE;
  if (write_entries (self, expected, entries, head, error) && run (self, SQL_COMMIT, error))
    return TRUE;
  /* Some errors have already undone everything: ROLLBACK then has nothing to do and says so. */
  if (sqlite3_get_autocommit (self->db) == 0)
    run (self, SQL_ROLLBACK, NULL);
  return FALSE;
}

/* Scans have a statement of their own: their callbacks may scan again. */
static gboolean
sqlite_scan (SyStore *store, guint64 from, SyScanFunc func, gpointer user_data, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (!prepare (self, SQL_SCAN, &statement))
    return fail (self, SY_STORE_ERROR_OPEN, error);
  sqlite3_bind_int64 (statement, 1, (gint64) MIN (from, (guint64) G_MAXINT64));
  return show_lines (self, statement, func, user_data, error);
}

static gboolean
sqlite_scan_item (SyStore *store, const char *item, SyScanFunc func, gpointer user_data,
                  GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (!prepare (self, SQL_SCAN_ITEM, &statement))
    return fail (self, SY_STORE_ERROR_OPEN, error);
  sy_sqlite_bind_text (statement, 1, item);
  return show_lines (self, statement, func, user_data, error);
}

/* Words have neither quotes nor signs in them, and in quotes AND and NEAR are words too. */
static char *
write_match (const char *words)
{
  g_auto (GStrv) each = g_strsplit (words, " ", -1);
  GString *out = g_string_new (NULL);

  for (char **word = each; *word != NULL; word++)
    if (**word != '\0')
      g_string_append_printf (out, "%s\"%s\"*", out->len > 0 ? " AND " : "", *word);
  return g_string_free (out, FALSE);
}

static GPtrArray *
sqlite_list (SyStore *store, const SyTaskFilter *filter, const char *words, guint limit,
             GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  int first = *words != '\0' ? SQL_SEARCH : SQL_LIST;
  g_autoptr (Use) use = use_cached (self, (Sql) (first + (int) filter->order));

  if (filter->by_verdict)
    sy_sqlite_bind_text (use, 1, sy_verdict_id (filter->verdict));
  sqlite3_bind_int64 (use, 2, limit > 0 ? (gint64) limit : -1);
  if (*words != '\0')
    {
      g_autofree char *match = write_match (words);

      sy_sqlite_bind_text (use, 3, match);
    }
  return fetch_tasks (self, use, error);
}

static GPtrArray *
sqlite_changed_since (SyStore *store, guint64 number, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (Use) use = use_cached (self, SQL_CHANGED_SINCE);

  sqlite3_bind_int64 (use, 1, (gint64) MIN (number, (guint64) G_MAXINT64));
  return fetch_tasks (self, use, error);
}

static SyTask *
sqlite_find (SyStore *store, const char *id_or_name, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  SyTask *task = NULL;

  if (!fetch_task (self, SQL_TASK_BY_ID, id_or_name, &task, error)
      || (task == NULL && !fetch_task (self, SQL_TASK_BY_NAME, id_or_name, &task, error)))
    return NULL;
  if (task == NULL)
    sy_store_fail_not_found (error, id_or_name);
  return task;
}

static gboolean
keep_facts_cb (const SyLine *line, gpointer user_data)
{
  char **facts = user_data;

  *facts = g_strdup (line->event->facts);
  return FALSE;
}

static char *
sqlite_policy (SyStore *store, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (Use) use = use_cached (self, SQL_POLICY);
  char *facts = NULL;

  show_lines (self, use, keep_facts_cb, &facts, error);
  return facts;
}

SyStore *
sy_store_sqlite_open (const char *path, GError **error)
{
  static const SyStoreBackend backend = {
    .close = sqlite_close,
    .head = sqlite_head,
    .append = sqlite_append,
    .scan = sqlite_scan,
    .scan_item = sqlite_scan_item,
    .list = sqlite_list,
    .changed_since = sqlite_changed_since,
    .find = sqlite_find,
    .policy = sqlite_policy,
  };
  sqlite3 *db = sy_sqlite_open (path, error);
  SqliteStore *self;

  if (db == NULL)
    return NULL;
  self = g_new0 (SqliteStore, 1);
  self->parent.backend = &backend;
  self->db = db;
  self->path = g_strdup (path);
  if (!prepare_all (self, error))
    {
      sqlite_close (&self->parent);
      return NULL;
    }
  return &self->parent;
}
