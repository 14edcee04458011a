/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-store-memory-private.h"

/* What is asked of the lines of a store in memory: each time from the first line on. */

static const SyEvent *
event_at (MemoryStore *self, guint64 number)
{
  return ((Line *) g_ptr_array_index (self->lines, number - 1))->event;
}

gboolean
sy_memory_store_scan_raw (SyStore *store, SyRawFunc func, gpointer user_data, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  gboolean go_on = TRUE;

  for (guint i = 0; go_on && i < self->lines->len; i++)
    {
      const Line *line = g_ptr_array_index (self->lines, i);
      g_autoptr (GBytes) bytes = sy_event_encode (line->event);
      SyRawLine raw = {
        .number = i + 1,
        .hash = line->hash.bytes,
        .hash_size = SY_HASH_BYTES,
        .kind_is_number = TRUE,
        .kind = line->event->kind,
        .item = line->event->item,
        .item_size = strlen (line->event->item),
      };

      raw.event = g_bytes_get_data (bytes, &raw.event_size);
      go_on = func (&raw, user_data);
    }
  return TRUE;
}

static SyJournalRow *
make_row (MemoryStore *self, const SyEvent *event, guint64 number)
{
  const Seat *seat = g_hash_table_lookup (self->by_id, event->item);
  SyJournalRow *row = g_new0 (SyJournalRow, 1);

  row->number = number;
  row->kind = event->kind;
  row->item = g_strdup (event->item);
  row->item_kind = g_strdup (event->item_kind);
  row->name = g_strdup (seat != NULL ? seat->task->name : event->name);
  row->by = g_strdup (event->by);
  row->role = g_strdup (event->role);
  row->why = g_strdup (event->why);
  row->when = g_strdup (event->claimed);
  row->written = g_strdup (event->written);
  row->clock_set = event->clock_set;
  row->revision = event->revision;
  row->words = sy_store_line_words (event);
  if (event->kind == SY_EVENT_REVISION)
    {
      g_autoptr (SyTask) alone = sy_task_apply (NULL, event);

      row->verdict = g_strdup (sy_verdict_id (alone->verdict));
    }
  else
    row->verdict = g_strdup ("");
  return row;
}

GPtrArray *
sy_memory_store_journal (SyStore *store, const SyJournalFilter *filter, guint64 before, guint limit,
                         G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_journal_row_free);
  guint64 from = before > 0 ? MIN (before - 1, self->lines->len) : self->lines->len;

  for (guint64 number = from; number > 0 && (limit == 0 || rows->len < limit); number--)
    if (sy_journal_filter_admits (filter, event_at (self, number)))
      g_ptr_array_add (rows, make_row (self, event_at (self, number), number));
  return rows;
}

gboolean
sy_memory_store_journal_count (SyStore *store, const SyJournalFilter *filter, guint64 *count,
                               G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;

  *count = 0;
  for (guint64 number = 1; number <= self->lines->len; number++)
    *count += sy_journal_filter_admits (filter, event_at (self, number)) ? 1 : 0;
  return TRUE;
}

GArray *
sy_memory_store_journal_numbers (SyStore *store, const SyJournalFilter *filter, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (guint64));

  for (guint64 number = self->lines->len; number > 0; number--)
    if (sy_journal_filter_admits (filter, event_at (self, number)))
      g_array_append_val (numbers, number);
  return numbers;
}

static int
compare_texts (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

char **
sy_memory_store_people (SyStore *store, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  g_autoptr (GHashTable) known = g_hash_table_new (g_str_hash, g_str_equal);
  GPtrArray *names = g_ptr_array_new ();

  for (guint64 number = 1; number <= self->lines->len; number++)
    if (g_hash_table_add (known, event_at (self, number)->by))
      g_ptr_array_add (names, g_strdup (event_at (self, number)->by));
  g_ptr_array_sort (names, compare_texts);
  g_ptr_array_add (names, NULL);
  return (char **) g_ptr_array_free (names, FALSE);
}

static SyAction *
find_action (GPtrArray *actions, const char *id, guint *place)
{
  for (guint i = 0; i < actions->len; i++)
    if (strcmp (((SyAction *) actions->pdata[i])->id, id) == 0)
      {
        *place = i;
        return actions->pdata[i];
      }
  return NULL;
}

/* Every action, in the order in which they were opened. */
static GPtrArray *
fold_actions (MemoryStore *self)
{
  GPtrArray *actions = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_action_free);

  for (guint64 number = 1; number <= self->lines->len; number++)
    {
      const SyEvent *event = event_at (self, number);
      SyAction *action;
      SyDeed deed;
      guint place = 0;

      if (event->kind != SY_EVENT_ACTION || !sy_deed_read (event, &deed))
        continue;
      action = find_action (actions, deed.action, &place);
      sy_deed_clear (&deed);
      if (action != NULL)
        actions->pdata[place] = sy_action_apply (action, event, number);
      else if ((action = sy_action_apply (NULL, event, number)) != NULL)
        g_ptr_array_add (actions, action);
    }
  for (guint i = 0; i < actions->len; i++)
    {
      SyAction *action = actions->pdata[i];
      const Seat *seat = g_hash_table_lookup (self->by_id, action->item);

      if (seat != NULL)
        sy_event_set (&action->item_name, seat->task->name);
    }
  return actions;
}

