/* SPDX-License-Identifier: MIT */
#ifndef SY_PART_TAKER_H
#define SY_PART_TAKER_H

#include <gtk/gtk.h>

#include "sy-form.h"
#include "sy-task-list.h"
#include "sy-worker.h"

/* Facts of an item of the record, taken as they were last recorded into the facts inside others: how a step of a die change
   moves its load, how it is done now in a case. */

/* Pages in this window can ask. @list: of all items of the worker's store. */
void sy_part_taker_offer (GtkWindow *window, SyWorker *worker, SyTaskList *list);
/* Asks which item of a kind ("task", "changeover"), in a window over that of @from, and puts its facts at the path; then
   "task.open-part" is activated on @from. Does nothing where nothing is offered. */
void sy_part_taker_ask (GtkWidget *from, SyForm *form, const char *path, const char *kind);

#endif
