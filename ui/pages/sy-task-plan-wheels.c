/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

/* A load on the forks of a truck: the load, the plate, how it is taken. */

static const SyPlanSection truck_sections[] = {
  SY_PLAN_AVOID,
  { .id = "task",
    .title = N_ ("The move"),
    .has_name = TRUE,
    .rows = { { { "place" } }, { { "measured_by", "measured_on" } }, { { "as_of" } } } },
  { .id = "load",
    .title = N_ ("Load"),
    .rows = { { { "mass", "mass_basis" } }, { { "allowance_percent" } }, { { "actual_centre" } }, { { "hung" } } } },
  { .id = "plate",
    .title = N_ ("Plate of the truck"),
    .help = N_ ("At the height and with the attachment that are used."),
    .rows = { { { "rating", "rated_centre" } }, { { "lift_height", "fulcrum" } }, { { "attachment" } },
              { { "plate_read" } }, { { "side_limit" } } } },
  { .id = "use",
    .title = N_ ("As it is used"),
    .rows = { { { "side_shift" } }, { { "due" } }, { { "withdrawn" } } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_truck = { "truck", truck_sections, G_N_ELEMENTS (truck_sections) };

/* A cart that is pushed: what it weighs, its wheels and the way, its shape, its brake. */

static const SyPlanSection cart_sections[] = {
  SY_PLAN_AVOID,
  { .id = "task",
    .title = N_ ("The move"),
    .has_name = TRUE,
    .rows = { { { "place" } }, { { "measured_by", "measured_on" } }, { { "as_of" } } } },
  { .id = "load",
    .title = N_ ("Load"),
    .rows = { { { "gross_mass", "load_mass", "rated_load" } } } },
  { .id = "wheels",
    .title = N_ ("Wheels and way"),
    .rows = { { { "wheels", "wheel" } }, { { "floor" } }, { { "rolling_coefficient", "start_factor" } },
              { { "slope" } } } },
  { .id = "shape",
    .title = N_ ("Shape"),
    .help = N_ ("With the load on it."),
    .rows = { { { "track", "wheelbase" } }, { { "cg_height", "push_height" } } } },
  { .id = "brake",
    .title = N_ ("Brake and stopping"),
    .rows = { { { "brake", "deceleration" } }, { { "due" } }, { { "withdrawn" } } } },
  SY_PLAN_NOTES,
};

const SyPlan sy_plan_cart = { "cart", cart_sections, G_N_ELEMENTS (cart_sections) };
