/* SPDX-License-Identifier: MIT */
#include "sy-audit-words.h"

#include <math.h>
#include <string.h>

const char sy_audit_elsewhere[] = N_ ("Work that is in no task of this record is not assessed here at all.");
const char sy_audit_day_means[]
  = N_ ("Until the end of the day (UTC), by when lines were written; what was taken over from another record counts from "
        "the day on which it was.");

static const char *
in_words (SyTranslate translate, const char *msgid)
{
  return translate != NULL ? translate (msgid) : msgid;
}

/* The day of an RFC 3339 time. */
static char *
day_of (const char *when)
{
  return g_strndup (when, 10);
}

static char *
number_text (gint64 number)
{
  return g_strdup_printf ("%" G_GINT64_FORMAT, number);
}

static char *
with_role (const char *by, const char *role)
{
  return *role != '\0' ? g_strdup_printf ("%s, %s", by, role) : g_strdup (by);
}

/* ---- an item ---- */

char *
sy_audit_verdict_words (const SyAuditRow *row, SyTranslate translate)
{
  const SyTask *task = row->task;
  const SyMethod *method = sy_method_find (task->method);
  const char *title = in_words (translate, sy_verdict_title_for (method, task->verdict));
  g_autofree char *index = NULL;

  if (isnan (task->index) || *task->index_symbol == '\0')
    return g_strdup (title);
  if (strcmp (task->index_symbol, "utilisation") == 0 && isfinite (task->index))
    {
      index = sy_words_quantity (task->index * 100, SY_KIND_PERCENT, SY_UNITS_METRIC);
      return g_strdup_printf ("%s · %s", title, index);
    }
  index = sy_words_number (task->index, 2);
  return g_strdup_printf ("%s · %s %s", title, sy_words_index_sign (task->index_symbol, translate), index);
}

char *
sy_audit_made_words (const SyAuditRow *row, SyTranslate translate)
{
  const SyTask *task = row->task;
  g_autofree char *revision = number_text (task->revision), *day = day_of (task->when);
  g_autofree char *who = with_role (task->by, task->role);

  return sy_words_say (translate, N_ ("Revision {revision} of {day}, made by {who}"), "revision", revision, "day", day, "who",
                       who, NULL);
}

char *
sy_audit_basis_words (const SyAuditRow *row, SyTranslate translate)
{
  const SyTask *task = row->task;
  const SyMethod *method = sy_method_find (task->method);
  g_autofree char *edition = number_text (task->edition);

  return sy_words_say (translate,
                       task->loosened ? N_ ("{method}, edition {edition}; policy {policy}, with limits looser than the "
                                            "program's own; {program}")
                                      : N_ ("{method}, edition {edition}; policy {policy}; {program}"),
                       "method", method != NULL ? in_words (translate, method->title) : task->method, "edition", edition, "policy", task->policy, "program", task->program, NULL);
}

char *
sy_audit_signed_words (const SyAuditRow *row, SyTranslate translate)
{
  const SyTask *task = row->task;
  g_autofree char *revision = NULL, *day = NULL, *who = NULL, *competence = NULL, *words = NULL;

  if (task->signed_revision == 0)
    return g_strdup (in_words (translate, N_ ("Not signed off")));
  revision = number_text (task->signed_revision);
  day = day_of (task->signed_when);
  who = with_role (task->signed_by, task->signed_role);
  competence = *row->competence != '\0' ? g_strdup (row->competence) : g_strdup (in_words (translate, N_ ("not said")));
  words = sy_words_say (translate, N_ ("Revision {revision} signed off on {day} by {who}; competence: {competence}"), "revision",
                        revision, "day", day, "who", who, "competence", competence, NULL);
  if (!task->signed_own)
    return g_steal_pointer (&words);
  return g_strdup_printf ("%s. %s", words, in_words (translate, N_ ("Own signature: the signer made the revision.")));
}

static void
add_line (GString *out, char *words)
{
  g_string_append_printf (out, "%s%s", out->len > 0 ? "\n" : "", words);
  g_free (words);
}

static void
add_told (GString *out, const SyTask *task, SyTranslate translate)
{
  g_autofree char *revision = number_text (task->told_revision);

  if (task->told_revision == 0)
    add_line (out, g_strdup (in_words (translate, N_ ("Mass and heaviest side: not recorded as told"))));
  else if (task->told_revision == task->revision)
    add_line (out, g_strdup (in_words (translate, N_ ("Mass and heaviest side: told"))));
  else
    add_line (out, sy_words_say (translate, N_ ("Mass and heaviest side: told of revision {revision} only"), "revision", revision,
                                 NULL));
}

