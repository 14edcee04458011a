/* SPDX-License-Identifier: MIT */
#include "sy-due-list.h"

#include "sy-worker-journal.h"

#define WAIT_MS 200 /* what is recorded in one go is read once */

struct _SyDueList
{
  GObject parent_instance;
  SyWorker *worker;
  SyTaskList *items;
  GCancellable *cancellable;
  GPtrArray *all, *rows; /* of SyDueRow: everything, and what is listed */
  char *assigned, *error;
  char **words;
  guint timer;
  gboolean closed, is_watched, is_stale, asking, loading;
};

enum
{
  PROP_LOADING = 1,
  PROP_ERROR,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

static void list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyDueList, sy_due_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

/* Topics: the list model */

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return SY_TYPE_DUE_ROW;
}

static guint
get_n_items (GListModel *model)
{
  return SY_DUE_LIST (model)->rows->len;
}

static gpointer
get_item (GListModel *model, guint position)
{
  SyDueList *self = SY_DUE_LIST (model);

  return position < self->rows->len ? g_object_ref (self->rows->pdata[position]) : NULL;
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

/* Topics: what is listed */

static gboolean
is_listed (SyDueList *self, SyDueRow *row)
{
  return (self->assigned == NULL || g_str_equal (self->assigned, sy_due_row_get_assigned (row)))
         && (self->words == NULL || sy_due_row_has (row, self->words));
}

/* Announces only what lies between the first and the last row that are others than before. */
static void
list (SyDueList *self)
{
  GPtrArray *old = self->rows, *rows = g_ptr_array_new_with_free_func (g_object_unref);
  guint head = 0, tail = 0;

  for (guint i = 0; i < self->all->len; i++)
    if (is_listed (self, self->all->pdata[i]))
      g_ptr_array_add (rows, g_object_ref (self->all->pdata[i]));
  while (head < MIN (old->len, rows->len) && old->pdata[head] == rows->pdata[head])
    head++;
  while (tail < MIN (old->len, rows->len) - head
         && old->pdata[old->len - 1 - tail] == rows->pdata[rows->len - 1 - tail])
    tail++;
  self->rows = rows;
  if (old->len != rows->len || head < rows->len)
    g_list_model_items_changed (G_LIST_MODEL (self), head, old->len - head - tail, rows->len - head - tail);
  g_ptr_array_unref (old);
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  return sy_due_row_compare (*(SyDueRow *const *) a, *(SyDueRow *const *) b);
}

/* Takes @row; what was known before stays the same object. */
static void
add_row (GPtrArray *all, GHashTable *known, SyDueRow *row)
{
  SyDueRow *before = g_hash_table_lookup (known, sy_due_row_get_key (row));

  if (before != NULL && sy_due_row_equals (before, row))
    {
      g_object_unref (row);
      row = g_object_ref (before);
    }
  g_ptr_array_add (all, row);
}

/* Takes what is in @actions. */
static void
take (SyDueList *self, GPtrArray *actions)
{
  g_autoptr (GHashTable) known = g_hash_table_new (g_str_hash, g_str_equal);
  const GPtrArray *items = sy_task_list_rows (self->items);
  GPtrArray *all = g_ptr_array_new_with_free_func (g_object_unref);
  const double today = sy_clock_today ();

  for (guint i = 0; i < self->all->len; i++)
    g_hash_table_insert (known, (char *) sy_due_row_get_key (self->all->pdata[i]), self->all->pdata[i]);
  for (guint i = 0; i < actions->len; i++)
    add_row (all, known, sy_due_row_new_action (g_steal_pointer (&actions->pdata[i]), today));
  for (guint i = 0; i < items->len; i++)
    {
      const SyTask *task = sy_task_row_get_task (items->pdata[i]);
      SyDueRow *row = task->retired ? NULL : sy_due_row_new_review (task, today);

      if (row != NULL)
        add_row (all, known, row);
    }
  g_ptr_array_sort (all, compare_rows);
  g_ptr_array_unref (self->all);
  self->all = all;
  list (self);
}

/* Topics: asking */

static void ask (SyDueList *self);

static void
set_state (SyDueList *self, gboolean loading, const GError *error)
{
  const gboolean was_loading = self->loading;
  const gboolean is_same = g_strcmp0 (self->error, error != NULL ? error->message : NULL) == 0;

  self->loading = loading;
  if (!is_same)
    {
      g_free (self->error);
      self->error = error != NULL ? g_strdup (error->message) : NULL;
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_ERROR]);
    }
  if (was_loading != loading)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_LOADING]);
}

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyDueList) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) actions = sy_worker_actions_finish (SY_WORKER (source), result, &error);

  self->asking = FALSE;
  if (self->worker == NULL)
    return;
  if (actions != NULL)
    take (self, actions);
  set_state (self, FALSE, error);
  if (self->is_stale && self->is_watched)
    ask (self);
}

static void
ask (SyDueList *self)
{
  const SyActionFilter filter = { .open = !self->closed };

  self->is_stale = TRUE;
  if (self->asking || !self->is_watched)
    return;
  self->is_stale = FALSE;
  self->asking = TRUE;
  sy_worker_actions_async (self->worker, &filter, self->cancellable, answered_cb, g_object_ref (self));
}

