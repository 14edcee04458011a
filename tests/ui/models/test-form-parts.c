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
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
