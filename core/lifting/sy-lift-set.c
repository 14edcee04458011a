/* SPDX-License-Identifier: MIT */
#include "sy-lift-set.h"

#include <math.h>

/* Composite and sequential index. */

/* Places of the @n values, largest first, ties in input order: in[place] = index. */
static void
order_falling (const double *values, size_t n, size_t *in)
{
  for (size_t i = 0; i < n; i++)
    {
      size_t at = i;
      for (; at > 0 && values[in[at - 1]] < values[i]; at--)
        in[at] = in[at - 1];
      in[at] = i;
    }
}

/* What a lift adds; without bound where no multiplier is left. */
static double
added (double fili, double fm_before, double fm_after)
{
  return fm_after > 0 && isfinite (fili) ? fili * (1 / fm_after - 1 / fm_before) : INFINITY;
}

/* The sum over the tasks in @in but @left_out (@n: none), steps into @terms unless it is NULL. */
static double
sum (const SyLiftTask *tasks, const SyLiftTaskIndex *indices, const size_t *in, size_t n, size_t left_out,
     SyDuration duration, SyUnits units, SyLiftTerm *terms)
{
  double total = 0, per_min = 0;
  size_t done = 0;

  for (size_t i = 0; i < n; i++)
    {
      const SyLiftTask *task = &tasks[in[i]];
      SyLiftTerm term = { .lift = in[i] };

      if (in[i] == left_out)
        continue;
      term.fm_before = done > 0 ? sy_lift_fm (per_min, duration, task->height, units) : 1;
      per_min += task->per_min;
      term.per_min = per_min;
      term.fm_after = sy_lift_fm (per_min, duration, task->height, units);
      term.delta = done > 0 ? added (indices[in[i]].fili, term.fm_before, term.fm_after) : indices[in[i]].stli;
      total += term.delta;
      if (terms != NULL)
        terms[done] = term;
      done++;
    }
  return total;
}

double
sy_lift_composite (const SyLiftTask *tasks, size_t n, SyDuration duration, SyUnits units, SyLiftTaskIndex *indices,
                   SyLiftTerm *terms)
{
  double stli[SY_LIFT_TASKS_MAX] = { 0 };
  size_t in[SY_LIFT_TASKS_MAX] = { 0 };

  for (size_t i = 0; i < n; i++)
    {
      const SyLiftTask *task = &tasks[i];
      SyLiftTaskIndex *out = &indices[i];

      out->fm = sy_lift_fm (task->per_min, duration, task->height, units);
      out->strwl = task->firwl * out->fm;
      out->fili = task->firwl > 0 ? task->heaviest / task->firwl : INFINITY;
      out->stli = stli[i] = out->strwl > 0 ? task->typical / out->strwl : INFINITY;
    }
  order_falling (stli, n, in);
  for (size_t place = 0; place < n; place++)
    indices[in[place]].order = place;
  return sum (tasks, indices, in, n, n, duration, units, terms);
}

double
sy_lift_composite_without (const SyLiftTask *tasks, const SyLiftTaskIndex *indices, const SyLiftTerm *terms, size_t n,
                           size_t left_out, SyDuration duration, SyUnits units)
{
  size_t in[SY_LIFT_TASKS_MAX] = { 0 };

  for (size_t place = 0; place < n; place++)
    in[place] = terms[place].lift;
  return sum (tasks, indices, in, n, left_out, duration, units, NULL);
}

double
sy_lift_sequence (const SyLiftElement *elements, size_t n, size_t *order, double *k)
{
  double li_max[SY_LIFT_TASKS_MAX] = { 0 }, weighted = 0;
  size_t in[SY_LIFT_TASKS_MAX] = { 0 };

  for (size_t i = 0; i < n; i++)
    li_max[i] = elements[i].li_max;
  order_falling (li_max, n, in);
  for (size_t place = 0; place < n; place++)
    order[in[place]] = place;
  const SyLiftElement *first = &elements[in[0]];
  *k = NAN;
  if (!isfinite (first->li_max))
    return INFINITY;
  for (size_t i = 0; i < n; i++)
    weighted += elements[i].li_max * elements[i].share;
  /* Shares that add up to 1 but for their last digits must not carry the index past LImax. */
  *k = fmin (weighted / first->li_max, 1);
  return first->li + (first->li_max - first->li) * *k;
}
