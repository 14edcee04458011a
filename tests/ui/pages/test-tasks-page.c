/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-date.h"
#include "sy-draft.h"
#include "sy-key-choice.h"
#include "sy-tasks-cells.h"
#include "sy-tasks-columns.h"
#include "sy-tasks-page.h"
#include "sy-test-facts.h"
#include "sy-test-tree.h"

static char *home;

static SyWorker *
new_worker (const char *store)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new (store, desk);
}

static GtkWidget *
new_page_of (SyWorker *worker, SyRegister which)
{
  GtkWidget *window = gtk_window_new ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  GtkWidget *page = sy_tasks_page_new (worker, list, which, SY_UNITS_METRIC);

  gtk_window_set_child (GTK_WINDOW (window), page);
  gtk_window_set_default_size (GTK_WINDOW (window), 1100, 600);
  gtk_window_present (GTK_WINDOW (window));
  return page;
}

static GtkWidget *
new_page (SyWorker *worker)
{
  return new_page_of (worker, SY_REGISTER_TASKS);
}

static void
end_page (GtkWidget *page)
{
  gpointer gone = page;

  g_object_add_weak_pointer (G_OBJECT (page), &gone);
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (page)));
  sy_test_settle ();
  assert_null (gone);
}

typedef struct
{
  GtkWidget *page;
  const char *state;
} Expected;

static gboolean
has_state (gpointer user_data)
{
  const Expected *expected = user_data;

  return g_str_equal (sy_tasks_page_get_state (SY_TASKS_PAGE (expected->page)), expected->state);
}

static void
wait_state (GtkWidget *page, const char *state)
{
  Expected expected = { page, state };

  if (!sy_test_until (has_state, &expected, 20000))
    fail_msg ("expected %s, shows %s", state, sy_tasks_page_get_state (SY_TASKS_PAGE (page)));
}

typedef struct
{
  GtkWidget *page;
  guint n;
} Rows;

static gboolean
has_rows (gpointer user_data)
{
  const Rows *rows = user_data;

  return g_list_model_get_n_items (sy_tasks_page_get_rows (SY_TASKS_PAGE (rows->page))) == rows->n;
}

/* What was saved is seen when the list has asked for it, not before. */
static void
wait_rows (GtkWidget *page, guint n)
{
  Rows rows = { page, n };

  assert_true (sy_test_until (has_rows, &rows, 20000));
}

/* Names of the rows as shown, "a b c". New string. */
static char *
shown (GtkWidget *page)
{
  GListModel *rows = sy_tasks_page_get_rows (SY_TASKS_PAGE (page));
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (rows); i++)
    {
      g_autoptr (SyTaskRow) row = g_list_model_get_item (rows, i);

      g_string_append_printf (names, "%s%s", i > 0 ? " " : "", sy_task_row_get_task (row)->name);
    }
  return g_string_free (names, FALSE);
}

static void
assert_shown (GtkWidget *page, const char *names)
{
  g_autofree char *actual = shown (page);

  assert_string_equal (actual, names);
}

typedef struct
{
  GtkWidget *page;
  const char *names;
} Names;

static gboolean
has_names (gpointer user_data)
{
  const Names *expected = user_data;
  g_autofree char *actual = shown (expected->page);

  return g_str_equal (actual, expected->names);
}

/* The store answers a search on a thread of its own. */
static void
wait_shown (GtkWidget *page, const char *names)
{
  Names expected = { page, names };

  if (!sy_test_until (has_names, &expected, 20000))
    assert_shown (page, names);
}

static void
states_say_what_there_is (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *page = new_page (worker);

  (void) state;
  wait_state (page, "empty");
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  wait_state (page, "list");
  assert_shown (page, "ring");
  sy_tasks_page_set_search (SY_TASKS_PAGE (page), "zebra");
  wait_state (page, "no-match");
  sy_tasks_page_set_search (SY_TASKS_PAGE (page), "");
  wait_state (page, "list");
  end_page (page);
}

static void
a_store_that_cannot_be_opened_is_said (void **state)
{
  g_autofree char *path = g_build_filename (home, "foreign.store", NULL);
  g_autoptr (SyWorker) worker = NULL;
  GtkWidget *page;

  (void) state;
  assert_true (g_file_set_contents (path, "something else\n", -1, NULL));
  worker = new_worker (path);
  page = new_page (worker);
  wait_state (page, "error");
  end_page (page);
}

