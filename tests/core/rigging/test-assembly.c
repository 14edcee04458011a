/* SPDX-License-Identifier: MIT */
#include "sy-assembly.h"
#include "sy-test.h"

#define JUST 1e-6    /* beyond a bound                   */
#define WITHIN 1e-10 /* of a bound, within the tolerance */
#define COS(deg) cos ((deg) * M_PI / 180)

/* @n legs with the same angle, evenly round the hook, each of a capacity of 1, carrying next to nothing. */
static SyAssembly
even (int n, double angle)
{
  SyAssembly assembly = { .slings = n, .n = n, .leg_wll = 1, .mass = 1e-3 };

  for (int i = 0; i < n; i++)
    {
      assembly.angle_deg[i] = angle;
      assembly.azimuth_deg[i] = 400 - i * 360.0 / n;
    }
  return assembly;
}

static SyAssembly
basket (double angle)
{
  SyAssembly assembly = even (2, angle);

  assembly.slings = 1;
  return assembly;
}

static SyAssemblyCapacity
by (SyRule rule, SyAssembly assembly)
{
  SyAssemblyCapacity out;

  sy_assembly_capacity (&assembly, rule, &out);
  assert_non_null (out.source);
  assert_int_equal (out.symmetric, out.uneven == 0);
  assert_close (out.capacity, out.mode_factor * assembly.leg_wll, 0, 1e-15);
  if (!out.allowed)
    assert_true (out.capacity <= 0);
  return out;
}

/* US Navy 14080: 1,000 lb on two legs is 500 lb each when they hang straight, 1,000 lb each at 30° from the
   horizontal. Three and four legs: the two-leg formula. */
static void
test_us_navy_legs (void **state)
{
  SyAssembly legs = even (2, 0);

  (void) state;
  legs.leg_wll = 500;
  assert_close (by (SY_RULE_US, legs).capacity, 1000, 0, 1e-15);
  legs = even (2, 60);
  legs.leg_wll = 1000;
  assert_close (by (SY_RULE_US, legs).capacity, 1000, 0, 1e-14);

  assert_close (by (SY_RULE_US, even (1, 0)).mode_factor, 1, 0, 1e-15);
  for (int n = 2; n <= SY_PARTS_MAX; n++)
    {
      assert_int_equal (by (SY_RULE_US, even (n, 30)).counted, 2);
      assert_close (by (SY_RULE_US, even (n, 30)).mode_factor, sqrt (3), 0, 1e-15);
    }
  assert_close (by (SY_RULE_US, basket (0)).mode_factor, 2, 0, 1e-15);
}

/* BC Association for Crane Safety, rigging quiz: bridles of two legs choked; the bridle's figure × choke against
   the load. */
static void
test_published_choked_bridles (void **state)
{
  SyAssembly rope = even (2, 0), chain = even (2, 0);

  (void) state;
  rope.leg_wll = 9900 / 2.;
  chain.leg_wll = 16627 / 2.;
  assert_close (by (SY_RULE_US, rope).capacity * sy_reduction_choke (SY_RULE_US, SY_SLING_WIRE_ROPE).factor,
                7425, 0, 1e-14);
  assert_close (by (SY_RULE_US, chain).capacity * sy_reduction_choke (SY_RULE_US, SY_SLING_CHAIN).factor,
                12470, 0.5, 0);
}

/* The smallest height over length of the legs: the flattest governs. */
static void
test_us_takes_the_flattest (void **state)
{
  SyAssembly legs = even (3, 10);

  (void) state;
  legs.angle_deg[1] = 50;
  assert_close (by (SY_RULE_US, legs).mode_factor, 2 * COS (50), 0, 1e-15);
}

/* OSHA, Guidance on Safe Sling Use, tables 1 and 2, lb: single; two legs at 60, 45, 30° from the horizontal; three or
   four. 0: not read. */
