/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-deed.h"

int
cli_history (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL;
  gboolean all = FALSE;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    CLI_KIND_ENTRY (&kind),
    { "all", 0, 0, G_OPTION_ARG_NONE, &all, N_ ("Everything that was done, not only the revisions"), NULL },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one task must be named"));
  if (!cli_check_kind (kind))
    return CLI_PROBLEM;
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;
  lines = all ? sy_ledger_events (ledger, argv[1], kind, &error) : sy_ledger_history (ledger, argv[1], kind, &error);
  if (lines == NULL)
    return cli_say_ledger (error);
  for (guint i = 0; i < lines->len; i++)
    {
      g_string_truncate (out, 0);
      if (all)
        sy_line_write_json (out, lines->pdata[i]);
      else
        sy_revision_write_json (out, lines->pdata[i]);
      puts (out->str);
    }
  return CLI_DONE;
}

int
cli_diff (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL;
  const GOptionEntry entries[] = { CLI_THERE_ENTRY (&store), CLI_KIND_ENTRY (&kind), { NULL } };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) differences = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  SyRevision *revisions[2] = { NULL };
  gint64 numbers[2];
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK REV1 REV2"))
    return CLI_PROBLEM;
  if (argc != 4)
    return cli_say (CLI_PROBLEM, "%s", _ ("a task and two revisions are needed"));
  if (!cli_check_kind (kind) || !cli_read_revision (argv[2], &numbers[0]) || !cli_read_revision (argv[3], &numbers[1]))
    return CLI_PROBLEM;
  ledger = cli_store_there (store, &code);
  if (ledger == NULL)
    return code;
  for (int i = 0; i < 2 && error == NULL; i++)
    revisions[i] = sy_ledger_revision (ledger, argv[1], kind, numbers[i], &error);
  if (error != NULL)
    code = cli_say_ledger (error);
  else
    {
      differences = sy_difference_of (revisions[0]->event, revisions[1]->event);
      sy_difference_write_json (out, revisions[0]->event, revisions[1]->event, differences);
      puts (out->str);
    }
  sy_revision_free (revisions[0]);
  sy_revision_free (revisions[1]);
  return code;
}
