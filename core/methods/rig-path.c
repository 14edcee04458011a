/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-marking.h"
#include "sy-rig-case.h"
#include "sy-standing.h"

/* The way of the load from the die to the crane: what each thing in it has to carry, what it may carry as it is used, and
   what of it is not known. */

#define OSHA_SLINGS "29 CFR 1910.184(c), as WAC 296-24-29419: only to the marking"

typedef struct
{
  const SyRigFacts *facts;
  const SyRigCase *rig;
  const SyContext *context;
  SySink *sink;
  double as_of;
  double valid_until;    /* earliest; INFINITY none   */
  double worst;          /* utilisation; -1 none      */
  double own_mass;       /* of everything in the legs */
} Walk;

/* What quantities of an element are called after: "A.eyebolt 1". */
typedef struct
{
  char text[2 * SY_RIG_LABEL_MAX + 2];
} Joined;

/* What a note is about: "A, eyebolt 1". */
typedef struct
{
  char text[SY_NOTE_SUBJECT_MAX];
} Subject;

static void
add (Subject *subject, const char *more)
{
  size_t at = strlen (subject->text), length = strlen (more);

  if (length > sizeof subject->text - 1 - at)
    length = sizeof subject->text - 1 - at;
  memcpy (subject->text + at, more, length);
  subject->text[at + length] = '\0';
}

static Subject
subject_of (const char *leg, const char *element)
{
  Subject subject = { "" };

  add (&subject, leg);
  if (*leg != '\0' && *element != '\0')
    add (&subject, ", ");
  add (&subject, element);
  return subject;
}

static Joined
join (const char *leg, const char *element)
{
  Joined joined = { "" };
  size_t at = strlen (leg);

  memcpy (joined.text, leg, at);
  if (at > 0)
    joined.text[at++] = '.';
  memcpy (joined.text + at, element, strlen (element) + 1);
  return joined;
}

static SyNote *
note (Walk *walk, const char *id, SyNoteClass note_class, const char *subject)
{
  return sy_sink_note_on (walk->sink, id, note_class, subject);
}

static void
judge_standing (Walk *walk, const char *subject, const char *due, int withdrawn)
{
  walk->valid_until = fmin (walk->valid_until, sy_standing (walk->sink, subject, due, withdrawn, walk->as_of));
}

/* A value that is over 1 by no more than rounding is 1. */
static double
part_of (double demand, double capacity)
{
  double part = capacity > 0 ? demand / capacity : INFINITY;

  return fabs (part - 1) < 1e-12 ? 1 : part;
}

static void
take_utilisation (Walk *walk, const char *prefix, const char *name, double utilisation)
{
  char *text = walk->sink->governing_text;
  size_t at = strlen (prefix);

  if (!(utilisation > walk->worst))
    return;
  walk->worst = utilisation;
  memcpy (text, prefix, at);
  text[at++] = '.';
  memcpy (text + at, name, strlen (name) + 1);
  walk->sink->governing = text;
}

/* One reduction of a capacity; says what is not allowed and with which number. */
static double
reduce (Walk *walk, SyReduction reduction, const char *id, const char *subject, SyKind kind, double value)
{
  if (!reduction.allowed)
    {
      SyNote *out = note (walk, id, SY_NOTE_REFUSED, subject);
      if (isfinite (value))
        sy_note_arg (out, kind, value);
      sy_note_source (out, NULL, reduction.source, reduction.from_memory);
    }
  return reduction.factor;
}

static SyRule
rule_of (const Walk *walk)
{
  return walk->facts->rule < 0 ? SY_RULE_BOTH : (SyRule) walk->facts->rule;
}

