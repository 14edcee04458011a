/* SPDX-License-Identifier: MIT */
#ifndef SY_DOSSIER_SHEET_H
#define SY_DOSSIER_SHEET_H

#include "sy-folio.h"
#include "sy-task-sheet.h"

/* Which sheets a dossier makes, and making them: the same for whoever asks. */

typedef struct
{
  const char *id;    /* "card", "history" */
  const char *title; /* N_(), in a menu   */
  guint papers;      /* bit by SyPaper: on what it can be printed */
} SyDossierKind;

#define SY_DOSSIER_KINDS_MAX 16
/* Those that @dossier makes, in the order of a menu: by the method of its facts, and its history where it is in a record.
   Return value: how many were filled in. */
guint sy_dossier_kinds (const SyDossier *dossier, SyDossierKind kinds[SY_DOSSIER_KINDS_MAX]);

typedef struct
{
  const char *kind; /* one of those         */
  SyPaper paper;    /* one that it is on    */
  SyTranslate translate; /* NULL: English   */
  const char *program, *made; /* as SyFolioHead has them */
} SyDossierAsk;
/* New; holds nothing of the dossier but what its facts and findings are, which must stay as long. NULL: no such sheet of it. */
SyFolio *sy_dossier_sheet_new (const SyDossier *dossier, const SyDossierAsk *ask);

#endif
