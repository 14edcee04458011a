/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-form.h"

static SyForm *
new_form (SyUnits units)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  assert_non_null (desk);
  return sy_form_new (desk, "lift", units);
}

static void
fill (SyForm *form)
{
  static const char *const facts[][2] = {
    { "load.typical", "28" },    { "load.heaviest", "30" },  { "origin.H", "55" },
    { "origin.V", "20" },        { "origin.A", "0" },        { "destination.H", "45" },
    { "destination.V", "110" },  { "destination.A", "30" },  { "frequency", "1" },
    { "duration", "moderate" },  { "coupling", "fair" },     { "conditions", "-" },
    { "assigned", "mixed-adults" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    sy_form_set (form, facts[i][0], facts[i][1]);
}

static double
index_of (SyForm *form)
{
  SyAssessment *assessment = sy_form_get_assessment (form);

  assert_non_null (assessment);
  return sy_findings_quantity (assessment->findings, "LI")->value;
}

/* LI = 30 / (23 · 25/55 · (1 − 0.003·55) · (0.82 + 4.5/90) · 0.88 · 0.95), by hand from 94-110 section 1.3. */
static void
what_is_typed_is_assessed (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  double rwl = 23 * (25.0 / 55) * (1 - 0.003 * 55) * (0.82 + 4.5 / 90) * 0.88 * 0.95;

  (void) state;
  assert_null (sy_form_get_assessment (form));
  fill (form);
  assert_int_equal (sy_form_count_problems (form), 0);
  assert_close (index_of (form), 30 / rwl, 0, 1e-12);
  assert_int_equal (sy_form_get_assessment (form)->findings->verdict, SY_VERDICT_MECHANICAL);
}

static void
numbers_go_into_the_document_as_typed (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  g_autofree char *document = NULL;

  (void) state;
  sy_form_set (form, "origin.H", "55");
  sy_form_set (form, "origin.V", "12,5");
  sy_form_set (form, "origin.A", " 30 ");
  sy_form_set (form, "destination.H", "16 in");
  sy_form_set (form, "destination.V", "   ");
  sy_form_set (form, "hands", "2");
  sy_form_set (form, "control_at_destination", "false");
  sy_form_set (form, "conditions", "one-hand slippery-floor");
  sy_form_set (form, "place", "by \"press\" 2");
  document = sy_form_document (form);
  assert_string_equal (document,
                       "{\"method\":\"lift\",\"units\":\"metric\",\"place\":\"by \\\"press\\\" 2\",\"load\":{},"
                       "\"origin\":{\"H\":55,\"V\":\"12,5 cm\",\"A\":30},\"destination\":{\"H\":\"16 in\"},"
                       "\"control_at_destination\":false,\"hands\":2,"
                       "\"conditions\":[\"one-hand\",\"slippery-floor\"]}");
  assert_string_equal (sy_form_get (form, "origin.A"), " 30 ");
}

static void
the_empty_answer_differs_from_no_answer (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  g_autofree char *asked = NULL;
  g_autofree char *not_asked = NULL;

  (void) state;
  not_asked = sy_form_document (form);
  sy_form_set (form, "conditions", "-");
  asked = sy_form_document (form);
  assert_null (strstr (not_asked, "conditions"));
  assert_non_null (strstr (asked, "\"conditions\":[]"));
}

static void
a_wrong_entry_is_named_where_it_is (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  fill (form);
  sy_form_set (form, "origin.H", "-5");
  assert_null (sy_form_get_assessment (form));
  assert_int_equal (sy_form_count_problems (form), 1);
  assert_string_equal (sy_form_problem_path (form, 0), "origin.H");
  assert_string_equal (sy_form_get_problem (form, "origin.H"), "Reach H must be over 0 cm; you gave -5.");
  assert_false (sy_form_is_missing (form, "origin.H"));
  assert_string_equal (sy_form_get (form, "origin.H"), "-5");
  sy_form_set (form, "origin.H", "far");
  assert_string_equal (sy_form_get_problem (form, "origin.H"), "“far” is not a number.");
  sy_form_set (form, "origin.H", "1,250");
  assert_non_null (strstr (sy_form_get_problem (form, "origin.H"), "two ways"));
  sy_form_set (form, "origin.H", "5 kg");
  assert_non_null (strstr (sy_form_get_problem (form, "origin.H"), "unit that does not fit"));
  sy_form_set (form, "origin.H", "0.55 m");
  assert_int_equal (sy_form_count_problems (form), 0);
}

static void
what_is_missing_is_told_from_what_is_wrong (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  fill (form);
  sy_form_set (form, "origin.V", "");
  assert_true (sy_form_is_missing (form, "origin.V"));
  assert_int_equal (sy_form_count_missing (form), 1);
  sy_form_set (form, "load.heaviest", "heavy");
  assert_int_equal (sy_form_count_problems (form), 2);
  assert_string_equal (sy_form_problem_path (form, 0), "load.heaviest"); /* wrong before missing */
}

/* Without a destination all three of its facts are asked for, not the group. */
static void
a_missing_group_is_asked_fact_by_fact (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  fill (form);
  sy_form_set (form, "destination.H", "");
  sy_form_set (form, "destination.V", "");
  sy_form_set (form, "destination.A", "");
  assert_true (sy_form_is_missing (form, "destination.H"));
  assert_true (sy_form_is_missing (form, "destination.V"));
  assert_true (sy_form_is_missing (form, "destination.A"));
  sy_form_set (form, "travel", "90");
  assert_int_equal (sy_form_count_problems (form), 0);
}

/* Nothing typed yet: also what can be given in several ways is named at once. */
static void
all_that_is_missing_is_named_at_once (void **state)
{
  static const char *const needed[] = { "load.heaviest", "origin.H", "coupling", "destination.V", "frequency", "duration" };
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (needed); i++)
    assert_true (sy_form_is_missing (form, needed[i]));
  assert_int_equal (sy_form_count_missing (form), sy_form_count_problems (form));
  sy_form_set (form, "lifts", "30");
  assert_false (sy_form_is_missing (form, "frequency"));
  assert_true (sy_form_is_missing (form, "in_minutes"));
}

static void
facts_that_exclude_one_another_are_told (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  fill (form);
  sy_form_set (form, "load.typical", "31");
  assert_non_null (sy_form_get_problem (form, "load.heaviest"));
  assert_non_null (strstr (sy_form_get_problem (form, "load.heaviest"), "“Typical load”"));
}

static void
typing_on_is_one_step_of_undo (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  sy_form_set (form, "origin.H", "5");
  sy_form_set (form, "origin.H", "55");
  sy_form_set (form, "origin.V", "2");
  assert_true (sy_form_can_undo (form));
  sy_form_undo (form);
  assert_string_equal (sy_form_get (form, "origin.V"), "");
  assert_string_equal (sy_form_get (form, "origin.H"), "55");
  sy_form_undo (form);
  assert_string_equal (sy_form_get (form, "origin.H"), "");
  assert_false (sy_form_can_undo (form));
  sy_form_redo (form);
  sy_form_redo (form);
  assert_string_equal (sy_form_get (form, "origin.V"), "2");
  assert_false (sy_form_can_redo (form));
}

static void
changing_the_units_keeps_the_meaning (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  double before;

  (void) state;
  fill (form);
  before = sy_findings_quantity (sy_form_get_assessment (form)->findings, "mass_each")->value;
  sy_form_set_units (form, SY_UNITS_US);
  assert_string_equal (sy_form_get (form, "origin.H"), "55 cm");
  assert_string_equal (sy_form_get (form, "origin.A"), "0");
  assert_string_equal (sy_form_get (form, "frequency"), "1");
  assert_close (sy_findings_quantity (sy_form_get_assessment (form)->findings, "mass_each")->value,
                before / SY_KG_PER_LB, 0, 1e-12);
  sy_form_undo (form);
  assert_int_equal (sy_form_get_units (form), SY_UNITS_METRIC);
  assert_string_equal (sy_form_get (form, "origin.H"), "55");
}

static void
the_other_unit_is_shown_as_an_aid (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  g_autofree char *own = NULL;
  g_autofree char *other = NULL;
  g_autofree char *inches = NULL;

  (void) state;
  sy_form_set (form, "origin.H", "16 in");
  sy_form_set (form, "origin.V", "40.6");
  sy_form_set (form, "origin.A", "30");
  own = sy_form_dup_aid (form, "origin.H");
  other = sy_form_dup_aid (form, "origin.V");
  inches = sy_form_get_number_as (form, "origin.H", SY_UNITS_US);
  assert_non_null (strstr (own, "40.6"));
  assert_non_null (strstr (own, "cm"));
  assert_non_null (strstr (other, "in"));
  assert_non_null (strstr (inches, "16"));
  assert_null (sy_form_dup_aid (form, "origin.A")); /* the same unit in both */
  assert_null (sy_form_dup_aid (form, "load.heaviest"));
}

static void
a_stored_document_comes_back_as_typed (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  g_autoptr (SyForm) again = new_form (SY_UNITS_US);
  g_autofree char *document = NULL;
  g_autofree char *second = NULL;
  g_autoptr (GError) error = NULL;

  (void) state;
  fill (form);
  sy_form_set (form, "destination.H", "16 in");
  sy_form_set (form, "duration", "");
  sy_form_set (form, "sessions[0].work", "50");
  sy_form_set (form, "sessions[0].recovery", "60");
  sy_form_set (form, "sessions[1].work", "30");
  sy_form_set (form, "sessions[1].recovery", "0");
  sy_form_set (form, "had.origin.H.how", "estimated");
  sy_form_set (form, "had.origin.H.tolerance", "4");
  sy_form_set (form, "avoid.possible", "no");
  sy_form_set (form, "avoid.why", "no feeder until March");
  assert_int_equal (sy_form_count_problems (form), 0);
  document = sy_form_document (form);
  assert_true (sy_form_load_document (again, document, &error));
  assert_null (error);
  assert_int_equal (sy_form_get_units (again), SY_UNITS_METRIC);
  assert_false (sy_form_is_dirty (again));
  assert_false (sy_form_can_undo (again));
  assert_string_equal (sy_form_get (again, "destination.H"), "16 in");
  assert_int_equal (sy_form_list_count (again, "sessions"), 2);
  second = sy_form_document (again);
  assert_string_equal (second, document);
  sy_form_set (again, "origin.H", "50");
  assert_true (sy_form_is_dirty (again));
}

static void
another_document_is_refused (void **state)
{
  static const char *const refused[] = {
    "", "[]", "{\"method\":\"lift\"}", "{\"method\":\"push\",\"units\":\"metric\"}",
    "{\"method\":\"lift\",\"units\":\"metric\",\"colour\":1}",
    "{\"method\":\"lift\",\"units\":\"metric\",\"origin\":{\"Q\":1}}",
    "{\"method\":\"lift\",\"units\":\"metric\",\"origin\":5}",
  };
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  sy_form_set (form, "origin.H", "55");
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_false (sy_form_load_document (form, refused[i], &error));
      assert_true (g_error_matches (error, SY_FORM_ERROR, SY_FORM_ERROR_DOCUMENT));
      assert_string_equal (sy_form_get (form, "origin.H"), "55");
    }
}