static const double chain[][7] = {
  { 2100, 3600, 3000, 2100, 5500, 4400, 3200 },
  { 3500, 6100, 4900, 3500, 9100, 7400, 5200 },
  { 4500, 7800, 6400, 4500, 11700, 9500, 6800 },
  { 7100, 12300, 10000, 7100, 18400, 15100, 10600 },
  { 12000, 20800, 17000, 12000, 31200, 25500, 18000 },
  { 18100, 31300, 25600, 18100, 47000, 38400, 27100 },
  { 28300, 49000, 40000, 28300, 73500, 60000, 42400 },
  { 34200, 59200, 48400, 34200, 88900, 72500, 51300 },
  { 47700, 82600, 67400, 47700, 123900, 101200, 71500 },
  { 72300, 125200, 102200, 72300, 187800, 153400, 108400 },
  { 2700, 4700, 3800, 2700, 7000, 5700, 4000 },
  { 4300, 7400, 6100, 4300, 11200, 9100, 6400 },
  { 5700, 9900, 8100, 5700, 14800, 12100, 8500 },
  { 8800, 15200, 12400, 8800, 22900, 18700, 13200 },
  { 15000, 26000, 21200, 15000, 39000, 31800, 22500 },
  { 22600, 39100, 32000, 22600, 58700, 0, 0 },
  { 35300, 61100, 49900, 35300, 91700, 0, 0 },
  { 42700, 74000, 60400, 42700, 110900, 0, 0 },
};

/* Within 100 lb or 1.3 %, which is their rounding; two legs by the rule, three and four by the tag: what it lets one
   leg carry is the single leg's figure. */
static void
test_osha_chain_tables (void **state)
{
  static const double angles[] = { 30, 45, 60 };
  static const SyBand bands[] = { SY_BAND_0_30, SY_BAND_0_45, SY_BAND_0_60 };

  (void) state;
  for (size_t i = 0; i < sizeof chain / sizeof chain[0]; i++)
    for (int a = 0; a < 3; a++)
      {
        SyAssembly two = even (2, angles[a]);
        double one = chain[i][0], twice = chain[i][1 + a], triple = chain[i][4 + a];

        two.leg_wll = one;
        assert_close (by (SY_RULE_US, two).capacity, twice, 100, 0.013);
        assert_close (sy_assembly_leg_of_tag (twice, 2, bands[a], angles[a]).capacity, one, 100, 0.013);
        if (triple <= 0)
          continue;
        assert_close (3 * COS (angles[a]) * one, triple, 100, 0.013);
        assert_close (sy_assembly_leg_of_tag (triple, 3, bands[a], angles[a]).capacity, one, 100, 0.013);
        assert_close (sy_assembly_leg_of_tag (triple, 4, bands[a], angles[a]).capacity, one, 100, 0.013);
      }
}

/* 29 CFR 1918 App. II table 2, natural fibre rope, lb: vertical, then a basket at 0, 30, 45, 60° from the vertical.
   Its rounding reaches 6 %. */
static void
test_cfr_baskets (void **state)
{
  static const double table[][5] = {
    { 550, 1100, 900, 750, 550 },      { 900, 1800, 1500, 1200, 900 },    { 1100, 2200, 1900, 1500, 1100 },
    { 1500, 3100, 2700, 2200, 1500 },  { 1800, 3600, 3100, 2600, 1800 },  { 2700, 5400, 4700, 3800, 2700 },
    { 3700, 7400, 6400, 5200, 3700 },  { 6200, 12500, 10500, 8800, 6200 },
  };
  static const double angles[] = { 0, 30, 45, 60 };

  (void) state;
  for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
    for (int a = 0; a < 4; a++)
      {
        SyAssembly one = basket (angles[a]);

        one.leg_wll = table[i][0];
        assert_close (table[i][1 + a], by (SY_RULE_US, one).capacity, 0, 0.06);
      }
}

