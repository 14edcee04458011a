/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "lift-scene.h"
#include "sy-lift-facts.h"
#include "sy-population.h"

static const SyMeasured measured[] = {
  { "load.heaviest", offsetof (SyLiftFacts, load.heaviest), offsetof (SyLiftFacts, had.load), "load", true },
  { "origin.H", offsetof (SyLiftFacts, origin.H), offsetof (SyLiftFacts, had.origin.H), "H", false },
  { "origin.V", offsetof (SyLiftFacts, origin.V), offsetof (SyLiftFacts, had.origin.V), "V", false },
  { "origin.A", offsetof (SyLiftFacts, origin.A), offsetof (SyLiftFacts, had.origin.A), "A", false },
  { "destination.H", offsetof (SyLiftFacts, destination.H), offsetof (SyLiftFacts, had.destination.H), "H",
    false },
  { "destination.V", offsetof (SyLiftFacts, destination.V), offsetof (SyLiftFacts, had.destination.V), "V",
    false },
  { "destination.A", offsetof (SyLiftFacts, destination.A), offsetof (SyLiftFacts, had.destination.A), "A",
    false },
  { "travel", offsetof (SyLiftFacts, travel), offsetof (SyLiftFacts, had.travel), "V", false },
  { "frequency", offsetof (SyLiftFacts, frequency), offsetof (SyLiftFacts, had.frequency), "frequency", true },
  { "lifts", offsetof (SyLiftFacts, lifts), offsetof (SyLiftFacts, had.frequency), "frequency", true },
};

/* Quantities */

#define MANUAL "NIOSH 94-110"

#define ISO_MR "ISO 11228-1:2003 A.7 (from memory)"
#define ISO_STEP_4 "ISO 11228-1:2003 step 4 (from memory)"
#define ISO_TABLE_1 "ISO 11228-1:2003 Table 1, carried up to 1 m (from memory)"
#define EN "EN 1005-2:2003+A1:2008 (from memory)"
#define FILTER "UK HSE L23, INDG143; heights of its zones assumed, no source"
#define FILTER_MEN FILTER ", men's figures read in a secondary source"
#define FILTER_WOMEN FILTER ", women's figures from memory"
#define BACK "University of Utah hand calculation (formula from memory)"
#define BACK_LEVEL "NIOSH 1981: 3 400 N (350 kgf, 770 lb, read); kept at 3.4 kN by NIOSH 1991 (from memory)"
#define END_SYMBOLS(end)                                                                                 \
  { end ".H", SY_KIND_REACH, N_ ("Reach"), "as given" },                                                \
  { end ".V", SY_KIND_REACH, N_ ("Height of the hands"), "as given" },                                  \
  { end ".A", SY_KIND_ANGLE, N_ ("Twist"), "as given" },                                                \
  { end ".HM", SY_KIND_RATIO, N_ ("Horizontal multiplier"), MANUAL " 1.3.1" },                          \
  { end ".VM", SY_KIND_RATIO, N_ ("Vertical multiplier"), MANUAL " 1.3.2" },                            \
  { end ".DM", SY_KIND_RATIO, N_ ("Distance multiplier"), MANUAL " 1.3.3" },                            \
  { end ".AM", SY_KIND_RATIO, N_ ("Asymmetric multiplier"), MANUAL " 1.3.4" },                          \
  { end ".FM", SY_KIND_RATIO, N_ ("Frequency multiplier"), MANUAL " 1.3.5, table 5" },                  \
  { end ".CM", SY_KIND_RATIO, N_ ("Coupling multiplier"), MANUAL " 1.3.6, table 7" },                   \
  { end ".FIRWL", SY_KIND_MASS, N_ ("Frequency-independent recommended weight limit"), MANUAL " 2.4.1" }, \
  { end ".RWL", SY_KIND_MASS, N_ ("Recommended weight limit"), MANUAL " 1.1" },                         \
  { end ".LI", SY_KIND_RATIO, N_ ("Lifting index"), MANUAL " 1.4" },                                    \
  { end ".FILI", SY_KIND_RATIO, N_ ("Frequency-independent lifting index"), MANUAL " 2.4.1" },          \
  { end ".mR", SY_KIND_MASS, N_ ("Mass limit with the reference mass"), ISO_MR },                       \
  { end ".mR_ratio", SY_KIND_RATIO, N_ ("Heaviest load against the mass limit mR"), ISO_MR }

