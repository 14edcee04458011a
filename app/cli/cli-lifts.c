/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cli-progress.h"
#include "cli.h"
#include "sy-ledger-exchange.h"
#include "sy-lift-set-table.h"

/* As the problems of a document: file:line: column: given …; allowed: …; unit: … */
static void
print_bad (const char *file, const GPtrArray *bad)
{
  for (guint i = 0; i < bad->len; i++)
    {
      const SyBadCell *cell = bad->pdata[i];

      fprintf (stderr, "%s:%" G_GUINT64_FORMAT ": %s%s", file, cell->line, cell->column, *cell->column != '\0' ? ": " : "");
      fprintf (stderr, _ ("given %s; allowed: %s"), *cell->value != '\0' ? cell->value : _ ("nothing"), cell->allowed);
      if (*cell->unit != '\0')
        fprintf (stderr, _ ("; unit: %s"), cell->unit);
      fputc ('\n', stderr);
    }
}

static void
print_report (const SyLiftsReport *report)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *head = sy_hash_text (&report->head.hash);
  gboolean any = FALSE;

  g_string_append_printf (out,
                          "{\"rows\":%" G_GUINT64_FORMAT ",\"begun\":%" G_GUINT64_FORMAT ",\"revised\":%" G_GUINT64_FORMAT
                          ",\"added\":%" G_GUINT64_FORMAT ",\"verdicts\":{",
                          report->rows, report->begun, report->revised, report->added);
  for (int i = 0; i < SY_N_VERDICTS; i++)
    if (report->by_verdict[i] > 0)
      {
        g_string_append_printf (out, "%s\"%s\":%" G_GUINT64_FORMAT, any ? "," : "", sy_verdict_id ((SyVerdict) i),
                                report->by_verdict[i]);
        any = TRUE;
      }
  g_string_append_printf (out, "},\"head\":\"%s\"}", head);
  puts (out->str);
}

typedef struct
{
  const char *file;
  SyDesk *desk;
  GBytes *csv;
} Table;

/* FALSE, with everything said, when the table is not as it should be. */
static gboolean
take_lifts (const Table *table, SyLedger *ledger, const SyImportRequest *request, SyLiftsReport *report, int *code)
{
  CliProgress progress = { .what = _ ("Assessing") };
  g_autoptr (GError) error = NULL;
  gboolean good = sy_ledger_import_lifts (ledger, table->desk, table->csv, request, cli_progress, &progress, report, &error);

  cli_progress_end (&progress);
  if (!good)
    *code = cli_say_ledger (error);
  else if (report->bad->len > 0)
    {
      print_bad (table->file, report->bad);
      *code = CLI_PROBLEM;
      sy_lifts_report_clear (report);
      good = FALSE;
    }
  return good;
}

/* Where @store is not there, it is first tried on nothing, so that a bad table makes no store. */
static int
run (const Table *table, const char *store, const SyImportRequest *request)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  SyLiftsReport report = { .bad = NULL };
  SyImportRequest trial = *request;
  int code = CLI_DONE;

  trial.dry_run = TRUE;
  if (!g_file_test (store, G_FILE_TEST_EXISTS))
    {
      g_autoptr (SyLedger) nothing = sy_ledger_open ("memory:", &error);

      if (nothing == NULL)
        return cli_say_error (CLI_FAILED, error);
      if (!take_lifts (table, nothing, &trial, &report, &code))
        return code;
      if (request->dry_run)
        {
          print_report (&report);
          sy_lifts_report_clear (&report);
          return CLI_DONE;
        }
      sy_lifts_report_clear (&report);
    }
  ledger = cli_store (store, &code);
  if (ledger == NULL || !take_lifts (table, ledger, request, &report, &code))
    return code;
  print_report (&report);
  sy_lifts_report_clear (&report);
  return CLI_DONE;
}

