/* SPDX-License-Identifier: MIT */
#include "faults-help.h"

#include <grp.h>
#include <sys/wait.h>

/* What cannot be a record, or may not be written: refused in words, and left as it was to the byte. Damaged ones are
   refused or tell at which line; whatever the damage, nothing crashes and nothing hangs. */

/* Nobody in particular: root may do everything, so that permissions are only tried as somebody else. */
#define PLAIN_USER 65534

/* Longer than any opening takes on a busy machine, in seconds. */
#define HANG_S 60

typedef struct
{
  GBytes *bytes;
  struct stat status;
  int files; /* in the folder; 0: it does not matter */
} Before;

static Before
look (const char *folder, const char *path)
{
  Before before = { .files = faults_count_files (folder) };

  assert_int_equal (lstat (path, &before.status), 0);
  if (S_ISREG (before.status.st_mode))
    before.bytes = faults_read (path);
  return before;
}

static void
assert_untouched (const char *folder, const char *path, Before *before, const char *label)
{
  Before after = look (folder, path);

  if (before->bytes != NULL && !g_bytes_equal (before->bytes, after.bytes))
    fail_msg ("%s: other bytes than before", label);
  if (before->files != 0 && before->files != after.files)
    fail_msg ("%s: %d files in the folder, %d before", label, after.files, before->files);
  if (before->status.st_mtim.tv_sec != after.status.st_mtim.tv_sec
      || before->status.st_mtim.tv_nsec != after.status.st_mtim.tv_nsec || before->status.st_mode != after.status.st_mode)
    fail_msg ("%s: another time or mode than before", label);
  g_clear_pointer (&before->bytes, g_bytes_unref);
  g_clear_pointer (&after.bytes, g_bytes_unref);
}

static void
assert_refused (const Fixture *fixture, const char *label)
{
  Before before = look (fixture->folder, fixture->path);
  g_autoptr (GError) error = NULL;
  SyStore *store;

  alarm (HANG_S);
  store = sy_store_open (fixture->path, &error);
  alarm (0);
  if (store != NULL)
    fail_msg ("%s: opened", label);
  faults_assert_words (error, fixture->path, label);
  assert_untouched (fixture->folder, fixture->path, &before, label);
}

static void
put_text (const char *path, const char *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  faults_put (path, bytes);
}

static void
other_files_are_refused (void **state)
{
  Fixture *fixture = *state;
  sqlite3 *db;

  put_text (fixture->path, "A letter that somebody wrote: it has nothing to do with how heavy things are.\n");
  assert_refused (fixture, "a letter");
  put_text (fixture->path, "SQLite format 3");
  assert_refused (fixture, "a beginning");
  faults_empty_folder (fixture->folder);
  db = faults_open_bare (":memory:");
  {
    g_autofree char *sql = g_strdup_printf ("CREATE TABLE journal (number, hash); VACUUM INTO '%s'", fixture->path);

    assert_int_equal (sqlite3_exec (db, sql, NULL, NULL, NULL), SQLITE_OK);
  }
  sqlite3_close (db);
  assert_refused (fixture, "another database");
  faults_empty_folder (fixture->folder);
  assert_int_equal (mkdir (fixture->path, 0700), 0);
  assert_refused (fixture, "a folder");
  faults_empty_folder (fixture->folder);
  assert_int_equal (mkfifo (fixture->path, 0600), 0);
  assert_refused (fixture, "a pipe");
  faults_empty_folder (fixture->folder);
  assert_int_equal (symlink (fixture->path, fixture->path), 0);
  assert_refused (fixture, "a link to itself");
  faults_empty_folder (fixture->folder);
}

/* An empty file is a place for a record, as a new name is. */
static void
an_empty_file_becomes_a_record (void **state)
{
  Fixture *fixture = *state;
  SyLedger *ledger;

  put_text (fixture->path, "");
  ledger = faults_open (fixture->path);
  faults_assert_sound (ledger, NULL, "an empty file");
  sy_ledger_close (ledger);
}

