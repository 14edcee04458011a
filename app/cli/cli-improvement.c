/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-deed.h"
#include "sy-ledger-improvement.h"

#define STEPS "add [REV], withdraw ID"

/* Everything that one of the steps may be given. */
typedef struct
{
  char *what, *idea_by, *on, *from, *from_kind, *from_revision;
} Given;

static void
given_clear (Given *given)
{
  g_free (given->what);
  g_free (given->idea_by);
  g_free (given->on);
  g_free (given->from);
  g_free (given->from_kind);
  g_free (given->from_revision);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Given, given_clear)

/* Whether only what belongs to the step was given, and what it needs. */
static gboolean
check_given (gboolean adds, const Given *given)
{
  const struct
  {
    const char *option, *value;
    gboolean needed;
  } texts[] = {
    { "what", given->what, TRUE },        { "idea-by", given->idea_by, TRUE },
    { "on", given->on, FALSE },           { "from", given->from, FALSE },
    { "from-kind", given->from_kind, FALSE }, { "from-revision", given->from_revision, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      if (texts[i].value != NULL && !adds)
        {
          cli_say (CLI_PROBLEM, _ ("--%s: not for this step"), texts[i].option);
          return FALSE;
        }
      if (texts[i].value == NULL && adds && texts[i].needed)
        {
          cli_say_needed (texts[i].option);
          return FALSE;
        }
    }
  return cli_check_kind (given->from_kind) && cli_check_date ("on", given->on);
}

static gboolean
read_step (int argc, char **argv, gboolean *adds)
{
  *adds = argc > 2 && strcmp (argv[2], "add") == 0;
  if ((*adds && argc <= 4) || (argc == 4 && strcmp (argv[2], "withdraw") == 0))
    return TRUE;
  cli_say (CLI_PROBLEM, _ ("a task and a step are needed; allowed: %s"), STEPS);
  return FALSE;
}

static gboolean
add (SyLedger *ledger, const CliDeed *deed, const Given *given, const char *revision, char **id, SyHead *head, int *code)
{
  SyImprovementAsk ask = { .from_item = given->from, .from_kind = given->from_kind, .what = given->what,
                           .idea_by = given->idea_by, .put_to_work = given->on };
  g_autoptr (GError) error = NULL;

  *code = CLI_PROBLEM;
  if ((revision != NULL && !cli_read_revision (revision, &ask.revision))
      || (given->from_revision != NULL && !cli_read_revision (given->from_revision, &ask.from_revision)))
    return FALSE;
  if (sy_ledger_add_improvement (ledger, &deed->request, &ask, id, head, &error))
    return TRUE;
  *code = cli_say_ledger (error);
  return FALSE;
}

static gboolean
withdraw (SyLedger *ledger, const CliDeed *deed, const char *given, char **id, SyHead *head, int *code)
{
  g_autoptr (GError) error = NULL;

  *id = g_strdup (given);
  if (sy_ledger_withdraw_improvement (ledger, &deed->request, given, head, &error))
    return TRUE;
  *code = cli_say_ledger (error);
  return FALSE;
}

int
cli_improvement (int argc, char **argv)
{
  g_auto (CliDeed) deed = { NULL };
  g_auto (Given) given = { NULL };
  g_autofree char *id = NULL, *members = NULL;
  const GOptionEntry entries[] = {
    CLI_DEED_ENTRIES (&deed),
    { "what", 0, 0, G_OPTION_ARG_STRING, &given.what, N_ ("add: what was done"), N_ ("TEXT") },
    { "idea-by", 0, 0, G_OPTION_ARG_STRING, &given.idea_by, N_ ("add: who thought of it"), N_ ("WHO") },
    { "on", 0, 0, G_OPTION_ARG_STRING, &given.on, N_ ("add: when it was put to work; today unless said"), N_ ("DATE") },
    { "from", 0, 0, G_OPTION_ARG_STRING, &given.from, N_ ("add: what it was before; the same task unless said"),
      N_ ("TASK") },
    { "from-kind", 0, 0, G_OPTION_ARG_STRING, &given.from_kind, N_ ("add: kind of what it was before"), N_ ("KIND") },
    { "from-revision", 0, 0, G_OPTION_ARG_STRING, &given.from_revision,
      N_ ("add: which revision of that; the latest of another task unless said"), N_ ("REV") },
    { NULL }
  };
  g_autoptr (SyLedger) ledger = NULL;
  gboolean adds;
  SyHead head;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK STEP [REV | ID]"))
    return CLI_PROBLEM;
  if (!read_step (argc, argv, &adds) || !check_given (adds, &given))
    return CLI_PROBLEM;
  ledger = cli_begin_deed (&deed, argv[1], &code);
  if (ledger == NULL)
    return code;
  if (!(adds ? add (ledger, &deed, &given, argc > 3 ? argv[3] : NULL, &id, &head, &code)
             : withdraw (ledger, &deed, argv[3], &id, &head, &code)))
    return code;
  members = g_strdup_printf (",\"improvement\":\"%s\"", id); /* digits: it was found, or made */
  cli_print_deed (argv[1], members, &head);
  return CLI_DONE;
}

static void
print_all (GPtrArray *views)
{
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = 0; i < views->len; i++)
    {
      g_string_truncate (out, 0);
      sy_improvement_write_json (out, views->pdata[i]);
      puts (out->str);
    }
}

/* Quarter by quarter, and then all of them. */
static void
print_totals (GPtrArray *views)
{
  g_autoptr (GArray) quarters = sy_improvement_quarters (views);
  g_autoptr (GString) out = g_string_new (NULL);
  const SyQuarter total = sy_improvement_total (quarters);

  for (guint i = 0; i <= quarters->len; i++)
    {
      g_string_truncate (out, 0);
      sy_quarter_write_json (out, i < quarters->len ? &g_array_index (quarters, SyQuarter, i) : &total);
      puts (out->str);
    }
}

int
cli_improvements (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL;
  gboolean withdrawn = FALSE, totals = FALSE;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    CLI_KIND_ENTRY (&kind),
    { "withdrawn", 0, 0, G_OPTION_ARG_NONE, &withdrawn, N_ ("Those that were withdrawn, too"), NULL },
    { "totals", 0, 0, G_OPTION_ARG_NONE, &totals, N_ ("What they bought, quarter by quarter and together"), NULL },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (SyTask) item = NULL;
  g_autoptr (GPtrArray) views = NULL;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "[TASK]"))
    return CLI_PROBLEM;
  if (argc > 2)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[2]);
  if (!cli_check_kind (kind))
    return CLI_PROBLEM;
  if (argc < 2 && kind != NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("--kind: for a task that is named"));
  if (totals && withdrawn)
    return cli_say (CLI_PROBLEM, "%s", _ ("--totals: what was withdrawn does not count"));
  ledger = cli_store_there (store, &code);
  if (ledger == NULL)
    return code;
  if (argc == 2 && (item = sy_ledger_find (ledger, argv[1], kind, &error)) == NULL)
    return cli_say_ledger (error);
  const SyImprovementFilter filter = { .item = item != NULL ? item->id : NULL, .withdrawn = withdrawn };
  views = sy_ledger_improvements (ledger, &filter, NULL, NULL, &error);
  if (views == NULL)
    return cli_say_error (CLI_FAILED, error);
  if (totals)
    print_totals (views);
  else
    print_all (views);
  return CLI_DONE;
}
