/* SPDX-License-Identifier: MIT */
#include "sy-lift-facts.h"

/* What a lift must say and what contradicts, of a lift by itself and of one of a set; and its times as a class. */

SyLiftTimes
sy_lift_times (const SyLiftFacts *facts)
{
  return (SyLiftTimes) { facts->duration, facts->work_minutes, facts->recovery_minutes, facts->shift_minutes, facts->sessions };
}

SyDuration
sy_lift_times_class (const SyLiftTimes *times, bool *beyond, double *day_min)
{
  /* Upper limits of the classes: minutes of work when only the class is known. */
  static const double class_min[] = { 60, 120, 480 };
  const SyLiftSession *sessions = times->sessions.items;
  SyWorkPeriod periods[SY_LIFT_SESSIONS_MAX];

  *beyond = false;
  if (times->duration >= 0)
    {
      *day_min = class_min[times->duration];
      return (SyDuration) times->duration;
    }
  if (times->work_minutes.given)
    return sy_lift_duration_pattern (times->work_minutes.value, times->recovery_minutes.value,
                                     times->shift_minutes.given ? times->shift_minutes.value : 480, beyond, day_min);
  for (size_t i = 0; i < times->sessions.count; i++)
    periods[i] = (SyWorkPeriod) { sessions[i].work.value, sessions[i].recovery.value };
  return sy_lift_duration_sessions (periods, times->sessions.count, beyond, day_min);
}

void
sy_lift_problem (SyProblems *problems, SyProblemKind kind, const char *at, const char *name, const char *given,
                 const char *allowed, const char *unit)
{
  char path[SY_PROBLEM_PATH_MAX];
  SyText text = { path, sizeof path, 0 };

  sy_text_add (&text, at);
  sy_text_add (&text, ".");
  sy_text_add (&text, name);
  sy_problems_add (problems, kind, 0, path, given, allowed, unit);
}

static void
conflict (SyProblems *problems, const char *at, const char *name, const char *given, const char *allowed)
{
  sy_lift_problem (problems, SY_PROBLEM_CONFLICT, at, name, given, allowed, "");
}

static void
missing (SyProblems *problems, const char *at, const char *name, const char *allowed)
{
  sy_lift_problem (problems, SY_PROBLEM_MISSING, at, name, "nothing", allowed, "");
}

void
sy_lift_check (const SyLiftFacts *facts, const char *at, SyUnits units, SyProblems *problems)
{
  if (facts->load.typical.given && facts->load.heaviest.given
      && facts->load.heaviest.value < facts->load.typical.value)
    {
      char given[SY_NUMBER_TEXT_MAX];
      sy_number_print (facts->load.heaviest.value, given);
      sy_lift_problem (problems, SY_PROBLEM_CONFLICT, at, "load.heaviest", given, "not less than load.typical",
                       sy_unit_name (SY_KIND_MASS, units));
    }

  if (facts->destination_given == 1 && facts->travel.given)
    conflict (problems, at, "travel", "both destination and travel", "destination or travel, not both");
  else if (facts->destination_given != 1 && !facts->travel.given)
    missing (problems, at, "destination", "destination {H, V, A}, or travel");
  if (facts->destination_given != 1 && facts->control_at_destination == 1)
    conflict (problems, at, "control_at_destination", "true without a destination",
              "control at the destination needs destination {H, V, A}");
}

void
sy_lift_check_pace (const SyLiftFacts *facts, const char *at, SyProblems *problems)
{
  bool counted = facts->lifts.given || facts->in_minutes.given;

  if (facts->frequency.given && counted)
    conflict (problems, at, "frequency", "both frequency and a count", "frequency, or lifts with in_minutes, not both");
  else if (!facts->frequency.given && !counted)
    missing (problems, at, "frequency", "frequency, or lifts with in_minutes");
  else if (counted && !facts->lifts.given)
    missing (problems, at, "lifts", "a count beside in_minutes");
  else if (counted && !facts->in_minutes.given)
    missing (problems, at, "in_minutes", "minutes beside lifts, over 0 and at most 15");
}

void
sy_lift_check_times (const SyLiftTimes *times, const char *at, SyProblems *problems)
{
  static const char ways_allowed[] = "duration, or work_minutes with recovery_minutes, or sessions";
  bool pattern = times->work_minutes.given || times->recovery_minutes.given;
  int ways = (times->duration >= 0) + pattern + times->sessions.given;

  if (ways > 1)
    conflict (problems, at, "duration", "more than one way of giving it", ways_allowed);
  else if (ways == 0)
    missing (problems, at, "duration", ways_allowed);
  if (pattern && !times->work_minutes.given)
    missing (problems, at, "work_minutes", "minutes of work beside recovery_minutes, over 0");
  if (pattern && !times->recovery_minutes.given)
    missing (problems, at, "recovery_minutes", "minutes of light work beside work_minutes, 0 or more");
  if (times->shift_minutes.given && !pattern)
    conflict (problems, at, "shift_minutes", "without a pattern", "only beside work_minutes with recovery_minutes");
  if (times->sessions.given && times->sessions.count == 0)
    sy_lift_problem (problems, SY_PROBLEM_SIZE, at, "sessions", "an empty list", "1 to 96 sessions", "");
}
