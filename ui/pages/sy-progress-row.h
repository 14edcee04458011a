/* SPDX-License-Identifier: MIT */
#ifndef SY_PROGRESS_ROW_H
#define SY_PROGRESS_ROW_H

#include <gtk/gtk.h>

/* How far something is, and Stop: seen only while it lasts, and only when it lasts long enough to be told.
   What is stopped changes nothing. */
#define SY_TYPE_PROGRESS_ROW (sy_progress_row_get_type ())
G_DECLARE_FINAL_TYPE (SyProgressRow, sy_progress_row, SY, PROGRESS_ROW, GtkBox)

GtkWidget *sy_progress_row_new (void);
/* @name: what is going on, "Verifying the journal". A new cancellable, which Stop cancels; new reference. */
GCancellable *sy_progress_row_begin (SyProgressRow *row, const char *name);
/* SyWorkerProgress. */
void sy_progress_row_step (guint64 done, guint64 of, gpointer row);
void sy_progress_row_end (SyProgressRow *row);
gboolean sy_progress_row_is_busy (SyProgressRow *row);
/* As the button does. */
void sy_progress_row_stop (SyProgressRow *row);

#endif
