/* SPDX-License-Identifier: MIT */
#ifndef SY_MATRIX_WHY_H
#define SY_MATRIX_WHY_H

#include <gtk/gtk.h>

#include "sy-matrix.h"

/* Below the table of what lifts what: the verdict of one cell, what it rests on, why, and under what it holds. */
#define SY_TYPE_MATRIX_WHY (sy_matrix_why_get_type ())
G_DECLARE_FINAL_TYPE (SyMatrixWhy, sy_matrix_why, SY, MATRIX_WHY, GtkBox)

GtkWidget *sy_matrix_why_new (void);
/* NULL: none. Nothing of the cell is kept. Masses in @units. */
void sy_matrix_why_set (SyMatrixWhy *self, const SyMatrixCell *cell, SyUnits units);
/* Ids of what is shown; NULL: none. */
const char *sy_matrix_why_get_die (SyMatrixWhy *self);
const char *sy_matrix_why_get_gear (SyMatrixWhy *self);

#endif
