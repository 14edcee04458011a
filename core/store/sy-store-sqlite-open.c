/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

/* How long to wait for another program that is writing (our choice: a person still waits that long). */
#define BUSY_MS 5000
#define BUSY_STEP_MS 10

/* The header of the file in which SQLite keeps what it would undo, from its published format: how many pages there were
   before, big-endian. */
#define UNDO_TEXT "\xd9\xd5\x05\xf9\x20\xa1\x63\xd7"
#define UNDO_PAGES_AT 16
#define UNDO_HEADER_BYTES 20

/* The header of a SQLite file, from its published file format: text at 0, numbers big-endian. */
#define HEADER_BYTES 100
#define HEADER_TEXT "SQLite format 3" /* with its NUL */
#define HEADER_VERSION_AT 60
#define HEADER_APPLICATION_AT 68

static const char pragmas[] =
  "PRAGMA foreign_keys = ON;"
  "PRAGMA synchronous = FULL;"
  "PRAGMA trusted_schema = OFF;";

G_GNUC_PRINTF (3, 4)
static gboolean
fail (GError **error, SyStoreError code, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  if (error != NULL)
    *error = g_error_new_valist (SY_STORE_ERROR, (gint) code, format, arguments);
  va_end (arguments);
  return FALSE;
}

static const char *
explain_errno (int code)
{
  switch (code)
    {
    case ENOENT:
    case ENOTDIR:
      return "its folder does not exist";
    case EACCES:
    case EPERM:
      return "you have no permission to";
    case EROFS:
      return "the disk is read-only";
    case ENOSPC:
    case EDQUOT:
      return "the disk is full";
    case ENAMETOOLONG:
      return "its name is too long";
    default:
      return g_strerror (code);
    }
}

static gboolean
fail_open (const char *full, const char *what, int code, GError **error)
{
  g_autofree char *name = g_filename_display_name (full);

  return fail (error, SY_STORE_ERROR_OPEN, "“%s” cannot be %s: %s.", name, what, explain_errno (code));
}

static gboolean
fail_foreign (const char *full, GError **error)
{
  g_autofree char *name = g_filename_display_name (full);

  return fail (error, SY_STORE_ERROR_FOREIGN,
               "“%s” is no record of Steelyard. It was left as it is; choose another file.", name);
}

static gboolean
check_identity (const char *full, guint32 application, guint32 version, GError **error)
{
  g_autofree char *name = NULL;

  if (application != SY_SQLITE_APPLICATION_ID)
    return fail_foreign (full, error);
  if (version == 0)
    return sy_sqlite_fail_corrupt (full, "it does not say which edition made it", error);
  if (version <= SY_SQLITE_SCHEMA_VERSION)
    return TRUE;
  name = g_filename_display_name (full);
  return fail (error, SY_STORE_ERROR_NEWER,
               "“%s” was made by a newer edition of Steelyard (format %u; this one knows up to %u). "
               "It was left as it is; open it with that edition.",
               name, version, SY_SQLITE_SCHEMA_VERSION);
}

static guint32
header_number (const guint8 *header, int at)
{
  return (guint32) header[at] << 24 | (guint32) header[at + 1] << 16 | (guint32) header[at + 2] << 8
         | header[at + 3];
}

/* Reads the beginning of the file, and nothing else. Through SQLite's own file layer: were the file opened
   and closed by other means, the locks that this process holds on it through another connection would be
   lost (POSIX drops them with any descriptor of the file). */
static gboolean
read_header (const char *full, guint8 *header, GError **error)
{
  sqlite3_vfs *vfs = sqlite3_vfs_find (NULL);
  g_autofree sqlite3_file *file = g_malloc0 ((gsize) vfs->szOsFile);
  sqlite3_filename name = sqlite3_create_filename (full, "", "", 0, NULL);
  int status = vfs->xOpen (vfs, name, file, SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, NULL);

  if (status == SQLITE_OK)
    status = file->pMethods->xRead (file, header, HEADER_BYTES, 0);
  if (file->pMethods != NULL)
    file->pMethods->xClose (file);
  sqlite3_free_filename (name);
  /* A file shorter than a header was read as far as it goes, the rest zeroed: its text or its id is wrong. */
  if (status != SQLITE_OK && status != SQLITE_IOERR_SHORT_READ)
    return fail_open (full, "read", EIO, error);
  return TRUE;
}

