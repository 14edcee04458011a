/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_FINDINGS_H
#define SY_TASK_FINDINGS_H

#include <gtk/gtk.h>

#include "sy-form.h"

/* Every quantity with its formula, the numbers put in, and the clause that it comes from. */
GtkWidget *sy_task_findings_new (SyForm *form);
/* Reasons and cautions, whole, with their sources. */
GtkWidget *sy_task_reasons_new (SyForm *form);
/* What repeated measurements would give. */
GtkWidget *sy_task_spread_new (SyForm *form);

#endif
