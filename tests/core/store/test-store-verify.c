/* SPDX-License-Identifier: MIT */
#include "store-deeds.h"
#include "store-file.h"

/* What another program does to the file, and where it is found. */

/* What a tamperer takes away first. */
#define UNGUARD "DROP TRIGGER journal_keep; DROP TRIGGER journal_hold; DROP TRIGGER journal_next; PRAGMA foreign_keys = OFF;"
/* The journal as a table that takes anything. */
#define RETYPE                                                                                             \
  UNGUARD "ALTER TABLE journal RENAME TO old_journal;"                                                     \
          "CREATE TABLE journal (number, hash, kind, item, event);"                                        \
          "INSERT INTO journal SELECT * FROM old_journal ORDER BY number;"

/* Filled by one rule, and said to be filled by another. */
#define LYING_INDEX(name, made, filled)                                                                    \
  "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = 'CREATE INDEX " name " " filled "' WHERE name = '" name "';" \
  "PRAGMA writable_schema = RESET; REINDEX " name "; PRAGMA writable_schema = ON;"                         \
  "UPDATE sqlite_schema SET sql = 'CREATE INDEX " name " " made "' WHERE name = '" name "'; PRAGMA writable_schema = OFF;"

typedef struct
{
  const char *sql;
  SyFault fault;
  guint64 line;
} Tampering;

static const Tampering tamperings[] = {
  { UNGUARD "UPDATE journal SET hash = zeroblob (32) WHERE number = 4", SY_FAULT_HASH, 4 },
  { UNGUARD "UPDATE journal SET event = CAST (replace (CAST (event AS TEXT), 'R. Example', 'X. Example') AS BLOB)"
            " WHERE number = 1", SY_FAULT_HASH, 1 },
  { UNGUARD "UPDATE journal SET event = CAST (substr (event, 1, length (event) - 1) || '!' AS BLOB) WHERE number = 11", SY_FAULT_HASH, 11 },
  { UNGUARD "UPDATE journal SET kind = 2 WHERE number = 1", SY_FAULT_COLUMN, 1 },
  { UNGUARD "UPDATE journal SET item = 'b' WHERE number = 2", SY_FAULT_COLUMN, 2 },
  { UNGUARD "DELETE FROM journal WHERE number = 6", SY_FAULT_NUMBER, 6 },
  { UNGUARD "DELETE FROM journal WHERE number = 1", SY_FAULT_NUMBER, 1 },
  { UNGUARD "DELETE FROM journal WHERE number = 6; UPDATE journal SET number = number - 1 WHERE number > 6", SY_FAULT_HASH, 6 },
  { UNGUARD "UPDATE journal SET number = 100 WHERE number = 3; UPDATE journal SET number = 3 WHERE number = 4;"
            "UPDATE journal SET number = 4 WHERE number = 100", SY_FAULT_HASH, 3 },
  { UNGUARD "INSERT INTO journal SELECT 12, hash, kind, item, event FROM journal WHERE number = 11", SY_FAULT_HASH, 12 },
  { UNGUARD "UPDATE journal SET number = number + 100 WHERE number > 5; UPDATE journal SET number = number - 99 WHERE"
            " number > 100; INSERT INTO journal SELECT 6, hash, kind, item, event FROM journal WHERE number = 5",
    SY_FAULT_HASH, 6 },
  { RETYPE "UPDATE journal SET hash = substr (hash, 1, 31) WHERE number = 7", SY_FAULT_HASH, 7 },
  { RETYPE "UPDATE journal SET hash = NULL WHERE number = 7", SY_FAULT_HASH, 7 },
  { RETYPE "UPDATE journal SET hash = hex (hash) WHERE number = 7", SY_FAULT_HASH, 7 },
  { RETYPE "UPDATE journal SET event = NULL WHERE number = 8", SY_FAULT_EVENT, 8 },
  { RETYPE "UPDATE journal SET kind = 'two' WHERE number = 8", SY_FAULT_COLUMN, 8 },
  { RETYPE "UPDATE journal SET item = NULL WHERE number = 8", SY_FAULT_COLUMN, 8 },
  { RETYPE "INSERT INTO journal SELECT * FROM journal WHERE number = 5", SY_FAULT_NUMBER, 6 },
  { RETYPE "INSERT INTO journal SELECT 0, hash, kind, item, event FROM journal WHERE number = 5", SY_FAULT_NUMBER, 1 },
  { UNGUARD "DELETE FROM journal WHERE number > 9", SY_FAULT_END, 9 },
  { UNGUARD "DELETE FROM journal", SY_FAULT_END, 0 },
  /* an index that leaves out a line, and says that it does not */
  { LYING_INDEX ("journal_item", "ON journal (item, number)", "ON journal (item, number) WHERE number <> 4"), SY_FAULT_PARTS, 4 },
  { LYING_INDEX ("journal_policy", "ON journal (number) WHERE kind = 1", "ON journal (number) WHERE kind = 99"),
    SY_FAULT_PARTS, 1 },
  { "DROP INDEX journal_item; CREATE INDEX journal_item ON journal (item, number) WHERE number <> 4", SY_FAULT_PARTS, 11 },
  { "CREATE INDEX other ON journal (item, kind, number, hash, event)", SY_FAULT_PARTS, 11 },
  { "CREATE TRIGGER other AFTER INSERT ON journal BEGIN UPDATE task SET verdict = 'by-hand'; END", SY_FAULT_PARTS, 11 },
};

