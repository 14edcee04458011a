/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-push-duty.h"

/* The forces of pushing, pulling and sliding against what is published, whatever they come from. */

const SyChoice sy_push_way_choices[] = {
  [SY_WAY_PUSH] = { "push", N_ ("Pushed"), NULL },
  [SY_WAY_PULL] = { "pull", N_ ("Pulled"), NULL },
};
const SyChoice sy_push_who_choices[] = {
  [SY_WHO_WOMEN] = { "women", N_ ("Women, or anyone"), NULL },
  [SY_WHO_MEN] = { "men", N_ ("Men only"), NULL },
  [SY_WHO_MIXED] = { "mixed", N_ ("Women and men, each held against their own figures"), NULL },
};
/* HSE: uneven floors, confined spaces and trapping hazards call for a detailed assessment. The rest: what the tables
   did not measure, common practice, no source. */
const SyChoice sy_push_condition_choices[] = {
  { "uneven-floor", N_ ("Floor uneven, soft, or with gaps, sills or hoses across the way"), NULL },
  { "confined-space", N_ ("Not enough room to walk or stand freely behind it"), NULL },
  { "trapping", N_ ("Hands or feet can be trapped"), NULL },
  { "slippery-floor", N_ ("Floor slippery or oily under the feet"), NULL },
  { "turning", N_ ("Turned or steered under load"), NULL },
  { "one-hand", N_ ("Pushed or pulled with one hand"), NULL },
  { "view-blocked", N_ ("No free view of the way"), NULL },
  { "unstable-load", N_ ("The load shifts, swings or can topple"), NULL },
  { "over-8h", N_ ("More than eight hours a day"), NULL },
  { "protected-persons", N_ ("Done by someone pregnant, under age, injured or returning to work"), NULL },
};
static const char *const condition_notes[SY_N_PUSH_CONDITIONS] = {
  "push-uneven-floor", "push-confined-space", "push-trapping",      "push-slippery-floor", "push-turning",
  "push-one-hand",     "push-view-blocked",   "push-unstable-load", "push-over-8h",        "push-protected-persons",
};

const SyLimit sy_push_limits[] = {
  { "accepted-start", N_ ("Starting it: what people accept"), "Snook and Ciriello 1991; Potvin and others 2021", true,
    "initial", "psycho.initial.limit", "psycho.initial.ratio" },
  { "accepted-moving", N_ ("Keeping it moving: what people accept"), "Snook and Ciriello 1991; Potvin and others 2021",
      true,
    "sustained", "psycho.sustained.limit", "psycho.sustained.ratio" },
  { "uk-start", N_ ("Starting it: UK guideline"), SY_PUSH_FILTER, false, "initial", "uk.start", "uk.start.ratio" },
  { "uk-stop", N_ ("Stopping it: UK guideline"), SY_PUSH_FILTER, false, "stop", "uk.start", "uk.stop.ratio" },
  { "uk-moving", N_ ("Keeping it moving: UK guideline"), SY_PUSH_FILTER, false, "sustained", "uk.moving",
      "uk.moving.ratio" },
  { "uk-hold", N_ ("Holding it: UK guideline to keep moving"),
      SY_PUSH_FILTER "; for holding common practice, no source", false,
    "hold", "uk.moving", "uk.hold.ratio" },
  { "critical-start", N_ ("Starting it: critical force"), "ISO/TR 12295", true, "initial", "critical.initial",
    "critical.initial.ratio" },
  { "critical-moving", N_ ("Keeping it moving: critical force"), "ISO/TR 12295", true, "sustained",
      "critical.sustained",
    "critical.sustained.ratio" },
};

