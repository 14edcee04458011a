/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

/* What hands do besides one lift: sets of lifts, lifts by a team, carrying, pushing, sliding. */

#define TASK(title_) \
  { .id = "task", \
    .title = title_, \
    .has_name = TRUE, \
    .rows = { { { "place" } }, { { "measured_by", "measured_on" } } } }

/* A set of lifts: how they belong together, the lifts, who does what, for how long. */

static const SyPlanSection set_sections[] = {
  SY_PLAN_AVOID,
  TASK (N_ ("The set")),
  { .id = "combine",
    .title = N_ ("How the lifts belong together"),
    .help = N_ ("Composite: mixed with one another. Sequence: turns at one after the other. Variable: a sample of many."),
    .rows = { { { "combine" } } } },
  { .id = "lifts",
    .title = N_ ("Lifts"),
    .help = N_ ("One by one, or a table with a lift in every line."),
    .ways = { { .list = "lifts" } } },
  { .id = "sample",
    .title = N_ ("The sample"),
    .help = N_ ("Where the lifts say no pace of their own, that of all of them together."),
    .rows = { { { "frequency", "categories" } } } },
  { .id = "rota",
    .title = N_ ("Rota"),
    .help = N_ ("Who does what for how long, turn by turn. Without it every lift has its share of the time."),
    .ways = { { .list = "rota" } } },
  { .id = "duration",
    .title = N_ ("Duration"),
    .help = N_ ("Of all lifts together."),
    .ways = { { .label = N_ ("By class"), .rows = { { { "duration" } } } },
              { .label = N_ ("Work and recovery"),
                .rows = { { { "work_minutes", "recovery_minutes", "shift_minutes" } } } },
              { .label = N_ ("Sessions of the day"), .list = "sessions" } } },
  { .id = "who", .title = N_ ("Hands and people"), .rows = { { { "assigned" } } } },
  { .id = "conditions",
    .title = N_ ("Asked on the floor"),
    .help = N_ ("Of lifts that do not say their own. The equation does not hold where one of these applies."),
    .rows = { { { "conditions" } } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_lift_set = { "lift-set", set_sections, G_N_ELEMENTS (set_sections) };

/* A lift by several: the load, then where each of them stands, then the way. */

static const SyPlanSection team_sections[] = {
  SY_PLAN_AVOID,
  TASK (N_ ("The lift")),
  { .id = "load",
    .title = N_ ("Load"),
    .help = N_ ("x and y seen from above, from any corner that the hands are measured from too."),
    .rows = { { { "mass" } }, { { "cg" } } } },
  { .id = "people",
    .title = N_ ("People"),
    .help = N_ ("Two to four, each by a name or a place."),
    .ways = { { .list = "people" } } },
  { .id = "way",
    .title = N_ ("Slope or stairs"),
    .rows = { { { "slope" } }, { { "uphill" } } } },
  { .id = "pace",
    .title = N_ ("Pace and grip"),
    .rows = { { { "travel", "frequency" } }, { { "duration", "coupling" } } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_team_lift = { "team-lift", team_sections, G_N_ELEMENTS (team_sections) };

/* A carry: the load, the way, how often. */

static const SyPlanSection carry_sections[] = {
  SY_PLAN_AVOID,
  { .id = "task",
    .title = N_ ("The carry"),
    .has_name = TRUE,
    .rows = { { { "place" } }, { { "assigned" } }, { { "measured_by", "measured_on" } } } },
  { .id = "load", .title = N_ ("Load"), .rows = { { { "mass", "typical_mass" } } } },
  { .id = "way", .title = N_ ("Way"), .rows = { { { "distance", "height" } } } },
  { .id = "pace",
    .title = N_ ("Pace"),
    .help = N_ ("How often, and for how much of the day."),
    .rows = { { { "frequency", "minutes" } } } },
  { .id = "who",
    .title = N_ ("Hands and people"),
    .rows = { { { "who", "percent" } }, { { "hands", "persons" } } } },
  { .id = "around", .title = N_ ("Taken up and around"), .rows = { { { "poor_lift", "poor_surroundings" } } } },
  { .id = "conditions",
    .title = N_ ("Asked on the floor"),
    .help = N_ ("No published limit here holds where one of these applies."),
    .rows = { { { "conditions" } } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_carry = { "carry", carry_sections, G_N_ELEMENTS (carry_sections) };

/* A push or pull: the force as measured, what it is estimated from, the duty. */

#define PUSH_DUTY \
  { .id = "duty", \
    .title = N_ ("Hands, way and pace"), \
    .rows = { { { "handle_height" } }, { { "distance", "frequency" } } } }, \
  { .id = "who", \
    .title = N_ ("Who does it"), \
    .rows = { { { "who" } }, { { "percent", "persons" } } } }, \
  { .id = "conditions", \
    .title = N_ ("Asked on the floor"), \
    .help = N_ ("The published figures do not hold where one of these applies."), \
    .rows = { { { "conditions" } } } }

static const SyPlanSection push_sections[] = {
  SY_PLAN_AVOID,
  TASK (N_ ("The push or pull")),
  { .id = "way", .title = N_ ("Pushed or pulled"), .rows = { { { "way" } } } },
  { .id = "measured",
    .title = N_ ("Forces as measured"),
    .help = N_ ("What is left blank is estimated from the cart."),
    .rows = { { { "initial", "sustained" } } } },
  { .id = "cart",
    .title = N_ ("Cart and way"),
    .help = N_ ("Says also what it takes to hold it and to stop it."),
    .rows = { { { "cart.gross_mass", "cart.wheel_diameter" } }, { { "cart.wheel", "cart.floor" } },
              { { "cart.slope", "cart.brake" } }, { { "cart.rolling_coefficient", "cart.start_factor" } },
              { { "cart.start_acceleration", "cart.stop_deceleration" } } } },
  PUSH_DUTY,
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_push = { "push", push_sections, G_N_ELEMENTS (push_sections) };

/* A slide: the load, what it slides on, the duty. */

static const SyPlanSection slide_sections[] = {
  SY_PLAN_AVOID,
  TASK (N_ ("The slide")),
  { .id = "way", .title = N_ ("Pushed or pulled"), .rows = { { { "way" } } } },
  { .id = "load", .title = N_ ("Load"), .rows = { { { "mass" } } } },
  { .id = "surface",
    .title = N_ ("Surface"),
    .rows = { { { "surface" } }, { { "friction", "start_friction" } }, { { "incline", "direction" } }, { { "held" } } } },
  PUSH_DUTY,
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_slide = { "slide", slide_sections, G_N_ELEMENTS (slide_sections) };
