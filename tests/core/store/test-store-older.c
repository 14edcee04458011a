/* SPDX-License-Identifier: MIT */
#include "store-file.h"

/* Records that older editions made. format-1.store was made by the last edition of format 1: four tasks, the first with
   three revisions of which two clash. format-2.store was made by the last edition of format 2: a task with a clash, a die,
   an item of gear with a file, and a plan under another policy. format-3.store was made by the last edition of format 3: a
   task of two revisions, the second signed and with an open action, and a changeover. What is expected here is what these
   editions printed. */

#define OLD "format-1.store"
#define COPY ".before-4"

static const struct
{
  guint64 number;
  const char *hash;
} old_lines[] = {
  { 2, "670ef1510857cb0e89fe44512b296db78eb9a57e7989b69c1cd7a06b9171ea1c" },
  { 3, "621dcfa809ed83d27158052eeb79b2e410fd9ec683cc27158932a59bf4660bb2" },
  { 4, "445d74bcdbdb955b76bb5d506894a189232c91e5c386bd9c229507f6926ec326" },
  { 5, "547cb60d2e09019bab912c8aae404af56d10ef3d275c6f465a3cb8c87ea4a8e5" },
  { 6, "4ad9574d8749c32b0f54516b118e670c5d4f1feb8f6f5c84e173ed03d3bb7037" },
  { 7, "388e6a86a990f89b5677d98db23e65d33ecb762d7cea356559bce7784fa59e0e" },
};

static const struct
{
  const char *id, *name;
  SyVerdict verdict;
  double index, mass_kg, rank;
  gint64 revision, clash;
} old_tasks[] = {
  { "ecc06decec57cd94", "Nähe Tor", SY_VERDICT_MECHANICAL, INFINITY, 2, INFINITY, 1, 0 },
  { "099ddf9f18caba6d", "Blank to shear 2", SY_VERDICT_MECHANICAL, 4.725024818192859, 30, 567.002978183143, 3, 2 },
  { "ea7d6d7311968eca", "Bench", SY_VERDICT_OUTSIDE, 0.29059771105869586, 5, 17.435862663521753, 1, 0 },
  { "d81794f96a0b7e97", "Rings, cold", SY_VERDICT_BY_HAND, 0.2250661131707439, 4.082331330000001,
    6.751983395122317, 1, 0 },
};

