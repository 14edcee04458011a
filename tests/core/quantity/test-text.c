/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-text.h"

static void
test_parts_follow_one_another (void **state)
{
  char buffer[64];
  SyText text = { buffer, sizeof buffer, 0 };

  (void) state;
  sy_text_add (&text, "T = ");
  sy_text_add_rounded (&text, 2.0, 2);
  sy_text_add (&text, " / ");
  sy_text_add_number (&text, 0.1);
  sy_text_add (&text, " = ");
  sy_text_add_measure (&text, 19.6133, 3, SY_KIND_FORCE, SY_UNITS_METRIC);
  assert_string_equal (buffer, "T = 2 / 0.1 = 19.613 kN");
  assert_int_equal (text.at, strlen (buffer));
}

static void
test_goes_on_behind_what_is_there (void **state)
{
  char buffer[16] = "ab";
  SyText text = { buffer, sizeof buffer, 2 };

  (void) state;
  sy_text_add (&text, "");
  assert_string_equal (buffer, "ab");
  sy_text_add (&text, "c");
  assert_string_equal (buffer, "abc");
}

/* "\303\227" is one character of two bytes. */
static void
test_cut_between_characters (void **state)
{
  static const struct
  {
    size_t size;
    const char *expected;
  } cases[] = { { 1, "" }, { 2, "" }, { 3, "\303\227" }, { 4, "\303\227" }, { 5, "\303\227\303\227" } };

  (void) state;
  for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
    {
      char buffer[8] = "!!!!!!!";
      SyText text = { buffer, cases[i].size, 0 };

      sy_text_add (&text, "\303\227\303\227");
      assert_string_equal (buffer, cases[i].expected);
      assert_int_equal (text.at, strlen (cases[i].expected));
      assert_int_equal (buffer[cases[i].size], '!');
    }
}

static void
test_full_stays_full (void **state)
{
  char buffer[4];
  SyText text = { buffer, sizeof buffer, 0 };

  (void) state;
  sy_text_add (&text, "abcdef");
  sy_text_add (&text, "ghi");
  assert_string_equal (buffer, "abc");
  assert_int_equal (text.at, 3);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_parts_follow_one_another),
    cmocka_unit_test (test_goes_on_behind_what_is_there),
    cmocka_unit_test (test_cut_between_characters),
    cmocka_unit_test (test_full_stays_full),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
