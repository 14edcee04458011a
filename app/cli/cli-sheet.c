/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-compare.h"
#include "cli-progress.h"
#include "cli-sheet.h"
#include "sy-comparison-sheet.h"
#include "sy-dossier-sheet.h"
#include "sy-improvement-sheet.h"
#include "sy-ledger-audit.h"
#include "sy-ledger-improvement.h"
#include "sy-register-sheet.h"
#include "sy-sheet.h"

const char *
cli_translate (const char *msgid)
{
  return gettext (msgid);
}

/* What was asked. */
typedef struct
{
  char *kind, *out, *units, *paper, *store, *as_at, *item_kind, *policy, *region;
  char **names; /* what stands behind the options */
  int n_names;
  SyPaper on;
  char *now;
} Asked;

/* ---- the blank measuring sheet ---- */

static int
write_survey (const Asked *asked)
{
  g_autoptr (GError) error = NULL;
  SySurveySheet sheet = { .units = SY_UNITS_METRIC, .paper = asked->on, .translate = cli_translate,
                          .program = "steelyard " SY_VERSION };

  if (asked->units != NULL && !sy_units_from_id (asked->units, &sheet.units))
    return cli_say (CLI_PROBLEM, _ ("--units: given %s; allowed: metric, us"), asked->units);
  if (!sy_survey_write_pdf (&sheet, asked->out, asked->now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}

/* ---- the register as at a day ---- */

static int
write_register (const Asked *asked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (SyAudit) audit = NULL;
  g_autoptr (SyFolio) folio = NULL;
  g_autofree char *today = g_strndup (asked->now, 10);
  CliProgress progress = { .what = _ ("Looking back") };
  int code = CLI_DONE;

  ledger = cli_store_there (asked->store, &code);
  if (ledger == NULL)
    return code;
  audit = sy_ledger_audit (ledger, asked->as_at != NULL ? asked->as_at : today, cli_progress, &progress, &error);
  cli_progress_end (&progress);
  if (audit == NULL)
    return cli_say_ledger (error);
  folio = sy_register_sheet_new (&(SyRegisterSheet) { .audit = audit, .paper = asked->on, .translate = cli_translate,
                                                      .program = "steelyard " SY_VERSION, .made = asked->now });
  if (!sy_folio_write_pdf (folio, asked->out, asked->now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}

/* ---- the history of an item ---- */

static int
write_history (const Asked *asked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyBinder) binder = NULL;
  g_autoptr (SyFolio) folio = NULL;
  int code = CLI_DONE;

  if (asked->n_names == 0)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one task must be named"));
  binder = cli_binder (asked->store, asked->names[0], asked->item_kind, 0, &code);
  if (binder == NULL)
    return code;
  folio = sy_dossier_sheet_new (&binder->dossier, &(SyDossierAsk) { .kind = asked->kind, .paper = asked->on,
                                                                   .translate = cli_translate, .made = asked->now,
                                                                   .program = "steelyard " SY_VERSION });
  if (!sy_folio_write_pdf (folio, asked->out, asked->now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}

/* ---- two assessments beside each other ---- */

static int
write_comparison (const Asked *asked)
{
  g_autoptr (GError) error = NULL;
  g_auto (CliTwo) two = { .has_head = FALSE };
  g_autoptr (SyBeside) beside = NULL;
  g_autoptr (SyFolio) folio = NULL;
  int code = CLI_DONE;

  if (!cli_two_read (&two, asked->store, asked->item_kind, NULL, NULL, asked->n_names, asked->names, &code))
    return code;
  beside = sy_beside_new (two.sides[0], two.sides[1], sy_desk_policy (two.desk), cli_translate);
  folio = sy_comparison_sheet_new (&(SyComparisonSheet) {
    .beside = beside, .before = two.sides[0], .after = two.sides[1], .has_head = two.has_head, .head_line = two.head.number,
    .head = two.head.hash, .paper = asked->on, .translate = cli_translate, .program = "steelyard " SY_VERSION,
    .made = asked->now });
  if (!sy_folio_write_pdf (folio, asked->out, asked->now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}

/* ---- the improvement log ---- */

static int
write_improvements (const Asked *asked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) views = NULL;
  g_autoptr (SyFolio) folio = NULL;
  const SyImprovementFilter filter = { .withdrawn = TRUE };
  SyUnits units = SY_UNITS_METRIC;
  SyHead head;
  int code = CLI_DONE;

  if (asked->units != NULL && !sy_units_from_id (asked->units, &units))
    return cli_say (CLI_PROBLEM, _ ("--units: given %s; allowed: metric, us"), asked->units);
  ledger = cli_store_there (asked->store, &code);
  if (ledger == NULL)
    return code;
  views = sy_ledger_improvements (ledger, &filter, NULL, cli_translate, &error);
  if (views == NULL || !sy_ledger_head (ledger, &head, &error))
    return cli_say_ledger (error);
  folio = sy_improvement_sheet_new (&(SyImprovementSheet) {
    .views = views, .head_line = head.number, .head = head.hash, .units = units, .paper = asked->on,
    .translate = cli_translate, .program = "steelyard " SY_VERSION, .made = asked->now });
  if (!sy_folio_write_pdf (folio, asked->out, asked->now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}

/* ---- which ---- */

static const struct
{
  const char *id;
  int (*write) (const Asked *asked);
  int n_names; /* as many as it may be given */
} kinds[] = {
  { "survey", write_survey, 0 },
  { "register", write_register, 0 },
  { "history", write_history, 1 },
  { "comparison", write_comparison, 4 },
  { "improvements", write_improvements, 0 },
};

/* FALSE, and said, for a kind that is none, too many names, a paper that it is not for. @n_names: as many as it may be
   given, -1: there is no such kind. */
static gboolean
check (Asked *asked, gboolean of_task, int n_names, int argc, char **argv)
{
  g_autofree char *of_tasks = cli_task_sheet_kinds ();

  if (n_names < 0)
    cli_say (CLI_PROBLEM, _ ("--kind: given %s; allowed: %s, %s"), asked->kind != NULL ? asked->kind : _ ("nothing"),
             "survey, register, history, comparison, improvements", of_tasks);
  else if (argc > n_names + 1)
    cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[n_names + 1]);
  else if (asked->out == NULL)
    cli_say (CLI_PROBLEM, "%s", _ ("-o: given nothing; allowed: the path of the PDF to write"));
  else if (asked->paper != NULL && !sy_paper_from_id (asked->paper, &asked->on))
    cli_say (CLI_PROBLEM, _ ("--paper: given %s; allowed: %s"), asked->paper, "a4, letter, a5");
  else if (asked->on == SY_PAPER_A5 && (!of_task || !cli_task_sheet_takes (asked->kind, asked->paper)))
    cli_say (CLI_PROBLEM, _ ("--paper: given %s; allowed: %s"), asked->paper, "a4, letter");
  else if (asked->policy != NULL && !of_task)
    cli_say (CLI_PROBLEM, "%s", _ ("--policy: for sheets of a facts document"));
  else if (asked->region != NULL && !of_task)
    cli_say (CLI_PROBLEM, "%s", _ ("--region: for sheets of a facts document"));
  else
    return cli_check_kind (asked->item_kind);
  return FALSE;
}

static int
write_sheet (Asked *asked, int argc, char **argv)
{
  const gboolean of_task = asked->kind != NULL && cli_is_task_sheet (asked->kind);
  gsize which = 0;

  while (which < G_N_ELEMENTS (kinds) && g_strcmp0 (asked->kind, kinds[which].id) != 0)
    which++;
  if (!check (asked, of_task, of_task ? 2 : which < G_N_ELEMENTS (kinds) ? kinds[which].n_names : -1, argc, argv))
    return CLI_PROBLEM;
  asked->names = argv + 1;
  asked->n_names = argc - 1;
  if (!of_task)
    return kinds[which].write (asked);
  return cli_task_sheet (&(CliTaskSheet) { .kind = asked->kind, .out = asked->out, .store = asked->store,
                                           .item_kind = asked->item_kind, .policy = asked->policy, .region = asked->region, .names = asked->names,
                                           .n_names = asked->n_names, .paper = sy_paper_id (asked->on), .now = asked->now });
}

int
cli_sheet (int argc, char **argv)
{
  Asked asked = { .on = SY_PAPER_A4 };
  const GOptionEntry entries[] = {
    { "kind", 0, 0, G_OPTION_ARG_STRING, &asked.kind,
      N_ ("survey: the blank measuring sheet; register: what was in force on a day; history: all about one item; "
          "comparison: two assessments beside each other; improvements: the log of them; assessment, lift-plan, changeover, case, card: of one revision or facts document"),
      N_ ("KIND") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &asked.out, N_ ("The PDF to write"), N_ ("FILE") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &asked.paper, N_ ("a4 or letter; a5 for a card"), N_ ("PAPER") },
    { "units", 0, 0, G_OPTION_ARG_STRING, &asked.units, N_ ("survey, improvements: metric or us"), N_ ("UNITS") },
    { "store", 0, 0, G_OPTION_ARG_FILENAME, &asked.store, N_ ("The store; without one: of a facts document"), N_ ("FILE") },
    CLI_POLICY_ENTRIES (&asked.policy, &asked.region),
    { "as-at", 0, 0, G_OPTION_ARG_STRING, &asked.as_at, N_ ("register: the day; today when left out"), N_ ("DATE") },
    { "item-kind", 0, 0, G_OPTION_ARG_STRING, &asked.item_kind, 
      N_ ("history, comparison and sheets of an item: task, changeover, case, die or gear"), N_ ("KIND") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  gboolean clock_set;
  int code = CLI_PROBLEM;

  if (cli_options (&argc, &argv, entries, "[TASK [REV] | FACTS]"))
    {
      asked.now = sy_clock_now (&clock_set, &error);
      code = asked.now != NULL ? write_sheet (&asked, argc, argv) : cli_say_error (CLI_PROBLEM, error);
    }
  g_free (asked.kind);
  g_free (asked.out);
  g_free (asked.units);
  g_free (asked.paper);
  g_free (asked.store);
  g_free (asked.as_at);
  g_free (asked.item_kind);
  g_free (asked.policy);
  g_free (asked.region);
  g_free (asked.now);
  return code;
}
