/* SPDX-License-Identifier: MIT */
#include "sy-carry.h"

#include <math.h>

#include "sy-filter.h"
#include "sy-psychophysical.h"

/* Within this of a row, relatively, it is that row: 32.8 ft is 10 m. */
#define TOLERANCE 1e-9

/* ISO 11228-1:2003 table 1, from memory: kg in a minute, an hour, eight hours by carrying distance. */
static const struct
{
  double distance_m, per_min, minute, hour, day;
} sums_2003[] = {
  { 1, 8, 120, 7200, 10000 }, { 2, 5, 75, 4500, 10000 }, { 4, 4, 60, 3000, 10000 },
  { 10, 2, 30, 1500, 10000 }, { 20, 1, 15, 750, 6000 },
};
/* Its note, from memory: less by at least one third. */
#define REDUCED (2.0 / 3)

/* ISO 11228-1:2021, from memory and with low confidence: 1 to 5, 5 to 10, 10 to 20 m. */
static const struct
{
  double distance_m, minute, hour, half, day;
} sums_2021[] = { { 5, 60, 2000, 4000, 4800 }, { 10, 45, 1500, 3000, 3600 }, { 20, 15, 500, 1000, 1200 } };

#define LENGTH_OF(array) (sizeof (array) / sizeof ((array)[0]))

/* Tables and equations; the last distance of the tables, m. */
#define TABLES_END 8.5
#define EQUATIONS_BEGIN 2.1
#define ONCE_A_DAY (1.0 / 480)

double
sy_carry_knuckle (SyCarrySex sex)
{
  return sex == SY_CARRY_WOMEN ? 72 : 79;
}

double
sy_carry_elbow (SyCarrySex sex)
{
  return sex == SY_CARRY_WOMEN ? 105 : 111;
}

static bool
within (double value, double end)
{
  return value <= end * (1 + TOLERANCE);
}

static void
judge_sums (const SyCarry *carry, SyCarryResult *out)
{
  double rate = carry->mean_mass * carry->per_min, part = carry->reduced ? REDUCED : 1;
  size_t old = 0, new = 0;

  while (old + 1 < LENGTH_OF (sums_2003) && !within (carry->distance_m, sums_2003[old].distance_m))
    old++;
  while (new + 1 < LENGTH_OF (sums_2021) && !within (carry->distance_m, sums_2021[new].distance_m))
    new++;
  out->beyond.over_20_m = !within (carry->distance_m, 20);

  out->value[SY_CARRY_PACE] = carry->per_min;
  out->limit[SY_CARRY_PACE] = sums_2003[old].per_min;
  out->value[SY_CARRY_MINUTE] = out->value[SY_CARRY_MINUTE_2021] = rate * fmin (carry->minutes, 1);
  out->value[SY_CARRY_HOUR] = out->value[SY_CARRY_HOUR_2021] = rate * fmin (carry->minutes, 60);
  out->value[SY_CARRY_HALF_2021] = rate * fmin (carry->minutes, 240);
  out->value[SY_CARRY_DAY] = out->value[SY_CARRY_DAY_2021] = rate * carry->minutes;
  out->limit[SY_CARRY_MINUTE] = part * sums_2003[old].minute;
  out->limit[SY_CARRY_HOUR] = part * sums_2003[old].hour;
  out->limit[SY_CARRY_DAY] = part * sums_2003[old].day;
  out->limit[SY_CARRY_MINUTE_2021] = part * sums_2021[new].minute;
  out->limit[SY_CARRY_HOUR_2021] = part * sums_2021[new].hour;
  out->limit[SY_CARRY_HALF_2021] = part * sums_2021[new].half;
  out->limit[SY_CARRY_DAY_2021] = part * sums_2021[new].day;
}

/* UK guideline figures of lifting, close to the body, by zone and pace. */
static double
guideline (const SyCarry *carry)
{
  bool high = !within (carry->height_cm, sy_carry_elbow (carry->sex));
  double figure = carry->sex == SY_CARRY_WOMEN ? (high ? 13 : 16) : (high ? 20 : 25);

  return figure * sy_filter_pace (carry->per_min);
}

static double
at_percent (const SyCarryCell *cell, int percent)
{
  return percent == 50 ? cell->p50 : percent == 75 ? cell->p75 : cell->p90;
}

/* The cells that a task is looked up in: the next more demanding one, and all that demand less than that. The fastest
   columns are of other paces at each distance, and figures are rounded: a harder task must not be allowed more for
   that. */
