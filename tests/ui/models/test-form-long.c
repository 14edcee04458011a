/* SPDX-License-Identifier: MIT */
/* Lists too long to be typed: kept whole, undone, switched in units, kept in a draft, assessed beside the main loop; and facts
   that apply beside others only. */
#include "sy-test.h"

#include "sy-form.h"
#include "sy-long-list.h"

#define LIMIT_US (60 * G_USEC_PER_SEC)

static SyForm *
new_form (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  assert_non_null (desk);
  return sy_form_new (desk, "lift-set", SY_UNITS_METRIC);
}

/* @wrong: the lift whose reach cannot be; past the end for none. */
static char *
some_lifts (guint n, guint wrong)
{
  GString *json = g_string_new ("[");

  for (guint i = 0; i < n; i++)
    g_string_append_printf (json,
                            "%s{\"label\":\"Line %u [%u]\",\"load\":{\"typical\":%u.5,\"heaviest\":%u.5},\"origin\":{\"H\":%s,"
                            "\"V\":75,\"A\":0},\"travel\":25,\"coupling\":\"good\"}",
                            i > 0 ? "," : "", i + 1, i, 4 + i % 9, 4 + i % 9, i == wrong ? "-3" : "40");
  g_string_append_c (json, ']');
  return g_string_free (json, FALSE);
}

static char *
some_set (guint n, guint wrong)
{
  g_autofree char *lifts = some_lifts (n, wrong);

  return g_strdup_printf ("{\"method\":\"lift-set\",\"units\":\"metric\",\"combine\":\"variable\",\"lifts\":%s,"
                          "\"frequency\":2,\"duration\":\"long\",\"conditions\":[]}",
                          lifts);
}

static SyForm *
new_loaded (guint n, guint wrong)
{
  SyForm *form = new_form ();
  g_autofree char *document = some_set (n, wrong);

  assert_true (sy_form_load_document (form, document, NULL));
  return form;
}

static void
a_long_list_is_kept_whole_and_comes_back_as_it_was (void **state)
{
  g_autoptr (SyForm) form = new_loaded (41, 99);
  g_autofree char *before = some_set (41, 99);
  g_autofree char *after = sy_form_document (form);

  (void) state;
  assert_int_equal (sy_form_list_count (form, "lifts"), 41);
  assert_non_null (sy_form_list_get_long (form, "lifts"));
  assert_string_equal (sy_form_get (form, "lifts[3].origin.H"), "");
  assert_false (sy_form_is_blank (form, "lifts"));
  assert_string_equal (after, before);
  assert_false (sy_form_is_dirty (form));
  assert_non_null (sy_form_get_assessment (form));
}

static void
so_many_as_are_typed_have_their_texts (void **state)
{
  g_autoptr (SyForm) form = new_loaded (40, 99);

  (void) state;
  assert_null (sy_form_list_get_long (form, "lifts"));
  assert_string_equal (sy_form_get (form, "lifts[3].origin.H"), "40");
}

static void
what_is_wrong_in_it_names_its_place (void **state)
{
  g_autoptr (SyForm) form = new_loaded (60, 57);

  (void) state;
  assert_null (sy_form_get_assessment (form));
  assert_int_equal (sy_form_count_problems (form), 1);
  assert_string_equal (sy_form_problem_path (form, 0), "lifts[57].origin.H");
  assert_non_null (strstr (sy_form_problem_words (form, 0), "-3"));
}

static void
it_is_replaced_and_taken_away_in_one_step_of_undo_each (void **state)
{
  g_autoptr (SyForm) form = new_loaded (60, 99);
  g_autofree char *few = some_lifts (2, 99);
  g_autofree char *many = some_lifts (70, 99);

  (void) state;
  assert_true (sy_form_list_replace (form, "lifts", few, NULL));
  assert_null (sy_form_list_get_long (form, "lifts"));
  assert_string_equal (sy_form_get (form, "lifts[1].label"), "Line 2 [1]");
  assert_true (sy_form_list_replace (form, "lifts", many, NULL));
  assert_int_equal (sy_form_list_count (form, "lifts"), 70);
  assert_string_equal (sy_form_get (form, "lifts[1].label"), "");
  sy_form_list_clear (form, "lifts");
  assert_int_equal (sy_form_list_count (form, "lifts"), 0);
  assert_null (sy_form_get_assessment (form));
  sy_form_undo (form);
  assert_int_equal (sy_form_list_count (form, "lifts"), 70);
  sy_form_undo (form);
  sy_form_undo (form);
  assert_int_equal (sy_form_list_count (form, "lifts"), 60);
  assert_false (sy_form_is_dirty (form));
  sy_form_redo (form);
  assert_true (sy_form_is_dirty (form));
}