/* In a child that is nobody in particular. Exit: 0 refused in words, 1 opened, 2 words, 3 could not become nobody. */
static int
open_as_nobody (const char *path)
{
  pid_t pid = fork ();
  int status;

  assert_true (pid >= 0);
  if (pid == 0)
    {
      g_autoptr (GError) error = NULL;
      SyStore *store;

      if (geteuid () == 0 && (setgroups (0, NULL) != 0 || setgid (PLAIN_USER) != 0 || setuid (PLAIN_USER) != 0))
        _exit (3);
      if (geteuid () == 0)
        _exit (3);
      alarm (HANG_S);
      store = sy_store_open (path, &error);
      if (store == NULL && (strstr (error->message, "permission") == NULL || strchr (error->message, '.') == NULL))
        g_printerr ("%s\n", error->message);
      _exit (store != NULL ? 1 : strstr (error->message, "permission") != NULL ? 0 : 2);
    }
  assert_int_equal (waitpid (pid, &status, 0), pid);
  assert_true (WIFEXITED (status));
  return WEXITSTATUS (status);
}

static void
give_away (const char *path)
{
  if (geteuid () == 0)
    assert_int_equal (chown (path, PLAIN_USER, PLAIN_USER), 0);
}

static void
try_forbidden (const Fixture *fixture, const char *what, guint mode, const char *label)
{
  struct stat was;
  Before before;
  int ended;

  assert_int_equal (stat (what, &was), 0);
  assert_int_equal (g_chmod (what, (int) mode), 0);
  before = look (fixture->folder, fixture->path);
  ended = open_as_nobody (fixture->path);
  if (ended != 0)
    fail_msg ("%s: ended with %d", label, ended);
  assert_untouched (fixture->folder, fixture->path, &before, label);
  assert_int_equal (g_chmod (what, (int) (was.st_mode & 0777)), 0);
}

static void
what_may_not_be_written_is_refused (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GBytes) bytes = faults_make (fixture->path, fixture->desk, 2);

  give_away (fixture->folder);
  give_away (fixture->path);
  /* that it can be arranged at all: the same user with every permission */
  assert_int_equal (open_as_nobody (fixture->path), 1);
  faults_put (fixture->path, bytes);
  try_forbidden (fixture, fixture->path, 0400, "a read-only file");
  try_forbidden (fixture, fixture->path, 0000, "a file that may not be read");
  try_forbidden (fixture, fixture->folder, 0500, "a read-only folder");
  if (geteuid () == 0) /* root still sees into it */
    try_forbidden (fixture, fixture->folder, 0600, "a folder without a way in");
}

static void
a_record_cannot_be_begun_where_nothing_may_be_written (void **state)
{
  Fixture *fixture = *state;

  give_away (fixture->folder);
  assert_int_equal (g_chmod (fixture->folder, 0500), 0);
  assert_int_equal (open_as_nobody (fixture->path), 0);
  assert_int_equal (faults_count_files (fixture->folder), 0);
  assert_int_equal (g_chmod (fixture->folder, 0700), 0);
}

/* Asks a record everything that is asked of one. Return value: the first error in words, NULL where all is answered. */
static char *
ask_everything (SyStore *store)
{
  const SyJournalFilter any_line = { 0 };
  const SyActionFilter any_action = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) tasks = sy_store_list (store, NULL, 0, &error), lines = NULL, actions = NULL, then = NULL;
  g_auto (GStrv) people = NULL;
  g_autoptr (SyTask) task = NULL;
  g_autofree char *policy = NULL;

  if (error == NULL)
    lines = sy_store_journal (store, &any_line, 0, 0, &error);
  if (error == NULL)
    actions = sy_store_actions (store, &any_action, &error);
  if (error == NULL)
    then = sy_store_as_at (store, "2026-02-01", NULL, NULL, &error);
  if (error == NULL)
    people = sy_store_people (store, &error);
  if (error == NULL)
    policy = sy_store_policy (store, &error);
  if (error == NULL)
    task = sy_store_find (store, "Blank to shear 2", NULL, &error);
  return error != NULL ? g_strdup (error->message) : NULL;
}

typedef struct
{
  guint refused, located, told, silent;
} Outcome;

