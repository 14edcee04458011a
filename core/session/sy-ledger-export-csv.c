/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-csv.h"
#include "sy-json.h"
#include "sy-ledger-exchange-private.h"
#include "sy-method.h"
#include "sy-words.h"

/* The items as a table for a spreadsheet. */

static const char *const columns[] = {
  "kind", "name", "id", "place", "method", "edition", "policy", "verdict", "verdict in words", "index", "value", "mass kg",
  "persons", "lifts a day", "rank", "valid until", "revision", "who", "role", "when", "why", "signed revision", "signed by",
  "signed role", "signed when", "open actions", "review due", "retired", "reasons", "caution",
};

static gboolean
keep_findings (const SyLine *line, gpointer user_data)
{
  char **findings = user_data;

  sy_event_set (findings, line->event->findings);
  return TRUE;
}

/* The reasons of the findings in words: a sentence each. */
static char *
join_reasons (const char *findings)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (findings, strlen (findings), SY_JSON_DOCUMENT_MAX, memory, problems);
  const SyJson *reasons = root != NULL ? sy_json_member (root, "reasons") : NULL;
  GString *out = g_string_new (NULL);

  for (const SyJson *reason = reasons != NULL ? reasons->first : NULL; reason != NULL; reason = reason->next)
    {
      const char *text = sy_json_member_text (reason, "text");

      if (text != NULL)
        g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", text);
    }
  return g_string_free (out, FALSE);
}

static void
add_text (GString *out, const char *text)
{
  sy_csv_add_text (out, FALSE, text);
}

static void
add_number (GString *out, double value)
{
  sy_csv_add_number (out, FALSE, value);
}

static void
add_item (GString *out, const SyTask *item, const char *reasons, const char *caution)
{
  sy_csv_add_text (out, TRUE, item->item_kind);
  add_text (out, item->name);
  add_text (out, item->id);
  add_text (out, item->place);
  add_text (out, item->method);
  add_number (out, (double) item->edition);
  add_text (out, item->policy);
  add_text (out, sy_verdict_id (item->verdict));
  add_text (out, sy_verdict_title_for (sy_method_find (item->method), item->verdict));
  add_text (out, item->index_symbol);
  add_number (out, item->index);
  add_number (out, item->mass_kg);
  add_number (out, item->persons);
  add_number (out, item->lifts_per_day);
  add_number (out, item->rank);
  add_text (out, item->valid_until);
  add_number (out, (double) item->revision);
  add_text (out, item->by);
  add_text (out, item->role);
  add_text (out, item->when);
  add_text (out, item->why);
  if (item->signed_revision > 0)
    add_number (out, (double) item->signed_revision);
  else
    add_text (out, "");
  add_text (out, item->signed_by);
  add_text (out, item->signed_role);
  add_text (out, item->signed_when);
  add_number (out, (double) item->n_open);
  add_text (out, item->review_due);
  add_text (out, item->retired ? "yes" : "no");
  add_text (out, reasons);
  add_text (out, caution);
  sy_csv_end_row (out);
}

GBytes *
sy_ledger_export_csv (SyLedger *ledger, const SyTaskFilter *filter, SyProgressFunc progress, gpointer user_data,
                      GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  const SyWatch watch = { progress, user_data };
  g_autoptr (GPtrArray) items = sy_store_list (store, filter, 0, error);
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *caution = sy_words_screening (NULL);

  if (items == NULL)
    return NULL;
  sy_csv_begin (out);
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    sy_csv_add_text (out, i == 0, columns[i]);
  sy_csv_end_row (out);
  for (guint i = 0; i < items->len; i++)
    {
      const SyTask *item = items->pdata[i];
      g_autofree char *findings = g_strdup ("");
      g_autofree char *reasons = NULL;

      if (!sy_watch (&watch, i, items->len, error)
          || !sy_store_scan_item (store, item->id, SY_EVENT_REVISION, keep_findings, &findings, error))
        return NULL;
      reasons = join_reasons (findings);
      add_item (out, item, reasons, caution);
    }
  return g_string_free_to_bytes (g_steal_pointer (&out));
}