static void
search_and_verdict_narrow_the_list (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *page = new_page (worker);

  (void) state;
  assert_true (sy_test_save (worker, "light", 3, NULL, NULL));
  assert_true (sy_test_save (worker, "heavy", 40, NULL, NULL));
  assert_true (sy_test_save (worker, "middle", 15, NULL, NULL));
  wait_rows (page, 3);
  assert_shown (page, "heavy middle light");

  sy_tasks_page_set_search (SY_TASKS_PAGE (page), "BAY heavy");
  wait_shown (page, "heavy");
  sy_tasks_page_set_search (SY_TASKS_PAGE (page), "bay");
  wait_shown (page, "heavy middle light");
  sy_tasks_page_set_choice (SY_TASKS_PAGE (page), "mechanical");
  assert_shown (page, "heavy");
  sy_tasks_page_set_search (SY_TASKS_PAGE (page), "light");
  wait_state (page, "no-match");
  sy_tasks_page_set_search (SY_TASKS_PAGE (page), "");
  sy_tasks_page_set_choice (SY_TASKS_PAGE (page), NULL);
  assert_shown (page, "heavy middle light");
  end_page (page);
}

static gboolean
is_unnamed (GtkWidget *widget, gpointer data)
{
  (void) data;
  return gtk_widget_get_mapped (widget) && sy_test_is_control (widget) && !sy_test_is_named (widget)
         && !GTK_IS_BUTTON (widget);
}

static void
more_choices_are_one_press_away_and_counted (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *page = new_page (worker);
  GtkWidget *more;

  (void) state;
  assert_true (sy_test_save (worker, "light", 3, NULL, NULL));
  assert_true (sy_test_save (worker, "heavy", 40, NULL, NULL));
  wait_rows (page, 2);
  wait_state (page, "list");
  more = sy_test_find_name (page, "more");
  gtk_menu_button_popup (GTK_MENU_BUTTON (more));
  sy_test_settle ();
  assert_true (sy_test_shows (page, "Also what is retired"));
  assert_null (sy_test_find (page, is_unnamed, NULL));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (sy_test_find_name (page, "only-not-signed")), TRUE);
  assert_shown (page, "heavy light");
  assert_string_equal (gtk_menu_button_get_label (GTK_MENU_BUTTON (more)), "More (1)");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (sy_test_find_name (page, "only-open")), TRUE);
  wait_state (page, "no-match");
  assert_string_equal (gtk_menu_button_get_label (GTK_MENU_BUTTON (more)), "More (2)");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (sy_test_find_name (page, "only-open")), FALSE);
  sy_key_choice_choose (SY_KEY_CHOICE (sy_test_find_name (page, "narrow-place")), "bay 3");
  sy_key_choice_choose (SY_KEY_CHOICE (sy_test_find_name (page, "narrow-method")), "lift");
  assert_shown (page, "heavy light");
  assert_string_equal (gtk_menu_button_get_label (GTK_MENU_BUTTON (more)), "More (3)");
  sy_tasks_page_set_due (SY_TASKS_PAGE (page), TRUE);
  wait_state (page, "no-match");
  gtk_menu_button_popdown (GTK_MENU_BUTTON (more));
  sy_test_settle ();
  end_page (page);
}

static void
a_change_moves_a_row_and_keeps_it (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *page = new_page (worker);
  g_autoptr (SyTaskRow) before = NULL;
  g_autoptr (SyTaskRow) after = NULL;

  (void) state;
  assert_true (sy_test_save (worker, "a", 5, NULL, NULL));
  assert_true (sy_test_save (worker, "b", 6, NULL, NULL));
  assert_true (sy_test_save (worker, "c", 7, NULL, NULL));
  wait_rows (page, 3);
  assert_shown (page, "c b a");
  before = g_list_model_get_item (sy_tasks_page_get_rows (SY_TASKS_PAGE (page)), 2);
  assert_true (sy_test_save (worker, "a", 30, NULL, NULL));
  assert_true (sy_test_save (worker, "d", 1, NULL, NULL));
  wait_rows (page, 4);
  assert_shown (page, "a c b d");
  after = g_list_model_get_item (sy_tasks_page_get_rows (SY_TASKS_PAGE (page)), 0);
  assert_ptr_equal (before, after);
  end_page (page);
}

static gboolean
opens_draft (GtkWidget *widget, gpointer data)
{
  (void) data;
  return GTK_IS_BUTTON (widget)
         && g_strcmp0 (gtk_actionable_get_action_name (GTK_ACTIONABLE (widget)), "win.open-draft") == 0;
}

