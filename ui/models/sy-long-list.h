/* SPDX-License-Identifier: MIT */
#ifndef SY_LONG_LIST_H
#define SY_LONG_LIST_H

#include <gio/gio.h>

#include "sy-form.h"

/*
 * The items of a long list of a form as rows to look at: a list model that holds the list's JSON and where each item
 * begins, and reads an item when it is shown. Columns are the figures and words that any of the first items has, in the
 * order of the table of fields.
 */
#define SY_TYPE_LONG_LIST (sy_long_list_get_type ())
G_DECLARE_FINAL_TYPE (SyLongList, sy_long_list, SY, LONG_LIST, GObject)

/* A row; its place counts from 0. */
#define SY_TYPE_LONG_ROW (sy_long_row_get_type ())
G_DECLARE_FINAL_TYPE (SyLongRow, sy_long_row, SY, LONG_ROW, GObject)
guint sy_long_row_get_place (SyLongRow *row);

SyLongList *sy_long_list_new (const SyField *list);
/* @json NULL: no items. The same bytes again change nothing. Return value: whether the columns became others. */
gboolean sy_long_list_set (SyLongList *self, GBytes *json, SyUnits units);

guint sy_long_list_n_columns (SyLongList *self);
/* Translated, with the unit of bare numbers: "Origin H, cm". New string. */
char *sy_long_list_dup_title (SyLongList *self, guint column);
gboolean sy_long_list_is_figure (SyLongList *self, guint column);
/* What stands there as a person reads it; "" for nothing. New string. */
char *sy_long_list_dup_cell (SyLongList *self, guint place, guint column);

#endif
