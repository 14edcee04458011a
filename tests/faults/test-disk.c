/* SPDX-License-Identifier: MIT */
#include "faults-help.h"

#include "fault-vfs.h"
#include "sy-ledger-exchange.h"

/* A disk that is full or fails: every call of every kind that one act makes, in turn, once or from then on. Afterwards
   the record is exactly what it was or what it was to become, never between; what was acknowledged is there; and the
   error says so in words. */

typedef struct Act Act;
struct Act
{
  const char *name;
  gboolean opens;   /* the act is the opening itself: what failed is whole once it is opened again          */
  gboolean writes;  /* only the ways in which writing fails: what is big is for them                         */
  guint stride;     /* every so many calls are tried, all of them with STEELYARD_FAULTS_LONG                 */
  GBytes *(*make) (Fixture *fixture); /* the closed record to begin from; NULL: no file                     */
  gboolean (*run) (Fixture *fixture, SyLedger *ledger, SyHead *head, GError **error);
};

/* In base64 big enough that its log is written back into the record (SQLite does so from 1,000 pages of 4,096 bytes). */
#define BIG_BYTES (3u * 1024u * 1024u + 65536u)

static GBytes *
make_two (Fixture *fixture)
{
  return faults_make (fixture->path, fixture->desk, 2);
}

static GBytes *
make_format_1 (Fixture *fixture)
{
  g_autofree char *source = faults_source ("tests/core/store/format-1.store");

  (void) fixture;
  return faults_read (source);
}

static GBytes *
make_format_2 (Fixture *fixture)
{
  g_autofree char *source = faults_source ("tests/core/store/format-2.store");

  (void) fixture;
  return faults_read (source);
}

static gboolean
run_save (Fixture *fixture, SyLedger *ledger, SyHead *head, GError **error)
{
  return faults_record (ledger, fixture->desk, "Blank to shear 2", 90, -1, head, error);
}

static gboolean
run_deed (Fixture *fixture, SyLedger *ledger, SyHead *head, GError **error)
{
  const SyDeedRequest request = { .item = "Blank to shear 2", .by = "Q. Falk", .role = "foreman", .why = "as agreed",
                                  .now = "2026-06-01T08:00:00Z" };

  (void) fixture;
  return sy_ledger_sign (ledger, &request, 1, "trained 2025", head, error);
}

static gboolean
run_big (Fixture *fixture, SyLedger *ledger, SyHead *head, GError **error)
{
  g_autoptr (GBytes) content = g_bytes_new_take (g_malloc0 (BIG_BYTES), BIG_BYTES);
  const SyAttachRequest file = { .item = "Blank to shear 2", .name = "film.mp4", .by = "Q. Falk", .why = "as agreed",
                                 .now = "2026-06-01T08:00:00Z" };
  g_autoptr (SyAttachment) attached = sy_ledger_attach (ledger, &file, content, error);

  (void) fixture;
  if (attached == NULL)
    return FALSE;
  head->number = attached->line;
  head->hash = attached->hash;
  return TRUE;
}

/* Of an opening. */
static gboolean
run_open (Fixture *fixture, SyLedger *ledger, SyHead *head, GError **error)
{
  SyLedger *opened = sy_ledger_open (fixture->path, error);

  (void) ledger;
  *head = (SyHead) { 0 };
  sy_ledger_close (opened);
  return opened != NULL;
}

static const Act acts[] = {
 { "a save", FALSE, FALSE, 6, make_two, run_save }, { "a deed", FALSE, FALSE, 12, make_two, run_deed },
 { "a big file", FALSE, TRUE, 2000, make_two, run_big }, { "a new record", TRUE, FALSE, 8, NULL, run_open },
  { "format 1", TRUE, FALSE, 80, make_format_1, run_open }, { "format 2", TRUE, FALSE, 80, make_format_2, run_open },
};

