/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#include <string.h>

/* The projection made anew from the journal, and held against what was there. */

/* How many differences are put into words (the contract of SyRebuild). */
#define DIFFERENCES_MAX 100

typedef struct
{
  SqliteStore *store;
  SyProgressFunc progress;
  gpointer user_data;
  guint64 of;
  GError *error;
} Projecting;

static gboolean
project_cb (const SyLine *line, gpointer user_data)
{
  Projecting *projecting = user_data;

  return sy_store_go_on (projecting->progress, line->number, projecting->of, projecting->user_data, &projecting->error)
         && sy_sqlite_project (projecting->store, line->event, line->number, &projecting->error);
}

gboolean
sy_sqlite_project_all (SqliteStore *self, SyProgressFunc progress, gpointer user_data, GError **error)
{
  Projecting projecting = { .store = self, .progress = progress, .user_data = user_data };
  SyHead head;
  gboolean done;

  sy_sqlite_forget_statements (self);
  done = sy_sqlite_run (self, sy_sqlite_schema_renewed, error) && sy_sqlite_prepare_all (self, error)
         && self->parent.backend->head (&self->parent, &head, error);
  if (done)
    {
      projecting.of = head.number;
      done = self->parent.backend->scan (&self->parent, 1, project_cb, &projecting, error);
    }
  sy_sqlite_forget_statements (self);
  if (projecting.error == NULL)
    return done;
  g_clear_error (error);
  g_propagate_error (error, projecting.error);
  return FALSE;
}

/* One table of the projection: how it is kept aside, by what its rows are told apart and how they are called. */
typedef struct
{
  const char *table, *key, *columns, *called; /* columns: NULL for all; called: SQL, of the row “x” */
} Part;

static const Part parts[] = {
  { "task", "id", NULL, "x.item_kind || ' “' || x.name || '”'" },
  { "task_search", "rowid", "rowid AS rowid_, words", "'words to search of item ' || x.rowid_" },
  { "action", "id", NULL, "'action “' || x.what || '”'" },
  { "entry", "number", NULL, "'line ' || x.number" },
};

/* What is there is copied; what cannot be read (it is gone, or altered) is kept as nothing, and all of it then differs. */
static gboolean
keep_aside (SqliteStore *self, const Part *part, GError **error)
{
  g_autofree char *drop = g_strdup_printf ("DROP TABLE IF EXISTS temp.old_%s", part->table);
  g_autofree char *copy = g_strdup_printf ("CREATE TEMP TABLE old_%s AS SELECT %s FROM main.%s", part->table,
                                           part->columns != NULL ? part->columns : "*", part->table);

  if (!sy_sqlite_run (self, drop, error))
    return FALSE;
  sqlite3_exec (self->db, copy, NULL, NULL, NULL);
  return TRUE;
}

/* The names of a table's columns; an empty array where there is no such table. */
static GPtrArray *
columns_of (SqliteStore *self, const char *schema, const char *table)
{
  GPtrArray *columns = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (sqlite3_prepare_v2 (self->db, "SELECT name FROM pragma_table_info (?1, ?2)", -1, &statement, NULL) != SQLITE_OK)
    return columns;
  sy_sqlite_bind_text (statement, 1, table);
  sy_sqlite_bind_text (statement, 2, schema);
  while (sqlite3_step (statement) == SQLITE_ROW)
    g_ptr_array_add (columns, g_strdup ((const char *) sqlite3_column_text (statement, 0)));
  return columns;
}

static gboolean
has_column (GPtrArray *columns, const char *name)
{
  return g_ptr_array_find_with_equal_func (columns, name, g_str_equal, NULL);
}

static void
add_difference (SyRebuild *out, char *words)
{
  out->n_different++;
  if (out->differences->len < DIFFERENCES_MAX)
    g_ptr_array_add (out->differences, words);
  else
    g_free (words);
}

static const char *
text_of (sqlite3_stmt *statement, int column)
{
  const char *text = (const char *) sqlite3_column_text (statement, column);

  return text != NULL ? text : "nothing";
}

