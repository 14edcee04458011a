/* SPDX-License-Identifier: MIT */
#ifndef SY_LIST_ROWS_H
#define SY_LIST_ROWS_H

#include "sy-fact.h"

/* The items of a list in a form, a row each, that can be added and taken away. */
#define SY_TYPE_LIST_ROWS (sy_list_rows_get_type ())
G_DECLARE_FINAL_TYPE (SyListRows, sy_list_rows, SY, LIST_ROWS, GtkBox)

GtkWidget *sy_list_rows_new (SyForm *form, const char *path);

#endif
