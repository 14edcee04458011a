/* SPDX-License-Identifier: MIT */
#ifndef SY_ACTIONS_COLUMNS_H
#define SY_ACTIONS_COLUMNS_H

#include <gtk/gtk.h>

/* The columns of a view of SyDueRow: when it is due in words, with a mark that grows heavier, the day, what, item, who. */
void sy_actions_columns_add (GtkColumnView *view);

#endif
