/* SPDX-License-Identifier: MIT */
#include "exchange-help.h"

#include <glib/gstdio.h>

static SyEvent *
revision_at (SyLedger *ledger, const char *task, gint64 revision)
{
  g_autoptr (GPtrArray) history = sy_ledger_history (ledger, task, NULL, NULL);
  SyRevision *found;

  assert_non_null (history);
  assert_true (history->len >= revision);
  found = history->pdata[revision - 1];
  assert_int_equal (found->event->revision, revision);
  return g_steal_pointer (&found->event);
}

static SyTask *
task_called (SyLedger *ledger, const char *name)
{
  g_autoptr (GPtrArray) tasks = sy_ledger_tasks (ledger, NULL, NULL);
  SyTask *found = NULL;

  for (guint i = 0; i < tasks->len && found == NULL; i++)
    if (strcmp (((SyTask *) tasks->pdata[i])->name, name) == 0)
      found = sy_task_copy (tasks->pdata[i]);
  assert_non_null (found);
  return found;
}

static void
assert_says (GPtrArray *conflicts, const char *text)
{
  for (guint i = 0; i < conflicts->len; i++)
    if (strstr (conflicts->pdata[i], text) != NULL)
      return;
  fail_msg ("no conflict says “%s”; the first of %u: %s", text, conflicts->len,
            conflicts->len > 0 ? (char *) conflicts->pdata[0] : "none");
}

static void
test_into_an_empty_record (void **state)
{
  Two *two = *state;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *before = NULL, *after = NULL, *message = NULL;
  g_autoptr (SyEvent) first = NULL;
  SyImportReport report = { 0 };
  SyHead head;

  record (two->there, two->desk, "Ring to fixture", NULL, -1);
  record (two->there, two->desk, "Ring to fixture", NULL, -1);
  sign (two->there, "Ring to fixture", 2);
  bytes = export_all (two->there);
  before = identities_of (two->there);

  message = import_bytes (two->here, bytes, TRUE, &report);
  assert_null (message);
  assert_int_equal (report.added, 4); /* the policy too */
  assert_int_equal (report.head.number, 0);
  assert_int_equal (head_of (two->here).number, 0);
  sy_import_report_clear (&report);

  message = import_bytes (two->here, bytes, FALSE, &report);
  assert_null (message);
  assert_int_equal (report.added, 4);
  assert_int_equal (report.known, 0);
  assert_int_equal (report.conflicts->len, 0);
  assert_int_equal (report.bundle_head.number, 4);
  assert_int_equal (report.head.number, 5);
  head = report.head;
  sy_import_report_clear (&report);
  after = identities_of (two->here);
  assert_string_equal (after, before);
  first = revision_at (two->here, "Ring to fixture", 1);
  assert_string_equal (first->facts, FACTS);
  assert_string_equal (first->origin, "");
  assert_sound (two->here);

  /* A second time there is nothing to do. */
  message = import_bytes (two->here, bytes, FALSE, &report);
  assert_null (message);
  assert_int_equal (report.added, 0);
  assert_int_equal (report.known, 4);
  assert_true (head.number == report.head.number && memcmp (&head.hash, &report.head.hash, sizeof head.hash) == 0);
  sy_import_report_clear (&report);
}

static void
test_the_line_that_says_what_was_taken_over (void **state)
{
  Two *two = *state;
  g_autoptr (GBytes) mine = NULL;
  g_autoptr (SyBundle) bundle = NULL;
  const SyEvent *event;
  SyHead there;
  SyDeed deed;
  g_autofree char *head = NULL;

  record (two->there, two->desk, "Ring to fixture", NULL, -1);
  there = head_of (two->there);
  head = sy_hash_text (&there.hash);
  take_over (two->here, two->there);
  mine = export_all (two->here);
  bundle = sy_bundle_read (g_bytes_get_data (mine, NULL), g_bytes_get_size (mine), NULL, NULL, NULL);
  event = ((SyBundleLine *) bundle->lines->pdata[0])->event;
  assert_int_equal (event->kind, SY_EVENT_IMPORT);
  assert_string_equal (event->by, "I. Tannick");
  assert_string_equal (event->why, "from the other hall");
  assert_true (sy_deed_read (event, &deed));
  assert_string_equal (deed.head, head);
  assert_int_equal (deed.lines, 2);
  sy_deed_clear (&deed);

  /* It stays where it is: the other record gets nothing from it. */
  assert_int_equal (take_over (two->there, two->here), 0);
}

