/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-task-list.h"
#include "sy-test-facts.h"

static char *home;

/* What a list announced. */
typedef struct
{
  guint signals, position, removed, added;
  guint n_items; /* as the list said in that moment */
} Announced;

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, Announced *announced)
{
  announced->signals++;
  announced->position = position;
  announced->removed = removed;
  announced->added = added;
  announced->n_items = g_list_model_get_n_items (model);
}

static void
notify_cb (GObject *object, GParamSpec *pspec, GString *names)
{
  (void) object;
  g_string_append_printf (names, "%s ", pspec->name);
}

static SyTask *
new_task (int i, double index)
{
  SyTask *task = sy_task_new ();
  g_autofree char *id = g_strdup_printf ("id-%d", i);
  g_autofree char *name = g_strdup_printf ("Task %d", i);

  sy_event_set (&task->id, id);
  sy_event_set (&task->name, name);
  sy_event_set (&task->when, "2026-01-01T00:00:00Z");
  sy_event_set (&task->search_text, name);
  task->index = index;
  task->rank = index * 100;
  task->mass_kg = NAN;
  task->revision = 1;
  return task;
}

static GPtrArray *
new_tasks (int n)
{
  GPtrArray *tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);

  for (int i = 0; i < n; i++)
    g_ptr_array_add (tasks, new_task (i, i % 3 == 0 ? NAN : (double) i));
  return tasks;
}

static SyWorker *
new_worker (const char *store)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new (store, desk);
}

static gboolean
is_loaded (gpointer list)
{
  return !sy_task_list_get_loading (list);
}

static SyTaskList *
new_list (SyWorker *worker)
{
  SyTaskList *list = sy_task_list_new (worker);

  assert_true (sy_test_until (is_loaded, list, 20000));
  return list;
}

static void
first_answer_is_one_announcement (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (200);
  Announced announced = { 0 };

  (void) state;
  assert_null (sy_task_list_get_error (list));
  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  sy_task_list_merge (list, tasks);
  assert_int_equal (announced.signals, 1);
  assert_int_equal (announced.position, 0);
  assert_int_equal (announced.removed, 0);
  assert_int_equal (announced.added, 200);
  assert_int_equal (g_list_model_get_item_type (G_LIST_MODEL (list)), SY_TYPE_TASK_ROW);
}

static void
what_did_not_change_is_not_announced (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (20);
  Announced announced = { 0 };

  (void) state;
  sy_task_list_merge (list, tasks);
  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  sy_task_list_merge (list, tasks);
  assert_int_equal (announced.signals, 0);
}

static void
a_row_keeps_its_identity (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (20);
  g_autoptr (SyTaskRow) before = NULL;
  g_autoptr (SyTaskRow) after = NULL;
  g_autoptr (GString) names = g_string_new (NULL);
  SyTask *changed = tasks->pdata[7];
  Announced announced = { 0 };

  (void) state;
  sy_task_list_merge (list, tasks);
  before = g_list_model_get_item (G_LIST_MODEL (list), 7);
  g_signal_connect (before, "notify", G_CALLBACK (notify_cb), names);
  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  changed->index = 0.5;
  changed->revision = 2;
  sy_task_list_merge (list, tasks);

  assert_int_equal (announced.signals, 1);
  assert_int_equal (announced.position, 7);
  assert_int_equal (announced.removed, 1);
  assert_int_equal (announced.added, 1);
  assert_int_equal (announced.n_items, 20);
  after = g_list_model_get_item (G_LIST_MODEL (list), 7);
  assert_ptr_equal (before, after);
  assert_string_equal (names->str, "index revision ");
  assert_close (sy_task_row_get_task (after)->index, 0.5, 0, 0);
}

static void
changed_rows_are_told_before_new_ones (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (3);
  g_autoptr (GPtrArray) more = new_tasks (5);
  Announced announced = { 0 };

  (void) state;
  sy_task_list_merge (list, tasks);
  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  ((SyTask *) more->pdata[1])->index = 9;
  sy_task_list_merge (list, more);
  assert_int_equal (announced.signals, 2);
  assert_int_equal (announced.position, 3);
  assert_int_equal (announced.added, 2);
  assert_int_equal (announced.n_items, 5);
}

static void
assert_by_name (SyTaskList *list, const char *expected)
{
  const guint32 *places = sy_task_list_by_name (list);
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    g_string_append_printf (names, "%s%s", i > 0 ? "|" : "", sy_task_row_get_task (sy_task_list_peek (list, places[i]))->name);
  assert_string_equal (names->str, expected);
}

static void
the_order_of_names_is_kept (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (2);
  g_autoptr (GPtrArray) more = new_tasks (11);

  (void) state;
  sy_event_set (&((SyTask *) tasks->pdata[0])->name, "zebra");
  sy_task_list_merge (list, tasks);
  assert_by_name (list, "Task 1|zebra");
  g_ptr_array_remove_range (more, 3, 6);
  sy_task_list_merge (list, more);
  /* The first has its name back, and others are there; the tenth stands after the second. */
  assert_by_name (list, "Task 0|Task 1|Task 2|Task 9|Task 10");
}

