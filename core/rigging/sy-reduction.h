/* SPDX-License-Identifier: MIT */
#ifndef SY_REDUCTION_H
#define SY_REDUCTION_H

#include <stdbool.h>

/*
 * What is left of the working load limit of one leg, or of one element in it, in the way it is used.
 * Factors multiply. Angles in degrees, 0 or more; temperatures in °C. A value on the upper end of a step is in the step
 * (tolerance 1e-9); a value that is no number is not allowed.
 * Where publications differ the stricter figure is used; a figure from memory never allows more than one that was
 * read (the choke under rule en alone excepted: 0.8).
 *
 * Topics: hitch, temperature, edge and bend, lifting points and hardware
 */

typedef struct
{
  double factor;      /* 0 to 1; 0 where it is not allowed                                       */
  const char *source; /* publication; never NULL, "" where nothing acts                          */
  bool from_memory;   /* the figure was not checked against the publication                      */
  bool allowed;       /* false: the publication does not let it be used so, or only by its maker */
} SyReduction;

/* Whose rules: US (OSHA, US Navy) or European standards; both: the stricter of the two, figure by figure. */
typedef enum { SY_RULE_US, SY_RULE_EN, SY_RULE_BOTH } SyRule;

/* In the order of the ids of documents: chain, wire-rope, wire-rope-fibre-core, rope, fibre-rope, textile, polyester,
   polyamide, polypropylene. "rope" and "textile" say no more than that: the strictest of their kind. */
typedef enum
{
  SY_SLING_CHAIN,                /* alloy, grade 8 and better   */
  SY_SLING_WIRE_ROPE,            /* with a core of wire rope    */
  SY_SLING_WIRE_ROPE_FIBRE_CORE,
  SY_SLING_ROPE,                 /* wire or fibre               */
  SY_SLING_FIBRE_ROPE,           /* natural or synthetic        */
  SY_SLING_TEXTILE,              /* web or round sling          */
  SY_SLING_POLYESTER,
  SY_SLING_POLYAMIDE,
  SY_SLING_POLYPROPYLENE,
} SySlingMaterial;
#define SY_N_SLING_MATERIALS 9

/**
 * sy_reduction_choke:
 * Choked against straight, at an angle of choke over 120°.
 * Source: us: 0.75, US Navy, Equipment Operator Basic, and BC Association for Crane Safety, rigging quiz (wire rope and
 *         chain bridles) (the chain tables of OSHA's guidance have 0.80); fibre rope 0.50, 29 CFR 1918 App. II table 2
 *         (natural fibre; a rope of unknown fibre counts as that). en: 0.8, EN 818-4, EN 1492-1/-2, EN 13414-1, from
 *         memory.
 */
SyReduction sy_reduction_choke (SyRule rule, SySlingMaterial material);

/**
 * sy_reduction_choke_angle:
 * On top of the choke, by the angle between the two parts at the choke.
 * Parameters:   angle_deg  0 to 180; a sling that hangs free chokes at about 135° (from memory).
 * Source:       that ratings hold above 120°: OSHA, Guidance on Safe Sling Use (read). Steps from memory, ASME B30.9:
 *               over 120 1; 90 to 120 0.87; 60 0.74; 30 0.62; below 0.49.
 */
SyReduction sy_reduction_choke_angle (double angle_deg);

/**
 * sy_reduction_temperature:
 * Source: chain: EN 818-6 from memory: -40 to 200 °C 1, to 300 0.9, to 400 0.75 (Washington's rule removes chain only
 *         above 1000 °F). Wire rope: -60 to 400 °F, WAC 296-24-29425; fibre core to 200 °F, the same, and from -40 °C
 *         (assumed, no source, stricter). Fibre rope: -20 to 180 °F, WAC 296-24-29429. Polyester and polyamide: from
 *         -40 °C, EN 1492-1 (abstract), to 180 °F, 29 CFR 1926.251(e) (EN: 100 °C). Polypropylene: -40 to 80 °C,
 *         EN 1492-1 (CFR: 200 °F). Outside: not allowed (the publications leave it to the maker).
 */
SyReduction sy_reduction_temperature (SySlingMaterial material, double celsius);

typedef enum { SY_EDGE_NONE, SY_EDGE_PROTECTED, SY_EDGE_BARE } SyEdge;

/**
 * sy_reduction_edge:
 * Source: chain on a bare edge (radius under the chain's diameter) 0.5, EN 818-6 from memory; ropes and textiles: not
 *         allowed, "pad sharp edges", WAC 296-24-29419 and 29 CFR 1910.184(c).
 */
SyReduction sy_reduction_edge (SyEdge edge, SySlingMaterial material);

/**
 * sy_reduction_bend:
 * A wire rope round a pin or a corner. Chain, textiles and fibre rope: nothing acts (they have the edge).
 * Parameters:   D_over_d  diameter it is bent round over diameter of the rope; below 1 is not allowed.
 * Source:       bend efficiency of wire rope, from memory (published curves differ by 2 points): 1 50 %, 2 65, 4 75,
 *               5 77, 6 79, 8 83, 10 86, 15 89, 20 91, 25 93, 30 95, 40 96; between two rows the lower.
 */
SyReduction sy_reduction_bend (SySlingMaterial material, double D_over_d);

/* In the order of the ids of documents: asme, asme-older, din-580, bs-4278. They rate different base loads: a factor
   goes with the axial load of its own family only. */
typedef enum { SY_EYEBOLT_ASME, SY_EYEBOLT_ASME_OLDER, SY_EYEBOLT_DIN_580, SY_EYEBOLT_BS_4278 } SyEyeboltFamily;
#define SY_N_EYEBOLT_FAMILIES 4

/**
 * sy_reduction_eyebolt:
 * Of the axial working load limit, against the tension of the leg (never its vertical part); in the plane of the eye.
 * Parameters:   shoulder   false: not allowed over 5°, "shouldered type for all uses", DOE-STD-1090-96 section 12.4.
 *               angle_deg  between the pull and the bolt's own axis; over 90 is not allowed in any family.
 * Source:       all from memory. asme (B30.26, US Navy): to 5° 1, 15 0.55, 90 0.25. asme-older (B18.15): 5 1, 15
 *               0.80, 30 0.65, 45 0.30, 90 0.25. din-580 (2003): in line 1, to 45° 11000/16000, the smallest ratio of
 *               its table; beyond not allowed. bs-4278 (pairs): in line 1, to 15° 0.63, 30 0.40, 45 0.25; beyond not
 *               allowed.
 */
SyReduction sy_reduction_eyebolt (SyEyeboltFamily family, bool shoulder, double angle_deg);

/**
 * sy_reduction_eyebolt_temperature:
 * Source: -20 to 200 °C without reduction, DIN 580:2003 (read); the other families: the same, assumed, no source.
 */
SyReduction sy_reduction_eyebolt_temperature (SyEyeboltFamily family, double celsius);

/**
 * sy_reduction_shackle:
 * Parameters:   angle_deg  between the pull and the line through bow and pin.
 * Source:       steps to 5, 45, 90°, over 90 not permitted: WAC 296-155-33905 figure 17; 1, 0.70, 0.50: ASME B30.26
 *               from memory.
 */
SyReduction sy_reduction_shackle (double angle_deg);

/**
 * sy_reduction_hoist_ring:
 * A swivel hoist ring whose bushing sits tight: full from axial to 90°, beyond not allowed. From memory.
 */
SyReduction sy_reduction_hoist_ring (double angle_deg);

#endif
