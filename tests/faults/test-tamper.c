/* SPDX-License-Identifier: MIT */
#include "tamper-rows.h"

#include "sy-ledger-exchange.h"

/* A record that somebody altered past the program: row by row with the guards taken away, and byte by byte in the pages of
   the journal. Whatever changes what the rows say is found, at the line that this test finds by itself. */

#define SEED 20261127u

static guint n_tamperings = 500;

static const char *const documents[] = {
  "dies/bracket-die-b12.1", "dies/hand-die-h1.1", "dies/tray-die-t4.1", "gear/chain-leg-l1.1", "gear/chain-leg-l2.1",
  "gear/shackle-s1.1", "gear/eyebolt-e1.1", "gear/eyebolt-e2.1", "gear/hoist-h3.1", "gear/ring-m1.1", "gear/crane-c1.1",
  "gear/truck-f2.1", "blank-to-shear-2.1", "blanks-to-press-4.1", "coil-end-to-scrap-trolley.1",
  "small-blanks-to-press-1.1", "ring-baskets-to-washer.1", "profiles-to-pack-table.1", "rings-to-pressing-fixture.1",
  "fastener-totes-to-kitting-shelf.1", "guide-rail-onto-stand-5.1", "die-insert-to-lower-shoe.1",
  "cushion-pins-below-press-2.1", "clamp-arm-held-for-bolting.1",
};
#define N_DOCUMENTS G_N_ELEMENTS (documents)

static void
record_document (SyLedger *ledger, SyDesk *desk, guint which, guint n)
{
  g_autofree char *name = g_strdup_printf ("data/demo/%s.json", documents[which]);
  g_autofree char *path = faults_source (name), *text = NULL, *now = faults_time (n);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyRecordRequest request = { .task = documents[which], .by = n % 2 == 0 ? "Ivo Tannick" : "Dessa Hollin",
                                    .role = "foreman", .why = "Measured anew", .base = -1, .now = now };
  SyRecordResult result = { NULL };
  g_autoptr (GError) error = NULL;
  gsize length;

  assert_true (g_file_get_contents (path, &text, &length, NULL));
  if (!sy_ledger_record (ledger, desk, &request, text, length, problems, &result, &error))
    fail_msg ("%s: %s", name, error->message);
  sy_record_result_clear (&result);
}

static void
do_deeds (SyLedger *ledger, guint which, guint n)
{
  g_autofree char *now = faults_time (n), *id = NULL;
  const SyDeedRequest request = { .item = documents[which], .by = "Q. Falk", .role = "foreman", .why = "as agreed",
                                  .now = now };
  g_autoptr (GBytes) content = g_bytes_new_take (g_strnfill (2000 + 3000 * which, 'k'), 2000 + 3000 * which);
  const SyAttachRequest file = { .item = documents[which], .name = "photograph.jpg", .by = "Q. Falk", .why = "as it is",
                                 .now = now };
  g_autoptr (SyAttachment) attached = sy_ledger_attach (ledger, &file, content, NULL);

  assert_non_null (attached);
  assert_true (sy_ledger_sign (ledger, &request, 1, "trained 2025", NULL, NULL));
  assert_true (sy_ledger_open_action (ledger, &request, "Fit a stop", NULL, "I. Tannick", "2027-01-01", &id, NULL, NULL));
  assert_true (sy_ledger_tell (ledger, &request, 1, "the early shift", "18 kg", "left", NULL, NULL));
  if (which % 2 == 0)
    assert_true (sy_ledger_close_action (ledger, &request, id, "photograph", NULL, NULL));
}

/* Two dozen items with revisions, files and deeds, and what was taken over from another record. */
static GBytes *
make_realistic (Fixture *fixture)
{
  g_autofree char *other = g_strconcat (fixture->path, ".other", NULL);
  g_autoptr (GBytes) made = faults_make (other, fixture->desk, 5), bundle = NULL;
  const SyImportRequest import = { .by = "Q. Falk", .role = "foreman", .why = "as agreed", .now = "2026-09-01T08:00:00Z" };
  SyImportReport report = { 0 };
  g_autoptr (GError) error = NULL;

  {
    g_autoptr (SyLedger) source = faults_open (other);

    bundle = sy_ledger_export (source, NULL, NULL, NULL, &error);
  }
  {
    g_autoptr (SyLedger) ledger = faults_open (fixture->path);

    for (guint i = 0; i < 2 * N_DOCUMENTS; i++)
      record_document (ledger, fixture->desk, i % N_DOCUMENTS, i);
    for (guint i = 0; i < 6; i++)
      do_deeds (ledger, 4 * i, 100 + i);
    if (!sy_ledger_import (ledger, bundle, &import, NULL, NULL, &report, &error))
      fail_msg ("%s", error->message);
    sy_import_report_clear (&report);
    record_document (ledger, fixture->desk, 0, 300);
  }
  return faults_read (fixture->path);
}

