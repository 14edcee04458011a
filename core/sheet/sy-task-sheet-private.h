/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_SHEET_PRIVATE_H
#define SY_TASK_SHEET_PRIVATE_H

#include "sy-task-sheet.h"

/* The kinds; see sy-task-sheet.c. */
SyFolio *sy_assessment_sheet_new (const SyTaskSheet *sheet);
SyFolio *sy_lift_plan_sheet_new (const SyTaskSheet *sheet);
SyFolio *sy_changeover_sheet_new (const SyTaskSheet *sheet);
SyFolio *sy_case_sheet_new (const SyTaskSheet *sheet);
SyFolio *sy_card_sheet_new (const SyTaskSheet *sheet);

const char *sy_sheet_in (const SyTaskSheet *sheet, const char *msgid);

/* ---- sy-sheet-head.c: which assessment it is ---- */
/* Head and foot are filled; @title is translated. New. */
SyFolio *sy_sheet_begin (const SyTaskSheet *sheet, const char *title);
/* "Revision 3 of 2026-09-02, made by …" and its line of the journal; new string. */
char *sy_sheet_identity (const SyTaskSheet *sheet);
/* Method, edition, limits, and what it defers to; new string. */
char *sy_sheet_basis (const SyTaskSheet *sheet);
/* What it defers to: of a revision what its stored result says; "" where nothing is said of it. New string. */
char *sy_sheet_defers_to (const SyTaskSheet *sheet);
/* The day of a stored time; new string. */
char *sy_sheet_day (const char *stored);
/* Who signed the revision, or lines to sign on; what was told to whom; when it is looked at again. */
void sy_sheet_sign_off (SyFolio *folio, const SyTaskSheet *sheet);
/* "Next review: 2027-03-01"; new string. */
char *sy_sheet_review (const SyTaskSheet *sheet);
gboolean sy_sheet_is_signed (const SyTaskSheet *sheet);
/* The latest of those told mass and heaviest side of the revision; NULL: nobody was. */
const SyEvent *sy_sheet_told (const SyTaskSheet *sheet);

/* ---- sy-sheet-facts.c ---- */
typedef struct
{
  char *path;  /* "origin.H"                              */
  char *name;  /* "Origin: Reach (H)", in the page's language; NULL where names were not asked for */
  char *value; /* as typed, with its unit                 */
  char *had;   /* "measured, Ivo Tannick"; "" not said    */
} SySheetFact;
/* As the form asks them, one member of a list after the other; new array that frees its elements. */
GPtrArray *sy_sheet_facts (const SyTaskSheet *sheet, gboolean names);
/* The value of a fact; NULL: not given. */
const char *sy_sheet_fact (GPtrArray *facts, const char *path);
void sy_sheet_add_facts (SyFolio *folio, const SyTaskSheet *sheet);

/* ---- sy-sheet-findings.c ---- */
/* The stricter of what the record says and what was worked out now. */
SyVerdict sy_sheet_verdict (const SyTaskSheet *sheet);
SyShape sy_sheet_shape (SyVerdict verdict);
/* Verdict, index, result, and what the record says where that is not the same. */
void sy_sheet_add_lead (SyFolio *folio, const SyTaskSheet *sheet);
void sy_sheet_add_disagreement (SyFolio *folio, const SyTaskSheet *sheet, SyPageType type);
void sy_sheet_add_reasons (SyFolio *folio, const SyTaskSheet *sheet);
void sy_sheet_add_remedies (SyFolio *folio, const SyTaskSheet *sheet);
void sy_sheet_add_cautions (SyFolio *folio, const SyTaskSheet *sheet);
void sy_sheet_add_limits (SyFolio *folio, const SyTaskSheet *sheet);
void sy_sheet_add_parts (SyFolio *folio, const SyTaskSheet *sheet);
void sy_sheet_add_formulas (SyFolio *folio, const SyTaskSheet *sheet);
/* "LI 2.1", "84 %"; "" where the method has none. New string. */
char *sy_sheet_figure (const SyTaskSheet *sheet);
/* A symbol that readers know ("LI"); "" for one that only documents have. */
const char *sy_sheet_symbol (const char *symbol);
/* A part of a capacity in percent; new string. */
char *sy_sheet_percent (const SyFindings *findings, double part);

/* ---- sy-sheet-pictures.c ---- */
/* The steelyard where the method has an index that is no part of a capacity. */
void sy_sheet_add_beam (SyFolio *folio, const SyTaskSheet *sheet);
/* Drawings of the method as on screen; @height of each row. */
void sy_sheet_add_views (SyFolio *folio, const SyTaskSheet *sheet, double height, const char *font);
/* One of them. */
SyFolioPicture sy_sheet_view (const SyTaskSheet *sheet, gsize view, double share, const char *font);

/* ---- sy-card-change.c ---- */
/* Of a die change: people, loads, checks to tick; or what keeps it from being done. */
void sy_card_add_change (SyFolio *folio, const SyTaskSheet *sheet);

/* ---- sy-card-lines.c ---- */
/* Short lines, what to do and what not; new strings are added. */
void sy_card_lines (const SyTaskSheet *sheet, GPtrArray *facts, GPtrArray *done, GPtrArray *never);
/* A piece of gear and a whole changeover have no mass and no centre of gravity of their own (sy-card-sheet.c). */
gboolean sy_card_has_load (const SyTaskSheet *sheet);
/* What is read from afar; new string. */
char *sy_card_headline (const SyTaskSheet *sheet);
/* Mass, and where it balances; new strings. A die change and gear may have none: "". */
char *sy_card_mass (const SyTaskSheet *sheet, GPtrArray *facts);
char *sy_card_balance (const SyTaskSheet *sheet, GPtrArray *facts);
/* Which gear it hangs on, from the hook down; "" where none is named. New string. */
char *sy_card_gear (const SyTaskSheet *sheet, GPtrArray *facts);

#endif
