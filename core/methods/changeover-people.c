/* SPDX-License-Identifier: MIT */
#include "changeover-people.h"

#include <math.h>
#include <string.h>

#include "sy-lift-set-facts.h"

static bool
may_do (const SyChangeoverFacts *facts, const SyChangeoverStep *step, size_t person)
{
  const char *const *people = facts->people.items, *const *by = step->by.items;

  for (size_t i = 0; i < step->by.count; i++)
    if (strcmp (by[i], people[person]) == 0)
      return true;
  return step->by.count < (size_t) sy_step_persons (step);
}

/* The lifts of one person, as they are gathered. */
typedef struct
{
  size_t n;
  SyLiftTask tasks[SY_LIFT_TASKS_MAX];
  size_t of_step[SY_LIFT_TASKS_MAX];
  SyDuration duration;
  bool too_many;
} Gathered;

static void
add_task (Gathered *all, size_t step, const SyLiftTask *task)
{
  if (all->n == SY_LIFT_TASKS_MAX)
    {
      all->too_many = true;
      return;
    }
  all->tasks[all->n] = *task;
  all->of_step[all->n++] = step;
}

static void
add_duration (Gathered *all, SyDuration duration)
{
  if (duration > all->duration)
    all->duration = duration;
}

/* The lift at the end that governs it. */
static void
add_lift (Gathered *all, size_t step, const SyLiftFacts *facts, const SyContext *context)
{
  SyLiftCase lift;

  sy_lift_case (facts, context, &lift);
  SyLiftTask task = { .per_min = lift.pace.per_min, .heaviest = lift.heaviest, .typical = lift.typical };
  for (int i = 0; i < lift.n_ends; i++)
    {
      SyLiftEnd end;

      sy_lift_end (&lift.at[i], &lift.pace, lift.heaviest, lift.units, &end);
      if (i > 0 && end.firwl >= task.firwl)
        continue;
      task.firwl = end.firwl;
      task.height = lift.at[i].height;
    }
  add_duration (all, lift.pace.duration);
  add_task (all, step, &task);
}

/* A set says its time as a whole, in a rota, or lift by lift. */
static void
add_set_durations (Gathered *all, const SyLiftSetFacts *facts)
{
  const SyLiftPerson *persons = facts->rota.items;
  bool beyond;
  double minutes;

  if (!facts->rota.given)
    add_duration (all, sy_lift_times_class (&facts->times, &beyond, &minutes));
  for (size_t i = 0; i < facts->rota.count; i++)
    {
      SyLiftDay day;
      sy_lift_day (facts, &persons[i], &day);
      add_duration (all, day.whole);
    }
}

static void
add_set (Gathered *all, size_t step, const SyLiftSetFacts *facts, const SyContext *context)
{
  add_set_durations (all, facts);
  for (size_t i = 0; i < facts->lifts.count && !all->too_many; i++)
    {
      SyLiftOne one;
      SyLiftEnd end;

      sy_lift_one (facts, i, context, &one);
      int at = sy_lift_one_end (&one, SY_DURATION_SHORT, false, &end);
      add_task (all, step, &(SyLiftTask) { end.firwl, one.at[at].height, one.per_min, one.heaviest, one.typical });
    }
}

void
sy_changeover_person (const SyChangeoverFacts *facts, size_t person, const SyContext *context, SyPersonLifts *out)
{
  const SyChangeoverStep *steps = facts->steps.items;
  SyLiftTaskIndex indices[SY_LIFT_TASKS_MAX];
  SyLiftTerm terms[SY_LIFT_TASKS_MAX];
  Gathered all = { .n = 0, .duration = SY_DURATION_SHORT };

  *out = (SyPersonLifts) { .lifts = 0 };
  for (size_t i = 0; i < facts->steps.count; i++)
    {
      const SyPartFacts *part = &steps[i].part;

      if (part->method == NULL || !may_do (facts, &steps[i], person))
        continue;
      if (strcmp (part->method->id, "lift") == 0)
        add_lift (&all, i, part->facts, context);
      else if (strcmp (part->method->id, "lift-set") == 0)
        add_set (&all, i, part->facts, context);
      else
        out->others = out->others || sy_method_is_by_hand (part->method);
    }
  out->lifts = all.n;
  out->too_many = all.too_many;
  if (all.n == 0)
    return;
  out->cli = sy_lift_composite (all.tasks, all.n, all.duration, context->units, indices, terms);
  out->worst = all.of_step[terms[0].lift];
}

double
sy_part_heaviest (const SyPartFacts *part, const SyContext *context, const SySink *found)
{
  const SyQuantity *each = sy_sink_quantity (found, "mass_each");
  const SyQuantity *share = sy_sink_quantity (found, "heaviest.share"); /* of a team */
  double heaviest = fmax (each != NULL ? each->value : NAN, share != NULL ? share->value : NAN);

  if (strcmp (part->method->id, "lift-set") != 0)
    return heaviest;
  /* the set's own figure is of the lift nearest to its reference mass */
  const SyLiftSetFacts *facts = part->facts;
  for (size_t i = 0; i < facts->lifts.count; i++)
    {
      SyLiftOne one;

      sy_lift_one (facts, i, context, &one);
      heaviest = fmax (heaviest, one.heaviest / one.persons);
    }
  return heaviest;
}
