/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-judge-private.h"

/* A remedy must do better than this, relatively, to be worth a line. */
#define GAIN 1e-6

typedef struct
{
  const SyMethod *method;
  const void *facts;
  const SyContext *context;
  const SyPolicy *policy;
  SyJudgeFlags flags;
  SyGoal goal;
  SyOutcome before;
} Base;

static void
apply (void *facts, const SyChange *change)
{
  char *at = (char *) facts + change->offset;

  if (change->type != SY_CHANGE_NUMBER)
    {
      *(int *) (void *) at = (int) change->value;
      return;
    }
  *(SyNumber *) (void *) at = (SyNumber) { change->value, true };
  if (change->also_offset > 0)
    {
      SyNumber *also = (SyNumber *) (void *) ((char *) facts + change->also_offset);
      if (also->value > change->value)
        also->value = change->value;
    }
}

static double
present_value (const void *facts, const SyChange *change)
{
  const char *at = (const char *) facts + change->offset;

  if (change->type == SY_CHANGE_NUMBER)
    return ((const SyNumber *) (const void *) at)->value;
  int value = *(const int *) (const void *) at;
  return change->type == SY_CHANGE_BOOL && value < 0 ? 1 : value;
}

static void
outcome_with (const Base *base, const void *from, const SyChange *change, void *scratch, SyOutcome *out)
{
  memcpy (scratch, from, base->method->facts_size);
  apply (scratch, change);
  sy_outcome_of (base->method, scratch, base->context, base->policy, base->flags, out);
}

static bool
better (const SyOutcome *a, const SyOutcome *b)
{
  /* By the index, then by the second limit. */
  if (a->index != b->index)
    return a->index < b->index;
  return a->ratio < b->ratio;
}

static bool
allowed (const Base *base, const SyChange *change)
{
  const SyField *field = sy_method_field (base->method, change->path, NULL);

  return change->type != SY_CHANGE_NUMBER
         || (field != NULL && sy_field_in_range (field, base->context->units, change->value));
}

static bool
index_over (const Base *base)
{
  return base->before.index > base->goal.index || base->before.ratio > base->goal.ratio;
}

/* Where another limit alone is broken, what only betters the index is no remedy. */
static bool
gains (const Base *base, const SyOutcome *outcome)
{
  return outcome->reaches || outcome->excess < base->before.excess * (1 - GAIN)
         || (index_over (base) && outcome->index < base->before.index * (1 - GAIN));
}

/* The nearest value of one factor that reaches the goal; failing that, the one at which it costs least. */
typedef struct
{
  bool found;
  SyChange nearest; /* reaches, or the best there is */
  SyOutcome outcome;
  SyChange best;
} Single;

static void
try_factor (const Base *base, const void *from, size_t factor, void *scratch, Single *out)
{
  SyChange changes[SY_CHANGES_MAX], proposed;
  bool has_best;
  SyOutcome best_outcome = { .index = INFINITY, .ratio = INFINITY };
  size_t n = base->method->candidates (from, base->context, &base->goal, factor, changes, &proposed, &has_best);

  out->found = false;
  if (has_best && n < SY_CHANGES_MAX)
    changes[n++] = proposed;
  bool any = false;
  for (size_t i = 0; i < n; i++)
    {
      SyOutcome outcome;
      if (!allowed (base, &changes[i]))
        continue;
      outcome_with (base, from, &changes[i], scratch, &outcome);
      if (!any || better (&outcome, &best_outcome))
        {
          best_outcome = outcome;
          out->best = changes[i];
        }
      any = true;
    }
  if (!any)
    return;

  double least = INFINITY;
  for (size_t i = 0; i < n; i++)
    {
      SyChange change = changes[i];
      SyOutcome outcome;
      double now = present_value (from, &change);
      /* A root lands within a rounding of the goal; a nudge towards the best settles on which side. */
      double nudges[] = { 0, 1e-15, 1e-14, 1e-13, 1e-12, 1e-11, 1e-10, 1e-9 };
      size_t n_nudges = change.type == SY_CHANGE_NUMBER ? SY_LEN (nudges) : 1;

      if (!allowed (base, &change))
        continue;
      for (size_t k = 0; k < n_nudges; k++)
        {
          change.value = changes[i].value + nudges[k] * (out->best.value - changes[i].value);
          outcome_with (base, from, &change, scratch, &outcome);
          if (outcome.reaches)
            break;
          if (outcome.index > base->goal.index * (1 + 1e-6))
            break; /* not a matter of rounding */
        }
      if (outcome.reaches && fabs (change.value - now) < least)
        {
          least = fabs (change.value - now);
          out->nearest = change;
          out->outcome = outcome;
          out->found = true;
        }
    }
  if (!out->found)
    {
      out->nearest = out->best;
      out->outcome = best_outcome;
      out->found = true;
    }
}

