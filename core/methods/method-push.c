/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "push-scene.h"
#include "sy-push-duty.h"

/* Pushing and pulling by hand: the force as measured, or as a cart's wheels, floor and slope ask for it. */

#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define FROM_ONE { SY_BOUND_CLOSED, { 1, 1 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }
#define UNDER(value) { SY_BOUND_OPEN, { value, value } }
#define STATICS "statics: sum of forces"

typedef enum { BRAKE_NONE, BRAKE_PARKING, BRAKE_DEAD_MAN } Brake;

typedef struct
{
  SyNumber gross_mass, wheel_diameter, rolling, start_factor, slope, start_acceleration, stop_deceleration;
  int wheel, floor, brake; /* SyTread, SyGround, Brake or -1 */
} Cart;

typedef struct
{
  SyCommonFacts common;
  SyPushDuty duty;
  SyNumber initial, sustained;
  Cart cart;
  int cart_given;
} Facts;

/* Fields */

static const SyChoice wheel_choices[SY_N_TREADS] = {
  { "hard-rubber", N_ ("Hard rubber"), N_ ("measured on four floors; the diameter counts") },
  { "rubber", N_ ("Rubber tyre"), N_ ("0.01 to 0.02 on concrete") },
  { "polyurethane", N_ ("Polyurethane"), N_ ("on hard floors; the diameter counts") },
  { "steel", N_ ("Steel or cast iron on the floor"), N_ ("on hard floors; the diameter counts") },
  { "steel-on-rail", N_ ("Steel on a steel rail"), NULL },
};
static const SyChoice floor_choices[SY_N_GROUNDS] = {
  { "smooth-concrete", N_ ("Smooth concrete"), NULL },
  { "tile", N_ ("Tiles"), NULL },
  { "asphalt", N_ ("Asphalt"), NULL },
  { "carpet", N_ ("Industrial carpet"), NULL },
  { "soft-or-uneven", N_ ("Soft or uneven"), N_ ("up to 10 % of the weight") },
};
static const SyChoice brake_choices[] = {
  [BRAKE_NONE] = { "none", N_ ("None"), NULL },
  [BRAKE_PARKING] = { "parking", N_ ("Parking brake"), N_ ("holds it where it stands") },
  [BRAKE_DEAD_MAN] = { "dead-man", N_ ("Dead-man brake"), N_ ("holds it when it is let go") },
};

static const SyField cart_members[] = {
  { .name = "gross_mass", .symbol = "m", .label = N_ ("Mass of cart and load"),
    .help = N_ ("With what is not known added to it."), SY_PUSH_MEASURE (Cart, gross_mass, SY_KIND_MASS),
    .low = OVER_ZERO, .range_source = STATICS,
    .default_text = N_ ("needed where a force was not measured, on a slope, or to stop it") },
  { .name = "wheel", .label = N_ ("Kind of wheel"), SY_PUSH_CHOICE (Cart, wheel, wheel_choices) },
  { .name = "wheel_diameter", .symbol = "d", .label = N_ ("Diameter of the wheels"),
    .help = N_ ("The smallest of them."),
    SY_PUSH_MEASURE (Cart, wheel_diameter, SY_KIND_LENGTH), .low = OVER_ZERO, .high = { SY_BOUND_CLOSED, { 2000, 80 } },
    .range_source = "common practice, no source" },
  { .name = "floor", .label = N_ ("Floor"), .help = N_ ("The worst on the way."),
    SY_PUSH_CHOICE (Cart, floor, floor_choices),
    .default_text = N_ ("taken as smooth concrete") },
  { .name = "rolling_coefficient", .symbol = "C", .label = N_ ("Rolling coefficient"),
    .help = N_ ("As measured: the force that keeps it moving on the level, over its weight; goes before wheel and floor."),
    SY_PUSH_MEASURE (Cart, rolling, SY_KIND_RATIO), .low = FROM_ZERO, .high = UP_TO (1), .range_source = STATICS,
    .default_text = N_ ("as published for wheel and floor") },
  { .name = "start_factor", .label = N_ ("Force to start over force to keep moving"),
    .help = N_ ("Of the rolling alone, on the level."), SY_PUSH_MEASURE (Cart, start_factor, SY_KIND_RATIO),
    .low = FROM_ONE, .high = UP_TO (10), .range_source = "common practice, no source",
    .default_text = N_ ("3; 1 for hard rubber, whose figures are of the start") },
  { .name = "slope", .symbol = "s", .label = N_ ("Steepest slope on the way"),
    .help = N_ ("Degrees, or 2 %; 0 for level."),
    SY_PUSH_MEASURE (Cart, slope, SY_KIND_SLOPE), .low = FROM_ZERO, .high = UNDER (90), .range_source = STATICS },
  { .name = "brake", .label = N_ ("Brake"), SY_PUSH_CHOICE (Cart, brake, brake_choices) },
  { .name = "start_acceleration", .symbol = "a", .label = N_ ("How hard it is started"), .help = N_ ("As a part of g."),
    SY_PUSH_MEASURE (Cart, start_acceleration, SY_KIND_RATIO), .low = FROM_ZERO, .high = UP_TO (1),
    .range_source = STATICS, .default_text = N_ ("0: no faster than it must") },
  { .name = "stop_deceleration", .label = N_ ("How hard it is stopped by hand"), .help = N_ ("As a part of g."),
    SY_PUSH_MEASURE (Cart, stop_deceleration, SY_KIND_RATIO), .low = FROM_ZERO, .high = UP_TO (1),
    .range_source = STATICS, .default_text = N_ ("no stop is judged") },
};

