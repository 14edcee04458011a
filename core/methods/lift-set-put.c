/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-set-put.h"

void
sy_set_tally (SySetTally *tally, const SyLiftSetFacts *facts, size_t lift, const SyLiftOne *one, double minutes)
{
  const SyLiftFacts *from = &((const SyLiftOfSet *) facts->lifts.items)[lift].lift;
  double each = one->heaviest / one->persons;

  if (tally->m_ref <= 0 || each / one->reference > tally->mass_each / tally->m_ref)
    {
      tally->mass_each = each;
      tally->m_ref = one->reference;
    }
  tally->reference = tally->reference > 0 ? fmin (tally->reference, one->reference) : one->reference;
  tally->persons = fmax (tally->persons, one->persons);
  tally->per_min += one->per_min;
  tally->a_day += from->lifts_per_day.given ? from->lifts_per_day.value : one->per_min * minutes;
}

void
sy_set_put (SySink *sink, const char *prefix, size_t n, const char *suffix, SyKind kind, const char *label,
            const char *source, double value)
{
  char number[SY_NUMBER_TEXT_MAX];

  sy_number_print ((double) n, number);
  sy_sink_named (sink, prefix, number, suffix, kind, label, source, value);
}

void
sy_set_put_end (SySink *sink, size_t lift, const SyLiftEnd *end, double per_min)
{
  size_t n = lift + 1;

  sy_set_put (sink, "lift", n, "HM", SY_KIND_RATIO, N_ ("Horizontal multiplier"), SY_SET_MANUAL " 1.3.1", end->hm);
  sy_set_put (sink, "lift", n, "VM", SY_KIND_RATIO, N_ ("Vertical multiplier"), SY_SET_MANUAL " 1.3.2", end->vm);
  sy_set_put (sink, "lift", n, "DM", SY_KIND_RATIO, N_ ("Distance multiplier"), SY_SET_MANUAL " 1.3.3", end->dm);
  sy_set_put (sink, "lift", n, "AM", SY_KIND_RATIO, N_ ("Asymmetric multiplier"), SY_SET_MANUAL " 1.3.4", end->am);
  sy_set_put (sink, "lift", n, "CM", SY_KIND_RATIO, N_ ("Coupling multiplier"), SY_SET_MANUAL " 1.3.6, table 7",
              end->cm);
  sy_set_put (sink, "lift", n, "FIRWL", SY_KIND_MASS, N_ ("Frequency-independent recommended weight limit"),
              SY_SET_MANUAL " 2.4.1", end->firwl);
  sy_set_put (sink, "lift", n, "F", SY_KIND_FREQUENCY, N_ ("Lifting frequency"), SY_SET_MANUAL " 1.2", per_min);
}

void
sy_set_govern (SySink *sink, size_t lift, const SyLiftEnd *end)
{
  SyText text = { sink->governing_text, sizeof sink->governing_text, 0 };

  sy_text_add (&text, "lift.");
  sy_text_add_number (&text, (double) (lift + 1));
  sy_text_add (&text, ".");
  sy_text_add (&text, sy_lift_end_factor (end));
  sink->governing = sink->governing_text;
}

void
sy_set_say (SySink *sink, const SyLiftSetFacts *facts, size_t lift, const char *id, const double *values, int n)
{
  char name[SY_LIFT_NAME_MAX];

  sy_lift_name (facts, lift, name);
  bool bounded = isfinite (values[0]);
  SyNote *note = sy_sink_note_on (sink, bounded ? id : "set-no-limit", SY_NOTE_CAUTION, name);
  for (int i = 0; i < n && bounded; i++)
    sy_note_arg (note, SY_KIND_RATIO, values[i]);
}
