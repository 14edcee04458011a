/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-lift-set-facts.h"

/* The facts of a set brought into the shape of the equation. */

void
sy_lift_one (const SyLiftSetFacts *facts, size_t lift, const SyContext *context, SyLiftOne *out)
{
  const SyLiftFacts *from = &((const SyLiftOfSet *) facts->lifts.items)[lift].lift;
  int assigned = from->assigned >= 0 ? from->assigned : facts->assigned;
  bool to = from->destination_given == 1;

  out->units = context->units;
  out->heaviest = from->load.heaviest.value;
  out->typical = from->load.typical.value;
  out->persons = from->persons.given ? from->persons.value : 1;
  out->assigned_default = assigned < 0;
  out->reference = sy_lift_reference_mass ((SyAssigned) (assigned < 0 ? context->default_assigned : assigned), context->units);
  out->control_assumed = to && from->control_at_destination < 0;
  out->per_min = facts->frequency.given ? facts->frequency.value / (double) facts->lifts.count
                 : from->frequency.given ? from->frequency.value
                                         : from->lifts.value / from->in_minutes.value;
  out->n_ends = to && from->control_at_destination != 0 ? 2 : 1;
  out->at[0] = (SyLiftPosition) { from->origin.H.value, from->origin.V.value, from->origin.A.value };
  out->at[1] = (SyLiftPosition) { from->destination.H.value, from->destination.V.value, from->destination.A.value };
  out->travel = to ? fabs (out->at[1].height - out->at[0].height) : from->travel.value;
  out->coupling = (SyCoupling) from->coupling;
}

int
sy_lift_one_end (const SyLiftOne *one, SyDuration duration, bool fm, SyLiftEnd *out)
{
  const SyLiftPace pace = { one->travel, one->per_min, duration, one->coupling, one->reference };
  SyLiftEnd other;

  sy_lift_end (&one->at[0], &pace, one->heaviest, one->units, out);
  if (one->n_ends == 1)
    return 0;
  sy_lift_end (&one->at[1], &pace, one->heaviest, one->units, &other);
  if (fm ? other.rwl >= out->rwl : other.firwl >= out->firwl)
    return 0;
  *out = other;
  return 1;
}

const char *
sy_lift_end_factor (const SyLiftEnd *end)
{
  static const char *const names[] = { "HM", "VM", "DM", "AM", "FM", "CM" };
  const double factors[] = { end->hm, end->vm, end->dm, end->am, end->fm, end->cm };
  size_t smallest = 0;

  for (size_t i = 1; i < SY_LEN (factors); i++)
    if (factors[i] < factors[smallest])
      smallest = i;
  return names[smallest];
}

void
sy_lift_name (const SyLiftSetFacts *facts, size_t lift, char *name)
{
  const SyLiftOfSet *lifts = facts->lifts.items;
  SyText text = { name, SY_LIFT_NAME_MAX, 0 };

  if (sy_text_says (lifts[lift].label))
    {
      sy_text_add (&text, lifts[lift].label);
      return;
    }
  sy_text_add (&text, "#");
  sy_text_add_number (&text, (double) (lift + 1));
}

size_t
sy_lift_of_turn (const SyLiftSetFacts *facts, const SyLiftTurn *turn)
{
  const SyLiftOfSet *lifts = facts->lifts.items;
  size_t number = 0;

  for (size_t i = 0; i < facts->lifts.count; i++)
    if (lifts[i].label != NULL && strcmp (lifts[i].label, turn->lift) == 0)
      return i;
  for (const char *at = turn->lift; *at != '\0'; at++)
    {
      if (*at < '0' || *at > '9' || number > SY_LIFT_VARIABLE_MAX)
        return facts->lifts.count;
      number = number * 10 + (size_t) (*at - '0');
    }
  return number >= 1 && number <= facts->lifts.count ? number - 1 : facts->lifts.count;
}

/* Turns at one lift that follow one another without light work between are one turn. */
static size_t
turn_end (const SyLiftSetFacts *facts, const SyLiftPerson *person, size_t from, double *minutes)
{
  const SyLiftTurn *turns = person->turns.items;
  size_t lift = sy_lift_of_turn (facts, &turns[from]), at = from;

  *minutes = turns[from].minutes.value;
  while (at + 1 < person->turns.count && !(turns[at].recovery.value > 0) && sy_lift_of_turn (facts, &turns[at + 1]) == lift)
    *minutes += turns[++at].minutes.value;
  return at + 1;
}

void
sy_lift_day (const SyLiftSetFacts *facts, const SyLiftPerson *person, SyLiftDay *out)
{
  const SyLiftTurn *turns = person->turns.items;
  SyWorkPeriod periods[SY_LIFT_TURNS_MAX];
  size_t next;

  out->n = 0;
  for (size_t i = 0; i < person->turns.count; i++)
    periods[i] = (SyWorkPeriod) { turns[i].minutes.value, turns[i].recovery.given ? turns[i].recovery.value : 0 };
  out->whole = sy_lift_duration_sessions (periods, person->turns.count, &out->beyond, &out->all_minutes);
  for (size_t i = 0; i < person->turns.count; i = next)
    {
      size_t lift = sy_lift_of_turn (facts, &turns[i]), k = 0;
      SyWorkPeriod one = { 0, 0 };
      double minutes;
      bool beyond;

      next = turn_end (facts, person, i, &one.work);
      SyDuration own = sy_lift_duration_sessions (&one, 1, &beyond, &minutes);
      while (k < out->n && out->lifts[k] != lift)
        k++;
      if (k == out->n)
        {
          out->lifts[k] = lift;
          out->own[k] = own;
          out->minutes[k] = 0;
          out->n++;
        }
      out->own[k] = own > out->own[k] ? own : out->own[k];
      out->minutes[k] += minutes;
    }
}