/* What the sling of a leg loses by the way it is laid; 1 where nothing acts. @rule decides the choke. */
static double
reduce_sling (Walk *walk, const SyRigLeg *leg, const char *label, SyRule rule)
{
  double factor = 1;
  bool known = leg->material >= 0;
  SySlingMaterial material = known ? (SySlingMaterial) leg->material : SY_SLING_ROPE;

  if (leg->hitch == SY_HITCH_CHOKE)
    {
      factor *= sy_reduction_choke (rule, material).factor;
      if (leg->choke_angle.given)
        factor *= sy_reduction_choke_angle (leg->choke_angle.value).factor;
      else
        note (walk, "choke-angle-not-given", SY_NOTE_NEEDED, label);
    }
  if (leg->temperature.given && known)
    {
      double celsius = sy_unit_convert (SY_KIND_TEMPERATURE, leg->temperature.value, walk->rig->units, SY_UNITS_METRIC);
      factor *= reduce (walk, sy_reduction_temperature (material, celsius), "sling-temperature", label,
                        SY_KIND_TEMPERATURE, leg->temperature.value);
    }
  if (leg->edge >= 0)
    factor *= reduce (walk, sy_reduction_edge ((SyEdge) leg->edge, material), "bare-edge", label, SY_KIND_RATIO, NAN);
  if (leg->hitch == SY_HITCH_BASKET
      && (material == SY_SLING_WIRE_ROPE || material == SY_SLING_WIRE_ROPE_FIBRE_CORE || material == SY_SLING_ROPE))
    {
      if (leg->bend.given)
        {
          double bend = leg->bend.value > 1 ? leg->bend.value : 1 / leg->bend.value;
          factor *= reduce (walk, sy_reduction_bend (material, bend), "bend-too-tight", label, SY_KIND_RATIO, bend);
          sy_note_arg (note (walk, "bend-read", SY_NOTE_CAUTION, label), SY_KIND_RATIO, bend);
        }
      else
        note (walk, "bend-not-given", SY_NOTE_NEEDED, label);
    }
  return factor;
}

/* Beyond 60 degrees the bolt sits in a side, for a leg of an upright bolt is never flatter. DIN 580 and BS 4278 end at 45, the
   US figure of a quarter goes on to 90 (all from memory): the stricter forbids it. Within 20 is the rule of WAC 296-304-07011
   for shipyards (read): said, and a site can hold "element.*.angle" against it by its policy. */
#define EYEBOLT_WITHIN_DEG 20
#define EYEBOLT_SIDE_DEG 60

static void
judge_eyebolt_angle (Walk *walk, double angle, const char *subject)
{
  bool side = angle > EYEBOLT_SIDE_DEG + 1e-9;
  SyNote *said;

  if (!(angle > EYEBOLT_WITHIN_DEG + 1e-9))
    return;
  said = note (walk, side ? "eyebolt-from-the-side" : "eyebolt-beyond-its-rule",
               side ? SY_NOTE_REFUSED : SY_NOTE_CAUTION, subject);
  sy_note_arg (said, SY_KIND_ANGLE, angle);
  sy_note_arg (said, SY_KIND_ANGLE, side ? EYEBOLT_SIDE_DEG : EYEBOLT_WITHIN_DEG);
  sy_note_source (said, NULL,
                  side ? "DIN 580, BS 4278: not over 45 degrees; 60 is the flattest leg of an upright bolt"
                       : "WAC 296-304-07011: within 20 degrees of the axis",
                  side);
}

/* What an eyebolt keeps of its axial limit in the direction in which the leg pulls. */
static double
reduce_eyebolt (Walk *walk, const SyRigElement *element, int part, const char *name, const char *subject)
{
  const SyRigCase *rig = walk->rig;
  const SyRigPoint *point = rig->parts[part].point;
  const SyRigLeg *leg = rig->parts[part].leg;
  SyEyeboltFamily family = element->family >= 0 ? (SyEyeboltFamily) element->family : SY_EYEBOLT_ASME;
  double factor = 1;

  if (element->family < 0)
    note (walk, "eyebolt-no-family", SY_NOTE_NEEDED, subject);
  if (leg->temperature.given)
    {
      double celsius = sy_unit_convert (SY_KIND_TEMPERATURE, leg->temperature.value, rig->units, SY_UNITS_METRIC);
      factor = reduce (walk, sy_reduction_eyebolt_temperature (family, celsius), "eyebolt-temperature", subject,
                       SY_KIND_TEMPERATURE, leg->temperature.value);
    }
  if (!point->axis.given)
    {
      note (walk, "eyebolt-no-axis", SY_NOTE_NEEDED, subject);
      return factor;
    }
  double angle = sy_vec3_angle_deg (sy_vec3_sub (rig->hang.hook, rig->at[part].at), sy_vector_vec3 (&point->axis));
  sy_sink_named (walk->sink, "element", name, "angle", SY_KIND_ANGLE, N_ ("Pull from the axis of the bolt"), "statics",
                 angle);
  judge_eyebolt_angle (walk, angle, subject);
  SyReduction straight = sy_reduction_eyebolt (family, true, angle);
  if (element->shoulder < 0 && !sy_reduction_eyebolt (family, false, angle).allowed && straight.allowed)
    note (walk, "eyebolt-shoulder-not-known", SY_NOTE_NEEDED, subject);
  if (element->shoulder == 0)
    factor *= reduce (walk, sy_reduction_eyebolt (family, false, angle), "shoulderless-at-an-angle", subject,
                      SY_KIND_ANGLE, angle);
  else
    {
      factor *= reduce (walk, straight, "eyebolt-off-its-axis", subject, SY_KIND_ANGLE, angle);
      if (straight.allowed && straight.factor < 1)
        {
          SyNote *said = note (walk, "eyebolt-reduced", SY_NOTE_CAUTION, subject);
          sy_note_arg (said, SY_KIND_ANGLE, angle);
          sy_note_arg (said, SY_KIND_RATIO, straight.factor);
        }
    }
  return factor;
}

