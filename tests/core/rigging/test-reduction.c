/* SPDX-License-Identifier: MIT */
#include "sy-reduction.h"
#include "sy-test.h"

#define JUST 1e-6   /* beyond a step                       */
#define WITHIN 1e-10 /* of a step, within the tolerance     */
#define FAHRENHEIT(f) (((f) - 32) / 1.8)

static void
check (const char *label, SyReduction got, double factor)
{
  assert_close_in (label, got.factor, factor, 1e-12, 0);
  assert_int_equal (got.allowed, factor > 0);
  assert_non_null (got.source);
}

/* Sources: header. US Navy and BC crane safety 0.75, 29 CFR 1918 App. II 0.50; EN from memory. */
static void
test_choke (void **state)
{
  (void) state;
  for (int i = 0; i < SY_N_SLING_MATERIALS; i++)
    {
      SySlingMaterial material = (SySlingMaterial) i;
      double us = material == SY_SLING_FIBRE_ROPE || material == SY_SLING_ROPE ? 0.5 : 0.75;

      check ("us", sy_reduction_choke (SY_RULE_US, material), us);
      check ("en", sy_reduction_choke (SY_RULE_EN, material), 0.8);
      check ("both", sy_reduction_choke (SY_RULE_BOTH, material), us);
      assert_false (sy_reduction_choke (SY_RULE_US, material).from_memory);
      assert_true (sy_reduction_choke (SY_RULE_EN, material).from_memory);
    }
}

/* BC Association for Crane Safety, rigging quiz: 2-leg rope bridle of 9,900 lb choked carries 7,425 lb; 2-leg chain
   bridle of 16,627 lb choked carries 12,470 lb. */
static void
test_published_chokers (void **state)
{
  (void) state;
  assert_close (9900 * sy_reduction_choke (SY_RULE_US, SY_SLING_WIRE_ROPE).factor, 7425, 0, 1e-15);
  assert_close (16627 * sy_reduction_choke (SY_RULE_US, SY_SLING_CHAIN).factor, 12470, 0.5, 0);
}

/* 29 CFR 1918 App. II table 2, lb: the choker column against the vertical one. Rounded to 50 lb there. */
static void
test_fibre_rope_choker_column (void **state)
{
  static const double table[][2] = { { 550, 250 }, { 900, 450 }, { 1100, 550 }, { 1500, 750 },
                                     { 1800, 900 }, { 2700, 1400 }, { 3700, 1850 }, { 6200, 3100 } };

  (void) state;
  for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
    assert_close (table[i][0] * sy_reduction_choke (SY_RULE_US, SY_SLING_FIBRE_ROPE).factor, table[i][1], 50, 0);
}

/* OSHA, Guidance on Safe Sling Use, grade 80 chain: the choker column is never under ours. */
static void
test_chain_choker_column_is_not_stricter (void **state)
{
  static const double table[][2] = { { 2100, 1700 }, { 3500, 2800 }, { 4500, 3600 }, { 7100, 5700 }, { 12000, 9600 } };

  (void) state;
  for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
    assert_true (table[i][0] * sy_reduction_choke (SY_RULE_US, SY_SLING_CHAIN).factor <= table[i][1]);
}

/* ASME B30.9, from memory. */
static void
test_choke_angle (void **state)
{
  static const struct { double at, below, on, above; } steps[] = {
    { 120, 0.87, 0.87, 1 }, { 90, 0.74, 0.87, 0.87 }, { 60, 0.62, 0.74, 0.74 }, { 30, 0.49, 0.62, 0.62 },
    { 0, 0, 0.49, 0.49 }, { 180, 1, 1, 0 },
  };

  (void) state;
  for (size_t i = 0; i < sizeof steps / sizeof steps[0]; i++)
    {
      check ("below", sy_reduction_choke_angle (steps[i].at - JUST), steps[i].below);
      check ("on", sy_reduction_choke_angle (steps[i].at), steps[i].on);
      check ("on", sy_reduction_choke_angle (steps[i].at - WITHIN), steps[i].on);
      check ("on", sy_reduction_choke_angle (steps[i].at + WITHIN), steps[i].on);
      check ("above", sy_reduction_choke_angle (steps[i].at + JUST), steps[i].above);
    }
  check ("hangs free", sy_reduction_choke_angle (135), 1);
}

typedef SyReduction (*Reduce) (int which, double value);

typedef struct
{
  const char *name;
  Reduce reduce;
  int which;
  double low;       /* not allowed below                                     */
  double to[6];     /* upper ends of steps, ends with one after which nothing is allowed */
  double factor[6];
  int n;
} Table;

