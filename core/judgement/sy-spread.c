/* SPDX-License-Identifier: MIT */
#include "sy-spread.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

/* A 95 % interval of a normal distribution is ±1.96 standard deviations. */
#define DEVIATIONS_95 1.959963984540054

#define FACTS_MAX 32
#define REDRAWS_MAX 1000

/* SplitMix64 (Steele, Lea, Flood 2014): integers only. */
static double
next_uniform (uint64_t *state)
{
  uint64_t z = (*state += UINT64_C (0x9e3779b97f4a7c15));

  z = (z ^ (z >> 30)) * UINT64_C (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * UINT64_C (0x94d049bb133111eb);
  z ^= z >> 31;
  return ((double) (z >> 11) + 0.5) * 0x1p-53;
}

typedef struct
{
  const SyMeasured *measured;
  const SyField *field;
  double value, deviation;
} Varying;

typedef struct
{
  const SyMethod *method;
  const SyContext *context;
  const Varying *facts;
  int n_facts;
  char *scratch;
  SyQuantity *quantities;
  SySink *sink;
  size_t index_at;
} Run;

static double
index_of (const Run *run)
{
  sy_sink_begin (run->sink, run->method, run->quantities, NULL);
  run->method->evaluate (run->scratch, run->context, run->sink);
  return run->quantities[run->index_at].value;
}

/* Draws of the index with every fact varying, or only fact @only. */
static void
draw (const Run *run, int only, uint64_t seed, double *into, int n)
{
  uint64_t state = seed;

  for (int i = 0; i < n; i++)
    {
      for (int k = 0; k < run->n_facts; k++)
        {
          const Varying *fact = &run->facts[k];
          SyNumber *number = (SyNumber *) (void *) (run->scratch + fact->measured->value_offset);
          double value = fact->value;

          if (only < 0 || only == k)
            for (int again = 0; again < REDRAWS_MAX; again++)
              {
                double drawn = fact->value + fact->deviation * sy_normal_inverse (next_uniform (&state));
                if (sy_field_in_range (fact->field, run->context->units, drawn))
                  {
                    value = drawn;
                    break;
                  }
              }
          number->value = value;
        }
      into[i] = index_of (run);
    }
}

/* The k-th smallest, by Hoare's selection; reorders. */
static double
select_smallest (double *values, int n, int k)
{
  int low = 0, high = n - 1;

  while (low < high)
    {
      double pivot = values[low + (high - low) / 2];
      int i = low, j = high;

      while (i <= j)
        {
          while (values[i] < pivot)
            i++;
          while (values[j] > pivot)
            j--;
          if (i <= j)
            {
              double swap = values[i];
              values[i++] = values[j];
              values[j--] = swap;
            }
        }
      if (k <= j)
        high = j;
      else if (k >= i)
        low = i;
      else
        break;
    }
  return values[k];
}

/* Nearest rank: the smallest value with at least the share @p of all at or below it. */
static double
percentile (double *values, int n, double p)
{
  int rank = (int) ceil (p * n) - 1;

  return select_smallest (values, n, rank < 0 ? 0 : rank);
}

void
sy_spread_run (const SyMethod *method, const void *facts, const SyContext *context, const SyPolicy *policy,
               double *work, void *scratch, SySpread *out)
{
  Varying varying[FACTS_MAX];
  SyQuantity quantities[SY_QUANTITIES_MAX];
  SySink sink;
  SyContext quiet = *context;
  Run run = { method, &quiet, varying, 0, scratch, quantities, &sink, 0 };
  int n = policy->draws, over = 0;

  quiet.quantities_only = true;
  memcpy (scratch, facts, method->facts_size);
  while (strcmp (method->symbols[run.index_at].symbol, method->index_symbol) != 0)
    run.index_at++;

  for (size_t i = 0; i < method->n_measured && run.n_facts < FACTS_MAX; i++)
    {
      const SyMeasured *measured = &method->measured[i];
      const SyNumber *number = (const void *) ((const char *) facts + measured->value_offset);
      const SyHad *had = (const void *) ((const char *) facts + measured->had_offset);
      double half;

      if (!number->given)
        continue;
      if (had->tolerance.given)
        half = had->tolerance.value;
      else if (!sy_policy_tolerance (policy, method, measured, had->how, context->units, &half))
        continue;
      if (measured->percent)
        half *= fabs (number->value) / 100;
      if (!(half > 0))
        continue;
      varying[run.n_facts++] = (Varying) { measured, sy_method_field (method, measured->path, NULL),
                                           number->value, half / DEVIATIONS_95 };
    }

  draw (&run, -1, policy->seed, work, n);
  *out = (SySpread) { .present = true, .draws = n,
                      .goal = sy_policy_goal (policy, method, context->units).index };
  for (int i = 0; i < n; i++)
    over += work[i] > out->goal;
  out->share_over_goal = (double) over / n;
  out->p5 = percentile (work, n, 0.05);
  out->median = percentile (work, n, 0.5);
  out->p95 = percentile (work, n, 0.95);

  /* Which fact drives it: each varies alone; its width squared against the sum of them all. An index that loses
     its bound counts as a width beyond any other. */
  double sum = 0, widest = 0;
  for (int k = 0; k < run.n_facts; k++)
    {
      draw (&run, k, policy->seed + (uint64_t) k + 1, work, n);
      double low = percentile (work, n, 0.05), high = percentile (work, n, 0.95);
      double width = isfinite (high) ? high - low : isfinite (low) ? 1e100 : 0;
      double square = width * width;

      sum += square;
      if (square > widest)
        {
          widest = square;
          out->driver = varying[k].measured->path;
        }
    }
  out->driver_share = sum > 0 ? widest / sum : 0;
}
