/* SPDX-License-Identifier: MIT */
/* Facts inside facts: how the load of a step is moved, typed in a form of its own. */
#include "sy-test.h"

#include "sy-form.h"

#define LIFT "steps[0].facts"

static SyForm *
new_change (SyDesk *desk)
{
  SyForm *form = sy_form_new (desk, "changeover", SY_UNITS_METRIC);

  sy_form_set (form, "people[0]", "A");
  sy_form_list_add (form, "steps");
  sy_form_set (form, "steps[0].label", "Lift it out");
  sy_form_set (form, "steps[0].kind", "lift");
  sy_form_set (form, "steps[0].when", "stopped");
  sy_form_set (form, "steps[0].minutes", "3");
  return form;
}

static void
put_lift (SyForm *form)
{
  static const char *const facts[][2] = {
    { "load.typical", "12" }, { "load.heaviest", "12" }, { "origin.H", "40" },    { "origin.V", "75" },
    { "origin.A", "0" },      { "destination.H", "40" }, { "destination.V", "100" }, { "destination.A", "0" },
    { "frequency", "0.2" },   { "duration", "short" },   { "coupling", "good" },  { "conditions", "-" },
  };
  g_autoptr (SyForm) part = NULL;

  sy_form_begin_part (form, LIFT, "lift");
  part = sy_form_new_part (form, LIFT, NULL);
  assert_non_null (part);
  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    sy_form_set (part, facts[i][0], facts[i][1]);
  sy_form_set_part (form, LIFT, part);
}

static SyDesk *
new_desk (void)
{
  SyDesk *desk = sy_desk_new (NULL, 0, NULL);

  assert_non_null (desk);
  return desk;
}

static void
a_step_takes_the_facts_of_its_lift (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);
  g_autoptr (SyForm) again = NULL;
  SyAssessment *assessment;

  (void) state;
  assert_true (sy_form_is_part (form, LIFT));
  assert_false (sy_form_is_part (form, "steps[0].label"));
  assert_null (sy_form_get_part_method (form, LIFT));
  put_lift (form);
  assert_string_equal (sy_form_get_part_method (form, LIFT)->id, "lift");
  assessment = sy_form_get_assessment (form);
  assert_non_null (assessment);
  assert_int_equal (assessment->findings->n_parts, 1);
  assert_string_equal (assessment->findings->parts[0].method->id, "lift");
  again = sy_form_new_part (form, LIFT, NULL);
  assert_non_null (again);
  assert_string_equal (sy_form_get (again, "origin.H"), "40");
  assert_false (sy_form_is_dirty (again));
}

static void
what_is_missing_inside_is_told_at_the_part (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);
  g_autoptr (SyForm) part = NULL;

  (void) state;
  put_lift (form);
  part = sy_form_new_part (form, LIFT, NULL);
  sy_form_set (part, "coupling", "");
  sy_form_set_part (form, LIFT, part);
  assert_null (sy_form_get_assessment (form));
  assert_true (sy_form_is_missing (form, LIFT));
  /* in the words of its own form */
  assert_non_null (strstr (sy_form_get_problem (form, LIFT), "is not given yet"));
  assert_null (strstr (sy_form_get_problem (form, LIFT), "steps["));
  sy_form_set (part, "coupling", "good");
  sy_form_set (part, "origin.H", "-4");
  sy_form_set_part (form, LIFT, part);
  assert_false (sy_form_is_missing (form, LIFT));
  assert_non_null (strstr (sy_form_get_problem (form, LIFT), "-4"));
}

static void
a_part_is_undone_with_the_whole (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);

  (void) state;
  put_lift (form);
  sy_form_remove_part (form, LIFT);
  assert_null (sy_form_get_part_method (form, LIFT));
  sy_form_undo (form);
  assert_string_equal (sy_form_get_part_method (form, LIFT)->id, "lift");
  assert_non_null (sy_form_get_assessment (form));
}

static void
measures_inside_keep_their_meaning_in_other_units (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);
  g_autoptr (SyForm) part = NULL;

  (void) state;
  put_lift (form);
  sy_form_set_units (form, SY_UNITS_US);
  part = sy_form_new_part (form, LIFT, NULL);
  assert_non_null (part);
  assert_int_equal (sy_form_get_units (part), SY_UNITS_US);
  assert_string_equal (sy_form_get (part, "origin.H"), "40 cm");
  assert_non_null (sy_form_get_assessment (form));
}

static void
a_document_with_parts_comes_back_as_typed (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);
  g_autoptr (SyForm) other = sy_form_new (desk, "changeover", SY_UNITS_METRIC);
  g_autofree char *document = NULL, *back = NULL;

  (void) state;
  put_lift (form);
  document = sy_form_document (form);
  assert_true (sy_form_load_document (other, document, NULL));
  back = sy_form_document (other);
  assert_string_equal (back, document);
  /* and moves with its step */
  sy_form_list_add (other, "steps");
  sy_form_list_move (other, "steps", 0, 1);
  assert_null (sy_form_get_part_method (other, LIFT));
  assert_string_equal (sy_form_get_part_method (other, "steps[1].facts")->id, "lift");
}

