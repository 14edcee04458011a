/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "push-scene.h"
#include "sy-push-duty.h"

/* A die on its bolster or on rollers, pushed or pulled by hand. */

#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }
#define UNDER(value) { SY_BOUND_OPEN, { value, value } }
#define STATICS "statics: sum of forces"

typedef enum { DIRECTION_UP, DIRECTION_DOWN } Direction;
typedef enum { HELD_BY_NOTHING, HELD_BY_STOPS } Held;

typedef struct
{
  SyCommonFacts common;
  SyPushDuty duty;
  SyNumber mass, friction, start_friction, incline;
  int surface, direction, held; /* SySlideSurface, Direction, Held or -1 */
} Facts;

/* Fields */

static const SyChoice surface_choices[SY_N_SLIDE_SURFACES] = {
  { "steel-dry", N_ ("Steel on steel, dry"), N_ ("0.78 to start, up to 0.57 sliding") },
  { "steel-greased", N_ ("Steel on steel, greased"), N_ ("0.23 to start, up to 0.19 sliding") },
  { "rollers", N_ ("Roller or ball lifters"), N_ ("0.01 to 0.05, three times that to start") },
};
static const SyChoice direction_choices[] = {
  [DIRECTION_UP] = { "up", N_ ("Up the incline"), NULL },
  [DIRECTION_DOWN] = { "down", N_ ("Down the incline"), NULL },
};
static const SyChoice held_choices[] = {
  [HELD_BY_NOTHING] = { "nothing", N_ ("Nothing"), NULL },
  [HELD_BY_STOPS] = { "stops", N_ ("Stops, a latch or a tackle"), N_ ("hold it when it is let go") },
};

static const SyField fields[] = {
  SY_PUSH_WAY_ROW (Facts),
  { .name = "mass", .symbol = "m", .label = N_ ("Mass of the die"), .help = N_ ("With what is not known added to it."),
    SY_PUSH_MEASURE (Facts, mass, SY_KIND_MASS), .required = true, .low = OVER_ZERO, .range_source = STATICS },
  { .name = "surface", .label = N_ ("What it slides or rolls on"), SY_PUSH_CHOICE (Facts, surface, surface_choices) },
  { .name = "friction", .symbol = "k", .label = N_ ("Friction on the move"),
    .help = N_ ("As measured on the level: the force that keeps it moving, over its weight; goes before the surface."),
    SY_PUSH_MEASURE (Facts, friction, SY_KIND_RATIO), .low = FROM_ZERO, .high = UP_TO (2), .range_source = STATICS,
    .default_text = N_ ("as published for the surface, which speaks for nothing by itself") },
  { .name = "start_friction", .symbol = "k0", .label = N_ ("Friction at the start"),
    .help = N_ ("As measured on the level: the force that starts it, over its weight."),
    SY_PUSH_MEASURE (Facts, start_friction, SY_KIND_RATIO), .low = FROM_ZERO, .high = UP_TO (6),
    .range_source = STATICS,
    .default_text = N_ ("in proportion to the published figures, which speaks for nothing by itself") },
  { .name = "incline", .symbol = "s", .label = N_ ("Incline"), .help = N_ ("Degrees, or 2 %; 0 for level."),
    SY_PUSH_MEASURE (Facts, incline, SY_KIND_SLOPE), .low = FROM_ZERO, .high = UNDER (90), .range_source = STATICS },
  { .name = "direction", .label = N_ ("Up or down"), SY_PUSH_CHOICE (Facts, direction, direction_choices),
    .default_text = N_ ("up") },
  { .name = "held", .label = N_ ("What holds it when it is let go"), SY_PUSH_CHOICE (Facts, held, held_choices) },
  SY_PUSH_DUTY_ROWS (Facts),
};

/* Quantities */

enum { FRICTION = SY_PUSH_N_Q, START_FRICTION, N_SYMBOLS };
static const SySymbol symbols[N_SYMBOLS] = {
  SY_PUSH_SYMBOL_ROWS ("W (k0 cos s \xc2\xb1 sin s)", "W (k cos s \xc2\xb1 sin s)"),
  [FRICTION] = { "friction", SY_KIND_RATIO, N_ ("Friction on the move"),
                 "as measured, or as published for the surface" },
  [START_FRICTION] = { "start_friction", SY_KIND_RATIO, N_ ("Friction at the start"),
                       "as measured, or as published for the surface" },
};

/* What it takes */

typedef struct
{
  double start, keep, least; /* NAN: not known */
} Friction;

static Friction
friction_of (const Facts *facts)
{
  Friction out = { (double) NAN, (double) NAN, 0 };
  double over = SY_PUSH_START_FACTOR; /* start over move, where neither was measured */

  if (facts->surface >= 0)
    {
      SySlideFigure figure = sy_push_sliding ((SySlideSurface) facts->surface);
      out = (Friction) { figure.start, figure.keep, figure.least };
      over = figure.start / figure.keep;
    }
  if (facts->friction.given)
    out = (Friction) { facts->friction.value * over, facts->friction.value, facts->friction.value };
  if (facts->start_friction.given)
    out.start = facts->start_friction.value;
  return out;
}

