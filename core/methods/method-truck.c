/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-line.h"
#include "sy-mass-basis.h"
#include "sy-standing.h"
#include "sy-truck.h"

/* A load on the forks of a truck: what its plate leaves at this load centre. */

#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }
#define LOAD_MOMENT "29 CFR 1910.178 Appendix A-5"
#define STABILITY "29 CFR 1910.178 Appendix A"
#define PLATE "29 CFR 1910.178 Appendix A; lift height and attachments lower the capacity, only the data plate says by how much"

typedef enum { ATTACHMENT_NONE, ATTACHMENT_RATED, ATTACHMENT_UNRATED } Attachment;

typedef struct
{
  SyCommonFacts common;
  SyNumber rating, lift_height, rated_centre, actual_centre, fulcrum;
  int attachment; /* Attachment or -1 */
  int plate_read, hung;
  SyNumber mass;
  int mass_basis; /* SyBasis or -1 */
  SyNumber allowance_percent, side_shift, side_limit;
  const char *due;
  int withdrawn;
} Facts;

/* Fields */

static const SyChoice attachment_choices[] = {
  [ATTACHMENT_NONE] = { "none", N_ ("None: bare forks"), NULL },
  [ATTACHMENT_RATED] = { "rated", N_ ("One that the plate rates"), N_ ("the rating is the one with it fitted") },
  [ATTACHMENT_UNRATED] = { "unrated", N_ ("One that the plate does not name"), N_ ("outside the method") },
};

#define NUMBER(member_, kind_) .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (Facts, member_)
#define BOOLEAN(member_) .type = SY_MEMBER_BOOL, .offset = offsetof (Facts, member_)

