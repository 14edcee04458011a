/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"

static void
print_attachment (const SyAttachment *attachment)
{
  g_autoptr (GString) out = g_string_new (NULL);

  sy_attachment_write_json (out, attachment);
  puts (out->str);
}

int
cli_attach (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL, *by = NULL, *why = NULL, *role = NULL, *name = NULL, *now = NULL;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    CLI_KIND_ENTRY (&kind),
    { "by", 0, 0, G_OPTION_ARG_STRING, &by, N_ ("Who attaches it"), N_ ("WHO") },
    { "why", 0, 0, G_OPTION_ARG_STRING, &why, N_ ("Why it belongs here"), N_ ("TEXT") },
    { "role", 0, 0, G_OPTION_ARG_STRING, &role, N_ ("In which role"), N_ ("TEXT") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (SyAttachment) attachment = NULL;
  g_autoptr (GBytes) content = NULL;
  gboolean clock_set;
  gsize length = 0;
  char *data;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "ITEM FILE"))
    return CLI_PROBLEM;
  if (argc != 3)
    return cli_say (CLI_PROBLEM, "%s", _ ("an item and a file are needed"));
  if (!cli_check_kind (kind))
    return CLI_PROBLEM;
  if (by == NULL || why == NULL)
    return cli_say (CLI_PROBLEM, _ ("--%s: given nothing; allowed: a text that is not blank"),
                    by == NULL ? "by" : "why");
  now = sy_clock_now (&clock_set, &error);
  if (now == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  data = cli_read (argv[2], SY_ATTACHMENT_MAX, &length, &error);
  if (data == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  content = g_bytes_new_take (data, length);
  name = g_path_get_basename (argv[2]);
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;

  const SyAttachRequest request = { .item = argv[1], .item_kind = kind, .name = name, .by = by, .role = role,
                                    .why = why, .now = now, .clock_set = clock_set };
  attachment = sy_ledger_attach (ledger, &request, content, &error);
  if (attachment == NULL)
    return cli_say_ledger (error);
  print_attachment (attachment);
  return CLI_DONE;
}

int
cli_attachments (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL;
  const GOptionEntry entries[] = { CLI_STORE_ENTRY (&store), CLI_KIND_ENTRY (&kind), { NULL } };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) attachments = NULL;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "ITEM"))
    return CLI_PROBLEM;
  if (argc != 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one item must be named"));
  if (!cli_check_kind (kind))
    return CLI_PROBLEM;
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;
  attachments = sy_ledger_attachments (ledger, argv[1], kind, &error);
  if (attachments == NULL)
    return cli_say_ledger (error);
  for (guint i = 0; i < attachments->len; i++)
    print_attachment (attachments->pdata[i]);
  return CLI_DONE;
}

int
cli_attachment (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL, *out = NULL;
  gint64 line = 0;
  const GOptionEntry entries[] = {
    CLI_STORE_ENTRY (&store),
    CLI_KIND_ENTRY (&kind),
    { "line", 0, 0, G_OPTION_ARG_INT64, &line, N_ ("Its line of the journal; the latest of that name when left out"),
      N_ ("N") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_ ("Where it is written"), N_ ("OUT") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GBytes) content = NULL;
  gconstpointer data;
  gsize size;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "ITEM NAME"))
    return CLI_PROBLEM;
  if (argc != 3)
    return cli_say (CLI_PROBLEM, "%s", _ ("an item and the name of an attachment are needed"));
  if (out == NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("-o: given nothing; allowed: the path of a file to write"));
  if (line < 0)
    return cli_say (CLI_PROBLEM, "%s", _ ("--line: given a negative number; allowed: a line, from 1"));
  if (!cli_check_kind (kind))
    return CLI_PROBLEM;
  ledger = cli_store (store, &code);
  if (ledger == NULL)
    return code;
  content = sy_ledger_attachment_content (ledger, argv[1], kind, argv[2], (guint64) line, &error);
  if (content == NULL)
    return cli_say_ledger (error);
  data = g_bytes_get_data (content, &size);
  if (!g_file_set_contents (out, data, (gssize) size, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}
