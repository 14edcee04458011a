/* SPDX-License-Identifier: MIT */
#include "sy-hang.h"
#include "sy-test.h"

#define DEGREES 57.295779513082320876798154814105

/* Half of the last printed digit. */
#define TO_1 0.5
#define TO_01 0.05
#define TO_001 0.005

static SyHang
level (const SyPart *parts, int n, SyVec3 cg, double height)
{
  SyHang hang;

  sy_hang_level (parts, n, cg, sy_vec3 (cg.x, cg.y, height), &hang);
  return hang;
}

/* Two points at one height, the centre below between them: how far out each is, and how high the hook. */
static SyHang
two_legs (double left, double right, double height)
{
  SyPart parts[2] = { { sy_vec3 (-left, 0, 0) }, { sy_vec3 (right, 0, 0) } };

  return level (parts, 2, sy_vec3 (0, 0, -1), height);
}

/* Tension factor per leg = 1 / sin (from the horizontal) = length / rise. COMPUTED from statics. */
static void
test_factors (void **state)
{
  static const double rows[][2] = {
    { 0, 1.0000 }, { 5, 1.0038 }, { 10, 1.0154 }, { 15, 1.0353 }, { 20, 1.0642 }, { 25, 1.1034 }, { 30, 1.1547 },
    { 35, 1.2208 }, { 40, 1.3054 }, { 45, 1.4142 }, { 50, 1.5557 }, { 55, 1.7434 }, { 60, 2.0000 },
  };

  (void) state;
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    {
      /* Upright legs of a pair meet very high up. */
      double out = fmax (1e-6, 3 * tan (rows[i][0] / DEGREES));
      SyHang hang = two_legs (out, out, 3);

      assert_int_equal (hang.status, SY_HANG_BALANCED);
      assert_true (hang.determinate);
      for (int leg = 0; leg < 2; leg++)
        {
          assert_close (hang.angle_deg[leg], rows[i][0], 2e-5, 0);
          assert_close (hang.factor[leg], rows[i][1], 0.00005, 0);
          assert_close (hang.worst[leg], rows[i][1] / 2, 0.00005, 0);
          assert_close (hang.elastic[leg], hang.worst[leg], 1e-12, 0);
        }
    }
}

/* An exact limit is exactly the limit. */
static void
test_limits_are_met_exactly (void **state)
{
  static const double limits[] = { 30, 45, 60 };

  (void) state;
  for (int i = 0; i < 3; i++)
    for (double height = 0.1; height < 3000; height *= 1.7)
      {
        double out = height * tan (limits[i] / DEGREES);
        SyHang hang = two_legs (out, out, height);

        assert_true (hang.angle_deg[0] == limits[i] && hang.angle_deg[1] == limits[i]);
      }
  assert_true (two_legs (sqrt (3), sqrt (3), 1).factor[0] == 2);
}

/* US Navy, Equipment Operator training (14080), bridle hitch: 1,000 lb on two legs (READ). */
static void
test_navy_bridle (void **state)
{
  (void) state;
  assert_close (1000 * two_legs (1, 1, 1e6).worst[0], 500, 1e-6, 0);
  assert_close (1000 * two_legs (sqrt (3), sqrt (3), 1).worst[0], 1000, 1e-9, 0);
}

/* Michigan State University rigging page (READ): effective load of 1,000 lb at 30 and 60 degrees from the vertical. */
static void
test_university_effective_load (void **state)
{
  SyHang hang = two_legs (1, 1, sqrt (3));

  (void) state;
  assert_close (1000 * (hang.worst[0] + hang.worst[1]), 1154, 1, 0);
  assert_close (1000 * (hang.worst[0] + hang.worst[1]), 1154.7, TO_01, 0);
  hang = two_legs (sqrt (3), sqrt (3), 1);
  assert_close (1000 * (hang.worst[0] + hang.worst[1]), 2000, 1e-9, 0);
}

/* Nicholls's Seamanship (READ): legs of 6 ft carry 2 t each, 1.5 t each upright: 41 degrees 25 minutes. */
static void
test_seamanship_angle (void **state)
{
  SyHang hang = two_legs (sqrt (36 - 4.5 * 4.5), sqrt (36 - 4.5 * 4.5), 4.5);

  (void) state;
  assert_close (3 * hang.worst[0], 2, 1e-12, 0);
  assert_close (hang.angle_deg[0], 41 + 25.0 / 60, 0.5 / 60, 0);
}

/* BC Association for Crane Safety, rigging quiz (READ): T = L W / (2 H); 15,000 lb, 16 ft legs, 12 ft rise. */
static void
test_quiz_tension (void **state)
{
  double out = sqrt (16 * 16 - 12 * 12);

  (void) state;
  assert_close (15000 * two_legs (out, out, 12).worst[1], 10000, 1e-8, 0);
}

