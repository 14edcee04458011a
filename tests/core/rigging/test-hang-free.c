/* SPDX-License-Identifier: MIT */
#include "sy-hang.h"
#include "sy-test.h"

/* Loads that hang free: a hook and legs of known lengths. */

/* Half of the last printed digit. */
#define TO_01 0.05
#define TO_001 0.005
#define TO_0001 0.0005

static SyHang
level (const SyPart *parts, int n, SyVec3 cg, double height)
{
  SyHang hang;

  sy_hang_level (parts, n, cg, sy_vec3 (cg.x, cg.y, height), &hang);
  return hang;
}

static const SyPart four[4] = {
  { { -1, -0.6, 0 } }, { { 1, -0.6, 0 } }, { { 1, 0.6, 0 } }, { { -1, 0.6, 0 } },
};

/* COMPUTED: points ±1, legs 2 and 2, centre (0.2, -0.3), W 1000; all in one plane. */
static void
test_free_pair (void **state)
{
  const SyPart parts[2] = { { sy_vec3 (-1, 0, 0), 2 }, { sy_vec3 (1, 0, 0), 2 } };
  SyHang hang;

  (void) state;
  sy_hang_free (parts, 2, sy_vec3 (0.2, 0, -0.3), 0, &hang);
  assert_int_equal (hang.status, SY_HANG_BALANCED);
  assert_close (hang.tilt_deg, 5.621, TO_0001, 0);
  assert_close (1000 * hang.worst[0], 476.6, TO_01, 0);
  assert_close (1000 * hang.worst[1], 672.5, TO_01, 0);
  assert_true (hang.determinate && hang.residual < 1e-12);
  assert_close (hang.hook.z, sqrt (3), 1e-12, 0);
}

/* COMPUTED: hook off the centre by e, h above it: tilt = atan (e / h). */
static void
test_tilt (void **state)
{
  static const double rows[][3] = { { 20, 1500, 0.76 }, { 50, 1500, 1.91 }, { 100, 1500, 3.81 }, { 100, 3000, 1.91 } };

  (void) state;
  for (int row = 0; row < 4; row++)
    {
      SyPart parts[3] = { { sy_vec3 (-900, -500, 200) }, { sy_vec3 (800, -500, 100) }, { sy_vec3 (0, 700, 200) } };
      SyVec3 hook = sy_vec3 (0, 0, rows[row][1]);
      SyHang hang;

      for (int i = 0; i < 3; i++)
        parts[i].length = sy_vec3_length (sy_vec3_sub (hook, parts[i].at));
      sy_hang_free (parts, 3, sy_vec3 (rows[row][0], 0, 0), 0, &hang);
      assert_int_equal (hang.status, SY_HANG_BALANCED);
      assert_close (hang.tilt_deg, rows[row][2], TO_001, 0);
      assert_close (hang.height, hypot (rows[row][0], rows[row][1]), 1e-8, 0);
    }
}

/* One leg of a rectangle 5 mm long: it hangs loose, the diagonal beside it carries a centred load (statics, rigid). */
static void
test_a_long_leg_hangs_loose (void **state)
{
  const double leg = 1900;
  SyPart parts[4] = { { { -1000, -600, 0 }, leg }, { { 1000, -600, 0 }, leg }, { { 1000, 600, 0 }, leg },
                      { { -1000, 600, 0 }, leg + 5 } };
  SyHang hang;

  (void) state;
  sy_hang_free (parts, 4, sy_vec3 (0, 0, -400), 0, &hang);
  assert_int_equal (hang.status, SY_HANG_BALANCED);
  assert_true (hang.slack[3] && !hang.slack[0] && !hang.slack[1] && !hang.slack[2]);
  assert_close (hang.slack_by[3], 5, 1e-6, 0);
  assert_close (hang.worst[0], 1.9 / 1.5 / 2, 1e-9, 0);
  assert_close (hang.worst[2], 1.9 / 1.5 / 2, 1e-9, 0);
  assert_close (hang.worst[1], 0, 1e-9, 0);
  assert_true (hang.worst[3] == 0 && hang.elastic[3] == 0);

  sy_hang_free (parts, 4, sy_vec3 (100, -30, -400), 0, &hang);
  assert_true (hang.slack[3] && hang.worst[1] > 0 && hang.determinate);
  assert_close (hang.height, hypot (hypot (100, 30), 1900), 1e-6, 0);

  /* A centre on the other side turns the load until the long leg is taut and the one across from it loose. */
  sy_hang_free (parts, 4, sy_vec3 (-100, 30, -400), 0, &hang);
  assert_true (hang.slack[1] && !hang.slack[3] && hang.worst[3] > 0);
  assert_true (hang.tilt_deg > 0 && hang.residual < 1e-12);

  /* Legs that may turn out taut count in the worst, and stay marked. */
  sy_hang_free (parts, 4, sy_vec3 (0, 0, -400), 5.1, &hang);
  assert_true (hang.slack[3] && !hang.determinate);
  assert_close (hang.worst[3], 1.9 / 1.5 / 2, 0.005, 0);
  assert_close (hang.worst[1], 1.9 / 1.5 / 2, 0.005, 0);
}