static const SySymbol symbols[SY_LIFT_N_SYMBOLS] = {
  END_SYMBOLS ("origin"),
  END_SYMBOLS ("destination"),
  { "D", SY_KIND_REACH, N_ ("Vertical travel"), MANUAL " 1.3.3" },
  { "F", SY_KIND_FREQUENCY, N_ ("Lifting frequency"), MANUAL " 1.2" },
  { "RWL", SY_KIND_MASS, N_ ("Recommended weight limit at the end that governs"), MANUAL " 1.1" },
  { "LI", SY_KIND_RATIO, N_ ("Lifting index by the heaviest load"), MANUAL " 1.4" },
  { "LI_typical", SY_KIND_RATIO, N_ ("Lifting index by the typical load"), MANUAL " 1.4" },
  { "mR", SY_KIND_MASS, N_ ("Mass limit with the reference mass, at the end that governs"), ISO_MR },
  { "mR_ratio", SY_KIND_RATIO, N_ ("Heaviest load against the mass limit mR, at the end that governs"), ISO_MR },
  { "m_ref", SY_KIND_MASS, N_ ("Reference mass of who may be assigned"), "ISO 11228-1:2003 Annex C (from memory)" },
  { "mass_each", SY_KIND_MASS, N_ ("Heaviest load by person"), "common practice, no source" },
  { "persons", SY_KIND_COUNT, N_ ("Persons"), "as given" },
  { "lifts_per_day", SY_KIND_COUNT, N_ ("Lifts a day"), "as given, or pace × minutes of work" },
  { "mass", SY_KIND_MASS, N_ ("Heaviest load"), "as given" },
  { "shift_multiplier", SY_KIND_RATIO, N_ ("Multiplier of a shift over eight hours, on mR"),
    "ISO 11228-1:2021 (from memory)" },
  { "day_mass", SY_KIND_MASS, N_ ("Mass lifted by one person in a day"), "typical load by person × lifts a day" },
  { "day_limit", SY_KIND_MASS, N_ ("Cumulative mass in a day"), ISO_STEP_4 },
  { "day_ratio", SY_KIND_RATIO, N_ ("Mass lifted in a day against its limit"), ISO_STEP_4 },
  { "hour_mass", SY_KIND_MASS, N_ ("Mass lifted by one person in an hour at this pace"),
    "typical load by person × pace × 60 min" },
  { "hour_limit", SY_KIND_MASS, N_ ("Cumulative mass in an hour"), ISO_TABLE_1 },
  { "hour_ratio", SY_KIND_RATIO, N_ ("Mass lifted in an hour against its limit"), ISO_TABLE_1 },
  { "M_c", SY_KIND_MASS, N_ ("Mass constant of who may be assigned"), EN },
  { "OM", SY_KIND_RATIO, N_ ("One-hand multiplier"), EN },
  { "PM", SY_KIND_RATIO, N_ ("Multiplier of two persons, on each one's limit"), EN },
  { "AT", SY_KIND_RATIO, N_ ("Multiplier of other hard work beside it"), EN },
  { "R_ML", SY_KIND_MASS, N_ ("Recommended mass limit by person, at the end that governs"), EN },
  { "R_I", SY_KIND_RATIO, N_ ("Risk index: heaviest load by person against R_ML"), EN },
  { "filter_base", SY_KIND_MASS, N_ ("Smallest guideline figure of the zones that the hands enter"), FILTER },
  { "filter_twist", SY_KIND_RATIO, N_ ("Reduction of the guideline figure by twist"), FILTER },
  { "filter_pace", SY_KIND_RATIO, N_ ("Reduction of the guideline figure by pace"), FILTER },
  { "filter_men", SY_KIND_MASS, N_ ("Guideline figure for men"), FILTER_MEN },
  { "filter_women", SY_KIND_MASS, N_ ("Guideline figure for women"), FILTER_WOMEN },
  { "filter_ratio", SY_KIND_RATIO, N_ ("Heaviest load against the guideline figure"), FILTER },
  { "origin.back", SY_KIND_FORCE, N_ ("Back compression, an estimate of another kind"), BACK },
  { "destination.back", SY_KIND_FORCE, N_ ("Back compression, an estimate of another kind"), BACK },
  { "back", SY_KIND_FORCE, N_ ("Back compression, an estimate of another kind, at the worse end"), BACK },
  { "back_trunk", SY_KIND_FORCE, N_ ("Of it, by muscles that hold the trunk"), BACK },
  { "back_load", SY_KIND_FORCE, N_ ("Of it, by muscles that hold the load"), BACK },
  { "back_direct", SY_KIND_FORCE, N_ ("Of it, by what rests on the disc"), BACK },
  { "back_limit", SY_KIND_FORCE, N_ ("Back compression from which a task is to be changed"), BACK_LEVEL },
  { "back_ratio", SY_KIND_RATIO, N_ ("Back compression against it"), BACK_LEVEL },
};

