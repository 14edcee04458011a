/* SPDX-License-Identifier: MIT */
#include "register-help.h"

/* What is said of an item of gear in a sentence, and that everything said has words. */

#define GEAR(more) "{\"method\":\"gear\",\"units\":\"metric\",\"kind\":\"shackle\",\"identity\":\"S-1\",\"wll\":2000" more "}"
#define DUE ",\"last_examined\":\"2026-09-01\",\"due\":\"2027-03-01\""

static void
test_the_result_in_a_sentence (void **state)
{
  static const struct
  {
    const char *facts, *words;
  } cases[] = {
    { GEAR (DUE), "In date until 2027-03-01, 96 days left." }, /* today is 2026-11-25 */
    { GEAR (DUE ",\"as_of\":\"2027-02-28\""), "In date until 2027-03-01, one day left." },
    { GEAR (DUE ",\"as_of\":\"2027-03-01\""), "In date until 2027-03-01, the last day." },
    { GEAR (DUE ",\"as_of\":\"2027-03-02\""), "Out of date since 2027-03-01." },
    { GEAR (DUE ",\"withdrawn\":true"), "Not to be used; its examination is due on 2027-03-01." },
    { GEAR (""), "Not known until when it is in date." },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (cases[i].facts);
      g_autofree char *words = sy_words_result (assessment->findings, NULL);

      assert_string_equal (words, cases[i].words);
    }
}

/* A sentence, with nothing left in braces. */
static void
assert_sentence (const char *id, const char *text)
{
  if (strcmp (id, text) == 0 || strpbrk (text, "{}") != NULL || strchr (text, ' ') == NULL)
    fail_msg ("%s is said as “%s”", id, text);
}

static void
test_everything_said_has_words (void **state)
{
  static const char *const facts[] = {
    GEAR (",\"withdrawn\":true,\"condition\":\"damaged\""),
    GEAR (",\"withdrawn\":true,\"withdrawn_why\":\"bent\",\"condition\":\"worn\",\"last_examined\":\"2027-01-01\""),
    GEAR (",\"interval_months\":12,\"examinations\":[{\"on\":\"2026-01-10\",\"result\":\"fail\",\"next\":\"2027-02-10\"}]"),
    GEAR (",\"interval_months\":1,\"examinations\":[{\"on\":\"2026-06-10\",\"result\":\"pass-with-remarks\","
          "\"next\":\"2026-12-10\"}]"),
    GEAR (DUE ",\"as_of\":\"2028-01-01\""),
    "{\"method\":\"gear\",\"units\":\"us\",\"kind\":\"sling\",\"identity\":\"1\",\"rated_as\":\"assembly\"}",
    "{\"method\":\"gear\",\"units\":\"us\",\"kind\":\"sling\",\"identity\":\"1\",\"material\":\"chain\"}",
    "{\"method\":\"gear\",\"units\":\"us\",\"kind\":\"sling\",\"identity\":\"1\",\"material\":\"wire-rope\",\"size\":0.375,"
    "\"rated_as\":\"leg\",\"wll\":9000}",
    "{\"method\":\"gear\",\"units\":\"us\",\"kind\":\"eyebolt\",\"identity\":\"1\"}",
  };
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (facts[i]);
      const SyFindings *findings = assessment->findings;

      for (int k = 0; k < findings->n_reasons; k++)
        {
          g_autofree char *words = sy_words_reason (findings, &findings->reasons[k], NULL);
          assert_sentence (findings->reasons[k].id, words);
          g_hash_table_add (ids, g_strdup (findings->reasons[k].id));
        }
      for (int k = 0; k < sy_words_n_cautions (findings); k++)
        {
          const char *id;
          g_autofree char *words = sy_words_caution (findings, k, &id, NULL);
          assert_sentence (id, words);
          g_hash_table_add (ids, g_strdup (id));
        }
    }
  static const char *const all[] = {
    "gear-withdrawn", "gear-withdrawn-because", "gear-damaged", "gear-worn", "gear-failed", "gear-passed-with-remarks",
    "gear-out-of-date", "gear-due-soon", "gear-no-due", "gear-examined-later", "gear-interval-long", "gear-due-late",
    "gear-due-after-interval", "gear-no-wll", "gear-no-rating-basis", "gear-tag-not-read", "gear-no-family",
    "gear-look-over", "marking-cannot-be-right", "from-memory", "screening",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (!g_hash_table_contains (ids, all[i]))
      fail_msg ("%s was never said", all[i]);
}

/* No day, no verdict on due dates. */
static void
test_without_a_day (void **state)
{
  (void) state;
  g_setenv ("STEELYARD_CLOCK", "tomorrow, at half past nine", TRUE);
  g_autoptr (SyAssessment) assessment = help_assess (GEAR (DUE));
  g_setenv ("STEELYARD_CLOCK", "2026-11-25T08:00:00Z", TRUE);

  assert_int_equal (assessment->findings->verdict, SY_VERDICT_INCOMPLETE);
  assert_string_equal (assessment->findings->reasons[0].id, "day-not-known");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_result_in_a_sentence),
    cmocka_unit_test (test_everything_said_has_words),
    cmocka_unit_test (test_without_a_day),
  };

  return cmocka_run_group_tests_name ("gear", tests, help_set_up, help_tear_down);
}
