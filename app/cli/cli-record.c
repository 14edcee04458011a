/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-deed.h"

static void
print_recorded (const char *task, const SyRecordResult *result)
{
  g_autoptr (GString) out = g_string_new ("{\"task\":");
  g_autofree char *head = sy_hash_text (&result->head.hash);

  sy_json_write_text (out, task);
  g_string_append_printf (out, ",\"id\":\"%s\",\"revision\":%" G_GINT64_FORMAT ",\"verdict\":\"%s\"", result->task_id,
                          result->revision, sy_verdict_id (result->verdict));
  if (result->clash > 0)
    g_string_append_printf (out, ",\"clash\":%" G_GINT64_FORMAT, result->clash);
  g_string_append_printf (out, ",\"head\":\"%s\"}", head);
  puts (out->str);
}

int
cli_record (int argc, char **argv)
{
  g_autofree char *store = NULL, *task = NULL, *by = NULL, *why = NULL, *role = NULL, *policy = NULL, *region = NULL;
  gint64 base = -1;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    { "task", 0, 0, G_OPTION_ARG_STRING, &task, N_ ("Name of the task, changeover, case, die or gear; a new name begins one"),
      N_ ("NAME") },
    { "by", 0, 0, G_OPTION_ARG_STRING, &by, N_ ("Who decides"), N_ ("WHO") },
    { "why", 0, 0, G_OPTION_ARG_STRING, &why, N_ ("Why this revision is made"), N_ ("TEXT") },
    { "role", 0, 0, G_OPTION_ARG_STRING, &role, N_ ("In which role"), N_ ("TEXT") },
    { "base", 0, 0, G_OPTION_ARG_INT64, &base, N_ ("Revision that it was made from; the latest when left out"),
      N_ ("REV") },
    CLI_POLICY_ENTRIES (&policy, &region),
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree char *facts = NULL, *now = NULL;
  SyRecordResult result = { NULL };
  gboolean clock_set;
  gsize length = 0;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "FACTS"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one facts file is needed, or “-”"));
  if (base < -1)
    return cli_say (CLI_PROBLEM, "%s", _ ("--base: given a negative number; allowed: a revision, from 1"));
  if (task == NULL || by == NULL || why == NULL)
    return cli_say (CLI_PROBLEM, _ ("--%s: given nothing; allowed: a text that is not blank"),
                    task == NULL ? "task" : by == NULL ? "by" : "why");
  desk = cli_desk (policy, region, &error);
  if (desk == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  now = sy_clock_now (&clock_set, &error);
  if (now == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  facts = cli_read (argv[1], SY_JSON_DOCUMENT_MAX, &length, &error);
  if (facts == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  /* A document with problems must not even make a store. */
  g_autoptr (SyAssessment) assessment = sy_desk_assess (desk, facts, length, SY_JUDGE_RECORD, problems);
  if (assessment == NULL)
    {
      cli_print_problems (argv[1], problems);
      return CLI_PROBLEM;
    }
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;

  const SyRecordRequest request = { .task = task, .by = by, .why = why, .role = role, .base = base, .now = now,
                                    .clock_set = clock_set };
  if (!sy_ledger_record (ledger, desk, &request, facts, length, problems, &result, &error))
    return cli_say_ledger (error);
  print_recorded (task, &result);
  sy_record_result_clear (&result);
  return CLI_DONE;
}

static gboolean
check_method (const char *method)
{
  g_autoptr (GString) ids = NULL;

  if (method == NULL || sy_method_find (method) != NULL)
    return TRUE;
  ids = g_string_new (NULL);
  for (gsize i = 0; i < sy_method_count (); i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", sy_method_at (i)->id);
  cli_say (CLI_PROBLEM, _ ("--method: given %s; allowed: %s"), method, ids->str);
  return FALSE;
}

int
cli_tasks (int argc, char **argv)
{
  g_autofree char *store = NULL, *search = NULL, *verdict = NULL, *kind = NULL;
  g_autofree char *method = NULL, *machine = NULL, *review_due = NULL;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    { "search", 0, 0, G_OPTION_ARG_STRING, &search, N_ ("Words that must all occur"), N_ ("TEXT") },
    { "verdict", 0, 0, G_OPTION_ARG_STRING, &verdict, N_ ("Only tasks with this verdict"), N_ ("CODE") },
    CLI_KIND_ENTRY (&kind),
    { "method", 0, 0, G_OPTION_ARG_STRING, &method, N_ ("Only what this method judges"), N_ ("ID") },
    { "machine", 0, 0, G_OPTION_ARG_STRING, &machine, N_ ("Only dies and die changes of this machine and gear that serves it"), N_ ("NAME") },
    { "review-due", 0, 0, G_OPTION_ARG_STRING, &review_due, N_ ("Only what is to be reviewed by that day"), N_ ("DATE") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  SyTaskFilter filter = { NULL };
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  if (!cli_check_kind (kind) || !check_method (method) || !cli_check_date ("review-due", review_due))
    return CLI_PROBLEM;
  filter.item_kind = kind;
  filter.search = search;
  filter.by_verdict = verdict != NULL;
  if (verdict != NULL && !sy_verdict_from_id (verdict, &filter.verdict))
    {
      g_autoptr (GString) ids = g_string_new (NULL);
      for (int i = 0; i < SY_N_VERDICTS; i++)
        g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", sy_verdict_id ((SyVerdict) i));
      return cli_say (CLI_PROBLEM, _ ("--verdict: given %s; allowed: %s"), verdict, ids->str);
    }
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;
  const SyTaskSieve sieve = { method, machine, review_due };
  tasks = sy_ledger_tasks (ledger, &filter, &error);
  if (tasks == NULL)
    return cli_say_error (CLI_FAILED, error);
  sy_tasks_sieve (tasks, &sieve);
  for (guint i = 0; i < tasks->len; i++)
    {
      g_string_truncate (out, 0);
      sy_task_write_json (out, tasks->pdata[i], sy_clock_today ());
      puts (out->str);
    }
  return CLI_DONE;
}