static void
verify_at (const char *path, const SyHash *known, SyVerification *out)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = sy_store_open_damaged (path, &error);

  if (store == NULL || !sy_store_verify (store, known, NULL, NULL, out, &error))
    fail_msg ("%s", error->message);
}

static SyHead
make_story (const char *path)
{
  g_autoptr (SyStore) store = open_store (path);

  help_story (store);
  return help_head (store);
}

static void
each_tampering_is_found_at_its_line (void **state)
{
  for (gsize i = 0; i < G_N_ELEMENTS (tamperings); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s.%d", path_of (state), (int) i);
      SyVerification found;

      make_story (path);
      run_past_the_store (path, tamperings[i].sql, SQLITE_OK);
      verify_at (path, NULL, &found);
      if (found.fault != tamperings[i].fault || found.line != tamperings[i].line)
        fail_msg ("tampering %d: fault %d at line %d", (int) i, (int) found.fault, (int) found.line);
      assert_non_null (found.expected);
      assert_non_null (found.found);
      sy_verification_clear (&found);
    }
}

/* With the lists in step as well, only a head that was kept elsewhere tells. */
static void
a_tail_cut_off_everywhere_is_told_by_the_head (void **state)
{
  const char *path = path_of (state);
  SyHead head = make_story (path);
  SyVerification found;

  run_past_the_store (path,
                      UNGUARD "DELETE FROM entry WHERE number > 8; DELETE FROM action WHERE line > 8;"
                              "UPDATE task SET line = 8 WHERE line > 8; DELETE FROM journal WHERE number > 8",
                      SQLITE_OK);
  verify_at (path, NULL, &found);
  assert_int_equal (found.fault, SY_FAULT_NONE);
  assert_int_equal (found.lines, 8);
  verify_at (path, &head.hash, &found);
  assert_int_equal (found.fault, SY_FAULT_HEAD);
  assert_int_equal (found.line, 8);
  sy_verification_clear (&found);
}

static void
an_earlier_head_is_found_where_it_stood (void **state)
{
  const char *path = path_of (state);
  SyHead head = make_story (path);
  g_autoptr (SyStore) store = open_store (path);
  SyVerification found;

  help_append (store, help_revision_on ("a", 4, "Coil", "by-hand", "R. Example", "2026-05-01"), NULL, NULL, NULL);
  assert_true (sy_store_verify (store, &head.hash, NULL, NULL, &found, NULL));
  assert_int_equal (found.fault, SY_FAULT_NONE);
  assert_int_equal (found.known_at, 11);
  assert_int_equal (found.lines, 12);
}

/* As SQLite lays a record out, from its published file format: pages of 4,096 bytes, each of which begins with what it is. */
#define PAGE_BYTES 4096

static void
a_page_that_cannot_be_read_is_told_with_what_holds_before_it (void **state)
{
  const char *path = path_of (state);
  const char *in_line_6 = "{\"step\":\"open\",\"action\":\"" ACTION_1;
  g_autoptr (GBytes) file = NULL;
  const char *data;
  SyVerification found;
  gsize size, at = 0;

  make_story (path);
  run_past_the_store (path, "PRAGMA wal_checkpoint (TRUNCATE)", SQLITE_OK);
  file = read_file (path);
  data = g_bytes_get_data (file, &size);
  while (at + strlen (in_line_6) < size && memcmp (data + at, in_line_6, strlen (in_line_6)) != 0)
    at++;
  write_at (path, at / PAGE_BYTES * PAGE_BYTES, "\xff\xff\xff\xff\xff\xff\xff\xff", 8);
  verify_at (path, NULL, &found);
  assert_int_equal (found.fault, SY_FAULT_FILE);
  assert_true (found.line >= 1 && found.line <= 6);
  assert_int_equal (found.lines, found.line - 1);
  assert_non_null (found.found);
  sy_verification_clear (&found);
}

