/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>

#include "cli-deed.h"

/* What the list of lines says that stands at the line which does not hold; NULL where it says nothing. */
static SyJournalRow *
find_row (const char *store, const SyVerification *verification)
{
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) rows = NULL;
  const SyJournalFilter any = { NULL };
  /* of a journal that was cut off, the first that is gone */
  const guint64 line = verification->line + (verification->fault == SY_FAULT_END ? 1 : 0);

  if (verification->fault == SY_FAULT_NONE || verification->fault == SY_FAULT_HEAD)
    return NULL;
  ledger = sy_ledger_open (store, NULL);
  if (ledger != NULL)
    rows = sy_ledger_journal (ledger, &any, line + 1, 1, NULL);
  if (rows == NULL || rows->len == 0 || ((SyJournalRow *) rows->pdata[0])->number != line)
    return NULL;
  return g_ptr_array_steal_index (rows, 0);
}

/* That row as a person is told of it; new string. */
static char *
row_words (const SyJournalRow *row)
{
  const char *kind = sy_event_kind_id (row->kind);

  if (row->revision > 0)
    return g_strdup_printf (_ ("The list of lines has at %" G_GUINT64_FORMAT ": %s, “%s”, revision %" G_GINT64_FORMAT
                               ", by %s."), row->number, kind, row->name, row->revision, row->by);
  return g_strdup_printf (_ ("The list of lines has at %" G_GUINT64_FORMAT ": %s, “%s”, by %s."), row->number, kind,
                          row->name, row->by);
}

static void
print_verification (const SyVerification *verification, const SyJournalRow *row, const char *words)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *head = sy_hash_text (&verification->head.hash);

  if (verification->fault == SY_FAULT_NONE)
    {
      g_string_append_printf (out, "{\"holds\":true,\"lines\":%" G_GUINT64_FORMAT ",\"head\":\"%s\"", verification->lines,
                              head);
      if (verification->known_at != 0)
        g_string_append_printf (out, ",\"known_at\":%" G_GUINT64_FORMAT, verification->known_at);
    }
  else
    {
      g_string_append_printf (out, "{\"holds\":false,\"line\":%" G_GUINT64_FORMAT ",\"fault\":\"%s\",\"expected\":",
                              verification->line, sy_fault_id (verification->fault));
      sy_json_write_text (out, verification->expected != NULL ? verification->expected : "");
      g_string_append (out, ",\"found\":");
      sy_json_write_text (out, verification->found != NULL ? verification->found : "");
      g_string_append_printf (out, ",\"lines\":%" G_GUINT64_FORMAT ",\"head\":\"%s\"", verification->lines, head);
      if (row != NULL)
        {
          g_string_append (out, ",\"about\":");
          sy_journal_row_write_json (out, row);
        }
    }
  g_string_append (out, ",\"words\":");
  sy_json_write_text (out, words);
  g_string_append_c (out, '}');
  puts (out->str);
}

int
cli_verify (int argc, char **argv)
{
  g_autofree char *store = NULL, *head = NULL, *words = NULL, *about = NULL;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    { "head", 0, 0, G_OPTION_ARG_STRING, &head, N_ ("A head that was kept elsewhere: it must be at one of the lines"),
      N_ ("HASH") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  SyVerification verification = { .fault = SY_FAULT_NONE };
  SyJournalRow *row;
  SyHash known;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  if (head != NULL && !sy_hash_from_text (head, &known))
    return cli_say (CLI_PROBLEM, _ ("--head: given %s; allowed: 64 hexadecimal digits"), head);
  ledger = cli_store_damaged (store, &code);
  if (ledger == NULL)
    return code;
  if (!sy_ledger_verify (ledger, head != NULL ? &known : NULL, NULL, NULL, &verification, &error))
    return cli_say_error (CLI_FAILED, error);
  words = sy_verification_words (&verification, NULL);
  row = find_row (store, &verification);
  print_verification (&verification, row, words);
  if (row != NULL)
    about = row_words (row);
  if (verification.fault != SY_FAULT_NONE)
    code = cli_say (CLI_DIFFERS, "%s%s%s", words, about != NULL ? " " : "", about != NULL ? about : "");
  sy_journal_row_free (row);
  sy_verification_clear (&verification);
  return code;
}

/* Lists that are made of a journal that was altered would take over what was put there, and with it the proof that still
   stands in the lists. */
static int
check_journal (SyLedger *ledger)
{
  SyVerification verification = { .fault = SY_FAULT_NONE };
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL;
  int code = CLI_DONE;

  if (!sy_ledger_verify (ledger, NULL, NULL, NULL, &verification, &error))
    return cli_say_error (CLI_FAILED, error);
  if (verification.fault != SY_FAULT_NONE && verification.fault != SY_FAULT_PARTS && verification.fault != SY_FAULT_FILE)
    {
      words = sy_verification_words (&verification, NULL);
      code = cli_say (CLI_DIFFERS, _ ("the lists were left as they are, for the journal does not hold (--anyway makes them of "
                                      "it all the same). %s"), words);
    }
  sy_verification_clear (&verification);
  return code;
}

int
cli_rebuild (int argc, char **argv)
{
  g_autofree char *store = NULL;
  gboolean anyway = FALSE;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    { "anyway", 0, 0, G_OPTION_ARG_NONE, &anyway, N_ ("Also of a journal that does not hold: keep a copy first"), NULL },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  SyRebuild rebuild = { 0 };
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  ledger = cli_store_damaged (store, &code);
  if (ledger == NULL)
    return code;
  if (!anyway && (code = check_journal (ledger)) != CLI_DONE)
    return code;
  if (!sy_ledger_rebuild (ledger, NULL, NULL, &rebuild, &error))
    return cli_say_error (CLI_FAILED, error);
  g_string_append_printf (out,
                          "{\"items\":%" G_GUINT64_FORMAT ",\"actions\":%" G_GUINT64_FORMAT ",\"lines\":%" G_GUINT64_FORMAT
                          ",\"different\":%" G_GUINT64_FORMAT ",\"differences\":[",
                          rebuild.items, rebuild.actions, rebuild.lines, rebuild.n_different);
  for (guint i = 0; rebuild.differences != NULL && i < rebuild.differences->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      sy_json_write_text (out, rebuild.differences->pdata[i]);
    }
  g_string_append (out, "]}");
  puts (out->str);
  if (rebuild.n_different > 0)
    code = cli_say (CLI_DIFFERS, "%s", _ ("the list of items was not what the journal says; it was made anew from it"));
  sy_rebuild_clear (&rebuild);
  return code;
}