static const SyField fields[] = {
  { .name = "mass", .symbol = "m", .label = N_ ("Mass"), .help = N_ ("Of all that is on the forks, pallet and gear too."),
    NUMBER (mass, SY_KIND_MASS), .required = true, .low = OVER_ZERO },
  { .name = "mass_basis", .label = N_ ("How the mass was had"), .type = SY_MEMBER_CHOICE,
    .offset = offsetof (Facts, mass_basis), .choices = sy_basis_choices, .n_choices = SY_N_BASES },
  { .name = "allowance_percent", .label = N_ ("Allowance"), .help = N_ ("Added to the mass for what is not known."),
    NUMBER (allowance_percent, SY_KIND_PERCENT), .low = FROM_ZERO, .high = UP_TO (1000),
    .default_text = N_ ("the policy's, by how the mass was had") },
  { .name = "rating", .symbol = "Q", .label = N_ ("Rating"),
    .help = N_ ("From the data plate, in the column of this lift height and with the attachment fitted."),
    NUMBER (rating, SY_KIND_MASS), .low = OVER_ZERO },
  { .name = "plate_read", .label = N_ ("Read from the truck's own data plate"),
    .help = N_ ("Not from a catalogue, not from a sister truck."), BOOLEAN (plate_read) },
  { .name = "lift_height", .label = N_ ("Lift height"), .help = N_ ("The highest that the load is lifted to."),
    NUMBER (lift_height, SY_KIND_LENGTH), .low = FROM_ZERO },
  { .name = "attachment", .label = N_ ("Attachment"), .help = N_ ("Hook, side shifter, longer forks: anything fitted."),
    .type = SY_MEMBER_CHOICE, .offset = offsetof (Facts, attachment), .choices = attachment_choices,
    .n_choices = SY_LEN (attachment_choices) },
  { .name = "hung", .label = N_ ("The load hangs from the forks"),
    .help = N_ ("On a hook or sling; it needs an attachment that the plate rates."), BOOLEAN (hung),
    .default_text = N_ ("no: it stands on the forks") },
  { .name = "rated_centre", .label = N_ ("Load centre of the plate"), .help = N_ ("From the face of the forks."),
    NUMBER (rated_centre, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "actual_centre", .label = N_ ("Load centre as it is"),
    .help = N_ ("From the face of the forks to the centre of gravity of the load."),
    NUMBER (actual_centre, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "fulcrum", .symbol = "x", .label = N_ ("Front axle to the face of the forks"),
    .help = N_ ("For the working beside the rule only."), NUMBER (fulcrum, SY_KIND_LENGTH), .low = FROM_ZERO },
  { .name = "side_shift", .label = N_ ("Centre of gravity beside the middle"), .help = N_ ("Left or right, either sign."),
    NUMBER (side_shift, SY_KIND_LENGTH), .default_text = N_ ("taken as in the middle") },
  { .name = "side_limit", .label = N_ ("Side shift that the plate allows"), NUMBER (side_limit, SY_KIND_LENGTH),
    .low = FROM_ZERO },
  { .name = "due", .label = N_ ("Next examination"), .help = N_ ("Of the thorough examination, from its last report."),
    .type = SY_MEMBER_DATE, .offset = offsetof (Facts, due) },
  { .name = "withdrawn", .label = N_ ("Withdrawn from use"), BOOLEAN (withdrawn), .default_text = N_ ("no") },
};

/* Quantities */

enum { MASS_WITH_ALLOWANCE, CAPACITY, CAPACITY_FULCRUM, UTILISATION, VALID_UNTIL, N_SYMBOLS };

static const SySymbol symbols[N_SYMBOLS] = {
  [MASS_WITH_ALLOWANCE] = { "mass_with_allowance", SY_KIND_MASS, N_ ("Mass with its allowance"),
                            "mass \xc3\x97 (1 + allowance)" },
  [CAPACITY] = { "capacity", SY_KIND_MASS, N_ ("Capacity at this load centre"), LOAD_MOMENT },
  [CAPACITY_FULCRUM] = { "capacity_fulcrum", SY_KIND_MASS, N_ ("The same by moments about the front axle"),
                         "statics; shown beside the rule, not judged" },
  [UTILISATION] = { "utilisation", SY_KIND_RATIO, N_ ("Load against the capacity"), "mass with allowance / capacity" },
  [VALID_UNTIL] = { "valid_until", SY_KIND_DATE, N_ ("Examination that falls due"), "as given" },
};

/* Evaluation */

static void
need (SySink *sink, bool is_known, const char *id)
{
  if (!is_known)
    sy_note_source (sy_sink_note (sink, id, SY_NOTE_NEEDED), NULL, PLATE, false);
}

static void
judge_plate (const Facts *facts, SySink *sink)
{
  need (sink, facts->rating.given, "truck-no-rating");
  need (sink, facts->plate_read == 1, "truck-plate-not-read");
  need (sink, facts->lift_height.given, "truck-no-lift-height");
  need (sink, facts->attachment >= 0, "truck-attachment-not-given");
  need (sink, facts->rated_centre.given, "truck-no-rated-centre");
  need (sink, facts->actual_centre.given, "truck-no-actual-centre");
  if (facts->attachment == ATTACHMENT_UNRATED)
    sy_sink_note (sink, "truck-attachment-unrated", SY_NOTE_EXCLUDED);
  else if (facts->hung == 1 && facts->attachment == ATTACHMENT_NONE)
    sy_sink_note (sink, "truck-hung-from-forks", SY_NOTE_EXCLUDED);
  if (facts->hung < 0)
    sy_sink_note (sink, "truck-stands-assumed", SY_NOTE_CAUTION);
}

static void
judge_side (const Facts *facts, SySink *sink)
{
  if (!facts->side_shift.given)
    {
      sy_sink_note (sink, "truck-middle-assumed", SY_NOTE_CAUTION);
      return;
    }
  if (!facts->side_limit.given)
    {
      SyNote *note = sy_sink_note (sink, "truck-no-side-limit", SY_NOTE_NEEDED);
      sy_note_arg (note, SY_KIND_LENGTH, fabs (facts->side_shift.value));
      sy_note_source (note, NULL, STABILITY, false);
    }
  else if (!sy_truck_side_within (facts->side_shift.value, facts->side_limit.value))
    {
      SyNote *note = sy_sink_note (sink, "truck-side-shift", SY_NOTE_REFUSED);
      sy_note_arg (note, SY_KIND_LENGTH, fabs (facts->side_shift.value));
      sy_note_arg (note, SY_KIND_LENGTH, facts->side_limit.value);
      sy_note_source (note, NULL, STABILITY, false);
    }
}

static void
put_capacity (const Facts *facts, double mass, SySink *sink)
{
  double capacity;

  if (!facts->rating.given || !facts->rated_centre.given || !facts->actual_centre.given)
    return;
  capacity = sy_truck_capacity (facts->rating.value, facts->rated_centre.value, facts->actual_centre.value);
  sy_sink_value (sink, CAPACITY, capacity);
  sy_sink_value (sink, UTILISATION, mass / capacity);
  sink->governing = symbols[UTILISATION].symbol;
  if (facts->fulcrum.given)
    {
      double more = sy_truck_capacity_fulcrum (facts->rating.value, facts->rated_centre.value, facts->actual_centre.value,
                                               facts->fulcrum.value);
      SyNote *note = sy_sink_note (sink, "truck-load-moment-judged", SY_NOTE_CAUTION);

      sy_sink_value (sink, CAPACITY_FULCRUM, more);
      sy_note_arg (note, SY_KIND_MASS, capacity);
      sy_note_arg (note, SY_KIND_MASS, more);
    }
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const Facts *facts = data;
  double allowance = sy_mass_allowance (&facts->allowance_percent, facts->mass_basis, context);
  double mass = facts->mass.value * (1 + allowance / 100);
  double due = sy_standing (sink, "", facts->due, facts->withdrawn, sy_as_of (&facts->common, context));

  sy_sink_value (sink, MASS_WITH_ALLOWANCE, mass);
  if (isfinite (due))
    sy_sink_value (sink, VALID_UNTIL, due);
  judge_plate (facts, sink);
  judge_side (facts, sink);
  put_capacity (facts, mass, sink);
  sy_mass_say (sink, &facts->allowance_percent, facts->mass_basis, allowance, context);
  sy_sink_note (sink, "truck-load-low", SY_NOTE_CAUTION);
  sy_sink_note (sink, "never-under-the-load", SY_NOTE_CAUTION);
  sy_sink_note (sink, "slugs-and-fluid-out", SY_NOTE_CAUTION);
}

/* Cross-field check */

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const Facts *facts = data;

  if (facts->side_limit.given && !facts->side_shift.given)
    sy_problems_add (problems, SY_PROBLEM_MISSING, 0, "$.side_shift", "nothing",
                     "how far the centre of gravity is beside the middle, 0 for in the middle",
                     sy_unit_name (SY_KIND_LENGTH, units));
  if (facts->plate_read == 1 && !facts->rating.given)
    sy_problems_add (problems, SY_PROBLEM_MISSING, 0, "$.rating", "nothing", "the rating that was read from the plate",
                     sy_unit_name (SY_KIND_MASS, units));
}

/* Formula */

static bool
formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  const SyQuantity *q = sink->quantities;
  SyText line = { text, SY_FORMULA_MAX, 0 };

  if (symbol != UTILISATION || q[UTILISATION].state == SY_STATE_ABSENT)
    return false;
  sy_line_part (&line, q[MASS_WITH_ALLOWANCE].value, q[CAPACITY].value, q[UTILISATION].value, units);
  return true;
}

extern const SyMethod sy_method_truck;
const SyMethod sy_method_truck = {
  .id = "truck",
  .title = N_ ("Load on a fork truck"),
  .source = "29 CFR 1910.178 Appendix A-5 (load moment); the truck's data plate",
  .conditions_source = PLATE,
  .edition = 1,
  .item_kind = "task",
  .by_capacity = true,
  .dated = true,
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
