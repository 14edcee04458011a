/* SPDX-License-Identifier: MIT */
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <stdlib.h>

#include "bench-lifts.h"
#include "bench-store.h"
#include "fault-vfs.h"

/* A save (the append of a prepared revision) against a bare SQLite transaction that writes the very same rows of every
   table: syncs counted at the file layer, CPU time. */

#define N_TASKS 2000
#define N_REVISIONS 6000
#define N_SAVES 300
#define N_RUNS 3

typedef struct
{
  guint syncs;
  double cpu;
} Cost;

/* The words to search go in by their virtual table, as everybody has to. */
static const struct
{
  const char *table, *select, *rowid;
} tables[] = {
  { "journal", "SELECT * FROM journal WHERE number = ?1", NULL },
  { "entry", "SELECT * FROM entry WHERE number = ?1", NULL },
  { "task", "SELECT * FROM task WHERE line = ?1", NULL },
  { "task_search", "SELECT rowid, words FROM task_search WHERE rowid = (SELECT seat FROM task WHERE line = ?1)", "rowid, words" },
};
#define N_TABLES G_N_ELEMENTS (tables)

static SyEvent *
make_save (SyDesk *desk, guint i)
{
  /* Every task once: from a third revision to a fourth or so. */
  return bench_revision (desk, i * 5 % N_TASKS, 50, i);
}

static Cost
save_ours (const char *path, SyDesk *desk)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = sy_store_open (path, &error);
  Cost cost = { 0 };
  SyHead head;

  if (store == NULL || !sy_store_head (store, &head, &error))
    g_error ("%s", error->message);
  for (guint i = 0; i < N_SAVES; i++)
    {
      g_autoptr (GPtrArray) one = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
      guint syncs = fault_vfs_count (FAULT_SYNC);
      double start;

      g_ptr_array_add (one, make_save (desk, i));
      start = bench_cpu_seconds ();
      if (!sy_store_append (store, &head, one, &head, &error))
        g_error ("%s", error->message);
      cost.cpu += bench_cpu_seconds () - start;
      cost.syncs += fault_vfs_count (FAULT_SYNC) - syncs;
    }
  return cost;
}

static sqlite3 *
open_bare (const char *path)
{
  sqlite3 *db;

  sqlite3_open_v2 (path, &db, SQLITE_OPEN_READWRITE, NULL);
  sqlite3_exec (db, "PRAGMA foreign_keys = ON; PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF", NULL, NULL, NULL);
  return db;
}

/* The rows that our save of line @line wrote, taken from a record that has them. */
static void
copy_values (sqlite3_stmt *from, sqlite3_stmt *to, int n_columns)
{
  for (int i = 0; i < n_columns; i++)
    sqlite3_bind_value (to, i + 1, sqlite3_column_value (from, i));
}

static sqlite3_stmt *
prepare_put (sqlite3 *db, gsize table, int n_columns)
{
  g_autoptr (GString) sql = g_string_new (NULL);
  sqlite3_stmt *put;

  g_string_printf (sql, "INSERT OR REPLACE INTO %s %s%s%s VALUES (", tables[table].table, tables[table].rowid ? "(" : "",
                   tables[table].rowid ? tables[table].rowid : "", tables[table].rowid ? ")" : "");
  for (int i = 0; i < n_columns; i++)
    g_string_append_printf (sql, "%s?%d", i > 0 ? ", " : "", i + 1);
  g_string_append_c (sql, ')');
  if (sqlite3_prepare_v2 (db, sql->str, -1, &put, NULL) != SQLITE_OK)
    g_error ("%s: %s", sql->str, sqlite3_errmsg (db));
  return put;
}

