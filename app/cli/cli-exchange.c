/* SPDX-License-Identifier: MIT */
#include <errno.h>
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-progress.h"
#include "cli.h"
#include "sy-ledger-exchange.h"

/* To standard output or, whole, in place of a file: for its owner alone, as the store is. */
static int
write_out (GBytes *bytes, const char *out)
{
  g_autoptr (GError) error = NULL;
  gsize size;
  gconstpointer data = g_bytes_get_data (bytes, &size);

  if (out != NULL)
    return g_file_set_contents_full (out, data, (gssize) size, G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                     0600, &error)
             ? CLI_DONE
             : cli_say_error (CLI_FAILED, error);
  if (fwrite (data, 1, size, stdout) == size && fflush (stdout) == 0)
    return CLI_DONE;
  return cli_say (CLI_FAILED, _ ("standard output: %s"), g_strerror (errno));
}

int
cli_export (int argc, char **argv)
{
  g_autofree char *store = NULL, *out = NULL, *kind = NULL;
  gboolean csv = FALSE;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_ ("Where it is written; standard output when left out"), N_ ("OUT") },
    { "csv", 0, 0, G_OPTION_ARG_NONE, &csv, N_ ("The items as a table for a spreadsheet"), NULL },
    { "kind", 0, 0, G_OPTION_ARG_STRING, &kind, N_ ("With --csv, only this kind: task, changeover, case, die or gear"), N_ ("KIND") },
    { NULL }
  };
  CliProgress progress = { .what = _ ("Handing over") };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GBytes) bytes = NULL;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "[TASK…]"))
    return CLI_PROBLEM;
  if (csv && argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected with --csv: %s"), argv[1]);
  if (!csv && kind != NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("--kind: only with --csv"));
  if (!cli_check_kind (kind))
    return CLI_PROBLEM;
  ledger = cli_store_there (store, &code);
  if (ledger == NULL)
    return code;
  if (csv)
    {
      const SyTaskFilter filter = { .item_kind = kind };

      bytes = sy_ledger_export_csv (ledger, &filter, cli_progress, &progress, &error);
    }
  else
    bytes = sy_ledger_export (ledger, argc > 1 ? (const char *const *) argv + 1 : NULL, cli_progress, &progress, &error);
  cli_progress_end (&progress);
  return bytes != NULL ? write_out (bytes, out) : cli_say_ledger (error);
}

static void
add_count (GString *out, const char *name, guint64 value)
{
  g_string_append_printf (out, "%s\"%s\":%" G_GUINT64_FORMAT, out->len > 1 ? "," : "", name, value);
}

static void
print_imported (const SyImportReport *report)
{
  g_autoptr (GString) out = g_string_new ("{");
  g_autofree char *bundle_head = sy_hash_text (&report->bundle_head.hash);
  g_autofree char *head = sy_hash_text (&report->head.hash);

  add_count (out, "added", report->added);
  add_count (out, "known", report->known);
  add_count (out, "hashes_only", report->hashes_only);
  add_count (out, "left", report->left);
  g_string_append (out, ",\"conflicts\":[");
  for (guint i = 0; i < report->conflicts->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      sy_json_write_text (out, report->conflicts->pdata[i]);
    }
  g_string_append_printf (out, "],\"bundle_head\":\"%s\",\"head\":\"%s\"}", bundle_head, head);
  puts (out->str);
}

/* Where @store is not there, or with @dry_run, it is first tried on nothing, so that what is refused makes no store. */
static gboolean
import_bundle (const char *store, GBytes *bundle, const SyImportRequest *request, SyImportReport *report, int *code)
{
  gboolean is_there = g_file_test (store, G_FILE_TEST_EXISTS);
  CliProgress progress = { NULL };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  SyImportRequest trial = *request;
  gboolean good;

  if (!is_there)
    {
      g_autoptr (SyLedger) nothing = sy_ledger_open ("memory:", &error);

      trial.dry_run = TRUE;
      progress.what = _ ("Checking");
      good = nothing != NULL && sy_ledger_import (nothing, bundle, &trial, cli_progress, &progress, report, &error);
      cli_progress_end (&progress);
      if (!good)
        *code = cli_say_ledger (error);
      if (!good || request->dry_run)
        return good;
      sy_import_report_clear (report);
    }
  progress = (CliProgress) { .what = _ ("Taking over") };
  ledger = cli_store (store, code);
  if (ledger == NULL)
    return FALSE;
  good = sy_ledger_import (ledger, bundle, request, cli_progress, &progress, report, &error);
  cli_progress_end (&progress);
  if (!good)
    *code = cli_say_ledger (error);
  return good;
}

int
cli_import (int argc, char **argv)
{
  g_autofree char *store = NULL, *by = NULL, *role = NULL, *why = NULL, *now = NULL;
  gboolean dry_run = FALSE, clock_set;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    { "by", 0, 0, G_OPTION_ARG_STRING, &by, N_ ("Who takes it over"), N_ ("WHO") },
    { "role", 0, 0, G_OPTION_ARG_STRING, &role, N_ ("In which role"), N_ ("TEXT") },
    { "why", 0, 0, G_OPTION_ARG_STRING, &why, N_ ("Why, or from where"), N_ ("TEXT") },
    { "dry-run", 0, 0, G_OPTION_ARG_NONE, &dry_run, N_ ("Look at everything and write nothing"), NULL },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bundle = NULL;
  SyImportReport report = { 0 };
  gsize length = 0;
  char *data;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "FILE"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one bundle is needed, or “-”"));
  if (store == NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("--store: given nothing; allowed: the path of a store"));
  now = sy_clock_now (&clock_set, &error);
  if (now == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  data = cli_read (argv[1], SY_BUNDLE_MAX, &length, &error);
  if (data == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  bundle = g_bytes_new_take (data, length);

  const SyImportRequest request = { .by = by, .role = role, .why = why, .now = now, .clock_set = clock_set,
                                    .dry_run = dry_run };
  if (import_bundle (store, bundle, &request, &report, &code))
    print_imported (&report);
  sy_import_report_clear (&report);
  return code;
}
