/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-store-sqlite-private.h"

/* Whether what answers for the journal is what this program made: its table, what watches over that, and the indices, which lead
   to its lines. Each line can hold, and an index that leaves one out still hides it from whoever asks for an item's lines. */

#define JOURNAL_PARTS "SELECT type, name, sql FROM main.sqlite_schema WHERE tbl_name = 'journal' COLLATE NOCASE ORDER BY name"

static const char *
text_at (sqlite3_stmt *statement, int column)
{
  const char *text = (const char *) sqlite3_column_text (statement, column);

  return text != NULL ? text : "";
}

static gboolean
fail (SqliteStore *self, GError **error)
{
  return sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
}

/* "trigger “journal_keep”" → its SQL, of the journal of @db; NULL when it cannot be asked. */
static GHashTable *
parts_of (sqlite3 *db)
{
  g_autoptr (GHashTable) parts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (sqlite3_stmt) statement = NULL;
  int status;

  if (sqlite3_prepare_v2 (db, JOURNAL_PARTS, -1, &statement, NULL) != SQLITE_OK)
    return NULL;
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    g_hash_table_insert (parts, g_strdup_printf ("%s “%s”", text_at (statement, 0), text_at (statement, 1)),
                         g_strdup (text_at (statement, 2)));
  return status == SQLITE_DONE ? g_steal_pointer (&parts) : NULL;
}

/* As a new record has them. */
static GHashTable *
parts_made (void)
{
  g_autoptr (sqlite3) db = NULL;

  if (sqlite3_open_v2 (":memory:", &db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL) != SQLITE_OK
      || sqlite3_exec (db, sy_sqlite_schema, NULL, NULL, NULL) != SQLITE_OK)
    return NULL;
  return parts_of (db);
}

gboolean
sy_sqlite_find_strange (SqliteStore *self, GPtrArray *strange, gboolean also_missing, GError **error)
{
  g_autoptr (GHashTable) there = parts_of (self->db);
  g_autoptr (GHashTable) made = parts_made ();
  GHashTableIter iter;
  gpointer name, sql;

  if (there == NULL || made == NULL)
    return fail (self, error);
  g_hash_table_iter_init (&iter, there);
  while (g_hash_table_iter_next (&iter, &name, &sql))
    if (g_strcmp0 (g_hash_table_lookup (made, name), sql) != 0)
      g_ptr_array_add (strange, g_strdup_printf (g_hash_table_contains (made, name) ? "%s is another one"
                                                                                   : "%s, which no edition made",
                                                 (const char *) name));
  g_hash_table_iter_init (&iter, made);
  while (also_missing && g_hash_table_iter_next (&iter, &name, NULL))
    if (!g_hash_table_contains (there, name))
      g_ptr_array_add (strange, g_strdup_printf ("%s is missing", (const char *) name));
  return TRUE;
}

typedef struct
{
  const char *index, *sql, *in_table; /* item and number by the index; of which lines, SQL */
} Path;

static const Path by_item
  = { "journal_item", "SELECT item, number FROM journal INDEXED BY journal_item ORDER BY item, number", "1" };
static const Path by_policy
  = { "journal_policy", "SELECT '', number FROM journal INDEXED BY journal_policy WHERE kind = 1 ORDER BY number", "kind = 1" };

/* The sum over the rows of a statement; @ordered: FALSE where they do not come in the order in which they are asked. */
static gboolean
sum_rows (SqliteStore *self, sqlite3_stmt *statement, guint64 seed, guint64 *sum, gboolean *ordered, GError **error)
{
  g_autoptr (GString) last = g_string_new (NULL);
  gint64 last_number = 0;
  int status;

  *sum = 0;
  *ordered = TRUE;
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    {
      const char *item = text_at (statement, 0);
      const gint64 number = sqlite3_column_int64 (statement, 1);
      const int order = strcmp (last->str, item);

      if (order > 0 || (order == 0 && last_number >= number))
        *ordered = FALSE;
      if (order != 0)
        g_string_assign (last, item);
      last_number = number;
      *sum += sy_store_mix (seed, item, (gsize) sqlite3_column_bytes (statement, 0), (guint64) number);
    }
  return status == SQLITE_DONE || fail (self, error);
}

/* The first line that the index does not lead to, 0 for none. */
static guint64
find_hidden (SqliteStore *self, const Path *path)
{
  g_autofree char *sql
    = g_strdup_printf ("SELECT ifnull (min (number), 0) FROM journal NOT INDEXED WHERE %s AND number NOT IN "
                       "(SELECT number FROM (%s))", path->in_table, path->sql);
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (sqlite3_prepare_v2 (self->db, sql, -1, &statement, NULL) != SQLITE_OK || sqlite3_step (statement) != SQLITE_ROW)
    return 0;
  return (guint64) sqlite3_column_int64 (statement, 0);
}

