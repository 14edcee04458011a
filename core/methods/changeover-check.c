/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "changeover-schedule.h"
#include "sy-rig-facts.h"

/* Facts of a die change that exclude one another. */

static void
refuse (SyProblems *problems, SyProblemKind kind, size_t step, const char *member, const char *given,
        const char *allowed)
{
  char path[SY_PROBLEM_PATH_MAX];
  SyText text = { path, sizeof path, 0 };

  sy_text_add (&text, "$.steps[");
  sy_text_add_number (&text, (double) step);
  sy_text_add (&text, "].");
  sy_text_add (&text, member);
  sy_problems_add (problems, kind, 0, path, given, allowed, "");
}

static bool
is_name (const char *text, size_t most)
{
  return sy_text_says (text) && strlen (text) <= most && !sy_rig_name_hides (text);
}

static bool
has_label_before (const SyChangeoverStep *steps, size_t i)
{
  for (size_t k = 0; k < i; k++)
    if (steps[k].label != NULL && sy_text_same (steps[k].label, steps[i].label))
      return true;
  return false;
}

static void
check_label (const SyChangeoverStep *steps, size_t i, SyProblems *problems)
{
  if (steps[i].label == NULL)
    return; /* said by the reader */
  if (!is_name (steps[i].label, SY_STEP_LABEL_MAX))
    refuse (problems, SY_PROBLEM_SIZE, i, "label", steps[i].label,
            "a name of 1 to 80 bytes, without control characters");
  else if (has_label_before (steps, i))
    refuse (problems, SY_PROBLEM_DUPLICATE, i, "label", steps[i].label, "a name that no other step has");
}

static void
check_lists (const SyChangeoverFacts *facts, size_t i, SyProblems *problems)
{
  const SyChangeoverStep *step = (const SyChangeoverStep *) facts->steps.items + i;
  const char *const *by = step->by.items, *const *after = step->after.items;

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
}

static void
check_persons (const SyChangeoverFacts *facts, size_t i, SyProblems *problems)
{
  const SyChangeoverStep *step = (const SyChangeoverStep *) facts->steps.items + i;
  int persons = sy_step_persons (step), own = sy_part_persons (&step->part);
  char given[SY_NUMBER_TEXT_MAX];

  sy_number_print (persons, given);
  if (persons > (int) facts->people.count)
    refuse (problems, SY_PROBLEM_CONFLICT, i, "persons", given, "no more than there are people");
  else if (persons < (int) step->by.count)
    refuse (problems, SY_PROBLEM_CONFLICT, i, "persons", given, "at least as many as are named in by");
  else if (persons < own)
    refuse (problems, SY_PROBLEM_CONFLICT, i, "persons", given, "at least as many as move the load by its own facts");
}

static void
check_part (const SyChangeoverStep *step, size_t i, SyProblems *problems)
{
  if (step->part.method == NULL)
    return;
  const SyCommonFacts *common = step->part.facts;
  /* what a die weighs, or that a sling is in date, says nothing of how a load is moved */
  if (strcmp (step->part.method->item_kind, "task") != 0)
    refuse (problems, SY_PROBLEM_CONFLICT, i, "facts.method", step->part.method->id,
            "a method by which a load is moved");
  if (common->as_of != NULL)
    refuse (problems, SY_PROBLEM_CONFLICT, i, "facts.as_of", common->as_of,
            "nothing: the day of the whole change holds");
}

static void
check_step (const SyChangeoverFacts *facts, size_t i, SyProblems *problems)
{
  const SyChangeoverStep *steps = facts->steps.items, *step = &steps[i];

  check_label (steps, i, problems);
  if (step->when == SY_WHEN_RUNNING && (step->kind == SY_STEP_ISOLATE || step->kind == SY_STEP_BLOCK))
    refuse (problems, SY_PROBLEM_CONFLICT, i, "when", "running",
            "stopped: an isolated or blocked machine does not run");
  check_part (step, i, problems);
  if (facts->people.count == 0)
    return;
  check_lists (facts, i, problems);
  check_persons (facts, i, problems);
}

void
sy_changeover_check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyChangeoverFacts *facts = data;
  const char *const *people = facts->people.items;

  (void) units;
  if (facts->steps.given && facts->steps.count == 0)
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.steps", "an empty list", "at least one step", "");
  if (facts->people.given && facts->people.count == 0)
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.people", "nobody", "at least one person", "");
  for (size_t k = 0; k < facts->people.count; k++)
    if (!is_name (people[k], SY_PERSON_LABEL_MAX))
      sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.people", people[k],
                       "names of 1 to 40 bytes, without control characters", "");
    else if (sy_changeover_find_person (facts, people[k]) != (int) k)
      sy_problems_add (problems, SY_PROBLEM_DUPLICATE, 0, "$.people", people[k], "each name once", "");
  for (size_t i = 0; i < facts->steps.count; i++)
    check_step (facts, i, problems);
}
