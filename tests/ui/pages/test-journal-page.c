/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-journal-check.h"
#include "sy-journal-page.h"
#include "sy-test-facts.h"
#include "sy-test-tree.h"

static char *home;

static SyWorker *
new_worker_of (const char *uri)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new (uri, desk);
}

static SyWorker *
new_worker (void)
{
  return new_worker_of ("memory:");
}

static void
end (GtkWidget *window)
{
  gpointer gone = window;

  g_object_add_weak_pointer (G_OBJECT (window), &gone);
  gtk_window_destroy (GTK_WINDOW (window));
  for (int i = 0; i < 50 && gone != NULL; i++)
    {
      sy_test_settle ();
      g_usleep (10000);
    }
  assert_null (gone);
}

static gboolean
is_unnamed (GtkWidget *widget, gpointer data)
{
  (void) data;
  return gtk_widget_get_mapped (widget) && sy_test_is_control (widget) && !sy_test_is_named (widget)
         && !GTK_IS_BUTTON (widget) && !GTK_IS_TEXT (widget);
}

static GtkWidget *
present (GtkWidget *child)
{
  GtkWidget *window = gtk_window_new ();

  gtk_window_set_child (GTK_WINDOW (window), child);
  gtk_window_set_default_size (GTK_WINDOW (window), 1100, 600);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static gboolean
has_state (gpointer data)
{
  gpointer *pair = data;

  return g_strcmp0 (sy_journal_page_get_state (pair[0]), pair[1]) == 0;
}

static void
wait_state (GtkWidget *page, const char *state)
{
  gpointer pair[] = { page, (gpointer) state };

  if (!sy_test_until (has_state, pair, 20000))
    fail_msg ("the page is \"%s\", not \"%s\"", sy_journal_page_get_state (SY_JOURNAL_PAGE (page)), state);
}

static gboolean
shows (gpointer data)
{
  gpointer *pair = data;

  return sy_test_shows (pair[0], pair[1]);
}

static void
wait_text (GtkWidget *page, const char *text)
{
  gpointer pair[] = { page, (gpointer) text };

  if (!sy_test_until (shows, pair, 20000))
    fail_msg ("\"%s\" is not shown", text);
}

static gboolean
is_check (GtkWidget *widget, gpointer data)
{
  (void) data;
  return SY_IS_JOURNAL_CHECK (widget);
}

static void
press (GtkWidget *page, const char *name)
{
  GtkWidget *button = sy_test_find_name (page, name);

  assert_non_null (button);
  g_signal_emit_by_name (button, "clicked");
}

static void
an_empty_journal_says_what_it_is_for_and_fills (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  GtkWidget *page = sy_journal_page_new (worker, list);
  GtkWidget *window = present (page);

  (void) state;
  wait_state (page, "empty");
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  wait_state (page, "list");
  assert_int_equal (g_list_model_get_n_items (sy_journal_page_get_lines (SY_JOURNAL_PAGE (page))), 2);
  wait_text (page, "A. Tester");
  wait_text (page, "first look");
  wait_text (page, "Policy adopted");
  wait_text (page, "It loosens none of the program's own limits");
  assert_null (sy_test_find (page, is_unnamed, NULL));
  end (window);
}

static void
lines_are_narrowed_and_shown_again (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  GtkWidget *page, *window, *from;
  GListModel *lines;

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  assert_true (sy_test_save (worker, "shaft", 12, NULL, NULL));
  page = sy_journal_page_new (worker, list);
  window = present (page);
  wait_state (page, "list");
  lines = sy_journal_page_get_lines (SY_JOURNAL_PAGE (page));
  assert_int_equal (g_list_model_get_n_items (lines), 3);
  wait_text (page, "shaft");
  /* Going to a line selects it; its item alone is then one press away. */
  assert_true (sy_journal_page_go_to (SY_JOURNAL_PAGE (page), 2));
  sy_test_settle ();
  press (page, "only");
  wait_text (page, "1 of 3 lines");
  from = sy_test_find_name (page, "from");
  gtk_editable_set_text (GTK_EDITABLE (from), "2026-13-01");
  assert_true (gtk_widget_has_css_class (from, "sy-wrong"));
  gtk_editable_set_text (GTK_EDITABLE (from), "2999-01-01");
  assert_false (gtk_widget_has_css_class (from, "sy-wrong"));
  wait_state (page, "no-match");
  press (page, "show-all");
  wait_text (page, "3 lines");
  assert_false (sy_journal_page_go_to (SY_JOURNAL_PAGE (page), 4));
  end (window);
}

static void
the_journal_is_verified_and_its_lists_made_anew (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  GtkWidget *page, *window;
  SyJournalCheck *check;
  SyRecordResult saved = { 0 };
  g_autofree char *head = NULL;

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  head = sy_hash_text (&saved.head.hash);
  page = sy_journal_page_new (worker, list);
  window = present (page);
  wait_state (page, "list");
  check = SY_JOURNAL_CHECK (sy_test_find (page, is_check, NULL));
  sy_journal_check_set_head (check, "abc");
  sy_journal_check_verify (check);
  assert_non_null (strstr (sy_journal_check_get_words (check), "A head has 64 figures"));
  sy_journal_check_set_head (check, head);
  sy_journal_check_verify (check);
  wait_text (page, "All 2 lines of the journal hold");
  assert_non_null (strstr (sy_journal_check_get_words (check), head));
  assert_false (gtk_widget_has_css_class (sy_test_find_name (page, "seal"), "sy-problem"));
  head[0] = head[0] == '0' ? '1' : '0';
  sy_journal_check_set_head (check, head);
  sy_journal_check_verify (check);
  wait_text (page, "Head of what holds: line 2");
  assert_true (gtk_widget_has_css_class (sy_test_find_name (page, "seal"), "sy-problem"));
  sy_journal_check_rebuild (check);
  wait_text (page, "nothing differed");
  sy_record_result_clear (&saved);
  end (window);
}

/* A letter of a reason, in the journal alone: there its length stands before it. */
static void
alter (const char *path, const char *reason)
{
  g_autofree char *bytes = NULL;
  char *at = NULL;
  gsize n;

  assert_true (g_file_get_contents (path, &bytes, &n, NULL));
  for (gsize i = 8; i + strlen (reason) < n; i++)
    if (memcmp (bytes + i, reason, strlen (reason)) == 0 && bytes[i - 8] == 0 && bytes[i - 1] == (char) strlen (reason))
      at = bytes + i;
  assert_non_null (at);
  *at ^= 1;
  assert_true (g_file_set_contents (path, bytes, (gssize) n, NULL));
}

/* What the lists still tell of a line that was changed is not thrown away. */
static void
lists_are_not_made_of_a_journal_that_does_not_hold (void **state)
{
  g_autofree char *path = g_build_filename (home, "altered.steelyard", NULL);
  g_autoptr (SyTaskList) list = NULL;
  g_autoptr (SyWorker) worker = new_worker_of (path);
  GtkWidget *page, *window;
  SyJournalCheck *check;
  SyRecordResult saved = { 0 };

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  sy_record_result_clear (&saved);
  sy_worker_stop (worker);
  g_clear_object (&worker);
  alter (path, "first look");
  worker = new_worker_of (path);
  list = sy_task_list_new (worker);
  page = sy_journal_page_new (worker, list);
  window = present (page);
  wait_state (page, "list");
  check = SY_JOURNAL_CHECK (sy_test_find (page, is_check, NULL));
  sy_journal_check_rebuild (check);
  wait_text (page, "The lists were left as they are");
  assert_non_null (strstr (sy_journal_check_get_words (check), "Line 2 is not what was recorded"));
  end (window);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test (an_empty_journal_says_what_it_is_for_and_fills),
  cmocka_unit_test (lines_are_narrowed_and_shown_again),
  cmocka_unit_test (the_journal_is_verified_and_its_lists_made_anew),
  cmocka_unit_test (lists_are_not_made_of_a_journal_that_does_not_hold),
};

int
main (void)
{
  int failed;

  home = sy_test_home ();
  gtk_init ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
