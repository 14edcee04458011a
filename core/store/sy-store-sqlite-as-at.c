/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#include <string.h>

/* The record at the end of an earlier day. Items of which no line is later are as they are now. Of the others, only what the
   list of lines says of the revisions before the last one matters; so only the last is read whole. */

/* One line that counts. */
typedef struct
{
  guint64 number;
  SyEventKind kind;
  guint item; /* place among the items */
  gint64 revision, base;
  char *by, *when;
  gboolean from_elsewhere;
} Step;

typedef struct
{
  GArray *steps;      /* of Step                                  */
  GPtrArray *ids;     /* of char *                                */
  GArray *last;       /* of guint64: each item's last revision    */
  GHashTable *later;  /* ids of items that have later lines, own  */
  SyPastImport import;
  GHashTable *places; /* id → place + 1; borrows the ids          */
} Past;

static void
step_clear (gpointer data)
{
  Step *step = data;

  g_free (step->by);
  g_free (step->when);
}

static void
past_clear (Past *past)
{
  g_hash_table_unref (past->places);
  g_hash_table_unref (past->later);
  g_ptr_array_unref (past->ids);
  g_array_unref (past->last);
  g_array_unref (past->steps);
}

/* Place of the item, which its first revision begins; FALSE when there is none yet. */
static gboolean
find_place (Past *past, const char *id, SyEventKind kind, guint *place)
{
  gpointer found = g_hash_table_lookup (past->places, id);
  const guint64 none = 0;
  char *own;

  if (found == NULL && kind != SY_EVENT_REVISION)
    return FALSE;
  if (found == NULL)
    {
      own = g_strdup (id);
      g_ptr_array_add (past->ids, own);
      g_array_append_val (past->last, none);
      found = GUINT_TO_POINTER (past->ids->len);
      g_hash_table_insert (past->places, own, found);
    }
  *place = GPOINTER_TO_UINT (found) - 1;
  return TRUE;
}

static void
take_step (Past *past, sqlite3_stmt *statement, SyEventKind kind)
{
  Step step = { .number = (guint64) sqlite3_column_int64 (statement, 0), .kind = kind };

  if (!find_place (past, (const char *) sqlite3_column_text (statement, 2), kind, &step.item))
    return;
  step.revision = sqlite3_column_int64 (statement, 3);
  step.base = sqlite3_column_int64 (statement, 4);
  step.by = g_strdup ((const char *) sqlite3_column_text (statement, 5));
  step.when = g_strdup ((const char *) sqlite3_column_text (statement, 6));
  step.from_elsewhere = sqlite3_column_int (statement, 7) != 0;
  if (kind == SY_EVENT_REVISION)
    g_array_index (past->last, guint64, step.item) = step.number;
  g_array_append_val (past->steps, step);
}

static SyEvent *
read_line (SqliteStore *self, guint64 number, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_LINE];

  sqlite3_bind_int64 (use, 1, (gint64) number);
  if (sqlite3_step (use) != SQLITE_ROW)
    {
      sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
      return NULL;
    }
  return sy_sqlite_take_event (self, use, 0, number, error);
}

/* What was taken over came into the record with it, whenever it was written. */
static gboolean
take_import (SqliteStore *self, SyPastImport *import, guint64 number, gboolean is_later, GError **error)
{
  g_autoptr (SyEvent) event = read_line (self, number, error);

  if (event != NULL)
    sy_past_import_take (import, number, sy_store_lines_taken_over (event), !is_later);
  return event != NULL;
}

static gboolean
take_row (SqliteStore *self, Past *past, sqlite3_stmt *statement, GError **error)
{
  guint64 number = (guint64) sqlite3_column_int64 (statement, 0);
  SyEventKind kind = (SyEventKind) sqlite3_column_int (statement, 1);
  gboolean is_later = sqlite3_column_int (statement, 8) != 0;

  if (kind == SY_EVENT_IMPORT)
    return take_import (self, &past->import, number, is_later, error);
  if (kind == SY_EVENT_ATTACHMENT) /* changes nothing */
    return TRUE;
  if (!sy_past_import_counts (&past->import, number, !is_later))
    g_hash_table_add (past->later, g_strdup ((const char *) sqlite3_column_text (statement, 2)));
  else
    take_step (past, statement, kind);
  return TRUE;
}

static gboolean
read_past (SqliteStore *self, const char *day, Past *past, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_AS_AT];
  int status;

  sy_sqlite_bind_text (use, 1, day);
  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    if (!take_row (self, past, use, error))
      return FALSE;
  return status == SQLITE_DONE || sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
}