static const SyLimit limits[SY_LIFT_N_LIMITS] = {
  [SY_LIFT_LIMIT_NIOSH] = { "niosh", N_ ("Recommended weight limit of the lifting equation"),
                            "DHHS (NIOSH) 94-110 (1994, rev. 9/2021)", false, "mass", "RWL", "LI" },
  [SY_LIFT_LIMIT_ISO_MASS] = { "iso-mass", N_ ("Mass limit mR of the step model"),
                               "ISO 11228-1:2003 A.7; long shifts: 2021", true, "mass", "mR", "mR_ratio" },
  [SY_LIFT_LIMIT_REFERENCE] = { "reference-mass", N_ ("Reference mass of who may be assigned"),
                                "ISO 11228-1:2003 Annex C; ages: 2021", true, "mass_each", "m_ref", NULL },
  [SY_LIFT_LIMIT_DAY] = { "iso-day", N_ ("Cumulative mass in a day"), "ISO 11228-1:2003 step 4", true, "day_mass",
                          "day_limit", "day_ratio" },
  [SY_LIFT_LIMIT_HOUR] = { "iso-hour", N_ ("Cumulative mass in an hour"), "ISO 11228-1:2003 Table 1", true, "hour_mass",
                           "hour_limit", "hour_ratio" },
  [SY_LIFT_LIMIT_EN] = { "en", N_ ("Recommended mass limit at machinery"), "EN 1005-2:2003+A1:2008", true, "mass_each", "R_ML",
                         "R_I" },
  [SY_LIFT_LIMIT_FILTER_MEN] = { "filter-men", N_ ("Guideline filter, men; heights of its zones assumed"),
                                 "UK HSE L23, INDG143 (read in a secondary source)", false, "mass", "filter_men",
                                 "filter_ratio" },
  [SY_LIFT_LIMIT_FILTER_WOMEN] = { "filter-women", N_ ("Guideline filter, women; heights of its zones assumed"),
                                   "UK HSE L23, INDG143", true, "mass", "filter_women", "filter_ratio" },
  [SY_LIFT_LIMIT_BACK] = { "back", N_ ("Back compression, an estimate of another kind"),
                           "NIOSH 1981, 1991; University of Utah hand calculation", true, "back", "back_limit",
                           "back_ratio" },
};

void
sy_lift_case (const SyLiftFacts *facts, const SyContext *context, SyLiftCase *out)
{
  SyLiftTimes times = sy_lift_times (facts);

  out->units = context->units;
  out->heaviest = facts->load.heaviest.value;
  out->typical = facts->load.typical.value;
  out->persons = facts->persons.given ? facts->persons.value : 1;
  out->has_destination = facts->destination_given == 1;
  out->n_ends = out->has_destination && facts->control_at_destination != 0 ? 2 : 1;
  out->at[0] = (SyLiftPosition) { facts->origin.H.value, facts->origin.V.value, facts->origin.A.value };
  out->at[1] = (SyLiftPosition) { facts->destination.H.value, facts->destination.V.value,
                                  facts->destination.A.value };
  out->pace.travel = out->has_destination ? fabs (out->at[1].height - out->at[0].height)
                                          : facts->travel.value;
  out->pace.per_min = facts->frequency.given ? facts->frequency.value
                                             : facts->lifts.value / facts->in_minutes.value;
  out->pace.coupling = (SyCoupling) facts->coupling;
  out->assigned_default = facts->assigned < 0;
  out->assigned = (SyAssigned) (out->assigned_default ? context->default_assigned : facts->assigned);
  out->pace.reference_mass = sy_lift_reference_mass (out->assigned, context->units);

  /* a longer shift holds more work */
  if (facts->shift_hours.given && facts->shift_hours.value > 8 && !facts->shift_minutes.given)
    times.shift_minutes = (SyNumber) { .value = facts->shift_hours.value * 60, .given = true };
  out->pace.duration = sy_lift_times_class (&times, &out->beyond, &out->day_min);
  if (facts->duration == SY_DURATION_LONG && times.shift_minutes.given)
    out->day_min = times.shift_minutes.value;
  sy_lift_case_population (facts, context, out);
}

