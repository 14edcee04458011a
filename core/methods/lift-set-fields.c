/* SPDX-License-Identifier: MIT */
#include "sy-lift-set-facts.h"

/* The fields of a set of lifts and of a rota. */

#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define MANUAL "NIOSH 94-110"

static const SyChoice combine_choices[] = {
  [SY_COMBINE_COMPOSITE] = { "composite", N_ ("Composite"), N_ ("different lifts mixed with one another: CLI") },
  [SY_COMBINE_SEQUENCE] = { "sequence", N_ ("Sequence"), N_ ("one task after the other, a rotation: SLI") },
  [SY_COMBINE_VARIABLE] = { "variable", N_ ("Variable"), N_ ("many lifts that hardly repeat, sampled: VLI") },
};

#define MINUTES(name_, at_, label_, help_, low_)                                                                     \
  .name = name_, .label = label_, .help = help_, .type = SY_MEMBER_NUMBER, .kind = SY_KIND_MINUTES,                  \
  .offset = offsetof (SyLiftSetFacts, times.at_), .low = low_, .range_source = MANUAL " 1.2"

static const SyField turn_members[] = {
  { .name = "lift", .label = N_ ("Lift"), .help = N_ ("Its name, or its number in the list."), .type = SY_MEMBER_TEXT,
    .offset = offsetof (SyLiftTurn, lift), .required = true },
  { .name = "minutes", .label = N_ ("Minutes"), .help = N_ ("Of lifting in one go."), .type = SY_MEMBER_NUMBER,
    .kind = SY_KIND_MINUTES, .offset = offsetof (SyLiftTurn, minutes), .required = true, .low = OVER_ZERO,
    .range_source = MANUAL " 1.2" },
  { .name = "recovery", .label = N_ ("Light work after it"), .help = N_ ("Minutes without lifting right after."),
    .type = SY_MEMBER_NUMBER, .kind = SY_KIND_MINUTES, .offset = offsetof (SyLiftTurn, recovery), .low = FROM_ZERO,
    .range_source = MANUAL " 1.2", .default_text = N_ ("none") },
};

static const SyField person_members[] = {
  { .name = "label", .label = N_ ("Person"), .help = N_ ("Who, or which place in the rota."), .type = SY_MEMBER_TEXT,
    .offset = offsetof (SyLiftPerson, label), .required = true },
  { .name = "turns", .label = N_ ("Turns"), .help = N_ ("In the order of the day."), .type = SY_MEMBER_LIST,
    .offset = offsetof (SyLiftPerson, turns), .members = turn_members, .n_members = SY_LEN (turn_members),
    .group_size = sizeof (SyLiftTurn), .max_items = SY_LIFT_TURNS_MAX, .item_label = N_ ("Turn"), .required = true },
};

const SyField sy_lift_set_fields[] = {
  { .name = "combine", .label = N_ ("How the lifts belong together"), .type = SY_MEMBER_CHOICE,
    .offset = offsetof (SyLiftSetFacts, combine), .choices = combine_choices, .n_choices = SY_LEN (combine_choices),
    .required = true },
  { .name = "lifts", .label = N_ ("Lifts"), .help = N_ ("Up to 60 of a composite or a sequence, up to 30,000 of a sample."),
    .type = SY_MEMBER_LIST, .offset = offsetof (SyLiftSetFacts, lifts), .members = sy_lift_of_set_fields,
    .n_members = SY_N_LIFT_OF_SET_FIELDS, .group_size = sizeof (SyLiftOfSet), .max_items = SY_LIFT_VARIABLE_MAX,
    .item_label = N_ ("Lift"), .required = true },
  { .name = "frequency", .symbol = "F", .label = N_ ("Pace of all lifts"),
    .help = N_ ("Of a sample whose lifts say no pace of their own: all together, shared equally."), .type = SY_MEMBER_NUMBER,
    .kind = SY_KIND_FREQUENCY, .offset = offsetof (SyLiftSetFacts, frequency), .low = FROM_ZERO,
    .range_source = MANUAL " 1.2" },
  { .name = "duration", .label = N_ ("Duration"), .help = N_ ("Of all lifts together."), .type = SY_MEMBER_CHOICE,
    .offset = offsetof (SyLiftSetFacts, times.duration), .choices = sy_lift_duration_choices,
    .n_choices = SY_LEN (sy_lift_duration_choices) },
  { MINUTES ("work_minutes", work_minutes, N_ ("Work"), N_ ("Minutes of lifting in one go."), OVER_ZERO) },
  { MINUTES ("recovery_minutes", recovery_minutes, N_ ("Light work after it"),
             N_ ("Minutes without lifting before it starts again."), FROM_ZERO) },
  { MINUTES ("shift_minutes", shift_minutes, N_ ("Length of the shift"), N_ ("The pattern repeats until it is full."),
             OVER_ZERO),
    .default_text = N_ ("480 min") },
  { .name = "sessions", .label = N_ ("Sessions of the day"), .type = SY_MEMBER_LIST,
    .help = N_ ("Work and the light work after it, in the order of the day."),
    .offset = offsetof (SyLiftSetFacts, times.sessions), .members = sy_lift_session_members,
    .n_members = SY_LEN (sy_lift_session_members), .group_size = sizeof (SyLiftSession),
    .max_items = SY_LIFT_SESSIONS_MAX },
  { .name = "categories", .label = N_ ("Categories"), .help = N_ ("How many the lifts of a sample are put into."),
    .type = SY_MEMBER_NUMBER, .kind = SY_KIND_COUNT, .offset = offsetof (SyLiftSetFacts, categories), .whole = true,
    .low = { SY_BOUND_CLOSED, { 1, 1 } },
    .high = { SY_BOUND_CLOSED, { SY_LIFT_CATEGORIES_MAX, SY_LIFT_CATEGORIES_MAX } },
    .range_source = "Waters et al. 2010, the variable lifting index: one to nine", .default_text = N_ ("6") },
  { .name = "rota", .label = N_ ("Rota"), .help = N_ ("Who does what for how long."), .type = SY_MEMBER_LIST,
    .offset = offsetof (SyLiftSetFacts, rota), .members = person_members, .n_members = SY_LEN (person_members),
    .group_size = sizeof (SyLiftPerson), .max_items = SY_LIFT_PERSONS_MAX, .item_label = N_ ("Person") },
  { .name = "assigned", .label = N_ ("Who may be assigned"), .type = SY_MEMBER_CHOICE,
    .help = N_ ("Sets the reference mass; of lifts that do not say their own."),
    .offset = offsetof (SyLiftSetFacts, assigned), .choices = sy_lift_assigned_choices,
    .n_choices = SY_LEN (sy_lift_assigned_choices), .default_text = N_ ("the policy's") },
  { .name = "conditions", .label = N_ ("Conditions"), .type = SY_MEMBER_SET,
    .help = N_ ("Ask about each, of lifts that do not say their own. The equation does not hold where one applies."),
    .offset = offsetof (SyLiftSetFacts, conditions), .choices = sy_lift_condition_choices,
    .n_choices = SY_LEN (sy_lift_condition_choices), .default_text = N_ ("not asked") },
};
