/* SPDX-License-Identifier: MIT */
#ifndef SY_TIMELINE_H
#define SY_TIMELINE_H

#include "sy-drawing.h"

/*
 * What happened to one item along time: its revisions with the shape of their verdict, the index as a line against the goal,
 * sign-offs, and a small tick for anything else. A pure function of what it is given, for screen and paper.
 */

typedef enum
{
  SY_TIMELINE_REVISION,
  SY_TIMELINE_SIGNED, /* a tick like a check mark, and a word */
  SY_TIMELINE_OTHER,
} SyTimelineKind;

typedef struct
{
  SyTimelineKind kind;
  double time;      /* in any unit, e.g. seconds since 1970; never less than that of the mark before */
  SyShape shape;    /* REVISION                                                                      */
  double index;     /* REVISION: INFINITY unbounded, NAN none                                        */
  const char *text; /* REVISION: the index as written, "2.1", "" for none; SIGNED: "signed off"      */
} SyTimelineMark;

typedef struct
{
  int n_marks;
  const SyTimelineMark *marks;
  double goal;            /* NAN: none                                              */
  double top;             /* where the stop is: what lies over it stands there with an arrow */
  const char *title;      /* what the line shows: "LI", "Utilisation"; "" for none  */
  const char *goal_text;  /* "goal 1.0"                                             */
  const char *first_text, *last_text; /* when it begins and ends                    */
  int hot;                /* mark under the pointer or with the focus, -1 none      */
} SyTimeline;

#define SY_TIMELINE_HEIGHT 138.0 /* what it is made for; more makes the line steeper */

void sy_drawing_timeline (cairo_t *cr, double width, double height, const SyTimeline *timeline, const SyPalette *palette,
                          const char *font);

/**
 * sy_drawing_timeline_at:
 * Return value: the nearest revision within reach of x in a drawing of @width, -1 for none.
 */
int sy_drawing_timeline_at (double width, const SyTimeline *timeline, double x);
/* Where a mark stands from the left in a drawing of @width. */
double sy_drawing_timeline_place (double width, const SyTimeline *timeline, int mark);

#endif
