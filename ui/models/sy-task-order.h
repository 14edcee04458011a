/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_ORDER_H
#define SY_TASK_ORDER_H

#include "sy-task-list.h"

/* Order and choice of rows; no widget needed. Every comparison returns <0, 0 or >0. What is searched for is the store's
   matter. */

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
  SY_BY_MACHINE, /* of a die or a change; of gear all that it serves */
  SY_BY_BALANCE, /* where a die balances: x, then y, then z      */
  SY_BY_STORAGE,
  SY_BY_IDENTITY,
  SY_BY_GEAR,    /* kind of gear                                 */
  SY_BY_WLL,
  SY_BY_DUE,     /* what is longest overdue first                */
  SY_BY_USE,     /* what may be used before what is withdrawn    */
  SY_BY_CONDITION, /* of gear: good, worn, damaged               */
  SY_BY_REVIEW,  /* what has been due for review longest first   */
  SY_BY_PERSONS,
  SY_BY_STANDS,  /* of a die change: how long the machine stands */
  SY_BY_WINNER,  /* of a case: the option that wins              */
  SY_BY_PAYBACK,
  SY_BY_NPV,
} SyTaskColumn;
#define SY_N_TASK_COLUMNS 23

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

/* What is ordered by, and which way. */
typedef struct
{
  SyTaskColumn column;
  gboolean descending;
} SyTaskKey;
#define SY_TASK_KEYS_MAX 3

/* By the first key, among equals by the next, then as sy_task_order_rest() has it. Names and ids last: nothing is equal. */
int sy_task_order_by (SyTaskRow *a, SyTaskRow *b, const SyTaskKey *keys, guint n_keys);

/**
 * sy_task_sort_rest / sy_task_sort:
 * The same for many: numbers of rows in @rows that stand in the order of sy_task_order_name() are put into that of
 * sy_task_order_rest(), and such into the order of the keys. A hundred thousand take a few milliseconds a key, as each row is
 * read once and compared as a number.
 * Parameters:   by_name  all of the rows by name, @rows->len numbers.
 */
void sy_task_sort_rest (const GPtrArray *rows, guint32 *places, guint n);
void sy_task_sort (const GPtrArray *rows, guint32 *places, guint n, const guint32 *by_name, const SyTaskKey *keys,
                   guint n_keys);

/* By name, then by id. */
int sy_task_order_name (SyTaskRow *a, SyTaskRow *b);

/* What of it is due: in the past, or within SY_DUE_SOON_DAYS. */
typedef enum
{
  SY_DUE_NOTHING, /* everything is chosen, due or not          */
  SY_DUE_ANY,     /* one of the following                      */
  SY_DUE_VERDICT, /* the day until which the verdict holds     */
  SY_DUE_REVIEW,
  SY_DUE_ACTION,
} SyTaskDue;
#define SY_N_TASK_DUES 5

/* What a list is narrowed to. */
typedef struct
{
  const char *item_kind; /* NULL: any                           */
  gboolean by_verdict;
  SyVerdict verdict;     /* as it stands today                  */
  char *method;          /* id; NULL: any                       */
  char *place;           /* NULL: any                           */
  char *machine;         /* one of those that the row names; NULL: any */
  char *gear_kind;       /* id; NULL: any                       */
  SyTaskDue due;
  gboolean open;         /* only what has open actions          */
  gboolean not_signed;   /* only what nobody signed off as it now stands */
  gboolean retired;      /* also what is retired                */
} SyTaskChoice;

gboolean sy_task_chosen (SyTaskRow *row, const SyTaskChoice *choice);

/* The machines that the rows of a kind name, each once, in the order of people. Free with g_strfreev. */
char **sy_task_machines (GListModel *rows, const char *item_kind);
/* The same for places, and for ids of methods. */
char **sy_task_places (GListModel *rows, const char *item_kind);
char **sy_task_methods (GListModel *rows, const char *item_kind);

#endif