/* EN 818-4 and others, from memory. */
static void
test_en_mode_factors (void **state)
{
  static const struct { int slings, n; double angle, factor; } modes[] = {
    { 1, 1, 0, 1 }, { 1, 1, 45, 1 }, { 1, 1, 45 + JUST, 0 },
    { 2, 2, 15, 1.4 }, { 2, 2, 45, 1.4 }, { 2, 2, 45 + WITHIN, 1.4 }, { 2, 2, 45 + JUST, 1 },
    { 2, 2, 60, 1 }, { 2, 2, 60 + JUST, 0 },
    { 3, 3, 45, 2.1 }, { 3, 3, 45 + JUST, 1.5 }, { 3, 3, 60 + WITHIN, 1.5 }, { 3, 3, 60 + JUST, 0 },
    { 4, 4, 45, 2.1 }, { 4, 4, 60, 1.5 }, { 4, 4, 60 + JUST, 0 }, { 4, 4, 120, 0 },
    { 1, 2, 0, 2 }, { 1, 2, 6, 2 }, { 1, 2, 6 + JUST, 1.4 }, { 1, 2, 45, 1.4 },
    { 1, 2, 45 + JUST, 1 }, { 1, 2, 60 + JUST, 0 },
    { 2, 4, 45, 2.1 }, { 2, 4, 50, 1.5 },
  };

  (void) state;
  for (size_t i = 0; i < sizeof modes / sizeof modes[0]; i++)
    {
      SyAssembly assembly = even (modes[i].n, modes[i].angle);
      SyAssemblyCapacity got;

      assembly.slings = modes[i].slings;
      got = by (SY_RULE_EN, assembly);
      assert_close (got.mode_factor, modes[i].factor, 0, 1e-15);
      assert_int_equal (got.allowed, modes[i].factor > 0);
      assert_true (got.from_memory);
    }
}

/* Statics: at the end of its band a mode factor is the trigonometric value, rounded down: never bolder than that. */
static void
test_en_is_never_bolder_than_trigonometry (void **state)
{
  (void) state;
  assert_close (by (SY_RULE_EN, even (2, 45)).mode_factor, 2 * COS (45), 0.015, 0);
  assert_close (by (SY_RULE_EN, even (2, 60)).mode_factor, 2 * COS (60), 1e-15, 0);
  assert_close (by (SY_RULE_EN, even (3, 45)).mode_factor, 3 * COS (45), 0.022, 0);
  assert_close (by (SY_RULE_EN, even (4, 60)).mode_factor, 3 * COS (60), 1e-14, 0);
  for (int n = 2; n <= 4; n++)
    for (double angle = 15; angle <= 60; angle += 0.125)
      {
        SyAssemblyCapacity en = by (SY_RULE_EN, even (n, angle));

        assert_true (en.symmetric);
        assert_true (en.mode_factor <= (n < 3 ? n : 3) * COS (angle) + 1e-12);
      }
}

/* EN 818-4 grade 8, from memory, t: one leg, two to 45 and 60°, three or four to 45 and 60°. Preferred numbers are
   within 4 %. */
static void
test_en_chain_table (void **state)
{
  static const double table[][5] = {
    { 1.12, 1.6, 1.12, 2.36, 1.7 },  { 1.5, 2.12, 1.5, 3.15, 2.24 },   { 2.0, 2.8, 2.0, 4.25, 3.0 },
    { 3.15, 4.25, 3.15, 6.7, 4.75 }, { 5.3, 7.5, 5.3, 11.2, 8.0 },     { 8.0, 11.2, 8.0, 17.0, 11.8 },
    { 10.0, 14.0, 10.0, 21.2, 15.0 }, { 11.2, 16.0, 11.2, 23.6, 17.0 }, { 12.5, 17.0, 12.5, 26.5, 19.0 },
    { 15.0, 21.2, 15.0, 31.5, 22.4 }, { 21.2, 30.0, 21.2, 45.0, 31.5 }, { 31.5, 45.0, 31.5, 67.0, 47.5 },
  };
  static const struct { int n; double angle; } columns[] = { { 1, 0 }, { 2, 45 }, { 2, 60 }, { 4, 45 }, { 3, 60 } };

  (void) state;
  for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
    for (int c = 0; c < 5; c++)
      {
        SyAssembly legs = even (columns[c].n, columns[c].angle);

        legs.leg_wll = table[i][0];
        assert_close (by (SY_RULE_EN, legs).capacity, table[i][c], 0, 0.04);
      }
}

