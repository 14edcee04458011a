/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-due-list.h"
#include "sy-journal-list.h"
#include "sy-test-facts.h"
#include "sy-worker-deeds.h"

static char *home;

#define N_DEEDS 150 /* more than are read in one go */

static SyWorker *
new_worker (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new ("memory:", desk);
}

static gboolean
is_loaded (gpointer list)
{
  return !sy_journal_list_get_loading (list);
}

static gboolean
is_read (gpointer line)
{
  return sy_journal_line_get_row (line) != NULL;
}

static SyJournalLine *
line_at (SyJournalList *list, guint position)
{
  SyJournalLine *line = g_list_model_get_item (G_LIST_MODEL (list), position);

  assert_non_null (line);
  assert_true (sy_test_until (is_read, line, 20000));
  return line;
}

/* Opens an action; waits. */
static void
open_action (SyWorker *worker, const char *item, const char *by, const char *what, const char *due)
{
  SyDeedAsk *ask = sy_deed_ask_new (SY_EVENT_ACTION, item, by, "foreman", "because");
  SyTestAnswer answer = { NULL, NULL };
  g_autoptr (GError) error = NULL;

  ask->deed.step = SY_STEP_OPEN;
  ask->deed.what = g_strdup (what);
  ask->deed.due = g_strdup (due);
  ask->deed.assigned = g_strdup (by);
  sy_worker_deed_async (worker, ask, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  assert_true (sy_worker_deed_finish (worker, answer.result, NULL, &error));
  g_object_unref (answer.result);
}

typedef struct
{
  guint position, removed, added, count;
} Change;

static void
changed_cb (GListModel *model, guint position, guint removed, guint added, Change *change)
{
  (void) model;
  *change = (Change) { position, removed, added, change->count + 1 };
}

static gboolean
has_changed (gpointer data)
{
  return ((Change *) data)->count > 0;
}

static void
lines_come_newest_first_and_are_read_when_they_are_looked_at (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyJournalList) list = NULL;
  g_autoptr (SyJournalLine) first = NULL, far = NULL, again = NULL;
  SyRecordResult saved = { 0 };
  Change change = { 0 };
  guint position = 0;

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  for (int i = 0; i < N_DEEDS; i++)
    open_action (worker, saved.task_id, i % 3 == 0 ? "P. Other" : "A. Tester", "fit a stop", "");
  list = sy_journal_list_new (worker);
  assert_true (sy_journal_list_get_loading (list));
  assert_true (sy_test_until (is_loaded, list, 20000));
  /* The policy is adopted with the first revision. */
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (list)), N_DEEDS + 2);
  assert_int_equal (sy_journal_list_get_total (list), N_DEEDS + 2);
  first = line_at (list, 0);
  assert_int_equal (sy_journal_line_get_number (first), N_DEEDS + 2);
  assert_int_equal (sy_journal_line_get_row (first)->kind, SY_EVENT_ACTION);
  far = line_at (list, N_DEEDS);
  assert_int_equal (sy_journal_line_get_number (far), 2);
  assert_string_equal (sy_journal_line_get_row (far)->name, "ring");
  assert_true (sy_journal_list_find (list, 2, &position));
  assert_int_equal (position, N_DEEDS);
  assert_false (sy_journal_list_find (list, N_DEEDS + 3, &position));

  /* What is written meanwhile comes in at the top; what is held stays what it is. */
  g_signal_connect (list, "items-changed", G_CALLBACK (changed_cb), &change);
  open_action (worker, saved.task_id, "P. Other", "fit another", "");
  assert_true (sy_test_until (has_changed, &change, 20000));
  assert_int_equal (change.position, 0);
  assert_int_equal (change.removed, 0);
  assert_int_equal (change.added, 1);
  again = g_list_model_get_item (G_LIST_MODEL (list), 1);
  assert_ptr_equal (again, first);
  sy_record_result_clear (&saved);
}

static void
a_filter_leaves_what_it_lets_through_and_follows_what_is_new (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyJournalList) list = NULL;
  g_autoptr (SyJournalLine) line = NULL;
  SyRecordResult saved = { 0 };
  const SyJournalFilter others = { .by = "P. Other" }, both = { .by = "P. Other", .kind = SY_EVENT_REVISION };
  Change change = { 0 };
  guint position = 0;

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  for (int i = 0; i < N_DEEDS; i++)
    open_action (worker, saved.task_id, i % 2 == 0 ? "P. Other" : "A. Tester", "fit a stop", "");
  list = sy_journal_list_new (worker);
  sy_journal_list_set_filter (list, &others);
  assert_true (sy_journal_list_is_filtered (list));
  assert_true (sy_test_until (is_loaded, list, 20000));
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (list)), N_DEEDS / 2);
  assert_int_equal (sy_journal_list_get_total (list), N_DEEDS + 2);
  line = line_at (list, N_DEEDS / 2 - 1);
  assert_int_equal (sy_journal_line_get_number (line), 3);
  assert_string_equal (sy_journal_line_get_row (line)->by, "P. Other");
  assert_true (sy_journal_list_find (list, 3, &position));
  assert_false (sy_journal_list_find (list, 4, &position));

  g_signal_connect (list, "items-changed", G_CALLBACK (changed_cb), &change);
  open_action (worker, saved.task_id, "P. Other", "fit another", "");
  assert_true (sy_test_until (has_changed, &change, 20000));
  assert_int_equal (change.added, 1);
  assert_int_equal (change.removed, 0);

  sy_journal_list_set_filter (list, &both);
  assert_true (sy_test_until (is_loaded, list, 20000));
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (list)), 0);
  sy_journal_list_set_filter (list, NULL);
  assert_true (sy_test_until (is_loaded, list, 20000));
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (list)), N_DEEDS + 3);
  sy_record_result_clear (&saved);
}

