/* SPDX-License-Identifier: MIT */
#include "sy-cart.h"

#include <math.h>

#include "sy-standing.h"

/* A die cart: its rated load, what it takes to push it, and what turns it over. */

#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define FROM_ONE { SY_BOUND_CLOSED, { 1, 1 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }
#define UNDER(value) { SY_BOUND_OPEN, { value, value } }
#define STATICS "statics: sum of forces and moments"

typedef enum { FLOOR_SMOOTH, FLOOR_WORN, FLOOR_ROUGH } Floor;
typedef enum { BRAKE_NONE, BRAKE_PARKING, BRAKE_DEAD_MAN } Brake;

typedef struct
{
  SyCommonFacts common;
  SyNumber gross_mass, load_mass, rated_load, wheels;
  int wheel; /* SyWheel or -1 */
  SyNumber rolling, start_factor;
  int floor; /* Floor or -1   */
  SyNumber slope, track, wheelbase, cg_height, push_height;
  int brake; /* Brake or -1   */
  SyNumber deceleration;
  const char *due;
  int withdrawn;
} Facts;

/* Fields */

/* In the order of SyWheel. */
static const SyChoice wheel_choices[SY_N_WHEELS] = {
  { "steel-on-rail", N_ ("Steel on a steel rail"), N_ ("0.002 to 0.003") },
  { "rubber", N_ ("Rubber"), N_ ("0.01 to 0.02, on concrete") },
  { "polyurethane", N_ ("Polyurethane"), N_ ("0.01 to 0.03, on smooth concrete") },
  { "rollers", N_ ("Rollers or balls under the die"), N_ ("0.01 to 0.05, on a bolster") },
};
static const SyChoice floor_choices[] = {
  [FLOOR_SMOOTH] = { "smooth", N_ ("Smooth"), N_ ("as the figures for wheels hold") },
  [FLOOR_WORN] = { "worn", N_ ("Worn"), N_ ("joints, patches: measure the rolling resistance") },
  [FLOOR_ROUGH] = { "rough", N_ ("Rough"), N_ ("grating, holes, chips: measure the rolling resistance") },
};
static const SyChoice brake_choices[] = {
  [BRAKE_NONE] = { "none", N_ ("None"), NULL },
  [BRAKE_PARKING] = { "parking", N_ ("Parking brake"), N_ ("holds it where it stands") },
  [BRAKE_DEAD_MAN] = { "dead-man", N_ ("Dead-man brake"), N_ ("holds it when it is let go") },
};

#define NUMBER(member_, kind_) .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (Facts, member_)
#define CHOICE(member_, choices_) \
  .type = SY_MEMBER_CHOICE, .offset = offsetof (Facts, member_), .choices = choices_, .n_choices = SY_LEN (choices_)

