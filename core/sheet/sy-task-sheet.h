/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_SHEET_H
#define SY_TASK_SHEET_H

#include "sy-facts.h"
#include "sy-findings.h"
#include "sy-folio.h"
#include "sy-history-sheet.h"

/*
 * Sheets of one assessment: of one revision of an item, or of a facts document. What is printed was worked out now, by this
 * program, from the facts as recorded; where the record came to another verdict both are said and the stricter one leads.
 */
typedef struct
{
  const SyFacts *facts;
  const SyFindings *findings;  /* of @facts, with remedies                                                     */
  const SyEvent *event;        /* the revision; of a facts document only name and facts are filled             */
  const SyTask *task;          /* the item as it stands; NULL: a facts document, and what follows is not there */
  guint64 line;                /* of the revision in the journal */
  SyHash hash;
  guint64 head_line;           /* of the journal */
  SyHash head;
  const SyHistoryLine *lines;  /* all about the item, oldest first: who signed, who was told */
  gsize n_lines;
  SyPaper paper;
  SyTranslate translate;       /* NULL: English */
  const char *program, *made;
} SyTaskSheet;

/* A kind of sheet. */
typedef struct
{
  const char *id;     /* "assessment"                                            */
  const char *title;  /* N_(), in a menu                                         */
  gboolean (*is_of) (const SyMethod *method); /* NULL: of every method           */
  guint papers;       /* bit by SyPaper: on what it can be printed               */
  SyFolio *(*make) (const SyTaskSheet *sheet);
} SyTaskSheetKind;

/* All of them, in the order of a menu. */
const SyTaskSheetKind *sy_task_sheet_kinds (gsize *n);
/* NULL: no such kind. */
const SyTaskSheetKind *sy_task_sheet_kind (const char *id);
gboolean sy_task_sheet_fits (const SyTaskSheetKind *kind, const SyMethod *method);
gboolean sy_task_sheet_takes (const SyTaskSheetKind *kind, SyPaper paper);

#endif
