/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "carry-scene.h"
#include "sy-carry-facts.h"
#include "sy-lift-facts.h"

/* Carrying by one person: cumulative mass, what people accept, guideline figures, beside each other. */

#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define FROM_ONE { SY_BOUND_CLOSED, { 1, 1 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }
#define OURS "common practice, no source"
#define ISO "ISO 11228-1:2003 table 1 (from memory)"
#define ISO_NEW "ISO 11228-1:2021 (from memory, low confidence)"
#define TABLES "Snook and Ciriello 1991, carrying (from memory)"
#define EQUATIONS "Potvin, Ciriello, Snook and others 2021 (from memory)"
#define ACCEPTED TABLES "; " EQUATIONS
#define ANNEX_C "ISO 11228-1:2003 Annex C (from memory)"
#define UK "UK HSE L23 guideline figures (read second-hand)"

/* Fields */

/* In the order of SyCarrySex. */
static const SyChoice who_choices[] = {
  { "women", N_ ("Women"), N_ ("the stricter figures") },
  { "men", N_ ("Men"), N_ ("only where nobody else may be assigned") },
};

/* What no source here covers: "carry-" before it is the note's id. ISO 11228-1 clause 1: level, 0.5 to 1.0 m/s (read);
   the guideline's conditions (read second-hand). */
static const SyChoice condition_choices[] = {
  { "stairs", N_ ("Stairs, steps or a ladder on the way"), NULL },
  { "slope", N_ ("A way that is not level"), NULL },
  { "slippery-or-uneven", N_ ("Floor slippery, oily or uneven"), NULL },
  { "restricted-space", N_ ("Not enough room to walk upright and freely"), NULL },
  { "away-from-body", N_ ("Held away from the body"), NULL },
  { "on-shoulder-or-back", N_ ("On a shoulder, the back or the head"), NULL },
  { "at-one-side", N_ ("At one side of the body, or not in front"), NULL },
  { "unstable-load", N_ ("Load that shifts, swings or spills"), NULL },
  { "poor-grip", N_ ("Hard to hold, sharp, hot, or in the way of the eyes"), NULL },
  { "fast", N_ ("Faster than a walk of 1 m/s (3.3 ft/s)"), NULL },
  { "temperature-or-humidity", N_ ("Hot, cold or humid, well outside 19 to 26 °C"), NULL },
  { "protected-persons", N_ ("Done by someone pregnant, under age, injured or returning to work"), NULL },
};
static const char *const condition_notes[SY_LEN (condition_choices)] = {
  "carry-stairs", "carry-slope", "carry-slippery-or-uneven", "carry-restricted-space", "carry-away-from-body",
  "carry-on-shoulder-or-back", "carry-at-one-side", "carry-unstable-load", "carry-poor-grip", "carry-fast",
  "carry-temperature-or-humidity", "carry-protected-persons",
};

#define NUMBER(member_, kind_) .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (SyCarryFacts, member_)
#define CHOICE(member_, choices_)                                                                                  \
  .type = SY_MEMBER_CHOICE, .offset = offsetof (SyCarryFacts, member_), .choices = choices_,                       \
  .n_choices = SY_LEN (choices_)
#define BOOL(member_) .type = SY_MEMBER_BOOL, .offset = offsetof (SyCarryFacts, member_)

