/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "changeover-people.h"
#include "changeover-schedule.h"
#include "sy-line.h"

/* Quantities */

enum
{
  STOPPED, STOPPED_ELAPSED, RUNNING, PERSON, ELAPSED, MOVABLE, HEAVIEST, WORST, WORST_INDEX, N_STEPS, N_PEOPLE, CHANGES,
  YEAR_STOPPED, YEAR_PERSON, VALID_UNTIL, N_SYMBOLS
};

#define SUM "sum over the steps as given"
#define SCHEDULE "by the schedule"
#define CLI "NIOSH 94-110 2.4 over the lifts of the change"
static const SySymbol symbols[N_SYMBOLS] = {
  [STOPPED] = { "stopped.minutes", SY_KIND_MINUTES, N_ ("Work with the machine stopped"), SUM },
  [STOPPED_ELAPSED] = { "stopped.elapsed", SY_KIND_MINUTES, N_ ("The machine stands for"), SCHEDULE },
  [RUNNING] = { "running.minutes", SY_KIND_MINUTES, N_ ("Work with the machine running"), SUM },
  [PERSON] = { "person.minutes", SY_KIND_MINUTES, N_ ("Minutes of all people together"), SUM ", minutes \xc3\x97 persons" },
  [ELAPSED] = { "elapsed.minutes", SY_KIND_MINUTES, N_ ("From the first step to the last"), SCHEDULE },
  [MOVABLE] = { "movable.minutes", SY_KIND_MINUTES, N_ ("Stopped work that could be done while the machine runs"),
                "fetching, storing, rolling, carrying and trucking; common practice, no source" },
  [HEAVIEST] = { "heaviest_by_hand", SY_KIND_MASS, N_ ("Heaviest mass by hand and person"), "of the steps' own results" },
  [WORST] = { "worst.LI", SY_KIND_RATIO, N_ ("Worst index of a step lifted by hand"), "of the steps' own results" },
  [WORST_INDEX] = { "worst.index", SY_KIND_RATIO, N_ ("Worst lifting index, of a step or of a person"),
                    "the larger of worst.LI and every person's CLI" },
  [N_STEPS] = { "steps", SY_KIND_COUNT, N_ ("Steps"), "as given" },
  [N_PEOPLE] = { "people", SY_KIND_COUNT, N_ ("People"), "as given" },
  [CHANGES] = { "changes_per_year", SY_KIND_COUNT, N_ ("Changes a year"), "as given" },
  [YEAR_STOPPED] = { "year.stopped.hours", SY_KIND_RATIO, N_ ("Hours a year that the machine stands"),
                     SCHEDULE " \xc3\x97 changes a year / 60" },
  [YEAR_PERSON] = { "year.person.hours", SY_KIND_RATIO, N_ ("Person-hours a year"), SUM " \xc3\x97 changes a year / 60" },
  [VALID_UNTIL] = { "valid_until", SY_KIND_DATE, N_ ("Earliest examination that falls due"), "of the steps' own results" },
};

static const char *const named_symbols[] = { "person.*.CLI", "person.*.lifts", "person.*.minutes", "step.*.start",
                                             "step.*.end" };

/* Evaluation */

static bool
is_lifted (const SyMethod *method)
{
  return strcmp (method->id, "lift") == 0 || strcmp (method->id, "lift-set") == 0;
}

/* What the steps' own methods say that the whole shows: a load by hand, an index of lifting, a day that falls due. */
static void
put_parts (const SyChangeoverFacts *facts, const SyContext *context, SySink *sink)
{
  const SyChangeoverStep *steps = facts->steps.items;
  SyContext inner = *context;
  double heaviest = NAN, worst = NAN, valid_until = NAN;

  inner.quantities_only = true;
  inner.today = sy_as_of (&facts->common, context);
  for (size_t i = 0; i < facts->steps.count; i++)
    {
      const SyPartFacts *part = &steps[i].part;
      SyQuantity quantities[SY_QUANTITIES_MAX];
      SySink found;

      if (part->method == NULL || !(sy_method_is_by_hand (part->method) || part->method->dated))
        continue;
      sy_sink_begin (&found, part->method, quantities, NULL);
      part->method->evaluate (part->facts, &inner, &found);
      const SyQuantity *due = sy_sink_quantity (&found, "valid_until");
      const SyQuantity *index = is_lifted (part->method) ? sy_sink_quantity (&found, found.index_symbol) : NULL;
      valid_until = fmin (valid_until, due != NULL ? due->value : NAN);
      worst = fmax (worst, index != NULL ? index->value : NAN);
      if (sy_method_is_by_hand (part->method))
        heaviest = fmax (heaviest, sy_part_heaviest (part, &inner, &found));
    }
  if (!isnan (heaviest))
    sy_sink_value (sink, HEAVIEST, heaviest);
  if (!isnan (worst))
    sy_sink_value (sink, WORST, worst);
  if (!isnan (valid_until))
    sy_sink_value (sink, VALID_UNTIL, valid_until);
}

