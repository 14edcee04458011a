/* SPDX-License-Identifier: MIT */
#include "sy-task-order.h"

#include <math.h>
#include <string.h>

int
sy_number_order (double a, double b, gboolean descending)
{
  gboolean no_a = isnan (a) != 0, no_b = isnan (b) != 0;

  if (no_a || no_b)
    return descending ? no_b - no_a : no_a - no_b;
  return (a > b) - (a < b);
}

static int
text_order (const char *a, const char *b, gboolean descending)
{
  gboolean no_a = *a == '\0', no_b = *b == '\0';
  g_autofree char *folded_a = NULL, *folded_b = NULL, *key_a = NULL, *key_b = NULL;

  if (no_a || no_b)
    return descending ? no_b - no_a : no_a - no_b;
  folded_a = g_utf8_casefold (a, -1);
  folded_b = g_utf8_casefold (b, -1);
  /* "Press 9" before "Press 10". */
  key_a = g_utf8_collate_key_for_filename (folded_a, -1);
  key_b = g_utf8_collate_key_for_filename (folded_b, -1);
  return strcmp (key_a, key_b);
}

/* The rank; what must not be lifted, or held only until a day that is past, has none and comes before all that have one. */
static double
pressing (SyTaskRow *row)
{
  double rank = sy_task_row_get_task (row)->rank;
  gboolean first = sy_task_row_get_verdict (row) == SY_VERDICT_DO_NOT_LIFT || sy_task_row_is_expired (row);

  return isnan (rank) && first ? INFINITY : rank;
}

/* NULL: the column is not ordered by a text of the task. */
static const char *
text_of (SyTaskRow *row, SyTaskColumn column)
{
  const SyTask *task = sy_task_row_get_task (row);
  const SyItemFigures *figures = sy_task_row_get_figures (row);

  if (column == SY_BY_WINNER)
    return figures != NULL ? figures->winner : "";
  if (column == SY_BY_PLACE)
    return task->place;
  if (column == SY_BY_MACHINE)
    return task->detail.machine;
  if (column == SY_BY_STORAGE)
    return task->detail.storage;
  if (column == SY_BY_IDENTITY)
    return task->detail.identity;
  return column == SY_BY_GEAR ? task->detail.gear_kind : NULL;
}

static double
condition_of (const SyTask *task)
{
  static const char *const conditions[] = { "good", "worn", "damaged" };

  for (gsize i = 0; i < G_N_ELEMENTS (conditions); i++)
    if (g_strcmp0 (task->detail.condition, conditions[i]) == 0)
      return (double) i;
  return NAN;
}

/* A place has three numbers, of which the first counts most; everything else has one. */
static guint
numbers_in (SyTaskColumn column)
{
  return column == SY_BY_BALANCE ? 3 : 1;
}

static double
number_of (SyTaskRow *row, SyTaskColumn column, guint part)
{
  const SyTask *task = sy_task_row_get_task (row);
  const SyItemFigures *figures = sy_task_row_get_figures (row);

  switch (column)
    {
    case SY_BY_VERDICT:
      return sy_verdict_rank (sy_task_row_get_verdict (row));
    case SY_BY_INDEX:
      return task->index;
    case SY_BY_RANK:
      return pressing (row);
    case SY_BY_MASS:
      return task->mass_kg;
    case SY_BY_WHEN:
    case SY_BY_DAY:
      return sy_task_row_get_moment (row);
    case SY_BY_BALANCE:
      return task->detail.cg_mm[part];
    case SY_BY_WLL:
      return task->detail.wll_kg;
    case SY_BY_DUE:
      return sy_task_row_get_days_left (row);
    case SY_BY_USE:
      return task->detail.withdrawn;
    case SY_BY_CONDITION:
      return condition_of (task);
    case SY_BY_REVIEW:
      return sy_task_row_get_review_left (row);
    case SY_BY_PERSONS:
      return task->persons;
    case SY_BY_STANDS:
      return figures != NULL ? figures->stands_minutes : NAN;
    case SY_BY_PAYBACK:
      return figures != NULL ? figures->payback_years : NAN;
    case SY_BY_NPV:
      return figures != NULL ? figures->npv : NAN;
    case SY_BY_NAME:
    case SY_BY_PLACE:
    case SY_BY_MACHINE:
    case SY_BY_STORAGE:
    case SY_BY_IDENTITY:
    case SY_BY_GEAR:
    case SY_BY_WINNER:
      break; /* texts */
    }
  return NAN;
}

