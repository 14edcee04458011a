/* SPDX-License-Identifier: MIT */
#include "faults-help.h"

#include <signal.h>
#include <sys/wait.h>

#include "fault-vfs.h"
#include "sy-ledger-exchange.h"

/* Programs that are killed while they write: at random moments, and before every single call to the disk that changes
   something. What was acknowledged is there, what was not is there whole or not at all. */

#define SEED 20261126u

static guint n_kills = 50;
/* 500 and more: every call, nothing left out. */
#define LONG_RUN 500u

/* What a child says on its pipe after a call has returned. */
typedef struct
{
  SyHead head;
} Ack;

typedef struct
{
  const char *path;
  SyDesk *desk;
  GBytes *bundle;
  guint from; /* number of the child's first write */
} Job;

/* One write; FALSE with the error. */
typedef gboolean (*Write) (const Job *job, SyLedger *ledger, guint n, SyHead *head, GError **error);

static gboolean
write_revision (const Job *job, SyLedger *ledger, guint n, SyHead *head, GError **error)
{
  g_autofree char *task = g_strdup_printf ("Task %u", n % 7);

  return faults_record (ledger, job->desk, task, n, -1, head, error);
}

static gboolean
write_deed (const Job *job, SyLedger *ledger, guint n, SyHead *head, GError **error)
{
  g_autofree char *now = faults_time (n), *id = NULL;
  const SyDeedRequest request = { .item = "Blank to shear 2", .by = "Q. Falk", .role = "foreman", .why = "as agreed",
                                  .now = now };
  g_autoptr (GBytes) content = g_bytes_new ("certificate", 11);
  const SyAttachRequest file = { .item = "Blank to shear 2", .name = "certificate.txt", .by = "Q. Falk",
                                 .why = "as agreed", .now = now };
  g_autoptr (SyAttachment) attached = NULL;

  (void) job;
  switch (n % 4)
    {
    case 0:
      return sy_ledger_sign (ledger, &request, 1, "trained 2025", head, error);
    case 1:
      return sy_ledger_open_action (ledger, &request, "Fit a stop", NULL, "I. Tannick", NULL, &id, head, error);
    case 2:
      return sy_ledger_set_review (ledger, &request, SY_TRIGGER_ACCIDENT, NULL, head, error);
    default:
      attached = sy_ledger_attach (ledger, &file, content, error);
      return attached != NULL && sy_ledger_head (ledger, head, error);
    }
}

static gboolean
write_import (const Job *job, SyLedger *ledger, guint n, SyHead *head, GError **error)
{
  g_autofree char *now = faults_time (n);
  const SyImportRequest request = { .by = "Q. Falk", .role = "foreman", .why = "as agreed", .now = now };
  SyImportReport report = { 0 };

  if (!sy_ledger_import (ledger, job->bundle, &request, NULL, NULL, &report, error))
    return FALSE;
  *head = report.head;
  sy_import_report_clear (&report);
  return TRUE;
}

/* Opening is the write. */
static gboolean
write_nothing (const Job *job, SyLedger *ledger, guint n, SyHead *head, GError **error)
{
  (void) job;
  (void) n;
  return sy_ledger_head (ledger, head, error);
}

/* The child; never returns. @n_writes 0: until it is killed. */
static void
run_child (const Job *job, Write write_one, guint n_writes, int out)
{
  g_autoptr (GError) error = NULL;
  SyLedger *ledger = sy_ledger_open (job->path, &error);

  for (guint i = 0; ledger != NULL && (n_writes == 0 || i < n_writes); i++)
    {
      Ack ack = { 0 };

      if (!write_one (job, ledger, job->from + i, &ack.head, &error))
        break;
      if (write (out, &ack, sizeof ack) != sizeof ack)
        _exit (5);
    }
  if (error == NULL)
    _exit (0);
  g_printerr ("child: %s\n", error->message);
  _exit (4);
}

typedef struct
{
  pid_t pid;
  int in;
} Child;