/* What is fetched, rolled or stored need not wait for the machine to stand. */
static bool
is_movable (const SyChangeoverStep *step)
{
  return step->when == SY_WHEN_STOPPED
         && (step->kind == SY_STEP_BRING || step->kind == SY_STEP_STORE || step->kind == SY_STEP_TRUCK
             || step->kind == SY_STEP_CARRY || step->kind == SY_STEP_ROLL);
}

static void
put_minutes (const SyChangeoverFacts *facts, const SySchedule *schedule, SySink *sink)
{
  const SyChangeoverStep *steps = facts->steps.items;
  double by_when[2] = { 0, 0 }, person = 0, movable = 0, stands = schedule->stands_to - schedule->stands_from;

  for (size_t i = 0; i < facts->steps.count; i++)
    {
      by_when[steps[i].when] += steps[i].minutes.value;
      person += steps[i].minutes.value * sy_step_persons (&steps[i]);
      movable += is_movable (&steps[i]) ? steps[i].minutes.value : 0;
    }
  sy_sink_value (sink, STOPPED, by_when[SY_WHEN_STOPPED]);
  sy_sink_value (sink, STOPPED_ELAPSED, stands);
  sy_sink_value (sink, RUNNING, by_when[SY_WHEN_RUNNING]);
  sy_sink_value (sink, PERSON, person);
  sy_sink_value (sink, ELAPSED, schedule->end);
  sy_sink_value (sink, MOVABLE, movable);
  sy_sink_value (sink, N_STEPS, (double) facts->steps.count);
  sy_sink_value (sink, N_PEOPLE, (double) facts->people.count);
  if (facts->changes_per_year.given)
    {
      sy_sink_value (sink, CHANGES, facts->changes_per_year.value);
      sy_sink_value (sink, YEAR_STOPPED, stands * facts->changes_per_year.value / 60);
      sy_sink_value (sink, YEAR_PERSON, person * facts->changes_per_year.value / 60);
    }
}

static void
put_lifts (const char *name, const SyPersonLifts *lifts, double *worst, SySink *sink)
{
  sy_sink_named (sink, "person", name, "lifts", SY_KIND_COUNT, N_ ("Lifts of the change"), "as given",
                 (double) lifts->lifts);
  if (lifts->lifts == 0)
    return;
  const char *symbol
    = sy_sink_named (sink, "person", name, "CLI", SY_KIND_RATIO, N_ ("Composite lifting index"), CLI, lifts->cli);
  if (lifts->cli <= *worst)
    return;
  *worst = lifts->cli;
  if (symbol != NULL)
    sink->governing = symbol;
}

static void
put_people (const SyChangeoverFacts *facts, const SySchedule *schedule, const SyContext *context, SySink *sink)
{
  const char *const *people = facts->people.items;
  const SyChangeoverStep *steps = facts->steps.items;
  double worst = -1;

  for (size_t k = 0; k < facts->people.count; k++)
    {
      SyPersonLifts lifts;
      double minutes = 0;

      sy_changeover_person (facts, k, context, &lifts);
      for (size_t i = 0; i < facts->steps.count; i++)
        minutes += schedule->steps[i].lanes & 1u << k ? steps[i].minutes.value : 0;
      sy_sink_named (sink, "person", people[k], "minutes", SY_KIND_MINUTES, N_ ("Minutes of work"), SCHEDULE, minutes);
      put_lifts (people[k], &lifts, &worst, sink);
      if (lifts.too_many)
        sy_sink_note_on (sink, "person-too-many-lifts", SY_NOTE_NEEDED, people[k]);
      if (lifts.lifts > 0 && lifts.others && !context->quantities_only)
        sy_sink_note (sink, "other-handling-not-added", SY_NOTE_CAUTION);
    }
  const SyQuantity *step = &sink->quantities[WORST];
  double index = fmax (worst >= 0 ? worst : NAN, step->state != SY_STATE_ABSENT ? step->value : NAN);
  if (!isnan (index))
    sy_sink_value (sink, WORST_INDEX, index);
  else
    sink->index_symbol = NULL; /* nothing is lifted by hand */
}

static void
put_schedule (const SyChangeoverFacts *facts, const SySchedule *schedule, SySink *sink)
{
  const SyChangeoverStep *steps = facts->steps.items;

  for (size_t i = 0; sink->named != NULL && i < facts->steps.count; i++)
    {
      sy_sink_named (sink, "step", steps[i].label, "start", SY_KIND_MINUTES, N_ ("Begins at"), SCHEDULE,
                     schedule->steps[i].start);
      sy_sink_named (sink, "step", steps[i].label, "end", SY_KIND_MINUTES, N_ ("Ends at"), SCHEDULE,
                     schedule->steps[i].end);
    }
}

