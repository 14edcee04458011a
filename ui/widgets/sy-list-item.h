/* SPDX-License-Identifier: MIT */
#ifndef SY_LIST_ITEM_H
#define SY_LIST_ITEM_H

#include "sy-fact.h"

/*
 * One item of a list in a form, a group under a heading ("Leg 1 · A"): its facts in up to three columns, the seldom ones
 * folded away while they are blank, the lists inside it indented under it. Signal "act" (guint, SyListItemAction): a
 * button of the heading was pressed; the list does what it asks for.
 */
#define SY_TYPE_LIST_ITEM (sy_list_item_get_type ())
G_DECLARE_FINAL_TYPE (SyListItem, sy_list_item, SY, LIST_ITEM, GtkBox)

typedef enum
{
  SY_LIST_ITEM_DUPLICATE,
  SY_LIST_ITEM_UP,
  SY_LIST_ITEM_DOWN,
  SY_LIST_ITEM_REMOVE,
} SyListItemAction;
#define SY_N_LIST_ITEM_ACTIONS 4

/* @list: path of the list. The widget stands for the place, not for what is in it: texts follow the form. */
GtkWidget *sy_list_item_new (SyForm *form, const char *list, guint item);
guint sy_list_item_get_item (SyListItem *self);
/* To be called when the number of items changed. */
void sy_list_item_set_count (SyListItem *self, guint n_items);
/* Puts the focus on a button, or where that cannot be pressed on another that can. */
void sy_list_item_focus (SyListItem *self, SyListItemAction action);
/* Opens the folds over a path below the item. Return value: whether one was opened. */
gboolean sy_list_item_reveal (SyListItem *self, const char *path);

#endif
