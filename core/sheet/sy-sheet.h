/* SPDX-License-Identifier: MIT */
#ifndef SY_SHEET_H
#define SY_SHEET_H

#include <cairo.h>
#include <glib.h>

#include "sy-drawing.h"
#include "sy-units.h"
#include "sy-words.h"

/* Printable pages. The same draw function serves PDF, printer and preview. */

typedef enum { SY_PAPER_A4, SY_PAPER_LETTER, SY_PAPER_A5 } SyPaper;
#define SY_N_PAPERS 3
/* "a4", "letter", "a5"; static. */
const char *sy_paper_id (SyPaper paper);
gboolean sy_paper_from_id (const char *id, SyPaper *paper); /* FALSE for an id that is none */
void sy_paper_size (SyPaper paper, double *width_pt, double *height_pt);

/* The blank measuring sheet to take to the floor. */
typedef struct
{
  SyUnits units;
  SyPaper paper;
  SyTranslate translate;   /* NULL: English          */
  const char *program;     /* "steelyard 0.1.0"      */
} SySurveySheet;
int sy_survey_pages (const SySurveySheet *sheet);
/* One page, from 0, in points on a page of the paper's size. */
void sy_survey_draw (const SySurveySheet *sheet, int page, cairo_t *cr);

/**
 * sy_survey_write_pdf:
 * Tagged PDF, owner-only permission; the same bytes for the same sheet and @created (RFC 3339).
 */
gboolean sy_survey_write_pdf (const SySurveySheet *sheet, const char *path, const char *created,
                              GError **error);

#endif
