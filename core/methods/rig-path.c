/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-marking.h"
#include "rig-walk.h"
#include "sy-standing.h"

/* The way of the load from the die to the crane: what each thing in it has to carry, what it may carry as it is used, and
   what of it is not known. */

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

static Subject
subject_of (const char *leg, const char *element)
{
  Subject subject;
  SyText text = { subject.text, sizeof subject.text, 0 };

  sy_text_add (&text, leg);
  sy_text_add (&text, *leg != '\0' && *element != '\0' ? ", " : "");
  sy_text_add (&text, element);
  return subject;
}

static Joined
join (const char *leg, const char *element)
{
  Joined joined;
  SyText text = { joined.text, sizeof joined.text, 0 };

  sy_text_add (&text, leg);
  sy_text_add (&text, *leg != '\0' ? "." : "");
  sy_text_add (&text, element);
  return joined;
}

static SyNote *
note (SyRigWalk *walk, const char *id, SyNoteClass note_class, const char *subject)
{
  return sy_sink_note_on (walk->sink, id, note_class, subject);
}

static void
judge_standing (SyRigWalk *walk, const char *subject, const char *due, int withdrawn)
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
take_utilisation (SyRigWalk *walk, const char *prefix, const char *name, double utilisation)
{
  SyText text = { walk->sink->governing_text, sizeof walk->sink->governing_text, 0 };

  if (!(utilisation > walk->worst))
    return;
  walk->worst = utilisation;
  sy_text_add (&text, prefix);
  sy_text_add (&text, ".");
  sy_text_add (&text, name);
  walk->sink->governing = walk->sink->governing_text;
}

static SyRule
rule_of (const SyRigWalk *walk)
{
  return walk->facts->rule < 0 ? SY_RULE_BOTH : (SyRule) walk->facts->rule;
}

static void
put (SyRigWalk *walk, const char *prefix, const char *name, double demand, double capacity)
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
judge_marking (SyRigWalk *walk, const SyRigLeg *leg, const SyRigElement *element, const char *subject)
{
  SyUnits units = walk->rig->units;
  double size = sy_unit_convert (SY_KIND_LENGTH, element->size.value, units, SY_UNITS_METRIC);
  double wll = sy_unit_convert (SY_KIND_MASS, element->wll.value, units, SY_UNITS_METRIC);
  SyMarking largest;
  bool known = false;

  if (!element->size.given || !element->wll.given || !sy_rig_is_rated (element))
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
judge_leg_standing (SyRigWalk *walk, const SyRigLeg *leg)
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
      if (!sy_rig_is_rated (&elements[i]))
        note (walk, "element-no-rating-basis", SY_NOTE_NEEDED, subject.text);
      judge_standing (walk, subject.text, elements[i].due, elements[i].withdrawn);
      judge_marking (walk, leg, &elements[i], subject.text);
    }
  if (leg->elements.count == 0)
    note (walk, "leg-no-elements", SY_NOTE_NEEDED, label);
  else if (!sling)
    note (walk, "leg-no-sling", SY_NOTE_NEEDED, label);
}

/* One leg, straight, by its sling, in the part that it is least good for; NAN where that is not known. */
static double
sling_capacity (const SyRigWalk *walk, const SyRigLeg *leg)
{
  const SyRigCase *rig = walk->rig;
  const SyRigElement *elements = leg->elements.items;
  double least = INFINITY;

  for (size_t i = 0; i < leg->elements.count; i++)
    {
      const SyRigElement *e = &elements[i];

      if (e->kind != SY_GEAR_SLING)
        continue;
      if (!e->wll.given || !sy_rig_is_rated (e))
        return NAN;
      for (int part = 0; part < rig->n; part++)
        if (rig->parts[part].leg == leg)
          least = fmin (least, e->rated_as == SY_RATED_LEG
                                 ? e->wll.value
                                 : sy_assembly_leg_of_tag (e->wll.value, (int) e->legs.value, (SyBand) e->band,
                                                           rig->hang.angle_deg[part]).capacity);
    }
  return isfinite (least) ? least : NAN;
}

/* Where one thing of a leg is loaded most: a basket has two parts, and the flatter one may be the one it is not good for. */
typedef struct
{
  double demand, capacity, utilisation, pull_deg;
} Hardest;

