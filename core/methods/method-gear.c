/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-gear-facts.h"
#include "sy-marking.h"

/* One item of gear: what it is marked with, whether it may be used on the day, when it is examined next. */

#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define FROM_ONE { SY_BOUND_CLOSED, { 1, 1 } }
#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }

#define NUMBER(member_, kind_) .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (SyGearFacts, member_)
#define TEXT(struct_, member_) .type = SY_MEMBER_TEXT, .offset = offsetof (struct_, member_)
#define DATE(struct_, member_) .type = SY_MEMBER_DATE, .offset = offsetof (struct_, member_)
#define CHOICE(struct_, member_, choices_) \
  .type = SY_MEMBER_CHOICE, .offset = offsetof (struct_, member_), .choices = choices_, .n_choices = SY_LEN (choices_)
#define BOOLEAN(member_) .type = SY_MEMBER_BOOL, .offset = offsetof (SyGearFacts, member_)

#define EXAMINED "UK LOLER 1998 reg. 9(3); 29 CFR 1910.184(d)"
#define MARKED "29 CFR 1910.184(c), as WAC 296-24-29419: no unmarked sling, none over its rating"
#define SOUND "29 CFR 1910.184(c) and (d), as WAC 296-24-29419: no damaged sling"

/* Due within so many days is said in advance. Common practice, no source. */
#define SOON_DAYS 30

/* Fields */

static const SyChoice result_choices[] = {
  [SY_RESULT_PASS] = { "pass", N_ ("Fit for use"), NULL },
  [SY_RESULT_REMARKS] = { "pass-with-remarks", N_ ("Fit for use, with remarks"), NULL },
  [SY_RESULT_FAIL] = { "fail", N_ ("Not fit for use"), NULL },
};
static const SyChoice condition_choices[] = {
  [SY_CONDITION_GOOD] = { "good", N_ ("Good"), NULL },
  [SY_CONDITION_WORN] = { "worn", N_ ("Worn, within what its maker allows"), NULL },
  [SY_CONDITION_DAMAGED] = { "damaged", N_ ("Damaged"), N_ ("out of use until repaired and examined") },
};

static const SyField examination_fields[] = {
  { .name = "on", .label = N_ ("Examined on"), .help = N_ ("Year-month-day."), DATE (SyExamination, on),
    .required = true },
  { .name = "result", .label = N_ ("Result"), CHOICE (SyExamination, result, result_choices), .required = true },
  { .name = "next", .label = N_ ("Next examination by"), .help = N_ ("As the report says."), DATE (SyExamination, next) },
  { .name = "number", .label = N_ ("Number of the report"), TEXT (SyExamination, number) },
  { .name = "examiner", .label = N_ ("Examined by"), TEXT (SyExamination, examiner) },
  { .name = "file", .label = N_ ("File of the report"), .help = N_ ("Its name as attached."), TEXT (SyExamination, file) },
  { .name = "sha256", .label = N_ ("SHA-256 of the file"), .help = N_ ("64 hexadecimal digits."),
    TEXT (SyExamination, sha256) },
};

