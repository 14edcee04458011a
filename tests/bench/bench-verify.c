/* SPDX-License-Identifier: MIT */
#include <glib/gstdio.h>
#include <openssl/evp.h>
#include <sqlite3.h>
#include <stdlib.h>

#include "bench-lifts.h"
#include "bench-store.h"

/* A record verified against what cannot be done without: reading the same rows, and libcrypto's SHA-256 over the same
   bytes, of every event and of every link of the chain. */

#define N_TASKS 33000
#define N_LINES 100000
#define N_RUNS 5
#define LINK_BYTES (24 + 32 + 8 + 32)

static double
verify_once (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = sy_store_open (path, &error);
  SyVerification found;
  double start = bench_cpu_seconds ();

  if (!sy_store_verify (store, NULL, NULL, NULL, &found, &error))
    g_error ("%s", error->message);
  start = bench_cpu_seconds () - start;
  if (found.fault != SY_FAULT_NONE || found.lines != N_LINES + 1)
    g_error ("line %" G_GUINT64_FORMAT ": %s", found.line, found.found);
  sy_verification_clear (&found);
  return start;
}

static double
bare_once (const char *path, guint64 *bytes, guint64 *sum)
{
  EVP_MD_CTX *context = EVP_MD_CTX_new ();
  const EVP_MD *sha256 = EVP_sha256 ();
  guint8 link[LINK_BYTES] = { 0 }, digest[32];
  sqlite3_stmt *rows;
  sqlite3 *db;
  double start;

  sqlite3_open_v2 (path, &db, SQLITE_OPEN_READWRITE, NULL);
  sqlite3_prepare_v2 (db, "SELECT number, hash, kind, item, event FROM journal ORDER BY number", -1, &rows, NULL);
  start = bench_cpu_seconds ();
  *bytes = 0;
  while (sqlite3_step (rows) == SQLITE_ROW)
    {
      gsize size = (gsize) sqlite3_column_bytes (rows, 4);

      *bytes += size;
      *sum += (guint64) sqlite3_column_int64 (rows, 0) + (guint64) sqlite3_column_int64 (rows, 2)
              + ((const guint8 *) sqlite3_column_blob (rows, 1))[0] + sqlite3_column_text (rows, 3)[0];
      EVP_DigestInit_ex (context, sha256, NULL);
      EVP_DigestUpdate (context, sqlite3_column_blob (rows, 4), size);
      EVP_DigestFinal_ex (context, digest, NULL);
      EVP_DigestInit_ex (context, sha256, NULL);
      EVP_DigestUpdate (context, link, sizeof link);
      EVP_DigestFinal_ex (context, digest, NULL);
      *sum += digest[0];
    }
  start = bench_cpu_seconds () - start;
  sqlite3_finalize (rows);
  sqlite3_close (db);
  EVP_MD_CTX_free (context);
  return start;
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("steelyard-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "bench.steelyard", NULL);
  double ours = G_MAXDOUBLE, bare = G_MAXDOUBLE;
  guint64 bytes = 0, sum = 0;

  bench_fill_store (path, N_TASKS, N_LINES);
  for (int run = 0; run < N_RUNS; run++)
    {
      bench_keep_best (&bare, bare_once (path, &bytes, &sum));
      bench_keep_best (&ours, verify_once (path));
    }
  g_print ("verify: %d lines, %.0f MB of events, best of %d, CPU time (check %" G_GUINT64_FORMAT ")\n", N_LINES + 1,
           (double) bytes / 1e6, N_RUNS, sum);
  g_print ("  select and SHA-256 %8.1f ms  %6.0f MB/s\n", bare * 1e3, (double) bytes / bare / 1e6);
  g_print ("  verify             %8.1f ms  %6.0f MB/s\n", ours * 1e3, (double) bytes / ours / 1e6);
  g_print ("  ratio              %8.2f     (reach: at most 1.5)\n", ours / bare);
  g_unlink (path);
  g_rmdir (folder);
  return EXIT_SUCCESS;
}
