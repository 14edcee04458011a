/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

/* The list of the journal's lines, and that of actions. */

static gboolean
fail (SqliteStore *self, SyStoreError code, GError **error)
{
  return sy_sqlite_fail (self->db, self->path, code, error);
}

/* Topics: lines */

gboolean
sy_sqlite_put_entry (SqliteStore *self, const SyEvent *event, const char *verdict, guint64 line, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_PUT_ENTRY];
  g_autofree char *done_on = sy_store_utc_day (event->claimed);
  g_autofree char *written_on = sy_store_utc_day (event->written);
  g_autofree char *words = sy_store_line_words (event);

  sqlite3_bind_int64 (use, 1, (gint64) line);
  sqlite3_bind_int (use, 2, (int) event->kind);
  sy_sqlite_bind_text (use, 3, event->item);
  sy_sqlite_bind_text (use, 4, event->item_kind);
  sy_sqlite_bind_text (use, 5, event->name);
  sy_sqlite_bind_text (use, 6, event->by);
  sy_sqlite_bind_text (use, 7, event->role);
  sy_sqlite_bind_text (use, 8, event->why);
  sy_sqlite_bind_text (use, 9, event->claimed);
  sy_sqlite_bind_text (use, 10, done_on);
  sy_sqlite_bind_text (use, 11, event->written);
  sy_sqlite_bind_text (use, 12, written_on);
  sqlite3_bind_int (use, 13, event->clock_set ? 1 : 0);
  sqlite3_bind_int64 (use, 14, event->revision);
  sqlite3_bind_int64 (use, 15, event->base);
  sqlite3_bind_int (use, 16, *event->origin != '\0' ? 1 : 0);
  sy_sqlite_bind_text (use, 17, verdict);
  sy_sqlite_bind_text (use, 18, words);
  return sqlite3_step (use) == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

static SyJournalRow *
take_row (sqlite3_stmt *statement)
{
  SyJournalRow *row = g_new0 (SyJournalRow, 1);

  row->number = (guint64) sqlite3_column_int64 (statement, 0);
  row->kind = (SyEventKind) sqlite3_column_int (statement, 1);
  row->item = sy_sqlite_dup_text (statement, 2);
  row->item_kind = sy_sqlite_dup_text (statement, 3);
  row->name = sy_sqlite_dup_text (statement, 4);
  row->by = sy_sqlite_dup_text (statement, 5);
  row->role = sy_sqlite_dup_text (statement, 6);
  row->why = sy_sqlite_dup_text (statement, 7);
  row->when = sy_sqlite_dup_text (statement, 8);
  row->written = sy_sqlite_dup_text (statement, 9);
  row->clock_set = sqlite3_column_int (statement, 10) != 0;
  row->revision = sqlite3_column_int64 (statement, 11);
  row->verdict = sy_sqlite_dup_text (statement, 12);
  row->words = sy_sqlite_dup_text (statement, 13);
  return row;
}