/* A copy of the old record in the folder of the test. */
static void
take_sample (const char *path, const char *name)
{
  g_autofree char *source
    = g_build_filename (g_getenv ("SY_SOURCE_DIR"), "tests", "core", "store", name, NULL);
  g_autoptr (GBytes) bytes = read_file (source);

  write_at (path, 0, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

static void
take_old (const char *path)
{
  take_sample (path, OLD);
}

static void
assert_version (const char *path, int expected)
{
  sqlite3 *db = open_past_the_store (path);
  sqlite3_stmt *statement;

  assert_int_equal (sqlite3_prepare_v2 (db, "PRAGMA user_version", -1, &statement, NULL), SQLITE_OK);
  assert_int_equal (sqlite3_step (statement), SQLITE_ROW);
  assert_int_equal (sqlite3_column_int (statement, 0), expected);
  sqlite3_finalize (statement);
  assert_int_equal (sqlite3_close (db), SQLITE_OK);
}

typedef struct
{
  SyHead end;
  gsize revisions;
} Chain;

static gboolean
check_line_cb (const SyLine *line, gpointer user_data)
{
  Chain *chain = user_data;
  g_autoptr (GBytes) bytes = sy_event_encode (line->event);
  g_autofree char *hash = NULL;

  chain->end.number++;
  sy_chain_next (&chain->end.hash, chain->end.number, bytes, &chain->end.hash);
  assert_int_equal (line->number, chain->end.number);
  assert_memory_equal (&line->hash, &chain->end.hash, sizeof chain->end.hash);
  if (line->event->kind != SY_EVENT_REVISION)
    return TRUE;
  hash = sy_hash_text (&line->hash);
  assert_true (chain->revisions < G_N_ELEMENTS (old_lines));
  assert_int_equal (line->number, old_lines[chain->revisions].number);
  assert_string_equal (hash, old_lines[chain->revisions].hash);
  chain->revisions++;
  return TRUE;
}

static void
assert_old_content (SyStore *store)
{
  g_autoptr (GPtrArray) tasks = sy_store_list (store, NULL, 0, NULL);
  Chain chain = { 0 };

  assert_true (sy_store_scan (store, 1, check_line_cb, &chain, NULL));
  assert_int_equal (chain.revisions, G_N_ELEMENTS (old_lines));
  assert_int_equal (help_head (store).number, 7);
  assert_int_equal (tasks->len, G_N_ELEMENTS (old_tasks));
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];

      assert_string_equal (task->id, old_tasks[i].id);
      assert_string_equal (task->name, old_tasks[i].name);
      assert_string_equal (task->item_kind, "task");
      assert_int_equal (task->verdict, old_tasks[i].verdict);
      assert_same_bits (task->index, old_tasks[i].index);
      assert_same_bits (task->mass_kg, old_tasks[i].mass_kg);
      assert_same_bits (task->rank, old_tasks[i].rank);
      assert_int_equal (task->revision, old_tasks[i].revision);
      assert_int_equal (task->clash, old_tasks[i].clash);
      assert_string_equal (task->valid_until, "");
    }
  help_assert_search (store, "tannick", "ecc06decec57cd94"); /* of the clash, the latest was by another */
  help_assert_search (store, "scale", "099ddf9f18caba6d");
}

static void
an_old_record_opens_as_it_was (void **state)
{
  const char *path = path_of (state);
  g_autoptr (SyStore) store = NULL;

  take_old (path);
  store = open_store (path);
  assert_old_content (store);
  help_append (store, help_revision ("new", 1, "New", "by-hand", "1", "1"), NULL, NULL, NULL);
  sy_store_close (g_steal_pointer (&store));
  assert_version (path, 4);
  store = open_store (path); /* and opens like any other from now on */
  assert_int_equal (help_head (store).number, 8);
}

static void
a_record_of_format_2_opens_as_it_was (void **state)
{
  static const struct
  {
    const char *id, *item_kind, *valid_until;
    SyVerdict verdict;
    gint64 revision, clash;
  } items[] = {
    { "4590120e619754e2", SY_ITEM_TASK, "", SY_VERDICT_IMPROVE, 3, 2 },
    { "6aca2d10c2ae39aa", SY_ITEM_TASK, "2027-01-06", SY_VERDICT_DO_NOT_LIFT, 1, 0 },
    { "30f84dfc6fa24d38", SY_ITEM_DIE, "", SY_VERDICT_MECHANICAL, 1, 0 },
    { "549333e2fcf5e7c6", SY_ITEM_GEAR, "2027-01-06", SY_VERDICT_WITHIN_CAPACITY, 1, 0 },
  };
  const char *path = path_of (state);
  g_autofree char *copy = g_strconcat (path, COPY, NULL);
  g_autoptr (SyStore) store = NULL;
  g_autoptr (GPtrArray) tasks = NULL, rows = NULL, past = NULL;
  SyVerification found;
  SyRebuild rebuild;
  SyHash head;

  take_sample (path, "format-2.store");
  store = open_store (path);
  assert_version (copy, 2);
  assert_true (sy_hash_from_text ("8bbcb6447177c85ba2eedfaf80830dec9441a0d80401a9ce131f3321691d8431", &head));
  assert_true (sy_store_verify (store, &head, NULL, NULL, &found, NULL));
  assert_int_equal (found.fault, SY_FAULT_NONE);
  assert_int_equal (found.known_at, 9);
  tasks = sy_store_list (store, NULL, 0, NULL);
  assert_int_equal (tasks->len, G_N_ELEMENTS (items));
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];

      assert_string_equal (task->id, items[i].id);
      assert_string_equal (task->item_kind, items[i].item_kind);
      assert_string_equal (task->valid_until, items[i].valid_until);
      assert_int_equal (task->verdict, items[i].verdict);
      assert_int_equal (task->revision, items[i].revision);
      assert_int_equal (task->clash, items[i].clash);
    }
  assert_same_bits (((SyTask *) tasks->pdata[0])->rank, 143.04936506601635);
  assert_string_equal (((SyTask *) tasks->pdata[1])->policy, "steelyard-default 90");
  rows = sy_store_journal (store, &(SyJournalFilter) { .kind = SY_EVENT_ATTACHMENT }, 0, 0, NULL);
  assert_int_equal (rows->len, 1);
  assert_string_equal (((SyJournalRow *) rows->pdata[0])->words, "report.txt");
  assert_string_equal (((SyJournalRow *) rows->pdata[0])->name, "Shackle S-1");
  past = sy_store_as_at (store, "2026-09-14", NULL, NULL, NULL);
  assert_int_equal (past->len, 1);
  assert_int_equal (((SyTask *) past->pdata[0])->revision, 1);
  assert_true (sy_store_rebuild (store, NULL, NULL, &rebuild, NULL));
  assert_int_equal (rebuild.n_different, 0);
  sy_rebuild_clear (&rebuild);
}