static gboolean
is_due_loaded (gpointer list)
{
  return !sy_due_list_get_loading (list);
}

static gboolean
has_items (gpointer list)
{
  return g_list_model_get_n_items (list) > 0;
}

static void
assert_due (SyDueList *list, guint position, const char *what, SyDueWhen when)
{
  g_autoptr (SyDueRow) row = g_list_model_get_item (G_LIST_MODEL (list), position);
  g_autofree char *words = NULL;

  assert_non_null (row);
  words = sy_due_row_what (row);
  assert_string_equal (words, what);
  assert_int_equal (sy_due_row_get_when (row), when);
}

static void
what_is_to_be_done_comes_by_its_day (void **state)
{
  g_autoptr (SyWorker) worker = NULL;
  g_autoptr (SyTaskList) items = NULL;
  g_autoptr (SyDueList) due = NULL;
  SyRecordResult saved = { 0 };
  g_auto (GStrv) people = NULL;

  (void) state;
  g_setenv ("STEELYARD_CLOCK", "2026-11-01T09:00:00Z", TRUE);
  worker = new_worker ();
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  open_action (worker, saved.task_id, "P. Other", "whenever", "");
  open_action (worker, saved.task_id, "P. Other", "later", "2027-03-01");
  open_action (worker, saved.task_id, "A. Tester", "soon", "2026-12-02");
  open_action (worker, saved.task_id, "A. Tester", "today", "2026-11-26");
  open_action (worker, saved.task_id, "A. Tester", "too late", "2026-11-25");
  {
    SyDeedAsk *ask = sy_deed_ask_new (SY_EVENT_REVIEW, saved.task_id, "A. Tester", "", "every half year");
    SyTestAnswer answer = { NULL, NULL };

    ask->deed.trigger = SY_TRIGGER_DATE;
    ask->deed.due = g_strdup ("2026-11-14");
    sy_worker_deed_async (worker, ask, NULL, sy_test_answered, &answer);
    assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
    assert_true (sy_worker_deed_finish (worker, answer.result, NULL, NULL));
    g_object_unref (answer.result);
  }
  g_setenv ("STEELYARD_CLOCK", "2026-11-26T09:00:00Z", TRUE);
  items = sy_task_list_new (worker);
  assert_true (sy_test_until (has_items, items, 20000));
  due = sy_due_list_new (worker, items);
  sy_due_list_set_watched (due, TRUE);
  assert_true (sy_test_until (is_due_loaded, due, 20000));
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (due)), 6);
  assert_due (due, 0, "Review: the day that was set", SY_DUE_OVERDUE);
  assert_due (due, 1, "too late", SY_DUE_OVERDUE);
  assert_due (due, 2, "today", SY_DUE_THIS_WEEK);
  assert_due (due, 3, "soon", SY_DUE_THIS_WEEK);
  assert_due (due, 4, "later", SY_DUE_LATER);
  assert_due (due, 5, "whenever", SY_DUE_NO_DATE);
  assert_int_equal (sy_due_list_count (due, SY_DUE_OVERDUE), 2);
  {
    g_autoptr (SyDueRow) row = g_list_model_get_item (G_LIST_MODEL (due), 0);
    g_autofree char *words = sy_due_row_when_words (row);

    assert_string_equal (words, "Overdue by 12 days");
  }
  people = sy_due_list_people (due);
  assert_int_equal (g_strv_length (people), 2);
  assert_string_equal (people[0], "A. Tester");
  sy_due_list_set_assigned (due, "P. Other");
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (due)), 2);
  sy_due_list_set_assigned (due, NULL);
  sy_due_list_set_search (due, "RING late");
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (due)), 2);
  assert_due (due, 0, "too late", SY_DUE_OVERDUE);
  sy_record_result_clear (&saved);
  g_unsetenv ("STEELYARD_CLOCK");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (lines_come_newest_first_and_are_read_when_they_are_looked_at),
    cmocka_unit_test (a_filter_leaves_what_it_lets_through_and_follows_what_is_new),
    cmocka_unit_test (what_is_to_be_done_comes_by_its_day),
  };
  int failed;

  home = sy_test_home ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
