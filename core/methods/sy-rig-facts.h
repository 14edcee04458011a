/* SPDX-License-Identifier: MIT */
#ifndef SY_RIG_FACTS_H
#define SY_RIG_FACTS_H

#include "sy-assembly.h"
#include "sy-method.h"

/* The facts of a rigged lift in the units of the document: masses in kg or lb, lengths and places in mm or in, angles in
   degrees, temperatures in degC or degF. Texts and lists live in the memory of the facts. */

#define SY_RIG_POINTS_MAX 32
#define SY_RIG_LEGS_MAX 4
#define SY_RIG_ELEMENTS_MAX 12
#define SY_RIG_SUSPENSION_MAX 12
#define SY_RIG_LABEL_MAX 40 /* bytes */

/* Where a load can be taken hold of; also of a die. */
typedef struct
{
  const char *label;
  SyVector at;
  SyVector axis;    /* of the bolt, out of the load; any length over 0 */
  const char *body; /* the half that it sits on                         */
  SyNumber size;    /* thread, nominal diameter                         */
} SyRigPoint;
#define SY_RIG_N_POINT_FIELDS 5
extern const SyField sy_rig_point_fields[SY_RIG_N_POINT_FIELDS];

typedef enum { SY_RATED_LEG, SY_RATED_ASSEMBLY } SyRatedAs;
extern const SyChoice sy_rated_as_choices[2];
extern const SyChoice sy_band_choices[SY_N_BANDS];
extern const SyChoice sy_family_choices[SY_N_EYEBOLT_FAMILIES];
extern const SyChoice sy_sling_material_choices[SY_N_SLING_MATERIALS];

typedef struct
{
  const char *label;
  int kind;         /* SyGearKind or -1 */
  SyNumber wll;     /* as marked: working load limit, over 0 */
  int rated_as;     /* SyRatedAs or -1  */
  SyNumber legs;    /* of the tag       */
  int band;         /* SyBand or -1     */
  SyNumber own_mass; /* 0 or more; hangs on all that is above it */
  int family;       /* SyEyeboltFamily or -1 */
  int shoulder;     /* 1, 0, -1         */
  SyNumber side_angle; /* of a shackle: pull from its line */
  SyNumber size, grade; /* nominal diameter; grade of chain: 8, 10, 12 */
  const char *due;  /* last day on which it may be used, "2027-03-01"; NULL not given */
  int withdrawn;    /* 1, 0, -1         */
} SyRigElement;

typedef enum { SY_HITCH_STRAIGHT, SY_HITCH_CHOKE, SY_HITCH_BASKET } SyHitch;

typedef struct
{
  SyList point;     /* one label, two of a basket */
  SyNumber length;  /* from point to hook, over 0 */
  int hitch, edge, material; /* SyHitch, SyEdge, SySlingMaterial, or -1 */
  SyNumber choke_angle, temperature, bend; /* bend: D/d where over 1, else d/D */
  SyList elements;  /* of SyRigElement, from the load up */
} SyRigLeg;

typedef struct
{
  const char *label;
  int kind;         /* SyGearKind less SY_GEAR_HOIST, or -1: hoist, crane, beam, truck */
  SyNumber wll, own_mass;
  const char *due;
  int attachment;   /* of a fork truck: a rated one is fitted */
  int withdrawn;    /* 1, 0, -1 */
} SyRigSuspension;

typedef struct
{
  SyCommonFacts common;
  const char *die;
  SyNumber mass;
  int mass_basis;           /* SyBasis or -1 */
  SyNumber allowance_percent, dynamic_factor; /* percent, 0 or more; ratio, 1 or more */
  SyVector cg;              /* centre of gravity as the load stands level */
  SyList points;            /* of SyRigPoint */
  SyList halves, ties;      /* of const char * */
  SyList legs;              /* of SyRigLeg   */
  struct
  {
    SyVector at;            /* x, y over the centre of gravity */
    SyNumber above;         /* over the highest point used     */
  } hook;                   /* one of them; of no hook: hangs free */
  int hook_given;
  SyList suspension;        /* of SyRigSuspension, from the hook up */
  int rule;                 /* SyRule or -1 */
  SyNumber stiffness, bottom; /* of one leg, kN/mm or lbf/in; z of the underside */
  SySet checks;
} SyRigFacts;

#define SY_RIG_N_FIELDS 16
extern const SyField sy_rig_fields[SY_RIG_N_FIELDS];

/* The point of that label; NULL when there is none. */
const SyRigPoint *sy_rig_point (const SyRigFacts *facts, const char *label);

/* Whether a name holds control characters, or such as turn the direction of writing. Not NULL. */
bool sy_rig_name_hides (const char *label);
/* Cross-field check; see SyMethod. */
void sy_rig_check (const void *facts, SyUnits units, SyProblems *problems);
/* Of a list of points: labels and axes. @list is the path of the list ("$.points"). */
void sy_rig_check_points (const SyList *points, const char *list, SyProblems *problems);

/* Of item @index of @list ("$.points"): a name must be short enough to stand in a symbol, without characters that cannot be
   seen, and unlike the @index names @before it. No name is no problem here. */
void sy_check_label (const char *label, const char *list, size_t index, const char *const *before, SyProblems *problems);

#endif