static SyReduction
temperature (int which, double value)
{
  return sy_reduction_temperature ((SySlingMaterial) which, value);
}

static SyReduction
eyebolt (int which, double value)
{
  return sy_reduction_eyebolt ((SyEyeboltFamily) which, true, value);
}

static SyReduction
shoulderless (int which, double value)
{
  return sy_reduction_eyebolt ((SyEyeboltFamily) which, false, value);
}

static SyReduction
eyebolt_temperature (int which, double value)
{
  return sy_reduction_eyebolt_temperature ((SyEyeboltFamily) which, value);
}

static SyReduction
shackle (int which, double value)
{
  (void) which;
  return sy_reduction_shackle (value);
}

static SyReduction
hoist_ring (int which, double value)
{
  (void) which;
  return sy_reduction_hoist_ring (value);
}

/* Sources: header. */
static const Table tables[] = {
  { "chain, EN 818-6", temperature, SY_SLING_CHAIN, -40, { 200, 300, 400 }, { 1, 0.9, 0.75 }, 3 },
  { "wire rope, WAC 296-24-29425", temperature, SY_SLING_WIRE_ROPE, FAHRENHEIT (-60), { FAHRENHEIT (400) }, { 1 }, 1 },
  { "fibre core, WAC 296-24-29425", temperature, SY_SLING_WIRE_ROPE_FIBRE_CORE, -40, { FAHRENHEIT (200) }, { 1 }, 1 },
  { "rope", temperature, SY_SLING_ROPE, FAHRENHEIT (-20), { FAHRENHEIT (180) }, { 1 }, 1 },
  { "fibre rope, WAC 296-24-29429", temperature, SY_SLING_FIBRE_ROPE, FAHRENHEIT (-20), { FAHRENHEIT (180) }, { 1 },
    1 },
  { "textile", temperature, SY_SLING_TEXTILE, -40, { 80 }, { 1 }, 1 },
  { "polyester, 29 CFR 1926.251(e)", temperature, SY_SLING_POLYESTER, -40, { FAHRENHEIT (180) }, { 1 }, 1 },
  { "polyamide, 29 CFR 1926.251(e)", temperature, SY_SLING_POLYAMIDE, -40, { FAHRENHEIT (180) }, { 1 }, 1 },
  { "polypropylene, EN 1492-1", temperature, SY_SLING_POLYPROPYLENE, -40, { 80 }, { 1 }, 1 },
  { "asme", eyebolt, SY_EYEBOLT_ASME, 0, { 5, 15, 90 }, { 1, 0.55, 0.25 }, 3 },
  { "asme-older", eyebolt, SY_EYEBOLT_ASME_OLDER, 0, { 5, 15, 30, 45, 90 }, { 1, 0.8, 0.65, 0.3, 0.25 }, 5 },
  { "din-580", eyebolt, SY_EYEBOLT_DIN_580, 0, { 0, 45 }, { 1, 0.6875 }, 2 },
  { "bs-4278", eyebolt, SY_EYEBOLT_BS_4278, 0, { 0, 15, 30, 45 }, { 1, 0.63, 0.4, 0.25 }, 4 },
  { "asme without shoulder", shoulderless, SY_EYEBOLT_ASME, 0, { 5 }, { 1 }, 1 },
  { "asme-older without shoulder", shoulderless, SY_EYEBOLT_ASME_OLDER, 0, { 5 }, { 1 }, 1 },
  { "din-580 without shoulder", shoulderless, SY_EYEBOLT_DIN_580, 0, { 0, 5 }, { 1, 0.6875 }, 2 },
  { "bs-4278 without shoulder", shoulderless, SY_EYEBOLT_BS_4278, 0, { 0, 5 }, { 1, 0.63 }, 2 },
  { "asme, heat", eyebolt_temperature, SY_EYEBOLT_ASME, -20, { 200 }, { 1 }, 1 },
  { "asme-older, heat", eyebolt_temperature, SY_EYEBOLT_ASME_OLDER, -20, { 200 }, { 1 }, 1 },
  { "DIN 580:2003, heat", eyebolt_temperature, SY_EYEBOLT_DIN_580, -20, { 200 }, { 1 }, 1 },
  { "bs-4278, heat", eyebolt_temperature, SY_EYEBOLT_BS_4278, -20, { 200 }, { 1 }, 1 },
  { "shackle, WAC 296-155-33905", shackle, 0, 0, { 5, 45, 90 }, { 1, 0.7, 0.5 }, 3 },
  { "hoist ring", hoist_ring, 0, 0, { 90 }, { 1 }, 1 },
};
#define N_TABLES (sizeof tables / sizeof tables[0])

