/* SPDX-License-Identifier: MIT */
#ifndef SY_DUE_ROW_H
#define SY_DUE_ROW_H

#include <gio/gio.h>

#include "sy-deed.h"
#include "sy-task.h"

/* When something is to be done, as seen from today. */
typedef enum
{
  SY_DUE_OVERDUE,
  SY_DUE_THIS_WEEK, /* today and the six days after it */
  SY_DUE_LATER,
  SY_DUE_NO_DATE,
  SY_DUE_CLOSED,    /* was done */
} SyDueWhen;
#define SY_N_DUE 5

/* One thing that is to be done: an action, or an item to be looked at again. Immutable once made. */
#define SY_TYPE_DUE_ROW (sy_due_row_get_type ())
G_DECLARE_FINAL_TYPE (SyDueRow, sy_due_row, SY, DUE_ROW, GObject)

/* @today: days since 1970; NAN: nothing is overdue. Takes @action. */
SyDueRow *sy_due_row_new_action (SyAction *action, double today);
/* NULL: no review of @task is set. */
SyDueRow *sy_due_row_new_review (const SyTask *task, double today);
/* The same thing in the same words. */
gboolean sy_due_row_equals (SyDueRow *row, SyDueRow *other);
/* NULL: it is a review. */
const SyAction *sy_due_row_get_action (SyDueRow *row);
/* By what it is known, the item's id for a review. */
const char *sy_due_row_get_key (SyDueRow *row);
const char *sy_due_row_get_item (SyDueRow *row);
const char *sy_due_row_get_item_name (SyDueRow *row);
const char *sy_due_row_get_assigned (SyDueRow *row); /* "" for nobody */
const char *sy_due_row_get_due (SyDueRow *row);      /* "" for none   */
SyDueWhen sy_due_row_get_when (SyDueRow *row);
/* Translated; new strings. */
char *sy_due_row_what (SyDueRow *row);       /* "Fit a stop", "Review: a date was set" */
char *sy_due_row_when_words (SyDueRow *row); /* "Overdue by 12 days", "Due today", "In 3 days" … */
/* Whether each of @words (NULL-terminated, casefolded) is in what it says. */
gboolean sy_due_row_has (SyDueRow *row, char **words);
/* For sorting: by when, then by day, then by item. */
int sy_due_row_compare (SyDueRow *row, SyDueRow *other);

#endif
