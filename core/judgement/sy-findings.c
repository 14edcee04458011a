/* SPDX-License-Identifier: MIT */
#include "sy-findings.h"

#include <math.h>
#include <string.h>

#include "sy-judge-private.h"

/* Reasons stand strictest first, otherwise in the order in which they were found. */
static SyReason *
add_reason (SyFindings *findings, const char *id, SyVerdict verdict)
{
  int at = findings->n_reasons;

  findings->verdict = sy_stricter (findings->verdict, verdict);
  /* The last is the weakest: it gives way to what is stricter, or the new one goes unsaid. */
  if (at == SY_REASONS_MAX && sy_verdict_rank (findings->reasons[at - 1].verdict) >= sy_verdict_rank (verdict))
    return NULL;
  if (at == SY_REASONS_MAX)
    at = --findings->n_reasons;
  while (at > 0 && sy_verdict_rank (findings->reasons[at - 1].verdict) < sy_verdict_rank (verdict))
    {
      findings->reasons[at] = findings->reasons[at - 1];
      at--;
    }
  findings->n_reasons++;
  SyReason *reason = &findings->reasons[at];
  *reason = (SyReason) { .id = id, .verdict = verdict };
  return reason;
}

static SyReason *
add_row_reason (SyFindings *findings, const SyPolicyRow *row, const SyQuantity *quantity, double value, double limit)
{
  SyReason *reason = add_reason (findings, row->id, row->verdict);

  if (reason == NULL)
    return NULL;
  reason->quantity = quantity;
  reason->has_value = reason->has_limit = true;
  reason->value = value;
  reason->limit = limit;
  reason->kind = quantity->symbol->kind;
  reason->source = row->source;
  reason->from_memory = row->from_memory;
  return reason;
}

/* Whether a stricter row speaks of the same quantity already: a notice beside a limit that is broken says nothing more. */
static bool
said_stricter (const SyFindings *findings, const SyPolicyRow *row, double value)
{
  for (int i = 0; i < findings->policy->n_rows; i++)
    {
      const SyPolicyRow *other = &findings->policy->rows[i];
      if (other->of == row->of && !other->limit_is_symbol && strcmp (other->symbol, row->symbol) == 0
          && sy_verdict_rank (other->verdict) > sy_verdict_rank (row->verdict)
          && sy_is_over (other, value, findings->units))
        return true;
    }
  return false;
}

/* A row about each thing that the facts name, the farthest over its limit first. */
static void
add_each_reason (SyFindings *findings, const SyPolicyRow *row)
{
  const SyQuantity *broken[SY_NAMED_MAX];
  int n = 0;

  for (size_t i = 0; i < findings->sink.n_named; i++)
    {
      const SyQuantity *quantity = &findings->named[i].quantity;
      int at = n;

      if (!sy_symbol_matches (findings->named[i].text, row->symbol) || !sy_is_over (row, quantity->value, findings->units)
          || said_stricter (findings, row, quantity->value))
        continue;
      while (at > 0 && (row->comparator == SY_OVER ? broken[at - 1]->value < quantity->value
                                                   : broken[at - 1]->value > quantity->value))
        {
          broken[at] = broken[at - 1];
          at--;
        }
      broken[at] = quantity;
      n++;
    }
  for (int i = 0; i < n; i++)
    add_row_reason (findings, row, broken[i], broken[i]->value, row->limit[findings->units]);
}

static void
add_row_reasons (SyFindings *findings)
{
  const SyPolicy *policy = findings->policy;

  for (int i = 0; i < policy->n_rows; i++)
    {
      const SyPolicyRow *row = &policy->rows[i];
      double value, limit;

      if (policy->row_of[i] != findings->method)
        continue;
      if (row->each)
        add_each_reason (findings, row);
      if (!sy_row_broken (row, findings->method, findings->units, findings->quantities, &value, &limit)
          || (findings->method->by_capacity && said_stricter (findings, row, value)))
        continue;
      SyReason *reason = add_row_reason (findings, row, &findings->quantities[row->symbol_at], value, limit);
      if (reason != NULL && row->verdict == SY_VERDICT_IMPROVE && !findings->method->by_capacity
          && findings->sink.index_symbol != NULL && strcmp (row->symbol, findings->sink.index_symbol) == 0)
        {
          reason->urgency = value > policy->now_over    ? SY_URGENCY_NOW
                            : value > policy->soon_over ? SY_URGENCY_SOON
                                                        : SY_URGENCY_NONE;
          findings->urgency = reason->urgency;
        }
    }
}

