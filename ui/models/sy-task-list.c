/* SPDX-License-Identifier: MIT */
#include "sy-task-list.h"

#include <math.h>
#include <string.h>

#include "sy-task-order.h"
#include "sy-worker-search.h"

/* How soon what another program wrote is seen (our choice): asking costs a read of the journal's end. */
#define POLL_SECONDS 2

struct _SyTaskList
{
  GObject parent_instance;
  SyWorker *worker;
  GPtrArray *rows;       /* of SyTaskRow                  */
  GHashTable *positions; /* id, its row's → position + 1  */
  GArray *by_name;       /* of guint32: positions by name */
  guint32 *by_rest;      /* as many; NULL: not known now  */
  guint64 seen;          /* line of the journal           */
  guint counts[SY_N_REGISTERS], retired[SY_N_REGISTERS];
  double today;          /* days since 1970              */
  GCancellable *cancellable;
  guint timer;
  gboolean asking, again, loading, filled;
  gboolean wants_figures, reading_figures, figures_again;
  char *error;
};

static void
sy_task_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyTaskList, sy_task_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, sy_task_list_model_init))

enum
{
  LIST_LOADING = 1,
  LIST_ERROR,
  N_LIST_PROPERTIES
};
static GParamSpec *list_properties[N_LIST_PROPERTIES];

static void
set_state (SyTaskList *self, gboolean loading, const char *error)
{
  if (self->loading != loading)
    {
      self->loading = loading;
      g_object_notify_by_pspec (G_OBJECT (self), list_properties[LIST_LOADING]);
    }
  if (g_strcmp0 (self->error, error) != 0)
    {
      g_free (self->error);
      self->error = g_strdup (error);
      g_object_notify_by_pspec (G_OBJECT (self), list_properties[LIST_ERROR]);
    }
}

/* Whether the answer is for nobody any more. */
static gboolean
is_over (const GError *error)
{
  return g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CLOSED);
}

/* Topics: figures of findings */

static void
read_figures (SyTaskList *self);

static void
figures_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyTaskList) self = SY_TASK_LIST (user_data);
  /* What fails here fails for the list, too, which says so. */
  g_autoptr (GPtrArray) all = sy_worker_figures_finish (SY_WORKER (source), result, NULL);

  self->reading_figures = FALSE;
  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      SyItemFigures *figures = all->pdata[i];
      guint known = GPOINTER_TO_UINT (g_hash_table_lookup (self->positions, figures->id));

      if (known == 0)
        continue;
      sy_task_row_take_figures (self->rows->pdata[known - 1], figures);
      all->pdata[i] = NULL;
      g_list_model_items_changed (G_LIST_MODEL (self), known - 1, 1, 1);
    }
  if (self->figures_again)
    read_figures (self);
}

/* One question at a time, of the rows that lack them. */
static void
read_figures (SyTaskList *self)
{
  g_autoptr (GPtrArray) ids = NULL;

  if (!self->wants_figures || self->worker == NULL)
    return;
  self->figures_again = self->reading_figures;
  if (self->reading_figures)
    return;
  ids = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const SyTask *task = sy_task_row_get_task (self->rows->pdata[i]);

      if (sy_item_has_figures (task->item_kind) && sy_task_row_get_figures (self->rows->pdata[i]) == NULL)
        g_ptr_array_add (ids, g_strdup (task->id));
    }
  if (ids->len == 0)
    return;
  self->reading_figures = TRUE;
  sy_worker_figures_async (self->worker, ids, self->cancellable, figures_cb, g_object_ref (self));
}

void
sy_task_list_want_figures (SyTaskList *self)
{
  g_return_if_fail (SY_IS_TASK_LIST (self));
  self->wants_figures = TRUE;
  read_figures (self);
}

