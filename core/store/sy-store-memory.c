/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-store-memory-private.h"

/* A store that is gone when it is closed: for trying things out, and the second opinion in the tests. */

static void
line_free (gpointer data)
{
  Line *line = data;

  sy_event_free (line->event);
  g_free (line);
}

static void
seat_free (gpointer data)
{
  Seat *seat = data;

  sy_task_free (seat->task);
  g_free (seat->words);
  g_free (seat->name_key);
  g_free (seat);
}

static void
read_head (MemoryStore *self, SyHead *head)
{
  memset (head, 0, sizeof *head);
  head->number = self->lines->len;
  if (self->lines->len > 0)
    head->hash = ((Line *) g_ptr_array_index (self->lines, self->lines->len - 1))->hash;
}

/* A file that belongs to an item is a touch of it, and changes nothing else. */
static void
touch (MemoryStore *self, const char *item, guint64 number)
{
  Seat *seat = g_hash_table_lookup (self->by_id, item);

  if (seat != NULL)
    seat->number = number;
}

static void
keep_words (Seat *seat, guint64 number)
{
  seat->number = number;
  g_free (seat->words);
  seat->words = sy_store_fold (seat->task->search_text);
  g_free (seat->name_key);
  seat->name_key = sy_store_name_key (seat->task->name);
}

static void
project_revision (MemoryStore *self, const SyEvent *event, guint64 number)
{
  Seat *seat = g_hash_table_lookup (self->by_id, event->item);

  if (seat == NULL)
    {
      seat = g_new0 (Seat, 1);
      seat->task = sy_task_apply (NULL, event);
      g_ptr_array_add (self->seats, seat);
      seat->task->seat = self->seats->len;
      g_hash_table_insert (self->by_id, seat->task->id, seat);
    }
  else
    seat->task = sy_task_apply (seat->task, event);
  keep_words (seat, number);
}

static void
project_deed (MemoryStore *self, const SyEvent *event, guint64 number)
{
  Seat *seat = g_hash_table_lookup (self->by_id, event->item);

  if (seat == NULL)
    return;
  seat->task = sy_task_apply (seat->task, event);
  keep_words (seat, number);
}

static void
project (MemoryStore *self, const SyEvent *event, guint64 number)
{
  switch (event->kind)
    {
    case SY_EVENT_POLICY:
    case SY_EVENT_IMPORT:
      break;
    case SY_EVENT_REVISION:
      project_revision (self, event, number);
      break;
    case SY_EVENT_ATTACHMENT:
      touch (self, event->item, number);
      break;
    case SY_EVENT_SIGNATURE:
    case SY_EVENT_ACTION:
    case SY_EVENT_REVIEW:
    case SY_EVENT_RETIREMENT:
    case SY_EVENT_TOLD:
    case SY_EVENT_IMPROVEMENT:
      project_deed (self, event, number);
      break;
    }
}

static int
compare_names (const Seat *a, const Seat *b)
{
  int order = strcmp (a->name_key, b->name_key);

  return order != 0 ? order : strcmp (a->task->id, b->task->id);
}

static int
compare_by_name (gconstpointer a, gconstpointer b)
{
  return compare_names (*(Seat *const *) a, *(Seat *const *) b);
}

static gboolean
is_refused_without_rank (const SyTask *task)
{
  return isnan (task->rank) && task->verdict == SY_VERDICT_DO_NOT_LIFT;
}

/* Highest first; none last, and among those what must not be lifted first. */
static int
compare_by_rank (gconstpointer a, gconstpointer b)
{
  const Seat *first = *(Seat *const *) a, *second = *(Seat *const *) b;
  double left = isnan (first->task->rank) ? -INFINITY : first->task->rank;
  double right = isnan (second->task->rank) ? -INFINITY : second->task->rank;
  int order = is_refused_without_rank (second->task) - is_refused_without_rank (first->task);

  if (left > right)
    return -1;
  if (left < right)
    return 1;
  return order != 0 ? order : compare_names (first, second);
}

static int
compare_numbers (const Seat *a, const Seat *b)
{
  return (a->number > b->number) - (a->number < b->number);
}

static int
compare_oldest_first (gconstpointer a, gconstpointer b)
{
  return compare_numbers (*(Seat *const *) a, *(Seat *const *) b);
}

static int
compare_by_recent (gconstpointer a, gconstpointer b)
{
  return compare_numbers (*(Seat *const *) b, *(Seat *const *) a);
}

