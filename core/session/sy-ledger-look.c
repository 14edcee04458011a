/* SPDX-License-Identifier: MIT */
#include "sy-ledger-deeds.h"
#include "sy-ledger-private.h"

/* What the store answers, for the ledger's thread. */

SyTask *
sy_ledger_find (SyLedger *ledger, const char *id_or_name, const char *item_kind, GError **error)
{
  return sy_store_find (sy_ledger_store (ledger), id_or_name, item_kind, error);
}

GPtrArray *
sy_ledger_actions (SyLedger *ledger, const SyActionFilter *filter, GError **error)
{
  return sy_store_actions (sy_ledger_store (ledger), filter, error);
}

GPtrArray *
sy_ledger_journal (SyLedger *ledger, const SyJournalFilter *filter, guint64 before, guint limit, GError **error)
{
  return sy_store_journal (sy_ledger_store (ledger), filter, before, limit, error);
}

gboolean
sy_ledger_journal_count (SyLedger *ledger, const SyJournalFilter *filter, guint64 *count, GError **error)
{
  return sy_store_journal_count (sy_ledger_store (ledger), filter, count, error);
}

GArray *
sy_ledger_journal_numbers (SyLedger *ledger, const SyJournalFilter *filter, GError **error)
{
  return sy_store_journal_numbers (sy_ledger_store (ledger), filter, error);
}

char *
sy_ledger_policy (SyLedger *ledger, GError **error)
{
  return sy_store_policy (sy_ledger_store (ledger), error);
}

static gboolean
add_first (const SyLine *line, gpointer lines)
{
  sy_ledger_add_line (line, lines);
  return FALSE;
}

SyRevision *
sy_ledger_line (SyLedger *ledger, guint64 number, GError **error)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_revision_free);

  if (number > 0 && !sy_store_scan (sy_ledger_store (ledger), number, add_first, lines, error))
    return NULL;
  if (lines->len > 0)
    return g_ptr_array_steal_index (lines, 0);
  g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND,
               "The journal has no line %" G_GUINT64_FORMAT ".", number);
  return NULL;
}

char **
sy_ledger_people (SyLedger *ledger, GError **error)
{
  return sy_store_people (sy_ledger_store (ledger), error);
}

GArray *
sy_ledger_search (SyLedger *ledger, const char *words, GError **error)
{
  return sy_store_search (sy_ledger_store (ledger), words, error);
}

gboolean
sy_ledger_verify (SyLedger *ledger, const SyHash *known, SyProgressFunc progress, gpointer user_data, SyVerification *out,
                  GError **error)
{
  return sy_store_verify (sy_ledger_store (ledger), known, progress, user_data, out, error);
}

gboolean
sy_ledger_rebuild (SyLedger *ledger, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error)
{
  return sy_store_rebuild (sy_ledger_store (ledger), progress, user_data, out, error);
}
