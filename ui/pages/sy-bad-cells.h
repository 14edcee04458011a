/* SPDX-License-Identifier: MIT */
#ifndef SY_BAD_CELLS_H
#define SY_BAD_CELLS_H

#include <gtk/gtk.h>

#include "sy-ledger-exchange.h"

/* Every cell of a table that cannot be taken: line, column, what stands there, what is allowed, unit. */
#define SY_TYPE_BAD_CELLS (sy_bad_cells_get_type ())
G_DECLARE_FINAL_TYPE (SyBadCells, sy_bad_cells, SY, BAD_CELLS, GtkWidget)

GtkWidget *sy_bad_cells_new (void);
/* @cells: of SyBadCell; copied. */
void sy_bad_cells_set (SyBadCells *cells, const GPtrArray *bad);

#endif
