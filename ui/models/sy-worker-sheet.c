/* SPDX-License-Identifier: MIT */
#include "sy-worker-sheet.h"

#include <string.h>

#include "sy-words.h"
#include "sy-worker-private.h"

typedef struct
{
  char *item;  /* id; NULL: of facts */
  gint64 revision;
  SyDesk *desk;
  char *name, *facts;
  SySheetSource *source;
} Asked;

void
sy_sheet_source_free (SySheetSource *source)
{
  if (source == NULL)
    return;
  sy_binder_free (source->binder);
  g_free (source->made);
  g_free (source->unreadable);
  g_free (source);
}

static void
free_asked (gpointer data)
{
  Asked *asked = data;

  g_free (asked->item);
  g_clear_pointer (&asked->desk, sy_desk_unref);
  g_free (asked->name);
  g_free (asked->facts);
  sy_sheet_source_free (asked->source);
  g_free (asked);
}

static char *
first_problem (const SyProblems *problems)
{
  return sy_words_problem (&problems->items[0]);
}

static gboolean
run_sheet (SyLedger *ledger, gpointer data, GError **error)
{
  Asked *asked = data;
  g_autoptr (SySheetSource) source = g_new0 (SySheetSource, 1);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  gboolean clock_set;

  source->made = sy_clock_now (&clock_set, error);
  if (source->made == NULL)
    return FALSE;
  if (asked->item == NULL)
    {
      source->binder = sy_binder_of_facts (asked->desk, asked->name, asked->facts, strlen (asked->facts), problems);
      if (source->binder == NULL)
        source->unreadable = first_problem (problems);
    }
  else
    {
      source->binder = sy_binder_of_record (ledger, asked->item, NULL, asked->revision, error);
      if (source->binder == NULL)
        return FALSE;
      if (!sy_binder_assess (source->binder, problems))
        source->unreadable = first_problem (problems);
    }
  asked->source = g_steal_pointer (&source);
  return TRUE;
}

static const SyWorkerCall call_sheet = { run_sheet, free_asked, FALSE, FALSE };

void
sy_worker_sheet_async (SyWorker *self, const char *item, gint64 revision, GCancellable *cancellable,
                       GAsyncReadyCallback callback, gpointer user_data)
{
  Asked *asked;

  g_return_if_fail (SY_IS_WORKER (self) && item != NULL);
  asked = g_new0 (Asked, 1);
  asked->item = g_strdup (item);
  asked->revision = revision;
  sy_worker_call_async (self, &call_sheet, asked, cancellable, callback, user_data);
}

void
sy_worker_sheet_of_facts_async (SyWorker *self, const char *name, const char *facts, GCancellable *cancellable,
                                GAsyncReadyCallback callback, gpointer user_data)
{
  Asked *asked;

  g_return_if_fail (SY_IS_WORKER (self) && facts != NULL);
  asked = g_new0 (Asked, 1);
  asked->desk = sy_desk_ref (sy_worker_get_desk (self));
  asked->name = g_strdup (name);
  asked->facts = g_strdup (facts);
  sy_worker_call_async (self, &call_sheet, asked, cancellable, callback, user_data);
}

SySheetSource *
sy_worker_sheet_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Asked *asked = sy_worker_call_finish (self, result, &call_sheet, error);

  return asked != NULL ? g_steal_pointer (&asked->source) : NULL;
}