/* All four at their length at once: the same answer as level. */
static void
test_four_free_as_level (void **state)
{
  SyPart parts[4];
  SyHang hang, held = level (four, 4, sy_vec3 (0.25, 0.1, 0.4), 1.5);

  (void) state;
  for (int i = 0; i < 4; i++)
    {
      parts[i] = four[i];
      parts[i].length = sy_vec3_length (sy_vec3_sub (held.hook, parts[i].at));
    }
  sy_hang_free (parts, 4, sy_vec3 (0.25, 0.1, 0.4), 0, &hang);
  assert_int_equal (hang.status, SY_HANG_BALANCED);
  assert_true (hang.tilt_deg == 0);
  for (int i = 0; i < 4; i++)
    {
      assert_close (hang.worst[i], held.worst[i], 1e-9, 0);
      assert_close (hang.elastic[i], held.elastic[i], 1e-9, 0);
    }
  assert_close (hang.margin, held.margin, 1e-9, 0);
  assert_close (hang.skew, held.skew, 1e-9, 0);

  /* Above two of the points and on the line between them it balances level, but does not stay there. */
  held = level (four, 4, sy_vec3 (0.1, -0.6, 0.1), 1.5);
  for (int i = 0; i < 4; i++)
    parts[i].length = sy_vec3_length (sy_vec3_sub (held.hook, parts[i].at));
  sy_hang_free (parts, 4, sy_vec3 (0.1, -0.6, 0.1), 0, &hang);
  assert_int_equal (hang.status, SY_HANG_BALANCED);
  assert_true (hang.tilt_deg > 90);
  /* Below it does, with the other two legs just at their length. */
  sy_hang_free (parts, 4, sy_vec3 (0.1, -0.6, -0.1), 0, &hang);
  assert_close (hang.tilt_deg, 0, 1e-9, 0);
  assert_true (hang.determinate && !hang.slack[2] && hang.worst[2] == 0);
}

static void
test_free_without_an_answer (void **state)
{
  const SyPart apart[2] = { { sy_vec3 (-1, 0, 0), 0.9 }, { sy_vec3 (1, 0, 0), 1 } };
  const SyPart one[1] = { { sy_vec3 (2, 3, 4), 5 } };
  SyHang hang;

  (void) state;
  sy_hang_free (apart, 2, sy_vec3 (0, 0, -1), 0, &hang);
  assert_int_equal (hang.status, SY_HANG_NO_MEET);
  assert_true (isnan (hang.worst[0]) && isnan (hang.hook.x) && hang.n == 2);
  sy_hang_free (one, 1, sy_vec3 (2, 3, 1), 0, &hang);
  assert_int_equal (hang.status, SY_HANG_BALANCED);
  assert_close (hang.hook.z, 9, 1e-12, 0);
  assert_close (hang.worst[0], 1, 1e-12, 0);
  assert_close (hang.height, 8, 1e-12, 0);
  /* Hung up by its centre it stays as it was drawn. */
  sy_hang_free (one, 1, sy_vec3 (2, 3, 4), 0, &hang);
  assert_true (hang.status == SY_HANG_BALANCED && hang.tilt_deg == 0);
}

/* Figures that no caller hands over: an answer or none, but it comes back. */
static void
test_nonsense_comes_back (void **state)
{
  static const double odd[] = { 0, -1, 1, 1e-320, 1e308, -1e308, INFINITY, NAN, 1e-9, 3 };
  const int n_odd = sizeof odd / sizeof *odd;
  unsigned seed = 7;
  SyHang hang;

  (void) state;
  for (int i = 0; i < 20000; i++)
    {
      SyPart parts[SY_PARTS_MAX];
      double figure[4 * SY_PARTS_MAX + 6];

      for (size_t f = 0; f < sizeof figure / sizeof *figure; f++)
        {
          seed = seed * 1664525u + 1013904223u;
          figure[f] = odd[(seed >> 16) % (unsigned) n_odd];
        }
      for (int p = 0; p < SY_PARTS_MAX; p++)
        parts[p] = (SyPart) { sy_vec3 (figure[4 * p], figure[4 * p + 1], figure[4 * p + 2]), figure[4 * p + 3] };
      sy_hang_level (parts, i % 11, sy_vec3 (figure[32], figure[33], figure[34]),
                     sy_vec3 (figure[35], figure[36], figure[37]), &hang);
      assert_in_range (hang.n, 0, SY_PARTS_MAX);
      sy_hang_free (parts, i % 11, sy_vec3 (figure[32], figure[33], figure[34]), figure[35], &hang);
      assert_in_range (hang.n, 0, SY_PARTS_MAX);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_free_pair),
    cmocka_unit_test (test_tilt),
    cmocka_unit_test (test_a_long_leg_hangs_loose),
    cmocka_unit_test (test_four_free_as_level),
    cmocka_unit_test (test_free_without_an_answer),
    cmocka_unit_test (test_nonsense_comes_back),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
