/* SPDX-License-Identifier: MIT */
#include <stdint.h>
#include <string.h>

#include "sy-changeover-facts.h"

/*
 * Which checks a die change must have. The regulations are named as information: what a shop must do is for local
 * regulations and a competent person. Which step needs which check is common practice, no source, but for what the
 * regulations below say.
 */

static const struct
{
  const char *id, *regulation;
  bool from_memory;
} said[SY_N_CHECKS] = {
  [SY_CHECK_ISOLATED] = { "check-isolated",
                          "29 CFR 1910.147 (control of hazardous energy); UK PUWER 1998 reg. 19 (both from memory)", true },
  [SY_CHECK_BLOCKED] = { "check-slide-blocked",
                         "California Title 8 section 4199; 29 CFR 1910.217(d)(9)(iv) and that blocks bear slide and upper "
                         "die, from memory", true },
  [SY_CHECK_PRESSURE] = { "check-pressure", "29 CFR 1910.147(d)(5): stored energy (from memory)", true },
  [SY_CHECK_HOT] = { "check-hot", "UK PUWER 1998 reg. 13: high temperature (from memory)", true },
  [SY_CHECK_TIED] = { "check-halves-tied", "common practice, no source", false },
  [SY_CHECK_NOBODY_UNDER] = { "check-nobody-under",
                              "WAC 296-24-29419, as 29 CFR 1910.184(c): keep clear of the load", false },
  [SY_CHECK_TAG_LINE] = { "check-tag-line", "common practice, no source", false },
  [SY_CHECK_TRIAL_LIFT] = { "check-trial-lift",
                            "Queensland guide: watch the equipment on a first lift; 29 CFR 1910.179(n): a few inches "
                            "first (from memory)", true },
  [SY_CHECK_WALKERS] = { "check-walkers",
                         "UK Workplace Regulations 1992 reg. 17; powered trucks: 29 CFR 1910.178(m)-(n) (both from "
                         "memory)", true },
  [SY_CHECK_TORQUED] = { "check-torqued", "29 CFR 1910.217(d)(7): die fastening (from memory)", true },
  [SY_CHECK_BLOCKS_OUT] = { "check-blocks-counted", "never to be cycled against the blocks (from memory)", true },
  [SY_CHECK_GUARDS] = { "check-guards",
                        "OSHA letter of 9 January 1981: setters are protected as operators are; UK PUWER 1998 regs 32-33 "
                        "(from memory)", true },
};

#define BIT(check) SY_CHECK_BIT (SY_CHECK_##check)
/* With hands or a hoist inside the press while it stands. */
#define IN_PRESS (BIT (ISOLATED) | BIT (BLOCKED) | BIT (PRESSURE))
/* What hangs. */
#define HOISTED (BIT (NOBODY_UNDER) | BIT (TAG_LINE) | BIT (TRIAL_LIFT))
/* Before it strokes again. */
#define STROKE (BIT (TORQUED) | BIT (BLOCKS_OUT) | BIT (GUARDS))

static const struct
{
  SyStepNeeds always, stopped; /* with the machine stopped: besides */
  bool in_press;               /* with the machine stopped: hands are between slide and bolster */
} kinds[SY_N_STEP_KINDS] = {
  [SY_STEP_ISOLATE] = { { BIT (ISOLATED), 0 }, { 0, 0 }, false },
  [SY_STEP_BLOCK] = { { BIT (BLOCKED), BIT (ISOLATED) }, { 0, 0 }, true },
  [SY_STEP_UNCLAMP] = { { 0, BIT (TIED) }, { 0, IN_PRESS }, true },
  [SY_STEP_DISCONNECT] = { { 0, BIT (PRESSURE) }, { 0, BIT (ISOLATED) }, true },
  [SY_STEP_DRAW] = { { 0, BIT (HOT) | BIT (TIED) }, { 0, IN_PRESS }, true },
  [SY_STEP_LIFT] = { { 0, BIT (HOT) | BIT (TIED) }, { 0, IN_PRESS }, true },
  [SY_STEP_CARRY] = { { 0, BIT (HOT) }, { 0, 0 }, false },
  [SY_STEP_ROLL] = { { BIT (WALKERS), BIT (HOT) }, { 0, 0 }, false },
  [SY_STEP_TRUCK] = { { BIT (WALKERS) | BIT (NOBODY_UNDER), BIT (TIED) }, { 0, 0 }, false },
  [SY_STEP_TURN] = { { 0, BIT (HOT) | BIT (TIED) }, { 0, 0 }, false },
  [SY_STEP_STORE] = { { 0, BIT (HOT) }, { 0, 0 }, false },
  [SY_STEP_BRING] = { { 0, 0 }, { 0, 0 }, false },
  [SY_STEP_SET] = { { 0, BIT (TIED) }, { 0, IN_PRESS }, true },
  [SY_STEP_CLAMP] = { { BIT (TORQUED), 0 }, { 0, BIT (ISOLATED) | BIT (BLOCKED) }, true },
  [SY_STEP_ADJUST] = { { 0, 0 }, { 0, BIT (ISOLATED) | BIT (BLOCKED) }, true },
  [SY_STEP_FIRST_OFF] = { { 0, STROKE }, { 0, 0 }, false },
  [SY_STEP_RELEASE] = { { 0, STROKE }, { 0, 0 }, false },
};