/* The marking says what it rates: one leg, or the assembly with its legs and angles. */
static bool
is_rated (const SyRigElement *element)
{
  return element->rated_as == SY_RATED_LEG
         || (element->rated_as == SY_RATED_ASSEMBLY && element->legs.given && element->band >= 0);
}

/* What a thing in a leg may carry as it is used; NAN where its marking does not say. */
static double
capacity_of (Walk *walk, const SyRigElement *element, int part, double sling_factor, const char *name,
             const char *subject)
{
  const SyRigCase *rig = walk->rig;
  double base = element->wll.value, factor = 1;
  bool assembly = element->rated_as == SY_RATED_ASSEMBLY;
  bool rated = is_rated (element);

  if (assembly && rated && element->wll.given)
    {
      double angle = rig->hang.angle_deg[part];
      SyTagCapacity tag = sy_assembly_leg_of_tag (element->wll.value, (int) element->legs.value, (SyBand) element->band,
                                                  angle);
      if (!tag.allowed)
        {
          SyNote *out = note (walk, "outside-tag-band", SY_NOTE_REFUSED, subject);
          sy_note_arg (out, SY_KIND_ANGLE, angle);
          sy_note_source (out, NULL, OSHA_SLINGS, false);
        }
      base = tag.capacity;
    }
  switch ((SyGearKind) element->kind)
    {
    case SY_GEAR_SLING:
      factor = sling_factor;
      break;
    case SY_GEAR_EYEBOLT:
      factor = reduce_eyebolt (walk, element, part, name, subject);
      break;
    case SY_GEAR_SHACKLE:
      if (element->side_angle.given)
        factor = reduce (walk, sy_reduction_shackle (element->side_angle.value), "shackle-side-load", subject,
                         SY_KIND_ANGLE, element->side_angle.value);
      else
        note (walk, "shackle-in-line-assumed", SY_NOTE_CAUTION, subject);
      break;
    case SY_GEAR_HOIST_RING:
      if (rig->parts[part].point->axis.given)
        {
          double angle = sy_vec3_angle_deg (sy_vec3_sub (rig->hang.hook, rig->at[part].at),
                                            sy_vector_vec3 (&rig->parts[part].point->axis));
          factor = reduce (walk, sy_reduction_hoist_ring (angle), "hoist-ring-pulled-into-the-load", subject,
                           SY_KIND_ANGLE, angle);
        }
      else
        note (walk, "hoist-ring-no-axis", SY_NOTE_CAUTION, subject);
      break;
    case SY_GEAR_HOOK:
    case SY_GEAR_MASTER_LINK:
    case SY_GEAR_HOIST:
    case SY_GEAR_CRANE:
    case SY_GEAR_BEAM:
    case SY_GEAR_TRUCK:
    case SY_GEAR_CART:
    case SY_GEAR_MANIPULATOR:
      break;
    }
  return element->wll.given && rated ? base * factor : NAN;
}

/* The part of a leg that pulls hardest: of a basket, one of its two. */
static int
hardest_part (const SyRigCase *rig, size_t leg)
{
  int hardest = -1;

  for (int i = 0; i < rig->n; i++)
    if (rig->parts[i].leg_at == leg && (hardest < 0 || rig->hang.worst[i] > rig->hang.worst[hardest]))
      hardest = i;
  return hardest;
}

