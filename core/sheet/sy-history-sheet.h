/* SPDX-License-Identifier: MIT */
#ifndef SY_HISTORY_SHEET_H
#define SY_HISTORY_SHEET_H

#include "sy-dossier.h"
#include "sy-folio.h"

/* What happened to an item, oldest first: every line with its hash, and what changed from revision to revision. */
typedef struct
{
  const SyTask *task;
  const SyHistoryLine *lines;
  gsize n_lines;
  guint64 head_line; /* of the journal */
  SyHash head;
  SyPaper paper;
  SyTranslate translate; /* NULL: English */
  const char *program, *made;
} SyHistorySheet;
SyFolio *sy_history_sheet_new (const SyHistorySheet *sheet);

#endif
