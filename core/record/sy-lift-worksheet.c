/* SPDX-License-Identifier: MIT */
#include "sy-lift-worksheet.h"

#include <math.h>

#include "sy-lift-facts.h"

static double
half_up (double value, double steps)
{
  /* 0.745 is stored a little below: the excess keeps it a half. */
  return floor (value * steps + 0.5 + 1e-9) / steps;
}

bool
sy_lift_worksheet_has (const SyFindings *findings, int end)
{
  return findings->quantities[end * SY_LIFT_PER_END + SY_LIFT_HM].state != SY_STATE_ABSENT;
}

void
sy_lift_worksheet (const SyFindings *findings, int end, SyLiftWorksheet *out)
{
  const SyQuantity *q = &findings->quantities[end * SY_LIFT_PER_END];
  double heaviest = findings->quantities[SY_LIFT_ALL_MASS_EACH].value
                    * findings->quantities[SY_LIFT_ALL_PERSONS].value;
  double product = sy_lift_constants (findings->units)->load_constant;

  for (int i = 0; i < 6; i++)
    {
      out->multipliers[i] = half_up (q[SY_LIFT_HM + i].value, 100);
      product *= out->multipliers[i];
    }
  out->rwl = half_up (product, 10);
  out->li = product > 0 ? half_up (heaviest / product, 10) : INFINITY;
}
