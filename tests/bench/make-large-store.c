/* SPDX-License-Identifier: MIT */
#include <stdlib.h>

#include "bench-lifts.h"
#include "bench-store.h"

/* make-large-store FILE TASKS REVISIONS: a record as a large shop would have after years. */
int
main (int argc, char **argv)
{
  double start = bench_seconds ();
  guint n_tasks = argc == 4 ? (guint) strtoul (argv[2], NULL, 10) : 0;
  guint n_revisions = argc == 4 ? (guint) strtoul (argv[3], NULL, 10) : 0;

  if (n_tasks == 0 || n_revisions < n_tasks)
    {
      g_printerr ("usage: make-large-store FILE TASKS REVISIONS\n");
      return 2;
    }
  bench_fill_store (argv[1], n_tasks, n_revisions);
  g_print ("%u tasks, %u revisions in %.1f s\n", n_tasks, n_revisions, bench_seconds () - start);
  return EXIT_SUCCESS;
}
