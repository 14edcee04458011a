/* SPDX-License-Identifier: MIT */
#include "sy-change-plan.h"

#include <math.h>
#include <string.h>

#include "changeover-schedule.h"
#include "sy-task-sheet-private.h"

static const char *
in (SyTranslate translate, const char *msgid)
{
  return translate != NULL ? translate (msgid) : msgid;
}

static char *
dup_minutes (double minutes, const SyFindings *findings)
{
  return sy_words_quantity (minutes, SY_KIND_MINUTES, findings->units);
}

/* ---- how a step stands ---- */

static void
make_stricter (SyPlanStep *step, SyVerdict verdict)
{
  if (!step->has_verdict || sy_verdict_rank (verdict) > sy_verdict_rank (step->verdict))
    step->verdict = verdict;
  step->has_verdict = TRUE;
}

static void
add_missing (SyPlanStep *step, const SyFindings *findings, const SyReason *reason, SyTranslate translate)
{
  g_autofree char *words = sy_words_reason (findings, reason, translate);
  const char *source = reason->source != NULL ? reason->source : "";

  /* A source of several says which of them stand from memory.
     Translators: a check that is missing, and which regulation asks for it. */
  const char *msgid = reason->from_memory && strstr (source, "from memory") == NULL
                        ? N_ ("{words} Asked for by: {source}; from memory, not checked.")
                        : N_ ("{words} Asked for by: {source}.");
  g_ptr_array_add (step->missing, sy_words_say (translate, msgid, "words", words, "source", source, NULL));
}

/* What is said of it: by its own method, its kind, its checks. */
static void
judge_step (SyPlanStep *step, int at, const SyFindings *findings, SyTranslate translate)
{
  const SyPartShown *part = at < findings->n_parts ? &findings->parts[at] : NULL;

  if (part != NULL && part->method != NULL)
    make_stricter (step, part->verdict);
  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];

      if (reason->note == NULL || strcmp (reason->note->subject, step->label) != 0
          || g_str_has_prefix (reason->id, "person-"))
        continue;
      make_stricter (step, reason->verdict);
      if (g_str_has_prefix (reason->id, "check-"))
        add_missing (step, findings, reason, translate);
    }
  for (int i = 0; i < findings->sink.n_notes; i++)
    {
      const SyNote *note = &findings->sink.notes[i];

      step->can_run = step->can_run || (strcmp (note->id, "step-can-run") == 0 && strcmp (note->subject, step->label) == 0);
    }
  step->method = g_strdup (part != NULL && part->method != NULL ? in (translate, part->method->title) : "–");
  step->verdict_words = g_strdup (
    step->has_verdict
      ? in (translate, sy_verdict_title_for (part != NULL ? part->method : NULL, step->verdict))
      : in (translate, N_ ("no load moved")));
}

static void
add_checks (SyPlanStep *step, const SyChangeoverStep *facts, SyTranslate translate)
{
  const unsigned long checks = sy_step_checks (facts);

  for (int i = 0; i < SY_N_CHECKS; i++)
    if (checks & SY_CHECK_BIT (i))
      g_ptr_array_add (step->checks, g_strdup (in (translate, sy_check_choices[i].label)));
}

/* ---- a step ---- */

static char *
dup_people (const SyChangeoverFacts *facts, unsigned int lanes)
{
  const char *const *people = facts->people.items;
  g_autoptr (GString) out = g_string_new (NULL);

  for (gsize k = 0; k < facts->people.count; k++)
    if (lanes & 1u << k)
      g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", people[k]);
  return g_strdup (out->str);
}