typedef struct
{
  Fixture *fixture;
  GRand *random;
  GBytes *whole;
  Rows rows;          /* as they were       */
  Digest head;
  GArray *pages;      /* of the journal     */
  guint page_size;
  gboolean needs_head; /* of what was done last: it shows only against a head that was kept */
  guint refused;
} Tampering;

static guint
any (Tampering *t, guint n)
{
  return (guint) g_rand_int_range (t->random, 0, (gint32) n);
}

G_GNUC_PRINTF (2, 3)
static void
alter (sqlite3 *db, const char *format, ...)
{
  g_autofree char *sql = NULL;
  va_list arguments;

  va_start (arguments, format);
  sql = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (sqlite3_exec (db, sql, NULL, NULL, NULL) != SQLITE_OK)
    fail_msg ("%s: %s", sql, sqlite3_errmsg (db));
}

static sqlite3 *
open_unguarded (const char *path)
{
  sqlite3 *db = faults_open_bare (path);

  alter (db, "DROP TRIGGER journal_keep; DROP TRIGGER journal_hold; DROP TRIGGER journal_next;"
             "PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON");
  return db;
}

static void
put_bytes (sqlite3 *db, const char *column, guint line, gconstpointer data, gsize size)
{
  g_autofree char *sql = g_strdup_printf ("UPDATE journal SET %s = ?1 WHERE number = ?2", column);
  sqlite3_stmt *statement;

  assert_int_equal (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL), SQLITE_OK);
  sqlite3_bind_blob64 (statement, 1, data, size, SQLITE_STATIC);
  sqlite3_bind_int64 (statement, 2, line);
  assert_int_equal (sqlite3_step (statement), SQLITE_DONE);
  sqlite3_finalize (statement);
}

static const Row *
row_of (Tampering *t, guint line)
{
  return t->rows.rows->pdata[line - 1];
}

/* The event with one of its fields another one: as somebody would forge it, all lengths right. */
static GBytes *
forge (Tampering *t, guint line, gboolean break_it)
{
  static const guint texts[] = { AT_BY, AT_CLAIMED, AT_FACTS, AT_FINDINGS, 6, 3 };
  Field fields[N_FIELDS + 1];
  gsize n_fields = 0;
  guint which = texts[any (t, G_N_ELEMENTS (texts))];
  GByteArray *out = g_byte_array_new ();
  guint8 number[8];

  assert_true (split_event (row_of (t, line)->event, fields, &n_fields));
  g_byte_array_append (out, g_bytes_get_data (row_of (t, line)->event, NULL), 8);
  for (gsize i = 0; i < n_fields; i++)
    {
      gsize size = fields[i].size + (i == which ? 1 : 0);

      put_be (number, size);
      g_byte_array_append (out, number, 8);
      g_byte_array_append (out, fields[i].data, (guint) fields[i].size);
      if (i == which)
        g_byte_array_append (out, (const guint8 *) (break_it ? "\xff" : "8"), 1);
    }
  return g_byte_array_free_to_bytes (out);
}

/* Every hash from @line on made right again, as somebody who knows how would do it. */
static void
rechain (sqlite3 *db, guint line, guint last)
{
  sqlite3_stmt *rows;
  Digest hash = { { 0 } };
  guint number = 0;

  assert_int_equal (sqlite3_prepare_v2 (db, "SELECT event FROM journal ORDER BY number", -1, &rows, NULL), SQLITE_OK);
  while (number < last && sqlite3_step (rows) == SQLITE_ROW)
    {
      g_autoptr (GBytes) event = rows_take_bytes (rows, 0);

      number++;
      hash = chain_own (&hash, number, event);
      if (number >= line)
        put_bytes (db, "hash", number, hash.bytes, sizeof hash.bytes);
    }
  sqlite3_finalize (rows);
}

