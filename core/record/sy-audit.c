/* SPDX-License-Identifier: MIT */
#include "sy-audit.h"

#include <string.h>

#include "sy-date.h"
#include "sy-json.h"
#include "sy-words-private.h"

static const struct
{
  SyAuditGap gap;
  const char *id, *words;
} gaps[SY_N_AUDIT_GAPS] = {
  { SY_AUDIT_INCOMPLETE, "incomplete", N_ ("Facts that the verdict needs are missing.") },
  { SY_AUDIT_OUTSIDE, "outside", N_ ("Outside the method: a competent person must assess it.") },
  { SY_AUDIT_UNSIGNED, "unsigned", N_ ("The revision in force is not signed off.") },
  { SY_AUDIT_CLASH, "clash", N_ ("Two revisions were made at once, and none settles which holds.") },
  { SY_AUDIT_EXPIRED, "expired", N_ ("The day until which the verdict held is past.") },
};

const char *
sy_audit_gap_words (SyAuditGap gap)
{
  for (gsize i = 0; i < G_N_ELEMENTS (gaps); i++)
    if (gaps[i].gap == gap)
      return gaps[i].words;
  return "";
}

static void
row_free (gpointer data)
{
  SyAuditRow *row = data;

  sy_task_free (row->task);
  g_ptr_array_unref (row->reasons);
  g_free (row->competence);
  g_free (row);
}

static void
policy_free (gpointer data)
{
  SyAuditPolicy *policy = data;

  g_free (policy->policy);
  g_free (policy->loosened_because);
  g_free (policy);
}

static guint
find_gaps (const SyTask *task, double today)
{
  guint found = 0;

  if (task->verdict == SY_VERDICT_INCOMPLETE)
    found |= SY_AUDIT_INCOMPLETE;
  if (task->verdict == SY_VERDICT_OUTSIDE)
    found |= SY_AUDIT_OUTSIDE;
  if (task->signed_revision != task->revision)
    found |= SY_AUDIT_UNSIGNED;
  if (task->clash > 0)
    found |= SY_AUDIT_CLASH;
  if (sy_task_is_expired (task, today))
    found |= SY_AUDIT_EXPIRED;
  return found;
}

static gboolean
is_past (const char *day, double today)
{
  double days;

  return sy_date_read (day, &days) && today > days;
}

static SyAuditRow *
make_row (SyTask *task, double today)
{
  SyAuditRow *row = g_new0 (SyAuditRow, 1);

  row->task = task;
  row->gaps = find_gaps (task, today);
  row->reasons = g_ptr_array_new_with_free_func (g_free);
  row->competence = g_strdup ("");
  row->review_overdue = is_past (task->review_due, today);
  row->action_overdue = is_past (task->action_due, today);
  return row;
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  const SyTask *first = (*(SyAuditRow *const *) a)->task, *second = (*(SyAuditRow *const *) b)->task;
  int order = sy_item_kind_place (first->item_kind) - sy_item_kind_place (second->item_kind);
  g_autofree char *name = NULL, *other = NULL;

  if (order != 0)
    return order;
  name = g_utf8_casefold (first->name, -1);
  other = g_utf8_casefold (second->name, -1);
  order = strcmp (name, other);
  return order != 0 ? order : strcmp (first->id, second->id);
}

static int
compare_policies (gconstpointer a, gconstpointer b)
{
  return strcmp ((*(SyAuditPolicy *const *) a)->policy, (*(SyAuditPolicy *const *) b)->policy);
}

static void
note_policy (SyAudit *audit, const SyTask *task)
{
  SyAuditPolicy *policy;

  for (guint i = 0; i < audit->policies->len; i++)
    if (strcmp (((SyAuditPolicy *) audit->policies->pdata[i])->policy, task->policy) == 0)
      return;
  policy = g_new0 (SyAuditPolicy, 1);
  policy->policy = g_strdup (task->policy);
  policy->loosened_because = g_strdup ("");
  g_ptr_array_add (audit->policies, policy);
}

SyAudit *
sy_audit_new (GPtrArray *tasks, const char *day)
{
  SyAudit *audit = g_new0 (SyAudit, 1);
  double today = 0;

  sy_date_read (day, &today);
  audit->day = g_strdup (day);
  audit->rows = g_ptr_array_new_with_free_func (row_free);
  audit->retired = g_ptr_array_new_with_free_func (row_free);
  audit->policies = g_ptr_array_new_with_free_func (policy_free);
  audit->deferring = sy_deferring_new ();
  audit->head_then = g_strdup ("");
  audit->head_now = g_strdup ("");
  while (tasks->len > 0)
    {
      SyTask *task = g_ptr_array_steal_index (tasks, tasks->len - 1);

      g_ptr_array_add (task->retired ? audit->retired : audit->rows, make_row (task, today));
      audit->n_open += (guint) task->n_open;
      if (!task->retired)
        note_policy (audit, task);
    }
  g_ptr_array_sort (audit->rows, compare_rows);
  g_ptr_array_sort (audit->retired, compare_rows);
  g_ptr_array_sort (audit->policies, compare_policies);
  return audit;
}

