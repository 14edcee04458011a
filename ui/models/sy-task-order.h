/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_ORDER_H
#define SY_TASK_ORDER_H

#include "sy-task-list.h"

/* Order and choice of rows; no widget needed. Every comparison returns <0, 0 or >0. */

typedef enum
{
  SY_BY_VERDICT, /* weakest to strictest                         */
  SY_BY_NAME,    /* natural: "row 9" before "row 10"             */
  SY_BY_PLACE,
  SY_BY_INDEX,
  SY_BY_RANK,
  SY_BY_MASS,
  SY_BY_WHEN,
} SyTaskColumn;
#define SY_N_TASK_COLUMNS 7

/**
 * sy_number_order:
 * Order of two numbers of which INFINITY is the largest and NAN is no value.
 * Parameters:   descending  the caller will turn the result round; a missing value then still comes last.
 */
int sy_number_order (double a, double b, gboolean descending);

/**
 * sy_task_order:
 * Ascending order by one column. Rows without a value (no index, no place) come last in both directions.
 */
int sy_task_order (SyTaskRow *a, SyTaskRow *b, SyTaskColumn column, gboolean descending);

/* Between rows that are equal otherwise: strictest verdict, then largest index, then name, then id. */
int sy_task_order_rest (SyTaskRow *a, SyTaskRow *b);

/* What a list is narrowed to. */
typedef struct
{
  GStrv words;         /* folded; every one must occur; NULL: any */
  gboolean by_verdict;
  SyVerdict verdict;
} SyTaskChoice;

/* Words of a search as typed, folded; NULL when there are none. */
GStrv sy_task_words (const char *search);
gboolean sy_task_chosen (SyTaskRow *row, const SyTaskChoice *choice);

#endif
