/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-task-order.h"

static SyTaskRow *
new_row (const char *name, double index, SyVerdict verdict)
{
  g_autoptr (SyTask) task = sy_task_new ();

  sy_event_set (&task->id, name);
  sy_event_set (&task->name, name);
  sy_event_set (&task->when, "2026-01-01T00:00:00Z");
  sy_event_set (&task->search_text, name);
  task->index = task->rank = task->mass_kg = index;
  task->verdict = verdict;
  return sy_task_row_new (task);
}

static int
sign (int order)
{
  return (order > 0) - (order < 0);
}

static void
unbounded_is_largest_and_none_is_last_both_ways (void **state)
{
  (void) state;
  assert_int_equal (sy_number_order (1, 2, FALSE), -1);
  assert_int_equal (sy_number_order (INFINITY, 1e300, FALSE), 1);
  assert_int_equal (sy_number_order (INFINITY, INFINITY, FALSE), 0);
  assert_int_equal (sy_number_order (NAN, NAN, FALSE), 0);
  /* Ascending as it is; descending turned round by the caller. */
  assert_int_equal (sy_number_order (NAN, INFINITY, FALSE), 1);
  assert_int_equal (-sy_number_order (NAN, INFINITY, TRUE), 1);
  assert_int_equal (-sy_number_order (INFINITY, NAN, TRUE), -1);
  assert_int_equal (-sy_number_order (NAN, -INFINITY, TRUE), 1);
}

static void
the_order_of_numbers_is_one (void **state)
{
  const double values[] = { -INFINITY, -1, 0, 1, INFINITY, NAN };

  (void) state;
  for (gsize a = 0; a < G_N_ELEMENTS (values); a++)
    for (gsize b = 0; b < G_N_ELEMENTS (values); b++)
      for (int descending = 0; descending < 2; descending++)
        {
          assert_int_equal (sy_number_order (values[a], values[b], descending),
                            -sy_number_order (values[b], values[a], descending));
          for (gsize c = 0; c < G_N_ELEMENTS (values); c++)
            if (sy_number_order (values[a], values[b], descending) < 0
                && sy_number_order (values[b], values[c], descending) < 0)
              assert_true (sy_number_order (values[a], values[c], descending) < 0);
        }
}

static void
names_stand_as_people_count (void **state)
{
  const char *const names[] = { "Blank 2", "blank 9", "Blank 10", "blank 11 b", "Coil 1" };

  (void) state;
  for (gsize i = 0; i + 1 < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (SyTaskRow) a = new_row (names[i], 1, SY_VERDICT_BY_HAND);
      g_autoptr (SyTaskRow) b = new_row (names[i + 1], 1, SY_VERDICT_BY_HAND);

      assert_int_equal (sign (sy_task_order (a, b, SY_BY_NAME, FALSE)), -1);
      assert_int_equal (sign (sy_task_order (b, a, SY_BY_NAME, FALSE)), 1);
    }
}

static void
times_are_compared_as_moments (void **state)
{
  g_autoptr (SyTask) early = sy_task_new ();
  g_autoptr (SyTask) late = sy_task_new ();
  g_autoptr (SyTaskRow) a = NULL;
  g_autoptr (SyTaskRow) b = NULL;

  (void) state;
  /* 09:30 at two hours east is before 08:00 in London, though not as text. */
  sy_event_set (&early->when, "2026-03-01T09:30:00+02:00");
  sy_event_set (&late->when, "2026-03-01T08:00:00Z");
  a = sy_task_row_new (early);
  b = sy_task_row_new (late);
  assert_int_equal (sign (sy_task_order (a, b, SY_BY_WHEN, FALSE)), -1);
}

static void
equal_rows_stand_strictest_first (void **state)
{
  g_autoptr (SyTaskRow) mechanical = new_row ("b", NAN, SY_VERDICT_MECHANICAL);
  g_autoptr (SyTaskRow) improve = new_row ("a", NAN, SY_VERDICT_IMPROVE);
  g_autoptr (SyTaskRow) larger = new_row ("z", 2.5, SY_VERDICT_IMPROVE);
  g_autoptr (SyTaskRow) smaller = new_row ("c", 1.5, SY_VERDICT_IMPROVE);
  g_autoptr (SyTaskRow) same = new_row ("d", 1.5, SY_VERDICT_IMPROVE);

  (void) state;
  assert_int_equal (sign (sy_task_order_rest (mechanical, improve)), -1);
  assert_int_equal (sign (sy_task_order_rest (larger, smaller)), -1);
  assert_int_equal (sign (sy_task_order_rest (smaller, improve)), -1);
  assert_int_equal (sign (sy_task_order_rest (smaller, same)), -1);
  assert_int_equal (sy_task_order_rest (same, same), 0);
}

