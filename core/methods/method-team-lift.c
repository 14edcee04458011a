/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-lift-facts.h"
#include "sy-line.h"
#include "sy-team-facts.h"
#include "team-scene.h"

/* A load in the hands of two to four: each one's share, against what each could lift alone and what the team is good for. */

#define STATICS "statics: sum of forces and moments"
#define RULE \
  "UK HSE team handling guidance, in L23: two people two thirds of the sum of what each could lift, three half of it"
#define OWN "ISO 11228-1:2003 A.7 (from memory): reference mass \xc3\x97 multipliers"
#define OWN_PART "EN 1005-2, multiplier 0.85 for two persons (from memory): 0.85 \xc3\x97 own limit"
#define REFERENCE "ISO 11228-1:2003 Annex C (from memory)"
#define TOLD \
  "Manual Handling Operations Regulations 1992 reg. 4(1)(b)(iii); Directive 90/269/EEC Art. 6 (its number from memory)"

/* Two hands of one person are this far apart at the least: so far beside their line a weight is held without twisting it.
   Assumed, no source. */
static const double beside_allowed[SY_N_UNITS] = { 50, 2 };
/* Heights of hands that differ by less do not lean a load visibly. Assumed, no source. */
#define LEANS 1.0

/* Quantities */

static const SySymbol symbols[SY_TEAM_N_SYMBOLS] = {
  [SY_TEAM_MASS] = { "mass", SY_KIND_MASS, N_ ("Mass"), "as given" },
  [SY_TEAM_PERSONS] = { "persons", SY_KIND_COUNT, N_ ("Persons"), "as given" },
  [SY_TEAM_MASS_EACH] = { "mass_each", SY_KIND_MASS, N_ ("Mass by person, evenly"), "mass / persons; not judged" },
  [SY_TEAM_HEAVIEST] = { "heaviest.share", SY_KIND_MASS, N_ ("Share at the heavy end"), STATICS },
  [SY_TEAM_HEAVIEST_PERCENT] = { "heaviest.percent", SY_KIND_PERCENT, N_ ("The same, of the whole"), STATICS },
  [SY_TEAM_OWN_SHARE] = { "own.share", SY_KIND_MASS, N_ ("Share that is nearest to that person's limit in a team"), STATICS },
  [SY_TEAM_OWN_LIMIT] = { "own.limit", SY_KIND_MASS, N_ ("That person's limit in a team"), OWN_PART },
  [SY_TEAM_OWN_RATIO] = { "own.ratio", SY_KIND_RATIO, N_ ("Share against it"), OWN_PART },
  [SY_TEAM_REFERENCE_SHARE] = { "reference.share", SY_KIND_MASS, N_ ("Share that is nearest to that person's reference mass"),
                                STATICS },
  [SY_TEAM_M_REF] = { "m_ref", SY_KIND_MASS, N_ ("Reference mass of that person"), REFERENCE },
  [SY_TEAM_REFERENCE_RATIO] = { "reference.ratio", SY_KIND_RATIO, N_ ("Share against the reference mass"), REFERENCE },
  [SY_TEAM_SUM] = { "team.sum", SY_KIND_MASS, N_ ("Sum of what each could lift alone"), OWN },
  [SY_TEAM_RULE_LIMIT] = { "team.limit", SY_KIND_MASS, N_ ("What the team is good for"), RULE },
  [SY_TEAM_RULE_RATIO] = { "team.ratio", SY_KIND_RATIO, N_ ("Mass against what the team is good for"), RULE },
  [SY_TEAM_TILT] = { "tilt", SY_KIND_ANGLE, N_ ("Tilt of the load as it is held"), "geometry of the hands and the ground" },
  [SY_TEAM_BESIDE] = { "beside", SY_KIND_LENGTH, N_ ("Weight beside the line of the hands"), STATICS },
  [SY_TEAM_RATIO] = { "ratio", SY_KIND_RATIO, N_ ("Largest of the ratios to a limit"), "the limits beside each other" },
};

