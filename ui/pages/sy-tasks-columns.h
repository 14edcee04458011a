/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_COLUMNS_H
#define SY_TASKS_COLUMNS_H

#include <gtk/gtk.h>

#include "sy-task-view.h"

/*
 * The columns of a list of items and their order. Rows are SyTaskRow. A heading turns the order round; what has
 * no value stays last either way. Which headings were pressed is told to a SyTaskView, which does the sorting.
 */
typedef struct SyTasksColumns SyTasksColumns;

/* Adds the columns of the kind to @view, which they outlive. Masses are shown in @units. */
SyTasksColumns *sy_tasks_columns_new (GtkColumnView *view, SyRegister which, SyUnits units);
void sy_tasks_columns_free (SyTasksColumns *columns);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyTasksColumns, sy_tasks_columns_free)

/* The rows that follow the headings; borrowed until the columns are freed. */
void sy_tasks_columns_set_rows (SyTasksColumns *columns, SyTaskView *rows);
/* The order in which a list is first shown; @column must be one of its own. */
void sy_tasks_columns_sort_by (SyTasksColumns *columns, SyTaskColumn column, GtkSortType direction);
/* Whether rows of the column now stand largest first. */
gboolean sy_tasks_columns_descending (SyTasksColumns *columns, SyTaskColumn column);

/* Unit system of the masses; the caller has rows bound anew. */
void sy_tasks_columns_set_units (SyTasksColumns *columns, SyUnits units);

#endif
