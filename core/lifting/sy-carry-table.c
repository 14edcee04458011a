/* SPDX-License-Identifier: MIT */
#include "sy-carry.h"

/*
 * Snook and Ciriello 1991, carrying, kg: what 90, 75 and 50 % could. From memory; that each cell is a normal
 * distribution within rounding (a test) catches slips of typing, not a wrong row. The fastest two columns depend on
 * the distance.
 */

static const double every_2[SY_CARRY_COLUMNS] = { 6.0 / 60, 12.0 / 60, 1, 2, 5, 30, 480 };  /* 2.1 m */
static const double every_4[SY_CARRY_COLUMNS] = { 10.0 / 60, 16.0 / 60, 1, 2, 5, 30, 480 }; /* 4.3 m */
static const double every_8[SY_CARRY_COLUMNS] = { 18.0 / 60, 24.0 / 60, 1, 2, 5, 30, 480 }; /* 8.5 m */

static const SyCarryRow rows[] = {
  { SY_CARRY_WOMEN, 72, 2.1, every_2,
  { { 13, 15, 17 }, { 14, 17, 19 }, { 16, 18, 21 }, { 16, 18, 21 }, { 16, 19, 22 }, { 16, 19, 22 }, { 22, 25, 29 } } },
  { SY_CARRY_WOMEN, 105, 2.1, every_2,
  { { 11, 13, 15 }, { 12, 14, 16 }, { 13, 15, 18 }, { 13, 15, 18 }, { 13, 16, 18 }, { 13, 16, 18 }, { 18, 21, 25 } } },
  { SY_CARRY_WOMEN, 72, 8.5, every_8,
  { { 12, 14, 16 }, { 12, 15, 17 }, { 14, 16, 19 }, { 14, 16, 19 }, { 14, 17, 20 }, { 14, 17, 20 }, { 19, 23, 26 } } },
  { SY_CARRY_WOMEN, 105, 8.5, every_8,
  { { 10, 12, 14 }, { 11, 13, 15 }, { 12, 14, 16 }, { 12, 14, 16 }, { 12, 14, 17 }, { 12, 14, 17 }, { 16, 19, 22 } } },
  { SY_CARRY_MEN, 79, 2.1, every_2,
  { { 13, 18, 23 }, { 17, 23, 30 }, { 21, 28, 37 }, { 21, 29, 37 }, { 23, 32, 41 }, { 26, 36, 46 }, { 31, 42, 54 } } },
  { SY_CARRY_MEN, 111, 2.1, every_2,
  { { 10, 14, 19 }, { 14, 19, 25 }, { 17, 23, 30 }, { 17, 23, 30 }, { 19, 26, 33 }, { 21, 29, 38 }, { 25, 34, 44 } } },
  { SY_CARRY_MEN, 79, 4.3, every_4,
  { { 11, 16, 20 }, { 14, 19, 25 }, { 18, 25, 32 }, { 19, 25, 33 }, { 21, 28, 36 }, { 23, 32, 41 }, { 27, 37, 48 } } },
  { SY_CARRY_MEN, 111, 4.3, every_4,
  { { 9, 13, 17 }, { 11, 16, 20 }, { 15, 21, 27 }, { 15, 21, 27 }, { 17, 23, 30 }, { 19, 26, 34 }, { 22, 30, 39 } } },
  { SY_CARRY_MEN, 79, 8.5, every_8,
  { { 13, 17, 22 }, { 15, 20, 26 }, { 17, 24, 31 }, { 18, 24, 31 }, { 20, 27, 35 }, { 22, 30, 39 }, { 26, 35, 46 } } },
  { SY_CARRY_MEN, 111, 8.5, every_8,
  { { 10, 13, 17 }, { 11, 15, 19 }, { 13, 18, 23 }, { 13, 18, 24 }, { 15, 20, 26 }, { 17, 23, 29 }, { 20, 27, 35 } } },
};

const SyCarryRow *
sy_carry_row (size_t i)
{
  return i < sizeof rows / sizeof rows[0] ? &rows[i] : NULL;
}