static const SyField fields[] = {
  SY_PUSH_WAY_ROW (Facts),
  { .name = "initial", .symbol = "Fi", .label = N_ ("Force to start it, measured"),
    .help = N_ ("The peak on a spring or force gauge, in line."),
    SY_PUSH_MEASURE (Facts, initial, SY_KIND_HAND_FORCE), .low = FROM_ZERO, .range_source = STATICS,
    .default_text = N_ ("estimated from the cart") },
  { .name = "sustained", .symbol = "Fs", .label = N_ ("Force to keep it moving, measured"),
    .help = N_ ("The steady figure at walking pace, up the steepest slope."),
    SY_PUSH_MEASURE (Facts, sustained, SY_KIND_HAND_FORCE), .low = FROM_ZERO, .range_source = STATICS,
    .default_text = N_ ("estimated from the cart") },
  { .name = "cart", .label = N_ ("Cart"), .type = SY_MEMBER_GROUP,
    .help = N_ ("From which the forces are estimated where they were not measured."), .offset = offsetof (Facts, cart),
    .members = cart_members, .n_members = SY_LEN (cart_members), .group_size = sizeof (Cart),
    .present_offset = offsetof (Facts, cart_given) },
  SY_PUSH_DUTY_ROWS (Facts),
};

/* Quantities */

enum { ROLLING = SY_PUSH_N_Q, N_SYMBOLS };
static const SySymbol symbols[N_SYMBOLS] = {
  SY_PUSH_SYMBOL_ROWS ("as measured, or W (start factor \xc3\x97 C cos s + sin s + a)",
                       "as measured, or W (C cos s + sin s)"),
  [ROLLING] = { "rolling", SY_KIND_RATIO, N_ ("Rolling coefficient"),
                "as measured, or as published for wheel and floor" },
};

/* What the cart asks for */

typedef struct
{
  double coefficient, start_factor, least;
  SyRollingFigure published;
} Rolling;

static double
known (const SyNumber *number)
{
  return number->given ? number->value : (double) NAN;
}

static double
diameter_mm (const Cart *cart, SyUnits units)
{
  return sy_unit_convert (SY_KIND_LENGTH, known (&cart->wheel_diameter), units, SY_UNITS_METRIC);
}

static Rolling
rolling_of (const Cart *cart, SyUnits units)
{
  Rolling out = { .published = sy_push_rolling (cart->wheel, cart->floor, diameter_mm (cart, units)) };

  out.coefficient = cart->rolling.given ? cart->rolling.value : out.published.coefficient;
  out.least = cart->rolling.given ? cart->rolling.value : out.published.least;
  out.start_factor = cart->start_factor.given ? cart->start_factor.value
                     : cart->rolling.given    ? SY_PUSH_START_FACTOR
                                              : out.published.start_factor;
  return out;
}