static gboolean
check_header (const char *full, GError **error)
{
  guint8 header[HEADER_BYTES];

  if (faccessat (AT_FDCWD, full, R_OK, AT_EACCESS) != 0)
    return fail_open (full, "read", errno, error);
  if (!read_header (full, header, error))
    return FALSE;
  if (memcmp (header, HEADER_TEXT, sizeof HEADER_TEXT) != 0)
    return fail_foreign (full, error);
  return check_identity (full, header_number (header, HEADER_APPLICATION_AT),
                         header_number (header, HEADER_VERSION_AT), error);
}

/* SQLite keeps two files beside the record, so the folder counts too. */
static gboolean
check_writable (const char *full, GError **error)
{
  g_autofree char *real = realpath (full, NULL);
  g_autofree char *folder = g_path_get_dirname (real != NULL ? real : full);

  if (faccessat (AT_FDCWD, full, W_OK, AT_EACCESS) != 0)
    return fail_open (full, "written", errno, error);
  if (faccessat (AT_FDCWD, folder, W_OK | X_OK, AT_EACCESS) != 0)
    return fail_open (folder, "written, and the record there needs that", errno, error);
  return TRUE;
}

static gboolean
create_file (const char *full, GError **error)
{
  int file = g_open (full, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);

  /* Another program may have been quicker; what it made is then opened like any other. */
  if (file < 0)
    return errno == EEXIST ? TRUE : fail_open (full, "created", errno, error);
  if (close (file) != 0)
    return fail_open (full, "created", errno, error);
  return TRUE;
}

/* Whoever began the file did not come to its end (killed, power cut), and what would be undone is all of it: a file with
   nothing in it, though it has bytes. */
static gboolean
was_never_made (const char *full)
{
  g_autofree char *undo = g_strconcat (full, "-journal", NULL);
  guint8 header[UNDO_HEADER_BYTES];
  int file = g_open (undo, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0);
  gboolean is_whole;

  if (file < 0)
    return FALSE;
  is_whole = read (file, header, sizeof header) == (gssize) sizeof header;
  close (file);
  return is_whole && memcmp (header, UNDO_TEXT, sizeof UNDO_TEXT - 1) == 0 && header_number (header, UNDO_PAGES_AT) == 0;
}

/* Looks without writing; sets @is_new for a file with nothing in it. */
static gboolean
prepare_file (const char *full, gboolean *is_new, GError **error)
{
  g_autofree char *name = g_filename_display_name (full);
  GStatBuf status;

  if (access (full, F_OK) != 0 && errno == ENOENT && !create_file (full, error))
    return FALSE;
  if (g_stat (full, &status) != 0)
    return fail_open (full, "opened", errno, error);
  if (S_ISDIR (status.st_mode))
    return fail (error, SY_STORE_ERROR_OPEN, "“%s” is a folder; name a file in it.", name);
  if (!S_ISREG (status.st_mode))
    return fail (error, SY_STORE_ERROR_OPEN, "“%s” is no ordinary file.", name);
  *is_new = status.st_size == 0 || was_never_made (full);
  if (!*is_new && !check_header (full, error))
    return FALSE;
  if (!check_writable (full, error))
    return FALSE;
  if (*is_new && g_chmod (full, 0600) != 0)
    return fail_open (full, "made private", errno, error);
  return TRUE;
}

static gboolean
run (sqlite3 *db, const char *full, const char *sql, GError **error)
{
  if (sqlite3_exec (db, sql, NULL, NULL, NULL) != SQLITE_OK)
    return sy_sqlite_fail (db, full, SY_STORE_ERROR_OPEN, error);
  return TRUE;
}

static gboolean
ask_number (sqlite3 *db, const char *full, const char *sql, guint32 *number, GError **error)
{
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) != SQLITE_OK
      || sqlite3_step (statement) != SQLITE_ROW)
    return sy_sqlite_fail (db, full, SY_STORE_ERROR_OPEN, error);
  *number = (guint32) sqlite3_column_int64 (statement, 0);
  return TRUE;
}

/* Inside a transaction: two programs may be creating the same record. */
static gboolean
create_schema (sqlite3 *db, const char *full, GError **error)
{
  guint32 parts;

  if (!ask_number (db, full, "SELECT count (*) FROM sqlite_schema", &parts, error))
    return FALSE;
  return parts > 0 || run (db, full, sy_sqlite_schema, error);
}

static gboolean
create_record (sqlite3 *db, const char *full, GError **error)
{
  if (!run (db, full, "BEGIN IMMEDIATE", error))
    return FALSE;
  if (create_schema (db, full, error))
    return run (db, full, "COMMIT", error);
  sqlite3_exec (db, "ROLLBACK", NULL, NULL, NULL);
  return FALSE;
}

