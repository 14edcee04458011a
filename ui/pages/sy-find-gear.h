/* SPDX-License-Identifier: MIT */
#ifndef SY_FIND_GEAR_H
#define SY_FIND_GEAR_H

#include <gtk/gtk.h>

#include "sy-form.h"
#include "sy-worker.h"

/*
 * Gear of the register for the lift plan in a form: for each place what carries it, in date, largest margin first, and
 * why the rest does not; one press puts it into the plan. Looks again when the plan or the register changes, while it
 * can be seen.
 */
#define SY_TYPE_FIND_GEAR (sy_find_gear_get_type ())
G_DECLARE_FINAL_TYPE (SyFindGear, sy_find_gear, SY, FIND_GEAR, GtkBox)

GtkWidget *sy_find_gear_new (SyWorker *worker, SyForm *form);

#endif
