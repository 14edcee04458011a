/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENT_SHEET_H
#define SY_IMPROVEMENT_SHEET_H

#include "sy-folio.h"
#include "sy-improvement.h"

/* The improvement log to print: totals by quarter, drawn and in a table, then each improvement; those that were withdrawn, with
   why, at the end. */
typedef struct
{
  GPtrArray *views;      /* of SyImprovementView, in the page's language, the last put to work first */
  guint64 head_line;     /* of the journal                                                           */
  SyHash head;
  SyUnits units;         /* of the totals; each improvement has those of its own facts               */
  SyPaper paper;
  SyTranslate translate; /* NULL: English                                                            */
  const char *program, *made;
} SyImprovementSheet;
SyFolio *sy_improvement_sheet_new (const SyImprovementSheet *sheet);

#endif
