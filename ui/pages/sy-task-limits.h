/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_LIMITS_H
#define SY_TASK_LIMITS_H

#include <gtk/gtk.h>

#include "sy-form.h"

/* The published limits of a method beside each other: what is held against what, how far that goes, which governs, the
   edition, and whether anybody has held the figure against the publication. One list for assistive technology. */
GtkWidget *sy_task_limits_new (SyForm *form);

/* One limit in a sentence, as its row is called. New string. */
char *sy_task_limits_dup_words (const SyFindings *findings, const SyLimitShown *shown);

#endif
