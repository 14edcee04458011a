/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-back.h"
#include "sy-lift-facts.h"

/* Back compression beside a lift: an estimate of another kind, which may tighten a verdict and nothing else. */

/* The pose at one end; false: not known there, or more than one person lifts. */
static bool
pose_at (const SyLiftFacts *facts, const SyLiftCase *lift, int end, SyBackPose *out)
{
  const SyNumber *trunk = end == 0 ? &facts->back.trunk_origin : &facts->back.trunk_destination;
  const SyNumber *arm = end == 0 ? &facts->back.arm_origin : &facts->back.arm_destination;

  if (facts->back_given != 1 || lift->persons > 1 || !trunk->given || (end == 1 && !lift->has_destination))
    return false;
  *out = (SyBackPose) {
    .body_mass = facts->back.body_mass.value,
    .trunk_deg = trunk->value,
    .load = lift->heaviest,
    .arm = arm->given ? arm->value : lift->at[end].reach,
  };
  return true;
}

void
sy_lift_back (const SyLiftFacts *facts, const SyLiftCase *lift, SySink *sink)
{
  SyBack most = { .sum = -1 };

  for (int end = 0; end < 2; end++)
    {
      SyBackPose pose;
      SyBack back;

      if (!pose_at (facts, lift, end, &pose))
        continue;
      sy_back_compression (&pose, lift->units, &back);
      sy_sink_value (sink, end == 0 ? SY_LIFT_ALL_BACK_ORIGIN : SY_LIFT_ALL_BACK_DESTINATION, back.sum);
      if (back.sum > most.sum)
        most = back;
    }
  if (most.sum < 0)
    return;
  sy_sink_value (sink, SY_LIFT_ALL_BACK, most.sum);
  sy_sink_value (sink, SY_LIFT_ALL_BACK_TRUNK, most.trunk);
  sy_sink_value (sink, SY_LIFT_ALL_BACK_LOAD, most.load);
  sy_sink_value (sink, SY_LIFT_ALL_BACK_DIRECT, most.direct);
  sy_sink_value (sink, SY_LIFT_ALL_BACK_LIMIT, sy_back_threshold (SY_BACK_ACTION_KN, lift->units));
  sy_sink_value (sink, SY_LIFT_ALL_BACK_RATIO, most.sum / sy_back_threshold (SY_BACK_ACTION_KN, lift->units));
}

void
sy_lift_back_notes (const SyLiftFacts *facts, const SyLiftCase *lift, SySink *sink)
{
  SyBackPose pose;

  if (facts->back_given != 1)
    return;
  if (lift->persons > 1)
    {
      sy_sink_note (sink, "back-one-person", SY_NOTE_CAUTION);
      return;
    }
  sy_note_source (sy_sink_note (sink, "back-estimate", SY_NOTE_CAUTION), "back", "University of Utah hand calculation", true);
  for (int end = 0; end < 2; end++)
    if (pose_at (facts, lift, end, &pose) && !(end == 0 ? facts->back.arm_origin : facts->back.arm_destination).given)
      sy_sink_note (sink, "back-arm-assumed", SY_NOTE_CAUTION);
  if (lift->n_ends == 2 && !facts->back.trunk_destination.given)
    sy_sink_note (sink, "back-no-destination", SY_NOTE_CAUTION);
}

double
sy_lift_back_mass (const SyLiftFacts *facts, const SyLiftCase *lift, const SyGoal *goal)
{
  double action = sy_back_threshold (SY_BACK_ACTION_KN, lift->units), least = (double) INFINITY;
  double most = fmin (goal->limits[SY_LIFT_LIMIT_BACK] * action, goal->values[SY_LIFT_LIMIT_BACK]);

  for (int end = 0; end < 2; end++)
    {
      SyBackPose pose;

      if (pose_at (facts, lift, end, &pose))
        least = fmin (least, sy_back_load (&pose, isfinite (most) ? most : action, lift->units));
    }
  return least;
}

void
sy_lift_check_back (const SyLiftFacts *facts, SyProblems *problems)
{
  static const char given[] = "without a destination", allowed[] = "only beside destination {H, V, A}";

  if (facts->back_given != 1)
    return;
  if (facts->destination_given != 1 && facts->back.trunk_destination.given)
    sy_lift_problem (problems, SY_PROBLEM_CONFLICT, "$.back", "trunk_destination", given, allowed, "");
  if (facts->destination_given != 1 && facts->back.arm_destination.given)
    sy_lift_problem (problems, SY_PROBLEM_CONFLICT, "$.back", "arm_destination", given, allowed, "");
  else if (facts->back.arm_destination.given && !facts->back.trunk_destination.given)
    sy_lift_problem (problems, SY_PROBLEM_MISSING, "$.back", "trunk_destination", "nothing",
                     "the trunk's angle beside arm_destination, 0 to 90", "deg");
}