int
sy_task_order (SyTaskRow *row_a, SyTaskRow *row_b, SyTaskColumn column, gboolean descending)
{
  const char *text = text_of (row_a, column);
  int order = 0;

  if (column == SY_BY_NAME)
    return strcmp (sy_task_row_get_name_key (row_a), sy_task_row_get_name_key (row_b));
  if (text != NULL)
    return text_order (text, text_of (row_b, column), descending);
  for (guint i = 0; i < numbers_in (column) && order == 0; i++)
    order = sy_number_order (number_of (row_a, column, i), number_of (row_b, column, i), descending);
  return order;
}

int
sy_task_order_name (SyTaskRow *a, SyTaskRow *b)
{
  int order = sy_task_order (a, b, SY_BY_NAME, FALSE);

  return order != 0 ? order : strcmp (sy_task_row_get_task (a)->id, sy_task_row_get_task (b)->id);
}

int
sy_task_order_rest (SyTaskRow *row_a, SyTaskRow *row_b)
{
  const SyTask *a = sy_task_row_get_task (row_a), *b = sy_task_row_get_task (row_b);
  int order = -sy_task_order (row_a, row_b, SY_BY_VERDICT, FALSE);

  if (order == 0)
    order = -sy_number_order (a->index, b->index, TRUE);
  return order != 0 ? order : sy_task_order_name (row_a, row_b);
}

int
sy_task_order_by (SyTaskRow *a, SyTaskRow *b, const SyTaskKey *keys, guint n_keys)
{
  int order = 0;

  for (guint i = 0; i < n_keys && order == 0; i++)
    {
      order = sy_task_order (a, b, keys[i].column, keys[i].descending);
      order = keys[i].descending ? -order : order;
    }
  return order != 0 ? order : sy_task_order_rest (a, b);
}

/* Topics: sorting many */

typedef struct
{
  guint64 key;
  guint32 place;
} Keyed;

#define DIGIT_BITS 11 /* the counts of a digit fit the nearest cache */
#define N_DIGITS 6
#define DIGIT_VALUES (1u << DIGIT_BITS)

/* A number whose order without sign is that of @value; none is the last either way. */
static guint64
sortable (double value, gboolean descending)
{
  const guint64 sign = G_GUINT64_CONSTANT (1) << 63;
  union
  {
    double value;
    guint64 bits;
  } as = { .value = value + 0.0 }; /* −0 is 0 */
  guint64 key;

  if (isnan (value))
    return G_MAXUINT64;
  key = (as.bits & sign) != 0 ? ~as.bits : as.bits | sign;
  return descending ? ~key : key;
}

/* By key, from the least digit to the largest; what is equal stays as it stood. */
static void
sort_keyed (Keyed *items, Keyed *spare, guint n)
{
  g_autofree guint32 *counts = g_new0 (guint32, N_DIGITS * DIGIT_VALUES);
  Keyed *from = items, *to = spare;

  for (guint i = 0; i < n; i++)
    for (guint digit = 0; digit < N_DIGITS; digit++)
      counts[digit * DIGIT_VALUES + ((items[i].key >> (digit * DIGIT_BITS)) & (DIGIT_VALUES - 1))]++;
  for (guint digit = 0; digit < N_DIGITS && n > 0; digit++)
    {
      guint32 *count = counts + digit * DIGIT_VALUES, start = 0;
      const guint shift = digit * DIGIT_BITS;
      Keyed *turned = from;

      if (count[(from[0].key >> shift) & (DIGIT_VALUES - 1)] == n)
        continue; /* all have the same */
      for (guint value = 0; value < DIGIT_VALUES; value++)
        {
          guint32 here = count[value];

          count[value] = start;
          start += here;
        }
      for (guint i = 0; i < n; i++)
        to[count[(from[i].key >> shift) & (DIGIT_VALUES - 1)]++] = from[i];
      from = to;
      to = turned;
    }
  if (from != items)
    memcpy (items, from, n * sizeof *items);
}