static const SyField fields[] = {
  { .name = "gross_mass", .symbol = "m", .label = N_ ("Mass of cart and load"), .help = N_ ("With what is not known added to it."),
    NUMBER (gross_mass, SY_KIND_MASS), .required = true, .low = OVER_ZERO },
  { .name = "load_mass", .label = N_ ("Mass of the load"), .help = N_ ("Held against the rated load."),
    NUMBER (load_mass, SY_KIND_MASS), .low = OVER_ZERO, .default_text = N_ ("taken as the mass of cart and load") },
  { .name = "rated_load", .label = N_ ("Rated load"), .help = N_ ("As marked on the cart."),
    NUMBER (rated_load, SY_KIND_MASS), .low = OVER_ZERO },
  { .name = "wheels", .label = N_ ("Wheels"), .help = N_ ("How many touch the floor."), NUMBER (wheels, SY_KIND_COUNT),
    .whole = true, .low = FROM_ONE, .high = UP_TO (100) },
  { .name = "wheel", .label = N_ ("Kind of wheel"), CHOICE (wheel, wheel_choices) },
  { .name = "rolling_coefficient", .symbol = "C", .label = N_ ("Rolling coefficient"),
    .help = N_ ("The force that keeps it moving on the level, over its weight; goes before the kind of wheel."),
    NUMBER (rolling, SY_KIND_RATIO), .low = FROM_ZERO, .high = UP_TO (1),
    .default_text = N_ ("the upper end of what is published for the wheel") },
  { .name = "start_factor", .label = N_ ("Force to start over force to keep moving"),
    NUMBER (start_factor, SY_KIND_RATIO), .low = FROM_ONE, .high = UP_TO (10), .default_text = N_ ("2.5") },
  { .name = "floor", .label = N_ ("Floor"), CHOICE (floor, floor_choices), .default_text = N_ ("taken as smooth") },
  { .name = "slope", .symbol = "s", .label = N_ ("Steepest slope on the way"), .help = N_ ("Degrees, or 2 %; 0 for level."),
    NUMBER (slope, SY_KIND_SLOPE), .low = FROM_ZERO, .high = UNDER (90) },
  { .name = "track", .label = N_ ("Track"), .help = N_ ("Between the wheels, across."), NUMBER (track, SY_KIND_LENGTH),
    .low = OVER_ZERO },
  { .name = "wheelbase", .label = N_ ("Wheelbase"), .help = N_ ("Between the axles, along."),
    NUMBER (wheelbase, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "cg_height", .label = N_ ("Height of the centre of gravity"), .help = N_ ("Of cart and load over the floor."),
    NUMBER (cg_height, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "push_height", .label = N_ ("Height of the hands"), .help = N_ ("Where it is pushed, over the floor."),
    NUMBER (push_height, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "brake", .label = N_ ("Brake"), CHOICE (brake, brake_choices) },
  { .name = "deceleration", .label = N_ ("Hardest stop"), .help = N_ ("As a part of g: a brake, a stop that it runs against."),
    NUMBER (deceleration, SY_KIND_RATIO), .low = FROM_ZERO, .high = UP_TO (10),
    .default_text = N_ ("no stop is judged") },
  { .name = "due", .label = N_ ("Next examination"), .help = N_ ("From its last report."), .type = SY_MEMBER_DATE,
    .offset = offsetof (Facts, due) },
  { .name = "withdrawn", .label = N_ ("Withdrawn from use"), .type = SY_MEMBER_BOOL, .offset = offsetof (Facts, withdrawn),
    .default_text = N_ ("no") },
};

/* Quantities */

enum
{
  INITIAL, SUSTAINED, HOLD, TIP_PUSH, TIP_SLOPE, TIP_DECELERATION, TIPPING, WHEEL_LOAD, UTILISATION, VALID_UNTIL,
  N_SYMBOLS
};

static const SySymbol symbols[N_SYMBOLS] = {
  [INITIAL] = { "initial", SY_KIND_HAND_FORCE, N_ ("Force to start it"), "W (start factor \xc3\x97 C cos s + sin s)" },
  [SUSTAINED] = { "sustained", SY_KIND_HAND_FORCE, N_ ("Force to keep it moving"), "W (C cos s + sin s)" },
  [HOLD] = { "hold", SY_KIND_HAND_FORCE, N_ ("Force to hold it on the slope"), "W sin s" },
  [TIP_PUSH] = { "tip.push", SY_KIND_HAND_FORCE, N_ ("Push that tips it"), "W b / push height" },
  [TIP_SLOPE] = { "tip.slope", SY_KIND_ANGLE, N_ ("Slope that tips it"), "atan (b / height of the centre)" },
  [TIP_DECELERATION] = { "tip.deceleration", SY_KIND_RATIO, N_ ("Stop that tips it, in g"), "b / height of the centre" },
  [TIPPING] = { "tipping", SY_KIND_RATIO, N_ ("Nearest to tipping"), STATICS },
  [WHEEL_LOAD] = { "wheel.load", SY_KIND_MASS, N_ ("Load on the worst wheel"),
                   "a stiff cart stands on three wheels (assumed, no source)" },
  [UTILISATION] = { "utilisation", SY_KIND_RATIO, N_ ("Load against the rated load"), "load / rated load" },
  [VALID_UNTIL] = { "valid_until", SY_KIND_DATE, N_ ("Examination that falls due"), "as given" },
};

/* Evaluation */

static void
need (SySink *sink, bool is_known, const char *id)
{
  if (!is_known)
    sy_sink_note (sink, id, SY_NOTE_NEEDED);
}

static double
known (const SyNumber *number)
{
  return number->given ? number->value : NAN;
}

/* The coefficient that forces are worked out with; NAN where neither a figure nor a kind of wheel was given. */
static double
rolling_of (const Facts *facts)
{
  if (facts->rolling.given)
    return facts->rolling.value;
  return facts->wheel >= 0 ? sy_cart_rolling ((SyWheel) facts->wheel).high : NAN;
}

static void
say_rolling (const Facts *facts, SySink *sink)
{
  if (facts->rolling.given)
    return;
  if (facts->wheel < 0)
    {
      sy_sink_note (sink, "cart-no-wheel", SY_NOTE_NEEDED);
      return;
    }
  SyRolling published = sy_cart_rolling ((SyWheel) facts->wheel);
  /* The published figures are of good floors: on another one only a measurement says. */
  bool other_floor = facts->floor == FLOOR_WORN || facts->floor == FLOOR_ROUGH;
  SyNote *note = sy_sink_note (sink, other_floor ? "cart-floor-not-smooth" : "cart-rolling-published",
                               other_floor ? SY_NOTE_NEEDED : SY_NOTE_CAUTION);
  sy_note_arg (note, SY_KIND_RATIO, published.high);
  sy_note_source (note, NULL, published.source, published.from_memory);
}

/* Without a brake a cart on a slope runs away as soon as the slope pulls harder than the wheels resist. The figure for the
   wheels is the lowest that is published, or the one that was measured. */
static void
judge_brake (const Facts *facts, double weight, SySink *sink)
{
  double least = facts->rolling.given ? facts->rolling.value
                 : facts->wheel >= 0 ? sy_cart_rolling ((SyWheel) facts->wheel).low
                                     : 0;
  SyCart down = { .weight = weight, .rolling = least, .start_factor = 1, .slope_deg = facts->slope.value, .arm = NAN,
                  .cg_height = NAN, .push_height = NAN, .deceleration = NAN };
  SyCartForces forces;

  if (!facts->slope.given || !(facts->slope.value > 0))
    return;
  sy_cart_forces (&down, &forces);
  if (facts->brake < 0)
    sy_sink_note (sink, "cart-no-brake-given", SY_NOTE_NEEDED);
  else if (facts->brake == BRAKE_NONE)
    {
      double resists = forces.sustained - forces.hold;
      bool away = forces.hold > resists;
      SyNote *note = sy_sink_note (sink, away ? "cart-runs-away" : "cart-slope-without-brake",
                                   away ? SY_NOTE_REFUSED : SY_NOTE_IMPROVE);
      sy_note_arg (note, SY_KIND_HAND_FORCE, forces.hold);
      sy_note_arg (note, SY_KIND_HAND_FORCE, resists);
      sy_note_source (note, symbols[HOLD].symbol, away ? STATICS : "common practice, no source", false);
    }
}

static void
put_forces (const Facts *facts, double weight, SySink *sink)
{
  const SyCart cart = {
    .weight = weight,
    .rolling = rolling_of (facts),
    .start_factor = facts->start_factor.given ? facts->start_factor.value : SY_CART_START_FACTOR,
    .slope_deg = known (&facts->slope),
    .arm = sy_cart_arm (known (&facts->track), known (&facts->wheelbase)),
    .cg_height = known (&facts->cg_height),
    .push_height = known (&facts->push_height),
    .deceleration = known (&facts->deceleration),
  };
  SyCartForces forces;

  sy_cart_forces (&cart, &forces);
  const double values[] = { forces.initial,  forces.sustained,        forces.hold,   forces.tip_push, forces.tip_slope_deg,
                            forces.tip_deceleration, forces.tipping };
  for (size_t i = 0; i < SY_LEN (values); i++)
    if (!isnan (values[i]))
      sy_sink_value (sink, INITIAL + i, values[i]);
  if (!facts->start_factor.given)
    {
      SyNote *note = sy_sink_note (sink, "cart-start-assumed", SY_NOTE_CAUTION);
      sy_note_arg (note, SY_KIND_RATIO, SY_CART_START_FACTOR);
    }
  if (!facts->deceleration.given && !isnan (forces.tip_deceleration))
    sy_note_arg (sy_sink_note (sink, "cart-no-stop-judged", SY_NOTE_CAUTION), SY_KIND_RATIO, forces.tip_deceleration);
}

static void
put_load (const Facts *facts, SySink *sink)
{
  double load = facts->load_mass.given ? facts->load_mass.value : facts->gross_mass.value;

  if (facts->wheels.given)
    sy_sink_value (sink, WHEEL_LOAD, sy_cart_wheel_load (facts->gross_mass.value, (int) facts->wheels.value));
  if (!facts->load_mass.given)
    sy_sink_note (sink, "cart-gross-judged", SY_NOTE_CAUTION);
  if (facts->rated_load.given)
    sy_sink_value (sink, UTILISATION, load / facts->rated_load.value);
}

static double
value_of (const SySink *sink, size_t symbol)
{
  return sink->quantities[symbol].state == SY_STATE_ABSENT ? -1 : sink->quantities[symbol].value;
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const Facts *facts = data;
  double weight = sy_cart_weight (facts->gross_mass.value, context->units);
  double due = sy_standing (sink, "", facts->due, facts->withdrawn, sy_as_of (&facts->common, context));

  if (isfinite (due))
    sy_sink_value (sink, VALID_UNTIL, due);
  need (sink, facts->rated_load.given, "cart-no-rated-load");
  need (sink, facts->slope.given, "cart-no-slope");
  need (sink, facts->track.given && facts->wheelbase.given, "cart-no-footprint");
  need (sink, facts->cg_height.given, "cart-no-centre-height");
  need (sink, facts->push_height.given, "cart-no-push-height");
  say_rolling (facts, sink);
  put_load (facts, sink);
  put_forces (facts, weight, sink);
  judge_brake (facts, weight, sink);
  if (value_of (sink, UTILISATION) >= 0 || value_of (sink, TIPPING) >= 0)
    sink->governing = symbols[value_of (sink, TIPPING) > value_of (sink, UTILISATION) ? TIPPING : UTILISATION].symbol;
  sy_sink_note (sink, "cart-mass-as-given", SY_NOTE_CAUTION);
  sy_sink_note (sink, "cart-way-and-stops", SY_NOTE_CAUTION);
}

/* Cross-field check */

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const Facts *facts = data;
  char given[SY_NUMBER_TEXT_MAX];

  if (facts->gross_mass.given && facts->load_mass.given && facts->load_mass.value > facts->gross_mass.value)
    {
      sy_number_print (facts->load_mass.value, given);
      sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.load_mass", given, "at most the mass of cart and load together",
                       sy_unit_name (SY_KIND_MASS, units));
    }
}

/* Formulas */

static bool
formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  SyText line = { text, SY_FORMULA_MAX, 0 };
  double value = sink->quantities[symbol].value, push = value_of (sink, TIP_PUSH), initial = value_of (sink, INITIAL);

  if (symbol != TIPPING || push < 0 || initial < 0 || fabs (value - initial / push) > 1e-12 * value)
    return false; /* another of the ways to tip is nearer */
  sy_text_add_measure (&line, initial, 1, SY_KIND_HAND_FORCE, units);
  sy_text_add (&line, " / ");
  sy_text_add_measure (&line, push, 1, SY_KIND_HAND_FORCE, units);
  sy_text_add (&line, " = ");
  sy_text_add_rounded (&line, value, 3);
  return true;
}

extern const SyMethod sy_method_cart;
const SyMethod sy_method_cart = {
  .id = "cart",
  .title = N_ ("Die cart"),
  .source = "Statics of rolling and tipping; rolling coefficients as named at each kind of wheel",
  .conditions_source = "common practice, no source",
  .edition = 1,
  .item_kind = "task",
  .by_capacity = true,
  .dated = true,
  .memory_caution = N_ ("Figures for starting and for some wheels stand here from memory and were not checked; "
                        "the rated load and statics decide beside them, and they may only tighten."),
  .facts_size = sizeof (Facts),
  .fields = fields,
  .n_fields = SY_LEN (fields),
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .index_symbol = "utilisation",
  .check = check,
  .evaluate = evaluate,
  .formula = formula,
};