static void
test_both_revised (void **state)
{
  Two *two = *state;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *message = NULL;
  g_autoptr (SyEvent) third = NULL, fourth = NULL, own = NULL, original = NULL;
  g_autoptr (SyTask) task = NULL;
  g_autofree char *identity = NULL;
  SyImportReport report = { 0 };
  SyHash hash;

  record (two->here, two->desk, "Ring", NULL, -1);
  take_over (two->there, two->here);
  record (two->here, two->desk, "Ring", NULL, -1);
  record (two->there, two->desk, "Ring", NULL, -1);
  record (two->there, two->desk, "Ring", NULL, -1);
  sign (two->there, "Ring", 3);
  original = revision_at (two->there, "Ring", 2);
  bytes = export_all (two->there);

  message = import_bytes (two->here, bytes, FALSE, &report);
  assert_null (message);
  assert_int_equal (report.added, 3);
  assert_int_equal (report.known, 2);
  assert_int_equal (report.left, 1);
  assert_int_equal (report.conflicts->len, 2);
  assert_says (report.conflicts, "revision 2 of the bundle is revision 3 here, made from revision 1");
  assert_says (report.conflicts, "revision 3 of the bundle is revision 4 here, made from revision 3");
  sy_import_report_clear (&report);

  own = revision_at (two->here, "Ring", 2);
  third = revision_at (two->here, "Ring", 3);
  fourth = revision_at (two->here, "Ring", 4);
  assert_string_equal (own->origin, "");
  assert_int_equal (third->base, 1);
  assert_int_equal (fourth->base, 3);
  sy_event_identity (original, &hash);
  identity = sy_hash_text (&hash);
  assert_string_equal (third->origin, identity);
  /* What came settles nothing: whoever made it had not seen revision 2. The signature went along. */
  task = task_called (two->here, "Ring");
  assert_int_equal (task->clash, 2);
  assert_int_equal (task->signed_revision, 4);
  assert_sound (two->here);

  /* And back: the other record gets the one revision that it has not. */
  assert_int_equal (take_over (two->there, two->here), 1);
  assert_int_equal (take_over (two->here, two->there), 0);
  assert_int_equal (take_over (two->there, two->here), 0);
  assert_sound (two->there);

  /* The next revision, made from the latest, settles it on both sides. */
  record (two->here, two->desk, "Ring", NULL, -1);
  g_clear_pointer (&task, sy_task_free);
  task = task_called (two->here, "Ring");
  assert_int_equal (task->clash, 0);
}

/* Whatever is about an item goes along, and a file to the byte. */
static void
test_files_and_actions_go_along (void **state)
{
  Two *two = *state;
  const SyAttachRequest attach = { .item = "Ring", .name = "report.pdf", .by = "Q. Falk", .why = "yearly",
                                   .now = "2026-03-05T00:00:00Z" };
  SyDeedRequest request;
  g_autoptr (GBytes) content = NULL, other = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (SyTask) task = NULL;
  g_autofree guint8 *bytes = g_malloc (100000);
  g_autofree char *id = NULL;
  SyAttachment *attachment;
  SyHead head;

  for (guint i = 0; i < 100000; i++)
    bytes[i] = (guint8) (i * i >> 3);
  content = g_bytes_new (bytes, 100000);
  record (two->there, two->desk, "Ring", NULL, -1);
  attachment = sy_ledger_attach (two->there, &attach, content, &error);
  assert_non_null (attachment);
  sy_attachment_free (attachment);
  request = deed_of ("Ring");
  assert_true (sy_ledger_open_action (two->there, &request, "fit a stop", NULL, NULL, "2026-12-01", &id, &head, &error));
  request = deed_of ("Ring");
  assert_true (sy_ledger_set_review (two->there, &request, SY_TRIGGER_DATE, "2027-03-01", &head, &error));
  assert_int_equal (take_over (two->here, two->there), 5);
  other = sy_ledger_attachment_content (two->here, "Ring", NULL, "report.pdf", 0, &error);
  assert_non_null (other);
  assert_true (g_bytes_equal (content, other));
  task = task_called (two->here, "Ring");
  assert_int_equal (task->n_open, 1);
  assert_string_equal (task->action_due, "2026-12-01");
  assert_string_equal (task->review_due, "2027-03-01");
  assert_sound (two->here);
}