static void
case_of (const Facts *facts, SyUnits units, SyPushCase *out)
{
  Friction friction = friction_of (facts);
  const SyPushLoad load = {
    .weight = units == SY_UNITS_US ? facts->mass.value : facts->mass.value * SY_GRAVITY,
    .start = friction.start,
    .keep = friction.keep,
    .slope_deg = facts->incline.given ? facts->incline.value : 0,
    .downhill = facts->direction == DIRECTION_DOWN,
    .deceleration = (double) NAN,
  };

  sy_push_case_begin (&facts->duty, units, out);
  sy_push_needs (&load, &out->needs);
  if (!facts->incline.given)
    out->needs.hold = (double) NAN;
  else if (out->needs.hold > 0 && !sy_push_runs_away (load.slope_deg, friction.least))
    out->needs.hold = 0; /* friction holds it, by the least that is published or as measured */
}

/* Notes */

/* On an incline that pulls harder than friction resists at the least it runs by itself. */
static void
judge_held (const Facts *facts, const Friction *friction, SyUnits units, SySink *sink)
{
  double slope = facts->incline.value;
  const SyPushLoad load = { .weight = units == SY_UNITS_US ? facts->mass.value : facts->mass.value * SY_GRAVITY,
                            .keep = friction->least, .slope_deg = slope };
  SyPushNeeds needs;

  if (!(slope > 0) || facts->held == HELD_BY_STOPS)
    return;
  bool runs = sy_push_runs_away (slope, friction->least);
  SyNote *note = facts->held < 0 ? sy_sink_note (sink, "slide-held-not-given", SY_NOTE_NEEDED)
                                 : sy_sink_note (sink, runs ? "slide-runs-away" : "slide-incline-without-stops",
                                                 runs ? SY_NOTE_REFUSED : SY_NOTE_IMPROVE);
  sy_push_needs (&load, &needs);
  sy_note_arg (note, SY_KIND_HAND_FORCE, needs.hold);
  sy_note_arg (note, SY_KIND_HAND_FORCE, needs.sustained - needs.hold);
  sy_note_source (note, symbols[SY_PUSH_Q_HOLD].symbol, runs ? STATICS : "common practice, no source", false);
}

static void
add_notes (const Facts *facts, const SyPushCase *push, SySink *sink)
{
  Friction friction = friction_of (facts);

  sy_push_case_notes (push, &facts->duty, sink);
  if (!facts->friction.given && facts->surface < 0)
    sy_sink_note (sink, "slide-no-surface", SY_NOTE_NEEDED);
  else if (!facts->friction.given)
    {
      SySlideFigure figure = sy_push_sliding ((SySlideSurface) facts->surface);
      SyNote *note = sy_sink_note (sink, "slide-friction-published", SY_NOTE_NEEDED);
      sy_note_arg (note, SY_KIND_RATIO, figure.keep);
      sy_note_arg (note, SY_KIND_RATIO, friction.start);
      sy_note_source (note, NULL, figure.source, figure.from_memory);
    }
  else if (!facts->start_friction.given)
    {
      SyNote *note = sy_sink_note (sink, "push-start-from-memory", SY_NOTE_NEEDED);
      sy_note_arg (note, SY_KIND_RATIO, friction.keep > 0 ? friction.start / friction.keep : SY_PUSH_START_FACTOR);
      sy_note_source (note, NULL, "in proportion to the published figures", true);
    }
  if (facts->incline.given)
    judge_held (facts, &friction, push->units, sink);
  else
    sy_sink_note (sink, "slide-no-incline", SY_NOTE_NEEDED);
  if (facts->incline.given && facts->incline.value > 0 && facts->direction < 0)
    sy_sink_note (sink, "slide-up-assumed", SY_NOTE_CAUTION);
  sy_sink_note (sink, "slide-way-clear", SY_NOTE_CAUTION);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const Facts *facts = data;
  Friction friction = friction_of (facts);
  SyPushCase push;

  case_of (facts, context->units, &push);
  sy_push_case_put (&push, sink);
  if (!isnan (friction.keep))
    sy_sink_value (sink, FRICTION, friction.keep);
  if (!isnan (friction.start))
    sy_sink_value (sink, START_FRICTION, friction.start);
  if (!context->quantities_only)
    add_notes (facts, &push, sink);
}

/* Cross-field check */

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const Facts *facts = data;
  char given[SY_NUMBER_TEXT_MAX];

  (void) units;
  sy_push_duty_check (&facts->duty, problems);
  if (facts->friction.given && facts->start_friction.given && facts->start_friction.value < facts->friction.value)
    {
      sy_number_print (facts->start_friction.value, given);
      sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.start_friction", given, "not under friction", "1");
    }
  if (facts->start_friction.given && !facts->friction.given)
    sy_problems_add (problems, SY_PROBLEM_MISSING, 0, "$.friction", "nothing",
                     "friction as measured beside start_friction", "1");
}

