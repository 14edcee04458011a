/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_NAMED_H
#define SY_TASK_NAMED_H

#include <gtk/gtk.h>

#include "sy-form.h"

/* Quantities of what the facts name ("share.A.mass", "term.2.delta") as tables: one a kind of thing (share, term), a row a
   thing, a column a quantity; under it what the columns are, and every formula on demand. */
void sy_task_named_add (GtkWidget *box, SyForm *form, const SyFindings *findings);

#endif
