/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-test-facts.h"
#include "sy-worker-journal.h"

static char *home;

static SyWorker *
new_worker (const char *store)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new (store, desk);
}

static GAsyncResult *
wait_for (SyTestAnswer *answer)
{
  assert_true (sy_test_until (sy_test_has_answer, answer, 20000));
  assert_ptr_equal (answer->thread, g_thread_self ());
  return answer->result;
}

static gboolean
verify (SyWorker *worker, const SyHash *known, GCancellable *cancellable, SyVerification *out, GError **error)
{
  SyTestAnswer answer = { NULL, NULL };
  gboolean done;

  sy_worker_verify_async (worker, known, cancellable, NULL, NULL, sy_test_answered, &answer);
  done = sy_worker_verify_finish (worker, wait_for (&answer), out, error);
  g_object_unref (answer.result);
  return done;
}

static void
what_holds_is_said_to_hold_and_an_unknown_head_not (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GCancellable) stopped = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  SyRecordResult saved = { 0 };
  SyVerification found = { 0 };
  SyHash other = { { 1 } };

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  assert_true (verify (worker, &saved.head.hash, NULL, &found, &error));
  assert_int_equal (found.fault, SY_FAULT_NONE);
  assert_int_equal (found.lines, saved.head.number);
  assert_int_equal (found.known_at, saved.head.number);
  sy_verification_clear (&found);
  assert_true (verify (worker, &other, NULL, &found, &error));
  assert_int_equal (found.fault, SY_FAULT_HEAD);
  sy_verification_clear (&found);
  g_cancellable_cancel (stopped);
  assert_false (verify (worker, NULL, stopped, &found, &error));
  assert_true (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  sy_record_result_clear (&saved);
}

static char *
find_bytes (char *content, gsize size, const char *text)
{
  const gsize length = strlen (text);

  for (gsize i = 0; i + length <= size; i++)
    if (memcmp (content + i, text, length) == 0)
      return content + i;
  return NULL;
}

static void
a_byte_that_another_program_changed_is_found_while_the_record_is_open (void **state)
{
  g_autofree char *store = g_build_filename (home, "shop.store", NULL), *content = NULL;
  g_autoptr (SyWorker) worker = NULL;
  g_autoptr (GError) error = NULL;
  SyVerification found = { 0 };
  SyRecordResult saved = { 0 };
  gsize size = 0;
  char *at;

  (void) state;
  worker = new_worker (store);
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  sy_record_result_clear (&saved);
  sy_worker_stop (worker);
  g_clear_object (&worker);

  worker = new_worker (store);
  assert_true (verify (worker, NULL, NULL, &found, &error));
  assert_int_equal (found.fault, SY_FAULT_NONE);
  sy_verification_clear (&found);
  /* The facts stand in the file as they were typed. */
  assert_true (g_file_get_contents (store, &content, &size, NULL));
  at = find_bytes (content, size, "single pieces");
  assert_non_null (at);
  {
    FILE *file = g_fopen (store, "r+b");

    assert_non_null (file);
    assert_int_equal (fseek (file, at - content, SEEK_SET), 0);
    assert_int_equal (fputc ('S', file), 'S');
    fclose (file);
  }
  assert_true (verify (worker, NULL, NULL, &found, &error));
  assert_int_not_equal (found.fault, SY_FAULT_NONE);
  assert_int_equal (found.line, 2);
  sy_verification_clear (&found);
  sy_worker_stop (worker);
}

static void
the_lists_are_made_anew_and_nothing_differs (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GError) error = NULL;
  SyTestAnswer answer = { NULL, NULL };
  SyRebuild rebuild = { 0 };

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  sy_worker_rebuild_async (worker, NULL, NULL, NULL, sy_test_answered, &answer);
  assert_true (sy_worker_rebuild_finish (worker, wait_for (&answer), &rebuild, &error));
  assert_int_equal (rebuild.n_different, 0);
  assert_int_equal (rebuild.items, 1);
  sy_rebuild_clear (&rebuild);
  g_object_unref (answer.result);
}

