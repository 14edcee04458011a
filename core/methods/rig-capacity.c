/* SPDX-License-Identifier: MIT */
#include "rig-walk.h"

/* What is left of a marking in the place where the thing is used. */

/* One reduction of a capacity; says what is not allowed and with which number. */
static double
reduce (SyRigWalk *walk, SyReduction reduction, const char *id, const char *subject, SyKind kind, double value)
{
  if (!reduction.allowed)
    {
      SyNote *out = sy_sink_note_on (walk->sink, id, SY_NOTE_REFUSED, subject);
      if (isfinite (value))
        sy_note_arg (out, kind, value);
      sy_note_source (out, NULL, reduction.source, reduction.from_memory);
    }
  return reduction.factor;
}

double
sy_rig_reduce_sling (SyRigWalk *walk, const SyRigLeg *leg, const char *label, SyRule rule)
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
        sy_sink_note_on (walk->sink, "choke-angle-not-given", SY_NOTE_NEEDED, label);
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
          sy_note_arg (sy_sink_note_on (walk->sink, "bend-read", SY_NOTE_CAUTION, label), SY_KIND_RATIO, bend);
        }
      else
        sy_sink_note_on (walk->sink, "bend-not-given", SY_NOTE_NEEDED, label);
    }
  return factor;
}

/* Beyond 60 degrees the bolt sits in a side, for a leg of an upright bolt is never flatter. DIN 580 and BS 4278 end at 45, the
   US figure of a quarter goes on to 90 (all from memory): the stricter forbids it. Within 20 is the rule of WAC 296-304-07011
   for shipyards (read): said, and a site can hold "element.*.angle" against it by its policy. */
#define EYEBOLT_WITHIN_DEG 20
#define EYEBOLT_SIDE_DEG 60

static void
judge_eyebolt_angle (SyRigWalk *walk, double angle, const char *subject)
{
  bool side = angle > EYEBOLT_SIDE_DEG + 1e-9;
  SyNote *said;

  if (!(angle > EYEBOLT_WITHIN_DEG + 1e-9))
    return;
  said = sy_sink_note_on (walk->sink, side ? "eyebolt-from-the-side" : "eyebolt-beyond-its-rule",
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
reduce_eyebolt (SyRigWalk *walk, const SyRigElement *element, int part, const char *subject, double *pull_deg)
{
  const SyRigCase *rig = walk->rig;
  const SyRigPoint *point = rig->parts[part].point;
  const SyRigLeg *leg = rig->parts[part].leg;
  SyEyeboltFamily family = element->family >= 0 ? (SyEyeboltFamily) element->family : SY_EYEBOLT_ASME;
  double factor = 1;

  if (element->family < 0)
    sy_sink_note_on (walk->sink, "eyebolt-no-family", SY_NOTE_NEEDED, subject);
  if (leg->temperature.given)
    {
      double celsius = sy_unit_convert (SY_KIND_TEMPERATURE, leg->temperature.value, rig->units, SY_UNITS_METRIC);
      factor = reduce (walk, sy_reduction_eyebolt_temperature (family, celsius), "eyebolt-temperature", subject,
                       SY_KIND_TEMPERATURE, leg->temperature.value);
    }
  if (!point->axis.given)
    {
      sy_sink_note_on (walk->sink, "eyebolt-no-axis", SY_NOTE_NEEDED, subject);
      return factor;
    }
  double angle = sy_vec3_angle_deg (sy_vec3_sub (rig->hang.hook, rig->at[part].at), sy_vector_vec3 (&point->axis));
  *pull_deg = angle;
  judge_eyebolt_angle (walk, angle, subject);
  SyReduction straight = sy_reduction_eyebolt (family, true, angle);
  if (element->shoulder < 0 && !sy_reduction_eyebolt (family, false, angle).allowed && straight.allowed)
    sy_sink_note_on (walk->sink, "eyebolt-shoulder-not-known", SY_NOTE_NEEDED, subject);
  if (element->shoulder == 0)
    factor *= reduce (walk, sy_reduction_eyebolt (family, false, angle), "shoulderless-at-an-angle", subject,
                      SY_KIND_ANGLE, angle);
  else
    {
      factor *= reduce (walk, straight, "eyebolt-off-its-axis", subject, SY_KIND_ANGLE, angle);
      if (straight.allowed && straight.factor < 1)
        {
          SyNote *said = sy_sink_note_on (walk->sink, "eyebolt-reduced", SY_NOTE_CAUTION, subject);
          sy_note_arg (said, SY_KIND_ANGLE, angle);
          sy_note_arg (said, SY_KIND_RATIO, straight.factor);
        }
    }
  return factor;
}

bool
sy_rig_is_rated (const SyRigElement *element)
{
  return element->rated_as == SY_RATED_LEG
         || (element->rated_as == SY_RATED_ASSEMBLY && element->legs.given && element->band >= 0);
}

double
sy_rig_capacity (SyRigWalk *walk, const SyRigElement *element, int part, double sling_factor, const char *subject,
                 double *pull_deg)
{
  const SyRigCase *rig = walk->rig;
  double base = element->wll.value, factor = 1;
  bool assembly = element->rated_as == SY_RATED_ASSEMBLY;
  bool rated = sy_rig_is_rated (element);

  *pull_deg = NAN;
  if (assembly && rated && element->wll.given)
    {
      double angle = rig->hang.angle_deg[part];
      SyTagCapacity tag = sy_assembly_leg_of_tag (element->wll.value, (int) element->legs.value, (SyBand) element->band,
                                                  angle);
      if (!tag.allowed)
        {
          SyNote *out = sy_sink_note_on (walk->sink, "outside-tag-band", SY_NOTE_REFUSED, subject);
          sy_note_arg (out, SY_KIND_ANGLE, angle);
          sy_note_source (out, NULL, SY_RIG_SLINGS_SOURCE, false);
        }
      base = tag.capacity;
    }
  switch ((SyGearKind) element->kind)
    {
    case SY_GEAR_SLING:
      factor = sling_factor;
      break;
    case SY_GEAR_EYEBOLT:
      factor = reduce_eyebolt (walk, element, part, subject, pull_deg);
      break;
    case SY_GEAR_SHACKLE:
      if (element->side_angle.given)
        factor = reduce (walk, sy_reduction_shackle (element->side_angle.value), "shackle-side-load", subject,
                         SY_KIND_ANGLE, element->side_angle.value);
      else
        sy_sink_note_on (walk->sink, "shackle-in-line-assumed", SY_NOTE_CAUTION, subject);
      break;
    case SY_GEAR_HOIST_RING:
      if (rig->parts[part].point->axis.given)
        {
          double angle = sy_vec3_angle_deg (sy_vec3_sub (rig->hang.hook, rig->at[part].at),
                                            sy_vector_vec3 (&rig->parts[part].point->axis));
          *pull_deg = angle;
          factor = reduce (walk, sy_reduction_hoist_ring (angle), "hoist-ring-pulled-into-the-load", subject,
                           SY_KIND_ANGLE, angle);
        }
      else
        sy_sink_note_on (walk->sink, "hoist-ring-no-axis", SY_NOTE_CAUTION, subject);
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