static gboolean
ask_cb (gpointer user_data)
{
  SyDueList *self = user_data;

  self->timer = 0;
  ask (self);
  return G_SOURCE_REMOVE;
}

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, SyDueList *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  self->is_stale = TRUE;
  if (self->timer == 0 && self->is_watched)
    self->timer = g_timeout_add (WAIT_MS, ask_cb, self);
}

/* Topics: building */

static void
sy_due_list_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SyDueList *self = SY_DUE_LIST (object);

  switch (id)
    {
    case PROP_LOADING:
      g_value_set_boolean (value, self->loading);
      break;
    case PROP_ERROR:
      g_value_set_string (value, self->error);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
sy_due_list_dispose (GObject *object)
{
  SyDueList *self = SY_DUE_LIST (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->items);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_due_list_parent_class)->dispose (object);
}

static void
sy_due_list_finalize (GObject *object)
{
  SyDueList *self = SY_DUE_LIST (object);

  g_object_unref (self->cancellable);
  g_ptr_array_unref (self->all);
  g_ptr_array_unref (self->rows);
  g_free (self->assigned);
  g_free (self->error);
  g_strfreev (self->words);
  G_OBJECT_CLASS (sy_due_list_parent_class)->finalize (object);
}

static void
sy_due_list_class_init (SyDueListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sy_due_list_get_property;
  object_class->dispose = sy_due_list_dispose;
  object_class->finalize = sy_due_list_finalize;
  props[PROP_LOADING]
    = g_param_spec_boolean ("loading", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_ERROR] = g_param_spec_string ("error", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sy_due_list_init (SyDueList *self)
{
  self->cancellable = g_cancellable_new ();
  self->all = g_ptr_array_new_with_free_func (g_object_unref);
  self->rows = g_ptr_array_new_with_free_func (g_object_unref);
  self->loading = self->is_stale = TRUE;
}

SyDueList *
sy_due_list_new (SyWorker *worker, SyTaskList *items)
{
  SyDueList *self = g_object_new (SY_TYPE_DUE_LIST, NULL);

  self->worker = g_object_ref (worker);
  self->items = g_object_ref (items);
  g_signal_connect_object (items, "items-changed", G_CALLBACK (items_changed_cb), self, 0);
  return self;
}

void
sy_due_list_set_assigned (SyDueList *self, const char *assigned)
{
  g_return_if_fail (SY_IS_DUE_LIST (self));
  g_free (self->assigned);
  self->assigned = g_strdup (assigned);
  list (self);
}

void
sy_due_list_set_search (SyDueList *self, const char *words)
{
  g_autofree char *folded = NULL;

  g_return_if_fail (SY_IS_DUE_LIST (self));
  folded = words != NULL ? g_utf8_casefold (words, -1) : NULL;
  g_strfreev (self->words);
  self->words = folded != NULL ? g_strsplit (folded, " ", -1) : NULL;
  list (self);
}

void
sy_due_list_set_closed (SyDueList *self, gboolean closed)
{
  g_return_if_fail (SY_IS_DUE_LIST (self));
  self->closed = closed;
  ask (self);
}

void
sy_due_list_refresh (SyDueList *self)
{
  g_return_if_fail (SY_IS_DUE_LIST (self));
  ask (self);
}

void
sy_due_list_set_watched (SyDueList *self, gboolean is_watched)
{
  g_return_if_fail (SY_IS_DUE_LIST (self));
  self->is_watched = is_watched;
  if (is_watched)
    ask (self);
}

gboolean
sy_due_list_get_loading (SyDueList *self)
{
  g_return_val_if_fail (SY_IS_DUE_LIST (self), FALSE);
  return self->loading;
}

const char *
sy_due_list_get_error (SyDueList *self)
{
  g_return_val_if_fail (SY_IS_DUE_LIST (self), NULL);
  return self->error;
}

guint
sy_due_list_count (SyDueList *self, SyDueWhen when)
{
  guint count = 0;

  g_return_val_if_fail (SY_IS_DUE_LIST (self), 0);
  for (guint i = 0; i < self->all->len; i++)
    count += sy_due_row_get_when (self->all->pdata[i]) == when ? 1 : 0;
  return count;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_utf8_collate (*(char *const *) a, *(char *const *) b);
}

char **
sy_due_list_people (SyDueList *self)
{
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);
  GPtrArray *people = g_ptr_array_new ();

  g_return_val_if_fail (SY_IS_DUE_LIST (self), NULL);
  for (guint i = 0; i < self->all->len; i++)
    {
      const char *name = sy_due_row_get_assigned (self->all->pdata[i]);

      if (*name != '\0' && g_hash_table_add (names, (char *) name))
        g_ptr_array_add (people, g_strdup (name));
    }
  g_ptr_array_sort (people, compare_names);
  g_ptr_array_add (people, NULL);
  return (char **) g_ptr_array_free (people, FALSE);
}
