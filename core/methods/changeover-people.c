/* SPDX-License-Identifier: MIT */
#include "changeover-people.h"

#include <string.h>

#include "sy-lift-facts.h"
#include "sy-lift-set.h"

static bool
does (const SyChangeoverFacts *facts, const SyChangeoverStep *step, size_t person)
{
  const char *const *people = facts->people.items, *const *by = step->by.items;

  if (step->part.method == NULL || strcmp (step->part.method->id, "lift") != 0)
    return false;
  for (size_t i = 0; i < step->by.count; i++)
    if (strcmp (by[i], people[person]) == 0)
      return true;
  return step->by.count == 0;
}

/* The lift at the end that governs it. */
static SyLiftTask
task_of (const SyLiftCase *lift)
{
  SyLiftTask task = { .per_min = lift->pace.per_min, .heaviest = lift->heaviest, .typical = lift->typical };

  for (int i = 0; i < lift->n_ends; i++)
    {
      SyLiftEnd end;

      sy_lift_end (&lift->at[i], &lift->pace, lift->heaviest, lift->units, &end);
      if (i > 0 && end.firwl >= task.firwl)
        continue;
      task.firwl = end.firwl;
      task.height = lift->at[i].height;
    }
  return task;
}

void
sy_changeover_person (const SyChangeoverFacts *facts, size_t person, const SyContext *context, SyPersonLifts *out)
{
  const SyChangeoverStep *steps = facts->steps.items;
  SyLiftTask tasks[SY_CHANGEOVER_STEPS_MAX];
  SyLiftTaskIndex indices[SY_CHANGEOVER_STEPS_MAX];
  SyLiftTerm terms[SY_CHANGEOVER_STEPS_MAX];
  size_t of_step[SY_CHANGEOVER_STEPS_MAX];
  SyDuration duration = SY_DURATION_SHORT;

  *out = (SyPersonLifts) { .lifts = 0 };
  for (size_t i = 0; i < facts->steps.count; i++)
    {
      SyLiftCase lift;

      if (!does (facts, &steps[i], person))
        continue;
      sy_lift_case (steps[i].part.facts, context, &lift);
      if (lift.pace.duration > duration)
        duration = lift.pace.duration;
      tasks[out->lifts] = task_of (&lift);
      of_step[out->lifts++] = i;
    }
  if (out->lifts == 0)
    return;
  out->cli = sy_lift_composite (tasks, out->lifts, duration, context->units, indices, terms);
  out->worst = of_step[terms[0].lift];
}

_Static_assert (SY_CHANGEOVER_STEPS_MAX <= SY_LIFT_TASKS_MAX, "every step may be a lift");