static void
add_note_reasons (SyFindings *findings, SyJudgeFlags flags)
{
  for (int i = 0; i < findings->sink.n_notes; i++)
    {
      const SyNote *note = &findings->sink.notes[i];
      SyVerdict verdict = sy_note_verdict (note, flags);

      if (sy_verdict_rank (verdict) == 0)
        continue;
      SyReason *reason = add_reason (findings, note->id, verdict);
      if (reason == NULL)
        continue;
      reason->note = note;
      reason->source = note->source ? note->source : findings->method->conditions_source;
      reason->from_memory = note->from_memory;
      reason->quantity = note->symbol ? sy_sink_quantity (&findings->sink, note->symbol) : NULL;
      if (note->n_args > 0)
        {
          reason->has_value = true;
          reason->value = note->args[0];
          reason->kind = note->kinds[0];
        }
      if (note->n_args > 1)
        {
          reason->has_limit = true;
          reason->limit = note->args[1];
        }
    }
  /* What found no room still counts. */
  for (int i = 0; i < SY_N_NOTE_CLASSES; i++)
    if (findings->sink.dropped[i])
      findings->verdict = sy_stricter (findings->verdict, sy_class_verdict ((SyNoteClass) i, flags));
}

/* Where the mass itself decides, its limit governs rather than a multiplier: a row whose limit is another quantity
   is as strict as the verdict, and no index is as far over its own limit. */
static void
find_governing (SyFindings *findings)
{
  const SyReason *mass = NULL;
  double mass_part = 0, index_part = 0;

  for (int i = 0; i < findings->policy->n_rows; i++)
    {
      const SyPolicyRow *row = &findings->policy->rows[i];
      double value, limit;

      if (findings->policy->row_of[i] != findings->method || row->verdict != findings->verdict
          || !sy_row_broken (row, findings->method, findings->units, findings->quantities, &value, &limit))
        continue;
      double part = limit > 0 ? value / limit : INFINITY;
      if (!row->limit_is_symbol)
        index_part = fmax (index_part, part);
      else if (part > mass_part)
        for (int k = 0; k < findings->n_reasons; k++)
          if (findings->reasons[k].id == row->id)
            {
              mass = &findings->reasons[k];
              mass_part = part;
            }
    }
  const char *governing = mass != NULL && mass_part >= index_part ? mass->id : findings->sink.governing;
  size_t length = strlen (governing);
  if (length >= sizeof findings->governing)
    length = sizeof findings->governing - 1;
  memcpy (findings->governing, governing, length);
  findings->governing[length] = '\0';
}

/* A quantity by its place, or by name where it is one of something that the facts name. */
static const SyQuantity *
limit_quantity (const SyFindings *findings, int place, const char *symbol)
{
  if (place < 0)
    return symbol != NULL ? sy_sink_quantity (&findings->sink, symbol) : NULL;
  return findings->quantities[place].state != SY_STATE_ABSENT ? &findings->quantities[place] : NULL;
}

/* The published limits that could be had, and which of them is farthest over its goal. */
static void
find_limits (SyFindings *findings)
{
  SyLimitShown *strictest = NULL;

  for (int i = 0; i < findings->policy->n_limits && findings->n_limits < SY_LIMITS_MAX; i++)
    {
      const SyPolicyLimit *found = &findings->policy->limits[i];
      if (found->of != findings->method)
        continue;

      const SyQuantity *value = limit_quantity (findings, found->value_at, found->limit->value_symbol);
      const SyQuantity *at = limit_quantity (findings, found->limit_at, found->limit->limit_symbol);
      const SyQuantity *ratio = limit_quantity (findings, found->ratio_at, found->limit->ratio_symbol);
      if (value == NULL || at == NULL)
        continue;

      SyLimitShown *shown = &findings->limits[findings->n_limits++];
      *shown = (SyLimitShown) { .limit = found->limit, .value = value, .at = at };
      if (ratio != NULL)
        shown->ratio = ratio->value;
      else
        shown->ratio = value->value > 0 || at->value > 0 ? (at->value > 0 ? value->value / at->value : INFINITY) : 0;
      shown->goal = isfinite (found->goal[findings->units])         ? found->goal[findings->units]
                    : isfinite (found->value_goal[findings->units]) ? found->value_goal[findings->units] / at->value
                                                                    : 1;
      if (strictest == NULL || shown->ratio / shown->goal > strictest->ratio / strictest->goal)
        strictest = shown;
    }
  if (strictest != NULL)
    strictest->governs = true;
}