static const char *const named_symbols[] = {
  "share.*.mass", "share.*.percent", "share.*.elastic", "share.*.limit", "share.*.ratio", "share.*.reference",
};

static const SyLimit limits[] = {
  { "team-rule", N_ ("Team of two or three"), "UK HSE L23, team handling", false, "mass", "team.limit", "team.ratio" },
  { "own-in-team", N_ ("One person's share, in a team"), "EN 1005-2 (0.85), ISO 11228-1 mR", true, "own.share", "own.limit",
    "share.*.ratio" },
  { "reference-mass", N_ ("Reference mass of one person"), "ISO 11228-1:2003 Annex C", true, "reference.share", "m_ref",
    "share.*.reference" },
};

/* Evaluation */

typedef struct
{
  double limit, reference;     /* own limit alone; reference mass              */
  double ratio, over;          /* share / (0.85 × limit); share / reference    */
} Person;

static double
part_of (double share, double limit)
{
  return share > 0 ? (limit > 0 ? share / limit : (double) INFINITY) : 0;
}

/* Pace, grip and travel of all; what was not given is taken as the text of each field says. */
static SyLiftPace
pace_of (const SyTeamFacts *facts, SyUnits units)
{
  SyDuration without = facts->frequency.given ? SY_DURATION_LONG : SY_DURATION_SHORT;

  return (SyLiftPace) {
    .travel = facts->travel.given ? facts->travel.value : 0,
    .per_min = facts->frequency.given ? facts->frequency.value : 0.2,
    .duration = facts->duration >= 0 ? (SyDuration) facts->duration : without,
    .coupling = facts->coupling >= 0 ? (SyCoupling) facts->coupling : SY_COUPLING_POOR,
    .reference_mass = sy_lift_reference_mass (SY_ASSIGNED_MIXED_ADULTS, units),
  };
}

static void
judge_person (const SyTeamFacts *facts, const SyTeamPerson *person, double share, const SyContext *context, Person *out)
{
  const SyLiftConstants *constants = sy_lift_constants (context->units);
  SyLiftPace pace = pace_of (facts, context->units);
  const SyLiftPosition at = {
    .reach = person->reach.given ? person->reach.value : constants->reach_min,
    .height = person->height.given ? person->height.value : constants->height_ideal,
  };

  pace.reference_mass = sy_lift_reference_mass (
    (SyAssigned) (person->assigned >= 0 ? person->assigned : context->default_assigned), context->units);
  out->reference = pace.reference_mass;
  out->limit = sy_team_own_limit (&at, &pace, context->units);
  out->ratio = part_of (share, SY_TEAM_OWN_PART * out->limit);
  out->over = part_of (share, out->reference);
}

static void
put_person (SySink *sink, const SyTeamCase *team, const Person *person, int i, double mass)
{
  const char *name = team->people[i].label;
  const SyTeamShares *shares = &team->shares;

  if (shares->balanced)
    {
      sy_sink_named (sink, "share", name, "mass", SY_KIND_MASS,
                     shares->settled ? N_ ("Share") : N_ ("Largest share that may come to this person"), STATICS,
                     shares->worst[i] * mass);
      sy_sink_named (sink, "share", name, "percent", SY_KIND_PERCENT, N_ ("The same, of the whole"), STATICS,
                     shares->worst[i] * 100);
      if (!shares->settled)
        sy_sink_named (sink, "share", name, "elastic", SY_KIND_MASS, N_ ("Share if all were equally stiff; not judged"),
                       "statics with equal stiffness; working", shares->elastic[i] * mass);
    }
  sy_sink_named (sink, "share", name, "limit", SY_KIND_MASS, N_ ("What this person could lift alone"), OWN, person->limit);
  if (!shares->balanced)
    return;
  sy_sink_named (sink, "share", name, "ratio", SY_KIND_RATIO, N_ ("Share against this person's limit in a team"), OWN_PART,
                 person->ratio);
  sy_sink_named (sink, "share", name, "reference", SY_KIND_RATIO, N_ ("Share against the reference mass"), REFERENCE,
                 person->over);
}