void
sy_lift_case_end (const SyLiftCase *lift, int end, SyLiftEnd *out)
{
  sy_lift_end (&lift->at[end], &lift->pace, lift->heaviest, lift->units, out);
  if (lift->shift_multiplier < 1)
    {
      out->mr *= lift->shift_multiplier;
      out->mr_ratio = out->mr > 0 ? lift->heaviest / out->mr : INFINITY;
    }
}

static void
add_notes (const SyLiftFacts *facts, const SyContext *context, const SyLiftCase *lift, SySink *sink)
{
  const SyLiftConstants *c = sy_lift_constants (lift->units);

  if (facts->conditions.given)
    {
      for (size_t i = 0; i < SY_N_LIFT_CONDITIONS; i++)
        if (facts->conditions.bits & (1ul << i))
          sy_sink_note (sink, sy_lift_condition_choices[i].id, SY_NOTE_EXCLUDED);
    }
  else
    sy_sink_note (sink, "conditions-not-asked", SY_NOTE_MISSING);
  if (facts->hands.given && facts->hands.value < 2)
    sy_sink_note (sink, "one-hand", SY_NOTE_EXCLUDED);
  if (lift->persons > 1)
    sy_note_arg (sy_sink_note (sink, "several-persons", SY_NOTE_EXCLUDED), SY_KIND_COUNT, lift->persons);
  if (lift->beyond || lift->extended)
    sy_sink_note (sink, "over-8h", SY_NOTE_EXCLUDED);
  if (!lift->has_en)
    sy_sink_note (sink, "no-limit-for-so-many", SY_NOTE_CAUTION);
  if (context->wants_filter && !lift->has_filter)
    sy_sink_note (sink, "filter-does-not-speak", SY_NOTE_CAUTION);

  if (lift->assigned_default)
    sy_note_arg (sy_sink_note (sink, "assigned-default", SY_NOTE_CAUTION), SY_KIND_MASS,
                 lift->pace.reference_mass);
  if (lift->has_destination && facts->control_at_destination < 0)
    sy_sink_note (sink, "control-assumed", SY_NOTE_CAUTION);
  for (int end = 0; end < lift->n_ends; end++)
    if (lift->at[end].reach < c->reach_min)
      sy_note_arg (sy_sink_note (sink, "reach-minimum", SY_NOTE_CAUTION), SY_KIND_REACH, c->reach_min);
  if (lift->pace.travel < c->travel_min)
    sy_note_arg (sy_sink_note (sink, "travel-minimum", SY_NOTE_CAUTION), SY_KIND_REACH, c->travel_min);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyLiftFacts *facts = data;
  SyLiftCase lift;
  SyLiftEnd ends[2];
  int worst = 0;

  sy_lift_case (facts, context, &lift);
  for (int end = 0; end < lift.n_ends; end++)
    {
      SyLiftEnd *e = &ends[end];
      size_t at = (size_t) end * SY_LIFT_PER_END;

      sy_lift_case_end (&lift, end, e);
      const double values[SY_LIFT_PER_END] = {
        lift.at[end].reach, lift.at[end].height, lift.at[end].twist_deg, e->hm, e->vm, e->dm, e->am, e->fm,
        e->cm, e->firwl, e->rwl, e->li, e->fili, e->mr, e->mr_ratio
      };
      for (size_t i = 0; i < SY_LIFT_PER_END; i++)
        sy_sink_value (sink, at + i, values[i]);
      if (e->rwl < ends[worst].rwl)
        worst = end;
    }

  const SyLiftEnd *e = &ends[worst];
  sy_sink_value (sink, SY_LIFT_ALL_D, lift.pace.travel);
  sy_sink_value (sink, SY_LIFT_ALL_F, lift.pace.per_min);
  sy_sink_value (sink, SY_LIFT_ALL_RWL, e->rwl);
  sy_sink_value (sink, SY_LIFT_ALL_LI, e->li);
  sy_sink_value (sink, SY_LIFT_ALL_LI_TYPICAL, e->rwl > 0 ? lift.typical / e->rwl : INFINITY);
  sy_sink_value (sink, SY_LIFT_ALL_MR, e->mr);
  sy_sink_value (sink, SY_LIFT_ALL_MR_RATIO, e->mr_ratio);
  sy_sink_value (sink, SY_LIFT_ALL_M_REF, lift.pace.reference_mass);
  sy_sink_value (sink, SY_LIFT_ALL_MASS_EACH, lift.heaviest / lift.persons);
  sy_sink_value (sink, SY_LIFT_ALL_PERSONS, lift.persons);
  sy_sink_value (sink, SY_LIFT_ALL_LIFTS_PER_DAY, lift.lifts_per_day);
  sy_lift_population (&lift, e, sink);
  sy_lift_back (facts, &lift, sink);

  const double factors[] = { e->hm, e->vm, e->dm, e->am, e->fm, e->cm };
  size_t smallest = 0;
  for (size_t i = 1; i < SY_LEN (factors); i++)
    if (factors[i] < factors[smallest])
      smallest = i;
  sink->governing_end = worst;
  sink->governing = symbols[(size_t) worst * SY_LIFT_PER_END + SY_LIFT_HM + smallest].symbol;
  if (context->quantities_only)
    return;
  add_notes (facts, context, &lift, sink);
  sy_lift_back_notes (facts, &lift, sink);
}