static void
fill_step (SyPlanStep *step, gsize at, const SyChangeoverFacts *facts, const SyScheduled *when, const SyFindings *findings,
           SyTranslate translate)
{
  const SyChangeoverStep *given = (const SyChangeoverStep *) facts->steps.items + at;
  g_autofree char *from = sy_words_number (when->start, 1), *to = sy_words_number (when->end, 1);
  g_autofree char *count = g_strdup_printf ("%" G_GSIZE_FORMAT, facts->steps.count);

  step->number = g_strdup_printf ("%" G_GSIZE_FORMAT, at + 1);
  step->label = g_strdup (given->label);
  step->kind = g_strdup (given->kind >= 0 ? in (translate, sy_step_kind_choices[given->kind].label) : "");
  step->stopped = given->when == SY_WHEN_STOPPED;
  step->minutes = dup_minutes (given->minutes.value, findings);
  step->span = g_strdup_printf ("%s–%s", from, to);
  step->people = dup_people (facts, when->lanes);
  step->checks = g_ptr_array_new_with_free_func (g_free);
  step->missing = g_ptr_array_new_with_free_func (g_free);
  judge_step (step, (int) at, findings, translate);
  add_checks (step, given, translate);
  /* Translators: one step of a die change: which, what, when, how long, who, how it stands. */
  step->words = sy_words_say (
    translate, N_ ("Step {number} of {count}: {label}; {machine}, minute {from} to {to}, {minutes}; {people}; {verdict}."),
    "number", step->number, "count", count, "label", step->label, "machine",
    in (translate, step->stopped ? N_ ("machine stopped") : N_ ("machine running")), "from", from, "to", to, "minutes",
    step->minutes, "people", step->people, "verdict", step->verdict_words, NULL);
}

static void
clear_step (SyPlanStep *step)
{
  g_free (step->number);
  g_free (step->label);
  g_free (step->kind);
  g_free (step->minutes);
  g_free (step->span);
  g_free (step->people);
  g_free (step->method);
  g_free (step->verdict_words);
  g_free (step->words);
  g_ptr_array_unref (step->checks);
  g_ptr_array_unref (step->missing);
}

/* ---- the whole ---- */

static const char *
keep (SyChangePlan *plan, char *text)
{
  g_ptr_array_add (plan->texts, text);
  return text;
}

static gboolean
is_strict (const SyPlanStep *step)
{
  return step->has_verdict && sy_verdict_rank (step->verdict) >= sy_verdict_rank (SY_VERDICT_MECHANICAL);
}

static void
fill_lanes (SyChangePlan *plan, const SyChangeoverFacts *facts, const SySchedule *schedule, const SyFindings *findings,
            SyTranslate translate)
{
  const double stands = schedule->stands_to - schedule->stands_from;
  g_autofree char *minutes = dup_minutes (stands, findings);
  const char **names = g_new (const char *, facts->people.count);
  SyLaneBar *bars = g_new0 (SyLaneBar, plan->n_steps);

  for (gsize k = 0; k < facts->people.count; k++)
    names[k] = keep (plan, g_strdup (((const char *const *) facts->people.items)[k]));
  for (guint i = 0; i < plan->n_steps; i++)
    {
      const SyPlanStep *step = &plan->steps[i];
      const SyScheduled *when = &schedule->steps[i];

      bars[i] = (SyLaneBar) {
        .number = step->number, .label = step->label, .start = when->start, .end = when->end, .lanes = when->lanes,
        .stopped = step->stopped, .can_run = step->can_run,
        .has_shape = step->has_verdict, .shape = sy_sheet_shape (step->verdict), .heavy = is_strict (step),
      };
    }
  plan->lanes = (SyLanes) {
    .n_lanes = (int) facts->people.count, .lanes = names, .n_bars = (int) plan->n_steps, .bars = bars, .end = schedule->end,
    .stands_from = schedule->stands_from, .stands_to = schedule->stands_to,
    .machine_text = in (translate, N_ ("Machine")),
    .stands_text = stands > 0 ? keep (plan, sy_words_say (translate, N_ ("stands {minutes}"), "minutes", minutes, NULL))
                              : in (translate, N_ ("need not stand")),
    .minutes_text = in (translate, N_ ("Minutes")),
    .keys = { in (translate, N_ ("machine stopped")), in (translate, N_ ("running")),
              in (translate, N_ ("could be while it runs")), in (translate, N_ ("must not be done so")) },
    .hot = -1,
  };
}

