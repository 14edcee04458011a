/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "changeover-people.h"
#include "changeover-schedule.h"

/* Quantities */

enum
{
  STOPPED, STOPPED_ELAPSED, RUNNING, PERSON, ELAPSED, MOVABLE, HEAVIEST, WORST, N_STEPS, N_PEOPLE, YEAR_STOPPED, YEAR_PERSON,
  N_SYMBOLS
};

#define SUM "sum over the steps as given"
static const SySymbol symbols[N_SYMBOLS] = {
  [STOPPED] = { "stopped.minutes", SY_KIND_MINUTES, N_ ("Work with the machine stopped"), SUM },
  [STOPPED_ELAPSED] = { "stopped.elapsed", SY_KIND_MINUTES, N_ ("The machine stands for"), "by the schedule" },
  [RUNNING] = { "running.minutes", SY_KIND_MINUTES, N_ ("Work with the machine running"), SUM },
  [PERSON] = { "person.minutes", SY_KIND_MINUTES, N_ ("Minutes of all people together"), SUM ", minutes \xc3\x97 persons" },
  [ELAPSED] = { "elapsed.minutes", SY_KIND_MINUTES, N_ ("From the first step to the last"), "by the schedule" },
  [MOVABLE] = { "movable.minutes", SY_KIND_MINUTES, N_ ("Stopped work that could be done while the machine runs"),
                "fetching, rolling, storing and the like; common practice, no source" },
  [HEAVIEST] = { "heaviest_by_hand", SY_KIND_MASS, N_ ("Heaviest mass by hand and person"), "of the steps' own results" },
  [WORST] = { "worst.LI", SY_KIND_RATIO, N_ ("Worst index of a step lifted by hand"), "of the steps' own results" },
  [N_STEPS] = { "steps", SY_KIND_COUNT, N_ ("Steps"), "as given" },
  [N_PEOPLE] = { "people", SY_KIND_COUNT, N_ ("People"), "as given" },
  [YEAR_STOPPED] = { "year.stopped.hours", SY_KIND_RATIO, N_ ("Hours a year that the machine stands"),
                     "by the schedule \xc3\x97 changes a year / 60" },
  [YEAR_PERSON] = { "year.person.hours", SY_KIND_RATIO, N_ ("Person-hours a year"), SUM " \xc3\x97 changes a year / 60" },
};

static const char *const named_symbols[] = { "person.*.CLI", "person.*.lifts", "person.*.minutes", "step.*.start",
                                             "step.*.end" };

/* Evaluation */

/* A quantity of a step by its own method, NAN when it has none. */
static double
part_value (const SyPartFacts *part, const SyContext *context, const char *symbol)
{
  SyQuantity quantities[SY_QUANTITIES_MAX];
  SySink sink;

  sy_sink_begin (&sink, part->method, quantities, NULL);
  part->method->evaluate (part->facts, context, &sink);
  const SyQuantity *quantity = sy_sink_quantity (&sink, symbol != NULL ? symbol : sink.index_symbol);

  return quantity != NULL ? quantity->value : NAN;
}

static bool
is_by_hand (const SyMethod *method)
{
  return !method->by_capacity && strcmp (method->item_kind, "task") == 0;
}

static bool
is_lifted (const SyMethod *method)
{
  return strcmp (method->id, "lift") == 0 || strcmp (method->id, "lift-set") == 0;
}

static void
put_by_hand (const SyChangeoverFacts *facts, const SyContext *context, SySink *sink)
{
  const SyChangeoverStep *steps = facts->steps.items;
  double heaviest = NAN, worst = NAN;

  for (size_t i = 0; i < facts->steps.count; i++)
    if (steps[i].part.method != NULL && is_by_hand (steps[i].part.method))
      {
        heaviest = fmax (heaviest, part_value (&steps[i].part, context, "mass_each"));
        if (is_lifted (steps[i].part.method))
          worst = fmax (worst, part_value (&steps[i].part, context, NULL));
      }
  if (!isnan (heaviest))
    sy_sink_value (sink, HEAVIEST, heaviest);
  if (!isnan (worst))
    sy_sink_value (sink, WORST, worst);
}

