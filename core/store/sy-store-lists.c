/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-store-private.h"

/* The journal as a list, actions and an earlier day, as far as every backend does it alike: from its lines. */

void
sy_journal_row_free (SyJournalRow *row)
{
  if (row == NULL)
    return;
  g_free (row->item);
  g_free (row->item_kind);
  g_free (row->name);
  g_free (row->by);
  g_free (row->role);
  g_free (row->why);
  g_free (row->when);
  g_free (row->written);
  g_free (row->verdict);
  g_free (row->words);
  g_free (row);
}

void
sy_rebuild_clear (SyRebuild *rebuild)
{
  g_clear_pointer (&rebuild->differences, g_ptr_array_unref);
}

char *
sy_store_utc_day (const char *time)
{
  const gsize length = strlen (time);
  g_autoptr (GDateTime) read = NULL;
  g_autoptr (GDateTime) utc = NULL;

  /* As nearly every time is written here: it is in UTC already. */
  if (length == strlen ("2026-03-12T09:40:00Z") && time[10] == 'T' && time[length - 1] == 'Z')
    return g_strndup (time, 10);
  read = g_date_time_new_from_iso8601 (time, NULL);
  utc = read != NULL ? g_date_time_to_utc (read) : NULL;
  return utc != NULL ? g_date_time_format (utc, "%Y-%m-%d") : g_strdup ("");
}

guint64
sy_store_lines_taken_over (const SyEvent *import)
{
  SyDeed deed;
  guint64 lines = 0;

  if (sy_deed_read (import, &deed) && deed.lines > 0)
    lines = (guint64) deed.lines;
  sy_deed_clear (&deed);
  return lines;
}

void
sy_past_import_take (SyPastImport *import, guint64 number, guint64 lines, gboolean is_written_by)
{
  import->until = number + MIN (lines, (guint64) G_MAXINT64);
  import->came = is_written_by;
}

gboolean
sy_past_import_counts (const SyPastImport *import, guint64 number, gboolean is_written_by)
{
  return number <= import->until ? import->came : is_written_by;
}

char *
sy_store_line_words (const SyEvent *event)
{
  return event->kind == SY_EVENT_ATTACHMENT ? g_strdup (event->name) : sy_deed_words (event, NULL);
}

gboolean
sy_store_go_on (SyProgressFunc progress, guint64 done, guint64 of, gpointer user_data, GError **error)
{
  if (progress == NULL || done % SY_STORE_PROGRESS_STEP != 0 || progress (done, of, user_data))
    return TRUE;
  g_set_error_literal (error, SY_STORE_ERROR, SY_STORE_ERROR_STOPPED, "It was stopped; nothing was changed.");
  return FALSE;
}

gboolean
sy_store_fail_no_action (GError **error, const char *id)
{
  g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND, "There is no action “%s”.", id);
  return FALSE;
}

gboolean
sy_journal_filter_admits (const SyJournalFilter *filter, const SyEvent *event)
{
  g_autofree char *day = filter->from != NULL || filter->to != NULL ? sy_store_utc_day (event->claimed) : NULL;

  return (filter->by == NULL || strcmp (filter->by, event->by) == 0)
         && (filter->kind == 0 || filter->kind == event->kind)
         && (filter->item == NULL || strcmp (filter->item, event->item) == 0)
         && (filter->from == NULL || strcmp (day, filter->from) >= 0)
         && (filter->to == NULL || strcmp (day, filter->to) <= 0);
}

static int
compare_actions (gconstpointer a, gconstpointer b)
{
  const SyAction *first = *(SyAction *const *) a, *second = *(SyAction *const *) b;
  const gboolean none = *first->due == '\0', other_none = *second->due == '\0';

  if (first->open != second->open)
    return second->open - first->open;
  if (none != other_none)
    return none - other_none;
  return strcmp (first->due, second->due);
}

/* In the order in which they were opened when they came. */
void
sy_actions_sort (GPtrArray *actions)
{
  /* g_ptr_array_sort() keeps the order of equals. */
  g_ptr_array_sort (actions, compare_actions);
}
