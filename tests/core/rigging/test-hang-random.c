/* SPDX-License-Identifier: MIT */
#include "sy-hang.h"
#include "sy-test.h"

/* What statics asks of every answer, on lifts drawn at random with a fixed seed, so that each run is the same. */

#define N_CASES 10000
#define CLOSE 1e-9 /* of the weight */
#define MAX_CORNERS 64

typedef struct
{
  uint64_t state;
} Random;

typedef struct
{
  int n;
  SyPart parts[SY_PARTS_MAX];
  SyVec3 cg, hook;
} Lift;

/* splitmix64 (public domain, S. Vigna), to [low, high). */
static double
draw (Random *random, double low, double high)
{
  uint64_t z = (random->state += 0x9e3779b97f4a7c15u);

  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return low + (high - low) * (double) ((z ^ (z >> 31)) >> 11) * 0x1p-53;
}

/* A load of the size of a die, mm; the centre within its points and in part above them, the hook over it. */
static Lift
draw_lift (Random *random, int n)
{
  Lift lift = { .n = n };
  SyVec3 middle = sy_vec3 (0, 0, 0);
  double sum = 0, top = 0, x = draw (random, -5000, 5000), y = draw (random, -5000, 5000);

  for (int i = 0; i < n; i++)
    {
      double angle = 6.283185307179586 * (i + draw (random, 0, 0.8)) / n, far = draw (random, 200, 1500);
      double share = draw (random, 0.05, 1);
      SyVec3 at = sy_vec3 (x + far * cos (angle), y + far * sin (angle), draw (random, 0, 500));

      lift.parts[i].at = at;
      middle = sy_vec3_add (middle, sy_vec3_scale (at, share));
      sum += share;
      top = fmax (top, at.z);
    }
  middle = sy_vec3_scale (middle, 1 / sum);
  lift.cg = sy_vec3 (middle.x, middle.y, middle.z + draw (random, -600, n < 3 ? 0 : 400));
  lift.hook = sy_vec3 (middle.x, middle.y, fmax (top, lift.cg.z) + draw (random, 150, 4000));
  for (int i = 0; i < n; i++)
    lift.parts[i].length = sy_vec3_length (sy_vec3_sub (lift.hook, lift.parts[i].at));
  return lift;
}

static SyHang
level (const Lift *lift)
{
  SyHang hang;

  sy_hang_level (lift->parts, lift->n, lift->cg, lift->hook, &hang);
  return hang;
}

static SyHang
loose (const Lift *lift)
{
  SyHang hang;

  sy_hang_free (lift->parts, lift->n, lift->cg, 0, &hang);
  return hang;
}

/* Forces, and moments about the centre over the largest arm, both as part of the weight. */
static void
assert_balances (const Lift *lift, const SyHang *hang, const double *pull)
{
  SyVec3 force = sy_vec3_scale (hang->up, -1), moment = sy_vec3 (0, 0, 0);
  double arm = 0;

  for (int i = 0; i < lift->n; i++)
    {
      SyVec3 leg = sy_vec3_sub (hang->hook, lift->parts[i].at), from = sy_vec3_sub (lift->parts[i].at, lift->cg);
      SyVec3 pulls = sy_vec3_scale (leg, pull[i] / sy_vec3_length (leg));

      assert_true (pull[i] >= 0);
      force = sy_vec3_add (force, pulls);
      moment = sy_vec3_add (moment, sy_vec3_cross (from, pulls));
      arm = fmax (arm, sy_vec3_length (from));
    }
  assert_close (sy_vec3_length (force), 0, CLOSE, 0);
  assert_close (sy_vec3_length (moment) / arm, 0, CLOSE, 0);
}

/* Corners by another way than the code under test: elimination with pivots in long double. */
static bool
solve (const SyVec3 *u, SyVec3 up, double *out)
{
  long double m[3][4] = { { u[0].x, u[1].x, u[2].x, up.x }, { u[0].y, u[1].y, u[2].y, up.y },
                          { u[0].z, u[1].z, u[2].z, up.z } };

  for (int c = 0; c < 3; c++)
    {
      int pivot = c;

      for (int r = c + 1; r < 3; r++)
        if (fabsl (m[r][c]) > fabsl (m[pivot][c]))
          pivot = r;
      if (fabsl (m[pivot][c]) < 1e-13L)
        return false;
      for (int k = 0; k < 4; k++)
        {
          long double kept = m[c][k];

          m[c][k] = m[pivot][k];
          m[pivot][k] = kept;
        }
      for (int r = 0; r < 3; r++)
        if (r != c)
          for (int k = 3; k >= c; k--)
            m[r][k] -= m[c][k] * m[r][c] / m[c][c];
    }
  for (int i = 0; i < 3; i++)
    out[i] = (double) (m[i][3] / m[i][i]);
  return true;
}

