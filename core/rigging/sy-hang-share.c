/* SPDX-License-Identifier: MIT */
#include "sy-hang-private.h"

#include "sy-solve.h"

#define NOTHING 1e-10  /* of the load: a pull that counts as none */
#define PARALLEL 1e-9  /* sine between two legs that count as one direction */
#define IN_PLANE 1e-6  /* of the spread of the legs; of the distance between their points */
#define IN_LINE 1e-6   /* sine between a single direction and upright */
#define SAME 1e-9      /* of the load: two answers that count as one */

/* Directions that the legs in @used do not reach, so that any three independent columns can be solved for. */
typedef struct
{
  int rank;        /* 0 to 3 */
  SyVec3 pad[2];   /* 3 - rank of them */
  double spread;   /* largest sine between two legs */
} Reach;

static SyVec3
across (SyVec3 a)
{
  SyVec3 other = fabs (a.x) < 0.6 ? sy_vec3 (1, 0, 0) : sy_vec3 (0, 1, 0);
  SyVec3 normal = sy_vec3_cross (a, other);

  return sy_vec3_scale (normal, 1 / sy_vec3_length (normal));
}

static Reach
reach_of (const SyVec3 *u, int n, unsigned used)
{
  Reach reach = { 0 };
  SyVec3 normal = sy_vec3 (0, 0, 0);
  double most = 0, off = 0;
  int first = -1;

  for (int i = 0; i < n; i++)
    {
      if ((used >> i & 1) == 0)
        continue;
      if (first < 0)
        first = i;
      for (int j = i + 1; j < n; j++)
        if ((used >> j & 1) != 0)
          {
            SyVec3 c = sy_vec3_cross (u[i], u[j]);
            double square = sy_vec3_dot (c, c);

            if (square > most)
              {
                most = square;
                normal = c;
              }
          }
    }
  if (first < 0)
    return reach;
  reach.spread = sqrt (most);
  if (!(reach.spread > PARALLEL))
    {
      reach.rank = 1;
      reach.pad[0] = across (u[first]);
      reach.pad[1] = sy_vec3_cross (u[first], reach.pad[0]);
      return reach;
    }
  normal = sy_vec3_scale (normal, 1 / reach.spread);
  for (int i = 0; i < n; i++)
    if ((used >> i & 1) != 0)
      off = fmax (off, fabs (sy_vec3_dot (u[i], normal)));
  reach.rank = off > IN_PLANE * reach.spread ? 3 : 2;
  reach.pad[0] = normal;
  return reach;
}

/* What of @up the legs cannot give. */
static SyVec3
out_of_reach (const Reach *reach, SyVec3 up)
{
  SyVec3 lost = sy_vec3 (0, 0, 0);

  for (int i = 0; i < 3 - reach->rank; i++)
    lost = sy_vec3_add (lost, sy_vec3_scale (reach->pad[i], sy_vec3_dot (up, reach->pad[i])));
  return lost;
}

/* Largest distance between two points. */
static double
span_of (const SyVec3 *u, const double *length, int n)
{
  double span = 0;

  for (int i = 0; i < n; i++)
    for (int j = i + 1; j < n; j++)
      {
        SyVec3 apart = sy_vec3_sub (sy_vec3_scale (u[i], length[i]), sy_vec3_scale (u[j], length[j]));

        span = fmax (span, sy_vec3_length (apart));
      }
  return span;
}

/* Corners of the set of answers: every independent choice of as many legs as there are directions to reach. */
static bool
find_corners (const SyVec3 *u, const double *length, int n, const Reach *reach, SyVec3 load, SyShare *out,
              double *swing)
{
  int n_pads = 3 - reach->rank, n_columns = n + n_pads;
  SyVec3 column[SY_PARTS_MAX + 2];
  bool any = false;

  for (int i = 0; i < n_columns; i++)
    column[i] = i < n ? u[i] : reach->pad[i - n];
  for (int a = 0; a < n; a++)
    for (int b = a + 1; b < n_columns; b++)
      for (int c = b + 1; c < n_columns; c++)
        {
          int pick[3] = { a, b, c };
          double pull[3], least = 0, sum = 1, turn = 0;
          SyVec3 rest = load;

          if ((n_pads > 0 && c != n_columns - 1) || (n_pads == 2 && b != n)
              || !sy_solve3 (column[a], column[b], column[c], load, pull))
            continue;
          for (int i = 0; i < 3; i++)
            {
              rest = sy_vec3_sub (rest, sy_vec3_scale (column[pick[i]], pull[i]));
              sum += fabs (pull[i]);
              if (pick[i] < n)
                {
                  least = fmin (least, pull[i]);
                  turn += pull[i] / length[pick[i]];
                }
            }
          /* Three legs that all but lie in a plane give figures that do not balance: no corner. */
          if (!(least >= -NOTHING) || !(sy_vec3_length (rest) <= NOTHING * sum))
            continue;
          any = true;
          *swing = fmax (*swing, turn);
          for (int i = 0; i < 3; i++)
            if (pick[i] < n)
              out->worst[pick[i]] = fmax (out->worst[pick[i]], pull[i]);
        }
  return any;
}

