/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-spread.h"

typedef struct
{
  double p;
  double quantile;
} Value;

static const Value values[] = {
#include "normal-values.inc"
};
#define N_VALUES (sizeof values / sizeof values[0])

static void
test_it_gives_the_quantiles_of_another_program (void **state)
{
  (void) state;
  assert_true (N_VALUES > 5000);
  for (size_t i = 0; i < N_VALUES; i++)
    {
      char label[64];

      snprintf (label, sizeof label, "p = %.17g", values[i].p);
      assert_close_in (label, sy_normal_inverse (values[i].p), values[i].quantile, 1e-15, 1e-13);
    }
}

/* The other program uses the same published approximation; the C library's error function does not. */
static void
test_the_area_below_a_quantile_is_its_probability (void **state)
{
  (void) state;
  for (size_t i = 0; i < N_VALUES; i++)
    {
      double p = values[i].p, x = sy_normal_inverse (p);
      double tail = p <= 0.5 ? p : 1 - p;
      double area = 0.5 * erfc (fabs (x) / sqrt (2));
      char label[64];

      snprintf (label, sizeof label, "p = %.17g", p);
      /* A last bit of x weighs x² times as much in the tail. */
      assert_close_in (label, area, tail, 0, 1e-14 * (4 + x * x));
    }
}

static void
test_it_is_odd_about_the_middle (void **state)
{
  (void) state;
  assert_same_bits (sy_normal_inverse (0.5), 0.0);
  for (int i = 1; i < 4096; i++)
    {
      double p = i / 8192.0; /* 1 - p is exact */

      assert_close (sy_normal_inverse (1 - p), -sy_normal_inverse (p), 0, 1e-14);
    }
}

static void
test_it_rises (void **state)
{
  double before = -INFINITY;

  (void) state;
  for (int i = 1; i < 1 << 20; i++)
    {
      double x = sy_normal_inverse (i / (double) (1 << 20));

      assert_true (x > before);
      before = x;
    }
}

static void
test_the_ends_are_finite (void **state)
{
  (void) state;
  assert_true (isfinite (sy_normal_inverse (5e-324)));
  assert_true (isfinite (sy_normal_inverse (2.2250738585072014e-308)));
  assert_true (isfinite (sy_normal_inverse (nextafter (1, 0))));
  assert_close (sy_normal_inverse (nextafter (1, 0)), 8.209536151601387, 0, 1e-12);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_it_gives_the_quantiles_of_another_program),
    cmocka_unit_test (test_the_area_below_a_quantile_is_its_probability),
    cmocka_unit_test (test_it_is_odd_about_the_middle),
    cmocka_unit_test (test_it_rises),
    cmocka_unit_test (test_the_ends_are_finite),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
