/* SPDX-License-Identifier: MIT */
#include "store-help.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

/* What only a file can do: be foreign, newer, damaged, forbidden, shared. */

/* Nobody in particular: who the tests are while they must not be root. */
#define PLAIN_USER 65534

/* From the published SQLite file format: header fields, big-endian. */
#define VERSION_AT 60
#define APPLICATION_AT 68
#define HEADER_BYTES 100

typedef struct
{
  char *folder, *path;
} Fixture;

static int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);

  fixture->folder = help_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "record.steelyard", NULL);
  *state = fixture;
  return 0;
}

static int
tear_down (void **state)
{
  Fixture *fixture = *state;

  help_remove_folder (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->path);
  g_free (fixture);
  return 0;
}

static const char *
path_of (void **state)
{
  return ((Fixture *) *state)->path;
}

static const char *
folder_of (void **state)
{
  return ((Fixture *) *state)->folder;
}

static SyStore *
open_store (const char *path)
{
  g_autoptr (GError) error = NULL;
  SyStore *store = sy_store_open (path, &error);

  if (store == NULL)
    fail_msg ("%s", error->message);
  return store;
}

/* A record with one policy and two tasks, closed. */
static void
make_record (const char *path)
{
  g_autoptr (SyStore) store = open_store (path);

  help_append (store, help_policy ("{\"goal\":1}"),
               help_revision ("a", 1, "Coil", "mechanical", "", "9"),
               help_revision ("b", 1, "Blank", "by-hand", "0.5", "null"), NULL);
}

static int
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  int count = 0;

  while (g_dir_read_name (dir) != NULL)
    count++;
  return count;
}

static GBytes *
read_file (const char *path)
{
  char *data;
  gsize size;

  assert_true (g_file_get_contents (path, &data, &size, NULL));
  return g_bytes_new_take (data, size);
}

/* g_file_set_contents() would put a new file in its place; this writes into the one that is there. */
static void
write_at (const char *path, gsize at, gconstpointer data, gsize size)
{
  int file = g_open (path, O_WRONLY | O_CREAT, 0600);

  assert_true (file >= 0);
  assert_int_equal (pwrite (file, data, size, (off_t) at), (gssize) size);
  assert_int_equal (close (file), 0);
}

static guint
mode_of (const char *path)
{
  struct stat status;

  assert_int_equal (stat (path, &status), 0);
  return status.st_mode & 0777;
}

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

/* A connection past the store, for what other programs may do. */
static sqlite3 *
open_past_the_store (const char *path)
{
  sqlite3 *db;

  assert_int_equal (sqlite3_open (path, &db), SQLITE_OK);
  return db;
}

