/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <sys/stat.h>

#include <gtk/gtk.h>

#include "sy-limits-page.h"
#include "sy-limits-words.h"
#include "sy-settings.h"
#include "sy-survey-page.h"
#include "sy-test-facts.h"

static char *home;

/* All words of a page, line by line. */
static void
collect (GtkWidget *widget, GString *words)
{
  if (GTK_IS_LABEL (widget))
    g_string_append_printf (words, "%s\n", gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    collect (child, words);
}

static void
every_figure_of_the_policy_is_there_with_its_source (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  const SyPolicy *policy = sy_desk_policy (desk);
  GtkWidget *page = g_object_ref_sink (sy_limits_page_new (desk, SY_UNITS_METRIC));
  g_autoptr (GString) words = g_string_new (NULL);
  g_autofree char *seed = g_strdup_printf ("%llu", policy->seed);
  int from_memory = 0;

  (void) state;
  collect (page, words);
  assert_non_null (strstr (words->str, policy->id));
  assert_non_null (strstr (words->str, seed));
  assert_true (policy->n_rows > 0);
  for (int i = 0; i < policy->n_rows; i++)
    {
      const SyPolicyRow *row = &policy->rows[i];
      g_autofree char *limit = sy_limits_row_words (row, SY_UNITS_METRIC);
      g_autofree char *source = sy_source_words (row->source, row->from_memory);

      assert_non_null (strstr (words->str, row->id));
      assert_non_null (strstr (words->str, limit));
      assert_non_null (strstr (words->str, source));
      assert_non_null (strstr (words->str, sy_verdict_title (row->verdict)));
      from_memory += row->from_memory;
      assert_int_equal (strstr (source, "from memory") != NULL, row->from_memory);
    }
  assert_true (from_memory > 0);
  for (int i = 0; i < policy->n_tolerances; i++)
    {
      g_autofree char *fact = sy_tolerance_fact_words (&policy->tolerances[i]);

      assert_non_null (strstr (words->str, fact));
      assert_non_null (strstr (words->str, policy->tolerances[i].source));
    }
  for (size_t i = 0; i < sy_method_count (); i++)
    assert_non_null (strstr (words->str, sy_method_at (i)->source));
  g_object_unref (page);
}

static GtkWidget *
find_named (GtkWidget *widget, const char *name)
{
  if (g_str_equal (gtk_widget_get_name (widget), name))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_named (child, name);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* A policy in a region with a rule of the site, as a file has it. */
static SyDesk *
desk_of_site (void)
{
  g_autoptr (SyDesk) plain = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyDesk) uk = sy_desk_in_region (plain, "uk", NULL);
  gsize length;
  const char *data = sy_desk_policy_text (uk, &length);
  g_autoptr (GString) text = g_string_new_len (data, (gssize) length);

  g_string_replace (text, "  \"region\": {", "  \"rules\": [{\"title\": \"Works order 12\", \"about\": \"no lift over 15 kg\"}],\n"
                    "  \"region\": {", 1);
  return sy_desk_new (text->str, text->len, NULL);
}

static void
what_results_defer_to_is_there_with_its_source (void **state)
{
  g_autoptr (SyDesk) desk = desk_of_site ();
  const SyRegion *region = &sy_desk_policy (desk)->region;
  GtkWidget *page = g_object_ref_sink (sy_limits_page_new (desk, SY_UNITS_METRIC));
  g_autoptr (GString) words = g_string_new (NULL);

  (void) state;
  collect (page, words);
  assert_non_null (strstr (words->str, "no legal advice"));
  assert_non_null (strstr (words->str, "In force: United Kingdom"));
  assert_true (region->n_defers_to > 0 && region->n_intervals > 0);
  for (int i = 0; i < region->n_defers_to; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s, %s\n%s\n", region->defers_to[i].title, region->defers_to[i].section,
                                               region->defers_to[i].about);
      const char *found = strstr (words->str, name), *note = found != NULL ? found + strlen (name) : "";
      g_autofree char *line = g_strndup (note, strcspn (note, "\n"));

      assert_non_null (found);
      assert_non_null (strstr (line, region->defers_to[i].source));
      assert_int_equal (strstr (line, "from memory: ") != NULL, region->defers_to[i].from_memory);
    }
  for (int i = 0; i < region->n_intervals; i++)
    assert_non_null (strstr (words->str, region->intervals[i].what));
  assert_non_null (strstr (words->str, "Works order 12\nno lift over 15 kg\nabout every result · rule of this site\n"));
  g_object_unref (page);
}

