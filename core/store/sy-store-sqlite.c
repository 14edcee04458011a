/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

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

gboolean
sy_sqlite_take_hash (sqlite3_stmt *statement, int column, SyHash *hash)
{
  if (sqlite3_column_bytes (statement, column) != SY_HASH_BYTES)
    return FALSE;
  memcpy (hash->bytes, sqlite3_column_blob (statement, column), SY_HASH_BYTES);
  return TRUE;
}

static GPtrArray *
fetch_tasks (SqliteStore *self, Use *use, GError **error)
{
  g_autoptr (GPtrArray) tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);
  int status;

  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    {
      SyTask *task = sy_sqlite_take_task (use);

      if (task == NULL)
        {
          sy_sqlite_fail_task (self, error);
          return NULL;
        }
      g_ptr_array_add (tasks, task);
    }
  if (status != SQLITE_DONE)
    {
      fail (self, SY_STORE_ERROR_OPEN, error);
      return NULL;
    }
  return g_steal_pointer (&tasks);
}

SyEvent *
sy_sqlite_take_event (SqliteStore *self, sqlite3_stmt *statement, int column, guint64 number, GError **error)
{
  g_autoptr (GError) reason = NULL;
  g_autoptr (GBytes) bytes = g_bytes_new (sqlite3_column_blob (statement, column),
                                          (gsize) sqlite3_column_bytes (statement, column));
  SyEvent *event = sy_event_decode (bytes, &reason);

  if (event == NULL)
    fail_line (self, number, reason->message, error);
  return event;
}

static SyEvent *
take_event (SqliteStore *self, sqlite3_stmt *statement, SyLine *line, GError **error)
{
  SyEvent *event;

  line->number = (guint64) sqlite3_column_int64 (statement, 0);
  event = sy_sqlite_take_event (self, statement, 2, line->number, error);
  line->event = event;
  if (event != NULL && !sy_sqlite_take_hash (statement, 1, &line->hash))
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
  return sy_sqlite_take_hash (use, 1, &head->hash)
         || fail_line (self, head->number, "its hash has the wrong length", error);
}

/* Everything between BEGIN and COMMIT. */
static gboolean
write_entries (SqliteStore *self, const SyHead *expected, GPtrArray *entries, SyProgressFunc progress,
               gpointer user_data, SyHead *end, GError **error)
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

      if (!sy_store_go_on (progress, i, entries->len, user_data, error))
        return FALSE;
      end->number++;
      sy_chain_next (&previous, end->number, entry->bytes, &end->hash);
      if (!insert_line (self, end, entry, error)
          || !sy_sqlite_project (self, entry->event, end->number, error))
        return FALSE;
    }
  return TRUE;
}

