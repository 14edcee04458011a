/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

/* A lift plan: the load first, then from its points up to what it all hangs from, then what is done on the floor. */

static const SyPlanSection sections[] = {
  SY_PLAN_AVOID,
  { .id = "task",
    .title = N_ ("The lift"),
    .has_name = TRUE,
    .rows = { { { "place" } }, { { "measured_by", "measured_on" } }, { { "as_of" } } } },
  { .id = "load",
    .title = N_ ("Die or load"),
    .take = "die",
    .help = N_ ("Of all that leaves the floor, without the gear."),
    .rows = { { { "die" } }, { { "mass", "mass_basis" } }, { { "allowance_percent", "dynamic_factor" } } } },
  { .id = "centre",
    .title = N_ ("Centre of gravity"),
    .help = N_ ("x and y in plan, z up, from any corner that the points are measured from too."),
    .rows = { { { "cg" } }, { { "bottom" } } } },
  { .id = "points",
    .title = N_ ("Lifting points"),
    .help = N_ ("Every point that can be used, by the name that is painted on it."),
    .ways = { { .list = "points" } } },
  { .id = "halves",
    .title = N_ ("Halves"),
    .help = N_ ("What the load opens into, and what holds the other half where it is lifted by one only."),
    .rows = { { { "halves" } }, { { "ties" } } } },
  { .id = "hook",
    .title = N_ ("Hook"),
    .ways = { { .label = N_ ("Over the centre"), .rows = { { { "hook.above" } } } },
              { .label = N_ ("At a place"), .rows = { { { "hook.at" } } } },
              { .label = N_ ("Hangs free on its legs") } } },
  { .id = "legs",
    .title = N_ ("Legs"),
    .take = "gear",
    .help = N_ ("Each from its point to the hook; in it what it consists of, from the load up."),
    .ways = { { .list = "legs" } } },
  { .id = "suspension",
    .title = N_ ("Hung from"),
    .take = "gear",
    .help = N_ ("From the hook up: beam, hoist, crane."),
    .ways = { { .list = "suspension" } } },
  { .id = "rule",
    .title = N_ ("Rule for the sling"),
    .rows = { { { "rule" } }, { { "stiffness" } } } },
  { .id = "checks",
    .title = N_ ("Checked before the lift"),
    .help = N_ ("Ticked where the load stands, by whoever gives the signals."),
    .rows = { { { "checks" }, FALSE, TRUE } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_rigged_lift = { "rigged-lift", sections, G_N_ELEMENTS (sections) };
