/* SPDX-License-Identifier: MIT */
#include <stdlib.h>

#include "bench-lifts.h"
#include "sy-hang-private.h"
#include "sy-solve.h"

/*
 * Four-leg lifts worked out, against as many solutions of three equations with three unknowns. Every answer goes into a
 * sum that is printed, so that none can be left out.
 */

#define N_LIFTS 4096
#define N_REPEATS 50
#define N_RUNS 9

typedef struct
{
  SyPart parts[4];
  SyVec3 u[4], cg, hook;
  double length[4];
} Lift;

static void
make_lift (Lift *lift, GRand *random)
{
  double x = g_rand_double_range (random, 0.4, 2), y = g_rand_double_range (random, 0.4, 2);

  lift->cg = sy_vec3 (g_rand_double_range (random, -0.3, 0.3) * x, g_rand_double_range (random, -0.3, 0.3) * y, -0.2);
  lift->hook = sy_vec3 (lift->cg.x, lift->cg.y, g_rand_double_range (random, 1, 4));
  for (int i = 0; i < 4; i++)
    {
      SyVec3 leg;

      lift->parts[i].at = sy_vec3 (i == 0 || i == 3 ? -x : x, i < 2 ? -y : y, g_rand_double_range (random, 0, 0.3));
      leg = sy_vec3_sub (lift->hook, lift->parts[i].at);
      lift->parts[i].length = lift->length[i] = sy_vec3_length (leg);
      lift->u[i] = sy_vec3_scale (leg, 1 / lift->length[i]);
    }
}

static double
solve (const Lift *lifts, double *sum)
{
  double start = bench_seconds (), total = 0;

  for (int repeat = 0; repeat < N_REPEATS; repeat++)
    for (int i = 0; i < N_LIFTS; i++)
      {
        double out[3];

        if (sy_solve3 (lifts[i].u[0], lifts[i].u[1], lifts[i].u[2], sy_vec3 (0, 0, 1), out))
          total += out[0] + out[1] + out[2];
      }
  *sum += total;
  return bench_seconds () - start;
}

static double
share (const Lift *lifts, double *sum)
{
  double start = bench_seconds (), total = 0;
  SyShare out;

  for (int repeat = 0; repeat < N_REPEATS; repeat++)
    for (int i = 0; i < N_LIFTS; i++)
      {
        sy_hang_share (lifts[i].u, lifts[i].length, 4, sy_vec3 (0, 0, 1), &out);
        for (int leg = 0; leg < 4; leg++)
          total += out.worst[leg] + out.elastic[leg];
      }
  *sum += total;
  return bench_seconds () - start;
}

static double
hang (const Lift *lifts, double *sum)
{
  double start = bench_seconds (), total = 0;
  SyHang out;

  for (int repeat = 0; repeat < N_REPEATS; repeat++)
    for (int i = 0; i < N_LIFTS; i++)
      {
        sy_hang_level (lifts[i].parts, 4, lifts[i].cg, lifts[i].hook, &out);
        for (int leg = 0; leg < 4; leg++)
          total += out.worst[leg] + out.elastic[leg] + out.angle_deg[leg];
        total += out.margin + out.skew;
      }
  *sum += total;
  return bench_seconds () - start;
}

int
main (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);
  g_autofree Lift *lifts = g_new0 (Lift, N_LIFTS);
  double solving = G_MAXDOUBLE, sharing = G_MAXDOUBLE, hanging = G_MAXDOUBLE, sum = 0;
  const double n = (double) N_LIFTS * N_REPEATS;

  for (int i = 0; i < N_LIFTS; i++)
    make_lift (&lifts[i], random);
  for (int run = 0; run < N_RUNS; run++)
    {
      bench_keep_best (&solving, solve (lifts, &sum));
      bench_keep_best (&sharing, share (lifts, &sum));
      bench_keep_best (&hanging, hang (lifts, &sum));
    }
  g_print ("hang: %d four-leg lifts, %d times, best of %d (check %.6f)\n", N_LIFTS, N_REPEATS, N_RUNS, sum);
  g_print ("  one 3 x 3 solution     %7.1f ns\n", solving / n * 1e9);
  g_print ("  worst and elastic      %7.1f ns  ratio %5.1f  (reach: at most 60)\n", sharing / n * 1e9,
           sharing / solving);
  g_print ("  all of how it hangs    %7.1f ns  ratio %5.1f\n", hanging / n * 1e9, hanging / solving);
  return EXIT_SUCCESS;
}