GPtrArray *
sy_memory_store_actions (SyStore *store, const SyActionFilter *filter, G_GNUC_UNUSED GError **error)
{
  g_autoptr (GPtrArray) all = fold_actions ((MemoryStore *) store);
  GPtrArray *actions = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_action_free);

  for (guint i = 0; i < all->len; i++)
    {
      const SyAction *action = all->pdata[i];

      if ((!filter->open || action->open) && (filter->item == NULL || strcmp (filter->item, action->item) == 0)
          && (filter->assigned == NULL || strcmp (filter->assigned, action->assigned) == 0))
        g_ptr_array_add (actions, sy_action_copy (action));
    }
  sy_actions_sort (actions);
  return actions;
}

SyAction *
sy_memory_store_find_action (SyStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) all = fold_actions ((MemoryStore *) store);
  guint place = 0;
  const SyAction *action = find_action (all, id, &place);

  if (action != NULL)
    return sy_action_copy (action);
  sy_store_fail_no_action (error, id);
  return NULL;
}

static gboolean
is_written_by (const SyEvent *event, const char *day)
{
  g_autofree char *written = sy_store_utc_day (event->written);

  return strcmp (written, day) <= 0;
}

/* Of each line in order. */
static gboolean
counts (SyPastImport *import, const SyEvent *event, guint64 number, const char *day)
{
  const gboolean is_early = is_written_by (event, day);

  if (event->kind == SY_EVENT_IMPORT)
    sy_past_import_take (import, number, sy_store_lines_taken_over (event), is_early);
  return sy_past_import_counts (import, number, is_early);
}

static void
free_task (gpointer task)
{
  if (task != NULL)
    sy_task_free (task);
}

GPtrArray *
sy_memory_store_as_at (SyStore *store, const char *day, SyProgressFunc progress, gpointer user_data, GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  g_autoptr (GPtrArray) tasks = g_ptr_array_new_with_free_func (free_task);
  g_autoptr (GHashTable) places = g_hash_table_new (g_str_hash, g_str_equal);
  SyPastImport import = { 0 };

  for (guint64 number = 1; number <= self->lines->len; number++)
    {
      const SyEvent *event = event_at (self, number);
      gpointer place = g_hash_table_lookup (places, event->item);

      if (!sy_store_go_on (progress, number, self->lines->len, user_data, error))
        return NULL;
      if (!counts (&import, event, number, day))
        continue;
      if (place != NULL)
        {
          SyTask **task = (SyTask **) &tasks->pdata[GPOINTER_TO_UINT (place) - 1];

          *task = sy_task_apply (*task, event);
        }
      else if (event->kind == SY_EVENT_REVISION)
        {
          SyTask *task = sy_task_apply (NULL, event);

          g_ptr_array_add (tasks, task);
          task->seat = tasks->len;
          g_hash_table_insert (places, event->item, GUINT_TO_POINTER (tasks->len));
        }
    }
  return g_steal_pointer (&tasks);
}

gboolean
sy_memory_store_head_as_at (SyStore *store, const char *day, SyHead *head, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  SyPastImport import = { 0 };
  SyHead end = { 0 };

  for (guint64 number = 1; number <= self->lines->len; number++)
    if (counts (&import, event_at (self, number), number, day))
      end.number = number;
  if (end.number > 0)
    end.hash = ((Line *) g_ptr_array_index (self->lines, end.number - 1))->hash;
  *head = end;
  return TRUE;
}