static GCompareFunc
find_order (SyTaskOrder order)
{
  switch (order)
    {
    case SY_ORDER_RANK:
      return compare_by_rank;
    case SY_ORDER_NAME:
      return compare_by_name;
    case SY_ORDER_RECENT:
      return compare_by_recent;
    }
  g_assert_not_reached ();
}

static gboolean
has_words (const Seat *seat, const char *words)
{
  g_auto (GStrv) each = g_strsplit (words, " ", -1);

  for (char **word = each; *word != NULL; word++)
    {
      g_autofree char *beginning = g_strconcat (" ", *word, NULL);

      if (**word != '\0' && strstr (seat->words, beginning) == NULL)
        return FALSE;
    }
  return TRUE;
}

static GPtrArray *
copy_tasks (GPtrArray *seats, guint limit)
{
  GPtrArray *tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);

  for (guint i = 0; i < seats->len && (limit == 0 || i < limit); i++)
    g_ptr_array_add (tasks, sy_task_copy (((Seat *) g_ptr_array_index (seats, i))->task));
  return tasks;
}

static gboolean
show_line (MemoryStore *self, guint index, SyScanFunc func, gpointer user_data)
{
  const Line *line = g_ptr_array_index (self->lines, index);
  SyLine shown = { .number = index + 1u, .hash = line->hash, .event = line->event };

  return func (&shown, user_data);
}

static void
memory_close (SyStore *store)
{
  MemoryStore *self = (MemoryStore *) store;

  g_hash_table_unref (self->by_id);
  g_ptr_array_unref (self->seats);
  g_ptr_array_unref (self->lines);
  g_free (self);
}

static gboolean
memory_head (SyStore *store, SyHead *head, G_GNUC_UNUSED GError **error)
{
  read_head ((MemoryStore *) store, head);
  return TRUE;
}

static gboolean
memory_append (SyStore *store, const SyHead *expected, GPtrArray *entries, SyProgressFunc progress,
               gpointer user_data, SyHead *head, GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  SyHead end;

  read_head (self, &end);
  if (!sy_head_equal (expected, &end))
    return sy_store_fail_stale (error, "memory:", &end);
  /* It cannot be undone here, and does not take long. */
  if (!sy_store_go_on (progress, 0, entries->len, user_data, error))
    return FALSE;
  for (guint i = 0; i < entries->len; i++)
    {
      SyEntry *entry = g_ptr_array_index (entries, i);
      Line *line = g_new0 (Line, 1);

      sy_chain_next (&end.hash, end.number + 1, entry->bytes, &line->hash);
      line->event = g_steal_pointer (&entry->event);
      end.number++;
      end.hash = line->hash;
      g_ptr_array_add (self->lines, line);
      project (self, line->event, end.number);
    }
  *head = end;
  return TRUE;
}

static gboolean
memory_scan (SyStore *store, guint64 from, SyScanFunc func, gpointer user_data,
             G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;

  for (guint64 i = MAX (from, 1) - 1; i < self->lines->len; i++)
    if (!show_line (self, (guint) i, func, user_data))
      break;
  return TRUE;
}

static gboolean
memory_scan_item (SyStore *store, const char *item, SyEventKind kind, SyScanFunc func,
                  gpointer user_data, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SyEvent *event = ((Line *) g_ptr_array_index (self->lines, i))->event;

      if ((kind == 0 || event->kind == kind) && strcmp (event->item, item) == 0
          && !show_line (self, i, func, user_data))
        break;
    }
  return TRUE;
}

static gboolean
is_of_kind (const SyTask *task, const char *item_kind)
{
  return item_kind == NULL || strcmp (task->item_kind, item_kind) == 0;
}

static GPtrArray *
memory_list (SyStore *store, const SyTaskFilter *filter, const char *words, guint limit,
             G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  g_autoptr (GPtrArray) found = g_ptr_array_new ();

  for (guint i = 0; i < self->seats->len; i++)
    {
      Seat *seat = g_ptr_array_index (self->seats, i);

      if ((!filter->by_verdict || seat->task->verdict == filter->verdict)
          && is_of_kind (seat->task, filter->item_kind) && has_words (seat, words))
        g_ptr_array_add (found, seat);
    }
  g_ptr_array_sort (found, find_order (filter->order));
  return copy_tasks (found, limit);
}

static GPtrArray *
memory_changed_since (SyStore *store, guint64 number, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  g_autoptr (GPtrArray) found = g_ptr_array_new ();

  for (guint i = 0; i < self->seats->len; i++)
    {
      Seat *seat = g_ptr_array_index (self->seats, i);

      if (seat->number > number)
        g_ptr_array_add (found, seat);
    }
  g_ptr_array_sort (found, compare_oldest_first);
  return copy_tasks (found, 0);
}

