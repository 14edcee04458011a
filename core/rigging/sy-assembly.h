/* SPDX-License-Identifier: MIT */
#ifndef SY_ASSEMBLY_H
#define SY_ASSEMBLY_H

#include "sy-hang.h"
#include "sy-reduction.h"

/*
 * What the rules let a sling of several legs carry, beside what statics says of each leg; and what one leg may carry
 * by the tag of an assembly. Masses in one unit of the caller's choice, angles in degrees from the vertical.
 * Bounds are within (tolerance 1e-9).
 */

/* Why a load is not taken to be shared evenly (en): bits. */
typedef enum
{
  SY_UNEVEN_LOAD = 1 << 0,   /* over 80 % of what the mode factor would allow           */
  SY_UNEVEN_STEEP = 1 << 1,  /* a part is less than 15° from the vertical               */
  SY_UNEVEN_ANGLES = 1 << 2, /* two angles from the vertical differ by more than 15°    */
  SY_UNEVEN_PLAN = 1 << 3,   /* gaps between neighbours in plan differ by more than 15° */
} SyUneven;

typedef struct
{
  int slings;                       /* legs, 1 or more; a basket is one with two parts                    */
  int n;                            /* straight parts to the hook, 1 to SY_PARTS_MAX                      */
  double angle_deg[SY_PARTS_MAX];   /* of each part from the vertical, 0 or more                          */
  double azimuth_deg[SY_PARTS_MAX]; /* of each part in plan, from the hook, any turn                      */
  double leg_wll;                   /* of one leg, straight; mass, over 0                                 */
  double mass;                      /* that hangs on it; only for the 80 % of en                          */
} SyAssembly;

typedef struct
{
  double capacity;    /* mass, before reductions of one leg or element (a choke is one); 0 where not allowed */
  double mode_factor; /* capacity / leg_wll                                                                */
  int counted;        /* us: parts that count; en: parts                                                   */
  bool symmetric;     /* us: always (its rule does not ask)                                                */
  unsigned uneven;    /* SyUneven bits; 0 when symmetric                                                   */
  bool allowed;       /* false: a part is flatter than the rule allows                                     */
  SyRule rule;        /* that governs: US or EN                                                            */
  const char *source; /* of what governs                                                                   */
  bool from_memory;
} SyAssemblyCapacity;

/**
 * sy_assembly_capacity:
 * Parameters:   rule  BOTH gives the smaller capacity.
 * Discussion:
 *   us: parts that count × leg capacity × cos of the flattest angle. Of three or more parts two count: US Navy,
 *       Equipment Operator training (14080), because two legs may take nearly all of a stiff load. (OSHA's chain
 *       tables count 3 for three and four legs and for two baskets, another Navy page 4 for two baskets; the stricter
 *       is used.) "Smallest height over length of the bridle's legs": US Navy, Equipment Operator Basic. Flatter than
 *       60° is not allowed: OSHA sling guidance, secondary copy.
 *   en: the uniform method, EN 818-4, EN 1492-1/-2, EN 13414-1, from memory: one leg 1.0 (to 45°); two parts 1.4 to
 *       45°, 1.0 to 60°; three or more 2.1 and 1.5; one basket as two parts, 2.0 where both are within 6° of the
 *       vertical; flatter not allowed.
 *       Symmetric, EN 818-6 and EN 13414-2 from memory: none of SyUneven. Otherwise two legs count as one (1.0),
 *       three or more as the least of 1.0 and half the mode factor. The parts of one basket are one sling: of
 *       SyUneven only ANGLES counts for it.
 *       A steeper part can cost capacity by STEEP, by itself.
 * Special considerations: pure; no allocation; any thread.
 */
void sy_assembly_capacity (const SyAssembly *assembly, SyRule rule, SyAssemblyCapacity *out);

/* What a tag says of the angles it holds for, from the vertical; in the order of the ids of documents: 0-30, 0-45,
   0-60, 45-60. */
typedef enum { SY_BAND_0_30, SY_BAND_0_45, SY_BAND_0_60, SY_BAND_45_60 } SyBand;
#define SY_N_BANDS 4

typedef struct
{
  double capacity; /* of one leg, straight; 0 where not rated  */
  bool allowed;    /* false: the leg is outside the tag's band */
} SyTagCapacity;

/**
 * sy_assembly_leg_of_tag:
 * What the tag of an assembly lets one leg carry: wll / (n × cos of the band's upper end).
 * Parameters:   wll        marked for the whole assembly.
 *               legs       of the assembly, 1 or more; three and more count as 3, the most that a rating was made
 *                          with. One leg is rated in line: its capacity is the marking itself in any band.
 *               angle_deg  of the leg as it is used, from the vertical.
 * Source:       statics turned round; with n = 1, 2, 3 and the end of the band it gives back EN's mode factors and
 *               the columns of OSHA's chain tables.
 */
SyTagCapacity sy_assembly_leg_of_tag (double wll, int legs, SyBand band, double angle_deg);

#endif
