/* SPDX-License-Identifier: MIT */
#include "sy-material.h"


/* Marks text for translation without depending on gettext. */
#define N_(text) text

#define GERE "Gere, Mechanics of Materials, 5th ed., density table, as quoted on a course page"
#define TABLE "engineering density table, web page (secondary)"
#define LIST "density list, web page (secondary)"

static const SyMaterial materials[SY_N_MATERIALS] = {
  { "steel", N_ ("Steel"), 7850,
    GERE "; 490 lb/ft3, Iowa DOT instructional memo (the Navy's 0.284 lb/in3 is 0.1 % more)", false },
  { "cast-steel", N_ ("Cast steel"), 7800, TABLE, false },
  { "tool-steel", N_ ("Tool steel"), 7800, TABLE " (text cut off after 7.8)", false },
  { "tool-steel-d2", N_ ("Tool steel D2"), 7700, "density of D2", true },
  { "tool-steel-h13", N_ ("Tool steel H13"), 7800, "density of H13", true },
  { "tool-steel-m2", N_ ("High-speed steel M2"), 8160, "density of M2", true },
  { "cast-iron", N_ ("Cast iron"), 7400, GERE ", 7000 to 7400", false },
  { "grey-iron", N_ ("Grey cast iron"), 7200,
    "450 lb/ft3, Iowa DOT instructional memo and Shop Practice vol. 2; 6600 to 7400, " TABLE, false },
  { "ductile-iron", N_ ("Ductile iron"), 7100, "density of ductile iron", true },
  { "white-iron", N_ ("White cast iron"), 7700, TABLE ", 7400 to 7700", false },
  { "malleable-iron", N_ ("Malleable iron"), 7400, TABLE ", 7200 to 7400", false },
  { "stainless", N_ ("Stainless steel"), 8000, LIST ", 7480 to 8000", false },
  { "aluminium", N_ ("Aluminium"), 2700, GERE ", 6061", false },
  { "aluminium-7075", N_ ("Aluminium 2014 or 7075"), 2800, GERE, false },
  { "brass", N_ ("Brass"), 8600, GERE ", 8400 to 8600", false },
  { "bronze", N_ ("Bronze"), 8800, GERE ", 8200 to 8800", false },
  { "aluminium-bronze", N_ ("Aluminium bronze"), 8700, LIST ", 7700 to 8700", false },
  { "beryllium-copper", N_ ("Beryllium copper"), 8250, LIST ", 8100 to 8250", false },
  { "copper", N_ ("Copper"), 8900, GERE, false },
  { "carbide", N_ ("Cemented carbide"), 15000, "density of cemented carbide, 14000 to 15000", true },
  { "polyurethane", N_ ("Polyurethane"), 1200, "planning figure for cast polyurethane, 1050 to 1250", true },
  { "nylon", N_ ("Nylon"), 1100, GERE ", 880 to 1100", false },
  { "rubber", N_ ("Rubber"), 1300, GERE ", 960 to 1300", false },
  { "zinc-alloy", N_ ("Zinc die alloy"), 6700, "density of zinc die alloy, 6600 to 6700", true },
  { "oil", N_ ("Oil"), 900, "density of oil", true },
  { "water", N_ ("Water"), 1000, GERE, false },
};

const SyMaterial *
sy_materials (void)
{
  return materials;
}

double
sy_material_density (const SyMaterial *material, SyUnits units)
{
  return units == SY_UNITS_US ? material->density_kg_m3 / SY_KG_M3_PER_LB_IN3 : material->density_kg_m3;
}

double
sy_density_of_lengths (double density, SyUnits units)
{
  return units == SY_UNITS_US ? density : density * SY_KG_MM3_PER_KG_M3;
}
