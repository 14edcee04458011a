/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-actions-page.h"
#include "sy-export-window.h"
#include "sy-import-window.h"
#include "sy-test-facts.h"
#include "sy-test-tree.h"
#include "sy-worker-deeds.h"

static char *home;

static SyWorker *
new_worker (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new ("memory:", desk);
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
shows (gpointer data)
{
  gpointer *pair = data;

  return sy_test_shows (pair[0], pair[1]);
}

static void
wait_text (GtkWidget *root, const char *text)
{
  gpointer pair[] = { root, (gpointer) text };

  if (!sy_test_until (shows, pair, 20000))
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

static void
open_action (SyWorker *worker, const char *item)
{
  SyDeedAsk *ask = sy_deed_ask_new (SY_EVENT_ACTION, item, "A. Tester", "foreman", "seen today");
  SyTestAnswer answer = { NULL, NULL };

  ask->deed.step = SY_STEP_OPEN;
  ask->deed.what = g_strdup ("fit a stop");
  sy_worker_deed_async (worker, ask, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  assert_true (sy_worker_deed_finish (worker, answer.result, NULL, NULL));
  g_object_unref (answer.result);
}

/* Topics: actions */

static void
an_action_is_assigned_and_closed_in_its_place (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  GtkWidget *page = sy_actions_page_new (worker, list);
  GtkWidget *window = present (page);
  SyActionsPage *actions = SY_ACTIONS_PAGE (page);
  SyRecordResult saved = { 0 };

  (void) state;
  wait_text (page, "Nothing is to be done");
  assert_true (sy_test_save (worker, "ring", 12, &saved, NULL));
  open_action (worker, saved.task_id);
  wait_text (page, "fit a stop");
  wait_text (page, "Without a date");
  wait_text (page, "Nobody yet");
  sy_actions_page_select (actions, 0);
  wait_text (page, "Opened by A. Tester");
  assert_null (sy_test_find (page, is_unnamed, NULL));

  press (page, "assign");
  write_in (page, "assign-by", "B. Foreman");
  write_in (page, "assign-due", "tomorrow");
  press (page, "assign-now");
  wait_text (page, "A day is written like");
  write_in (page, "assign-due", "2999-01-01");
  write_in (page, "assign-assigned", "C. Fitter");
  press (page, "assign-now");
  wait_text (page, "2999-01-01");
  wait_text (page, "C. Fitter");

  sy_actions_page_set_search (actions, "nowhere");
  wait_text (page, "Nothing of what is to be done is like that");
  sy_actions_page_set_search (actions, "stop ring");
  sy_actions_page_select (actions, 0);
  wait_text (page, "Opened by A. Tester");
  press (page, "close");
  write_in (page, "close-by", "B. Foreman");
  press (page, "close-now");
  wait_text (page, "Something is still needed");
  write_in (page, "close-evidence", "photograph of 1 December");
  press (page, "close-now");
  wait_text (page, "Nothing is to be done");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (sy_test_find_name (page, "closed")), TRUE);
  wait_text (page, "Closed");
  sy_record_result_clear (&saved);
  end (window);
}

/* Topics: exchange */

static gboolean
has_words (gpointer data)
{
  gpointer *pair = data;
  const char *words = SY_IS_IMPORT_WINDOW (pair[0]) ? sy_import_window_get_words (pair[0])
                                                    : sy_export_window_get_words (pair[0]);

  return strstr (words, pair[1]) != NULL;
}

static void
wait_words (GtkWidget *window, const char *words)
{
  gpointer pair[] = { window, (gpointer) words };

  if (!sy_test_until (has_words, pair, 20000))
    fail_msg ("\"%s\" is not said", words);
}

static GFile *
file_in_home (const char *name)
{
  return g_file_new_build_filename (home, name, NULL);
}

static void
a_bundle_is_handed_over_looked_through_and_taken_over (void **state)
{
  g_autoptr (SyWorker) one = new_worker (), other = new_worker ();
  g_autoptr (GFile) file = file_in_home ("record.json"), nowhere = file_in_home ("no/such/folder.json");
  GtkWidget *export, *import;

  (void) state;
  assert_true (sy_test_save (one, "ring", 12, NULL, NULL));
  export = sy_export_window_new (NULL, one, NULL, NULL);
  gtk_window_present (GTK_WINDOW (export));
  assert_null (sy_test_find (export, is_unnamed, NULL));
  sy_export_window_write (SY_EXPORT_WINDOW (export), nowhere);
  wait_words (export, "No file was written");
  sy_export_window_write (SY_EXPORT_WINDOW (export), file);
  wait_words (export, "Written: ");
  end (export);

  import = sy_import_window_new (NULL, other, SY_IMPORT_BUNDLE);
  gtk_window_present (GTK_WINDOW (import));
  assert_null (sy_test_find (import, is_unnamed, NULL));
  assert_false (sy_import_window_can_take (SY_IMPORT_WINDOW (import)));
  sy_import_window_look (SY_IMPORT_WINDOW (import), file);
  wait_words (import, "2 lines would be added");
  assert_true (sy_import_window_can_take (SY_IMPORT_WINDOW (import)));
  sy_import_window_set_author (SY_IMPORT_WINDOW (import), "", "");
  sy_import_window_take (SY_IMPORT_WINDOW (import));
  wait_words (import, "is still needed");
  sy_import_window_set_author (SY_IMPORT_WINDOW (import), "A. Tester", "the other hall");
  sy_import_window_take (SY_IMPORT_WINDOW (import));
  wait_words (import, "2 lines were added");
  assert_false (sy_import_window_can_take (SY_IMPORT_WINDOW (import)));
  sy_import_window_look (SY_IMPORT_WINDOW (import), file);
  wait_words (import, "nothing to take over");
  sy_import_window_look (SY_IMPORT_WINDOW (import), nowhere);
  wait_words (import, "No such file");
  end (import);
}

static void
lifts_are_taken_only_when_no_cell_is_bad (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (GFile) file = file_in_home ("lifts.csv"), table = file_in_home ("findings.csv");
  g_autofree char *path = g_file_get_path (file), *lifts = NULL, *bad = NULL;
  g_auto (GStrv) lines = NULL;
  GtkWidget *import, *export;

  (void) state;
  assert_true (g_file_get_contents (SY_DEMO_LIFTS, &lifts, NULL, NULL));
  lines = g_strsplit (lifts, "\n", 2);
  bad = g_strconcat (lines[0], "\nonly a name\n", NULL);
  assert_true (g_file_set_contents (path, bad, -1, NULL));
  import = sy_import_window_new (NULL, worker, SY_IMPORT_LIFTS);
  gtk_window_present (GTK_WINDOW (import));
  sy_import_window_look (SY_IMPORT_WINDOW (import), file);
  wait_words (import, "cannot be taken");
  wait_text (import, "What stands there");
  assert_false (sy_import_window_can_take (SY_IMPORT_WINDOW (import)));
  assert_true (g_file_set_contents (path, lifts, -1, NULL));
  sy_import_window_look (SY_IMPORT_WINDOW (import), file);
  wait_words (import, "tasks would be begun");
  sy_import_window_set_author (SY_IMPORT_WINDOW (import), "A. Tester", "October round");
  sy_import_window_take (SY_IMPORT_WINDOW (import));
  wait_words (import, "tasks were begun");
  end (import);

  export = sy_export_window_new (NULL, worker, NULL, NULL);
  sy_export_window_set_table (SY_EXPORT_WINDOW (export), TRUE);
  sy_export_window_write (SY_EXPORT_WINDOW (export), table);
  wait_words (export, "Written: ");
  end (export);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test (an_action_is_assigned_and_closed_in_its_place),
  cmocka_unit_test (a_bundle_is_handed_over_looked_through_and_taken_over),
  cmocka_unit_test (lifts_are_taken_only_when_no_cell_is_bad),
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
