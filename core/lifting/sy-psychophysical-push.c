/* SPDX-License-Identifier: MIT */
#include "sy-psychophysical-push.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "sy-psychophysical.h"

#define N_COLUMNS 7
#define N_PERCENTS 3
#define SLACK 1e-9
#define TABLE_M 2.1
#define LONGEST_M 61.0

typedef struct
{
  SyHands hands;
  SyPushWay way;
  SyPushForce force;
  double height_cm;
  unsigned char cells[N_COLUMNS][N_PERCENTS]; /* 6 s, 12 s, 1, 2, 5, 30 min, 8 h; 90, 75, 50 % */
} Row;

/* What the equation says: a normal distribution. */
typedef struct
{
  double mean, deviation; /* kgf; NAN: no figure */
} People;

#define W SY_HANDS_WOMEN
#define M SY_HANDS_MEN
#define PUSH SY_WAY_PUSH
#define PULL SY_WAY_PULL
#define START SY_PUSH_INITIAL
#define KEEP SY_PUSH_SUSTAINED

/* Snook and Ciriello 1991, 2.1 m, from memory; rows of one kind stand together, the highest handle first. */
static const Row rows[] = {
  { M, PUSH, START, 144,
   { { 20, 26, 32 }, { 22, 29, 36 }, { 25, 32, 40 }, { 25, 32, 40 }, { 26, 34, 42 }, { 26, 34, 42 }, { 31, 41, 51 } } },
  { M, PUSH, START, 95,
   { { 21, 28, 34 }, { 24, 31, 38 }, { 26, 34, 43 }, { 26, 34, 43 }, { 28, 36, 45 }, { 28, 36, 45 }, { 34, 44, 54 } } },
  { M, PUSH, START, 64,
   { { 19, 25, 31 }, { 22, 28, 35 }, { 24, 31, 38 }, { 24, 31, 38 }, { 25, 33, 40 }, { 26, 33, 41 }, { 31, 40, 49 } } },
  { M, PUSH, KEEP, 144,
   { { 10, 13, 17 }, { 13, 17, 22 }, { 15, 21, 27 }, { 16, 22, 28 }, { 18, 24, 31 }, { 18, 25, 32 }, { 22, 30, 38 } } },
  { M, PUSH, KEEP, 95,
   { { 10, 14, 18 }, { 13, 18, 23 }, { 16, 22, 28 }, { 17, 22, 29 }, { 19, 25, 33 }, { 19, 26, 34 }, { 23, 32, 41 } } },
  { M, PUSH, KEEP, 64,
   { { 10, 14, 18 }, { 13, 18, 23 }, { 16, 21, 28 }, { 16, 22, 29 }, { 18, 25, 32 }, { 19, 26, 33 }, { 23, 31, 40 } } },
  { M, PULL, START, 144,
   { { 14, 17, 20 }, { 16, 19, 23 }, { 18, 22, 26 }, { 18, 22, 26 }, { 19, 23, 28 }, { 19, 24, 28 }, { 23, 28, 33 } } },
  { M, PULL, START, 95,
   { { 19, 23, 28 }, { 22, 27, 32 }, { 25, 31, 36 }, { 25, 31, 36 }, { 27, 32, 39 }, { 27, 33, 39 }, { 32, 39, 47 } } },
  { M, PULL, START, 64,
   { { 22, 27, 32 }, { 25, 30, 36 }, { 28, 34, 41 }, { 28, 34, 41 }, { 30, 37, 44 }, { 30, 37, 44 }, { 36, 44, 53 } } },
  { M, PULL, KEEP, 144,
   { { 8, 10, 13 }, { 10, 13, 16 }, { 12, 16, 20 }, { 13, 17, 21 }, { 15, 19, 23 }, { 15, 20, 24 }, { 18, 23, 28 } } },
  { M, PULL, KEEP, 95,
   { { 10, 13, 16 }, { 13, 17, 21 }, { 16, 21, 26 }, { 17, 22, 27 }, { 19, 25, 31 }, { 20, 26, 32 }, { 24, 31, 38 } } },
  { M, PULL, KEEP, 64,
   { { 11, 14, 17 }, { 14, 19, 23 }, { 17, 23, 28 }, { 18, 24, 29 }, { 20, 27, 33 }, { 21, 28, 34 }, { 25, 33, 40 } } },
  { W, PUSH, START, 135,
   { { 14, 17, 20 }, { 15, 18, 22 }, { 17, 21, 25 }, { 18, 22, 26 }, { 20, 24, 29 }, { 21, 25, 30 }, { 22, 27, 32 } } },
  { W, PUSH, START, 89,
   { { 14, 17, 20 }, { 15, 18, 22 }, { 17, 21, 25 }, { 18, 22, 26 }, { 20, 24, 29 }, { 21, 25, 30 }, { 22, 27, 32 } } },
  { W, PUSH, START, 57,
   { { 11, 14, 16 }, { 12, 15, 17 }, { 14, 17, 20 }, { 14, 17, 21 }, { 16, 19, 23 }, { 17, 20, 24 }, { 18, 21, 25 } } },
  { W, PUSH, KEEP, 135,
   { { 6, 9, 12 }, { 8, 12, 16 }, { 10, 14, 19 }, { 10, 14, 20 }, { 11, 16, 21 }, { 12, 17, 23 }, { 14, 21, 28 } } },
  { W, PUSH, KEEP, 57,
   { { 5, 7, 10 }, { 6, 9, 13 }, { 8, 11, 15 }, { 8, 12, 16 }, { 9, 13, 17 }, { 9, 14, 18 }, { 12, 17, 23 } } },
  { W, PULL, START, 135,
   { { 13, 16, 19 }, { 16, 19, 22 }, { 17, 20, 24 }, { 18, 21, 25 }, { 20, 24, 28 }, { 21, 25, 29 }, { 22, 26, 31 } } },
  { W, PULL, START, 89,
   { { 14, 16, 19 }, { 16, 19, 23 }, { 18, 21, 25 }, { 19, 22, 26 }, { 21, 25, 29 }, { 22, 26, 30 }, { 23, 27, 32 } } },
  { W, PULL, START, 57,
   { { 15, 17, 20 }, { 17, 20, 24 }, { 19, 22, 26 }, { 20, 23, 27 }, { 22, 26, 30 }, { 23, 27, 32 }, { 24, 28, 33 } } },
  { W, PULL, KEEP, 135,
   { { 6, 8, 10 }, { 9, 12, 16 }, { 10, 13, 17 }, { 10, 14, 18 }, { 11, 15, 19 }, { 12, 16, 21 }, { 15, 20, 25 } } },
  { W, PULL, KEEP, 57,
   { { 5, 7, 9 }, { 8, 11, 14 }, { 9, 12, 15 }, { 9, 12, 16 }, { 10, 13, 17 }, { 11, 14, 18 }, { 13, 18, 23 } } },
};
#define N_ROWS ((int) (sizeof rows / sizeof rows[0]))