static void
people_and_the_policy_are_told (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GError) error = NULL;
  SyTestAnswer answer = { NULL, NULL };
  g_auto (GStrv) people = NULL;
  g_autofree char *policy = NULL, *adopted = NULL, *none = NULL;

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  sy_worker_people_async (worker, NULL, sy_test_answered, &answer);
  people = sy_worker_people_finish (worker, wait_for (&answer), &error);
  g_clear_object (&answer.result);
  assert_int_equal (g_strv_length (people), 1);
  assert_string_equal (people[0], "A. Tester");
  sy_worker_policy_async (worker, 0, NULL, sy_test_answered, &answer);
  policy = sy_worker_policy_finish (worker, wait_for (&answer), &error);
  g_clear_object (&answer.result);
  assert_non_null (policy);
  sy_worker_policy_async (worker, 1, NULL, sy_test_answered, &answer);
  adopted = sy_worker_policy_finish (worker, wait_for (&answer), &error);
  g_clear_object (&answer.result);
  assert_string_equal (adopted, policy);
  sy_worker_policy_async (worker, 9, NULL, sy_test_answered, &answer);
  none = sy_worker_policy_finish (worker, wait_for (&answer), &error);
  g_clear_object (&answer.result);
  assert_null (none);
  assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND));
}

static void
count_cb (SyWorker *worker, guint *count)
{
  (void) worker;
  *count += 1;
}

static void
a_bundle_goes_from_record_to_record (void **state)
{
  g_autoptr (SyWorker) one = new_worker ("memory:"), other = new_worker ("memory:");
  g_autoptr (GBytes) bundle = NULL, table = NULL;
  g_autoptr (GError) error = NULL;
  SyTestAnswer answer = { NULL, NULL };
  SyImportReport report = { 0 };
  SyImportRequest request = { .by = "A. Tester", .why = "the other hall", .dry_run = TRUE };
  const SyTaskFilter any = { .search = NULL };
  guint changes = 0;

  (void) state;
  assert_true (sy_test_save (one, "ring", 12, NULL, NULL));
  sy_worker_export_async (one, NULL, NULL, NULL, NULL, sy_test_answered, &answer);
  bundle = sy_worker_export_finish (one, wait_for (&answer), &error);
  g_clear_object (&answer.result);
  assert_non_null (bundle);
  sy_worker_export_csv_async (one, &any, NULL, NULL, NULL, sy_test_answered, &answer);
  table = sy_worker_export_csv_finish (one, wait_for (&answer), &error);
  g_clear_object (&answer.result);
  assert_non_null (table);

  g_signal_connect (other, "changed", G_CALLBACK (count_cb), &changes);
  for (int i = 0; i < 2; i++)
    {
      sy_worker_import_async (other, bundle, &request, NULL, NULL, NULL, sy_test_answered, &answer);
      assert_true (sy_worker_import_finish (other, wait_for (&answer), &report, &error));
      g_clear_object (&answer.result);
      assert_int_equal (report.added, 2);
      sy_import_report_clear (&report);
      request.dry_run = FALSE;
    }
  sy_test_settle ();
  assert_true (changes > 0);
  sy_worker_import_async (other, bundle, &request, NULL, NULL, NULL, sy_test_answered, &answer);
  assert_true (sy_worker_import_finish (other, wait_for (&answer), &report, &error));
  g_clear_object (&answer.result);
  assert_int_equal (report.added, 0);
  sy_import_report_clear (&report);
}

static void
a_bad_cell_of_a_table_is_named_and_nothing_recorded (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (GBytes) csv = g_bytes_new_static ("task,load.typical\nring,heavy\n", strlen ("task,load.typical\nring,heavy\n"));
  g_autoptr (GError) error = NULL;
  SyTestAnswer answer = { NULL, NULL };
  SyLiftsReport report = { 0 };
  const SyImportRequest request = { .by = "A. Tester", .why = "round", .dry_run = FALSE };

  (void) state;
  sy_worker_import_lifts_async (worker, csv, &request, NULL, NULL, NULL, sy_test_answered, &answer);
  assert_true (sy_worker_import_lifts_finish (worker, wait_for (&answer), &report, &error));
  g_clear_object (&answer.result);
  assert_int_equal (report.added, 0);
  assert_true (report.bad->len > 0);
  sy_lifts_report_clear (&report);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (what_holds_is_said_to_hold_and_an_unknown_head_not),
    cmocka_unit_test (a_byte_that_another_program_changed_is_found_while_the_record_is_open),
    cmocka_unit_test (the_lists_are_made_anew_and_nothing_differs),
    cmocka_unit_test (people_and_the_policy_are_told),
    cmocka_unit_test (a_bundle_goes_from_record_to_record),
    cmocka_unit_test (a_bad_cell_of_a_table_is_named_and_nothing_recorded),
  };
  int failed;

  home = sy_test_home ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
