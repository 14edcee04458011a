/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_ROW_H
#define SY_TASK_ROW_H

#include <gio/gio.h>

#include "sy-item-figures.h"
#include "sy-task.h"

/* The kinds of items that the record lists, each on a page of its own. */
typedef enum
{
  SY_REGISTER_TASKS,
  SY_REGISTER_CHANGEOVERS,
  SY_REGISTER_CASES,
  SY_REGISTER_DIES,
  SY_REGISTER_GEAR,
} SyRegister;
#define SY_N_REGISTERS 5

/* SY_ITEM_TASK … */
const char *sy_register_item_kind (SyRegister which);

/*
 * One row: an item as it now stands. The object stays the same as long as the list knows the item; its properties
 * notify only when they change.
 *
 * Properties: "id" (string, for ever the same), "name", "place", "verdict" (int, SyVerdict, as recorded), "index",
 * "rank", "mass" (doubles; kg), "revision" (int64), "by", "when" (strings). Read-only.
 */
#define SY_TYPE_TASK_ROW (sy_task_row_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskRow, sy_task_row, SY, TASK_ROW, GObject)

SyTaskRow *sy_task_row_new (const SyTask *task);
/* Takes @task. */
SyTaskRow *sy_task_row_new_take (SyTask *task);
/* Its id stays where it is in memory as long as the row lives; the rest until the row is updated. */
const SyTask *sy_task_row_get_task (SyTaskRow *row);
/* The name as a key for natural order; made once a change. */
const char *sy_task_row_get_name_key (SyTaskRow *row);
/* When it was last revised, in seconds since 1970; -INFINITY for a time that cannot be read. */
double sy_task_row_get_moment (SyTaskRow *row);
/* Takes over @task, which must have the row's id. Return value: whether anything changed. */
gboolean sy_task_row_update (SyTaskRow *row, const SyTask *task);
/* Another number after each change of what is shown of the row. */
guint sy_task_row_get_serial (SyTaskRow *row);

/* What was read from the findings of the revision that it is at; NULL: not yet, or its kind has none. Borrowed until the row
   changes. */
const SyItemFigures *sy_task_row_get_figures (SyTaskRow *row);
/* Takes @figures. */
void sy_task_row_take_figures (SyTaskRow *row, SyItemFigures *figures);

/* The day it is, in days since 1970; NAN, as at first: not known, and nothing is out of date. Return value: whether what
   follows from it changed. */
gboolean sy_task_row_set_today (SyTaskRow *row, double today);
/* Days from today to the last day on which the verdict holds: 0 on that day, negative when it is past; NAN for none. */
double sy_task_row_get_days_left (SyTaskRow *row);
gboolean sy_task_row_is_expired (SyTaskRow *row);
/* The same for the day on which a review is due, and for the earliest day of an open action. */
double sy_task_row_get_review_left (SyTaskRow *row);
double sy_task_row_get_action_left (SyTaskRow *row);
/* Whether the latest revision is signed off. */
gboolean sy_task_row_is_signed (SyTaskRow *row);
/* What the recorded verdict is worth today: a favourable one whose day is past counts as SY_VERDICT_INCOMPLETE. */
SyVerdict sy_task_row_get_verdict (SyTaskRow *row);

#endif