/* @source: the record after our saves; each task was saved once, so that its row there is that of the save. */
static Cost
save_bare (const char *path, const char *source, guint64 first)
{
  sqlite3 *db = open_bare (path), *from = open_bare (source);
  sqlite3_stmt *rows[N_TABLES], *put[N_TABLES], *begin, *commit;
  Cost cost = { 0 };

  for (gsize i = 0; i < N_TABLES; i++)
    {
      if (sqlite3_prepare_v2 (from, tables[i].select, -1, &rows[i], NULL) != SQLITE_OK)
        g_error ("%s", sqlite3_errmsg (from));
      put[i] = prepare_put (db, i, sqlite3_column_count (rows[i]));
    }
  sqlite3_prepare_v2 (db, "BEGIN IMMEDIATE", -1, &begin, NULL);
  sqlite3_prepare_v2 (db, "COMMIT", -1, &commit, NULL);
  for (guint i = 0; i < N_SAVES; i++)
    {
      guint syncs;
      double start;

      for (gsize table = 0; table < N_TABLES; table++)
        {
          sqlite3_bind_int64 (rows[table], 1, (gint64) (first + i));
          if (sqlite3_step (rows[table]) != SQLITE_ROW)
            g_error ("%s: no row of line %" G_GUINT64_FORMAT, tables[table].table, first + i);
          copy_values (rows[table], put[table], sqlite3_column_count (rows[table]));
        }
      syncs = fault_vfs_count (FAULT_SYNC);
      start = bench_cpu_seconds ();
      sqlite3_step (begin);
      sqlite3_reset (begin);
      for (gsize table = 0; table < N_TABLES; table++)
        {
          if (sqlite3_step (put[table]) != SQLITE_DONE)
            g_error ("%s: %s", tables[table].table, sqlite3_errmsg (db));
          sqlite3_reset (put[table]);
        }
      if (sqlite3_step (commit) != SQLITE_DONE)
        g_error ("%s", sqlite3_errmsg (db));
      sqlite3_reset (commit);
      cost.cpu += bench_cpu_seconds () - start;
      cost.syncs += fault_vfs_count (FAULT_SYNC) - syncs;
      for (gsize table = 0; table < N_TABLES; table++)
        sqlite3_reset (rows[table]);
    }
  for (gsize i = 0; i < N_TABLES; i++)
    {
      sqlite3_finalize (rows[i]);
      sqlite3_finalize (put[i]);
    }
  sqlite3_finalize (begin);
  sqlite3_finalize (commit);
  sqlite3_close (from);
  sqlite3_close (db);
  return cost;
}

static void
copy_file (const char *from, const char *to)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *data = NULL;
  gsize size;

  if (!g_file_get_contents (from, &data, &size, &error) || !g_file_set_contents (to, data, (gssize) size, &error))
    g_error ("%s", error->message);
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("steelyard-bench-XXXXXX", NULL);
  g_autofree char *base = g_build_filename (folder, "base.steelyard", NULL);
  g_autofree char *ours_path = g_build_filename (folder, "ours.steelyard", NULL);
  g_autofree char *bare_path = g_build_filename (folder, "bare.steelyard", NULL);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  Cost ours = { .cpu = G_MAXDOUBLE }, bare = { .cpu = G_MAXDOUBLE };

  fault_vfs_install ();
  bench_fill_store (base, N_TASKS, N_REVISIONS);
  for (int i = 0; i < N_RUNS; i++)
    {
      Cost cost;

      copy_file (base, ours_path);
      cost = save_ours (ours_path, desk);
      if (cost.cpu < ours.cpu)
        ours = cost;
      copy_file (base, bare_path);
      cost = save_bare (bare_path, ours_path, N_REVISIONS + 2);
      if (cost.cpu < bare.cpu)
        bare = cost;
    }
  g_print ("save: %d revisions, one transaction each, in a record of %d tasks, best of %d, CPU time\n", N_SAVES, N_TASKS,
           N_RUNS);
  g_print ("  bare transaction %8.3f ms  %5.2f syncs\n", bare.cpu / N_SAVES * 1e3, (double) bare.syncs / N_SAVES);
  g_print ("  append           %8.3f ms  %5.2f syncs\n", ours.cpu / N_SAVES * 1e3, (double) ours.syncs / N_SAVES);
  g_print ("  ratio            %8.2f     (reach: at most 2, syncs equal)\n", ours.cpu / bare.cpu);
  g_unlink (base);
  g_unlink (ours_path);
  g_unlink (bare_path);
  g_rmdir (folder);
  return EXIT_SUCCESS;
}
