/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-task-view.h"
#include "sy-test-facts.h"

/* As many as a large shop has, a tenth of them in bay 7; behaviour, not time. */
#define MANY 20000

typedef struct
{
  guint signals, position, removed, added;
  guint touched; /* rows announced in all */
} Announced;

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, Announced *announced)
{
  (void) model;
  announced->signals++;
  announced->position = position;
  announced->removed = removed;
  announced->added = added;
  announced->touched += removed + added;
}

static SyTask *
new_task (guint i)
{
  SyTask *task = sy_task_new ();
  g_autofree char *id = g_strdup_printf ("id-%u", i);
  g_autofree char *name = g_strdup_printf ("Task %u", i);
  g_autofree char *place = g_strdup_printf ("bay %u", i % 10);

  sy_event_set (&task->id, id);
  sy_event_set (&task->item_kind, i % 4 == 3 ? SY_ITEM_DIE : SY_ITEM_TASK);
  sy_event_set (&task->name, name);
  sy_event_set (&task->place, place);
  sy_event_set (&task->when, "2026-01-01T00:00:00Z");
  task->index = (double) (i % 97);
  task->rank = (double) (i % 1009);
  task->revision = 1;
  task->seat = i + 1;
  return task;
}

static GPtrArray *
new_tasks (guint from, guint to)
{
  GPtrArray *tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);

  for (guint i = from; i < to; i++)
    g_ptr_array_add (tasks, new_task (i));
  return tasks;
}

static gboolean
is_loaded (gpointer list)
{
  return !sy_task_list_get_loading (list);
}

static gboolean
has_answer (gpointer view)
{
  return !sy_task_view_get_pending (view);
}

static SyWorker *
new_worker (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_worker_new ("memory:", desk);
}

static SyTaskList *
new_list (SyWorker *worker, guint n)
{
  SyTaskList *list = sy_task_list_new (worker);
  g_autoptr (GPtrArray) tasks = new_tasks (0, n);

  assert_true (sy_test_until (is_loaded, list, 20000));
  sy_task_list_merge (list, tasks);
  return list;
}

static const SyTaskKey by_rank[] = { { SY_BY_RANK, TRUE } };

static guint
count (SyTaskView *view)
{
  return g_list_model_get_n_items (G_LIST_MODEL (view));
}

static void
assert_in_order (SyTaskView *view, const SyTaskKey *keys, guint n_keys)
{
  for (guint i = 0; i + 1 < count (view); i++)
    {
      g_autoptr (SyTaskRow) a = g_list_model_get_item (G_LIST_MODEL (view), i);
      g_autoptr (SyTaskRow) b = g_list_model_get_item (G_LIST_MODEL (view), i + 1);

      if (sy_task_order_by (a, b, keys, n_keys) >= 0)
        fail_msg ("\"%s\" before \"%s\"", sy_task_row_get_task (a)->name, sy_task_row_get_task (b)->name);
    }
}

/* What a list model promises: a copy that follows the announcements is the model. */
typedef struct
{
  GPtrArray *rows;
} Follower;

static void
follow_cb (GListModel *model, guint position, guint removed, guint added, Follower *follower)
{
  assert_true (position + removed <= follower->rows->len);
  if (removed > 0)
    g_ptr_array_remove_range (follower->rows, position, removed);
  for (guint i = 0; i < added; i++)
    g_ptr_array_insert (follower->rows, (int) (position + i), g_list_model_get_item (model, position + i));
}

static void
assert_followed (SyTaskView *view, const Follower *follower)
{
  assert_int_equal (follower->rows->len, count (view));
  for (guint i = 0; i < follower->rows->len; i++)
    {
      g_autoptr (SyTaskRow) row = g_list_model_get_item (G_LIST_MODEL (view), i);

      assert_ptr_equal (row, follower->rows->pdata[i]);
    }
}