/* A journal only grows: this is another one, put in the place of the first. */
static void
begin_anew (SyTaskList *self)
{
  guint n = self->rows->len;

  g_hash_table_remove_all (self->positions);
  g_ptr_array_set_size (self->rows, 0);
  g_array_set_size (self->by_name, 0);
  g_clear_pointer (&self->by_rest, g_free);
  memset (self->counts, 0, sizeof self->counts);
  memset (self->retired, 0, sizeof self->retired);
  self->seen = 0;
  self->filled = FALSE;
  if (n > 0)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, n, 0);
  sy_task_list_refresh (self);
}

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyTaskList) self = SY_TASK_LIST (user_data);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  SyHead head = { 0 };

  tasks = sy_worker_changed_finish (SY_WORKER (source), result, &head, &error);
  self->asking = FALSE;
  if (is_over (error))
    return;
  if (tasks == NULL)
    {
      set_state (self, FALSE, error->message);
      return;
    }
  if (head.number < self->seen)
    {
      begin_anew (self);
      return;
    }
  self->seen = head.number;
  sy_task_list_merge (self, tasks);
  set_state (self, FALSE, NULL);
  if (tasks->len > 0)
    read_figures (self);
  if (self->again)
    sy_task_list_refresh (self);
}

/* The rows that were there already stay the objects that they are. */
static void
take_fill (SyTaskList *self, SyTaskFill *fill)
{
  const guint before = self->rows->len;
  GArray *by_name = g_array_sized_new (FALSE, FALSE, sizeof (guint32), fill->rows->len);

  for (guint i = 0; i < before; i++)
    {
      SyTaskRow *row = self->rows->pdata[i];
      const char *id = sy_task_row_get_task (row)->id;
      guint known = GPOINTER_TO_UINT (g_hash_table_lookup (fill->positions, id));

      if (known == 0)
        continue;
      sy_task_row_update (row, sy_task_row_get_task (fill->rows->pdata[known - 1]));
      g_hash_table_replace (fill->positions, (gpointer) id, GUINT_TO_POINTER (known));
      g_object_unref (fill->rows->pdata[known - 1]);
      fill->rows->pdata[known - 1] = g_object_ref (row);
    }
  for (guint32 i = 0; i < fill->rows->len; i++)
    g_array_append_val (by_name, i);
  g_hash_table_unref (self->positions);
  g_ptr_array_unref (self->rows);
  g_array_unref (self->by_name);
  self->by_name = by_name;
  g_free (self->by_rest);
  self->by_rest = g_steal_pointer (&fill->by_rest);
  self->positions = g_steal_pointer (&fill->positions);
  self->rows = g_steal_pointer (&fill->rows);
  memcpy (self->counts, fill->counts, sizeof self->counts);
  memcpy (self->retired, fill->retired, sizeof self->retired);
  self->seen = fill->head.number;
  self->filled = TRUE;
  if (before > 0 || self->rows->len > 0)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, before, self->rows->len);
}

static void
filled_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyTaskList) self = SY_TASK_LIST (user_data);
  g_autoptr (GError) error = NULL;
  g_autoptr (SyTaskFill) fill = sy_worker_fill_finish (SY_WORKER (source), result, &error);

  self->asking = FALSE;
  if (is_over (error))
    return;
  if (fill == NULL)
    {
      set_state (self, FALSE, error->message);
      return;
    }
  take_fill (self, fill);
  set_state (self, FALSE, NULL);
  read_figures (self);
  if (self->again)
    sy_task_list_refresh (self);
}

static gboolean
poll_cb (gpointer user_data)
{
  SyTaskList *self = SY_TASK_LIST (user_data);

  sy_task_list_set_today (self, sy_clock_today ());
  /* A store that does not answer is asked again when the person says so. */
  if (self->error == NULL)
    sy_task_list_refresh (self);
  return G_SOURCE_CONTINUE;
}

static void
worker_changed_cb (SyWorker *worker, SyTaskList *self)
{
  (void) worker;
  sy_task_list_refresh (self);
}

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return SY_TYPE_TASK_ROW;
}

static guint
get_n_items (GListModel *model)
{
  return SY_TASK_LIST (model)->rows->len;
}

static gpointer
get_item (GListModel *model, guint position)
{
  SyTaskList *self = SY_TASK_LIST (model);

  return position < self->rows->len ? g_object_ref (self->rows->pdata[position]) : NULL;
}

static void
sy_task_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

static void
sy_task_list_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SyTaskList *self = SY_TASK_LIST (object);

  switch (id)
    {
    case LIST_LOADING:
      g_value_set_boolean (value, self->loading);
      break;
    case LIST_ERROR:
      g_value_set_string (value, self->error);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
sy_task_list_dispose (GObject *object)
{
  SyTaskList *self = SY_TASK_LIST (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_task_list_parent_class)->dispose (object);
}

static void
sy_task_list_finalize (GObject *object)
{
  SyTaskList *self = SY_TASK_LIST (object);

  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->positions, g_hash_table_unref);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->by_name, g_array_unref);
  g_clear_pointer (&self->by_rest, g_free);
  g_clear_pointer (&self->error, g_free);
  G_OBJECT_CLASS (sy_task_list_parent_class)->finalize (object);
}