/* Refused and untouched, or opened: then it is verified, asked, made anew, each of them ending, with words or without. */
static void
try_damaged (const Fixture *fixture, const char *label, Outcome *outcome)
{
  Before before = look (fixture->folder, fixture->path);
  g_autoptr (GError) error = NULL;
  g_autofree char *told = NULL;
  SyVerification found = { 0 };
  SyRebuild rebuild = { 0 };
  SyStore *store;

  /* One of ours is opened by SQLite before its damage shows, which may leave an empty log beside it. */
  before.files = 0;
  alarm (HANG_S);
  store = sy_store_open (fixture->path, &error);
  if (store == NULL)
    {
      faults_assert_words (error, fixture->path, label);
      assert_untouched (fixture->folder, fixture->path, &before, label);
      outcome->refused++;
      alarm (0);
      return;
    }
  g_clear_pointer (&before.bytes, g_bytes_unref);
  if (!sy_store_verify (store, NULL, NULL, NULL, &found, &error))
    faults_assert_words (error, fixture->path, label);
  g_clear_error (&error);
  told = ask_everything (store);
  if (!sy_store_rebuild (store, NULL, NULL, &rebuild, &error))
    faults_assert_words (error, fixture->path, label);
  if (found.fault != SY_FAULT_NONE && found.line <= 7)
    outcome->located++;
  else if (told != NULL || error != NULL || rebuild.n_different > 0)
    outcome->told++;
  else
    outcome->silent++;
  sy_verification_clear (&found);
  sy_rebuild_clear (&rebuild);
  sy_store_close (store);
  alarm (0);
}

static void
overwritten_pages_are_refused_or_told (void **state)
{
  enum { PAGE = 4096 };
  Fixture *fixture = *state;
  g_autoptr (GBytes) whole = faults_make (fixture->path, fixture->desk, 6);
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  Outcome outcome = { 0 };
  gsize size;
  const guint8 *data = g_bytes_get_data (whole, &size);

  assert_true (size % PAGE == 0);
  for (gsize page = 0; page < size / PAGE; page++)
    {
      g_autofree guint8 *copy = g_memdup2 (data, size);
      g_autoptr (GBytes) bytes = NULL;
      g_autofree char *label = g_strdup_printf ("noise in page %" G_GSIZE_FORMAT, page + 1);

      for (gsize i = 0; i < PAGE; i++)
        copy[page * PAGE + i] = (guint8) g_rand_int_range (random, 0, 256);
      bytes = g_bytes_new_take (g_steal_pointer (&copy), size);
      faults_put (fixture->path, bytes);
      try_damaged (fixture, label, &outcome);
    }
  print_message ("%" G_GSIZE_FORMAT " pages: %u refused, %u located by line, %u told otherwise, %u that nobody reads\n",
                 size / PAGE, outcome.refused, outcome.located, outcome.told, outcome.silent);
  assert_true (outcome.refused >= 1);
  assert_true (outcome.located >= 3);
}

static void
truncated_records_are_refused_or_told (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GBytes) whole = faults_make (fixture->path, fixture->desk, 6);
  Outcome outcome = { 0 };
  gsize size = g_bytes_get_size (whole);

  for (gsize length = 512; length < size; length += 512)
    {
      g_autoptr (GBytes) part = g_bytes_new_from_bytes (whole, 0, length);
      g_autofree char *label = g_strdup_printf ("cut after %" G_GSIZE_FORMAT " bytes", length);

      faults_put (fixture->path, part);
      try_damaged (fixture, label, &outcome);
    }
  print_message ("%" G_GSIZE_FORMAT " lengths: %u refused, %u located by line, %u told otherwise, %u that nobody reads\n",
                 (size - 1) / 512, outcome.refused, outcome.located, outcome.told, outcome.silent);
  assert_true (outcome.refused >= 1);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    WITH_FOLDER (other_files_are_refused),
    WITH_FOLDER (an_empty_file_becomes_a_record),
    WITH_FOLDER (what_may_not_be_written_is_refused),
    WITH_FOLDER (a_record_cannot_be_begun_where_nothing_may_be_written),
    WITH_FOLDER (overwritten_pages_are_refused_or_told),
    WITH_FOLDER (truncated_records_are_refused_or_told),
  };

  return cmocka_run_group_tests_name ("refusals", tests, NULL, NULL);
}
