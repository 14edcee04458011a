/* SPDX-License-Identifier: MIT */
#ifndef SY_MATRIX_CELLS_H
#define SY_MATRIX_CELLS_H

#include <gtk/gtk.h>

#include "sy-matrix.h"

/* The cells of the table of what lifts what; its rows are SyMatrixRow. */

/* The die of each row, its machine and its mass with allowance in @units. New. */
GtkListItemFactory *sy_matrix_cells_of_dies (SyUnits units);
/* What the item of gear with that id is to the die of each row: a button that holds its cell. New. */
GtkListItemFactory *sy_matrix_cells_of_gear (const char *gear);
/* What a button of sy_matrix_cells_of_gear() stands for now; NULL: the row has no such cell. Borrowed from the row. */
const SyMatrixCell *sy_matrix_cells_get (GtkWidget *button);
/* Left and right go from cell to cell in a view of such cells. */
void sy_matrix_cells_add_arrows (GtkWidget *view);

#endif
