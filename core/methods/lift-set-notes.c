/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-set-facts.h"

/* What is said of the lifts of a set: conditions that the equation excludes, and what was taken to be so. */

/* What can be said of a lift; the conditions come first, in their own order. */
enum
{
  SAID_PERSONS = SY_N_LIFT_CONDITIONS, SAID_NOT_ASKED, SAID_ASSIGNED, SAID_CONTROL, SAID_REACH, SAID_TRAVEL,
  N_SAID
};

static const struct
{
  const char *id;
  SyNoteClass note_class;
} others[] = {
  [SAID_PERSONS] = { "several-persons", SY_NOTE_EXCLUDED }, [SAID_NOT_ASKED] = { "conditions-not-asked", SY_NOTE_MISSING },
  [SAID_ASSIGNED] = { "assigned-default", SY_NOTE_CAUTION }, [SAID_CONTROL] = { "control-assumed", SY_NOTE_CAUTION },
  [SAID_REACH] = { "reach-minimum", SY_NOTE_CAUTION },       [SAID_TRAVEL] = { "travel-minimum", SY_NOTE_CAUTION },
};

/* So many are named when something is said of some of the lifts. */
#define NAMED_MAX 3

static unsigned long
said_of (const SyLiftSetFacts *facts, size_t lift, const SyLiftOne *one)
{
  const SyLiftFacts *from = &((const SyLiftOfSet *) facts->lifts.items)[lift].lift;
  const SySet *conditions = from->conditions.given ? &from->conditions : &facts->conditions;
  const SyLiftConstants *c = sy_lift_constants (one->units);
  bool near = false;
  unsigned long bits = conditions->given ? conditions->bits : 1ul << SAID_NOT_ASKED;

  for (int end = 0; end < one->n_ends; end++)
    near = near || one->at[end].reach < c->reach_min;
  bits |= from->hands.given && from->hands.value < 2 ? 1ul : 0; /* the first condition */
  bits |= one->persons > 1 ? 1ul << SAID_PERSONS : 0;
  bits |= one->assigned_default ? 1ul << SAID_ASSIGNED : 0;
  bits |= one->control_assumed ? 1ul << SAID_CONTROL : 0;
  bits |= near ? 1ul << SAID_REACH : 0;
  bits |= one->travel < c->travel_min ? 1ul << SAID_TRAVEL : 0;
  return bits;
}

/* The lifts of which it is said: nothing where it is said of all. */
static void
name_them (const SyLiftSetFacts *facts, const SyContext *context, int what, size_t count, SyText *subject)
{
  char name[SY_LIFT_NAME_MAX];
  int named = 0;

  for (size_t i = 0; i < facts->lifts.count && count < facts->lifts.count; i++)
    {
      SyLiftOne one;
      sy_lift_one (facts, i, context, &one);
      if (!(said_of (facts, i, &one) & (1ul << what)))
        continue;
      if (named == NAMED_MAX)
        {
          sy_text_add (subject, " \xe2\x80\xa6");
          return;
        }
      sy_lift_name (facts, i, name);
      sy_text_add (subject, named++ > 0 ? ", " : "");
      sy_text_add (subject, name);
    }
}

void
sy_lift_set_notes (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink)
{
  const SyLiftConstants *c = sy_lift_constants (context->units);
  size_t counts[N_SAID] = { 0 };
  double persons = 0, reference = 0;

  for (size_t i = 0; i < facts->lifts.count; i++)
    {
      SyLiftOne one;
      sy_lift_one (facts, i, context, &one);
      unsigned long bits = said_of (facts, i, &one);
      for (int what = 0; what < N_SAID; what++)
        counts[what] += (bits >> what) & 1;
      persons = fmax (persons, one.persons);
      reference = one.assigned_default ? one.reference : reference;
    }
  const double args[N_SAID] = { [SAID_PERSONS] = persons, [SAID_ASSIGNED] = reference, [SAID_REACH] = c->reach_min,
                                [SAID_TRAVEL] = c->travel_min };
  const SyKind kinds[N_SAID] = { [SAID_PERSONS] = SY_KIND_COUNT, [SAID_ASSIGNED] = SY_KIND_MASS,
                                 [SAID_REACH] = SY_KIND_REACH, [SAID_TRAVEL] = SY_KIND_REACH };
  for (int what = 0; what < N_SAID; what++)
    {
      char subject[SY_NOTE_SUBJECT_MAX] = "";
      SyText text = { subject, sizeof subject, 0 };
      bool condition = what < SY_N_LIFT_CONDITIONS;

      if (counts[what] == 0)
        continue;
      name_them (facts, context, what, counts[what], &text);
      SyNote *note = sy_sink_note_on (sink, condition ? sy_lift_condition_choices[what].id : others[what].id,
                                      condition ? SY_NOTE_EXCLUDED : others[what].note_class, subject);
      if (!condition && args[what] > 0)
        sy_note_arg (note, kinds[what], args[what]);
    }
}
