/* SPDX-License-Identifier: MIT */
#include "sy-date.h"
#include "sy-test.h"

/* Counts of days: the Unix epoch, and 2000-03-01 as 11017 days after it (POSIX time arithmetic). */
static void
test_known_days (void **state)
{
  double days = -1;

  (void) state;
  assert_true (sy_date_read ("1970-01-01", &days));
  assert_true (days == 0);
  assert_true (sy_date_read ("2000-03-01", &days));
  assert_true (days == 11017);
  assert_true (sy_date_read ("1969-12-31", &days));
  assert_true (days == -1);
}

static void
test_every_day_reads_back (void **state)
{
  char text[SY_DATE_TEXT_MAX];
  double first, last, back;

  (void) state;
  assert_true (sy_date_read ("0001-01-01", &first));
  assert_true (sy_date_read ("9999-12-31", &last));
  for (double day = first; day <= last; day += 1)
    {
      sy_date_print (day, text);
      if (!sy_date_read (text, &back) || back != day)
        fail_msg ("day %.0f prints \"%s\"", day, text);
    }
  sy_date_print (last + 1, text);
  assert_string_equal (text, "");
}

static void
test_what_is_no_date (void **state)
{
  static const char *const texts[] = { "", "2026-13-01", "2026-02-29", "1900-02-29", "2026-00-10", "2026-1-10",
                                       "0000-01-01", "2026/01/01", "2026-01-01 ", "26-01-01", "2026-01-0x" };
  double days = 5;

  (void) state;
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    if (sy_date_read (texts[i], &days))
      fail_msg ("\"%s\" was read", texts[i]);
  assert_true (days == 5);
  assert_true (sy_date_read ("2000-02-29", &days));
}

static void
test_months_end_where_a_month_is_short (void **state)
{
  char text[SY_DATE_TEXT_MAX];
  double days;

  (void) state;
  assert_true (sy_date_read ("2026-08-31", &days));
  sy_date_print (sy_date_add_months (days, 6), text);
  assert_string_equal (text, "2027-02-28");
  sy_date_print (sy_date_add_months (days, 12), text);
  assert_string_equal (text, "2027-08-31");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_known_days),
    cmocka_unit_test (test_every_day_reads_back),
    cmocka_unit_test (test_what_is_no_date),
    cmocka_unit_test (test_months_end_where_a_month_is_short),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
