/* SPDX-License-Identifier: MIT */
#ifndef SY_TASKS_NARROW_H
#define SY_TASKS_NARROW_H

#include "sy-key-choice.h"
#include "sy-registers.h"

/* What a page of items is narrowed to beside words and due dates: a verdict, a machine or a kind of gear. */

/* The choice, a SyKeyChoice without keys. New. */
GtkWidget *sy_tasks_narrow_new (const SyRegisterPage *page);
/* What can be chosen: ids; machines are those that the rows of @list name. New. */
char **sy_tasks_narrow_keys (SyNarrow narrow, GListModel *list, const char *item_kind);
/* Narrows @choice to that key and nothing else of the kind; NULL: to none. */
void sy_tasks_narrow_choose (SyNarrow narrow, const char *key, SyTaskChoice *choice);

#endif
