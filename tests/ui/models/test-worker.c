/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-test-facts.h"

static char *home;

static SyWorker *
new_worker (const char *store)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  assert_non_null (desk);
  return sy_worker_new (store, desk);
}

static GPtrArray *
get_tasks (SyWorker *worker, GCancellable *cancellable, GError **error)
{
  SyTestAnswer answer = { NULL, NULL };
  GPtrArray *tasks;

  sy_worker_tasks_async (worker, cancellable, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  assert_ptr_equal (answer.thread, g_thread_self ());
  tasks = sy_worker_tasks_finish (worker, answer.result, error);
  g_object_unref (answer.result);
  return tasks;
}

static GPtrArray *
get_changed (SyWorker *worker, guint64 since, SyHead *head, GError **error)
{
  SyTestAnswer answer = { NULL, NULL };
  GPtrArray *tasks;

  sy_worker_changed_async (worker, since, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  tasks = sy_worker_changed_finish (worker, answer.result, head, error);
  g_object_unref (answer.result);
  return tasks;
}

static void
count_cb (SyWorker *worker, guint *count)
{
  (void) worker;
  *count += 1;
}

static void
what_is_saved_is_told_and_found (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  g_autoptr (GPtrArray) changed = NULL;
  g_autoptr (GPtrArray) later = NULL;
  SyRecordResult saved = { 0 };
  SyHead head = { 0 };
  guint count = 0;

  (void) state;
  g_signal_connect (worker, "changed", G_CALLBACK (count_cb), &count);
  assert_true (sy_test_save (worker, "ring", 12, &saved, &error));
  sy_test_settle ();
  assert_int_equal (count, 1);
  assert_int_equal (saved.revision, 1);
  tasks = get_tasks (worker, NULL, &error);
  assert_non_null (tasks);
  assert_int_equal (tasks->len, 1);
  assert_string_equal (((SyTask *) tasks->pdata[0])->name, "ring");
  assert_string_equal (((SyTask *) tasks->pdata[0])->id, saved.task_id);

  changed = get_changed (worker, 0, &head, &error);
  assert_non_null (changed);
  assert_int_equal (changed->len, 1);
  assert_int_equal (head.number, saved.head.number);
  later = get_changed (worker, head.number, &head, &error);
  assert_non_null (later);
  assert_int_equal (later->len, 0);
  sy_record_result_clear (&saved);
}

static void
history_is_oldest_first (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GPtrArray) history = NULL;
  g_autoptr (GError) error = NULL;
  SyTestAnswer answer = { NULL, NULL };
  SyRecordResult first = { 0 }, second = { 0 };

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, &first, NULL));
  assert_true (sy_test_save (worker, "ring", 9, &second, NULL));
  sy_worker_history_async (worker, first.task_id, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  history = sy_worker_history_finish (worker, answer.result, &error);
  g_object_unref (answer.result);
  assert_non_null (history);
  assert_int_equal (history->len, 2);
  assert_int_equal (((SyRevision *) history->pdata[0])->event->revision, 1);
  assert_int_equal (((SyRevision *) history->pdata[1])->event->revision, 2);
  sy_record_result_clear (&first);
  sy_record_result_clear (&second);
}

static void
a_file_is_attached_listed_and_read (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GBytes) content = g_bytes_new_static ("abc", 3), back = NULL;
  g_autoptr (SyAttachment) attached = NULL;
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GPtrArray) changed = NULL;
  g_autoptr (GError) error = NULL;
  SyAttachRequest request = { .name = "photo.png", .by = "I. Tannick", .why = "as it hangs" };
  SyTestAnswer answer = { NULL, NULL };
  SyRecordResult saved = { 0 };
  SyHead head = { 0 };
  guint count = 0;

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  sy_test_settle ();
  g_signal_connect (worker, "changed", G_CALLBACK (count_cb), &count);
  request.item = saved.task_id;
  sy_worker_attach_async (worker, &request, content, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  attached = sy_worker_attach_finish (worker, answer.result, &error);
  g_clear_object (&answer.result);
  assert_non_null (attached);
  assert_string_equal (attached->media, "image/png");
  sy_test_settle ();
  assert_int_equal (count, 1);

  sy_worker_attachments_async (worker, saved.task_id, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  all = sy_worker_attachments_finish (worker, answer.result, &error);
  g_clear_object (&answer.result);
  assert_int_equal (all->len, 1);
  assert_int_equal (((SyAttachment *) all->pdata[0])->line, attached->line);

  sy_worker_attachment_content_async (worker, saved.task_id, "photo.png", 0, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  back = sy_worker_attachment_content_finish (worker, answer.result, &error);
  g_clear_object (&answer.result);
  assert_true (g_bytes_equal (back, content));

  sy_worker_attachment_content_async (worker, saved.task_id, "other.png", 0, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  assert_null (sy_worker_attachment_content_finish (worker, answer.result, &error));
  assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NO_FILE));
  g_clear_object (&answer.result);

  changed = get_changed (worker, saved.head.number, &head, NULL);
  assert_int_equal (changed->len, 1);
  assert_int_equal (count, 1); /* reading changes nothing */
  sy_record_result_clear (&saved);
}

static void
facts_with_problems_are_refused_whole (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GPtrArray) tasks = NULL;
  g_autoptr (GError) error = NULL;
  SyRecordResult saved = { 0 };

  (void) state;
  assert_false (sy_test_save (worker, "ring", -4, &saved, &error));
  assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_PROBLEMS));
  assert_non_null (strstr (error->message, "load"));
  assert_null (saved.task_id);
  tasks = get_tasks (worker, NULL, NULL);
  assert_int_equal (tasks->len, 0);
}

