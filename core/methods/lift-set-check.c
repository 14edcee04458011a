/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-lift-set-facts.h"
#include "sy-rig-facts.h"

/* Facts of a set of lifts that exclude one another, and what each lift must say. */

/* Shares are written with few digits; together they must be the whole. */
#define SHARES_TOLERANCE 1e-6

/* A path such as "$.rota[1].turns[2]". */
typedef struct
{
  char text[SY_PROBLEM_PATH_MAX];
} Path;

static Path
item_path (const char *list, size_t index)
{
  Path path;
  SyText text = { path.text, sizeof path.text, 0 };

  sy_text_add (&text, list);
  sy_text_add (&text, "[");
  sy_text_add_number (&text, (double) index);
  sy_text_add (&text, "]");
  return path;
}

static void
conflict (SyProblems *problems, const char *at, const char *name, const char *given, const char *allowed)
{
  sy_lift_problem (problems, SY_PROBLEM_CONFLICT, at, name, given, allowed, "");
}

static bool
has_times (const SyLiftTimes *times)
{
  return times->duration >= 0 || times->work_minutes.given || times->recovery_minutes.given || times->shift_minutes.given
         || times->sessions.given;
}

/* The first of a lift's or set's facts about time that was given: where a conflict is shown. */
static const char *
times_name (const SyLiftTimes *times)
{
  return times->duration >= 0         ? "duration"
         : times->work_minutes.given  ? "work_minutes"
         : times->sessions.given      ? "sessions"
         : times->recovery_minutes.given ? "recovery_minutes"
                                      : "shift_minutes";
}

/* Times that say a class: only these can be held against one another. */
static bool
are_sound (const SyLiftTimes *times)
{
  bool pattern = times->work_minutes.given && times->recovery_minutes.given;
  bool half = times->work_minutes.given != times->recovery_minutes.given;

  return !half && (times->duration >= 0) + pattern + (times->sessions.given && times->sessions.count > 0) == 1;
}

static void
check_own_times (const SyLiftSetFacts *facts, const SyLiftOfSet *lift, const char *at, bool needs_own,
                 SyProblems *problems)
{
  SyLiftTimes times = sy_lift_times (&lift->lift);
  bool beyond;
  double day_min;

  if (!needs_own)
    {
      const char *allowed = facts->rota.given ? "nothing: the rota says how long" : "nothing: the set says how long";
      if (has_times (&times))
        conflict (problems, at, times_name (&times), "of one lift", allowed);
      if (lift->share.given)
        conflict (problems, at, "share", "of one lift",
                  facts->rota.given ? "nothing: the rota says how long" : "nothing: only a sequence has shares");
      return;
    }
  sy_lift_check_times (&times, at, problems);
  if (!lift->share.given)
    sy_lift_problem (problems, SY_PROBLEM_MISSING, at, "share", "nothing",
                     "its share of the time, over 0 and at most 1, or a rota", "");
  if (are_sound (&times) && are_sound (&facts->times)
      && sy_lift_times_class (&times, &beyond, &day_min) > sy_lift_times_class (&facts->times, &beyond, &day_min))
    conflict (problems, at, times_name (&times), "longer than the whole", "a class not longer than that of the set");
}

static void
check_shares (const SyLiftSetFacts *facts, SyProblems *problems)
{
  const SyLiftOfSet *lifts = facts->lifts.items;
  char given[SY_NUMBER_TEXT_MAX];
  double sum = 0;

  for (size_t i = 0; i < facts->lifts.count; i++)
    {
      if (!lifts[i].share.given)
        return;
      sum += lifts[i].share.value;
    }
  if (fabs (sum - 1) <= SHARES_TOLERANCE)
    return;
  sy_number_print (sum, given);
  conflict (problems, "$", "lifts", given, "shares that are 1 together");
}

