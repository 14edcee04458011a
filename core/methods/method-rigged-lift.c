/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "rig-scene.h"
#include "sy-outline.h"
#include "sy-mass-basis.h"
#include "sy-rig-case.h"

/* A load hung by one to four legs: statics, the way of the load, and what a plan of it has to say. */

#define STATICS "statics: sum of forces and moments"

static const SySymbol symbols[SY_RIG_N_SYMBOLS] = {
  [SY_RIG_MASS] = { "mass_with_allowance", SY_KIND_MASS, N_ ("Mass with its allowance"), "mass × (1 + allowance)" },
  [SY_RIG_HOOK_LOAD] = { "hook.load", SY_KIND_MASS, N_ ("What hangs in the hook"),
                         "mass × (1 + allowance) × dynamic factor, and the gear below it" },
  [SY_RIG_TILT] = { "tilt", SY_KIND_ANGLE, N_ ("Tilt of the load as it hangs"), STATICS },
  [SY_RIG_HEADROOM] = { "headroom", SY_KIND_LENGTH, N_ ("Height of the hook over the underside"), "geometry" },
  [SY_RIG_UTILISATION] = { "utilisation", SY_KIND_RATIO, N_ ("Load of the weakest element against its capacity"),
                           "demand / capacity" },
  [SY_RIG_VALID_UNTIL] = { "valid_until", SY_KIND_DATE, N_ ("Earliest examination that falls due"), "as given" },
  [SY_RIG_ANGLE_MAX] = { "angle.max", SY_KIND_ANGLE, N_ ("Flattest leg, from the vertical"), "geometry" },
  [SY_RIG_MARGIN] = { "margin", SY_KIND_LENGTH, N_ ("Centre of gravity inside what holds it"), "geometry" },
  [SY_RIG_US_CAPACITY] = { "rule.us.capacity", SY_KIND_MASS, N_ ("Capacity of the sling by the US rule"),
                           "US Navy, Equipment Operator training (14080): two legs count" },
  [SY_RIG_US_UTILISATION] = { "rule.us.utilisation", SY_KIND_RATIO, N_ ("Load against the US rule"), "mass / capacity" },
  [SY_RIG_EN_CAPACITY] = { "rule.en.capacity", SY_KIND_MASS, N_ ("Capacity of the sling by the European rule"),
                           "EN 818-4, EN 818-6, EN 1492, EN 13414 (from memory): mode factors" },
  [SY_RIG_EN_UTILISATION] = { "rule.en.utilisation", SY_KIND_RATIO, N_ ("Load against the European rule"),
                              "mass / capacity" },
  [SY_RIG_SKEW_ERROR] = { "skew.error", SY_KIND_LENGTH, N_ ("Length error of one leg that makes another slack"),
                          STATICS ", legs of one stiffness" },
  [SY_RIG_HOOK_X] = { "hook.x", SY_KIND_LENGTH, N_ ("Hook, x"), "geometry" },
  [SY_RIG_HOOK_Y] = { "hook.y", SY_KIND_LENGTH, N_ ("Hook, y"), "geometry" },
  [SY_RIG_HOOK_Z] = { "hook.z", SY_KIND_LENGTH, N_ ("Hook, z"), "geometry" },
};

/* Stiffness of a leg where none is given: about a 16 mm wire rope of 2 m. Assumed, no source; for the working only. */
#define STIFFNESS_KN_MM 4

/* Near the edge of what holds it: a tenth of its narrow width. Assumed, no source. */
#define NEAR_EDGE 0.1

static SyNote *
refuse (SySink *sink, const char *id, const char *source)
{
  SyNote *note = sy_sink_note (sink, id, SY_NOTE_REFUSED);
  sy_note_source (note, NULL, source, false);
  return note;
}

/* Of three points and more: how near their edge the centre of gravity is. */
static void
judge_margin (const SyRigCase *rig, SySink *sink)
{
  SyVec3 places[SY_PARTS_MAX];
  SyOutline outline;

  for (int i = 0; i < rig->n; i++)
    places[i] = rig->at[i].at;
  if (!sy_outline_make (places, rig->n, &outline) || outline.n < 3)
    return;
  double near = NEAR_EDGE * sy_outline_width (&outline);
  if (rig->hang.margin >= near)
    return;
  SyNote *note = sy_sink_note (sink, "centre-near-edge", SY_NOTE_IMPROVE);
  sy_note_arg (note, SY_KIND_LENGTH, rig->hang.margin);
  sy_note_arg (note, SY_KIND_LENGTH, near);
  sy_note_source (note, "margin", "assumed, no source: a tenth of the width", false);
}

