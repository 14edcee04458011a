/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-audit-words.h"
#include "sy-bundle.h"
#include "sy-ledger-audit.h"
#include "sy-ledger-deeds.h"
#include "sy-ledger-exchange.h"
#include "sy-policy-file.h"

/* The register as at a day: a record in memory, whose lines were written on days of their own. */

#define CONDITIONS ",\"conditions\":[]"
#define FACTS                                                                                                       \
  "{\"method\":\"lift\",\"units\":\"metric\",\"load\":{\"typical\":8,\"heaviest\":9.5},"                              \
  "\"origin\":{\"H\":40,\"V\":60,\"A\":0},\"travel\":20,\"frequency\":1,\"duration\":\"short\",\"coupling\":\"good\"" \
  CONDITIONS "}"

#define RING "Ring to fixture"
#define TRAY "Tray to rack"
#define NEVER "2026-02-28"
#define BECAUSE "agreed with the works council"

/* Of a day: its morning. */
static const char *
morning (const char *day)
{
  static char text[32];

  g_snprintf (text, sizeof text, "%sT07:00:00Z", day);
  return text;
}

static void
record_at (SyLedger *ledger, SyDesk *desk, const char *task, const char *facts, const char *now)
{
  const SyRecordRequest request = { .task = task, .by = "Ann Bell", .role = "safety lead", .why = "measured", .base = -1,
                                    .now = now, .clock_set = TRUE };
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GError) error = NULL;
  SyRecordResult result = { NULL };

  if (!sy_ledger_record (ledger, desk, &request, facts, strlen (facts), problems, &result, &error))
    fail_msg ("%s", error->message);
  sy_record_result_clear (&result);
}

static SyDeedRequest
deed (const char *item, const char *by, const char *day)
{
  return (SyDeedRequest) { .item = item, .by = by, .role = "foreman", .why = "agreed", .now = morning (day),
                           .clock_set = TRUE };
}

static SyAudit *
audit_on (SyLedger *ledger, const char *day)
{
  g_autoptr (GError) error = NULL;
  SyAudit *audit = sy_ledger_audit (ledger, day, NULL, NULL, &error);

  if (audit == NULL)
    fail_msg ("%s: %s", day, error->message);
  assert_string_equal (audit->day, day);
  return audit;
}

/* Among those in use, or, @is_retired, those out of use; fails where it is not there. */
static const SyAuditRow *
row_of (const SyAudit *audit, gboolean is_retired, const char *name)
{
  const GPtrArray *rows = is_retired ? audit->retired : audit->rows;

  for (guint i = 0; i < rows->len; i++)
    if (g_str_equal (((SyAuditRow *) rows->pdata[i])->task->name, name))
      return rows->pdata[i];
  fail_msg ("“%s” is not there on %s", name, audit->day);
  return NULL;
}

/* RING on 2 March, revised and signed off in April; TRAY, of which not everything was asked, from 5 March to June. */
static SyLedger *
tell_story (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (GString) not_asked = g_string_new (FACTS);
  SyLedger *ledger = sy_ledger_open ("memory:", NULL);
  g_autofree char *action = NULL;
  SyDeedRequest what;

  assert_int_equal (g_string_replace (not_asked, CONDITIONS, "", 1), 1);
  record_at (ledger, desk, RING, FACTS, morning ("2026-03-02"));
  record_at (ledger, desk, TRAY, not_asked->str, morning ("2026-03-05"));
  what = deed (TRAY, "Bo Clay", "2026-03-09");
  assert_true (sy_ledger_set_review (ledger, &what, SY_TRIGGER_DATE, "2026-04-01", NULL, NULL));
  what = deed (RING, "Bo Clay", "2026-03-10");
  assert_true (sy_ledger_open_action (ledger, &what, "raise the table", NULL, NULL, "2026-04-15", &action, NULL, NULL));
  record_at (ledger, desk, RING, FACTS, "2026-04-20T23:59:59Z");
  what = deed (RING, "Bo Clay", "2026-04-21");
  assert_true (sy_ledger_close_action (ledger, &what, action, "seen on the floor", NULL, NULL));
  what = deed (RING, "Bo Clay", "2026-04-22");
  assert_true (sy_ledger_sign (ledger, &what, 2, "course of 2024", NULL, NULL));
  what = deed (RING, "ann bell", "2026-05-04");
  assert_true (sy_ledger_sign (ledger, &what, 2, NULL, NULL, NULL));
  what = deed (TRAY, "Bo Clay", "2026-06-01");
  assert_true (sy_ledger_retire (ledger, &what, TRUE, NULL, NULL));
  return ledger;
}

