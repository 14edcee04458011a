/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

/* A die change as a whole, and the case for an aid: what holds for all of it, then the steps or the options. */

static const SyPlanSection changeover_sections[] = {
  SY_PLAN_AVOID,
  { .id = "task",
    .title = N_ ("The die change"),
    .has_name = TRUE,
    .rows = { { { "machine" } }, { { "place" } }, { { "measured_by", "measured_on" } }, { { "changes_per_year", "as_of" } } } },
  { .id = "people",
    .title = N_ ("People"),
    .help = N_ ("Who is there; no step takes more."),
    .rows = { { { "people" } } } },
  { .id = "dies", .title = N_ ("Dies"), .ways = { { .list = "dies" } } },
  { .id = "without", .title = N_ ("What is not there"), .rows = { { { "without" } } } },
  { .id = "steps",
    .title = N_ ("Steps"),
    .help = N_ ("In the order in which they are done."),
    .ways = { { .list = "steps" } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_changeover = { "changeover", changeover_sections, G_N_ELEMENTS (changeover_sections) };

/* What is not known to the penny: low and high say how far it could be off, and may stay empty. */
#define ESTIMATE(id_, title_, path_) \
  { .id = id_, .title = title_, .rows = { { { path_ ".low", path_ ".expected", path_ ".high" } } } }

static const SyPlanSection case_sections[] = {
  { .id = "task",
    .title = N_ ("The case"),
    .has_name = TRUE,
    .rows = { { { "place" } }, { { "measured_by", "measured_on" } }, { { "as_of" } } } },
  { .id = "as-is", .title = N_ ("As it is"), .rows = { { { "as_is.facts" } } } },
  ESTIMATE ("as-is-stopped", N_ ("As it is: the machine stands, each time"), "as_is.stopped"),
  ESTIMATE ("as-is-people", N_ ("As it is: minutes of all people, each time"), "as_is.person_minutes"),
  ESTIMATE ("times", N_ ("Times a year"), "changes_per_year"),
  ESTIMATE ("labour", N_ ("Labour, an hour"), "labour_rate"),
  ESTIMATE ("machine", N_ ("Machine, an hour"), "machine_rate"),
  { .id = "money", .title = N_ ("Money"), .rows = { { { "discount_rate", "years", "currency" } } } },
  { .id = "options", .title = N_ ("Options"), .ways = { { .list = "options" } } },
  { .id = "approval",
    .title = N_ ("Approval"),
    .rows = { { { "approval.who", "approval.role", "approval.date" } } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_case = { "case", case_sections, G_N_ELEMENTS (case_sections) };