/* Cross-field check */

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyLiftFacts *facts = data;
  SyLiftTimes times = sy_lift_times (facts);

  sy_lift_check (facts, "$", units, problems);
  sy_lift_check_pace (facts, "$", problems);
  sy_lift_check_times (&times, "$", problems);
  sy_lift_check_back (facts, problems);
  if (facts->shift_minutes.given && facts->shift_hours.given
      && facts->shift_minutes.value > facts->shift_hours.value * 60 * (1 + 1e-9))
    {
      char given[SY_NUMBER_TEXT_MAX];
      sy_number_print (facts->shift_minutes.value, given);
      sy_lift_problem (problems, SY_PROBLEM_CONFLICT, "$", "shift_minutes", given, "not more than shift_hours",
                       sy_unit_name (SY_KIND_MINUTES, units));
    }
}

/* Drawings */

static const char *const view_titles[] = { N_ ("From the side"), N_ ("From above") };

static void
scene (const void *data, SyUnits units, const SySink *sink, size_t view, SyScene *out)
{
  const SyLiftFacts *facts = data;
  const SyContext context = { .units = units, .default_assigned = SY_ASSIGNED_MIXED_ADULTS };
  SyLiftCase lift;

  sy_lift_case (facts, &context, &lift);
  (view == 0 ? sy_lift_scene_side : sy_lift_scene_above) (
    out, &lift.at[0], lift.has_destination ? &lift.at[1] : NULL, lift.pace.travel, sink->governing);
}

extern const SyMethod sy_method_lift;
const SyMethod sy_method_lift = {
  .id = "lift",
  .title = N_ ("One lift"),
  .source = "Revised NIOSH lifting equation, DHHS (NIOSH) 94-110 (1994, rev. 9/2021; its section numbers "
            "from memory); beside it the limits of ISO 11228-1:2003 and 2021 and of EN 1005-2:2003+A1:2008 (from memory)",
  .conditions_source = MANUAL " 1.2 (limitations)",
  .edition = 2,
  .memory_caution = N_ ("The reference masses, the daily and hourly limits and the multipliers of long shifts of ISO 11228-1 "
                        "and the limit of EN 1005-2, and the estimate of back compression, stand here from memory and were not checked against the standards; they "
                        "may tighten a verdict but are never the only ground for a favourable one."),
  .item_kind = "task",
  .facts_size = sizeof (SyLiftFacts),
  .fields = sy_lift_fields,
  .n_fields = SY_N_LIFT_FIELDS,
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .index_symbol = "LI",
  .ratio_symbol = "mR_ratio",
  .limits = limits,
  .n_limits = SY_LEN (limits),
  .measured = measured,
  .n_measured = SY_LEN (measured),
  .check = check,
  .evaluate = evaluate,
  .n_factors = SY_LIFT_N_FACTORS,
  .candidates = sy_lift_candidates,
  .largest_mass = sy_lift_largest_mass,
  .formula = sy_lift_formula,
  .worksheet = sy_lift_worksheet,
  .n_views = SY_LEN (view_titles),
  .view_titles = view_titles,
  .scene = scene,
};