/* Remedies */

enum { FACTOR_INCLINE, FACTOR_FRICTION, FACTOR_SURFACE, FACTOR_DUTY, N_FACTORS = FACTOR_DUTY + SY_PUSH_DUTY_FACTORS };

static double
ratio_with (const void *data, SyUnits units, size_t offset, double value)
{
  Facts facts = *(const Facts *) data;
  SyPushCase push;

  *(SyNumber *) (void *) ((char *) &facts + offset) = (SyNumber) { value, true };
  case_of (&facts, units, &push);
  return sy_push_case_ratio (&push);
}

static size_t
candidates (const void *data, const SyContext *context, const SyGoal *goal, size_t factor, SyChange *changes,
            SyChange *best, bool *has_best)
{
  const Facts *facts = data;
  const SyPushLever incline = { .path = "incline", .factor = "incline", .kind = SY_KIND_SLOPE,
                                .offset = offsetof (Facts, incline), .now = facts->incline.value, .best = 0 };
  const SyPushLever friction = { .path = "friction", .factor = "friction", .kind = SY_KIND_RATIO,
                                 .offset = offsetof (Facts, friction), .now = facts->friction.value, .best = 0.01 };
  SyPushCase push;
  size_t n = 0;

  (void) goal; /* each limit is its own: the goal is a ratio of 1, and rungs below it */
  *has_best = false;
  case_of (facts, context->units, &push);
  if (isnan (sy_push_case_ratio (&push)))
    return 0; /* no force is known: nothing can be promised */
  if (factor >= FACTOR_DUTY)
    return sy_push_duty_candidates (&facts->duty, offsetof (Facts, duty), facts, context->units, ratio_with,
                                    factor - FACTOR_DUTY, changes, best, has_best);
  if (factor == FACTOR_INCLINE)
    return incline.now > 0 ? sy_push_pull_lever (&incline, facts, context->units, ratio_with, changes) : 0;
  if (factor == FACTOR_FRICTION)
    return facts->friction.given && !facts->start_friction.given && friction.now > friction.best
             ? sy_push_pull_lever (&friction, facts, context->units, ratio_with, changes)
             : 0;
  for (int surface = 0; surface < SY_N_SLIDE_SURFACES && facts->surface >= 0 && !facts->friction.given; surface++)
    if (surface > facts->surface)
      changes[n++] = (SyChange) { .path = "surface", .factor = "surface", .type = SY_CHANGE_CHOICE,
                                  .offset = offsetof (Facts, surface), .value = surface };
  return n;
}

static bool
largest_mass (const void *data, const SyContext *context, const SyGoal *goal, double *mass, SyChange *change)
{
  size_t offset = offsetof (Facts, mass);

  (void) goal;
  if (!sy_push_heaviest (data, context->units, ratio_with, offset, mass))
    return false;
  *change = (SyChange) { .path = "mass", .factor = "load", .type = SY_CHANGE_NUMBER, .kind = SY_KIND_MASS,
                         .offset = offset, .value = *mass };
  return true;
}

/* Drawing */

static const char *const view_titles[] = { N_ ("From the side") };

static void
scene (const void *data, SyUnits units, const SySink *sink, size_t view, SyScene *out)
{
  const Facts *facts = data;
  SyPushCase push;

  (void) view;
  case_of (facts, units, &push);
  const SyPushPicture picture = {
    .push = &push,
    .handle_height = facts->duty.handle_height.value,
    .slope_deg = facts->incline.given ? facts->incline.value : 0,
    .downhill = facts->direction == DIRECTION_DOWN,
    .wheel_diameter = (double) NAN,
    .mass = facts->mass.value,
    .mass_fact = "mass",
    .slope_fact = "incline",
    .governing = sink->governing,
  };
  sy_push_scene_side (out, &picture);
}

extern const SyMethod sy_method_slide;
const SyMethod sy_method_slide = {
  .id = "slide",
  .title = N_ ("Sliding a die"),
  .source = "Statics of friction; coefficients as named at each surface; Snook and Ciriello 1991 and Potvin and others 2021 "
            "(from memory); HSE, assessing pushing and pulling; ISO/TR 12295 (from memory)",
  .conditions_source = "HSE, assessing pushing and pulling; what the tables did not measure: common practice, no source",
  .edition = 1,
  .item_kind = "task",
  .memory_caution = N_ ("What people accept, the critical forces and figures of friction stand here from memory and were not "
                        "checked against the publications; they may tighten a verdict but are never the only ground for a "
                        "favourable one."),
  .facts_size = sizeof (Facts),
  .fields = fields,
  .n_fields = SY_LEN (fields),
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .index_symbol = "ratio",
  .limits = sy_push_limits,
  .n_limits = SY_N_PUSH_LIMITS,
  .check = check,
  .evaluate = evaluate,
  .n_factors = N_FACTORS,
  .candidates = candidates,
  .largest_mass = largest_mass,
  .formula = sy_push_formula,
  .n_views = SY_LEN (view_titles),
  .view_titles = view_titles,
  .scene = scene,
};