/* By how the load is moved, whatever the step is called. */
static SyStepNeeds
needs_of_method (const SyChangeoverStep *step)
{
  const SyMethod *method = step->part.method;
  bool lifted = step->kind == SY_STEP_LIFT || step->kind == SY_STEP_TURN;

  if (method == NULL)
    return (SyStepNeeds) { lifted ? HOISTED : 0, 0 };
  if (strcmp (method->id, "rigged-lift") == 0)
    return (SyStepNeeds) { HOISTED, BIT (TIED) };
  if (strcmp (method->id, "truck") == 0)
    return (SyStepNeeds) { BIT (WALKERS) | BIT (NOBODY_UNDER), BIT (TIED) };
  if (strcmp (method->id, "cart") == 0)
    return (SyStepNeeds) { BIT (WALKERS), 0 };
  return (SyStepNeeds) { lifted && !sy_method_is_by_hand (method) ? HOISTED : 0, 0 };
}

SyStepNeeds
sy_step_needs (const SyChangeoverStep *step)
{
  SyStepNeeds needs = kinds[step->kind].always, moved = needs_of_method (step);

  needs.here |= moved.here;
  needs.before |= moved.before;
  if (step->when == SY_WHEN_STOPPED)
    {
      needs.here |= kinds[step->kind].stopped.here;
      needs.before |= kinds[step->kind].stopped.before;
    }
  return needs;
}

unsigned long
sy_step_checks (const SyChangeoverStep *step)
{
  static const struct
  {
    const char *id;
    unsigned long bits;
  } known[] = {
    { "halves-tied", BIT (TIED) | BIT (PRESSURE) }, /* a lift plan asks for both in one */
    { "way-clear", BIT (NOBODY_UNDER) },
    { "tag-line", BIT (TAG_LINE) },
    { "trial-lift", BIT (TRIAL_LIFT) },
  };
  unsigned long bits = step->checks.bits;
  size_t offset;
  const SyMethod *method = step->part.method;
  const SyField *field = method != NULL ? sy_method_field (method, "checks", &offset) : NULL;

  if (field == NULL || field->type != SY_MEMBER_SET)
    return bits;
  const SySet *own = (const void *) ((const char *) step->part.facts + offset);
  for (size_t i = 0; i < field->n_choices; i++)
    for (size_t k = 0; k < SY_LEN (known); k++)
      if ((own->bits & 1ul << i) && strcmp (field->choices[i].id, known[k].id) == 0)
        bits |= known[k].bits;
  return bits;
}

const char *
sy_check_regulation (SyCheck check, bool *from_memory)
{
  *from_memory = said[check].from_memory;
  return said[check].regulation;
}

/* The plan as it is walked through. A step that is neither before nor after another may be at the same time. */
typedef struct
{
  const SyChangeoverStep *steps;
  size_t n;
  uint64_t before[SY_CHANGEOVER_STEPS_MAX + 1]; /* bit k: step k is over when it begins; [n]: the end of the change */
  unsigned long made[SY_CHANGEOVER_STEPS_MAX];
  unsigned long undone[SY_CHANGEOVER_STEPS_MAX]; /* by it: no longer so after it, nor to be relied on beside it */
} Plan;

_Static_assert (SY_CHANGEOVER_STEPS_MAX <= 64, "a bit for every step");

static bool
is_in_press (const SyChangeoverStep *step)
{
  return step->kind >= 0 && step->when == SY_WHEN_STOPPED && kinds[step->kind].in_press;
}

static bool
strokes (const SyChangeoverStep *step)
{
  return step->kind == SY_STEP_FIRST_OFF || step->kind == SY_STEP_RELEASE;
}

static unsigned long
undone_by (const SyChangeoverStep *step)
{
  unsigned long bits = strokes (step) ? IN_PRESS : 0;

  if (step->checks.bits & BIT (BLOCKS_OUT))
    bits |= BIT (BLOCKED);
  if (step->checks.bits & BIT (BLOCKED))
    bits |= BIT (BLOCKS_OUT);
  if (is_in_press (step))
    bits |= BIT (GUARDS);
  if (is_in_press (step) && (step->kind == SY_STEP_UNCLAMP || step->kind == SY_STEP_DRAW || step->kind == SY_STEP_SET))
    bits |= BIT (TORQUED);
  return bits;
}

static void
lay_out (const SyChangeoverFacts *facts, Plan *plan)
{
  plan->steps = facts->steps.items;
  plan->n = facts->steps.count;
  for (size_t i = 0; i < plan->n; i++)
    {
      const char *const *after = plan->steps[i].after.items;

      plan->made[i] = sy_step_checks (&plan->steps[i]);
      plan->undone[i] = undone_by (&plan->steps[i]);
      plan->before[i] = 0;
      if (!plan->steps[i].after.given && i > 0)
        plan->before[i] = plan->before[i - 1] | UINT64_C (1) << (i - 1);
      for (size_t k = 0; k < plan->steps[i].after.count; k++)
        for (size_t j = 0; j < i; j++)
          if (strcmp (plan->steps[j].label, after[k]) == 0)
            plan->before[i] |= plan->before[j] | UINT64_C (1) << j;
    }
  plan->before[plan->n] = UINT64_MAX;
}