/* Columns of the sum of u·u' over @used, with what they do not reach added. */
static void
fill_gram (const SyVec3 *u, int n, unsigned used, const Reach *reach, SyVec3 gram[3])
{
  gram[0] = gram[1] = gram[2] = sy_vec3 (0, 0, 0);
  for (int i = 0; i < n + 3 - reach->rank; i++)
    {
      SyVec3 v = i < n ? u[i] : reach->pad[i - n];

      if (i < n && (used >> i & 1) == 0)
        continue;
      gram[0] = sy_vec3_add (gram[0], sy_vec3_scale (v, v.x));
      gram[1] = sy_vec3_add (gram[1], sy_vec3_scale (v, v.y));
      gram[2] = sy_vec3_add (gram[2], sy_vec3_scale (v, v.z));
    }
}

/*
 * Least sum of squares: T = max (0, u·m) for one vector m (Kuhn and Tucker). Every set of taut legs is tried, the
 * whole set first, until one agrees with its own signs; if rounding lets none agree, the one that comes nearest.
 */
static void
find_elastic (const SyVec3 *u, int n, const Reach *reach, SyVec3 load, SyShare *out)
{
  double best = INFINITY;

  for (unsigned used = (1u << n) - 1; used > 0 && best > NOTHING / 10; used--)
    {
      SyVec3 gram[3], m = sy_vec3 (0, 0, 0), rest = load;
      double wrong = 0, pull[SY_PARTS_MAX];

      fill_gram (u, n, used, reach, gram);
      /* Twice, the second time for what the first left over. */
      for (int pass = 0; pass < 2; pass++)
        {
          double more[3];

          if (!sy_solve3 (gram[0], gram[1], gram[2], rest, more))
            {
              wrong = INFINITY;
              break;
            }
          m = sy_vec3_add (m, sy_vec3 (more[0], more[1], more[2]));
          rest = load;
          for (int i = 0; i < n; i++)
            if ((used >> i & 1) != 0)
              rest = sy_vec3_sub (rest, sy_vec3_scale (u[i], sy_vec3_dot (u[i], m)));
        }
      for (int i = 0; i < n && wrong < INFINITY; i++)
        {
          bool taut = (used >> i & 1) != 0;

          pull[i] = sy_vec3_dot (u[i], m);
          wrong = fmax (wrong, taut ? -pull[i] : pull[i]);
          pull[i] = taut ? fmax (pull[i], 0) : 0;
        }
      wrong = fmax (wrong, sy_vec3_length (rest));
      if (!(wrong < best))
        continue;
      best = wrong;
      for (int i = 0; i < n; i++)
        out->elastic[i] = pull[i];
    }
}

/*
 * A leg longer by e makes the pulls change by -k·e times its column of P, the projector on what the legs can pull
 * against one another: P = 1 - u' (sum u·u')^-1 u. Its largest entry is on the diagonal. Kept leg by leg: the error
 * that slackens a leg first.
 */
static void
find_skew (const SyVec3 *u, int n, unsigned used, const Reach *reach, SyShare *out)
{
  double soonest = INFINITY, most = 0;
  SyVec3 gram[3];

  fill_gram (u, n, used, reach, gram);
  for (int j = 0; j < n; j++)
    {
      double m[3], change[SY_PARTS_MAX] = { 0 }, soon = INFINITY;

      if ((used >> j & 1) == 0 || !sy_solve3 (gram[0], gram[1], gram[2], u[j], m))
        continue;
      for (int i = 0; i < n; i++)
        if ((used >> i & 1) != 0)
          {
            change[i] = sy_vec3_dot (u[i], sy_vec3 (m[0], m[1], m[2])) - (i == j);
            if (fabs (change[i]) > SAME)
              soon = fmin (soon, out->elastic[i] / fabs (change[i]));
          }
      out->skew = fmax (out->skew, -change[j]);
      if (soon < soonest || (!(soon > soonest) && -change[j] > most))
        {
          soonest = soon;
          most = -change[j];
          for (int i = 0; i < n; i++)
            out->skew_change[i] = change[i];
        }
    }
}

