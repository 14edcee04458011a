/* SPDX-License-Identifier: MIT */
#include "store-file.h"

#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>

/* What a record keeps, for whom, and through what: closing, crashes, full disks, several programs at once. */

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
  task = sy_store_find (store, "Coil", NULL, NULL);
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

/* As docs/records.md tells to back up. */
static void
a_backup_is_a_record (void **state)
{
  const char *path = path_of (state);
  g_autofree char *backup = g_strconcat (path, ".backup", NULL);
  g_autofree char *sql = g_strdup_printf ("VACUUM INTO '%s'", backup);
  g_autoptr (SyStore) store = NULL, copy = NULL;
  SyHead head, found;

  make_record (path);
  store = open_store (path);
  head = help_append (store, help_revision ("c", 1, "C", "by-hand", "1", "1"), NULL, NULL, NULL);
  run_past_the_store (path, sql, SQLITE_OK);
  copy = open_store (backup);
  found = help_head (copy);
  assert_int_equal (found.number, 4);
  assert_memory_equal (&found.hash, &head.hash, sizeof head.hash);
  help_assert_search (copy, "coil", "a");
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

/* As anything does that looks into the file from inside this program; its locks are gone with that. */
static void
look_into (const char *path)
{
  int file = g_open (path, O_RDONLY | O_CLOEXEC, 0);

  assert_true (file >= 0);
  assert_int_equal (close (file), 0);
}

/* Writes once it is told to, and tidies up each time as the last program with the record open. */
static pid_t
begin_other_program (const char *path, int *tell)
{
  int ends[2];
  pid_t pid;

  assert_int_equal (pipe (ends), 0);
  pid = fork ();
  assert_true (pid >= 0);
  if (pid == 0)
    {
      char told;

      if (read (ends[0], &told, 1) != 1)
        _exit (1);
      for (int i = 0; i < 50; i++)
        {
          SyStore *store = open_store (path);
          g_autofree char *id = g_strdup_printf ("other%d", i);

          help_append (store, help_revision (id, 1, id, "by-hand", "1", "1"), NULL, NULL, NULL);
          sy_store_close (store);
        }
      _exit (0);
    }
  close (ends[0]);
  *tell = ends[1];
  return pid;
}

static void
lost_locks_lose_nothing (void **state)
{
  const char *path = path_of (state);
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  g_autofree char *index = g_strconcat (path, "-shm", NULL);
  int tell, status;
  pid_t other = begin_other_program (path, &tell);
  SyStore *store = open_store (path);

  help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"), NULL, NULL, NULL);
  look_into (path);
  look_into (index);
  assert_int_equal (write (tell, "1", 1), 1);
  assert_int_equal (waitpid (other, &status, 0), other);
  assert_int_equal (status, 0);
  assert_false (g_file_test (log, G_FILE_TEST_EXISTS)); /* what it is all about */

  assert_int_equal (help_head (store).number, 51);
  help_append (store, help_revision ("b", 1, "B", "by-hand", "1", "1"), NULL, NULL, NULL);
  sy_store_close (store);
  close (tell);
  store = open_store (path);
  assert_int_equal (help_head (store).number, 52);
  sy_store_close (store);
}

static void
a_record_that_is_gone_is_not_begun_anew (void **state)
{
  const char *path = path_of (state);
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  g_autofree char *index = g_strconcat (path, "-shm", NULL);
  g_autoptr (SyStore) store = open_store (path);
  g_autoptr (GError) error = NULL;
  SyHead head;

  help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"), NULL, NULL, NULL);
  g_unlink (path);
  g_unlink (log);
  g_unlink (index);
  assert_false (sy_store_head (store, &head, &error));
  assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_OPEN));
  assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

/* A backup put in its place while it is open: what is written then would be found by nobody. */
static void
a_record_that_was_replaced_takes_nothing (void **state)
{
  const char *path = path_of (state);
  g_autofree char *backup = g_strconcat (path, ".backup", NULL);
  g_autoptr (SyStore) store = sy_store_open (path, NULL);
  g_autoptr (SyStore) other = sy_store_open (backup, NULL);
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  g_autoptr (GError) error = NULL;
  SyHead head = help_append (store, help_policy ("{}"), NULL, NULL, NULL);

  g_clear_pointer (&other, sy_store_close);
  assert_int_equal (g_rename (backup, path), 0);
  g_ptr_array_add (events, help_policy ("{\"id\":2}"));
  assert_false (sy_store_append (store, &head, events, &head, &error));
  help_assert_error (error, SY_STORE_ERROR_OPEN, "another file stands in its place");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    IN_FOLDER (what_was_recorded_is_there_again),
    IN_FOLDER (what_was_recorded_survives_a_crash),
    IN_FOLDER (a_backup_is_a_record),
    IN_FOLDER (only_the_owner_may_read_it),
    IN_FOLDER (an_empty_file_is_a_new_record),
    IN_FOLDER (permissions_of_a_record_are_the_owners),
    IN_FOLDER (the_journal_is_guarded_against_accidents),
    IN_FOLDER (a_full_disk_changes_nothing),
    IN_FOLDER (two_connections_see_one_journal),
    IN_FOLDER (many_writers_make_one_chain),
    IN_FOLDER (lost_locks_lose_nothing),
    IN_FOLDER (a_record_that_is_gone_is_not_begun_anew),
    IN_FOLDER (a_record_that_was_replaced_takes_nothing),
  };

  return cmocka_run_group_tests_name ("store kept", tests, NULL, NULL);
}
