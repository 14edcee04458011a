/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <locale.h>

#include "sy-desk.h"

/* A lift of which single facts are replaced. */
#define LIFT                                                                                             \
  "{\"method\":\"lift\",\"units\":\"metric\",\"load\":{\"typical\":10,\"heaviest\":12},"                  \
  "\"origin\":{\"H\":40,\"V\":60,\"A\":30},\"destination\":{\"H\":35,\"V\":100,\"A\":0},"                 \
  "\"frequency\":2,\"duration\":\"moderate\",\"coupling\":\"fair\",\"conditions\":[]}"

static SyAssessment *
assess (const char *from, const char *to, SyJudgeFlags flags)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (GString) text = g_string_new (LIFT);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  SyAssessment *assessment;

  if (from != NULL)
    assert_int_equal (g_string_replace (text, from, to, 1), 1);
  assessment = sy_desk_assess (desk, text->str, text->len, flags, problems);
  if (assessment == NULL)
    {
      g_autofree char *words = sy_words_problem (&problems->items[0]);
      fail_msg ("%s", words);
    }
  return assessment;
}

static const SyReason *
find_reason (const SyAssessment *assessment, const char *id)
{
  for (int i = 0; i < assessment->findings->n_reasons; i++)
    if (strcmp (assessment->findings->reasons[i].id, id) == 0)
      return &assessment->findings->reasons[i];
  return NULL;
}

/* An assessment outlives the desk that made it. */
static void
test_outlives_desk (void **state)
{
  g_autoptr (SyAssessment) assessment = assess (NULL, NULL, SY_JUDGE_REMEDIES);
  g_autofree char *json = sy_assessment_json (assessment, true);

  (void) state;
  assert_non_null (strstr (json, "\"policy\":{\"id\":\"steelyard-default\""));
  assert_non_null (strstr (json, "\"worksheet\""));
}

/* "Asked, none applies" and "not asked" differ, and only a record is incomplete for it. */
static void
test_conditions (void **state)
{
  g_autoptr (SyAssessment) asked = assess (NULL, NULL, SY_JUDGE_RECORD);
  g_autoptr (SyAssessment) not_asked = assess (",\"conditions\":[]", "", SY_JUDGE_PLAIN);
  g_autoptr (SyAssessment) recorded = assess (",\"conditions\":[]", "", SY_JUDGE_RECORD);
  g_autoptr (SyAssessment) applies = assess ("[]", "[\"slippery-floor\"]", SY_JUDGE_PLAIN);

  (void) state;
  assert_null (find_reason (asked, "conditions-not-asked"));
  assert_int_not_equal (not_asked->findings->verdict, SY_VERDICT_INCOMPLETE);
  assert_int_equal (recorded->findings->verdict, SY_VERDICT_INCOMPLETE);
  assert_int_equal (applies->findings->verdict, SY_VERDICT_OUTSIDE);
  assert_non_null (find_reason (applies, "slippery-floor"));

  gboolean said = FALSE;
  for (int i = 0; i < sy_words_n_cautions (not_asked->findings); i++)
    {
      const char *id;
      g_autofree char *words = sy_words_caution (not_asked->findings, i, &id, NULL);
      said = said || strcmp (id, "conditions-not-asked") == 0;
      assert_true (strlen (words) > 10);
    }
  assert_true (said);
}

/* The first caution of every result is the screening sentence. */
static void
test_screening_first (void **state)
{
  g_autoptr (SyAssessment) assessment = assess (NULL, NULL, SY_JUDGE_PLAIN);
  const char *id;
  g_autofree char *words = sy_words_caution (assessment->findings, 0, &id, NULL);

  (void) state;
  assert_string_equal (id, "screening");
  assert_non_null (strstr (words, "not a permission to lift"));
}

/* Manual Handling Operations Regulations 1992, reg. 4(1)(a): avoid first. */
static void
test_avoid (void **state)
{
  g_autoptr (SyAssessment) avoidable = assess ("\"conditions\":[]", "\"conditions\":[],\"avoid\":{\"possible\":\"yes\"}",
                                               SY_JUDGE_PLAIN);
  g_autoptr (SyAssessment) not_avoidable
    = assess ("\"conditions\":[]", "\"conditions\":[],\"avoid\":{\"possible\":\"no\",\"why\":\"single pieces\"}",
              SY_JUDGE_PLAIN);

  (void) state;
  assert_non_null (find_reason (avoidable, "can-be-avoided"));
  assert_null (find_reason (not_avoidable, "can-be-avoided"));
}

/* Words round for the reader, but never so that a value over its limit reads as equal to it. */
static void
test_words_near_a_limit (void **state)
{
  g_autofree char *plain = sy_words_against (2.0999, 1, SY_KIND_RATIO, SY_UNITS_METRIC);
  g_autofree char *close = sy_words_against (1.00004, 1, SY_KIND_RATIO, SY_UNITS_METRIC);
  g_autofree char *down = sy_words_directed (31.27, -HUGE_VAL, SY_KIND_REACH, SY_UNITS_METRIC);
  g_autofree char *up = sy_words_directed (31.21, HUGE_VAL, SY_KIND_REACH, SY_UNITS_METRIC);
  g_autofree char *none = sy_words_quantity (INFINITY, SY_KIND_RATIO, SY_UNITS_METRIC);

  (void) state;
  assert_string_equal (plain, "2.10");
  assert_string_equal (close, "1.00004");
  assert_string_equal (down, "31.2 cm");
  assert_string_equal (up, "31.3 cm");
  assert_string_equal (none, "∞");
}

