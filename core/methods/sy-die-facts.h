/* SPDX-License-Identifier: MIT */
#ifndef SY_DIE_FACTS_H
#define SY_DIE_FACTS_H

#include "sy-body.h"
#include "sy-outline.h"
#include "sy-rig-facts.h"

/* The facts of a die: what it is made of or weighs, where it can be taken hold of, where it is kept. */

#define SY_DIE_BODIES_MAX 256
#define SY_DIE_PLACES_MAX 64 /* of one body */
#define SY_DIE_HALVES_MAX 8

typedef enum { SY_AXIS_X, SY_AXIS_Y, SY_AXIS_Z } SyAxis;

typedef struct
{
  const char *label;
  int shape;             /* SyBodyShape without the point, or -1: a point mass */
  SyVector size;
  SyNumber diameter, outer, inner, height, area;
  int axis;              /* SyAxis or -1: z         */
  SyList at;             /* of SyVector             */
  int material;          /* of sy_materials, or -1  */
  SyNumber density;      /* kg/m3 or lb/in3         */
  SyNumber mass;
  SyNumber count;
  int cut;               /* 1: a pocket             */
} SyDieBody;

typedef struct
{
  SyCommonFacts common;
  SyList bodies;         /* of SyDieBody */
  SyNumber weighed;
  int mass_basis;        /* SyBasis or -1 */
  SyNumber allowance_percent;
  const char *machine, *drawing, *storage;
  SyList points;         /* of SyRigPoint */
  SyList halves;         /* of const char * */
  SyList ties;           /* of const char * */
  int assigned;          /* SyAssigned or -1 */
} SyDieFacts;

/* A body as core/rigging takes it; @places: room for SY_DIE_PLACES_MAX. */
void sy_die_body (const SyDieBody *body, SyUnits units, SyVec3 *places, SyBody *out);
/* Copies of a body at one of its places. */
double sy_die_body_copies (const SyDieBody *body);

#endif