static void
test_chosen_items (void **state)
{
  Two *two = *state;
  static const char *const wanted[] = { "Second", NULL };
  static const char *const unknown[] = { "Third", NULL };
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *message = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  SyImportReport report = { 0 };

  record (two->there, two->desk, "First", NULL, -1);
  record (two->there, two->desk, "Second", NULL, -1);
  record (two->there, two->desk, "First", NULL, -1);
  record (two->there, two->desk, "Second", NULL, -1);
  bytes = sy_ledger_export (two->there, wanted, NULL, NULL, &error);
  assert_non_null (bytes);
  message = import_bytes (two->here, bytes, FALSE, &report);
  assert_null (message);
  assert_int_equal (report.added, 3); /* the policy, and two revisions */
  assert_int_equal (report.hashes_only, 2);
  sy_import_report_clear (&report);
  tasks = sy_ledger_tasks (two->here, NULL, NULL);
  assert_int_equal (tasks->len, 1);
  assert_sound (two->here);
  assert_null (sy_ledger_export (two->there, unknown, NULL, NULL, &error));
  assert_int_equal (error->code, SY_STORE_ERROR_NOT_FOUND);
}

/* The same bundle with the contents of some lines left out, as a program that is not this one might make it. */
static GBytes *
strip (GBytes *bytes, guint64 line)
{
  g_autoptr (SyBundle) bundle
    = sy_bundle_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, NULL, NULL);
  GString *out = g_string_new (NULL);

  sy_bundle_begin (out, bundle->made, bundle->program, bundle->head_number, &bundle->head_hash);
  for (guint i = 0; i < bundle->lines->len; i++)
    {
      const SyBundleLine *each = bundle->lines->pdata[i];

      sy_bundle_add (out, each->number, &each->hash, &each->event_hash, each->number == line ? NULL : each->event);
    }
  sy_bundle_end (out);
  return g_string_free_to_bytes (out);
}

static void
test_missing_earlier_revisions (void **state)
{
  Two *two = *state;
  g_autoptr (GBytes) bytes = NULL, stripped = NULL;
  g_autofree char *message = NULL;
  SyImportReport report = { 0 };

  record (two->there, two->desk, "Ring", NULL, -1);
  take_over (two->here, two->there);
  record (two->there, two->desk, "Ring", NULL, -1);
  bytes = export_all (two->there);
  /* Line 2, the first revision, is here: by its hash. */
  stripped = strip (bytes, 2);
  message = import_bytes (two->here, stripped, FALSE, &report);
  assert_null (message);
  assert_int_equal (report.added, 1);
  sy_import_report_clear (&report);
  assert_sound (two->here);

  record (two->there, two->desk, "Ring", NULL, -1);
  record (two->there, two->desk, "Ring", NULL, -1);
  g_clear_pointer (&bytes, g_bytes_unref);
  g_clear_pointer (&stripped, g_bytes_unref);
  bytes = export_all (two->there);
  stripped = strip (bytes, 4);
  SyHead before = head_of (two->here);
  message = import_bytes (two->here, stripped, FALSE, &report);
  assert_non_null (message);
  assert_non_null (strstr (message, "Line 5 of the bundle: expected revision 3 of “Ring” before it"));
  assert_int_equal (head_of (two->here).number, before.number);
}

static void
test_the_same_name (void **state)
{
  Two *two = *state;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *message = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  SyImportReport report = { 0 };

  record (two->here, two->desk, "Ring", NULL, -1);
  record (two->there, two->desk, "Ring", NULL, -1);
  bytes = export_all (two->there);
  message = import_bytes (two->here, bytes, FALSE, &report);
  assert_null (message);
  assert_int_equal (report.conflicts->len, 1);
  assert_says (report.conflicts, "task “Ring”: two items have that name now");
  sy_import_report_clear (&report);
  tasks = sy_ledger_tasks (two->here, NULL, NULL);
  assert_int_equal (tasks->len, 2);
  assert_sound (two->here);
}

static void
test_what_does_not_hold_is_refused (void **state)
{
  Two *two = *state;
  g_autoptr (GBytes) bytes = NULL;
  SyImportReport report = { 0 };
  gsize size;

  record (two->there, two->desk, "Ring", NULL, -1);
  bytes = export_all (two->there);

  const char *text = g_bytes_get_data (bytes, &size);
  for (int i = 0; i < 3; i++)
    {
      GString *changed = g_string_new_len (text, (gssize) size);
      g_autoptr (GBytes) wrong = NULL;
      g_autofree char *message = NULL;

      if (i == 0)
        g_string_replace (changed, "B. Ostler", "C. Ostler", 0);
      else if (i == 1)
        g_string_truncate (changed, size / 2);
      else
        g_string_assign (changed, "kind,name\r\n");
      wrong = g_string_free_to_bytes (changed);
      message = import_bytes (two->here, wrong, FALSE, &report);
      assert_non_null (message);
      assert_true (g_str_has_prefix (message, "Nothing was taken over."));
      assert_int_equal (head_of (two->here).number, 0);
    }
}