static const SyField fields[] = {
  { .name = "mass", .symbol = "m", .label = N_ ("Mass"), .help = N_ ("Of the heaviest load that is carried."),
    NUMBER (mass, SY_KIND_MASS), .required = true, .low = OVER_ZERO },
  { .name = "typical_mass", .label = N_ ("Typical mass"),
    .help = N_ ("Average of all loads: the sums are made with it."), NUMBER (typical_mass, SY_KIND_MASS),
    .low = OVER_ZERO, .default_text = N_ ("taken as the mass") },
  { .name = "distance", .symbol = "d", .label = N_ ("Distance"), .help = N_ ("Walked with the load, without resting."),
    NUMBER (distance, SY_KIND_DISTANCE), .required = true, .low = OVER_ZERO },
  { .name = "frequency", .symbol = "F", .label = N_ ("Pace"), .help = N_ ("Carries a minute, or 80/h, or 45/8h."),
    NUMBER (frequency, SY_KIND_FREQUENCY), .required = true, .low = OVER_ZERO },
  { .name = "minutes", .label = N_ ("Time of carrying"), .help = N_ ("Minutes of the day at that pace, or 3 h."),
    NUMBER (minutes, SY_KIND_MINUTES), .low = OVER_ZERO, .high = UP_TO (1440), .default_text = N_ ("480 min") },
  { .name = "height", .symbol = "V", .label = N_ ("Height of the hands"), .help = N_ ("Floor to grip, while walking."),
    NUMBER (height, SY_KIND_REACH), .required = true, .low = FROM_ZERO },
  { .name = "assigned", .label = N_ ("Who may be assigned"), .help = N_ ("Sets the reference mass."),
    .type = SY_MEMBER_CHOICE, .offset = offsetof (SyCarryFacts, assigned), .choices = sy_lift_assigned_choices,
    .n_choices = 3, .default_text = N_ ("the policy's") },
  { .name = "who", .label = N_ ("Whose figures judge"), .help = N_ ("Of the tables and the guideline."),
    CHOICE (who, who_choices), .default_text = N_ ("women") },
  { .name = "percent", .label = N_ ("Part of them who shall be able to"), .help = N_ ("90, 75 or 50 %."),
    NUMBER (percent, SY_KIND_PERCENT), .whole = true, .low = { SY_BOUND_CLOSED, { 50, 50 } }, .high = UP_TO (90),
    .range_source = "what the tables print", .default_text = N_ ("90 %") },
  { .name = "hands", .label = N_ ("Hands"), .help = N_ ("2, or 1 when carried with one hand."),
    NUMBER (hands, SY_KIND_COUNT), .whole = true, .low = FROM_ONE, .high = UP_TO (2), .default_text = N_ ("2") },
  { .name = "persons", .label = N_ ("Persons"), .help = N_ ("How many carry it together."),
    NUMBER (persons, SY_KIND_COUNT), .whole = true, .low = FROM_ONE, .default_text = N_ ("1") },
  { .name = "poor_lift", .label = N_ ("Lifted from low or high"),
    .help = N_ ("Taken up from below the knee or from above the shoulder."), BOOL (poor_lift),
    .default_text = N_ ("taken as no") },
  { .name = "poor_surroundings", .label = N_ ("Bad surroundings"), .help = N_ ("Poor light, heat, cold, poor floor."),
    BOOL (poor_surroundings), .default_text = N_ ("taken as no") },
  { .name = "conditions", .label = N_ ("Conditions"),
    .help = N_ ("Ask about each. No limit here holds where one applies."), .type = SY_MEMBER_SET,
    .offset = offsetof (SyCarryFacts, conditions), .choices = condition_choices,
    .n_choices = SY_LEN (condition_choices), .default_text = N_ ("not asked") },
};

/* Quantities */

#define PAIR(name_, kind_, limit_, ratio_, source_)                                                                \
  { name_ ".limit", kind_, limit_, source_ }, { name_ ".ratio", SY_KIND_RATIO, ratio_, source_ }

