/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-deed.h"
#include "sy-date.h"

void
cli_deed_clear (CliDeed *deed)
{
  g_free (deed->store);
  g_free (deed->kind);
  g_free (deed->by);
  g_free (deed->role);
  g_free (deed->why);
  g_free (deed->now);
  memset (deed, 0, sizeof *deed);
}

int
cli_say_needed (const char *option)
{
  return cli_say (CLI_PROBLEM, _ ("--%s: given nothing; allowed: a text that is not blank"), option);
}

SyLedger *
cli_begin_deed (CliDeed *deed, const char *item, int *code)
{
  g_autoptr (GError) error = NULL;
  gboolean clock_set;

  if (!cli_check_kind (deed->kind))
    {
      *code = CLI_PROBLEM;
      return NULL;
    }
  if (deed->by == NULL)
    {
      *code = cli_say_needed ("by");
      return NULL;
    }
  deed->now = sy_clock_now (&clock_set, &error);
  if (deed->now == NULL)
    {
      *code = cli_say_error (CLI_PROBLEM, error);
      return NULL;
    }
  deed->request = (SyDeedRequest) { .item = item, .item_kind = deed->kind, .by = deed->by, .role = deed->role,
                                    .why = deed->why, .now = deed->now, .clock_set = clock_set };
  return cli_store_there (deed->store, code);
}

gboolean
cli_read_revision (const char *text, gint64 *revision)
{
  if (g_ascii_string_to_signed (text, 10, 1, G_MAXINT64, revision, NULL))
    return TRUE;
  cli_say (CLI_PROBLEM, _ ("REV: given %s; allowed: a revision, from 1"), text);
  return FALSE;
}

gboolean
cli_check_date (const char *option, const char *date)
{
  double days;

  if (date == NULL || sy_date_read (date, &days))
    return TRUE;
  cli_say (CLI_PROBLEM, _ ("--%s: given %s; allowed: a date such as 2026-12-01"), option, date);
  return FALSE;
}

void
cli_print_deed (const char *item, const char *members, const SyHead *head)
{
  g_autoptr (GString) out = g_string_new ("{\"task\":");
  g_autofree char *hash = sy_hash_text (&head->hash);

  sy_json_write_text (out, item);
  g_string_append_printf (out, "%s,\"head\":\"%s\"}", members, hash);
  puts (out->str);
}