static void
what_is_no_list_of_lifts_changes_nothing (void **state)
{
  static const char *const refused[] = { "{}", "[1]", "[{\"weight\":3}]", "[", "" };
  g_autoptr (SyForm) form = new_loaded (60, 99);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_false (sy_form_list_replace (form, "lifts", refused[i], &error));
      assert_non_null (error);
    }
  assert_int_equal (sy_form_list_count (form, "lifts"), 60);
  assert_false (sy_form_can_undo (form));
}

static void
figures_keep_their_meaning_in_the_other_units (void **state)
{
  g_autoptr (SyForm) form = new_loaded (60, 99);
  double before = sy_findings_quantity (sy_form_get_assessment (form)->findings, "mass_each")->value;
  double after;
  g_autofree char *document = NULL;

  (void) state;
  sy_form_set_units (form, SY_UNITS_US);
  document = sy_form_document (form);
  assert_non_null (strstr (document, "\"H\":\"40 cm\""));
  assert_non_null (strstr (document, "\"label\":\"Line 4 [3]\""));
  assert_non_null (sy_form_get_assessment (form));
  after = sy_findings_quantity (sy_form_get_assessment (form)->findings, "mass_each")->value;
  assert_float_equal (after, before / 0.45359237, 1e-9);
  sy_form_undo (form);
  assert_false (sy_form_is_dirty (form));
}

static void
a_draft_keeps_it (void **state)
{
  g_autoptr (SyForm) form = new_loaded (60, 99);
  g_autoptr (SyForm) other = new_form ();
  g_autoptr (SyDraft) draft = sy_draft_new ("new-1");
  g_autoptr (SyDraft) read = NULL;
  static const char store[] = "/nowhere/a.steelyard";
  g_autofree char *document = sy_form_document (form);
  g_autofree char *same = NULL;

  (void) state;
  sy_form_fill_draft (form, draft);
  assert_true (sy_draft_write (draft, store, NULL));
  read = sy_draft_read ("new-1", store, NULL);
  assert_non_null (read);
  assert_true (sy_form_load_draft (other, read));
  same = sy_form_document (other);
  assert_string_equal (same, document);
  sy_draft_remove ("new-1", store);
}

static void
count_cb (SyForm *form, guint *n)
{
  if (sy_form_tells_only_result (form))
    (*n)++;
}

static gboolean
wait_until_settled (SyForm *form)
{
  gint64 end = g_get_monotonic_time () + LIMIT_US;

  sy_form_get_assessment (form);
  while (sy_form_is_working (form) && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  return !sy_form_is_working (form);
}

static void
a_large_one_is_assessed_beside_the_main_loop (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autofree char *document = some_set (3000, 9999);
  guint told = 0;
  double first;

  (void) state;
  g_signal_connect (form, "changed", G_CALLBACK (count_cb), &told);
  sy_form_set_background (form, TRUE);
  assert_true (sy_form_load_document (form, document, NULL));
  assert_null (sy_form_get_assessment (form));
  assert_true (sy_form_is_working (form));
  assert_true (wait_until_settled (form));
  assert_int_equal (told, 1);
  first = sy_findings_quantity (sy_form_get_assessment (form)->findings, "VLI")->value;
  /* Typing on: the older result stays until the new one of the last text is there. */
  sy_form_set (form, "frequency", "3");
  assert_non_null (sy_form_get_assessment (form));
  sy_form_set (form, "frequency", "4");
  assert_float_equal (sy_findings_quantity (sy_form_get_assessment (form)->findings, "VLI")->value, first, 0);
  assert_true (wait_until_settled (form));
  assert_float_equal (sy_findings_quantity (sy_form_get_assessment (form)->findings, "F")->value, 4, 1e-9);
  assert_true (sy_findings_quantity (sy_form_get_assessment (form)->findings, "VLI")->value > first);
  /* Who must know now waits. */
  sy_form_set (form, "frequency", "x");
  sy_form_settle (form);
  assert_int_equal (sy_form_count_problems (form), 1);
  assert_null (sy_form_get_assessment (form));
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static void
a_form_that_goes_away_while_it_works_does_no_harm (void **state)
{
  SyForm *form = new_form ();
  g_autofree char *document = some_set (3000, 9999);

  (void) state;
  sy_form_set_background (form, TRUE);
  assert_true (sy_form_load_document (form, document, NULL));
  sy_form_get_assessment (form);
  g_object_add_weak_pointer (G_OBJECT (form), (gpointer *) &form);
  g_object_unref (form);
  while (form != NULL)
    g_main_context_iteration (NULL, TRUE);
}

static void
its_rows_are_read_as_they_are_looked_at (void **state)
{
  g_autoptr (SyForm) form = new_loaded (500, 999);
  g_autoptr (SyLongList) list = sy_long_list_new (sy_form_find_field (form, "lifts"));
  g_autoptr (GObject) row = NULL;
  g_autofree char *title = NULL, *cell = NULL, *none = NULL, *grip = NULL;
  guint n;

  (void) state;
  assert_true (sy_long_list_set (list, sy_form_list_get_long (form, "lifts"), SY_UNITS_METRIC));
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (list)), 500);
  n = sy_long_list_n_columns (list);
  assert_true (n >= 6);
  title = sy_long_list_dup_title (list, 3);
  assert_string_equal (title, "Origin H, cm");
  row = g_list_model_get_item (G_LIST_MODEL (list), 499);
  assert_int_equal (sy_long_row_get_place (SY_LONG_ROW (row)), 499);
  cell = sy_long_list_dup_cell (list, 499, 0);
  assert_string_equal (cell, "Line 500 [499]");
  none = sy_long_list_dup_cell (list, 500, 0);
  assert_string_equal (none, "");
  grip = sy_long_list_dup_cell (list, 0, n - 1);
  assert_string_equal (grip, "Good");
  /* The same bytes again are no news. */
  assert_false (sy_long_list_set (list, sy_form_list_get_long (form, "lifts"), SY_UNITS_METRIC));
  sy_long_list_set (list, NULL, SY_UNITS_METRIC);
  assert_int_equal (g_list_model_get_n_items (G_LIST_MODEL (list)), 0);
}

