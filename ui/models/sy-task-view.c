/* SPDX-License-Identifier: MIT */
#include "sy-task-view.h"

#include <string.h>

#include "sy-worker-search.h"

/* So many rows are moved one by one; the order of more is made anew, which then costs less. */
#define FEW 16

struct _SyTaskView
{
  GObject parent_instance;
  SyTaskList *list;
  SyTaskChoice choice;
  SyTaskKey keys[SY_TASK_KEYS_MAX];
  guint n_keys;
  GArray *order;   /* of guint32: places in the list of all rows of the kind */
  GArray *shown;   /* those of them that are shown                           */
  GByteArray *may; /* for each place of the list: whether it is chosen       */
  GArray *seats;   /* of guint32, likewise: its seat in the store            */
  char *search;    /* NULL: nothing is searched for                          */
  guint64 *found;  /* a bit a seat; NULL: nothing was searched for           */
  guint64 n_found; /* seats in it                                            */
  GCancellable *asked; /* NULL: no search waits for an answer                */
  char *error;
};

static void
sy_task_view_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyTaskView, sy_task_view, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, sy_task_view_model_init))

enum
{
  VIEW_PENDING = 1,
  VIEW_ERROR,
  N_VIEW_PROPERTIES
};
static GParamSpec *view_properties[N_VIEW_PROPERTIES];

/* Topics: places */

static guint32
place_at (const GArray *places, guint i)
{
  return g_array_index (places, guint32, i);
}

static gboolean
is_of_kind (SyTaskView *self, guint32 place)
{
  return self->choice.item_kind == NULL
         || strcmp (sy_task_row_get_task (sy_task_list_peek (self->list, place))->item_kind, self->choice.item_kind) == 0;
}

static gboolean
is_found (SyTaskView *self, guint32 place)
{
  guint32 seat;

  if (self->found == NULL)
    return TRUE;
  seat = g_array_index (self->seats, guint32, place);
  return seat < self->n_found && (self->found[seat / 64] >> (seat % 64) & 1) != 0;
}

static gboolean
is_shown (SyTaskView *self, guint32 place)
{
  return self->may->data[place] != 0 && is_found (self, place);
}

static void
look_at (SyTaskView *self, guint32 place)
{
  SyTaskRow *row = sy_task_list_peek (self->list, place);

  self->may->data[place] = (guint8) sy_task_chosen (row, &self->choice);
  g_array_index (self->seats, guint32, place) = (guint32) sy_task_row_get_task (row)->seat;
}

static int
compare_places (SyTaskView *self, guint32 a, guint32 b)
{
  return sy_task_order_by (sy_task_list_peek (self->list, a), sy_task_list_peek (self->list, b), self->keys, self->n_keys);
}