/* How far the centre is from what holds the load, in plan: of one or two points, from the point or the line between. */
static double
distance_outside (const SyRigFacts *facts, const SyRigCase *rig)
{
  SyVec3 places[SY_PARTS_MAX];
  SyOutline outline;

  for (int i = 0; i < rig->n; i++)
    places[i] = rig->at[i].at;
  return sy_outline_make (places, rig->n, &outline) ? -sy_outline_distance (&outline, facts->cg.at[0], facts->cg.at[1])
                                                     : -rig->hang.margin;
}

/* On one or two points the load turns over once its centre is above them; near that a drawing's figure decides. Within a
   tenth of the height of the hook; assumed, no source. */
static bool
level_with_points (const SyRigFacts *facts, const SyRigCase *rig)
{
  double low = INFINITY;

  for (int i = 0; i < rig->n; i++)
    low = fmin (low, rig->at[i].at.z);
  return low - facts->cg.at[2] < NEAR_EDGE * fabs (rig->hang.hook.z - low);
}

/* Geometry that is not allowed. */
static void
judge_hanging (const SyRigFacts *facts, const SyRigCase *rig, SySink *sink)
{
  SyNote *note;

  if (!rig->hangs)
    {
      if (rig->free_basket)
        sy_sink_note (sink, "basket-hangs-free", SY_NOTE_EXCLUDED);
      for (int i = 0; i < rig->n; i++)
        if (!rig->free_basket && !rig->parts[i].leg->length.given)
          sy_sink_note_on (sink, "how-it-hangs-not-given", SY_NOTE_NEEDED, rig->parts[i].point->label);
      return;
    }
  switch (rig->hang.status)
    {
    case SY_HANG_BALANCED:
      break;
    case SY_HANG_OUTSIDE:
      note = refuse (sink, "centre-outside-the-points", STATICS);
      sy_note_arg (note, SY_KIND_LENGTH, distance_outside (facts, rig));
      break;
    case SY_HANG_NO_MEET:
      refuse (sink, "legs-do-not-meet", "geometry");
      break;
    case SY_HANG_TIPS:
      note = refuse (sink, "centre-above-what-holds-it", STATICS);
      sy_note_arg (note, SY_KIND_LENGTH, facts->cg.at[2]);
      break;
    }
  if (rig->hang.status == SY_HANG_BALANCED)
    judge_margin (rig, sink);
  if (rig->hang.status == SY_HANG_BALANCED && rig->n <= 2 && level_with_points (facts, rig))
    sy_sink_note (sink, "centre-level-with-the-points", SY_NOTE_CAUTION);
}

static bool
pulls_on (const SyRigCase *rig, const char *half)
{
  for (int i = 0; i < rig->n; i++)
    if (rig->parts[i].point->body != NULL && sy_text_same (rig->parts[i].point->body, half))
      return true;
  return false;
}

/* The half that every named point in use sits on; NULL where they sit on several or none says. */
static const char *
only_half (const SyRigCase *rig)
{
  const char *half = NULL;

  for (int i = 0; i < rig->n; i++)
    {
      const char *own = rig->parts[i].point->body;
      if (!sy_text_says (own))
        continue;
      if (half != NULL && !sy_text_same (half, own))
        return NULL;
      half = own;
    }
  return half;
}

static bool
pulls_on_several (const SyRigCase *rig)
{
  bool says = false;

  for (int i = 0; i < rig->n; i++)
    says = says || sy_text_says (rig->parts[i].point->body);
  return says && only_half (rig) == NULL;
}

/* A die that opens, lifted by one half only: what holds the other must be named. That it opens is said by its halves, or by
   points that say on which half they sit. */
static void
judge_halves (const SyRigFacts *facts, const SyRigCase *rig, SySink *sink)
{
  const char *const *ties = facts->ties.items;
  const char *const *halves = facts->halves.items;
  const char *loose = facts->halves.count > 1 ? NULL : only_half (rig);

  for (size_t i = 0; i < facts->ties.count; i++)
    if (sy_text_says (ties[i]))
      return;
  if (pulls_on_several (rig))
    sy_sink_note (sink, "halves-not-tied", SY_NOTE_CAUTION);
  if (loose != NULL)
    sy_note_source (sy_sink_note_on (sink, "half-held-by-nothing", SY_NOTE_REFUSED, loose), NULL,
                    "common practice, no source", false);
  for (size_t i = 0; i < facts->halves.count && facts->halves.count > 1; i++)
    if (!pulls_on (rig, halves[i]))
      sy_note_source (sy_sink_note_on (sink, "half-not-held", SY_NOTE_REFUSED, halves[i]), NULL,
                      "common practice, no source", false);
}

