/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-lookup.h"
#include "sy-take.h"
#include "sy-test-facts.h"

static SyForm *
new_plan (SyUnits units)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_form_new (desk, "rigged-lift", units);
}

static SyRegisterItem *
new_item (const char *name, const char *kind, char *facts)
{
  g_autofree char *taken = facts;

  return sy_register_item_new (name, name, kind, taken);
}

static void
assert_text (SyForm *form, const char *path, const char *text)
{
  if (strcmp (sy_form_get (form, path), text) != 0)
    fail_msg ("%s: \"%s\", expected \"%s\"", path, sy_form_get (form, path), text);
}

static void
a_die_brings_mass_centre_points_and_ties_in_one_step (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_METRIC);
  g_autoptr (SyRegisterItem) die = new_item ("Tray die", SY_ITEM_DIE, sy_test_die (300, "Press 3"));

  (void) state;
  sy_form_set (plan, "points[0].label", "old");
  sy_form_set (plan, "points[5].label", "older");
  assert_true (sy_take_die (plan, die, NULL));
  assert_text (plan, "die", "Tray die");
  assert_text (plan, "mass", "300");
  assert_text (plan, "mass_basis", "weighed");
  assert_text (plan, "cg[0]", "0");
  assert_text (plan, "cg[2]", "50");
  assert_int_equal (sy_form_list_count (plan, "points"), 4);
  assert_text (plan, "points[0].label", "A");
  assert_text (plan, "points[3].at[0]", "-180");
  assert_text (plan, "points[5].label", "");
  assert_text (plan, "halves[1]", "lower");
  assert_text (plan, "ties[0]", "two straps");
  sy_form_undo (plan);
  assert_text (plan, "die", "");
  assert_text (plan, "points[5].label", "older");
  assert_int_equal (sy_form_list_count (plan, "points"), 6);
}

static void
a_die_that_is_not_weighed_is_taken_as_worked_out_and_never_lighter (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_METRIC);
  /* 100 × 50 × 20 mm of steel. */
  g_autoptr (SyRegisterItem) die = new_item (
    "block", SY_ITEM_DIE,
    g_strdup ("{\"method\":\"die-mass\",\"units\":\"metric\",\"bodies\":[{\"label\":\"b\",\"shape\":\"block\","
              "\"size\":[100,50,20],\"at\":[0,0,10],\"material\":\"steel\"}],\"allowance_percent\":7}"));
  double mass;

  (void) state;
  assert_true (sy_take_die (plan, die, NULL));
  assert_text (plan, "mass_basis", "drawing");
  assert_text (plan, "allowance_percent", "7");
  mass = g_ascii_strtod (sy_form_get (plan, "mass"), NULL);
  /* Steel is 7850 kg/m3 or a little over: 0.785 kg, said as 0.8. */
  assert_close (mass, 0.8, 1e-12, 0);
}

static void
other_units_are_written_behind_the_numbers (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_US);
  g_autoptr (SyRegisterItem) die = new_item ("Tray die", SY_ITEM_DIE, sy_test_die (300, "Press 3"));
  g_autoptr (SyRegisterItem) hoist
    = new_item ("H", SY_ITEM_GEAR, sy_test_gear ("hoist", "1000", "2027-03-01", "\"Press 3\""));
  g_autoptr (GPtrArray) places = sy_take_places (plan, "hoist");

  (void) state;
  assert_true (sy_take_die (plan, die, NULL));
  assert_text (plan, "mass", "300 kg");
  assert_text (plan, "points[0].at[0]", "-180 mm");
  assert_text (plan, "cg[2]", "1.97"); /* 50 mm */
  assert_int_equal (places->len, 1);
  assert_true (sy_take_gear (plan, hoist, places->pdata[0], NULL));
  assert_text (plan, "suspension[0].wll", "1000 kg");
}

