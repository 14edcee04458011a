/* SPDX-License-Identifier: MIT */
#include "sy-ledger-audit.h"

#include <string.h>

#include "sy-date.h"
#include "sy-deed.h"
#include "sy-json.h"
#include "sy-ledger-deeds.h"
#include "sy-ledger-private.h"

/* What the list of items does not hold of itself is read from the lines. */

static const SyJson *
scan_json (const char *text, SyMemory *memory)
{
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);

  return sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);
}

static gboolean
says_what_is_missing (const char *verdict)
{
  return g_strcmp0 (verdict, sy_verdict_id (SY_VERDICT_INCOMPLETE)) == 0
         || g_strcmp0 (verdict, sy_verdict_id (SY_VERDICT_OUTSIDE)) == 0;
}

/* The reasons of a stored revision that say what is missing or excluded, also where a stricter one governs. */
static void
take_reasons (SyAuditRow *row, const SyEvent *revision)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *findings = scan_json (revision->findings, memory);
  const SyJson *reasons = findings != NULL ? sy_json_member (findings, "reasons") : NULL;

  for (const SyJson *reason = reasons != NULL ? reasons->first : NULL; reason != NULL; reason = reason->next)
    {
      const char *verdict = sy_json_member_text (reason, "verdict"), *text = sy_json_member_text (reason, "text");

      if (says_what_is_missing (verdict) && text != NULL)
        g_ptr_array_add (row->reasons, g_strdup (text));
    }
}

typedef struct
{
  SyAuditRow *row;
  guint64 end; /* number of the last line that counts */
} Wanted;

static gboolean
take_line_cb (const SyLine *line, gpointer user_data)
{
  const Wanted *wanted = user_data;
  const SyTask *task = wanted->row->task;
  SyDeed deed;

  if (line->number > wanted->end)
    return FALSE;
  if (line->event->kind == SY_EVENT_REVISION && line->event->revision == task->revision)
    take_reasons (wanted->row, line->event);
  if (line->event->kind == SY_EVENT_SIGNATURE && line->event->revision == task->signed_revision
      && sy_deed_read (line->event, &deed))
    {
      sy_event_set (&wanted->row->competence, deed.competence);
      sy_deed_clear (&deed);
    }
  return TRUE;
}

static gboolean
complete_rows (SyStore *store, GPtrArray *rows, guint64 end, GError **error)
{
  for (guint i = 0; i < rows->len; i++)
    {
      Wanted wanted = { rows->pdata[i], end };
      /* What is favourable has no such reason. */
      const gboolean has_more = wanted.row->task->signed_revision > 0
                                || sy_verdict_rank (wanted.row->task->verdict) >= sy_verdict_rank (SY_VERDICT_INCOMPLETE);

      if (has_more && !sy_store_scan_item (store, wanted.row->task->id, 0, take_line_cb, &wanted, error))
        return FALSE;
    }
  return TRUE;
}

/* Methods of the rows that were judged under the policy; NULL-terminated, borrowed. */
static GPtrArray *
methods_under (const SyAudit *audit, const char *policy)
{
  GPtrArray *out = g_ptr_array_new ();

  for (guint i = 0; i < audit->rows->len; i++)
    {
      const SyTask *task = ((const SyAuditRow *) audit->rows->pdata[i])->task;

      if (strcmp (task->policy, policy) == 0 && !g_ptr_array_find_with_equal_func (out, task->method, g_str_equal, NULL))
        g_ptr_array_add (out, task->method);
    }
  g_ptr_array_add (out, NULL);
  return out;
}

/* Of a policy that something was judged under, what its own text says: the reason for a looser limit, what results defer to. */
static void
take_policy (SyAudit *audit, const SyEvent *event)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *root = scan_json (event->facts, memory);
  const char *id = root != NULL ? sy_json_member_text (root, "id") : NULL;
  const char *because = root != NULL ? sy_json_member_text (root, "loosened_because") : NULL;
  g_autofree char *name = NULL;
  g_autoptr (GPtrArray) methods = NULL;

  if (id == NULL)
    return;
  name = g_strdup_printf ("%s %d", id, (int) sy_json_member_number (root, "version", 0));
  methods = methods_under (audit, name);
  if (methods->len > 1)
    sy_deferring_add_stored_policy (audit->deferring, root, (const char *const *) methods->pdata);
  for (guint i = 0; because != NULL && i < audit->policies->len; i++)
    {
      SyAuditPolicy *policy = audit->policies->pdata[i];

      if (strcmp (policy->policy, name) == 0)
        sy_event_set (&policy->loosened_because, because);
    }
}

static gboolean
complete_policies (SyLedger *ledger, SyAudit *audit, GError **error)
{
  const SyJournalFilter filter = { .kind = SY_EVENT_POLICY };
  g_autoptr (GPtrArray) lines = sy_ledger_journal (ledger, &filter, 0, 0, error);

  if (lines == NULL)
    return FALSE;
  for (guint i = lines->len; i > 0; i--)
    {
      const guint64 number = ((SyJournalRow *) lines->pdata[i - 1])->number;
      SyRevision *line;

      if (number > audit->lines_then)
        continue;
      line = sy_ledger_line (ledger, number, error);
      if (line == NULL)
        return FALSE;
      take_policy (audit, line->event);
      sy_revision_free (line);
    }
  return TRUE;
}

static gboolean
complete (SyLedger *ledger, SyAudit *audit, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  SyHead then, now;

  if (!sy_store_head_as_at (store, audit->day, &then, error) || !sy_store_head (store, &now, error))
    return FALSE;
  audit->lines_then = then.number;
  audit->lines_now = now.number;
  g_free (audit->head_then);
  g_free (audit->head_now);
  audit->head_then = then.number > 0 ? sy_hash_text (&then.hash) : g_strdup ("");
  audit->head_now = now.number > 0 ? sy_hash_text (&now.hash) : g_strdup ("");
  return complete_rows (store, audit->rows, then.number, error) && complete_rows (store, audit->retired, then.number, error)
         && complete_policies (ledger, audit, error);
}

SyAudit *
sy_ledger_audit (SyLedger *ledger, const char *day, SyProgressFunc progress, gpointer user_data, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (GPtrArray) tasks = NULL;
  g_autoptr (SyAudit) audit = NULL;
  double days;

  if (!sy_date_read (day, &days))
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED,
                   "day: given “%s”; allowed: a date as year-month-day, such as 2026-11-26", day);
      return NULL;
    }
  tasks = sy_store_as_at (store, day, progress, user_data, error);
  if (tasks == NULL)
    return NULL;
  audit = sy_audit_new (tasks, day);
  return complete (ledger, audit, error) ? g_steal_pointer (&audit) : NULL;
}