static int
corners (const Lift *lift, const SyHang *hang, double corner[][SY_PARTS_MAX])
{
  SyVec3 u[SY_PARTS_MAX];
  int n = 0;

  for (int i = 0; i < lift->n; i++)
    {
      SyVec3 leg = sy_vec3_sub (hang->hook, lift->parts[i].at);

      u[i] = sy_vec3_scale (leg, 1 / sy_vec3_length (leg));
    }
  for (int a = 0; a < lift->n; a++)
    for (int b = a + 1; b < lift->n; b++)
      for (int c = b + 1; c < lift->n; c++)
        {
          double pull[3];

          if (!solve ((SyVec3[]) { u[a], u[b], u[c] }, hang->up, pull)
              || pull[0] < -1e-12 || pull[1] < -1e-12 || pull[2] < -1e-12)
            continue;
          assert_in_range (n, 0, MAX_CORNERS - 1);
          memset (corner[n], 0, sizeof corner[n]);
          corner[n][a] = fmax (pull[0], 0);
          corner[n][b] = fmax (pull[1], 0);
          corner[n][c] = fmax (pull[2], 0);
          assert_balances (lift, hang, corner[n]);
          n++;
        }
  return n;
}

/* Worst is what the corners reach; elastic is nearest to the origin of all that lies between them: no corner is on
   its near side. */
static void
assert_is_worst_and_least (const Lift *lift, const SyHang *hang)
{
  double corner[MAX_CORNERS][SY_PARTS_MAX], worst[SY_PARTS_MAX] = { 0 };
  int n = corners (lift, hang, corner);

  assert_true (n > 0);
  for (int c = 0; c < n; c++)
    {
      double nearer = 0;

      for (int i = 0; i < lift->n; i++)
        {
          worst[i] = fmax (worst[i], corner[c][i]);
          nearer += hang->elastic[i] * (corner[c][i] - hang->elastic[i]);
        }
      assert_true (nearer > -CLOSE);
    }
  for (int i = 0; i < lift->n; i++)
    assert_close (hang->worst[i], worst[i], CLOSE, CLOSE);
}

static void
assert_answer (const Lift *lift, const SyHang *hang)
{
  assert_int_equal (hang->status, SY_HANG_BALANCED);
  assert_true (hang->residual < CLOSE);
  assert_balances (lift, hang, hang->elastic);
  for (int i = 0; i < lift->n; i++)
    {
      assert_true (hang->worst[i] >= hang->elastic[i]);
      if (hang->determinate)
        assert_close (hang->worst[i], hang->elastic[i], CLOSE, CLOSE);
      if (hang->slack[i])
        assert_true (hang->elastic[i] == 0 && hang->worst[i] == 0);
    }
  if (hang->determinate)
    assert_balances (lift, hang, hang->worst);
}

/*
 * Of legs that can all be taut: what a length error of leg j changes is the part of e_j that lies across the three rows
 * of directions, found here by taking the rows out one after the other. The error that slackens a leg first.
 */
static double
first_slack (const Lift *lift, const SyHang *hang, double *largest)
{
  double row[3][SY_PARTS_MAX], soonest = INFINITY;
  const int n = lift->n;

  for (int i = 0; i < n; i++)
    {
      SyVec3 leg = sy_vec3_sub (hang->hook, lift->parts[i].at);

      row[0][i] = leg.z / sy_vec3_length (leg);
      row[1][i] = leg.x / sy_vec3_length (leg);
      row[2][i] = leg.y / sy_vec3_length (leg);
    }
  for (int r = 0; r < 3; r++)
    {
      double square = 0;

      for (int before = 0; before < r; before++)
        {
          double along = 0;

          for (int i = 0; i < n; i++)
            along += row[r][i] * row[before][i];
          for (int i = 0; i < n; i++)
            row[r][i] -= along * row[before][i];
        }
      for (int i = 0; i < n; i++)
        square += row[r][i] * row[r][i];
      for (int i = 0; i < n; i++)
        row[r][i] /= sqrt (square);
    }
  *largest = 0;
  for (int j = 0; j < n; j++)
    for (int i = 0; i < n; i++)
      {
        double change = (i == j) - row[0][i] * row[0][j] - row[1][i] * row[1][j] - row[2][i] * row[2][j];

        *largest = fmax (*largest, fabs (change));
        if (fabs (change) > CLOSE)
          soonest = fmin (soonest, hang->elastic[i] / fabs (change));
      }
  return soonest;
}

