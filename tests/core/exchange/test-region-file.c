/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <glib.h>
#include <string.h>

#include "sy-policy-file.h"
#include "sy-region-file.h"

static GString *
text_of (GBytes *bytes)
{
  return g_string_new_len (g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes));
}

static GString *
region_text (const char *id)
{
  g_autoptr (GBytes) bytes = sy_region_bytes (id);

  assert_non_null (bytes);
  return text_of (bytes);
}

/* A policy that comes with the program, with a region in it. */
static GString *
policy_text (const char *name, const char *region)
{
  g_autoptr (GBytes) bytes = sy_policy_named (name);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) whole = sy_region_into_policy (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), region, &error);

  if (whole == NULL)
    fail_msg ("%s", error->message);
  return text_of (whole);
}

static void
assert_region_refused (const char *id, const char *from, const char *to, const char *named)
{
  g_autoptr (GString) text = region_text (id);
  g_autofree SyRegion *region = g_new0 (SyRegion, 1);
  g_autoptr (GError) error = NULL;

  assert_int_equal (g_string_replace (text, from, to, 1), 1);
  if (sy_region_read (text->str, text->len, region, &error))
    fail_msg ("accepted: %s", to);
  assert_int_equal (error->code, SY_EXCHANGE_ERROR_POLICY);
  if (strstr (error->message, named) == NULL || !g_str_has_prefix (error->message, "region, line "))
    fail_msg ("“%s” does not name “%s”", error->message, named);
  assert_string_equal (region->id, ""); /* untouched */
}

static void
assert_policy_refused (const GString *policy, const char *named)
{
  g_autofree SyPolicy *read = g_new0 (SyPolicy, 1);
  g_autoptr (GError) error = NULL;

  if (sy_policy_read (policy->str, policy->len, read, &error))
    fail_msg ("accepted, and should name %s", named);
  if (strstr (error->message, named) == NULL)
    fail_msg ("“%s” does not name “%s”", error->message, named);
}

static void
every_region_reads_and_every_row_has_its_source (void **state)
{
  const char *const *ids = sy_region_ids ();

  (void) state;
  assert_int_equal (g_strv_length ((char **) ids), 6);
  for (gsize i = 0; ids[i] != NULL; i++)
    {
      g_autoptr (GString) text = region_text (ids[i]);
      g_autofree SyRegion *region = g_new0 (SyRegion, 1);
      g_autoptr (GError) error = NULL;

      if (!sy_region_read (text->str, text->len, region, &error))
        fail_msg ("%s: %s", ids[i], error->message);
      assert_string_equal (region->id, ids[i]);
      assert_true (sy_text_says (region->title) && sy_text_says (region->edition));
      assert_int_equal (region->has_units, strcmp (ids[i], "other") != 0);
      assert_int_equal (region->n_defers_to > 0, strcmp (ids[i], "other") != 0);
      for (int k = 0; k < region->n_defers_to; k++)
        {
          const SyDefersTo *row = &region->defers_to[k];

          assert_true (sy_text_says (row->title) && sy_text_says (row->section) && sy_text_says (row->about));
          assert_true (sy_text_says (row->source));
          /* what says that it is from memory is not passed off as read */
          if (strstr (row->source, "from memory") != NULL)
            assert_true (row->from_memory);
        }
      for (int k = 0; k < region->n_intervals; k++)
        {
          const SyInterval *interval = &region->intervals[k];

          assert_true (sy_text_says (interval->what) && sy_text_says (interval->title) && sy_text_says (interval->source));
          assert_int_equal ((interval->months > 0) + (interval->days > 0) + (*interval->when != '\0'), 1);
          if (strstr (interval->source, "from memory") != NULL)
            assert_true (interval->from_memory);
        }
    }
  assert_null (sy_region_bytes ("nowhere"));
}

/* Nobody's two readings of these agree: they stay from memory. */
static void
where_readings_differ_it_stays_from_memory (void **state)
{
  g_autofree SyRegion *uk = g_new0 (SyRegion, 1), *us = g_new0 (SyRegion, 1);
  g_autoptr (GString) uk_text = region_text ("uk"), us_text = region_text ("us");
  int found = 0;

  (void) state;
  assert_true (sy_region_read (uk_text->str, uk_text->len, uk, NULL));
  assert_true (sy_region_read (us_text->str, us_text->len, us, NULL));
  for (int i = 0; i < uk->n_intervals; i++)
    if (strcmp (uk->intervals[i].section, "reg. 9(3)(a)") == 0 && uk->intervals[i].months == 12)
      found += uk->intervals[i].from_memory ? 1 : 100;
  for (int i = 0; i < us->n_intervals; i++)
    if (strcmp (us->intervals[i].title, "29 CFR 1910.179") == 0)
      found += us->intervals[i].from_memory ? 1 : 100;
  for (int i = 0; i < us->n_defers_to; i++)
    if (strcmp (us->defers_to[i].title, "29 CFR 1910.179") == 0)
      found += us->defers_to[i].from_memory ? 1 : 100;
  assert_int_equal (found, 4);
}