static int
compare_keys (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* The same text is folded once, however many rows have it: there are few places and machines. */
static void
key_texts (const GPtrArray *rows, Keyed *items, guint n, SyTaskColumn column, gboolean descending)
{
  g_autoptr (GHashTable) folded = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) ranks = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GPtrArray) keys = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < n; i++)
    {
      const char *text = text_of (rows->pdata[items[i].place], column);

      if (*text != '\0' && !g_hash_table_contains (folded, text))
        {
          g_autofree char *lower = g_utf8_casefold (text, -1);
          char *key = g_utf8_collate_key_for_filename (lower, -1);

          g_ptr_array_add (keys, key);
          g_hash_table_insert (folded, (gpointer) text, key);
        }
    }
  g_ptr_array_sort (keys, compare_keys);
  for (guint i = 0; i < keys->len; i++)
    if (!g_hash_table_contains (ranks, keys->pdata[i]))
      g_hash_table_insert (ranks, keys->pdata[i], GUINT_TO_POINTER (i));
  for (guint i = 0; i < n; i++)
    {
      const char *key = g_hash_table_lookup (folded, text_of (rows->pdata[items[i].place], column));

      items[i].key = sortable (key != NULL ? GPOINTER_TO_UINT (g_hash_table_lookup (ranks, key)) : (double) NAN, descending);
    }
}

/* Turned round, equal names still stand as they stood. */
static void
key_names (const GPtrArray *rows, Keyed *items, const guint32 *by_name, guint n, gboolean descending)
{
  g_autofree guint32 *ranks = g_new (guint32, (gsize) rows->len + 1);

  for (guint i = 0, rank = 0; i < rows->len; i++)
    {
      if (i > 0
          && sy_task_order (rows->pdata[by_name[i - 1]], rows->pdata[by_name[i]], SY_BY_NAME, FALSE) != 0)
        rank++;
      ranks[by_name[i]] = rank;
    }
  for (guint i = 0; i < n; i++)
    items[i].key = sortable (ranks[items[i].place], descending);
}

static void
sort_by (const GPtrArray *rows, Keyed *items, Keyed *spare, const guint32 *by_name, guint n, const SyTaskKey *key)
{
  if (key->column == SY_BY_NAME || (n > 0 && text_of (rows->pdata[items[0].place], key->column) != NULL))
    {
      if (key->column == SY_BY_NAME)
        key_names (rows, items, by_name, n, key->descending);
      else
        key_texts (rows, items, n, key->column, key->descending);
      sort_keyed (items, spare, n);
      return;
    }
  for (guint part = numbers_in (key->column); part > 0; part--)
    {
      for (guint i = 0; i < n; i++)
        items[i].key = sortable (number_of (rows->pdata[items[i].place], key->column, part - 1), key->descending);
      sort_keyed (items, spare, n);
    }
}

void
sy_task_sort (const GPtrArray *rows, guint32 *places, guint n, const guint32 *by_name, const SyTaskKey *keys, guint n_keys)
{
  g_autofree Keyed *items = g_new (Keyed, 2 * (gsize) n + 1);

  for (guint i = 0; i < n; i++)
    items[i].place = places[i];
  for (guint i = n_keys; i > 0; i--)
    sort_by (rows, items, items + n, by_name, n, &keys[i - 1]);
  for (guint i = 0; i < n; i++)
    places[i] = items[i].place;
}

void
sy_task_sort_rest (const GPtrArray *rows, guint32 *places, guint n)
{
  static const SyTaskKey rest[] = { { SY_BY_VERDICT, TRUE }, { SY_BY_INDEX, TRUE } };

  sy_task_sort (rows, places, n, NULL, rest, G_N_ELEMENTS (rest));
}

/* Topics: choice */

/* Of gear the machines stand in one text, ", " between. */
static gboolean
names_machine (const char *machines, const char *machine)
{
  gsize length = strlen (machine);

  for (const char *at = machines; at != NULL && *at != '\0'; at = strstr (at, ", "), at = at != NULL ? at + 2 : NULL)
    if (strncmp (at, machine, length) == 0 && (at[length] == '\0' || strncmp (at + length, ", ", 2) == 0))
      return TRUE;
  return FALSE;
}