static const SySymbol symbols[SY_CARRY_N_SYMBOLS] = {
  { "mass", SY_KIND_MASS, N_ ("Heaviest load"), "as given" },
  { "mass_each", SY_KIND_MASS, N_ ("Heaviest load by person"), OURS },
  { "m_ref", SY_KIND_MASS, N_ ("Reference mass of who may be assigned"), ANNEX_C },
  { "mass_ratio", SY_KIND_RATIO, N_ ("Heaviest load against the reference mass"), ANNEX_C },
  { "mass_summed", SY_KIND_MASS, N_ ("Mass that sums are made with"), "as given" },
  { "F", SY_KIND_FREQUENCY, N_ ("Carries a minute"), "as given" },
  { "distance", SY_KIND_DISTANCE, N_ ("Distance"), "as given" },
  { "minutes", SY_KIND_MINUTES, N_ ("Time of carrying in the day"), "as given" },
  { "persons", SY_KIND_COUNT, N_ ("Persons"), "as given" },
  { "mass_per_min", SY_KIND_MASS, N_ ("Mass carried in a minute"), "mass × carries" },
  { "mass_per_hour", SY_KIND_MASS, N_ ("Mass carried in the busiest hour"), "mass × carries" },
  { "mass_per_4h", SY_KIND_MASS, N_ ("Mass carried in four hours"), "mass × carries" },
  { "mass_per_day", SY_KIND_MASS, N_ ("Mass carried in the day"), "mass × carries" },
  PAIR ("iso.pace", SY_KIND_FREQUENCY, N_ ("Most carries a minute at this distance"),
        N_ ("Pace against the most at this distance"), ISO),
  PAIR ("iso.minute", SY_KIND_MASS, N_ ("Most mass in a minute"), N_ ("Mass in a minute against the most"), ISO),
  PAIR ("iso.hour", SY_KIND_MASS, N_ ("Most mass in an hour"), N_ ("Mass in an hour against the most"), ISO),
  PAIR ("iso.day", SY_KIND_MASS, N_ ("Most mass in the day"), N_ ("Mass in the day against the most"), ISO),
  PAIR ("iso21.minute", SY_KIND_MASS, N_ ("Most mass in a minute, 2021"),
        N_ ("Mass in a minute against the most, 2021"), ISO_NEW),
  PAIR ("iso21.hour", SY_KIND_MASS, N_ ("Most mass in an hour, 2021"), N_ ("Mass in an hour against the most, 2021"),
        ISO_NEW),
  PAIR ("iso21.4h", SY_KIND_MASS, N_ ("Most mass in four hours, 2021"),
        N_ ("Mass in four hours against the most, 2021"), ISO_NEW),
  PAIR ("iso21.day", SY_KIND_MASS, N_ ("Most mass in the day, 2021"), N_ ("Mass in the day against the most, 2021"),
        ISO_NEW),
  PAIR ("table", SY_KIND_MASS, N_ ("What that part of them could, by the tables"), N_ ("Mass against the tables"),
        TABLES),
  PAIR ("equation", SY_KIND_MASS, N_ ("What that part of them could, by the equations"),
        N_ ("Mass against the equations"), EQUATIONS),
  PAIR ("uk", SY_KIND_MASS, N_ ("Guideline figure, with its reduction for pace"),
        N_ ("Mass against the guideline figure"), UK),
  { "psycho.limit", SY_KIND_MASS, N_ ("What that part of them could: the lower of tables and equations"), ACCEPTED },
  { "psycho.ratio", SY_KIND_RATIO, N_ ("Mass against the lower of tables and equations"), ACCEPTED },
  { "women.percent", SY_KIND_PERCENT, N_ ("Women who could"), ACCEPTED },
  { "men.percent", SY_KIND_PERCENT, N_ ("Men who could"), ACCEPTED },
  { "ratio", SY_KIND_RATIO, N_ ("Nearest to, or farthest over, a limit"), "largest of the ratios" },
};

#define TABLE_1 "ISO 11228-1:2003 table 1"
#define OF_2021 "ISO 11228-1:2021, low confidence"
#define LIMIT(id_, title_, edition_, value_, name_)                                                                \
  { id_, title_, edition_, true, value_, name_ ".limit", name_ ".ratio" }