static void
reading_is_strict (void **state)
{
  (void) state;
  assert_region_refused ("uk", "\"id\": \"uk\"", "\"id\": \"uk\", \"flag\": 1", "flag");
  assert_region_refused ("uk", "\"id\": \"uk\"", "\"id\": \"uk\", \"id\": \"gb\"", "id");
  assert_region_refused ("uk", "\"edition\"", "\"printing\"", "printing");
  assert_region_refused ("uk", "\"metric\"", "\"stone\"", "metric or us");
  assert_region_refused ("uk", "\"title\": \"United Kingdom\"", "\"title\": \"\"", "1 to 199");
  assert_region_refused ("uk", "\"about\": \"avoid", "\"about\": 1, \"x\": \"avoid", "x: unknown member");
  assert_region_refused ("uk", "\"source\": \"legislation.gov.uk, SI 1992/2793 reg. 4\", ", "", "\"source\" is missing");
  assert_region_refused ("uk", "\"section\": \"reg. 4(1)(a)\", ", "", "\"section\" is missing");
  assert_region_refused ("uk", "[\"lift\", ", "[\"juggle\", ", "ids of methods");
  assert_region_refused ("uk", "[\"lift\", ", "[\"lift\", \"lift\", ", "each once");
  assert_region_refused ("uk", "[\"sling\", ", "[\"rope\", ", "a kind of gear");
  assert_region_refused ("uk", "\"months\": 6", "\"months\": 0", "from 1 to 1200");
  assert_region_refused ("uk", "\"months\": 6", "\"months\": 6, \"days\": 7", "exactly one of");
  assert_region_refused ("uk", "\"months\": 6, ", "", "exactly one of");
  assert_region_refused ("uk", "\"from_memory\": false", "\"from_memory\": \"no\"", "true or false");
  assert_region_refused ("other", "\"intervals\": []", "\"intervals\": {}", "a list");
  assert_region_refused ("other", "{", "[", "");
}

static void
a_policy_with_a_region_reads_back_as_both (void **state)
{
  const char *const *ids = sy_region_ids ();

  (void) state;
  for (gsize i = 0; ids[i] != NULL; i++)
    {
      g_autoptr (GString) text = policy_text ("default", ids[i]), own = region_text (ids[i]);
      g_autoptr (GBytes) bytes = sy_policy_builtin ();
      g_autofree SyPolicy *plain = g_new0 (SyPolicy, 1), *both = g_new0 (SyPolicy, 1);
      g_autofree SyRegion *region = g_new0 (SyRegion, 1);
      g_autofree char *id = g_strdup_printf ("steelyard-default-%s", ids[i]);

      assert_true (sy_policy_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), plain, NULL));
      assert_true (sy_region_read (own->str, own->len, region, NULL));
      assert_true (sy_policy_read (text->str, text->len, both, NULL));
      assert_string_equal (both->id, id);
      assert_int_equal (both->version, plain->version);
      assert_true (both->has_region && !plain->has_region);
      assert_memory_equal (&both->region, region, sizeof *region);
      assert_int_equal (both->n_rows, plain->n_rows);
      assert_memory_equal (both->rows, plain->rows, sizeof plain->rows);
      assert_memory_equal (both->tolerances, plain->tolerances, sizeof plain->tolerances);
      assert_string_equal (both->loosened_because, "");
      assert_true (sy_policy_says_defers_to (both));
      assert_false (sy_policy_says_defers_to (plain));
    }
}

static void
a_policy_takes_one_region_that_there_is (void **state)
{
  g_autoptr (GString) text = policy_text ("uk-filter", "uk");
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_true (sy_policy_read (text->str, text->len, policy, NULL));
  assert_string_equal (policy->id, "steelyard-uk-filter-uk");
  assert_null (sy_region_into_policy (text->str, text->len, "us", &error));
  assert_non_null (strstr (error->message, "a region of its own, uk"));
  g_clear_error (&error);
  assert_null (sy_region_into_policy (text->str, text->len, "", &error));
  assert_non_null (strstr (error->message, "allowed: au, ca, eu, other, uk, us"));
  g_clear_error (&error);
  assert_null (sy_region_into_policy ("{}", 2, "uk", &error));
  assert_true (g_str_has_prefix (error->message, "policy, line 1"));
  g_string_replace (text, "\"edition\": \"1", "\"colour\": 2, \"edition\": \"1", 1);
  assert_policy_refused (text, "colour: unknown member");
}

/* The shortest of the rules about a kind, as a result takes it. */
static int
months_of (const SyPolicy *policy, SyGearKind kind)
{
  int months = 0;

  for (int i = 0; i < policy->n_examinations; i++)
    if (policy->examinations[i].kind == kind)
      months = months == 0 ? policy->examinations[i].months : MIN (months, policy->examinations[i].months);
  return months;
}