static void
rows_of_a_list_come_and_go (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);

  (void) state;
  fill (form);
  sy_form_set (form, "duration", "");
  sy_form_list_add (form, "sessions");
  assert_true (sy_form_is_missing (form, "sessions[0].work"));
  sy_form_set (form, "sessions[0].work", "50");
  sy_form_set (form, "sessions[1].work", "30");
  assert_int_equal (sy_form_list_count (form, "sessions"), 2);
  sy_form_list_remove (form, "sessions", 0);
  assert_int_equal (sy_form_list_count (form, "sessions"), 1);
  assert_string_equal (sy_form_get (form, "sessions[0].work"), "30");
  sy_form_undo (form);
  assert_string_equal (sy_form_get (form, "sessions[0].work"), "50");
  sy_form_redo (form);
  sy_form_list_remove (form, "sessions", 0);
  assert_string_equal (sy_form_get (form, "sessions[0].work"), "");
  assert_int_equal (sy_form_list_count (form, "sessions"), 0);
}

static void
a_draft_keeps_wrong_entries_too (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_US);
  g_autoptr (SyForm) again = new_form (SY_UNITS_METRIC);
  g_autoptr (SyDraft) draft = sy_draft_new ("new-1");

  (void) state;
  sy_form_set (form, "origin.H", "far out");
  sy_form_fill_draft (form, draft);
  assert_string_equal (draft->units, "us");
  sy_form_load_draft (again, draft);
  assert_int_equal (sy_form_get_units (again), SY_UNITS_US);
  assert_string_equal (sy_form_get (again, "origin.H"), "far out");
  assert_true (sy_form_is_dirty (again));
}

