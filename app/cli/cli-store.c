/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <string.h>

#include "cli.h"

static SyLedger *
open_store (const char *store, SyLedger *(*open) (const char *uri, GError **error), int *code)
{
  g_autoptr (GError) error = NULL;
  SyLedger *ledger;

  if (store == NULL)
    {
      *code = cli_say (CLI_PROBLEM, "%s", _ ("--store: given nothing; allowed: the path of a store"));
      return NULL;
    }
  ledger = open (store, &error);
  if (ledger == NULL)
    *code = cli_say_error (CLI_FAILED, error);
  return ledger;
}

static gboolean
is_there (const char *store, int *code)
{
  if (store == NULL || strcmp (store, "memory:") == 0 || g_file_test (store, G_FILE_TEST_EXISTS))
    return TRUE;
  *code = cli_say (CLI_FAILED, _ ("%s: there is no such store; one is made by recording into it"), store);
  return FALSE;
}

SyLedger *
cli_store (const char *store, int *code)
{
  return open_store (store, sy_ledger_open, code);
}

SyLedger *
cli_store_there (const char *store, int *code)
{
  return is_there (store, code) ? open_store (store, sy_ledger_open, code) : NULL;
}

SyLedger *
cli_store_damaged (const char *store, int *code)
{
  return is_there (store, code) ? open_store (store, sy_ledger_open_damaged, code) : NULL;
}

gboolean
cli_check_kind (const char *kind)
{
  if (kind == NULL || sy_item_kind_place (kind) >= 0)
    return TRUE;
  cli_say (CLI_PROBLEM, _ ("--kind: given %s; allowed: %s"), kind, SY_ITEM_KINDS_TEXT);
  return FALSE;
}

int
cli_say_ledger (const GError *error)
{
  gboolean is_problem
    = (error->domain == SY_LEDGER_ERROR && error->code != SY_LEDGER_ERROR_CONTENT)
      || g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND)
      || g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_AMBIGUOUS);

  return cli_say_error (is_problem ? CLI_PROBLEM : CLI_FAILED, error);
}