static void
sy_task_list_class_init (SyTaskListClass *klass)
{
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sy_task_list_get_property;
  object_class->dispose = sy_task_list_dispose;
  object_class->finalize = sy_task_list_finalize;

  list_properties[LIST_LOADING] = g_param_spec_boolean ("loading", NULL, NULL, TRUE, flags);
  list_properties[LIST_ERROR] = g_param_spec_string ("error", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_LIST_PROPERTIES, list_properties);
}

static void
sy_task_list_init (SyTaskList *self)
{
  self->rows = g_ptr_array_new_with_free_func (g_object_unref);
  self->positions = g_hash_table_new (g_str_hash, g_str_equal);
  self->by_name = g_array_new (FALSE, FALSE, sizeof (guint32));
  self->cancellable = g_cancellable_new ();
  self->loading = TRUE;
  self->today = NAN;
}

SyTaskList *
sy_task_list_new (SyWorker *worker)
{
  SyTaskList *self = g_object_new (SY_TYPE_TASK_LIST, NULL);

  self->worker = g_object_ref (worker);
  self->today = sy_clock_today ();
  g_signal_connect_object (worker, "changed", G_CALLBACK (worker_changed_cb), self, 0);
  self->timer = g_timeout_add_seconds (POLL_SECONDS, poll_cb, self);
  sy_task_list_refresh (self);
  return self;
}

void
sy_task_list_refresh (SyTaskList *self)
{
  g_return_if_fail (SY_IS_TASK_LIST (self));
  if (self->worker == NULL)
    return;
  /* One question at a time; what is asked meanwhile is asked once more afterwards. */
  self->again = self->asking;
  if (self->asking)
    return;
  self->asking = TRUE;
  if (self->filled)
    sy_worker_changed_async (self->worker, self->seen, self->cancellable, answered_cb, g_object_ref (self));
  else
    sy_worker_fill_async (self->worker, self->today, self->cancellable, filled_cb, g_object_ref (self));
}

SyTaskRow *
sy_task_list_peek (SyTaskList *self, guint place)
{
  return place < self->rows->len ? self->rows->pdata[place] : NULL;
}

const GPtrArray *
sy_task_list_rows (SyTaskList *self)
{
  return self->rows;
}

const guint32 *
sy_task_list_by_name (SyTaskList *self)
{
  return (const guint32 *) (gpointer) self->by_name->data;
}

const guint32 *
sy_task_list_by_rest (SyTaskList *self)
{
  if (self->by_rest == NULL)
    {
      self->by_rest = g_new (guint32, (gsize) self->by_name->len + 1);
      if (self->by_name->len > 0)
        memcpy (self->by_rest, self->by_name->data, self->by_name->len * sizeof (guint32));
      sy_task_sort_rest (self->rows, self->by_rest, self->by_name->len);
    }
  return self->by_rest;
}

SyWorker *
sy_task_list_get_worker (SyTaskList *self)
{
  return self->worker;
}

gboolean
sy_task_list_get_loading (SyTaskList *self)
{
  g_return_val_if_fail (SY_IS_TASK_LIST (self), FALSE);
  return self->loading;
}

const char *
sy_task_list_get_error (SyTaskList *self)
{
  g_return_val_if_fail (SY_IS_TASK_LIST (self), NULL);
  return self->error;
}

static void
count_task (SyTaskList *self, const SyTask *task, int by)
{
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (strcmp (task->item_kind, sy_register_item_kind ((SyRegister) i)) == 0)
      *(task->retired ? &self->retired[i] : &self->counts[i]) += (guint) by;
}

guint
sy_task_list_count (SyTaskList *self, SyRegister which)
{
  g_return_val_if_fail (SY_IS_TASK_LIST (self), 0);
  return self->counts[which];
}

guint
sy_task_list_count_retired (SyTaskList *self, SyRegister which)
{
  g_return_val_if_fail (SY_IS_TASK_LIST (self), 0);
  return self->retired[which];
}

