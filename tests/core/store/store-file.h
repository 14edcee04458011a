/* SPDX-License-Identifier: MIT */
#ifndef STORE_FILE_H
#define STORE_FILE_H

#include "store-help.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

/* A folder with a record in it, for the tests of what happens to files. */

typedef struct
{
  char *folder, *path;
} Fixture;

static inline int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);

  fixture->folder = help_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "record.steelyard", NULL);
  *state = fixture;
  return 0;
}

static inline int
tear_down (void **state)
{
  Fixture *fixture = *state;

  help_remove_folder (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->path);
  g_free (fixture);
  return 0;
}

static inline const char *
path_of (void **state)
{
  return ((Fixture *) *state)->path;
}

static inline const char *
folder_of (void **state)
{
  return ((Fixture *) *state)->folder;
}

static inline SyStore *
open_store (const char *path)
{
  g_autoptr (GError) error = NULL;
  SyStore *store = sy_store_open (path, &error);

  if (store == NULL)
    fail_msg ("%s", error->message);
  return store;
}

/* A record with one policy and two tasks, closed. */
static inline void
make_record (const char *path)
{
  g_autoptr (SyStore) store = open_store (path);

  help_append (store, help_policy ("{\"goal\":1}"),
               help_revision ("a", 1, "Coil", "mechanical", "", "9"),
               help_revision ("b", 1, "Blank", "by-hand", "0.5", "null"), NULL);
}

static inline int
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  int count = 0;

  while (g_dir_read_name (dir) != NULL)
    count++;
  return count;
}

static inline GBytes *
read_file (const char *path)
{
  char *data;
  gsize size;

  assert_true (g_file_get_contents (path, &data, &size, NULL));
  return g_bytes_new_take (data, size);
}

/* g_file_set_contents() would put a new file in its place; this writes into the one that is there. */
static inline void
write_at (const char *path, gsize at, gconstpointer data, gsize size)
{
  int file = g_open (path, O_WRONLY | O_CREAT, 0600);

  assert_true (file >= 0);
  assert_int_equal (pwrite (file, data, size, (off_t) at), (gssize) size);
  assert_int_equal (close (file), 0);
}

static inline guint
mode_of (const char *path)
{
  struct stat status;

  assert_int_equal (stat (path, &status), 0);
  return status.st_mode & 0777;
}

/* A connection past the store, for what other programs may do. */
static inline sqlite3 *
open_past_the_store (const char *path)
{
  sqlite3 *db;

  assert_int_equal (sqlite3_open (path, &db), SQLITE_OK);
  return db;
}

static inline void
run_past_the_store (const char *path, const char *sql, int expected)
{
  sqlite3 *db = open_past_the_store (path);

  assert_int_equal (sqlite3_exec (db, sql, NULL, NULL, NULL), expected);
  assert_int_equal (sqlite3_close (db), SQLITE_OK);
}

#define IN_FOLDER(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

#endif