/* EN 818-6 and EN 13414-2, from memory. */
static void
test_what_makes_a_load_uneven (void **state)
{
  SyAssembly legs;

  (void) state;
  /* 80 % of 1.4 × 1 */
  legs = even (2, 30);
  legs.mass = 1.12 * (1 + WITHIN);
  assert_int_equal (by (SY_RULE_EN, legs).uneven, 0);
  legs.mass = 1.12 + JUST;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, SY_UNEVEN_LOAD);
  assert_close (by (SY_RULE_EN, legs).mode_factor, 1, 0, 1e-15);

  assert_int_equal (by (SY_RULE_EN, even (2, 15 - WITHIN)).uneven, 0);
  assert_int_equal (by (SY_RULE_EN, even (2, 15 - JUST)).uneven, SY_UNEVEN_STEEP);

  legs = even (2, 20);
  legs.angle_deg[1] = 35 + WITHIN;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, 0);
  legs.angle_deg[1] = 35 + JUST;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, SY_UNEVEN_ANGLES);
  assert_close (by (SY_RULE_EN, legs).mode_factor, 1, 0, 1e-15);

  /* Gaps of 120, 127.5 and 112.5: 15 apart. */
  legs = even (3, 30);
  legs.azimuth_deg[2] += 7.5;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, 0);
  legs.azimuth_deg[2] += JUST;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, SY_UNEVEN_PLAN);
  assert_close (by (SY_RULE_EN, legs).mode_factor, 1, 0, 1e-15);

  /* Corners of 1000 × 800 from their middle: gaps of 77.3 and 102.7. Half of 1.5 beyond 45°. */
  legs = even (4, 50);
  for (int i = 0; i < 4; i++)
    legs.azimuth_deg[i] = atan2 (i < 2 ? 400 : -400, i == 0 || i == 3 ? 500 : -500) * 180 / M_PI;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, SY_UNEVEN_PLAN);
  assert_close (by (SY_RULE_EN, legs).mode_factor, 0.75, 0, 1e-15);

  /* Two legs have no gaps to compare. */
  legs = even (2, 30);
  legs.azimuth_deg[1] = legs.azimuth_deg[0] + 90;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, 0);

  legs = even (4, 10);
  legs.angle_deg[0] = 40;
  legs.azimuth_deg[0] += 20;
  legs.mass = 2;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, SY_UNEVEN_LOAD | SY_UNEVEN_STEEP | SY_UNEVEN_ANGLES | SY_UNEVEN_PLAN);

  /* A basket is one sling. */
  legs = basket (3);
  legs.mass = 1.9;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, 0);
  legs.angle_deg[1] = 30;
  assert_int_equal (by (SY_RULE_EN, legs).uneven, SY_UNEVEN_ANGLES);
  assert_close (by (SY_RULE_EN, legs).mode_factor, 1, 0, 1e-15);
}

static void
test_us_is_not_allowed_beyond_sixty (void **state)
{
  (void) state;
  for (int n = 1; n <= 4; n++)
    {
      assert_true (by (SY_RULE_US, even (n, 60 + WITHIN)).allowed);
      assert_false (by (SY_RULE_US, even (n, 60 + JUST)).allowed);
    }
}

static void
test_what_is_no_number_is_not_allowed (void **state)
{
  (void) state;
  for (int n = 1; n <= 4; n++)
    for (int i = 0; i < n; i++)
      {
        SyAssembly legs = even (n, 30);

        legs.angle_deg[i] = NAN;
        assert_false (by (SY_RULE_US, legs).allowed);
        assert_false (by (SY_RULE_EN, legs).allowed);
      }
  assert_false (sy_assembly_leg_of_tag (1000, 2, SY_BAND_0_45, NAN).allowed);
}