/* Length errors move pulls about without a change of load; a longer leg itself pulls less. */
static void
assert_skew (const Lift *lift, const SyHang *hang)
{
  SyVec3 sum = sy_vec3 (0, 0, 0);
  double most = 0, least = 0, largest, soonest;
  bool all = !hang->determinate;

  for (int i = 0; i < lift->n; i++)
    {
      SyVec3 leg = sy_vec3_sub (hang->hook, lift->parts[i].at);

      sum = sy_vec3_add (sum, sy_vec3_scale (leg, hang->skew_change[i] / sy_vec3_length (leg)));
      most = fmax (most, hang->skew_change[i]);
      least = fmin (least, hang->skew_change[i]);
      all = all && hang->worst[i] > 0;
    }
  assert_close (sy_vec3_length (sum), 0, CLOSE, 0);
  assert_true (fmax (-least, most) <= hang->skew + CLOSE && hang->skew <= 1);
  assert_true ((hang->skew > 0) == !hang->determinate);
  /* Of four there is one pattern of changes; the leg whose error slackens first is the one that changes most. */
  if (lift->n == 4)
    assert_close (-least, hang->skew, CLOSE, 0);
  if (!all)
    return;
  soonest = first_slack (lift, hang, &largest);
  assert_close (hang->skew, largest, CLOSE, 0);
  assert_close (sy_hang_skew_error (hang, 3, 2), soonest * 3 / 2, 1e-7, 1e-7);
}

static void
test_held_level (void **state)
{
  Random random = { 1 };

  (void) state;
  for (int i = 0; i < N_CASES; i++)
    {
      Lift lift = draw_lift (&random, 2 + i % 3);
      SyHang hang = level (&lift);

      assert_answer (&lift, &hang);
      assert_skew (&lift, &hang);
      assert_true (hang.determinate == (lift.n < 4));
      assert_true (lift.n < 3 ? hang.margin == 0 : hang.margin > 0);
      if (lift.n >= 3)
        assert_is_worst_and_least (&lift, &hang);
    }
}

static void
test_up_to_eight_level (void **state)
{
  Random random = { 2 };

  (void) state;
  for (int i = 0; i < N_CASES / 10; i++)
    {
      Lift lift = draw_lift (&random, 5 + i % 4);
      SyHang hang = level (&lift);

      assert_answer (&lift, &hang);
      assert_skew (&lift, &hang);
      assert_is_worst_and_least (&lift, &hang);
    }
}

/* No place near by that the legs allow has the load lower. */
static void
assert_hangs_lowest (Random *random, const Lift *lift, const SyHang *hang)
{
  for (int i = 0; i < 20; i++)
    {
      double by = pow (10, draw (random, -4, 1)), room = INFINITY;
      SyVec3 step = sy_vec3 (draw (random, -by, by), draw (random, -by, by), draw (random, -by, by));
      SyVec3 x = sy_vec3_add (hang->hook, step);

      for (int leg = 0; leg < lift->n; leg++)
        room = fmin (room, lift->parts[leg].length - sy_vec3_length (sy_vec3_sub (x, lift->parts[leg].at)));
      if (room >= 0)
        assert_true (sy_vec3_length (sy_vec3_sub (x, lift->cg)) <= hang->height + 1e-5);
    }
}

static void
test_hanging_free (void **state)
{
  Random random = { 3 };
  int turned = 0, slack = 0;

  (void) state;
  for (int i = 0; i < N_CASES; i++)
    {
      Lift lift = draw_lift (&random, 2 + i % 3);
      SyHang hang;

      for (int leg = 0; leg < lift.n; leg++)
        lift.parts[leg].length *= draw (&random, 1, 1.2);
      hang = loose (&lift);
      assert_answer (&lift, &hang);
      assert_skew (&lift, &hang);
      assert_close (sy_vec3_length (hang.up), 1, 1e-12, 0);
      for (int leg = 0; leg < lift.n; leg++)
        {
          double left = lift.parts[leg].length - sy_vec3_length (sy_vec3_sub (hang.hook, lift.parts[leg].at));

          assert_close (hang.slack_by[leg], fmax (left, 0), 1e-5, 0);
          assert_true (left > -1e-5 && (hang.elastic[leg] == 0 || left < 1e-5));
          slack += hang.slack[leg];
        }
      assert_hangs_lowest (&random, &lift, &hang);
      turned += hang.tilt_deg > 1;
    }
  /* The lifts drawn were not all easy ones. */
  assert_true (turned > N_CASES / 2 && slack > N_CASES / 3);
}

/* Legs as long as a level lift needs them: the free load hangs level, with the same pulls. */
static void
test_free_with_level_lengths (void **state)
{
  Random random = { 4 };

  (void) state;
  for (int i = 0; i < N_CASES; i++)
    {
      Lift lift = draw_lift (&random, 2 + i % 3);
      SyHang held = level (&lift), hang = loose (&lift);

      assert_answer (&lift, &hang);
      assert_close (hang.tilt_deg, 0, 1e-6, 0);
      assert_close (sy_vec3_length (sy_vec3_sub (hang.hook, held.hook)), 0, 1e-5, 0);
      for (int leg = 0; leg < lift.n; leg++)
        {
          assert_close (hang.worst[leg], held.worst[leg], 1e-8, 1e-8);
          assert_close (hang.elastic[leg], held.elastic[leg], 1e-8, 1e-8);
          assert_close (hang.angle_deg[leg], held.angle_deg[leg], 1e-6, 0);
        }
      assert_close (hang.margin, held.margin, 1e-4, 0);
    }
}

