/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-deed.h"

static gboolean
read_kind (const char *id, SyEventKind *kind)
{
  g_autoptr (GString) ids = NULL;

  *kind = 0;
  if (id == NULL || sy_event_kind_from_id (id, kind))
    return TRUE;
  ids = g_string_new (NULL);
  for (int i = SY_EVENT_POLICY; i <= SY_EVENT_KIND_LAST; i++)
    g_string_append_printf (ids, "%s%s", ids->len > 0 ? ", " : "", sy_event_kind_id ((SyEventKind) i));
  cli_say (CLI_PROBLEM, _ ("--kind: given %s; allowed: %s"), id, ids->str);
  return FALSE;
}

int
cli_journal (int argc, char **argv)
{
  g_autofree char *store = NULL, *by = NULL, *kind = NULL, *named = NULL, *from = NULL, *to = NULL;
  gint64 limit = 0;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    { "by", 0, 0, G_OPTION_ARG_STRING, &by, N_ ("Only lines by this person"), N_ ("WHO") },
    { "kind", 0, 0, G_OPTION_ARG_STRING, &kind, N_ ("Only lines of this kind: revision, signature …"), N_ ("EVENT-KIND") },
    { "item", 0, 0, G_OPTION_ARG_STRING, &named, N_ ("Only lines about this item"), N_ ("TASK") },
    { "from", 0, 0, G_OPTION_ARG_STRING, &from, N_ ("The first day"), N_ ("DATE") },
    { "to", 0, 0, G_OPTION_ARG_STRING, &to, N_ ("The last day"), N_ ("DATE") },
    { "limit", 0, 0, G_OPTION_ARG_INT64, &limit, N_ ("At most so many lines, the newest"), N_ ("N") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (SyTask) item = NULL;
  g_autoptr (GPtrArray) rows = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  SyJournalFilter filter = { NULL };
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  if (limit < 0 || limit > G_MAXUINT)
    return cli_say (CLI_PROBLEM, _ ("--limit: given %" G_GINT64_FORMAT "; allowed: a number of lines, 0 for all"), limit);
  if (!cli_check_date ("from", from) || !cli_check_date ("to", to) || !read_kind (kind, &filter.kind))
    return CLI_PROBLEM;
  ledger = cli_store_there (store, &code);
  if (ledger == NULL)
    return code;
  if (named != NULL)
    {
      item = sy_ledger_find (ledger, named, NULL, &error);
      if (item == NULL)
        return cli_say_ledger (error);
      filter.item = item->id;
    }
  filter.by = by;
  filter.from = from;
  filter.to = to;
  rows = sy_ledger_journal (ledger, &filter, 0, (guint) limit, &error);
  if (rows == NULL)
    return cli_say_error (CLI_FAILED, error);
  for (guint i = 0; i < rows->len; i++)
    {
      g_string_truncate (out, 0);
      sy_journal_row_write_json (out, rows->pdata[i]);
      puts (out->str);
    }
  return CLI_DONE;
}