static void
flip (Tampering *t, sqlite3 *db, const char *column, guint line, GBytes *bytes)
{
  gsize size;
  gconstpointer data = g_bytes_get_data (bytes, &size);
  g_autofree guint8 *copy = g_memdup2 (data, size);

  copy[any (t, (guint) size)] ^= (guint8) (1 + any (t, 255));
  put_bytes (db, column, line, copy, size);
}

static void
shift_up (sqlite3 *db, guint from)
{
  alter (db, "UPDATE journal SET number = -number WHERE number >= %u;"
             "UPDATE journal SET number = 1 - number WHERE number < 0", from);
}

static void
cut_lists (sqlite3 *db, guint last)
{
  alter (db, "DELETE FROM task WHERE line > %u; DELETE FROM entry WHERE number > %u; DELETE FROM action WHERE line > %u", last,
         last, last);
}

/* The table declared anew without its types: SQLite then keeps anything in it. */
static void
retype (Tampering *t, sqlite3 **db, guint line)
{
  static const char *const changes[] = {
    "UPDATE journal SET hash = hex (hash) WHERE number = %u", "UPDATE journal SET event = CAST (event AS TEXT) WHERE number = %u",
    "UPDATE journal SET kind = 'revision' WHERE number = %u", "UPDATE journal SET item = CAST (item AS BLOB) WHERE number = %u",
    "UPDATE journal SET event = NULL WHERE number = %u",      "UPDATE journal SET hash = NULL WHERE number = %u",
    "UPDATE journal SET kind = kind + 0.5 WHERE number = %u", "UPDATE journal SET hash = x'' WHERE number = %u",
    "UPDATE journal SET item = NULL WHERE number = %u",       "UPDATE journal SET event = 7 WHERE number = %u",
  };
  g_autofree char *sql = NULL;
  const char *change = changes[any (t, G_N_ELEMENTS (changes))];
  g_auto (GStrv) parts = g_strsplit (change, "%u", 2);

  alter (*db, "PRAGMA writable_schema = ON;"
              "UPDATE sqlite_schema SET sql = replace (replace (sql, ') STRICT', ')'), 'NOT NULL', '')"
              " WHERE type = 'table' AND name = 'journal'");
  sqlite3_close (*db);
  *db = faults_open_bare (t->fixture->path);
  sql = g_strdup_printf ("PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF; %s%u", parts[0], line);
  alter (*db, "%s", sql);
}

