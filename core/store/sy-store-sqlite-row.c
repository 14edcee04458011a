/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#include <math.h>

/* NULL stands for none; unbounded is told by the flag beside it. */
static void
bind_number (sqlite3_stmt *statement, int place, double value)
{
  if (isfinite (value))
    sqlite3_bind_double (statement, place, value);
  else
    sqlite3_bind_null (statement, place);
}

static double
take_number (sqlite3_stmt *statement, int column)
{
  return sqlite3_column_type (statement, column) == SQLITE_NULL
           ? NAN
           : sqlite3_column_double (statement, column);
}

static double
take_unbounded (sqlite3_stmt *statement, int column)
{
  if (sqlite3_column_int (statement, column + 1) != 0)
    return INFINITY;
  return take_number (statement, column);
}

static void
take_detail (sqlite3_stmt *statement, int column, SyItemDetail *detail)
{
  detail->mass_with_allowance_kg = take_number (statement, column++);
  for (gsize i = 0; i < G_N_ELEMENTS (detail->cg_mm); i++)
    detail->cg_mm[i] = take_number (statement, column++);
  detail->machine = sy_sqlite_dup_text (statement, column++);
  detail->storage = sy_sqlite_dup_text (statement, column++);
  detail->gear_kind = sy_sqlite_dup_text (statement, column++);
  detail->identity = sy_sqlite_dup_text (statement, column++);
  detail->wll_kg = take_number (statement, column++);
  detail->due = sy_sqlite_dup_text (statement, column++);
  detail->withdrawn = sqlite3_column_int (statement, column++) != 0;
  detail->condition = sy_sqlite_dup_text (statement, column);
}

/* What was done about the item besides revising it, and under what it was judged. */
static void
take_standing (sqlite3_stmt *statement, int column, SyTask *task)
{
  task->role = sy_sqlite_dup_text (statement, column++);
  task->edition = sqlite3_column_int64 (statement, column++);
  task->policy = sy_sqlite_dup_text (statement, column++);
  task->program = sy_sqlite_dup_text (statement, column++);
  task->loosened = sqlite3_column_int (statement, column++) != 0;
  task->begun = sy_sqlite_dup_text (statement, column++);
  task->signed_revision = sqlite3_column_int64 (statement, column++);
  task->signed_by = sy_sqlite_dup_text (statement, column++);
  task->signed_role = sy_sqlite_dup_text (statement, column++);
  task->signed_when = sy_sqlite_dup_text (statement, column++);
  task->signed_own = sqlite3_column_int (statement, column++) != 0;
  task->open_actions = sy_sqlite_dup_text (statement, column++);
  task->n_open = sqlite3_column_int64 (statement, column++);
  task->action_due = sy_sqlite_dup_text (statement, column++);
  task->review_due = sy_sqlite_dup_text (statement, column++);
  task->review_trigger = sy_sqlite_dup_text (statement, column++);
  task->retired = sqlite3_column_int (statement, column++) != 0;
  task->told_revision = sqlite3_column_int64 (statement, column);
}

static void
bind_standing (sqlite3_stmt *statement, int place, const SyTask *task)
{
  sy_sqlite_bind_text (statement, place++, task->role);
  sqlite3_bind_int64 (statement, place++, task->edition);
  sy_sqlite_bind_text (statement, place++, task->policy);
  sy_sqlite_bind_text (statement, place++, task->program);
  sqlite3_bind_int (statement, place++, task->loosened ? 1 : 0);
  sy_sqlite_bind_text (statement, place++, task->begun);
  sqlite3_bind_int64 (statement, place++, task->signed_revision);
  sy_sqlite_bind_text (statement, place++, task->signed_by);
  sy_sqlite_bind_text (statement, place++, task->signed_role);
  sy_sqlite_bind_text (statement, place++, task->signed_when);
  sqlite3_bind_int (statement, place++, task->signed_own ? 1 : 0);
  sy_sqlite_bind_text (statement, place++, task->open_actions);
  sqlite3_bind_int64 (statement, place++, task->n_open);
  sy_sqlite_bind_text (statement, place++, task->action_due);
  sy_sqlite_bind_text (statement, place++, task->review_due);
  sy_sqlite_bind_text (statement, place++, task->review_trigger);
  sqlite3_bind_int (statement, place++, task->retired ? 1 : 0);
  sqlite3_bind_int64 (statement, place, task->told_revision);
}