static void
many_come_in_one_announcement_and_in_order (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = new_list (worker, 0);
  g_autoptr (SyTaskView) view = sy_task_view_new (list, SY_ITEM_TASK, by_rank, 1);
  g_autoptr (GPtrArray) tasks = new_tasks (0, MANY);
  const SyTaskKey by_place[] = { { SY_BY_PLACE, FALSE }, { SY_BY_NAME, TRUE } };
  Announced announced = { 0 };

  (void) state;
  g_signal_connect (view, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  sy_task_list_merge (list, tasks);
  assert_int_equal (announced.signals, 1);
  assert_int_equal (announced.added, MANY * 3 / 4);
  assert_in_order (view, by_rank, 1);
  sy_task_view_sort (view, by_place, 2);
  assert_int_equal (announced.signals, 2);
  assert_in_order (view, by_place, 2);
  sy_task_view_sort (view, by_place, 2);
  assert_int_equal (announced.signals, 2);
}

static void
a_few_changes_move_those_rows_only (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = new_list (worker, MANY);
  g_autoptr (SyTaskView) view = sy_task_view_new (list, SY_ITEM_TASK, by_rank, 1);
  g_autoptr (GPtrArray) changed = new_tasks (4000, 4003);
  g_autoptr (GPtrArray) added = new_tasks (MANY, MANY + 2);
  g_autoptr (SyTaskRow) first = NULL;
  Announced announced = { 0 };

  (void) state;
  g_signal_connect (view, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  ((SyTask *) changed->pdata[0])->rank = 1e6;                       /* to the top         */
  ((SyTask *) changed->pdata[1])->mass_kg = 12;                     /* stays              */
  ((SyTask *) changed->pdata[2])->rank = -1;                        /* to the end         */
  sy_task_list_merge (list, changed);
  assert_true (announced.signals <= 5);
  assert_true (announced.touched <= 6);
  first = g_list_model_get_item (G_LIST_MODEL (view), 0);
  assert_string_equal (sy_task_row_get_task (first)->id, "id-4000");
  assert_in_order (view, by_rank, 1);

  memset (&announced, 0, sizeof announced);
  sy_task_list_merge (list, added);
  assert_int_equal (announced.touched, 2);
  assert_in_order (view, by_rank, 1);

  /* A row that is retired goes, and comes back when it is asked for. */
  ((SyTask *) changed->pdata[0])->retired = TRUE;
  sy_task_list_merge (list, changed);
  assert_int_equal (announced.touched, 3);
  assert_int_equal (count (view), MANY * 3 / 4 + 2 - 1);
  sy_task_view_choose (view, &(SyTaskChoice) { .retired = TRUE });
  assert_int_equal (announced.position, 0);
  assert_int_equal (announced.added, 1);
  assert_int_equal (announced.touched, 4);
}

static void
the_announcements_are_the_model (void **state)
{
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = new_list (worker, 300);
  g_autoptr (SyTaskView) view = sy_task_view_new (list, SY_ITEM_TASK, by_rank, 1);
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  Follower follower = { g_ptr_array_new_with_free_func (g_object_unref) };

  (void) state;
  follow_cb (G_LIST_MODEL (view), 0, 0, count (view), &follower);
  g_signal_connect (view, "items-changed", G_CALLBACK (follow_cb), &follower);
  for (int step = 0; step < 200; step++)
    {
      guint from = (guint) g_rand_int_range (random, 0, 400);
      g_autoptr (GPtrArray) tasks = new_tasks (from, from + (guint) g_rand_int_range (random, 1, 40));
      g_autofree char *place = g_strdup_printf ("bay %d", g_rand_int_range (random, 0, 10));
      const SyTaskKey key = { (SyTaskColumn) g_rand_int_range (random, 0, SY_N_TASK_COLUMNS), step & 1 };
      SyTaskChoice choice = { .place = step % 5 == 0 ? place : NULL, .retired = step % 2 };

      for (guint i = 0; i < tasks->len; i++)
        {
          ((SyTask *) tasks->pdata[i])->rank = g_rand_int_range (random, 0, 50);
          ((SyTask *) tasks->pdata[i])->retired = g_rand_int_range (random, 0, 4) == 0;
          if (i % 3 == 0)
            sy_event_set (&((SyTask *) tasks->pdata[i])->name, place);
        }
      sy_task_list_merge (list, tasks);
      if (step % 3 == 0)
        sy_task_view_choose (view, &choice);
      if (step % 4 == 0)
        sy_task_view_sort (view, &key, 1);
      if (step % 50 == 0)
        sy_task_list_set_today (list, step);
      assert_followed (view, &follower);
    }
  g_signal_handlers_disconnect_by_data (view, &follower);
  g_ptr_array_unref (follower.rows);
}

/* Tasks of a real store, which has the words. */
static SyTaskList *
new_saved (SyWorker *worker, const char *const *names)
{
  SyTaskList *list;

  for (guint i = 0; names[i] != NULL; i++)
    assert_true (sy_test_save (worker, names[i], 12, NULL, NULL));
  list = sy_task_list_new (worker);
  assert_true (sy_test_until (is_loaded, list, 20000));
  return list;
}

static char *
names_of (SyTaskView *view)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < count (view); i++)
    {
      g_autoptr (SyTaskRow) row = g_list_model_get_item (G_LIST_MODEL (view), i);

      g_string_append_printf (names, "%s%s", i > 0 ? "|" : "", sy_task_row_get_task (row)->name);
    }
  return g_string_free (names, FALSE);
}