/* What a kind of call can fail with. */
static const struct
{
  FaultCall call;
  int code;
} ways[] = {
  { FAULT_OPEN, SQLITE_CANTOPEN },
  { FAULT_OPEN, SQLITE_IOERR },
  { FAULT_READ, SQLITE_IOERR_READ },
  { FAULT_WRITE, SQLITE_FULL },
  { FAULT_WRITE, SQLITE_IOERR_WRITE },
  { FAULT_SYNC, SQLITE_IOERR_FSYNC },
  { FAULT_SYNC, SQLITE_FULL },
  { FAULT_TRUNCATE, SQLITE_IOERR_TRUNCATE },
  { FAULT_SHM_MAP, SQLITE_IOERR_SHMMAP },
  { FAULT_SHM_MAP, SQLITE_FULL },
  { FAULT_SHM_LOCK, SQLITE_IOERR_SHMLOCK },
  { FAULT_DELETE, SQLITE_IOERR_DELETE },
  { FAULT_FILE_SIZE, SQLITE_IOERR_FSTAT },
};

typedef struct
{
  Fixture *fixture;
  const Act *act;
  GBytes *before;
  char *old, *new;
  guint tried, failed, got_through;
} Trial;

static SyLedger *
begin (const Trial *trial)
{
  Fixture *fixture = trial->fixture;

  faults_empty_folder (fixture->folder);
  if (trial->before != NULL)
    faults_put (fixture->path, trial->before);
  return trial->act->opens ? NULL : faults_open (fixture->path);
}

/* In the connection that met the fault, and in a new one. */
static void
check_after (Trial *trial, SyLedger *ledger, gboolean done, const SyHead *head, const char *label)
{
  Fixture *fixture = trial->fixture;
  g_autofree char *is = faults_digest (fixture->path), *then = NULL;
  g_autoptr (SyLedger) again = NULL;
  gboolean is_new = strcmp (is, trial->new) == 0;
  const SyHash *known = done && head->number > 0 ? &head->hash : NULL;

  if (!is_new && strcmp (is, trial->old) != 0 && !(trial->old[0] == 'a' && strcmp (is, "empty") == 0))
    fail_msg ("%s: between what it was and what it was to become", label);
  if (done && !is_new)
    fail_msg ("%s: acknowledged and not there", label);
  if (!done && !trial->act->opens && is_new)
    fail_msg ("%s: there although it was said that nothing was recorded", label);
  if (ledger != NULL)
    faults_assert_holds (ledger, known, label);
  sy_ledger_close (ledger);
  again = faults_open (fixture->path);
  faults_assert_sound (again, known, label);
  then = faults_digest (fixture->path);
  if (strcmp (then, trial->act->opens ? trial->new : is) != 0)
    fail_msg ("%s: another one after it was opened again", label);
}

/* FALSE when the act makes fewer calls of that kind. */
static gboolean
try_one (Trial *trial, gsize way, guint nth, FaultManner manner)
{
  g_autofree char *label
    = g_strdup_printf ("%s, %s %u fails with %d %s", trial->act->name, fault_call_name (ways[way].call), nth,
                       ways[way].code, manner == FAULT_ONCE ? "once" : "from then on");
  SyLedger *ledger = begin (trial);
  g_autoptr (GError) error = NULL;
  SyHead head = { 0 };
  gboolean done, met;

  fault_vfs_arm (ways[way].call, nth, ways[way].code, manner);
  done = trial->act->run (trial->fixture, ledger, &head, &error);
  met = fault_vfs_disarm ();
  if (!done)
    faults_assert_words (error, trial->fixture->path, label);
  if (!done && !met)
    fail_msg ("%s: failed without a fault: %s", label, error->message);
  check_after (trial, ledger, done, &head, label);
  trial->tried++;
  if (!done)
    trial->failed++;
  else if (met)
    trial->got_through++;
  return met;
}

/* Once and from then on. */
#define N_MANNERS ((guint) FAULT_LASTING + 1)

