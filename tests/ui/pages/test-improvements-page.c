/* SPDX-License-Identifier: MIT */
/* The improvement log in the window: read, added where the two assessments are, withdrawn, put on paper. */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-compare-page.h"
#include "sy-follow-up.h"
#include "sy-improvements-page.h"
#include "sy-quarters-view.h"
#include "sy-test-facts.h"
#include "sy-test-tree.h"
#include "sy-worker-improvements.h"

#define LIMIT_MS 20000

static char *home;

/* A store of its own with a task of two revisions, 30 kg and 5 kg, and a die. */
typedef struct
{
  SyWorker *worker;
  GtkWidget *window; /* NULL: none is open */
  SyRecordResult task, die;
} Fixture;

static void
revise (SyWorker *worker, const char *task, double mass)
{
  SySaveRequest *request = sy_save_request_new ();
  SyTestAnswer answer = { NULL, NULL };

  request->task = g_strdup (task);
  request->by = g_strdup ("A. Tester");
  request->why = g_strdup ("a balancer was hung over it");
  request->base = 1;
  request->facts = sy_test_facts (mass, "bay 3");
  sy_worker_save_async (worker, request, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  assert_true (sy_worker_save_finish (worker, answer.result, NULL, NULL));
  g_object_unref (answer.result);
}

static int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autofree char *die = sy_test_die (94, "press 3");

  fixture->worker = sy_worker_new ("memory:", desk);
  assert_true (sy_test_save (fixture->worker, "Rings to press", 30, &fixture->task, NULL));
  revise (fixture->worker, fixture->task.task_id, 5);
  assert_true (sy_test_record (fixture->worker, "Flange die", die, &fixture->die, NULL));
  *state = fixture;
  return 0;
}

static void
show (Fixture *fixture, GtkWidget *child)
{
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1100, 700);
  gtk_window_set_child (GTK_WINDOW (fixture->window), child);
  gtk_window_present (GTK_WINDOW (fixture->window));
}

static int
tear_down (void **state)
{
  Fixture *fixture = *state;
  gpointer window = fixture->window;

  if (window != NULL)
    {
      g_object_add_weak_pointer (G_OBJECT (window), &window);
      gtk_window_destroy (GTK_WINDOW (fixture->window));
    }
  sy_worker_stop (fixture->worker);
  for (int i = 0; i < 50 && window != NULL; i++)
    {
      sy_test_settle ();
      g_usleep (10000);
    }
  g_object_unref (fixture->worker);
  sy_record_result_clear (&fixture->task);
  sy_record_result_clear (&fixture->die);
  g_free (fixture);
  return window == NULL ? 0 : -1; /* nothing holds the page back */
}

/* Topics: what is shown */

static gboolean
shows (gpointer data)
{
  gpointer *pair = data;

  return sy_test_shows (pair[0], pair[1]);
}

static void
wait_text (GtkWidget *root, const char *text)
{
  gpointer pair[] = { root, (gpointer) text };

  if (!sy_test_until (shows, pair, LIMIT_MS))
    fail_msg ("\"%s\" is not shown", text);
}

static void
press (GtkWidget *root, const char *name)
{
  GtkWidget *button = sy_test_find_name (root, name);

  assert_non_null (button);
  assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
}

static void
write_in (GtkWidget *root, const char *name, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (sy_test_find_name (root, name)), text);
}

static gboolean
is_unnamed (GtkWidget *widget, gpointer data)
{
  (void) data;
  return gtk_widget_get_mapped (widget) && sy_test_is_control (widget) && !sy_test_is_named (widget)
         && !GTK_IS_BUTTON (widget) && !GTK_IS_TEXT (widget);
}

static void
assert_described (GtkWidget *widget, const char *expected)
{
  g_autofree char *wrong
    = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, expected);

  if (wrong != NULL)
    print_error ("%s instead of %s\n", wrong, expected);
  assert_null (wrong);
}