/* In the order of SyCarryLimit. */
static const SyLimit limits[SY_CARRY_N_LIMITS] = {
  { "reference", N_ ("Reference mass"), "ISO 11228-1:2003 Annex C", true, "mass_each", "m_ref", "mass_ratio" },
  LIMIT ("iso-pace", N_ ("Carries a minute"), TABLE_1, "F", "iso.pace"),
  LIMIT ("iso-minute", N_ ("Mass in a minute"), TABLE_1, "mass_per_min", "iso.minute"),
  LIMIT ("iso-hour", N_ ("Mass in an hour"), TABLE_1, "mass_per_hour", "iso.hour"),
  LIMIT ("iso-day", N_ ("Mass in the day"), TABLE_1, "mass_per_day", "iso.day"),
  LIMIT ("iso21-minute", N_ ("Mass in a minute"), OF_2021, "mass_per_min", "iso21.minute"),
  LIMIT ("iso21-hour", N_ ("Mass in an hour"), OF_2021, "mass_per_hour", "iso21.hour"),
  LIMIT ("iso21-4h", N_ ("Mass in four hours"), OF_2021, "mass_per_4h", "iso21.4h"),
  LIMIT ("iso21-day", N_ ("Mass in the day"), OF_2021, "mass_per_day", "iso21.day"),
  LIMIT ("table", N_ ("What people accept, tables"), "Snook and Ciriello 1991", "mass", "table"),
  LIMIT ("equation", N_ ("What people accept, equations"), "Potvin, Ciriello, Snook and others 2021", "mass",
         "equation"),
  { "uk", N_ ("Guideline figure"), "UK HSE L23, read second-hand", false, "mass", "uk.limit", "uk.ratio" },
};

/* Evaluation */

void
sy_carry_case (const SyCarryFacts *facts, const SyContext *context, SyCarry *out)
{
  int assigned = facts->assigned < 0 ? context->default_assigned : facts->assigned;
  double mass = facts->mass.value;

  *out = (SyCarry) {
    .units = context->units,
    .mass = mass,
    .mass_each = mass / (facts->persons.given ? facts->persons.value : 1),
    .mean_mass = facts->typical_mass.given ? fmin (facts->typical_mass.value, mass) : mass,
    .distance_m = sy_unit_convert (SY_KIND_DISTANCE, facts->distance.value, context->units, SY_UNITS_METRIC),
    .per_min = facts->frequency.value,
    .minutes = facts->minutes.given ? facts->minutes.value : SY_CARRY_MINUTES,
    .height_cm = sy_unit_convert (SY_KIND_REACH, facts->height.value, context->units, SY_UNITS_METRIC),
    .reference_mass = sy_lift_reference_mass ((SyAssigned) assigned, context->units),
    .reduced = facts->poor_lift == 1 || facts->poor_surroundings == 1,
    .sex = facts->who == SY_CARRY_MEN ? SY_CARRY_MEN : SY_CARRY_WOMEN,
    .percent = facts->percent.given ? (int) facts->percent.value : 90,
  };
}

/* A note about one of the facts, with the value that it has and the one that is left. */
static void
say (SySink *sink, const char *id, SyNoteClass note_class, SyKind kind, double value, double limit, const char *source)
{
  SyNote *note = sy_sink_note (sink, id, note_class);

  sy_note_arg (note, kind, value);
  if (!isnan (limit))
    sy_note_arg (note, kind, limit);
  sy_note_source (note, NULL, source, strcmp (source, UK) != 0 && strcmp (source, OURS) != 0);
}

static double
measure (SyKind kind, double metric, SyUnits units)
{
  return sy_unit_convert (kind, metric, SY_UNITS_METRIC, units);
}