static char *
make_sentence (const SyChangePlan *plan, const SyChangeoverFacts *facts, const SySchedule *schedule,
               const SyFindings *findings, SyTranslate translate)
{
  const double stands = schedule->stands_to - schedule->stands_from;
  g_autofree char *steps = g_strdup_printf ("%u", plan->n_steps), *people = dup_people (facts, ~0u);
  g_autofree char *whole = dup_minutes (schedule->end, findings), *stood = dup_minutes (stands, findings);
  g_autofree char *from = sy_words_number (schedule->stands_from, 1), *to = sy_words_number (schedule->stands_to, 1);
  const SyPlanStep *worst = NULL;
  g_autofree char *times = NULL, *strict = NULL;

  for (guint i = 0; i < plan->n_steps; i++)
    if (is_strict (&plan->steps[i])
        && (worst == NULL || sy_verdict_rank (plan->steps[i].verdict) > sy_verdict_rank (worst->verdict)))
      worst = &plan->steps[i];
  /* Translators: a die change in a sentence. */
  times = sy_words_say (
    translate,
    stands > 0 ? N_ ("Steps: {steps}, by {people}, over {whole}; the machine stands {stood}, from minute {from} to {to}.")
               : N_ ("Steps: {steps}, by {people}, over {whole}; the machine need not stand."),
    "steps", steps, "people", people, "whole", whole, "stood", stood, "from", from, "to", to, NULL);
  if (worst == NULL)
    return g_steal_pointer (&times);
  strict = sy_words_say (translate, N_ ("The strictest is step {number}, {label}: {verdict}."), "number", worst->number,
                         "label", worst->label, "verdict", worst->verdict_words, NULL);
  return g_strdup_printf ("%s %s", times, strict);
}

SyChangePlan *
sy_change_plan_new (const SyFacts *values, const SyFindings *findings, SyTranslate translate)
{
  const SyChangeoverFacts *facts = values->values;
  SyChangePlan *plan = g_new0 (SyChangePlan, 1);
  g_autofree SySchedule *schedule = g_new (SySchedule, 1);

  sy_changeover_schedule (facts, schedule);
  plan->texts = g_ptr_array_new_with_free_func (g_free);
  plan->n_steps = (guint) facts->steps.count;
  plan->steps = g_new0 (SyPlanStep, plan->n_steps);
  for (guint i = 0; i < plan->n_steps; i++)
    fill_step (&plan->steps[i], i, facts, &schedule->steps[i], findings, translate);
  fill_lanes (plan, facts, schedule, findings, translate);
  plan->sentence = make_sentence (plan, facts, schedule, findings, translate);
  return plan;
}

void
sy_change_plan_free (SyChangePlan *plan)
{
  if (plan == NULL)
    return;
  for (guint i = 0; i < plan->n_steps; i++)
    clear_step (&plan->steps[i]);
  g_free (plan->steps);
  g_free ((gpointer) plan->lanes.lanes);
  g_free ((gpointer) plan->lanes.bars);
  g_free (plan->sentence);
  g_ptr_array_unref (plan->texts);
  g_free (plan);
}

/* ---- figures ---- */

static void
free_figure (gpointer data)
{
  SyPlanFigure *figure = data;

  g_free (figure->title);
  g_free (figure->value);
  g_free (figure);
}

static double
value_of (const SyFindings *findings, const char *symbol)
{
  const SyQuantity *quantity = sy_findings_quantity (findings, symbol);

  if (quantity == NULL || quantity->state == SY_STATE_ABSENT)
    return NAN;
  return quantity->state == SY_STATE_UNBOUNDED ? INFINITY : quantity->value;
}

static double
goal_of (const SyFindings *findings)
{
  const double goal = sy_policy_goal (findings->policy, findings->method, findings->units).index;

  return isfinite (goal) ? goal : 1;
}

static void
add_figure (GPtrArray *figures, const char *title, char *value, gboolean heavy)
{
  SyPlanFigure *figure = g_new (SyPlanFigure, 1);

  *figure = (SyPlanFigure) { g_strdup (title), value, heavy };
  g_ptr_array_add (figures, figure);
}

static char *
dup_hours (double hours, SyTranslate translate)
{
  g_autofree char *number = sy_words_number (hours, 1);

  /* Translators: hours. */
  return sy_words_say (translate, N_ ("{hours} h"), "hours", number, NULL);
}

