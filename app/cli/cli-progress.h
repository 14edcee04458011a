/* SPDX-License-Identifier: MIT */
#ifndef CLI_PROGRESS_H
#define CLI_PROGRESS_H

#include <glib.h>

/* How far it is, on standard error, where that is a terminal and the work takes longer than half a second. */
typedef struct
{
  const char *what;   /* translated: "Taking over" */
  gint64 begun, said; /* monotonic; 0: not yet     */
} CliProgress;

/* An SyProgressFunc whose user data is a CliProgress. */
gboolean cli_progress (guint64 done, guint64 of, gpointer progress);
/* Takes it away again. */
void cli_progress_end (const CliProgress *progress);

#endif