void
sy_push_case_begin (const SyPushDuty *duty, SyUnits units, SyPushCase *out)
{
  *out = (SyPushCase) {
    .task = { .way = (SyPushWay) duty->way,
              .height_cm = sy_unit_convert (SY_KIND_REACH, duty->handle_height.value, units, SY_UNITS_METRIC),
              .distance_m = sy_unit_convert (SY_KIND_DISTANCE, duty->distance.value, units, SY_UNITS_METRIC),
              .per_min = duty->frequency.value },
    .who = duty->who < 0 ? SY_WHO_WOMEN : (SyPushWho) duty->who,
    .percent = duty->percent.given ? (int) duty->percent.value : 90,
    .units = units,
    .needs = { (double) NAN, (double) NAN, (double) NAN, (double) NAN },
  };
}

/* The limits as quantities: NAN where one does not speak. */
typedef struct
{
  double accepted[SY_N_PUSH_FORCES];
  SyPushGuide guide, critical;
} Limits;

static Limits
limits_of (const SyPushCase *push)
{
  Limits out = { .guide = { (double) NAN, (double) NAN }, .critical = sy_push_critical (push->who, push->units) };

  for (int force = 0; force < SY_N_PUSH_FORCES; force++)
    out.accepted[force] = sy_push_limit (&push->task, push->who, (SyPushForce) force, push->percent, push->units);
  if (sy_push_guideline_covers (&push->task))
    out.guide = sy_push_guideline (push->who, push->units);
  return out;
}

/* A force that was typed as the limit prints is the limit: the two differ by a rounding of kg × g at the most. */
static double
part_of (double force, double limit)
{
  double ratio = force / limit;

  return fabs (ratio - 1) < 1e-12 ? 1 : ratio;
}

/* In the order of sy_push_limits. */
static void
ratios_of (const SyPushCase *push, const Limits *limits, double ratios[SY_N_PUSH_LIMITS])
{
  const SyPushNeeds *needs = &push->needs;

  ratios[0] = part_of (needs->initial, limits->accepted[SY_PUSH_INITIAL]);
  ratios[1] = part_of (needs->sustained, limits->accepted[SY_PUSH_SUSTAINED]);
  ratios[2] = part_of (needs->initial, limits->guide.start);
  ratios[3] = part_of (needs->stop, limits->guide.start);
  ratios[4] = part_of (needs->sustained, limits->guide.moving);
  ratios[5] = part_of (needs->hold, limits->guide.moving);
  ratios[6] = part_of (needs->initial, limits->critical.start);
  ratios[7] = part_of (needs->sustained, limits->critical.moving);
}

/* -1 where neither the start nor the move is known: what holds it is no answer by itself. */
static int
largest (const SyPushNeeds *needs, const double ratios[SY_N_PUSH_LIMITS])
{
  int at = -1;

  for (int i = 0; i < SY_N_PUSH_LIMITS && !(isnan (needs->initial) && isnan (needs->sustained)); i++)
    if (!isnan (ratios[i]) && (at < 0 || ratios[i] > ratios[at]))
      at = i;
  return at;
}

double
sy_push_case_ratio (const SyPushCase *push)
{
  Limits limits = limits_of (push);
  double ratios[SY_N_PUSH_LIMITS];

  ratios_of (push, &limits, ratios);
  int at = largest (&push->needs, ratios);
  return at < 0 ? (double) NAN : ratios[at];
}

static void
put (SySink *sink, size_t symbol, double value)
{
  if (!isnan (value))
    sy_sink_value (sink, symbol, value);
}

static double
percent_of (const SyPushCase *push, SyHands hands, SyPushForce force, double needed)
{
  return isnan (needed) ? needed : sy_push_percent (&push->task, hands, force, sy_push_kgf (needed, push->units));
}

static void
put_percents (const SyPushCase *push, SyHands hands, size_t symbol, SySink *sink)
{
  double start = percent_of (push, hands, SY_PUSH_INITIAL, push->needs.initial);
  double keep = percent_of (push, hands, SY_PUSH_SUSTAINED, push->needs.sustained);

  put (sink, symbol + 1, start);
  put (sink, symbol + 2, keep);
  /* Half of the answer is none. */
  if (!isnan (start) && !isnan (keep))
    put (sink, symbol, fmin (start, keep));
}