static void
put (Walk *walk, const char *prefix, const char *name, double demand, double capacity)
{
  sy_sink_named (walk->sink, prefix, name, "demand", SY_KIND_MASS, N_ ("What it has to carry"), "statics", demand);
  if (isnan (capacity))
    return;
  double utilisation = part_of (demand, capacity);
  sy_sink_named (walk->sink, prefix, name, "capacity", SY_KIND_MASS, N_ ("What it may carry as it is used"),
                 "marking × reductions", capacity);
  sy_sink_named (walk->sink, prefix, name, "utilisation", SY_KIND_RATIO, N_ ("Load against its capacity"),
                 "demand / capacity", utilisation);
  take_utilisation (walk, prefix, name, utilisation);
}

static const char *
leg_label (const SyRigLeg *leg)
{
  return ((const char *const *) leg->point.items)[0];
}

/* A marking that nothing of its size can have was misread, or is in another unit. */
static void
judge_marking (Walk *walk, const SyRigLeg *leg, const SyRigElement *element, const char *subject)
{
  SyUnits units = walk->rig->units;
  double size = sy_unit_convert (SY_KIND_LENGTH, element->size.value, units, SY_UNITS_METRIC);
  double wll = sy_unit_convert (SY_KIND_MASS, element->wll.value, units, SY_UNITS_METRIC);
  SyMarking largest;
  bool known = false;

  if (!element->size.given || !element->wll.given || !is_rated (element))
    return;
  if (element->kind == SY_GEAR_EYEBOLT && element->family >= 0)
    known = sy_marking_eyebolt ((SyEyeboltFamily) element->family, size, &largest);
  else if (element->kind == SY_GEAR_SLING && leg->material == SY_SLING_CHAIN)
    known = sy_marking_chain (size, element->grade.given ? (int) element->grade.value : 0, &largest);
  else if (element->kind == SY_GEAR_SLING
           && (leg->material == SY_SLING_WIRE_ROPE || leg->material == SY_SLING_WIRE_ROPE_FIBRE_CORE))
    known = sy_marking_wire_rope (size, &largest);
  /* What an assembly is marked with is shared by its legs. */
  if (element->rated_as == SY_RATED_ASSEMBLY)
    wll = sy_assembly_leg_of_tag (wll, (int) element->legs.value, (SyBand) element->band,
                                  element->band == SY_BAND_45_60 ? 60 : 0).capacity;
  if (known && sy_marking_cannot_be (wll, &largest))
    {
      SyNote *note_ = note (walk, "marking-cannot-be-right", SY_NOTE_NEEDED, subject);
      sy_note_arg (note_, SY_KIND_MASS, sy_unit_convert (SY_KIND_MASS, wll, SY_UNITS_METRIC, units));
      sy_note_arg (note_, SY_KIND_MASS, sy_unit_convert (SY_KIND_MASS, largest.wll_kg, SY_UNITS_METRIC, units));
      sy_note_source (note_, NULL, largest.source, largest.from_memory);
    }
}

/* Markings, dates and what was not said of one leg, whatever it carries. */
static void
judge_leg_standing (Walk *walk, const SyRigLeg *leg)
{
  const SyRigElement *elements = leg->elements.items;
  const char *label = leg_label (leg);
  bool sling = false;

  if (leg->hitch < 0)
    note (walk, "leg-no-hitch", SY_NOTE_NEEDED, label);
  if (leg->edge < 0)
    note (walk, "leg-edge-not-asked", SY_NOTE_NEEDED, label);
  if (leg->material < 0)
    note (walk, "leg-no-material", SY_NOTE_NEEDED, label);
  for (size_t i = 0; i < leg->elements.count; i++)
    {
      Subject subject = subject_of (label, elements[i].label);

      sling = sling || elements[i].kind == SY_GEAR_SLING;
      if (!elements[i].wll.given)
        note (walk, "element-no-wll", SY_NOTE_NEEDED, subject.text);
      if (!is_rated (&elements[i]))
        note (walk, "element-no-rating-basis", SY_NOTE_NEEDED, subject.text);
      judge_standing (walk, subject.text, elements[i].due, elements[i].withdrawn);
      judge_marking (walk, leg, &elements[i], subject.text);
    }
  if (leg->elements.count == 0)
    note (walk, "leg-no-elements", SY_NOTE_NEEDED, label);
  else if (!sling)
    note (walk, "leg-no-sling", SY_NOTE_NEEDED, label);
}

