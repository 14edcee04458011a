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
  SY_BY_WHEN,    /* when it was last revised                     */
  SY_BY_DAY,     /* the same, where there is no room for by whom */
  SY_BY_MACHINE, /* of a die; of gear all that it serves         */
  SY_BY_BALANCE, /* where a die balances: x, then y, then z      */
  SY_BY_STORAGE,
  SY_BY_IDENTITY,
  SY_BY_GEAR,    /* kind of gear                                 */
  SY_BY_WLL,
  SY_BY_DUE,     /* what is longest overdue first                */
  SY_BY_USE,     /* what may be used before what is withdrawn    */
} SyTaskColumn;
#define SY_N_TASK_COLUMNS 16

/* What falls due within that many days is due soon (assumed, no source: the days on which gear is said to be due). */
#define SY_DUE_SOON_DAYS 30

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
  GStrv words;           /* folded; every one must occur; NULL: any */
  const char *item_kind; /* NULL: any                           */
  gboolean by_verdict;
  SyVerdict verdict;     /* as it stands today                  */
  char *machine;         /* one of those that the row names; NULL: any */
  char *gear_kind;       /* id; NULL: any                       */
  gboolean due;          /* out of date, or due within SY_DUE_SOON_DAYS */
} SyTaskChoice;

/* Words of a search as typed, folded; NULL when there are none. */
GStrv sy_task_words (const char *search);
gboolean sy_task_chosen (SyTaskRow *row, const SyTaskChoice *choice);

/* The machines that the rows of a kind name, each once, in the order of people. Free with g_strfreev. */
char **sy_task_machines (GListModel *rows, const char *item_kind);

#endif
