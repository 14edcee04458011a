/* SPDX-License-Identifier: MIT */
#ifndef SY_ITEM_FILES_H
#define SY_ITEM_FILES_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/*
 * The files that belong to an item: a certificate, a drawing, a picture. They are in the record, whole; more can be added,
 * with who and why, and any can be saved as a copy. Where an item is not saved yet, it says so.
 */
#define SY_TYPE_ITEM_FILES (sy_item_files_get_type ())
G_DECLARE_FINAL_TYPE (SyItemFiles, sy_item_files, SY, ITEM_FILES, GtkBox)

GtkWidget *sy_item_files_new (SyWorker *worker);
/* NULL: not saved yet. */
void sy_item_files_set_item (SyItemFiles *self, const char *id);
/* What the buttons do once a file was chosen. */
void sy_item_files_offer (SyItemFiles *self, GFile *file);
void sy_item_files_save_copy (SyItemFiles *self, const char *name, guint64 line, GFile *to);

#endif