/* One leg, straight, by its sling; NAN where that is not known. */
static double
sling_capacity (const Walk *walk, const SyRigLeg *leg, int part)
{
  const SyRigElement *elements = leg->elements.items;
  double least = INFINITY;

  for (size_t i = 0; i < leg->elements.count; i++)
    {
      const SyRigElement *e = &elements[i];

      if (e->kind != SY_GEAR_SLING)
        continue;
      if (!e->wll.given || !is_rated (e))
        return NAN;
      least = fmin (least, e->rated_as == SY_RATED_LEG
                             ? e->wll.value
                             : sy_assembly_leg_of_tag (e->wll.value, (int) e->legs.value, (SyBand) e->band,
                                                       walk->rig->hang.angle_deg[part]).capacity);
    }
  return isfinite (least) ? least : NAN;
}

static void
walk_leg (Walk *walk, size_t at)
{
  const SyRigCase *rig = walk->rig;
  const SyRigLeg *leg = (const SyRigLeg *) walk->facts->legs.items + at;
  const SyRigElement *elements = leg->elements.items;
  int part = hardest_part (rig, at);
  const char *label = leg_label (leg);
  double worst = -1, below = 0;
  double factor = reduce_sling (walk, leg, label, rule_of (walk));

  for (size_t i = 0; i < leg->elements.count; i++)
    {
      Subject subject = subject_of (label, elements[i].label);
      Joined name = join (label, elements[i].label);
      double demand = rig->hang.worst[part] * rig->mass + below * rig->hang.factor[part];

      /* What collects the legs carries them all. */
      if (elements[i].kind == SY_GEAR_MASTER_LINK && rig->n > 1)
        demand = rig->mass + walk->own_mass;
      double capacity = capacity_of (walk, &elements[i], part, factor, name.text, subject.text);
      put (walk, "element", name.text, demand, capacity);
      if (!isnan (capacity))
        worst = fmax (worst, part_of (demand, capacity));
      if (elements[i].own_mass.given)
        below += elements[i].own_mass.value * rig->dynamic;
    }
  for (int i = 0; i < rig->n && worst >= 0; i++)
    if (rig->parts[i].leg_at == at)
      sy_sink_named (walk->sink, "leg", rig->parts[i].point->label, "utilisation", SY_KIND_RATIO,
                     N_ ("Load of the leg against its weakest element"), "demand / capacity", worst);
}

/* The rules for the sling as a whole, beside statics; nothing where a leg's capacity is not known. */
static void
judge_rules (Walk *walk)
{
  const SyRigCase *rig = walk->rig;
  const SyRigLeg *legs = walk->facts->legs.items;
  SyAssembly assembly = { .slings = (int) walk->facts->legs.count, .n = rig->n, .leg_wll = INFINITY, .mass = rig->mass };
  double factors[2] = { 1, 1 };
  static const struct
  {
    SyRule rule;
    size_t capacity, utilisation;
    const char *id;
  } rules[2] = {
    { SY_RULE_US, SY_RIG_US_CAPACITY, SY_RIG_US_UTILISATION, "us" },
    { SY_RULE_EN, SY_RIG_EN_CAPACITY, SY_RIG_EN_UTILISATION, "en" },
  };

  for (size_t i = 0; i < walk->facts->legs.count; i++)
    {
      double capacity = sling_capacity (walk, &legs[i], hardest_part (rig, i));

      if (isnan (capacity))
        return;
      assembly.leg_wll = fmin (assembly.leg_wll, capacity);
      for (size_t k = 0; k < SY_LEN (rules); k++)
        factors[k] = fmin (factors[k], reduce_sling (walk, &legs[i], leg_label (&legs[i]), rules[k].rule));
    }
  for (int i = 0; i < rig->n; i++)
    {
      SyVec3 out = sy_vec3_sub (rig->at[i].at, rig->hang.hook);
      assembly.angle_deg[i] = rig->hang.angle_deg[i];
      assembly.azimuth_deg[i] = atan2 (out.y, out.x) * 57.295779513082320876798154814105;
    }
  for (size_t i = 0; i < SY_LEN (rules); i++)
    {
      SyAssemblyCapacity capacity;

      if (rule_of (walk) != SY_RULE_BOTH && rule_of (walk) != rules[i].rule)
        continue;
      sy_assembly_capacity (&assembly, rules[i].rule, &capacity);
      /* Flatter than the rule goes: it has no figure, and the angle is refused by itself. */
      if (!capacity.allowed)
        continue;
      double reduced = capacity.capacity * factors[i];
      double utilisation = part_of (rig->mass, reduced);
      sy_sink_value (walk->sink, rules[i].capacity, reduced);
      sy_sink_value (walk->sink, rules[i].utilisation, utilisation);
      take_utilisation (walk, "rule", rules[i].id, utilisation);
      if (capacity.uneven != 0)
        sy_note_arg (note (walk, "legs-not-alike", SY_NOTE_CAUTION, ""), SY_KIND_RATIO, capacity.mode_factor);
    }
}

