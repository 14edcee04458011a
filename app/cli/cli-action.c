/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-deed.h"
#include "sy-date.h"

/* Everything that one of the steps may be given. */
typedef struct
{
  char *what, *about, *assign, *to, *due, *evidence;
} Given;

static void
given_clear (Given *given)
{
  g_free (given->what);
  g_free (given->about);
  g_free (given->assign);
  g_free (given->to);
  g_free (given->due);
  g_free (given->evidence);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Given, given_clear)

#define STEPS "open, assign ID, close ID"

/* Whether only what belongs to the step was given, and what it needs. */
static gboolean
check_given (SyDeedStep step, const Given *given)
{
  const struct
  {
    const char *option, *value;
    gboolean allowed, needed;
  } texts[] = {
    { "what", given->what, step == SY_STEP_OPEN, step == SY_STEP_OPEN },
    { "about", given->about, step == SY_STEP_OPEN, FALSE },
    { "assign", given->assign, step == SY_STEP_OPEN, FALSE },
    { "to", given->to, step == SY_STEP_ASSIGN, step == SY_STEP_ASSIGN },
    { "due", given->due, step != SY_STEP_CLOSE, FALSE },
    { "evidence", given->evidence, step == SY_STEP_CLOSE, step == SY_STEP_CLOSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      if (texts[i].value != NULL && !texts[i].allowed)
        {
          cli_say (CLI_PROBLEM, _ ("--%s: not for this step"), texts[i].option);
          return FALSE;
        }
      if (texts[i].value == NULL && texts[i].needed)
        {
          cli_say_needed (texts[i].option);
          return FALSE;
        }
    }
  return TRUE;
}

static gboolean
read_step (int argc, char **argv, SyDeedStep *step)
{
  static const char *const steps[] = { [SY_STEP_OPEN] = "open", [SY_STEP_ASSIGN] = "assign", [SY_STEP_CLOSE] = "close" };

  for (int i = 0; argc > 2 && i < (int) G_N_ELEMENTS (steps); i++)
    if (strcmp (argv[2], steps[i]) == 0 && argc == (i == SY_STEP_OPEN ? 3 : 4))
      {
        *step = (SyDeedStep) i;
        return TRUE;
      }
  cli_say (CLI_PROBLEM, _ ("a task and a step are needed; allowed: %s"), STEPS);
  return FALSE;
}

int
cli_action (int argc, char **argv)
{
  g_auto (CliDeed) deed = { NULL };
  g_auto (Given) given = { NULL };
  g_autofree char *id = NULL, *members = NULL;
  const GOptionEntry entries[] = {
    CLI_DEED_ENTRIES (&deed),
    { "what", 0, 0, G_OPTION_ARG_STRING, &given.what, N_ ("open: what is to be done"), N_ ("TEXT") },
    { "about", 0, 0, G_OPTION_ARG_STRING, &given.about, N_ ("open: id of the reason or remedy that it is about"),
      N_ ("ID") },
    { "assign", 0, 0, G_OPTION_ARG_STRING, &given.assign, N_ ("open: who is to do it"), N_ ("WHO") },
    { "to", 0, 0, G_OPTION_ARG_STRING, &given.to, N_ ("assign: who is to do it"), N_ ("WHO") },
    { "due", 0, 0, G_OPTION_ARG_STRING, &given.due, N_ ("open, assign: until when"), N_ ("DATE") },
    { "evidence", 0, 0, G_OPTION_ARG_STRING, &given.evidence, N_ ("close: by what it can be seen that it was done"),
      N_ ("TEXT") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  SyDeedStep step;
  gboolean done = FALSE;
  SyHead head;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK STEP [ID]"))
    return CLI_PROBLEM;
  if (!read_step (argc, argv, &step) || !check_given (step, &given))
    return CLI_PROBLEM;
  ledger = cli_begin_deed (&deed, argv[1], &code);
  if (ledger == NULL)
    return code;
  switch (step)
    {
    case SY_STEP_OPEN:
      done = sy_ledger_open_action (ledger, &deed.request, given.what, given.about, given.assign, given.due, &id, &head,
                                    &error);
      break;
    case SY_STEP_ASSIGN:
      id = g_strdup (argv[3]);
      done = sy_ledger_assign_action (ledger, &deed.request, id, given.to, given.due, &head, &error);
      break;
    case SY_STEP_CLOSE:
      id = g_strdup (argv[3]);
      done = sy_ledger_close_action (ledger, &deed.request, id, given.evidence, &head, &error);
      break;
    case SY_STEP_ADD:
    case SY_STEP_WITHDRAW:
      g_assert_not_reached ();
    }
  if (!done)
    return cli_say_ledger (error);
  members = g_strdup_printf (",\"action\":\"%s\"", id); /* digits: it was found, or made */
  cli_print_deed (argv[1], members, &head);
  return CLI_DONE;
}

int
cli_actions (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL, *assigned = NULL;
  gboolean open = FALSE, overdue = FALSE;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    CLI_KIND_ENTRY (&kind),
    { "open", 0, 0, G_OPTION_ARG_NONE, &open, N_ ("Only what is open"), NULL },
    { "overdue", 0, 0, G_OPTION_ARG_NONE, &overdue, N_ ("Only what is open and past its day"), NULL },
    { "assigned", 0, 0, G_OPTION_ARG_STRING, &assigned, N_ ("Only what is assigned to this person"), N_ ("WHO") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (SyTask) item = NULL;
  g_autoptr (GPtrArray) actions = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  double today = sy_clock_today ();
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "[TASK]"))
    return CLI_PROBLEM;
  if (argc > 2)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[2]);
  if (!cli_check_kind (kind))
    return CLI_PROBLEM;
  ledger = cli_store_there (store, &code);
  if (ledger == NULL)
    return code;
  if (argc == 2)
    {
      item = sy_ledger_find (ledger, argv[1], kind, &error);
      if (item == NULL)
        return cli_say_ledger (error);
    }
  const SyActionFilter filter = { .open = open || overdue, .item = item != NULL ? item->id : NULL, .assigned = assigned };
  actions = sy_ledger_actions (ledger, &filter, &error);
  if (actions == NULL)
    return cli_say_error (CLI_FAILED, error);
  for (guint i = 0; i < actions->len; i++)
    {
      const SyAction *action = actions->pdata[i];
      double due;

      if (overdue && !(sy_date_read (action->due, &due) && today > due))
        continue;
      if (item == NULL && kind != NULL && strcmp (action->item_kind, kind) != 0)
        continue;
      g_string_truncate (out, 0);
      sy_action_write_json (out, action, today);
      puts (out->str);
    }
  return CLI_DONE;
}
