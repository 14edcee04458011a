/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_COLUMNS_H
#define SY_TASKS_COLUMNS_H

#include <gtk/gtk.h>

#include "sy-task-order.h"

/*
 * The columns of a list of items and their order. Rows are SyTaskRow. A heading turns the order round; what has
 * no value stays last either way, which is why the columns must know which way each of them stands.
 */
typedef struct SyTasksColumns SyTasksColumns;

/* Adds the columns of the kind to @view, which they outlive. Masses are shown in @units. */
SyTasksColumns *sy_tasks_columns_new (GtkColumnView *view, SyRegister which, SyUnits units);
void sy_tasks_columns_free (SyTasksColumns *columns);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyTasksColumns, sy_tasks_columns_free)

/* What the view's heading asks for, and among equals the strictest, then the name. New reference. */
GtkSorter *sy_tasks_columns_sorter (SyTasksColumns *columns);
/* The order in which a list is first shown; @column must be one of its own. */
void sy_tasks_columns_sort_by (SyTasksColumns *columns, SyTaskColumn column, GtkSortType direction);
/* Whether rows of the column now stand largest first. */
gboolean sy_tasks_columns_descending (SyTasksColumns *columns, SyTaskColumn column);

/* Unit system of the masses; the caller has rows bound anew. */
void sy_tasks_columns_set_units (SyTasksColumns *columns, SyUnits units);

#endif
