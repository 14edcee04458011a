/* SPDX-License-Identifier: MIT */
#include "sy-reduction.h"

#include <stddef.h>

#define TOLERANCE 1e-9
#define CELSIUS(fahrenheit) (((fahrenheit) - 32) / 1.8)
#define LEN(array) (sizeof (array) / sizeof ((array)[0]))

/* A factor that holds up to and with a value. */
typedef struct
{
  double to, factor;
} Step;

static const SyReduction unaffected = { 1, "", false, true };

static SyReduction
refused (const char *source, bool from_memory)
{
  return (SyReduction) { 0, source, from_memory, false };
}

static SyReduction
by_steps (const Step *steps, size_t n, double low, double value, const char *source, bool from_memory)
{
  if (value >= low - TOLERANCE)
    for (size_t i = 0; i < n; i++)
      if (value <= steps[i].to + TOLERANCE)
        return (SyReduction) { steps[i].factor, source, from_memory, true };
  return refused (source, from_memory);
}

SyReduction
sy_reduction_choke (SyRule rule, SySlingMaterial material)
{
  SyReduction us = {
    0.75, "US Navy, Equipment Operator Basic; BC Association for Crane Safety, rigging quiz", false, true,
  };
  SyReduction en = { 0.8, "EN 818-4, EN 1492-1, EN 1492-2, EN 13414-1", true, true };

  if (material == SY_SLING_FIBRE_ROPE || material == SY_SLING_ROPE)
    us = (SyReduction) { 0.5, "29 CFR 1918 App. II table 2", false, true };
  /* The US figure is the smaller one for every material. */
  return rule == SY_RULE_EN ? en : us;
}

SyReduction
sy_reduction_choke_angle (double angle_deg)
{
  /* From below: 90 belongs to the step above it, 120 to the one below. */
  static const Step from[] = { { 90, 0.87 }, { 60, 0.74 }, { 30, 0.62 }, { 0, 0.49 } };
  static const char steps_source[] = "angle of choke, ASME B30.9";

  if (!(angle_deg <= 180 + TOLERANCE))
    return refused (steps_source, true);
  if (angle_deg > 120 + TOLERANCE)
    return (SyReduction) { 1, "OSHA, Guidance on Safe Sling Use", false, true };
  for (size_t i = 0; i < LEN (from); i++)
    if (angle_deg >= from[i].to - TOLERANCE)
      return (SyReduction) { from[i].factor, steps_source, true, true };
  return refused (steps_source, true);
}

SyReduction
sy_reduction_temperature (SySlingMaterial material, double celsius)
{
  static const Step chain[] = { { 200, 1 }, { 300, 0.9 }, { 400, 0.75 } };
  static const struct
  {
    double low, high;
    const char *source;
    bool from_memory;
  } whole[SY_N_SLING_MATERIALS] = {
    [SY_SLING_WIRE_ROPE] = { CELSIUS (-60), CELSIUS (400), "WAC 296-24-29425", false },
    [SY_SLING_WIRE_ROPE_FIBRE_CORE] = { -40, CELSIUS (200), "WAC 296-24-29425 (lower end assumed)", false },
    [SY_SLING_ROPE] = { CELSIUS (-20), CELSIUS (180), "WAC 296-24-29429, as of fibre rope", false },
    [SY_SLING_FIBRE_ROPE] = { CELSIUS (-20), CELSIUS (180), "WAC 296-24-29429", false },
    [SY_SLING_TEXTILE] = { -40, 80, "EN 1492-1, as of polypropylene", false },
    [SY_SLING_POLYESTER] = { -40, CELSIUS (180), "29 CFR 1926.251(e); EN 1492-1", false },
    [SY_SLING_POLYAMIDE] = { -40, CELSIUS (180), "29 CFR 1926.251(e); EN 1492-1", false },
    [SY_SLING_POLYPROPYLENE] = { -40, 80, "EN 1492-1", false },
  };
  Step one = { whole[material].high, 1 };

  if (material == SY_SLING_CHAIN)
    return by_steps (chain, LEN (chain), -40, celsius, "EN 818-6", true);
  return by_steps (&one, 1, whole[material].low, celsius, whole[material].source, whole[material].from_memory);
}