/* A line that says of itself that it comes from one of another kind is no such line. */
static void
test_a_false_origin (void **state)
{
  Two *two = *state;
  g_autoptr (GBytes) bytes = NULL, event_bytes = NULL, forged = NULL;
  g_autoptr (SyBundle) bundle = NULL;
  g_autoptr (SyEvent) event = sy_event_new (SY_EVENT_REVISION);
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *message = NULL;
  SyImportReport report = { 0 };
  SyHash hash = { { 0 } }, event_hash, policy;

  record (two->here, two->desk, "Ring", NULL, -1);
  bytes = export_all (two->here);
  bundle = sy_bundle_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, NULL, NULL);
  sy_event_identity (((SyBundleLine *) bundle->lines->pdata[0])->event, &policy);
  g_free (event->origin);
  event->origin = sy_hash_text (&policy);
  sy_event_set (&event->item, "0123456789abcdef");
  sy_event_set (&event->item_kind, SY_ITEM_TASK);
  event->revision = 1;
  event_bytes = sy_event_encode (event);
  sy_hash_of (g_bytes_get_data (event_bytes, NULL), g_bytes_get_size (event_bytes), &event_hash);
  sy_chain_next (&hash, 1, event_bytes, &hash);
  sy_bundle_begin (out, "2026-03-05T00:00:00Z", "other", 1, &hash);
  sy_bundle_add (out, 1, &hash, &event_hash, event);
  sy_bundle_end (out);
  forged = g_bytes_new (out->str, out->len);
  message = import_bytes (two->here, forged, FALSE, &report);
  assert_non_null (message);
  assert_non_null (strstr (message, "found that of another line"));
}

typedef struct
{
  int calls, stop_at;
} Stop;

static gboolean
stop_at (guint64 done, guint64 of, gpointer user_data)
{
  Stop *stop = user_data;

  assert_true (done <= of);
  return ++stop->calls != stop->stop_at;
}

static void
test_stopping (void **state)
{
  Two *two = *state;
  const SyImportRequest request = { .now = "2026-03-05T00:00:00Z" };
  g_autoptr (GBytes) bytes = NULL;
  Stop stop = { 0, 0 };
  int n;

  record (two->here, two->desk, "Other", NULL, -1);
  for (int i = 0; i < 70; i++)
    record (two->there, two->desk, "Ring", NULL, -1);
  bytes = sy_ledger_export (two->there, NULL, stop_at, &stop, NULL);
  assert_non_null (bytes);
  assert_true (stop.calls > 0);
  for (n = 1; n < 100; n++)
    {
      g_autoptr (GError) error = NULL;
      SyImportReport report = { 0 };

      stop = (Stop) { 0, n };
      if (sy_ledger_import (two->here, bytes, &request, stop_at, &stop, &report, &error))
        {
          sy_import_report_clear (&report);
          break;
        }
      assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_STOPPED));
      assert_int_equal (head_of (two->here).number, 2);
    }
  assert_in_range (n, 3, 99);
  assert_int_equal (head_of (two->here).number, 2 + 1 + 71);
}

typedef struct
{
  const char *path;
  SyDesk *desk;
  int written;
} Rival;

/* Another program that writes while the bundle is held against the record. */
static gboolean
write_meanwhile (guint64 done, guint64 of, gpointer user_data)
{
  Rival *rival = user_data;

  /* in the middle third, when this record has been read */
  if (done * 2 >= of && done * 3 < of * 2 && rival->written < 2)
    {
      g_autoptr (SyLedger) other = sy_ledger_open (rival->path, NULL);

      record (other, rival->desk, "Ring", NULL, -1);
      rival->written++;
    }
  return TRUE;
}

