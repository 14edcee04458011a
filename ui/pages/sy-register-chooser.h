/* SPDX-License-Identifier: MIT */
#ifndef SY_REGISTER_CHOOSER_H
#define SY_REGISTER_CHOOSER_H

#include <gtk/gtk.h>

#include "sy-form.h"
#include "sy-task-list.h"

/*
 * A window over another that takes a die or an item of gear of the register into a lift plan: search, choose, and for gear
 * the place in the plan. What was chosen is one step of undo in the form.
 */
#define SY_TYPE_REGISTER_CHOOSER (sy_register_chooser_get_type ())
G_DECLARE_FINAL_TYPE (SyRegisterChooser, sy_register_chooser, SY, REGISTER_CHOOSER, GtkWindow)

/* @list: of all items of the worker's store. @which: SY_REGISTER_DIES or SY_REGISTER_GEAR. Present it with
   gtk_window_present(); it goes by itself. */
GtkWidget *sy_register_chooser_new (GtkWindow *parent, SyWorker *worker, SyTaskList *list, SyRegister which, SyForm *plan);

/* The rows as shown: a GListModel of SyTaskRow. */
GListModel *sy_register_chooser_get_rows (SyRegisterChooser *self);
void sy_register_chooser_set_search (SyRegisterChooser *self, const char *search);
/* Takes the row into the plan; what fails is said in the window. */
void sy_register_chooser_take (SyRegisterChooser *self, guint row);

#endif
