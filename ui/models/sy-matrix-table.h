/* SPDX-License-Identifier: MIT */
#ifndef SY_MATRIX_TABLE_H
#define SY_MATRIX_TABLE_H

#include <gio/gio.h>

#include "sy-matrix.h"

/* The cells of what lifts what, put in rows and columns. */

/* A row: one die. Its cells are found by the id of the gear; NULL: there is none. */
#define SY_TYPE_MATRIX_ROW (sy_matrix_row_get_type ())
G_DECLARE_FINAL_TYPE (SyMatrixRow, sy_matrix_row, SY, MATRIX_ROW, GObject)
const SyMatrixCell *sy_matrix_row_first (SyMatrixRow *row); /* any: for what they all say of the die */
const SyMatrixCell *sy_matrix_row_find (SyMatrixRow *row, const char *gear);

/* Rows in the order of @cells (of SyMatrixCell, which the rows keep): GPtrArray of SyMatrixRow. */
GPtrArray *sy_matrix_rows (GPtrArray *cells);
/* One cell of every item of gear, by kind as the list of kinds has them, then by name: GPtrArray of borrowed SyMatrixCell. */
GPtrArray *sy_matrix_columns (GPtrArray *cells);

/* The die's part of what may be carried: "28 %", rounded up; "" where it is not known. New string. */
char *sy_matrix_cell_percent (const SyMatrixCell *cell);

#endif
