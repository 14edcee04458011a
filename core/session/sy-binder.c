/* SPDX-License-Identifier: MIT */
#include "sy-binder.h"

#include <string.h>

#include "sy-ledger-deeds.h"

#define FLAGS (SY_JUDGE_REMEDIES | SY_JUDGE_SPREAD)

void
sy_binder_free (SyBinder *binder)
{
  if (binder == NULL)
    return;
  g_clear_pointer (&binder->desk, sy_desk_unref);
  g_clear_pointer (&binder->assessment, sy_assessment_unref);
  g_clear_pointer (&binder->document, sy_event_free);
  g_clear_pointer (&binder->task, sy_task_free);
  g_clear_pointer (&binder->revision, sy_revision_free);
  g_clear_pointer (&binder->events, g_ptr_array_unref);
  g_free (binder->lines);
  g_free (binder);
}

static gboolean
assess (SyBinder *binder, const char *text, gsize length, SyJudgeFlags flags, SyProblems *problems)
{
  binder->assessment = sy_desk_assess (binder->desk, text, length, flags, problems);
  if (binder->assessment == NULL)
    return FALSE;
  binder->dossier.facts = &binder->assessment->facts;
  binder->dossier.findings = binder->assessment->findings;
  return TRUE;
}

gboolean
sy_binder_assess (SyBinder *binder, SyProblems *problems)
{
  const char *facts = binder->revision->event->facts;

  return assess (binder, facts, strlen (facts), FLAGS | SY_JUDGE_RECORD, problems);
}

SyBinder *
sy_binder_of_facts (SyDesk *desk, const char *name, const char *text, gsize length, SyProblems *problems)
{
  g_autoptr (SyBinder) binder = g_new0 (SyBinder, 1);

  binder->desk = sy_desk_ref (desk);
  if (!assess (binder, text, length, FLAGS, problems))
    return NULL;
  binder->document = sy_event_new (SY_EVENT_REVISION);
  sy_event_set (&binder->document->name, name);
  sy_event_set (&binder->document->facts, binder->assessment->text);
  binder->dossier.event = binder->document;
  return g_steal_pointer (&binder);
}

/* The limits in force in the record; those of the program where it has adopted none. */
static SyDesk *
desk_of (SyLedger *ledger, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autofree char *text = sy_ledger_policy (ledger, &failed);

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return NULL;
    }
  return text != NULL ? sy_desk_new (text, strlen (text), error) : sy_desk_new (NULL, 0, error);
}

static void
fill (SyBinder *binder, const SyHead *head)
{
  SyDossier *dossier = &binder->dossier;

  binder->lines = g_new0 (SyHistoryLine, binder->events->len + 1);
  for (guint i = 0; i < binder->events->len; i++)
    {
      const SyRevision *each = binder->events->pdata[i];

      binder->lines[i] = (SyHistoryLine) { each->number, each->hash, each->event };
    }
  dossier->event = binder->revision->event;
  dossier->task = binder->task;
  dossier->line = binder->revision->number;
  dossier->hash = binder->revision->hash;
  dossier->head_line = head->number;
  dossier->head = head->hash;
  dossier->lines = binder->lines;
  dossier->n_lines = binder->events->len;
}

SyBinder *
sy_binder_of_record (SyLedger *ledger, const char *item, const char *item_kind, gint64 revision, GError **error)
{
  g_autoptr (SyBinder) binder = g_new0 (SyBinder, 1);
  SyHead head;

  binder->task = sy_ledger_find (ledger, item, item_kind, error);
  if (binder->task == NULL)
    return NULL;
  binder->revision = sy_ledger_revision (ledger, binder->task->id, NULL, revision > 0 ? revision : binder->task->revision,
                                         error);
  binder->events = binder->revision != NULL ? sy_ledger_events (ledger, binder->task->id, NULL, error) : NULL;
  if (binder->events == NULL || !sy_ledger_head (ledger, &head, error))
    return NULL;
  binder->desk = desk_of (ledger, error);
  if (binder->desk == NULL)
    return NULL;
  fill (binder, &head);
  return g_steal_pointer (&binder);
}