static void
another_program_is_seen (void **state)
{
  g_autofree char *path = g_build_filename (home, "shared.store", NULL);
  g_autoptr (SyWorker) here = new_worker (path);
  g_autoptr (SyWorker) there = new_worker (path);
  g_autoptr (GPtrArray) before = NULL;
  g_autoptr (GPtrArray) after = NULL;
  SyHead head = { 0 };

  (void) state;
  before = get_changed (here, 0, &head, NULL);
  assert_int_equal (before->len, 0);
  assert_true (sy_test_save (there, "ring", 12, NULL, NULL));
  after = get_changed (here, head.number, &head, NULL);
  assert_int_equal (after->len, 1);
}

static void
a_foreign_file_is_refused_untouched_and_may_go_away (void **state)
{
  g_autofree char *path = g_build_filename (home, "foreign.store", NULL);
  g_autofree char *contents = NULL;
  g_autoptr (SyWorker) worker = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_true (g_file_set_contents (path, "shopping list\n", -1, NULL));
  worker = new_worker (path);
  assert_null (get_tasks (worker, NULL, &error));
  assert_int_equal (error->domain, SY_STORE_ERROR);
  assert_true (g_file_get_contents (path, &contents, NULL, NULL));
  assert_string_equal (contents, "shopping list\n");

  /* The same worker opens the store once nothing stands in the way. */
  assert_int_equal (g_unlink (path), 0);
  tasks = get_tasks (worker, NULL, NULL);
  assert_non_null (tasks);
}

static void
stopping_makes_what_is_queued_first (void **state)
{
  g_autofree char *path = g_build_filename (home, "stopped.store", NULL);
  g_autoptr (SyWorker) worker = new_worker (path);
  g_autoptr (SyWorker) again = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  g_autoptr (GError) error = NULL;
  SySaveRequest *request = sy_save_request_new ();
  SyTestAnswer answer = { NULL, NULL };

  (void) state;
  request->task = g_strdup ("ring");
  request->by = g_strdup ("A. Tester");
  request->why = g_strdup ("first look");
  request->base = -1;
  request->facts = sy_test_facts (12, "bay 3");
  sy_worker_save_async (worker, request, NULL, sy_test_answered, &answer);
  sy_worker_stop (worker);
  sy_worker_stop (worker);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  assert_true (sy_worker_save_finish (worker, answer.result, NULL, NULL));
  g_object_unref (answer.result);

  assert_null (get_tasks (worker, NULL, &error));
  assert_true (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CLOSED));
  again = new_worker (path);
  tasks = get_tasks (again, NULL, NULL);
  assert_int_equal (tasks->len, 1);
}

static void
a_question_nobody_waits_for_is_dropped (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  (void) state;
  g_cancellable_cancel (cancellable);
  assert_null (get_tasks (worker, cancellable, &error));
  assert_true (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
}

static void
many_questions_keep_their_order (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  SyTestAnswer answers[64] = { { NULL, NULL } };

  (void) state;
  for (int i = 0; i < 64; i++)
    sy_worker_tasks_async (worker, NULL, sy_test_answered, &answers[i]);
  assert_true (sy_test_until (sy_test_has_answer, &answers[63], 20000));
  for (int i = 0; i < 64; i++)
    {
      g_autoptr (GPtrArray) tasks = NULL;

      assert_non_null (answers[i].result);
      tasks = sy_worker_tasks_finish (worker, answers[i].result, NULL);
      assert_non_null (tasks);
      g_object_unref (answers[i].result);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (what_is_saved_is_told_and_found),
    cmocka_unit_test (history_is_oldest_first),
    cmocka_unit_test (a_file_is_attached_listed_and_read),
    cmocka_unit_test (facts_with_problems_are_refused_whole),
    cmocka_unit_test (another_program_is_seen),
    cmocka_unit_test (a_foreign_file_is_refused_untouched_and_may_go_away),
    cmocka_unit_test (stopping_makes_what_is_queued_first),
    cmocka_unit_test (a_question_nobody_waits_for_is_dropped),
    cmocka_unit_test (many_questions_keep_their_order),
  };
  int failed;

  home = sy_test_home ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
