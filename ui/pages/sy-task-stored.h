/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_STORED_H
#define SY_TASK_STORED_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/* A revision as it was stored: nothing is recalculated. @before: the revision that it was made from, NULL for none. */
GtkWidget *sy_task_stored_new (SyDesk *desk, const SyRevision *revision, const SyRevision *before);

#endif