static void
places_without_a_name_come_last (void **state)
{
  g_autoptr (SyTask) here = sy_task_new ();
  g_autoptr (SyTask) nowhere = sy_task_new ();
  g_autoptr (SyTaskRow) a = NULL;
  g_autoptr (SyTaskRow) b = NULL;

  (void) state;
  sy_event_set (&here->place, "press hall");
  a = sy_task_row_new (here);
  b = sy_task_row_new (nowhere);
  assert_int_equal (sign (sy_task_order (a, b, SY_BY_PLACE, FALSE)), -1);
  assert_int_equal (sign (-sy_task_order (a, b, SY_BY_PLACE, TRUE)), -1);
}

static void
a_verdict_chooses (void **state)
{
  g_autoptr (SyTaskRow) row = new_row ("ring", 1, SY_VERDICT_IMPROVE);
  SyTaskChoice choice = { .by_verdict = TRUE, .verdict = SY_VERDICT_IMPROVE };

  (void) state;
  assert_true (sy_task_chosen (row, &choice));
  choice.verdict = SY_VERDICT_BY_HAND;
  assert_false (sy_task_chosen (row, &choice));
}

static SyTaskRow *
new_gear (const char *name, const char *until, double today)
{
  g_autoptr (SyTask) task = sy_task_new ();
  SyTaskRow *row;

  sy_event_set (&task->id, name);
  sy_event_set (&task->name, name);
  sy_event_set (&task->item_kind, SY_ITEM_GEAR);
  sy_event_set (&task->valid_until, until);
  sy_event_set (&task->detail.gear_kind, "hoist");
  sy_event_set (&task->detail.machine, "Press 4, Press 10");
  task->verdict = SY_VERDICT_WITHIN_CAPACITY;
  row = sy_task_row_new (task);
  sy_task_row_set_today (row, today);
  return row;
}

static void
what_is_longest_overdue_stands_first_and_what_has_no_date_last (void **state)
{
  g_autoptr (SyTaskRow) past = new_gear ("past", "1970-01-05", 9);
  g_autoptr (SyTaskRow) today = new_gear ("today", "1970-01-10", 9);
  g_autoptr (SyTaskRow) never = new_gear ("never", "", 9);

  (void) state;
  assert_close (sy_task_row_get_days_left (past), -5, 0, 0);
  assert_true (sy_task_row_is_expired (past));
  assert_close (sy_task_row_get_days_left (today), 0, 0, 0);
  assert_false (sy_task_row_is_expired (today));
  assert_false (sy_task_row_is_expired (never));
  assert_int_equal (sign (sy_task_order (past, today, SY_BY_DUE, FALSE)), -1);
  assert_int_equal (sign (sy_task_order (today, never, SY_BY_DUE, FALSE)), -1);
  assert_int_equal (sign (-sy_task_order (today, never, SY_BY_DUE, TRUE)), -1);
  /* A verdict that no longer holds stands with those for which facts are missing. */
  assert_int_equal (sign (sy_task_order (today, past, SY_BY_VERDICT, FALSE)), -1);
  assert_int_equal (sy_task_row_get_verdict (past), SY_VERDICT_INCOMPLETE);
  assert_int_equal (sy_task_row_get_verdict (today), SY_VERDICT_WITHIN_CAPACITY);
}

static void
a_new_day_changes_only_what_has_a_date (void **state)
{
  g_autoptr (SyTaskRow) due = new_gear ("due", "1970-01-05", 3);
  g_autoptr (SyTaskRow) never = new_gear ("never", "", 3);

  (void) state;
  assert_false (sy_task_row_set_today (due, 3));
  assert_true (sy_task_row_set_today (due, 4));
  assert_false (sy_task_row_set_today (never, 4));
}

static void
kind_machine_and_due_date_choose (void **state)
{
  g_autoptr (SyTaskRow) row = new_gear ("hoist", "1970-02-10", 10); /* 30 days left */
  const struct
  {
    SyTaskChoice choice;
    gboolean chosen;
  } cases[] = {
    { { .item_kind = SY_ITEM_GEAR }, TRUE },     { { .item_kind = SY_ITEM_DIE }, FALSE },
    { { .machine = (char *) "Press 4" }, TRUE }, { { .machine = (char *) "Press 10" }, TRUE },
    { { .machine = (char *) "Press 1" }, FALSE }, { { .machine = (char *) "10" }, FALSE },
    { { .gear_kind = (char *) "hoist" }, TRUE }, { { .gear_kind = (char *) "hoist-ring" }, FALSE },
    { { .due = SY_DUE_ANY }, TRUE },             { { .due = SY_DUE_VERDICT }, TRUE },
    { { .due = SY_DUE_REVIEW }, FALSE },         { { .due = SY_DUE_ACTION }, FALSE },
    { { .open = TRUE }, FALSE },                 { { .not_signed = TRUE }, TRUE },
  };
  const SyTaskChoice due = { .due = SY_DUE_ANY };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    if (sy_task_chosen (row, &cases[i].choice) != cases[i].chosen)
      fail_msg ("case %zu: expected %d", i, cases[i].chosen);
  sy_task_row_set_today (row, 9);
  assert_false (sy_task_chosen (row, &due));
}