/* NAN where it was not given: beside measured forces, on the level. */
static double
weight_of (const Cart *cart, SyUnits units)
{
  return units == SY_UNITS_US ? known (&cart->gross_mass) : known (&cart->gross_mass) * SY_GRAVITY;
}

/* The case with the forces: measured ones go before the cart's. A slope that was not given counts as level, and is
   said. */
static void
case_of (const Facts *facts, SyUnits units, SyPushCase *out)
{
  sy_push_case_begin (&facts->duty, units, out);
  if (facts->cart_given == 1)
    {
      const Cart *cart = &facts->cart;
      Rolling rolling = rolling_of (cart, units);
      const SyPushLoad load = {
        .weight = weight_of (cart, units),
        .start = rolling.start_factor * rolling.coefficient,
        .keep = rolling.coefficient,
        .slope_deg = cart->slope.given ? cart->slope.value : 0,
        .acceleration = cart->start_acceleration.given ? cart->start_acceleration.value : 0,
        .deceleration = known (&cart->stop_deceleration),
      };
      sy_push_needs (&load, &out->needs);
      if (!cart->slope.given)
        out->needs.hold = (double) NAN;
    }
  if (facts->initial.given)
    out->needs.initial = facts->initial.value;
  if (facts->sustained.given)
    out->needs.sustained = facts->sustained.value;
}

/* Notes */

static void
say_rolling (const Facts *facts, const Rolling *rolling, SySink *sink)
{
  const Cart *cart = &facts->cart;
  SyNote *note;

  if (!cart->start_factor.given && rolling->start_factor > 1 && !facts->initial.given)
    {
      /* From memory: it may speak against it, never for it. */
      note = sy_sink_note (sink, "push-start-from-memory", SY_NOTE_NEEDED);
      sy_note_arg (note, SY_KIND_RATIO, rolling->start_factor);
      sy_note_source (note, NULL, "2 to 3", true);
    }
  if (cart->rolling.given)
    return;
  if (cart->wheel < 0)
    {
      note = sy_sink_note (sink, "push-no-wheel", SY_NOTE_NEEDED);
      sy_note_arg (note, SY_KIND_RATIO, rolling->coefficient);
      sy_note_source (note, NULL, rolling->published.source, false);
      return;
    }
  if (isnan (rolling->coefficient))
    {
      sy_sink_note (sink, rolling->published.needs_diameter ? "push-no-diameter" : "push-no-figure-for-floor",
                    SY_NOTE_NEEDED);
      return;
    }
  note = rolling->published.from_memory ? sy_sink_note (sink, "push-rolling-from-memory", SY_NOTE_NEEDED)
                                        : sy_sink_note (sink, "push-rolling-published", SY_NOTE_CAUTION);
  sy_note_arg (note, SY_KIND_RATIO, rolling->coefficient);
  sy_note_source (note, NULL, rolling->published.source, rolling->published.from_memory);
  if (cart->floor < 0)
    sy_sink_note (sink, "push-floor-assumed", SY_NOTE_NEEDED); /* another floor may take five times as much */
}

/* Without a brake a cart on a slope runs away as soon as the slope pulls harder than the wheels resist at the least. */
static void
judge_brake (const Cart *cart, double weight, double least, SySink *sink)
{
  if (!cart->slope.given)
    {
      sy_sink_note (sink, "cart-no-slope", SY_NOTE_NEEDED);
      return;
    }
  if (!(cart->slope.value > 0))
    return;
  if (cart->brake < 0)
    sy_sink_note (sink, "cart-no-brake-given", SY_NOTE_NEEDED);
  else if (cart->brake == BRAKE_NONE)
    {
      bool away = sy_push_runs_away (cart->slope.value, least);
      const SyPushLoad load = { .weight = weight, .keep = least };
      SyPushNeeds level;
      sy_push_needs (&load, &level);
      SyNote *note = sy_sink_note (sink, away ? "cart-runs-away" : "cart-slope-without-brake",
                                   away ? SY_NOTE_REFUSED : SY_NOTE_IMPROVE);
      sy_note_arg (note, SY_KIND_HAND_FORCE, sink->quantities[SY_PUSH_Q_HOLD].value);
      sy_note_arg (note, SY_KIND_HAND_FORCE, level.sustained);
      sy_note_source (note, symbols[SY_PUSH_Q_HOLD].symbol, away ? STATICS : "common practice, no source", false);
    }
}

