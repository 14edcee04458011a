/* SPDX-License-Identifier: MIT */
#include "sy-stored-result.h"

#include "sy-i18n.h"

#include <math.h>
#include <string.h>

void
sy_stored_result_read (const SyEvent *event, SyStoredResult *out)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (event->findings, strlen (event->findings), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *verdict = root != NULL ? sy_json_member_text (root, "verdict") : NULL;
  const char *symbol = root != NULL ? sy_json_member_text (root, "index") : NULL;
  const SyJson *quantities = root != NULL ? sy_json_member (root, "quantities") : NULL;
  const SyJson *index = symbol != NULL && quantities != NULL ? sy_json_member (quantities, symbol) : NULL;

  *out = (SyStoredResult) { .index = NAN };
  out->has_verdict = verdict != NULL && sy_verdict_from_id (verdict, &out->verdict);
  if (index == NULL)
    return;
  out->index_symbol = g_strdup (symbol);
  out->index = g_strcmp0 (sy_json_member_text (index, "state"), "unbounded") == 0
                   ? INFINITY
                   : sy_json_member_number (index, "value", NAN);
}

void
sy_stored_result_clear (SyStoredResult *result)
{
  g_clear_pointer (&result->index_symbol, g_free);
}

static gboolean
is_utilisation (const SyStoredResult *result)
{
  return strcmp (result->index_symbol, "utilisation") == 0;
}

char *
sy_stored_index_number (const SyStoredResult *result)
{
  if (result->index_symbol == NULL || isnan (result->index))
    return g_strdup ("");
  if (is_utilisation (result) && isfinite (result->index))
    return sy_words_quantity (result->index * 100, SY_KIND_PERCENT, SY_UNITS_METRIC);
  return sy_words_quantity (result->index, SY_KIND_RATIO, SY_UNITS_METRIC);
}

char *
sy_stored_index_text (const SyStoredResult *result)
{
  g_autofree char *number = sy_stored_index_number (result);

  if (number[0] == '\0')
    return g_steal_pointer (&number);
  if (is_utilisation (result) && isfinite (result->index))
    /* Translators: of what something may carry: "Utilisation 93 %". */
    return g_strdup_printf (_("Utilisation %s"), number);
  return g_strdup_printf ("%s %s", sy_words_index_sign (result->index_symbol, sy_translate), number);
}

const char *
sy_stored_verdict_text (const SyEvent *event, const SyStoredResult *result)
{
  return result->has_verdict ? sy_translate (sy_verdict_title_for (sy_method_find (event->method), result->verdict))
                             : _("no verdict");
}

char *
sy_stored_time_text (const char *stored)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (stored, NULL);
  g_autoptr (GDateTime) local = time != NULL ? g_date_time_to_local (time) : NULL;

  return local != NULL ? g_date_time_format (local, "%Y-%m-%d %H:%M") : g_strdup (stored);
}

char *
sy_stored_day_text (const char *stored)
{
  char *text = sy_stored_time_text (stored);
  char *blank = strchr (text, ' ');

  if (blank != NULL)
    *blank = '\0';
  return text;
}