/* Only what is asked is in the statement, so that an index can answer it. Values are bound, never written. */
static gboolean
ask (SqliteStore *self, const char *what, const SyJournalFilter *filter, guint64 before, guint limit,
     sqlite3_stmt **statement, GError **error)
{
  GString *sql = g_string_new (what);

  g_string_append (sql, before > 0 ? " WHERE e.number < ?1" : " WHERE 1");
  if (filter->by != NULL)
    g_string_append (sql, " AND e.done_by = ?2");
  if (filter->from != NULL)
    g_string_append (sql, " AND e.done_on >= ?3");
  if (filter->to != NULL)
    g_string_append (sql, " AND e.done_on <= ?4");
  if (filter->kind != 0)
    g_string_append (sql, filter->kind == SY_EVENT_REVISION ? " AND e.kind = 2" : " AND e.kind = ?5 AND e.kind <> 2");
  if (filter->item != NULL)
    g_string_append (sql, " AND e.item = ?6");
  if (limit > 0)
    g_string_append (sql, " ORDER BY e.number DESC LIMIT ?7");
  if (sqlite3_prepare_v2 (self->db, sql->str, -1, statement, NULL) != SQLITE_OK)
    {
      g_string_free (sql, TRUE);
      return fail (self, SY_STORE_ERROR_OPEN, error);
    }
  g_string_free (sql, TRUE);
  /* What the statement has no place for is refused by SQLite, and is not asked. */
  sqlite3_bind_int64 (*statement, 1, (gint64) MIN (before, (guint64) G_MAXINT64));
  if (filter->by != NULL)
    sy_sqlite_bind_text (*statement, 2, filter->by);
  if (filter->from != NULL)
    sy_sqlite_bind_text (*statement, 3, filter->from);
  if (filter->to != NULL)
    sy_sqlite_bind_text (*statement, 4, filter->to);
  if (filter->kind != 0)
    sqlite3_bind_int (*statement, 5, (int) filter->kind);
  if (filter->item != NULL)
    sy_sqlite_bind_text (*statement, 6, filter->item);
  sqlite3_bind_int64 (*statement, 7, limit);
  return TRUE;
}

GPtrArray *
sy_sqlite_journal (SyStore *store, const SyJournalFilter *filter, guint64 before, guint limit, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_journal_row_free);
  g_autoptr (sqlite3_stmt) statement = NULL;
  int status;

  if (!ask (self,
            "SELECT e.number, e.kind, e.item, e.item_kind, ifnull (t.name, e.name), e.done_by, e.role, e.why, e.done_at,"
            " e.written_at, e.clock_set, e.revision, e.verdict, e.words FROM entry e LEFT JOIN task t ON t.id = e.item",
            filter, before, limit > 0 ? limit : G_MAXUINT, &statement, error))
    return NULL;
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    g_ptr_array_add (rows, take_row (statement));
  if (status == SQLITE_DONE)
    return g_steal_pointer (&rows);
  fail (self, SY_STORE_ERROR_OPEN, error);
  return NULL;
}

gboolean
sy_sqlite_journal_count (SyStore *store, const SyJournalFilter *filter, guint64 *count, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (!ask (self, "SELECT count (*) FROM entry e", filter, 0, 0, &statement, error))
    return FALSE;
  if (sqlite3_step (statement) != SQLITE_ROW)
    return fail (self, SY_STORE_ERROR_OPEN, error);
  *count = (guint64) sqlite3_column_int64 (statement, 0);
  return TRUE;
}

GArray *
sy_sqlite_journal_numbers (SyStore *store, const SyJournalFilter *filter, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint64));
  g_autoptr (sqlite3_stmt) statement = NULL;
  int status;

  if (!ask (self, "SELECT e.number FROM entry e", filter, 0, G_MAXUINT, &statement, error))
    return NULL;
  while ((status = sqlite3_step (statement)) == SQLITE_ROW)
    {
      const guint64 number = (guint64) sqlite3_column_int64 (statement, 0);

      g_array_append_val (numbers, number);
    }
  if (status == SQLITE_DONE)
    return g_steal_pointer (&numbers);
  fail (self, SY_STORE_ERROR_OPEN, error);
  return NULL;
}

char **
sy_sqlite_people (SyStore *store, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (Use) use = self->statements[SQL_PEOPLE];
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  int status;

  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    g_strv_builder_add (names, (const char *) sqlite3_column_text (use, 0));
  if (status == SQLITE_DONE)
    return g_strv_builder_end (names);
  fail (self, SY_STORE_ERROR_OPEN, error);
  return NULL;
}

/* Topics: actions */

