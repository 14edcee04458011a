/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-deed.h"

/* Sign-off, reviews, retirement, telling: one line about an item each. */

int
cli_sign (int argc, char **argv)
{
  g_auto (CliDeed) deed = { NULL };
  g_autofree char *competence = NULL, *members = NULL;
  const GOptionEntry entries[] = {
    CLI_DEED_ENTRIES (&deed),
    { "competence", 0, 0, G_OPTION_ARG_STRING, &competence, N_ ("What makes the signer competent"), N_ ("TEXT") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  gint64 revision;
  SyHead head;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK REV"))
    return CLI_PROBLEM;
  if (argc != 3)
    return cli_say (CLI_PROBLEM, "%s", _ ("a task and a revision are needed"));
  if (!cli_read_revision (argv[2], &revision))
    return CLI_PROBLEM;
  if (deed.role == NULL)
    return cli_say_needed ("role");
  ledger = cli_begin_deed (&deed, argv[1], &code);
  if (ledger == NULL)
    return code;
  if (!sy_ledger_sign (ledger, &deed.request, revision, competence, &head, &error))
    return cli_say_ledger (error);
  members = g_strdup_printf (",\"revision\":%" G_GINT64_FORMAT, revision);
  cli_print_deed (argv[1], members, &head);
  return CLI_DONE;
}

int
cli_review (int argc, char **argv)
{
  g_auto (CliDeed) deed = { NULL };
  g_autofree char *trigger_id = NULL, *due = NULL, *members = NULL;
  const GOptionEntry entries[] = {
    CLI_DEED_ENTRIES (&deed),
    { "trigger", 0, 0, G_OPTION_ARG_STRING, &trigger_id, N_ ("Because of what: date, accident or change"), N_ ("TRIGGER") },
    { "due", 0, 0, G_OPTION_ARG_STRING, &due, N_ ("The day; today when left out, but for a date"), N_ ("DATE") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  SyTrigger trigger;
  SyHead head;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one task must be named"));
  if (!sy_trigger_from_id (trigger_id, &trigger))
    return cli_say (CLI_PROBLEM, _ ("--trigger: given %s; allowed: %s"), trigger_id != NULL ? trigger_id : _ ("nothing"),
                    "date, accident, change");
  if (deed.why == NULL)
    return cli_say_needed ("why");
  ledger = cli_begin_deed (&deed, argv[1], &code);
  if (ledger == NULL)
    return code;
  if (!sy_ledger_set_review (ledger, &deed.request, trigger, due, &head, &error))
    return cli_say_ledger (error);
  members = g_strdup_printf (",\"trigger\":\"%s\",\"due\":\"%.10s\"", trigger_id,
                             due != NULL && *due != '\0' ? due : deed.now);
  cli_print_deed (argv[1], members, &head);
  return CLI_DONE;
}

int
cli_retire (int argc, char **argv)
{
  g_auto (CliDeed) deed = { NULL };
  gboolean undo = FALSE;
  const GOptionEntry entries[] = {
    CLI_DEED_ENTRIES (&deed),
    { "undo", 0, 0, G_OPTION_ARG_NONE, &undo, N_ ("Take it back into use"), NULL },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  SyHead head;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one task must be named"));
  if (deed.why == NULL)
    return cli_say_needed ("why");
  ledger = cli_begin_deed (&deed, argv[1], &code);
  if (ledger == NULL)
    return code;
  if (!sy_ledger_retire (ledger, &deed.request, !undo, &head, &error))
    return cli_say_ledger (error);
  cli_print_deed (argv[1], undo ? ",\"retired\":false" : ",\"retired\":true", &head);
  return CLI_DONE;
}

int
cli_told (int argc, char **argv)
{
  g_auto (CliDeed) deed = { NULL };
  g_autofree char *who = NULL, *mass = NULL, *side = NULL, *members = NULL;
  const GOptionEntry entries[] = {
    CLI_DEED_ENTRIES (&deed),
    { "who", 0, 0, G_OPTION_ARG_STRING, &who, N_ ("Names of those who were told"), N_ ("NAMES") },
    { "mass", 0, 0, G_OPTION_ARG_STRING, &mass, N_ ("The mass, as it was told"), N_ ("TEXT") },
    { "heaviest-side", 0, 0, G_OPTION_ARG_STRING, &side, N_ ("The heaviest side, as it was told"), N_ ("TEXT") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  gint64 revision;
  SyHead head;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK REV"))
    return CLI_PROBLEM;
  if (argc != 3)
    return cli_say (CLI_PROBLEM, "%s", _ ("a task and a revision are needed"));
  if (!cli_read_revision (argv[2], &revision))
    return CLI_PROBLEM;
  if (who == NULL || mass == NULL || side == NULL)
    return cli_say_needed (who == NULL ? "who" : mass == NULL ? "mass" : "heaviest-side");
  ledger = cli_begin_deed (&deed, argv[1], &code);
  if (ledger == NULL)
    return code;
  if (!sy_ledger_tell (ledger, &deed.request, revision, who, mass, side, &head, &error))
    return cli_say_ledger (error);
  members = g_strdup_printf (",\"revision\":%" G_GINT64_FORMAT, revision);
  cli_print_deed (argv[1], members, &head);
  return CLI_DONE;
}
