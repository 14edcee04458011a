/* SPDX-License-Identifier: MIT */
#include "case-sums.h"

#include <math.h>
#include <string.h>

static void
put (double at[3], const SyEstimate *estimate, int given, double otherwise)
{
  double expected = given && estimate->expected.given ? estimate->expected.value : otherwise;

  at[SY_CASE_EXPECTED] = expected;
  at[SY_CASE_LOW] = given && estimate->low.given ? estimate->low.value : expected;
  at[SY_CASE_HIGH] = given && estimate->high.given ? estimate->high.value : expected;
}

/* A quantity of a die change; NAN for another method. */
static double
of_change (const SyPartFacts *part, const char *symbol, const SyContext *context)
{
  SyQuantity quantities[SY_QUANTITIES_MAX];
  SyContext inner = *context;
  SySink found;

  if (part->method == NULL || strcmp (part->method->id, "changeover") != 0)
    return NAN;
  inner.quantities_only = true;
  sy_sink_begin (&found, part->method, quantities, NULL);
  part->method->evaluate (part->facts, &inner, &found);
  const SyQuantity *quantity = sy_sink_quantity (&found, symbol);
  return quantity != NULL ? quantity->value : NAN;
}

void
sy_case_inputs (const SyCaseFacts *facts, size_t i, const SyContext *context, SyCaseInputs *out)
{
  const SyCaseOption *option = (const SyCaseOption *) facts->options.items + i;
  const SyCaseAsIs *now = &facts->as_is;

  put (out->at[SY_INPUT_CAPITAL], &option->capital, option->capital_given, NAN);
  put (out->at[SY_INPUT_TRAINING], &option->training, option->training_given, 0);
  put (out->at[SY_INPUT_RUNNING], &option->running, option->running_given, 0);
  put (out->at[SY_INPUT_EXAMINATION], &option->examination, option->examination_given, 0);
  put (out->at[SY_INPUT_MAINTENANCE], &option->maintenance, option->maintenance_given, 0);
  put (out->at[SY_INPUT_STOPPED], &option->stopped, option->stopped_given,
       of_change (&option->part, "stopped.elapsed", context));
  put (out->at[SY_INPUT_PERSON], &option->person, option->person_given, of_change (&option->part, "person.minutes", context));
  put (out->at[SY_INPUT_NOW_STOPPED], &now->stopped, now->stopped_given,
       of_change (&now->part, "stopped.elapsed", context));
  put (out->at[SY_INPUT_NOW_PERSON], &now->person, now->person_given, of_change (&now->part, "person.minutes", context));
  put (out->at[SY_INPUT_CHANGES], &facts->changes, facts->changes_given,
       of_change (&now->part, "changes_per_year", context));
  put (out->at[SY_INPUT_MACHINE], &facts->machine_rate, facts->machine_rate_given, NAN);
  put (out->at[SY_INPUT_LABOUR], &facts->labour_rate, facts->labour_rate_given, NAN);
  out->discount = facts->discount_rate.given ? facts->discount_rate.value : NAN;
  out->years = facts->years.given ? facts->years.value : NAN;
}

double
sy_case_annuity (const SyCaseInputs *inputs)
{
  double factor = 1, sum = 0;

  if (isnan (inputs->discount) || isnan (inputs->years))
    return NAN;
  for (int t = 1; t <= (int) inputs->years; t++)
    {
      factor /= 1 + inputs->discount / 100;
      sum += factor;
    }
  return sum;
}

/* Money saved each time by minutes that are saved, at the end of the rate that fits; nothing where no minutes are known. */
static double
saved (double now, double then, const double rate[3], SyCaseEnd end)
{
  double minutes = now - then;

  if (isnan (now) && isnan (then))
    return 0;
  if (end == SY_CASE_EXPECTED || isnan (minutes))
    return minutes / 60 * rate[SY_CASE_EXPECTED];
  return minutes / 60 * rate[(minutes >= 0) == (end == SY_CASE_LOW) ? SY_CASE_LOW : SY_CASE_HIGH];
}

void
sy_case_sums (const SyCaseInputs *inputs, SyCaseEnd end, SyCaseSums *out)
{
  const double (*at)[3] = inputs->at;
  /* what costs is worst at its high end */
  SyCaseEnd cost = end == SY_CASE_LOW ? SY_CASE_HIGH : end == SY_CASE_HIGH ? SY_CASE_LOW : SY_CASE_EXPECTED;
  double once = at[SY_INPUT_CAPITAL][cost] + at[SY_INPUT_TRAINING][cost];
  double yearly = at[SY_INPUT_RUNNING][cost] + at[SY_INPUT_EXAMINATION][cost] + at[SY_INPUT_MAINTENANCE][cost];
  double each = saved (at[SY_INPUT_NOW_STOPPED][end], at[SY_INPUT_STOPPED][cost], at[SY_INPUT_MACHINE], end)
                + saved (at[SY_INPUT_NOW_PERSON][end], at[SY_INPUT_PERSON][cost], at[SY_INPUT_LABOUR], end);
  SyCaseEnd often = end == SY_CASE_EXPECTED ? end
                    : (each >= 0) == (end == SY_CASE_LOW) ? SY_CASE_LOW
                                                          : SY_CASE_HIGH;

  out->saving = at[SY_INPUT_CHANGES][often] * each - yearly;
  out->npv = out->saving * sy_case_annuity (inputs) - once;
  out->payback = isnan (out->saving) || isnan (once) ? NAN : out->saving > 0 ? once / out->saving : INFINITY;
}

void
sy_case_swing (const SyCaseInputs *inputs, SyCaseInput input, SyCaseEnd end, SyCaseSums *out)
{
  SyCaseInputs one = *inputs;

  one.at[input][SY_CASE_EXPECTED] = inputs->at[input][end];
  sy_case_sums (&one, SY_CASE_EXPECTED, out);
}