static gboolean
same_value (sqlite3_stmt *statement, int a, int b)
{
  int size = sqlite3_column_bytes (statement, a);

  if (sqlite3_column_type (statement, a) != sqlite3_column_type (statement, b))
    return FALSE;
  if (sqlite3_column_type (statement, a) == SQLITE_NULL)
    return TRUE;
  if (sqlite3_column_type (statement, a) == SQLITE_FLOAT)
    {
      double left = sqlite3_column_double (statement, a), right = sqlite3_column_double (statement, b);

      return memcmp (&left, &right, sizeof left) == 0;
    }
  return sqlite3_column_bytes (statement, b) == size
         && (size == 0 || memcmp (sqlite3_column_blob (statement, a), sqlite3_column_blob (statement, b), (gsize) size) == 0);
}

/* A row of both: the columns of the new one, then those of the old one in the same order. */
static void
compare_row (sqlite3_stmt *statement, GPtrArray *names, SyRebuild *out)
{
  const int n = (int) names->len;
  GString *words = NULL;

  for (int i = 0; i < n; i++)
    {
      if (same_value (statement, 1 + i, 1 + n + i))
        continue;
      if (words == NULL)
        {
          words = g_string_new (text_of (statement, 0));
          g_string_append (words, ": ");
        }
      else
        g_string_append (words, "; ");
      g_string_append_printf (words, "%s: was %s, ", (const char *) names->pdata[i], text_of (statement, 1 + n + i));
      g_string_append_printf (words, "the journal says %s", text_of (statement, 1 + i));
    }
  if (words != NULL)
    add_difference (out, g_string_free (words, FALSE));
}

static char *
list_columns (GPtrArray *names, const char *of)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < names->len; i++)
    g_string_append_printf (out, ", %s.%s", of, (const char *) names->pdata[i]);
  return g_string_free (out, FALSE);
}

static gboolean
fail_prepare (SqliteStore *self, GError **error)
{
  return sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
}

/* Rows that both have. The cells of a column that one of the two has not are left to the count of columns. */
static gboolean
compare_rows (SqliteStore *self, const Part *part, GPtrArray *names, SyRebuild *out, GError **error)
{
  g_autofree char *new_columns = list_columns (names, "x"), *old_columns = list_columns (names, "o");
  const char *old_key = strcmp (part->key, "rowid") == 0 ? "rowid_" : part->key;
  g_autofree char *sql
    = g_strdup_printf ("SELECT %s%s%s FROM (SELECT %s FROM main.%s) x JOIN temp.old_%s o ON o.%s = x.%s", part->called,
                       new_columns, old_columns, part->columns != NULL ? part->columns : "*", part->table, part->table,
                       old_key, old_key);
  g_autoptr (sqlite3_stmt) statement = NULL;
  int status;

  if (sqlite3_prepare_v2 (self->db, sql, -1, &statement, NULL) != SQLITE_OK)
    return fail_prepare (self, error);
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    compare_row (statement, names, out);
  return status == SQLITE_DONE || fail_prepare (self, error);
}

/* Rows that only one of the two has. */
static gboolean
find_lone (SqliteStore *self, const Part *part, gboolean in_old, gboolean has_old, SyRebuild *out, GError **error)
{
  const char *key = strcmp (part->key, "rowid") == 0 ? "rowid_" : part->key;
  const char *columns = part->columns != NULL ? part->columns : "*";
  g_autofree char *new_rows = g_strdup_printf ("(SELECT %s FROM main.%s)", columns, part->table);
  g_autofree char *old_rows = has_old ? g_strdup_printf ("temp.old_%s", part->table)
                                      : g_strdup_printf ("(SELECT NULL AS %s WHERE 0)", key);
  g_autofree char *sql
    = g_strdup_printf ("SELECT %s FROM %s x WHERE x.%s NOT IN (SELECT %s FROM %s WHERE %s IS NOT NULL)", part->called,
                       in_old ? old_rows : new_rows, key, key, in_old ? new_rows : old_rows, key);
  g_autoptr (sqlite3_stmt) statement = NULL;
  int status;

  if (sqlite3_prepare_v2 (self->db, sql, -1, &statement, NULL) != SQLITE_OK)
    return fail_prepare (self, error);
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    add_difference (out, g_strdup_printf (in_old ? "%s: was listed, the journal has no such thing"
                                                 : "%s: was not listed, the journal has it",
                                          text_of (statement, 0)));
  return status == SQLITE_DONE || fail_prepare (self, error);
}

