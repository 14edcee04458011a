/* SPDX-License-Identifier: MIT */
/* A die change for the eye, of the two of the demo. */
#include "sy-test.h"

#include <math.h>

#include "sy-change-plan.h"
#include "sy-desk.h"

static SyAssessment *
assess_demo (SyDesk *desk, const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("SY_SOURCE_DIR"), "data", "demo", "changeovers", name, NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree char *text = NULL;
  gsize length;

  assert_true (g_file_get_contents (path, &text, &length, NULL));
  return sy_desk_assess (desk, text, length, SY_JUDGE_RECORD, problems);
}

static void
each_step_has_its_bar_and_its_words (void **state G_GNUC_UNUSED)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyAssessment) assessment = assess_demo (desk, "flange-die-by-hand.1.json");
  g_autoptr (SyChangePlan) plan = sy_change_plan_new (&assessment->facts, assessment->findings, NULL);
  const SyLaneBar *carry = &plan->lanes.bars[4];

  assert_int_equal (plan->n_steps, 11);
  assert_int_equal (plan->lanes.n_bars, 11);
  assert_int_equal (plan->lanes.n_lanes, 2);
  assert_close (plan->lanes.stands_to - plan->lanes.stands_from, 39, 0, 1e-9);
  /* a strict one of the second person, which could be done while the machine runs */
  assert_int_equal (carry->lanes, 2);
  assert_true (carry->heavy && carry->can_run && carry->stopped && carry->has_shape);
  assert_int_equal (carry->shape, SY_SHAPE_HOOK);
  assert_string_equal (plan->steps[4].words,
                       "Step 5 of 11: Carry the old halves to the rack; machine stopped, minute 14 to 20, 6 min; Dessa Hollin; "
                       "Mechanical handling required.");
  /* nothing is moved and nothing is missing; a check is missing */
  assert_false (plan->lanes.bars[0].has_shape);
  assert_int_equal (plan->steps[0].missing->len, 0);
  assert_int_equal (plan->steps[0].checks->len, 3);
  assert_int_equal (plan->steps[1].verdict, SY_VERDICT_INCOMPLETE);
  assert_int_equal (plan->steps[1].missing->len, 1);
  assert_non_null (strstr (plan->sentence, "the machine stands 39 min"));
}

/* No lift by hand: there is no index at all, and nothing that asks for one falls over it. */
static void
a_change_without_a_lift_by_hand_has_no_index (void **state G_GNUC_UNUSED)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyAssessment) assessment = assess_demo (desk, "flange-die-with-cart-and-jib.1.json");
  g_autoptr (GPtrArray) people = sy_change_plan_people (&assessment->facts, assessment->findings, NULL);

  assert_null (assessment->findings->sink.index_symbol);
  assert_null (sy_findings_quantity (assessment->findings, assessment->findings->sink.index_symbol));
  assert_int_equal (people->len, 2);
  for (guint i = 0; i < people->len; i++)
    assert_non_null (strstr (((SyPlanFigure *) g_ptr_array_index (people, i))->value, "no lift by hand"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (each_step_has_its_bar_and_its_words),
    cmocka_unit_test (a_change_without_a_lift_by_hand_has_no_index),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