/* The shortest interval of each column, minutes. */
static const double columns_min[N_COLUMNS] = { 0.1, 0.2, 1, 2, 5, 30, 480 };

/* Men, push, start, hands at 95 cm, 90 %, from memory with little confidence; 0: no cell. */
static const struct
{
  double distance_m, columns_min[N_COLUMNS];
  unsigned char kgf[N_COLUMNS];
} long_ways[] = {
  { 7.6, { 0.25, 22.0 / 60, 1, 2, 5, 30, 480 }, { 16, 18, 23, 23, 25, 25, 30 } },
  { 15.2, { 25.0 / 60, 35.0 / 60, 1, 2, 5, 30, 480 }, { 18, 21, 22, 22, 23, 24, 28 } },
  { 30.5, { 1, 1, 1, 2, 5, 30, 480 }, { 0, 0, 17, 19, 22, 22, 27 } },
  { 45.7, { 1, 1, 1, 2, 5, 30, 480 }, { 0, 0, 14, 16, 19, 19, 23 } },
  { LONGEST_M, { 2, 2, 2, 2, 5, 30, 480 }, { 0, 0, 0, 14, 16, 16, 20 } },
};
#define N_LONG_WAYS (sizeof long_ways / sizeof long_ways[0])

/* Potvin, Ciriello, Snook and others 2021, pushing, from memory: mean = base × height × way × pace factors. */
typedef struct
{
  double base, spread;          /* kgf; standard deviation over the mean */
  double v0, v1, v2;            /* v0 + V v1 + V² v2, V in m             */
  double d0, d_ln, d1, d2;      /* d0 + ln D d_ln + D d1 + D² d2, D in m */
  double f0, f1, f2;            /* f0 + ln F f1 + ln² F f2, F a minute   */
} Equation;

static const Equation equations[SY_N_HANDS][SY_N_PUSH_FORCES] = {
  [W] = { [START] = { 36.9, 0.214, -0.5304, 1 / 0.3361, -1 / 0.6915, 1.0286, 0, -1 / 72.22, 1 / 9782.0,
                      0.7251, -1 / 13.19, -1 / 197.3 },
          [KEEP] = { 25.5, 0.286, -0.6539, 1 / 0.2941, -1 / 0.5722, 1.0391, 0, -1 / 52.91, 1 / 7975.0,
                     0.6086, -1 / 11.95, -1 / 304.4 } },
  [M] = { [START] = { 70.3, 0.231, 1.2737, -1 / 1.335, 1 / 2.576, 1.0790, -1 / 9.392, 0, 0,
                      0.6281, -1 / 13.07, -1 / 379.5 },
          [KEEP] = { 65.3, 0.267, 2.2940, -1 / 0.3345, 1 / 0.6887, 1.1035, -1 / 7.170, 0, 0,
                     0.4896, -1 / 10.20, -1 / 403.9 } },
};

/* The longest interval of a column that is not longer than the one asked for; -1: more often than any. */
static int
column_of (const double *minutes, double per_min)
{
  double interval = 1 / per_min;
  int column = -1;

  for (int i = 0; i < N_COLUMNS; i++)
    if (minutes[i] <= interval * (1 + SLACK))
      column = i;
  return column;
}

