/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_CHOOSER_H
#define SY_TASK_CHOOSER_H

#include <gtk/gtk.h>

#include "sy-task-list.h"

/*
 * A window over another in which an item of the record is chosen: search, arrow keys, Return.
 * Signal: "chosen" (string: id), once; the window goes by itself.
 */
#define SY_TYPE_TASK_CHOOSER (sy_task_chooser_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskChooser, sy_task_chooser, SY, TASK_CHOOSER, GtkWindow)

/* @list: of all items of a store. @title, @choose: translated, what is asked and the words on the button, with a mnemonic.
   Present it with gtk_window_present(). */
GtkWidget *sy_task_chooser_new (GtkWindow *parent, SyTaskList *list, SyRegister which, SyUnits units, const char *title,
                                const char *choose);
/* The rows as shown: a GListModel of SyTaskRow. */
GListModel *sy_task_chooser_get_rows (SyTaskChooser *self);
void sy_task_chooser_set_search (SyTaskChooser *self, const char *search);
/* Chooses the row; nothing while what is searched for has not been found yet: it is then chosen if it is the only one. */
void sy_task_chooser_choose (SyTaskChooser *self, guint row);

#endif