static double
residual_of (const SyVec3 *u, int n, SyVec3 up, const double *pull)
{
  for (int i = 0; i < n; i++)
    up = sy_vec3_sub (up, sy_vec3_scale (u[i], pull[i]));
  return sy_vec3_length (up);
}

/*
 * Four legs in general position: the answers are a straight piece T + s·null, its two ends the corners. False where it
 * has no clear length or a leg is near never pulling; the long way then decides.
 */
static bool
share_of_four (const SyVec3 *u, SyVec3 up, SyShare *out)
{
  SyVec3 a = sy_vec3_cross (u[0], u[1]), b = sy_vec3_cross (u[2], u[3]);
  double null[4] = { sy_vec3_dot (u[1], b), -sy_vec3_dot (u[0], b), sy_vec3_dot (a, u[3]), -sy_vec3_dot (a, u[2]) };
  double pull[4], three[3], low = -INFINITY, high = INFINITY, across_null = 0, square = 0, at;
  int most = 0, other[3], n_other = 0;

  for (int i = 1; i < 4; i++)
    if (fabs (null[i]) > fabs (null[most]))
      most = i;
  if (!(fabs (null[most]) > IN_PLANE))
    return false;
  for (int i = 0; i < 4; i++)
    if (i != most)
      other[n_other++] = i;
  if (!sy_solve3 (u[other[0]], u[other[1]], u[other[2]], up, three))
    return false;
  pull[most] = 0;
  for (int i = 0; i < 3; i++)
    pull[other[i]] = three[i];
  for (int i = 0; i < 3; i++)
    null[other[i]] /= null[most];
  null[most] = 1;

  for (int i = 0; i < 4; i++)
    {
      if (!(fabs (null[i]) > PARALLEL))
        return false;
      if (null[i] > 0)
        low = fmax (low, -pull[i] / null[i]);
      else
        high = fmin (high, -pull[i] / null[i]);
      across_null -= pull[i] * null[i];
      square += null[i] * null[i];
    }
  if (!(high - low > SAME) || !(high - low < INFINITY))
    return false;
  at = fmin (fmax (across_null / square, low), high);
  for (int i = 0; i < 4; i++)
    {
      out->worst[i] = pull[i] + null[i] * (null[i] > 0 ? high : low);
      out->elastic[i] = fmax (pull[i] + null[i] * at, 0);
      out->skew_change[i] = -null[i] / square;
      if (!(out->worst[i] > SAME))
        return false;
    }
  out->skew = 1 / square;
  out->residual = residual_of (u, 4, up, out->elastic);
  out->determinate = false;
  out->depth = 0;
  out->balanced = true;
  return true;
}

void
sy_hang_share (const SyVec3 *u, const double *length, int n, SyVec3 up, SyShare *out)
{
  static const SyShare empty = { 0 };
  unsigned taut = 0;
  double swing = 0;
  Reach reach;
  SyVec3 lost;

  if (n == 4 && share_of_four (u, up, out))
    return;
  *out = empty;
  reach = reach_of (u, n, (1u << n) - 1);
  if (reach.rank == 0)
    return;
  lost = out_of_reach (&reach, up);
  if ((reach.rank == 1 && !(sy_vec3_length (lost) <= IN_LINE))
      || !find_corners (u, length, n, &reach, sy_vec3_sub (up, lost), out, &swing))
    return;
  /* How far beside the line of the points the load's line passes it. */
  if (reach.rank == 2 && !(sy_vec3_length (lost) <= IN_PLANE * span_of (u, length, n) * swing))
    return;
  find_elastic (u, n, &reach, sy_vec3_sub (up, lost), out);
  out->balanced = true;
  out->determinate = true;
  for (int i = 0; i < n; i++)
    {
      if (!(out->worst[i] > NOTHING))
        out->worst[i] = out->elastic[i] = 0;
      else
        taut |= 1u << i;
      if (out->worst[i] - out->elastic[i] > SAME * fmax (1, out->worst[i]))
        out->determinate = false;
      out->worst[i] = fmax (out->worst[i], out->elastic[i]);
    }
  out->residual = residual_of (u, n, up, out->elastic);
  reach = reach_of (u, n, taut);
  if (reach.rank < 3)
    out->depth = 1 / swing;
  if (!out->determinate)
    find_skew (u, n, taut, &reach, out);
}