static void
a_region_that_is_chosen_is_kept_for_the_next_time (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  GtkWidget *page = g_object_ref_sink (sy_limits_page_new (desk, SY_UNITS_METRIC)), *choice = find_named (page, "region");
  g_autofree char *before = sy_settings_get (SY_SETTING_REGION), *after = NULL, *none = NULL;
  g_autoptr (GString) words = g_string_new (NULL);

  (void) state;
  assert_string_equal (before, "");
  collect (page, words);
  assert_non_null (strstr (words->str, "In force: none."));
  assert_non_null (strstr (words->str, "when the record is next opened"));
  assert_int_equal (gtk_drop_down_get_selected (GTK_DROP_DOWN (choice)), 0);
  assert_int_equal (g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (choice))), 7);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), 5);
  after = sy_settings_get (SY_SETTING_REGION);
  assert_string_equal (after, "uk");
  g_object_unref (page);
  page = g_object_ref_sink (sy_limits_page_new (desk, SY_UNITS_METRIC));
  choice = find_named (page, "region");
  assert_int_equal (gtk_drop_down_get_selected (GTK_DROP_DOWN (choice)), 5);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), 0);
  none = sy_settings_get (SY_SETTING_REGION);
  assert_string_equal (none, "");
  g_object_unref (page);
}

static void
a_row_of_unknown_things_is_still_told (void **state)
{
  SyPolicyRow row = { .comparator = SY_UNDER, .limit = { 2, 3 } };
  g_autofree char *words = NULL, *source = NULL;

  (void) state;
  g_strlcpy (row.symbol, "QX", sizeof row.symbol);
  words = sy_limits_row_words (&row, SY_UNITS_METRIC);
  assert_non_null (strstr (words, "QX under 2"));
  source = sy_source_words ("", FALSE);
  assert_string_equal (source, "no source named");
}

static void
tolerances_follow_the_units (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  GtkWidget *page = g_object_ref_sink (sy_limits_page_new (desk, SY_UNITS_METRIC));
  g_autoptr (GString) metric = g_string_new (NULL);
  g_autoptr (GString) us = g_string_new (NULL);

  (void) state;
  collect (page, metric);
  sy_limits_page_set_units (SY_LIMITS_PAGE (page), SY_UNITS_US);
  collect (page, us);
  assert_non_null (strstr (metric->str, " cm\n"));
  assert_null (strstr (us->str, " cm\n"));
  assert_non_null (strstr (us->str, " in\n"));
  g_object_unref (page);
}

static void
the_sheet_is_written_as_chosen (void **state)
{
  GtkWidget *page = g_object_ref_sink (sy_survey_page_new (SY_UNITS_METRIC));
  g_autofree char *metric = g_build_filename (home, "metric.pdf", NULL);
  g_autofree char *us = g_build_filename (home, "us.pdf", NULL);
  g_autofree char *first = NULL, *second = NULL;
  gsize n_first, n_second;
  struct stat info;

  (void) state;
  g_setenv ("STEELYARD_CLOCK", "2026-01-01T00:00:00Z", TRUE);
  assert_true (sy_survey_page_write (SY_SURVEY_PAGE (page), metric));
  sy_survey_page_set_units (SY_SURVEY_PAGE (page), SY_UNITS_US);
  assert_true (sy_survey_page_write (SY_SURVEY_PAGE (page), us));
  g_unsetenv ("STEELYARD_CLOCK");
  assert_true (g_file_get_contents (metric, &first, &n_first, NULL));
  assert_true (g_file_get_contents (us, &second, &n_second, NULL));
  assert_true (n_first > 1000 && n_second > 1000);
  assert_memory_equal (first, "%PDF-", 5);
  assert_false (n_first == n_second && memcmp (first, second, n_first) == 0);
  assert_int_equal (stat (metric, &info), 0);
  assert_int_equal (info.st_mode & 0077, 0);
  g_object_unref (page);
}

static void
a_sheet_that_cannot_be_written_is_said (void **state)
{
  GtkWidget *page = g_object_ref_sink (sy_survey_page_new (SY_UNITS_METRIC));
  g_autofree char *path = g_build_filename (home, "no", "such", "folder.pdf", NULL);
  g_autoptr (GString) words = g_string_new (NULL);

  (void) state;
  assert_false (sy_survey_page_write (SY_SURVEY_PAGE (page), path));
  collect (page, words);
  assert_non_null (strstr (words->str, "The sheet was not saved: "));
  g_object_unref (page);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_figure_of_the_policy_is_there_with_its_source),
    cmocka_unit_test (what_results_defer_to_is_there_with_its_source),
    cmocka_unit_test (a_region_that_is_chosen_is_kept_for_the_next_time),
    cmocka_unit_test (a_row_of_unknown_things_is_still_told),
    cmocka_unit_test (tolerances_follow_the_units),
    cmocka_unit_test (the_sheet_is_written_as_chosen),
    cmocka_unit_test (a_sheet_that_cannot_be_written_is_said),
  };
  int failed;

  home = sy_test_home ();
  gtk_init ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