static void
names_are_unique_within_the_form (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_auto (GStrv) paths = NULL;

  (void) state;
  fill (form);
  sy_form_set (form, "travel", "5");
  sy_form_set (form, "lifts", "5");
  sy_form_set (form, "sessions[1].work", "5");
  sy_form_set (form, "sessions[0].work", "5");
  sy_form_set (form, "had.origin.H.by", "x");
  sy_form_set (form, "had.origin.V.by", "x");
  sy_form_set (form, "had.load.by", "x");
  paths = sy_form_list_paths (form);
  assert_true (g_strv_length (paths) > 15);
  for (guint i = 0; paths[i] != NULL; i++)
    assert_true (g_hash_table_add (names, sy_form_dup_name (form, paths[i], TRUE)));
  assert_true (g_hash_table_contains (names, "Origin: Reach H, cm"));
}

static void
count_cb (SyForm *form, guint *count)
{
  (void) sy_form_get_assessment (form);
  (*count)++;
}

static void
every_change_is_told_once (void **state)
{
  g_autoptr (SyForm) form = new_form (SY_UNITS_METRIC);
  guint count = 0;
  const char *paths[] = { "origin.H", "origin.V" }, *texts[] = { "55", "20" };

  (void) state;
  g_signal_connect (form, "changed", G_CALLBACK (count_cb), &count);
  sy_form_set (form, "origin.H", "5");
  assert_int_equal (count, 1);
  sy_form_set (form, "origin.H", "5");
  assert_int_equal (count, 1); /* nothing changed */
  sy_form_set_many (form, paths, texts, 2);
  assert_int_equal (count, 2);
  sy_form_undo (form);
  assert_int_equal (count, 3);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (what_is_typed_is_assessed),
    cmocka_unit_test (numbers_go_into_the_document_as_typed),
    cmocka_unit_test (the_empty_answer_differs_from_no_answer),
    cmocka_unit_test (a_wrong_entry_is_named_where_it_is),
    cmocka_unit_test (what_is_missing_is_told_from_what_is_wrong),
    cmocka_unit_test (a_missing_group_is_asked_fact_by_fact),
    cmocka_unit_test (all_that_is_missing_is_named_at_once),
    cmocka_unit_test (facts_that_exclude_one_another_are_told),
    cmocka_unit_test (typing_on_is_one_step_of_undo),
    cmocka_unit_test (changing_the_units_keeps_the_meaning),
    cmocka_unit_test (the_other_unit_is_shown_as_an_aid),
    cmocka_unit_test (a_stored_document_comes_back_as_typed),
    cmocka_unit_test (another_document_is_refused),
    cmocka_unit_test (rows_of_a_list_come_and_go),
    cmocka_unit_test (a_draft_keeps_wrong_entries_too),
    cmocka_unit_test (names_are_unique_within_the_form),
    cmocka_unit_test (every_change_is_told_once),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
