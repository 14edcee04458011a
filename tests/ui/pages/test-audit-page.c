/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-audit-page.h"
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
on_day (const char *day)
{
  g_autofree char *now = g_strdup_printf ("%sT08:00:00Z", day);

  g_setenv ("STEELYARD_CLOCK", now, TRUE);
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

/* What the page asks the window for. */
static void
open_history_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  char **opened = user_data;

  (void) action;
  g_free (*opened);
  *opened = g_variant_dup_string (parameter, NULL);
}

static GtkWidget *
present (GtkWidget *child, char **opened)
{
  const GActionEntry entries[] = { { .name = "open-history", .activate = open_history_cb, .parameter_type = "s" } };
  g_autoptr (GSimpleActionGroup) actions = g_simple_action_group_new ();
  GtkWidget *window = gtk_window_new ();

  g_action_map_add_action_entries (G_ACTION_MAP (actions), entries, G_N_ELEMENTS (entries), opened);
  gtk_widget_insert_action_group (window, "win", G_ACTION_GROUP (actions));
  gtk_window_set_child (GTK_WINDOW (window), child);
  gtk_window_set_default_size (GTK_WINDOW (window), 1240, 720);
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

static gboolean
is_in_state (gpointer data)
{
  gpointer *pair = data;

  return g_str_equal (sy_audit_page_get_state (pair[0]), pair[1]);
}

static void
wait_state (GtkWidget *page, const char *state)
{
  gpointer pair[] = { page, (gpointer) state };

  if (!sy_test_until (is_in_state, pair, 20000))
    fail_msg ("\"%s\" instead of \"%s\"", sy_audit_page_get_state (SY_AUDIT_PAGE (page)), state);
}

static void
show_day (GtkWidget *page, const char *day)
{
  g_autofree char *words = g_strdup_printf ("As at %s ·", day);

  sy_audit_page_show_day (SY_AUDIT_PAGE (page), day);
  wait_text (page, words);
}

static void
sign (SyWorker *worker, const char *item, const char *by)
{
  SyDeedAsk *ask = sy_deed_ask_new (SY_EVENT_SIGNATURE, item, by, "works manager", "");
  SyTestAnswer answer = { NULL, NULL };

  ask->revision = 1;
  ask->deed.competence = g_strdup ("course of 2024");
  sy_worker_deed_async (worker, ask, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  assert_true (sy_worker_deed_finish (worker, answer.result, NULL, NULL));
  g_object_unref (answer.result);
}

static void
choose (GtkWidget *page, guint position)
{
  GtkWidget *choice = sy_test_find_name (page, "listed");

  gtk_drop_down_set_selected (GTK_DROP_DOWN (gtk_widget_get_first_child (choice)), position);
}

static void
a_day_before_between_and_after_is_shown (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autofree char *opened = NULL, *not_asked = sy_test_facts (12, "bay 3"), *path = NULL, *content = NULL;
  SyRecordResult ring = { 0 }, tray = { 0 };
  GtkWidget *page, *window;
  char *conditions;
  gsize size;

  (void) state;
  on_day ("2026-03-02");
  assert_true (sy_test_save (worker, "ring", 12, &ring, NULL));
  on_day ("2026-03-05");
  conditions = strstr (not_asked, "\"conditions\":[],");
  memset (conditions, ' ', strlen ("\"conditions\":[],"));
  assert_true (sy_test_record (worker, "tray", not_asked, &tray, NULL));
  on_day ("2026-03-07");
  sign (worker, ring.task_id, "A. Tester");
  on_day ("2026-03-09");

  page = sy_audit_page_new (worker);
  window = present (page, &opened);
  wait_text (page, "As at 2026-03-09 · In use: 2");
  wait_text (page, "Not signed off: 1");
  wait_text (page, "Judged under policy steelyard-default");
  wait_text (page, "Head of the journal on that day: line 4, ");
  wait_text (page, "Own signature · A. Tester");
  wait_text (page, "not assessed here at all");
  wait_text (page, "competent person");
  assert_null (sy_test_find (page, is_unnamed, NULL));
  sy_audit_page_select (SY_AUDIT_PAGE (page), 0);
  wait_text (page, "competence: course of 2024. Own signature: the signer made the revision.");
  sy_audit_page_select (SY_AUDIT_PAGE (page), 1);
  wait_text (page, "not asked");
  g_signal_emit_by_name (sy_test_find_name (page, "open"), "clicked");
  assert_string_equal (opened, tray.task_id);
  g_signal_emit_by_name (sy_test_find_name (page, "register"), "activate", 0);
  assert_string_equal (opened, ring.task_id);

  show_day (page, "2026-03-02");
  assert_int_equal (g_list_model_get_n_items (sy_audit_page_get_rows (SY_AUDIT_PAGE (page))), 1);
  wait_text (page, "Head of the journal on that day: line 2, ");
  wait_text (page, "Not signed off");
  choose (page, 3);
  wait_state (page, "no-match");
  g_signal_emit_by_name (sy_test_find_name (page, "show-all"), "clicked");
  wait_state (page, "list");
  choose (page, 2);
  wait_state (page, "list");
  choose (page, 0);
  sy_audit_page_show_day (SY_AUDIT_PAGE (page), " 2026-03-01 ");
  wait_state (page, "empty");
  wait_text (page, "The journal was empty on that day.");

  path = g_build_filename (home, "register.pdf", NULL);
  show_day (page, "2026-03-05");
  assert_true (sy_audit_page_write (SY_AUDIT_PAGE (page), path));
  wait_text (page, "Saved as ");
  assert_true (g_file_get_contents (path, &content, &size, NULL));
  assert_memory_equal (content, "%PDF", 4);
  assert_false (sy_audit_page_write (SY_AUDIT_PAGE (page), "/nowhere/at/all.pdf"));
  wait_text (page, "The register was not saved: ");
  sy_record_result_clear (&ring);
  sy_record_result_clear (&tray);
  end (window);
}

static void
what_is_no_day_is_said_and_changes_nothing (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autofree char *opened = NULL;
  GtkWidget *page, *window;

  (void) state;
  on_day ("2026-03-02");
  page = sy_audit_page_new (worker);
  window = present (page, &opened);
  wait_state (page, "empty");
  wait_text (page, "Nothing was in the record on this day");
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  wait_text (page, "The record has moved on");
  for (int i = 0; i < 3; i++)
    {
      static const char *const days[] = { "2026-02-30", "yesterday", "" };
      g_autofree char *words = g_strdup_printf ("Day: given “%s”; allowed: a day as year-month-day", days[i]);

      sy_audit_page_show_day (SY_AUDIT_PAGE (page), days[i]);
      wait_text (page, words);
      wait_state (page, "empty");
      gtk_test_accessible_assert_state (sy_test_find_name (page, "day"), GTK_ACCESSIBLE_STATE_INVALID,
                                        GTK_ACCESSIBLE_INVALID_TRUE);
    }
  show_day (page, "2026-03-02");
  wait_state (page, "list");
  assert_false (sy_test_shows (page, "Day: given"));
  end (window);
}

static void
a_record_that_cannot_be_read_is_said (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autofree char *path = g_build_filename (home, "list.txt", NULL), *opened = NULL;
  g_autoptr (SyWorker) worker = NULL;
  GtkWidget *page, *window;

  (void) state;
  assert_true (g_file_set_contents (path, "a shopping list, and no record at all", -1, NULL));
  worker = sy_worker_new (path, desk);
  page = sy_audit_page_new (worker);
  window = present (page, &opened);
  wait_state (page, "error");
  end (window);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test (a_day_before_between_and_after_is_shown),
  cmocka_unit_test (what_is_no_day_is_said_and_changes_nothing),
  cmocka_unit_test (a_record_that_cannot_be_read_is_said),
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
