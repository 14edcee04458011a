/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-set-put.h"

/* The sequential index, of a rotation and of each person of a rota. */

/* A sequence in the shape of the formula. */
typedef struct
{
  size_t n;
  size_t lifts[SY_LIFT_TASKS_MAX];
  SyLiftElement elements[SY_LIFT_TASKS_MAX];
  SyLiftEnd ends[SY_LIFT_TASKS_MAX]; /* at the end that governs by the class of the whole */
  double fm_own[SY_LIFT_TASKS_MAX], per_min[SY_LIFT_TASKS_MAX];
  size_t order[SY_LIFT_TASKS_MAX];
  double k, sli;
} Sequence;

static void
sequence_add (Sequence *sequence, size_t lift, const SyLiftOne *one, SyDuration own, SyDuration whole, double share)
{
  size_t i = sequence->n++;
  SyLiftEnd end;

  sequence->lifts[i] = lift;
  int at = sy_lift_one_end (one, whole, true, &sequence->ends[i]);
  sy_lift_one_end (one, own, true, &end);
  sequence->fm_own[i] = sy_lift_fm (one->per_min, own, one->at[at].height, one->units);
  sequence->per_min[i] = one->per_min;
  sequence->elements[i] = (SyLiftElement) { end.li, sequence->ends[i].li, share };
}

static void
put_sequence (const Sequence *sequence, SySink *sink)
{
  for (size_t i = 0; i < sequence->n && sink->named != NULL; i++)
    {
      size_t n = sequence->lifts[i] + 1;
      sy_set_put_end (sink, sequence->lifts[i], &sequence->ends[i], sequence->per_min[i]);
      sy_set_put (sink, "lift", n, "FM", SY_KIND_RATIO, N_ ("Frequency multiplier in its own time"),
                  SY_SET_MANUAL " 1.3.5, table 5", sequence->fm_own[i]);
      sy_set_put (sink, "lift", n, "FMmax", SY_KIND_RATIO, N_ ("Frequency multiplier by the whole"),
                  SY_SET_MANUAL " 1.3.5, table 5", sequence->ends[i].fm);
      sy_set_put (sink, "lift", n, "LI", SY_KIND_RATIO, N_ ("Lifting index in its own time"), SY_SET_SLI_SOURCE,
                  sequence->elements[i].li);
      sy_set_put (sink, "lift", n, "LImax", SY_KIND_RATIO, N_ ("Lifting index by the whole"), SY_SET_SLI_SOURCE,
                  sequence->elements[i].li_max);
      sy_set_put (sink, "lift", n, "share", SY_KIND_RATIO, N_ ("Share of the time"), "as given",
                  sequence->elements[i].share);
      sy_set_put (sink, "lift", n, "order", SY_KIND_COUNT, N_ ("Place in the sequence"), SY_SET_SLI_SOURCE,
                  (double) sequence->order[i] + 1);
    }
  if (!isnan (sequence->k))
    sy_sink_value (sink, SY_SET_K, sequence->k);
  sy_sink_value (sink, SY_SET_SLI, sequence->sli);
}

static size_t
leading (const Sequence *sequence)
{
  size_t first = 0;

  for (size_t i = 0; i < sequence->n; i++)
    first = sequence->order[i] == 0 ? i : first;
  return first;
}

/* The formula stands from memory. What it makes milder than the equation itself, with all the time as if it were spent at the
   worst lift, is no ground for a favourable verdict. */
static void
say_from_memory (const Sequence *sequence, const char *who, SySink *sink)
{
  const SyLiftElement *first = &sequence->elements[leading (sequence)];

  if (!(sequence->sli <= 1 && first->li_max > 1))
    return;
  SyNote *note = sy_sink_note_on (sink, "set-sequence-from-memory", SY_NOTE_NEEDED, who);
  sy_note_arg (note, SY_KIND_RATIO, sequence->sli);
  sy_note_arg (note, SY_KIND_RATIO, first->li_max);
  sy_note_source (note, "SLI", "Waters, Lu, Occhipinti 2007, Ergonomics 50(11)", true);
}

static void
say_leading (const SyLiftSetFacts *facts, const Sequence *sequence, SySink *sink)
{
  const SyLiftElement *first = &sequence->elements[leading (sequence)];

  sy_set_say (sink, facts, sequence->lifts[leading (sequence)], "set-leads", (double[]) { first->li_max, first->li }, 2);
}

