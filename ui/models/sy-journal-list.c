/* SPDX-License-Identifier: MIT */
#include "sy-journal-list.h"

#include <string.h>

#define PAGE 64       /* lines that are read in one go           */
#define KEPT_PAGES 48 /* beyond what somebody holds: 3000 lines  */
#define RENEWED 3     /* pages read anew when the journal went on: a window full */

/* Lines that were asked for together. */
typedef struct
{
  GPtrArray *lines; /* of SyJournalLine, newest first */
  GCancellable *cancellable;
} Page;

struct _SyJournalList
{
  GObject parent_instance;
  SyWorker *worker;
  GCancellable *cancellable; /* of the numbers */

  char *by, *from, *to, *item; /* the filter's */
  SyJournalFilter filter;
  gboolean is_filtered, loading, stale, asking;
  gboolean is_settled; /* what is listed is what the filter lets through */
  char *error;

  guint64 total;
  GArray *numbers;   /* of guint64, newest first; NULL: all from total down to 1 */
  guint n_items;
  GHashTable *lines;    /* number → line, which is not held and goes with its object */
  GHashTable *by_line;  /* line → number, to find it when it has gone                */
  GQueue pages;      /* latest first */
};

enum
{
  PROP_LOADING = 1,
  PROP_ERROR,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

static void list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyJournalList, sy_journal_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

static guint64
number_at (SyJournalList *self, guint position)
{
  return self->numbers != NULL ? g_array_index (self->numbers, guint64, position) : self->total - position;
}

static void
set_error (SyJournalList *self, const GError *error)
{
  if (g_strcmp0 (self->error, error != NULL ? error->message : NULL) == 0)
    return;
  g_free (self->error);
  self->error = error != NULL ? g_strdup (error->message) : NULL;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_ERROR]);
}

static void
set_text (char **text, const char *value)
{
  g_free (*text);
  *text = g_strdup (value);
}

static void
set_loading (SyJournalList *self, gboolean loading)
{
  if (self->loading == loading)
    return;
  self->loading = loading;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_LOADING]);
}

/* Topics: pages */

static void
free_page (gpointer data)
{
  Page *page = data;

  g_cancellable_cancel (page->cancellable);
  g_object_unref (page->cancellable);
  g_ptr_array_unref (page->lines);
  g_free (page);
}

static void
line_gone_cb (gpointer data, GObject *line)
{
  SyJournalList *self = data;
  gpointer number = g_hash_table_lookup (self->by_line, line);

  g_hash_table_remove (self->by_line, line);
  g_hash_table_remove (self->lines, number);
}

/* New reference. */
static SyJournalLine *
need_line (SyJournalList *self, guint64 number, gboolean *is_new)
{
  SyJournalLine *line = g_hash_table_lookup (self->lines, GSIZE_TO_POINTER (number));

  *is_new = line == NULL;
  if (line != NULL)
    return g_object_ref (line);
  line = sy_journal_line_new (number);
  g_hash_table_insert (self->lines, GSIZE_TO_POINTER (number), line);
  g_hash_table_insert (self->by_line, line, GSIZE_TO_POINTER (number));
  g_object_weak_ref (G_OBJECT (line), line_gone_cb, self);
  return line;
}

static void
rows_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyJournalList) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rows = sy_worker_journal_finish (SY_WORKER (source), result, &error);

  if (self->worker == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  set_error (self, error);
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      SyJournalRow *row = rows->pdata[i];
      SyJournalLine *line = g_hash_table_lookup (self->lines, GSIZE_TO_POINTER (row->number));

      if (line == NULL)
        continue;
      rows->pdata[i] = NULL;
      g_object_ref (line);
      sy_journal_line_take_row (line, row);
      g_object_unref (line);
    }
}

static void
ask_rows (SyJournalList *self, Page *page)
{
  SyJournalLine *first = page->lines->pdata[0];

  sy_worker_journal_async (self->worker, &self->filter, sy_journal_line_get_number (first) + 1, page->lines->len,
                           page->cancellable, rows_cb, g_object_ref (self));
}

/* The page around a position: what of it is not known yet is asked for. */
static void
need_page (SyJournalList *self, guint position)
{
  const guint from = position / PAGE * PAGE, to = MIN (from + PAGE, self->n_items);
  Page *page = g_new0 (Page, 1);

  page->cancellable = g_cancellable_new ();
  page->lines = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint at = from; at < to; at++)
    {
      gboolean is_new;

      g_ptr_array_add (page->lines, need_line (self, number_at (self, at), &is_new));
    }
  g_queue_push_head (&self->pages, page);
  ask_rows (self, page);
  if (g_queue_get_length (&self->pages) > KEPT_PAGES)
    free_page (g_queue_pop_tail (&self->pages));
}