/* Lengths that were given too must lead to the hook that was given. The allowance of 0.25 % is that of matched slings
   (marine-warranty guidelines, from memory); under 5 mm is not asked (common practice, no source). */
static void
judge_lengths (const SyRigCase *rig, SySink *sink)
{
  for (int i = 0; i < rig->n && rig->level; i++)
    {
      const SyRigLeg *leg = rig->parts[i].leg;
      double geometric = sy_rig_part_length (rig, i);
      double allowed = fmax (0.0025 * geometric, sy_unit_convert (SY_KIND_LENGTH, 5, SY_UNITS_METRIC, rig->units));

      if (!leg->length.given || leg->hitch != SY_HITCH_STRAIGHT || fabs (leg->length.value - geometric) <= allowed)
        continue;
      SyNote *note = sy_sink_note_on (sink, "length-leads-elsewhere", SY_NOTE_NEEDED, rig->parts[i].point->label);
      sy_note_arg (note, SY_KIND_LENGTH, leg->length.value);
      sy_note_arg (note, SY_KIND_LENGTH, geometric);
    }
}

static void
say_cautions (const SyRigFacts *facts, const SyRigCase *rig, const SyContext *context, SySink *sink)
{
  static const char *const always[] = { "never-under-the-load", "trial-lift", "tag-line", "die-free",
                                        "slugs-and-fluid-out", "eye-in-plane" };

  sy_mass_say (sink, &facts->allowance_percent, facts->mass_basis, rig->allowance, context);
  if (rig->dynamic_assumed)
    sy_note_arg (sy_sink_note (sink, "dynamic-assumed", SY_NOTE_CAUTION), SY_KIND_RATIO, rig->dynamic);
  sy_as_of_say (&facts->common, context, sink);
  for (size_t i = 0; i < SY_LEN (always); i++)
    sy_sink_note (sink, always[i], SY_NOTE_CAUTION);
}

static double
headroom (const SyRigFacts *facts, const SyRigCase *rig)
{
  SyVec3 up = rig->hang.up, hook = rig->hang.hook;
  double lowest = sy_vec3_dot (sy_vector_vec3 (&facts->cg), up);
  const SyRigPoint *points = facts->points.items;

  for (size_t i = 0; i < facts->points.count; i++)
    lowest = fmin (lowest, sy_vec3_dot (sy_vector_vec3 (&points[i].at), up));
  if (facts->bottom.given)
    {
      SyVec3 under = sy_vec3 (facts->cg.at[0], facts->cg.at[1], facts->bottom.value);
      lowest = fmin (lowest, sy_vec3_dot (under, up));
    }
  return sy_vec3_dot (hook, up) - lowest;
}