/* What is fetched, rolled or stored need not wait for the machine to stand. */
static bool
is_movable (const SyChangeoverStep *step)
{
  return step->when == SY_WHEN_STOPPED && (step->kind == SY_STEP_BRING || step->kind == SY_STEP_STORE
                                            || step->kind == SY_STEP_TRUCK || step->kind == SY_STEP_CARRY);
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
      sy_sink_value (sink, YEAR_STOPPED, stands * facts->changes_per_year.value / 60);
      sy_sink_value (sink, YEAR_PERSON, person * facts->changes_per_year.value / 60);
    }
}

static void
put_people (const SyChangeoverFacts *facts, const SySchedule *schedule, const SyContext *context, SySink *sink)
{
  static const char cli[] = "NIOSH 94-110 2.4 over the lifts of the change";
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
      sy_sink_named (sink, "person", people[k], "minutes", SY_KIND_MINUTES, N_ ("Minutes of work"), "by the schedule",
                     minutes);
      sy_sink_named (sink, "person", people[k], "lifts", SY_KIND_COUNT, N_ ("Steps that are lifts"), "as given",
                     (double) lifts.lifts);
      if (lifts.lifts == 0)
        continue;
      const char *symbol
        = sy_sink_named (sink, "person", people[k], "CLI", SY_KIND_RATIO, N_ ("Composite lifting index"), cli, lifts.cli);
      if (symbol != NULL && lifts.cli > worst)
        {
          worst = lifts.cli;
          sink->governing = symbol;
        }
    }
  for (size_t i = 0; sink->named != NULL && i < facts->steps.count; i++)
    {
      sy_sink_named (sink, "step", steps[i].label, "start", SY_KIND_MINUTES, N_ ("Begins at"), "by the schedule",
                     schedule->steps[i].start);
      sy_sink_named (sink, "step", steps[i].label, "end", SY_KIND_MINUTES, N_ ("Ends at"), "by the schedule",
                     schedule->steps[i].end);
    }
}

static bool
was_made (const SyChangeoverFacts *facts, size_t step, SyCheck check, bool before)
{
  const SyChangeoverStep *steps = facts->steps.items;

  for (size_t i = before ? 0 : step; i <= step; i++)
    if (steps[i].checks.bits & 1ul << check)
      return true;
  return false;
}

/* A check that a step asks for and that nobody makes, named with its regulation. */
static void
note_check (const SyChangeoverStep *step, const SyNeededCheck *needed, SySink *sink)
{
  static const char *const ids[SY_N_CHECKS] = {
    [SY_CHECK_ISOLATED] = "check-isolated",         [SY_CHECK_BLOCKED] = "check-slide-blocked",
    [SY_CHECK_PRESSURE] = "check-pressure",         [SY_CHECK_HOT] = "check-hot",
    [SY_CHECK_TIED] = "check-halves-tied",          [SY_CHECK_NOBODY_UNDER] = "check-nobody-under",
    [SY_CHECK_TAG_LINE] = "check-tag-line",         [SY_CHECK_TRIAL_LIFT] = "check-trial-lift",
    [SY_CHECK_WALKERS] = "check-walkers",           [SY_CHECK_TORQUED] = "check-torqued",
    [SY_CHECK_BLOCKS_OUT] = "check-blocks-counted", [SY_CHECK_GUARDS] = "check-guards",
  };

  sy_note_source (sy_sink_note_on (sink, ids[needed->check], SY_NOTE_NEEDED, step->label), NULL, needed->regulation,
                  needed->from_memory);
}

