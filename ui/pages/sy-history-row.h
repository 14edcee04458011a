/* SPDX-License-Identifier: MIT */
#ifndef SY_HISTORY_ROW_H
#define SY_HISTORY_ROW_H

#include <gtk/gtk.h>

#include "sy-item-log.h"

/* One line about an item in words. A revision is a button, called "revision:N", that opens it; anything else is called "line:N"
   by its line of the journal. */
GtkWidget *sy_history_row_new (const SyItemLog *log, const SyRevision *line);

#endif
