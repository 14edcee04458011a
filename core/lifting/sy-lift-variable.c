/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-lift-set.h"

/* Variable index: many sampled lifts in a few categories. */

/* One pass of a radix sort takes so many bits of a double. */
#define DIGIT_BITS 11
#define DIGITS (1u << DIGIT_BITS)
#define PASSES 6

/* A share whose middle falls on an edge, but for the rounding of sums, belongs above it. */
#define EDGE_TOLERANCE 1e-9

/* The bits of a double that is not negative order as the double does. */
static uint64_t
bits_of (double value)
{
  uint64_t bits;

  memcpy (&bits, &value, sizeof bits);
  return bits;
}

/* Places in rising order of their values, ties as given: least significant digit first, each pass stable. Returns the half
   of @scratch that has them. */
static const uint32_t *
sort_places (const double *values, size_t n, uint32_t *scratch)
{
  uint32_t counts[PASSES][DIGITS];
  uint32_t *from = scratch, *to = scratch + n;

  memset (counts, 0, sizeof counts);
  for (size_t i = 0; i < n; i++)
    {
      uint64_t bits = bits_of (values[i]);
      from[i] = (uint32_t) i;
      for (int pass = 0; pass < PASSES; pass++)
        counts[pass][(bits >> (pass * DIGIT_BITS)) & (DIGITS - 1)]++;
    }
  for (int pass = 0; pass < PASSES; pass++)
    {
      uint32_t *count = counts[pass], before = 0;
      int shift = pass * DIGIT_BITS;

      /* a digit that all have in common orders nothing */
      if (count[(bits_of (values[0]) >> shift) & (DIGITS - 1)] == n)
        continue;
      for (size_t digit = 0; digit < DIGITS; digit++)
        {
          uint32_t here = count[digit];
          count[digit] = before;
          before += here;
        }
      for (size_t i = 0; i < n; i++)
        to[count[(bits_of (values[from[i]]) >> shift) & (DIGITS - 1)]++] = from[i];
      uint32_t *other = from;
      from = to;
      to = other;
    }
  return from;
}

/* Sums of a category while it fills; [0] is the lowest here. */
typedef struct
{
  size_t count;
  double weighted, plain, per_min; /* of FILI × F, of FILI, of F */
} Filling;

static void
put_in (Filling *fill, double fili, double per_min)
{
  fill->count++;
  fill->per_min += per_min;
  fill->weighted += fili * per_min;
  fill->plain += fili;
}

/* From sums to the index: the composite algebra over categories, the highest first, empty ones skipped. */
static void
finish (const Filling *fill, SyDuration duration, SyUnits units, SyLiftGrouping *out)
{
  double per_min = 0, fm_before = 0;
  bool first = true;

  out->vli = 0;
  for (int place = 0; place < out->n; place++)
    {
      const Filling *from = &fill[out->n - 1 - place];
      SyLiftCategory *to = &out->categories[place];

      *to = (SyLiftCategory) { .count = from->count };
      if (from->count == 0)
        continue;
      /* lifts that are never done weigh alike */
      to->fili = from->per_min > 0 ? from->weighted / from->per_min : from->plain / (double) from->count;
      to->per_min = from->per_min;
      per_min += from->per_min;
      to->fm = sy_lift_fm (per_min, duration, 0, units);
      to->delta = to->fm <= 0 ? INFINITY : first ? to->fili / to->fm : to->fili * (1 / to->fm - 1 / fm_before);
      out->vli += to->delta;
      fm_before = to->fm;
      first = false;
    }
}

static void
group_equal (const double *fili, const double *per_min, size_t n, double low, double high, Filling *fill, int categories)
{
  double width = (high - low) / categories;

  for (size_t i = 0; i < n; i++)
    {
      int at = width > 0 ? (int) floor ((fili[i] - low) / width) : categories - 1;
      put_in (&fill[at < categories - 1 ? at : categories - 1], fili[i], per_min[i]);
    }
}

static void
group_ntile (const double *fili, const double *per_min, size_t n, double total, uint32_t *scratch, Filling *fill,
             int categories)
{
  const uint32_t *places = sort_places (fili, n, scratch);
  bool alike = !(total > 0);
  double before = 0, all = alike ? (double) n : total;

  for (size_t i = 0; i < n; i++)
    {
      double f = per_min[places[i]], share = alike ? 1 : f;
      int at = (int) floor ((before + share / 2) / all * categories + EDGE_TOLERANCE);
      put_in (&fill[at < categories - 1 ? at : categories - 1], fili[places[i]], f);
      before += share;
    }
}

void
sy_lift_variable (const double *fili, const double *per_min, size_t n, int categories, SyDuration duration, SyUnits units,
                  uint32_t *scratch, SyLiftGrouping *equal, SyLiftGrouping *ntile)
{
  Filling by_width[SY_LIFT_CATEGORIES_MAX] = { { 0 } }, by_share[SY_LIFT_CATEGORIES_MAX] = { { 0 } };
  double low = INFINITY, high = 0, total = 0;

  for (size_t i = 0; i < n; i++)
    {
      low = fili[i] < low ? fili[i] : low;
      high = fili[i] > high ? fili[i] : high;
      total += per_min[i];
    }
  memset (equal, 0, sizeof *equal);
  memset (ntile, 0, sizeof *ntile);
  equal->n = ntile->n = categories;
  if (!isfinite (high))
    {
      equal->vli = ntile->vli = INFINITY;
      return;
    }
  group_equal (fili, per_min, n, low, high, by_width, categories);
  finish (by_width, duration, units, equal);
  group_ntile (fili, per_min, n, total, scratch, by_share, categories);
  finish (by_share, duration, units, ntile);
}