/* Every part by its own method, and which of them count. */
static void
judge_parts (SyFindings *findings, const void *facts, const SyContext *context, SyJudgeFlags flags)
{
  const SyMethod *method = findings->method;
  const SyContext own = sy_part_context (facts, context);
  SyPartStands stands[SY_METHOD_PARTS_MAX];
  bool counts[SY_METHOD_PARTS_MAX];
  SyPartFacts part;
  const char *label;

  for (size_t i = 0; method->part != NULL && i < SY_METHOD_PARTS_MAX && method->part (facts, i, &part, &label); i++)
    {
      SyPartShown *shown = &findings->parts[findings->n_parts++];
      SyOutcome outcome = { .verdict = SY_VERDICT_BY_HAND, .index = NAN };

      if (part.method != NULL)
        sy_outcome_of (part.method, part.facts, &own, findings->policy, flags, &outcome);
      *shown = (SyPartShown) { .label = label, .method = part.method, .verdict = outcome.verdict,
                               .index_symbol = outcome.index_symbol, .index = outcome.index };
      stands[i] = sy_part_stands (part.method, outcome.verdict);
    }
  sy_choose_parts (method, facts, context, stands, (size_t) findings->n_parts, counts, &findings->sink);
  for (int i = 0; i < findings->n_parts; i++)
    findings->parts[i].counts = counts[i];
}

/* A part that counts and is stricter than nothing is a reason of the whole. */
static void
add_part_reasons (SyFindings *findings)
{
  for (int i = 0; i < findings->n_parts; i++)
    {
      const SyPartShown *part = &findings->parts[i];

      if (part->method == NULL || !part->counts || sy_verdict_rank (part->verdict) == 0)
        continue;
      SyReason *reason = add_reason (findings, "part-verdict", part->verdict);
      if (reason == NULL)
        continue;
      reason->part = part;
      reason->source = part->method->source;
    }
}

void
sy_judge (const SyMethod *method, const void *facts, SyUnits units, const SyPolicy *policy, double today,
          SyJudgeFlags flags, const SyJudgeRoom *room, SyFindings *out)
{
  const SyContext context = sy_policy_context (policy, units, today);

  out->method = method;
  out->policy = policy;
  out->units = units;
  out->verdict = sy_base_verdict (method);
  out->as_of = method->dated ? sy_as_of (facts, &context) : NAN;
  out->urgency = SY_URGENCY_NONE;
  out->n_reasons = 0;
  out->n_remedies = 0;
  out->n_limits = 0;
  out->n_parts = 0;
  out->has_remedies = (flags & SY_JUDGE_REMEDIES) != 0;
  out->spread.present = false;
  sy_sink_begin (&out->sink, method, out->quantities, out->named);
  method->evaluate (facts, &context, &out->sink);
  judge_parts (out, facts, &context, flags);

  add_row_reasons (out);
  add_note_reasons (out, flags);
  add_part_reasons (out);
  if (sy_avoid_verdict (facts) == SY_VERDICT_IMPROVE)
    {
      SyReason *reason = add_reason (out, "can-be-avoided", SY_VERDICT_IMPROVE);
      if (reason != NULL)
        reason->source = "Manual Handling Operations Regulations 1992, reg. 4(1)(a)";
    }
  find_governing (out);
  find_limits (out);

  if ((flags & SY_JUDGE_SPREAD) && method->n_measured > 0)
    {
      sy_spread_run (method, facts, &context, policy, room->work, room->scratch, &out->spread);
      if (out->spread.p5 < out->spread.goal && out->spread.p95 > out->spread.goal)
        {
          SyReason *reason = add_reason (out, "near-limit", SY_VERDICT_BY_HAND);
          if (reason != NULL)
            {
              reason->has_value = reason->has_limit = true;
              reason->value = out->spread.share_over_goal * 100;
              reason->limit = out->spread.goal;
              reason->kind = SY_KIND_PERCENT;
              reason->source = "spread of repeated measurements; tolerances of the policy";
            }
        }
    }
  if ((flags & SY_JUDGE_REMEDIES) && method->n_factors > 0)
    sy_remedies_find (method, facts, &context, policy, flags, room->scratch, out);
}

const SyQuantity *
sy_findings_quantity (const SyFindings *findings, const char *symbol)
{
  return symbol != NULL ? sy_sink_quantity (&findings->sink, symbol) : NULL;
}
