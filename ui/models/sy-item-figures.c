/* SPDX-License-Identifier: MIT */
#include "sy-item-figures.h"

#include <math.h>
#include <string.h>

#include "sy-json.h"
#include "sy-worker-private.h"

gboolean
sy_item_has_figures (const char *item_kind)
{
  return strcmp (item_kind, SY_ITEM_CHANGEOVER) == 0 || strcmp (item_kind, SY_ITEM_CASE) == 0;
}

static const SyJson *
scan (const char *text, SyMemory *memory)
{
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);

  return text != NULL ? sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems) : NULL;
}

static double
read_value (const SyJson *quantities, const char *symbol)
{
  const SyJson *quantity = quantities != NULL ? sy_json_member (quantities, symbol) : NULL;
  double value = quantity != NULL ? sy_json_member_number (quantity, "value", NAN) : NAN;

  if (quantity != NULL && isnan (value) && g_strcmp0 (sy_json_member_text (quantity, "state"), "unbounded") == 0)
    return INFINITY;
  return value;
}

/* The option by whose net present value the case is decided: "option.NAME.npv". "" where none wins. New string. */
static char *
dup_winner (const SyJson *findings, const SyJson *quantities)
{
  const char *governing = findings != NULL ? sy_json_member_text (findings, "governing") : NULL;
  const gsize before = strlen ("option."), after = strlen (".npv");

  if (governing == NULL || isnan (read_value (quantities, "winner")) || !g_str_has_prefix (governing, "option.")
      || !g_str_has_suffix (governing, ".npv") || strlen (governing) < before + after)
    return g_strdup ("");
  return g_strndup (governing + before, strlen (governing) - before - after);
}

SyItemFigures *
sy_item_figures_read (const SyEvent *revision)
{
  SyItemFigures *figures = g_new0 (SyItemFigures, 1);
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *findings = scan (revision->findings, memory), *facts = scan (revision->facts, memory);
  const SyJson *quantities = findings != NULL ? sy_json_member (findings, "quantities") : NULL;
  const char *currency = facts != NULL ? sy_json_member_text (facts, "currency") : NULL;
  const gboolean is_case = g_strcmp0 (revision->item_kind, SY_ITEM_CASE) == 0;
  g_autofree char *payback = NULL, *npv = NULL;

  figures->id = g_strdup (revision->item);
  figures->revision = revision->revision;
  figures->stands_minutes = read_value (quantities, "stopped.elapsed");
  figures->winner = is_case ? dup_winner (findings, quantities) : g_strdup ("");
  figures->currency = g_strdup (is_case && currency != NULL ? currency : "");
  payback = g_strdup_printf ("option.%s.payback", figures->winner);
  npv = g_strdup_printf ("option.%s.npv", figures->winner);
  figures->payback_years = *figures->winner != '\0' ? read_value (quantities, payback) : NAN;
  figures->npv = *figures->winner != '\0' ? read_value (quantities, npv) : NAN;
  return figures;
}

void
sy_item_figures_free (SyItemFigures *figures)
{
  if (figures == NULL)
    return;
  g_free (figures->id);
  g_free (figures->winner);
  g_free (figures->currency);
  g_free (figures);
}

/* Topics: of many */

typedef struct
{
  GPtrArray *ids, *figures;
} Asked;

static void
free_asked (gpointer data)
{
  Asked *asked = data;

  g_ptr_array_unref (asked->ids);
  g_clear_pointer (&asked->figures, g_ptr_array_unref);
  g_free (asked);
}

static gboolean
run_figures (SyLedger *ledger, gpointer data, GError **error)
{
  Asked *asked = data;

  asked->figures = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_item_figures_free);
  for (guint i = 0; i < asked->ids->len; i++)
    {
      g_autoptr (GError) failed = NULL;
      g_autoptr (GPtrArray) history = sy_ledger_history (ledger, asked->ids->pdata[i], NULL, &failed);

      if (history == NULL && !g_error_matches (failed, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND))
        {
          g_propagate_error (error, g_steal_pointer (&failed));
          return FALSE;
        }
      if (history != NULL && history->len > 0)
        g_ptr_array_add (asked->figures,
                         sy_item_figures_read (((SyRevision *) history->pdata[history->len - 1])->event));
    }
  return TRUE;
}

static const SyWorkerCall call_figures = { run_figures, free_asked, FALSE };

void
sy_worker_figures_async (SyWorker *self, GPtrArray *ids, GCancellable *cancellable, GAsyncReadyCallback callback,
                         gpointer user_data)
{
  Asked *asked = g_new0 (Asked, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  asked->ids = g_ptr_array_ref (ids);
  sy_worker_call_async (self, &call_figures, asked, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_figures_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Asked *asked = sy_worker_call_finish (self, result, &call_figures, error);

  return asked != NULL ? g_steal_pointer (&asked->figures) : NULL;
}