static void
before_the_first_line_the_register_is_empty (void **state)
{
  g_autoptr (SyLedger) ledger = tell_story ();
  g_autoptr (SyAudit) audit = audit_on (ledger, NEVER);
  g_autofree char *heads = sy_audit_head_words (audit, NULL);

  (void) state;
  assert_int_equal (audit->rows->len, 0);
  assert_int_equal (audit->retired->len, 0);
  assert_int_equal (audit->policies->len, 0);
  assert_int_equal (audit->lines_then, 0);
  assert_string_equal (audit->head_then, "");
  assert_int_equal (audit->lines_now, 10);
  assert_int_equal (strlen (audit->head_now), 64);
  assert_non_null (strstr (heads, "empty"));
}

static void
a_day_counts_to_its_end_and_nothing_written_later_does (void **state)
{
  g_autoptr (SyLedger) ledger = tell_story ();
  g_autoptr (SyAudit) first = audit_on (ledger, "2026-03-02"), before = audit_on (ledger, "2026-04-19");
  g_autoptr (SyAudit) on_it = audit_on (ledger, "2026-04-20"), now = audit_on (ledger, "2027-01-01");

  (void) state;
  assert_int_equal (first->rows->len, 1);
  assert_int_equal (first->lines_then, 2); /* the policy, and the revision */
  assert_int_equal (row_of (before, FALSE, RING)->task->revision, 1);
  assert_int_equal (before->n_open, 1);
  assert_true (row_of (before, FALSE, RING)->action_overdue);
  assert_int_equal (row_of (on_it, FALSE, RING)->task->revision, 2);
  assert_int_equal (on_it->lines_then, before->lines_then + 1);
  assert_string_not_equal (on_it->head_then, before->head_then);
  assert_string_equal (before->head_now, now->head_then);
  assert_int_equal (now->n_open, 0);
}

static void
a_signature_is_that_of_the_day_with_its_competence (void **state)
{
  g_autoptr (SyLedger) ledger = tell_story ();
  g_autoptr (SyAudit) none = audit_on (ledger, "2026-04-21"), other = audit_on (ledger, "2026-04-22");
  g_autoptr (SyAudit) own = audit_on (ledger, "2026-05-04");
  g_autofree char *words = sy_audit_signed_words (row_of (own, FALSE, RING), NULL);
  const SyAuditRow *row = row_of (none, FALSE, RING);

  (void) state;
  assert_int_equal (row->gaps, SY_AUDIT_UNSIGNED);
  assert_string_equal (row->competence, "");
  assert_int_equal (sy_audit_count (none, SY_AUDIT_UNSIGNED), 2);
  row = row_of (other, FALSE, RING);
  assert_int_equal (row->gaps, 0);
  assert_string_equal (row->task->signed_by, "Bo Clay");
  assert_string_equal (row->competence, "course of 2024");
  assert_false (row->task->signed_own);
  row = row_of (own, FALSE, RING);
  assert_string_equal (row->task->signed_by, "ann bell");
  assert_string_equal (row->competence, "");
  assert_true (row->task->signed_own);
  assert_non_null (strstr (words, "competence: not said. Own signature: the signer made the revision."));
}

static void
what_was_not_asked_is_told_and_a_review_that_is_past (void **state)
{
  g_autoptr (SyLedger) ledger = tell_story ();
  g_autoptr (SyAudit) due = audit_on (ledger, "2026-04-01"), past = audit_on (ledger, "2026-04-02");
  const SyAuditRow *row = row_of (past, FALSE, TRAY);
  g_autofree char *missing = sy_audit_missing_words (row, NULL);

  (void) state;
  assert_int_equal (row->task->verdict, SY_VERDICT_INCOMPLETE);
  assert_int_equal (row->gaps, SY_AUDIT_INCOMPLETE | SY_AUDIT_UNSIGNED);
  assert_true (row->reasons->len > 0);
  assert_non_null (strstr (missing, sy_audit_gap_words (SY_AUDIT_INCOMPLETE)));
  assert_non_null (strstr (missing, row->reasons->pdata[0]));
  assert_int_equal (row_of (past, FALSE, RING)->reasons->len, 0);
  assert_false (row_of (due, FALSE, TRAY)->review_overdue);
  assert_true (row->review_overdue);
  assert_int_equal (sy_audit_count (past, SY_AUDIT_NOT_ASSESSED), 1);
}

static void
what_is_out_of_use_stands_apart_and_is_not_counted (void **state)
{
  g_autoptr (SyLedger) ledger = tell_story ();
  g_autoptr (SyAudit) before = audit_on (ledger, "2026-05-31"), after = audit_on (ledger, "2026-06-01");

  (void) state;
  assert_int_equal (before->rows->len, 2);
  assert_int_equal (before->retired->len, 0);
  assert_int_equal (after->rows->len, 1);
  assert_int_equal (after->retired->len, 1);
  assert_true (row_of (after, TRUE, TRAY)->reasons->len > 0);
  assert_int_equal (sy_audit_count (after, SY_AUDIT_NOT_ASSESSED), 0);
}

