/* SPDX-License-Identifier: MIT */
#include "sy-policy.h"

#include <math.h>
#include <string.h>

static int
symbol_place (const SyMethod *method, const char *symbol)
{
  for (size_t i = 0; i < method->n_symbols; i++)
    if (strcmp (method->symbols[i].symbol, symbol) == 0)
      return (int) i;
  return -1;
}

static bool
alone_holds (const SyMethod *method, const SyLimit *limit)
{
  for (size_t i = 0; i < method->n_limits; i++)
    if (&method->limits[i] != limit && strcmp (method->limits[i].value_symbol, limit->value_symbol) == 0)
      return false;
  return true;
}

static void
find_limits (SyPolicy *policy)
{
  policy->n_limits = 0;
  for (size_t m = 0; m < sy_method_count (); m++)
    {
      const SyMethod *method = sy_method_at (m);

      for (size_t i = 0; i < method->n_limits && policy->n_limits < SY_POLICY_LIMITS_MAX; i++)
        {
          const SyLimit *limit = &method->limits[i];
          SyPolicyLimit *found = &policy->limits[policy->n_limits++];

          *found = (SyPolicyLimit) { .of = method, .limit = limit,
                                     .value_at = symbol_place (method, limit->value_symbol),
                                     .limit_at = symbol_place (method, limit->limit_symbol),
                                     .ratio_at = limit->ratio_symbol ? symbol_place (method, limit->ratio_symbol) : -1 };
          for (int units = 0; units < SY_N_UNITS; units++)
            {
              bool by_value;

              found->goal[units] = sy_policy_lowest (policy, method, limit->ratio_symbol, (SyUnits) units);
              by_value = !isfinite (found->goal[units]) && alone_holds (method, limit);
              found->value_goal[units] = by_value ? sy_policy_lowest (policy, method, limit->value_symbol, (SyUnits) units)
                                                  : (double) INFINITY;
            }
        }
    }
}

static bool
gives_named (const SyMethod *method, const char *pattern)
{
  for (size_t i = 0; i < method->n_named_symbols; i++)
    if (strcmp (method->named_symbols[i], pattern) == 0)
      return true;
  return false;
}

int
sy_policy_resolve (SyPolicy *policy)
{
  for (int i = 0; i < policy->n_rows; i++)
    {
      SyPolicyRow *row = &policy->rows[i];

      row->of = policy->row_of[i] = sy_method_find (row->method);
      row->symbol_at = row->of ? symbol_place (row->of, row->symbol) : -1;
      row->each = row->of != NULL && strchr (row->symbol, '*') != NULL;
      row->limit_at = row->of && row->limit_is_symbol ? symbol_place (row->of, row->limit_symbol) : -1;
      if (row->each ? !gives_named (row->of, row->symbol) || row->limit_is_symbol
                    : row->symbol_at < 0 || (row->limit_is_symbol && row->limit_at < 0))
        return i;
    }
  find_limits (policy);
  return -1;
}

double
sy_policy_lowest (const SyPolicy *policy, const SyMethod *method, const char *symbol, SyUnits units)
{
  double lowest = INFINITY;

  if (symbol == NULL)
    return lowest;
  for (int i = 0; i < policy->n_rows; i++)
    {
      const SyPolicyRow *row = &policy->rows[i];
      if (row->of == method && strcmp (row->symbol, symbol) == 0
          && row->comparator == SY_OVER && !row->limit_is_symbol && sy_verdict_rank (row->verdict) > 0)
        lowest = fmin (lowest, row->limit[units]);
    }
  return lowest;
}

SyGoal
sy_policy_goal (const SyPolicy *policy, const SyMethod *method, SyUnits units)
{
  SyGoal goal = { .index = sy_policy_lowest (policy, method, method->index_symbol, units),
                  .ratio = sy_policy_lowest (policy, method, method->ratio_symbol, units) };

  for (size_t i = 0; i < method->n_index_symbols; i++)
    goal.index = fmin (goal.index, sy_policy_lowest (policy, method, method->index_symbols[i], units));
  for (size_t i = 0; i < SY_LIMITS_MAX; i++)
    goal.limits[i] = goal.values[i] = INFINITY;
  for (int i = 0, n = 0; i < policy->n_limits && n < SY_LIMITS_MAX; i++)
    if (policy->limits[i].of == method)
      {
        goal.values[n] = policy->limits[i].value_goal[units];
        goal.limits[n++] = policy->limits[i].goal[units];
      }
  return goal;
}

SyContext
sy_policy_context (const SyPolicy *policy, SyUnits units, double today)
{
  SyContext context = { .units = units, .default_assigned = policy->default_assigned, .today = today,
                        .examinations = policy->examinations, .n_examinations = (size_t) policy->n_examinations };

  for (int i = 0; i < policy->n_rows; i++)
    context.wants_filter = context.wants_filter || strncmp (policy->rows[i].symbol, "filter", 6) == 0;

  memcpy (context.allowance_percent, policy->allowance_percent, sizeof context.allowance_percent);
  return context;
}

bool
sy_policy_says_defers_to (const SyPolicy *policy)
{
  return policy->has_region || policy->n_rules > 0;
}

const SyDefersTo *
sy_policy_defers_to (const SyPolicy *policy, const SyMethod *method, int i)
{
  for (int k = 0; k < policy->region.n_defers_to + policy->n_rules; k++)
    {
      const SyDefersTo *row = k < policy->region.n_defers_to ? &policy->region.defers_to[k]
                                                             : &policy->rules[k - policy->region.n_defers_to];

      if (sy_defers_to_is_of (row, method) && i-- == 0)
        return row;
    }
  return NULL;
}

bool
sy_policy_tolerance (const SyPolicy *policy, const SyMethod *method, const SyMeasured *fact, int how,
                     SyUnits units, double *half_width)
{
  for (int i = 0; i < policy->n_tolerances; i++)
    {
      const SyTolerance *tolerance = &policy->tolerances[i];
      if (strcmp (tolerance->method, method->id) == 0 && strcmp (tolerance->fact, fact->tolerance) == 0)
        {
          /* How it was had is not known: as if by eye, which is the wider. */
          *half_width = tolerance->by_how[how < 0 ? SY_HOW_ESTIMATED : how][units];
          return true;
        }
    }
  return false;
}