static void
facts_apply_beside_others_only (void **state)
{
  g_autoptr (SyForm) form = new_form ();

  (void) state;
  sy_form_list_add (form, "lifts");
  assert_false (sy_form_applies (form, "lifts[0].share"));
  assert_false (sy_form_applies (form, "categories"));
  assert_true (sy_form_applies (form, "lifts[0].origin.H"));
  sy_form_set (form, "combine", "sequence");
  assert_true (sy_form_applies (form, "lifts[0].share"));
  assert_true (sy_form_applies (form, "lifts[0].sessions[0].work"));
  assert_true (sy_form_applies (form, "rota"));
  sy_form_list_add (form, "rota");
  assert_false (sy_form_applies (form, "lifts[0].share"));
  assert_false (sy_form_applies (form, "duration"));
  /* What stands there is seen. */
  sy_form_set (form, "duration", "long");
  assert_true (sy_form_applies (form, "duration"));
  sy_form_set (form, "combine", "composite");
  assert_true (sy_form_applies (form, "rota"));
  assert_true (sy_form_may_not_apply (form, "lifts[3].share"));
  assert_false (sy_form_may_not_apply (form, "lifts[3].label"));
}

/* How long each takes, for whoever wants to know: SY_LONG=30000. */
static void
time_it (void **state)
{
  const char *wanted = g_getenv ("SY_LONG");
  g_autoptr (SyForm) form = NULL;
  g_autofree char *document = NULL;
  gint64 at[5];

  (void) state;
  if (wanted == NULL)
    return;
  form = new_form ();
  document = some_set ((guint) g_ascii_strtoull (wanted, NULL, 10), G_MAXUINT);
  at[0] = g_get_monotonic_time ();
  assert_true (sy_form_load_document (form, document, NULL));
  at[1] = g_get_monotonic_time ();
  sy_form_settle (form);
  at[2] = g_get_monotonic_time ();
  sy_form_set (form, "frequency", "3");
  at[3] = g_get_monotonic_time ();
  sy_form_set_units (form, SY_UNITS_US);
  at[4] = g_get_monotonic_time ();
  g_printerr ("%s lifts, ms: load %" G_GINT64_FORMAT ", assess %" G_GINT64_FORMAT ", keystroke %" G_GINT64_FORMAT
              ", other units %" G_GINT64_FORMAT "\n",
              wanted, (at[1] - at[0]) / 1000, (at[2] - at[1]) / 1000, (at[3] - at[2]) / 1000, (at[4] - at[3]) / 1000);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_long_list_is_kept_whole_and_comes_back_as_it_was),
    cmocka_unit_test (so_many_as_are_typed_have_their_texts),
    cmocka_unit_test (what_is_wrong_in_it_names_its_place),
    cmocka_unit_test (it_is_replaced_and_taken_away_in_one_step_of_undo_each),
    cmocka_unit_test (what_is_no_list_of_lifts_changes_nothing),
    cmocka_unit_test (figures_keep_their_meaning_in_the_other_units),
    cmocka_unit_test (a_draft_keeps_it),
    cmocka_unit_test (a_large_one_is_assessed_beside_the_main_loop),
    cmocka_unit_test (a_form_that_goes_away_while_it_works_does_no_harm),
    cmocka_unit_test (its_rows_are_read_as_they_are_looked_at),
    cmocka_unit_test (facts_apply_beside_others_only),
    cmocka_unit_test (time_it),
  };

  return cmocka_run_group_tests_name ("form-long", tests, NULL, NULL);
}