static void
sqlite_close (SyStore *store)
{
  SqliteStore *self = (SqliteStore *) store;

  sy_sqlite_forget_statements (self);
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
sqlite_append (SyStore *store, const SyHead *expected, GPtrArray *entries, SyProgressFunc progress,
               gpointer user_data, SyHead *head, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;

  if (!run (self, SQL_BEGIN, error))
    return FALSE;
  if (write_entries (self, expected, entries, progress, user_data, head, error) && run (self, SQL_COMMIT, error))
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

  if (!sy_sqlite_prepare (self, SQL_SCAN, &statement))
    return fail (self, SY_STORE_ERROR_OPEN, error);
  sqlite3_bind_int64 (statement, 1, (gint64) MIN (from, (guint64) G_MAXINT64));
  return show_lines (self, statement, func, user_data, error);
}

static gboolean
sqlite_scan_item (SyStore *store, const char *item, SyEventKind kind, SyScanFunc func,
                  gpointer user_data, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (!sy_sqlite_prepare (self, SQL_SCAN_ITEM, &statement))
    return fail (self, SY_STORE_ERROR_OPEN, error);
  sy_sqlite_bind_text (statement, 1, item);
  sqlite3_bind_int (statement, 2, (int) kind);
  return show_lines (self, statement, func, user_data, error);
}

static void
take_raw (sqlite3_stmt *statement, SyRawLine *line)
{
  *line = (SyRawLine) { .number = (guint64) sqlite3_column_int64 (statement, 0) };
  if (sqlite3_column_type (statement, 1) == SQLITE_BLOB)
    {
      line->hash = sqlite3_column_blob (statement, 1);
      line->hash_size = (gsize) sqlite3_column_bytes (statement, 1);
    }
  line->kind_is_number = sqlite3_column_type (statement, 2) == SQLITE_INTEGER;
  line->kind = sqlite3_column_int64 (statement, 2);
  if (sqlite3_column_type (statement, 3) == SQLITE_TEXT)
    {
      line->item = (const char *) sqlite3_column_text (statement, 3);
      line->item_size = (gsize) sqlite3_column_bytes (statement, 3);
    }
  if (sqlite3_column_type (statement, 4) == SQLITE_BLOB)
    {
      line->event = sqlite3_column_blob (statement, 4);
      line->event_size = (gsize) sqlite3_column_bytes (statement, 4);
    }
}

static gboolean
sqlite_scan_raw (SyStore *store, SyRawFunc func, gpointer user_data, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (Use) use = use_cached (self, SQL_SCAN_RAW);
  SyRawLine line;
  int status;

  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    {
      take_raw (use, &line);
      if (!func (&line, user_data))
        return TRUE;
    }
  return status == SQLITE_DONE || fail (self, SY_STORE_ERROR_OPEN, error);
}

static gboolean
sqlite_hold (SyStore *store, GError **error)
{
  return sy_sqlite_run ((SqliteStore *) store, "BEGIN", error);
}

static void
sqlite_release (SyStore *store)
{
  SqliteStore *self = (SqliteStore *) store;

  if (sqlite3_get_autocommit (self->db) == 0)
    sqlite3_exec (self->db, "COMMIT", NULL, NULL, NULL);
}

static gboolean
sqlite_lists_end (SyStore *store, guint64 *last)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (!sy_sqlite_prepare (self, SQL_LISTS_END, &statement) || sqlite3_step (statement) != SQLITE_ROW)
    return FALSE;
  *last = (guint64) MAX (sqlite3_column_int64 (statement, 0), 0);
  return TRUE;
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
  if (filter->item_kind != NULL)
    sy_sqlite_bind_text (use, 3, filter->item_kind);
  if (*words != '\0')
    {
      g_autofree char *match = write_match (words);

      sy_sqlite_bind_text (use, 4, match);
    }
  return fetch_tasks (self, use, error);
}

static GArray *
sqlite_search (SyStore *store, const char *words, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (Use) use = use_cached (self, SQL_WORDS);
  g_autoptr (GArray) seats = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autofree char *match = write_match (words);
  int status;

  sy_sqlite_bind_text (use, 1, match);
  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    {
      gint64 seat = sqlite3_column_int64 (use, 0);

      g_array_append_val (seats, seat);
    }
  if (status == SQLITE_DONE)
    return g_steal_pointer (&seats);
  fail (self, SY_STORE_ERROR_OPEN, error);
  return NULL;
}

static GPtrArray *
sqlite_changed_since (SyStore *store, guint64 number, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (Use) use = use_cached (self, SQL_CHANGED_SINCE);

  sqlite3_bind_int64 (use, 1, (gint64) MIN (number, (guint64) G_MAXINT64));
  return fetch_tasks (self, use, error);
}

/* Fails when items of more than one kind have the name. */
static gboolean
check_one_kind (SqliteStore *self, const char *name, GError **error)
{
  g_autoptr (Use) use = use_cached (self, SQL_KINDS_OF_NAME);
  const char *kind, *other;

  sy_sqlite_bind_text (use, 1, name);
  if (sqlite3_step (use) != SQLITE_ROW)
    return fail (self, SY_STORE_ERROR_OPEN, error);
  kind = (const char *) sqlite3_column_text (use, 0);
  other = (const char *) sqlite3_column_text (use, 1);
  return g_strcmp0 (kind, other) == 0 || sy_store_fail_ambiguous (error, name, kind, other);
}