/* From the first revision of the task to its second. */
static void
add (Fixture *fixture, const char *what, const char *day)
{
  SyDeedAsk *ask = sy_deed_ask_new (SY_EVENT_IMPROVEMENT, fixture->task.task_id, "B. Foreman", "foreman", "");
  SyTestAnswer answer = { NULL, NULL };
  g_autofree char *id = NULL;

  ask->deed.step = SY_STEP_ADD;
  ask->deed.what = g_strdup (what);
  ask->deed.idea_by = g_strdup ("C. Setter");
  ask->deed.put_to_work = g_strdup (day);
  ask->deed.from_revision = 1;
  sy_worker_deed_async (fixture->worker, ask, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  assert_true (sy_worker_deed_finish (fixture->worker, answer.result, &id, NULL));
  assert_non_null (id);
  g_object_unref (answer.result);
}

/* Topics: the log */

static void
an_empty_log_says_what_it_is_for (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *page = sy_improvements_page_new (fixture->worker);

  show (fixture, page);
  wait_text (page, "No improvement is in the log yet");
  wait_text (page, "Put in the improvement log");
  wait_text (page, "not a permission to lift");
  assert_string_equal (sy_improvements_page_get_state (SY_IMPROVEMENTS_PAGE (page)), "empty");
  assert_false (sy_improvements_page_write (SY_IMPROVEMENTS_PAGE (page), "/nowhere/nothing.pdf"));
}

static void
what_was_bought_is_told_together_by_quarter_and_each (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *page = sy_improvements_page_new (fixture->worker), *bars;

  add (fixture, "a balancer over the press", "2026-05-20");
  show (fixture, page);
  wait_text (page, "a balancer over the press");
  wait_text (page, "Rings to press: revision 1 → 2");
  wait_text (page, "C. Setter");
  wait_text (page, "2026-05-20");
  wait_text (page, "Reached");
  wait_text (page, "1 improvement · 1 reached a favourable verdict · index ");
  wait_text (page, "None of it promises fewer injuries.");
  assert_null (sy_test_find (page, is_unnamed, NULL));

  bars = sy_test_find_name (page, "quarters");
  assert_true (gtk_widget_get_visible (bars) && gtk_widget_get_focusable (bars));
  assert_described (bars, gtk_label_get_text (GTK_LABEL (sy_test_find_name (page, "totals"))));
  sy_quarters_view_step (SY_QUARTERS_VIEW (bars), 1);
  wait_text (page, "2026 Q2: 1 improvement, 1 reached a favourable verdict, index ");
  assert_described (bars, gtk_label_get_text (GTK_LABEL (sy_test_find_name (page, "told"))));

  sy_improvements_page_select (SY_IMPROVEMENTS_PAGE (page), 0);
  wait_text (page, "The second is better: from ");
  wait_text (page, "Entered by B. Foreman");
  sy_improvements_page_set_search (SY_IMPROVEMENTS_PAGE (page), "balancer nowhere");
  wait_text (page, "No improvement is like that");
  sy_improvements_page_set_search (SY_IMPROVEMENTS_PAGE (page), "BALANCER setter");
  wait_text (page, "Rings to press: revision 1 → 2");
}

static void
one_is_withdrawn_with_a_reason (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *page = sy_improvements_page_new (fixture->worker);

  add (fixture, "a balancer over the press", "2026-05-20");
  show (fixture, page);
  wait_text (page, "a balancer over the press");
  sy_improvements_page_select (SY_IMPROVEMENTS_PAGE (page), 0);
  press (page, "withdraw");
  wait_text (page, "Withdraw it");
  assert_null (sy_test_find (page, is_unnamed, NULL));
  write_in (page, "withdraw-by", "D. Lead");
  press (page, "withdraw-now");
  wait_text (page, "Something is still needed");
  write_in (page, "withdraw-why", "it was taken down again.");
  press (page, "withdraw-now");
  wait_text (page, "No improvement is like that");
  assert_false (gtk_widget_get_visible (sy_test_find_name (page, "quarters")));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (sy_test_find_name (page, "withdrawn")), TRUE);
  wait_text (page, "Withdrawn");
  sy_improvements_page_select (SY_IMPROVEMENTS_PAGE (page), 0);
  wait_text (page, "it was taken down again. It does not count.");
  assert_false (gtk_widget_get_mapped (sy_test_find_name (page, "withdraw")));
}