static void
gear_replaces_what_stands_in_its_place_and_nothing_else (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_METRIC);
  g_autoptr (SyRegisterItem) shackle
    = new_item ("S", SY_ITEM_GEAR, sy_test_gear ("shackle", "2 t", "2027-03-01", ""));
  g_autoptr (GPtrArray) places = NULL;
  g_autoptr (GPtrArray) none = NULL;
  const SyTakePlace *first, *last;

  (void) state;
  sy_form_set (plan, "legs[0].point[0]", "A");
  sy_form_set (plan, "legs[0].elements[0].label", "S-9");
  sy_form_set (plan, "legs[0].elements[0].kind", "shackle");
  sy_form_set (plan, "legs[0].elements[0].side_angle", "10");
  sy_form_set (plan, "legs[0].elements[0].grade", "8");
  sy_form_set (plan, "legs[0].elements[1].label", "K");
  sy_form_set (plan, "legs[0].elements[1].kind", "sling");
  sy_form_set (plan, "legs[1].point[0]", "B");
  places = sy_take_places (plan, "shackle");
  none = sy_take_places (plan, "cart");
  assert_int_equal (none->len, 0);
  assert_int_equal (places->len, 3);
  first = places->pdata[0];
  last = places->pdata[2];
  assert_string_equal (first->path, "legs[0].elements[0]");
  assert_string_equal (first->element, "S-9");
  assert_string_equal (last->path, "legs[1].elements[0]");
  assert_string_equal (last->leg, "B");

  assert_true (sy_take_gear (plan, shackle, first, NULL));
  assert_text (plan, "legs[0].elements[0].label", "X-1");
  assert_text (plan, "legs[0].elements[0].wll", "2 t");
  assert_text (plan, "legs[0].elements[0].due", "2027-03-01");
  assert_text (plan, "legs[0].elements[0].side_angle", "10");
  assert_text (plan, "legs[0].elements[0].grade", "");
  assert_text (plan, "legs[0].elements[1].label", "K");
  sy_form_undo (plan);
  assert_text (plan, "legs[0].elements[0].label", "S-9");
  assert_text (plan, "legs[0].elements[0].grade", "8");
}

static void
a_sling_of_several_legs_goes_into_every_leg (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_METRIC);
  g_autoptr (SyRegisterItem) sling = new_item (
    "K", SY_ITEM_GEAR,
    g_strdup ("{\"method\":\"gear\",\"units\":\"metric\",\"kind\":\"sling\",\"identity\":\"K-2\",\"wll\":\"2.8 t\","
              "\"rated_as\":\"assembly\",\"legs\":2,\"band\":\"0-45\",\"material\":\"chain\",\"examinations\":[{"
              "\"number\":\"1\",\"examiner\":\"H\",\"result\":\"pass\",\"on\":\"2026-07-06\",\"next\":\"2027-01-06\"}]}"));
  g_autoptr (GPtrArray) places = NULL;

  (void) state;
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *point = g_strdup_printf ("legs[%d].point[0]", i);
      g_autofree char *kind = g_strdup_printf ("legs[%d].elements[0].kind", i);

      sy_form_set (plan, point, i == 0 ? "A" : i == 1 ? "B" : "C");
      sy_form_set (plan, kind, i == 2 ? "shackle" : "sling");
    }
  places = sy_take_places (plan, "sling");
  assert_true (sy_take_gear (plan, sling, places->pdata[0], NULL));
  assert_text (plan, "legs[0].elements[0].label", "K-2");
  assert_text (plan, "legs[1].elements[0].label", "K-2");
  assert_text (plan, "legs[1].material", "chain");
  assert_text (plan, "legs[2].elements[0].label", "");
  /* When it is due stands in its last report. */
  assert_text (plan, "legs[1].elements[0].due", "2027-01-06");
}

