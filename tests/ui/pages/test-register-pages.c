/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-find-gear.h"
#include "sy-item-files.h"
#include "sy-matrix-page.h"
#include "sy-register-chooser.h"
#include "sy-test-facts.h"
#include "sy-test-tree.h"

static char *home;

static SyWorker *
new_worker (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new ("memory:", desk);
}

static GtkWidget *
present (GtkWidget *child)
{
  GtkWidget *window = gtk_window_new ();

  gtk_window_set_child (GTK_WINDOW (window), child);
  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 600);
  gtk_window_present (GTK_WINDOW (window));
  return child;
}

static void
end (GtkWidget *widget)
{
  gpointer gone = widget;

  g_object_add_weak_pointer (G_OBJECT (widget), &gone);
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (widget)));
  for (int i = 0; i < 50 && gone != NULL; i++)
    {
      sy_test_settle ();
      g_usleep (10000);
    }
  assert_null (gone);
}

static void
record (SyWorker *worker, const char *name, char *facts, SyRecordResult *saved)
{
  g_autofree char *taken = facts;

  assert_true (sy_test_record (worker, name, taken, saved, NULL));
}

typedef struct
{
  GtkWidget *widget;
  const char *text;
} Shows;

static gboolean
shows (gpointer data)
{
  const Shows *expected = data;

  return sy_test_shows (expected->widget, expected->text);
}

static void
wait_text (GtkWidget *widget, const char *text)
{
  Shows expected = { widget, text };

  if (!sy_test_until (shows, &expected, 20000))
    fail_msg ("\"%s\" is not shown", text);
}

static gboolean
is_unnamed (GtkWidget *widget, gpointer data)
{
  (void) data;
  return gtk_widget_get_mapped (widget) && sy_test_is_control (widget) && !sy_test_is_named (widget)
         && !GTK_IS_BUTTON (widget);
}

static gboolean
is_cell (GtkWidget *widget, gpointer name)
{
  g_autofree char *difference = NULL;

  if (!gtk_widget_has_css_class (widget, "sy-matrix-cell") || !gtk_widget_get_mapped (widget))
    return FALSE;
  difference = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name);
  return difference == NULL;
}

static void
a_cell_says_what_lifts_the_die_and_why (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  GtkWidget *page = present (sy_matrix_page_new (worker, list, SY_UNITS_METRIC));
  SyMatrixPage *matrix = SY_MATRIX_PAGE (page);
  GtkWidget *cell;

  (void) state;
  wait_text (page, "Nothing to hold against each other yet");
  record (worker, "small", sy_test_die (300, "Press 3"), NULL);
  record (worker, "large", sy_test_die (3000, "Press 4"), NULL);
  record (worker, "hoist", sy_test_gear ("hoist", "1 t", "2090-01-01", "\"Press 3\",\"Press 4\""), NULL);
  record (worker, "crane", sy_test_gear ("crane", "5 t", "2090-01-01", "\"Press 4\""), NULL);
  wait_text (page, "2 dies");
  wait_text (page, "does not serve Press 3");
  assert_int_equal (sy_matrix_page_count_gear (matrix), 2);
  assert_null (sy_test_find (page, is_unnamed, NULL));
  cell = sy_test_find (page, is_cell, (gpointer) "large with hoist: Do not lift, 300 %");
  assert_non_null (cell);
  g_signal_emit_by_name (cell, "clicked");
  wait_text (page, "large with hoist");
  assert_true (sy_test_shows (page, "3000 kg of 1000 kg that it may carry: 300 %"));
  sy_matrix_page_set_machine (matrix, "Press 3");
  assert_int_equal (sy_matrix_page_count_dies (matrix), 1);
  sy_matrix_page_set_machine (matrix, NULL);
  assert_int_equal (sy_matrix_page_count_dies (matrix), 2);
  /* What is recorded now changes the table and what is said below it. */
  record (worker, "large", sy_test_die (900, "Press 4"), NULL);
  wait_text (page, "900 kg of 1000 kg that it may carry: 90 %");
  end (page);
}