static int
compare_places (gconstpointer a, gconstpointer b, gpointer rows)
{
  return sy_task_order_name (((GPtrArray *) rows)->pdata[*(const guint32 *) a], ((GPtrArray *) rows)->pdata[*(const guint32 *) b]);
}

/* Puts places, each of which is not there, where their names belong. */
static void
insert_by_name (SyTaskList *self, GArray *places)
{
  const guint n = self->by_name->len;
  GArray *merged = g_array_sized_new (FALSE, FALSE, sizeof (guint32), n + places->len);
  const guint32 *old = (const guint32 *) (gpointer) self->by_name->data;
  guint at = 0;

  g_array_sort_with_data (places, compare_places, self->rows);
  for (guint i = 0; i < places->len; i++)
    {
      const guint32 place = g_array_index (places, guint32, i);
      guint low = at, high = n;

      while (low < high)
        {
          guint middle = low + (high - low) / 2;

          if (compare_places (&old[middle], &place, self->rows) < 0)
            low = middle + 1;
          else
            high = middle;
        }
      g_array_append_vals (merged, old + at, low - at);
      g_array_append_val (merged, place);
      at = low;
    }
  if (n > at)
    g_array_append_vals (merged, old + at, n - at);
  g_array_unref (self->by_name);
  self->by_name = merged;
}

static void
remove_by_name (SyTaskList *self, guint32 place)
{
  const guint32 *places = (const guint32 *) (gpointer) self->by_name->data;

  for (guint i = 0; i < self->by_name->len; i++)
    if (places[i] == place)
      {
        g_array_remove_index (self->by_name, i);
        return;
      }
}

static gboolean
update_row (SyTaskList *self, guint32 place, const SyTask *task)
{
  SyTaskRow *row = self->rows->pdata[place];
  const gboolean renamed = strcmp (sy_task_row_get_task (row)->name, task->name) != 0;
  gboolean changed;

  /* By the name that it has so far it is found; by the new one it is put back. */
  if (renamed)
    remove_by_name (self, place);
  count_task (self, sy_task_row_get_task (row), -1);
  g_clear_pointer (&self->by_rest, g_free);
  changed = sy_task_row_update (row, task);
  count_task (self, sy_task_row_get_task (row), 1);
  if (renamed)
    {
      g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (guint32));

      g_array_append_val (places, place);
      insert_by_name (self, places);
    }
  return changed;
}

void
sy_task_list_merge (SyTaskList *self, GPtrArray *tasks)
{
  const guint before = self->rows->len;
  g_autoptr (GArray) added = g_array_new (FALSE, FALSE, sizeof (guint32));

  /* Known rows first: while they are announced, the list must not yet hold what is announced later. */
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];
      guint known = GPOINTER_TO_UINT (g_hash_table_lookup (self->positions, task->id));

      if (known != 0 && update_row (self, known - 1, task))
        g_list_model_items_changed (G_LIST_MODEL (self), known - 1, 1, 1);
    }
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];
      guint known = GPOINTER_TO_UINT (g_hash_table_lookup (self->positions, task->id));

      if (known == 0)
        {
          SyTaskRow *row = sy_task_row_new (task);
          guint32 place = self->rows->len;

          sy_task_row_set_today (row, self->today);
          g_ptr_array_add (self->rows, row);
          g_array_append_val (added, place);
          count_task (self, task, 1);
          g_hash_table_insert (self->positions, sy_task_row_get_task (row)->id, GUINT_TO_POINTER (self->rows->len));
        }
      else if (known > before)
        /* Told twice in one answer; not announced yet. */
        sy_task_row_update (self->rows->pdata[known - 1], task);
    }
  if (self->rows->len == before)
    return;
  insert_by_name (self, added);
  g_clear_pointer (&self->by_rest, g_free);
  g_list_model_items_changed (G_LIST_MODEL (self), before, 0, self->rows->len - before);
}

void
sy_task_list_set_today (SyTaskList *self, double today)
{
  gboolean any = FALSE;

  g_return_if_fail (SY_IS_TASK_LIST (self));
  if (isnan (today) || (!isnan (self->today) && !(today < self->today || today > self->today)))
    return;
  self->today = today;
  for (guint i = 0; i < self->rows->len; i++)
    any = sy_task_row_set_today (self->rows->pdata[i], today) || any;
  /* A verdict may have run out. */
  g_clear_pointer (&self->by_rest, g_free);
  if (any)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, self->rows->len, self->rows->len);
}