static SyTask *
memory_find (SyStore *store, const char *id_or_name, const char *item_kind, GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  const Seat *seat = g_hash_table_lookup (self->by_id, id_or_name);
  gboolean by_id = seat != NULL;

  for (guint i = 0; !by_id && i < self->seats->len; i++)
    {
      const Seat *named = g_ptr_array_index (self->seats, i);

      if (strcmp (named->task->name, id_or_name) != 0 || !is_of_kind (named->task, item_kind))
        continue;
      if (seat != NULL && strcmp (seat->task->item_kind, named->task->item_kind) != 0)
        {
          sy_store_fail_ambiguous (error, id_or_name, seat->task->item_kind, named->task->item_kind);
          return NULL;
        }
      if (seat == NULL)
        seat = named;
    }
  if (seat == NULL)
    {
      sy_store_fail_not_found (error, id_or_name, item_kind);
      return NULL;
    }
  return sy_task_copy (seat->task);
}

static char *
memory_policy (SyStore *store, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;

  for (guint i = self->lines->len; i > 0; i--)
    {
      const SyEvent *event = ((Line *) g_ptr_array_index (self->lines, i - 1))->event;

      if (event->kind == SY_EVENT_POLICY)
        return g_strdup (event->facts);
    }
  return NULL;
}

static GArray *
memory_search (SyStore *store, const char *words, G_GNUC_UNUSED GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  GArray *seats = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < self->seats->len; i++)
    {
      gint64 seat = i + 1;

      if (has_words (g_ptr_array_index (self->seats, i), words))
        g_array_append_val (seats, seat);
    }
  return seats;
}

static gboolean
memory_lists_end (SyStore *store, guint64 *last)
{
  MemoryStore *self = (MemoryStore *) store;

  *last = 0;
  for (guint i = 0; i < self->seats->len; i++)
    *last = MAX (*last, ((Seat *) g_ptr_array_index (self->seats, i))->number);
  return TRUE;
}

/* Nobody else has its lists in hand: they cannot differ, and are made anew all the same. */
static gboolean
memory_rebuild (SyStore *store, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error)
{
  MemoryStore *self = (MemoryStore *) store;
  g_autoptr (GPtrArray) actions = NULL;
  g_autoptr (GPtrArray) before = g_steal_pointer (&self->seats);

  self->seats = g_ptr_array_new_with_free_func (seat_free);
  g_hash_table_remove_all (self->by_id);
  for (guint i = 0; i < self->lines->len; i++)
    {
      if (!sy_store_go_on (progress, i, self->lines->len, user_data, error))
        {
          g_ptr_array_unref (self->seats);
          self->seats = g_steal_pointer (&before);
          g_hash_table_remove_all (self->by_id);
          for (guint j = 0; j < self->seats->len; j++)
            {
              Seat *seat = g_ptr_array_index (self->seats, j);

              g_hash_table_insert (self->by_id, seat->task->id, seat);
            }
          return FALSE;
        }
      project (self, ((Line *) g_ptr_array_index (self->lines, i))->event, i + 1);
    }
  actions = sy_memory_store_actions (store, &(SyActionFilter) { 0 }, NULL);
  out->items = self->seats->len;
  out->actions = actions->len;
  out->lines = self->lines->len;
  return TRUE;
}

SyStore *
sy_store_memory_new (void)
{
  static const SyStoreBackend backend = {
    .close = memory_close,
    .head = memory_head,
    .append = memory_append,
    .scan = memory_scan,
    .scan_item = memory_scan_item,
    .list = memory_list,
    .changed_since = memory_changed_since,
    .find = memory_find,
    .policy = memory_policy,
    .search = memory_search,
    .scan_raw = sy_memory_store_scan_raw,
    .lists_end = memory_lists_end,
    .rebuild = memory_rebuild,
    .journal = sy_memory_store_journal,
    .journal_count = sy_memory_store_journal_count,
    .journal_numbers = sy_memory_store_journal_numbers,
    .people = sy_memory_store_people,
    .actions = sy_memory_store_actions,
    .find_action = sy_memory_store_find_action,
    .as_at = sy_memory_store_as_at,
    .head_as_at = sy_memory_store_head_as_at,
  };
  MemoryStore *self = g_new0 (MemoryStore, 1);

  self->parent.backend = &backend;
  self->lines = g_ptr_array_new_with_free_func (line_free);
  self->seats = g_ptr_array_new_with_free_func (seat_free);
  self->by_id = g_hash_table_new (g_str_hash, g_str_equal);
  return &self->parent;
}