static SyAction *
take_action (sqlite3_stmt *statement)
{
  SyAction *action = g_new0 (SyAction, 1);

  action->id = sy_sqlite_dup_text (statement, 0);
  action->item = sy_sqlite_dup_text (statement, 1);
  action->item_kind = sy_sqlite_dup_text (statement, 2);
  action->item_name = sy_sqlite_dup_text (statement, 3);
  action->what = sy_sqlite_dup_text (statement, 4);
  action->about = sy_sqlite_dup_text (statement, 5);
  action->assigned = sy_sqlite_dup_text (statement, 6);
  action->due = sy_sqlite_dup_text (statement, 7);
  action->open = sqlite3_column_int (statement, 8) != 0;
  action->opened_by = sy_sqlite_dup_text (statement, 9);
  action->opened_when = sy_sqlite_dup_text (statement, 10);
  action->why = sy_sqlite_dup_text (statement, 11);
  action->closed_by = sy_sqlite_dup_text (statement, 12);
  action->closed_when = sy_sqlite_dup_text (statement, 13);
  action->evidence = sy_sqlite_dup_text (statement, 14);
  action->line = (guint64) sqlite3_column_int64 (statement, 15);
  return action;
}

static gboolean
fetch_action (SqliteStore *self, const char *id, SyAction **action, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_ACTION_BY_ID];
  int status;

  sy_sqlite_bind_text (use, 1, id);
  status = sqlite3_step (use);
  if (status == SQLITE_ROW)
    *action = take_action (use);
  return status == SQLITE_ROW || status == SQLITE_DONE || fail (self, SY_STORE_ERROR_OPEN, error);
}

static gboolean
put_action (SqliteStore *self, const SyAction *action, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_PUT_ACTION];

  sy_sqlite_bind_text (use, 1, action->id);
  sy_sqlite_bind_text (use, 2, action->item);
  sy_sqlite_bind_text (use, 3, action->item_kind);
  sy_sqlite_bind_text (use, 4, action->item_name);
  sy_sqlite_bind_text (use, 5, action->what);
  sy_sqlite_bind_text (use, 6, action->about);
  sy_sqlite_bind_text (use, 7, action->assigned);
  sy_sqlite_bind_text (use, 8, action->due);
  sqlite3_bind_int (use, 9, action->open ? 1 : 0);
  sy_sqlite_bind_text (use, 10, action->opened_by);
  sy_sqlite_bind_text (use, 11, action->opened_when);
  sy_sqlite_bind_text (use, 12, action->why);
  sy_sqlite_bind_text (use, 13, action->closed_by);
  sy_sqlite_bind_text (use, 14, action->closed_when);
  sy_sqlite_bind_text (use, 15, action->evidence);
  sqlite3_bind_int64 (use, 16, (gint64) action->line);
  return sqlite3_step (use) == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

gboolean
sy_sqlite_project_action (SqliteStore *self, const SyEvent *event, guint64 line, GError **error)
{
  g_autoptr (SyAction) action = NULL;
  SyDeed deed;
  gboolean done;

  if (!sy_deed_read (event, &deed))
    return TRUE;
  done = fetch_action (self, deed.action, &action, error);
  sy_deed_clear (&deed);
  if (!done)
    return FALSE;
  action = sy_action_apply (g_steal_pointer (&action), event, line);
  return action == NULL || put_action (self, action, error);
}

GPtrArray *
sy_sqlite_actions (SyStore *store, const SyActionFilter *filter, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (GPtrArray) actions = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_action_free);
  g_autoptr (Use) use = self->statements[SQL_ACTIONS];
  int status;

  sqlite3_bind_int (use, 1, filter->open ? 1 : 0);
  if (filter->item != NULL)
    sy_sqlite_bind_text (use, 2, filter->item);
  if (filter->assigned != NULL)
    sy_sqlite_bind_text (use, 3, filter->assigned);
  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    g_ptr_array_add (actions, take_action (use));
  if (status == SQLITE_DONE)
    return g_steal_pointer (&actions);
  fail (self, SY_STORE_ERROR_OPEN, error);
  return NULL;
}

SyAction *
sy_sqlite_find_action (SyStore *store, const char *id, GError **error)
{
  SyAction *action = NULL;

  if (fetch_action ((SqliteStore *) store, id, &action, error) && action == NULL)
    sy_store_fail_no_action (error, id);
  return action;
}