static void
test_both_is_the_smaller (void **state)
{
  (void) state;
  for (int n = 1; n <= 4; n++)
    for (double angle = 0; angle < 70; angle += 0.25)
      {
        SyAssemblyCapacity us = by (SY_RULE_US, even (n, angle)), en = by (SY_RULE_EN, even (n, angle));
        SyAssemblyCapacity both = by (SY_RULE_BOTH, even (n, angle));

        assert_same_bits (both.capacity, fmin (us.capacity, en.capacity));
        assert_int_equal (both.allowed, us.allowed && en.allowed);
      }
  assert_int_equal (by (SY_RULE_BOTH, even (4, 30)).rule, SY_RULE_US);
  assert_int_equal (by (SY_RULE_BOTH, even (2, 30)).rule, SY_RULE_EN);
}

/* A flatter leg never raises what may be lifted, once all legs are flat enough to count as sharing. */
static void
test_flatter_never_carries_more (void **state)
{
  (void) state;
  for (int n = 1; n <= 4; n++)
    for (int rule = SY_RULE_US; rule <= SY_RULE_BOTH; rule++)
      for (double mass = 0.1; mass < 2.5; mass += 0.3)
        {
          double before = INFINITY;

          for (double angle = rule == SY_RULE_US ? 0 : 15; angle < 90; angle += 0.25)
            {
              SyAssembly legs = even (n, angle);
              double capacity;

              legs.mass = mass;
              capacity = by ((SyRule) rule, legs).capacity;
              assert_true (capacity <= before);
              before = capacity;
            }
          assert_true (before <= 0);
        }
}

/* Statics. A leg outside what the tag says is not rated. */
static void
test_tags (void **state)
{
  static const struct { SyBand band; double from, to; } bands[] = {
    { SY_BAND_0_30, 0, 30 }, { SY_BAND_0_45, 0, 45 }, { SY_BAND_0_60, 0, 60 }, { SY_BAND_45_60, 45, 60 },
  };

  (void) state;
  for (int b = 0; b < SY_N_BANDS; b++)
    for (int legs = 1; legs <= 4; legs++)
      {
        double one = legs == 1 ? 1000 : 1000 / ((legs < 3 ? legs : 3) * COS (bands[b].to));
        SyBand band = bands[b].band;

        assert_close (sy_assembly_leg_of_tag (1000, legs, band, bands[b].from).capacity, one, 0, 1e-15);
        assert_close (sy_assembly_leg_of_tag (1000, legs, band, bands[b].to).capacity, one, 0, 1e-15);
        assert_true (sy_assembly_leg_of_tag (1000, legs, band, bands[b].to + WITHIN).allowed);
        assert_false (sy_assembly_leg_of_tag (1000, legs, band, bands[b].to + JUST).allowed);
        assert_false (sy_assembly_leg_of_tag (1000, legs, band, bands[b].from - JUST).allowed);
        assert_true (sy_assembly_leg_of_tag (1000, legs, band, bands[b].to + JUST).capacity <= 0);
      }
  /* EN's own markings give a leg back no more than it has. */
  assert_true (sy_assembly_leg_of_tag (1.4, 2, SY_BAND_0_45, 20).capacity <= 1);
  assert_true (sy_assembly_leg_of_tag (2.1, 4, SY_BAND_0_45, 20).capacity <= 1);
  assert_close (sy_assembly_leg_of_tag (1.0, 2, SY_BAND_45_60, 50).capacity, 1, 0, 1e-14);
  assert_close (sy_assembly_leg_of_tag (1.5, 3, SY_BAND_45_60, 50).capacity, 1, 0, 1e-14);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_us_navy_legs),
    cmocka_unit_test (test_published_choked_bridles),
    cmocka_unit_test (test_us_takes_the_flattest),
    cmocka_unit_test (test_osha_chain_tables),
    cmocka_unit_test (test_cfr_baskets),
    cmocka_unit_test (test_en_mode_factors),
    cmocka_unit_test (test_en_is_never_bolder_than_trigonometry),
    cmocka_unit_test (test_en_chain_table),
    cmocka_unit_test (test_what_makes_a_load_uneven),
    cmocka_unit_test (test_us_is_not_allowed_beyond_sixty),
    cmocka_unit_test (test_what_is_no_number_is_not_allowed),
    cmocka_unit_test (test_both_is_the_smaller),
    cmocka_unit_test (test_flatter_never_carries_more),
    cmocka_unit_test (test_tags),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