/* The built-in policy with a wider limit, and why. */
static SyDesk *
loose_desk (void)
{
  g_autoptr (GBytes) bytes = sy_policy_builtin ();
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  g_autoptr (GString) text = g_string_new_len (data, (gssize) size);
  SyDesk *desk;

  assert_int_equal (g_string_replace (text, "\"version\": 3,", "\"version\": 4,\"loosened_because\": \"" BECAUSE "\",", 1), 1);
  assert_int_equal (g_string_replace (text, "\"over\": 3.0", "\"over\": 3.5", 1), 1);
  desk = sy_desk_new (text->str, text->len, NULL);
  assert_non_null (desk);
  return desk;
}

static void
a_looser_policy_is_named_with_its_reason_from_its_day_on (void **state)
{
  g_autoptr (SyLedger) ledger = tell_story ();
  g_autoptr (SyDesk) desk = loose_desk ();
  g_autoptr (SyAudit) before = NULL, after = NULL;
  g_autofree char *words = NULL;
  const SyAuditPolicy *policy;

  (void) state;
  record_at (ledger, desk, "Plate to bench", FACTS, morning ("2026-07-01"));
  before = audit_on (ledger, "2026-06-30");
  after = audit_on (ledger, "2026-07-01");
  assert_int_equal (before->policies->len, 1);
  policy = before->policies->pdata[0];
  assert_string_equal (policy->policy, "steelyard-default 3");
  assert_string_equal (policy->loosened_because, "");
  assert_int_equal (after->policies->len, 2);
  policy = after->policies->pdata[1];
  assert_string_equal (policy->policy, "steelyard-default 4");
  assert_string_equal (policy->loosened_because, BECAUSE);
  assert_true (row_of (after, FALSE, "Plate to bench")->task->loosened);
  assert_false (row_of (after, FALSE, RING)->task->loosened);
  words = sy_audit_policy_words (after, NULL);
  assert_non_null (strstr (words, "looser than the program's own. Reason given: " BECAUSE));
}

static void
what_was_taken_over_counts_from_the_day_on_which_it_was (void **state)
{
  g_autoptr (SyLedger) from = tell_story (), to = sy_ledger_open ("memory:", NULL);
  g_autoptr (GBytes) bundle = sy_ledger_export (from, NULL, NULL, NULL, NULL);
  const SyImportRequest request = { .by = "Bo Clay", .role = "keeper", .why = "from the other hall",
                                    .now = "2026-09-01T09:00:00Z" };
  SyImportReport report = { 0 };
  g_autoptr (SyAudit) before = NULL, after = NULL;

  (void) state;
  assert_true (sy_ledger_import (to, bundle, &request, NULL, NULL, &report, NULL));
  sy_import_report_clear (&report);
  before = audit_on (to, "2026-08-31");
  after = audit_on (to, "2026-09-01");
  assert_int_equal (before->rows->len + before->retired->len, 0);
  assert_int_equal (before->lines_then, 0);
  assert_int_equal (row_of (after, FALSE, RING)->task->revision, 2);
  assert_int_equal (after->retired->len, 1);
}

static gboolean
stop (guint64 done, guint64 of, gpointer user_data)
{
  (void) done, (void) of, (void) user_data;
  return FALSE;
}

static void
a_day_that_is_none_is_refused_and_it_can_be_stopped (void **state)
{
  static const char *const days[] = { "2026-02-30", "2026-3-1", "yesterday", "", "2026-03-01T00:00:00Z" };
  g_autoptr (SyLedger) ledger = tell_story ();
  g_autoptr (GError) error = NULL;
  SyAudit *audit;

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      assert_null (sy_ledger_audit (ledger, days[i], NULL, NULL, &error));
      assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED));
      assert_non_null (strstr (error->message, days[i]));
      g_clear_error (&error);
    }
  /* So short a record may be read before anybody is asked. */
  audit = sy_ledger_audit (ledger, "2026-06-01", stop, NULL, &error);
  assert_true (audit != NULL || g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_STOPPED));
  sy_audit_free (audit);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (before_the_first_line_the_register_is_empty),
    cmocka_unit_test (a_day_counts_to_its_end_and_nothing_written_later_does),
    cmocka_unit_test (a_signature_is_that_of_the_day_with_its_competence),
    cmocka_unit_test (what_was_not_asked_is_told_and_a_review_that_is_past),
    cmocka_unit_test (what_is_out_of_use_stands_apart_and_is_not_counted),
    cmocka_unit_test (a_looser_policy_is_named_with_its_reason_from_its_day_on),
    cmocka_unit_test (what_was_taken_over_counts_from_the_day_on_which_it_was),
    cmocka_unit_test (a_day_that_is_none_is_refused_and_it_can_be_stopped),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
