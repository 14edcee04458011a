/* SPDX-License-Identifier: MIT */
#ifndef SY_REGISTERS_H
#define SY_REGISTERS_H

#include "sy-task-order.h"

/* What the pages that list items say and show, a row a kind of item. Texts are N_(). */

typedef struct
{
  SyTaskColumn column;
  int width; /* px; -1: what is left */
} SyRegisterColumn;

/* By what a list is narrowed beside words, to one key each. */
typedef enum
{
  SY_NARROW_VERDICT,
  SY_NARROW_MACHINE,
  SY_NARROW_GEAR,
  SY_NARROW_METHOD,
  SY_NARROW_PLACE,
  SY_NARROW_DUE,
} SyNarrow;
#define SY_N_NARROWS 6

typedef struct
{
  const char *page;  /* of the window: "tasks" */
  const char *title; /* "Tasks"                */
  const SyRegisterColumn *columns;
  gsize n_columns;
  SyTaskColumn first; /* by which it is sorted when it is first shown */
  gboolean descending;
  SyNarrow narrow;      /* in the bar                             */
  const SyNarrow *more; /* one press away                         */
  gsize n_more;
  const char *search, *search_name;
  const char *empty, *empty_words; /* what the page is for, while there is nothing */
  const char *begin;               /* "_New die"                                   */
  const char *method;              /* of a new one; NULL: there is a choice        */
  const char *survey;              /* a second step; NULL: none                    */
  const char *no_match, *no_match_words, *show_all;
} SyRegisterPage;

const SyRegisterPage *sy_register_page (SyRegister which);
/* Whether this edition has a method for what the page lists; a page that is not offered has no place in the window. */
gboolean sy_register_is_offered (SyRegister which);
/* How many there are, or how many of them are shown: "3 of 25 dies". New string, translated. */
char *sy_register_count (SyRegister which, guint shown, guint all);

#endif