static const SyField fields[] = {
  { .name = "kind", .label = N_ ("What it is"), CHOICE (SyGearFacts, kind, sy_gear_kind_choices), .required = true },
  { .name = "identity", .label = N_ ("Mark or serial number"), .help = N_ ("What tells it from the next one like it."),
    TEXT (SyGearFacts, identity), .required = true },
  { .name = "wll", .symbol = "WLL", .label = N_ ("Working load limit"),
    .help = N_ ("As marked; nothing is taken from a table. Of a truck or cart: its rated load."),
    NUMBER (wll, SY_KIND_MASS), .low = OVER_ZERO },
  { .name = "rated_as", .label = N_ ("What the marking rates"), CHOICE (SyGearFacts, rated_as, sy_rated_as_choices) },
  { .name = "legs", .label = N_ ("Legs on the tag"), NUMBER (legs, SY_KIND_COUNT), .whole = true, .low = FROM_ONE,
    .high = UP_TO (4), .range_source = "slings have one to four legs" },
  { .name = "band", .label = N_ ("Angles on the tag"), CHOICE (SyGearFacts, band, sy_band_choices) },
  { .name = "material", .label = N_ ("Sling of"), CHOICE (SyGearFacts, material, sy_sling_material_choices) },
  { .name = "length", .label = N_ ("Length"), .help = N_ ("Of a sling, from bearing to bearing."),
    NUMBER (length, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "size", .label = N_ ("Nominal size"), .help = N_ ("Chain or rope diameter, thread: to check the marking."),
    NUMBER (size, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "grade", .label = N_ ("Grade of chain"), .help = N_ ("8, 10 or 12; 80, 100 and 120 are the same."),
    NUMBER (grade, SY_KIND_COUNT), .low = OVER_ZERO },
  { .name = "family", .label = N_ ("Family of eyebolt"), CHOICE (SyGearFacts, family, sy_family_choices) },
  { .name = "shoulder", .label = N_ ("Has a shoulder"), BOOLEAN (shoulder) },
  { .name = "own_mass", .label = N_ ("Own mass"), NUMBER (own_mass, SY_KIND_MASS), .low = FROM_ZERO },
  { .name = "lift_height", .label = N_ ("Lift height"), .help = N_ ("How high it lifts."),
    NUMBER (lift_height, SY_KIND_LENGTH), .low = FROM_ZERO },
  { .name = "load_centre", .label = N_ ("Load centre of the plate"), .help = N_ ("Of a fork truck, from the face of the forks."),
    NUMBER (load_centre, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "serves", .label = N_ ("Machines that it serves"), .help = N_ ("Named as the dies name theirs."),
    .type = SY_MEMBER_TEXTS, .offset = offsetof (SyGearFacts, serves), .max_items = SY_GEAR_SERVES_MAX },
  { .name = "storage", .label = N_ ("Kept at"), TEXT (SyGearFacts, storage) },
  { .name = "last_examined", .label = N_ ("Last examined"), DATE (SyGearFacts, last_examined),
    .default_text = N_ ("that of the newest report") },
  { .name = "due", .label = N_ ("Next examination"), .help = N_ ("The last day on which it may be used without one."),
    DATE (SyGearFacts, due), .default_text = N_ ("that of the newest report") },
  { .name = "interval_months", .label = N_ ("Months between examinations"), .help = N_ ("As its maker or its scheme says."),
    NUMBER (interval_months, SY_KIND_COUNT), .whole = true, .low = FROM_ONE, .high = UP_TO (120),
    .range_source = "ten years at most: no regulation known here asks for less" },
  { .name = "condition", .label = N_ ("Condition"), .help = N_ ("As last looked over."),
    CHOICE (SyGearFacts, condition, condition_choices) },
  { .name = "withdrawn", .label = N_ ("Withdrawn from use"), BOOLEAN (withdrawn) },
  { .name = "withdrawn_why", .label = N_ ("Why it was withdrawn"), TEXT (SyGearFacts, withdrawn_why) },
  { .name = "examinations", .label = N_ ("Reports of examination"), .type = SY_MEMBER_LIST,
    .offset = offsetof (SyGearFacts, examinations), .members = examination_fields,
    .n_members = SY_LEN (examination_fields), .group_size = sizeof (SyExamination),
    .max_items = SY_GEAR_EXAMINATIONS_MAX, .item_label = N_ ("Report") },
};

/* Symbols */

enum { WLL, OWN_MASS, VALID_UNTIL, DAYS_LEFT, INTERVAL, MARKING_LIMIT, N_SYMBOLS };

static const SySymbol symbols[N_SYMBOLS] = {
  [WLL] = { "wll", SY_KIND_MASS, N_ ("Working load limit"), "as marked" },
  [OWN_MASS] = { "own_mass", SY_KIND_MASS, N_ ("Own mass"), "as given" },
  [VALID_UNTIL] = { "valid_until", SY_KIND_DATE, N_ ("Next examination"), "as given, else the newest report" },
  [DAYS_LEFT] = { "days_left", SY_KIND_COUNT, N_ ("Days left until then"), "due date - day" },
  [INTERVAL] = { "interval_months", SY_KIND_COUNT, N_ ("Months between examinations"), "as given" },
  [MARKING_LIMIT] = { "marking.limit", SY_KIND_MASS, N_ ("Largest marking that its size can have"),
                      "OSHA, Guidance on Safe Sling Use; wire rope, DIN 580 and ASME B18.15 from memory" },
};

/* Reports */

static double
day_of (const char *text)
{
  double day;

  return text != NULL && sy_date_read (text, &day) ? day : NAN;
}

/* The newest report of that day or before; a day that is not known leaves out none. */
static const SyExamination *
newest_until (const SyGearFacts *facts, double day)
{
  const SyExamination *items = facts->examinations.items, *newest = NULL;

  for (size_t i = 0; i < facts->examinations.count; i++)
    if (items[i].on != NULL && !(day_of (items[i].on) > day)
        && (newest == NULL || day_of (items[i].on) >= day_of (newest->on)))
      newest = &items[i];
  return newest;
}

/* The report with the latest day, the last listed of that day; NULL when there is none. */
static const SyExamination *
newest_of (const SyGearFacts *facts)
{
  return newest_until (facts, INFINITY);
}

/* As given, else as the newest report says; NULL: not known. */
static const char *
last_examined (const SyGearFacts *facts)
{
  const SyExamination *newest = newest_of (facts);

  return facts->last_examined != NULL ? facts->last_examined : newest != NULL ? newest->on : NULL;
}

const char *
sy_gear_due (const SyGearFacts *facts)
{
  const SyExamination *newest = newest_of (facts);

  return facts->due != NULL ? facts->due : newest != NULL ? newest->next : NULL;
}

/* Notes */

static SyNote *
say (SySink *sink, const char *id, SyNoteClass note_class, const char *source)
{
  SyNote *note = sy_sink_note (sink, id, note_class);

  sy_note_source (note, NULL, source, false);
  return note;
}

/* The figures of a chain: 80 is 8, 100 is 10, 120 is 12. */
static int
chain_grade (const SyNumber *grade)
{
  double value = !grade->given ? 0 : grade->value >= 80 ? grade->value / 10 : grade->value;

  return value == 8 || value == 10 || value == 12 ? (int) value : 0;
}

/* One leg of that size, or the bolt along its axis, in kg; false where no table is known. */
static bool
largest_of_size (const SyGearFacts *facts, SyUnits units, SyMarking *out)
{
  double size = sy_unit_convert (SY_KIND_LENGTH, facts->size.value, units, SY_UNITS_METRIC);

  if (!facts->size.given)
    return false;
  if (facts->kind == SY_GEAR_EYEBOLT)
    return facts->family >= 0 && sy_marking_eyebolt ((SyEyeboltFamily) facts->family, size, out);
  if (facts->kind != SY_GEAR_SLING)
    return false;
  if (facts->material == SY_SLING_CHAIN)
    return sy_marking_chain (size, chain_grade (&facts->grade), out);
  return (facts->material == SY_SLING_WIRE_ROPE || facts->material == SY_SLING_WIRE_ROPE_FIBRE_CORE)
         && sy_marking_wire_rope (size, out);
}

/* A tag of several legs cannot say more than statics makes of the largest single leg. */
static bool
largest_marking (const SyGearFacts *facts, SyUnits units, SyMarking *out)
{
  static const double steepest[SY_N_BANDS] = { [SY_BAND_45_60] = 45 };

  if (!largest_of_size (facts, units, out))
    return false;
  if (facts->kind != SY_GEAR_SLING || facts->rated_as == SY_RATED_LEG)
    return true;
  if (facts->rated_as != SY_RATED_ASSEMBLY || !facts->legs.given || facts->band < 0)
    return false;
  out->wll_kg /= sy_assembly_leg_of_tag (1, (int) facts->legs.value, (SyBand) facts->band, steepest[facts->band]).capacity;
  return true;
}

static void
judge_marking (const SyGearFacts *facts, SyUnits units, SySink *sink)
{
  bool tag = facts->legs.given && facts->band >= 0;
  SyMarking largest;

  if (!facts->wll.given)
    say (sink, "gear-no-wll", SY_NOTE_NEEDED, MARKED);
  if (facts->kind >= 0 && facts->kind <= SY_GEAR_MASTER_LINK && facts->rated_as < 0)
    say (sink, "gear-no-rating-basis", SY_NOTE_NEEDED, MARKED);
  if (facts->rated_as == SY_RATED_ASSEMBLY && !tag)
    say (sink, "gear-tag-not-read", SY_NOTE_NEEDED, MARKED);
  if (facts->kind == SY_GEAR_EYEBOLT && facts->family < 0)
    say (sink, "gear-no-family", SY_NOTE_CAUTION, NULL);
  if (!largest_marking (facts, units, &largest))
    return;
  double limit = sy_unit_convert (SY_KIND_MASS, largest.wll_kg, SY_UNITS_METRIC, units);
  sy_sink_value (sink, MARKING_LIMIT, limit);
  if (facts->wll.given
      && sy_marking_cannot_be (sy_unit_convert (SY_KIND_MASS, facts->wll.value, units, SY_UNITS_METRIC), &largest))
    {
      SyNote *note = sy_sink_note_on (sink, "marking-cannot-be-right", SY_NOTE_NEEDED, facts->identity);
      sy_note_arg (note, SY_KIND_MASS, facts->wll.value);
      sy_note_arg (note, SY_KIND_MASS, limit);
      sy_note_source (note, "wll", largest.source, largest.from_memory);
    }
}

static void
judge_standing (const SyGearFacts *facts, double as_of, SySink *sink)
{
  /* A report of a later day does not take back what the last one before it said. */
  const SyExamination *newest = newest_until (facts, as_of);

  if (facts->withdrawn == 1)
    {
      bool why = facts->withdrawn_why != NULL && *facts->withdrawn_why != '\0';
      sy_note_source (sy_sink_note_on (sink, why ? "gear-withdrawn-because" : "gear-withdrawn", SY_NOTE_REFUSED,
                                       why ? facts->withdrawn_why : ""),
                      NULL, SOUND, false);
    }
  if (facts->condition == SY_CONDITION_DAMAGED)
    say (sink, "gear-damaged", SY_NOTE_REFUSED, SOUND);
  if (facts->condition == SY_CONDITION_WORN)
    say (sink, "gear-worn", SY_NOTE_IMPROVE, "common practice, no source");
  if (newest != NULL && newest->result == SY_RESULT_FAIL)
    sy_note_arg (say (sink, "gear-failed", SY_NOTE_REFUSED, EXAMINED), SY_KIND_DATE, day_of (newest->on));
  if (newest != NULL && newest->result == SY_RESULT_REMARKS)
    sy_note_arg (say (sink, "gear-passed-with-remarks", SY_NOTE_CAUTION, NULL), SY_KIND_DATE, day_of (newest->on));
}

static void
judge_due (const SyGearFacts *facts, double as_of, SySink *sink)
{
  double due = day_of (sy_gear_due (facts)), last = day_of (last_examined (facts));
  SyNote *note;

  if (isnan (as_of))
    sy_sink_note (sink, "day-not-known", SY_NOTE_NEEDED);
  if (!isnan (last) && last > as_of)
    {
      note = say (sink, "gear-examined-later", SY_NOTE_NEEDED, EXAMINED);
      sy_note_arg (note, SY_KIND_DATE, last);
      sy_note_arg (note, SY_KIND_DATE, as_of);
    }
  if (isnan (due))
    {
      say (sink, "gear-no-due", SY_NOTE_NEEDED, EXAMINED);
      return;
    }
  sy_sink_value (sink, VALID_UNTIL, due);
  if (isnan (as_of))
    return;
  sy_sink_value (sink, DAYS_LEFT, due - as_of);
  if (due - as_of > SOON_DAYS)
    return;
  note = sy_sink_note (sink, as_of > due ? "gear-out-of-date" : "gear-due-soon",
                       as_of > due ? SY_NOTE_REFUSED : SY_NOTE_IMPROVE);
  sy_note_source (note, "valid_until", as_of > due ? EXAMINED : "common practice, no source: a month ahead", false);
  sy_note_arg (note, SY_KIND_DATE, as_of);
  sy_note_arg (note, SY_KIND_DATE, due);
  sy_note_arg (note, SY_KIND_COUNT, due - as_of);
}

/* NAN where the day is not known. */
static double
months_later (double day, double months)
{
  return isnan (day) ? NAN : sy_date_add_months (day, (int) months);
}

/* The shortest rule of the policy for that kind; NULL when it has none. */
static const SyExaminationRule *
find_rule (int kind, const SyContext *context)
{
  const SyExaminationRule *rule = NULL;

  for (size_t i = 0; i < context->n_examinations; i++)
    if ((int) context->examinations[i].kind == kind && (rule == NULL || context->examinations[i].months < rule->months))
      rule = &context->examinations[i];
  return rule;
}

static void
judge_interval (const SyGearFacts *facts, const SyContext *context, SySink *sink)
{
  const SyExaminationRule *rule = find_rule (facts->kind, context);
  double due = day_of (sy_gear_due (facts)), last = day_of (last_examined (facts));
  /* When it was last examined is not known: it cannot have been later than on the day. */
  double from = isnan (last) ? sy_as_of (&facts->common, context) : last;
  SyNote *note;

  if (facts->interval_months.given)
    {
      double latest = months_later (from, facts->interval_months.value);

      sy_sink_value (sink, INTERVAL, facts->interval_months.value);
      if (due > latest)
        {
          note = say (sink, "gear-due-after-interval", SY_NOTE_IMPROVE, "the interval that was given");
          sy_note_arg (note, SY_KIND_DATE, due);
          sy_note_arg (note, SY_KIND_DATE, latest);
        }
    }
  if (rule == NULL)
    return;
  if (facts->interval_months.given && facts->interval_months.value > rule->months)
    {
      note = sy_sink_note (sink, "gear-interval-long", SY_NOTE_IMPROVE);
      sy_note_arg (note, SY_KIND_COUNT, facts->interval_months.value);
      sy_note_arg (note, SY_KIND_COUNT, rule->months);
      sy_note_source (note, "interval_months", rule->regulation, rule->from_memory);
    }
  if (due > months_later (from, rule->months))
    {
      note = sy_sink_note (sink, "gear-due-late", SY_NOTE_IMPROVE);
      sy_note_arg (note, SY_KIND_DATE, due);
      sy_note_arg (note, SY_KIND_DATE, months_later (from, rule->months));
      sy_note_arg (note, SY_KIND_COUNT, rule->months);
      sy_note_source (note, "valid_until", rule->regulation, rule->from_memory);
    }
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyGearFacts *facts = data;

  if (facts->wll.given)
    sy_sink_value (sink, WLL, facts->wll.value);
  if (facts->own_mass.given)
    sy_sink_value (sink, OWN_MASS, facts->own_mass.value);
  judge_standing (facts, sy_as_of (&facts->common, context), sink);
  judge_due (facts, sy_as_of (&facts->common, context), sink);
  sy_as_of_say (&facts->common, context, sink);
  judge_interval (facts, context, sink);
  judge_marking (facts, context->units, sink);
  say (sink, "gear-look-over", SY_NOTE_CAUTION, NULL);
  if (sink->quantities[VALID_UNTIL].state == SY_STATE_VALUE)
    sink->governing = "valid_until";
}

/* Cross-field check */

static void
conflict (SyProblems *problems, const char *path, const char *given, const char *before, const char *date,
          const char *after)
{
  char allowed[SY_PROBLEM_ALLOWED_MAX];
  SyText text = { allowed, sizeof allowed, 0 };

  sy_text_add (&text, before);
  sy_text_add (&text, date);
  sy_text_add (&text, after);
  sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, path, given, allowed, "");
}

/* "$.examinations[3].next", in SY_PROBLEM_PATH_MAX bytes. */
static void
examination_path (size_t index, const char *member, char *path)
{
  SyText text = { path, SY_PROBLEM_PATH_MAX, 0 };

  sy_text_add (&text, "$.examinations[");
  sy_text_add_number (&text, (double) index);
  sy_text_add (&text, "].");
  sy_text_add (&text, member);
}

static bool
is_sha256 (const char *text)
{
  size_t n = 0;

  while (text[n] != '\0' && strchr ("0123456789abcdefABCDEF", text[n]) != NULL)
    n++;
  return n == 64 && text[n] == '\0';
}

static void
check_reports (const SyGearFacts *facts, SyProblems *problems)
{
  const SyExamination *items = facts->examinations.items, *newest = newest_of (facts);
  char path[SY_PROBLEM_PATH_MAX];

  for (size_t i = 0; i < facts->examinations.count; i++)
    {
      if (items[i].on != NULL && day_of (items[i].next) < day_of (items[i].on))
        {
          examination_path (i, "next", path);
          conflict (problems, path, items[i].next, "not before the examination, ", items[i].on, "");
        }
      if (items[i].sha256 != NULL && !is_sha256 (items[i].sha256))
        {
          examination_path (i, "sha256", path);
          sy_problems_add (problems, SY_PROBLEM_RANGE, 0, path, items[i].sha256, "64 hexadecimal digits", "");
        }
    }
  if (newest == NULL)
    return;
  if (facts->last_examined != NULL && strcmp (facts->last_examined, newest->on) != 0)
    conflict (problems, "$.last_examined", facts->last_examined, "", newest->on,
              ", as the newest report says; or left out");
  if (facts->due != NULL && newest->next != NULL && strcmp (facts->due, newest->next) != 0)
    conflict (problems, "$.due", facts->due, "", newest->next, ", as the newest report says; or left out");
}

/* Facts that gear of another kind does not have. */
static void
check_kind (const SyGearFacts *facts, SyProblems *problems)
{
  const char *kind = facts->kind < 0 ? "" : sy_gear_kind_choices[facts->kind].id;
  const struct
  {
    bool given;
    const char *path;
    SyGearKind of, also;
    const char *allowed;
  } members[] = {
    { facts->family >= 0, "$.family", SY_GEAR_EYEBOLT, SY_GEAR_EYEBOLT, "only of an eyebolt" },
    { facts->shoulder >= 0, "$.shoulder", SY_GEAR_EYEBOLT, SY_GEAR_EYEBOLT, "only of an eyebolt" },
    { facts->material >= 0, "$.material", SY_GEAR_SLING, SY_GEAR_SLING, "only of a sling" },
    { facts->load_centre.given, "$.load_centre", SY_GEAR_TRUCK, SY_GEAR_TRUCK, "only of a fork truck" },
    { facts->rated_as == SY_RATED_ASSEMBLY, "$.rated_as", SY_GEAR_SLING, SY_GEAR_MASTER_LINK,
      "assembly only of a sling or a master link" },
  };

  for (size_t i = 0; i < SY_LEN (members) && facts->kind >= 0; i++)
    if (members[i].given && facts->kind != (int) members[i].of && facts->kind != (int) members[i].also)
      conflict (problems, members[i].path, kind, members[i].allowed, "", "");
}

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyGearFacts *facts = data;
  const char *basis = facts->rated_as < 0 ? "rated_as not given" : sy_rated_as_choices[facts->rated_as].id;

  (void) units;
  if (facts->identity != NULL && *facts->identity == '\0')
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.identity", "\"\"", "a mark or serial number", "");
  if (facts->legs.given && facts->rated_as != SY_RATED_ASSEMBLY)
    conflict (problems, "$.legs", basis, "only with rated_as \"assembly\"", "", "");
  if (facts->band >= 0 && facts->rated_as != SY_RATED_ASSEMBLY)
    conflict (problems, "$.band", basis, "only with rated_as \"assembly\"", "", "");
  if (facts->withdrawn_why != NULL && *facts->withdrawn_why != '\0' && facts->withdrawn != 1)
    conflict (problems, "$.withdrawn_why", facts->withdrawn_why, "only with withdrawn true", "", "");
  check_kind (facts, problems);
  check_reports (facts, problems);
  if (facts->due != NULL && day_of (facts->due) < day_of (last_examined (facts)))
    conflict (problems, "$.due", facts->due, "not before the last examination, ", last_examined (facts), "");
}

extern const SyMethod sy_method_gear;
const SyMethod sy_method_gear = {
  .id = "gear",
  .title = N_ ("Item of gear"),
  .source = "UK LOLER 1998 reg. 9(3)(a); 29 CFR 1910.184(c) and (d), as WAC 296-24-29419; the marking of the item itself",
  .conditions_source = EXAMINED,
  .edition = 1,
  .item_kind = "gear",
  .by_capacity = true,
  .dated = true,
  .good_title = N_ ("Marked and in date"),
  .good_meaning = N_ ("Marked, examined and not withdrawn; what it carries is for a plan of the lift."),
  .improve_title = N_ ("See to it"),
  .improve_meaning = N_ ("Worn, soon due, or examined too seldom."),
  .memory_caution = N_ ("Some intervals of examination, and the sizes that a marking is held against, stand here from memory; "
                        "they may tighten a verdict but are never the only ground for a favourable one."),
  .facts_size = sizeof (SyGearFacts),
  .fields = fields,
  .n_fields = SY_LEN (fields),
  .symbols = symbols,
  .n_symbols = N_SYMBOLS,
  .check = check,
  .evaluate = evaluate,
};
