/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_STORED_H
#define SY_TASK_STORED_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/* What a timeline needs to know of a stored revision, read from its findings as they were stored. */
typedef struct
{
  SyVerdict verdict;
  gboolean has_verdict;
  char *index_symbol; /* "LI"; NULL for none */
  double index;       /* INFINITY unbounded, NAN none */
} SyStoredResult;
void sy_stored_result_read (const SyRevision *revision, SyStoredResult *out);
void sy_stored_result_clear (SyStoredResult *result);
/* "LI 2.13", "LI ∞"; "" for none. New string. */
char *sy_stored_index_text (const SyStoredResult *result);
/* A stored time (RFC 3339) as people here write it; as it stands when it cannot be read. New string. */
char *sy_stored_time_text (const char *stored);

/* A revision as it was stored: nothing is recalculated. @before: the revision that it was made from, NULL for none. */
GtkWidget *sy_task_stored_new (SyDesk *desk, const SyRevision *revision, const SyRevision *before);

#endif
