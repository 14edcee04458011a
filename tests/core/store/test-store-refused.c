/* SPDX-License-Identifier: MIT */
#include "store-file.h"

/* What is refused, and what is said: files that are foreign, newer, damaged, forbidden. */

/* Nobody in particular: who the tests are while they must not be root. */
#define PLAIN_USER 65534

/* From the published SQLite file format: header fields, big-endian. */
#define VERSION_AT 60
#define APPLICATION_AT 68
#define HEADER_BYTES 100

static void
assert_not_opened (const char *path, SyStoreError code)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_path_get_basename (path);

  assert_null (sy_store_open (path, &error));
  help_assert_error (error, code, name);
}

/* Refused, and as it was: bytes, time of change, permissions, and nothing beside it. */
static void
assert_left_alone (const char *folder, const char *path, SyStoreError code)
{
  g_autoptr (GBytes) before = read_file (path), after = NULL;
  struct stat was, is;
  int files = count_files (folder);

  assert_int_equal (stat (path, &was), 0);
  assert_not_opened (path, code);
  after = read_file (path);
  assert_true (g_bytes_equal (before, after));
  assert_int_equal (stat (path, &is), 0);
  assert_int_equal (was.st_mtim.tv_sec, is.st_mtim.tv_sec);
  assert_int_equal (was.st_mtim.tv_nsec, is.st_mtim.tv_nsec);
  assert_int_equal (was.st_mode, is.st_mode);
  assert_int_equal (count_files (folder), files);
}

static void
give_to_plain_user (const char *path)
{
  if (geteuid () == 0)
    assert_int_equal (chown (path, PLAIN_USER, PLAIN_USER), 0);
}

/* Root may write everywhere; permissions are only tried as somebody else. */
static gboolean
become_plain_user (void)
{
  return geteuid () == 0 && seteuid (PLAIN_USER) == 0;
}

static void
become_root_again (gboolean was_root)
{
  if (was_root)
    assert_int_equal (seteuid (0), 0);
}

static void
a_foreign_file_is_left_alone (void **state)
{
  static const char *const texts[]
    = { "x", "SQLite format 3", "A letter that somebody wrote, much longer than the header of a record: "
                                "it goes on and on, and has nothing to do with how heavy things are." };
  const char *path = path_of (state);
  g_autofree char *other = g_strconcat (path, ".other", NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      write_at (path, 0, texts[i], strlen (texts[i]));
      assert_left_alone (folder_of (state), path, SY_STORE_ERROR_FOREIGN);
    }
  run_past_the_store (other, "CREATE TABLE something (else_entirely)", SQLITE_OK);
  assert_left_alone (folder_of (state), other, SY_STORE_ERROR_FOREIGN);
  run_past_the_store (other, "PRAGMA journal_mode = WAL; INSERT INTO something VALUES (1)", SQLITE_OK);
  assert_left_alone (folder_of (state), other, SY_STORE_ERROR_FOREIGN);
  run_past_the_store (other, "PRAGMA application_id = 7; PRAGMA user_version = 1", SQLITE_OK);
  assert_left_alone (folder_of (state), other, SY_STORE_ERROR_FOREIGN);
}

static void
a_newer_record_is_left_alone (void **state)
{
  const char *path = path_of (state);

  make_record (path);
  run_past_the_store (path, "PRAGMA user_version = 5", SQLITE_OK);
  assert_left_alone (folder_of (state), path, SY_STORE_ERROR_NEWER);
  run_past_the_store (path, "PRAGMA user_version = -1", SQLITE_OK);
  assert_left_alone (folder_of (state), path, SY_STORE_ERROR_NEWER);
}

