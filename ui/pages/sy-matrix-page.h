/* SPDX-License-Identifier: MIT */
#ifndef SY_MATRIX_PAGE_H
#define SY_MATRIX_PAGE_H

#include <gtk/gtk.h>

#include "sy-task-list.h"

/*
 * What lifts what: a row a die, a column a hoist, crane, fork truck, cart or manipulator; in each cell a verdict's shape
 * and words and the die's part of what may be carried. A cell that is pressed says why below the table. Follows the
 * registers while it can be seen.
 * Asks its window for "win.new-item" (s: method) and "win.open-task" (s: id).
 */
#define SY_TYPE_MATRIX_PAGE (sy_matrix_page_get_type ())
G_DECLARE_FINAL_TYPE (SyMatrixPage, sy_matrix_page, SY, MATRIX_PAGE, GtkWidget)

/* @list: of all items of the worker's store. */
GtkWidget *sy_matrix_page_new (SyWorker *worker, SyTaskList *list, SyUnits units);
void sy_matrix_page_set_units (SyMatrixPage *page, SyUnits units);
/* NULL: every machine. */
void sy_matrix_page_set_machine (SyMatrixPage *page, const char *machine);
/* Says why in the pane below; nothing where there is no such cell. */
void sy_matrix_page_show (SyMatrixPage *page, const char *die, const char *gear);
/* Number of dies and of columns of gear as shown. */
guint sy_matrix_page_count_dies (SyMatrixPage *page);
guint sy_matrix_page_count_gear (SyMatrixPage *page);
/* "loading", "table", "empty" or "error". */
const char *sy_matrix_page_get_state (SyMatrixPage *page);

#endif