static Child
begin_child (const Job *job, Write write_one, guint n_writes, guint die_at)
{
  int ends[2];
  Child child;

  assert_int_equal (pipe (ends), 0);
  child.pid = fork ();
  assert_true (child.pid >= 0);
  if (child.pid == 0)
    {
      close (ends[0]);
      if (die_at > 0)
        fault_vfs_arm (FAULT_ANY, die_at, SQLITE_OK, FAULT_KILL);
      run_child (job, write_one, n_writes, ends[1]);
    }
  close (ends[1]);
  child.in = ends[0];
  return child;
}

/* Adds what was acknowledged until the pipe ends or @limit more are there. */
static void
read_acks (Child *child, GArray *acks, guint limit)
{
  Ack ack;

  for (guint i = 0; i < limit && read (child->in, &ack, sizeof ack) == sizeof ack; i++)
    g_array_append_val (acks, ack);
}

/* TRUE when it was killed, FALSE when it came to its end by itself; anything else fails. */
static gboolean
end_child (Child *child, GArray *acks, const char *label)
{
  int status;

  read_acks (child, acks, G_MAXUINT);
  close (child->in);
  assert_int_equal (waitpid (child->pid, &status, 0), child->pid);
  if (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL)
    return TRUE;
  if (!WIFEXITED (status) || WEXITSTATUS (status) != 0)
    fail_msg ("%s: the child ended with %d", label, status);
  return FALSE;
}

static void
kill_after (Child *child, GArray *acks, GRand *random, guint acks_before, gint64 span_us)
{
  read_acks (child, acks, acks_before);
  g_usleep ((gulong) g_rand_double_range (random, 0, (double) span_us));
  assert_int_equal (kill (child->pid, SIGKILL), 0);
}

static gboolean
is_acknowledged (const Ack *ack, gint64 number, const guint8 *hash)
{
  return (gint64) ack->head.number == number && hash != NULL && memcmp (&ack->head.hash, hash, SY_HASH_BYTES) == 0;
}

/* Read past the store. @lines receives how many there are in all. */
static guint
count_found (const char *path, GArray *acks, guint64 *lines)
{
  sqlite3 *db = faults_open_bare (path);
  sqlite3_stmt *rows;
  guint found = 0;

  *lines = 0;
  assert_int_equal (sqlite3_prepare_v2 (db, "SELECT number, hash FROM journal ORDER BY number", -1, &rows, NULL), SQLITE_OK);
  while (sqlite3_step (rows) == SQLITE_ROW)
    {
      (*lines)++;
      for (guint i = 0; i < acks->len; i++)
        if (is_acknowledged (&g_array_index (acks, Ack, i), sqlite3_column_int64 (rows, 0), sqlite3_column_blob (rows, 1)))
          found++;
    }
  sqlite3_finalize (rows);
  sqlite3_close (db);
  return found;
}

/* Every acknowledged head is in the journal; all of them, not only those of the last child. Return value: how many lines
   there are. */
static guint64
assert_all_there (const char *path, GArray *acks, gboolean and_lists, const char *label)
{
  SyLedger *ledger = faults_open (path);
  const SyHash *known = NULL;
  guint64 lines;
  guint found = count_found (path, acks, &lines);

  /* The head of an empty journal is no line. */
  for (guint i = 0; i < acks->len; i++)
    if (g_array_index (acks, Ack, i).head.number == 0)
      found++;
    else
      known = &g_array_index (acks, Ack, i).head.hash;
  if (found != acks->len)
    fail_msg ("%s: of %u acknowledged saves only %u are there", label, acks->len, found);
  if (and_lists)
    faults_assert_sound (ledger, known, label);
  else
    faults_assert_holds (ledger, known, label);
  sy_ledger_close (ledger);
  return lines;
}

/* How long one write of a child takes, in microseconds, its opening not counted. */
static gint64
measure (const Job *job, Write write_one, GArray *acks)
{
  Child child = begin_child (job, write_one, 4, 0);
  gint64 start;

  read_acks (&child, acks, 1);
  start = g_get_monotonic_time ();
  read_acks (&child, acks, 3);
  start = g_get_monotonic_time () - start;
  assert_false (end_child (&child, acks, "to measure"));
  return start / 3;
}