static void
run_past_the_store (const char *path, const char *sql, int expected)
{
  sqlite3 *db = open_past_the_store (path);

  assert_int_equal (sqlite3_exec (db, sql, NULL, NULL, NULL), expected);
  assert_int_equal (sqlite3_close (db), SQLITE_OK);
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
what_was_recorded_is_there_again (void **state)
{
  const char *path = path_of (state);
  g_autoptr (SyStore) store = NULL;
  g_autofree char *policy = NULL;
  g_autoptr (SyTask) task = NULL;

  make_record (path);
  assert_int_equal (count_files (folder_of (state)), 1); /* tidied up when closed */
  store = open_store (path);
  assert_int_equal (help_head (store).number, 3);
  help_assert_list (store, NULL, 0, "a b");
  help_assert_search (store, "coi", "a");
  policy = sy_store_policy (store, NULL);
  assert_string_equal (policy, "{\"goal\":1}");
  task = sy_store_find (store, "Coil", NULL);
  assert_same_bits (task->index, INFINITY);
  help_append (store, help_revision ("a", 2, "Coil", "improve", "1.5", "9"), NULL, NULL, NULL);
  help_assert_list (store, NULL, 0, "a b");
}

/* What a machine leaves that loses its power: the file and its log as they are, nobody to tidy them up. */
static void
what_was_recorded_survives_a_crash (void **state)
{
  const char *path = path_of (state);
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  g_autofree char *copy = g_strconcat (path, ".copy", NULL);
  g_autofree char *copy_log = g_strconcat (copy, "-wal", NULL);
  g_autoptr (SyStore) store = open_store (path), crashed = NULL;
  SyHead head = help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"), NULL, NULL, NULL);
  SyHead found;
  g_autoptr (GBytes) bytes = read_file (path), log_bytes = read_file (log);

  write_at (copy, 0, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  write_at (copy_log, 0, g_bytes_get_data (log_bytes, NULL), g_bytes_get_size (log_bytes));
  crashed = open_store (copy);
  found = help_head (crashed);
  assert_int_equal (found.number, 1);
  assert_memory_equal (&found.hash, &head.hash, sizeof head.hash);
}

static void
only_the_owner_may_read_it (void **state)
{
  const char *path = path_of (state);
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  g_autofree char *index = g_strconcat (path, "-shm", NULL);
  mode_t before = umask (0);
  g_autoptr (SyStore) store = open_store (path);

  help_append (store, help_policy ("{}"), NULL, NULL, NULL);
  umask (before);
  assert_int_equal (mode_of (path), 0600);
  assert_int_equal (mode_of (log), 0600);
  assert_int_equal (mode_of (index), 0600);
}

static void
an_empty_file_is_a_new_record (void **state)
{
  const char *path = path_of (state);

  write_at (path, 0, "", 0);
  assert_int_equal (g_chmod (path, 0644), 0);
  make_record (path);
  assert_int_equal (mode_of (path), 0600);
}

/* A record that its owner has opened to colleagues stays so. */
static void
permissions_of_a_record_are_the_owners (void **state)
{
  const char *path = path_of (state);

  make_record (path);
  assert_int_equal (g_chmod (path, 0660), 0);
  sy_store_close (open_store (path));
  assert_int_equal (mode_of (path), 0660);
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
  run_past_the_store (path, "PRAGMA user_version = 2", SQLITE_OK);
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
  assert_int_equal (sqlite3_exec (db, "PRAGMA user_version = 2", NULL, NULL, NULL), SQLITE_OK);
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
the_journal_is_guarded_against_accidents (void **state)
{
  const char *path = path_of (state);
  g_autoptr (SyStore) store = NULL;

  make_record (path);
  run_past_the_store (path, "UPDATE journal SET item = 'x' WHERE number = 1", SQLITE_CONSTRAINT);
  run_past_the_store (path, "DELETE FROM journal WHERE number = 3", SQLITE_CONSTRAINT);
  run_past_the_store (path, "DELETE FROM journal", SQLITE_CONSTRAINT);
  run_past_the_store (path,
                      "INSERT OR REPLACE INTO journal (number, hash, kind, item, event)"
                      " SELECT 1, hash, kind, item, event FROM journal WHERE number = 2",
                      SQLITE_CONSTRAINT);
  run_past_the_store (path,
                      "INSERT INTO journal (number, hash, kind, item, event)"
                      " SELECT 9, hash, kind, item, event FROM journal WHERE number = 2",
                      SQLITE_CONSTRAINT);
  run_past_the_store (path,
                      "INSERT INTO journal (number, hash, kind, item, event)"
                      " VALUES (4, x'00', 1, '', x'00')",
                      SQLITE_CONSTRAINT);
  store = open_store (path);
  assert_int_equal (help_head (store).number, 3);
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

/* A limit on the size of files stands for a full disk: the write fails half way. */
static void
a_full_disk_changes_nothing (void **state)
{
  const char *path = path_of (state);
  g_autofree char *much = g_strnfill (1000000, 'x');
  g_autofree char *facts = g_strdup_printf ("{\"notes\":\"%s\"}", much);
  g_autoptr (SyStore) store = NULL;
  g_autoptr (GError) error = NULL;
  SyEvent *event = help_revision ("c", 1, "C", "by-hand", "1", "1");
  struct rlimit before, small = { 0 };
  SyHead head, end;

  make_record (path);
  store = open_store (path);
  head = help_head (store);
  sy_event_set (&event->facts, facts);
  signal (SIGXFSZ, SIG_IGN);
  assert_int_equal (getrlimit (RLIMIT_FSIZE, &before), 0);
  small = before;
  small.rlim_cur = 400000;
  assert_int_equal (setrlimit (RLIMIT_FSIZE, &small), 0);
  assert_false (help_try (store, &head, event, &error));
  assert_int_equal (setrlimit (RLIMIT_FSIZE, &before), 0);
  signal (SIGXFSZ, SIG_DFL);
  help_assert_error (error, SY_STORE_ERROR_WRITE, "record.steelyard");
  end = help_head (store);
  assert_int_equal (end.number, head.number);
  assert_memory_equal (&end.hash, &head.hash, sizeof end.hash);
  help_assert_list (store, NULL, 0, "a b");
  help_append (store, help_revision ("c", 1, "C", "by-hand", "1", "1"), NULL, NULL, NULL);
  help_assert_search (store, "bay", "b c a");
}

static void
two_connections_see_one_journal (void **state)
{
  const char *path = path_of (state);
  g_autoptr (SyStore) one = open_store (path), other = open_store (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) changed = NULL;
  g_autofree char *ids = NULL;
  SyHead seen = help_head (other);

  help_append (one, help_revision ("a", 1, "A", "by-hand", "1", "1"), NULL, NULL, NULL);
  assert_false (help_try (other, &seen, help_revision ("b", 1, "B", "by-hand", "1", "1"), &error));
  help_assert_error (error, SY_STORE_ERROR_STALE, "record.steelyard");
  changed = sy_store_changed_since (other, seen.number, NULL);
  ids = help_ids (changed);
  assert_string_equal (ids, "a");
  seen = help_head (other);
  assert_true (help_try (other, &seen, help_revision ("b", 1, "B", "by-hand", "1", "1"), NULL));
  help_assert_list (one, NULL, 0, "a b");
  assert_int_equal (help_head (one).number, 2);
}

#define N_WRITERS 4
#define N_EACH 12

/* Opens the record, which at first is not there, and appends until its share is in. */
static gpointer
write_thread (gpointer path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = sy_store_open (path, &error);
  int done = 0;

  while (error == NULL && done < N_EACH)
    {
      SyHead head;

      if (!sy_store_head (store, &head, &error))
        break;
      if (help_try (store, &head, help_policy ("{}"), &error))
        done++;
      else if (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_STALE))
        g_clear_error (&error);
    }
  return error != NULL ? g_strdup (error->message) : NULL;
}

static gboolean
check_chain_cb (const SyLine *line, gpointer user_data)
{
  SyHead *end = user_data;
  g_autoptr (GBytes) bytes = sy_event_encode (line->event);

  end->number++;
  sy_chain_next (&end->hash, end->number, bytes, &end->hash);
  return end->number == line->number && memcmp (&end->hash, &line->hash, sizeof end->hash) == 0;
}

static void
many_writers_make_one_chain (void **state)
{
  const char *path = path_of (state);
  GThread *threads[N_WRITERS];
  g_autoptr (SyStore) store = NULL;
  SyHead end = { 0 };

  for (int i = 0; i < N_WRITERS; i++)
    threads[i] = g_thread_new ("writer", write_thread, (gpointer) path);
  for (int i = 0; i < N_WRITERS; i++)
    {
      g_autofree char *trouble = g_thread_join (threads[i]);

      if (trouble != NULL)
        fail_msg ("%s", trouble);
    }
  store = open_store (path);
  assert_true (sy_store_scan (store, 1, check_chain_cb, &end, NULL));
  assert_int_equal (end.number, N_WRITERS * N_EACH);
  assert_int_equal (help_head (store).number, N_WRITERS * N_EACH);
}

#define TEST(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    TEST (what_was_recorded_is_there_again),
    TEST (what_was_recorded_survives_a_crash),
    TEST (only_the_owner_may_read_it),
    TEST (an_empty_file_is_a_new_record),
    TEST (permissions_of_a_record_are_the_owners),
    TEST (a_foreign_file_is_left_alone),
    TEST (a_newer_record_is_left_alone),
    TEST (a_newer_record_with_a_log_is_left_alone),
    TEST (a_record_that_says_no_edition_is_damaged),
    TEST (a_truncated_record_is_damaged),
    TEST (a_record_with_a_part_missing_is_damaged),
    TEST (overwritten_pages_are_told),
    TEST (a_damaged_line_is_named),
    TEST (the_journal_is_guarded_against_accidents),
    TEST (what_cannot_be_a_record_is_said),
    TEST (any_name_is_the_name_of_a_file),
    TEST (what_may_not_be_written_is_said),
    TEST (a_full_disk_changes_nothing),
    TEST (two_connections_see_one_journal),
    TEST (many_writers_make_one_chain),
  };

  return cmocka_run_group_tests_name ("store in a file", tests, NULL, NULL);
}