/* What the sources leave out, and what none but those from memory speaks for. */
static void
say_beyond (const SyCarryFacts *facts, const SyCarry *carry, const SyCarryBeyond *beyond, SySink *sink)
{
  SyUnits units = carry->units;
  double distance = facts->distance.value, height = facts->height.value;

  if (beyond->over_20_m)
    say (sink, "carry-over-20-m", SY_NOTE_EXCLUDED, SY_KIND_DISTANCE, distance, measure (SY_KIND_DISTANCE, 20, units),
         ISO);
  else if (beyond->over_uk)
    say (sink, "carry-over-10-m", SY_NOTE_NEEDED, SY_KIND_DISTANCE, distance, measure (SY_KIND_DISTANCE, 10, units),
         UK);
  else if (beyond->farther_than_tables)
    say (sink, "carry-farther-than-tables", SY_NOTE_CAUTION, SY_KIND_DISTANCE, distance,
         measure (SY_KIND_DISTANCE, 8.5, units), TABLES);
  if (beyond->below_knuckle)
    say (sink, "carry-below-knuckle", SY_NOTE_NEEDED, SY_KIND_REACH, height,
         measure (SY_KIND_REACH, sy_carry_knuckle (carry->sex), units), UK);
  if (beyond->above_elbow)
    say (sink, "carry-above-elbow", SY_NOTE_NEEDED, SY_KIND_REACH, height,
         measure (SY_KIND_REACH, sy_carry_elbow (carry->sex), units), TABLES);
  if (beyond->faster_than_tables)
    say (sink, "carry-faster-than-tables", SY_NOTE_NEEDED, SY_KIND_FREQUENCY, carry->per_min, NAN, TABLES);
}

static void
add_notes (const SyCarryFacts *facts, const SyCarry *carry, const SyCarryBeyond *beyond, SySink *sink)
{
  /* Table 1 is made of single masses of 15 kg; from memory. */
  double frequent = sy_lift_reference_mass (SY_ASSIGNED_ANY_AGE, carry->units);

  for (size_t i = 0; i < SY_LEN (condition_notes) && facts->conditions.given; i++)
    if (facts->conditions.bits & (1ul << i))
      sy_sink_note (sink, condition_notes[i], SY_NOTE_EXCLUDED);
  if (!facts->conditions.given)
    sy_sink_note (sink, "carry-conditions-not-asked", SY_NOTE_MISSING);
  if (facts->hands.given && facts->hands.value < 2)
    sy_sink_note (sink, "carry-one-hand", SY_NOTE_EXCLUDED);
  if (facts->persons.given && facts->persons.value > 1)
    say (sink, "carry-several-persons", SY_NOTE_EXCLUDED, SY_KIND_COUNT, facts->persons.value, NAN, OURS);
  if (carry->minutes > SY_CARRY_MINUTES)
    say (sink, "carry-over-8h", SY_NOTE_EXCLUDED, SY_KIND_MINUTES, carry->minutes, SY_CARRY_MINUTES, ISO);
  say_beyond (facts, carry, beyond, sink);

  if (!facts->minutes.given)
    say (sink, "carry-minutes-taken", SY_NOTE_CAUTION, SY_KIND_MINUTES, SY_CARRY_MINUTES, NAN, OURS);
  if (facts->assigned < 0)
    say (sink, "assigned-default", SY_NOTE_CAUTION, SY_KIND_MASS, carry->reference_mass, NAN, OURS);
  if (facts->who < 0)
    say (sink, "carry-who-default", SY_NOTE_CAUTION, SY_KIND_PERCENT, carry->percent, NAN, OURS);
  if (carry->percent < 90)
    say (sink, "carry-percent-low", SY_NOTE_CAUTION, SY_KIND_PERCENT, carry->percent, NAN, OURS);
  if (!carry->reduced && (facts->poor_lift < 0 || facts->poor_surroundings < 0))
    sy_sink_note (sink, "carry-not-reduced", SY_NOTE_CAUTION);
  if (carry->mass > frequent)
    say (sink, "carry-over-frequent-mass", SY_NOTE_CAUTION, SY_KIND_MASS, carry->mass, frequent, ISO);
  sy_sink_note (sink, "carry-lifts-apart", SY_NOTE_CAUTION);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyCarryFacts *facts = data;
  SyCarry carry;
  SyCarryResult result;

  sy_carry_case (facts, context, &carry);
  sy_carry (&carry, &result);

  const double *value = result.value, *limit = result.limit, *ratio = result.ratio;
  const double task[SY_CARRY_LIMITS] = {
    carry.mass, carry.mass_each, carry.reference_mass, ratio[SY_CARRY_REFERENCE], carry.mean_mass, carry.per_min,
    facts->distance.value, carry.minutes, facts->persons.given ? facts->persons.value : 1, value[SY_CARRY_MINUTE],
    value[SY_CARRY_HOUR], value[SY_CARRY_HALF_2021], value[SY_CARRY_DAY],
  };
  for (size_t i = 0; i < SY_CARRY_LIMITS; i++)
    sy_sink_value (sink, i, task[i]);
  for (size_t i = 1; i < SY_CARRY_N_LIMITS; i++)
    {
      sy_sink_value (sink, SY_CARRY_LIMIT_OF (i), limit[i]);
      sy_sink_value (sink, SY_CARRY_RATIO_OF (i), ratio[i]);
    }
  sy_sink_value (sink, SY_CARRY_PSYCHO_LIMIT, fmin (limit[SY_CARRY_TABLE], limit[SY_CARRY_EQUATION]));
  sy_sink_value (sink, SY_CARRY_PSYCHO_RATIO, fmax (ratio[SY_CARRY_TABLE], ratio[SY_CARRY_EQUATION]));
  sy_sink_value (sink, SY_CARRY_RATIO, result.largest);
  sink->governing = limits[result.governing].ratio_symbol;
  if (context->quantities_only)
    return;
  sy_sink_value (sink, SY_CARRY_WOMEN_PERCENT, sy_carry_accepts (&carry, SY_CARRY_WOMEN));
  sy_sink_value (sink, SY_CARRY_MEN_PERCENT, sy_carry_accepts (&carry, SY_CARRY_MEN));
  add_notes (facts, &carry, &result.beyond, sink);
}