static gboolean
is_due (SyTaskRow *row, SyTaskDue due)
{
  const gboolean any = due == SY_DUE_ANY;

  /* What is withdrawn is not waiting to be examined. */
  if ((any || due == SY_DUE_VERDICT) && !sy_task_row_get_task (row)->detail.withdrawn
      && sy_task_row_get_days_left (row) <= SY_DUE_SOON_DAYS)
    return TRUE;
  if ((any || due == SY_DUE_REVIEW) && sy_task_row_get_review_left (row) <= SY_DUE_SOON_DAYS)
    return TRUE;
  return (any || due == SY_DUE_ACTION) && sy_task_row_get_action_left (row) <= SY_DUE_SOON_DAYS;
}

gboolean
sy_task_chosen (SyTaskRow *row, const SyTaskChoice *choice)
{
  const SyTask *task = sy_task_row_get_task (row);

  if (choice->item_kind != NULL && strcmp (task->item_kind, choice->item_kind) != 0)
    return FALSE;
  if (task->retired && !choice->retired)
    return FALSE;
  if (choice->by_verdict && sy_task_row_get_verdict (row) != choice->verdict)
    return FALSE;
  if (choice->method != NULL && strcmp (task->method, choice->method) != 0)
    return FALSE;
  if (choice->place != NULL && strcmp (task->place, choice->place) != 0)
    return FALSE;
  if (choice->machine != NULL && !names_machine (task->detail.machine, choice->machine))
    return FALSE;
  if (choice->gear_kind != NULL && strcmp (task->detail.gear_kind, choice->gear_kind) != 0)
    return FALSE;
  if (choice->open && task->n_open == 0)
    return FALSE;
  if (choice->not_signed && sy_task_row_is_signed (row))
    return FALSE;
  return choice->due == SY_DUE_NOTHING || is_due (row, choice->due);
}

static int
compare_texts (gconstpointer a, gconstpointer b)
{
  return text_order (*(const char *const *) a, *(const char *const *) b, FALSE);
}

static const char *
machine_of (const SyTask *task)
{
  return task->detail.machine;
}

static const char *
place_of (const SyTask *task)
{
  return task->place;
}

static const char *
method_of (const SyTask *task)
{
  return task->method;
}

/* @parted: the text holds several, ", " between. */
static char **
collect (GListModel *rows, const char *item_kind, const char *(*text_of_task) (const SyTask *task), gboolean parted)
{
  g_autoptr (GHashTable) whole = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  const guint n = g_list_model_get_n_items (rows);
  GPtrArray *texts = g_ptr_array_new ();

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SyTaskRow) row = g_list_model_get_item (rows, i);
      const SyTask *task = sy_task_row_get_task (row);
      const char *text = text_of_task (task);
      g_auto (GStrv) parts = NULL;

      if (*text == '\0' || strcmp (task->item_kind, item_kind) != 0 || g_hash_table_contains (whole, text))
        continue;
      g_hash_table_add (whole, g_strdup (text));
      parts = parted ? g_strsplit (text, ", ", -1) : g_strdupv ((char *[]) { (char *) text, NULL });
      for (gsize k = 0; parts[k] != NULL; k++)
        if (!g_hash_table_contains (seen, parts[k]))
          {
            char *part = g_strdup (parts[k]);

            g_hash_table_add (seen, part);
            g_ptr_array_add (texts, part);
          }
    }
  g_ptr_array_sort (texts, compare_texts);
  g_ptr_array_add (texts, NULL);
  return (char **) g_ptr_array_free (texts, FALSE);
}

char **
sy_task_machines (GListModel *rows, const char *item_kind)
{
  return collect (rows, item_kind, machine_of, TRUE);
}

char **
sy_task_places (GListModel *rows, const char *item_kind)
{
  return collect (rows, item_kind, place_of, FALSE);
}

char **
sy_task_methods (GListModel *rows, const char *item_kind)
{
  return collect (rows, item_kind, method_of, FALSE);
}