static void
drafts_stand_above_the_list (void **state)
{
  GVariant *target;
  GtkWidget *button;
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *page = new_page (worker);
  g_autoptr (SyDraft) draft = sy_draft_new ("new-1");
  g_autofree char *text = NULL;

  (void) state;
  wait_state (page, "empty");
  g_free (draft->name);
  draft->name = g_strdup ("Half a ring");
  assert_true (sy_draft_write (draft, "memory:", NULL));
  sy_tasks_page_refresh_drafts (SY_TASKS_PAGE (page));
  button = sy_test_find (page, opens_draft, NULL);
  assert_non_null (button);
  target = gtk_actionable_get_action_target_value (GTK_ACTIONABLE (button));
  assert_string_equal (g_variant_get_string (target, NULL), "new-1");
  text = gtk_test_accessible_check_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                             "Not saved yet: Half a ring – continue");
  assert_null (text);
  sy_draft_remove ("new-1", "memory:");
  end_page (page);
}

static void
record (SyWorker *worker, const char *name, char *facts)
{
  g_autofree char *taken = facts;

  assert_true (sy_test_record (worker, name, taken, NULL, NULL));
}

/* Days from today, as documents write them. */
static const char *
day (double days, char *text)
{
  sy_date_print (sy_clock_today () + days, text);
  return text;
}

static void
every_kind_has_a_list_of_its_own (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *dies = new_page_of (worker, SY_REGISTER_DIES);
  GtkWidget *gear = new_page_of (worker, SY_REGISTER_GEAR);
  GtkWidget *tasks = new_page (worker);
  char date[SY_DATE_TEXT_MAX];

  (void) state;
  wait_state (dies, "empty");
  assert_true (sy_test_shows (dies, "No die is in the register yet"));
  wait_state (gear, "empty");
  record (worker, "ring", sy_test_facts (12, "bay"));
  record (worker, "die 10", sy_test_die (300, "Press 3"));
  record (worker, "die 9", sy_test_die (200, "Press 4"));
  record (worker, "hook", sy_test_gear ("hook", "2 t", day (100, date), ""));
  wait_rows (dies, 2);
  wait_rows (gear, 1);
  wait_rows (tasks, 1);
  assert_shown (dies, "die 9 die 10");
  assert_true (sy_test_shows (dies, "2 dies"));
  end_page (dies);
  end_page (gear);
  end_page (tasks);
}

static gboolean
can_choose (gpointer page)
{
  sy_tasks_page_set_choice (SY_TASKS_PAGE (page), "Press 3");
  return g_list_model_get_n_items (sy_tasks_page_get_rows (SY_TASKS_PAGE (page))) == 2;
}

static void
dies_are_chosen_by_their_machine (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *page = new_page_of (worker, SY_REGISTER_DIES);

  (void) state;
  record (worker, "a", sy_test_die (300, "Press 3"));
  record (worker, "b", sy_test_die (200, "Press 4"));
  record (worker, "c", sy_test_die (100, "Press 3"));
  wait_rows (page, 3);
  assert_true (sy_test_until (can_choose, page, 20000));
  assert_shown (page, "a c");
  /* What is chosen stays chosen when another machine comes before it. */
  record (worker, "d", sy_test_die (100, "Hammer"));
  assert_shown (page, "a c");
  sy_tasks_page_set_choice (SY_TASKS_PAGE (page), NULL);
  wait_rows (page, 4);
  end_page (page);
}

static void
gear_is_chosen_by_kind_and_by_what_falls_due (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  GtkWidget *page = new_page_of (worker, SY_REGISTER_GEAR);
  char date[SY_DATE_TEXT_MAX];

  (void) state;
  record (worker, "later", sy_test_gear ("hook", "2 t", day (31, date), ""));
  record (worker, "soon", sy_test_gear ("shackle", "2 t", day (30, date), ""));
  record (worker, "today", sy_test_gear ("hook", "2 t", day (0, date), ""));
  record (worker, "past", sy_test_gear ("hook", "2 t", day (-1, date), ""));
  wait_rows (page, 4);
  assert_shown (page, "past today soon later");
  assert_true (sy_test_shows (page, "· expired"));
  assert_true (sy_test_shows (page, "· today"));
  assert_true (sy_test_shows (page, "· 31 days"));
  sy_tasks_page_set_due (SY_TASKS_PAGE (page), TRUE);
  assert_shown (page, "past today soon");
  sy_tasks_page_set_choice (SY_TASKS_PAGE (page), "shackle");
  assert_shown (page, "soon");
  assert_true (sy_test_shows (page, "1 of 4 items"));
  sy_tasks_page_set_due (SY_TASKS_PAGE (page), FALSE);
  sy_tasks_page_set_choice (SY_TASKS_PAGE (page), "beam");
  wait_state (page, "no-match");
  end_page (page);
}