static void
test_every_step_on_both_sides_and_on_it (void **state)
{
  (void) state;
  for (size_t i = 0; i < N_TABLES; i++)
    {
      const Table *t = &tables[i];

      check (t->name, t->reduce (t->which, t->low - JUST), 0);
      check (t->name, t->reduce (t->which, t->low - WITHIN), t->factor[0]);
      check (t->name, t->reduce (t->which, t->low), t->factor[0]);
      for (int s = 0; s < t->n; s++)
        {
          if (t->to[s] > t->low)
            check (t->name, t->reduce (t->which, t->to[s] - JUST), t->factor[s]);
          check (t->name, t->reduce (t->which, t->to[s]), t->factor[s]);
          check (t->name, t->reduce (t->which, t->to[s] + WITHIN), t->factor[s]);
          check (t->name, t->reduce (t->which, t->to[s] + JUST), s + 1 < t->n ? t->factor[s + 1] : 0);
        }
      check (t->name, t->reduce (t->which, NAN), 0);
      check (t->name, t->reduce (t->which, INFINITY), 0);
      check (t->name, t->reduce (t->which, -INFINITY), 0);
    }
  check ("angle of choke", sy_reduction_choke_angle (NAN), 0);
}

static void
test_more_never_allows_more (void **state)
{
  (void) state;
  for (size_t i = 0; i < N_TABLES; i++)
    {
      double before = 1;

      for (int step = 0; step <= 100000; step++)
        {
          double factor = tables[i].reduce (tables[i].which, tables[i].low + step * 0.01).factor;

          assert_true (factor <= before);
          before = factor;
        }
      assert_true (before <= 0);
    }
  for (int step = 0; step < 18000; step++)
    assert_true (sy_reduction_choke_angle (step * 0.01).factor <= sy_reduction_choke_angle ((step + 1) * 0.01).factor);
  for (int step = 0; step < 6000; step++)
    assert_true (sy_reduction_bend (SY_SLING_WIRE_ROPE, step * 0.01).factor
                 <= sy_reduction_bend (SY_SLING_WIRE_ROPE, (step + 1) * 0.01).factor);
}

/* What a document leaves open is held to the strictest of its kind. */
static void
test_a_generic_material_is_never_better_than_one_of_its_kind (void **state)
{
  static const SySlingMaterial kinds[][2] = {
    { SY_SLING_ROPE, SY_SLING_WIRE_ROPE }, { SY_SLING_ROPE, SY_SLING_WIRE_ROPE_FIBRE_CORE },
    { SY_SLING_ROPE, SY_SLING_FIBRE_ROPE }, { SY_SLING_TEXTILE, SY_SLING_POLYESTER },
    { SY_SLING_TEXTILE, SY_SLING_POLYAMIDE }, { SY_SLING_TEXTILE, SY_SLING_POLYPROPYLENE },
  };

  (void) state;
  for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++)
    {
      for (double celsius = -100; celsius < 500; celsius += 0.25)
        assert_true (sy_reduction_temperature (kinds[i][0], celsius).factor
                     <= sy_reduction_temperature (kinds[i][1], celsius).factor);
      for (double ratio = 0; ratio < 50; ratio += 0.25)
        assert_true (sy_reduction_bend (kinds[i][0], ratio).factor <= sy_reduction_bend (kinds[i][1], ratio).factor);
      for (int rule = 0; rule < 3; rule++)
        assert_true (sy_reduction_choke ((SyRule) rule, kinds[i][0]).factor
                     <= sy_reduction_choke ((SyRule) rule, kinds[i][1]).factor);
      assert_true (sy_reduction_edge (SY_EDGE_BARE, kinds[i][0]).factor
                   <= sy_reduction_edge (SY_EDGE_BARE, kinds[i][1]).factor);
    }
}

/* EN 818-6 from memory; WAC 296-24-29419. */
static void
test_edge (void **state)
{
  (void) state;
  for (int i = 0; i < SY_N_SLING_MATERIALS; i++)
    {
      SySlingMaterial material = (SySlingMaterial) i;

      check ("none", sy_reduction_edge (SY_EDGE_NONE, material), 1);
      check ("protected", sy_reduction_edge (SY_EDGE_PROTECTED, material), 1);
      check ("bare", sy_reduction_edge (SY_EDGE_BARE, material), material == SY_SLING_CHAIN ? 0.5 : 0);
    }
}

