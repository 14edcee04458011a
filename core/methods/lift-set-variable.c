/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-set-put.h"

/* The variable index, by both groupings. */

static void
put_grouping (SySink *sink, const char *prefix, const SyLiftGrouping *grouping)
{
  for (int i = 0; i < grouping->n; i++)
    {
      const SyLiftCategory *category = &grouping->categories[i];
      size_t n = (size_t) i + 1;

      if (category->count == 0)
        continue;
      sy_set_put (sink, prefix, n, "FILI", SY_KIND_RATIO, N_ ("Mean of the category, weighted by frequency"),
                  SY_SET_VLI_SOURCE, category->fili);
      sy_set_put (sink, prefix, n, "frequency", SY_KIND_FREQUENCY, N_ ("Frequency of the category"),
                  SY_SET_VLI_SOURCE, category->per_min);
      sy_set_put (sink, prefix, n, "count", SY_KIND_COUNT, N_ ("Lifts in the category"), SY_SET_VLI_SOURCE,
                  (double) category->count);
      sy_set_put (sink, prefix, n, "FM", SY_KIND_RATIO, N_ ("Frequency multiplier up to here"),
                  SY_SET_MANUAL " 1.3.5, table 5, low column", category->fm);
      sy_set_put (sink, prefix, n, "delta", SY_KIND_RATIO, N_ ("What it adds to the index"), SY_SET_VLI_SOURCE,
                  category->delta);
    }
}

void
sy_set_variable (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally)
{
  /* 720 kB: the largest sample, without memory of its own */
  double fili[SY_LIFT_VARIABLE_MAX], per_min[SY_LIFT_VARIABLE_MAX];
  uint32_t scratch[SY_LIFT_VARIABLE_SCRATCH (SY_LIFT_VARIABLE_MAX)];
  size_t n = facts->lifts.count, worst = 0;
  int categories = facts->categories.given ? (int) facts->categories.value : SY_LIFT_CATEGORIES_DEFAULT;
  SyLiftGrouping equal, ntile;
  SyLiftEnd end;
  SyLiftOne one;
  bool beyond;
  double minutes;
  SyDuration duration = sy_lift_times_class (&facts->times, &beyond, &minutes);

  for (size_t i = 0; i < n; i++)
    {
      sy_lift_one (facts, i, context, &one);
      sy_lift_one_end (&one, duration, false, &end);
      fili[i] = end.fili;
      per_min[i] = one.per_min;
      worst = fili[i] > fili[worst] ? i : worst;
      sy_set_tally (tally, facts, i, &one, minutes);
    }
  sy_lift_variable (fili, per_min, n, categories, duration, context->units, scratch, &equal, &ntile);
  sy_sink_value (sink, SY_SET_VLI, fmax (equal.vli, ntile.vli));
  sy_sink_value (sink, SY_SET_VLI_EQUAL, equal.vli);
  sy_sink_value (sink, SY_SET_VLI_NTILE, ntile.vli);
  put_grouping (sink, "equal", &equal);
  put_grouping (sink, "ntile", &ntile);
  sy_lift_one (facts, worst, context, &one);
  sy_lift_one_end (&one, duration, false, &end);
  sy_set_govern (sink, worst, &end);
  if (context->quantities_only)
    return;
  if (beyond)
    sy_sink_note (sink, "over-8h", SY_NOTE_EXCLUDED);
  sy_set_say (sink, facts, worst, "set-highest", &fili[worst], 1);
}
