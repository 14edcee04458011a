/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-set-put.h"

/* The composite index, term by term. */

void
sy_set_composite (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally)
{
  SyLiftTask tasks[SY_LIFT_TASKS_MAX];
  SyLiftTaskIndex indices[SY_LIFT_TASKS_MAX];
  SyLiftTerm terms[SY_LIFT_TASKS_MAX];
  SyLiftEnd ends[SY_LIFT_TASKS_MAX];
  size_t n = facts->lifts.count, worst = 0;
  bool beyond;
  double minutes;
  SyDuration duration = sy_lift_times_class (&facts->times, &beyond, &minutes);

  for (size_t i = 0; i < n; i++)
    {
      SyLiftOne one;
      sy_lift_one (facts, i, context, &one);
      int end = sy_lift_one_end (&one, duration, false, &ends[i]);
      tasks[i] = (SyLiftTask) { ends[i].firwl, one.at[end].height, one.per_min, one.heaviest, one.typical };
      sy_set_tally (tally, facts, i, &one, minutes);
    }
  double cli = sy_lift_composite (tasks, n, duration, context->units, indices, terms);
  sy_sink_value (sink, SY_SET_CLI, cli);
  for (size_t i = 0; i < n && sink->named != NULL; i++)
    {
      sy_set_put_end (sink, i, &ends[i], tasks[i].per_min);
      sy_set_put (sink, "lift", i + 1, "FM", SY_KIND_RATIO, N_ ("Frequency multiplier by itself"),
                  SY_SET_MANUAL " 1.3.5, table 5", indices[i].fm);
      sy_set_put (sink, "lift", i + 1, "STRWL", SY_KIND_MASS, N_ ("Single-task recommended weight limit"),
                  SY_SET_MANUAL " 2.4.1", indices[i].strwl);
      sy_set_put (sink, "lift", i + 1, "FILI", SY_KIND_RATIO, N_ ("Frequency-independent lifting index"),
                  SY_SET_MANUAL " 2.4.1", indices[i].fili);
      sy_set_put (sink, "lift", i + 1, "STLI", SY_KIND_RATIO, N_ ("Single-task lifting index"),
                  SY_SET_MANUAL " 2.4.1", indices[i].stli);
      sy_set_put (sink, "lift", i + 1, "order", SY_KIND_COUNT, N_ ("Place in the sum"), SY_SET_CLI_SOURCE,
                  (double) indices[i].order + 1);
      sy_set_put (sink, "lift", i + 1, "without", SY_KIND_RATIO, N_ ("The index without this lift"), "computed",
           sy_lift_composite_without (tasks, indices, terms, n, i, duration, context->units));
    }
  for (size_t k = 0; k < n; k++)
    {
      const SyLiftTerm *term = &terms[k];
      worst = term->delta > terms[worst].delta ? k : worst;
      sy_set_put (sink, "term", k + 1, "lift", SY_KIND_COUNT, N_ ("Which lift"), SY_SET_CLI_SOURCE,
                  (double) term->lift + 1);
      sy_set_put (sink, "term", k + 1, "F", SY_KIND_FREQUENCY, N_ ("Frequency up to here"), SY_SET_CLI_SOURCE,
                  term->per_min);
      if (k > 0)
        sy_set_put (sink, "term", k + 1, "FM_before", SY_KIND_RATIO, N_ ("Frequency multiplier without it"),
                    SY_SET_CLI_SOURCE, term->fm_before);
      sy_set_put (sink, "term", k + 1, "FM_after", SY_KIND_RATIO, N_ ("Frequency multiplier with it"),
                  SY_SET_CLI_SOURCE, term->fm_after);
      sy_set_put (sink, "term", k + 1, "delta", SY_KIND_RATIO, N_ ("What it adds to the index"), SY_SET_CLI_SOURCE,
                  term->delta);
    }
  size_t lift = terms[worst].lift;
  sy_set_govern (sink, lift, &ends[lift]);
  if (context->quantities_only)
    return;
  if (beyond)
    sy_sink_note (sink, "over-8h", SY_NOTE_EXCLUDED);
  sy_set_say (sink, facts, lift, n > 1 ? "set-adds-most" : "set-one-lift",
            (double[]) { terms[worst].delta, cli,
                         sy_lift_composite_without (tasks, indices, terms, n, lift, duration, context->units) },
            n > 1 && isfinite (cli) ? 3 : 1);
}