static void
add (SyFindings *findings, const Base *base, const char *id, int n_changes, const SyChange *changes,
     const SyOutcome *outcome)
{
  if (findings->n_remedies == SY_REMEDIES_MAX)
    return;
  SyRemedy *remedy = &findings->remedies[findings->n_remedies++];
  *remedy = (SyRemedy) { .id = id, .n_changes = n_changes, .reaches = outcome->reaches,
                         .index = outcome->index, .ratio = outcome->ratio, .verdict = outcome->verdict };
  for (int i = 0; i < n_changes; i++)
    {
      remedy->changes[i] = changes[i];
      remedy->before[i] = present_value (base->facts, &changes[i]);
    }
}

/* Those that reach the goal first, then by how far they get. */
static void
sort_remedies (SyFindings *findings, int from)
{
  for (int i = from + 1; i < findings->n_remedies; i++)
    {
      SyRemedy moving = findings->remedies[i];
      int at = i;
      while (at > from
             && ((moving.reaches && !findings->remedies[at - 1].reaches)
                 || (moving.reaches == findings->remedies[at - 1].reaches
                     && moving.index < findings->remedies[at - 1].index)))
        {
          findings->remedies[at] = findings->remedies[at - 1];
          at--;
        }
      findings->remedies[at] = moving;
    }
}

/* The pair that gets farthest with both at their best; the second is then eased to what just reaches the goal. */
static void
find_pair (const Base *base, void *scratch, void *other, SyFindings *findings)
{
  const size_t n = base->method->n_factors;
  bool have = false;
  SyChange pair[2];
  SyOutcome outcome = { .index = INFINITY }, deepest = { .index = INFINITY };

  for (size_t first = 0; first < n; first++)
    {
      Single alone;
      try_factor (base, base->facts, first, scratch, &alone);
      if (!alone.found)
        continue;
      for (size_t second = 0; second < n; second++)
        {
          Single with;
          SyOutcome both;

          if (second == first)
            continue;
          memcpy (other, base->facts, base->method->facts_size);
          apply (other, &alone.best);
          try_factor (base, other, second, scratch, &with);
          if (!with.found || strcmp (with.best.path, alone.best.path) == 0
              || with.nearest.value == present_value (other, &with.nearest))
            continue;
          outcome_with (base, other, &with.best, scratch, &both);
          if (!have || (both.reaches && !deepest.reaches)
              || (both.reaches == deepest.reaches && both.index < deepest.index * (1 - 1e-12)))
            {
              have = true;
              deepest = both;
              pair[0] = alone.best;
              pair[1] = with.nearest;
              outcome = with.outcome;
            }
        }
    }
  if (have && gains (base, &outcome))
    add (findings, base, "pair", 2, pair, &outcome);
}

/* A policy may be stricter on a limit than the method can know: the mass is brought down to what the policy itself lets pass.
   Left as it is where no mass does. */
static void
ease_mass (const Base *base, void *scratch, SyChange *change, SyOutcome *outcome)
{
  SyChange found = *change;
  SyOutcome there;
  double low = 0, high = change->value;

  for (int i = 0; i < 60; i++)
    {
      found.value = (low + high) / 2;
      outcome_with (base, base->facts, &found, scratch, &there);
      if (there.reaches)
        {
          low = found.value;
          *change = found;
          *outcome = there;
        }
      else
        high = found.value;
    }
}

void
sy_remedies_find (const SyMethod *method, const void *facts, const SyContext *context,
                  const SyPolicy *policy, SyJudgeFlags flags, void *scratch, SyFindings *findings)
{
  Base base = { method, facts, context, policy, flags, sy_policy_goal (policy, method, context->units),
                { .index = 0 } };
  void *other = (char *) scratch + method->facts_size;
  double mass;
  SyChange change;

  sy_outcome_of (method, facts, context, policy, flags, &base.before);
  if (!base.before.reaches)
    {
      bool over = index_over (&base);

      for (size_t factor = 0; factor < method->n_factors; factor++)
        {
          Single single;
          try_factor (&base, facts, factor, scratch, &single);
          if (single.found
              && (gains (&base, &single.outcome)
                  || (over && single.outcome.ratio < base.before.ratio * (1 - GAIN))))
            add (findings, &base, NULL, 1, &single.nearest, &single.outcome);
        }
      /* The change names the remedy. */
      for (int i = 0; i < findings->n_remedies; i++)
        findings->remedies[i].id = findings->remedies[i].changes[0].path;
      sort_remedies (findings, 0);
      find_pair (&base, scratch, other, findings);
    }

  /* The mass that the task would bear as it stands; said also where the goal is reached already. */
  if (method->largest_mass != NULL && method->largest_mass (facts, context, &base.goal, &mass, &change))
    {
      SyOutcome outcome;
      for (int k = 0; k < 8; k++)
        {
          outcome_with (&base, facts, &change, scratch, &outcome);
          if (outcome.reaches)
            break;
          change.value = nextafter (change.value, 0);
        }
      if (!outcome.reaches)
        ease_mass (&base, scratch, &change, &outcome);
      add (findings, &base, "largest-mass", 1, &change, &outcome);
    }
}
