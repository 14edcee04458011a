/* SPDX-License-Identifier: MIT */
#ifndef SY_REGISTER_SHEET_H
#define SY_REGISTER_SHEET_H

#include "sy-audit-words.h"
#include "sy-folio.h"

/* The register as at a day, to print. */
typedef struct
{
  const SyAudit *audit;
  SyPaper paper;
  SyTranslate translate; /* NULL: English       */
  const char *program;   /* "steelyard 0.1.0"   */
  const char *made;      /* RFC 3339            */
} SyRegisterSheet;
SyFolio *sy_register_sheet_new (const SyRegisterSheet *sheet);

#endif
