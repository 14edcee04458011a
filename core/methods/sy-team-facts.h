/* SPDX-License-Identifier: MIT */
#ifndef SY_TEAM_FACTS_H
#define SY_TEAM_FACTS_H

#include "sy-method.h"
#include "sy-team.h"

/* The facts of a lift by a team in the units of the document: masses kg or lb; places in mm or in; heights of hands, reach and
   travel in cm or in; slope in degrees. */

#define SY_TEAM_LABEL_MAX 40 /* bytes */

typedef struct
{
  const char *label;
  SyVector at;          /* hands, in the plan of the load                      */
  SyNumber height;      /* of the hands over the ground, at the lower end      */
  SyNumber reach;       /* H                                                   */
  int assigned;         /* SyAssigned or -1                                    */
} SyTeamPerson;

typedef struct
{
  SyCommonFacts common;
  SyNumber mass;
  SyVector cg;          /* in that plan; its height over the hands, if known   */
  SyList people;        /* of SyTeamPerson                                     */
  SyNumber slope;
  SyList uphill;        /* of const char *: labels of those who go ahead       */
  SyNumber travel, frequency;
  int duration, coupling; /* SyDuration, SyCoupling or -1                      */
} SyTeamFacts;

#define SY_TEAM_N_FIELDS 9
extern const SyField sy_team_fields[SY_TEAM_N_FIELDS];

/* Cross-field check; see SyMethod. */
void sy_team_check (const void *facts, SyUnits units, SyProblems *problems);

/* The facts in the shape of the statics. */
typedef struct
{
  SyTeam team;              /* lengths as places: mm or in                                                  */
  SyTeamShares shares;
  const SyTeamPerson *people;
  bool known_direction;     /* false: on a slope, and not said who goes ahead; it is taken the way that loads one most */
  bool can_lie;             /* false: the hands cannot be as they are said to be; no shares                 */
} SyTeamCase;
void sy_team_case (const SyTeamFacts *facts, SyUnits units, SyTeamCase *out);

/* Places in the quantities. */
enum
{
  SY_TEAM_MASS, SY_TEAM_PERSONS, SY_TEAM_MASS_EACH, SY_TEAM_HEAVIEST, SY_TEAM_HEAVIEST_PERCENT,
  SY_TEAM_OWN_SHARE, SY_TEAM_OWN_LIMIT, SY_TEAM_OWN_RATIO, SY_TEAM_REFERENCE_SHARE, SY_TEAM_M_REF, SY_TEAM_REFERENCE_RATIO,
  SY_TEAM_SUM, SY_TEAM_RULE_LIMIT, SY_TEAM_RULE_RATIO, SY_TEAM_TILT, SY_TEAM_BESIDE, SY_TEAM_RATIO,
  SY_TEAM_N_SYMBOLS
};

/* Who carries most; the first of those who carry as much. */
int sy_team_heaviest (const SyTeamCase *team);

#endif
