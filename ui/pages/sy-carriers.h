/* SPDX-License-Identifier: MIT */
#ifndef SY_CARRIERS_H
#define SY_CARRIERS_H

#include <glib.h>

#include "sy-capacity-view.h"
#include "sy-desk.h"
#include "sy-rig-facts.h"

/* One thing that carries a load, as an assessment sees it. */
typedef struct
{
  char *name;        /* "E1 at A", as it is said                                        */
  char *subject;     /* "A, E1", as the subject of notes about it; NULL: none           */
  const char *leg;   /* "A" of an element, NULL: it is in no leg; in the assessment's memory */
  char *path;        /* of the fact that says what it may carry: "legs[0].elements[1].wll" */
  double demand;     /* in the unit of mass of the document; NAN: it is no mass         */
  double capacity;   /* NAN: not known                                                  */
  double ratio;      /* INFINITY: nothing is left that it may carry; NAN: not known     */
  gboolean governs;
  const SyRigElement *element;       /* of a leg, NULL: none; in the assessment's memory */
  const SyRigSuspension *suspension; /* NULL: none                                       */
} SyCarrier;

/* Everything that carries, the weakest first, what is not known last. Free with g_ptr_array_unref; not to be used after
   the assessment. */
GPtrArray *sy_carriers_list (const SyAssessment *assessment);

/* "519 / 500 kg"; "519 kg" where the capacity is not known; "" where it is no mass. New string. */
char *sy_carrier_dup_figures (const SyCarrier *carrier, const SyFindings *findings);
/* "103.7 %"; "" where the ratio is not finite. New string. */
char *sy_carrier_dup_percent (const SyCarrier *carrier, const SyFindings *findings);
/* What stands in the place of a figure: NULL where the ratio is finite. Translated, static. */
const char *sy_carrier_said (const SyCarrier *carrier);

/* The first @most of them (0: all) as bars, with the policy's notice. */
void sy_carriers_show (GPtrArray *carriers, const SyFindings *findings, guint most, SyCapacityView *view);

#endif
