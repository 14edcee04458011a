/* SPDX-License-Identifier: MIT */
#ifndef SY_LOAD_PATH_H
#define SY_LOAD_PATH_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * The way of the load of a rigged lift, whole: everything that carries as bars, the legs in a table, and of each thing
 * what was taken off its marking. Signal "fact" (string path): a bar was pressed.
 */
#define SY_TYPE_LOAD_PATH (sy_load_path_get_type ())
G_DECLARE_FINAL_TYPE (SyLoadPath, sy_load_path, SY, LOAD_PATH, GtkBox)

GtkWidget *sy_load_path_new (SyForm *form);

#endif