/* A line that somebody still held from another filter may be in no page. */
static gboolean
is_asked (SyJournalList *self, SyJournalLine *line)
{
  for (GList *l = self->pages.head; l != NULL; l = l->next)
    if (g_ptr_array_find (((Page *) l->data)->lines, line, NULL))
      return TRUE;
  return FALSE;
}

/* Topics: the list model */

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return SY_TYPE_JOURNAL_LINE;
}

static guint
get_n_items (GListModel *model)
{
  return SY_JOURNAL_LIST (model)->n_items;
}

static gpointer
get_item (GListModel *model, guint position)
{
  SyJournalList *self = SY_JOURNAL_LIST (model);
  SyJournalLine *line;
  gboolean is_new;

  if (position >= self->n_items)
    return NULL;
  line = need_line (self, number_at (self, position), &is_new);
  if (is_new || (sy_journal_line_get_row (line) == NULL && !is_asked (self, line)))
    need_page (self, position);
  return line;
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

/* Topics: what there is */

/* Names that changed and what is new about lines that are looked at. */
static void
renew_pages (SyJournalList *self)
{
  guint left = RENEWED;

  for (GList *l = self->pages.head; l != NULL && left > 0; l = l->next, left--)
    ask_rows (self, l->data);
}

/* Whether the old numbers are the end of the new ones: then lines were only added. */
static gboolean
only_grew (const GArray *old, const GArray *new)
{
  if (old == NULL || new == NULL || old->len > new->len)
    return FALSE;
  return memcmp (&g_array_index (new, guint64, new->len - old->len), old->data, old->len * sizeof (guint64)) == 0;
}

/* Takes @numbers. */
static void
settle (SyJournalList *self, guint64 total, GArray *numbers, gboolean is_same_filter)
{
  const guint before = self->n_items;
  const guint after = numbers != NULL ? numbers->len : (guint) MIN (total, (guint64) G_MAXUINT);
  const gboolean grew = is_same_filter
                        && (numbers != NULL ? only_grew (self->numbers, numbers)
                                            : self->numbers == NULL && total >= self->total);
  GArray *old = self->numbers;

  self->is_settled = TRUE;
  self->numbers = numbers;
  self->total = total;
  self->n_items = after;
  if (old != NULL)
    g_array_unref (old);
  if (grew && after > before)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, 0, after - before);
  if (grew)
    renew_pages (self);
  else
    {
      g_queue_clear_full (&self->pages, free_page);
      g_list_model_items_changed (G_LIST_MODEL (self), 0, before, after);
    }
}

/* One answer to one question: under which filter it was asked, and its two parts. */
typedef struct
{
  SyJournalList *list;
  gboolean is_same_filter;
  guint64 total;
} Asking;

static void
free_asking (Asking *asking)
{
  g_object_unref (asking->list);
  g_free (asking);
}

static void ask (SyJournalList *self, gboolean is_same_filter);

static void
answered (SyJournalList *self, const GError *error)
{
  self->asking = FALSE;
  set_error (self, error);
  set_loading (self, FALSE);
  if (self->stale)
    ask (self, self->is_settled);
}

static void
numbers_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Asking *asking = user_data;
  SyJournalList *self = asking->list;
  g_autoptr (GError) error = NULL;
  GArray *numbers = sy_worker_journal_numbers_finish (SY_WORKER (source), result, &error);

  if (self->worker != NULL && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    {
      if (numbers != NULL)
        settle (self, asking->total, g_steal_pointer (&numbers), asking->is_same_filter);
      answered (self, error);
    }
  g_clear_pointer (&numbers, g_array_unref);
  free_asking (asking);
}

static void
count_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Asking *asking = user_data;
  SyJournalList *self = asking->list;
  g_autoptr (GError) error = NULL;
  const gboolean done = sy_worker_journal_count_finish (SY_WORKER (source), result, &asking->total, &error);

  if (self->worker == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    {
      free_asking (asking);
      return;
    }
  if (done && self->is_filtered && (!asking->is_same_filter || asking->total != self->total))
    {
      sy_worker_journal_numbers_async (self->worker, &self->filter, self->cancellable, numbers_cb, asking);
      return;
    }
  if (done && !self->is_filtered && (!asking->is_same_filter || asking->total != self->total))
    settle (self, asking->total, NULL, asking->is_same_filter);
  answered (self, error);
  free_asking (asking);
}

static void
ask (SyJournalList *self, gboolean is_same_filter)
{
  Asking *asking;

  self->stale = FALSE;
  self->asking = TRUE;
  asking = g_new0 (Asking, 1);
  asking->list = g_object_ref (self);
  asking->is_same_filter = is_same_filter;
  sy_worker_journal_count_async (self->worker, NULL, self->cancellable, count_cb, asking);
}

