/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-audit-list.h"
#include "sy-test-facts.h"
#include "sy-worker-audit.h"

static char *home;

static SyWorker *
new_worker (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new ("memory:", desk);
}

static SyAudit *
audit_of (SyWorker *worker, const char *day, GCancellable *cancellable, GError **error)
{
  SyTestAnswer answer = { NULL, NULL };
  SyAudit *audit;

  sy_worker_audit_async (worker, day, cancellable, NULL, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  assert_ptr_equal (answer.thread, g_thread_self ());
  audit = sy_worker_audit_finish (worker, answer.result, error);
  g_object_unref (answer.result);
  return audit;
}

static void
the_worker_answers_stops_and_says_what_is_wrong (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (GCancellable) stopped = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SyAudit) audit = NULL, before = NULL;

  (void) state;
  g_setenv ("STEELYARD_CLOCK", "2026-03-02T23:59:59Z", TRUE);
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  audit = audit_of (worker, "2026-03-02", NULL, &error);
  assert_non_null (audit);
  assert_int_equal (audit->rows->len, 1);
  assert_int_equal (audit->lines_then, 2); /* the policy, and the revision */
  before = audit_of (worker, "2026-03-01", NULL, &error);
  assert_non_null (before);
  assert_int_equal (before->rows->len, 0);
  assert_int_equal (before->lines_then, 0);
  assert_int_equal (before->lines_now, 2);

  assert_null (audit_of (worker, "2026-02-30", NULL, &error));
  assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED));
  assert_non_null (strstr (error->message, "2026-02-30"));
  g_clear_error (&error);
  g_cancellable_cancel (stopped);
  assert_null (audit_of (worker, "2026-03-02", stopped, &error));
  assert_true (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
}

/* Taken by the register. */
static void
add_task (GPtrArray *tasks, const char *name, SyVerdict verdict, gboolean is_signed, gboolean is_retired)
{
  SyTask *task = sy_task_new ();

  sy_event_set (&task->id, name);
  sy_event_set (&task->name, name);
  sy_event_set (&task->item_kind, SY_ITEM_TASK);
  task->verdict = verdict;
  task->revision = 1;
  task->signed_revision = is_signed ? 1 : 0;
  task->retired = is_retired;
  g_ptr_array_add (tasks, task);
}

static void
assert_lists (SyAuditList *list, const char *names)
{
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    {
      g_autoptr (SyAuditItem) item = g_list_model_get_item (G_LIST_MODEL (list), i);

      g_string_append (found, sy_audit_item_get_row (item)->task->name);
    }
  assert_string_equal (found->str, names);
}

static void
count_cb (GListModel *model, guint position, guint removed, guint added, guint *n)
{
  (void) model, (void) position;
  *n += removed - added;
}

static void
what_is_asked_for_is_listed (void **state)
{
  g_autoptr (SyAuditList) list = sy_audit_list_new ();
  g_autoptr (GPtrArray) tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);
  g_autoptr (GPtrArray) none = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);
  g_autoptr (SyAuditItem) kept = NULL;
  guint n = 0;

  (void) state;
  assert_null (sy_audit_list_get (list));
  assert_lists (list, "");
  add_task (tasks, "c", SY_VERDICT_INCOMPLETE, TRUE, FALSE);
  add_task (tasks, "a", SY_VERDICT_BY_HAND, TRUE, FALSE);
  add_task (tasks, "b", SY_VERDICT_OUTSIDE, FALSE, FALSE);
  add_task (tasks, "r", SY_VERDICT_BY_HAND, FALSE, TRUE);
  g_signal_connect (list, "items-changed", G_CALLBACK (count_cb), &n);
  sy_audit_list_take (list, sy_audit_new (tasks, "2026-03-02"));
  assert_lists (list, "abc");
  assert_int_equal (n, (guint) -3);
  sy_audit_list_show (list, SY_AUDIT_LIST_NOT_ASSESSED);
  assert_lists (list, "bc");
  sy_audit_list_show (list, SY_AUDIT_LIST_UNSIGNED);
  assert_lists (list, "b");
  sy_audit_list_show (list, SY_AUDIT_LIST_RETIRED);
  assert_lists (list, "r");
  /* Another day is listed in the same way; what is still looked at stays whole. */
  kept = g_list_model_get_item (G_LIST_MODEL (list), 0);
  sy_audit_list_take (list, sy_audit_new (none, "2026-03-01"));
  assert_lists (list, "");
  assert_int_equal (n, 0);
  assert_string_equal (sy_audit_item_get_row (kept)->task->name, "r");
  g_clear_object (&list);
  assert_string_equal (sy_audit_item_get_row (kept)->task->name, "r");
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test (the_worker_answers_stops_and_says_what_is_wrong),
  cmocka_unit_test (what_is_asked_for_is_listed),
};

int
main (void)
{
  int failed;

  home = sy_test_home ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