static void
what_is_retired_is_counted_apart (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (5);

  (void) state;
  for (guint i = 0; i < tasks->len; i++)
    sy_event_set (&((SyTask *) tasks->pdata[i])->item_kind, i < 4 ? SY_ITEM_TASK : SY_ITEM_DIE);
  sy_task_list_merge (list, tasks);
  ((SyTask *) tasks->pdata[2])->retired = TRUE;
  sy_task_list_merge (list, tasks);
  assert_int_equal (sy_task_list_count (list, SY_REGISTER_TASKS), 3);
  assert_int_equal (sy_task_list_count_retired (list, SY_REGISTER_TASKS), 1);
  assert_int_equal (sy_task_list_count (list, SY_REGISTER_DIES), 1);
  assert_int_equal (sy_task_list_count_retired (list, SY_REGISTER_DIES), 0);
}

static void
a_new_day_is_told_once_for_all (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (20);
  Announced announced = { 0 };

  (void) state;
  sy_task_list_merge (list, tasks);
  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  sy_task_list_set_today (list, 1);
  assert_int_equal (announced.signals, 0); /* nothing falls due */
  sy_event_set (&((SyTask *) tasks->pdata[4])->valid_until, "1970-01-03");
  sy_task_list_merge (list, tasks);
  assert_int_equal (announced.signals, 1);
  sy_task_list_set_today (list, 1);
  assert_int_equal (announced.signals, 1);
  sy_task_list_set_today (list, 2);
  assert_int_equal (announced.signals, 2);
  assert_int_equal (announced.removed, 20);
  assert_int_equal (announced.added, 20);
}

static gboolean
has_one (gpointer list)
{
  return g_list_model_get_n_items (list) == 1;
}

static void
what_this_program_saves_appears (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = new_list (worker);

  (void) state;
  assert_true (sy_test_save (worker, "ring", 12, NULL, NULL));
  assert_true (sy_test_until (has_one, list, 20000));
}

static void
what_another_program_saves_appears (void **state)
{
  g_autofree char *path = g_build_filename (home, "polled.store", NULL);
  g_autoptr (SyWorker) here = new_worker (path);
  g_autoptr (SyTaskList) list = new_list (here);
  g_autoptr (SyWorker) there = new_worker (path);

  (void) state;
  assert_true (sy_test_save (there, "ring", 12, NULL, NULL));
  assert_true (sy_test_until (has_one, list, 20000));
}

static void
what_the_store_holds_comes_at_once_and_by_name (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  g_autoptr (SyTaskList) list = NULL;
  Announced announced = { 0 };

  (void) state;
  assert_true (sy_test_save (worker, "ring 10", 12, NULL, NULL));
  assert_true (sy_test_save (worker, "ring 9", 12, NULL, NULL));
  list = sy_task_list_new (worker);
  assert_true (sy_task_list_get_loading (list));
  g_signal_connect (list, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  assert_true (sy_test_until (is_loaded, list, 20000));
  assert_int_equal (announced.signals, 1);
  assert_int_equal (announced.added, 2);
  assert_int_equal (sy_task_list_count (list, SY_REGISTER_TASKS), 2);
  assert_by_name (list, "ring 9|ring 10");
}

static gboolean
has_error (gpointer list)
{
  return sy_task_list_get_error (list) != NULL;
}

static gboolean
has_no_error (gpointer list)
{
  return sy_task_list_get_error (list) == NULL;
}

static void
a_store_that_does_not_open_is_told_and_may_be_tried_again (void **state)
{
  g_autofree char *path = g_build_filename (home, "closed.store", NULL);
  g_autoptr (SyWorker) worker = NULL;
  g_autoptr (SyTaskList) list = NULL;

  (void) state;
  assert_true (g_file_set_contents (path, "something else\n", -1, NULL));
  worker = new_worker (path);
  list = sy_task_list_new (worker);
  assert_true (sy_test_until (has_error, list, 20000));
  assert_false (sy_task_list_get_loading (list));
  assert_int_equal (g_unlink (path), 0);
  sy_task_list_refresh (list);
  assert_true (sy_test_until (has_no_error, list, 20000));
}

static void
the_list_can_go_while_it_waits (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ("memory:");
  SyTaskList *list = sy_task_list_new (worker);
  gpointer gone = list;

  (void) state;
  g_object_add_weak_pointer (G_OBJECT (list), &gone);
  g_object_run_dispose (G_OBJECT (list));
  g_object_unref (list);
  sy_worker_stop (worker);
  sy_test_settle ();
  assert_null (gone);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (first_answer_is_one_announcement),
    cmocka_unit_test (what_did_not_change_is_not_announced),
    cmocka_unit_test (a_row_keeps_its_identity),
    cmocka_unit_test (changed_rows_are_told_before_new_ones),
    cmocka_unit_test (a_new_day_is_told_once_for_all),
    cmocka_unit_test (the_order_of_names_is_kept),
    cmocka_unit_test (what_is_retired_is_counted_apart),
    cmocka_unit_test (what_the_store_holds_comes_at_once_and_by_name),
    cmocka_unit_test (what_this_program_saves_appears),
    cmocka_unit_test (what_another_program_saves_appears),
    cmocka_unit_test (a_store_that_does_not_open_is_told_and_may_be_tried_again),
    cmocka_unit_test (the_list_can_go_while_it_waits),
  };
  int failed;

  home = sy_test_home ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