/* What all carry together, and of the shares those that are nearest to a limit. */
static void
put_team (SySink *sink, const SyTeamCase *team, const Person *persons, double mass)
{
  const SyTeamShares *shares = &team->shares;
  double sum = 0, rule = sy_team_rule (team->team.n), ratio = -1;
  int own = 0, reference = 0;

  for (int i = 0; i < team->team.n; i++)
    {
      sum += persons[i].limit;
      if (persons[i].ratio > persons[own].ratio)
        own = i;
      if (persons[i].over > persons[reference].over)
        reference = i;
    }
  sy_sink_value (sink, SY_TEAM_MASS, mass);
  sy_sink_value (sink, SY_TEAM_PERSONS, team->team.n);
  sy_sink_value (sink, SY_TEAM_MASS_EACH, mass / team->team.n);
  sy_sink_value (sink, SY_TEAM_SUM, sum);
  sy_sink_value (sink, SY_TEAM_TILT, shares->tilt_deg);
  sy_sink_value (sink, SY_TEAM_BESIDE, shares->beside);
  if (!isnan (rule))
    {
      ratio = part_of (mass, rule * sum);
      sy_sink_value (sink, SY_TEAM_RULE_LIMIT, rule * sum);
      sy_sink_value (sink, SY_TEAM_RULE_RATIO, ratio);
    }
  if (shares->balanced)
    {
      int heaviest = sy_team_heaviest (team);

      sy_sink_value (sink, SY_TEAM_HEAVIEST, shares->worst[heaviest] * mass);
      sy_sink_value (sink, SY_TEAM_HEAVIEST_PERCENT, shares->worst[heaviest] * 100);
      sy_sink_value (sink, SY_TEAM_OWN_SHARE, shares->worst[own] * mass);
      sy_sink_value (sink, SY_TEAM_OWN_LIMIT, SY_TEAM_OWN_PART * persons[own].limit);
      sy_sink_value (sink, SY_TEAM_OWN_RATIO, persons[own].ratio);
      sy_sink_value (sink, SY_TEAM_REFERENCE_SHARE, shares->worst[reference] * mass);
      sy_sink_value (sink, SY_TEAM_M_REF, persons[reference].reference);
      sy_sink_value (sink, SY_TEAM_REFERENCE_RATIO, persons[reference].over);
      ratio = fmax (ratio, fmax (persons[own].ratio, persons[reference].over));
    }
  if (ratio >= 0)
    sy_sink_value (sink, SY_TEAM_RATIO, ratio);
}

/* ---- notes ---- */

static void
say_heavy_end (SySink *sink, const SyTeamCase *team, double mass)
{
  const SyTeamShares *shares = &team->shares;
  int heaviest = sy_team_heaviest (team);
  bool even = true;
  SyNote *note;

  for (int i = 0; i < team->team.n; i++)
    even = even && fabs (shares->elastic[i] - shares->elastic[heaviest]) <= 1e-9
           && fabs (shares->worst[i] - shares->worst[heaviest]) <= 1e-9;
  if (even && shares->settled)
    note = sy_sink_note (sink, "team-even", SY_NOTE_CAUTION);
  else
    note = sy_sink_note_on (sink, shares->settled ? "team-heavy-end" : "team-heavy-end-may-be", SY_NOTE_CAUTION,
                            team->people[heaviest].label);
  sy_note_arg (note, SY_KIND_MASS, shares->worst[heaviest] * mass);
  sy_note_arg (note, SY_KIND_MASS, mass);
  sy_note_source (note, "heaviest.share", TOLD, false);
}