static SyRebuild
rebuild_at (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = sy_store_open_damaged (path, &error);
  SyRebuild rebuild;

  if (store == NULL || !sy_store_rebuild (store, NULL, NULL, &rebuild, &error))
    fail_msg ("%s", error->message);
  return rebuild;
}

static void
assert_mended (const char *path)
{
  g_autoptr (SyStore) store = open_store (path);
  g_autoptr (SyTask) task = sy_store_find (store, "a", NULL, NULL);
  SyVerification found;
  SyRebuild rebuild;

  assert_int_equal (task->verdict, SY_VERDICT_BY_HAND);
  assert_int_equal (task->seat, 1);
  help_assert_search (store, "slitter", "a");
  assert_true (sy_store_verify (store, NULL, NULL, NULL, &found, NULL));
  assert_int_equal (found.fault, SY_FAULT_NONE);
  assert_true (sy_store_rebuild (store, NULL, NULL, &rebuild, NULL));
  assert_int_equal (rebuild.n_different, 0);
  sy_rebuild_clear (&rebuild);
}

/* What was done to the lists, how much then differs at least, and what of it is said. */
static const struct
{
  const char *sql, *said;
  guint at_least;
} damages[] = {
  { LYING_INDEX ("journal_item", "ON journal (item, number)", "ON journal (item, number) WHERE number <> 4"), "none to line 4", 1 },
  { "CREATE TRIGGER other AFTER INSERT ON journal BEGIN UPDATE task SET verdict = 'by-hand'; END",
    "trigger “other”, which no edition made", 1 },
  { "DROP TRIGGER journal_keep", "trigger “journal_keep” is missing", 1 },
  { "DROP TABLE entry; CREATE VIEW entry AS SELECT 1 AS one", "had no column", 1 },
  { "DROP INDEX entry_day; CREATE TABLE other (x); CREATE INDEX entry_day ON other (x); DELETE FROM entry WHERE number = 3",
    "line 3", 1 },
  { "PRAGMA writable_schema = ON; DELETE FROM task_search_data WHERE id > 10", "the index was not that of the words", 1 },
  { "UPDATE task SET verdict = 'by-hand' WHERE id = 'b'; UPDATE task SET verdict = 'improve' WHERE id = 'a'",
    "task “Coil to slitter”: verdict: was improve, the journal says by-hand", 1 },
  { "UPDATE task SET rank_value = 1 WHERE id = 'a'", "rank_value: was 1.0, the journal says 15.0", 1 },
  { "UPDATE task SET retired = 0, review_due = '2030-01-01'", "retired: was 0, the journal says 1", 2 },
  { "DELETE FROM task WHERE id = 'a'", "was not listed, the journal has it", 1 },
  { "INSERT INTO task SELECT 77, 'ghost', item_kind, line, name_key, 'Ghost', place, method, units, verdict, index_value,"
    " index_unbounded, index_symbol, mass_kg, persons, lifts_per_day, rank_value, rank_unbounded, revision, clash, lineage,"
    " done_by, why, done_at, valid_until, search_text, mass_with_allowance_kg, cg_x_mm, cg_y_mm, cg_z_mm, machine, storage,"
    " gear_kind, identity, wll_kg, due, withdrawn, condition, role, edition, policy, program, loosened, begun,"
    " signed_revision, signed_by, signed_role, signed_when, signed_own, open_actions, n_open, action_due, review_due,"
    " review_trigger, retired, told_revision FROM task WHERE id = 'a'",
    "task “Ghost”: was listed, the journal has no such thing", 1 },
  { "UPDATE action SET open = 1, due = '2031-01-01'", "open: was 1, the journal says 0", 2 },
  { "UPDATE entry SET done_by = 'Nobody' WHERE number = 3", "line 3: done_by: was Nobody, the journal says P. Other", 1 },
  { "DELETE FROM task_search", "words to search of item 1", 2 },
  { "UPDATE task_search SET words = ' other' WHERE rowid = 2", "words: was  other", 1 },
  { "DROP TABLE task", "was not listed", 2 },
  { "DROP TABLE entry; DROP TABLE action", "was not listed", 13 },
  { "ALTER TABLE task DROP COLUMN place", "table “task”: had no column “place”", 1 },
  { "DROP TABLE task_search; CREATE TABLE task_search (words)", "words to search", 2 },
};

