/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-trial.h"

static const char task[]
  = "{\"method\":\"lift\",\"units\":\"metric\",\"avoid\":{\"possible\":\"no\"},\"load\":{\"typical\":9,\"heaviest\":11},"
    "\"origin\":{\"H\":48,\"V\":30,\"A\":30},\"destination\":{\"H\":40,\"V\":110,\"A\":0},\"frequency\":2,"
    "\"duration\":\"moderate\",\"coupling\":\"fair\",\"conditions\":[],\"assigned\":\"mixed-adults\"}";

static SyForm *
new_form (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  SyForm *form = sy_form_new (desk, "lift", SY_UNITS_METRIC);

  assert_true (sy_form_load_document (form, task, NULL));
  assert_non_null (sy_form_get_assessment (form));
  return form;
}

static double
index_of (SyForm *form)
{
  return sy_findings_quantity (sy_form_get_assessment (form)->findings, "LI")->value;
}

/* Every remedy does at least what it says, with numbers that a person would write, and the form stays as it is. */
static void
each_remedy_keeps_its_promise_on_a_copy (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autofree char *before = sy_form_document (form);
  const SyFindings *findings = sy_form_get_assessment (form)->findings;

  (void) state;
  assert_true (findings->n_remedies > 3);
  for (int i = 0; i < findings->n_remedies; i++)
    {
      const SyRemedy *remedy = &findings->remedies[i];
      g_autoptr (SyTrial) trial = sy_trial_new (form, remedy);
      g_autofree char *after = sy_form_document (form);

      assert_string_equal (after, before);
      assert_true (trial->paths->len >= 1);
      assert_non_null (sy_form_get_assessment (trial->form));
      assert_true (sy_verdict_rank (sy_form_get_assessment (trial->form)->findings->verdict)
                   <= sy_verdict_rank (remedy->verdict));
      if (remedy->reaches)
        assert_true (index_of (trial->form) <= 1 + 1e-9);
      for (guint k = 0; k < trial->texts->len; k++)
        assert_true (strlen (g_ptr_array_index (trial->texts, k)) <= 8);
    }
}

static void
using_it_is_one_step_of_undo (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autofree char *before = sy_form_document (form);
  const SyFindings *findings = sy_form_get_assessment (form)->findings;
  g_autoptr (SyTrial) trial = sy_trial_new (form, &findings->remedies[0]);
  double promised = index_of (trial->form);
  g_autofree char *undone = NULL;

  (void) state;
  sy_trial_use (trial, form);
  assert_close (index_of (form), promised, 0, 0);
  sy_form_undo (form);
  assert_false (sy_form_can_undo (form));
  undone = sy_form_document (form);
  assert_string_equal (undone, before);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (each_remedy_keeps_its_promise_on_a_copy),
    cmocka_unit_test (using_it_is_one_step_of_undo),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