void
sy_audit_free (SyAudit *audit)
{
  if (audit == NULL)
    return;
  sy_deferring_free (audit->deferring);
  g_ptr_array_unref (audit->rows);
  g_ptr_array_unref (audit->retired);
  g_ptr_array_unref (audit->policies);
  g_free (audit->day);
  g_free (audit->head_then);
  g_free (audit->head_now);
  g_free (audit);
}

guint
sy_audit_count (const SyAudit *audit, guint wanted)
{
  guint count = 0;

  for (guint i = 0; i < audit->rows->len; i++)
    count += (((SyAuditRow *) audit->rows->pdata[i])->gaps & wanted) != 0;
  return count;
}

static void
put_text (GString *out, const char *name, const char *text)
{
  g_string_append_printf (out, ",\"%s\":", name);
  sy_json_write_text (out, text);
}

static void
put_texts (GString *out, const char *name, GPtrArray *texts)
{
  g_string_append_printf (out, ",\"%s\":[", name);
  for (guint i = 0; i < texts->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      sy_json_write_text (out, texts->pdata[i]);
    }
  g_string_append_c (out, ']');
}

static void
put_index (GString *out, const SyTask *task)
{
  if (*task->index_symbol == '\0')
    return;
  put_text (out, "index", task->index_symbol);
  g_string_append (out, ",\"index_value\":");
  sy_json_write_number (out, task->index);
}

static void
put_signature (GString *out, const SyAuditRow *row)
{
  const SyTask *task = row->task;

  if (task->signed_revision == 0)
    return;
  g_string_append_printf (out, ",\"signed\":{\"revision\":%" G_GINT64_FORMAT ",\"own\":%s", task->signed_revision,
                          task->signed_own ? "true" : "false");
  put_text (out, "who", task->signed_by);
  put_text (out, "role", task->signed_role);
  put_text (out, "competence", row->competence);
  put_text (out, "when", task->signed_when);
  g_string_append_c (out, '}');
}

void
sy_audit_row_write_json (GString *out, const SyAuditRow *row)
{
  const SyTask *task = row->task;
  g_autofree char *caution = sy_words_screening (NULL);

  g_string_append (out, "{\"task\":");
  sy_json_write_text (out, task->name);
  put_text (out, "id", task->id);
  put_text (out, "kind", task->item_kind);
  put_text (out, "place", task->place);
  put_text (out, "method", task->method);
  g_string_append_printf (out, ",\"edition\":%" G_GINT64_FORMAT, task->edition);
  put_text (out, "policy", task->policy);
  if (task->loosened)
    g_string_append (out, ",\"loosened\":true");
  put_text (out, "program", task->program);
  g_string_append_printf (out, ",\"revision\":%" G_GINT64_FORMAT, task->revision);
  put_text (out, "verdict", sy_verdict_id (task->verdict));
  put_index (out, task);
  put_text (out, "who", task->by);
  put_text (out, "role", task->role);
  put_text (out, "when", task->when);
  put_signature (out, row);
  put_text (out, "valid_until", task->valid_until);
  put_text (out, "review_due", task->review_due);
  put_text (out, "review_trigger", task->review_trigger);
  g_string_append_printf (out, ",\"review_overdue\":%s,\"open_actions\":%" G_GINT64_FORMAT ",\"action_overdue\":%s",
                          row->review_overdue ? "true" : "false", task->n_open, row->action_overdue ? "true" : "false");
  put_text (out, "action_due", task->action_due);
  g_string_append_printf (out, ",\"told\":%s,\"retired\":%s,\"not_assessed\":[",
                          task->told_revision == task->revision ? "true" : "false", task->retired ? "true" : "false");
  for (gsize i = 0, n = 0; i < G_N_ELEMENTS (gaps); i++)
    if ((row->gaps & gaps[i].gap) != 0)
      g_string_append_printf (out, "%s\"%s\"", n++ > 0 ? "," : "", gaps[i].id);
  g_string_append_c (out, ']');
  put_texts (out, "reasons", row->reasons);
  put_text (out, "caution", caution);
  g_string_append_c (out, '}');
}