static gboolean
is_left_out (const Act *act, FaultCall call)
{
  return act->writes && call != FAULT_WRITE && call != FAULT_SYNC;
}

static void
try_all (Trial *trial)
{
  const guint stride = g_getenv ("STEELYARD_FAULTS_LONG") != NULL ? 1 : trial->act->stride;

  for (gsize way = 0; way < G_N_ELEMENTS (ways); way++)
    for (guint manner = is_left_out (trial->act, ways[way].call) ? N_MANNERS : FAULT_ONCE; manner < N_MANNERS; manner++)
      for (guint nth = 1; try_one (trial, way, nth, (FaultManner) manner);)
        /* other calls for another way */
        nth += stride > 1 ? 1 + (nth + 7 * (guint) way) % (2 * stride - 1) : 1;
}

static void
run_act (void **state, const Act *act)
{
  Trial trial = { .fixture = *state, .act = act };
  SyLedger *ledger;
  SyHead head;

  if (act->make != NULL)
    trial.before = act->make (trial.fixture);
  ledger = begin (&trial);
  trial.old = faults_digest (trial.fixture->path);
  assert_true (act->run (trial.fixture, ledger, &head, NULL));
  sy_ledger_close (ledger);
  trial.new = faults_digest (trial.fixture->path);
  assert_string_not_equal (trial.old, trial.new);
  try_all (&trial);
  print_message ("%s: %u faults, %u of them told, %u got through\n", act->name, trial.tried, trial.failed,
                 trial.got_through);
  assert_true (trial.failed > 10);
  g_free (trial.old);
  g_free (trial.new);
  g_clear_pointer (&trial.before, g_bytes_unref);
}

static void
a_save_is_whole (void **state)
{
  run_act (state, &acts[0]);
}

static void
a_deed_is_whole (void **state)
{
  run_act (state, &acts[1]);
}

static void
a_big_file_is_whole (void **state)
{
  run_act (state, &acts[2]);
}

static void
a_new_record_is_whole (void **state)
{
  run_act (state, &acts[3]);
}

static void
format_1_is_whole (void **state)
{
  run_act (state, &acts[4]);
}

static void
format_2_is_whole (void **state)
{
  run_act (state, &acts[5]);
}

/* The record that could not be written is written as soon as it can be, in the same connection. */
static void
what_failed_works_once_there_is_room (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GBytes) before = faults_make (fixture->path, fixture->desk, 2);
  g_autoptr (SyLedger) ledger = faults_open (fixture->path);
  g_autoptr (GError) error = NULL;
  SyHead was, is;

  assert_true (sy_ledger_head (ledger, &was, NULL));
  fault_vfs_arm (FAULT_WRITE, 1, SQLITE_FULL, FAULT_LASTING);
  for (guint i = 0; i < 3; i++)
    {
      g_clear_error (&error);
      assert_false (faults_record (ledger, fixture->desk, "Blank to shear 2", 30, -1, NULL, &error));
      assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_WRITE));
      assert_non_null (strstr (error->message, "the disk is full"));
    }
  assert_true (fault_vfs_disarm ());
  assert_true (faults_record (ledger, fixture->desk, "Blank to shear 2", 30, -1, &is, NULL));
  assert_int_equal (is.number, was.number + 1);
  faults_assert_sound (ledger, &is.hash, "after there was room");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    WITH_FOLDER (a_save_is_whole),
    WITH_FOLDER (a_deed_is_whole),
    WITH_FOLDER (a_big_file_is_whole),
    WITH_FOLDER (a_new_record_is_whole),
    WITH_FOLDER (format_1_is_whole),
    WITH_FOLDER (format_2_is_whole),
    WITH_FOLDER (what_failed_works_once_there_is_room),
  };

  fault_vfs_install ();
  return cmocka_run_group_tests_name ("disk", tests, NULL, NULL);
}