/* A worked cable problem (READ): 100 kg at 30 and 60 degrees from the horizontal, printed 49.978 and 86.617 with
   rounded sines; exact 50 and 86.60. */
static void
test_unequal_angles (void **state)
{
  SyHang hang = two_legs (sqrt (3), 1 / sqrt (3), 1);

  (void) state;
  assert_close (100 * hang.worst[0], 50, 1e-9, 0);
  assert_close (100 * hang.worst[1], 86.60, TO_001, 0);
  assert_close (100 * hang.worst[0], 49.978, 0.025, 0);
  assert_close (100 * hang.worst[1], 86.617, 0.025, 0);
  assert_true (hang.angle_deg[0] == 60 && hang.angle_deg[1] == 30);
}

/* COMPUTED: W 10,000, points 2 and 8 from the centre, hook 6 up. T1 = W b L1 / (h (a + b)). */
static void
test_off_centre_pair (void **state)
{
  SyHang hang = two_legs (2, 8, 6);

  (void) state;
  assert_close (10000 * hang.worst[0], 8432.74, TO_001, 0);
  assert_close (10000 * hang.worst[1], 3333.33, TO_001, 0);
}

static const SyPart four[4] = {
  { { -1, -0.6, 0 } }, { { 1, -0.6, 0 } }, { { 1, 0.6, 0 } }, { { -1, 0.6, 0 } },
};

/* COMPUTED: four points ±1, ±0.6, hook 1.5 up, W 50,000; diagonal legs carry all (Nicholls's Seamanship works the
   diagonal pair first). */
static void
test_four_centred (void **state)
{
  SyHang hang = level (four, 4, sy_vec3 (0, 0, 0), 1.5);

  (void) state;
  assert_int_equal (hang.status, SY_HANG_BALANCED);
  assert_false (hang.determinate);
  for (int i = 0; i < 4; i++)
    {
      assert_close (90 - hang.angle_deg[i], 52.14, TO_001, 0);
      assert_close (50000 * hang.elastic[i], 15833, TO_1, 0);
      assert_close (50000 * hang.worst[i], 31667, TO_1, 0);
      assert_false (hang.slack[i]);
    }
  assert_close (hang.margin, 0.6, 1e-12, 0);
}

/* COMPUTED: the same with the centre at (0.25, 0.1). */
static void
test_four_off_centre (void **state)
{
  static const double angle[] = { 46.32, 55.63, 59.00, 48.09 }, elastic[] = { 10615, 15940, 21109, 14880 },
                      worst[] = { 25928, 25240, 34028, 25195 };
  SyHang hang = level (four, 4, sy_vec3 (0.25, 0.1, 0), 1.5);

  (void) state;
  assert_int_equal (hang.status, SY_HANG_BALANCED);
  for (int i = 0; i < 4; i++)
    {
      assert_close (90 - hang.angle_deg[i], angle[i], TO_001, 0);
      assert_close (50000 * hang.elastic[i], elastic[i], TO_1, 0);
      assert_close (50000 * hang.worst[i], worst[i], TO_1, 0);
    }
  assert_close (hang.margin, 0.5, 1e-12, 0);
}

/* COMPUTED: three points on a circle of 1, W 900, centre (0.1, 0.05), hook 1.2 up: determinate. */
static void
test_three (void **state)
{
  const SyPart parts[3] = { { sy_vec3 (1, 0, 0) }, { sy_vec3 (-0.5, 0.866, 0) }, { sy_vec3 (-0.5, -0.866, 0) } };
  SyHang hang = level (parts, 3, sy_vec3 (0.1, 0.05, 0), 1.2);

  (void) state;
  assert_true (hang.determinate);
  assert_close (900 * hang.worst[0], 450.25, TO_001, 0);
  assert_close (900 * hang.worst[1], 387.32, TO_001, 0);
  assert_close (900 * hang.worst[2], 330.34, TO_001, 0);
  assert_close (hang.elastic[1], hang.worst[1], 1e-12, 0);
  assert_true (hang.skew == 0 && isinf (sy_hang_skew_error (&hang, 900, 4)));
}

/* COMPUTED: W 20 kN, points 2.0 x 1.2 m, hook 1.5 m up, 4 MN/m a leg (ASSUMED): pulls in N for one leg so many mm long;
   a leg error of 6.3 mm makes two legs of four. */