static void
what_is_done_about_an_item_chooses (void **state)
{
  g_autoptr (SyTask) task = sy_task_new ();
  g_autoptr (SyTaskRow) row = NULL;
  const SyTaskChoice all = { .item_kind = NULL }, retired = { .retired = TRUE }, open = { .retired = TRUE, .open = TRUE },
                     review = { .retired = TRUE, .due = SY_DUE_REVIEW }, action = { .retired = TRUE, .due = SY_DUE_ACTION },
                     not_signed = { .retired = TRUE, .not_signed = TRUE };

  (void) state;
  task->revision = task->signed_revision = 3;
  task->retired = TRUE;
  task->n_open = 1;
  sy_event_set (&task->review_due, "1970-03-01"); /* day 59 */
  sy_event_set (&task->action_due, "1970-01-05"); /* day 4  */
  row = sy_task_row_new (task);
  sy_task_row_set_today (row, 28);
  assert_false (sy_task_chosen (row, &all));
  assert_true (sy_task_chosen (row, &retired));
  assert_true (sy_task_chosen (row, &open));
  assert_false (sy_task_chosen (row, &review)); /* 31 days left */
  assert_true (sy_task_chosen (row, &action));
  assert_false (sy_task_chosen (row, &not_signed));
  sy_task_row_set_today (row, 29);
  assert_true (sy_task_chosen (row, &review));
  /* A later revision is nobody's yet. */
  task->revision = 4;
  assert_true (sy_task_row_update (row, task));
  assert_true (sy_task_chosen (row, &not_signed));
}

/* Values of which several are the same, some none, some unbounded. */
static GPtrArray *
new_many (guint n, guint seed)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  GPtrArray *rows = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SyTask) task = sy_task_new ();
      g_autofree char *id = g_strdup_printf ("id-%u", i);
      g_autofree char *name = g_strdup_printf ("Blank %d", g_rand_int_range (random, 0, 60));
      g_autofree char *place = g_strdup_printf ("%s %d", i % 2 ? "bay" : "Bay", g_rand_int_range (random, 0, 12));
      g_autofree char *day = g_strdup_printf ("1970-01-%02d", g_rand_int_range (random, 1, 28));
      SyTaskRow *row;

      sy_event_set (&task->id, id);
      sy_event_set (&task->name, name);
      sy_event_set (&task->place, i % 7 == 0 ? "" : place);
      sy_event_set (&task->when, i % 11 == 0 ? "no time" : "2026-01-01T00:00:00Z");
      sy_event_set (&task->valid_until, i % 3 == 0 ? "" : day);
      sy_event_set (&task->review_due, i % 5 == 0 ? day : "");
      sy_event_set (&task->detail.condition, i % 4 == 0 ? "" : i % 4 == 1 ? "worn" : "good");
      task->index = i % 13 == 0 ? NAN : i % 17 == 0 ? INFINITY : g_rand_int_range (random, -3, 6) / 2.0;
      task->rank = task->index * g_rand_int_range (random, 1, 4);
      task->detail.cg_mm[0] = i % 6 == 0 ? NAN : i % 2 ? 0.0 : -0.0;
      task->detail.cg_mm[1] = g_rand_int_range (random, -2, 3);
      task->detail.cg_mm[2] = g_rand_int_range (random, -2, 3);
      task->verdict = (SyVerdict) g_rand_int_range (random, 0, SY_N_VERDICTS);
      row = sy_task_row_new (task);
      sy_task_row_set_today (row, 14);
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static int
compare_names (gconstpointer a, gconstpointer b, gpointer rows)
{
  return sy_task_order_name (((GPtrArray *) rows)->pdata[*(const guint32 *) a], ((GPtrArray *) rows)->pdata[*(const guint32 *) b]);
}

static void
many_are_sorted_as_two_are_compared (void **state)
{
  enum { N = 700 };
  g_autoptr (GPtrArray) rows = new_many (N, 11);
  guint32 by_name[N], places[N];

  (void) state;
  for (guint32 i = 0; i < N; i++)
    by_name[i] = i;
  g_qsort_with_data (by_name, N, sizeof *by_name, compare_names, rows);
  for (int column = 0; column < SY_N_TASK_COLUMNS; column++)
    for (int turned = 0; turned < 4; turned++)
      {
        const SyTaskKey keys[] = { { (SyTaskColumn) column, turned & 1 }, { SY_BY_PLACE, turned >> 1 } };

        memcpy (places, by_name, sizeof places);
        sy_task_sort_rest (rows, places, N);
        sy_task_sort (rows, places, N, by_name, keys, G_N_ELEMENTS (keys));
        for (guint i = 0; i + 1 < N; i++)
          if (sy_task_order_by (rows->pdata[places[i]], rows->pdata[places[i + 1]], keys, G_N_ELEMENTS (keys)) >= 0)
            fail_msg ("column %d, turned %d: place %u", column, turned, i);
      }
}