/* An index that is not there misleads nobody: the table itself is asked then. */
static gboolean
check_path (SqliteStore *self, const Path *path, guint64 there, SyAstray *out, GError **error)
{
  g_autoptr (sqlite3_stmt) statement = NULL;
  guint64 led_to;
  gboolean ordered;

  if (sqlite3_prepare_v2 (self->db, path->sql, -1, &statement, NULL) != SQLITE_OK)
    return sqlite3_errcode (self->db) == SQLITE_ERROR || fail (self, error);
  if (!sum_rows (self, statement, out->seed, &led_to, &ordered, error))
    return FALSE;
  if (there == led_to && ordered)
    return TRUE;
  out->line = find_hidden (self, path);
  out->expected = g_strdup_printf ("the index “%s” to lead to every line, in order", path->index);
  out->found = out->line > 0 ? g_strdup_printf ("none to line %" G_GUINT64_FORMAT, out->line)
                             : g_strdup ("one that leads elsewhere");
  return TRUE;
}

gboolean
sy_sqlite_sum_table (SqliteStore *self, SyAstray *sums, GError **error)
{
  g_autoptr (sqlite3_stmt) statement = NULL;
  int status;

  *sums = (SyAstray) { .seed = (guint64) g_random_int () << 32 | g_random_int () };
  if (sqlite3_prepare_v2 (self->db, "SELECT item, number, kind FROM journal NOT INDEXED ORDER BY number", -1, &statement, NULL)
      != SQLITE_OK)
    return fail (self, error);
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    {
      const guint64 number = (guint64) sqlite3_column_int64 (statement, 1);

      sums->lines_sum
        += sy_store_mix (sums->seed, text_at (statement, 0), (gsize) sqlite3_column_bytes (statement, 0), number);
      if (sqlite3_column_int64 (statement, 2) == SY_EVENT_POLICY)
        sums->policies_sum += sy_store_mix (sums->seed, "", 0, number);
    }
  return status == SQLITE_DONE || fail (self, error);
}

gboolean
sy_sqlite_astray (SyStore *store, SyAstray *out, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (GPtrArray) strange = g_ptr_array_new_with_free_func (g_free);

  if (!sy_sqlite_find_strange (self, strange, FALSE, error))
    return FALSE;
  if (strange->len > 0)
    {
      out->expected = g_strdup ("the parts of the journal as they were made");
      out->found = g_strdup (strange->pdata[0]);
      return TRUE;
    }
  return check_path (self, &by_item, out->lines_sum, out, error)
         && (out->expected != NULL || check_path (self, &by_policy, out->policies_sum, out, error));
}

/* Whether what is called so is in the way of the projection or of the journal's own parts. */
#define IN_THE_WAY \
  "SELECT type, name FROM main.sqlite_schema WHERE" \
  " (type = 'trigger' AND tbl_name COLLATE NOCASE IN ('journal', 'task', 'action', 'entry'))" \
  " OR (type = 'view' AND name COLLATE NOCASE IN ('task', 'task_search', 'action', 'entry'))" \
  " OR (type = 'index' AND sql IS NOT NULL AND (tbl_name = 'journal' COLLATE NOCASE OR name COLLATE NOCASE IN" \
  "     ('task_name', 'task_line', 'action_item', 'action_line', 'action_open', 'entry_item', 'entry_person'," \
  "      'entry_deed', 'entry_day')))"

gboolean
sy_sqlite_clear_way (SqliteStore *self, GError **error)
{
  g_autoptr (GPtrArray) drops = g_ptr_array_new_with_free_func (sqlite3_free);
  g_autoptr (sqlite3_stmt) statement = NULL;
  int status;

  if (sqlite3_prepare_v2 (self->db, IN_THE_WAY, -1, &statement, NULL) != SQLITE_OK)
    return fail (self, error);
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    g_ptr_array_add (drops, sqlite3_mprintf ("DROP %s \"%w\"", text_at (statement, 0), text_at (statement, 1)));
  if (status != SQLITE_DONE)
    return fail (self, error);
  sqlite3_reset (statement);
  for (guint i = 0; i < drops->len; i++)
    if (!sy_sqlite_run (self, drops->pdata[i], error))
      return FALSE;
  return sy_sqlite_run (self, sy_sqlite_schema_guards, error);
}