static void
test_somebody_writes_meanwhile (void **state)
{
  Two *two = *state;
  const SyImportRequest request = { .now = "2026-03-05T00:00:00Z" };
  g_autofree char *folder = g_dir_make_tmp ("exchange-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "a.store", NULL);
  g_autoptr (SyLedger) shared = sy_ledger_open (path, NULL);
  g_autoptr (GBytes) bytes = NULL, mine = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) history = NULL;
  Rival rival = { path, two->desk, 0 };
  SyImportReport report = { 0 };

  record (shared, two->desk, "Ring", NULL, -1);
  take_over (two->there, shared);
  record (two->there, two->desk, "Ring", NULL, -1);
  bytes = export_all (two->there);
  if (!sy_ledger_import (shared, bytes, &request, write_meanwhile, &rival, &report, &error))
    fail_msg ("%s", error->message);
  assert_int_equal (rival.written, 2);
  assert_int_equal (report.added, 1);
  assert_says (report.conflicts, "revision 2 of the bundle is revision 4 here, made from revision 1");
  sy_import_report_clear (&report);
  history = sy_ledger_history (shared, "Ring", NULL, NULL);
  assert_int_equal (history->len, 4);
  assert_sound (shared);
  g_clear_pointer (&shared, sy_ledger_close);
  g_unlink (path);
  g_rmdir (folder);
}

/* Whatever is done in records apart, exchanging makes them hold the same. */

#define N_STORES 3
#define N_HISTORIES 8

static void
do_something (GRand *random, SyLedger *ledger, SyDesk *desk)
{
  g_autoptr (GPtrArray) tasks = sy_ledger_tasks (ledger, NULL, NULL);
  g_autofree char *name = g_strdup_printf ("Task %d", g_rand_int_range (random, 0, 6));
  g_autoptr (GError) error = NULL;
  const SyTask *task;
  SyDeedRequest request;
  g_autofree char *id = NULL;
  gint64 revision;
  SyHead head;
  gboolean good = TRUE;

  if (tasks->len == 0 || g_rand_int_range (random, 0, 5) == 0)
    {
      record (ledger, desk, name, NULL, -1);
      return;
    }
  task = tasks->pdata[g_rand_int_range (random, 0, (gint32) tasks->len)];
  revision = g_rand_int_range (random, 1, (gint32) task->revision + 1);
  request = deed_of (task->id);
  switch (g_rand_int_range (random, 0, 8))
    {
    case 0:
      good = sy_ledger_sign (ledger, &request, revision, "trained", &head, &error);
      break;
    case 1:
      good = sy_ledger_tell (ledger, &request, revision, "all of shift A", "9 kg", "left", &head, &error);
      break;
    case 2:
      good = sy_ledger_open_action (ledger, &request, "fit a stop", NULL, NULL, "2026-12-01", &id, &head, &error);
      break;
    case 3:
      good = sy_ledger_retire (ledger, &request, !task->retired, &head, &error);
      break;
    case 4:
      record (ledger, desk, task->id, NULL, revision);
      break;
    default:
      record (ledger, desk, task->id, NULL, -1);
    }
  if (!good)
    fail_msg ("%s", error->message);
}

static void
test_exchange_converges (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (GRand) random = g_rand_new_with_seed (20260304);

  (void) state;
  for (int n = 0; n < N_HISTORIES; n++)
    {
      SyLedger *ledgers[N_STORES];
      g_autofree char *same = NULL;
      guint64 added = 0;

      for (int i = 0; i < N_STORES; i++)
        ledgers[i] = sy_ledger_open ("memory:", NULL);
      for (int k = 0; k < 40; k++)
        {
          int a = g_rand_int_range (random, 0, N_STORES), b = g_rand_int_range (random, 0, N_STORES);

          if (g_rand_int_range (random, 0, 5) == 0)
            take_over (ledgers[a], ledgers[b]);
          else
            do_something (random, ledgers[a], desk);
        }
      /* Round twice, and nothing is left to take over. */
      for (int round = 0; round < 3; round++)
        for (int i = 0; i < N_STORES; i++)
          {
            guint64 taken = take_over (ledgers[(i + 1) % N_STORES], ledgers[i]);

            added = round == 2 ? added + taken : 0;
          }
      assert_int_equal (added, 0);
      for (int i = 0; i < N_STORES; i++)
        {
          g_autofree char *identities = identities_of (ledgers[i]);

          if (same != NULL)
            assert_string_equal (identities, same);
          else
            same = g_strdup (identities);
          assert_sound (ledgers[i]);
          sy_ledger_close (ledgers[i]);
        }
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_into_an_empty_record, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_the_line_that_says_what_was_taken_over, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_both_revised, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_files_and_actions_go_along, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_chosen_items, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_missing_earlier_revisions, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_the_same_name, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_what_does_not_hold_is_refused, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_a_false_origin, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_stopping, set_up_two, tear_down_two),
    cmocka_unit_test_setup_teardown (test_somebody_writes_meanwhile, set_up_two, tear_down_two),
    cmocka_unit_test (test_exchange_converges),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
