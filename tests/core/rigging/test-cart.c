/* SPDX-License-Identifier: MIT */
#include "sy-cart.h"
#include "sy-test.h"

#define RADIAN (M_PI / 180)

static SyCartForces
forces (SyCart cart)
{
  SyCartForces out;

  sy_cart_forces (&cart, &out);
  return out;
}

/* 30 kN, tipping line 0.4 m away, pushed at 1.0 m, centre 0.7 m up. */
static const SyCart cart = {
  .weight = 30000, .rolling = 0.02, .start_factor = 2.5, .slope_deg = 0, .arm = 0.4, .cg_height = 0.7,
  .push_height = 1.0, .deceleration = 0,
};

/* Statics, by hand: 50 kN on rubber takes 1,000 N to move, 1,872 N up 1°. */
static void
test_pushing (void **state)
{
  SyCart heavy = cart;

  (void) state;
  heavy.weight = 50000;
  assert_close (forces (heavy).sustained, 1000, 0, 1e-15);
  assert_close (forces (heavy).initial, 2500, 0, 1e-15);
  assert_close (forces (heavy).hold, 0, 0, 0);
  heavy.slope_deg = 1;
  assert_close (forces (heavy).sustained, 1872, 0.6, 0);
  /* The slope does not grow at the start. */
  assert_close (forces (heavy).initial - forces (heavy).sustained, 1500 * cos (RADIAN), 0, 1e-12);
  assert_close (forces (heavy).hold, 872.62, 0.005, 0);
}

/* Statics, by hand: tips at 12 kN, at 29.7°, at 0.57 g. */
static void
test_tipping (void **state)
{
  SyCartForces got = forces (cart);

  (void) state;
  assert_close (got.tip_push, 12000, 0, 1e-15);
  assert_close (got.tip_slope_deg, 29.7, 0.05, 0);
  assert_close (got.tip_deceleration, 0.57, 0.005, 0);
  assert_close (got.tipping, 1500. / 12000, 0, 1e-15);
}

/* Each governs in its turn. */
static void
test_the_nearest_tipping_limit (void **state)
{
  SyCart other = cart;

  (void) state;
  other.deceleration = 0.4;
  assert_close (forces (other).tipping, 0.7, 0, 1e-14);
  /* High hands on a flat slab. */
  other = cart;
  other.slope_deg = 5;
  other.push_height = 3;
  assert_close (forces (other).tipping, forces (other).initial / 4000, 0, 1e-14);
  /* No resistance: the slope alone, in degrees, which is the stricter of degrees and tangents. */
  other = cart;
  other.slope_deg = 20;
  other.push_height = 0.01;
  assert_close (forces (other).tipping, 20 / forces (other).tip_slope_deg, 0, 1e-14);
  assert_true (forces (other).tipping >= tan (20 * RADIAN) / (0.4 / 0.7));
}

/* Statics: at the slope that tips, and at a braking down a slope that tips, it is 1: the resultant passes the
   wheel line. */
static void
test_one_is_where_it_tips (void **state)
{
  SyCart other = cart;

  (void) state;
  other.push_height = 0.01;
  other.slope_deg = forces (cart).tip_slope_deg;
  assert_close (forces (other).tipping, 1, 0, 1e-12);
  for (double slope = 0; slope < 25; slope += 2.5)
    {
      double c = cos (slope * RADIAN), s = sin (slope * RADIAN);

      other.slope_deg = slope;
      other.deceleration = (c * 0.4 - s * 0.7) / 0.7;
      assert_close (forces (other).tipping, 1, 0, 1e-12);
    }
}

static void
test_unknown_heights (void **state)
{
  SyCart other = cart;

  (void) state;
  other.push_height = NAN;
  other.slope_deg = 10;
  assert_true (isnan (forces (other).tip_push));
  assert_close (forces (other).tipping, 10 / forces (other).tip_slope_deg, 0, 1e-15);
  other.cg_height = NAN;
  assert_true (isnan (forces (other).tip_slope_deg) && isnan (forces (other).tipping));
  other = cart;
  other.cg_height = NAN;
  assert_close (forces (other).tipping, 0.125, 0, 1e-15);
  other = cart;
  other.deceleration = NAN;
  assert_close (forces (other).tipping, 0.125, 0, 1e-15);
}

static void
test_the_arm (void **state)
{
  (void) state;
  assert_close (sy_cart_arm (800, 1200), 400, 0, 0);
  assert_close (sy_cart_arm (1200, 800), 400, 0, 0);
  assert_close (sy_cart_arm (NAN, 900), 450, 0, 0);
  assert_close (sy_cart_arm (900, NAN), 450, 0, 0);
  assert_true (isnan (sy_cart_arm (NAN, NAN)));
}

/* Three of four carry: assumed. */
static void
test_wheels (void **state)
{
  (void) state;
  assert_close (sy_cart_wheel_load (3000, 4), 1000, 0, 1e-15);
  assert_close (sy_cart_wheel_load (3000, 6), 1000, 0, 1e-15);
  assert_close (sy_cart_wheel_load (3000, 3), 1000, 0, 1e-15);
  assert_close (sy_cart_wheel_load (3000, 2), 1500, 0, 1e-15);
  assert_close (sy_cart_wheel_load (3000, 1), 3000, 0, 1e-15);
}

/* Physics teaching page on rolling friction (steel, rubber); the others from memory. */
static void
test_rolling (void **state)
{
  static const double upper[SY_N_WHEELS] = { 0.003, 0.02, 0.03, 0.05 };

  (void) state;
  for (int i = 0; i < SY_N_WHEELS; i++)
    {
      SyRolling rolling = sy_cart_rolling ((SyWheel) i);

      assert_close (rolling.high, upper[i], 0, 0);
      assert_true (rolling.low > 0 && rolling.low < rolling.high);
      assert_int_equal (rolling.from_memory, i >= SY_WHEEL_POLYURETHANE);
      assert_true (rolling.source[0] != '\0');
    }
}

/* Standard gravity; in US units a pound weighs a pound. */
static void
test_weight (void **state)
{
  (void) state;
  assert_close (sy_cart_weight (100, SY_UNITS_METRIC), 980.665, 0, 1e-15);
  assert_close (sy_cart_weight (100, SY_UNITS_US), 100, 0, 0);
}

static void
test_more_never_eases (void **state)
{
  (void) state;
  for (double slope = 0; slope < 40; slope += 0.5)
    for (double rolling = 0; rolling < 0.1; rolling += 0.01)
      {
        SyCart a = cart, steeper, rougher;

        a.slope_deg = slope;
        a.rolling = rolling;
        a.deceleration = 0.1;
        steeper = rougher = a;
        steeper.slope_deg += 0.5;
        rougher.rolling += 0.01;
        assert_true (forces (steeper).initial > forces (a).initial && forces (rougher).initial > forces (a).initial);
        assert_true (forces (a).initial >= forces (a).sustained && forces (a).sustained >= forces (a).hold);
        assert_true (forces (steeper).tipping > forces (a).tipping && forces (rougher).tipping >= forces (a).tipping);
      }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_pushing),
    cmocka_unit_test (test_tipping),
    cmocka_unit_test (test_the_nearest_tipping_limit),
    cmocka_unit_test (test_one_is_where_it_tips),
    cmocka_unit_test (test_unknown_heights),
    cmocka_unit_test (test_the_arm),
    cmocka_unit_test (test_wheels),
    cmocka_unit_test (test_rolling),
    cmocka_unit_test (test_weight),
    cmocka_unit_test (test_more_never_eases),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
