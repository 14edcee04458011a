/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <unistd.h>

/* Brings a record of an older format up to this one's. The journal is the same in all of them. */

/* How many copies from before are kept apart before somebody has to tidy up (our choice). */
#define COPIES_MAX 99

static gboolean
fail_copy (const char *copy, const char *why, GError **error)
{
  g_autofree char *name = g_filename_display_name (copy);

  g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_OPEN,
               "The record was made by an older edition, and before it is brought up to date it is copied to “%s”. "
               "That failed (%s); the record was left as it is.",
               name, why);
  return FALSE;
}

/* A new, empty file for the owner alone, under the first name that is free: one from another time is never
   written over. */
static char *
make_copy_file (const char *path, GError **error)
{
  g_autofree char *full = g_canonicalize_filename (path, NULL);
  g_autofree char *real = realpath (full, NULL);
  const char *beside = real != NULL ? real : full;
  g_autofree char *copy = g_strdup_printf ("%s.before-%d", beside, SY_SQLITE_SCHEMA_VERSION);
  int file = -1;

  for (int i = 2; file < 0 && i <= COPIES_MAX; i++)
    {
      file = g_open (copy, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
      if (file >= 0)
        break;
      if (errno != EEXIST)
        {
          fail_copy (copy, g_strerror (errno), error);
          return NULL;
        }
      g_free (copy);
      copy = g_strdup_printf ("%s.before-%d.%d", beside, SY_SQLITE_SCHEMA_VERSION, i);
    }
  if (file < 0)
    {
      fail_copy (copy, "there are too many of them", error);
      return NULL;
    }
  close (file);
  return g_steal_pointer (&copy);
}

/* What was copied is on the disk before anything else is changed. */
static gboolean
sync_file (const char *copy, GError **error)
{
  int file = g_open (copy, O_RDWR | O_CLOEXEC, 0);
  gboolean done = file >= 0 && g_fsync (file) == 0;
  int code = errno;

  if (file >= 0)
    close (file);
  return done || fail_copy (copy, g_strerror (code), error);
}

/* Through a connection of its own: SQLite copies nothing inside a transaction, and ours is open, so that nobody
   writes in between. What it reads is the record as it was before. */
static gboolean
fill_copy (SqliteStore *self, const char *copy, GError **error)
{
  g_autoptr (sqlite3) reader = NULL;
  g_autoptr (sqlite3_stmt) statement = NULL;
  const char *file = sqlite3_db_filename (self->db, "main");

  if (sqlite3_open_v2 (file, &reader, SQLITE_OPEN_READONLY, NULL) != SQLITE_OK
      || sqlite3_prepare_v2 (reader, "VACUUM INTO ?1", -1, &statement, NULL) != SQLITE_OK)
    return fail_copy (copy, sqlite3_errmsg (reader), error);
  sy_sqlite_bind_text (statement, 1, copy);
  if (sqlite3_step (statement) == SQLITE_DONE)
    return sync_file (copy, error);
  if ((sqlite3_errcode (reader) & 0xff) == SQLITE_CORRUPT)
    return sy_sqlite_fail_corrupt (self->path, sqlite3_errmsg (reader), error);
  return fail_copy (copy, sqlite3_errmsg (reader), error);
}

static gboolean
ask_version (SqliteStore *self, int *version, GError **error)
{
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (sqlite3_prepare_v2 (self->db, "PRAGMA user_version", -1, &statement, NULL) != SQLITE_OK
      || sqlite3_step (statement) != SQLITE_ROW)
    return sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
  *version = sqlite3_column_int (statement, 0);
  return TRUE;
}

gboolean
sy_sqlite_run (SqliteStore *self, const char *sql, GError **error)
{
  if (sqlite3_exec (self->db, sql, NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  /* SQL that an intact record of ours would have understood */
  if (sqlite3_errcode (self->db) == SQLITE_ERROR)
    return sy_sqlite_fail_corrupt (self->path, sqlite3_errmsg (self->db), error);
  return sy_sqlite_fail (self->db, self->path, SY_STORE_ERROR_OPEN, error);
}

/* Inside the transaction. Another program may have been quicker: then there is nothing to do. */
static gboolean
upgrade (SqliteStore *self, GError **error)
{
  g_autofree char *copy = NULL;
  int version;

  if (!ask_version (self, &version, error))
    return FALSE;
  if (version == SY_SQLITE_SCHEMA_VERSION)
    return sy_sqlite_run (self, "COMMIT", error);
  copy = make_copy_file (self->path, error);
  if (copy == NULL)
    return FALSE;
  if (fill_copy (self, copy, error) && sy_sqlite_project_all (self, NULL, NULL, error) && sy_sqlite_run (self, "COMMIT", error))
    return TRUE;
  g_unlink (copy);
  return FALSE;
}

gboolean
sy_sqlite_upgrade (SqliteStore *self, GError **error)
{
  int version;

  if (!ask_version (self, &version, error))
    return FALSE;
  if (version == SY_SQLITE_SCHEMA_VERSION)
    return TRUE;
  if (!sy_sqlite_run (self, "BEGIN IMMEDIATE", error))
    return FALSE;
  if (upgrade (self, error))
    return TRUE;
  if (sqlite3_get_autocommit (self->db) == 0)
    sqlite3_exec (self->db, "ROLLBACK", NULL, NULL, NULL);
  return FALSE;
}