static void
judge_suspension_standing (Walk *walk)
{
  const SyRigSuspension *items = walk->facts->suspension.items;

  if (walk->facts->suspension.count == 0)
    note (walk, "no-suspension", SY_NOTE_NEEDED, "");
  for (size_t i = 0; i < walk->facts->suspension.count; i++)
    {
      if (!items[i].wll.given)
        note (walk, "element-no-wll", SY_NOTE_NEEDED, items[i].label);
      judge_standing (walk, items[i].label, items[i].due, items[i].withdrawn);
      if (items[i].kind + SY_GEAR_HOIST == SY_GEAR_TRUCK && items[i].attachment == 0)
        note (walk, "hung-from-forks", SY_NOTE_EXCLUDED, items[i].label);
      else if (items[i].kind + SY_GEAR_HOIST == SY_GEAR_TRUCK && items[i].attachment < 0)
        note (walk, "forks-attachment-not-known", SY_NOTE_NEEDED, items[i].label);
    }
}

static void
walk_suspension (Walk *walk, double demand)
{
  const SyRigSuspension *items = walk->facts->suspension.items;

  for (size_t i = 0; i < walk->facts->suspension.count; i++)
    {
      put (walk, "suspension", items[i].label, demand, items[i].wll.given ? items[i].wll.value : NAN);
      if (items[i].own_mass.given)
        demand += items[i].own_mass.value * walk->rig->dynamic;
    }
}

/* A master link that an earlier leg lists too is one and the same. */
static bool
listed_before (const SyRigFacts *facts, size_t leg, const SyRigElement *element)
{
  const SyRigLeg *legs = facts->legs.items;

  for (size_t i = 0; i < leg && element->kind == SY_GEAR_MASTER_LINK; i++)
    {
      const SyRigElement *others = legs[i].elements.items;
      for (size_t k = 0; k < legs[i].elements.count; k++)
        if (others[k].kind == SY_GEAR_MASTER_LINK && strcmp (others[k].label, element->label) == 0)
          return true;
    }
  return false;
}

static double
own_mass_of_legs (const SyRigFacts *facts, double dynamic)
{
  const SyRigLeg *legs = facts->legs.items;
  double mass = 0;

  for (size_t i = 0; i < facts->legs.count; i++)
    {
      const SyRigElement *elements = legs[i].elements.items;
      for (size_t k = 0; k < legs[i].elements.count; k++)
        if (elements[k].own_mass.given && !listed_before (facts, i, &elements[k]))
          mass += elements[k].own_mass.value * dynamic;
    }
  return mass;
}

void
sy_rig_judge_path (const SyRigFacts *facts, const SyRigCase *rig, const SyContext *context, SySink *sink)
{
  const SyRigLeg *legs = facts->legs.items;
  Walk walk = { facts, rig, context, sink, sy_as_of (&facts->common, context), INFINITY, -1,
                own_mass_of_legs (facts, rig->dynamic) };

  for (size_t i = 0; i < facts->legs.count; i++)
    judge_leg_standing (&walk, &legs[i]);
  judge_suspension_standing (&walk);
  if (isfinite (walk.valid_until))
    sy_sink_value (sink, SY_RIG_VALID_UNTIL, walk.valid_until);
  sy_sink_value (sink, SY_RIG_HOOK_LOAD, rig->mass + walk.own_mass);
  walk_suspension (&walk, rig->mass + walk.own_mass);
  if (rig->hangs && (rig->hang.status == SY_HANG_BALANCED || rig->hang.status == SY_HANG_TIPS))
    {
      for (size_t i = 0; i < facts->legs.count; i++)
        walk_leg (&walk, i);
      judge_rules (&walk);
    }
  if (walk.worst >= 0)
    sy_sink_value (sink, SY_RIG_UTILISATION, walk.worst);
}