int
cli_import_lifts (int argc, char **argv)
{
  g_autofree char *store = NULL, *by = NULL, *role = NULL, *why = NULL, *policy = NULL, *region = NULL, *now = NULL;
  gboolean dry_run = FALSE, clock_set;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    { "by", 0, 0, G_OPTION_ARG_STRING, &by, N_ ("Who decides"), N_ ("WHO") },
    { "role", 0, 0, G_OPTION_ARG_STRING, &role, N_ ("In which role"), N_ ("TEXT") },
    { "why", 0, 0, G_OPTION_ARG_STRING, &why, N_ ("Why these revisions are made"), N_ ("TEXT") },
    CLI_POLICY_ENTRIES (&policy, &region),
    { "dry-run", 0, 0, G_OPTION_ARG_NONE, &dry_run, N_ ("Look at every line and write nothing"), NULL },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  g_autoptr (GBytes) csv = NULL;
  gsize length = 0;
  char *data;

  if (!cli_options (&argc, &argv, entries, "FILE.csv"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one table is needed, or “-”"));
  if (store == NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("--store: given nothing; allowed: the path of a store"));
  if (by == NULL || why == NULL)
    return cli_say (CLI_PROBLEM, _ ("--%s: given nothing; allowed: a text that is not blank"), by == NULL ? "by" : "why");
  desk = cli_desk (policy, region, &error);
  if (desk == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  now = sy_clock_now (&clock_set, &error);
  if (now == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  data = cli_read (argv[1], SY_CSV_MAX, &length, &error);
  if (data == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  csv = g_bytes_new_take (data, length);

  const Table table = { argv[1], desk, csv };
  const SyImportRequest request = { .by = by, .role = role, .why = why, .now = now, .clock_set = clock_set,
                                    .dry_run = dry_run };
  return run (&table, store, &request);
}

/* Lifts a minute as a document would say it: "2", "80 /h". */
static gboolean
read_frequency (const char *text, double *per_min)
{
  gsize length = strlen (text);

  return sy_quantity_parse (text, length, SY_KIND_FREQUENCY, SY_UNITS_METRIC, false, per_min, NULL) == SY_TEXT_OK
         && *per_min >= 0;
}

/* The set as a whole must be sound too before it is written. */
static int
write_set (SyDesk *desk, const char *file, const char *document, const char *out)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyAssessment) assessment = sy_desk_assess (desk, document, strlen (document), SY_JUDGE_PLAIN, problems);
  g_autoptr (GError) error = NULL;

  if (assessment == NULL)
    {
      cli_print_problems (file, problems);
      return CLI_PROBLEM;
    }
  if (out == NULL)
    puts (document);
  else if (!g_file_set_contents (out, document, -1, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}

int
cli_lift_set (int argc, char **argv)
{
  g_autofree char *combine = NULL, *duration = NULL, *frequency = NULL, *units = NULL, *out = NULL;
  const GOptionEntry entries[] = {
    { "combine", 0, 0, G_OPTION_ARG_STRING, &combine, N_ ("variable (unless said), composite or sequence"), N_ ("KIND") },
    { "duration", 0, 0, G_OPTION_ARG_STRING, &duration, N_ ("Of the whole: short, moderate or long"), N_ ("CLASS") },
    { "frequency", 0, 0, G_OPTION_ARG_STRING, &frequency,
      N_ ("Of all lifts together, where no line says its own: lifts a minute, or with a unit"), N_ ("N") },
    { "units", 0, 0, G_OPTION_ARG_STRING, &units, N_ ("Of a table without a column “units”: metric (unless said) or us"),
      N_ ("UNITS") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_ ("Where it is written; standard output when left out"), N_ ("OUT") },
    { NULL }
  };
  SyLiftSetRequest request = { .frequency = (double) NAN, .units = SY_UNITS_METRIC };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  g_autoptr (GBytes) csv = NULL;
  g_autoptr (GPtrArray) bad = NULL;
  g_autofree char *document = NULL;
  gsize length = 0;
  char *data;

  if (!cli_options (&argc, &argv, entries, "LIFTS.csv"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one table is needed, or “-”"));
  if (duration == NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("--duration: given nothing; allowed: short, moderate, long"));
  if (frequency != NULL && !read_frequency (frequency, &request.frequency))
    return cli_say (CLI_PROBLEM, _ ("--frequency: given %s; allowed: lifts a minute, 0 or more"), frequency);
  if (units != NULL && !sy_units_from_id (units, &request.units))
    return cli_say (CLI_PROBLEM, _ ("--units: given %s; allowed: metric, us"), units);
  request.combine = combine;
  request.duration = duration;
  desk = cli_desk (NULL, NULL, &error);
  if (desk == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  data = cli_read (argv[1], SY_CSV_MAX, &length, &error);
  if (data == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  csv = g_bytes_new_take (data, length);
  document = sy_lift_table_set (desk, csv, &request, &bad, &error);
  if (error != NULL)
    return cli_say_error (CLI_PROBLEM, error);
  if (document == NULL)
    {
      print_bad (argv[1], bad);
      return CLI_PROBLEM;
    }
  return write_set (desk, argv[1], document, out);
}