static gboolean
is_window (gpointer data)
{
  return *(gpointer *) data == NULL;
}

static void
a_die_is_taken_from_the_register (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  g_autoptr (SyForm) plan = sy_form_new (sy_worker_get_desk (worker), "rigged-lift", SY_UNITS_METRIC);
  GtkWidget *parent = present (gtk_label_new ("plan"));
  GtkWidget *window;
  gpointer gone;

  (void) state;
  record (worker, "first", sy_test_die (300, "Press 3"), NULL);
  record (worker, "other", sy_test_die (400, "Press 4"), NULL);
  record (worker, "hook", sy_test_gear ("hook", "1 t", "2090-01-01", ""), NULL);
  window = sy_register_chooser_new (GTK_WINDOW (gtk_widget_get_root (parent)), worker, list, SY_REGISTER_DIES, plan);
  gone = window;
  g_object_add_weak_pointer (G_OBJECT (window), &gone);
  gtk_window_present (GTK_WINDOW (window));
  wait_text (window, "Press 4");
  assert_int_equal (g_list_model_get_n_items (sy_register_chooser_get_rows (SY_REGISTER_CHOOSER (window))), 2);
  sy_register_chooser_set_search (SY_REGISTER_CHOOSER (window), "other");
  sy_register_chooser_take (SY_REGISTER_CHOOSER (window), 0);
  assert_true (sy_test_until (is_window, &gone, 20000));
  assert_string_equal (sy_form_get (plan, "die"), "other");
  assert_string_equal (sy_form_get (plan, "mass"), "400");
  end (parent);
}

static void
gear_is_offered_the_places_of_the_plan (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = sy_task_list_new (worker);
  g_autoptr (SyForm) plan = sy_form_new (sy_worker_get_desk (worker), "rigged-lift", SY_UNITS_METRIC);
  GtkWidget *parent = present (gtk_label_new ("plan"));
  GtkWidget *window, *where;

  (void) state;
  sy_form_set (plan, "legs[0].point[0]", "A");
  sy_form_set (plan, "legs[0].elements[0].label", "S-1");
  sy_form_set (plan, "legs[0].elements[0].kind", "shackle");
  record (worker, "shackle", sy_test_gear ("shackle", "1 t", "2090-01-01", ""), NULL);
  window = sy_register_chooser_new (GTK_WINDOW (gtk_widget_get_root (parent)), worker, list, SY_REGISTER_GEAR, plan);
  gtk_window_present (GTK_WINDOW (window));
  wait_text (window, "Shackle");
  where = sy_test_find_name (window, "where");
  assert_int_equal (g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (where))), 2);
  assert_null (sy_test_find (window, is_unnamed, NULL));
  gtk_window_destroy (GTK_WINDOW (window));
  end (parent);
}

