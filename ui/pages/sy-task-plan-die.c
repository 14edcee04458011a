/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

/* A die of the register: what it is, what it weighs, what it is made of, where it can be taken hold of. */

static const SyPlanSection sections[] = {
  { .id = "task",
    .title = N_ ("The die"),
    .has_name = TRUE,
    .rows = { { { "machine", "storage" } }, { { "drawing", "place" } }, { { "measured_by", "measured_on" } } } },
  { .id = "mass",
    .title = N_ ("Weighed mass"),
    .help = N_ ("A scale or load cells say more than any drawing. Leave it empty for a mass from the bodies."),
    .rows = { { { "weighed", "mass_basis" } }, { { "allowance_percent" } },
              { { "assigned" } } } },
  { .id = "bodies",
    .title = N_ ("Bodies"),
    .help = N_ ("Plates, blocks, pillars and pockets, each with its place; or parts of known mass."),
    .ways = { { .list = "bodies" } } },
  { .id = "points",
    .title = N_ ("Lifting points"),
    .help = N_ ("In the same coordinates, by the name that is painted on them."),
    .ways = { { .list = "points" } } },
  { .id = "halves",
    .title = N_ ("Halves"),
    .help = N_ ("What the die opens into, and what ties it for lifting."),
    .rows = { { { "halves" } }, { { "ties" } } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_die_mass = { "die-mass", sections, G_N_ELEMENTS (sections) };