/* The newer edition's mark may still be in the log only, with the old one in the header. */
static void
a_newer_record_with_a_log_is_left_alone (void **state)
{
  const char *path = path_of (state);
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  g_autofree char *index = g_strconcat (path, "-shm", NULL);
  sqlite3 *db;
  g_autoptr (GBytes) before = NULL, after = NULL, log_before = NULL, log_after = NULL;

  make_record (path);
  db = open_past_the_store (path);
  sqlite3_db_config (db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
  assert_int_equal (sqlite3_exec (db, "PRAGMA user_version = 5", NULL, NULL, NULL), SQLITE_OK);
  assert_int_equal (sqlite3_close (db), SQLITE_OK);
  before = read_file (path);
  log_before = read_file (log);
  assert_true (g_bytes_get_size (log_before) > 0);
  assert_not_opened (path, SY_STORE_ERROR_NEWER);
  after = read_file (path);
  log_after = read_file (log);
  assert_true (g_bytes_equal (before, after));
  assert_true (g_bytes_equal (log_before, log_after));
}

static void
a_record_that_says_no_edition_is_damaged (void **state)
{
  const char *path = path_of (state);

  make_record (path);
  write_at (path, VERSION_AT, "\0\0\0\0", 4);
  assert_left_alone (folder_of (state), path, SY_STORE_ERROR_CORRUPT);
}

static void
a_truncated_record_is_damaged (void **state)
{
  const char *path = path_of (state);

  make_record (path);
  assert_int_equal (truncate (path, 4096), 0);
  assert_not_opened (path, SY_STORE_ERROR_CORRUPT);
  assert_int_equal (truncate (path, HEADER_BYTES), 0);
  assert_not_opened (path, SY_STORE_ERROR_CORRUPT);
  assert_int_equal (truncate (path, APPLICATION_AT), 0); /* nothing says any more whose it was */
  assert_left_alone (folder_of (state), path, SY_STORE_ERROR_FOREIGN);
}

static void
a_record_with_a_part_missing_is_damaged (void **state)
{
  static const char *const parts[] = { "DROP TABLE task", "DROP TABLE journal",
                                       "ALTER TABLE task DROP COLUMN lineage" };
  const char *path = path_of (state);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      make_record (path);
      run_past_the_store (path, parts[i], SQLITE_OK);
      assert_not_opened (path, SY_STORE_ERROR_CORRUPT);
      assert_int_equal (remove (path), 0);
    }
}

/* Every call on a record whose pages were overwritten ends with words, whichever page it was. */
static void
overwritten_pages_are_told (void **state)
{
  const char *path = path_of (state);
  const guint page = 4096;
  guint8 noise[4096];
  gsize pages;
  int damaged = 0;

  memset (noise, 0xA5, sizeof noise);
  make_record (path);
  {
    g_autoptr (GBytes) whole = read_file (path);

    pages = g_bytes_get_size (whole) / page;
    assert_true (pages > 5);
    for (gsize i = 1; i < pages; i++)
      {
        g_autoptr (GError) error = NULL;
        g_autoptr (SyStore) store = NULL;
        SyHead head;

        write_at (path, 0, g_bytes_get_data (whole, NULL), g_bytes_get_size (whole));
        write_at (path, i * page, noise, sizeof noise);
        store = sy_store_open (path, &error);
        if (store != NULL && sy_store_head (store, &head, &error))
          help_try (store, &head, help_revision ("a", 2, "Coil", "by-hand", "1", "1"), &error);
        if (error == NULL)
          continue;
        damaged++;
        help_assert_error (error, SY_STORE_ERROR_CORRUPT, "record.steelyard");
      }
  }
  assert_true (damaged > 2);
}

static gboolean
pass_cb (const SyLine *line, gpointer user_data)
{
  guint64 *last = user_data;

  *last = line->number;
  return TRUE;
}

static void
a_damaged_line_is_named (void **state)
{
  const char *path = path_of (state);
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = NULL;
  guint64 last = 0;

  make_record (path);
  run_past_the_store (path,
                      "DROP TRIGGER journal_keep;"
                      "UPDATE journal SET event = substr (event, 1, 40) WHERE number = 2",
                      SQLITE_OK);
  store = open_store (path);
  assert_false (sy_store_scan (store, 1, pass_cb, &last, &error));
  help_assert_error (error, SY_STORE_ERROR_CORRUPT, "line 2");
  assert_int_equal (last, 1);
}

