/* SPDX-License-Identifier: MIT */
#ifndef SY_TEAM_H
#define SY_TEAM_H

#include "sy-lift.h"

/*
 * One load in the hands of several people: who carries how much of it, and what a team is good for.
 * Source of the shares: statics. Lengths in one unit of the caller's choice; a share is a part of the weight, 0 to 1.
 */

#define SY_TEAM_MAX 4

typedef struct
{
  int n;                       /* 2 to SY_TEAM_MAX                                                      */
  double x[SY_TEAM_MAX], y[SY_TEAM_MAX]; /* hands in the plan of the load, no two at one place           */
  double height[SY_TEAM_MAX];  /* of the hands over the ground under them; of the same unit             */
  double cg[3];                /* centre of gravity in that plan; its height over the plane of the hands */
  double slope_deg;            /* of the ground: slope or stairs, 0 to under 90                         */
  double uphill[2];            /* where it goes up, in the plan of the load: any length over 0 where there is a slope */
} SyTeam;

typedef struct
{
  bool balanced;               /* false: it tips, the centre is outside the hands; the shares are 0     */
  bool settled;                /* statics alone gives one answer                                        */
  double worst[SY_TEAM_MAX];   /* largest over all balancing sets of at most three; the answer where settled. Their sum is over
                                  1 where it is not                                                     */
  double elastic[SY_TEAM_MAX]; /* all hands equally stiff, none pulling down: an answer, not the answer */
  double tilt_deg;             /* of the plane of the hands from level                                  */
  double beside;               /* hands all in one line: how far the weight acts beside it; else 0      */
} SyTeamShares;

/**
 * sy_team_shares:
 * The load is rigid and its weight acts straight down. The plane through the hands goes with the ground and with what the
 * heights of the hands differ (a plane through four: the nearest); leaning, the weight acts where the vertical through the
 * centre meets that plane: downhill by its height × the tangent of the tilt. Hands in one line hold no moment about it.
 * Return value: false when no load can lie so: heights that differ by more than the hands are apart, or a tilt of 90 degrees.
 *               @out is then untouched.
 * Special considerations: pure; any thread; no allocation. Forces and moments balance within 1e-12 of the weight.
 */
bool sy_team_shares (const SyTeam *team, SyTeamShares *out);

/**
 * sy_team_own_limit:
 * What one person of a team could lift alone, kg or lb: reference mass × multipliers, the lower of the two ends.
 * Parameters:   at    where the hands are at the lower end; @pace->travel above it is the upper end.
 * Source: as sy_lift_end's m_R. NIOSH leaves out lifts by several people; so this is no RWL and no index is made of it.
 */
double sy_team_own_limit (const SyLiftPosition *at, const SyLiftPace *pace, SyUnits units);

/**
 * sy_team_rule:
 * What a team can lift over the sum of what each could alone: two 2/3, three 1/2; NAN for four: nothing is published.
 * Source: UK HSE team handling guidance, in L23 (READ: 2 men 33 kg, 3 men 37.5 kg, 20 kg each 26.6 kg for two).
 */
double sy_team_rule (int persons);

/* Of a person's own limit in a team: EN 1005-2, multiplier for two persons, also in ISO 11228-1:2021; from memory. */
#define SY_TEAM_OWN_PART 0.85

#endif
