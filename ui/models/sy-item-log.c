/* SPDX-License-Identifier: MIT */
#include "sy-item-log.h"

#include <string.h>

/* Actions: open before closed, then by due date, none last; of closed ones the latest line first. */
static int
compare_actions (gconstpointer one, gconstpointer other)
{
  const SyAction *a = *(SyAction *const *) one, *b = *(SyAction *const *) other;
  int by_due;

  if (a->open != b->open)
    return a->open ? -1 : 1;
  if (!a->open)
    return a->line > b->line ? -1 : a->line < b->line;
  if ((*a->due == '\0') != (*b->due == '\0'))
    return *a->due == '\0' ? 1 : -1;
  by_due = strcmp (a->due, b->due);
  return by_due != 0 ? by_due : strcmp (a->opened_when, b->opened_when);
}

static void
take_action (GPtrArray *actions, const SyRevision *line)
{
  SyDeed deed;
  guint at = 0;
  SyAction *action;

  if (!sy_deed_read (line->event, &deed))
    return;
  while (at < actions->len && strcmp (((SyAction *) actions->pdata[at])->id, deed.action) != 0)
    at++;
  sy_deed_clear (&deed);
  action = sy_action_apply (at < actions->len ? g_steal_pointer (&actions->pdata[at]) : NULL, line->event, line->number);
  if (at < actions->len)
    actions->pdata[at] = action;
  else if (action != NULL)
    g_ptr_array_add (actions, action);
}

SyItemLog *
sy_item_log_new (GPtrArray *lines)
{
  SyItemLog *log = g_new0 (SyItemLog, 1);
  g_autoptr (GArray) clashes = g_array_new (FALSE, FALSE, sizeof (gint64));

  g_atomic_ref_count_init (&log->refs);
  log->lines = lines;
  log->revisions = g_ptr_array_new ();
  log->actions = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_action_free);
  for (guint i = 0; i < lines->len; i++)
    {
      SyRevision *line = lines->pdata[i];
      const gboolean is_revision = line->event->kind == SY_EVENT_REVISION;

      if (log->task != NULL || is_revision)
        log->task = sy_task_apply (log->task, line->event);
      if (line->event->kind == SY_EVENT_ACTION)
        take_action (log->actions, line);
      if (!is_revision)
        continue;
      g_ptr_array_add (log->revisions, line);
      /* A clash that still stands from before is not this one's. */
      if (line->event->base == line->event->revision - 1)
        g_array_append_vals (clashes, &(gint64){ 0 }, 1);
      else
        g_array_append_val (clashes, log->task->clash);
    }
  log->clashes = (gint64 *) (gpointer) g_array_steal (clashes, NULL);
  g_ptr_array_sort (log->actions, compare_actions);
  if (log->task == NULL)
    g_clear_pointer (&log, sy_item_log_unref);
  return log;
}

SyItemLog *
sy_item_log_ref (SyItemLog *log)
{
  g_atomic_ref_count_inc (&log->refs);
  return log;
}

void
sy_item_log_unref (SyItemLog *log)
{
  if (log == NULL || !g_atomic_ref_count_dec (&log->refs))
    return;
  g_ptr_array_unref (log->revisions);
  g_ptr_array_unref (log->actions);
  g_ptr_array_unref (log->lines);
  sy_task_free (log->task);
  g_free (log->clashes);
  g_free (log);
}

const SyRevision *
sy_item_log_find (const SyItemLog *log, gint64 revision)
{
  for (guint i = 0; log != NULL && i < log->revisions->len; i++)
    {
      const SyRevision *at = log->revisions->pdata[i];

      if (at->event->revision == revision)
        return at;
    }
  return NULL;
}

const SyRevision *
sy_item_log_latest (const SyItemLog *log)
{
  return log != NULL ? log->revisions->pdata[log->revisions->len - 1] : NULL;
}

gint64
sy_item_log_clash (const SyItemLog *log, gint64 revision)
{
  for (guint i = 0; log != NULL && i < log->revisions->len; i++)
    if (((SyRevision *) log->revisions->pdata[i])->event->revision == revision)
      return log->clashes[i];
  return 0;
}

gboolean
sy_item_log_is_author (const SyItemLog *log, gint64 revision, const char *name)
{
  const SyRevision *stored = sy_item_log_find (log, revision);
  SyDeed deed = { .kind = SY_EVENT_SIGNATURE };
  g_autoptr (SyEvent) signature = NULL;
  g_autoptr (SyTask) task = NULL;

  if (stored == NULL)
    return FALSE;
  /* A signature that is never written: the fold alone knows how people are told apart. */
  signature = sy_event_new (SY_EVENT_SIGNATURE);
  sy_event_set (&signature->by, name);
  signature->revision = revision;
  deed.line_hash = sy_hash_text (&stored->hash);
  g_free (signature->facts);
  signature->facts = sy_deed_write (&deed);
  sy_deed_clear (&deed);
  task = sy_task_apply (sy_task_copy (log->task), signature);
  return task->signed_revision == revision && task->signed_own;
}

SyEvent *
sy_item_log_judge (const SyItemLog *log, gint64 revision, SyDesk *desk, GError **error)
{
  const SyRevision *stored = sy_item_log_find (log, revision);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyAssessment) assessment = NULL;
  g_autofree char *policy = NULL;
  const SyEvent *old;
  SyEvent *event;

  g_return_val_if_fail (stored != NULL, NULL);
  old = stored->event;
  assessment = sy_desk_assess (desk, old->facts, strlen (old->facts), SY_JUDGE_RECORD | SY_JUDGE_REMEDIES | SY_JUDGE_SPREAD,
                               problems);
  if (assessment == NULL)
    {
      g_autofree char *words = problems->count > 0 ? sy_words_problem (&problems->items[0]) : g_strdup ("");

      g_set_error_literal (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_PROBLEMS, words);
      return NULL;
    }
  policy = g_strdup_printf ("%s %d", sy_desk_policy (desk)->id, sy_desk_policy (desk)->version);
  event = sy_event_new (SY_EVENT_REVISION);
  sy_event_set (&event->item, old->item);
  sy_event_set (&event->item_kind, old->item_kind);
  sy_event_set (&event->name, old->name);
  sy_event_set (&event->facts, assessment->text);
  sy_event_set (&event->program, "steelyard " SY_VERSION);
  sy_event_set (&event->method, assessment->findings->method->id);
  sy_event_set (&event->policy, policy);
  event->edition = assessment->findings->method->edition;
  event->revision = old->revision;
  g_free (event->findings);
  event->findings = sy_assessment_json (assessment, FALSE);
  return event;
}