static void
assert_names (SyTaskView *view, const char *expected)
{
  g_autofree char *names = names_of (view);

  assert_string_equal (names, expected);
}

static void
words_are_found_by_the_store_and_rows_stay_until_then (void **state)
{
  static const char *const names[] = { "ring large", "ring small", "rod", NULL };
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = new_saved (worker, names);
  g_autoptr (SyTaskView) view = sy_task_view_new (list, NULL, NULL, 0);
  g_autoptr (SyTaskRow) before = g_list_model_get_item (G_LIST_MODEL (view), 1);
  g_autoptr (SyTaskRow) after = NULL;
  Announced announced = { 0 };

  (void) state;
  g_signal_connect (view, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  sy_task_view_search (view, "RIN");
  assert_true (sy_task_view_get_pending (view));
  assert_int_equal (count (view), 3);
  assert_true (sy_test_until (has_answer, view, 20000));
  assert_names (view, "ring large|ring small");
  assert_int_equal (announced.signals, 1);
  assert_int_equal (announced.touched, 1); /* the rod went */
  after = g_list_model_get_item (G_LIST_MODEL (view), 1);
  assert_ptr_equal (before, after);
  sy_task_view_search (view, "  ");
  assert_false (sy_task_view_get_pending (view));
  assert_names (view, "ring large|ring small|rod");
  sy_task_view_search (view, "zebra");
  assert_true (sy_test_until (has_answer, view, 20000));
  assert_int_equal (count (view), 0);
  assert_null (sy_task_view_get_error (view));
}

static void
only_the_last_of_what_is_typed_is_answered (void **state)
{
  static const char *const names[] = { "ring large", "ring small", "rod", NULL };
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = new_saved (worker, names);
  g_autoptr (SyTaskView) view = sy_task_view_new (list, NULL, NULL, 0);
  Announced announced = { 0 };

  (void) state;
  g_signal_connect (view, "items-changed", G_CALLBACK (items_changed_cb), &announced);
  sy_task_view_search (view, "z");
  sy_task_view_search (view, "large");
  sy_task_view_search (view, "rod");
  assert_true (sy_test_until (has_answer, view, 20000));
  sy_test_settle ();
  assert_names (view, "rod");
  assert_int_equal (announced.signals, 1);
  /* What is asked no more is not answered at all. */
  sy_task_view_search (view, "large");
  sy_task_view_search (view, "");
  assert_names (view, "ring large|ring small|rod");
  for (int i = 0; i < 20; i++)
    {
      sy_test_settle ();
      g_usleep (2000);
    }
  assert_names (view, "ring large|ring small|rod");
}

static gboolean
has_two (gpointer view)
{
  return count (view) == 2;
}

static void
what_is_saved_during_a_search_is_found (void **state)
{
  static const char *const names[] = { "ring", "rod", NULL };
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = new_saved (worker, names);
  g_autoptr (SyTaskView) view = sy_task_view_new (list, NULL, NULL, 0);

  (void) state;
  sy_task_view_search (view, "ring");
  assert_true (sy_test_until (has_answer, view, 20000));
  assert_int_equal (count (view), 1);
  assert_true (sy_test_save (worker, "ring again", 12, NULL, NULL));
  assert_true (sy_test_until (has_two, view, 20000));
}

static void
a_view_can_go_while_it_waits (void **state)
{
  static const char *const names[] = { "ring", NULL };
  g_autoptr (SyWorker) worker = new_worker ();
  g_autoptr (SyTaskList) list = new_saved (worker, names);
  SyTaskView *view = sy_task_view_new (list, NULL, NULL, 0);
  gpointer gone = view;

  (void) state;
  g_object_add_weak_pointer (G_OBJECT (view), &gone);
  sy_task_view_search (view, "ring");
  g_object_unref (view);
  sy_worker_stop (worker);
  sy_test_settle ();
  assert_null (gone);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (many_come_in_one_announcement_and_in_order),
    cmocka_unit_test (a_few_changes_move_those_rows_only),
    cmocka_unit_test (the_announcements_are_the_model),
    cmocka_unit_test (words_are_found_by_the_store_and_rows_stay_until_then),
    cmocka_unit_test (only_the_last_of_what_is_typed_is_answered),
    cmocka_unit_test (what_is_saved_during_a_search_is_found),
    cmocka_unit_test (a_view_can_go_while_it_waits),
  };
  char *home = sy_test_home ();
  int failed = cmocka_run_group_tests (tests, NULL, NULL);

  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