static void
add_step_notes (const SyChangeoverStep *step, SySink *sink)
{
  if (step->kind < 0)
    sy_sink_note_on (sink, "step-kind-missing", SY_NOTE_NEEDED, step->label);
  else if (step->kind == SY_STEP_TURN)
    sy_note_source (sy_sink_note_on (sink, "turning-over", SY_NOTE_EXCLUDED, step->label), NULL,
                    "no method for turning a load over", false);
  else if (sy_step_handles ((SyStepKind) step->kind) && step->part.method == NULL)
    sy_sink_note_on (sink, "step-not-assessed", SY_NOTE_NEEDED, step->label);
  if (is_movable (step))
    sy_note_arg (sy_sink_note_on (sink, "step-can-run", SY_NOTE_CAUTION, step->label), SY_KIND_MINUTES,
                 step->minutes.value);
  if (step->part.method != NULL && is_lifted (step->part.method) && (int) step->by.count < sy_step_persons (step))
    sy_sink_note (sink, "anybody-counts-for-everybody", SY_NOTE_CAUTION);
}

/* A die that comes out or goes in does not do so by itself. */
static bool
is_anything_moved (const SyChangeoverFacts *facts)
{
  const SyChangeoverStep *steps = facts->steps.items;

  for (size_t i = 0; i < facts->steps.count; i++)
    if (steps[i].part.method != NULL || (steps[i].kind >= 0 && sy_step_handles ((SyStepKind) steps[i].kind)))
      return true;
  return false;
}

static void
add_notes (const SyChangeoverFacts *facts, const SyContext *context, SySink *sink)
{
  const SyChangeoverStep *steps = facts->steps.items;

  for (size_t i = 0; i < facts->steps.count; i++)
    add_step_notes (&steps[i], sink);
  if (facts->dies.count > 0 && !is_anything_moved (facts))
    sy_sink_note (sink, "die-not-moved", SY_NOTE_NEEDED);
  sy_changeover_missing_checks (facts, sink);
  if (facts->without.bits != 0)
    sy_sink_note (sink, "taken-as-without", SY_NOTE_CAUTION);
  sy_as_of_say (&facts->common, context, sink);
  sy_sink_note (sink, "plan-of-a-change", SY_NOTE_CAUTION);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyChangeoverFacts *facts = data;
  SySchedule schedule;

  sy_changeover_schedule (facts, &schedule);
  put_minutes (facts, &schedule, sink);
  put_parts (facts, context, sink);
  put_people (facts, &schedule, context, sink);
  put_schedule (facts, &schedule, sink);
  if (!context->quantities_only)
    add_notes (facts, context, sink);
}

static bool
part (const void *data, size_t i, SyPartFacts *out, const char **label)
{
  const SyChangeoverFacts *facts = data;
  const SyChangeoverStep *steps = facts->steps.items;

  if (i >= facts->steps.count)
    return false;
  *out = steps[i].part;
  *label = steps[i].label;
  return true;
}

/* "41 min × 500 / 60 = 341.67" */
static bool
formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  const SyQuantity *q = sink->quantities;
  size_t minutes = symbol == YEAR_STOPPED ? STOPPED_ELAPSED : PERSON;
  SyText line = { text, SY_FORMULA_MAX, 0 };

  if ((symbol != YEAR_STOPPED && symbol != YEAR_PERSON) || q[symbol].state == SY_STATE_ABSENT)
    return false;
  sy_text_add_measure (&line, q[minutes].value, 2, SY_KIND_MINUTES, units);
  sy_text_add (&line, " \xc3\x97 ");
  sy_text_add_number (&line, q[CHANGES].value);
  sy_text_add (&line, " / 60 = ");
  sy_text_add_rounded (&line, q[symbol].value, 2);
  return true;
}

extern const SyMethod sy_method_changeover;
const SyMethod sy_method_changeover = {
  .id = "changeover",
  .title = N_ ("Die change"),
  .source = "Every step by its own method; each person's lifts by NIOSH 94-110 section 2.4; checks from the regulations "
            "named beside them",
  .conditions_source = "common practice, no source",
  .edition = 1,
  .item_kind = "changeover",
  .dated = true,
  .good_title = N_ ("Within every limit of its steps"),
  .good_meaning = N_ ("every step within the limits of its own method, no check missing, under this policy"),
  .memory_caution = N_ ("Regulations beside the checks stand here mostly from memory, and so may limits of the steps: open a "
                        "step to see which. They may tighten a verdict and are never the only ground for a favourable one."),
  .facts_size = sizeof (SyChangeoverFacts),
  .fields = sy_changeover_fields,
  .n_fields = SY_N_CHANGEOVER_FIELDS,
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .named_symbols = named_symbols,
  .n_named_symbols = SY_LEN (named_symbols),
  .index_symbol = "worst.index",
  .check = sy_changeover_check,
  .evaluate = evaluate,
  .formula = formula,
  .part = part,
};
