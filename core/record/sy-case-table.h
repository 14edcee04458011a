/* SPDX-License-Identifier: MIT */
#ifndef SY_CASE_TABLE_H
#define SY_CASE_TABLE_H

#include "sy-facts.h"
#include "sy-findings.h"
#include "sy-words.h"

/* The case for an aid side by side, in words: what screen, sheet and other readers show in the same way. */

#define SY_CASE_COLUMNS_MAX 6 /* as it is, and five options */

typedef struct
{
  const char *id; /* "verdict", "index", "npv" …; static      */
  char *label;    /* "Machine stands, each time"              */
  char *cells[SY_CASE_COLUMNS_MAX]; /* one a column; "–": not known; "": has none there */
} SyCaseRow;

/* One input on which the net present value of an option depends. */
typedef struct
{
  const char *id; /* "capital", "changes" …; static           */
  char *label;
  double low, high;         /* net present value with the input at its low and its high end, all others as expected */
  char *low_text, *high_text; /* of these values               */
} SyCaseSwing;

typedef struct
{
  char *label;       /* of the facts; "As it is" for the first   */
  char *kind;        /* "Hoist"; "" for the first                */
  SyVerdict verdict; /* of facts and aid together; as it is: of its facts */
  gboolean has_verdict;
  gboolean is_winner;
  gboolean has_npv;
  double npv, npv_low, npv_high;
  GPtrArray *swings; /* of SyCaseSwing, the widest first; empty where no input is a range */
} SyCaseColumn;

typedef struct
{
  int n_columns;
  SyCaseColumn columns[SY_CASE_COLUMNS_MAX]; /* as it is first */
  GPtrArray *rows;                           /* of SyCaseRow   */
  int winner;                                /* column; 0: none wins */
  char *currency;                            /* as given; "" where it is not */
} SyCaseTable;

/**
 * sy_case_table_new:
 * Parameters:   facts     of the method "case". findings  of these facts.
 *               translate NULL: English.
 * Return value: a new table, on its own: it does not point to @facts or @findings.
 */
SyCaseTable *sy_case_table_new (const SyFacts *facts, const SyFindings *findings, SyTranslate translate);
void sy_case_table_free (SyCaseTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyCaseTable, sy_case_table_free)

/* A row by id; NULL: none. */
const SyCaseRow *sy_case_table_row (const SyCaseTable *table, const char *id);

#endif
