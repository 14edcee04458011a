/* SPDX-License-Identifier: MIT */
#include "sy-spread.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

/* The natural logarithm of 0 < x < 1 by + - × ÷ alone, so that it is the same to the bit everywhere:
   x = m · 2^k with m in [sqrt(1/2), sqrt(2)), ln m = 2 artanh((m - 1) / (m + 1)). */
static double
log_exact_steps (double x)
{
  const double ln2_high = 0x1.62e42fee00000p-1, ln2_low = 0x1.a39ef35793c76p-33;
  uint64_t bits;
  int k;

  memcpy (&bits, &x, sizeof bits);
  k = (int) (bits >> 52) - 1023;
  bits = (bits & UINT64_C (0x000fffffffffffff)) | UINT64_C (0x3ff0000000000000);
  double m;
  memcpy (&m, &bits, sizeof m);
  if (m > 1.4142135623730951)
    {
      m /= 2;
      k++;
    }
  double s = (m - 1) / (m + 1), s2 = s * s, sum = 0;
  for (int n = 21; n >= 3; n -= 2)
    sum = (sum + 1.0 / n) * s2;
  return k * ln2_high + (2 * s + (2 * s * sum + k * ln2_low));
}

static double
polynomial (const double *c, int n, double x)
{
  double sum = c[n - 1];

  for (int i = n - 2; i >= 0; i--)
    sum = sum * x + c[i];
  return sum;
}

double
sy_normal_inverse (double p)
{
  /* AS 241, PPND16: coefficients a/b for |p - 1/2| <= 0.425, c/d and e/f for the tails. */
  static const double a[] = { 3.3871328727963666080e0, 1.3314166789178437745e+2, 1.9715909503065514427e+3,
                              1.3731693765509461125e+4, 4.5921953931549871457e+4, 6.7265770927008700853e+4,
                              3.3430575583588128105e+4, 2.5090809287301226727e+3 };
  static const double b[] = { 1, 4.2313330701600911252e+1, 6.8718700749205790830e+2, 5.3941960214247511077e+3,
                              2.1213794301586595867e+4, 3.9307895800092710610e+4, 2.8729085735721942674e+4,
                              5.2264952788528545610e+3 };
  static const double c[] = { 1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0,
                              3.64784832476320460504e0, 1.27045825245236838258e0, 2.41780725177450611770e-1,
                              2.27238449892691845833e-2, 7.74545014278341407640e-4 };
  static const double d[] = { 1, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
                              1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4,
                              1.05075007164441684324e-9 };
  static const double e[] = { 6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0,
                              2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
                              2.71155556874348757815e-5, 2.01033439929228813265e-7 };
  static const double f[] = { 1, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
                              7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7,
                              2.04426310338993978564e-15 };
  double q = p - 0.5;

  if (fabs (q) <= 0.425)
    {
      double r = 0.180625 - q * q;
      return q * polynomial (a, 8, r) / polynomial (b, 8, r);
    }
  double r = sqrt (-log_exact_steps (q < 0 ? p : 1 - p));
  double x = r <= 5 ? polynomial (c, 8, r - 1.6) / polynomial (d, 8, r - 1.6)
                    : polynomial (e, 8, r - 5) / polynomial (f, 8, r - 5);
  return q < 0 ? -x : x;
}