static void
say_balance (const SyTeamFacts *facts, SySink *sink, const SyTeamCase *team, double mass, SyUnits units)
{
  const SyTeamShares *shares = &team->shares;

  if (shares->balanced)
    say_heavy_end (sink, team, mass);
  else
    sy_note_source (sy_sink_note (sink, "team-tips", SY_NOTE_REFUSED), NULL,
                    "statics: nothing outside the hands can be balanced by them", false);
  if (shares->beside > beside_allowed[units])
    {
      SyNote *note = sy_sink_note (sink, "team-beside", SY_NOTE_IMPROVE);
      sy_note_arg (note, SY_KIND_LENGTH, shares->beside);
      sy_note_arg (note, SY_KIND_LENGTH, beside_allowed[units]);
      sy_note_source (note, "beside", "assumed, no source: how far apart two hands are at the least", false);
    }
  if (shares->tilt_deg > LEANS)
    {
      sy_note_arg (sy_sink_note (sink, "team-leans", SY_NOTE_CAUTION), SY_KIND_ANGLE, shares->tilt_deg);
      if (facts->cg.plan)
        sy_note_source (sy_sink_note (sink, "team-no-centre-height", SY_NOTE_NEEDED), NULL, STATICS, false);
    }
  if (team->team.slope_deg > 0)
    {
      sy_note_source (sy_sink_note (sink, "team-on-slope", SY_NOTE_CAUTION), NULL,
                      "UK HSE: on slopes and stairs most of the weight goes to the lower end", false);
      if (!team->known_direction)
        sy_note_source (sy_sink_note (sink, "team-way-not-given", team->team.n == 2 ? SY_NOTE_CAUTION : SY_NOTE_NEEDED), NULL,
                        STATICS, false);
    }
}

static void
say_people (const SyTeamFacts *facts, SySink *sink, const SyTeamCase *team, const SyContext *context)
{
  const SyLiftConstants *constants = sy_lift_constants (context->units);

  for (int i = 0; i < team->team.n; i++)
    {
      const SyTeamPerson *person = &team->people[i];

      if (!person->height.given)
        sy_note_source (sy_sink_note_on (sink, "team-no-height", SY_NOTE_NEEDED, person->label), NULL, OWN, true);
      if (!person->reach.given)
        sy_note_arg (sy_sink_note (sink, "team-reach-assumed", SY_NOTE_CAUTION), SY_KIND_REACH, constants->reach_min);
      else if (person->reach.value < constants->reach_min)
        sy_note_arg (sy_sink_note (sink, "reach-minimum", SY_NOTE_CAUTION), SY_KIND_REACH, constants->reach_min);
      if (person->assigned < 0)
        sy_note_arg (sy_sink_note (sink, "assigned-default", SY_NOTE_CAUTION), SY_KIND_MASS,
                     sy_lift_reference_mass ((SyAssigned) context->default_assigned, context->units));
    }
  if (!facts->travel.given)
    sy_sink_note (sink, "team-travel-assumed", SY_NOTE_CAUTION);
  if (!facts->frequency.given)
    sy_sink_note (sink, "team-pace-assumed", SY_NOTE_CAUTION);
  else if (facts->duration < 0)
    sy_sink_note (sink, "team-duration-assumed", SY_NOTE_CAUTION);
  if (facts->coupling < 0)
    sy_sink_note (sink, "team-grip-assumed", SY_NOTE_CAUTION);
  if (team->team.n == SY_TEAM_MAX)
    sy_note_source (sy_sink_note (sink, "team-of-four", SY_NOTE_NEEDED), NULL, RULE, false);
  if (team->team.n > 2)
    sy_note_source (sy_sink_note (sink, "team-holds", SY_NOTE_CAUTION), NULL, "UK HSE: three or four only with holds and room",
                    false);
  sy_sink_note (sink, "team-together", SY_NOTE_CAUTION);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyTeamFacts *facts = data;
  const double mass = facts->mass.value;
  Person persons[SY_TEAM_MAX];
  SyTeamCase team;

  sy_team_case (facts, context->units, &team);
  sink->governing = team.shares.balanced ? symbols[SY_TEAM_HEAVIEST].symbol : "";
  for (int i = 0; i < team.team.n; i++)
    {
      judge_person (facts, &team.people[i], team.shares.worst[i] * mass, context, &persons[i]);
      put_person (sink, &team, &persons[i], i, mass);
    }
  put_team (sink, &team, persons, mass);
  if (team.shares.balanced && sink->named != NULL)
    {
      SyText text = { sink->governing_text, sizeof sink->governing_text, 0 };

      sy_text_add (&text, "share.");
      sy_text_add (&text, team.people[sy_team_heaviest (&team)].label);
      sy_text_add (&text, ".mass");
      sink->governing = sink->governing_text;
    }
  if (context->quantities_only)
    return;
  say_balance (facts, sink, &team, mass, context->units);
  say_people (facts, sink, &team, context);
}