/* The same lift in a mirror, with its legs in another order, in another unit, somewhere else. */
static void
test_symmetry (void **state)
{
  Random random = { 5 };

  (void) state;
  for (int i = 0; i < N_CASES; i++)
    {
      Lift lift = draw_lift (&random, 2 + i % 4), other = { .n = lift.n };
      double by = pow (10, draw (&random, -3, 3)), off = draw (&random, -1000, 1000);
      int shift = i % lift.n;
      SyHang a, b;

      if (i % 2 == 1)
        for (int leg = 0; leg < lift.n; leg++)
          lift.parts[leg].length *= draw (&random, 1, 1.1);
      for (int leg = 0; leg < lift.n; leg++)
        {
          SyPart part = lift.parts[leg];

          other.parts[(leg + shift) % lift.n]
            = (SyPart) { sy_vec3 ((off - part.at.x) * by, part.at.y * by, part.at.z * by), part.length * by };
        }
      other.cg = sy_vec3 ((off - lift.cg.x) * by, lift.cg.y * by, lift.cg.z * by);
      other.hook = sy_vec3 (other.cg.x, other.cg.y, lift.hook.z * by);
      a = i % 2 == 1 ? loose (&lift) : level (&lift);
      b = i % 2 == 1 ? loose (&other) : level (&other);
      assert_int_equal (a.status, b.status);
      assert_close (a.tilt_deg, b.tilt_deg, 1e-7, 0);
      assert_close (a.height * by, b.height, 0, 1e-9);
      assert_close (a.margin * by, b.margin, 1e-6 * by, 0);
      assert_close (a.skew, b.skew, CLOSE, 0);
      assert_close (sy_hang_skew_error (&a, 20, 4), sy_hang_skew_error (&b, 20, 4), 1e-7, 1e-7);
      for (int leg = 0; leg < lift.n; leg++)
        {
          int same = (leg + shift) % lift.n;

          assert_close (a.worst[leg], b.worst[same], 1e-8, 1e-8);
          assert_close (a.elastic[leg], b.elastic[same], 1e-8, 1e-8);
          assert_close (a.angle_deg[leg], b.angle_deg[same], 1e-6, 0);
          assert_int_equal (a.slack[leg], b.slack[same]);
        }
    }
}

/* What tips when it is held level turns over when it is let go; what does not stays. */
static void
test_tipping (void **state)
{
  Random random = { 7 };

  (void) state;
  for (int i = 0; i < N_CASES; i++)
    {
      Lift lift = draw_lift (&random, 2);
      SyVec3 a = lift.parts[0].at, b = lift.parts[1].at;
      double above = draw (&random, -100, 100);
      SyHang held, hang;

      if (fabs (above) < 0.01 || fabs (b.x - a.x) < 100)
        continue;
      lift.cg.z = a.z + (b.z - a.z) * (lift.cg.x - a.x) / (b.x - a.x) + above;
      held = level (&lift);
      hang = loose (&lift);
      assert_int_equal (held.status, above > 0 ? SY_HANG_TIPS : SY_HANG_BALANCED);
      assert_balances (&lift, &held, held.elastic);
      assert_answer (&lift, &hang);
      /* Turned over about a line that may be steep: 180 less twice its slope, or near it. */
      if (above > 0)
        assert_true (hang.tilt_deg > 10);
      else
        assert_close (hang.tilt_deg, 0, 1e-4, 0);
    }
}

/* Moved straight out through an edge, the centre is outside, as far as the margin says. */
static void
test_outside (void **state)
{
  Random random = { 6 };

  (void) state;
  for (int i = 0; i < N_CASES; i++)
    {
      Lift lift = draw_lift (&random, 3 + i % 3);
      double angle = draw (&random, 0, 6.28), far = draw (&random, 3500, 9000);
      SyHang hang;

      lift.hook.x = lift.cg.x += far * cos (angle);
      lift.hook.y = lift.cg.y += far * sin (angle);
      hang = level (&lift);
      assert_int_equal (hang.status, SY_HANG_OUTSIDE);
      assert_true (hang.margin < 0 && isnan (hang.worst[0]));
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_held_level),
    cmocka_unit_test (test_up_to_eight_level),
    cmocka_unit_test (test_hanging_free),
    cmocka_unit_test (test_free_with_level_lengths),
    cmocka_unit_test (test_symmetry),
    cmocka_unit_test (test_tipping),
    cmocka_unit_test (test_outside),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