void
sy_push_case_put (const SyPushCase *push, SySink *sink)
{
  static const size_t places[SY_N_PUSH_LIMITS] = {
    SY_PUSH_Q_PSYCHO_START_RATIO, SY_PUSH_Q_PSYCHO_KEEP_RATIO, SY_PUSH_Q_UK_START_RATIO, SY_PUSH_Q_UK_STOP_RATIO,
    SY_PUSH_Q_UK_KEEP_RATIO, SY_PUSH_Q_UK_HOLD_RATIO, SY_PUSH_Q_CRITICAL_START_RATIO, SY_PUSH_Q_CRITICAL_KEEP_RATIO,
  };
  Limits limits = limits_of (push);
  double ratios[SY_N_PUSH_LIMITS];

  put (sink, SY_PUSH_Q_INITIAL, push->needs.initial);
  put (sink, SY_PUSH_Q_SUSTAINED, push->needs.sustained);
  put (sink, SY_PUSH_Q_HOLD, push->needs.hold);
  put (sink, SY_PUSH_Q_STOP, push->needs.stop);
  put (sink, SY_PUSH_Q_PSYCHO_START, limits.accepted[SY_PUSH_INITIAL]);
  put (sink, SY_PUSH_Q_PSYCHO_KEEP, limits.accepted[SY_PUSH_SUSTAINED]);
  put (sink, SY_PUSH_Q_UK_START, limits.guide.start);
  put (sink, SY_PUSH_Q_UK_KEEP, limits.guide.moving);
  put (sink, SY_PUSH_Q_CRITICAL_START, limits.critical.start);
  put (sink, SY_PUSH_Q_CRITICAL_KEEP, limits.critical.moving);
  ratios_of (push, &limits, ratios);
  for (int i = 0; i < SY_N_PUSH_LIMITS; i++)
    put (sink, places[i], ratios[i]);
  put_percents (push, SY_HANDS_WOMEN, SY_PUSH_Q_WOMEN, sink);
  put_percents (push, SY_HANDS_MEN, SY_PUSH_Q_MEN, sink);
  int at = largest (&push->needs, ratios);
  if (at >= 0)
    {
      put (sink, SY_PUSH_Q_RATIO, ratios[at]);
      sink->governing = sy_push_limits[at].id;
    }
}

void
sy_push_case_notes (const SyPushCase *push, const SyPushDuty *duty, SySink *sink)
{
  Limits limits = limits_of (push);

  for (size_t i = 0; i < SY_N_PUSH_CONDITIONS; i++)
    if (duty->conditions.bits & (1ul << i))
      sy_note_source (sy_sink_note (sink, condition_notes[i], SY_NOTE_EXCLUDED), NULL,
                      i < 3 ? SY_PUSH_FILTER : "common practice, no source", false);
  if (!duty->conditions.given)
    sy_sink_note (sink, "push-conditions-not-asked", SY_NOTE_MISSING);
  if (duty->persons.given && duty->persons.value > 1)
    sy_note_arg (sy_sink_note (sink, "push-several-persons", SY_NOTE_EXCLUDED), SY_KIND_COUNT, duty->persons.value);
  if (isnan (limits.accepted[SY_PUSH_INITIAL]) || isnan (limits.accepted[SY_PUSH_SUSTAINED]))
    {
      SyNote *note = sy_sink_note (sink, "push-no-table", SY_NOTE_NEEDED);
      sy_note_arg (note, SY_KIND_REACH, duty->handle_height.value);
      sy_note_arg (note, SY_KIND_DISTANCE, duty->distance.value);
      sy_note_arg (note, SY_KIND_FREQUENCY, duty->frequency.value);
      sy_note_source (note, NULL, "Snook and Ciriello 1991; Potvin and others 2021", true);
    }
  if (!sy_push_guideline_covers (&push->task))
    {
      /* What is left stands from memory and speaks for nothing by itself. */
      SyNote *note = sy_sink_note (sink, "push-guide-does-not-cover", SY_NOTE_NEEDED);
      sy_note_arg (note, SY_KIND_REACH, duty->handle_height.value);
      sy_note_arg (note, SY_KIND_DISTANCE, duty->distance.value);
      sy_note_source (note, NULL, SY_PUSH_FILTER "; heights in figures assumed, no source", false);
    }
  if (sink->quantities[SY_PUSH_Q_WOMEN].state != SY_STATE_ABSENT
      && sink->quantities[SY_PUSH_Q_MEN].state != SY_STATE_ABSENT)
    {
      SyNote *note = sy_sink_note (sink, "push-who-can", SY_NOTE_CAUTION);
      sy_note_arg (note, SY_KIND_PERCENT, sink->quantities[SY_PUSH_Q_WOMEN].value);
      sy_note_arg (note, SY_KIND_PERCENT, sink->quantities[SY_PUSH_Q_MEN].value);
      sy_note_source (note, NULL, "Snook and Ciriello 1991; Potvin and others 2021", true);
    }
  if (duty->who < 0)
    sy_note_arg (sy_sink_note (sink, "push-who-default", SY_NOTE_CAUTION), SY_KIND_PERCENT, push->percent);
  if (push->percent < 90)
    sy_note_arg (sy_sink_note (sink, "push-percent-low", SY_NOTE_CAUTION), SY_KIND_PERCENT, push->percent);
}

