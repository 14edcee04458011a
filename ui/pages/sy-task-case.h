/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_CASE_H
#define SY_TASK_CASE_H

#include <gtk/gtk.h>

#include "sy-form.h"

/* The tab of a case: how it is now and every option side by side, and what the winner depends on. */
GtkWidget *sy_task_case_new (SyForm *form);

#endif
