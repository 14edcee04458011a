/* SPDX-License-Identifier: MIT */
#ifndef SY_MATERIAL_H
#define SY_MATERIAL_H

#include "sy-units.h"

/* What dies and loads are made of. Where a range is published its upper end is used (the heavier load), except where
   the source of a row says that a planning figure is published. */
typedef struct
{
  const char *id;        /* as written in documents: "tool-steel"     */
  const char *label;     /* N_()                                      */
  double density_kg_m3;
  const char *source;    /* publication, and the range where there is one */
  bool from_memory;      /* the figure was not checked against a text */
} SyMaterial;

#define SY_N_MATERIALS 26

/* Exact: 1 lb/in³ = 0.45359237 kg / (0.0254 m)³. */
#define SY_KG_M3_PER_LB_IN3 (SY_KG_PER_LB / (0.0254 * 0.0254 * 0.0254))

/* Exact: a kg/m³ is 1e-9 kg/mm³. For sums in kg and mm; with lb and in a density in lb/in³ is used as it is. */
#define SY_KG_MM3_PER_KG_M3 1e-9

/**
 * sy_materials:
 * All of them, SY_N_MATERIALS, in the order in which a form lists them; never NULL.
 */
const SyMaterial *sy_materials (void);

/**
 * sy_material_density:
 * In the unit of a document: kg/m³, or exactly converted lb/in³.
 */
double sy_material_density (const SyMaterial *material, SyUnits units);

/**
 * sy_density_of_lengths:
 * A density as documents hold it, made one for masses and lengths as documents hold them.
 * Parameters:   density  kg/m³ or lb/in³.
 * Return value: kg/mm³ or lb/in³.
 */
double sy_density_of_lengths (double density, SyUnits units);

#endif