static void
machines_are_named_once_in_the_order_of_people (void **state)
{
  g_autoptr (GListStore) rows = g_list_store_new (SY_TYPE_TASK_ROW);
  g_autoptr (SyTaskRow) one = new_gear ("one", "", 0);
  g_autoptr (SyTaskRow) other = new_gear ("other", "", 0);
  g_auto (GStrv) machines = NULL;
  g_auto (GStrv) none = NULL;

  (void) state;
  g_list_store_append (rows, one);
  g_list_store_append (rows, other);
  machines = sy_task_machines (G_LIST_MODEL (rows), SY_ITEM_GEAR);
  none = sy_task_machines (G_LIST_MODEL (rows), SY_ITEM_DIE);
  assert_int_equal (g_strv_length (machines), 2);
  assert_string_equal (machines[0], "Press 4");
  assert_int_equal (g_strv_length (none), 0);
}

/* What a case shows comes from its findings as stored; what is not there is not known, and comes last. */
static void
figures_are_read_from_findings (void **state)
{
  static const char findings[]
    = "{\"governing\":\"option.Cart, 2.npv\",\"quantities\":{\"winner\":{\"value\":2,\"unit\":\"1\"},"
      "\"option.Cart, 2.payback\":{\"value\":null,\"unit\":\"1\",\"state\":\"unbounded\"},"
      "\"option.Cart, 2.npv\":{\"value\":-120.5,\"unit\":\"1\"},\"stopped.elapsed\":{\"value\":29,\"unit\":\"min\"}}}";
  g_autoptr (SyEvent) event = sy_event_new (SY_EVENT_REVISION);
  g_autoptr (SyItemFigures) none = NULL;
  g_autoptr (SyTask) task = sy_task_new ();
  g_autoptr (SyTaskRow) with = NULL;
  g_autoptr (SyTaskRow) without = NULL;
  const SyItemFigures *figures;

  (void) state;
  sy_event_set (&event->item_kind, SY_ITEM_CASE);
  sy_event_set (&event->facts, "{\"currency\":\"EUR\"}");
  sy_event_set (&event->findings, "no document");
  none = sy_item_figures_read (event);
  assert_string_equal (none->winner, "");
  assert_true (isnan (none->payback_years) && isnan (none->npv) && isnan (none->stands_minutes));

  sy_event_set (&event->findings, findings);
  event->revision = 3;
  task->revision = 3;
  with = sy_task_row_new (task);
  without = sy_task_row_new (task);
  assert_null (sy_task_row_get_figures (with));
  sy_task_row_take_figures (with, sy_item_figures_read (event));
  figures = sy_task_row_get_figures (with);
  assert_string_equal (figures->winner, "Cart, 2");
  assert_string_equal (figures->currency, "EUR");
  assert_true (isinf (figures->payback_years));
  assert_true (fabs (figures->npv + 120.5) < 1e-9);
  assert_true (fabs (figures->stands_minutes - 29) < 1e-9);
  for (int descending = 0; descending < 2; descending++)
    {
      int sign = descending ? -1 : 1;

      assert_true (sign * sy_task_order (with, without, SY_BY_NPV, descending) < 0);
      assert_true (sign * sy_task_order (with, without, SY_BY_WINNER, descending) < 0);
    }
  /* Those of an earlier revision are not shown for a later one. */
  task->revision = 4;
  sy_task_row_update (with, task);
  assert_null (sy_task_row_get_figures (with));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (unbounded_is_largest_and_none_is_last_both_ways),
    cmocka_unit_test (the_order_of_numbers_is_one),
    cmocka_unit_test (names_stand_as_people_count),
    cmocka_unit_test (times_are_compared_as_moments),
    cmocka_unit_test (equal_rows_stand_strictest_first),
    cmocka_unit_test (places_without_a_name_come_last),
    cmocka_unit_test (a_verdict_chooses),
    cmocka_unit_test (what_is_longest_overdue_stands_first_and_what_has_no_date_last),
    cmocka_unit_test (a_new_day_changes_only_what_has_a_date),
    cmocka_unit_test (kind_machine_and_due_date_choose),
    cmocka_unit_test (what_is_done_about_an_item_chooses),
    cmocka_unit_test (many_are_sorted_as_two_are_compared),
    cmocka_unit_test (figures_are_read_from_findings),
    cmocka_unit_test (machines_are_named_once_in_the_order_of_people),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
