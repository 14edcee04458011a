/* SPDX-License-Identifier: MIT */
#ifndef FAULTS_HELP_H
#define FAULTS_HELP_H

#include "sy-test.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include "sy-ledger-deeds.h"

/* What the tests of faults share: folders, facts of the demo workshop, what a record holds, seen past the store. */

typedef struct
{
  char *folder, *path;
  SyDesk *desk;
} Fixture;

/* In memory where that can be had: a kill leaves there what it leaves on a disk, and thousands of records are made. */
static inline char *
faults_new_folder (void)
{
  char *folder = g_strdup ("/dev/shm/steelyard-faults-XXXXXX");

  if (g_mkdtemp (folder) != NULL)
    return folder;
  g_free (folder);
  folder = g_dir_make_tmp ("steelyard-faults-XXXXXX", NULL);
  assert_non_null (folder);
  return folder;
}

static inline int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);

  fixture->folder = faults_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "record.steelyard", NULL);
  fixture->desk = sy_desk_new (NULL, 0, NULL);
  *state = fixture;
  return 0;
}

static inline void
faults_empty_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (remove (path) != 0)
        fail_msg ("%s cannot be removed", path);
    }
}

static inline int
tear_down (void **state)
{
  Fixture *fixture = *state;

  faults_empty_folder (fixture->folder);
  remove (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->path);
  sy_desk_unref (fixture->desk);
  g_free (fixture);
  return 0;
}

#define WITH_FOLDER(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

static inline GBytes *
faults_read (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *data;
  gsize size;

  if (!g_file_get_contents (path, &data, &size, &error))
    fail_msg ("%s", error->message);
  return g_bytes_new_take (data, size);
}

/* A closed record is one file; what lies beside it is of another one. */
static inline void
faults_put (const char *path, GBytes *bytes)
{
  static const char *const beside[] = { "-wal", "-shm", "-journal" };
  gsize size;
  gconstpointer data = g_bytes_get_data (bytes, &size);
  int file = g_open (path, O_WRONLY | O_CREAT | O_TRUNC, 0600);

  assert_true (file >= 0);
  assert_int_equal (write (file, data, size), (gssize) size);
  assert_int_equal (close (file), 0);
  for (gsize i = 0; i < G_N_ELEMENTS (beside); i++)
    {
      g_autofree char *other = g_strconcat (path, beside[i], NULL);

      g_unlink (other);
    }
}

static inline int
faults_count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  int count = 0;

  while (g_dir_read_name (dir) != NULL)
    count++;
  return count;
}

static inline char *
faults_source (const char *name)
{
  return g_build_filename (g_getenv ("SY_SOURCE_DIR"), name, NULL);
}

/* Facts of the demo workshop, one document after the other. */
static inline char *
faults_facts (guint which)
{
  static const char *const names[] = {
    "blank-to-shear-2.1", "blank-to-shear-2.2", "blanks-to-press-4.1", "coil-end-to-scrap-trolley.1",
    "cover-sheet-over-coil-cradle.1", "small-blanks-to-press-1.1",
  };
  g_autofree char *name = g_strdup_printf ("data/demo/%s.json", names[which % G_N_ELEMENTS (names)]);
  g_autofree char *path = faults_source (name);
  char *text;

  assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

/* RFC 3339, another one for another number. */
static inline char *
faults_time (guint n)
{
  return g_strdup_printf ("2026-%02u-%02uT%02u:%02u:%02uZ", n / 86400 % 336 / 28 + 1, n / 86400 % 28 + 1, n / 3600 % 24,
                          n / 60 % 60, n % 60);
}

/* One revision as a door records it, with the @n-th facts and time. */
static inline gboolean
faults_record (SyLedger *ledger, SyDesk *desk, const char *task, guint n, gint64 base, SyHead *head, GError **error)
{
  g_autofree char *facts = faults_facts (n), *now = faults_time (n);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyRecordRequest request = { .task = task, .by = n % 3 == 0 ? "Ivo Tannick" : "Dessa Hollin", .role = "foreman",
                                    .why = "Measured anew", .base = base, .now = now };
  SyRecordResult result = { NULL };

  if (!sy_ledger_record (ledger, desk, &request, facts, strlen (facts), problems, &result, error))
    return FALSE;
  if (head != NULL)
    *head = result.head;
  sy_record_result_clear (&result);
  return TRUE;
}

static inline SyLedger *
faults_open (const char *path)
{
  g_autoptr (GError) error = NULL;
  SyLedger *ledger = sy_ledger_open (path, &error);

  if (ledger == NULL)
    fail_msg ("%s", error->message);
  return ledger;
}

/* A closed record with the policy and a few revisions of two tasks, and its bytes. */
static inline GBytes *
faults_make (const char *path, SyDesk *desk, guint n_revisions)
{
  g_autoptr (SyLedger) ledger = faults_open (path);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < n_revisions; i++)
    if (!faults_record (ledger, desk, i % 2 == 0 ? "Blank to shear 2" : "Blanks to press 4", i, -1, NULL, &error))
      fail_msg ("%s", error->message);
  sy_ledger_close (g_steal_pointer (&ledger));
  return faults_read (path);
}