/* Formulas */

static double
value_of (const SySink *sink, size_t symbol)
{
  return sink->quantities[symbol].value;
}

static bool
formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  SyText line = { text, SY_FORMULA_MAX, 0 };

  switch (symbol)
    {
    case SY_TEAM_MASS_EACH:
      sy_text_add_measure (&line, value_of (sink, SY_TEAM_MASS), 1, SY_KIND_MASS, units);
      sy_text_add (&line, " / ");
      sy_text_add_rounded (&line, value_of (sink, SY_TEAM_PERSONS), 0);
      break;
    case SY_TEAM_RULE_LIMIT:
      sy_text_add (&line, value_of (sink, SY_TEAM_PERSONS) == 2 ? "2/3 \xc3\x97 " : "1/2 \xc3\x97 ");
      sy_text_add_measure (&line, value_of (sink, SY_TEAM_SUM), 2, SY_KIND_MASS, units);
      break;
    case SY_TEAM_OWN_LIMIT:
      sy_text_add_rounded (&line, SY_TEAM_OWN_PART, 2);
      sy_text_add (&line, " \xc3\x97 ");
      sy_text_add_measure (&line, value_of (sink, symbol) / SY_TEAM_OWN_PART, 2, SY_KIND_MASS, units);
      break;
    case SY_TEAM_OWN_RATIO:
    case SY_TEAM_REFERENCE_RATIO:
      sy_line_part (&line, value_of (sink, symbol - 2), value_of (sink, symbol - 1), value_of (sink, symbol), units);
      return true;
    case SY_TEAM_RULE_RATIO:
      sy_line_part (&line, value_of (sink, SY_TEAM_MASS), value_of (sink, symbol - 1), value_of (sink, symbol), units);
      return true;
    default:
      return false;
    }
  sy_text_add (&line, " = ");
  sy_text_add_measure (&line, value_of (sink, symbol), 2, SY_KIND_MASS, units);
  return true;
}

static const char *const view_titles[] = { N_ ("From above"), N_ ("From the side") };

static void
scene (const void *data, SyUnits units, const SySink *sink, size_t view, SyScene *out)
{
  sy_team_scene (data, units, sink, view == 1, out);
}

extern const SyMethod sy_method_team_lift;
const SyMethod sy_method_team_lift = {
  .id = "team-lift",
  .title = N_ ("Lift by a team"),
  .source = "Statics; team of two or three: UK HSE team handling guidance, in L23; reference masses and limits of one person: "
            "ISO 11228-1:2003 (from memory) with the multipliers of DHHS (NIOSH) 94-110; 0.85: EN 1005-2 (from memory)",
  .conditions_source = "UK HSE team handling guidance",
  .edition = 1,
  .item_kind = "task",
  .memory_caution = N_ ("Reference masses and the 0.85 of a team stand here from memory and were not checked against the "
                        "standards; they may only tighten. The rule for teams of two and three was read."),
  .facts_size = sizeof (SyTeamFacts),
  .fields = sy_team_fields,
  .n_fields = SY_TEAM_N_FIELDS,
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .named_symbols = named_symbols,
  .n_named_symbols = SY_LEN (named_symbols),
  .index_symbol = "ratio",
  .limits = limits,
  .n_limits = SY_LEN (limits),
  .check = sy_team_check,
  .evaluate = evaluate,
  .formula = formula,
  .n_views = SY_LEN (view_titles),
  .view_titles = view_titles,
  .scene = scene,
};
