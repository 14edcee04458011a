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
  g_autofree char *folded_a = NULL, *folded_b = NULL;

  if (no_a || no_b)
    return descending ? no_b - no_a : no_a - no_b;
  folded_a = g_utf8_casefold (a, -1);
  folded_b = g_utf8_casefold (b, -1);
  return g_utf8_collate (folded_a, folded_b);
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

int
sy_task_order (SyTaskRow *row_a, SyTaskRow *row_b, SyTaskColumn column, gboolean descending)
{
  const SyTask *a = sy_task_row_get_task (row_a), *b = sy_task_row_get_task (row_b);

  switch (column)
    {
    case SY_BY_VERDICT:
      return sy_verdict_rank (a->verdict) - sy_verdict_rank (b->verdict);
    case SY_BY_NAME:
      return strcmp (sy_task_row_get_name_key (row_a), sy_task_row_get_name_key (row_b));
    case SY_BY_PLACE:
      return text_order (a->place, b->place, descending);
    case SY_BY_INDEX:
      return sy_number_order (a->index, b->index, descending);
    case SY_BY_RANK:
      return sy_number_order (a->rank, b->rank, descending);
    case SY_BY_MASS:
      return sy_number_order (a->mass_kg, b->mass_kg, descending);
    case SY_BY_WHEN:
      return time_order (a->when, b->when);
    }
  return 0;
}

int
sy_task_order_rest (SyTaskRow *row_a, SyTaskRow *row_b)
{
  const SyTask *a = sy_task_row_get_task (row_a), *b = sy_task_row_get_task (row_b);
  int order = sy_verdict_rank (b->verdict) - sy_verdict_rank (a->verdict);

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

gboolean
sy_task_chosen (SyTaskRow *row, const SyTaskChoice *choice)
{
  if (choice->by_verdict && sy_task_row_get_task (row)->verdict != choice->verdict)
    return FALSE;
  for (gsize i = 0; choice->words != NULL && choice->words[i] != NULL; i++)
    if (strstr (sy_task_row_get_folded (row), choice->words[i]) == NULL)
      return FALSE;
  return TRUE;
}