/* Formulas carry the numbers: redone here by hand. V 60 cm: 1 − 0.003 × |60 − 75| = 0.955. */
static void
test_formulas (void **state)
{
  g_autoptr (SyAssessment) assessment = assess (NULL, NULL, SY_JUDGE_PLAIN);
  g_autofree char *vm = sy_words_formula (assessment->findings, sy_findings_quantity (assessment->findings, "origin.VM"));
  g_autofree char *hm = sy_words_formula (assessment->findings, sy_findings_quantity (assessment->findings, "origin.HM"));

  (void) state;
  assert_string_equal (vm, "VM = 1 − 0.003 × |60 − 75| = 0.955");
  assert_string_equal (hm, "HM = 25 / 40 = 0.625");
}

/* Formula of a quantity, NULL for none; new string. */
static char *
formula_of (const SyAssessment *assessment, const char *symbol)
{
  const SyQuantity *quantity = sy_findings_quantity (assessment->findings, symbol);

  assert_non_null (quantity);
  return sy_words_formula (assessment->findings, quantity);
}

static void
assert_formula (const SyAssessment *assessment, const char *symbol, const char *wanted)
{
  g_autofree char *formula = formula_of (assessment, symbol);

  assert_non_null (formula);
  assert_string_equal (formula, wanted);
}

/* Limits by population show their working as the equation does. */
static void
test_formulas_by_population (void **state)
{
  g_autoptr (SyAssessment) plain = assess (NULL, NULL, SY_JUDGE_PLAIN);
  g_autoptr (SyAssessment) long_shift = assess ("\"duration\":\"moderate\"",
                                                "\"duration\":\"long\",\"shift_hours\":10,\"additional_tasks\":true,\"hands\":1",
                                                SY_JUDGE_PLAIN);
  g_autofree char *none = formula_of (plain, "day_limit");

  (void) state;
  assert_null (none);
  assert_formula (plain, "day_mass", "day_mass = 10 \xc3\x97 240 = 2400 kg");
  assert_formula (plain, "day_ratio", "day_ratio = 2400 / 10000 = 0.24");
  assert_formula (plain, "R_ML",
                  "R_ML = 25 \xc3\x97 0.625 \xc3\x97 0.955 \xc3\x97 0.9325 \xc3\x97 0.904 \xc3\x97 0.84 \xc3\x97 0.95 = 10.038 kg");
  assert_formula (plain, "R_I", "R_I = 12 / 10.038 = 1.1955");
  assert_formula (long_shift, "R_ML",
                  "R_ML = 25 \xc3\x97 0.625 \xc3\x97 0.955 \xc3\x97 0.9325 \xc3\x97 0.904 \xc3\x97 0.65 \xc3\x97 0.95"
                  " \xc3\x97 0.6 \xc3\x97 0.8 = 3.7284 kg");
  assert_formula (long_shift, "origin.mR",
                  "mR = 20 \xc3\x97 0.625 \xc3\x97 0.955 \xc3\x97 0.9325 \xc3\x97 0.904 \xc3\x97 0.65 \xc3\x97 0.95"
                  " \xc3\x97 0.93 = 5.779 kg");
}

/* The same bytes in a locale that writes a comma. */
static void
test_locale (void **state)
{
  g_autoptr (SyAssessment) before = assess (NULL, NULL, SY_JUDGE_SPREAD);
  g_autofree char *expected = sy_assessment_json (before, false);
  g_autofree char *old = g_strdup (setlocale (LC_ALL, NULL));

  (void) state;
  if (setlocale (LC_ALL, "de_DE.UTF-8") != NULL)
    {
      g_autoptr (SyAssessment) after = assess (NULL, NULL, SY_JUDGE_SPREAD);
      g_autofree char *json = sy_assessment_json (after, false);
      setlocale (LC_ALL, old);
      assert_string_equal (json, expected);
    }
  assert_null (strstr (expected, "nan"));
}

/* A scene has both views and marks that lead back to their facts. */
static void
test_scene (void **state)
{
  g_autoptr (SyAssessment) assessment = assess (NULL, NULL, SY_JUDGE_PLAIN);
  SyMark *marks = g_new0 (SyMark, 200);

  (void) state;
  for (size_t view = 0; view < assessment->facts.method->n_views; view++)
    {
      SyScene scene;
      gboolean has_reach = FALSE;

      sy_assessment_scene (assessment, view, marks, 200, &scene);
      assert_true (scene.count > 5);
      for (int i = 0; i < scene.count; i++)
        has_reach = has_reach || (marks[i].fact != NULL && strcmp (marks[i].fact, "origin.H") == 0);
      assert_true (has_reach);
    }
  g_free (marks);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_outlives_desk),
    cmocka_unit_test (test_conditions),
    cmocka_unit_test (test_screening_first),
    cmocka_unit_test (test_avoid),
    cmocka_unit_test (test_words_near_a_limit),
    cmocka_unit_test (test_formulas),
    cmocka_unit_test (test_formulas_by_population),
    cmocka_unit_test (test_locale),
    cmocka_unit_test (test_scene),
  };

  return cmocka_run_group_tests_name ("desk", tests, NULL, NULL);
}
