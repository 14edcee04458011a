/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <glib.h>

#include "sy-lift-set.h"

/*
 * The variable index of 30,000 lifts by both groupings, alone and from the measures of each lift, against qsort of as many
 * random doubles. CPU time, and each run measures all three, so that other work on the machine meets all of them alike.
 */

#define N SY_LIFT_VARIABLE_MAX
#define RUNS 101

typedef struct
{
  SyLiftPosition at[2];
  SyLiftPace pace;
  double heaviest;
} Lift;

typedef struct
{
  Lift lifts[N];
  double random[N], sorted[N];
  double fili[N], per_min[N];
  uint32_t scratch[SY_LIFT_VARIABLE_SCRATCH (N)];
} Bench;

static void
make (Bench *bench)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (int i = 0; i < N; i++)
    {
      Lift *lift = &bench->lifts[i];

      for (int end = 0; end < 2; end++)
        lift->at[end] = (SyLiftPosition) { g_rand_double_range (random, 20, 62), g_rand_double_range (random, 0, 170),
                                           g_rand_double_range (random, 0, 100) };
      lift->pace = (SyLiftPace) { fabs (lift->at[1].height - lift->at[0].height), g_rand_double_range (random, 0, 6.0 / N),
                                  SY_DURATION_LONG, (SyCoupling) g_rand_int_range (random, 0, 3), 20 };
      lift->heaviest = g_rand_double_range (random, 1, 20);
      bench->random[i] = g_rand_double (random);
    }
}

static int
compare (const void *a, const void *b)
{
  const double *one = a, *other = b;

  return (*one > *other) - (*one < *other);
}

static double
cpu_seconds (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec + (double) now.tv_nsec / 1e9;
}

static double
measure_qsort (Bench *bench, double *sum)
{
  memcpy (bench->sorted, bench->random, sizeof bench->sorted);
  double start = cpu_seconds ();
  qsort (bench->sorted, N, sizeof *bench->sorted, compare);
  double seconds = cpu_seconds () - start;
  *sum += bench->sorted[N / 2];
  return seconds;
}

static double
measure_index (Bench *bench, double *sum)
{
  SyLiftGrouping equal, ntile;
  double start = cpu_seconds ();

  sy_lift_variable (bench->fili, bench->per_min, N, SY_LIFT_CATEGORIES_DEFAULT, SY_DURATION_LONG, SY_UNITS_METRIC,
                    bench->scratch, &equal, &ntile);
  *sum += equal.vli + ntile.vli;
  return cpu_seconds () - start;
}

static double
measure_whole (Bench *bench, double *sum)
{
  double start = cpu_seconds ();

  for (int i = 0; i < N; i++)
    {
      const Lift *lift = &bench->lifts[i];
      SyLiftEnd ends[2];

      for (int end = 0; end < 2; end++)
        sy_lift_end (&lift->at[end], &lift->pace, lift->heaviest, SY_UNITS_METRIC, &ends[end]);
      bench->fili[i] = ends[ends[1].firwl < ends[0].firwl].fili;
      bench->per_min[i] = lift->pace.per_min;
    }
  measure_index (bench, sum);
  return cpu_seconds () - start;
}

static double
median (double *values)
{
  qsort (values, RUNS, sizeof *values, compare);
  return values[RUNS / 2];
}

int
main (void)
{
  g_autofree Bench *bench = g_new0 (Bench, 1);
  double sorting[RUNS], whole[RUNS], alone[RUNS], sum = 0;

  make (bench);
  for (int run = 0; run < RUNS; run++)
    {
      sorting[run] = measure_qsort (bench, &sum);
      whole[run] = measure_whole (bench, &sum);
      alone[run] = measure_index (bench, &sum);
    }
  double base = median (sorting), all = median (whole), index = median (alone);
  g_print ("variable: %d lifts, CPU time, median of %d (check %.6g)\n", N, RUNS, sum);
  g_print ("  qsort of doubles            %8.3f ms\n", base * 1e3);
  g_print ("  index by both groupings     %8.3f ms  ratio %5.2f  (reach: at most 2)\n", index * 1e3, index / base);
  g_print ("  from the measures of lifts  %8.3f ms  ratio %5.2f  (reach: at most 2)\n", all * 1e3, all / base);
  return EXIT_SUCCESS;
}