/* Cross-field check */

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyCarryFacts *facts = data;
  double percent = facts->percent.value;
  char given[SY_NUMBER_TEXT_MAX];

  if (facts->mass.given && facts->typical_mass.given && facts->typical_mass.value > facts->mass.value)
    {
      sy_number_print (facts->typical_mass.value, given);
      sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.typical_mass", given, "at most mass, which is the heaviest",
                       sy_unit_name (SY_KIND_MASS, units));
    }
  if (facts->percent.given && percent != 90 && percent != 75 && percent != 50)
    {
      sy_number_print (percent, given);
      sy_problems_add (problems, SY_PROBLEM_RANGE, 0, "$.percent", given, "90, 75 or 50: what the tables print",
                       sy_unit_name (SY_KIND_PERCENT, units));
    }
  if (facts->who == SY_CARRY_MEN && facts->assigned != SY_ASSIGNED_MEN_20_45)
    sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.who", "men, and others may be assigned",
                     "women, or men with \"assigned\": \"men-20-45\"", "");
}

/* Formulas */

static void
add_quotient (SyText *line, const SySink *sink, size_t over, size_t under, SyUnits units)
{
  const SyQuantity *a = &sink->quantities[over], *b = &sink->quantities[under];

  sy_text_add_measure (line, a->value, 3, a->symbol->kind, units);
  sy_text_add (line, " / ");
  sy_text_add_measure (line, b->value, 3, b->symbol->kind, units);
}

