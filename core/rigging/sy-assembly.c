/* SPDX-License-Identifier: MIT */
#include "sy-assembly.h"

#define TOLERANCE 1e-9
#define RADIAN (3.14159265358979323846 / 180)
#define FLATTEST 60.0
/* EN, from memory. */
#define BAND_END 45.0
#define PARALLEL 6.0
#define EVEN_SHARE 0.8
#define EVEN_STEEPEST 15.0
#define EVEN_DIFFERENCE 15.0

/* What is no number stays so: it must not pass as the better of two. */
static double
extreme (const double *values, int n, bool largest)
{
  double best = values[0];

  for (int i = 1; i < n; i++)
    if ((largest ? values[i] > best : values[i] < best) || isnan (values[i]))
      best = values[i];
  return best;
}

/* Largest less smallest gap between neighbours round the hook in plan. */
static double
gap_difference (const SyAssembly *assembly)
{
  double sorted[SY_PARTS_MAX], least = 360, most = 0;
  int n = assembly->n;

  for (int i = 0; i < n; i++)
    {
      double turned = assembly->azimuth_deg[i] - 360 * floor (assembly->azimuth_deg[i] / 360);
      int at = i;

      for (; at > 0 && turned < sorted[at - 1]; at--)
        sorted[at] = sorted[at - 1];
      sorted[at] = turned;
    }
  for (int i = 0; i < n; i++)
    {
      double gap = i + 1 < n ? sorted[i + 1] - sorted[i] : sorted[0] + 360 - sorted[i];

      least = fmin (least, gap);
      most = fmax (most, gap);
    }
  return most - least;
}

static void
by_us (const SyAssembly *assembly, SyAssemblyCapacity *out)
{
  double flattest = extreme (assembly->angle_deg, assembly->n, true);

  *out = (SyAssemblyCapacity) {
    .counted = assembly->n < 2 ? 1 : 2,
    .symmetric = true,
    .rule = SY_RULE_US,
  };
  if (!(flattest <= FLATTEST + TOLERANCE))
    {
      out->source = "OSHA sling guidance: not flatter than 30 degrees from the horizontal";
      return;
    }
  out->allowed = true;
  out->source = "US Navy, Equipment Operator training (14080): two legs carry";
  out->mode_factor = out->counted * cos (flattest * RADIAN);
  out->capacity = out->mode_factor * assembly->leg_wll;
}

/* 0 where none is given. */
static double
mode_factor (const SyAssembly *assembly, bool basket, double flattest)
{
  if (assembly->n == 1)
    return flattest <= BAND_END + TOLERANCE ? 1.0 : 0;
  if (basket && flattest <= PARALLEL + TOLERANCE)
    return 2.0;
  if (flattest <= BAND_END + TOLERANCE)
    return assembly->n == 2 ? 1.4 : 2.1;
  if (flattest <= FLATTEST + TOLERANCE)
    return assembly->n == 2 ? 1.0 : 1.5;
  return 0;
}

static unsigned
unevenness (const SyAssembly *assembly, bool basket, double factor)
{
  double steepest = extreme (assembly->angle_deg, assembly->n, false);
  double flattest = extreme (assembly->angle_deg, assembly->n, true);
  unsigned uneven = 0;

  if (assembly->n == 1)
    return 0;
  if (!(flattest - steepest <= EVEN_DIFFERENCE + TOLERANCE))
    uneven |= SY_UNEVEN_ANGLES;
  if (basket)
    return uneven;
  if (!(assembly->mass <= EVEN_SHARE * factor * assembly->leg_wll * (1 + TOLERANCE)))
    uneven |= SY_UNEVEN_LOAD;
  if (!(steepest >= EVEN_STEEPEST - TOLERANCE))
    uneven |= SY_UNEVEN_STEEP;
  if (assembly->n > 2 && !(gap_difference (assembly) <= EVEN_DIFFERENCE + TOLERANCE))
    uneven |= SY_UNEVEN_PLAN;
  return uneven;
}

static void
by_en (const SyAssembly *assembly, SyAssemblyCapacity *out)
{
  bool basket = assembly->slings == 1 && assembly->n == 2;
  double factor = mode_factor (assembly, basket, extreme (assembly->angle_deg, assembly->n, true));

  *out = (SyAssemblyCapacity) {
    .counted = assembly->n,
    .uneven = unevenness (assembly, basket, factor),
    .allowed = factor > 0,
    .rule = SY_RULE_EN,
    .source = "EN 818-4, EN 1492-1, EN 1492-2, EN 13414-1: mode factor",
    .from_memory = true,
  };
  out->symmetric = out->uneven == 0;
  if (!out->symmetric && out->allowed)
    {
      out->source = "EN 818-6, EN 13414-2: load not shared evenly";
      factor = assembly->n == 2 ? 1.0 : fmin (1.0, factor / 2);
    }
  out->mode_factor = factor;
  out->capacity = factor * assembly->leg_wll;
}

void
sy_assembly_capacity (const SyAssembly *assembly, SyRule rule, SyAssemblyCapacity *out)
{
  SyAssemblyCapacity us, en;

  by_us (assembly, &us);
  by_en (assembly, &en);
  if (rule == SY_RULE_BOTH)
    *out = en.capacity < us.capacity ? en : us;
  else
    *out = rule == SY_RULE_EN ? en : us;
}

SyTagCapacity
sy_assembly_leg_of_tag (double wll, int legs, SyBand band, double angle_deg)
{
  static const double ends[SY_N_BANDS][2] = {
    [SY_BAND_0_30] = { 0, 30 },
    [SY_BAND_0_45] = { 0, 45 },
    [SY_BAND_0_60] = { 0, 60 },
    [SY_BAND_45_60] = { 45, 60 },
  };
  int n = legs < 3 ? legs : 3;

  if (!(angle_deg >= ends[band][0] - TOLERANCE && angle_deg <= ends[band][1] + TOLERANCE))
    return (SyTagCapacity) { 0, false };
  return (SyTagCapacity) { n < 2 ? wll : wll / (n * cos (ends[band][1] * RADIAN)), true };
}
