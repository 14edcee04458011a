/* SPDX-License-Identifier: MIT */
#ifndef SY_BODY_H
#define SY_BODY_H

#include <stddef.h>

#include "sy-vector.h"

/*
 * Mass and centre of gravity of a load that is put together from simple bodies, taken apart or cut away.
 * Lengths and masses in units of the caller's choice; a density is a mass per (that length)³: with mm and kg it is
 * kg/m³ × 1e-9, with in and lb it is lb/in³ as it stands (sy_density_of_lengths).
 * Source of all volumes: plane and solid geometry.
 */

typedef enum
{
  SY_BODY_BLOCK,    /* size                                        */
  SY_BODY_CYLINDER, /* diameter, height                            */
  SY_BODY_TUBE,     /* outer, inner, height                        */
  SY_BODY_PRISM,    /* area, height                                */
  SY_BODY_POINT,    /* mass: a fastener, a spring, a bought part   */
} SyBodyShape;

typedef struct
{
  SyBodyShape shape;
  double size[3];  /* along x, y, z, each over 0                     */
  double diameter; /* over 0                                         */
  double outer;    /* over 0                                         */
  double inner;    /* 0 to under outer                               */
  double height;   /* along the body's axis, over 0                  */
  double area;     /* of the section across the axis, over 0         */
  double density;  /* over 0; not looked at for a point              */
  double mass;     /* of a point, of one copy; over 0                */
  bool cut;        /* a pocket or hole: counts negative              */
  double copies;   /* at every place; 1 for one                      */
  const SyVec3 *at; /* @n_at places of its centre of gravity; the axis of a body does not move its centre */
  size_t n_at;     /* at least 1                                     */
} SyBody;

/**
 * sy_body_volume:
 * Of one copy, never negative; 0 for a point.
 */
double sy_body_volume (const SyBody *body);

/**
 * sy_body_mass:
 * Of one copy: volume × density, or the point's mass; negative where it is cut away.
 */
double sy_body_mass (const SyBody *body);

/* Bodies put together one after the other, so that the places of one need not outlast it. */
typedef struct
{
  double mass[2], moment[3][2]; /* sums, and what rounding dropped of each */
  double gross;                 /* what was added and cut, without sign    */
} SyBodySum;

/* Begin with a zeroed sum. */
void sy_body_sum_add (SyBodySum *sum, const SyBody *body);

/**
 * sy_body_sum_end:
 * m = Σ mᵢ, centre = Σ mᵢ·atᵢ / m: the procedure of moments about a datum that the US Navy's balancing of vehicles uses too
 * (training manual 14080).
 * Parameters:   mass  receives the total, negative where more is cut than there is. Not NULL.
 *               cg    receives the centre of gravity; written only on true. Not NULL.
 * Return value: false where the mass is not over 0, or so little beside what was added and cut (1e-12 of it) that it is
 *               rounding.
 * Discussion:   sums are compensated (Neumaier), so that pockets and far places cost no digits.
 * Special considerations: pure; no allocation; any thread.
 */
bool sy_body_sum_end (const SyBodySum *sum, double *mass, SyVec3 *cg);

#endif
