/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-changeover-facts.h"

/* The fields of a die change. */

#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define UP_TO(top) { SY_BOUND_CLOSED, { top, top } }

const SyChoice sy_step_kind_choices[SY_N_STEP_KINDS] = {
  [SY_STEP_ISOLATE] = { "isolate", N_ ("Stop and isolate"), N_ ("the energy is locked off") },
  [SY_STEP_BLOCK] = { "block", N_ ("Block the slide"), N_ ("with blocks rated for slide and upper die") },
  [SY_STEP_UNCLAMP] = { "unclamp", N_ ("Unclamp"), NULL },
  [SY_STEP_DISCONNECT] = { "disconnect", N_ ("Disconnect"), N_ ("air, oil, water, electricity, sensors") },
  [SY_STEP_DRAW] = { "draw", N_ ("Draw"), N_ ("slide the die out of or into the press") },
  [SY_STEP_LIFT] = { "lift", N_ ("Lift"), N_ ("by hand or with a hoist") },
  [SY_STEP_CARRY] = { "carry", N_ ("Carry"), N_ ("by hand, alone or together") },
  [SY_STEP_ROLL] = { "roll", N_ ("Roll"), N_ ("on a cart or on rollers") },
  [SY_STEP_TRUCK] = { "truck", N_ ("Truck"), N_ ("on the forks") },
  [SY_STEP_TURN] = { "turn", N_ ("Turn over"), NULL },
  [SY_STEP_STORE] = { "store", N_ ("Store"), N_ ("put the old die away") },
  [SY_STEP_BRING] = { "bring", N_ ("Bring"), N_ ("fetch the new die") },
  [SY_STEP_SET] = { "set", N_ ("Set"), N_ ("place the die where it is clamped") },
  [SY_STEP_CLAMP] = { "clamp", N_ ("Clamp"), NULL },
  [SY_STEP_ADJUST] = { "adjust", N_ ("Adjust"), N_ ("shut height, feed, sensors") },
  [SY_STEP_FIRST_OFF] = { "first-off", N_ ("First part off"), N_ ("made and checked") },
  [SY_STEP_RELEASE] = { "release", N_ ("Release to production"), NULL },
};

const SyChoice sy_check_choices[SY_N_CHECKS] = {
  [SY_CHECK_ISOLATED] = { "isolated", N_ ("Energy isolated, locked and tried"), NULL },
  [SY_CHECK_BLOCKED] = { "slide-blocked", N_ ("Slide blocked; blocks rated for slide and upper die"),
                          N_ ("also where the slide stands down on the closed die") },
  [SY_CHECK_PRESSURE] = { "pressure-let-down", N_ ("Springs, gas cylinders and pressure let down"), NULL },
  [SY_CHECK_HOT] = { "not-hot", N_ ("Die cool enough to touch, or guarded"), NULL },
  [SY_CHECK_TIED] = { "halves-tied", N_ ("Halves tied to each other"), NULL },
  [SY_CHECK_NOBODY_UNDER] = { "nobody-under", N_ ("Nobody under the load or in its path"), NULL },
  [SY_CHECK_TAG_LINE] = { "tag-line", N_ ("Tag line on the load"), NULL },
  [SY_CHECK_TRIAL_LIFT] = { "trial-lift", N_ ("Trial lift by a hand's breadth, then a look"), NULL },
  [SY_CHECK_WALKERS] = { "walkers-kept-out", N_ ("Walkers kept out of the path while it moves"), NULL },
  [SY_CHECK_TORQUED] = { "clamps-torqued", N_ ("Clamps tightened to their torque"), NULL },
  [SY_CHECK_BLOCKS_OUT] = { "blocks-counted-out", N_ ("Blocks taken out and counted"), NULL },
  [SY_CHECK_GUARDS] = { "guards-proved", N_ ("Guards and stops proved"), NULL },
};

static const SyChoice goes_choices[] = {
  { "out", N_ ("Comes out"), NULL },
  { "in", N_ ("Goes in"), NULL },
};

static const SyChoice when_choices[] = {
  { "stopped", N_ ("Stopped"), NULL },
  { "running", N_ ("Running"), NULL },
};

static const SyChoice without_choices[SY_N_WITHOUT] = {
  [SY_WITHOUT_SLIDE] = { "slide", N_ ("No slide that could come down"), NULL },
  [SY_WITHOUT_PRESSURE] = { "pressure", N_ ("No springs, gas cylinders or pressure"), NULL },
  [SY_WITHOUT_HEAT] = { "heat", N_ ("Nothing hot"), NULL },
  [SY_WITHOUT_HALVES] = { "halves", N_ ("Dies of one piece, without halves"), NULL },
};

