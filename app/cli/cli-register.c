/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>

#include "cli-progress.h"
#include "cli.h"
#include "sy-ledger-audit.h"

static void
print_rows (const GPtrArray *rows)
{
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      g_string_truncate (out, 0);
      sy_audit_row_write_json (out, rows->pdata[i]);
      puts (out->str);
    }
}

int
cli_register (int argc, char **argv)
{
  g_autofree char *store = NULL, *as_at = NULL, *today = NULL;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    { "as-at", 0, 0, G_OPTION_ARG_STRING, &as_at, N_ ("The day, in UTC; today when left out"), N_ ("DATE") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (SyAudit) audit = NULL;
  CliProgress progress = { .what = _ ("Looking back") };
  gboolean clock_set;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  today = sy_clock_now (&clock_set, &error);
  if (today == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  today[10] = '\0';
  ledger = cli_store_there (store, &code);
  if (ledger == NULL)
    return code;
  audit = sy_ledger_audit (ledger, as_at != NULL ? as_at : today, cli_progress, &progress, &error);
  cli_progress_end (&progress);
  if (audit == NULL)
    return cli_say_ledger (error);
  print_rows (audit->rows);
  print_rows (audit->retired);
  return CLI_DONE;
}