#define CELLS_MAX (SY_CARRY_ROWS_MAX * SY_CARRY_COLUMNS)
static size_t
look_up (const SyCarry *carry, SyCarrySex sex, const SyCarryCell *cells[CELLS_MAX], bool *faster)
{
  double row_height = within (carry->height_cm, sy_carry_knuckle (sex)) ? sy_carry_knuckle (sex) : sy_carry_elbow (sex);
  double reached = TABLES_END, every = 1 / carry->per_min;
  size_t n = 0;

  for (size_t i = 0; sy_carry_row (i) != NULL; i++)
    {
      const SyCarryRow *row = sy_carry_row (i);
      if (row->sex == sex && within (carry->distance_m, row->distance_m))
        reached = fmin (reached, row->distance_m);
    }
  *faster = false;
  for (size_t i = 0; sy_carry_row (i) != NULL; i++)
    {
      const SyCarryRow *row = sy_carry_row (i);
      size_t column = 0;

      if (row->sex != sex || row->height_cm > row_height || row->distance_m > reached)
        continue;
      *faster = *faster || !within (row->every_min[0], every);
      while (column + 1 < SY_CARRY_COLUMNS && within (row->every_min[column + 1], every))
        column++;
      for (; column < SY_CARRY_COLUMNS && n < CELLS_MAX; column++)
        cells[n++] = &row->cells[column];
    }
  return n;
}

/* Potvin, Ciriello, Snook and others 2021, from memory: the mean that is accepted, kg, and its coefficient of
   variation. What is less demanding than the tables' own rows counts as those. */
static double
mean_accepted (const SyCarry *carry, SyCarrySex sex, double *variation)
{
  double height = fmax (carry->height_cm, sy_carry_knuckle (sex)) / 100;
  double distance = fmax (carry->distance_m, EQUATIONS_BEGIN);
  double ln_pace = sy_psycho_ln (fmax (carry->per_min, ONCE_A_DAY)), by_height, by_distance, by_pace;

  if (sex == SY_CARRY_WOMEN)
    {
      by_height = 1.1645 - height / 4.437;
      by_distance = 1.0101 - distance / 207.8;
      by_pace = 0.6224 - ln_pace / 16.33;
      *variation = 0.231;
      return 28.6 * fmax (by_height, 0) * fmax (by_distance, 0) * fmax (by_pace, 0);
    }
  by_height = 1.5505 - height / 1.417;
  by_distance = 1.1172 - sy_psycho_ln (distance) / 6.332;
  by_pace = 0.5149 - ln_pace / 7.958 - ln_pace * ln_pace / 131.1;
  *variation = 0.278;
  return 74.9 * fmax (by_height, 0) * fmax (by_distance, 0) * fmax (by_pace, 0);
}

static void
judge_acceptance (const SyCarry *carry, SyCarryResult *out)
{
  const SyCarryCell *cells[CELLS_MAX];
  size_t n = look_up (carry, carry->sex, cells, &out->beyond.faster_than_tables);
  double variation, mean = mean_accepted (carry, carry->sex, &variation);

  out->limit[SY_CARRY_TABLE] = INFINITY;
  for (size_t i = 0; i < n; i++)
    out->limit[SY_CARRY_TABLE] = fmin (out->limit[SY_CARRY_TABLE], at_percent (cells[i], carry->percent));
  out->limit[SY_CARRY_EQUATION] = mean * (1 - sy_psycho_quantile (carry->percent) * variation);
}

double
sy_carry_accepts (const SyCarry *carry, SyCarrySex sex)
{
  const SyCarryCell *cells[CELLS_MAX];
  bool faster;
  size_t n = look_up (carry, sex, cells, &faster);
  double mass_kg = carry->units == SY_UNITS_US ? carry->mass * SY_KG_PER_LB : carry->mass;
  double variation, mean = mean_accepted (carry, sex, &variation);
  double share = mean > 0 ? sy_psycho_share (mean, variation * mean, mass_kg) : 0;

  for (size_t i = 0; i < n; i++)
    share = fmin (share, sy_psycho_share (cells[i]->p50, (cells[i]->p50 - cells[i]->p90) / SY_PSYCHO_Z90, mass_kg));
  return share;
}

void
sy_carry (const SyCarry *carry, SyCarryResult *out)
{
  judge_sums (carry, out);
  judge_acceptance (carry, out);
  out->value[SY_CARRY_TABLE] = out->value[SY_CARRY_EQUATION] = out->value[SY_CARRY_UK] = carry->mass;
  out->value[SY_CARRY_REFERENCE] = carry->mass_each;
  out->limit[SY_CARRY_UK] = guideline (carry);
  out->beyond.over_uk = !within (carry->distance_m, 10);
  out->beyond.below_knuckle = carry->height_cm < sy_carry_knuckle (carry->sex) * (1 - TOLERANCE);
  out->beyond.above_elbow = !within (carry->height_cm, sy_carry_elbow (carry->sex));
  out->beyond.farther_than_tables = !within (carry->distance_m, TABLES_END);

  out->largest = -1;
  for (int i = 0; i < SY_CARRY_N_LIMITS; i++)
    {
      /* the pace has no mass, the reference mass is in the unit already */
      if (i == SY_CARRY_REFERENCE)
        out->limit[i] = carry->reference_mass;
      else if (i != SY_CARRY_PACE && carry->units == SY_UNITS_US)
        out->limit[i] /= SY_KG_PER_LB;
      out->ratio[i] = out->limit[i] > 0 ? out->value[i] / out->limit[i] : INFINITY;
      if (out->ratio[i] > out->largest)
        {
          out->largest = out->ratio[i];
          out->governing = (SyCarryLimit) i;
        }
    }
}
