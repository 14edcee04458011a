/* SPDX-License-Identifier: MIT */
#include "sy-task-list.h"

#include <math.h>
#include <string.h>

#define POLL_SECONDS 2

struct _SyTaskList
{
  GObject parent_instance;
  SyWorker *worker;
  GPtrArray *rows;       /* of SyTaskRow                 */
  GHashTable *positions; /* id → position + 1            */
  guint64 seen;          /* line of the journal          */
  guint counts[SY_N_REGISTERS];
  double today;          /* days since 1970              */
  GCancellable *cancellable;
  guint timer;
  gboolean asking, again, loading;
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

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyTaskList) self = SY_TASK_LIST (user_data);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  SyHead head = { 0 };

  tasks = sy_worker_changed_finish (SY_WORKER (source), result, &head, &error);
  self->asking = FALSE;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)
      || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CLOSED))
    return;
  if (tasks == NULL)
    {
      set_state (self, FALSE, error->message);
      return;
    }
  if (head.number < self->seen)
    {
      /* A journal only grows: this is another one, put in the place of the first. */
      guint n = self->rows->len;

      g_ptr_array_set_size (self->rows, 0);
      g_hash_table_remove_all (self->positions);
      memset (self->counts, 0, sizeof self->counts);
      self->seen = 0;
      if (n > 0)
        g_list_model_items_changed (G_LIST_MODEL (self), 0, n, 0);
      sy_task_list_refresh (self);
      return;
    }
  self->seen = head.number;
  sy_task_list_merge (self, tasks);
  set_state (self, FALSE, NULL);
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
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->positions, g_hash_table_unref);
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
  self->positions = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
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
  sy_worker_changed_async (self->worker, self->seen, self->cancellable, answered_cb,
                           g_object_ref (self));
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
count_kind (SyTaskList *self, const char *item_kind)
{
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (strcmp (item_kind, sy_register_item_kind ((SyRegister) i)) == 0)
      self->counts[i]++;
}

guint
sy_task_list_count (SyTaskList *self, SyRegister which)
{
  g_return_val_if_fail (SY_IS_TASK_LIST (self), 0);
  return self->counts[which];
}

void
sy_task_list_merge (SyTaskList *self, GPtrArray *tasks)
{
  guint before = self->rows->len;

  /* Known rows first: while they are announced, the list must not yet hold what is announced later. */
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];
      guint known = GPOINTER_TO_UINT (g_hash_table_lookup (self->positions, task->id));

      if (known != 0 && sy_task_row_update (self->rows->pdata[known - 1], task))
        g_list_model_items_changed (G_LIST_MODEL (self), known - 1, 1, 1);
    }
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];
      guint known = GPOINTER_TO_UINT (g_hash_table_lookup (self->positions, task->id));

      if (known == 0)
        {
          SyTaskRow *row = sy_task_row_new (task);

          sy_task_row_set_today (row, self->today);
          g_ptr_array_add (self->rows, row);
          count_kind (self, task->item_kind);
          g_hash_table_insert (self->positions, g_strdup (task->id),
                               GUINT_TO_POINTER (self->rows->len));
        }
      else if (known > before)
        sy_task_row_update (self->rows->pdata[known - 1], task);
    }
  if (self->rows->len > before)
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
  if (any)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, self->rows->len, self->rows->len);
}