/* One alteration of rows; returns what it was. */
static const char *
alter_rows (Tampering *t)
{
  const guint n = t->rows.rows->len, line = 1 + any (t, n), other = 1 + any (t, n);
  sqlite3 *db = open_unguarded (t->fixture->path);
  g_autoptr (GBytes) forged = NULL;
  const char *what;

  switch (any (t, 18))
    {
    case 0:
      what = "a byte of an event";
      flip (t, db, "event", line, row_of (t, line)->event);
      break;
    case 1:
      what = "a byte of a hash";
      flip (t, db, "hash", line, row_of (t, line)->hash);
      break;
    case 2:
      what = "another kind";
      alter (db, "UPDATE journal SET kind = kind %% 9 + 1 WHERE number = %u", line);
      break;
    case 3:
      what = "another item";
      alter (db, "UPDATE journal SET item = (SELECT item || 'x' FROM journal WHERE number = %u) WHERE number = %u", other,
             line);
      break;
    case 4:
      what = "a line removed";
      alter (db, "DELETE FROM journal WHERE number = %u", line);
      break;
    case 5:
      what = "a line removed, the others moved up";
      t->needs_head = line == n;
      alter (db, "DELETE FROM journal WHERE number = %u;"
                 "UPDATE journal SET number = -number WHERE number > %u;"
                 "UPDATE journal SET number = -number - 1 WHERE number < 0", line, line);
      cut_lists (db, n - 1);
      break;
    case 6:
      what = "two lines in each other's place";
      alter (db, "UPDATE journal SET number = -1 WHERE number = %u; UPDATE journal SET number = %u WHERE number = %u;"
                 "UPDATE journal SET number = %u WHERE number = -1", line, line, other, other);
      break;
    case 7:
      what = "a line twice, the others moved down";
      shift_up (db, line + 1);
      alter (db, "INSERT INTO journal SELECT number + 1, hash, kind, item, event FROM journal WHERE number = %u", line);
      break;
    case 8:
      what = "a line put in";
      forged = forge (t, other, FALSE);
      shift_up (db, line);
      alter (db, "INSERT INTO journal SELECT %u, hash, kind, item, event FROM journal WHERE number = %u", line,
             other >= line ? other + 1 : other);
      put_bytes (db, "event", line, g_bytes_get_data (forged, NULL), g_bytes_get_size (forged));
      break;
    case 9:
      what = "a line once more at the end";
      alter (db, "INSERT INTO journal SELECT %u, hash, kind, item, event FROM journal WHERE number = %u", n + 1, line);
      break;
    case 10:
      what = "a field forged";
      forged = forge (t, line, FALSE);
      put_bytes (db, "event", line, g_bytes_get_data (forged, NULL), g_bytes_get_size (forged));
      break;
    case 11:
      what = "a field forged, its line's hash made right";
      t->needs_head = line == n;
      forged = forge (t, line, FALSE);
      put_bytes (db, "event", line, g_bytes_get_data (forged, NULL), g_bytes_get_size (forged));
      rechain (db, line, line);
      break;
    case 12:
      what = "a field forged, every hash made right";
      t->needs_head = TRUE;
      forged = forge (t, line, FALSE);
      put_bytes (db, "event", line, g_bytes_get_data (forged, NULL), g_bytes_get_size (forged));
      rechain (db, line, n);
      break;
    case 13:
      what = "no event any more, every hash made right";
      forged = forge (t, line, TRUE);
      put_bytes (db, "event", line, g_bytes_get_data (forged, NULL), g_bytes_get_size (forged));
      rechain (db, line, n);
      break;
    case 14:
      what = "the tail cut off, and the lists";
      t->needs_head = TRUE;
      alter (db, "DELETE FROM journal WHERE number >= %u", line);
      cut_lists (db, line - 1);
      break;
    case 15:
      what = "the tail cut off";
      alter (db, "DELETE FROM journal WHERE number >= %u", line);
      break;
    case 16:
      what = "the tail cut off and grown again";
      t->needs_head = TRUE;
      for (guint i = line; i <= n; i++)
        {
          g_autoptr (GBytes) grown = forge (t, i, FALSE);

          put_bytes (db, "event", i, g_bytes_get_data (grown, NULL), g_bytes_get_size (grown));
        }
      rechain (db, line, n);
      break;
    default:
      what = "columns of other types";
      retype (t, &db, line);
      break;
    }
  assert_int_equal (sqlite3_close (db), SQLITE_OK);
  return what;
}

/* One byte of a page of the journal. */
static const char *
alter_byte (Tampering *t)
{
  gsize size, at;
  const guint8 *data = g_bytes_get_data (t->whole, &size);
  guint8 byte;
  int file = g_open (t->fixture->path, O_WRONLY, 0);

  at = (gsize) (g_array_index (t->pages, guint, any (t, t->pages->len)) - 1) * t->page_size + any (t, t->page_size);
  byte = data[at] ^ (guint8) (1 + any (t, 255));
  assert_true (file >= 0);
  assert_int_equal (pwrite (file, &byte, 1, (off_t) at), 1);
  assert_int_equal (close (file), 0);
  return "a byte of the file";
}