static void
a_record_of_format_3_opens_as_it_was (void **state)
{
  const char *path = path_of (state);
  g_autofree char *copy = g_strconcat (path, COPY, NULL);
  g_autoptr (SyStore) store = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  SyVerification found;
  SyHash head;

  take_sample (path, "format-3.store");
  store = open_store (path);
  assert_version (copy, 3);
  assert_true (sy_hash_from_text ("d4db1f13d1abfb306c1d720d48108a296c7f5c839c455e2baed334b1df184b95", &head));
  assert_true (sy_store_verify (store, &head, NULL, NULL, &found, NULL));
  assert_int_equal (found.fault, SY_FAULT_NONE);
  assert_int_equal (found.known_at, 6);
  tasks = sy_store_list (store, NULL, 0, NULL);
  assert_int_equal (tasks->len, 2);
  const SyTask *lift = tasks->pdata[0], *change = tasks->pdata[1];
  assert_string_equal (lift->id, "f23ccbe89a5e4069");
  assert_int_equal (lift->verdict, SY_VERDICT_BY_HAND);
  assert_same_bits (lift->index, 0.819427352972875);
  assert_int_equal (lift->signed_revision, 2);
  assert_int_equal (lift->n_open, 1);
  assert_string_equal (change->id, "6961065b93920f13");
  assert_string_equal (change->item_kind, SY_ITEM_CHANGEOVER);
  assert_int_equal (change->verdict, SY_VERDICT_INCOMPLETE);
}

static void
a_copy_from_before_is_kept_for_the_owner (void **state)
{
  const char *path = path_of (state);
  g_autofree char *copy = g_strconcat (path, COPY, NULL);
  mode_t before = umask (0);
  g_autoptr (SyStore) again = NULL;

  take_old (path);
  sy_store_close (open_store (path));
  umask (before);
  assert_int_equal (count_files (folder_of (state)), 2);
  assert_int_equal (mode_of (copy), 0600);
  assert_version (copy, 1);
  again = open_store (copy); /* which copies it in turn */
  assert_old_content (again);
}

static void
a_copy_from_another_time_is_not_written_over (void **state)
{
  const char *path = path_of (state);
  g_autofree char *copy = g_strconcat (path, COPY, NULL);
  g_autofree char *second = g_strconcat (copy, ".2", NULL);
  g_autoptr (GBytes) kept = NULL;

  take_old (path);
  write_at (copy, 0, "mine", 4);
  sy_store_close (open_store (path));
  kept = read_file (copy);
  assert_int_equal (g_bytes_get_size (kept), 4);
  assert_version (second, 1);
}

