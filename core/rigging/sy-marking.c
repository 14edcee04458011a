/* SPDX-License-Identifier: MIT */
#include "sy-marking.h"

#include <math.h>
#include <stddef.h>

#include "sy-units.h"

#define PI 3.14159265358979323846
#define MM_PER_IN 25.4
#define LEN(array) (sizeof (array) / sizeof ((array)[0]))
/* Nominal sizes are written rounded: 5/8 in as 16 mm. */
#define SIZE_ROUNDING 1.01

typedef struct
{
  double size, wll;
} Row;

bool
sy_marking_cannot_be (double wll_kg, const SyMarking *largest)
{
  return wll_kg > largest->wll_kg * SY_MARKING_ROUNDING;
}

bool
sy_marking_chain (double diameter_mm, int grade, SyMarking *out)
{
  /* Inch sizes and the chain that is sold as them: OSHA, Guidance on Safe Sling Use, tables 1 and 2. */
  static const double inches[][2] = {
    { 7 / 32., 5.5 }, { 9 / 32., 7 }, { 5 / 16., 8 }, { 3 / 8., 10 }, { 1 / 2., 13 },
    { 5 / 8., 16 }, { 3 / 4., 20 }, { 7 / 8., 22 }, { 1, 26 }, { 1.25, 32 },
  };
  double stress = grade == 8 ? 200 : grade == 10 ? 250 : 300; /* N/mm² */
  double d = diameter_mm;

  if (!(diameter_mm > 0))
    return false;
  for (size_t i = 0; i < LEN (inches); i++)
    if (fabs (diameter_mm / (inches[i][0] * MM_PER_IN) - 1) <= SIZE_ROUNDING - 1)
      d = fmax (d, inches[i][1]);
  *out = (SyMarking) {
    .wll_kg = 2 * PI / 4 * d * d * stress / SY_GRAVITY,
    .source = "grade of chain at a design factor of 4; OSHA, Guidance on Safe Sling Use",
    .from_memory = stress > 250,
  };
  return true;
}

bool
sy_marking_wire_rope (double diameter_mm, SyMarking *out)
{
  /* kg for each mm²: 7.55 tons of 2,000 lb at 3/8 in, raised from grade 1770 to 1960. */
  const double strength = 7.55 * 2000 * SY_KG_PER_LB / (0.375 * MM_PER_IN * 0.375 * MM_PER_IN) * 1960 / 1770;

  if (!(diameter_mm > 0))
    return false;
  *out = (SyMarking) {
    .wll_kg = diameter_mm * diameter_mm * strength * 0.95 / 5,
    .source = "strength of wire rope of grade 1960, splice 0.95, design factor 5",
    .from_memory = true,
  };
  return true;
}

bool
sy_marking_eyebolt (SyEyeboltFamily family, double diameter_mm, SyMarking *out)
{
  /* mm, kg; M30 and M36 of the older printings, which are the larger. */
  static const Row din[] = {
    { 10, 230 }, { 12, 340 }, { 16, 700 }, { 20, 1200 }, { 24, 1800 }, { 30, 3600 }, { 36, 5100 }, { 42, 6300 },
    { 48, 8600 }, { 56, 11500 }, { 64, 16000 },
  };
  /* in, lb */
  static const Row asme[] = {
    { 1 / 4., 400 }, { 5 / 16., 680 }, { 3 / 8., 1000 }, { 7 / 16., 1380 }, { 1 / 2., 1840 }, { 9 / 16., 2370 },
    { 5 / 8., 2940 }, { 3 / 4., 4340 }, { 7 / 8., 6000 }, { 1, 7880 }, { 9 / 8., 9920 }, { 1.25, 12600 },
    { 1.5, 18260 }, { 1.75, 24700 }, { 2, 32500 },
  };
  bool is_din = family == SY_EYEBOLT_DIN_580;
  const Row *rows = is_din ? din : asme;
  size_t n = is_din ? LEN (din) : LEN (asme);

  if (family == SY_EYEBOLT_BS_4278 || !(diameter_mm > 0))
    return false;
  for (size_t i = 0; i < n; i++)
    if (diameter_mm <= rows[i].size * (is_din ? 1 : MM_PER_IN) * SIZE_ROUNDING)
      {
        *out = (SyMarking) {
          .wll_kg = rows[i].wll * (is_din ? 1 : SY_KG_PER_LB),
          .source = is_din ? "DIN 580, load table" : "ASME B18.15, shoulder eyebolts of carbon steel",
          .from_memory = true,
        };
        return true;
      }
  return false;
}