static void
check_found (Tampering *t, const Rows *now, const char *label)
{
  SyHash known;
  gboolean with_head = t->needs_head || any (t, 2) == 0, nothing;
  guint64 expected = rows_first_wrong (now, with_head ? &t->head : NULL, &nothing);
  g_autoptr (GError) error = NULL;
  g_autoptr (SyStore) store = NULL;
  SyVerification found = { 0 };

  memcpy (known.bytes, t->head.bytes, sizeof known.bytes);
  if (nothing)
    fail_msg ("%s: this test finds nothing wrong itself", label);
  store = sy_store_open (t->fixture->path, &error);
  if (store == NULL)
    {
      faults_assert_words (error, t->fixture->path, label);
      g_clear_error (&error);
      store = sy_store_open_damaged (t->fixture->path, &error);
    }
  if (store == NULL)
    fail_msg ("%s: not even opened to verify: %s", label, error->message);
  if (!sy_store_verify (store, with_head ? &known : NULL, NULL, NULL, &found, &error))
    fail_msg ("%s: %s", label, error->message);
  if (found.fault == SY_FAULT_NONE)
    fail_msg ("%s: not found; it is at line %" G_GUINT64_FORMAT, label, expected);
  if (found.line != expected)
    fail_msg ("%s: found at line %" G_GUINT64_FORMAT " (%s: expected %s, found %s), which is line %" G_GUINT64_FORMAT, label,
              found.line, sy_fault_id (found.fault), found.expected, found.found, expected);
  assert_non_null (found.expected);
  assert_non_null (found.found);
  sy_verification_clear (&found);
}

/* Page numbers of the journal's table, its overflow pages included. */
static void
find_pages (Tampering *t)
{
  sqlite3 *db = faults_open_bare (t->fixture->path);
  sqlite3_stmt *pages;

  t->pages = g_array_new (FALSE, FALSE, sizeof (guint));
  t->page_size = (guint) rows_ask (db, "PRAGMA page_size");
  assert_int_equal (sqlite3_prepare_v2 (db, "SELECT pageno FROM dbstat WHERE name = 'journal'", -1, &pages, NULL), SQLITE_OK);
  while (sqlite3_step (pages) == SQLITE_ROW)
    {
      guint page = (guint) sqlite3_column_int64 (pages, 0);

      g_array_append_val (t->pages, page);
    }
  sqlite3_finalize (pages);
  sqlite3_close (db);
  assert_true (t->pages->len > 20);
}

static void
begin (Tampering *t)
{
  gboolean nothing;
  const Row *last;

  t->whole = make_realistic (t->fixture);
  t->rows = rows_read (t->fixture->path);
  find_pages (t);
  assert_true (t->rows.rows->len > 80);
  assert_int_equal (rows_first_wrong (&t->rows, NULL, &nothing), 0);
  assert_true (nothing);
  last = t->rows.rows->pdata[t->rows.rows->len - 1];
  memcpy (t->head.bytes, g_bytes_get_data (last->hash, NULL), sizeof t->head.bytes);
}

static void
every_tampering_is_found_at_its_line (void **state)
{
  Tampering t = { .fixture = *state, .random = g_rand_new_with_seed (SEED) };
  g_autoptr (GHashTable) counts = g_hash_table_new (g_str_hash, g_str_equal);
  GHashTableIter each;
  gpointer what, count;
  guint silent = 0;

  begin (&t);
  for (guint done = 0, tries = 0; done < n_tamperings; tries++)
    {
      g_autofree char *label = NULL;
      const char *which;
      Rows now;

      faults_put (t.fixture->path, t.whole);
      t.needs_head = FALSE;
      which = any (&t, 5) < 3 ? alter_rows (&t) : alter_byte (&t);
      now = rows_read (t.fixture->path);
      label = g_strdup_printf ("try %u, %s", tries, which);
      if (rows_same (&now, &t.rows))
        silent++;
      else
        {
          check_found (&t, &now, label);
          g_hash_table_insert (counts, (gpointer) which,
                               GUINT_TO_POINTER (GPOINTER_TO_UINT (g_hash_table_lookup (counts, which)) + 1));
          done++;
        }
      rows_clear (&now);
    }
  g_hash_table_iter_init (&each, counts);
  while (g_hash_table_iter_next (&each, &what, &count))
    print_message ("%5u  %s\n", GPOINTER_TO_UINT (count), (char *) what);
  print_message ("%u tamperings found and located; %u alterations that no row shows\n", n_tamperings, silent);
  rows_clear (&t.rows);
  g_array_unref (t.pages);
  g_bytes_unref (t.whole);
  g_rand_free (t.random);
}

/* test-tamper [TAMPERINGS] */
int
main (int argc, char **argv)
{
  const struct CMUnitTest tests[] = { WITH_FOLDER (every_tampering_is_found_at_its_line) };

  if (argc > 1)
    n_tamperings = (guint) strtoul (argv[1], NULL, 10);
  return cmocka_run_group_tests_name ("tamper", tests, NULL, NULL);
}
