/* SPDX-License-Identifier: MIT */
/* Any two tasks beside each other in the window: chosen, shown, swapped, put on paper. */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-compare-page.h"
#include "sy-task-chooser.h"
#include "sy-test-facts.h"
#include "sy-test-tree.h"

#define LIMIT_MS 20000

typedef struct
{
  SyWorker *worker;
  SyTaskList *list;
  GtkWidget *page;
  SyRecordResult heavy, light;
} Fixture;

static int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  GtkWidget *window = gtk_window_new ();

  fixture->worker = sy_worker_new ("memory:", desk);
  assert_true (sy_test_save (fixture->worker, "Rings, heavy", 30, &fixture->heavy, NULL));
  assert_true (sy_test_save (fixture->worker, "Rings, light", 5, &fixture->light, NULL));
  fixture->list = sy_task_list_new (fixture->worker);
  fixture->page = sy_compare_page_new (fixture->worker, fixture->list, SY_UNITS_METRIC);
  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 700);
  gtk_window_set_child (GTK_WINDOW (window), fixture->page);
  gtk_window_present (GTK_WINDOW (window));
  *state = fixture;
  return 0;
}

static int
tear_down (void **state)
{
  Fixture *fixture = *state;
  gpointer page = fixture->page;

  g_object_add_weak_pointer (G_OBJECT (fixture->page), &page);
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (fixture->page)));
  sy_worker_stop (fixture->worker);
  for (int i = 0; i < 50 && page != NULL; i++)
    {
      sy_test_settle ();
      g_usleep (10000);
    }
  g_object_unref (fixture->list);
  g_object_unref (fixture->worker);
  sy_record_result_clear (&fixture->heavy);
  sy_record_result_clear (&fixture->light);
  g_free (fixture);
  return page == NULL ? 0 : -1; /* nothing holds the page back */
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

  if (!sy_test_until (shows, &expected, LIMIT_MS))
    fail_msg ("\"%s\" is not shown", text);
}

#define WORSE_TO_BETTER "The second is better: from Mechanical handling required"

static void
two_tasks_stand_beside_each_other (void **state)
{
  Fixture *fixture = *state;
  SyComparePage *page = SY_COMPARE_PAGE (fixture->page);

  wait_text (fixture->page, "Choose two");
  assert_false (sy_compare_page_write (page, "/nowhere/nothing.pdf"));
  sy_compare_page_set (page, 0, fixture->heavy.task_id, 0);
  sy_compare_page_set (page, 1, fixture->light.task_id, 1);
  wait_text (fixture->page, WORSE_TO_BETTER);
  wait_text (fixture->page, "Load: Heaviest load (L)");
  wait_text (fixture->page, "30 kg");
  wait_text (fixture->page, "Within the hand-handling limits");
  wait_text (fixture->page, "What it bought");
  wait_text (fixture->page, "not a permission to lift");
}

static void
they_can_be_swapped (void **state)
{
  Fixture *fixture = *state;
  SyComparePage *page = SY_COMPARE_PAGE (fixture->page);

  sy_compare_page_set (page, 0, fixture->heavy.task_id, 0);
  sy_compare_page_set (page, 1, fixture->light.task_id, 0);
  wait_text (fixture->page, WORSE_TO_BETTER);
  assert_true (gtk_widget_activate_action (fixture->page, "compare.swap", NULL));
  wait_text (fixture->page, "The second is worse: from ");
  assert_string_equal (sy_compare_page_get_item (page, 0), fixture->light.task_id);
}

static void
a_side_is_chosen_by_some_of_its_name (void **state)
{
  Fixture *fixture = *state;
  SyComparePage *page = SY_COMPARE_PAGE (fixture->page);
  g_autoptr (GListModel) windows = NULL;
  GtkWidget *chooser = NULL;

  sy_compare_page_set (page, 0, fixture->heavy.task_id, 0);
  sy_compare_page_choose (page, 1);
  windows = g_object_ref (gtk_window_get_toplevels ());
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      if (SY_IS_TASK_CHOOSER (window))
        chooser = window;
    }
  assert_non_null (chooser);
  wait_text (chooser, "Rings, light");
  sy_task_chooser_set_search (SY_TASK_CHOOSER (chooser), "light");
  /* The store has not answered yet: it is chosen as soon as it has. */
  sy_task_chooser_choose (SY_TASK_CHOOSER (chooser), 0);
  wait_text (fixture->page, WORSE_TO_BETTER);
  assert_string_equal (sy_compare_page_get_item (page, 1), fixture->light.task_id);
}

static void
what_is_not_there_is_said (void **state)
{
  Fixture *fixture = *state;
  SyComparePage *page = SY_COMPARE_PAGE (fixture->page);

  sy_compare_page_set (page, 0, fixture->heavy.task_id, 0);
  sy_compare_page_set (page, 1, "0000000000000000", 0);
  sy_test_settle ();
  wait_text (fixture->page, "0000000000000000");
  assert_false (sy_compare_page_write (page, "/nowhere/nothing.pdf"));
}

static void
it_is_written_as_a_page (void **state)
{
  Fixture *fixture = *state;
  SyComparePage *page = SY_COMPARE_PAGE (fixture->page);
  g_autofree char *folder = g_dir_make_tmp ("compare-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "comparison.pdf", NULL);
  g_autofree char *text = NULL;

  sy_compare_page_set (page, 0, fixture->heavy.task_id, 0);
  sy_compare_page_set (page, 1, fixture->light.task_id, 0);
  wait_text (fixture->page, WORSE_TO_BETTER);
  assert_false (sy_compare_page_write (page, "/nowhere/nothing.pdf"));
  wait_text (fixture->page, "The comparison was not saved: ");
  assert_true (sy_compare_page_write (page, path));
  wait_text (fixture->page, "Saved as ");
  assert_true (g_file_get_contents (path, &text, NULL, NULL));
  assert_memory_equal (text, "%PDF", 4);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (void)
{
#define PAGE_TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    PAGE_TEST (two_tasks_stand_beside_each_other),
    PAGE_TEST (they_can_be_swapped),
    PAGE_TEST (a_side_is_chosen_by_some_of_its_name),
    PAGE_TEST (what_is_not_there_is_said),
    PAGE_TEST (it_is_written_as_a_page),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