static void
files_are_attached_with_who_and_why_and_saved_as_copies (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  GtkWidget *files = present (sy_item_files_new (worker));
  g_autofree char *path = g_build_filename (home, "report.pdf", NULL);
  g_autofree char *copy_path = g_build_filename (home, "copy.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFile) copy = g_file_new_for_path (copy_path);
  g_autofree char *content = NULL;
  SyRecordResult saved = { 0 };

  (void) state;
  wait_text (files, "Files can be attached once this is saved.");
  record (worker, "hook", sy_test_gear ("hook", "1 t", "2090-01-01", ""), &saved);
  sy_item_files_set_item (SY_ITEM_FILES (files), saved.task_id);
  wait_text (files, "Nothing is attached yet.");
  assert_true (g_file_set_contents (path, "a report", -1, NULL));
  sy_item_files_offer (SY_ITEM_FILES (files), file);
  wait_text (files, "report.pdf · 8 bytes");
  assert_null (sy_test_find (files, is_unnamed, NULL));
  g_signal_emit_by_name (sy_test_find_name (files, "attach-now"), "clicked");
  wait_text (files, "By whom and why belong to every file");
  gtk_editable_set_text (GTK_EDITABLE (sy_test_find_name (files, "attach-by")), "A. Marsh");
  gtk_editable_set_text (GTK_EDITABLE (sy_test_find_name (files, "attach-why")), "yearly examination");
  g_signal_emit_by_name (sy_test_find_name (files, "attach-now"), "clicked");
  wait_text (files, "A. Marsh: yearly examination");
  sy_item_files_save_copy (SY_ITEM_FILES (files), "report.pdf", 0, copy);
  wait_text (files, "A copy was saved as");
  assert_true (g_file_get_contents (copy_path, &content, NULL, NULL));
  assert_string_equal (content, "a report");
  sy_record_result_clear (&saved);
  end (files);
}

static gboolean
is_put (GtkWidget *widget, gpointer data)
{
  (void) data;
  return GTK_IS_BUTTON (widget) && gtk_widget_get_mapped (widget)
         && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), "Put it in") == 0;
}

static gboolean
has_hoist (gpointer plan)
{
  return *sy_form_get (plan, "suspension[0].label") != '\0';
}

static void
gear_that_carries_the_load_is_put_into_the_plan (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyForm) plan = sy_form_new (sy_worker_get_desk (worker), "rigged-lift", SY_UNITS_METRIC);
  GtkWidget *find = present (sy_find_gear_new (worker, plan));
  GtkWidget *put;
  const char *const points[] = { "A", "B" };

  (void) state;
  record (worker, "strong", sy_test_gear ("hoist", "1 t", "2090-01-01", ""), NULL);
  record (worker, "weak", sy_test_gear ("hoist", "100 kg", "2090-01-01", ""), NULL);
  wait_text (find, "needed");
  sy_form_set (plan, "avoid.possible", "no");
  sy_form_set (plan, "avoid.why", "changeover");
  sy_form_set (plan, "mass", "300");
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *path = g_strdup_printf ("cg[%d]", i);

      sy_form_set (plan, path, i == 2 ? "50" : "0");
    }
  sy_form_set (plan, "hook.above", "600");
  for (int i = 0; i < 2; i++)
    {
      g_autofree char *label = g_strdup_printf ("points[%d].label", i);
      g_autofree char *x = g_strdup_printf ("points[%d].at[0]", i);
      g_autofree char *y = g_strdup_printf ("points[%d].at[1]", i);
      g_autofree char *z = g_strdup_printf ("points[%d].at[2]", i);
      g_autofree char *leg = g_strdup_printf ("legs[%d].point[0]", i);

      sy_form_set (plan, label, points[i]);
      sy_form_set (plan, x, i == 0 ? "-200" : "200");
      sy_form_set (plan, y, "0");
      sy_form_set (plan, z, "100");
      sy_form_set (plan, leg, points[i]);
    }
  wait_text (find, "Hung from · Hoist");
  wait_text (find, "1 item does not");
  put = sy_test_find (find, is_put, NULL);
  assert_non_null (put);
  g_signal_emit_by_name (put, "clicked");
  assert_true (sy_test_until (has_hoist, plan, 20000));
  assert_string_equal (sy_form_get (plan, "suspension[0].wll"), "1 t");
  sy_form_undo (plan);
  assert_string_equal (sy_form_get (plan, "suspension[0].wll"), "");
  end (find);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_cell_says_what_lifts_the_die_and_why),
    cmocka_unit_test (a_die_is_taken_from_the_register),
    cmocka_unit_test (gear_is_offered_the_places_of_the_plan),
    cmocka_unit_test (files_are_attached_with_who_and_why_and_saved_as_copies),
    cmocka_unit_test (gear_that_carries_the_load_is_put_into_the_plan),
  };
  int failed;

  home = sy_test_home ();
  gtk_init ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