/* A connection past the store and past any file layer of ours. */
static inline sqlite3 *
faults_open_bare (const char *path)
{
  sqlite3 *db;

  assert_int_equal (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READWRITE, "unix"), SQLITE_OK);
  return db;
}

static inline void
faults_add_rows (sqlite3 *db, const char *sql, GChecksum *sum)
{
  sqlite3_stmt *rows;
  int status;

  if (sqlite3_prepare_v2 (db, sql, -1, &rows, NULL) != SQLITE_OK)
    fail_msg ("%s: %s", sql, sqlite3_errmsg (db));
  while ((status = sqlite3_step (rows)) == SQLITE_ROW)
    for (int i = 0; i < sqlite3_column_count (rows); i++)
      {
        g_autofree char *head = g_strdup_printf ("|%d %d|", sqlite3_column_type (rows, i), sqlite3_column_bytes (rows, i));
        const guchar *data = sqlite3_column_blob (rows, i);

        g_checksum_update (sum, (const guchar *) head, -1);
        if (data != NULL)
          g_checksum_update (sum, data, sqlite3_column_bytes (rows, i));
      }
  if (status != SQLITE_DONE)
    fail_msg ("%s: %s", sql, sqlite3_errmsg (db));
  sqlite3_finalize (rows);
}

/* Everything that a record holds, in one word: format, rows of every table, words to search. A file without tables is
   "empty", none is "absent". New string. */
static inline char *
faults_digest (const char *path)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  g_autoptr (GPtrArray) each = g_ptr_array_new_with_free_func (g_free);
  sqlite3_stmt *tables;
  sqlite3 *db;
  int status;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return g_strdup ("absent");
  db = faults_open_bare (path);
  assert_int_equal (
    sqlite3_prepare_v2 (db,
                        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'"
                        " AND name NOT LIKE 'task\\_search\\_%' ESCAPE '\\' ORDER BY name",
                        -1, &tables, NULL),
    SQLITE_OK);
  while ((status = sqlite3_step (tables)) == SQLITE_ROW)
    g_ptr_array_add (each, g_strdup_printf ("SELECT rowid, * FROM \"%s\" ORDER BY rowid", sqlite3_column_text (tables, 0)));
  if (status != SQLITE_DONE)
    fail_msg ("%s: %s", path, sqlite3_errmsg (db));
  sqlite3_finalize (tables);
  faults_add_rows (db, "PRAGMA user_version", sum);
  for (guint i = 0; i < each->len; i++)
    faults_add_rows (db, each->pdata[i], sum);
  assert_int_equal (sqlite3_close (db), SQLITE_OK);
  return g_strdup (each->len == 0 ? "empty" : g_checksum_get_string (sum));
}

/* The chain holds, and a head that is known stands in it. */
static inline void
faults_assert_holds (SyLedger *ledger, const SyHash *known, const char *label)
{
  g_autoptr (GError) error = NULL;
  SyVerification verification = { 0 };

  if (!sy_ledger_verify (ledger, known, NULL, NULL, &verification, &error))
    fail_msg ("%s: %s", label, error->message);
  if (verification.fault != SY_FAULT_NONE)
    fail_msg ("%s: %s at line %" G_GUINT64_FORMAT ": expected %s, found %s", label, sy_fault_id (verification.fault),
              verification.line, verification.expected, verification.found);
  sy_verification_clear (&verification);
}

/* And the lists are what the journal says. */
static inline void
faults_assert_sound (SyLedger *ledger, const SyHash *known, const char *label)
{
  g_autoptr (GError) error = NULL;
  SyRebuild rebuild = { 0 };

  faults_assert_holds (ledger, known, label);
  if (!sy_ledger_rebuild (ledger, NULL, NULL, &rebuild, &error))
    fail_msg ("%s: %s", label, error->message);
  if (rebuild.n_different != 0)
    fail_msg ("%s: %s", label, (char *) rebuild.differences->pdata[0]);
  sy_rebuild_clear (&rebuild);
}

/* An error that a person can read: whose trouble it is, no codes and no placeholders. */
static inline void
faults_assert_words (const GError *error, const char *path, const char *label)
{
  static const char *const never[] = { "SQLITE_", "(null)", "not an error", "unknown error", "rc=", "errno" };
  g_autofree char *name = g_path_get_basename (path);

  if (error == NULL)
    fail_msg ("%s: no error", label);
  if (strstr (error->message, name) == NULL || strlen (error->message) < 30 || !g_str_has_suffix (error->message, "."))
    fail_msg ("%s: “%s” does not say what is the matter with %s", label, error->message, name);
  for (gsize i = 0; i < G_N_ELEMENTS (never); i++)
    if (strstr (error->message, never[i]) != NULL)
      fail_msg ("%s: “%s” is not for a person", label, error->message);
}

#endif