static void
it_is_written_as_a_page (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *page = sy_improvements_page_new (fixture->worker);
  g_autofree char *path = g_build_filename (home, "improvements.pdf", NULL), *text = NULL;

  add (fixture, "a balancer over the press", "2026-05-20");
  show (fixture, page);
  wait_text (page, "a balancer over the press");
  assert_false (sy_improvements_page_write (SY_IMPROVEMENTS_PAGE (page), "/nowhere/nothing.pdf"));
  wait_text (page, "The improvement log was not saved: ");
  assert_true (sy_improvements_page_write (SY_IMPROVEMENTS_PAGE (page), path));
  wait_text (page, "Saved as ");
  assert_true (g_file_get_contents (path, &text, NULL, NULL));
  assert_memory_equal (text, "%PDF", 4);
}

static void
a_store_that_cannot_be_read_is_said (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyWorker) worker = sy_worker_new ("/nowhere/at/all.store", desk);
  GtkWidget *page = sy_improvements_page_new (worker);

  show (fixture, page);
  wait_text (page, "/nowhere/at/all.store");
  assert_string_equal (sy_improvements_page_get_state (SY_IMPROVEMENTS_PAGE (page)), "error");
  sy_worker_stop (worker);
}

/* Topics: adding one */

static void
what_is_compared_is_put_in_the_log (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (SyTaskList) list = sy_task_list_new (fixture->worker);
  GtkWidget *page = sy_compare_page_new (fixture->worker, list, SY_UNITS_METRIC);
  SyComparePage *compare = SY_COMPARE_PAGE (page);

  show (fixture, page);
  sy_compare_page_set (compare, 0, fixture->task.task_id, 2);
  sy_compare_page_set (compare, 1, fixture->task.task_id, 1);
  wait_text (page, "An improvement leads from an earlier revision to a later one");
  assert_false (gtk_widget_get_mapped (sy_test_find_name (page, "improve")));
  /* it is known, and does nothing */
  assert_true (gtk_widget_activate_action (page, "compare.improve", NULL));
  assert_false (gtk_widget_get_mapped (sy_test_find_name (page, "improve-what")));
  sy_compare_page_set (compare, 0, fixture->task.task_id, 1);
  sy_compare_page_set (compare, 1, fixture->task.task_id, 2);
  wait_text (page, "this can stand in the improvement log");
  assert_true (gtk_widget_activate_action (page, "compare.improve", NULL));
  wait_text (page, "From Rings to press, revision 1, to Rings to press, revision 2");
  assert_null (sy_test_find (page, is_unnamed, NULL));
  assert_int_equal (strlen (gtk_editable_get_text (GTK_EDITABLE (sy_test_find_name (page, "improve-since")))), 10);
  write_in (page, "improve-by", "B. Foreman");
  write_in (page, "improve-what", "a balancer over the press");
  press (page, "improve-now");
  wait_text (page, "Something is still needed");
  write_in (page, "improve-idea", "C. Setter");
  write_in (page, "improve-since", "last week");
  press (page, "improve-now");
  wait_text (page, "A day is written like");
  write_in (page, "improve-since", "2999-01-01");
  press (page, "improve-now");
  wait_text (page, "given 2999-01-01");
  write_in (page, "improve-since", "2026-05-20");
  press (page, "improve-now");
  wait_text (page, "It is in the improvement log.");

  /* The same two stand in it once. */
  press (page, "improve");
  write_in (page, "improve-by", "B. Foreman");
  write_in (page, "improve-what", "the same again");
  write_in (page, "improve-idea", "C. Setter");
  press (page, "improve-now");
  wait_text (page, "The step between these two is in the log already");
}