static gboolean
compare_part (SqliteStore *self, const Part *part, SyRebuild *out, GError **error)
{
  g_autofree char *old_name = g_strdup_printf ("old_%s", part->table);
  g_autoptr (GPtrArray) old_columns = columns_of (self, "temp", old_name);
  g_autoptr (GPtrArray) new_columns = columns_of (self, "main", part->table);
  g_autoptr (GPtrArray) both = g_ptr_array_new ();
  gboolean has_old;

  for (guint i = 0; i < new_columns->len; i++)
    {
      char *name = new_columns->pdata[i];

      if (has_column (old_columns, name))
        g_ptr_array_add (both, name);
      else
        add_difference (out, g_strdup_printf ("table “%s”: had no column “%s”", part->table, name));
    }
  /* Without a key or what a row is called by, nothing of it can be told from anything else. */
  has_old = old_columns->len > 0 && both->len == new_columns->len;
  return (!has_old || (compare_rows (self, part, both, out, error) && find_lone (self, part, TRUE, TRUE, out, error)))
         && find_lone (self, part, FALSE, has_old, out, error);
}

static gboolean
count (SqliteStore *self, const char *sql, guint64 *number, GError **error)
{
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (sqlite3_prepare_v2 (self->db, sql, -1, &statement, NULL) != SQLITE_OK || sqlite3_step (statement) != SQLITE_ROW)
    return fail_prepare (self, error);
  *number = (guint64) sqlite3_column_int64 (statement, 0);
  return TRUE;
}

/* What stands beside the journal's lines: indices, triggers. And whether the words to search can be found by what they are. */
static gboolean
compare_journal (SqliteStore *self, SyRebuild *out, GError **error)
{
  g_autoptr (GPtrArray) strange = g_ptr_array_new_with_free_func (g_free);
  SyAstray astray = { 0 };

  if (!sy_sqlite_find_strange (self, strange, TRUE, error))
    return FALSE;
  for (guint i = 0; i < strange->len; i++)
    add_difference (out, g_strdup_printf ("journal: %s", (char *) strange->pdata[i]));
  if (strange->len == 0
      && (!sy_sqlite_sum_table (self, &astray, error) || !sy_sqlite_astray (&self->parent, &astray, error)))
    return FALSE;
  if (astray.expected != NULL)
    add_difference (out, g_strdup_printf ("journal: expected %s, found %s", astray.expected, astray.found));
  g_free (astray.expected);
  g_free (astray.found);
  if (sqlite3_exec (self->db, "INSERT INTO task_search (task_search) VALUES ('integrity-check')", NULL, NULL, NULL) != SQLITE_OK
      && (sqlite3_errcode (self->db) & 0xff) == SQLITE_CORRUPT)
    add_difference (out, g_strdup ("words to search: the index was not that of the words"));
  return TRUE;
}

/* Inside the transaction. */
static gboolean
rebuild (SqliteStore *self, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error)
{
  if (!compare_journal (self, out, error))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (!keep_aside (self, &parts[i], error))
      return FALSE;
  if (!sy_sqlite_clear_way (self, error))
    return FALSE;
  if (!sy_sqlite_project_all (self, progress, user_data, error))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (!compare_part (self, &parts[i], out, error))
      return FALSE;
  return count (self, "SELECT count (*) FROM task", &out->items, error)
         && count (self, "SELECT count (*) FROM action", &out->actions, error)
         && count (self, "SELECT count (*) FROM entry", &out->lines, error);
}

static void
forget_old (SqliteStore *self)
{
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autofree char *drop = g_strdup_printf ("DROP TABLE IF EXISTS temp.old_%s", parts[i].table);

      sqlite3_exec (self->db, drop, NULL, NULL, NULL);
    }
}

gboolean
sy_sqlite_rebuild (SyStore *store, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  gboolean done;

  sy_sqlite_forget_statements (self);
  done = sy_sqlite_run (self, "BEGIN IMMEDIATE", error) && rebuild (self, progress, user_data, out, error)
         && sy_sqlite_run (self, "COMMIT", error);
  if (sqlite3_get_autocommit (self->db) == 0)
    sqlite3_exec (self->db, "ROLLBACK", NULL, NULL, NULL);
  forget_old (self);
  /* What is asked next; where even this fails, the store stays one of which only the journal can be read. */
  if (sy_sqlite_prepare_all (self, done ? error : NULL))
    store->bare = FALSE;
  else
    {
      sy_sqlite_prepare_journal (self, NULL);
      done = FALSE;
    }
  return done;
}