static void
bind_detail (sqlite3_stmt *statement, int place, const SyItemDetail *detail)
{
  bind_number (statement, place++, detail->mass_with_allowance_kg);
  for (gsize i = 0; i < G_N_ELEMENTS (detail->cg_mm); i++)
    bind_number (statement, place++, detail->cg_mm[i]);
  sy_sqlite_bind_text (statement, place++, detail->machine);
  sy_sqlite_bind_text (statement, place++, detail->storage);
  sy_sqlite_bind_text (statement, place++, detail->gear_kind);
  sy_sqlite_bind_text (statement, place++, detail->identity);
  bind_number (statement, place++, detail->wll_kg);
  sy_sqlite_bind_text (statement, place++, detail->due);
  sqlite3_bind_int (statement, place++, detail->withdrawn ? 1 : 0);
  sy_sqlite_bind_text (statement, place, detail->condition);
}

void
sy_sqlite_bind_text (sqlite3_stmt *statement, int place, const char *text)
{
  sqlite3_bind_text (statement, place, text, -1, SQLITE_TRANSIENT);
}

char *
sy_sqlite_dup_text (sqlite3_stmt *statement, int column)
{
  return g_strdup ((const char *) sqlite3_column_text (statement, column));
}

SyTask *
sy_sqlite_take_task (sqlite3_stmt *statement)
{
  SyTask *task;
  SyVerdict verdict;

  if (!sy_verdict_from_id ((const char *) sqlite3_column_text (statement, 5), &verdict))
    return NULL;
  task = g_new0 (SyTask, 1);
  task->id = sy_sqlite_dup_text (statement, 0);
  task->name = sy_sqlite_dup_text (statement, 1);
  task->place = sy_sqlite_dup_text (statement, 2);
  task->method = sy_sqlite_dup_text (statement, 3);
  task->units = sy_sqlite_dup_text (statement, 4);
  task->verdict = verdict;
  task->index = take_unbounded (statement, 6);
  task->index_symbol = sy_sqlite_dup_text (statement, 8);
  task->mass_kg = take_number (statement, 9);
  task->persons = take_number (statement, 10);
  task->lifts_per_day = take_number (statement, 11);
  task->rank = take_unbounded (statement, 12);
  task->revision = sqlite3_column_int64 (statement, 14);
  task->clash = sqlite3_column_int64 (statement, 15);
  task->lineage = sy_sqlite_dup_text (statement, 16);
  task->by = sy_sqlite_dup_text (statement, 17);
  task->why = sy_sqlite_dup_text (statement, 18);
  task->when = sy_sqlite_dup_text (statement, 19);
  task->search_text = sy_sqlite_dup_text (statement, 20);
  task->item_kind = sy_sqlite_dup_text (statement, 21);
  task->valid_until = sy_sqlite_dup_text (statement, 22);
  take_detail (statement, 23, &task->detail);
  take_standing (statement, 35, task);
  task->seat = sqlite3_column_int64 (statement, SY_SQLITE_N_TASK_COLUMNS);
  return task;
}

void
sy_sqlite_bind_task (sqlite3_stmt *statement, const SyTask *task, guint64 line, gint64 seat)
{
  g_autofree char *name_key = sy_store_name_key (task->name);

  if (seat != 0)
    sqlite3_bind_int64 (statement, 1, seat);
  sqlite3_bind_int64 (statement, 2, (gint64) line);
  sy_sqlite_bind_text (statement, 3, name_key);
  sy_sqlite_bind_text (statement, 4, task->id);
  sy_sqlite_bind_text (statement, 5, task->name);
  sy_sqlite_bind_text (statement, 6, task->place);
  sy_sqlite_bind_text (statement, 7, task->method);
  sy_sqlite_bind_text (statement, 8, task->units);
  sy_sqlite_bind_text (statement, 9, sy_verdict_id (task->verdict));
  bind_number (statement, 10, task->index);
  sqlite3_bind_int (statement, 11, isinf (task->index) ? 1 : 0);
  sy_sqlite_bind_text (statement, 12, task->index_symbol);
  bind_number (statement, 13, task->mass_kg);
  bind_number (statement, 14, task->persons);
  bind_number (statement, 15, task->lifts_per_day);
  bind_number (statement, 16, task->rank);
  sqlite3_bind_int (statement, 17, isinf (task->rank) ? 1 : 0);
  sqlite3_bind_int64 (statement, 18, task->revision);
  sqlite3_bind_int64 (statement, 19, task->clash);
  sy_sqlite_bind_text (statement, 20, task->lineage);
  sy_sqlite_bind_text (statement, 21, task->by);
  sy_sqlite_bind_text (statement, 22, task->why);
  sy_sqlite_bind_text (statement, 23, task->when);
  sy_sqlite_bind_text (statement, 24, task->search_text);
  sy_sqlite_bind_text (statement, 25, task->item_kind);
  sy_sqlite_bind_text (statement, 26, task->valid_until);
  bind_detail (statement, 27, &task->detail);
  bind_standing (statement, 39, task);
}
