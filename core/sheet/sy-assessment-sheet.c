/* SPDX-License-Identifier: MIT */
/* An assessment whole: what it came to, why, what was given and how it was worked out. */
#include "sy-task-sheet-private.h"

SyFolio *
sy_assessment_sheet_new (const SyTaskSheet *sheet)
{
  SyFolio *folio = sy_sheet_begin (sheet, N_ ("Assessment"));

  sy_sheet_add_lead (folio, sheet);
  sy_sheet_add_beam (folio, sheet);
  sy_sheet_add_reasons (folio, sheet);
  sy_sheet_add_limits (folio, sheet);
  sy_sheet_add_parts (folio, sheet);
  if (sheet->facts->method->n_views > 0)
    {
      sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Drawn")));
      sy_sheet_add_views (folio, sheet, 200, "Sans 7.5px");
    }
  sy_sheet_add_facts (folio, sheet);
  sy_sheet_add_remedies (folio, sheet);
  sy_sheet_add_cautions (folio, sheet);
  sy_sheet_add_formulas (folio, sheet);
  sy_sheet_sign_off (folio, sheet);
  return folio;
}
