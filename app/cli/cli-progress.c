/* SPDX-License-Identifier: MIT */
#include "cli-progress.h"

#include <stdio.h>
#include <unistd.h>

/* What is done sooner says nothing, and a line is not written anew more often than this (our choice). */
#define QUIET_US (G_USEC_PER_SEC / 2)
#define BETWEEN_US (G_USEC_PER_SEC / 10)

gboolean
cli_progress (guint64 done, guint64 of, gpointer data)
{
  CliProgress *progress = data;
  gint64 now = g_get_monotonic_time ();

  if (progress->begun == 0)
    progress->begun = now;
  if (now - progress->begun < QUIET_US || now - progress->said < BETWEEN_US || !isatty (STDERR_FILENO))
    return TRUE;
  progress->said = now;
  fprintf (stderr, "\r%s … %.0f %%", progress->what, of > 0 ? 100.0 * (double) done / (double) of : 100.0);
  fflush (stderr);
  return TRUE;
}

void
cli_progress_end (const CliProgress *progress)
{
  if (progress->said != 0)
    fprintf (stderr, "\r\033[K");
}
