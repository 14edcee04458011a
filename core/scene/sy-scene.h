/* SPDX-License-Identifier: MIT */
#ifndef SY_SCENE_H
#define SY_SCENE_H

#include "sy-arena.h"
#include "sy-number.h"

/*
 * What a drawing shows, as a plain list in real measures: a method fills it, core/drawing renders it.
 * Coordinates are in the document's length unit (cm or in for lifts, mm or in for rigging); x to the right, y up.
 */

typedef enum
{
  SY_MARK_LINE,      /* points[0] to points[1]                                              */
  SY_MARK_POLYLINE,  /* points[0 .. n-1]                                                    */
  SY_MARK_POLYGON,   /* closed, filled by its role                                          */
  SY_MARK_CIRCLE,    /* centre points[0], radius in real measure                            */
  SY_MARK_DIMENSION, /* dimension line from points[0] to points[1] with arrows and the text,
                        drawn @offset away (real measure, signed, to the left of the direction) */
  SY_MARK_ANGLE,     /* arc about points[0] from points[1] to points[2], with the text      */
  SY_MARK_ARROW,     /* from points[0] to points[1]                                         */
  SY_MARK_TEXT,      /* text at points[0]                                                   */
  SY_MARK_SIGN,      /* a small sign of its role at points[0], of one size on every sheet, with the text beside it */
} SyMarkType;

typedef enum
{
  SY_ROLE_OUTLINE,     /* thick outline                        */
  SY_ROLE_THIN,        /* thin line                            */
  SY_ROLE_CENTRE,      /* chain line                           */
  SY_ROLE_HIDDEN,      /* dashed                               */
  SY_ROLE_FLOOR,       /* the floor                            */
  SY_ROLE_FIGURE,      /* the neutral figure for size          */
  SY_ROLE_SUPPORT,     /* shelf, table, pallet                 */
  SY_ROLE_ORIGIN,      /* hands at the origin: solid           */
  SY_ROLE_DESTINATION, /* hands at the destination: outline    */
  SY_ROLE_PATH,        /* the way of the load                  */
  SY_ROLE_MEASURE,     /* dimension                            */
  SY_ROLE_GOVERNING,   /* what governs: drawn heavy            */
  SY_ROLE_BODY,        /* of a load: seen through; as a sign a small cross: a part without extent */
  SY_ROLE_POCKET,      /* cut out of a body: dashed            */
  SY_ROLE_POINT,       /* lifting point: a ring                */
  SY_ROLE_GRAVITY,     /* centre of gravity: a circle in quarters */
  SY_ROLE_LEG,         /* of a sling                           */
  SY_ROLE_SLACK,       /* a leg that does not pull, or of which it is not known: dashed */
  SY_ROLE_TENSION,     /* a pull, to the scale of forces       */
  SY_ROLE_HOOK,        /* the hook                             */
  SY_ROLE_POINTS,      /* the outline of the lifting points    */
  SY_ROLE_SECTION,     /* of the pyramid of the legs at the height of the centre */
} SyRole;

typedef struct
{
  double x, y;
} SyPoint;

/*
 * A mark that can be taken hold of to change a fact: a place [x, y, z], or a number.
 * Moving it by dx, dy in the drawing changes coordinate i of the fact by dx · right[i] + dy · up[i].
 */
typedef struct
{
  const char *fact;   /* path of the fact ("points[2].at", "hook.above"); NULL: not a handle. Static */
  bool number;        /* a number, as coordinate 0       */
  double value[3];    /* of the fact as it stands        */
  double right[3], up[3];
  const char *also;   /* a second place that goes along by as much in x and y; NULL none. Static */
  double also_value[3];
} SyHandle;

#define SY_MARK_POINTS_MAX 16
#define SY_MARK_TEXT_MAX 48
typedef struct
{
  SyMarkType type;
  SyRole role;
  bool governing; /* drawn heavy */
  int n_points;
  SyPoint points[SY_MARK_POINTS_MAX];
  double radius;
  double offset;
  char text[SY_MARK_TEXT_MAX];  /* symbols and figures only ("H 55 cm"): needs no translation */
  const char *fact;             /* path of the fact it shows ("origin.H"), NULL for none; static */
  SyHandle handle;
} SyMark;

/* Room that is enough for every view of every method; of a die with more bodies the last are missing. */
#define SY_SCENE_MARKS_MAX 640
#define SY_SCENE_SCALE_TEXT_MAX 24

typedef struct
{
  SyUnits units;
  SyKind kind;           /* of the lengths: SY_KIND_REACH unless set; SY_KIND_RATIO: a diagram, without a scale */
  double force_length;   /* how long @force_text is drawn, real measure; 0: there are no forces */
  char force_text[SY_SCENE_SCALE_TEXT_MAX]; /* "5 kN" */
  bool handles;          /* draw what can be taken hold of as such: on screen */
  int hot;               /* the handle with the focus or under the pointer: its mark; -1 none */
  double x0, y0, x1, y1; /* the part of the world that is shown */
  int count, room;
  SyMark *marks; /* in the caller's memory */
} SyScene;

/**
 * sy_scene_begin: empties the scene over the caller's @marks (room for @room).
 * sy_scene_add:   a new zeroed mark, or NULL when full (the scene then simply lacks it).
 * sy_scene_include: widens the shown part so that the point is inside.
 */
void sy_scene_begin (SyScene *scene, SyUnits units, SyMark *marks, int room);
SyMark *sy_scene_add (SyScene *scene, SyMarkType type, SyRole role);
void sy_scene_include (SyScene *scene, double x, double y);

#endif
