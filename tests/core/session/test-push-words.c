/* SPDX-License-Identifier: MIT */
#include "register-help.h"

/* What pushing and sliding come to, in a sentence; the words of reasons and of what would help; one line of working. */

#define DUTY "\"handle_height\":100,\"distance\":2,\"frequency\":0.1,\"conditions\":[]"
#define PUSH(forces) "{\"method\":\"push\",\"units\":\"metric\",\"way\":\"push\"," DUTY "," forces "}"
#define PULL(height, forces) \
  "{\"method\":\"push\",\"units\":\"metric\",\"way\":\"pull\",\"distance\":2,\"frequency\":0.1,\"conditions\":[]," \
  "\"handle_height\":" height "," forces "}"

static void
test_the_result_in_a_sentence (void **state)
{
  static const struct
  {
    const char *facts, *words;
  } cases[] = {
    { PUSH ("\"initial\":100,\"sustained\":60"),
      "100 N to start it, 60 N to keep it moving: 95 % of women and > 99 % of men could. "
      "It comes to 87.4 % of the strictest limit (Keeping it moving: UK guideline)." },
    { PUSH ("\"initial\":900,\"sustained\":600"),
      "900 N to start it, 600 N to keep it moving: < 1 % of women and < 1 % of men could. "
      "It comes to 874 % of the strictest limit (Keeping it moving: UK guideline)." },
    { PULL ("60", "\"initial\":100,\"sustained\":60"),
      "100 N to start it, 60 N to keep it moving: 97 % of women could; for men there is no figure. "
      "It comes to 61.2 % of the strictest limit (Keeping it moving: what people accept)." },
    { PULL ("140", "\"initial\":100,\"sustained\":60,\"who\":\"men\""),
      "100 N to start it, 60 N to keep it moving: > 99 % of men could; for women there is no figure. "
      "It comes to 53.7 % of the strictest limit (Starting it: what people accept)." },
    { PULL ("20", "\"initial\":100,\"sustained\":60"),
      "100 N to start it, 60 N to keep it moving; how many people could is not published. "
      "It comes to 41.7 % of the strictest limit (Starting it: critical force)." },
    { PUSH ("\"initial\":100"), "100 N to start it; the force to keep it moving is not known." },
    { PUSH ("\"sustained\":60"), "60 N to keep it moving; the force to start it is not known." },
    { "{\"method\":\"slide\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"mass\":100}",
      "The force that it takes is not known." },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (cases[i].facts);
      g_autofree char *words = sy_words_result (assessment->findings, NULL);

      assert_string_equal (words, cases[i].words);
    }
}

/* Every reason and caution has words of its own: no name in braces, no bare id, is left. */
static void
test_every_note_has_words (void **state)
{
  static const char *const all[] = {
    PUSH ("\"initial\":900,\"sustained\":600,\"persons\":2,\"percent\":50,\"cart\":{\"gross_mass\":600,\"slope\":2,"
          "\"stop_deceleration\":0.1}"),
    PULL ("20", "\"cart\":{\"gross_mass\":600,\"wheel\":\"hard-rubber\",\"slope\":2,\"brake\":\"none\"}"),
    PUSH ("\"cart\":{\"gross_mass\":600,\"wheel\":\"steel\",\"wheel_diameter\":100,\"slope\":0.01,\"brake\":\"none\"}"),
    PUSH ("\"cart\":{\"gross_mass\":600,\"wheel\":\"steel\",\"wheel_diameter\":100,\"floor\":\"carpet\"}"),
    "{\"method\":\"push\",\"units\":\"us\",\"way\":\"push\",\"handle_height\":40,\"distance\":99,\"frequency\":11,\"initial\":9,"
    "\"conditions\":[\"uneven-floor\",\"confined-space\",\"trapping\",\"slippery-floor\",\"turning\",\"one-hand\","
    "\"view-blocked\",\"unstable-load\",\"over-8h\",\"protected-persons\"]}",
    "{\"method\":\"push\",\"units\":\"us\",\"way\":\"push\",\"handle_height\":40,\"distance\":9,\"frequency\":1,\"sustained\":9}",
    "{\"method\":\"slide\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"mass\":100}",
    "{\"method\":\"slide\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"mass\":100,\"surface\":\"rollers\",\"incline\":5}",
    "{\"method\":\"slide\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"mass\":100,\"friction\":0.1,\"incline\":2,"
    "\"held\":\"nothing\"}",
    "{\"method\":\"slide\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"mass\":100,\"friction\":0.1,\"incline\":9,"
    "\"held\":\"nothing\"}",
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (all[i]);
      const SyFindings *findings = assessment->findings;

      for (int k = 0; k < findings->n_reasons; k++)
        {
          g_autofree char *words = sy_words_reason (findings, &findings->reasons[k], NULL);
          assert_null (strpbrk (words, "{}"));
          assert_null (strstr (words, "this policy's limit"));
          assert_string_not_equal (words, findings->reasons[k].id);
        }
      for (int k = 0; k < sy_words_n_cautions (findings); k++)
        {
          const char *id;
          g_autofree char *words = sy_words_caution (findings, k, &id, NULL);
          assert_null (strpbrk (words, "{}"));
          assert_string_not_equal (words, id);
        }
    }
}

static void
test_a_line_of_the_working (void **state)
{
  g_autoptr (SyAssessment) assessment = help_assess (PUSH ("\"initial\":100,\"sustained\":60"));
  const SyFindings *findings = assessment->findings;
  g_autofree char *line = sy_words_formula (findings, sy_findings_quantity (findings, "uk.moving.ratio"));

  (void) state;
  assert_string_equal (line, "60 N / 68.6 N = 0.874");
  assert_null (sy_words_formula (findings, sy_findings_quantity (findings, "initial")));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_result_in_a_sentence),
    cmocka_unit_test (test_every_note_has_words),
    cmocka_unit_test (test_a_line_of_the_working),
  };
  int failed;

  desk = sy_desk_new (NULL, 0, NULL);
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_desk_unref (desk);
  return failed;
}
