/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_PLAN_H
#define SY_TASK_PLAN_H

#include <glib.h>

#include "sy-findings.h"

/*
 * The order in which a person walks and measures: which facts stand together on a task page, in which order, and in
 * which ways a group of them can be given. What a fact is (its name, unit, range) is in the method's table only; facts
 * that no section names follow at the end by themselves.
 */
#define SY_PLAN_COLUMNS 3
#define SY_PLAN_ROWS 5

/* Facts beside one another, NULL where there is none. */
typedef struct
{
  const char *paths[SY_PLAN_COLUMNS];
  gboolean prose; /* one fact in words that may take several lines */
  gboolean checks; /* one set that is ticked as it is done           */
} SyPlanRow;

/* One way of giving what a section asks. One without facts (of several) stands for their absence. */
typedef struct
{
  const char *label; /* N_(); NULL: the only way */
  SyPlanRow rows[SY_PLAN_ROWS];
  const char *list;  /* path of a list, NULL for none */
  const char *had[SY_PLAN_COLUMNS]; /* groups that say how these facts were had */
} SyPlanWay;

#define SY_PLAN_WAYS 3
typedef struct
{
  const char *id;
  const char *title;      /* N_() */
  const char *help;       /* N_(), NULL for none */
  gboolean has_name;      /* the task's name stands first here */
  const char *take;       /* kind of item of the register from which it can be filled, NULL: none */
  SyPlanRow rows[SY_PLAN_ROWS]; /* whatever the way */
  SyPlanWay ways[SY_PLAN_WAYS];
} SyPlanSection;

/* For the methods in sy-task-plan-*.c. */
typedef struct
{
  const char *method;
  const SyPlanSection *sections;
  gsize n;
} SyPlan;
extern const SyPlan sy_plan_rigged_lift, sy_plan_die_mass, sy_plan_gear, sy_plan_truck, sy_plan_cart, sy_plan_lift_set,
  sy_plan_team_lift, sy_plan_carry, sy_plan_push, sy_plan_slide, sy_plan_changeover, sy_plan_case;

/* What stands first in every task, whatever the method. */
#define SY_PLAN_AVOID \
  { .id = "avoid", \
    .title = N_ ("Can this handling be avoided?"), \
    .help = N_ ("The first question: a lift that is not done needs no limit."), \
    .rows = { { { "avoid.possible" } }, { { "avoid.why" }, TRUE, FALSE } } }
#define SY_PLAN_NOTES { .id = "notes", .title = N_ ("Notes"), .rows = { { { "notes" }, TRUE, FALSE } } }

/* The sections for a method; @n receives how many. */
const SyPlanSection *sy_task_plan (const SyMethod *method, gsize *n);

/* A bar of what takes the limit down: multiplier → fact. */
typedef struct
{
  const char *multiplier; /* "HM"                                                  */
  const char *symbol;     /* "H"                                                   */
  const char *fact;       /* under the end ("H"), or a path of its own ("coupling"); first of these that has a text */
  const char *other;      /* a second place, NULL for none                         */
  gboolean of_end;
} SyPlanBar;
typedef struct
{
  const char *id;      /* "origin"  */
  const char *title;   /* N_()      */
} SyPlanEnd;
const SyPlanBar *sy_task_plan_bars (const SyMethod *method, gsize *n);
const SyPlanEnd *sy_task_plan_ends (const SyMethod *method, gsize *n);

/* Something that carries, of which a method has one: symbols of its quantities. */
typedef struct
{
  const char *name;      /* N_()                                  */
  const char *demand;    /* NULL: it is no mass                   */
  const char *capacity;  /* NULL with @demand                     */
  const char *ratio;
  const char *governing; /* as a result names it where it governs */
  const char *fact;      /* what says what it may carry           */
} SyPlanCarrier;
const SyPlanCarrier *sy_task_plan_carriers (const SyMethod *method, gsize *n);

#endif
