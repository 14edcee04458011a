/* SPDX-License-Identifier: MIT */
#include "sy-lift.h"

#include <math.h>

#define ROWS 17
#define COLUMNS 6
#define ROW_TOLERANCE 1e-9

/* 94-110 table 5. Rows 0.2 and 0.5 were read in full; the others are from memory with single cells confirmed by
   published examples, on several independent readings. */
static const double row_at[ROWS] = { 0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15 };

/* Columns: up to 1 h low, high; up to 2 h low, high; up to 8 h low, high. Low: V below 75 cm (30 in). */
static const double table[ROWS][COLUMNS] = {
  { 1.00, 1.00, .95, .95, .85, .85 }, /* 0.2 */
  { .97, .97, .92, .92, .81, .81 },   /* 0.5 */
  { .94, .94, .88, .88, .75, .75 },   /* 1   */
  { .91, .91, .84, .84, .65, .65 },   /* 2   */
  { .88, .88, .79, .79, .55, .55 },   /* 3   */
  { .84, .84, .72, .72, .45, .45 },   /* 4   */
  { .80, .80, .60, .60, .35, .35 },   /* 5   */
  { .75, .75, .50, .50, .27, .27 },   /* 6   */
  { .70, .70, .42, .42, .22, .22 },   /* 7   */
  { .60, .60, .35, .35, .18, .18 },   /* 8   */
  { .52, .52, .30, .30, .00, .15 },   /* 9   */
  { .45, .45, .26, .26, .00, .13 },   /* 10  */
  { .41, .41, .00, .23, .00, .00 },   /* 11  */
  { .37, .37, .00, .21, .00, .00 },   /* 12  */
  { .00, .34, .00, .00, .00, .00 },   /* 13  */
  { .00, .31, .00, .00, .00, .00 },   /* 14  */
  { .00, .28, .00, .00, .00, .00 },   /* 15  */
};

static int
column_of (SyDuration duration, double height, SyUnits units)
{
  bool high = height >= sy_lift_constants (units)->height_ideal;

  return 2 * (int) duration + (high ? 1 : 0);
}

double
sy_lift_fm (double per_min, SyDuration duration, double height, SyUnits units)
{
  int column = column_of (duration, height, units);

  if (!(per_min >= 0))
    return 0;
  if (per_min <= row_at[0] + ROW_TOLERANCE)
    return table[0][column];
  if (per_min > row_at[ROWS - 1] + ROW_TOLERANCE)
    return 0;

  /* Rows from 1 on stand at whole numbers: row i + 1 is at i lifts a minute. */
  int row = per_min < 1 ? (per_min < 0.5 ? 0 : 1) : (int) per_min + 1;
  /* At the last row, or past it by no more than the tolerance: there is no row after it. */
  if (row >= ROWS - 1)
    return table[ROWS - 1][column];
  double low = table[row][column];
  if (fabs (per_min - row_at[row]) <= ROW_TOLERANCE)
    return low;
  double high = table[row + 1][column];
  if (fabs (per_min - row_at[row + 1]) <= ROW_TOLERANCE)
    return high;
  /* Between the last row that is not zero and the next the table gives no permission. */
  if (high <= 0)
    return 0;
  double part = (per_min - row_at[row]) / (row_at[row + 1] - row_at[row]);
  return low + part * (high - low);
}

bool
sy_lift_fm_inverse (double wanted, SyDuration duration, double height, SyUnits units, double *per_min)
{
  int column = column_of (duration, height, units);

  if (wanted > table[0][column])
    return false;
  /* The columns never rise, so the last row at or above the wanted value bounds the segment. */
  int row = 0;
  while (row + 1 < ROWS && table[row + 1][column] > 0 && table[row + 1][column] >= wanted)
    row++;
  *per_min = row_at[row];
  if (row + 1 < ROWS && table[row + 1][column] > 0 && wanted < table[row][column])
    *per_min += (table[row][column] - wanted) / (table[row][column] - table[row + 1][column])
                * (row_at[row + 1] - row_at[row]);
  return true;
}