static void
test_leg_error (void **state)
{
  static const double rows[][3] = {
    { 0, 6333, 6333 }, { 1, 5333, 7333 }, { 2, 4333, 8333 }, { 3, 3333, 9333 }, { 5, 1333, 11333 },
  };
  SyHang hang = level (four, 4, sy_vec3 (0, 0, 0), 1.5);

  (void) state;
  assert_close (sy_hang_skew_error (&hang, 20, 4), 6.3, TO_01, 0);
  assert_close (sy_hang_skew_error (&hang, 20, 4), 20 / 4.0 / (1.5 / 1.9), 1e-9, 0);
  assert_close (hang.skew, 0.25, 1e-12, 0);
  for (size_t row = 0; row < sizeof rows / sizeof *rows; row++)
    for (int i = 0; i < 4; i++)
      {
        double pull = 20000 * hang.elastic[i] + 4000 * rows[row][0] * hang.skew_change[i];

        assert_close (fabs (hang.skew_change[i]), 0.25, 1e-12, 0);
        assert_close (pull, rows[row][hang.skew_change[i] < 0 ? 1 : 2], TO_1, 0);
      }
}

/* COMPUTED: centre c above points of half spread b and e off their middle, hook H above that: b (1 - c/H) - e. */
static void
test_margin_of_the_pyramid (void **state)
{
  static const double rows[][5] = {
    { 1, 1.5, 0.3, 0, 0.80 }, { 1, 1.5, 0.3, 0.9, -0.10 }, { 0.4, 1.0, 0.8, 0.1, -0.02 },
  };

  (void) state;
  for (int row = 0; row < 3; row++)
    {
      const double b = rows[row][0];
      const SyPart parts[4] = { { { -b, -9, 0 } }, { { b, -9, 0 } }, { { b, 9, 0 } }, { { -b, 9, 0 } } };
      SyHang hang;

      sy_hang_level (parts, 4, sy_vec3 (rows[row][3], 0, rows[row][2]), sy_vec3 (0, 0, rows[row][1]), &hang);
      assert_close (hang.margin, rows[row][4], 1e-12, 0);
      assert_int_equal (hang.status, rows[row][4] < 0 ? SY_HANG_OUTSIDE : SY_HANG_BALANCED);
    }
}

/* Two points hinge: a centre above the line through them is unstable whatever the length of the legs (COMPUTED). */
static void
test_what_tips (void **state)
{
  const SyPart two[2] = { { sy_vec3 (-1, 0, 0) }, { sy_vec3 (1, 0, 0.5) } };
  const SyPart line[3] = { { sy_vec3 (-1, 0, 0) }, { sy_vec3 (0, 0, 0) }, { sy_vec3 (1, 0, 0) } };

  (void) state;
  assert_int_equal (level (two, 2, sy_vec3 (0, 0, 0.24), 9).status, SY_HANG_BALANCED);
  assert_int_equal (level (two, 2, sy_vec3 (0, 0, 0.25), 9).status, SY_HANG_BALANCED);
  assert_int_equal (level (two, 2, sy_vec3 (0, 0, 0.26), 9).status, SY_HANG_TIPS);
  assert_close (level (two, 2, sy_vec3 (0, 0, 0.26), 9).residual, 0, 1e-12, 0);
  assert_int_equal (level (two, 1, sy_vec3 (-1, 0, -0.1), 9).status, SY_HANG_BALANCED);
  assert_int_equal (level (two, 1, sy_vec3 (-1, 0, 0.1), 9).status, SY_HANG_TIPS);
  assert_int_equal (level (line, 3, sy_vec3 (0.2, 0, -0.1), 9).status, SY_HANG_BALANCED);
  assert_int_equal (level (line, 3, sy_vec3 (0.2, 0, 0.1), 9).status, SY_HANG_TIPS);
  /* Four hold a centre above them; not one at the hook, nor one above two of them and on the line between. */
  assert_int_equal (level (four, 4, sy_vec3 (0.1, 0.1, 1.4), 1.5).status, SY_HANG_BALANCED);
  assert_int_equal (level (four, 4, sy_vec3 (0.1, 0.1, 1.5), 1.5).status, SY_HANG_TIPS);
  assert_int_equal (level (four, 4, sy_vec3 (0.1, -0.6, 0.1), 1.5).status, SY_HANG_TIPS);
}

