/* SPDX-License-Identifier: MIT */
#ifndef SY_TEST_H
#define SY_TEST_H

/* What every C test needs: cmocka with its prerequisites, and comparisons in double. */

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* cmocka's assert_float_equal compares in float, which hides the last nine digits; this compares in
   double. Equal infinities are close; NaN is close to nothing. */
static inline bool
sy_test_is_close (double actual, double expected, double absolute, double relative)
{
  if (isnan (actual) || isnan (expected))
    return false;
  if (isinf (actual) || isinf (expected))
    return isinf (actual) && isinf (expected) && signbit (actual) == signbit (expected);
  return fabs (actual - expected) <= fmax (absolute, relative * fabs (expected));
}

static inline void
sy_test_assert_close (double actual, double expected, double absolute, double relative,
                      const char *what, const char *file, int line)
{
  if (sy_test_is_close (actual, expected, absolute, relative))
    return;
  print_error ("%s: got %.17g, expected %.17g, difference %.3g, allowed %.3g or %.3g of it\n", what,
               actual, expected, actual - expected, absolute, relative);
  _fail (file, line);
}

/* Within @absolute, or within @relative of the expected value. */
#define assert_close(actual, expected, absolute, relative) \
  sy_test_assert_close ((actual), (expected), (absolute), (relative), #actual, __FILE__, __LINE__)

/* The same with words on which case it is. */
#define assert_close_in(label, actual, expected, absolute, relative) \
  sy_test_assert_close ((actual), (expected), (absolute), (relative), (label), __FILE__, __LINE__)

/* Equal to the bit, so that -0 differs from 0 and a NaN equals itself. */
#define assert_same_bits(actual, expected) \
  do \
    { \
      double sy_actual = (actual), sy_expected = (expected); \
      if (memcmp (&sy_actual, &sy_expected, sizeof sy_actual) != 0) \
        { \
          print_error ("%s: got %.17g, expected %.17g to the bit\n", #actual, sy_actual, \
                       sy_expected); \
          _fail (__FILE__, __LINE__); \
        } \
    } \
  while (0)

#endif
