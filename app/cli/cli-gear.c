/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"
#include "sy-gear-finder.h"
#include "sy-matrix.h"

int
cli_find_gear (int argc, char **argv)
{
  g_autofree char *store = NULL, *policy = NULL, *region = NULL, *facts = NULL;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    CLI_POLICY_ENTRIES (&policy, &region),
    { NULL }
  };
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (SyAssessment) plan = NULL;
  g_autoptr (GPtrArray) gear = NULL;
  g_autoptr (GPtrArray) fits = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  gsize length = 0;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "FACTS"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one facts file is needed, or “-”"));
  desk = cli_desk (policy, region, &error);
  if (desk == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  facts = cli_read (argv[1], SY_JSON_DOCUMENT_MAX, &length, &error);
  if (facts == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  plan = sy_desk_assess (desk, facts, length, SY_JUDGE_PLAIN, problems);
  if (plan == NULL)
    {
      cli_print_problems (argv[1], problems);
      return CLI_PROBLEM;
    }
  if (strcmp (plan->facts.method->id, "rigged-lift") != 0)
    return cli_say (CLI_PROBLEM, _ ("%s: $.method: given %s; allowed: rigged-lift"), argv[1], plan->facts.method->id);
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;
  gear = sy_register_read (ledger, SY_ITEM_GEAR, &error);
  if (gear == NULL)
    return cli_say_error (CLI_FAILED, error);
  fits = sy_gear_find (desk, plan, gear, NULL);
  for (guint i = 0; i < fits->len; i++)
    {
      g_string_truncate (out, 0);
      sy_gear_fit_write_json (out, fits->pdata[i]);
      puts (out->str);
    }
  return CLI_DONE;
}

int
cli_what_lifts (int argc, char **argv)
{
  g_autofree char *store = NULL, *policy = NULL, *region = NULL, *machine = NULL;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    { "machine", 0, 0, G_OPTION_ARG_STRING, &machine, N_ ("Only the dies of this machine"), N_ ("NAME") },
    CLI_POLICY_ENTRIES (&policy, &region),
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) dies = NULL;
  g_autoptr (GPtrArray) gear = NULL;
  g_autoptr (GPtrArray) cells = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  desk = cli_desk (policy, region, &error);
  if (desk == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;
  dies = sy_register_read (ledger, SY_ITEM_DIE, &error);
  gear = dies != NULL ? sy_register_read (ledger, SY_ITEM_GEAR, &error) : NULL;
  if (gear == NULL)
    return cli_say_error (CLI_FAILED, error);
  cells = sy_matrix_make (desk, dies, gear, machine, sy_clock_today (), NULL);
  for (guint i = 0; i < cells->len; i++)
    {
      g_string_truncate (out, 0);
      sy_matrix_cell_write_json (out, cells->pdata[i]);
      puts (out->str);
    }
  return CLI_DONE;
}