static SyTask *
sqlite_find (SyStore *store, const char *id_or_name, const char *item_kind, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  SyTask *task = NULL;

  if (!sy_sqlite_fetch_task (self, SQL_TASK_BY_ID, id_or_name, NULL, &task, error))
    return NULL;
  if (task == NULL
      && ((item_kind == NULL && !check_one_kind (self, id_or_name, error))
          || !sy_sqlite_fetch_task (self, SQL_TASK_BY_NAME, id_or_name, item_kind, &task, error)))
    return NULL;
  if (task == NULL)
    sy_store_fail_not_found (error, id_or_name, item_kind);
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

static void
look_at_index (SqliteStore *self, dev_t *device, ino_t *inode)
{
  g_autofree char *index = g_strconcat (sqlite3_db_filename (self->db, "main"), "-shm", NULL);
  GStatBuf status;
  gboolean there = g_stat (index, &status) == 0;

  *device = there ? status.st_dev : 0;
  *inode = there ? status.st_ino : 0;
}

static gboolean
set_up (SqliteStore *self, GError **error)
{
  if (!sy_sqlite_upgrade (self, error)
      || !(self->parent.bare ? sy_sqlite_prepare_journal : sy_sqlite_prepare_all) (self, error))
    return FALSE;
  look_at_index (self, &self->index_device, &self->index_inode);
  return TRUE;
}

static void
let_go (SqliteStore *self)
{
  sy_sqlite_forget_statements (self);
  g_clear_pointer (&self->db, sqlite3_close);
}

/* Whether what was opened is no longer what stands under its name: what would be written goes where nobody finds it. */
static gboolean
was_replaced (SqliteStore *self)
{
  int moved = 0;

  return sqlite3_file_control (self->db, "main", SQLITE_FCNTL_HAS_MOVED, &moved) == SQLITE_OK && moved != 0;
}

/* POSIX drops a process's locks on a file as soon as anything in the process closes that file, and a file chooser
   that looks into the folder does so. The next program to finish then takes itself for the last one and deletes the
   log under this connection, which would go on in a file that nobody else sees. What it had written is in the
   record by then, so that it only has to begin anew, without writing its own idea of the log back. */
static gboolean
sqlite_renew (SyStore *store, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  dev_t device;
  ino_t inode;

  if (self->db != NULL && was_replaced (self))
    {
      g_autofree char *name = g_filename_display_name (self->path);

      g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_OPEN,
                   "No access to “%s”: another file stands in its place since it was opened, or it was removed. Close the program "
                   "and open the record again.", name);
      return FALSE;
    }
  if (self->db != NULL)
    {
      look_at_index (self, &device, &inode);
      if (device == self->index_device && inode == self->index_inode)
        return TRUE;
      sqlite3_db_config (self->db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
      let_go (self);
    }
  /* Opening would begin an empty one. */
  if (g_access (self->path, F_OK) != 0)
    {
      g_autofree char *name = g_filename_display_name (self->path);

      g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_OPEN, "No access to “%s”: it is gone.", name);
      return FALSE;
    }
  self->db = sy_sqlite_open (self->path, error);
  if (self->db != NULL && set_up (self, error))
    return TRUE;
  let_go (self);
  return FALSE;
}

SyStore *
sy_store_sqlite_open (const char *path, gboolean bare, GError **error)
{
  static const SyStoreBackend backend = {
    .close = sqlite_close,
    .renew = sqlite_renew,
    .head = sqlite_head,
    .append = sqlite_append,
    .scan = sqlite_scan,
    .scan_item = sqlite_scan_item,
    .list = sqlite_list,
    .changed_since = sqlite_changed_since,
    .find = sqlite_find,
    .policy = sqlite_policy,
    .search = sqlite_search,
    .scan_raw = sqlite_scan_raw,
    .lists_end = sqlite_lists_end,
    .hold = sqlite_hold,
    .release = sqlite_release,
    .astray = sy_sqlite_astray,
    .rebuild = sy_sqlite_rebuild,
    .journal = sy_sqlite_journal,
    .journal_count = sy_sqlite_journal_count,
    .journal_numbers = sy_sqlite_journal_numbers,
    .people = sy_sqlite_people,
    .actions = sy_sqlite_actions,
    .find_action = sy_sqlite_find_action,
    .as_at = sy_sqlite_as_at,
    .head_as_at = sy_sqlite_head_as_at,
  };
  sqlite3 *db = sy_sqlite_open (path, error);
  SqliteStore *self;

  if (db == NULL)
    return NULL;
  self = g_new0 (SqliteStore, 1);
  self->parent.backend = &backend;
  self->parent.bare = bare;
  self->db = db;
  self->path = g_strdup (path);
  if (!set_up (self, error))
    {
      sqlite_close (&self->parent);
      return NULL;
    }
  return &self->parent;
}
