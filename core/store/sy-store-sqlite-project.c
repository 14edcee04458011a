/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

/* The list of current tasks, kept in step with the journal. */

static gboolean
fail (SqliteStore *self, SyStoreError code, GError **error)
{
  return sy_sqlite_fail (self->db, self->path, code, error);
}

gboolean
sy_sqlite_fail_task (SqliteStore *self, GError **error)
{
  return sy_sqlite_fail_corrupt (self->path, "a task has a verdict that does not exist", error);
}

gboolean
sy_sqlite_fetch_task (SqliteStore *self, Sql which, const char *key, const char *item_kind,
                      SyTask **task, GError **error)
{
  g_autoptr (Use) use = self->statements[which];
  int status;

  sy_sqlite_bind_text (use, 1, key);
  if (item_kind != NULL)
    sy_sqlite_bind_text (use, 2, item_kind);
  status = sqlite3_step (use);
  if (status == SQLITE_DONE)
    return TRUE;
  if (status != SQLITE_ROW)
    return fail (self, SY_STORE_ERROR_OPEN, error);
  *task = sy_sqlite_take_task (use);
  return *task != NULL || sy_sqlite_fail_task (self, error);
}

/* The seat of a task in the list, 0 for a new one. */
static gboolean
find_seat (SqliteStore *self, const char *id, gint64 *seat, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_SEAT];
  int status;

  sy_sqlite_bind_text (use, 1, id);
  status = sqlite3_step (use);
  *seat = status == SQLITE_ROW ? sqlite3_column_int64 (use, 0) : 0;
  return status == SQLITE_ROW || status == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

static gboolean
put_task (SqliteStore *self, const SyTask *task, guint64 line, gint64 *seat, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_PUT_TASK];

  sy_sqlite_bind_task (use, task, line, *seat);
  if (sqlite3_step (use) != SQLITE_DONE)
    return fail (self, SY_STORE_ERROR_WRITE, error);
  *seat = sqlite3_last_insert_rowid (self->db);
  return TRUE;
}

static gboolean
put_words (SqliteStore *self, const SyTask *task, gint64 seat, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_PUT_WORDS];
  g_autofree char *words = sy_store_fold (task->search_text);

  sqlite3_bind_int64 (use, 1, seat);
  sy_sqlite_bind_text (use, 2, words);
  return sqlite3_step (use) == SQLITE_DONE || fail (self, SY_STORE_ERROR_WRITE, error);
}

static gboolean
put_state (SqliteStore *self, const SyTask *task, guint64 line, GError **error)
{
  gint64 seat;

  return find_seat (self, task->id, &seat, error) && put_task (self, task, line, &seat, error)
         && put_words (self, task, seat, error);
}

static gboolean
project_revision (SqliteStore *self, const SyEvent *event, guint64 line, GError **error)
{
  g_autoptr (SyTask) task = NULL;

  if (!sy_sqlite_fetch_task (self, SQL_TASK_BY_ID, event->item, NULL, &task, error))
    return FALSE;
  task = sy_task_apply (g_steal_pointer (&task), event);
  return put_state (self, task, line, error) && sy_sqlite_put_entry (self, event, sy_verdict_id (task->verdict), line, error);
}

/* What is done about an item that is not there is a line of the journal, and changes nothing else. */
static gboolean
project_deed (SqliteStore *self, const SyEvent *event, guint64 line, GError **error)
{
  g_autoptr (SyTask) task = NULL;

  if (!sy_sqlite_fetch_task (self, SQL_TASK_BY_ID, event->item, NULL, &task, error))
    return FALSE;
  if (task != NULL)
    {
      task = sy_task_apply (g_steal_pointer (&task), event);
      if (!put_state (self, task, line, error))
        return FALSE;
    }
  return (event->kind != SY_EVENT_ACTION || sy_sqlite_project_action (self, event, line, error))
         && sy_sqlite_put_entry (self, event, "", line, error);
}

/* A file that belongs to an item is a touch of it, and changes nothing else. */
static gboolean
touch (SqliteStore *self, const SyEvent *event, guint64 line, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_TOUCH_TASK];

  sy_sqlite_bind_text (use, 1, event->item);
  sqlite3_bind_int64 (use, 2, (gint64) line);
  if (sqlite3_step (use) != SQLITE_DONE)
    return fail (self, SY_STORE_ERROR_WRITE, error);
  return sy_sqlite_put_entry (self, event, "", line, error);
}

gboolean
sy_sqlite_project (SqliteStore *self, const SyEvent *event, guint64 line, GError **error)
{
  switch (event->kind)
    {
    case SY_EVENT_POLICY:
    case SY_EVENT_IMPORT:
      return sy_sqlite_put_entry (self, event, "", line, error);
    case SY_EVENT_REVISION:
      return project_revision (self, event, line, error);
    case SY_EVENT_ATTACHMENT:
      return touch (self, event, line, error);
    case SY_EVENT_SIGNATURE:
    case SY_EVENT_ACTION:
    case SY_EVENT_REVIEW:
    case SY_EVENT_RETIREMENT:
    case SY_EVENT_TOLD:
    case SY_EVENT_IMPROVEMENT:
      return project_deed (self, event, line, error);
    }
  g_assert_not_reached ();
}
