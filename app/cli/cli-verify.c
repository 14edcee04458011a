/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>

#include "cli-deed.h"

static void
print_verification (const SyVerification *verification, const char *words)
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
    }
  g_string_append (out, ",\"words\":");
  sy_json_write_text (out, words);
  g_string_append_c (out, '}');
  puts (out->str);
}

int
cli_verify (int argc, char **argv)
{
  g_autofree char *store = NULL, *head = NULL, *words = NULL;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    { "head", 0, 0, G_OPTION_ARG_STRING, &head, N_ ("A head that was kept elsewhere: it must be at one of the lines"),
      N_ ("HASH") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  SyVerification verification = { .fault = SY_FAULT_NONE };
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
  print_verification (&verification, words);
  if (verification.fault != SY_FAULT_NONE)
    code = cli_say (CLI_DIFFERS, "%s", words);
  sy_verification_clear (&verification);
  return code;
}

int
cli_rebuild (int argc, char **argv)
{
  g_autofree char *store = NULL;
  const GOptionEntry entries[] = { CLI_THERE_ENTRY (&store), { NULL } };
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