static void
add_notes (const Facts *facts, const SyPushCase *push, SySink *sink)
{
  sy_push_case_notes (push, &facts->duty, sink);
  if (facts->cart_given == 1)
    {
      Rolling rolling = rolling_of (&facts->cart, push->units);
      if (!facts->initial.given || !facts->sustained.given)
        say_rolling (facts, &rolling, sink);
      judge_brake (&facts->cart, weight_of (&facts->cart, push->units), rolling.least, sink);
      if (facts->cart.floor == SY_GROUND_UNEVEN)
        sy_note_source (sy_sink_note (sink, "push-uneven-floor", SY_NOTE_EXCLUDED), NULL, SY_PUSH_FILTER, false);
    }
  else
    {
      if (!facts->initial.given)
        sy_sink_note (sink, "push-no-initial", SY_NOTE_NEEDED);
      if (!facts->sustained.given)
        sy_sink_note (sink, "push-no-sustained", SY_NOTE_NEEDED);
      sy_sink_note (sink, "push-slope-not-asked", SY_NOTE_MISSING);
    }
  sy_sink_note (sink, "cart-way-and-stops", SY_NOTE_CAUTION);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const Facts *facts = data;
  SyPushCase push;

  case_of (facts, context->units, &push);
  sy_push_case_put (&push, sink);
  if (facts->cart_given == 1)
    {
      double coefficient = rolling_of (&facts->cart, context->units).coefficient;
      if (!isnan (coefficient))
        sy_sink_value (sink, ROLLING, coefficient);
    }
  if (!context->quantities_only)
    add_notes (facts, &push, sink);
}

/* Cross-field check */

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const Facts *facts = data;

  sy_push_duty_check (&facts->duty, problems);
  if (!facts->initial.given && !facts->sustained.given && facts->cart_given != 1)
    sy_problems_add (problems, SY_PROBLEM_MISSING, 0, "$.initial", "nothing",
                     "initial and sustained as measured, or a cart from which they are estimated",
                     sy_unit_name (SY_KIND_HAND_FORCE, units));
  if (facts->cart_given == 1 && !facts->cart.gross_mass.given
      && (!facts->initial.given || !facts->sustained.given || facts->cart.slope.value > 0
          || facts->cart.stop_deceleration.given))
    sy_problems_add (problems, SY_PROBLEM_MISSING, 0, "$.cart.gross_mass", "nothing",
                     "the mass of cart and load where a force was not measured, on a slope, or to stop it",
                     sy_unit_name (SY_KIND_MASS, units));
  if (facts->initial.given && facts->sustained.given && facts->sustained.value > facts->initial.value)
    {
      char given[SY_NUMBER_TEXT_MAX];
      sy_number_print (facts->sustained.value, given);
      sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.sustained", given,
                       "at most initial: the force to start it is the peak", sy_unit_name (SY_KIND_HAND_FORCE, units));
    }
}

/* Remedies */

enum { FACTOR_WHEEL, FACTOR_SLOPE, FACTOR_ACCELERATION, FACTOR_DUTY, N_FACTORS = FACTOR_DUTY + SY_PUSH_DUTY_FACTORS };

static double
ratio_with (const void *data, SyUnits units, size_t offset, double value)
{
  Facts facts = *(const Facts *) data;
  SyPushCase push;

  *(SyNumber *) (void *) ((char *) &facts + offset) = (SyNumber) { value, true };
  case_of (&facts, units, &push);
  return sy_push_case_ratio (&push);
}

