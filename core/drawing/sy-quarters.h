/* SPDX-License-Identifier: MIT */
#ifndef SY_QUARTERS_H
#define SY_QUARTERS_H

#include "sy-drawing.h"

/*
 * Totals quarter by quarter as bars on one to three zero lines over each other, each with a scale of its own: what
 * improvements bought in index, minutes and people. A pure function of what it is given, for screen and paper.
 */

typedef struct
{
  const char *title;        /* translated, with its unit: "Minutes, machine stopped"                  */
  const double *values;     /* one a quarter, of either sign; NAN: not known, nothing is drawn        */
  const char *const *texts; /* one a quarter, formatted: "−41 min"; "" or NULL: no figure             */
} SyQuarterRow;

#define SY_QUARTER_ROWS_MAX 3
typedef struct
{
  int n_quarters;
  const char *const *quarters; /* "2026 Q1", oldest first          */
  int n_rows;                  /* 1 to SY_QUARTER_ROWS_MAX         */
  const SyQuarterRow *rows;
  int heavy;                   /* the quarter drawn filled: the latest, or the one that is told about; -1 none */
  int hot;                     /* under the pointer or with the focus, -1 none                                 */
} SyQuarters;

/* The whole is n_rows · SY_QUARTER_ROW + SY_QUARTER_FOOT high; more makes the bars longer. */
#define SY_QUARTER_ROW 104.0
#define SY_QUARTER_FOOT 22.0

/* A bar over its zero line is toned (filled where it is the heavy one), one under it hatched. A figure that would run into
   the one before it is left out: the table beside the drawing has them all. */
void sy_drawing_quarters (cairo_t *cr, double width, double height, const SyQuarters *quarters, const SyPalette *palette,
                          const char *font);

/**
 * sy_drawing_quarters_at:
 * Return value: the quarter whose column x lies in, in a drawing of @width; -1 for none.
 */
int sy_drawing_quarters_at (double width, const SyQuarters *quarters, double x);
/* The middle of a quarter's column. */
double sy_drawing_quarters_place (double width, const SyQuarters *quarters, int quarter);

#endif
