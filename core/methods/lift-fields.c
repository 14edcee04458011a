/* SPDX-License-Identifier: MIT */
#include "sy-lift-facts.h"

/* The fields of one lift, of a lift by itself and of one of a set. */

#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define FROM_ONE { SY_BOUND_CLOSED, { 1, 1 } }
#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define MANUAL "NIOSH 94-110"

static const SyField load_members[] = {
  { .name = "typical", .symbol = "L", .label = N_ ("Typical load"), .type = SY_MEMBER_NUMBER,
    .kind = SY_KIND_MASS, .help = N_ ("Weigh several; the average."),
    .offset = offsetof (SyLiftFacts, load.typical), .required = true, .low = OVER_ZERO,
    .range_source = MANUAL " 2.4.1" },
  { .name = "heaviest", .symbol = "L", .label = N_ ("Heaviest load"), .type = SY_MEMBER_NUMBER,
    .kind = SY_KIND_MASS, .help = N_ ("The heaviest that is handled here; the verdict is by this."),
    .offset = offsetof (SyLiftFacts, load.heaviest), .required = true, .low = OVER_ZERO,
    .range_source = MANUAL " 2.4.1" },
};

#define END_MEMBERS(name_)                                                                              \
  static const SyField name_[] = {                                                                      \
    { .name = "H", .symbol = "H", .label = N_ ("Reach"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_REACH, \
      .help = N_ ("Mid-point between the ankles to mid-point of the grip, along the floor."),           \
      .offset = offsetof (SyLiftEndFacts, H), .required = true, .low = OVER_ZERO,                       \
      .range_source = MANUAL " 1.3.1" },                                                                \
    { .name = "V", .symbol = "V", .label = N_ ("Height of the hands"), .type = SY_MEMBER_NUMBER,        \
      .kind = SY_KIND_REACH, .help = N_ ("Floor to mid-point of the grip."),                            \
      .offset = offsetof (SyLiftEndFacts, V), .required = true, .low = FROM_ZERO,                       \
      .range_source = MANUAL " 1.3.2" },                                                                \
    { .name = "A", .symbol = "A", .label = N_ ("Twist"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_ANGLE, \
      .help = N_ ("Angle between straight ahead and the hands, seen from above."),                      \
      .offset = offsetof (SyLiftEndFacts, A), .required = true, .low = FROM_ZERO,                       \
      .range_source = MANUAL " 1.3.4" },                                                                \
  }
END_MEMBERS (end_members);

#define HAD_MEMBERS(name_, kind_)                                                                       \
  static const SyField name_[] = {                                                                      \
    { .name = "how", .label = N_ ("How it was had"), .type = SY_MEMBER_CHOICE,                          \
      .offset = offsetof (SyHad, how), .choices = sy_how_choices, .n_choices = SY_N_HOW },              \
    { .name = "by", .label = N_ ("By whom"), .type = SY_MEMBER_TEXT, .offset = offsetof (SyHad, by) },   \
    { .name = "tolerance", .label = N_ ("Plus or minus"), .type = SY_MEMBER_NUMBER, .kind = kind_,      \
      .help = N_ ("Nineteen of twenty repeated measurements would fall within this."),                  \
      .offset = offsetof (SyHad, tolerance), .low = FROM_ZERO, .range_source = "common practice, no source", \
      .default_text = N_ ("the policy's, by how it was had") },                                         \
  }
HAD_MEMBERS (had_reach_members, SY_KIND_REACH);
HAD_MEMBERS (had_angle_members, SY_KIND_ANGLE);
HAD_MEMBERS (had_percent_members, SY_KIND_PERCENT);

#define HAD(struct_, name_, label_, members_)                                                            \
  { .name = #name_, .label = label_, .type = SY_MEMBER_GROUP, .offset = offsetof (struct_, name_),      \
    .members = members_, .n_members = SY_LEN (members_), .group_size = sizeof (SyHad),                  \
    .present_offset = offsetof (struct_, name_##_given) }

static const SyField had_end_members[] = {
  HAD (SyLiftEndHad, H, N_ ("Reach"), had_reach_members),
  HAD (SyLiftEndHad, V, N_ ("Height of the hands"), had_reach_members),
  HAD (SyLiftEndHad, A, N_ ("Twist"), had_angle_members),
};

#define HAD_AT(name_, label_, members_, size_)                                                           \
  { .name = #name_, .label = label_, .type = SY_MEMBER_GROUP,                                           \
    .offset = offsetof (SyLiftFacts, had.name_), .members = members_, .n_members = SY_LEN (members_),   \
    .group_size = size_, .present_offset = offsetof (SyLiftFacts, had.name_##_given) }

static const SyField had_members[] = {
  HAD_AT (load, N_ ("Load"), had_percent_members, sizeof (SyHad)),
  HAD_AT (origin, N_ ("Origin"), had_end_members, sizeof (SyLiftEndHad)),
  HAD_AT (destination, N_ ("Destination"), had_end_members, sizeof (SyLiftEndHad)),
  HAD_AT (travel, N_ ("Travel"), had_reach_members, sizeof (SyHad)),
  HAD_AT (frequency, N_ ("Pace"), had_percent_members, sizeof (SyHad)),
};

const SyField sy_lift_session_members[] = {
  { .name = "work", .label = N_ ("Work"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_MINUTES,
    .help = N_ ("Minutes of lifting."), .offset = offsetof (SyLiftSession, work), .required = true,
    .low = OVER_ZERO, .range_source = MANUAL " 1.2" },
  { .name = "recovery", .label = N_ ("Light work after it"), .type = SY_MEMBER_NUMBER,
    .kind = SY_KIND_MINUTES, .help = N_ ("Minutes without lifting right after; 0 when the day ends."),
    .offset = offsetof (SyLiftSession, recovery), .required = true, .low = FROM_ZERO,
    .range_source = MANUAL " 1.2" },
};

const SyChoice sy_lift_duration_choices[] = {
  { "short", N_ ("Short"), N_ ("up to 1 hour, then light work for 1.2 times as long") },
  { "moderate", N_ ("Moderate"), N_ ("up to 2 hours, then light work for 0.3 times as long") },
  { "long", N_ ("Long"), N_ ("up to 8 hours with the usual breaks") },
};

const SyChoice sy_lift_coupling_choices[] = {
  { "good", N_ ("Good"), N_ ("handles or cut-outs that fit the hand, or a part the hand wraps round") },
  { "fair", N_ ("Fair"), N_ ("poorer handles, or fingers bent square under the load") },
  { "poor", N_ ("Poor"), N_ ("bulky, slippery, sharp-edged or sagging; nothing to hold") },
};

const SyChoice sy_lift_assigned_choices[] = {
  { "any-age", N_ ("Anyone, young and old"), N_ ("reference mass 15 kg") },
  { "mixed-adults", N_ ("Adults, women and men"), N_ ("reference mass 20 kg") },
  { "men-20-45", N_ ("Men of 20 to 45 only"), N_ ("reference mass 25 kg") },
};

/* 94-110 section 1.2.3 and 1.2.4: what the equation leaves out. The ids are the notes' ids too. */
const SyChoice sy_lift_condition_choices[] = {
  { "one-hand", N_ ("Lifted with one hand"), NULL },
  { "seated-or-kneeling", N_ ("Lifted seated or kneeling"), NULL },
  { "restricted-space", N_ ("Not enough room to stand or step freely"), NULL },
  { "unstable-load", N_ ("Load that shifts, swings or spills"), NULL },
  { "wheelbarrow-or-shovel", N_ ("With a wheelbarrow or shovel"), NULL },
  { "faster-than-75cm-s", N_ ("Fast or jerked, more than about 75 cm/s (30 in/s)"), NULL },
  { "slippery-floor", N_ ("Floor slippery, oily or uneven"), NULL },
  { "temperature-or-humidity", N_ ("Hot, cold or humid, well outside 19 to 26 °C"), NULL },
  { "over-8h", N_ ("More than eight hours a day"), NULL },
  { "other-handling-over-10-percent", N_ ("Pushing, pulling, carrying or climbing for more than a tenth of the work"),
    NULL },
  { "carried-over-two-steps", N_ ("Carried more than one or two steps"), NULL },
  { "unexpected-load", N_ ("Load that may be heavier than expected, or stick and come free"), NULL },
  { "sharp-or-hot", N_ ("Sharp edges or hot surfaces"), NULL },
  { "protected-persons", N_ ("Done by someone pregnant, under age, injured or returning to work"), NULL },
};

#define NUMBER(name_, symbol_, kind_, label_, help_, low_, source_)                                      \
  .name = #name_, .symbol = symbol_, .label = label_, .help = help_, .type = SY_MEMBER_NUMBER,          \
  .kind = kind_, .offset = offsetof (SyLiftFacts, name_), .low = low_, .range_source = source_

/* Rows of the table; the facts stand at the beginning of the enclosing struct. */
#define LIFT_ROWS                                                                                                     \
  { .name = "load", .label = N_ ("Load"), .type = SY_MEMBER_GROUP, .offset = 0, .members = load_members,              \
    .n_members = SY_LEN (load_members), .group_size = sizeof (SyLiftFacts), .required = true,                         \
    .present_offset = offsetof (SyLiftFacts, load_given) },                                                           \
  { .name = "origin", .label = N_ ("Origin"), .type = SY_MEMBER_GROUP,                                                \
    .help = N_ ("Where the load is taken from."), .offset = offsetof (SyLiftFacts, origin),                           \
    .members = end_members, .n_members = SY_LEN (end_members), .group_size = sizeof (SyLiftEndFacts),                 \
    .required = true, .present_offset = offsetof (SyLiftFacts, origin_given) },                                       \
  { .name = "destination", .label = N_ ("Destination"), .type = SY_MEMBER_GROUP,                                      \
    .help = N_ ("Where the load is put down."), .offset = offsetof (SyLiftFacts, destination),                        \
    .members = end_members, .n_members = SY_LEN (end_members), .group_size = sizeof (SyLiftEndFacts),                 \
    .present_offset = offsetof (SyLiftFacts, destination_given) },                                                    \
  { NUMBER (travel, "D", SY_KIND_REACH, N_ ("Travel"), N_ ("How far up or down the hands go."), FROM_ZERO,            \
            MANUAL " 1.3.3") },                                                                                       \
  { .name = "control_at_destination", .label = N_ ("Placed with control"), .type = SY_MEMBER_BOOL,                    \
    .help = N_ ("Guided, held or set down with care, or gripped anew, where it is put down."),                        \
    .offset = offsetof (SyLiftFacts, control_at_destination),                                                         \
    .default_text = N_ ("yes, when the destination is given") },                                                      \
  { NUMBER (frequency, "F", SY_KIND_FREQUENCY, N_ ("Pace"), N_ ("Lifts a minute over the busiest 15 minutes."),       \
            FROM_ZERO, MANUAL " 1.2") },                                                                              \
  { NUMBER (lifts, NULL, SY_KIND_COUNT, N_ ("Lifts counted"), N_ ("In the minutes beside it."), FROM_ZERO,            \
            MANUAL " 1.2"),                                                                                           \
    .seldom = true },                                                                                                 \
  { NUMBER (in_minutes, NULL, SY_KIND_MINUTES, N_ ("Counted over"), N_ ("The busiest minutes, 15 at most."),          \
            OVER_ZERO, MANUAL " 1.2"),                                                                                \
    .high = { SY_BOUND_CLOSED, { 15, 15 } }, .seldom = true },                                                        \
  { .name = "duration", .label = N_ ("Duration"), .type = SY_MEMBER_CHOICE,                                           \
    .offset = offsetof (SyLiftFacts, duration), .choices = sy_lift_duration_choices,                                  \
    .n_choices = SY_LEN (sy_lift_duration_choices) },                                                                 \
  { NUMBER (work_minutes, NULL, SY_KIND_MINUTES, N_ ("Work"), N_ ("Minutes of lifting in one go."), OVER_ZERO,        \
            MANUAL " 1.2"), .seldom = true },                                                                         \
  { NUMBER (recovery_minutes, NULL, SY_KIND_MINUTES, N_ ("Light work after it"),                                      \
            N_ ("Minutes without lifting before it starts again."), FROM_ZERO, MANUAL " 1.2"), .seldom = true },      \
  { NUMBER (shift_minutes, NULL, SY_KIND_MINUTES, N_ ("Length of the shift"), N_ ("The pattern repeats until it is full."), \
            OVER_ZERO, MANUAL " 1.2"),                                                                                \
    .default_text = N_ ("480 min"), .seldom = true },                                                                 \
  { .name = "sessions", .label = N_ ("Sessions of the day"), .type = SY_MEMBER_LIST,                                  \
    .help = N_ ("Work and the light work after it, in the order of the day."),                                        \
    .offset = offsetof (SyLiftFacts, sessions), .members = sy_lift_session_members,                                   \
    .n_members = SY_LEN (sy_lift_session_members), .group_size = sizeof (SyLiftSession), .max_items = 96,             \
    .seldom = true },                   \
  { .name = "coupling", .label = N_ ("Grip"), .type = SY_MEMBER_CHOICE,                                               \
    .help = N_ ("The worst over the whole lift."), .offset = offsetof (SyLiftFacts, coupling),                        \
    .choices = sy_lift_coupling_choices, .n_choices = SY_LEN (sy_lift_coupling_choices), .required = true },          \
  { NUMBER (hands, NULL, SY_KIND_COUNT, N_ ("Hands"), N_ ("2, or 1 when lifted with one hand."),                      \
            FROM_ONE, MANUAL " 1.2.3"),                                                                               \
    .whole = true, .high = { SY_BOUND_CLOSED, { 2, 2 } }, .default_text = N_ ("2"), .seldom = true },                 \
  { NUMBER (persons, NULL, SY_KIND_COUNT, N_ ("Persons"), N_ ("How many lift it together."),                          \
            FROM_ONE, "common practice, no source"),                                                                  \
    .whole = true, .default_text = N_ ("1"), .seldom = true },                                                        \
  { NUMBER (lifts_per_day, NULL, SY_KIND_COUNT, N_ ("Lifts a day"), N_ ("Ranks the tasks; no part of the equation."), \
            FROM_ZERO, "common practice, no source"),                                                                 \
    .default_text = N_ ("pace × minutes of work"), .seldom = true },                                                  \
  { .name = "assigned", .label = N_ ("Who may be assigned"), .type = SY_MEMBER_CHOICE,                                \
    .help = N_ ("Sets the reference mass."), .offset = offsetof (SyLiftFacts, assigned),                              \
    .choices = sy_lift_assigned_choices, .n_choices = SY_LEN (sy_lift_assigned_choices),                              \
    .default_text = N_ ("the policy's"), .seldom = true }

#define LIFT_LAST_ROWS                                                                                                \
  { .name = "conditions", .label = N_ ("Conditions"), .type = SY_MEMBER_SET,                                          \
    .help = N_ ("Ask about each. The equation does not hold where one applies."),                                     \
    .offset = offsetof (SyLiftFacts, conditions), .choices = sy_lift_condition_choices,                               \
    .n_choices = SY_LEN (sy_lift_condition_choices), .default_text = N_ ("not asked"),    \
    .seldom = true },                                      \
  { .name = "had", .label = N_ ("How each fact was had"), .type = SY_MEMBER_GROUP, .offset = 0,                       \
    .members = had_members, .n_members = SY_LEN (had_members), .group_size = sizeof (SyLiftFacts),                    \
    .present_offset = offsetof (SyLiftFacts, had_given), .seldom = true }

#define BACK(name_, kind_, label_, help_, low_)                                                                       \
  .name = #name_, .label = label_, .help = help_, .type = SY_MEMBER_NUMBER, .kind = kind_,                            \
  .offset = offsetof (SyLiftFacts, back.name_), .low = low_,                                                          \
  .range_source = "University of Utah hand calculation (from memory)"
#define UPRIGHT { SY_BOUND_CLOSED, { 90, 90 } }

static const SyField back_members[] = {
  { BACK (body_mass, SY_KIND_MASS, N_ ("Mass of the body"), N_ ("Of who lifts it; the heaviest who does."), OVER_ZERO),
    .required = true },
  { BACK (trunk_origin, SY_KIND_ANGLE, N_ ("Trunk at the origin, from the horizontal"),
          N_ ("90 is upright, 0 is bent level."), FROM_ZERO),
    .high = UPRIGHT, .required = true },
  { BACK (trunk_destination, SY_KIND_ANGLE, N_ ("Trunk at the destination, from the horizontal"),
          N_ ("90 is upright, 0 is bent level."), FROM_ZERO),
    .high = UPRIGHT, .default_text = N_ ("the destination is not worked out") },
  { BACK (arm_origin, SY_KIND_REACH, N_ ("Hands to the low back at the origin"), N_ ("Along the floor, to the lowest disc of the back."),
          OVER_ZERO),
    .default_text = N_ ("the reach H, which is shorter") },
  { BACK (arm_destination, SY_KIND_REACH, N_ ("Hands to the low back at the destination"),
          N_ ("Along the floor, to the lowest disc of the back."), OVER_ZERO),
    .default_text = N_ ("the reach H, which is shorter") },
};

const SyField sy_lift_fields[] = {
  LIFT_ROWS,
  { NUMBER (shift_hours, NULL, SY_KIND_RATIO, N_ ("Hours of the shift"),
            N_ ("Of a shift over 8 hours. The lifting equation ends there; other limits go on."), OVER_ZERO,
            "ISO 11228-1:2021 scope"),
    .high = { SY_BOUND_CLOSED, { 12, 12 } }, .default_text = N_ ("8") },
  { .name = "additional_tasks", .label = N_ ("Other hard work beside it"), .type = SY_MEMBER_BOOL,
    .help = N_ ("Whether the same people do other physically demanding work in the shift."),
    .offset = offsetof (SyLiftFacts, additional_tasks), .default_text = N_ ("no") },
  { .name = "back", .label = N_ ("Back compression, an estimate of another kind"),
    .help = N_ ("A second opinion beside the limits of mass; it can only make the result stricter."), .type = SY_MEMBER_GROUP,
    .offset = 0, .members = back_members, .n_members = SY_LEN (back_members), .group_size = sizeof (SyLiftFacts),
    .present_offset = offsetof (SyLiftFacts, back_given), .seldom = true },
  LIFT_LAST_ROWS,
};

const SyField sy_lift_of_set_fields[] = {
  { .name = "label", .label = N_ ("Name"), .type = SY_MEMBER_TEXT,
    .help = N_ ("What is lifted here, as people call it."), .offset = offsetof (SyLiftOfSet, label) },
  LIFT_ROWS,
  LIFT_LAST_ROWS,
  { .name = "share", .label = N_ ("Share of the time"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_RATIO,
    .help = N_ ("Of the minutes of the whole rotation; all shares together are 1."),
    .offset = offsetof (SyLiftOfSet, share), .low = OVER_ZERO, .high = { SY_BOUND_CLOSED, { 1, 1 } },
    .range_source = "Waters, Lu, Occhipinti 2007, Ergonomics 50(11) (from memory)" },
};