void
sy_set_rotation (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally)
{
  const SyLiftOfSet *lifts = facts->lifts.items;
  Sequence sequence = { .n = 0 };
  bool beyond, own_beyond;
  double minutes, own_minutes;
  SyDuration whole = sy_lift_times_class (&facts->times, &beyond, &minutes);

  for (size_t i = 0; i < facts->lifts.count; i++)
    {
      SyLiftTimes times = sy_lift_times (&lifts[i].lift);
      SyLiftOne one;
      sy_lift_one (facts, i, context, &one);
      sy_set_tally (tally, facts, i, &one, minutes * lifts[i].share.value);
      sequence_add (&sequence, i, &one, sy_lift_times_class (&times, &own_beyond, &own_minutes), whole, lifts[i].share.value);
    }
  sequence.sli = sy_lift_sequence (sequence.elements, sequence.n, sequence.order, &sequence.k);
  put_sequence (&sequence, sink);
  sy_set_govern (sink, sequence.lifts[leading (&sequence)], &sequence.ends[leading (&sequence)]);
  if (context->quantities_only)
    return;
  if (beyond)
    sy_sink_note (sink, "over-8h", SY_NOTE_EXCLUDED);
  say_leading (facts, &sequence, sink);
  say_from_memory (&sequence, "", sink);
}

/* A person's turns as a sequence; @lifts: how many that person lifts a day. */
static void
person_sequence (const SyLiftSetFacts *facts, const SyContext *context, const SyLiftDay *day, Sequence *sequence, double *lifts)
{
  sequence->n = 0;
  *lifts = 0;
  for (size_t i = 0; i < day->n; i++)
    {
      SyLiftOne one;
      sy_lift_one (facts, day->lifts[i], context, &one);
      sequence_add (sequence, day->lifts[i], &one, day->own[i], day->whole, day->minutes[i] / day->all_minutes);
      *lifts += one.per_min * day->minutes[i];
    }
  sequence->sli = sy_lift_sequence (sequence->elements, sequence->n, sequence->order, &sequence->k);
}

void
sy_set_rota (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally)
{
  const SyLiftPerson *persons = facts->rota.items;
  double worst_sli = -1, most = 0;
  size_t worst = 0;
  Sequence sequence;
  SyLiftDay day;

  for (size_t i = 0; i < facts->rota.count; i++)
    {
      double lifts;
      sy_lift_day (facts, &persons[i], &day);
      person_sequence (facts, context, &day, &sequence, &lifts);
      most = fmax (most, lifts);
      sy_sink_named (sink, "person", persons[i].label, "SLI", SY_KIND_RATIO, N_ ("Sequential lifting index of a person"),
                     SY_SET_SLI_SOURCE, sequence.sli);
      sy_sink_named (sink, "person", persons[i].label, "minutes", SY_KIND_MINUTES, N_ ("Minutes of lifting of a person"),
                     "as given", day.all_minutes);
      if (sequence.sli > worst_sli)
        {
          worst_sli = sequence.sli;
          worst = i;
        }
      if (context->quantities_only)
        continue;
      if (day.beyond)
        sy_sink_note_on (sink, "over-8h", SY_NOTE_EXCLUDED, persons[i].label);
      say_from_memory (&sequence, persons[i].label, sink);
    }
  for (size_t i = 0; i < facts->lifts.count; i++)
    {
      SyLiftOne one;
      sy_lift_one (facts, i, context, &one);
      sy_set_tally (tally, facts, i, &one, 0);
    }
  tally->a_day = most; /* of one person, as the index is */
  double lifts;
  sy_lift_day (facts, &persons[worst], &day);
  person_sequence (facts, context, &day, &sequence, &lifts);
  put_sequence (&sequence, sink);
  sy_set_govern (sink, sequence.lifts[leading (&sequence)], &sequence.ends[leading (&sequence)]);
  if (context->quantities_only)
    return;
  if (isfinite (worst_sli))
    sy_note_arg (sy_sink_note_on (sink, "set-worst-person", SY_NOTE_CAUTION, persons[worst].label), SY_KIND_RATIO, worst_sli);
  else
    sy_sink_note_on (sink, "set-person-no-limit", SY_NOTE_CAUTION, persons[worst].label);
  say_leading (facts, &sequence, sink);
}
