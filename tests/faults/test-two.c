/* SPDX-License-Identifier: MIT */
#include "faults-help.h"

#include <sys/wait.h>

/* Two programs that write to one record at once, on the same tasks and from bases that are no longer the latest, while a
   third looks on: no save is lost, every clash shows, and both revisions of it are kept. */

#define N_SAVES 200u
#define N_TASKS 5u

typedef struct
{
  char task[32];
  guint64 line;
  SyHash hash;
  gint64 base, revision;
} Saved;

/* Nobody reads before a writer has ended: a pipe holds that much on every Linux. */
G_STATIC_ASSERT (N_SAVES * sizeof (Saved) <= 65536);

static gboolean
save (SyLedger *ledger, SyDesk *desk, const char *by, const char *task, guint n, gint64 base, Saved *saved, GError **error)
{
  g_autofree char *facts = faults_facts (n), *now = faults_time (n);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyRecordRequest request = { .task = task, .by = by, .why = "Measured anew", .base = base, .now = now };
  SyRecordResult result = { NULL };

  if (!sy_ledger_record (ledger, desk, &request, facts, strlen (facts), problems, &result, error))
    return FALSE;
  *saved = (Saved) { .line = result.head.number, .hash = result.head.hash, .base = base, .revision = result.revision };
  g_strlcpy (saved->task, task, sizeof saved->task);
  sy_record_result_clear (&result);
  return TRUE;
}

/* Looks at a task, dawdles now and then, and saves from what it saw. */
static void
run_writer (const char *path, SyDesk *desk, const char *by, guint seed, int out)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  g_autoptr (GError) error = NULL;
  SyLedger *ledger = sy_ledger_open (path, &error);

  for (guint i = 0; ledger != NULL && i < N_SAVES; i++)
    {
      g_autofree char *task = g_strdup_printf ("Task %u", (guint) g_rand_int_range (random, 0, N_TASKS));
      g_autoptr (SyTask) seen = sy_ledger_find (ledger, task, NULL, &error);
      Saved saved = { 0 };

      if (seen == NULL)
        break;
      if (g_rand_int_range (random, 0, 4) == 0)
        g_usleep ((gulong) g_rand_int_range (random, 0, 20000));
      if (!save (ledger, desk, by, task, seed + i, seen->revision, &saved, &error)
          || write (out, &saved, sizeof saved) != sizeof saved)
        break;
    }
  sy_ledger_close (ledger);
  if (error == NULL)
    _exit (0);
  g_printerr ("writer: %s\n", error->message);
  _exit (4);
}

static pid_t
begin_writer (const Fixture *fixture, const char *by, guint seed, int *in)
{
  int ends[2];
  pid_t pid;

  assert_int_equal (pipe (ends), 0);
  pid = fork ();
  assert_true (pid >= 0);
  if (pid == 0)
    {
      close (ends[0]);
      run_writer (fixture->path, fixture->desk, by, seed, ends[1]);
    }
  close (ends[1]);
  *in = ends[0];
  return pid;
}

static void
begin_tasks (const Fixture *fixture)
{
  g_autoptr (SyLedger) ledger = faults_open (fixture->path);

  for (guint i = 0; i < N_TASKS; i++)
    {
      g_autofree char *task = g_strdup_printf ("Task %u", i);

      assert_true (faults_record (ledger, fixture->desk, task, i, -1, NULL, NULL));
    }
}

/* What a window does: asks for what changed since the line that it knows. */
static guint
look_on (SyLedger *ledger, SyHead *seen)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) changed = sy_ledger_changed_since (ledger, seen->number, &error);
  SyHead head;

  if (changed == NULL)
    fail_msg ("%s", error->message);
  assert_true (sy_ledger_head (ledger, &head, NULL));
  assert_true (head.number >= seen->number);
  *seen = head;
  return changed->len;
}

static gboolean
hash_equal (const SyHash *a, const SyHash *b)
{
  return memcmp (a, b, sizeof *a) == 0;
}