static void
kill_many (void **state, Write write_one, guint kills)
{
  Fixture *fixture = *state;
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  g_autoptr (GArray) acks = g_array_new (FALSE, FALSE, sizeof (Ack));
  g_autoptr (GBytes) before = faults_make (fixture->path, fixture->desk, 2);
  Job job = { fixture->path, fixture->desk, NULL, 0 };
  gint64 span = measure (&job, write_one, acks);
  guint64 last = 0;

  for (guint i = 0; i < kills; i++)
    {
      g_autofree char *label = g_strdup_printf ("kill %u", i + 1);
      guint acks_before = (guint) g_rand_int_range (random, 0, 4), had = acks->len;
      Child child;
      guint64 lines;

      job.from = 8 * (i + 1);
      child = begin_child (&job, write_one, 0, 0);
      /* Without an ack to wait for, it is hit while it opens what the one before it left. */
      kill_after (&child, acks, random, acks_before, acks_before == 0 ? 3 * span : span);
      assert_true (end_child (&child, acks, label));
      /* To make the lists anew is what costs most here. */
      lines = assert_all_there (fixture->path, acks, kills >= LONG_RUN || i % 5 == 4 || i + 1 == kills, label);
      /* One more than was acknowledged may have got in, and the policy never twice. */
      assert_true (lines >= last + (acks->len - had));
      assert_true (lines <= last + (acks->len - had) + 1 || last == 0);
      last = lines;
    }
  print_message ("%u kills, %u acknowledged, %" G_GUINT64_FORMAT " lines\n", kills, acks->len, last);
  assert_true (acks->len >= kills / 2);
}

static void
saves_survive_kills (void **state)
{
  kill_many (state, write_revision, n_kills);
}

static void
deeds_survive_kills (void **state)
{
  kill_many (state, write_deed, n_kills / 5);
}

/* A bundle of the record that stands in @path, of which @path then loses everything. */
static GBytes *
make_bundle (Fixture *fixture)
{
  g_autoptr (GBytes) made = faults_make (fixture->path, fixture->desk, 6);
  g_autoptr (GError) error = NULL;
  GBytes *bundle;

  {
    g_autoptr (SyLedger) ledger = faults_open (fixture->path);

    bundle = sy_ledger_export (ledger, NULL, NULL, NULL, &error);
  }
  if (bundle == NULL)
    fail_msg ("%s", error->message);
  faults_empty_folder (fixture->folder);
  return bundle;
}

/* The copies from before that are whole: of the old format, with the same journal. */
static guint
count_whole_copies (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint count = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      sqlite3_stmt *lines = NULL;
      sqlite3 *db;

      if (strstr (name, ".before-") == NULL || g_str_has_suffix (name, "-wal") || g_str_has_suffix (name, "-shm")
          || g_str_has_suffix (name, "-journal"))
        continue;
      db = faults_open_bare (path);
      if (sqlite3_prepare_v2 (db, "SELECT count (*) FROM journal", -1, &lines, NULL) == SQLITE_OK
          && sqlite3_step (lines) == SQLITE_ROW && sqlite3_column_int (lines, 0) > 0)
        count++;
      sqlite3_finalize (lines);
      sqlite3_close (db);
    }
  return count;
}

typedef struct
{
  Write write_one;
  GBytes *before;   /* the bytes to begin from, NULL: no file                                     */
  gboolean opening; /* the write is the opening: whatever is left is opened first, as a user does */
  gboolean copies;  /* a copy from before is there afterwards                                     */
  guint stride;     /* every so many calls are tried, all of them in the long run                 */
} Everywhere;

/* Killed before the calls that change something on the disk, one after the other: afterwards the record is what it was or
   what it was to become, and, where it was acknowledged, that. */
