/* SPDX-License-Identifier: MIT */
/* The improvement log as a list: read by the worker, in words, searched; followed while it is looked at. */
#include "sy-test.h"

#include <math.h>

#include "sy-improvement-list.h"
#include "sy-test-facts.h"
#include "sy-worker-deeds.h"

#define LIMIT_MS 20000

static void
do_deed (SyWorker *worker, SyDeedAsk *ask, char **id)
{
  SyTestAnswer answer = { NULL, NULL };

  sy_worker_deed_async (worker, ask, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  assert_true (sy_worker_deed_finish (worker, answer.result, id, NULL));
  g_object_unref (answer.result);
}

static char *
add (SyWorker *worker, const char *item, const char *from, const char *what, const char *day)
{
  SyDeedAsk *ask = sy_deed_ask_new (SY_EVENT_IMPROVEMENT, item, "B. Foreman", "foreman", "seen at work");
  char *id = NULL;

  ask->deed.step = SY_STEP_ADD;
  ask->deed.what = g_strdup (what);
  ask->deed.idea_by = g_strdup ("C. Setter");
  ask->deed.put_to_work = g_strdup (day);
  ask->deed.from_item = g_strdup (from);
  do_deed (worker, ask, &id);
  return id;
}

static gboolean
has_rows (gpointer data)
{
  gpointer *pair = data;

  return g_list_model_get_n_items (pair[0]) == GPOINTER_TO_UINT (pair[1]);
}

static void
wait_rows (SyImprovementList *list, guint n)
{
  gpointer pair[] = { list, GUINT_TO_POINTER (n) };

  if (!sy_test_until (has_rows, pair, LIMIT_MS))
    fail_msg ("%u rows instead of %u", g_list_model_get_n_items (G_LIST_MODEL (list)), n);
}

static void
the_log_is_listed_searched_and_followed (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyWorker) worker = sy_worker_new ("memory:", desk);
  g_autoptr (SyImprovementList) list = sy_improvement_list_new (worker);
  g_autoptr (SyImprovementRow) row = NULL, same = NULL;
  SyRecordResult heavy = { 0 }, light = { 0 }, lightest = { 0 };
  g_autofree char *first = NULL, *second = NULL, *change = NULL, *gain = NULL, *reached = NULL, *history = NULL;
  SyDeedAsk *ask;

  (void) state;
  assert_true (sy_test_save (worker, "By hand", 30, &heavy, NULL));
  assert_true (sy_test_save (worker, "With a balancer", 5, &light, NULL));
  assert_true (sy_test_save (worker, "With a hoist", 4, &lightest, NULL));
  first = add (worker, light.task_id, heavy.task_id, "a balancer", "2026-01-20");
  assert_null (sy_improvement_list_get_views (list));
  sy_improvement_list_set_watched (list, TRUE);
  wait_rows (list, 1);
  row = g_list_model_get_item (G_LIST_MODEL (list), 0);
  change = sy_improvement_row_change (row);
  reached = sy_improvement_row_reached (row);
  history = sy_improvement_row_history (row);
  gain = sy_improvement_row_gain (row, SY_GAIN_STOPPED);
  assert_string_equal (change, "By hand (1) → With a balancer (1)");
  assert_string_equal (reached, "Reached");
  assert_string_equal (gain, "–");
  assert_non_null (strstr (history, "Entered by B. Foreman, 20"));
  assert_non_null (strstr (history, "seen at work"));
  assert_true (sy_improvement_list_get_head (list)->number >= 4);

  second = add (worker, lightest.task_id, light.task_id, "a hoist", "2026-04-02");
  wait_rows (list, 2);
  same = g_list_model_get_item (G_LIST_MODEL (list), 1);
  assert_ptr_equal (same, row);
  assert_int_equal (sy_improvement_list_get_quarters (list)->len, 2);
  sy_improvement_list_set_search (list, "HOIST c.");
  wait_rows (list, 1);
  sy_improvement_list_set_search (list, "");
  wait_rows (list, 2);

  ask = sy_deed_ask_new (SY_EVENT_IMPROVEMENT, light.task_id, "B. Foreman", "foreman", "taken down");
  ask->deed.step = SY_STEP_WITHDRAW;
  ask->deed.improvement = g_strdup (first);
  do_deed (worker, ask, NULL);
  wait_rows (list, 1);
  assert_int_equal (sy_improvement_list_get_quarters (list)->len, 1);
  sy_improvement_list_set_withdrawn (list, TRUE);
  wait_rows (list, 2);
  assert_null (sy_improvement_list_get_error (list));
  sy_worker_stop (worker);
  sy_record_result_clear (&heavy);
  sy_record_result_clear (&light);
  sy_record_result_clear (&lightest);
}

static void
assert_gain (SyGain gain, double value, const char *expected)
{
  g_autofree char *words = sy_improvement_gain_words (gain, value);

  assert_string_equal (words, expected);
}

static void
what_was_bought_is_told_with_its_unit (void **state)
{
  SyQuarter quarter = { .year = 2026, .quarter = 2, .n = 3, .n_reached = 2 };
  g_autofree char *few = NULL, *words = NULL;

  (void) state;
  assert_gain (SY_GAIN_INDEX, 1.12, "1.12 less");
  assert_gain (SY_GAIN_INDEX, NAN, "–");
  assert_gain (SY_GAIN_STOPPED, -3, "3 min more");
  assert_gain (SY_GAIN_PERSON_MINUTES, 0, "the same");
  assert_gain (SY_GAIN_PERSONS, 1, "1 fewer");
  assert_gain (SY_GAIN_PERSONS, -1, "1 more");

  few = sy_improvement_quarter_words (&quarter);
  assert_string_equal (few, "2026 Q2: 3 improvements, 2 reached a favourable verdict");
  quarter.n_known[SY_GAIN_INDEX] = 2;
  quarter.sums[SY_GAIN_INDEX] = 1.5; /* told as their mean */
  quarter.n_known[SY_GAIN_STOPPED] = 1;
  quarter.sums[SY_GAIN_STOPPED] = 12;
  words = sy_improvement_total_words (&quarter);
  assert_string_equal (words, "3 improvements · 2 reached a favourable verdict · index 0.75 less in the mean (of 2) · "
                              "machine stands 12 min less a change (of 1)");
}

static void
a_record_that_cannot_be_read_is_an_error (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyWorker) worker = sy_worker_new ("/nowhere/at/all.store", desk);
  SyTestAnswer answer = { NULL, NULL };
  g_autoptr (GError) error = NULL;

  (void) state;
  sy_worker_improvements_async (worker, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  assert_null (sy_worker_improvements_finish (worker, answer.result, NULL, &error));
  assert_non_null (error);
  g_object_unref (answer.result);
  sy_worker_stop (worker);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (the_log_is_listed_searched_and_followed),
    cmocka_unit_test (what_was_bought_is_told_with_its_unit),
    cmocka_unit_test (a_record_that_cannot_be_read_is_an_error),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