/* Bend efficiency of wire rope, from memory. */
static void
test_bend (void **state)
{
  static const double rows[][2] = { { 1, 0.5 }, { 2, 0.65 }, { 4, 0.75 }, { 5, 0.77 }, { 6, 0.79 },
                                    { 8, 0.83 }, { 10, 0.86 }, { 15, 0.89 }, { 20, 0.91 }, { 25, 0.93 },
                                    { 30, 0.95 }, { 40, 0.96 } };

  (void) state;
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      check ("below", sy_reduction_bend (SY_SLING_WIRE_ROPE, rows[i][0] - JUST), i > 0 ? rows[i - 1][1] : 0);
      check ("on", sy_reduction_bend (SY_SLING_WIRE_ROPE, rows[i][0]), rows[i][1]);
      check ("on", sy_reduction_bend (SY_SLING_WIRE_ROPE_FIBRE_CORE, rows[i][0] - WITHIN), rows[i][1]);
      check ("above", sy_reduction_bend (SY_SLING_ROPE, rows[i][0] + JUST), rows[i][1]);
    }
  check ("straight", sy_reduction_bend (SY_SLING_WIRE_ROPE, INFINITY), 0.96);
  check ("unknown", sy_reduction_bend (SY_SLING_WIRE_ROPE, NAN), 0);
  for (int i = 0; i < SY_N_SLING_MATERIALS; i++)
    if (i == SY_SLING_CHAIN || i >= SY_SLING_FIBRE_ROPE)
      check ("no wire rope", sy_reduction_bend ((SySlingMaterial) i, 0.5), 1);
}

/* DIN 580:2003 load table from memory, kg: axial, and each bolt at up to 45°. Ours is never bolder than a row. */
static void
test_din_ratio_is_its_smallest (void **state)
{
  static const double table[][2] = {
    { 230, 170 }, { 340, 240 }, { 700, 500 }, { 1200, 860 }, { 1800, 1290 }, { 3200, 2300 }, { 4600, 3300 },
    { 6300, 4500 }, { 8600, 6100 }, { 11500, 8200 }, { 16000, 11000 },
    { 3600, 2600 }, { 5100, 3700 }, /* M30 and M36 of older printings */
  };
  double ratio = sy_reduction_eyebolt (SY_EYEBOLT_DIN_580, true, 45).factor, smallest = 1;

  (void) state;
  for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
    {
      assert_true (table[i][0] * ratio <= table[i][1]);
      smallest = fmin (smallest, table[i][1] / table[i][0]);
    }
  assert_close (ratio, smallest, 0, 1e-15);
}

/* Only what was read may say so. */
static void
test_what_is_from_memory_says_so (void **state)
{
  (void) state;
  for (int i = 0; i < SY_N_EYEBOLT_FAMILIES; i++)
    {
      assert_true (sy_reduction_eyebolt ((SyEyeboltFamily) i, true, 10).from_memory);
      assert_false (sy_reduction_eyebolt ((SyEyeboltFamily) i, false, 10).from_memory);
      assert_int_equal (sy_reduction_eyebolt_temperature ((SyEyeboltFamily) i, 20).from_memory,
                        i != SY_EYEBOLT_DIN_580);
    }
  assert_true (sy_reduction_shackle (10).from_memory);
  assert_true (sy_reduction_hoist_ring (10).from_memory);
  assert_true (sy_reduction_bend (SY_SLING_WIRE_ROPE, 10).from_memory);
  assert_true (sy_reduction_choke_angle (100).from_memory);
  assert_false (sy_reduction_choke_angle (130).from_memory);
  assert_true (sy_reduction_temperature (SY_SLING_CHAIN, 20).from_memory);
  assert_false (sy_reduction_temperature (SY_SLING_WIRE_ROPE, 20).from_memory);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_choke),
    cmocka_unit_test (test_published_chokers),
    cmocka_unit_test (test_fibre_rope_choker_column),
    cmocka_unit_test (test_chain_choker_column_is_not_stricter),
    cmocka_unit_test (test_choke_angle),
    cmocka_unit_test (test_every_step_on_both_sides_and_on_it),
    cmocka_unit_test (test_more_never_allows_more),
    cmocka_unit_test (test_a_generic_material_is_never_better_than_one_of_its_kind),
    cmocka_unit_test (test_edge),
    cmocka_unit_test (test_bend),
    cmocka_unit_test (test_din_ratio_is_its_smallest),
    cmocka_unit_test (test_what_is_from_memory_says_so),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