void
sy_push_duty_check (const SyPushDuty *duty, SyProblems *problems)
{
  char given[SY_NUMBER_TEXT_MAX];
  double percent = duty->percent.value;

  if (!duty->percent.given || percent == 90 || percent == 75 || percent == 50)
    return;
  sy_number_print (percent, given);
  sy_problems_add (problems, SY_PROBLEM_CHOICE, 0, "$.percent", given, "90, 75 or 50",
                   sy_unit_name (SY_KIND_PERCENT, SY_UNITS_METRIC));
}

bool
sy_push_formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  static const struct
  {
    size_t ratio, value, limit;
  } parts[] = {
    { SY_PUSH_Q_PSYCHO_START_RATIO, SY_PUSH_Q_INITIAL, SY_PUSH_Q_PSYCHO_START },
    { SY_PUSH_Q_PSYCHO_KEEP_RATIO, SY_PUSH_Q_SUSTAINED, SY_PUSH_Q_PSYCHO_KEEP },
    { SY_PUSH_Q_UK_START_RATIO, SY_PUSH_Q_INITIAL, SY_PUSH_Q_UK_START },
    { SY_PUSH_Q_UK_STOP_RATIO, SY_PUSH_Q_STOP, SY_PUSH_Q_UK_START },
    { SY_PUSH_Q_UK_KEEP_RATIO, SY_PUSH_Q_SUSTAINED, SY_PUSH_Q_UK_KEEP },
    { SY_PUSH_Q_UK_HOLD_RATIO, SY_PUSH_Q_HOLD, SY_PUSH_Q_UK_KEEP },
    { SY_PUSH_Q_CRITICAL_START_RATIO, SY_PUSH_Q_INITIAL, SY_PUSH_Q_CRITICAL_START },
    { SY_PUSH_Q_CRITICAL_KEEP_RATIO, SY_PUSH_Q_SUSTAINED, SY_PUSH_Q_CRITICAL_KEEP },
  };
  SyText line = { text, SY_FORMULA_MAX, 0 };

  for (size_t i = 0; i < SY_LEN (parts); i++)
    {
      if (parts[i].ratio != symbol || sink->quantities[symbol].state == SY_STATE_ABSENT)
        continue;
      sy_text_add_measure (&line, sink->quantities[parts[i].value].value, 1, SY_KIND_HAND_FORCE, units);
      sy_text_add (&line, " / ");
      sy_text_add_measure (&line, sink->quantities[parts[i].limit].value, 1, SY_KIND_HAND_FORCE, units);
      sy_text_add (&line, " = ");
      sy_text_add_rounded (&line, sink->quantities[symbol].value, 3);
      return true;
    }
  return false;
}