static void
check_rota (const SyLiftSetFacts *facts, SyProblems *problems)
{
  const SyLiftPerson *persons = facts->rota.items;
  const SyLiftOfSet *lifts = facts->lifts.items;
  const char *names[SY_LIFT_TASKS_MAX];

  if (facts->rota.count == 0)
    sy_lift_problem (problems, SY_PROBLEM_SIZE, "$", "rota", "an empty list", "1 to 40 persons", "");
  if (facts->lifts.count > SY_LIFT_TASKS_MAX)
    return;
  for (size_t i = 0; i < facts->lifts.count; i++)
    {
      sy_check_label (lifts[i].label, "$.lifts", i, names, problems);
      names[i] = lifts[i].label;
    }
  for (size_t i = 0; i < facts->rota.count; i++)
    {
      const SyLiftTurn *turns = persons[i].turns.items;
      Path person = item_path ("$.rota", i);

      sy_check_label (persons[i].label, "$.rota", i, names, problems);
      names[i] = persons[i].label;
      if (persons[i].turns.given && persons[i].turns.count == 0)
        sy_lift_problem (problems, SY_PROBLEM_SIZE, person.text, "turns", "an empty list", "1 to 96 turns", "");
      SyText list = { person.text, sizeof person.text, strlen (person.text) };
      sy_text_add (&list, ".turns");
      for (size_t k = 0; k < persons[i].turns.count; k++)
        if (turns[k].lift != NULL && sy_lift_of_turn (facts, &turns[k]) == facts->lifts.count)
          conflict (problems, item_path (person.text, k).text, "lift", turns[k].lift,
                    "the label of one of the lifts, or its number from 1");
    }
}

static void
check_kind (const SyLiftSetFacts *facts, SyProblems *problems)
{
  bool variable = facts->combine == SY_COMBINE_VARIABLE;

  if (facts->frequency.given && !variable)
    conflict (problems, "$", "frequency", "of the whole set", "the pace of each lift; only a variable set has one of the whole");
  if (facts->categories.given && !variable)
    conflict (problems, "$", "categories", "without a variable set", "only with combine \"variable\"");
  if (facts->rota.given && facts->combine != SY_COMBINE_SEQUENCE)
    conflict (problems, "$", "rota", "without a sequence", "only with combine \"sequence\"");
  else if (facts->rota.given)
    {
      check_rota (facts, problems);
      if (has_times (&facts->times))
        conflict (problems, "$", times_name (&facts->times), "beside a rota", "nothing: the rota says how long");
    }
  if (!facts->rota.given)
    sy_lift_check_times (&facts->times, "$", problems);
  if (facts->combine == SY_COMBINE_SEQUENCE && !facts->rota.given)
    check_shares (facts, problems);
}

/* A name that is no part of a symbol may be long. */
static void
check_name (const char *label, const char *at, SyProblems *problems)
{
  if (label != NULL && (!sy_text_says (label) || sy_rig_name_hides (label)))
    sy_lift_problem (problems, SY_PROBLEM_SIZE, at, "label", label, "a name, without characters that cannot be seen", "");
}

/* Whether a lift says how often it is done. */
static bool
has_pace (const SyLiftFacts *lift)
{
  return lift->frequency.given || lift->lifts.given || lift->in_minutes.given;
}

void
sy_lift_set_check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyLiftSetFacts *facts = data;
  const SyLiftOfSet *lifts = facts->lifts.items;
  bool paced = facts->combine == SY_COMBINE_VARIABLE && facts->frequency.given;
  char given[SY_NUMBER_TEXT_MAX];
  bool said = false;

  if (facts->combine < 0)
    return; /* missing or refused: said by the reader */
  check_kind (facts, problems);
  if (facts->lifts.given && facts->lifts.count == 0)
    sy_lift_problem (problems, SY_PROBLEM_SIZE, "$", "lifts", "an empty list", "1 lift or more", "");
  if (facts->combine != SY_COMBINE_VARIABLE && facts->lifts.count > SY_LIFT_TASKS_MAX)
    {
      sy_number_print ((double) facts->lifts.count, given);
      sy_lift_problem (problems, SY_PROBLEM_SIZE, "$", "lifts", given, "at most 60; more are a sample: combine \"variable\"", "");
    }
  for (size_t i = 0; i < facts->lifts.count; i++)
    {
      Path at = item_path ("$.lifts", i);

      if (!facts->rota.given)
        check_name (lifts[i].label, at.text, problems);
      sy_lift_check (&lifts[i].lift, at.text, units, problems);
      if (!paced)
        sy_lift_check_pace (&lifts[i].lift, at.text, problems);
      else if (has_pace (&lifts[i].lift) && !said)
        {
          conflict (problems, "$", "frequency", "beside a pace of single lifts", "one pace of all, or one of each lift");
          said = true;
        }
      check_own_times (facts, &lifts[i], at.text, facts->combine == SY_COMBINE_SEQUENCE && !facts->rota.given, problems);
    }
}
