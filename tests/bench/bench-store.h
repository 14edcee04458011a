/* SPDX-License-Identifier: MIT */
#ifndef BENCH_STORE_H
#define BENCH_STORE_H

#include "sy-desk.h"
#include "sy-store.h"

/* Large records of an invented shop. */

/* One revision as a door would record it, of lift @which of a few hundred; new. */
SyEvent *bench_revision (SyDesk *desk, guint task, gint64 revision, guint which);

/* Fills a record: @n_tasks tasks with @n_revisions revisions between them, every task with at least one; many in one
   append. Prints nothing. The file must not be there. */
void bench_fill_store (const char *path, guint n_tasks, guint n_revisions);

/* CPU seconds of this process. */
double bench_cpu_seconds (void);

#endif