/* Where the place belongs among those that stand in order. */
static guint
find_room (SyTaskView *self, const GArray *places, guint32 place)
{
  guint low = 0, high = places->len;

  while (low < high)
    {
      guint middle = low + (high - low) / 2;

      if (compare_places (self, place_at (places, middle), place) < 0)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Its length when it is not there. A row that changed may no longer stand where its order says. */
static guint
find_place (const GArray *places, guint32 place)
{
  const guint32 *data = (const guint32 *) (gpointer) places->data;
  guint i = 0;

  while (i < places->len && data[i] != place)
    i++;
  return i;
}

/* Topics: what is shown */

/* Tells what is now shown, in one announcement. @all: every row may look different. */
static void
show (SyTaskView *self, gboolean all)
{
  GArray *before = self->shown;
  GArray *after = g_array_sized_new (FALSE, FALSE, sizeof (guint32), self->order->len);
  guint first = 0, last = 0, least;

  for (guint i = 0; i < self->order->len; i++)
    {
      guint32 place = place_at (self->order, i);

      if (is_shown (self, place))
        g_array_append_val (after, place);
    }
  least = all ? 0 : MIN (before->len, after->len);
  while (first < least && place_at (before, first) == place_at (after, first))
    first++;
  while (last < least - first && place_at (before, before->len - 1 - last) == place_at (after, after->len - 1 - last))
    last++;
  self->shown = after;
  if (before->len != first + last || after->len != first + last)
    g_list_model_items_changed (G_LIST_MODEL (self), first, before->len - first - last, after->len - first - last);
  g_array_unref (before);
}

static void
sort (SyTaskView *self)
{
  const GPtrArray *rows = sy_task_list_rows (self->list);
  const guint32 *by_rest = sy_task_list_by_rest (self->list);

  g_array_set_size (self->order, 0);
  for (guint i = 0; i < rows->len; i++)
    if (is_of_kind (self, by_rest[i]))
      g_array_append_val (self->order, by_rest[i]);
  sy_task_sort (rows, (guint32 *) (gpointer) self->order->data, self->order->len, sy_task_list_by_name (self->list), self->keys,
                self->n_keys);
}

static void
choose_all (SyTaskView *self)
{
  const guint n = sy_task_list_rows (self->list)->len;

  g_byte_array_set_size (self->may, n);
  g_array_set_size (self->seats, n);
  for (guint i = 0; i < n; i++)
    look_at (self, i);
}

/* A row that looks different, or is new: it alone is taken from where it stood and put where it belongs. */
static void
move_row (SyTaskView *self, guint32 place)
{
  const guint in_order = find_place (self->order, place);
  guint from, to;

  if (!is_of_kind (self, place))
    return;
  look_at (self, place);
  if (in_order < self->order->len)
    g_array_remove_index (self->order, in_order);
  to = find_room (self, self->order, place);
  g_array_insert_val (self->order, to, place);

  from = find_place (self->shown, place);
  if (from < self->shown->len)
    g_array_remove_index (self->shown, from);
  else
    from = G_MAXUINT;
  to = is_shown (self, place) ? find_room (self, self->shown, place) : G_MAXUINT;
  if (to != G_MAXUINT && from == to)
    {
      g_array_insert_val (self->shown, to, place);
      g_list_model_items_changed (G_LIST_MODEL (self), to, 1, 1);
      return;
    }
  if (from != G_MAXUINT)
    g_list_model_items_changed (G_LIST_MODEL (self), from, 1, 0);
  if (to != G_MAXUINT)
    {
      g_array_insert_val (self->shown, to, place);
      g_list_model_items_changed (G_LIST_MODEL (self), to, 0, 1);
    }
}

/* Topics: words */

static void
set_error (SyTaskView *self, const char *error)
{
  if (g_strcmp0 (self->error, error) == 0)
    return;
  g_free (self->error);
  self->error = g_strdup (error);
  g_object_notify_by_pspec (G_OBJECT (self), view_properties[VIEW_ERROR]);
}

static void
set_asked (SyTaskView *self, GCancellable *asked)
{
  gboolean pending = self->asked != NULL;

  if (self->asked != NULL)
    g_cancellable_cancel (self->asked);
  g_clear_object (&self->asked);
  self->asked = asked;
  if (pending != (asked != NULL))
    g_object_notify_by_pspec (G_OBJECT (self), view_properties[VIEW_PENDING]);
}

static void
set_found (SyTaskView *self, const GArray *seats)
{
  g_clear_pointer (&self->found, g_free);
  self->n_found = 0;
  if (seats == NULL)
    return;
  if (seats->len > 0)
    self->n_found = (guint64) g_array_index (seats, gint64, seats->len - 1) + 1;
  self->found = g_new0 (guint64, self->n_found / 64 + 1);
  for (guint i = 0; i < seats->len; i++)
    {
      guint64 seat = (guint64) g_array_index (seats, gint64, i);

      self->found[seat / 64] |= G_GUINT64_CONSTANT (1) << (seat % 64);
    }
}

static void
found_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyTaskView) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) seats = sy_worker_search_finish (SY_WORKER (source), result, &error);

  /* Something else has been asked since, or nothing is any more. */
  if (self->asked == NULL || g_task_get_cancellable (G_TASK (result)) != self->asked)
    return;
  if (error == NULL)
    {
      set_found (self, seats);
      show (self, FALSE);
    }
  set_error (self, error != NULL ? error->message : NULL);
  /* Whoever waits for the answer sees the rows that it gave. */
  set_asked (self, NULL);
}

static void
ask (SyTaskView *self)
{
  set_asked (self, g_cancellable_new ());
  sy_worker_search_async (sy_task_list_get_worker (self->list), self->search, self->asked, found_cb, g_object_ref (self));
}

/* Topics: following the list */

static void
list_changed_cb (GListModel *list, guint position, guint removed, guint added, SyTaskView *self)
{
  const guint n = g_list_model_get_n_items (list);
  const guint before = self->may->len;

  if (removed == 1 && added == 1)
    move_row (self, position);
  else if (removed == 0 && position == before && added <= FEW)
    {
      g_byte_array_set_size (self->may, n);
      memset (self->may->data + before, 0, n - before);
      g_array_set_size (self->seats, n);
      for (guint i = before; i < n; i++)
        move_row (self, i);
    }
  else
    {
      /* Where the rows are others, what was shown is no place of theirs. */
      const gboolean all = removed > 0;

      if (all && n < before)
        {
          guint shown = self->shown->len;

          g_array_set_size (self->shown, 0);
          if (shown > 0)
            g_list_model_items_changed (G_LIST_MODEL (self), 0, shown, 0);
        }
      choose_all (self);
      sort (self);
      show (self, all);
    }
  /* Whether a row that changed has the words is for the store to say. */
  if (self->search != NULL)
    ask (self);
}

/* Topics: object */

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return SY_TYPE_TASK_ROW;
}

static guint
get_n_items (GListModel *model)
{
  return SY_TASK_VIEW (model)->shown->len;
}

static gpointer
get_item (GListModel *model, guint position)
{
  SyTaskView *self = SY_TASK_VIEW (model);

  return position < self->shown->len ? g_object_ref (sy_task_list_peek (self->list, place_at (self->shown, position))) : NULL;
}