/* Once more through SQLite: what a newer edition wrote may not have reached the file's header yet. */
static gboolean
check_record (sqlite3 *db, const char *full, GError **error)
{
  guint32 application, version;

  return ask_number (db, full, "PRAGMA application_id", &application, error)
         && ask_number (db, full, "PRAGMA user_version", &version, error)
         && check_identity (full, application, version, error);
}

/* SQLite does not wait by itself when two programs that create one record both turn its log on. */
static int
step_patiently (sqlite3_stmt *statement)
{
  int status = sqlite3_step (statement);

  for (int waited = 0; (status & 0xff) == SQLITE_BUSY && waited < BUSY_MS; waited += BUSY_STEP_MS)
    {
      sqlite3_reset (statement);
      sqlite3_sleep (BUSY_STEP_MS);
      status = sqlite3_step (statement);
    }
  return status;
}

static gboolean
use_wal (sqlite3 *db, const char *full, GError **error)
{
  g_autofree char *name = g_filename_display_name (full);
  g_autoptr (sqlite3_stmt) statement = NULL;

  if (sqlite3_prepare_v2 (db, "PRAGMA journal_mode = WAL", -1, &statement, NULL) != SQLITE_OK
      || step_patiently (statement) != SQLITE_ROW)
    return sy_sqlite_fail (db, full, SY_STORE_ERROR_OPEN, error);
  if (g_strcmp0 ((const char *) sqlite3_column_text (statement, 0), "wal") == 0)
    return TRUE;
  return fail (error, SY_STORE_ERROR_OPEN,
               "“%s” is on a disk that cannot share it safely; keep it on a local disk.", name);
}

static gboolean
set_up (sqlite3 *db, const char *full, gboolean is_new, GError **error)
{
  /* Until it is known to be ours, closing must not tidy up the file. */
  sqlite3_db_config (db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
  sqlite3_db_config (db, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
  sqlite3_busy_timeout (db, BUSY_MS);
  if ((is_new && !create_record (db, full, error)) || !check_record (db, full, error)
      || !use_wal (db, full, error) || !run (db, full, pragmas, error))
    return FALSE;
  sqlite3_db_config (db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 0, NULL);
  return TRUE;
}

gboolean
sy_sqlite_fail_corrupt (const char *path, const char *what, GError **error)
{
  g_autofree char *name = g_filename_display_name (path);

  return fail (error, SY_STORE_ERROR_CORRUPT,
               "“%s” is damaged: %s. Keep it, and go on with a copy from before.", name, what);
}

gboolean
sy_sqlite_fail (sqlite3 *db, const char *path, SyStoreError code, GError **error)
{
  g_autofree char *name = g_filename_display_name (path);
  const char *trouble = code == SY_STORE_ERROR_WRITE ? "Nothing was recorded in" : "No access to";

  switch (sqlite3_errcode (db) & 0xff)
    {
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return sy_sqlite_fail_corrupt (path, sqlite3_errmsg (db), error);
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return fail (error, code, "%s “%s”: another program is using it. Try again in a moment.",
                   trouble, name);
    case SQLITE_FULL:
      return fail (error, code, "%s “%s”: the disk is full. Make room and try again.", trouble, name);
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return fail (error, code, "%s “%s”: the file, its folder or its disk is read-only.", trouble,
                   name);
    case SQLITE_CANTOPEN:
      return fail (error, code, "%s “%s”: it is gone, or files beside it cannot be made.", trouble,
                   name);
    case SQLITE_IOERR:
      return fail (error, code, "%s “%s”: the disk reports an error (%s).", trouble, name,
                   sqlite3_errmsg (db));
    default:
      return fail (error, code, "%s “%s”: %s.", trouble, name, sqlite3_errmsg (db));
    }
}

sqlite3 *
sy_sqlite_open (const char *path, GError **error)
{
  /* An absolute path is never taken for ":memory:" or a "file:" address. */
  g_autofree char *full = g_canonicalize_filename (path, NULL);
  g_autoptr (sqlite3) db = NULL;
  gboolean is_new;

  if (!prepare_file (full, &is_new, error))
    return NULL;
  if (sqlite3_open_v2 (full, &db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE, NULL) != SQLITE_OK)
    {
      sy_sqlite_fail (db, full, SY_STORE_ERROR_OPEN, error);
      return NULL;
    }
  if (!set_up (db, full, is_new, error))
    return NULL;
  return g_steal_pointer (&db);
}