static void
add_notes (const SyChangeoverFacts *facts, SySink *sink)
{
  const SyChangeoverStep *steps = facts->steps.items;

  for (size_t i = 0; i < facts->steps.count; i++)
    {
      const SyChangeoverStep *step = &steps[i];
      const SyNeededCheck *needed;

      if (step->kind < 0)
        {
          sy_sink_note_on (sink, "step-kind-missing", SY_NOTE_NEEDED, step->label);
          continue;
        }
      if (step->kind == SY_STEP_TURN)
        sy_note_source (sy_sink_note_on (sink, "turning-over", SY_NOTE_EXCLUDED, step->label), NULL,
                        "no method for turning a load over", false);
      else if (sy_step_handles ((SyStepKind) step->kind) && step->part.method == NULL)
        sy_sink_note_on (sink, "step-not-assessed", SY_NOTE_NEEDED, step->label);
      size_t n = sy_step_needed_checks ((SyStepKind) step->kind, (SyWhen) step->when, &needed);
      for (size_t k = 0; k < n; k++)
        if (!was_made (facts, i, needed[k].check, needed[k].before))
          note_check (step, &needed[k], sink);
      if (is_movable (step))
        sy_note_arg (sy_sink_note_on (sink, "step-can-run", SY_NOTE_CAUTION, step->label), SY_KIND_MINUTES,
                     step->minutes.value);
      if (step->part.method != NULL && step->by.count == 0)
        sy_sink_note (sink, "anybody-counts-for-everybody", SY_NOTE_CAUTION);
    }
  sy_sink_note (sink, "plan-of-a-change", SY_NOTE_CAUTION);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyChangeoverFacts *facts = data;
  SySchedule schedule;

  sy_changeover_schedule (facts, &schedule);
  put_minutes (facts, &schedule, sink);
  put_by_hand (facts, context, sink);
  put_people (facts, &schedule, context, sink);
  if (!context->quantities_only)
    add_notes (facts, sink);
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

/* Cross-field check */

static void
refuse (SyProblems *problems, SyProblemKind kind, size_t step, const char *member, const char *given, const char *allowed)
{
  char path[SY_PROBLEM_PATH_MAX];
  SyText text = { path, sizeof path, 0 };

  sy_text_add (&text, "$.steps[");
  sy_text_add_number (&text, (double) step);
  sy_text_add (&text, "].");
  sy_text_add (&text, member);
  sy_problems_add (problems, kind, 0, path, given, allowed, "");
}

static void
check_step (const SyChangeoverFacts *facts, size_t i, SyProblems *problems)
{
  const SyChangeoverStep *step = (const SyChangeoverStep *) facts->steps.items + i;
  const char *const *by = step->by.items, *const *after = step->after.items;
  char given[SY_NUMBER_TEXT_MAX];

  if (step->label != NULL && sy_changeover_find_step (facts, step->label, i) >= 0)
    refuse (problems, SY_PROBLEM_DUPLICATE, i, "label", step->label, "a name that no other step has");
  for (size_t k = 0; k < step->by.count; k++)
    if (sy_changeover_find_person (facts, by[k]) < 0)
      refuse (problems, SY_PROBLEM_CONFLICT, i, "by", by[k], "one of the people");
    else
      for (size_t other = 0; other < k; other++)
        if (strcmp (by[other], by[k]) == 0)
          refuse (problems, SY_PROBLEM_DUPLICATE, i, "by", by[k], "each of the people once");
  for (size_t k = 0; k < step->after.count; k++)
    if (sy_changeover_find_step (facts, after[k], i) < 0)
      refuse (problems, SY_PROBLEM_CONFLICT, i, "after", after[k], "the name of a step above this one");
  sy_number_print (sy_step_persons (step), given);
  if ((size_t) sy_step_persons (step) > facts->people.count)
    refuse (problems, SY_PROBLEM_CONFLICT, i, "persons", given, "no more than there are people");
  else if (step->persons.given && (size_t) step->persons.value < step->by.count)
    refuse (problems, SY_PROBLEM_CONFLICT, i, "persons", given, "at least as many as are named in by");
}

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyChangeoverFacts *facts = data;
  const char *const *people = facts->people.items;

  (void) units;
  if (facts->steps.given && facts->steps.count == 0)
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.steps", "an empty list", "at least one step", "");
  if (facts->people.given && facts->people.count == 0)
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.people", "an empty list", "at least one person", "");
  for (size_t k = 0; k < facts->people.count; k++)
    if (sy_changeover_find_person (facts, people[k]) != (int) k)
      sy_problems_add (problems, SY_PROBLEM_DUPLICATE, 0, "$.people", people[k], "each name once", "");
  for (size_t i = 0; facts->people.count > 0 && i < facts->steps.count; i++)
    check_step (facts, i, problems);
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
  .facts_size = sizeof (SyChangeoverFacts),
  .fields = sy_changeover_fields,
  .n_fields = SY_N_CHANGEOVER_FIELDS,
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .named_symbols = named_symbols,
  .n_named_symbols = SY_LEN (named_symbols),
  .index_symbol = "worst.LI",
  .check = check,
  .evaluate = evaluate,
  .part = part,
};