#define LEVER(path_, factor_, kind_, member_, best_)                                                \
  (SyPushLever)                                                                                     \
  {                                                                                                 \
    .path = "cart." path_, .factor = factor_, .kind = kind_, .offset = offsetof (Facts, cart.member_), \
    .now = facts->cart.member_.value, .best = best_                                                 \
  }

static size_t
candidates (const void *data, const SyContext *context, const SyGoal *goal, size_t factor, SyChange *changes,
            SyChange *best, bool *has_best)
{
  const Facts *facts = data;
  const Cart *cart = &facts->cart;
  SyUnits units = context->units;
  bool estimated = facts->cart_given == 1 && !(facts->initial.given && facts->sustained.given);
  SyPushLever lever;
  SyPushCase push;

  (void) goal; /* each limit is its own: the goal is a ratio of 1, and rungs below it */
  *has_best = false;
  case_of (facts, context->units, &push);
  if (isnan (sy_push_case_ratio (&push)))
    return 0; /* no force is known: nothing can be promised */
  if (factor >= FACTOR_DUTY)
    return sy_push_duty_candidates (&facts->duty, offsetof (Facts, duty), facts, units, ratio_with,
                                    factor - FACTOR_DUTY, changes, best, has_best);
  if (!estimated)
    return 0;
  if (factor == FACTOR_WHEEL)
    {
      double best_mm = rolling_of (cart, units).published.best_mm;
      double from_here = sy_unit_convert (SY_KIND_LENGTH, best_mm, SY_UNITS_METRIC, units);
      if (cart->rolling.given || !cart->wheel_diameter.given || !(cart->wheel_diameter.value < from_here))
        return 0;
      lever = LEVER ("wheel_diameter", "wheels", SY_KIND_LENGTH, wheel_diameter, from_here);
    }
  else if (factor == FACTOR_SLOPE)
    lever = LEVER ("slope", "slope", SY_KIND_SLOPE, slope, 0);
  else
    lever = LEVER ("start_acceleration", "start", SY_KIND_RATIO, start_acceleration, 0);
  if (factor != FACTOR_WHEEL && !(lever.now > 0))
    return 0;
  return sy_push_pull_lever (&lever, facts, units, ratio_with, changes);
}

static bool
largest_mass (const void *data, const SyContext *context, const SyGoal *goal, double *mass, SyChange *change)
{
  const Facts *facts = data;
  size_t offset = offsetof (Facts, cart.gross_mass);

  (void) goal;
  if (facts->cart_given != 1 || facts->initial.given || facts->sustained.given
      || !sy_push_heaviest (facts, context->units, ratio_with, offset, mass))
    return false;
  *change = (SyChange) { .path = "cart.gross_mass", .factor = "load", .type = SY_CHANGE_NUMBER, .kind = SY_KIND_MASS,
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
    .slope_deg = facts->cart_given == 1 && facts->cart.slope.given ? facts->cart.slope.value : 0,
    .wheel_diameter = facts->cart_given == 1 ? known (&facts->cart.wheel_diameter) : (double) NAN,
    .mass = facts->cart_given == 1 ? known (&facts->cart.gross_mass) : (double) NAN,
    .wheels = true,
    .mass_fact = "cart.gross_mass",
    .slope_fact = facts->cart_given == 1 ? "cart.slope" : NULL,
    .governing = sink->governing,
  };
  sy_push_scene_side (out, &picture);
}

extern const SyMethod sy_method_push;
const SyMethod sy_method_push = {
  .id = "push",
  .title = N_ ("Pushing and pulling"),
  .source = "Snook and Ciriello 1991 and Potvin and others 2021 (from memory); HSE, assessing pushing and pulling; "
            "ISO/TR 12295 (from memory); statics of rolling",
  .conditions_source = "HSE, assessing pushing and pulling; what the tables did not measure: common practice, no source",
  .edition = 1,
  .item_kind = "task",
  .memory_caution = N_ ("What people accept and the critical forces stand here from memory and were not checked against the "
                        "publications; they may tighten a verdict but are never the only ground for a favourable one."),
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