static void
changed_cb (SyWorker *worker, SyJournalList *self)
{
  (void) worker;
  /* It may have been the lists alone that were put right. */
  renew_pages (self);
  sy_journal_list_refresh (self);
}

/* Topics: building */

static void
sy_journal_list_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SyJournalList *self = SY_JOURNAL_LIST (object);

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
sy_journal_list_dispose (GObject *object)
{
  SyJournalList *self = SY_JOURNAL_LIST (object);

  g_cancellable_cancel (self->cancellable);
  g_queue_clear_full (&self->pages, free_page);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_journal_list_parent_class)->dispose (object);
}

static void
sy_journal_list_finalize (GObject *object)
{
  SyJournalList *self = SY_JOURNAL_LIST (object);
  GHashTableIter iter;
  gpointer line;

  g_hash_table_iter_init (&iter, self->by_line);
  while (g_hash_table_iter_next (&iter, &line, NULL))
    g_object_weak_unref (line, line_gone_cb, self);
  g_hash_table_unref (self->by_line);
  g_hash_table_unref (self->lines);
  g_clear_pointer (&self->numbers, g_array_unref);
  g_clear_object (&self->cancellable);
  g_free (self->by);
  g_free (self->from);
  g_free (self->to);
  g_free (self->item);
  g_free (self->error);
  G_OBJECT_CLASS (sy_journal_list_parent_class)->finalize (object);
}

static void
sy_journal_list_class_init (SyJournalListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sy_journal_list_get_property;
  object_class->dispose = sy_journal_list_dispose;
  object_class->finalize = sy_journal_list_finalize;
  props[PROP_LOADING]
    = g_param_spec_boolean ("loading", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_ERROR] = g_param_spec_string ("error", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sy_journal_list_init (SyJournalList *self)
{
  self->cancellable = g_cancellable_new ();
  self->lines = g_hash_table_new (NULL, NULL);
  self->by_line = g_hash_table_new (NULL, NULL);
  g_queue_init (&self->pages);
  self->loading = TRUE;
}

SyJournalList *
sy_journal_list_new (SyWorker *worker)
{
  SyJournalList *self = g_object_new (SY_TYPE_JOURNAL_LIST, NULL);

  self->worker = g_object_ref (worker);
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  ask (self, FALSE);
  return self;
}

void
sy_journal_list_set_filter (SyJournalList *self, const SyJournalFilter *filter)
{
  const SyJournalFilter any = { .by = NULL };

  g_return_if_fail (SY_IS_JOURNAL_LIST (self));
  if (filter == NULL)
    filter = &any;
  if (g_strcmp0 (filter->by, self->by) == 0 && g_strcmp0 (filter->from, self->from) == 0
      && g_strcmp0 (filter->to, self->to) == 0 && g_strcmp0 (filter->item, self->item) == 0
      && filter->kind == self->filter.kind)
    return;
  /* What is on its way answers another question. */
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  self->cancellable = g_cancellable_new ();
  set_text (&self->by, filter->by);
  set_text (&self->from, filter->from);
  set_text (&self->to, filter->to);
  set_text (&self->item, filter->item);
  self->filter = (SyJournalFilter) {
    .by = self->by, .from = self->from, .to = self->to, .kind = filter->kind, .item = self->item,
  };
  self->is_filtered = self->by != NULL || self->from != NULL || self->to != NULL || self->item != NULL || filter->kind != 0;
  self->is_settled = FALSE;
  set_loading (self, TRUE);
  ask (self, FALSE);
}

gboolean
sy_journal_list_is_filtered (SyJournalList *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_LIST (self), FALSE);
  return self->is_filtered;
}

void
sy_journal_list_refresh (SyJournalList *self)
{
  g_return_if_fail (SY_IS_JOURNAL_LIST (self));
  if (self->asking)
    self->stale = TRUE;
  else
    ask (self, self->is_settled);
}

gboolean
sy_journal_list_get_loading (SyJournalList *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_LIST (self), FALSE);
  return self->loading;
}

const char *
sy_journal_list_get_error (SyJournalList *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_LIST (self), NULL);
  return self->error;
}

guint64
sy_journal_list_get_total (SyJournalList *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_LIST (self), 0);
  return self->total;
}

gboolean
sy_journal_list_find (SyJournalList *self, guint64 number, guint *position)
{
  guint low = 0, high;

  g_return_val_if_fail (SY_IS_JOURNAL_LIST (self), FALSE);
  high = self->n_items;
  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (number_at (self, middle) > number)
        low = middle + 1;
      else
        high = middle;
    }
  if (low >= self->n_items || number_at (self, low) != number)
    return FALSE;
  *position = low;
  return TRUE;
}
