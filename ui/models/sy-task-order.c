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

/* RFC 3339 with any offset; NULL is before everything. */
static int
time_order (const char *a, const char *b)
{
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time_a = g_date_time_new_from_iso8601 (a, utc);
  g_autoptr (GDateTime) time_b = g_date_time_new_from_iso8601 (b, utc);

  if (time_a == NULL || time_b == NULL)
    return (time_a != NULL) - (time_b != NULL);
  return g_date_time_compare (time_a, time_b);
}

static int
place_order (const double *a, const double *b, gboolean descending)
{
  int order = 0;

  for (int i = 0; i < 3 && order == 0; i++)
    order = sy_number_order (a[i], b[i], descending);
  return order;
}

/* The rank; what must not be lifted, or held only until a day that is past, has none and comes before all that have one. */
static double
pressing (SyTaskRow *row)
{
  double rank = sy_task_row_get_task (row)->rank;
  gboolean first = sy_task_row_get_verdict (row) == SY_VERDICT_DO_NOT_LIFT || sy_task_row_is_expired (row);

  return isnan (rank) && first ? INFINITY : rank;
}

int
sy_task_order (SyTaskRow *row_a, SyTaskRow *row_b, SyTaskColumn column, gboolean descending)
{
  const SyTask *a = sy_task_row_get_task (row_a), *b = sy_task_row_get_task (row_b);

  switch (column)
    {
    case SY_BY_VERDICT:
      return sy_verdict_rank (sy_task_row_get_verdict (row_a)) - sy_verdict_rank (sy_task_row_get_verdict (row_b));
    case SY_BY_NAME:
      return strcmp (sy_task_row_get_name_key (row_a), sy_task_row_get_name_key (row_b));
    case SY_BY_PLACE:
      return text_order (a->place, b->place, descending);
    case SY_BY_INDEX:
      return sy_number_order (a->index, b->index, descending);
    case SY_BY_RANK:
      return sy_number_order (pressing (row_a), pressing (row_b), descending);
    case SY_BY_MASS:
      return sy_number_order (a->mass_kg, b->mass_kg, descending);
    case SY_BY_WHEN:
    case SY_BY_DAY:
      return time_order (a->when, b->when);
    case SY_BY_MACHINE:
      return text_order (a->detail.machine, b->detail.machine, descending);
    case SY_BY_BALANCE:
      return place_order (a->detail.cg_mm, b->detail.cg_mm, descending);
    case SY_BY_STORAGE:
      return text_order (a->detail.storage, b->detail.storage, descending);
    case SY_BY_IDENTITY:
      return text_order (a->detail.identity, b->detail.identity, descending);
    case SY_BY_GEAR:
      return text_order (a->detail.gear_kind, b->detail.gear_kind, descending);
    case SY_BY_WLL:
      return sy_number_order (a->detail.wll_kg, b->detail.wll_kg, descending);
    case SY_BY_DUE:
      return sy_number_order (sy_task_row_get_days_left (row_a), sy_task_row_get_days_left (row_b), descending);
    case SY_BY_USE:
      return a->detail.withdrawn - b->detail.withdrawn;
    }
  return 0;
}

int
sy_task_order_rest (SyTaskRow *row_a, SyTaskRow *row_b)
{
  const SyTask *a = sy_task_row_get_task (row_a), *b = sy_task_row_get_task (row_b);
  int order = -sy_task_order (row_a, row_b, SY_BY_VERDICT, FALSE);

  if (order == 0)
    order = -sy_number_order (a->index, b->index, TRUE);
  if (order == 0)
    order = sy_task_order (row_a, row_b, SY_BY_NAME, FALSE);
  return order != 0 ? order : strcmp (a->id, b->id);
}

GStrv
sy_task_words (const char *search)
{
  g_autofree char *whole = g_utf8_normalize (search, -1, G_NORMALIZE_ALL_COMPOSE);
  g_autofree char *folded = whole != NULL ? g_utf8_casefold (whole, -1) : NULL;
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) parts = folded != NULL ? g_strsplit_set (folded, " \t\n", -1) : NULL;
  gboolean any = FALSE;

  for (gsize i = 0; parts != NULL && parts[i] != NULL; i++)
    if (*parts[i] != '\0')
      {
        g_strv_builder_add (builder, parts[i]);
        any = TRUE;
      }
  return any ? g_strv_builder_end (builder) : NULL;
}

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

gboolean
sy_task_chosen (SyTaskRow *row, const SyTaskChoice *choice)
{
  const SyTask *task = sy_task_row_get_task (row);

  if (choice->item_kind != NULL && strcmp (task->item_kind, choice->item_kind) != 0)
    return FALSE;
  if (choice->by_verdict && sy_task_row_get_verdict (row) != choice->verdict)
    return FALSE;
  if (choice->machine != NULL && !names_machine (task->detail.machine, choice->machine))
    return FALSE;
  if (choice->gear_kind != NULL && strcmp (task->detail.gear_kind, choice->gear_kind) != 0)
    return FALSE;
  /* What is withdrawn is not waiting for anything. */
  if (choice->due && (task->detail.withdrawn || !(sy_task_row_get_days_left (row) <= SY_DUE_SOON_DAYS)))
    return FALSE;
  for (gsize i = 0; choice->words != NULL && choice->words[i] != NULL; i++)
    if (strstr (sy_task_row_get_folded (row), choice->words[i]) == NULL)
      return FALSE;
  return TRUE;
}

static int
compare_texts (gconstpointer a, gconstpointer b)
{
  return text_order (*(const char *const *) a, *(const char *const *) b, FALSE);
}

char **
sy_task_machines (GListModel *rows, const char *item_kind)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  GPtrArray *machines = g_ptr_array_new ();

  for (guint i = 0; i < g_list_model_get_n_items (rows); i++)
    {
      g_autoptr (SyTaskRow) row = g_list_model_get_item (rows, i);
      const SyTask *task = sy_task_row_get_task (row);
      g_auto (GStrv) parts = NULL;

      if (strcmp (task->item_kind, item_kind) != 0 || *task->detail.machine == '\0')
        continue;
      parts = g_strsplit (task->detail.machine, ", ", -1);
      for (gsize k = 0; parts[k] != NULL; k++)
        if (!g_hash_table_contains (seen, parts[k]))
          {
            char *machine = g_strdup (parts[k]);

            g_hash_table_add (seen, machine);
            g_ptr_array_add (machines, machine);
          }
    }
  g_ptr_array_sort (machines, compare_texts);
  g_ptr_array_add (machines, NULL);
  return (char **) g_ptr_array_free (machines, FALSE);
}
