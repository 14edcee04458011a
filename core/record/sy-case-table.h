/* SPDX-License-Identifier: MIT */
#ifndef SY_CASE_TABLE_H
#define SY_CASE_TABLE_H

#include "sy-findings.h"
#include "sy-words.h"

/*
 * A case for an aid side by side: how it is now in the first column, then every option, a line for each thing that is compared;
 * and what the winner's net present value depends on. Texts are in the language asked for; "–" where something is
 * not known or has no such figure; what is known of none has no line.
 */
typedef struct
{
  char *title;
  char **cells;   /* one a column, NULL after the last */
  gboolean heavy; /* the line that decides             */
} SyCaseRow;

/* One input of the winner that was given with low and high. */
typedef struct
{
  char *input;
  char *low, *high; /* the net present value with it at one end, all others as expected */
  double width;     /* between the two                                                  */
} SyCaseSwing;

typedef struct
{
  guint n_columns;
  char **heads;      /* NULL after the last                             */
  int winner;        /* column; -1: no option wins                      */
  GPtrArray *rows;   /* of SyCaseRow                                    */
  GPtrArray *swings; /* of SyCaseSwing, the widest first                */
  char *depends;     /* the widest in one sentence, or that none is known; "" without a winner */
} SyCaseTable;

/* @findings: of the method case. */
SyCaseTable *sy_case_table_new (const SyFindings *findings, SyTranslate translate);
void sy_case_table_free (SyCaseTable *table); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyCaseTable, sy_case_table_free)

#endif
