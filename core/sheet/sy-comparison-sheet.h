/* SPDX-License-Identifier: MIT */
#ifndef SY_COMPARISON_SHEET_H
#define SY_COMPARISON_SHEET_H

#include "sy-beside.h"
#include "sy-folio.h"

/* Two assessments on paper: what changed, what it bought, limits, reasons; which revisions they are, and the head of the
   journal. One page for all but long lists of facts or reasons. */
typedef struct
{
  const SyBeside *beside;        /* in the page's language                  */
  const SyEvent *before, *after; /* what it was made of                     */
  gboolean has_head;             /* they are of a record; its head:         */
  guint64 head_line;
  SyHash head;
  SyPaper paper;
  SyTranslate translate;         /* NULL: English */
  const char *program, *made;
} SyComparisonSheet;
SyFolio *sy_comparison_sheet_new (const SyComparisonSheet *sheet);

#endif
