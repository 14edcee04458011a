/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

/* A piece of gear: read off its tag, then looked over, then its papers. */

static const SyPlanSection sections[] = {
  { .id = "task",
    .title = N_ ("The item"),
    .has_name = TRUE,
    .rows = { { { "kind", "identity" } }, { { "storage", "place" } } } },
  { .id = "marking",
    .title = N_ ("Marking"),
    .help = N_ ("As it stands on the tag or plate; nothing is taken from a table."),
    .rows = { { { "wll", "rated_as" } }, { { "legs", "band" } }, { { "material", "size", "grade" } },
              { { "family", "shoulder" } }, { { "length", "own_mass" } } } },
  { .id = "reach",
    .title = N_ ("Hoists, trucks and carts"),
    .rows = { { { "lift_height", "load_centre" } }, { { "serves" } } } },
  { .id = "condition",
    .title = N_ ("Looked over"),
    .rows = { { { "condition" } }, { { "withdrawn" } }, { { "withdrawn_why" }, TRUE, FALSE } } },
  { .id = "examination",
    .title = N_ ("Examinations"),
    .help = N_ ("Of the thorough examination, from its last report."),
    .rows = { { { "last_examined", "due", "interval_months" } } },
    .ways = { { .list = "examinations" } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_gear = { "gear", sections, G_N_ELEMENTS (sections) };