static void
damaged_lists_are_named_and_made_anew (void **state)
{
  for (gsize i = 0; i < G_N_ELEMENTS (damages); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s.%d", path_of (state), (int) i);
      gboolean is_said = FALSE;
      SyRebuild rebuild;

      make_story (path);
      run_past_the_store (path, damages[i].sql, SQLITE_OK);
      rebuild = rebuild_at (path);
      for (guint j = 0; j < rebuild.differences->len; j++)
        is_said = is_said || strstr (rebuild.differences->pdata[j], damages[i].said) != NULL;
      if (!is_said || rebuild.n_different < damages[i].at_least)
        {
          for (guint j = 0; j < rebuild.differences->len; j++)
            print_error ("%s\n", (char *) rebuild.differences->pdata[j]);
          fail_msg ("damage %d: %d differences", (int) i, (int) rebuild.n_different);
        }
      sy_rebuild_clear (&rebuild);
      assert_mended (path);
    }
}

static void
a_damaged_list_is_refused_but_its_journal_can_be_read (void **state)
{
  const char *path = path_of (state);
  g_autoptr (SyStore) store = NULL;
  g_autoptr (GError) refused = NULL, list = NULL;
  SyRebuild rebuild;

  make_story (path);
  run_past_the_store (path, "DROP TABLE task", SQLITE_OK);
  assert_null (sy_store_open (path, &refused));
  help_assert_error (refused, SY_STORE_ERROR_CORRUPT, "task");
  store = sy_store_open_damaged (path, NULL);
  assert_int_equal (help_head (store).number, 11);
  assert_null (sy_store_list (store, NULL, 0, &list));
  help_assert_error (list, SY_STORE_ERROR_CORRUPT, "journal");
  assert_true (sy_store_rebuild (store, NULL, NULL, &rebuild, NULL));
  sy_rebuild_clear (&rebuild);
  help_assert_list (store, &(SyTaskFilter) { .order = SY_ORDER_NAME }, 0, "b a"); /* and from now on everything */
}

/* A line that cannot be read stops it, and the lists stay as they were. */
static void
lists_are_not_made_from_a_journal_that_cannot_be_read (void **state)
{
  const char *path = path_of (state);
  g_autoptr (SyStore) store = NULL;
  g_autoptr (GError) error = NULL;
  SyRebuild rebuild;

  make_story (path);
  run_past_the_store (path, UNGUARD "UPDATE journal SET event = substr (event, 1, 40) WHERE number = 6", SQLITE_OK);
  store = sy_store_open_damaged (path, NULL);
  assert_false (sy_store_rebuild (store, NULL, NULL, &rebuild, &error));
  help_assert_error (error, SY_STORE_ERROR_CORRUPT, "line 6");
  sy_store_close (g_steal_pointer (&store));
  store = open_store (path);
  help_assert_search (store, "slitter", "a");
}

/* Somebody else records a line as soon as verifying has begun. */
static gboolean
write_meanwhile (guint64 done, guint64 of, gpointer other)
{
  (void) of;
  if (done == 0)
    help_append (other, help_revision_on ("z", 1, "Late", "by-hand", "P. Other", "2026-09-01"), NULL, NULL, NULL);
  return TRUE;
}

static void
what_others_write_meanwhile_is_no_fault (void **state)
{
  const char *path = path_of (state);
  g_autoptr (SyStore) store = NULL, other = NULL;
  SyVerification found;

  make_story (path);
  store = sy_store_open (path, NULL);
  other = sy_store_open (path, NULL);
  assert_true (sy_store_verify (store, NULL, write_meanwhile, other, &found, NULL));
  assert_int_equal (found.fault, SY_FAULT_NONE);
  assert_int_equal (found.lines, 11);
  sy_verification_clear (&found);
  assert_int_equal (help_head (store).number, 12);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    IN_FOLDER (each_tampering_is_found_at_its_line),
    IN_FOLDER (a_tail_cut_off_everywhere_is_told_by_the_head),
    IN_FOLDER (an_earlier_head_is_found_where_it_stood),
    IN_FOLDER (what_others_write_meanwhile_is_no_fault),
    IN_FOLDER (a_page_that_cannot_be_read_is_told_with_what_holds_before_it),
    IN_FOLDER (damaged_lists_are_named_and_made_anew),
    IN_FOLDER (a_damaged_list_is_refused_but_its_journal_can_be_read),
    IN_FOLDER (lists_are_not_made_from_a_journal_that_cannot_be_read),
  };

  return cmocka_run_group_tests_name ("store verify", tests, NULL, NULL);
}
