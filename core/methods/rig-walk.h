/* SPDX-License-Identifier: MIT */
#ifndef RIG_WALK_H
#define RIG_WALK_H

#include "sy-rig-case.h"

/* The way of the load through its gear, between the files that walk it. */

#define SY_RIG_SLINGS_SOURCE "29 CFR 1910.184(c), as WAC 296-24-29419: only to the marking"

typedef struct
{
  const SyRigFacts *facts;
  const SyRigCase *rig;
  const SyContext *context;
  SySink *sink;
  double as_of;          /* days since 1970; NAN: not known */
  double valid_until;    /* earliest due day; INFINITY none  */
  double worst;          /* utilisation; -1 none             */
  double own_mass;       /* of everything in the legs, kg or lb, times the dynamic factor */
} SyRigWalk;

/* The marking says what it rates: one leg, or the assembly with its legs and angles. */
bool sy_rig_is_rated (const SyRigElement *element);

/* What the sling of a leg loses by the way it is laid; 1 where nothing acts, 0 where it is not allowed. @rule decides the
   choke. Says what is missing and what is not allowed. */
double sy_rig_reduce_sling (SyRigWalk *walk, const SyRigLeg *leg, const char *label, SyRule rule);

/* What a thing in a leg may carry as it is used there; NAN where its marking does not say.
   @sling_factor: of sy_rig_reduce_sling; @subject: what notes are about. *pull_deg receives the pull from the axis of a
   bolt or ring, NAN where that does not matter or is not known. */
double sy_rig_capacity (SyRigWalk *walk, const SyRigElement *element, int part, double sling_factor, const char *subject,
                        double *pull_deg);

#endif
