/* SPDX-License-Identifier: MIT */
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <stdlib.h>

#include "bench-lifts.h"
#include "bench-store.h"

/* bench-search [STORE]: words searched among 100,000 tasks with 300,000 revisions, against the bare FTS5 query for the
   same words in the same file. */

#define N_TASKS 100000
#define N_REVISIONS 300000
#define N_RUNS 15

/* What is typed, letter by letter too, and what FTS5 is asked for it. */
static const struct
{
  const char *typed, *match;
} queries[] = {
  { "bl", "\"bl\"*" },
  { "coil", "\"coil\"*" },
  { "blank 0123", "\"blank\"* AND \"0123\"*" },
  { "tannick press", "\"tannick\"* AND \"press\"*" },
  { "054321", "\"054321\"*" },
  { "furnace hollin bra", "\"furnace\"* AND \"hollin\"* AND \"bra\"*" },
};

static double
ours_once (SyStore *store, const char *typed, guint *found)
{
  double start = bench_seconds ();
  g_autoptr (GArray) seats = sy_store_search (store, typed, NULL);

  start = bench_seconds () - start;
  *found = seats->len;
  return start;
}

static double
bare_once (sqlite3_stmt *statement, const char *match, guint *found)
{
  double start = bench_seconds ();
  gint64 sum = 0;

  *found = 0;
  sqlite3_bind_text (statement, 1, match, -1, SQLITE_STATIC);
  while (sqlite3_step (statement) == SQLITE_ROW)
    {
      sum += sqlite3_column_int64 (statement, 0);
      (*found)++;
    }
  sqlite3_reset (statement);
  start = bench_seconds () - start;
  return sum >= 0 ? start : 0;
}

int
main (int argc, char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("steelyard-bench-XXXXXX", NULL);
  g_autofree char *path = argc > 1 ? g_strdup (argv[1]) : g_build_filename (folder, "bench.steelyard", NULL);
  double worst = 0, all_ours = 0, all_bare = 0;
  sqlite3_stmt *statement;
  sqlite3 *db;

  if (argc == 1)
    bench_fill_store (path, N_TASKS, N_REVISIONS);
  {
    g_autoptr (GError) error = NULL;
    g_autoptr (SyStore) store = sy_store_open (path, &error);

    if (store == NULL)
      g_error ("%s", error->message);
    sqlite3_open_v2 (path, &db, SQLITE_OPEN_READWRITE, NULL);
    sqlite3_prepare_v2 (db, "SELECT rowid FROM task_search WHERE task_search MATCH ?1", -1, &statement, NULL);
    g_print ("search: %d tasks, %d revisions, best of %d\n", N_TASKS, N_REVISIONS, N_RUNS);
    for (gsize i = 0; i < G_N_ELEMENTS (queries); i++)
      {
        double ours = G_MAXDOUBLE, bare = G_MAXDOUBLE;
        guint found, expected;

        for (int run = 0; run < N_RUNS; run++)
          {
            bench_keep_best (&bare, bare_once (statement, queries[i].match, &expected));
            bench_keep_best (&ours, ours_once (store, queries[i].typed, &found));
          }
        if (found != expected)
          g_error ("“%s”: %u found, %u by FTS5", queries[i].typed, found, expected);
        g_print ("  %-20s %6u found  FTS5 %7.2f ms  ours %7.2f ms  ratio %5.2f\n", queries[i].typed, found, bare * 1e3,
                 ours * 1e3, ours / bare);
        worst = MAX (worst, ours / bare);
        all_ours += ours;
        all_bare += bare;
      }
    g_print ("  ratio %.2f, worst %.2f    (reach: at most 3)\n", all_ours / all_bare, worst);
    sqlite3_finalize (statement);
    sqlite3_close (db);
  }
  if (argc == 1)
    g_unlink (path);
  g_rmdir (folder);
  return EXIT_SUCCESS;
}