/* The line that a writer was told of holds its revision, of the task and from the base that it meant. */
static void
assert_kept (SyLedger *ledger, const Saved *saved, GHashTable *histories)
{
  GPtrArray *history = g_hash_table_lookup (histories, saved->task);
  const SyRevision *revision;

  if (history == NULL)
    {
      history = sy_ledger_history (ledger, saved->task, NULL, NULL);
      g_hash_table_insert (histories, g_strdup (saved->task), history);
    }
  assert_true (saved->revision <= (gint64) history->len);
  revision = history->pdata[saved->revision - 1];
  assert_int_equal (revision->number, saved->line);
  assert_true (hash_equal (&revision->hash, &saved->hash));
  assert_int_equal (revision->event->base, saved->base);
}

static guint
read_all (int in, SyLedger *ledger, GHashTable *histories, guint *stale)
{
  Saved saved;
  guint count = 0;

  while (read (in, &saved, sizeof saved) == sizeof saved)
    {
      assert_kept (ledger, &saved, histories);
      if (saved.base != saved.revision - 1)
        (*stale)++;
      count++;
    }
  close (in);
  return count;
}

/* Saves of two people from one base: shown on the task, the one that was there named, both in the history. */
static void
assert_a_clash_shows (const Fixture *fixture, SyLedger *ledger)
{
  g_autoptr (SyLedger) other = faults_open (fixture->path);
  g_autoptr (SyTask) before = sy_ledger_find (ledger, "Task 0", NULL, NULL), after = NULL, settled = NULL;
  g_autoptr (GPtrArray) history = NULL;
  Saved first, second, third;
  gint64 base;

  /* a fresh start, by one who has seen everything */
  assert_true (save (ledger, fixture->desk, "Ivo Tannick", "Task 0", 900, before->revision, &first, NULL));
  base = first.revision;
  assert_true (save (ledger, fixture->desk, "Ivo Tannick", "Task 0", 901, base, &first, NULL));
  assert_true (save (other, fixture->desk, "Dessa Hollin", "Task 0", 902, base, &second, NULL));
  after = sy_ledger_find (ledger, "Task 0", NULL, NULL);
  assert_int_equal (after->revision, second.revision);
  assert_int_equal (after->clash, first.revision);
  history = sy_ledger_history (ledger, "Task 0", NULL, NULL);
  assert_int_equal (history->len, second.revision);
  assert_true (save (ledger, fixture->desk, "Ivo Tannick", "Task 0", 903, second.revision, &third, NULL));
  settled = sy_ledger_find (other, "Task 0", NULL, NULL);
  assert_int_equal (settled->clash, 0);
}

static void
two_programs_lose_nothing (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GHashTable) histories
    = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_ptr_array_unref);
  guint stale = 0, looks = 0, changes = 0;
  int in[2], left = 2;
  SyHead seen = { 0 }, end;
  pid_t pids[2];

  begin_tasks (fixture);
  pids[0] = begin_writer (fixture, "Ivo Tannick", 10000, &in[0]);
  pids[1] = begin_writer (fixture, "Dessa Hollin", 20000, &in[1]);

  g_autoptr (SyLedger) ledger = faults_open (fixture->path);
  while (left > 0)
    {
      int status;
      pid_t ended = waitpid (-1, &status, WNOHANG);

      if (ended > 0)
        {
          assert_true (ended == pids[0] || ended == pids[1]);
          if (!WIFEXITED (status) || WEXITSTATUS (status) != 0)
            fail_msg ("a writer ended with %d", status);
          left--;
        }
      changes += look_on (ledger, &seen);
      looks++;
      g_usleep (5000);
    }
  assert_int_equal (read_all (in[0], ledger, histories, &stale), N_SAVES);
  assert_int_equal (read_all (in[1], ledger, histories, &stale), N_SAVES);
  assert_true (sy_ledger_head (ledger, &end, NULL));
  assert_int_equal (end.number, 1 + N_TASKS + 2 * N_SAVES); /* the policy, once */
  print_message ("%u saves of two programs, %u of them from a base that was not the latest; %u changes seen in %u looks\n",
                 2 * N_SAVES, stale, changes, looks);
  assert_true (stale >= 5);
  assert_true (changes >= N_TASKS);
  assert_a_clash_shows (fixture, ledger);
  faults_assert_sound (ledger, &end.hash, "after two programs");
}

int
main (void)
{
  const struct CMUnitTest tests[] = { WITH_FOLDER (two_programs_lose_nothing) };

  return cmocka_run_group_tests_name ("two", tests, NULL, NULL);
}