static bool
formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  static const size_t values[SY_CARRY_N_LIMITS] = {
    SY_CARRY_MASS_EACH, SY_CARRY_F, SY_CARRY_PER_MIN, SY_CARRY_PER_HOUR, SY_CARRY_PER_DAY, SY_CARRY_PER_MIN,
    SY_CARRY_PER_HOUR, SY_CARRY_PER_4H, SY_CARRY_PER_DAY, SY_CARRY_MASS, SY_CARRY_MASS, SY_CARRY_MASS,
  };
  static const double longest[] = { 1, 60, 240, 1e9 };
  SyText line = { text, SY_FORMULA_MAX, 0 };
  const SyQuantity *quantities = sink->quantities;
  double value = quantities[symbol].value;

  if (symbol >= SY_CARRY_PER_MIN && symbol <= SY_CARRY_PER_DAY)
    {
      sy_text_add_measure (&line, quantities[SY_CARRY_MASS_SUMMED].value, 3, SY_KIND_MASS, units);
      sy_text_add (&line, " × ");
      sy_text_add_measure (&line, quantities[SY_CARRY_F].value, 4, SY_KIND_FREQUENCY, units);
      sy_text_add (&line, " × ");
      double minutes = fmin (quantities[SY_CARRY_MINUTES_A_DAY].value, longest[symbol - SY_CARRY_PER_MIN]);
      sy_text_add_measure (&line, minutes, 2, SY_KIND_MINUTES, units);
      sy_text_add (&line, " = ");
      sy_text_add_measure (&line, value, 1, SY_KIND_MASS, units);
      return true;
    }
  if (!isfinite (value))
    return false;
  if (symbol == SY_CARRY_MASS_RATIO)
    add_quotient (&line, sink, SY_CARRY_MASS_EACH, SY_CARRY_M_REF, units);
  else if (symbol > SY_CARRY_LIMITS && symbol < SY_CARRY_PSYCHO_LIMIT && (symbol - SY_CARRY_LIMITS) % 2 == 1)
    add_quotient (&line, sink, values[(symbol - SY_CARRY_LIMITS) / 2 + 1], symbol - 1, units);
  else if (symbol == SY_CARRY_PSYCHO_RATIO)
    add_quotient (&line, sink, SY_CARRY_MASS, SY_CARRY_PSYCHO_LIMIT, units);
  else
    return false;
  sy_text_add (&line, " = ");
  sy_text_add_rounded (&line, value, 3);
  return true;
}

/* Drawing */

static const char *const view_titles[] = { N_ ("From the side") };

static void
scene (const void *data, SyUnits units, const SySink *sink, size_t view, SyScene *out)
{
  const SyCarryFacts *facts = data;

  (void) units;
  (void) view;
  sy_carry_scene (out, facts->height.value, facts->distance.value, facts->mass.value, sink->governing);
}

extern const SyMethod sy_method_carry;
const SyMethod sy_method_carry = {
  .id = "carry",
  .title = N_ ("Carrying"),
  .source = "UK HSE L23 guideline figures (read second-hand); ISO 11228-1:2003 table 1, ISO 11228-1:2021, Snook and "
            "Ciriello 1991, Potvin, Ciriello, Snook and others 2021 (all from memory)",
  .conditions_source = "ISO 11228-1 clause 1 (level, 0.5 to 1.0 m/s); UK HSE L23: both hands, close, upright, in front",
  .edition = 1,
  .item_kind = "task",
  .memory_caution = N_ ("The sums of ISO 11228-1, the reference mass, the carry tables and the equations stand here "
                        "from memory and were not checked, those of 2021 with low confidence: they may only tighten. "
                        "What speaks for a favourable result is the UK guideline figure, which was read second-hand."),
  .facts_size = sizeof (SyCarryFacts),
  .fields = fields,
  .n_fields = SY_LEN (fields),
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .index_symbol = "ratio",
  .ratio_symbol = "mass_ratio",
  .limits = limits,
  .n_limits = SY_LEN (limits),
  .check = check,
  .evaluate = evaluate,
  .n_factors = SY_CARRY_N_FACTORS,
  .candidates = sy_carry_candidates,
  .largest_mass = sy_carry_largest_mass,
  .formula = formula,
  .n_views = SY_LEN (view_titles),
  .view_titles = view_titles,
  .scene = scene,
};