static void
sy_task_view_model_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

static void
sy_task_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SyTaskView *self = SY_TASK_VIEW (object);

  switch (id)
    {
    case VIEW_PENDING:
      g_value_set_boolean (value, self->asked != NULL);
      break;
    case VIEW_ERROR:
      g_value_set_string (value, self->error);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
clear_choice (SyTaskChoice *choice)
{
  g_clear_pointer (&choice->method, g_free);
  g_clear_pointer (&choice->place, g_free);
  g_clear_pointer (&choice->machine, g_free);
  g_clear_pointer (&choice->gear_kind, g_free);
}

static void
sy_task_view_finalize (GObject *object)
{
  SyTaskView *self = SY_TASK_VIEW (object);

  g_clear_object (&self->asked);
  g_clear_object (&self->list);
  g_array_unref (self->order);
  g_array_unref (self->shown);
  g_byte_array_unref (self->may);
  g_array_unref (self->seats);
  clear_choice (&self->choice);
  g_free (self->search);
  g_free (self->found);
  g_free (self->error);
  G_OBJECT_CLASS (sy_task_view_parent_class)->finalize (object);
}

static void
sy_task_view_class_init (SyTaskViewClass *klass)
{
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sy_task_view_get_property;
  object_class->finalize = sy_task_view_finalize;
  view_properties[VIEW_PENDING] = g_param_spec_boolean ("pending", NULL, NULL, FALSE, flags);
  view_properties[VIEW_ERROR] = g_param_spec_string ("error", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_VIEW_PROPERTIES, view_properties);
}

static void
sy_task_view_init (SyTaskView *self)
{
  self->order = g_array_new (FALSE, FALSE, sizeof (guint32));
  self->shown = g_array_new (FALSE, FALSE, sizeof (guint32));
  self->may = g_byte_array_new ();
  self->seats = g_array_new (FALSE, TRUE, sizeof (guint32));
}

SyTaskView *
sy_task_view_new (SyTaskList *list, const char *item_kind, const SyTaskKey *keys, guint n_keys)
{
  SyTaskView *self = g_object_new (SY_TYPE_TASK_VIEW, NULL);

  g_return_val_if_fail (n_keys <= SY_TASK_KEYS_MAX, self);
  self->list = g_object_ref (list);
  self->choice.item_kind = item_kind;
  self->n_keys = n_keys;
  if (n_keys > 0)
    memcpy (self->keys, keys, n_keys * sizeof *keys);
  g_signal_connect_object (list, "items-changed", G_CALLBACK (list_changed_cb), self, 0);
  choose_all (self);
  sort (self);
  show (self, FALSE);
  return self;
}

void
sy_task_view_choose (SyTaskView *self, const SyTaskChoice *choice)
{
  SyTaskChoice own = *choice;

  g_return_if_fail (SY_IS_TASK_VIEW (self));
  own.item_kind = self->choice.item_kind;
  own.method = g_strdup (choice->method);
  own.place = g_strdup (choice->place);
  own.machine = g_strdup (choice->machine);
  own.gear_kind = g_strdup (choice->gear_kind);
  clear_choice (&self->choice);
  self->choice = own;
  choose_all (self);
  show (self, FALSE);
}

void
sy_task_view_sort (SyTaskView *self, const SyTaskKey *keys, guint n_keys)
{
  gboolean same = n_keys == self->n_keys;

  g_return_if_fail (SY_IS_TASK_VIEW (self) && n_keys <= SY_TASK_KEYS_MAX);
  for (guint i = 0; same && i < n_keys; i++)
    same = keys[i].column == self->keys[i].column && keys[i].descending == self->keys[i].descending;
  if (same)
    return;
  self->n_keys = n_keys;
  if (n_keys > 0)
    memcpy (self->keys, keys, n_keys * sizeof *keys);
  sort (self);
  show (self, FALSE);
}

void
sy_task_view_search (SyTaskView *self, const char *search)
{
  g_autofree char *words = g_strstrip (g_strdup (search != NULL ? search : ""));

  g_return_if_fail (SY_IS_TASK_VIEW (self));
  if (g_strcmp0 (self->search != NULL ? self->search : "", words) == 0)
    return;
  g_free (self->search);
  self->search = *words != '\0' ? g_steal_pointer (&words) : NULL;
  if (self->search != NULL)
    {
      ask (self);
      return;
    }
  set_found (self, NULL);
  show (self, FALSE);
  set_error (self, NULL);
  set_asked (self, NULL);
}

gboolean
sy_task_view_get_pending (SyTaskView *self)
{
  g_return_val_if_fail (SY_IS_TASK_VIEW (self), FALSE);
  return self->asked != NULL;
}

const char *
sy_task_view_get_error (SyTaskView *self)
{
  g_return_val_if_fail (SY_IS_TASK_VIEW (self), NULL);
  return self->error;
}