static void
put_statics (const SyRigFacts *facts, const SyRigCase *rig, SySink *sink)
{
  const SyHang *hang = &rig->hang;
  bool balanced = hang->status == SY_HANG_BALANCED || hang->status == SY_HANG_TIPS;
  double flattest = 0;

  for (int i = 0; i < rig->n && hang->status != SY_HANG_NO_MEET; i++)
    {
      const char *label = rig->parts[i].point->label;

      sy_sink_named (sink, "leg", label, "angle", SY_KIND_ANGLE, N_ ("Angle from the vertical"), "geometry",
                     hang->angle_deg[i]);
      sy_sink_named (sink, "leg", label, "factor", SY_KIND_RATIO, N_ ("Tension over its share"), "1 / cos of the angle",
                     hang->factor[i]);
      /* A leg of a free load that hangs loose pulls at nothing, whatever its angle. */
      if (rig->level || hang->worst[i] > 0)
        flattest = fmax (flattest, hang->angle_deg[i]);
      if (!balanced)
        continue;
      sy_sink_named (sink, "leg", label, "load", SY_KIND_MASS, N_ ("Largest tension, as mass"), STATICS,
                     hang->worst[i] * rig->mass);
      sy_sink_named (sink, "leg", label, "tension", SY_KIND_FORCE, N_ ("Largest tension"), STATICS,
                     sy_rig_force (hang->worst[i] * rig->mass, rig->units));
      sy_sink_named (sink, "leg", label, "elastic", SY_KIND_MASS, N_ ("Tension with legs of one stiffness, as mass"),
                     STATICS ", least sum of squares", hang->elastic[i] * rig->mass);
      if (hang->slack[i])
        sy_note_arg (sy_sink_note_on (sink, "leg-slack", SY_NOTE_CAUTION, label), SY_KIND_LENGTH, hang->slack_by[i]);
    }
  if (hang->status == SY_HANG_NO_MEET)
    return;
  sy_sink_value (sink, SY_RIG_ANGLE_MAX, flattest);
  sy_sink_value (sink, SY_RIG_MARGIN, hang->margin);
  if (!balanced)
    return;
  sy_sink_value (sink, SY_RIG_TILT, hang->tilt_deg);
  sy_sink_value (sink, SY_RIG_HEADROOM, headroom (facts, rig));
  sy_sink_value (sink, SY_RIG_HOOK_X, hang->hook.x);
  sy_sink_value (sink, SY_RIG_HOOK_Y, hang->hook.y);
  sy_sink_value (sink, SY_RIG_HOOK_Z, hang->hook.z);
  if (!hang->determinate)
    {
      double stiffness = facts->stiffness.given
                           ? facts->stiffness.value
                           : sy_unit_convert (SY_KIND_STIFFNESS, STIFFNESS_KN_MM, SY_UNITS_METRIC, rig->units);
      double error = sy_hang_skew_error (hang, sy_rig_force (rig->mass, rig->units), stiffness);

      if (isfinite (error))
        {
          sy_sink_value (sink, SY_RIG_SKEW_ERROR, error);
          sy_note_arg (sy_sink_note (sink, "legs-share-unevenly", SY_NOTE_CAUTION), SY_KIND_LENGTH, error);
        }
    }
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyRigFacts *facts = data;
  SyRigCase rig;

  sy_rig_case (facts, context, &rig);
  sy_sink_value (sink, SY_RIG_MASS, facts->mass.value * (1 + rig.allowance / 100));
  judge_hanging (facts, &rig, sink);
  judge_halves (facts, &rig, sink);
  if (rig.hangs)
    {
      put_statics (facts, &rig, sink);
      if (rig.hang.status != SY_HANG_NO_MEET)
        judge_lengths (&rig, sink);
    }
  sy_rig_judge_path (facts, &rig, context, sink);
  say_cautions (facts, &rig, context, sink);
}

static const char *const named_symbols[] = {
  "leg.*.angle", "leg.*.factor", "leg.*.load", "leg.*.tension", "leg.*.elastic", "leg.*.utilisation",
  "element.*.demand", "element.*.capacity", "element.*.utilisation", "element.*.angle",
  "suspension.*.demand", "suspension.*.capacity", "suspension.*.utilisation",
};

static const char *const view_titles[] = { N_ ("From above"), N_ ("From the front"), N_ ("From the side") };

extern const SyMethod sy_method_rigged_lift;
const SyMethod sy_method_rigged_lift = {
  .id = "rigged-lift",
  .title = N_ ("Rigged lift"),
  .source = "Statics of a stiff load on legs that do not stretch; US Navy, Equipment Operator training (14080); OSHA, "
            "Guidance on Safe Sling Use; EN 818-4/-6, EN 1492-1/-2, EN 13414-1/-2, ASME B30.9/B30.26, DIN 580 (from "
            "memory)",
  .conditions_source = "OSHA, Guidance on Safe Sling Use; WAC 296-24-29419",
  .edition = 1,
  .item_kind = "task",
  .by_capacity = true,
  .dated = true,
  .memory_caution = N_ ("Mode factors, choke, edge, bend, eyebolt and shackle figures of the paid standards stand here from "
                        "memory and were not checked against them; exact statics and the marking decide beside them, and "
                        "they may only tighten."),
  .facts_size = sizeof (SyRigFacts),
  .fields = sy_rig_fields,
  .n_fields = SY_RIG_N_FIELDS,
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .named_symbols = named_symbols,
  .n_named_symbols = SY_LEN (named_symbols),
  .index_symbol = "utilisation",
  .check = sy_rig_check,
  .evaluate = evaluate,
  .formula = sy_rig_formula,
  .named_formula = sy_rig_named_formula,
  .n_views = SY_LEN (view_titles),
  .view_titles = view_titles,
  .scene = sy_rig_scene,
};