static char *
order_of (GListModel *model)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (SyTaskRow) row = g_list_model_get_item (model, i);

      g_string_append (names, sy_task_row_get_task (row)->name);
    }
  return g_string_free (names, FALSE);
}

static gboolean
is_loaded (gpointer list)
{
  return !sy_task_list_get_loading (list);
}

static void
what_has_no_value_is_last_both_ways (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  g_autoptr (SyTaskView) shown_rows = sy_task_view_new (list, SY_ITEM_TASK, NULL, 0);
  g_autoptr (GPtrArray) tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);
  GtkWidget *view = g_object_ref_sink (gtk_column_view_new (NULL));
  SyTasksColumns *columns = sy_tasks_columns_new (GTK_COLUMN_VIEW (view), SY_REGISTER_TASKS, SY_UNITS_METRIC);
  const struct
  {
    const char *name;
    double index;
  } rows[] = { { "n", NAN }, { "1", 1 }, { "u", INFINITY }, { "m", NAN }, { "2", 2 } };
  const SyTaskColumn numbers[] = { SY_BY_INDEX, SY_BY_RANK, SY_BY_MASS };

  (void) state;
  assert_true (sy_test_until (is_loaded, list, 20000));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SyTask *task = sy_task_new ();

      sy_event_set (&task->id, rows[i].name);
      sy_event_set (&task->item_kind, SY_ITEM_TASK);
      sy_event_set (&task->name, rows[i].name);
      sy_event_set (&task->when, "2026-01-01T00:00:00Z");
      task->index = task->rank = task->mass_kg = rows[i].index;
      g_ptr_array_add (tasks, task);
    }
  sy_task_list_merge (list, tasks);
  sy_tasks_columns_set_rows (columns, shown_rows);
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autofree char *up = NULL, *down = NULL;

      sy_tasks_columns_sort_by (columns, numbers[i], GTK_SORT_ASCENDING);
      assert_false (sy_tasks_columns_descending (columns, numbers[i]));
      up = order_of (G_LIST_MODEL (shown_rows));
      assert_string_equal (up, "12umn");
      sy_tasks_columns_sort_by (columns, numbers[i], GTK_SORT_DESCENDING);
      assert_true (sy_tasks_columns_descending (columns, numbers[i]));
      down = order_of (G_LIST_MODEL (shown_rows));
      assert_string_equal (down, "u21mn");
    }
  sy_tasks_columns_free (columns);
  g_object_unref (view);
}

static void
assert_verdict (const char *until, double today, SyVerdict verdict, const char *words)
{
  g_autoptr (SyTask) task = sy_task_new ();
  g_autoptr (SyTaskRow) row = NULL;
  g_autofree char *said = NULL;

  sy_event_set (&task->valid_until, until);
  task->verdict = verdict;
  row = sy_task_row_new (task);
  sy_task_row_set_today (row, today);
  said = sy_tasks_cell_words (row, SY_BY_VERDICT, SY_UNITS_METRIC);
  assert_string_equal (said, words);
}

static void
what_no_longer_holds_is_said_in_the_verdict (void **state)
{
  (void) state;
  /* Day 10 is 1970-01-11. */
  assert_verdict ("1970-01-11", 10, SY_VERDICT_WITHIN_CAPACITY, "Within rated capacity");
  assert_verdict ("1970-01-11", 11, SY_VERDICT_WITHIN_CAPACITY, "Expired on 1970-01-11 · Within rated capacity");
  assert_verdict ("1970-01-11", 11, SY_VERDICT_DO_NOT_LIFT, "Do not lift · expired on 1970-01-11");
  assert_verdict ("", 11, SY_VERDICT_WITHIN_CAPACITY, "Within rated capacity");
  assert_verdict ("1970-01-11", NAN, SY_VERDICT_WITHIN_CAPACITY, "Within rated capacity");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (states_say_what_there_is),
    cmocka_unit_test (a_store_that_cannot_be_opened_is_said),
    cmocka_unit_test (search_and_verdict_narrow_the_list),
    cmocka_unit_test (more_choices_are_one_press_away_and_counted),
    cmocka_unit_test (a_change_moves_a_row_and_keeps_it),
    cmocka_unit_test (drafts_stand_above_the_list),
    cmocka_unit_test (every_kind_has_a_list_of_its_own),
    cmocka_unit_test (dies_are_chosen_by_their_machine),
    cmocka_unit_test (gear_is_chosen_by_kind_and_by_what_falls_due),
    cmocka_unit_test (what_no_longer_holds_is_said_in_the_verdict),
    cmocka_unit_test (what_has_no_value_is_last_both_ways),
  };
  int failed;

  home = sy_test_home ();
  gtk_init ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
