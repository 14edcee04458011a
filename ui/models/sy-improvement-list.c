/* SPDX-License-Identifier: MIT */
#include "sy-improvement-list.h"

struct _SyImprovementList
{
  GObject parent_instance;
  SyWorker *worker;
  GCancellable *cancellable;
  GPtrArray *views;  /* of SyImprovementView; NULL: not read yet     */
  GPtrArray *all;    /* of SyImprovementRow, as many as there are views */
  GPtrArray *rows;   /* of them, those that are listed               */
  GArray *quarters;
  SyHead head;
  char *error;
  char **words;
  gboolean withdrawn, is_watched, is_stale, asking;
};

enum
{
  READ,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyImprovementList, sy_improvement_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

/* Topics: the list model */

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return SY_TYPE_IMPROVEMENT_ROW;
}

static guint
get_n_items (GListModel *model)
{
  return SY_IMPROVEMENT_LIST (model)->rows->len;
}

static gpointer
get_item (GListModel *model, guint position)
{
  SyImprovementList *self = SY_IMPROVEMENT_LIST (model);

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
is_listed (SyImprovementList *self, SyImprovementRow *row)
{
  return (self->withdrawn || !sy_improvement_row_get_view (row)->improvement->withdrawn)
         && (self->words == NULL || sy_improvement_row_has (row, self->words));
}

/* Announces only what lies between the first and the last row that are others than before. */
static void
list (SyImprovementList *self)
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

/* Takes @views. */
static void
take (SyImprovementList *self, GPtrArray *views)
{
  g_autoptr (GHashTable) known = g_hash_table_new (g_str_hash, g_str_equal);
  GPtrArray *all = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < self->all->len; i++)
    g_hash_table_insert (known, sy_improvement_row_get_view (self->all->pdata[i])->improvement->id, self->all->pdata[i]);
  for (guint i = 0; i < views->len; i++)
    {
      const SyImprovementView *view = views->pdata[i];
      SyImprovementRow *row = sy_improvement_row_new (views, view);
      SyImprovementRow *before = g_hash_table_lookup (known, view->improvement->id);

      if (before != NULL && sy_improvement_row_equals (before, row))
        {
          g_object_unref (row);
          row = g_object_ref (before);
        }
      g_ptr_array_add (all, row);
    }
  g_ptr_array_unref (self->all);
  self->all = all;
  g_clear_pointer (&self->views, g_ptr_array_unref);
  self->views = views;
  g_array_unref (self->quarters);
  self->quarters = sy_improvement_quarters (views);
  list (self);
}

/* Topics: asking */

static void ask (SyImprovementList *self);

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyImprovementList) self = user_data;
  g_autoptr (GError) error = NULL;
  SyHead head;
  GPtrArray *views = sy_worker_improvements_finish (SY_WORKER (source), result, &head, &error);

  self->asking = FALSE;
  if (self->worker == NULL)
    {
      g_clear_pointer (&views, g_ptr_array_unref);
      return;
    }
  g_clear_pointer (&self->error, g_free);
  self->error = error != NULL ? g_strdup (error->message) : NULL;
  if (views != NULL)
    {
      self->head = head;
      take (self, views);
    }
  g_signal_emit (self, signals[READ], 0);
  if (self->is_stale && self->is_watched)
    ask (self);
}

static void
ask (SyImprovementList *self)
{
  self->is_stale = TRUE;
  if (self->asking || !self->is_watched)
    return;
  self->is_stale = FALSE;
  self->asking = TRUE;
  sy_worker_improvements_async (self->worker, self->cancellable, answered_cb, g_object_ref (self));
}

static void
changed_cb (SyWorker *worker, SyImprovementList *self)
{
  (void) worker;
  ask (self);
}

/* Topics: building */

static void
sy_improvement_list_dispose (GObject *object)
{
  SyImprovementList *self = SY_IMPROVEMENT_LIST (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_improvement_list_parent_class)->dispose (object);
}

static void
sy_improvement_list_finalize (GObject *object)
{
  SyImprovementList *self = SY_IMPROVEMENT_LIST (object);

  g_object_unref (self->cancellable);
  g_ptr_array_unref (self->rows);
  g_ptr_array_unref (self->all);
  g_clear_pointer (&self->views, g_ptr_array_unref);
  g_array_unref (self->quarters);
  g_free (self->error);
  g_strfreev (self->words);
  G_OBJECT_CLASS (sy_improvement_list_parent_class)->finalize (object);
}

static void
sy_improvement_list_class_init (SyImprovementListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_improvement_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = sy_improvement_list_finalize;
  signals[READ] = g_signal_new ("read", SY_TYPE_IMPROVEMENT_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sy_improvement_list_init (SyImprovementList *self)
{
  self->cancellable = g_cancellable_new ();
  self->all = g_ptr_array_new_with_free_func (g_object_unref);
  self->rows = g_ptr_array_new_with_free_func (g_object_unref);
  self->quarters = g_array_new (FALSE, TRUE, sizeof (SyQuarter));
  self->is_stale = TRUE;
}

SyImprovementList *
sy_improvement_list_new (SyWorker *worker)
{
  SyImprovementList *self = g_object_new (SY_TYPE_IMPROVEMENT_LIST, NULL);

  self->worker = g_object_ref (worker);
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  return self;
}

void
sy_improvement_list_set_search (SyImprovementList *self, const char *words)
{
  g_autofree char *folded = NULL;

  g_return_if_fail (SY_IS_IMPROVEMENT_LIST (self));
  folded = words != NULL ? g_utf8_casefold (words, -1) : NULL;
  g_strfreev (self->words);
  self->words = folded != NULL ? g_strsplit (folded, " ", -1) : NULL;
  list (self);
}

void
sy_improvement_list_set_withdrawn (SyImprovementList *self, gboolean withdrawn)
{
  g_return_if_fail (SY_IS_IMPROVEMENT_LIST (self));
  self->withdrawn = withdrawn;
  list (self);
}

void
sy_improvement_list_refresh (SyImprovementList *self)
{
  g_return_if_fail (SY_IS_IMPROVEMENT_LIST (self));
  ask (self);
}

void
sy_improvement_list_set_watched (SyImprovementList *self, gboolean is_watched)
{
  g_return_if_fail (SY_IS_IMPROVEMENT_LIST (self));
  self->is_watched = is_watched;
  if (is_watched)
    ask (self);
}

const char *
sy_improvement_list_get_error (SyImprovementList *self)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENT_LIST (self), NULL);
  return self->error;
}

GPtrArray *
sy_improvement_list_get_views (SyImprovementList *self)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENT_LIST (self), NULL);
  return self->views;
}

const GArray *
sy_improvement_list_get_quarters (SyImprovementList *self)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENT_LIST (self), NULL);
  return self->quarters;
}

const SyHead *
sy_improvement_list_get_head (SyImprovementList *self)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENT_LIST (self), NULL);
  return &self->head;
}