static bool
is_of (const Row *row, const SyPushTask *task, SyHands hands, SyPushForce force)
{
  return row->hands == hands && row->way == task->way && row->force == force;
}

/* The handles on either side of the hands, the same one twice where they are at one; false: beyond all. */
static bool
handles (const SyPushTask *task, SyHands hands, SyPushForce force, const Row *found[2])
{
  found[0] = found[1] = NULL;
  for (int i = 0; i < N_ROWS; i++)
    {
      const Row *row = &rows[i];

      if (!is_of (row, task, hands, force))
        continue;
      if (row->height_cm >= task->height_cm - SLACK)
        found[0] = row; /* the lowest that is not below */
      if (row->height_cm <= task->height_cm + SLACK && found[1] == NULL)
        found[1] = row; /* the highest that is not above */
    }
  return found[0] != NULL && found[1] != NULL;
}

/* The rows and the column of the tables for a task; -1: none. */
static int
place_in_table (const SyPushTask *task, SyHands hands, SyPushForce force, const Row *found[2])
{
  int column = column_of (columns_min, task->per_min);

  return task->distance_m > TABLE_M + SLACK || !handles (task, hands, force, found) ? -1 : column;
}

/* 90 % of men at the start of a long push; the hands elsewhere than at 95 cm do no better. NAN: no cell. */
static double
long_way (const SyPushTask *task, SyHands hands, SyPushForce force)
{
  const Row *found[2];

  if (hands != M || force != START || task->way != PUSH || task->distance_m <= TABLE_M + SLACK
      || column_of (columns_min, task->per_min) < 0 || !handles (task, hands, force, found))
    return (double) NAN;
  double kgf = (double) NAN;
  for (size_t i = 0; i < N_LONG_WAYS; i++)
    {
      int column = column_of (long_ways[i].columns_min, task->per_min);

      /* Without a cell for so quick a pace the quickest there is caps it; so does what a shorter way allows. */
      for (column = column < 0 ? 0 : column; long_ways[i].kgf[column] == 0; column++)
        ;
      kgf = fmin (kgf, long_ways[i].kgf[column]);
      if (task->distance_m <= long_ways[i].distance_m + SLACK)
        return kgf;
    }
  return (double) NAN;
}

double
sy_push_table (const SyPushTask *task, SyHands hands, SyPushForce force, int percent)
{
  const Row *found[2];
  int column = place_in_table (task, hands, force, found), at = percent == 90 ? 0 : percent == 75 ? 1 : 2;

  if (column >= 0)
    return fmin (found[0]->cells[column][at], found[1]->cells[column][at]);
  return percent == 90 ? long_way (task, hands, force) : (double) NAN;
}

static People
people_of_equation (const SyPushTask *task, SyHands hands, SyPushForce force)
{
  const Equation *e = &equations[hands][force];
  People out = { (double) NAN, (double) NAN };
  const Row *found[2];

  if (task->way != PUSH || !(task->distance_m <= LONGEST_M + SLACK) || column_of (columns_min, task->per_min) < 0
      || !handles (task, hands, force, found))
    return out;
  double v = task->height_cm / 100, d = fmax (task->distance_m, TABLE_M);
  double pace = sy_psycho_ln (fmax (task->per_min, 1.0 / 480));

  out.mean = e->base * (e->v0 + v * (e->v1 + v * e->v2))
             * (e->d0 + sy_psycho_ln (d) * e->d_ln + d * (e->d1 + d * e->d2)) * (e->f0 + pace * (e->f1 + pace * e->f2));
  out.deviation = out.mean * e->spread;
  return out;
}

double
sy_push_equation (const SyPushTask *task, SyHands hands, SyPushForce force, int percent)
{
  People people = people_of_equation (task, hands, force);

  return people.mean - sy_psycho_quantile (percent) * people.deviation;
}

double
sy_push_accepted (const SyPushTask *task, SyHands hands, SyPushForce force, int percent)
{
  /* fmin passes over what is not known. */
  return fmin (sy_push_table (task, hands, force, percent), sy_push_equation (task, hands, force, percent));
}

double
sy_push_percent (const SyPushTask *task, SyHands hands, SyPushForce force, double kgf)
{
  People people = people_of_equation (task, hands, force);
  double percent = isnan (people.mean) ? people.mean : sy_psycho_share (people.mean, people.deviation, kgf);
  const Row *found[2];
  int column = place_in_table (task, hands, force, found);

  /* Rounded cells spread differently: below what 90 % accept a slower pace could come out harder, so it
     counts too. */
  for (int c = column; c >= 0 && c < N_COLUMNS; c++)
    for (int i = 0; i < 2; i++)
      {
        const unsigned char *cell = found[i]->cells[c];
        percent = fmin (percent, sy_psycho_share (cell[2], (cell[2] - cell[0]) / SY_PSYCHO_Z90, kgf));
      }
  /* Of a long way only the 90 % are known. */
  if (column < 0 && kgf > long_way (task, hands, force))
    percent = fmin (percent, 90);
  return percent;
}
