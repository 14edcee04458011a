/* SPDX-License-Identifier: MIT */
#ifndef SY_ITEM_SEARCH_H
#define SY_ITEM_SEARCH_H

#include <gtk/gtk.h>

#include "sy-task-list.h"
#include "sy-task-order.h"
#include "sy-task-row.h"

/*
 * Items of a record to choose one of: a search, the list of what is found, and a line that says why nothing is. Return in the
 * search takes what is found if it is the only one, as soon as that is known; the arrow keys and Return take one of several;
 * Escape closes the window.
 * Signals: "selected" (another row, or none), "picked" (SyTaskRow: it is to be taken; may come again).
 */
#define SY_TYPE_ITEM_SEARCH (sy_item_search_get_type ())
G_DECLARE_FINAL_TYPE (SyItemSearch, sy_item_search, SY, ITEM_SEARCH, GtkBox)

/* What is said of an item under its name: these cells, those that say something, one after the other. @columns: static. */
typedef struct
{
  const SyTaskColumn *columns;
  gsize n;
} SyItemNote;

/* @list: of all items of a store. */
GtkWidget *sy_item_search_new (SyTaskList *list, SyRegister which, SyItemNote note, SyUnits units);
/* The rows as shown: a GListModel of SyTaskRow. Borrowed. */
GListModel *sy_item_search_get_rows (SyItemSearch *search);
SyTaskRow *sy_item_search_get_selected (SyItemSearch *search); /* borrowed; NULL: none */
void sy_item_search_find (SyItemSearch *search, const char *words);
/* Picks the row; while what is searched for has not been found yet it is picked then, if it is the only one. */
void sy_item_search_pick (SyItemSearch *search, guint row);
void sy_item_search_pick_selected (SyItemSearch *search);
/* Under the list; "": nothing. */
void sy_item_search_say (SyItemSearch *search, const char *words);

/* In a window of its own: the search, and below it a line of buttons, @first (may be NULL) before Cancel and the one that takes,
   which is returned. @words: translated, with a mnemonic. */
GtkWidget *sy_item_search_fill (SyItemSearch *search, GtkWindow *window, GtkWidget *first, const char *words, const char *name);

#endif