static void
a_die_is_no_improvement (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (SyTaskList) list = sy_task_list_new (fixture->worker);
  GtkWidget *page = sy_compare_page_new (fixture->worker, list, SY_UNITS_METRIC);

  show (fixture, page);
  sy_compare_page_set (SY_COMPARE_PAGE (page), 0, fixture->task.task_id, 1);
  sy_compare_page_set (SY_COMPARE_PAGE (page), 1, fixture->die.task_id, 1);
  wait_text (page, "What it bought");
  assert_false (gtk_widget_get_mapped (sy_test_find_name (page, "improve")));
  assert_false (gtk_widget_get_mapped (sy_test_find_name (page, "improve-words")));
}

static SyItemLog *
read_log (SyWorker *worker, const char *item)
{
  SyTestAnswer answer = { NULL, NULL };
  GPtrArray *lines;

  sy_worker_events_async (worker, item, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  lines = sy_worker_events_finish (worker, answer.result, NULL);
  g_object_unref (answer.result);
  return sy_item_log_new (lines);
}

static void
the_follow_up_puts_an_earlier_revision_and_the_latest_in_the_log (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *follow = sy_follow_up_new (fixture->worker);
  g_autoptr (SyItemLog) log = read_log (fixture->worker, fixture->task.task_id);
  g_autoptr (SyItemLog) die = read_log (fixture->worker, fixture->die.task_id);
  SyRecordResult saved = { 0 };
  g_autoptr (SyItemLog) one = NULL;
  GtkWidget *page = sy_improvements_page_new (fixture->worker), *both = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  assert_true (sy_test_save (fixture->worker, "Covers", 5, &saved, NULL));
  one = read_log (fixture->worker, saved.task_id);
  sy_record_result_clear (&saved);
  gtk_box_append (GTK_BOX (both), page);
  gtk_box_append (GTK_BOX (both), follow);
  show (fixture, both);
  sy_follow_up_set (SY_FOLLOW_UP (follow), die);
  sy_test_settle ();
  assert_false (gtk_widget_get_mapped (sy_test_find_name (follow, "improvement-words")));
  sy_follow_up_set (SY_FOLLOW_UP (follow), one);
  wait_text (follow, "There is one revision only.");
  assert_false (gtk_widget_get_mapped (sy_test_find_name (follow, "improvement")));

  sy_follow_up_set (SY_FOLLOW_UP (follow), log);
  wait_text (follow, "Where the work before is another item");
  press (follow, "improvement");
  wait_text (follow, "To revision 2, the latest: a balancer was hung over it");
  wait_text (follow, "Revision 1 · ");
  assert_null (sy_test_find (follow, is_unnamed, NULL));
  write_in (follow, "improvement-by", "B. Foreman");
  write_in (follow, "improvement-what", "a balancer over the press");
  write_in (follow, "improvement-idea", "C. Setter");
  press (follow, "improvement-now");
  wait_text (follow, "It is in the improvement log.");
  wait_text (page, "Rings to press: revision 1 → 2");
}

int
main (void)
{
#define PAGE_TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    PAGE_TEST (an_empty_log_says_what_it_is_for),
    PAGE_TEST (what_was_bought_is_told_together_by_quarter_and_each),
    PAGE_TEST (one_is_withdrawn_with_a_reason),
    PAGE_TEST (it_is_written_as_a_page),
    PAGE_TEST (a_store_that_cannot_be_read_is_said),
    PAGE_TEST (what_is_compared_is_put_in_the_log),
    PAGE_TEST (a_die_is_no_improvement),
    PAGE_TEST (the_follow_up_puts_an_earlier_revision_and_the_latest_in_the_log),
  };
  int failed;

  home = sy_test_home ();
  gtk_init ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