static void
test_what_does_not_balance (void **state)
{
  const SyPart two[2] = { { sy_vec3 (-1000, -500, 0) }, { sy_vec3 (1000, 500, 0) } };
  SyHang hang = level (four, 4, sy_vec3 (1.01, 0, -1), 1.5);

  (void) state;
  assert_int_equal (hang.status, SY_HANG_OUTSIDE);
  assert_true (isnan (hang.worst[0]) && isnan (hang.elastic[3]) && isnan (sy_hang_skew_error (&hang, 1, 1)));
  assert_close (hang.margin, -0.01, 1e-12, 0);
  assert_true (hang.angle_deg[2] > 0 && hang.factor[2] > 1);
  assert_int_equal (level (four, 4, sy_vec3 (0, 0, -1), 0).status, SY_HANG_NO_MEET);
  assert_int_equal (level (four, 4, sy_vec3 (0, 0, -1), -0.5).status, SY_HANG_NO_MEET);
  assert_true (isinf (level (four, 4, sy_vec3 (0, 0, -1), 0).factor[0]));
  /* A leg of no length. */
  assert_int_equal (level (two, 1, sy_vec3 (-1000, -500, -1), 0).status, SY_HANG_NO_MEET);
  /* Beside the line of two points, by part of the distance between them. */
  for (double height = 10; height < 1e5; height *= 3)
    {
      assert_int_equal (level (two, 2, sy_vec3 (-500 * 0.9e-6 * 2, 1000 * 0.9e-6 * 2, -1), height).status,
                        SY_HANG_BALANCED);
      assert_int_equal (level (two, 2, sy_vec3 (-500 * 1.1e-6 * 2, 1000 * 1.1e-6 * 2, -1), height).status,
                        SY_HANG_OUTSIDE);
    }
  assert_int_equal (level (two, 1, sy_vec3 (-999, -500, -1), 900).status, SY_HANG_OUTSIDE);
}

/* A centre on the line between two points stays inside whatever its figures round to. */
static void
test_the_edge_is_inside (void **state)
{
  (void) state;
  for (int i = 0; i <= 100; i++)
    for (int j = 0; j < 50; j++)
      {
        double x = 1000.1 + 0.3 * j, part = i / 100.0;
        const SyPart parts[4] = { { { x, 0.7, 10 } }, { { x + 700.3, 123.1 * j, 10 } }, { { x + 30, 9000, 10 } },
                                  { { x - 600, 8000.1, 10 } } };
        SyVec3 a = parts[0].at, b = parts[1].at;
        SyHang hang = level (parts, 3 + j % 2, sy_vec3 (a.x + part * (b.x - a.x), a.y + part * (b.y - a.y), 0), 3000);

        assert_int_equal (hang.status, SY_HANG_BALANCED);
        assert_close (hang.margin, 0, 1e-9, 0);
        assert_true (hang.residual < 1e-9 && hang.slack[2]);
      }
}

/* Points -3, -1, 1, 3 in a line, hook 4 up: shares by the lever, worst over pairs; elastic: pull as the cosine. */
static void
test_four_in_a_line (void **state)
{
  const double inner = sqrt (17) / 4, k = 1 / (2 * (0.64 + 16.0 / 17));
  SyPart parts[4];

  (void) state;
  for (int turn = 0; turn < 12; turn++)
    {
      double c = cos (turn / 1.9), s = sin (turn / 1.9);
      SyHang hang;

      for (int i = 0; i < 4; i++)
        parts[i].at = sy_vec3 (500 + (2 * i - 3) * c, (2 * i - 3) * s, 0.1);
      hang = level (parts, 4, sy_vec3 (500, 0, -1), 4.1);
      assert_int_equal (hang.status, SY_HANG_BALANCED);
      assert_close (hang.worst[0], 0.5 * 5 / 4, 1e-9, 0);
      assert_close (hang.worst[1], 0.75 * inner, 1e-9, 0);
      assert_close (hang.worst[2], 0.75 * inner, 1e-9, 0);
      assert_close (hang.elastic[0], k * 0.8, 1e-9, 0);
      assert_close (hang.elastic[2], k * 4 / sqrt (17), 1e-9, 0);
      assert_true (hang.margin == 0 && hang.residual < 1e-9 && !hang.determinate);
      assert_int_equal (level (parts, 4, sy_vec3 (500 - 0.01 * s, 0.01 * c, -1), 4.1).status, SY_HANG_OUTSIDE);
    }
  /* All at one place. */
  for (int i = 0; i < 4; i++)
    parts[i].at = sy_vec3 (1, 2, 3);
  assert_close (level (parts, 4, sy_vec3 (1, 2, 0), 5).elastic[3], 0.25, 1e-12, 0);
  assert_close (level (parts, 4, sy_vec3 (1, 2, 0), 5).worst[3], 1, 1e-12, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_factors),
    cmocka_unit_test (test_limits_are_met_exactly),
    cmocka_unit_test (test_navy_bridle),
    cmocka_unit_test (test_university_effective_load),
    cmocka_unit_test (test_seamanship_angle),
    cmocka_unit_test (test_quiz_tension),
    cmocka_unit_test (test_unequal_angles),
    cmocka_unit_test (test_off_centre_pair),
    cmocka_unit_test (test_four_centred),
    cmocka_unit_test (test_four_off_centre),
    cmocka_unit_test (test_three),
    cmocka_unit_test (test_leg_error),
    cmocka_unit_test (test_margin_of_the_pyramid),
    cmocka_unit_test (test_what_tips),
    cmocka_unit_test (test_what_does_not_balance),
    cmocka_unit_test (test_the_edge_is_inside),
    cmocka_unit_test (test_four_in_a_line),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