static void
what_is_no_document_is_refused (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_null (sy_form_new_part (form, LIFT, &error));
  assert_non_null (error);
  g_clear_error (&error);
  sy_form_set (form, LIFT, "nonsense");
  assert_null (sy_form_new_part (form, LIFT, &error));
  assert_non_null (error);
  assert_non_null (sy_form_get_problem (form, LIFT));
}

/* A task of the record in US units, with what is said of it as a whole. */
static char *
new_task_document (SyDesk *desk)
{
  static const char *const facts[][2] = {
    { "load.heaviest", "26" },      { "load.typical", "26 lb" },      { "origin.H", "16" },
    { "place", "Bay 4" },           { "avoid.possible", "no" },       { "avoid.why", "It has to be moved." },
    { "measured_by", "Ann Other" }, { "frequency", "1" },
  };
  g_autoptr (SyForm) task = sy_form_new (desk, "lift", SY_UNITS_US);

  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    sy_form_set (task, facts[i][0], facts[i][1]);
  return sy_form_document (task);
}

static void
facts_of_a_task_are_taken_in_the_units_of_the_whole (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);
  g_autofree char *task = new_task_document (desk);
  g_autoptr (SyForm) part = NULL;
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_true (sy_form_take_part (form, LIFT, task, &error));
  assert_null (error);
  part = sy_form_new_part (form, LIFT, NULL);
  assert_int_equal (sy_form_get_units (part), SY_UNITS_METRIC);
  assert_string_equal (sy_form_get (part, "load.heaviest"), "26 lb");
  assert_string_equal (sy_form_get (part, "origin.H"), "16 in");
  assert_string_equal (sy_form_get (part, "frequency"), "1");
  assert_string_equal (sy_form_get (part, "measured_by"), "Ann Other");
  assert_string_equal (sy_form_get (part, "place"), "");
  assert_string_equal (sy_form_get (part, "avoid.why"), "");
  sy_form_undo (form);
  assert_null (sy_form_get_part_method (form, LIFT));
}

static void
what_may_not_stand_there_is_not_taken (void **state)
{
  static const char *const refused[] = { "{\"method\":\"die-mass\",\"units\":\"metric\"}",
                                         "{\"method\":\"changeover\",\"units\":\"metric\"}",
                                         "{\"method\":\"nothing\",\"units\":\"metric\"}", "nonsense", "" };
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);

  (void) state;
  sy_form_mark_clean (form);
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_false (sy_form_take_part (form, LIFT, refused[i], &error));
      assert_non_null (error);
    }
  assert_false (sy_form_is_dirty (form));
}

static void
facts_are_copied_from_another_step (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) form = new_change (desk);

  (void) state;
  put_lift (form);
  sy_form_list_add (form, "steps");
  sy_form_copy_part (form, "steps[1].facts", LIFT);
  assert_string_equal (sy_form_get (form, "steps[1].facts"), sy_form_get (form, LIFT));
  sy_form_undo (form);
  assert_string_equal (sy_form_get (form, "steps[1].facts"), "");
}

/* A case holds a die change, which holds a lift. */
static void
parts_hold_parts (void **state)
{
  g_autoptr (SyDesk) desk = new_desk ();
  g_autoptr (SyForm) whole = sy_form_new (desk, "case", SY_UNITS_METRIC);
  g_autoptr (SyForm) change = NULL, lift = NULL, again = NULL;

  (void) state;
  assert_true (sy_form_may_be_part (whole, sy_method_find ("changeover")));
  sy_form_begin_part (whole, "as_is.facts", "changeover");
  change = sy_form_new_part (whole, "as_is.facts", NULL);
  sy_form_set (change, "people[0]", "A");
  sy_form_set (change, "steps[0].label", "Lift it out");
  sy_form_begin_part (change, LIFT, "lift");
  lift = sy_form_new_part (change, LIFT, NULL);
  sy_form_set (lift, "origin.H", "41");
  sy_form_set_part (change, LIFT, lift);
  sy_form_set_part (whole, "as_is.facts", change);
  sy_form_set_units (whole, SY_UNITS_US);
  again = sy_form_new_part (whole, "as_is.facts", NULL);
  g_clear_object (&lift);
  lift = sy_form_new_part (again, LIFT, NULL);
  assert_non_null (lift);
  assert_int_equal (sy_form_get_units (lift), SY_UNITS_US);
  assert_string_equal (sy_form_get (lift, "origin.H"), "41 cm");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_step_takes_the_facts_of_its_lift),
    cmocka_unit_test (what_is_missing_inside_is_told_at_the_part),
    cmocka_unit_test (a_part_is_undone_with_the_whole),
    cmocka_unit_test (measures_inside_keep_their_meaning_in_other_units),
    cmocka_unit_test (a_document_with_parts_comes_back_as_typed),
    cmocka_unit_test (what_is_no_document_is_refused),
    cmocka_unit_test (facts_of_a_task_are_taken_in_the_units_of_the_whole),
    cmocka_unit_test (what_may_not_stand_there_is_not_taken),
    cmocka_unit_test (facts_are_copied_from_another_step),
    cmocka_unit_test (parts_hold_parts),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
