/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "sy-lift.h"
#include "sy-policy-file.h"

/* The built-in policy with one piece of text replaced. */
static gboolean
read_with (const char *from, const char *to, SyPolicy *out, GError **error)
{
  g_autoptr (GBytes) bytes = sy_policy_builtin ();
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  g_autoptr (GString) text = g_string_new_len (data, (gssize) size);

  if (from != NULL)
    assert_int_equal (g_string_replace (text, from, to, 1), 1);
  return sy_policy_read (text->str, text->len, out, error);
}

static void
assert_refused (const char *from, const char *to, const char *named)
{
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  g_autoptr (GError) error = NULL;

  if (read_with (from, to, policy, &error))
    fail_msg ("accepted: %s", to);
  assert_int_equal (error->code, SY_EXCHANGE_ERROR_POLICY);
  if (strstr (error->message, named) == NULL)
    fail_msg ("“%s” does not name “%s”", error->message, named);
  assert_string_equal (policy->id, ""); /* untouched */
}

static void
test_builtin (void **state)
{
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  g_autoptr (GError) error = NULL;
  const SyMethod *lift = sy_method_find ("lift");
  double half;

  (void) state;
  assert_true (read_with (NULL, NULL, policy, &error));
  assert_string_equal (policy->id, "steelyard-default");
  assert_int_equal (policy->default_assigned, SY_ASSIGNED_MIXED_ADULTS);
  assert_close (sy_policy_goal (policy, lift, SY_UNITS_US).index, 1, 0, 0);
  assert_close (sy_policy_goal (policy, lift, SY_UNITS_METRIC).ratio, 1, 0, 0);

  /* Tolerances are half-widths in the unit of the document; what was not said how counts as by eye. */
  for (size_t i = 0; i < lift->n_measured; i++)
    if (strcmp (lift->measured[i].path, "origin.H") == 0)
      {
        assert_true (sy_policy_tolerance (policy, lift, &lift->measured[i], SY_HOW_MEASURED, SY_UNITS_METRIC, &half));
        assert_close (half, 5, 0, 0);
        assert_true (sy_policy_tolerance (policy, lift, &lift->measured[i], -1, SY_UNITS_US, &half));
        assert_close (half, 8 / 2.54, 1e-12, 0);
      }
}

/* The other policy that comes with the program is the built-in one and the guideline filter, nothing else. */
static void
test_filter_is_the_default_and_its_rows (void **state)
{
  g_autofree SyPolicy *plain = g_new0 (SyPolicy, 1), *filter = g_new0 (SyPolicy, 1);
  g_autoptr (GBytes) bytes = sy_policy_named ("uk-filter");
  gsize size;
  const char *data;
  int n = 0;

  (void) state;
  assert_non_null (bytes);
  data = g_bytes_get_data (bytes, &size);
  assert_true (sy_policy_read (data, size, filter, NULL));
  assert_true (read_with (NULL, NULL, plain, NULL));
  assert_string_equal (filter->id, "steelyard-uk-filter");
  assert_string_equal (filter->loosened_because, "");
  assert_int_equal (filter->version, plain->version);
  for (int i = 0; i < filter->n_rows; i++)
    if (strncmp (filter->rows[i].symbol, "filter", 6) == 0)
      assert_int_equal (filter->rows[i].verdict, SY_VERDICT_IMPROVE);
    else
      {
        assert_true (n < plain->n_rows);
        assert_memory_equal (&filter->rows[i], &plain->rows[n], sizeof filter->rows[i]);
        n++;
      }
  assert_int_equal (n, plain->n_rows);
  assert_true (filter->n_rows > plain->n_rows);
  assert_memory_equal (filter->tolerances, plain->tolerances, sizeof plain->tolerances);
  assert_memory_equal (filter->examinations, plain->examinations, sizeof plain->examinations);
  assert_true (sy_policy_context (filter, SY_UNITS_METRIC, NAN).wants_filter);
  assert_false (sy_policy_context (plain, SY_UNITS_METRIC, NAN).wants_filter);
  assert_null (sy_policy_named ("no-such-policy"));
}

static void
test_every_row_has_a_source (void **state)
{
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);

  (void) state;
  assert_true (read_with (NULL, NULL, policy, NULL));
  assert_true (policy->n_rows >= 4);
  for (int i = 0; i < policy->n_rows; i++)
    {
      assert_true (*policy->rows[i].source != '\0');
      /* a figure of ISO 11228-1 or of EN 1005-2, or what says that it is from memory, is not passed off as checked */
      if (strstr (policy->rows[i].source, "ISO") != NULL || strstr (policy->rows[i].source, "EN 1005") != NULL
          || strstr (policy->rows[i].source, "from memory") != NULL)
        assert_true (policy->rows[i].from_memory);
    }
}

static void
test_refusals (void **state)
{
  (void) state;
  assert_refused ("\"version\": 3", "\"version\": 0", "version");
  assert_refused ("\"version\": 3", "\"version\": 3, \"version\": 2", "version");
  assert_refused ("\"draws\": 2000", "\"draws\": 5", "draws");
  assert_refused ("\"draws\": 2000", "\"draws\": 2000, \"colour\": 1", "colour");
  assert_refused ("\"mixed-adults\"", "\"anybody\"", "any-age");
  assert_refused ("\"symbol\": \"LI\"", "\"symbol\": \"LX\"", "index-goal");
  assert_refused ("\"over\": 1.0, \"verdict\": \"improve\"", "\"over\": 1.0, \"verdict\": \"maybe\"", "maybe");
  assert_refused ("\"over\": 1.0", "\"over\": 1.0, \"under\": 2", "exactly one");
  assert_refused ("\"unit\": \"%\"", "\"unit\": \"furlong\"", "cm, deg");
  assert_refused ("{", "{ // a comment", "key in quotation marks");
}

/* Loosening needs a written reason; tightening does not. */
static void
test_loosening (void **state)
{
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);

  (void) state;
  assert_refused ("\"over\": 3.0", "\"over\": 3.5", "loosened_because");
  assert_refused ("\"symbol\": \"LI\", \"over\": 3.0, \"verdict\": \"mechanical\"",
                  "\"symbol\": \"LI\", \"over\": 3.0, \"verdict\": \"improve\"", "loosened_because");
  assert_refused ("\"assigned\": \"mixed-adults\"", "\"assigned\": \"men-20-45\"", "assigned");

  assert_true (read_with ("\"over\": 3.0", "\"over\": 2.5", policy, NULL));
  assert_string_equal (policy->loosened_because, "");
  assert_true (read_with ("\"assigned\": \"mixed-adults\"", "\"assigned\": \"any-age\"", policy, NULL));
  assert_true (read_with ("\"version\": 3,",
                          "\"version\": 4, \"loosened_because\": \"trial on line 4\", \"assigned\": \"men-20-45\",",
                          policy, NULL)
               == FALSE); /* a key twice is still refused */
  assert_true (read_with ("\"assigned\": \"mixed-adults\"",
                          "\"assigned\": \"men-20-45\", \"loosened_because\": \"agreed with the works council\"", policy,
                          NULL));
  assert_string_equal (policy->loosened_because, "agreed with the works council");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_builtin),
    cmocka_unit_test (test_filter_is_the_default_and_its_rows),
    cmocka_unit_test (test_every_row_has_a_source),
    cmocka_unit_test (test_refusals),
    cmocka_unit_test (test_loosening),
  };

  return cmocka_run_group_tests_name ("policy-file", tests, NULL, NULL);
}