static Hardest
hardest_use (SyRigWalk *walk, size_t at, const SyRigElement *element, double below, double factor, const char *subject)
{
  const SyRigCase *rig = walk->rig;
  Hardest most = { -1, NAN, -1, NAN };

  for (int part = 0; part < rig->n; part++)
    {
      double demand = rig->hang.worst[part] * rig->mass + below * rig->hang.factor[part], pull;

      if (rig->parts[part].leg_at != at)
        continue;
      /* What collects the legs carries them all. */
      if (element->kind == SY_GEAR_MASTER_LINK && rig->n > 1)
        demand = rig->mass + walk->own_mass;
      double capacity = sy_rig_capacity (walk, element, part, factor, subject, &pull);
      double utilisation = isnan (capacity) ? -1 : part_of (demand, capacity);
      if (utilisation > most.utilisation || (most.utilisation < 0 && demand > most.demand))
        most = (Hardest) { demand, capacity, utilisation, pull };
    }
  return most;
}

/* A sling that lies round the load slides until both parts pull alike; friction holds no more than about 1.6 to 1 (half a
   turn at a coefficient of 0.15: Euler's formula, the coefficient assumed, no source). "Balance baskets": WAC 296-24-29419. */
#define BASKET_SLIDES 1.6
#define BASKET_UNEVEN 1.1

static void
judge_basket (SyRigWalk *walk, size_t at)
{
  const SyRigCase *rig = walk->rig;
  const SyRigLeg *leg = (const SyRigLeg *) walk->facts->legs.items + at;
  const SyRigElement *elements = leg->elements.items;
  const char *label = leg_label (leg);
  double least = INFINITY, most = 0;

  if (leg->point.count < 2)
    return;
  for (size_t i = 0; i < leg->elements.count; i++)
    if (elements[i].kind == SY_GEAR_EYEBOLT || elements[i].kind == SY_GEAR_HOIST_RING)
      sy_note_source (note (walk, "reeved-through-points", SY_NOTE_REFUSED, label), NULL,
                      "never one sling through two eyebolts: the pull inwards adds (from memory)", true);
  for (int i = 0; i < rig->n; i++)
    if (rig->parts[i].leg_at == at)
      {
        least = fmin (least, rig->hang.elastic[i]);
        most = fmax (most, rig->hang.elastic[i]);
      }
  double ratio = least > 0 ? most / least : INFINITY;
  note (walk, "basket-may-slide", SY_NOTE_CAUTION, label);
  if (!(ratio > BASKET_UNEVEN + 1e-9))
    return;
  bool slides = ratio > BASKET_SLIDES + 1e-9;
  SyNote *said = note (walk, slides ? "basket-slides" : "basket-uneven", slides ? SY_NOTE_REFUSED : SY_NOTE_IMPROVE, label);
  sy_note_arg (said, SY_KIND_RATIO, ratio);
  sy_note_arg (said, SY_KIND_RATIO, slides ? BASKET_SLIDES : BASKET_UNEVEN);
  sy_note_source (said, NULL, "balance baskets: WAC 296-24-29419; the ratio assumed, no source", false);
}

static void
walk_leg (SyRigWalk *walk, size_t at)
{
  const SyRigCase *rig = walk->rig;
  const SyRigLeg *leg = (const SyRigLeg *) walk->facts->legs.items + at;
  const SyRigElement *elements = leg->elements.items;
  const char *label = leg_label (leg);
  double worst = -1, below = 0;
  /* Statics is held against the stricter choke whatever the rule: that of the European rule stands from memory. */
  double factor = sy_rig_reduce_sling (walk, leg, label, SY_RULE_BOTH);

  judge_basket (walk, at);
  for (size_t i = 0; i < leg->elements.count; i++)
    {
      Subject subject = subject_of (label, elements[i].label);
      Joined name = join (label, elements[i].label);
      Hardest most = hardest_use (walk, at, &elements[i], below, factor, subject.text);

      put (walk, "element", name.text, most.demand, most.capacity);
      if (!isnan (most.pull_deg))
        sy_sink_named (walk->sink, "element", name.text, "angle", SY_KIND_ANGLE, N_ ("Pull from the axis of the bolt"),
                       "statics", most.pull_deg);
      worst = fmax (worst, most.utilisation);
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
judge_rules (SyRigWalk *walk)
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
      double capacity = sling_capacity (walk, &legs[i]);

      if (isnan (capacity))
        return;
      assembly.leg_wll = fmin (assembly.leg_wll, capacity);
      for (size_t k = 0; k < SY_LEN (rules); k++)
        factors[k] = fmin (factors[k], sy_rig_reduce_sling (walk, &legs[i], leg_label (&legs[i]), rules[k].rule));
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
judge_suspension_standing (SyRigWalk *walk)
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
walk_suspension (SyRigWalk *walk, double demand)
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
  SyRigWalk walk = { facts, rig, context, sink, sy_as_of (&facts->common, context), INFINITY, -1,
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