char *
sy_audit_due_words (const SyAuditRow *row, SyTranslate translate)
{
  const SyTask *task = row->task;
  const gboolean is_expired = (row->gaps & SY_AUDIT_EXPIRED) != 0;
  GString *out = g_string_new (NULL);

  if (*task->valid_until != '\0')
    add_line (out, sy_words_say (translate, is_expired ? N_ ("Held until {day}: expired") : N_ ("Holds until {day}"), "day",
                                 task->valid_until, NULL));
  if (*task->review_due != '\0')
    add_line (out, sy_words_say (translate,
                                 row->review_overdue ? N_ ("Review was due on {day}: overdue") : N_ ("Review due on {day}"),
                                 "day", task->review_due, NULL));
  if (task->n_open > 0)
    {
      g_autofree char *n = number_text (task->n_open);

      add_line (out, sy_words_say (translate,
                                   *task->action_due == '\0' ? N_ ("Open actions: {n}, no date")
                                   : row->action_overdue     ? N_ ("Open actions: {n}, the first was due on {day}: overdue")
                                                             : N_ ("Open actions: {n}, the first due on {day}"),
                                   "n", n, "day", task->action_due, NULL));
    }
  add_told (out, task, translate);
  return g_string_free (out, FALSE);
}

char *
sy_audit_missing_words (const SyAuditRow *row, SyTranslate translate)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < SY_N_AUDIT_GAPS; i++)
    if (row->gaps & SY_AUDIT_NOT_ASSESSED & (1u << i))
      add_line (out, g_strdup (in_words (translate, sy_audit_gap_words ((SyAuditGap) (1u << i)))));
  /* In the words of the record. */
  for (guint i = 0; i < row->reasons->len; i++)
    add_line (out, g_strdup (row->reasons->pdata[i]));
  return g_string_free (out, FALSE);
}

/* ---- the whole ---- */

static void
add_count (GString *out, SyTranslate translate, const char *msgid, guint n)
{
  g_autofree char *number = g_strdup_printf ("%u", n);
  g_autofree char *words = sy_words_say (translate, msgid, "n", number, NULL);

  g_string_append_printf (out, "%s%s", out->len > 0 ? " · " : "", words);
}

static void
add_verdicts (GString *out, const SyAudit *audit, SyTranslate translate)
{
  guint n[SY_N_VERDICTS] = { 0 };

  for (guint i = 0; i < audit->rows->len; i++)
    n[((const SyAuditRow *) audit->rows->pdata[i])->task->verdict]++;
  for (int i = 0; i < SY_N_VERDICTS; i++)
    if (n[i] > 0)
      g_string_append_printf (out, " · %s: %u", in_words (translate, sy_verdict_title ((SyVerdict) i)), n[i]);
}

char *
sy_audit_count_words (const SyAudit *audit, SyTranslate translate)
{
  GString *out = g_string_new (NULL);
  guint overdue = 0;

  for (guint i = 0; i < audit->rows->len; i++)
    overdue += ((const SyAuditRow *) audit->rows->pdata[i])->review_overdue;
  add_count (out, translate, N_ ("In use: {n}"), audit->rows->len);
  add_verdicts (out, audit, translate);
  add_count (out, translate, N_ ("Not assessed, or no longer: {n}"), sy_audit_count (audit, SY_AUDIT_NOT_ASSESSED));
  add_count (out, translate, N_ ("Not signed off: {n}"), sy_audit_count (audit, SY_AUDIT_UNSIGNED));
  add_count (out, translate, N_ ("Reviews overdue: {n}"), overdue);
  add_count (out, translate, N_ ("Open actions: {n}"), audit->n_open);
  add_count (out, translate, N_ ("Out of use: {n}"), audit->retired->len);
  return g_string_free (out, FALSE);
}

char *
sy_audit_head_words (const SyAudit *audit, SyTranslate translate)
{
  g_autofree char *then = g_strdup_printf ("%" G_GUINT64_FORMAT, audit->lines_then);
  g_autofree char *now = g_strdup_printf ("%" G_GUINT64_FORMAT, audit->lines_now);
  GString *out = g_string_new (NULL);

  add_line (out, audit->lines_then == 0
                   ? g_strdup (in_words (translate, N_ ("The journal was empty on that day.")))
                   : sy_words_say (translate, N_ ("Head of the journal on that day: line {line}, {hash}"), "line", then, "hash",
                                   audit->head_then, NULL));
  if (audit->lines_now > 0)
    add_line (out, sy_words_say (translate, N_ ("Head of the journal now: line {line}, {hash}"), "line", now, "hash",
                                 audit->head_now, NULL));
  return g_string_free (out, FALSE);
}

char *
sy_audit_policy_words (const SyAudit *audit, SyTranslate translate)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < audit->policies->len; i++)
    {
      const SyAuditPolicy *policy = audit->policies->pdata[i];

      add_line (out, sy_words_say (translate,
                                   *policy->loosened_because == '\0'
                                     ? N_ ("Judged under policy {policy}")
                                     : N_ ("Judged under policy {policy}, with limits looser than the program's own. Reason "
                                           "given: {why}"),
                                   "policy", policy->policy, "why", policy->loosened_because, NULL));
    }
  return g_string_free (out, FALSE);
}
