/* SPDX-License-Identifier: MIT */
#ifndef SY_EXPORT_WINDOW_H
#define SY_EXPORT_WINDOW_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/* Handing the record over: all of it or one item as a bundle, or its findings as a table. */
#define SY_TYPE_EXPORT_WINDOW (sy_export_window_get_type ())
G_DECLARE_FINAL_TYPE (SyExportWindow, sy_export_window, SY, EXPORT_WINDOW, GtkWindow)

/* @item, @item_name: what is shown, may be handed over alone; NULL: nothing is. */
GtkWidget *sy_export_window_new (GtkWindow *parent, SyWorker *worker, const char *item, const char *item_name);
void sy_export_window_set_table (SyExportWindow *window, gboolean is_table);
/* What the button does once a place was chosen. */
void sy_export_window_write (SyExportWindow *window, GFile *file);
/* What came of it; "" while nothing did. */
const char *sy_export_window_get_words (SyExportWindow *window);

#endif
