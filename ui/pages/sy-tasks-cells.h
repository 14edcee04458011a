/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_CELLS_H
#define SY_TASKS_CELLS_H

#include "sy-task-order.h"

/* What the cells of the lists of items say. New strings, translated. */

/* "–" where there is nothing to say. Masses and places in @units. */
char *sy_tasks_cell_words (SyTaskRow *row, SyTaskColumn column, SyUnits units);
/* More about it; NULL: nothing. */
char *sy_tasks_cell_tooltip (SyTaskRow *row, SyTaskColumn column);
/* The row in words, as assistive technology says it. */
char *sy_tasks_row_words (SyTaskRow *row);

/* Heading of a column and what it means; static. @which: a task's heaviest load is a die's mass. */
const char *sy_tasks_column_title (SyRegister which, SyTaskColumn column);
const char *sy_tasks_column_tooltip (SyRegister which, SyTaskColumn column);
/* Whether it holds figures, which stand at the end of the cell. */
gboolean sy_tasks_column_is_figures (SyTaskColumn column);

/* A kind of gear in words: "Shackle"; the id itself for one that is not known. */
const char *sy_gear_kind_words (const char *id);

#endif