/* Those of which no line is later. */
static gboolean
take_current (SqliteStore *self, Past *past, GPtrArray *tasks, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_ALL_TASKS];
  int status;

  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    {
      const char *id = (const char *) sqlite3_column_text (use, 0);
      gpointer place = g_hash_table_lookup (past->places, id);
      SyTask *task;

      if (place == NULL || g_hash_table_contains (past->later, id))
        continue;
      task = sy_sqlite_take_task (use);
      if (task == NULL)
        return sy_sqlite_fail_task (self, error);
      sy_task_free (tasks->pdata[GPOINTER_TO_UINT (place) - 1]);
      tasks->pdata[GPOINTER_TO_UINT (place) - 1] = task;
    }
  return status == SQLITE_DONE || sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
}

/* An earlier revision: by whom and from what it was made. What it found is written over by the last. */
static SyEvent *
sketch (const Past *past, const Step *step)
{
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);

  sy_event_set (&event->item, g_ptr_array_index (past->ids, step->item));
  event->revision = step->revision;
  event->base = step->base;
  sy_event_set (&event->by, step->by);
  sy_event_set (&event->claimed, step->when);
  sy_event_set (&event->origin, step->from_elsewhere ? "elsewhere" : "");
  return event;
}

static gboolean
fold_step (SqliteStore *self, Past *past, const Step *step, GPtrArray *tasks, GError **error)
{
  gboolean earlier
    = step->kind == SY_EVENT_REVISION && step->number != g_array_index (past->last, guint64, step->item);
  g_autoptr (SyEvent) event = NULL;
  SyTask **task = (SyTask **) &tasks->pdata[step->item];

  if (!g_hash_table_contains (past->later, g_ptr_array_index (past->ids, step->item)))
    return TRUE;
  event = earlier ? sketch (past, step) : read_line (self, step->number, error);
  if (event == NULL)
    return FALSE;
  *task = sy_task_apply (*task, event);
  return TRUE;
}

/* In the order in which they were begun. */
static GPtrArray *
gather (GPtrArray *by_place)
{
  GPtrArray *tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);

  for (guint i = 0; i < by_place->len; i++)
    if (by_place->pdata[i] != NULL)
      {
        SyTask *task = g_steal_pointer (&by_place->pdata[i]);

        g_ptr_array_add (tasks, task);
        task->seat = tasks->len;
      }
  return tasks;
}

static void
free_task (gpointer task)
{
  if (task != NULL)
    sy_task_free (task);
}

GPtrArray *
sy_sqlite_as_at (SyStore *store, const char *day, SyProgressFunc progress, gpointer user_data, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  g_autoptr (GPtrArray) by_place = g_ptr_array_new_with_free_func (free_task);
  Past past = {
    .steps = g_array_new (FALSE, FALSE, sizeof (Step)),
    .ids = g_ptr_array_new_with_free_func (g_free),
    .last = g_array_new (FALSE, FALSE, sizeof (guint64)),
    .places = g_hash_table_new (g_str_hash, g_str_equal),
    .later = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL),
  };
  gboolean done;

  g_array_set_clear_func (past.steps, step_clear);
  done = read_past (self, day, &past, error);
  g_ptr_array_set_size (by_place, (int) past.ids->len);
  done = done && take_current (self, &past, by_place, error);
  for (guint i = 0; done && i < past.steps->len; i++)
    {
      if (!sy_store_go_on (progress, i, past.steps->len, user_data, error))
        done = FALSE;
      else
        done = fold_step (self, &past, &g_array_index (past.steps, Step, i), by_place, error);
    }
  past_clear (&past);
  return done ? gather (by_place) : NULL;
}

/* The last line that counts, 0 for none. */
static gboolean
find_end (SqliteStore *self, const char *day, guint64 *end, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_DAYS];
  SyPastImport import = { 0 };
  int status;

  sy_sqlite_bind_text (use, 1, day);
  while ((status = sqlite3_step (use)) == SQLITE_ROW)
    {
      const guint64 number = (guint64) sqlite3_column_int64 (use, 0);
      const gboolean is_later = sqlite3_column_int (use, 2) != 0;

      if (sqlite3_column_int (use, 1) == SY_EVENT_IMPORT && !take_import (self, &import, number, is_later, error))
        return FALSE;
      if (sy_past_import_counts (&import, number, !is_later))
        *end = number;
    }
  return status == SQLITE_DONE || sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
}

static gboolean
read_hash (SqliteStore *self, guint64 number, SyHash *hash, GError **error)
{
  g_autoptr (Use) use = self->statements[SQL_HASH];

  sqlite3_bind_int64 (use, 1, (gint64) number);
  if (sqlite3_step (use) != SQLITE_ROW)
    return sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
  return sy_sqlite_take_hash (use, 0, hash)
         || sy_sqlite_fail_corrupt (self->path, "a hash of its journal has the wrong length", error);
}

gboolean
sy_sqlite_head_as_at (SyStore *store, const char *day, SyHead *head, GError **error)
{
  SqliteStore *self = (SqliteStore *) store;
  SyHead end = { 0 };

  if (!find_end (self, day, &end.number, error) || (end.number > 0 && !read_hash (self, end.number, &end.hash, error)))
    return FALSE;
  *head = end;
  return TRUE;
}