static void
what_cannot_be_a_record_is_said (void **state)
{
  const char *folder = folder_of (state);
  g_autofree char *nowhere = g_build_filename (folder, "no", "record", NULL);
  g_autofree char *pipe_path = g_build_filename (folder, "pipe", NULL);
  g_autofree char *below_file = NULL;
  g_autofree char *long_name = g_strnfill (300, 'n');
  g_autofree char *too_long = g_build_filename (folder, long_name, NULL);
  g_autoptr (GError) error = NULL;

  assert_not_opened (folder, SY_STORE_ERROR_OPEN);
  assert_not_opened (nowhere, SY_STORE_ERROR_OPEN);
  assert_not_opened (too_long, SY_STORE_ERROR_OPEN);
  assert_int_equal (mkfifo (pipe_path, 0600), 0);
  assert_not_opened (pipe_path, SY_STORE_ERROR_OPEN);
  below_file = g_build_filename (pipe_path, "record", NULL);
  assert_not_opened (below_file, SY_STORE_ERROR_OPEN);
  assert_null (sy_store_open ("", &error));
  help_assert_error (error, SY_STORE_ERROR_OPEN, "file");
  assert_int_equal (count_files (folder), 1);
}

/* Names that SQLite would take for something else are names of files. */
static void
any_name_is_the_name_of_a_file (void **state)
{
  static const char *const names[] = { ":memory:", "file:record?mode=memory", "Süd 'Halle' \"2\"" };
  g_autofree char *before = g_get_current_dir ();

  assert_int_equal (g_chdir (folder_of (state)), 0);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      make_record (names[i]);
      assert_true (g_file_test (names[i], G_FILE_TEST_IS_REGULAR));
      sy_store_close (open_store (names[i]));
    }
  assert_int_equal (g_chdir (before), 0);
  assert_int_equal (count_files (folder_of (state)), (int) G_N_ELEMENTS (names));
}

static void
assert_forbidden (void **state, const char *changed, guint mode, guint restored)
{
  const char *path = path_of (state);
  g_autoptr (GBytes) before = read_file (path), after = NULL;
  g_autoptr (GError) error = NULL;
  gboolean was_root;
  SyStore *store;

  assert_int_equal (g_chmod (changed, (int) mode), 0);
  was_root = become_plain_user ();
  store = sy_store_open (path, &error);
  become_root_again (was_root);
  assert_int_equal (g_chmod (changed, (int) restored), 0);
  assert_null (store);
  help_assert_error (error, SY_STORE_ERROR_OPEN, "permission");
  after = read_file (path);
  assert_true (g_bytes_equal (before, after));
  assert_int_equal (count_files (folder_of (state)), 1);
}

static void
what_may_not_be_written_is_said (void **state)
{
  const char *folder = folder_of (state), *path = path_of (state);

  make_record (path);
  give_to_plain_user (folder);
  give_to_plain_user (path);
  assert_forbidden (state, path, 0400, 0600);   /* may be read only  */
  assert_forbidden (state, path, 0000, 0600);   /* may not be read   */
  assert_forbidden (state, folder, 0500, 0700); /* nothing beside it */
  assert_forbidden (state, folder, 0600, 0700); /* no way in         */
  sy_store_close (open_store (path));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    IN_FOLDER (a_foreign_file_is_left_alone),
    IN_FOLDER (a_newer_record_is_left_alone),
    IN_FOLDER (a_newer_record_with_a_log_is_left_alone),
    IN_FOLDER (a_record_that_says_no_edition_is_damaged),
    IN_FOLDER (a_truncated_record_is_damaged),
    IN_FOLDER (a_record_with_a_part_missing_is_damaged),
    IN_FOLDER (overwritten_pages_are_told),
    IN_FOLDER (a_damaged_line_is_named),
    IN_FOLDER (what_cannot_be_a_record_is_said),
    IN_FOLDER (any_name_is_the_name_of_a_file),
    IN_FOLDER (what_may_not_be_written_is_said),
  };

  return cmocka_run_group_tests_name ("store refused", tests, NULL, NULL);
}
