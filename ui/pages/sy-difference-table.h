/* SPDX-License-Identifier: MIT */
#ifndef SY_DIFFERENCE_TABLE_H
#define SY_DIFFERENCE_TABLE_H

#include <gtk/gtk.h>

#include "sy-difference.h"

/* Two revisions side by side: what of facts, result and basis differs, before and after, with units; in words where nothing
   does. */
GtkWidget *sy_difference_table_new (const SyEvent *before, const SyEvent *after);
/* The same for one revision judged anew: "As stored" and "Judged today". */
GtkWidget *sy_difference_table_new_judged (const SyEvent *stored, const SyEvent *judged);

#endif
