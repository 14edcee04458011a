/* SPDX-License-Identifier: MIT */
#include "changeover-schedule.h"

#include <math.h>
#include <string.h>

int
sy_changeover_find_step (const SyChangeoverFacts *facts, const char *label, size_t before)
{
  const SyChangeoverStep *steps = facts->steps.items;

  for (size_t i = 0; i < before && i < facts->steps.count; i++)
    if (steps[i].label != NULL && strcmp (steps[i].label, label) == 0)
      return (int) i;
  return -1;
}

int
sy_changeover_find_person (const SyChangeoverFacts *facts, const char *name)
{
  const char *const *people = facts->people.items;

  for (size_t i = 0; i < facts->people.count; i++)
    if (strcmp (people[i], name) == 0)
      return (int) i;
  return -1;
}

/* When the steps are over that come first. */
static double
earliest (const SyChangeoverFacts *facts, const SySchedule *schedule, size_t i)
{
  const SyChangeoverStep *step = (const SyChangeoverStep *) facts->steps.items + i;
  const char *const *after = step->after.items;
  double start = 0;

  if (!step->after.given)
    return i > 0 ? schedule->steps[i - 1].end : 0;
  for (size_t k = 0; k < step->after.count; k++)
    start = fmax (start, schedule->steps[sy_changeover_find_step (facts, after[k], i)].end);
  return start;
}

void
sy_changeover_schedule (const SyChangeoverFacts *facts, SySchedule *out)
{
  const SyChangeoverStep *steps = facts->steps.items;
  double busy_until[SY_CHANGEOVER_PEOPLE_MAX] = { 0 };
  bool stands = false;

  out->end = out->stands_from = out->stands_to = 0;
  for (size_t i = 0; i < facts->steps.count; i++)
    {
      SyScheduled *at = &out->steps[i];
      const char *const *by = steps[i].by.items;
      int wanted = sy_step_persons (&steps[i]);

      at->start = earliest (facts, out, i);
      at->lanes = 0;
      for (size_t k = 0; k < steps[i].by.count; k++)
        at->lanes |= 1u << sy_changeover_find_person (facts, by[k]);
      for (int taken = (int) steps[i].by.count; taken < wanted; taken++)
        {
          int next = -1;
          for (size_t k = 0; k < facts->people.count; k++)
            if (!(at->lanes & 1u << k) && (next < 0 || busy_until[k] < busy_until[next]))
              next = (int) k;
          if (next < 0)
            break;
          at->lanes |= 1u << next;
        }
      for (size_t k = 0; k < facts->people.count; k++)
        if (at->lanes & 1u << k)
          at->start = fmax (at->start, busy_until[k]);
      at->end = at->start + steps[i].minutes.value;
      for (size_t k = 0; k < facts->people.count; k++)
        if (at->lanes & 1u << k)
          busy_until[k] = at->end;
      out->end = fmax (out->end, at->end);
      if (steps[i].when != SY_WHEN_STOPPED)
        continue;
      out->stands_from = stands ? fmin (out->stands_from, at->start) : at->start;
      out->stands_to = stands ? fmax (out->stands_to, at->end) : at->end;
      stands = true;
    }
}