/* The log that a crash leaves belongs to the record, and to the copy. */
static void
what_stands_in_the_log_is_brought_along (void **state)
{
  const char *path = path_of (state);
  g_autofree char *copy = g_strconcat (path, COPY, NULL);
  sqlite3 *db;

  take_old (path);
  db = open_past_the_store (path);
  sqlite3_db_config (db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
  assert_int_equal (sqlite3_exec (db, "CREATE TABLE note (text); INSERT INTO note VALUES ('x')", NULL, NULL, NULL),
                    SQLITE_OK);
  assert_int_equal (sqlite3_close (db), SQLITE_OK);
  sy_store_close (open_store (path));
  run_past_the_store (copy, "SELECT text FROM note", SQLITE_OK);
  run_past_the_store (path, "SELECT text FROM note", SQLITE_OK);
}

/* A line that cannot be read stops it: nothing is changed, and no copy is left lying about. */
static void
a_damaged_old_record_is_left_as_it_was (void **state)
{
  const char *path = path_of (state);
  g_autoptr (GError) error = NULL;

  take_old (path);
  run_past_the_store (path,
                      "DROP TRIGGER journal_keep;"
                      "UPDATE journal SET event = substr (event, 1, 40) WHERE number = 6",
                      SQLITE_OK);
  assert_null (sy_store_open (path, &error));
  help_assert_error (error, SY_STORE_ERROR_CORRUPT, "line 6");
  assert_version (path, 1);
  assert_int_equal (count_files (folder_of (state)), 1);
  run_past_the_store (path, "SELECT lineage FROM task", SQLITE_OK);
}

static void
where_no_copy_can_be_made_nothing_is_changed (void **state)
{
  const char *path = path_of (state);
  g_autofree char *copy = g_strconcat (path, COPY, NULL);
  g_autoptr (GError) error = NULL;

  take_old (path);
  for (int i = 1; i < 99; i++)
    {
      g_autofree char *taken = i == 1 ? g_strdup (copy) : g_strdup_printf ("%s.%d", copy, i);

      write_at (taken, 0, "x", 1);
    }
  assert_null (sy_store_open (path, &error));
  help_assert_error (error, SY_STORE_ERROR_OPEN, "left as it is");
  assert_version (path, 1);
}

#define N_OPENERS 4

static gpointer
open_thread (gpointer path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = sy_store_open (path, &error);

  return error != NULL ? g_strdup (error->message) : NULL;
}

static void
programs_that_open_it_at_once_do_it_once (void **state)
{
  const char *path = path_of (state);
  GThread *threads[N_OPENERS];
  g_autoptr (SyStore) store = NULL;

  take_old (path);
  for (int i = 0; i < N_OPENERS; i++)
    threads[i] = g_thread_new ("opener", open_thread, (gpointer) path);
  for (int i = 0; i < N_OPENERS; i++)
    {
      g_autofree char *trouble = g_thread_join (threads[i]);

      if (trouble != NULL)
        fail_msg ("%s", trouble);
    }
  assert_int_equal (count_files (folder_of (state)), 2);
  store = open_store (path);
  assert_old_content (store);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    IN_FOLDER (an_old_record_opens_as_it_was),
    IN_FOLDER (a_record_of_format_2_opens_as_it_was),
    IN_FOLDER (a_record_of_format_3_opens_as_it_was),
    IN_FOLDER (a_copy_from_before_is_kept_for_the_owner),
    IN_FOLDER (a_copy_from_another_time_is_not_written_over),
    IN_FOLDER (what_stands_in_the_log_is_brought_along),
    IN_FOLDER (a_damaged_old_record_is_left_as_it_was),
    IN_FOLDER (where_no_copy_can_be_made_nothing_is_changed),
    IN_FOLDER (programs_that_open_it_at_once_do_it_once),
  };

  return cmocka_run_group_tests_name ("store older", tests, NULL, NULL);
}