static void
two_of_a_mark_in_one_leg_are_told_apart (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_METRIC);
  g_autoptr (SyRegisterItem) shackle
    = new_item ("Sha", SY_ITEM_GEAR, sy_test_gear ("shackle", "2 t", "2027-03-01", ""));

  (void) state;
  sy_form_set (plan, "legs[0].point[0]", "A");
  for (int i = 0; i < 3; i++)
    {
      SyTakePlace *place = sy_take_find_place (plan, "A", "");

      assert_true (sy_take_gear (plan, shackle, place, NULL));
      sy_take_place_free (place);
    }
  assert_text (plan, "legs[0].elements[0].label", "X-1");
  assert_text (plan, "legs[0].elements[1].label", "Sha");
  assert_text (plan, "legs[0].elements[2].label", "#1");
}

static void
places_are_found_by_leg_and_label (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_METRIC);
  SyTakePlace *place;

  (void) state;
  sy_form_set (plan, "legs[0].point[0]", "A");
  sy_form_set (plan, "legs[1].point[0]", "B");
  sy_form_set (plan, "legs[1].elements[0].label", "S");
  place = sy_take_find_place (plan, "B", "S");
  assert_string_equal (place->path, "legs[1].elements[0]");
  sy_take_place_free (place);
  place = sy_take_find_place (plan, "B", "");
  assert_string_equal (place->path, "legs[1].elements[1]");
  sy_take_place_free (place);
  place = sy_take_find_place (plan, "", "");
  assert_string_equal (place->path, "suspension[0]");
  sy_take_place_free (place);
  assert_null (sy_take_find_place (plan, "C", ""));
  assert_null (sy_take_find_place (plan, "A", "S"));
}

static void
what_is_no_die_is_refused (void **state)
{
  g_autoptr (SyForm) plan = new_plan (SY_UNITS_METRIC);
  g_autoptr (SyRegisterItem) gear = new_item ("S", SY_ITEM_GEAR, sy_test_gear ("shackle", "2 t", "2027-03-01", ""));
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_false (sy_take_die (plan, gear, &error));
  assert_non_null (error);
  assert_false (sy_form_can_undo (plan));
}

static void
the_matrix_is_worked_out_from_the_registers (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyWorker) worker = sy_worker_new ("memory:", desk);
  g_autofree char *die = sy_test_die (300, "Press 3");
  g_autofree char *hoist = sy_test_gear ("hoist", "1 t", "2090-01-01", "\"Press 3\"");
  g_autofree char *shackle = sy_test_gear ("shackle", "1 t", "2090-01-01", "");
  g_autoptr (GPtrArray) cells = NULL;
  SyTestAnswer answer = { NULL, NULL };
  const SyMatrixCell *cell;

  (void) state;
  assert_true (sy_test_record (worker, "die", die, NULL, NULL));
  assert_true (sy_test_record (worker, "hoist", hoist, NULL, NULL));
  assert_true (sy_test_record (worker, "shackle", shackle, NULL, NULL));
  sy_lookup_matrix_async (worker, NULL, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, 20000));
  cells = sy_lookup_matrix_finish (answer.result, NULL);
  g_object_unref (answer.result);
  assert_non_null (cells);
  assert_int_equal (cells->len, 1);
  cell = cells->pdata[0];
  assert_string_equal (cell->die_name, "die");
  assert_string_equal (cell->gear_name, "hoist");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_die_brings_mass_centre_points_and_ties_in_one_step),
    cmocka_unit_test (a_die_that_is_not_weighed_is_taken_as_worked_out_and_never_lighter),
    cmocka_unit_test (other_units_are_written_behind_the_numbers),
    cmocka_unit_test (gear_replaces_what_stands_in_its_place_and_nothing_else),
    cmocka_unit_test (a_sling_of_several_legs_goes_into_every_leg),
    cmocka_unit_test (two_of_a_mark_in_one_leg_are_told_apart),
    cmocka_unit_test (places_are_found_by_leg_and_label),
    cmocka_unit_test (what_is_no_die_is_refused),
    cmocka_unit_test (the_matrix_is_worked_out_from_the_registers),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