/* What would be bought by moving to running time what can be: at most that much less standing. */
static void
add_movable (GPtrArray *figures, const SyFindings *findings, SyTranslate translate)
{
  const double movable = value_of (findings, "movable.minutes"), stands = value_of (findings, "stopped.elapsed");
  const double changes = value_of (findings, "changes_per_year");
  g_autofree char *minutes = NULL, *hours = NULL;

  if (!(movable > 0))
    return;
  minutes = dup_minutes (movable, findings);
  add_figure (figures, in (translate, N_ ("Could be done while the machine runs")), g_strdup (minutes), TRUE);
  if (!(changes > 0))
    return;
  /* steps at the same time share their minutes: never more than it stands */
  hours = sy_words_number (fmin (movable, stands) * changes / 60, 1);
  add_figure (figures, in (translate, N_ ("That would spare at most")),
              sy_words_say (translate, N_ ("{hours} h of standing a year"), "hours", hours, NULL), FALSE);
}

GPtrArray *
sy_change_plan_figures (const SyFindings *findings, SyTranslate translate)
{
  static const struct
  {
    const char *symbol;
    enum { AS_IT_IS, AS_INDEX, AS_HOURS } as;
  } rows[] = {
    { "stopped.elapsed", AS_IT_IS }, { "stopped.minutes", AS_IT_IS },    { "running.minutes", AS_IT_IS },
    { "elapsed.minutes", AS_IT_IS }, { "person.minutes", AS_IT_IS },     { "heaviest_by_hand", AS_IT_IS },
    { "worst.index", AS_INDEX },     { "year.stopped.hours", AS_HOURS }, { "year.person.hours", AS_HOURS },
    { "valid_until", AS_IT_IS },
  };
  GPtrArray *figures = g_ptr_array_new_with_free_func (free_figure);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SyQuantity *quantity = sy_findings_quantity (findings, rows[i].symbol);
      const double value = value_of (findings, rows[i].symbol), goal = goal_of (findings);
      char *words;

      if (isnan (value))
        continue;
      if (rows[i].as == AS_INDEX)
        words = sy_words_against (value, goal, SY_KIND_RATIO, findings->units);
      else if (rows[i].as == AS_HOURS)
        words = dup_hours (value, translate);
      else
        words = sy_words_quantity (value, quantity->symbol->kind, findings->units);
      add_figure (figures, in (translate, quantity->symbol->label), words, rows[i].as == AS_INDEX && value > goal);
      if (strcmp (rows[i].symbol, "running.minutes") == 0)
        add_movable (figures, findings, translate);
    }
  return figures;
}

static char *
person_words (const SyFindings *findings, const char *name, gboolean *over, SyTranslate translate)
{
  g_autofree char *cli_symbol = g_strdup_printf ("person.%s.CLI", name);
  g_autofree char *lifts_symbol = g_strdup_printf ("person.%s.lifts", name);
  g_autofree char *minutes_symbol = g_strdup_printf ("person.%s.minutes", name);
  const double cli = value_of (findings, cli_symbol), goal = goal_of (findings);
  const double lifts = value_of (findings, lifts_symbol), minutes = value_of (findings, minutes_symbol);
  g_autofree char *work = dup_minutes (isnan (minutes) ? 0 : minutes, findings);
  g_autofree char *index = NULL, *limit = NULL, *count = NULL;

  *over = cli > goal;
  if (isnan (cli))
    return sy_words_say (translate, N_ ("{work} of work; no lift by hand"), "work", work, NULL);
  index = sy_words_against (cli, goal, SY_KIND_RATIO, findings->units);
  limit = sy_words_quantity (goal, SY_KIND_RATIO, findings->units);
  count = sy_words_number (lifts, 0);
  return sy_words_say (translate, N_ ("{work} of work; lifts by hand: {count}; composite index {index}, goal {goal}"), "work",
                       work, "count", count, "index", index, "goal", limit, NULL);
}

GPtrArray *
sy_change_plan_people (const SyFacts *values, const SyFindings *findings, SyTranslate translate)
{
  const SyChangeoverFacts *facts = values->values;
  const char *const *people = facts->people.items;
  GPtrArray *figures = g_ptr_array_new_with_free_func (free_figure);

  for (gsize k = 0; k < facts->people.count; k++)
    {
      gboolean over;
      char *words = person_words (findings, people[k], &over, translate);

      add_figure (figures, people[k], words, over);
    }
  return figures;
}
