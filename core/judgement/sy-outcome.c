/* SPDX-License-Identifier: MIT */
#include "sy-findings.h"

#include <math.h>
#include <string.h>

#include "sy-judge-private.h"

/* What one set of facts comes to, without words. */

bool
sy_row_broken (const SyPolicyRow *row, const SyMethod *method, SyUnits units, const SyQuantity *quantities,
               double *value, double *limit)
{
  if (row->of != method || row->each)
    return false;
  const SyQuantity *quantity = &quantities[row->symbol_at];
  if (quantity->state == SY_STATE_ABSENT)
    return false;
  *value = quantity->value;
  *limit = row->limit_is_symbol ? quantities[row->limit_at].value : row->limit[units];
  return row->comparator == SY_OVER ? *value > *limit : *value < *limit;
}

SyVerdict
sy_base_verdict (const SyMethod *method)
{
  return method->by_capacity ? SY_VERDICT_WITHIN_CAPACITY : SY_VERDICT_BY_HAND;
}

SyVerdict
sy_class_verdict (SyNoteClass note_class, SyJudgeFlags flags)
{
  switch (note_class)
    {
    case SY_NOTE_EXCLUDED:
      return SY_VERDICT_OUTSIDE;
    case SY_NOTE_MISSING:
      return flags & SY_JUDGE_RECORD ? SY_VERDICT_INCOMPLETE : SY_VERDICT_BY_HAND;
    case SY_NOTE_NEEDED:
      return SY_VERDICT_INCOMPLETE;
    case SY_NOTE_IMPROVE:
      return SY_VERDICT_IMPROVE;
    case SY_NOTE_REFUSED:
      return SY_VERDICT_DO_NOT_LIFT;
    case SY_NOTE_CAUTION:
      break;
    }
  return SY_VERDICT_BY_HAND;
}

SyVerdict
sy_note_verdict (const SyNote *note, SyJudgeFlags flags)
{
  return sy_class_verdict (note->note_class, flags);
}

SyVerdict
sy_avoid_verdict (const void *facts)
{
  const SyCommonFacts *common = facts;

  return common->avoid_given && common->avoid == SY_AVOID_YES ? SY_VERDICT_IMPROVE : SY_VERDICT_BY_HAND;
}

SyVerdict
sy_stricter (SyVerdict a, SyVerdict b)
{
  return sy_verdict_rank (b) > sy_verdict_rank (a) ? b : a;
}

static double
value_of (const SyMethod *method, const SyQuantity *quantities, const char *symbol)
{
  if (symbol == NULL)
    return NAN;
  for (size_t i = 0; i < method->n_symbols; i++)
    if (strcmp (method->symbols[i].symbol, symbol) == 0)
      return quantities[i].state == SY_STATE_ABSENT ? NAN : quantities[i].value;
  return NAN;
}

bool
sy_is_over (const SyPolicyRow *row, double value, SyUnits units)
{
  return row->comparator == SY_OVER ? value > row->limit[units] : value < row->limit[units];
}

static bool
has_each (const SyPolicy *policy, const SyMethod *method)
{
  for (int i = 0; i < policy->n_rows; i++)
    if (policy->row_of[i] == method && policy->rows[i].each)
      return true;
  return false;
}

static bool
each_broken (const SyPolicyRow *row, const SySink *sink, SyUnits units)
{
  for (size_t i = 0; i < sink->n_named; i++)
    if (sy_symbol_matches (sink->named[i].text, row->symbol) && sy_is_over (row, sink->named[i].quantity.value, units))
      return true;
  return false;
}

/* Parts are judged on the day of the whole. */
SyContext
sy_part_context (const void *facts, const SyContext *context)
{
  SyContext own = *context;

  own.today = sy_as_of (facts, context);
  return own;
}

SyPartStands
sy_part_stands (const SyMethod *method, SyVerdict verdict)
{
  if (method == NULL)
    return SY_PART_EMPTY;
  switch (verdict)
    {
    case SY_VERDICT_BY_HAND:
    case SY_VERDICT_WITHIN_CAPACITY:
      return SY_PART_WITHIN;
    case SY_VERDICT_IMPROVE:
      return SY_PART_IMPROVE;
    case SY_VERDICT_INCOMPLETE:
    case SY_VERDICT_OUTSIDE:
      return SY_PART_OPEN;
    case SY_VERDICT_MECHANICAL:
    case SY_VERDICT_DO_NOT_LIFT:
      break;
    }
  return SY_PART_REFUSED;
}