static void
kill_everywhere (Fixture *fixture, const Job *job, const Everywhere *what)
{
  const guint stride = n_kills >= LONG_RUN ? 1 : what->stride;
  g_autofree char *old = NULL, *new = NULL;
  guint killed = 0, kept_new = 0;

  for (guint nth = 0;; nth += nth == 0 ? 1 : stride)
    {
      g_autoptr (GArray) acks = g_array_new (FALSE, FALSE, sizeof (Ack));
      g_autofree char *label = g_strdup_printf ("killed before call %u", nth), *is = NULL;
      Child child;
      gboolean was_killed;

      faults_empty_folder (fixture->folder);
      if (what->before != NULL)
        faults_put (fixture->path, what->before);
      if (nth == 0)
        old = faults_digest (fixture->path);
      child = begin_child (job, what->write_one, 1, nth);
      was_killed = end_child (&child, acks, label);
      if (what->opening)
        sy_ledger_close (faults_open (fixture->path));
      is = faults_digest (fixture->path);
      if (nth == 0)
        {
          assert_int_equal (acks->len, 1);
          new = g_steal_pointer (&is);
          continue;
        }
      if (strcmp (is, new) == 0)
        kept_new++;
      else if (what->opening || strcmp (is, old) != 0 || acks->len > 0)
        fail_msg ("%s: neither what it was nor what it was to become (%u acknowledged)", label, acks->len);
      assert_all_there (fixture->path, acks, TRUE, label);
      if (what->copies && count_whole_copies (fixture->folder) == 0)
        fail_msg ("%s: no copy from before", label);
      if (!was_killed)
        break;
      killed++;
    }
  print_message ("killed before each of %u calls; %u times it was there all the same\n", killed, kept_new);
  assert_true (killed >= 3);
  assert_true (kept_new >= 1);
}

static void
a_save_is_whole_wherever_it_is_killed (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GBytes) before = faults_make (fixture->path, fixture->desk, 2);
  const Job job = { fixture->path, fixture->desk, NULL, 100 };

  kill_everywhere (fixture, &job, &(Everywhere) { write_revision, before, .stride = 3 });
}

static void
a_deed_is_whole_wherever_it_is_killed (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GBytes) before = faults_make (fixture->path, fixture->desk, 2);
  const Job job = { fixture->path, fixture->desk, NULL, 101 };

  kill_everywhere (fixture, &job, &(Everywhere) { write_deed, before, .stride = 6 });
}

static void
an_import_is_whole_wherever_it_is_killed (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GBytes) bundle = make_bundle (fixture);
  g_autoptr (GBytes) before = NULL;
  const Job job = { fixture->path, fixture->desk, bundle, 100 };

  {
    g_autoptr (SyLedger) ledger = faults_open (fixture->path);

    assert_true (faults_record (ledger, fixture->desk, "Own task", 50, -1, NULL, NULL));
  }
  before = faults_read (fixture->path);
  kill_everywhere (fixture, &job, &(Everywhere) { write_import, before, .stride = 8 });
}

static void
a_new_record_is_whole_wherever_it_is_killed (void **state)
{
  Fixture *fixture = *state;
  const Job job = { fixture->path, fixture->desk, NULL, 0 };

  kill_everywhere (fixture, &job, &(Everywhere) { write_nothing, NULL, .opening = TRUE, .stride = 4 });
}

static void
kill_upgrades (void **state, const char *name)
{
  Fixture *fixture = *state;
  g_autofree char *source = faults_source (name);
  g_autoptr (GBytes) before = faults_read (source);
  const Job job = { fixture->path, fixture->desk, NULL, 0 };

  kill_everywhere (fixture, &job, &(Everywhere) { write_nothing, before, TRUE, TRUE, .stride = 30 });
}

static void
format_1_is_whole_wherever_its_upgrade_is_killed (void **state)
{
  kill_upgrades (state, "tests/core/store/format-1.store");
}

static void
format_2_is_whole_wherever_its_upgrade_is_killed (void **state)
{
  kill_upgrades (state, "tests/core/store/format-2.store");
}

/* test-kill [KILLS] */
int
main (int argc, char **argv)
{
  const struct CMUnitTest tests[] = {
    WITH_FOLDER (saves_survive_kills),
    WITH_FOLDER (deeds_survive_kills),
    WITH_FOLDER (a_save_is_whole_wherever_it_is_killed),
    WITH_FOLDER (a_deed_is_whole_wherever_it_is_killed),
    WITH_FOLDER (an_import_is_whole_wherever_it_is_killed),
    WITH_FOLDER (a_new_record_is_whole_wherever_it_is_killed),
    WITH_FOLDER (format_1_is_whole_wherever_its_upgrade_is_killed),
    WITH_FOLDER (format_2_is_whole_wherever_its_upgrade_is_killed),
  };

  if (argc > 1)
    n_kills = (guint) strtoul (argv[1], NULL, 10);
  fault_vfs_install ();
  return cmocka_run_group_tests_name ("kill", tests, NULL, NULL);
}
