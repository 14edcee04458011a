/* SPDX-License-Identifier: MIT */
#include "sy-psychophysical.h"

#include <math.h>

#define LN2 0.693147180559945309417

double
sy_psycho_ln (double x)
{
  int exponent;
  double m = frexp (x, &exponent), s, square, sum = 0;

  /* m in [√½, √2); ln m = 2 artanh ((m − 1) / (m + 1)) */
  if (m < 0.70710678118654752)
    {
      m *= 2;
      exponent--;
    }
  s = (m - 1) / (m + 1);
  square = s * s;
  for (int n = 23; n >= 3; n -= 2)
    sum = (sum + 1.0 / n) * square;
  return exponent * LN2 + 2 * s * (1 + sum);
}

/* e^−x for x from 0 to 50: a power of two and a short series. */
static double
fall (double x)
{
  double k = floor (x / LN2), rest = (x - k * 0x1.62e42fee00000p-1) - k * 0x1.a39ef35793c76p-33, term = 1, sum = 1;

  for (int n = 1; n <= 18; n++)
    {
      term *= -rest / n;
      sum += term;
    }
  return ldexp (sum, -(int) k);
}

/* The part of a normal distribution between its mean and z deviations from it, z from 0 to 9:
   φ(z) (z + z³/3 + z⁵/15 + …) */
static double
middle_part (double z)
{
  double term = z, sum = z;

  for (int n = 3; term > 1e-18 * sum; n += 2)
    {
      term *= z * z / n;
      sum += term;
    }
  return sum * fall (z * z / 2) * 0.398942280401432677940;
}

double
sy_psycho_share (double mean, double deviation, double load)
{
  double z = (mean - load) / deviation;

  if (z >= 9)
    return 100;
  if (z <= -9)
    return 0;
  double part = fmin (50, 100 * middle_part (fabs (z)));
  return z >= 0 ? 50 + part : 50 - part;
}

double
sy_psycho_quantile (int percent)
{
  return percent == 90 ? SY_PSYCHO_Z90 : percent == 75 ? SY_PSYCHO_Z75 : percent == 50 ? 0 : (double) NAN;
}
