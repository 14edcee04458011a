/* SPDX-License-Identifier: MIT */
#ifndef SY_DIE_FACTS_H
#define SY_DIE_FACTS_H

#include "sy-rig-facts.h"

/* The facts of a die: what it is made of or weighs, where it can be taken hold of, where it is kept. Masses in kg or lb,
   lengths and places in mm or in, areas in mm2 or in2. Texts and lists live in the memory of the facts. */

#define SY_DIE_BODIES_MAX 256
#define SY_DIE_PLACES_MAX 64 /* of one body */
#define SY_DIE_HALVES_MAX 8

typedef enum { SY_AXIS_X, SY_AXIS_Y, SY_AXIS_Z } SyAxis;

typedef struct
{
  const char *label;
  int shape;             /* SyBodyShape without the point, or -1: a point mass */
  SyVector size;         /* of a block              */
  SyNumber diameter, outer, inner, height, area; /* of the other shapes, as in SyBody */
  int axis;              /* SyAxis or -1: z         */
  SyList at;             /* of SyVector             */
  int material;          /* of sy_materials, or -1  */
  SyNumber density;      /* kg/m3 or lb/in3         */
  SyNumber mass;         /* of a point mass         */
  SyNumber count;        /* whole, 1 or more        */
  int cut;               /* 1: a pocket             */
} SyDieBody;

typedef struct
{
  SyCommonFacts common;
  SyList bodies;         /* of SyDieBody */
  SyNumber weighed;      /* the whole die, over 0   */
  int mass_basis;        /* SyBasis or -1 */
  SyNumber allowance_percent;
  const char *machine, *drawing, *storage;
  SyList points;         /* of SyRigPoint */
  SyList halves;         /* of const char * */
  SyList ties;           /* of const char * */
  int assigned;          /* SyAssigned or -1 */
} SyDieFacts;

#endif
