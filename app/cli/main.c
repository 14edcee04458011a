/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"

static const struct
{
  const char *name;
  int (*run) (int argc, char **argv);
  const char *usage, *summary;
} commands[] = {
  { "assess", cli_assess, "[--lines [--remedies]] [--spread] [--worksheet] [--policy FILE] [--region ID] FILE…",
    N_ ("facts JSON in, findings JSON out; “-” is standard input") },
  { "methods", cli_methods, "[ID]", N_ ("the methods, or the fields of one") },
  { "regions", cli_regions, "[ID]", N_ ("the regions, or what one of them says: titles and intervals, a JSON line each; no legal advice") },
  { "policy", cli_policy, "[--policy FILE] [--region ID]", N_ ("the limits as a policy file, to be changed and used with --policy") },
  { "record", cli_record, "--store FILE --task NAME --by WHO --why TEXT [--role TEXT] [--base REV] [--policy FILE] [--region ID] FACTS",
    N_ ("add a revision to a task, a changeover, a case, a die or an item of gear") },
  { "tasks", cli_tasks, "--store FILE [--search TEXT] [--verdict CODE] [--kind KIND] [--method ID] [--machine NAME] "
    "[--review-due DATE]", N_ ("tasks, changeovers, cases, dies and gear, a JSON line each") },
  { "history", cli_history, "--store FILE [--all] [--kind KIND] TASK",
    N_ ("the revisions of a task, or all that was done about it, a JSON line each") },
  { "diff", cli_diff, "--store FILE [--kind KIND] TASK REV1 REV2", N_ ("what differs between two revisions") },
  { "compare", cli_compare, "--store FILE [--kind KIND] TASK [REV] TASK2 [REV2]\n"
    "  steelyard-cli compare [--policy FILE] [--region ID] FACTS FACTS2",
    N_ ("two assessments beside each other: what changed and what it bought") },
  { "sign", cli_sign, "--store FILE [--kind KIND] --by WHO --role TEXT [--competence TEXT] [--why TEXT] TASK REV",
    N_ ("sign a revision off") },
  { "action", cli_action, "--store FILE [--kind KIND] --by WHO [--why TEXT] TASK\n"
    "      open --what TEXT [--about ID] [--assign WHO] [--due DATE] | assign ID --to WHO [--due DATE] | close ID --evidence TEXT",
    N_ ("what is to be done about a task: open it, assign it, close it") },
  { "actions", cli_actions, "--store FILE [--open] [--overdue] [--assigned WHO] [--kind KIND] [TASK]",
    N_ ("actions, a JSON line each") },
  { "improvement", cli_improvement, "--store FILE [--kind KIND] --by WHO [--why TEXT] TASK\n"
    "      add [REV] --what TEXT --idea-by WHO [--on DATE] [--from TASK2 [--from-kind KIND]] [--from-revision REV] | "
    "withdraw ID --why TEXT",
    N_ ("what the work was changed from and to, and who thought of it") },
  { "improvements", cli_improvements, "--store FILE [--withdrawn | --totals] [[--kind KIND] TASK]",
    N_ ("improvements and what they bought, a JSON line each; with --totals quarter by quarter") },
  { "review", cli_review, "--store FILE [--kind KIND] --by WHO --why TEXT --trigger date|accident|change [--due DATE] TASK",
    N_ ("say when a task is to be looked at again") },
  { "retire", cli_retire, "--store FILE [--kind KIND] --by WHO --why TEXT [--undo] TASK",
    N_ ("take an item out of use, or back into it") },
  { "told", cli_told, "--store FILE [--kind KIND] --by WHO --who NAMES --mass TEXT --heaviest-side TEXT TASK REV",
    N_ ("record that workers were told the mass and the heaviest side") },
  { "journal", cli_journal, "--store FILE [--by WHO] [--kind EVENT-KIND] [--item TASK] [--from DATE] [--to DATE] [--limit N]",
    N_ ("the lines of the journal, newest first, a JSON line each") },
  { "verify", cli_verify, "--store FILE [--head HASH]", N_ ("whether anything in the journal was altered") },
  { "rebuild", cli_rebuild, "--store FILE [--anyway]", N_ ("make the list of items anew from the journal, and say what differed") },
  { "export", cli_export, "--store FILE [--csv [--kind KIND]] [-o OUT] [TASK…]",
    N_ ("the record, or items of it, as a bundle for another record; with --csv the items as a table") },
  { "import", cli_import, "--store FILE [--dry-run] [--by WHO] [--role TEXT] [--why TEXT] BUNDLE",
    N_ ("take over what a bundle has and this record has not") },
  { "import-lifts", cli_import_lifts,
    "--store FILE [--dry-run] --by WHO --why TEXT [--role TEXT] [--policy FILE] [--region ID] LIFTS.csv",
    N_ ("add a revision for every line of a table of lifts") },
  { "lift-set", cli_lift_set,
    "--duration short|moderate|long [--combine variable|composite|sequence] [--frequency N] [--units metric|us] [-o OUT.json] "
    "LIFTS.csv",
    N_ ("make the lines of a table the lifts of one set: facts JSON to assess or to record") },
  { "attach", cli_attach, "--store FILE --by WHO --why TEXT [--role TEXT] [--kind KIND] ITEM FILE",
    N_ ("add a file to an item") },
  { "attachments", cli_attachments, "--store FILE [--kind KIND] ITEM", N_ ("the files of an item, a JSON line each") },
  { "attachment", cli_attachment, "--store FILE [--kind KIND] [--line N] ITEM NAME -o OUT",
    N_ ("write an attached file out again") },
  { "find-gear", cli_find_gear, "--store FILE [--policy FILE] [--region ID] FACTS",
    N_ ("which gear of the register carries each place of a rigged lift, a JSON line each") },
  { "what-lifts", cli_what_lifts, "--store FILE [--machine NAME] [--policy FILE] [--region ID]",
    N_ ("the dies against hoists, cranes, trucks and carts, a JSON line each") },
  { "register", cli_register, "--store FILE [--as-at DATE]",
    N_ ("what was in force on a day and what was not assessed, a JSON line each") },
  { "sheet", cli_sheet, "--kind survey [--units metric|us] [--paper a4|letter] -o OUT.pdf\n"
    "  steelyard-cli sheet --kind register --store FILE [--as-at DATE] [--paper a4|letter] -o OUT.pdf\n"
    "  steelyard-cli sheet --kind history --store FILE [--item-kind KIND] [--paper a4|letter] -o OUT.pdf TASK\n"
    "  steelyard-cli sheet --kind improvements --store FILE [--units metric|us] [--paper a4|letter] -o OUT.pdf\n"
    "  steelyard-cli sheet --kind comparison [--store FILE [--item-kind KIND]] [--paper a4|letter] -o OUT.pdf\n"
    "      TASK [REV] TASK2 [REV2] | FACTS FACTS2",
    N_ ("a sheet to print") },
};

static void
print_usage (FILE *to)
{
  fprintf (to, "%s\n\n", _ ("steelyard-cli COMMAND …: assess manual lifting, keep the record"));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    fprintf (to, "  steelyard-cli %s %s\n      %s\n", commands[i].name, commands[i].usage,
             _ (commands[i].summary));
  g_autofree char *caution = sy_words_screening (NULL);
  fprintf (to, "\n%s\n", _ (caution));
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  textdomain (SY_GETTEXT_DOMAIN);

  if (argc < 2)
    {
      print_usage (stderr);
      return CLI_PROBLEM;
    }
  if (strcmp (argv[1], "--help") == 0 || strcmp (argv[1], "-h") == 0)
    {
      print_usage (stdout);
      return CLI_DONE;
    }
  if (strcmp (argv[1], "--version") == 0)
    {
      puts ("steelyard " SY_VERSION);
      return CLI_DONE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (strcmp (argv[1], commands[i].name) == 0)
      return commands[i].run (argc - 1, argv + 1);
  cli_say (CLI_PROBLEM, _ ("no command “%s”"), argv[1]);
  print_usage (stderr);
  return CLI_PROBLEM;
}
