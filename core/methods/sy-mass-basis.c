/* SPDX-License-Identifier: MIT */
#include "sy-mass-basis.h"

#include <math.h>

double
sy_mass_allowance (const SyNumber *given, int basis, const SyContext *context)
{
  double largest = 0;

  if (given->given)
    return given->value;
  if (basis >= 0)
    return context->allowance_percent[basis];
  for (int i = 0; i < SY_N_BASES; i++)
    largest = fmax (largest, context->allowance_percent[i]);
  return largest;
}

void
sy_mass_say (SySink *sink, const SyNumber *given, int basis, double allowance, const SyContext *context)
{
  if (given->given)
    {
      SyNumber none = { 0, false };
      double asked = sy_mass_allowance (&none, basis, context);

      if (allowance < asked)
        {
          SyNote *note = sy_sink_note (sink, "allowance-below-the-policy", SY_NOTE_CAUTION);
          sy_note_arg (note, SY_KIND_PERCENT, allowance);
          sy_note_arg (note, SY_KIND_PERCENT, asked);
        }
      return;
    }
  if (basis < 0)
    sy_note_arg (sy_sink_note (sink, "mass-basis-not-given", SY_NOTE_NEEDED), SY_KIND_PERCENT, allowance);
  else
    sy_note_arg (sy_sink_note (sink, "allowance-assumed", SY_NOTE_CAUTION), SY_KIND_PERCENT, allowance);
}
