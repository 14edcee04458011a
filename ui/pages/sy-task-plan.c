/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

#include <string.h>

static const SyPlanSection lift_sections[] = {
  SY_PLAN_AVOID,
  { .id = "task",
    .title = N_ ("The task"),
    .has_name = TRUE,
    .rows = { { { "place" } }, { { "assigned" } }, { { "measured_by", "measured_on" } } } },
  { .id = "load",
    .title = N_ ("Load"),
    .rows = { { { "load.typical", "load.heaviest" } } },
    .ways = { { .had = { "had.load" } } } },
  { .id = "origin",
    .title = N_ ("Taken from"),
    .help = N_ ("Where the hands are when the load leaves its place."),
    .rows = { { { "origin.H", "origin.V", "origin.A" } } },
    .ways = { { .had = { "had.origin.H", "had.origin.V", "had.origin.A" } } } },
  { .id = "placed",
    .title = N_ ("Put down"),
    .help = N_ ("Where the hands are when the load reaches its place."),
    .ways = { { .label = N_ ("Destination measured"),
                .rows = { { { "destination.H", "destination.V", "destination.A" } },
                          { { "control_at_destination" } } },
                .had = { "had.destination.H", "had.destination.V", "had.destination.A" } },
              { .label = N_ ("Only how far up or down"),
                .rows = { { { "travel" } } },
                .had = { "had.travel" } } } },
  { .id = "pace",
    .title = N_ ("Pace"),
    .help = N_ ("The busiest quarter of an hour counts."),
    .ways = { { .label = N_ ("Lifts a minute"),
                .rows = { { { "frequency" } } },
                .had = { "had.frequency" } },
              { .label = N_ ("Counted with a watch"),
                .rows = { { { "lifts", "in_minutes" } } },
                .had = { "had.frequency" } } } },
  { .id = "duration",
    .title = N_ ("Duration"),
    .ways = { { .label = N_ ("By class"), .rows = { { { "duration" } } } },
              { .label = N_ ("Work and recovery"),
                .rows = { { { "work_minutes", "recovery_minutes", "shift_minutes" } } } },
              { .label = N_ ("Sessions of the day"), .list = "sessions" } } },
  { .id = "grip", .title = N_ ("Grip"), .rows = { { { "coupling" } } } },
  { .id = "who",
    .title = N_ ("Hands and people"),
    .rows = { { { "hands", "persons", "lifts_per_day" } }, { { "shift_hours", "additional_tasks" } } } },
  { .id = "back",
    .title = N_ ("Back compression"),
    .help = N_ ("An estimate of another kind, which can only make the result stricter."),
    .ways = { { .label = N_ ("Not worked out") },
              { .label = N_ ("From body and trunk"),
                .rows = { { { "back.body_mass" } },
                          { { "back.trunk_origin" } },
                          { { "back.arm_origin" } },
                          { { "back.trunk_destination" } },
                          { { "back.arm_destination" } } } } } },
  { .id = "conditions",
    .title = N_ ("Asked on the floor"),
    .help = N_ ("The equation does not hold where one of these applies."),
    .rows = { { { "conditions" } } } },
  SY_PLAN_NOTES,
};

static const SyPlanBar lift_bars[] = {
  { "HM", "H", "H", NULL, TRUE },
  { "VM", "V", "V", NULL, TRUE },
  { "DM", "D", "travel", "destination.V", FALSE },
  { "AM", "A", "A", NULL, TRUE },
  { "FM", "F", "lifts", "frequency", FALSE },
  { "CM", "C", "coupling", NULL, FALSE },
};

static const SyPlanEnd lift_ends[] = {
  { "origin", N_ ("At the origin") },
  { "destination", N_ ("At the destination") },
};

static const SyPlanCarrier rig_carriers[] = {
  { N_ ("Sling by the US rule"), "mass_with_allowance", "rule.us.capacity", "rule.us.utilisation", "rule.us", "rule" },
  { N_ ("Sling by the European rule"), "mass_with_allowance", "rule.en.capacity", "rule.en.utilisation", "rule.en",
    "rule" },
};
static const SyPlanCarrier truck_carriers[] = {
  { N_ ("The truck as it lifts"), "mass_with_allowance", "capacity", "utilisation", "utilisation", "rating" },
};
static const SyPlanCarrier cart_carriers[] = {
  { N_ ("Of its rated load"), NULL, NULL, "utilisation", "utilisation", "rated_load" },
  { N_ ("Nearest to tipping"), NULL, NULL, "tipping", "tipping", "cg_height" },
};

static const SyPlan lift_plan = { "lift", lift_sections, G_N_ELEMENTS (lift_sections) };
static const SyPlan *const plans[]
    = { &lift_plan, &sy_plan_rigged_lift, &sy_plan_die_mass, &sy_plan_gear, &sy_plan_truck, &sy_plan_cart,
        &sy_plan_lift_set, &sy_plan_team_lift, &sy_plan_carry, &sy_plan_push, &sy_plan_slide,
        &sy_plan_changeover, &sy_plan_case };

static gboolean
is (const SyMethod *method, const char *id)
{
  return strcmp (method->id, id) == 0;
}

const SyPlanSection *
sy_task_plan (const SyMethod *method, gsize *n)
{
  for (gsize i = 0; i < G_N_ELEMENTS (plans); i++)
    if (is (method, plans[i]->method))
      {
        *n = plans[i]->n;
        return plans[i]->sections;
      }
  *n = 0;
  return NULL;
}

const SyPlanBar *
sy_task_plan_bars (const SyMethod *method, gsize *n)
{
  *n = is (method, "lift") ? G_N_ELEMENTS (lift_bars) : 0;
  return lift_bars;
}

const SyPlanEnd *
sy_task_plan_ends (const SyMethod *method, gsize *n)
{
  *n = is (method, "lift") ? G_N_ELEMENTS (lift_ends) : 0;
  return lift_ends;
}

const SyPlanCarrier *
sy_task_plan_carriers (const SyMethod *method, gsize *n)
{
  const SyPlanCarrier *carriers = NULL;

  *n = 0;
  if (is (method, "rigged-lift"))
    {
      *n = G_N_ELEMENTS (rig_carriers);
      carriers = rig_carriers;
    }
  else if (is (method, "truck"))
    {
      *n = G_N_ELEMENTS (truck_carriers);
      carriers = truck_carriers;
    }
  else if (is (method, "cart"))
    {
      *n = G_N_ELEMENTS (cart_carriers);
      carriers = cart_carriers;
    }
  return carriers;
}