SyReduction
sy_reduction_edge (SyEdge edge, SySlingMaterial material)
{
  if (edge != SY_EDGE_BARE)
    return unaffected;
  if (material == SY_SLING_CHAIN)
    return (SyReduction) { 0.5, "EN 818-6, edge radius under the chain's diameter", true, true };
  return refused ("WAC 296-24-29419; 29 CFR 1910.184(c)", false);
}

SyReduction
sy_reduction_bend (SySlingMaterial material, double D_over_d)
{
  static const Step from[] = {
    { 40, 0.96 }, { 30, 0.95 }, { 25, 0.93 }, { 20, 0.91 }, { 15, 0.89 }, { 10, 0.86 },
    { 8, 0.83 }, { 6, 0.79 }, { 5, 0.77 }, { 4, 0.75 }, { 2, 0.65 }, { 1, 0.5 },
  };
  static const char source[] = "bend efficiency of wire rope, wire rope users' manual";

  if (material != SY_SLING_WIRE_ROPE && material != SY_SLING_WIRE_ROPE_FIBRE_CORE && material != SY_SLING_ROPE)
    return unaffected;
  for (size_t i = 0; i < LEN (from); i++)
    if (D_over_d >= from[i].to - TOLERANCE)
      return (SyReduction) { from[i].factor, source, true, true };
  return refused (source, true);
}

SyReduction
sy_reduction_eyebolt (SyEyeboltFamily family, bool shoulder, double angle_deg)
{
  static const Step asme[] = { { 5, 1 }, { 15, 0.55 }, { 90, 0.25 } };
  static const Step older[] = { { 5, 1 }, { 15, 0.8 }, { 30, 0.65 }, { 45, 0.3 }, { 90, 0.25 } };
  /* Load at up to 45° over axial load of the same thread; M64 has the smallest. */
  static const Step din[] = { { 0, 1 }, { 45, 11000.0 / 16000 } };
  static const Step bs[] = { { 0, 1 }, { 15, 0.63 }, { 30, 0.4 }, { 45, 0.25 } };
  static const struct
  {
    const Step *steps;
    size_t n;
    const char *source;
  } families[SY_N_EYEBOLT_FAMILIES] = {
    [SY_EYEBOLT_ASME] = { asme, LEN (asme), "ASME B30.26" },
    [SY_EYEBOLT_ASME_OLDER] = { older, LEN (older), "ASME B18.15, older angle factors" },
    [SY_EYEBOLT_DIN_580] = { din, LEN (din), "DIN 580:2003, smallest ratio of its load table" },
    [SY_EYEBOLT_BS_4278] = { bs, LEN (bs), "BS 4278" },
  };

  if (!shoulder && !(angle_deg <= 5 + TOLERANCE))
    return refused ("DOE-STD-1090-96 section 12.4", false);
  return by_steps (families[family].steps, families[family].n, 0, angle_deg, families[family].source, true);
}

SyReduction
sy_reduction_eyebolt_temperature (SyEyeboltFamily family, double celsius)
{
  static const Step range = { 200, 1 };
  bool read = family == SY_EYEBOLT_DIN_580;

  return by_steps (&range, 1, -20, celsius, read ? "DIN 580:2003" : "range of DIN 580:2003, assumed for this family",
                   !read);
}

SyReduction
sy_reduction_shackle (double angle_deg)
{
  static const Step side[] = { { 5, 1 }, { 45, 0.7 }, { 90, 0.5 } };

  return by_steps (side, LEN (side), 0, angle_deg, "ASME B30.26; steps WAC 296-155-33905 figure 17", true);
}

SyReduction
sy_reduction_hoist_ring (double angle_deg)
{
  static const Step all = { 90, 1 };

  return by_steps (&all, 1, 0, angle_deg, "swivel hoist rings, ASME B30.26", true);
}
