/* SPDX-License-Identifier: MIT */
#include <glib.h>

#include "sy-task-plan.h"

#include <string.h>

static const SyPlanSection lift_sections[] = {
  { .id = "avoid",
    .title = N_ ("Can this handling be avoided?"),
    .help = N_ ("The first question: a lift that is not done needs no limit."),
    .rows = { { { "avoid.possible" } }, { { "avoid.why" }, TRUE } } },
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
    .rows = { { { "hands", "persons", "lifts_per_day" } } } },
  { .id = "conditions",
    .title = N_ ("Asked on the floor"),
    .help = N_ ("The equation does not hold where one of these applies."),
    .rows = { { { "conditions" } } } },
  { .id = "notes", .title = N_ ("Notes"), .rows = { { { "notes" }, TRUE } } },
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

static gboolean
is_lift (const SyMethod *method)
{
  return strcmp (method->id, "lift") == 0;
}

const SyPlanSection *
sy_task_plan (const SyMethod *method, gsize *n)
{
  *n = is_lift (method) ? G_N_ELEMENTS (lift_sections) : 0;
  return lift_sections;
}

const SyPlanBar *
sy_task_plan_bars (const SyMethod *method, gsize *n)
{
  *n = is_lift (method) ? G_N_ELEMENTS (lift_bars) : 0;
  return lift_bars;
}

const SyPlanEnd *
sy_task_plan_ends (const SyMethod *method, gsize *n)
{
  *n = is_lift (method) ? G_N_ELEMENTS (lift_ends) : 0;
  return lift_ends;
}