static const SyField die_members[] = {
  { .name = "label", .label = N_ ("Die"), .type = SY_MEMBER_TEXT, .help = N_ ("As it is painted on it."),
    .offset = offsetof (SyChangeoverDie, label), .required = true },
  { .name = "goes", .label = N_ ("Out or in"), .type = SY_MEMBER_CHOICE, .offset = offsetof (SyChangeoverDie, goes),
    .choices = goes_choices, .n_choices = SY_LEN (goes_choices) },
  { .name = "mass", .label = N_ ("Mass"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_MASS,
    .offset = offsetof (SyChangeoverDie, mass), .low = OVER_ZERO, .range_source = "a mass is over 0" },
};

static const SyField step_members[] = {
  { .name = "label", .label = N_ ("Step"), .type = SY_MEMBER_TEXT, .help = N_ ("What is done, in a few words."),
    .offset = offsetof (SyChangeoverStep, label), .required = true },
  { .name = "kind", .label = N_ ("Kind"), .type = SY_MEMBER_CHOICE, .help = N_ ("Says which checks it must have."),
    .offset = offsetof (SyChangeoverStep, kind), .choices = sy_step_kind_choices, .n_choices = SY_N_STEP_KINDS },
  { .name = "when", .label = N_ ("Machine"), .type = SY_MEMBER_CHOICE,
    .offset = offsetof (SyChangeoverStep, when), .choices = when_choices, .n_choices = SY_LEN (when_choices),
    .required = true },
  { .name = "minutes", .label = N_ ("Minutes"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_MINUTES,
    .offset = offsetof (SyChangeoverStep, minutes), .required = true, .low = FROM_ZERO, .high = UP_TO (1440),
    .range_source = "a day" },
  { .name = "persons", .label = N_ ("Persons"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_COUNT, .whole = true,
    .offset = offsetof (SyChangeoverStep, persons), .low = FROM_ZERO, .high = UP_TO (SY_CHANGEOVER_PEOPLE_MAX),
    .range_source = "common practice, no source", .default_text = N_ ("those named, those its own facts speak of, or 1") },
  { .name = "by", .label = N_ ("By whom"), .type = SY_MEMBER_TEXTS,
    .help = N_ ("Which of the people; empty: any."), .offset = offsetof (SyChangeoverStep, by),
    .max_items = SY_CHANGEOVER_PEOPLE_MAX, .default_text = N_ ("any of them") },
  { .name = "after", .label = N_ ("After"), .type = SY_MEMBER_TEXTS,
    .help = N_ ("Steps that must be over first, by name."), .offset = offsetof (SyChangeoverStep, after),
    .max_items = 8, .seldom = true, .default_text = N_ ("the step before it") },
  { .name = "checks", .label = N_ ("Checks made"), .type = SY_MEMBER_SET, .offset = offsetof (SyChangeoverStep, checks),
    .choices = sy_check_choices, .n_choices = SY_N_CHECKS },
  { .name = "facts", .label = N_ ("How the load is moved"), .type = SY_MEMBER_FACTS,
    .help = N_ ("Assessed by a method of its own."), .offset = offsetof (SyChangeoverStep, part) },
};

const SyField sy_changeover_fields[SY_N_CHANGEOVER_FIELDS] = {
  { .name = "machine", .label = N_ ("Machine"), .type = SY_MEMBER_TEXT, .help = N_ ("Press, line or stand."),
    .offset = offsetof (SyChangeoverFacts, machine) },
  { .name = "without", .label = N_ ("What is not there"), .type = SY_MEMBER_SET,
    .help = N_ ("Checks about it are not asked for."), .offset = offsetof (SyChangeoverFacts, without),
    .choices = without_choices, .n_choices = SY_N_WITHOUT },
  { .name = "dies", .label = N_ ("Dies"), .type = SY_MEMBER_LIST, .item_label = N_ ("Die"),
    .offset = offsetof (SyChangeoverFacts, dies), .members = die_members, .n_members = SY_LEN (die_members),
    .group_size = sizeof (SyChangeoverDie), .max_items = SY_CHANGEOVER_DIES_MAX },
  { .name = "people", .label = N_ ("People"), .type = SY_MEMBER_TEXTS, .whole = true,
    .help = N_ ("Who is there, by name or by number; no step takes more."),
    .offset = offsetof (SyChangeoverFacts, people), .max_items = SY_CHANGEOVER_PEOPLE_MAX, .required = true },
  { .name = "changes_per_year", .label = N_ ("Changes a year"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_COUNT,
    .offset = offsetof (SyChangeoverFacts, changes_per_year), .low = FROM_ZERO, .high = UP_TO (100000),
    .range_source = "common practice, no source" },
  { .name = "steps", .label = N_ ("Steps"), .type = SY_MEMBER_LIST, .item_label = N_ ("Step"),
    .offset = offsetof (SyChangeoverFacts, steps), .members = step_members, .n_members = SY_LEN (step_members),
    .group_size = sizeof (SyChangeoverStep), .max_items = SY_CHANGEOVER_STEPS_MAX, .required = true },
};

bool
sy_step_handles (SyStepKind kind)
{
  static const bool handles[SY_N_STEP_KINDS] = {
    [SY_STEP_DRAW] = true, [SY_STEP_LIFT] = true,  [SY_STEP_CARRY] = true, [SY_STEP_ROLL] = true, [SY_STEP_TRUCK] = true,
    [SY_STEP_TURN] = true, [SY_STEP_STORE] = true, [SY_STEP_BRING] = true, [SY_STEP_SET] = true,
  };

  return handles[kind];
}

bool
sy_method_is_by_hand (const SyMethod *method)
{
  return !method->by_capacity && strcmp (method->item_kind, "task") == 0;
}

int
sy_part_persons (const SyPartFacts *part)
{
  size_t offset;

  if (part->method == NULL || !sy_method_is_by_hand (part->method))
    return 0;
  const SyField *persons = sy_method_field (part->method, "persons", &offset);
  if (persons != NULL && persons->type == SY_MEMBER_NUMBER)
    {
      const SyNumber *given = (const void *) ((const char *) part->facts + offset);
      return given->given ? (int) fmin (ceil (given->value), SY_CHANGEOVER_PEOPLE_MAX + 1) : 1;
    }
  const SyField *people = sy_method_field (part->method, "people", &offset);
  if (people != NULL && people->type == SY_MEMBER_LIST)
    return (int) ((const SyList *) (const void *) ((const char *) part->facts + offset))->count;
  return 1;
}

int
sy_step_persons (const SyChangeoverStep *step)
{
  int named = (int) step->by.count, own = sy_part_persons (&step->part);

  if (step->persons.given)
    return (int) step->persons.value;
  return named > own ? named : own > 1 ? own : 1;
}
