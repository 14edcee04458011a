/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENTS_COLUMNS_H
#define SY_IMPROVEMENTS_COLUMNS_H

#include <gtk/gtk.h>

#include "sy-improvement.h"

/* The columns of a view of SyImprovementRow: since when, what, from where to where, who thought of it, what it bought. Of that,
   only what is known of any improvement has a column: @total is of all that are in the log. */
void sy_improvements_columns_show (GtkColumnView *view, const SyQuarter *total);

#endif
