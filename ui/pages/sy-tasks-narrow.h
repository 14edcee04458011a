/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_NARROW_H
#define SY_TASKS_NARROW_H

#include "sy-key-choice.h"
#include "sy-registers.h"

/* What a page of items is narrowed to, a SyKeyChoice each: a verdict, a machine, a kind of gear, a method, a place, what is due. */

/* Without the keys that are read from rows. Its widget's name: "narrow-machine". New. */
GtkWidget *sy_tasks_narrow_new (SyNarrow narrow);
/* What it is for in a word: "Machine". Static. */
const char *sy_tasks_narrow_title (SyNarrow narrow);
/* Whether its keys are what rows say. */
gboolean sy_tasks_narrow_is_read (SyNarrow narrow);
/* Reads them from the rows of @list, which are of several kinds. */
void sy_tasks_narrow_read (GtkWidget *choice, SyNarrow narrow, GListModel *list, const char *item_kind);
/* Narrows @choice to that key and nothing else of the kind; NULL: to none. */
void sy_tasks_narrow_choose (SyNarrow narrow, const char *key, SyTaskChoice *choice);

#endif