static bool
comes_before (const Plan *plan, size_t first, size_t then)
{
  return (plan->before[then] >> first & 1) != 0;
}

/* Whether a check made in @step still holds at @at: nothing undoes it that is not over before it or begins after @at. */
static bool
still_holds (const Plan *plan, size_t step, size_t at, unsigned long check)
{
  for (size_t i = 0; i < plan->n; i++)
    if ((plan->undone[i] & check) && i != step && i != at && !comes_before (plan, i, step)
        && !(at < plan->n && comes_before (plan, at, i)))
      return false;
  return true;
}

static bool
was_made (const Plan *plan, size_t at, unsigned long check)
{
  for (size_t i = 0; i < plan->n; i++)
    if ((plan->made[i] & check) && (i == at || comes_before (plan, i, at)) && still_holds (plan, i, at, check))
      return true;
  return false;
}

/* Whether blocks may be in: put in before @at or at the same time. */
static bool
has_blocks (const Plan *plan, size_t at)
{
  for (size_t i = 0; i < plan->n; i++)
    if (((plan->made[i] & BIT (BLOCKED)) || plan->steps[i].kind == SY_STEP_BLOCK)
        && !(at < plan->n && comes_before (plan, at, i)))
      return true;
  return false;
}

static unsigned long
not_there (const SyChangeoverFacts *facts)
{
  static const unsigned long about[SY_N_WITHOUT] = {
    [SY_WITHOUT_SLIDE] = BIT (BLOCKED) | BIT (BLOCKS_OUT),
    [SY_WITHOUT_PRESSURE] = BIT (PRESSURE),
    [SY_WITHOUT_HEAT] = BIT (HOT),
    [SY_WITHOUT_HALVES] = BIT (TIED),
  };
  unsigned long bits = 0;

  for (int i = 0; i < SY_N_WITHOUT; i++)
    bits |= facts->without.bits & 1ul << i ? about[i] : 0;
  return bits;
}

static void
say_missing (SySink *sink, unsigned long checks, const char *subject)
{
  for (int k = 0; k < SY_N_CHECKS; k++)
    if (checks & SY_CHECK_BIT (k))
      sy_note_source (sy_sink_note_on (sink, said[k].id, SY_NOTE_NEEDED, subject), NULL, said[k].regulation,
                      said[k].from_memory);
}

/* What is needed before @at and was not made, or does not hold any more. */
static unsigned long
missing_before (const Plan *plan, size_t at, unsigned long needed)
{
  unsigned long missing = 0;

  if ((needed & BIT (BLOCKS_OUT)) && !has_blocks (plan, at))
    needed &= ~BIT (BLOCKS_OUT);
  for (int k = 0; k < SY_N_CHECKS; k++)
    if ((needed & SY_CHECK_BIT (k)) && !was_made (plan, at, SY_CHECK_BIT (k)))
      missing |= SY_CHECK_BIT (k);
  return missing;
}

/* What the change as a whole must have, also where no step of it would carry the check. */
static void
say_whole (const Plan *plan, unsigned long unsaid, SySink *sink)
{
  const SyChangeoverStep *worked = NULL, *stopped = NULL;
  unsigned long made = 0;

  for (size_t i = 0; i < plan->n; i++)
    {
      made |= plan->made[i];
      if (is_in_press (&plan->steps[i]))
        worked = &plan->steps[i];
      if (stopped == NULL && plan->steps[i].when == SY_WHEN_STOPPED && !strokes (&plan->steps[i]))
        stopped = &plan->steps[i];
    }
  if (stopped != NULL && (unsaid & BIT (ISOLATED)) && !(made & BIT (ISOLATED)))
    say_missing (sink, BIT (ISOLATED), stopped->label);
  if (worked != NULL)
    say_missing (sink, missing_before (plan, plan->n, STROKE & unsaid), worked->label);
}

void
sy_changeover_missing_checks (const SyChangeoverFacts *facts, SySink *sink)
{
  Plan plan;
  const unsigned long asked = ~not_there (facts);
  unsigned long unsaid = asked; /* of those that hold for several steps, each is said of the first that lacks it */

  lay_out (facts, &plan);
  for (size_t i = 0; i < plan.n; i++)
    {
      if (plan.steps[i].kind < 0)
        continue;
      SyStepNeeds needs = sy_step_needs (&plan.steps[i]);
      unsigned long missing = needs.here & asked & ~plan.made[i];
      missing |= missing_before (&plan, i, needs.before & unsaid & ~needs.here);
      say_missing (sink, missing, plan.steps[i].label);
      unsaid &= ~missing;
    }
  say_whole (&plan, unsaid, sink);
}