static void
an_interval_is_sooner_or_nothing (void **state)
{
  const char *const *ids = sy_region_ids ();
  g_autoptr (GBytes) bytes = sy_policy_builtin ();
  g_autofree SyPolicy *plain = g_new0 (SyPolicy, 1), *both = g_new0 (SyPolicy, 1);
  g_autoptr (GString) uk = policy_text ("default", "uk"), shorter = policy_text ("default", "uk");

  (void) state;
  assert_true (sy_policy_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), plain, NULL));
  for (gsize i = 0; ids[i] != NULL; i++)
    {
      g_autoptr (GString) text = policy_text ("default", ids[i]);

      assert_true (sy_policy_read (text->str, text->len, both, NULL));
      for (int kind = 0; kind < SY_N_GEAR_KINDS; kind++)
        assert_true (months_of (both, (SyGearKind) kind) <= months_of (plain, (SyGearKind) kind));
    }
  /* A region that has longer ones changes nothing; one that has shorter ones does. */
  assert_int_equal (g_string_replace (uk, "\"beam\"], \"months\": 6", "\"beam\"], \"months\": 60", 1), 1);
  assert_true (sy_policy_read (uk->str, uk->len, both, NULL));
  assert_int_equal (months_of (both, SY_GEAR_SLING), 6);
  assert_int_equal (g_string_replace (shorter, "\"beam\"], \"months\": 6", "\"beam\"], \"months\": 3", 1), 1);
  assert_true (sy_policy_read (shorter->str, shorter->len, both, NULL));
  assert_int_equal (months_of (both, SY_GEAR_SLING), 3);
  assert_int_equal (months_of (both, SY_GEAR_HOIST), 12);
}

/* What the program says, the region, the site: in that order. */
static void
rules_of_examination_stand_in_order (void **state)
{
  g_autoptr (GString) text = policy_text ("default", "uk");
  g_autofree SyPolicy *own = g_new0 (SyPolicy, 1), *inherited = g_new0 (SyPolicy, 1);
  char *from, *to;

  (void) state;
  assert_true (sy_policy_read (text->str, text->len, own, NULL));
  assert_true (g_str_has_prefix (own->examinations[0].regulation, "Lifting Operations and Lifting Equipment Regulations 1998"));
  assert_int_equal (own->n_examinations, 12 + 7 + 4);
  from = strstr (text->str, "  \"examinations\": [");
  to = strstr (from, "],\n") + 3;
  g_string_erase (text, from - text->str, to - from);
  assert_true (sy_policy_read (text->str, text->len, inherited, NULL));
  assert_int_equal (inherited->n_examinations, own->n_examinations);
  assert_memory_equal (&inherited->examinations[12], own->examinations, 11 * sizeof own->examinations[0]);
  assert_memory_equal (inherited->examinations, &own->examinations[11], 12 * sizeof own->examinations[0]);
}

static void
a_site_has_rules_of_its_own (void **state)
{
  g_autoptr (GString) text = policy_text ("default", "uk");
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  const SyDefersTo *row;
  int n = 0;

  (void) state;
  g_string_replace (text, "  \"region\": {",
                    "  \"rules\": [ {\"title\": \"Site rule 12\", \"about\": \"no lift over 15 kg\", \"methods\": [\"lift\"]},\n"
                    "    {\"title\": \"Works order 3\", \"section\": \"2.1\", \"about\": \"two at the crane\"} ],\n"
                    "  \"region\": {",
                    1);
  assert_true (sy_policy_read (text->str, text->len, policy, NULL));
  assert_int_equal (policy->n_rules, 2);
  while ((row = sy_policy_defers_to (policy, sy_method_find ("lift"), n)) != NULL)
    n++;
  assert_int_equal (n, 3 + 1 + 2);
  assert_string_equal (sy_policy_defers_to (policy, sy_method_find ("lift"), 4)->title, "Site rule 12");
  assert_string_equal (sy_policy_defers_to (policy, sy_method_find ("case"), 1)->title, "Works order 3");
  assert_null (sy_policy_defers_to (policy, sy_method_find ("case"), 2));
  g_string_replace (text, "\"section\": \"2.1\"", "\"section\": \"2.1\", \"months\": 1", 1);
  assert_policy_refused (text, "months: unknown member");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_region_reads_and_every_row_has_its_source),
    cmocka_unit_test (where_readings_differ_it_stays_from_memory),
    cmocka_unit_test (reading_is_strict),
    cmocka_unit_test (a_policy_with_a_region_reads_back_as_both),
    cmocka_unit_test (a_policy_takes_one_region_that_there_is),
    cmocka_unit_test (an_interval_is_sooner_or_nothing),
    cmocka_unit_test (rules_of_examination_stand_in_order),
    cmocka_unit_test (a_site_has_rules_of_its_own),
  };

  return cmocka_run_group_tests_name ("region-file", tests, NULL, NULL);
}