/* Which parts count in the verdict of the whole. */
void
sy_choose_parts (const SyMethod *method, const void *facts, const SyContext *context, const SyPartStands *stands, size_t n,
        bool *counts, SySink *sink)
{
  for (size_t i = 0; i < n; i++)
    counts[i] = method->choose == NULL;
  if (method->choose != NULL)
    method->choose (facts, context, stands, n, counts, sink);
}

/* The strictest verdict of the parts that count. */
static SyVerdict
outcome_of_parts (const SyMethod *method, const void *facts, const SyContext *context, const SyPolicy *policy,
                  SyJudgeFlags flags, SySink *sink)
{
  const SyContext own = sy_part_context (facts, context);
  SyVerdict verdicts[SY_METHOD_PARTS_MAX], strictest = SY_VERDICT_BY_HAND;
  SyPartStands stands[SY_METHOD_PARTS_MAX];
  bool counts[SY_METHOD_PARTS_MAX];
  SyPartFacts part;
  const char *label;
  size_t n = 0;

  for (; method->part != NULL && n < SY_METHOD_PARTS_MAX && method->part (facts, n, &part, &label); n++)
    {
      SyOutcome inner = { .verdict = SY_VERDICT_BY_HAND };
      if (part.method != NULL)
        sy_outcome_of (part.method, part.facts, &own, policy, flags, &inner);
      verdicts[n] = inner.verdict;
      stands[n] = sy_part_stands (part.method, inner.verdict);
    }
  sy_choose_parts (method, facts, context, stands, n, counts, sink);
  for (size_t i = 0; i < n; i++)
    if (counts[i])
      strictest = sy_stricter (strictest, verdicts[i]);
  return strictest;
}

void
sy_outcome_of (const SyMethod *method, const void *facts, const SyContext *context, const SyPolicy *policy,
               SyJudgeFlags flags, SyOutcome *out)
{
  SyQuantity quantities[SY_QUANTITIES_MAX];
  SyNamed named[SY_NAMED_MAX];
  SySink sink;

  sy_sink_begin (&sink, method, quantities, has_each (policy, method) ? named : NULL);
  method->evaluate (facts, context, &sink);
  SyVerdict of_parts = outcome_of_parts (method, facts, context, policy, flags, &sink);
  out->index_symbol = sink.index_symbol;
  out->index = value_of (method, quantities, sink.index_symbol);
  out->ratio = value_of (method, quantities, method->ratio_symbol);
  out->reaches = true;
  out->excess = 0;
  out->verdict = sy_stricter (sy_stricter (sy_base_verdict (method), sy_avoid_verdict (facts)), of_parts);
  for (int i = 0; i < policy->n_rows; i++)
    {
      double value, limit;
      if (policy->row_of[i] == method && sy_row_broken (&policy->rows[i], method, context->units, quantities, &value, &limit))
        {
          out->verdict = sy_stricter (out->verdict, policy->rows[i].verdict);
          if (sy_verdict_rank (policy->rows[i].verdict) == 0)
            continue;
          out->reaches = false;
          bool over = policy->rows[i].comparator == SY_OVER;
          out->excess = fmax (out->excess, over ? (limit > 0 ? value / limit : INFINITY)
                                                : (value > 0 ? limit / value : INFINITY));
        }
      else if (policy->row_of[i] == method && policy->rows[i].each && each_broken (&policy->rows[i], &sink, context->units))
        {
          out->verdict = sy_stricter (out->verdict, policy->rows[i].verdict);
          out->reaches = false;
        }
    }
  for (int i = 0; i < sink.n_notes; i++)
    out->verdict = sy_stricter (out->verdict, sy_note_verdict (&sink.notes[i], flags));
  for (int i = 0; i < SY_N_NOTE_CLASSES; i++)
    if (sink.dropped[i])
      out->verdict = sy_stricter (out->verdict, sy_class_verdict ((SyNoteClass) i, flags));
}
