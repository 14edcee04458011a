/* SPDX-License-Identifier: MIT */
#ifndef SY_JOURNAL_COLUMNS_H
#define SY_JOURNAL_COLUMNS_H

#include <gtk/gtk.h>

/* The columns of a view of SyJournalLine: number, when, who, what kind, what, why, item. A line that is still being read
   shows its number, and the rest when it is there. */
void sy_journal_columns_add (GtkColumnView *view);

#endif
