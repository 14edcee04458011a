/* SPDX-License-Identifier: MIT */
#include "exchange-help.h"

/* Bundles whose chain holds, with lines in them that nobody wrote here: the chain has no key, anybody can compute it. */

enum
{
  REVISION = 1,
  ACTION = 3,
  FILE_LINE = 4,
  SIGNATURE = 5,
  N_LINES = 6,
};

static int
set_up (void **state)
{
  Two *two;
  const SyAttachRequest attach = { .item = "Ring", .name = "report.txt", .by = "Q. Falk", .why = "yearly",
                                   .now = "2026-03-05T00:00:00Z" };
  g_autoptr (GBytes) content = g_bytes_new_static ("passed", 6);
  g_autofree char *id = NULL;
  SyDeedRequest request;
  SyHead head;

  set_up_two (state);
  two = *state;
  record (two->there, two->desk, "Ring", NULL, -1);
  record (two->there, two->desk, "Ring", NULL, -1);
  request = deed_of ("Ring");
  assert_true (sy_ledger_open_action (two->there, &request, "fit a stop", NULL, NULL, NULL, &id, &head, NULL));
  sy_attachment_free (sy_ledger_attach (two->there, &attach, content, NULL));
  sign (two->there, "Ring", 2);
  return 0;
}

static void
copy_line (const SyBundle *bundle, guint line)
{
  const SyBundleLine *from = bundle->lines->pdata[line];
  SyBundleLine *to = g_new0 (SyBundleLine, 1);
  g_autoptr (GBytes) bytes = sy_event_encode (from->event);

  to->event = sy_event_decode (bytes, NULL);
  g_ptr_array_add (bundle->lines, to);
}

static SyEvent *
event_at (const SyBundle *bundle, guint line)
{
  return ((SyBundleLine *) bundle->lines->pdata[line])->event;
}

/* The bundle with a chain that holds. */
static GBytes *
chain_anew (const SyBundle *bundle)
{
  GString *out = g_string_new (NULL);
  SyHash hash = { { 0 } };

  for (guint pass = 0; pass < 2; pass++)
    {
      SyHash head = hash;

      hash = (SyHash) { { 0 } };
      g_string_truncate (out, 0);
      sy_bundle_begin (out, "2026-03-05T00:00:00Z", "other", bundle->lines->len, &head);
      for (guint i = 0; i < bundle->lines->len; i++)
        {
          g_autoptr (GBytes) bytes = sy_event_encode (event_at (bundle, i));
          SyHash event_hash;

          sy_hash_of (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &event_hash);
          sy_chain_next (&hash, i + 1, bytes, &hash);
          sy_bundle_add (out, i + 1, &hash, &event_hash, event_at (bundle, i));
        }
      sy_bundle_end (out);
    }
  return g_string_free_to_bytes (out);
}

static SyBundle *
take_apart (SyLedger *ledger)
{
  g_autoptr (GBytes) bytes = export_all (ledger);
  SyBundle *bundle = sy_bundle_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, NULL, NULL);

  assert_non_null (bundle);
  assert_int_equal (bundle->lines->len, N_LINES);
  return bundle;
}

/* The message, NULL where it was taken over. */
static char *
bring (SyLedger *here, const SyBundle *bundle)
{
  g_autoptr (GBytes) bytes = chain_anew (bundle);
  SyImportReport report = { 0 };
  char *message = import_bytes (here, bytes, FALSE, &report);

  sy_import_report_clear (&report);
  return message;
}

static void
set_text (SyEvent *event, gsize offset, const char *value)
{
  sy_event_set (&G_STRUCT_MEMBER (char *, event, offset), value);
}

/* One text of one line changed, and what is said of it. */
static const struct
{
  guint line;
  gsize offset;
  const char *value, *said;
} changes[] = {
  { REVISION, G_STRUCT_OFFSET (SyEvent, item), "Ring", "expected an item with an id of 16 digits" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, item), "0123456789ABCDEF", "expected an item with an id of 16 digits" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, by), "\xe2\x80\x8b", "by: given nothing" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, by), "\xe2\x80\xaeyellaF", "by: given a name with" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, name), "Ring\nHub", "name: given a name with" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, why), "", "why: given nothing" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, claimed), "yesterday", "expected times as" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, written), "", "expected times as" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, claimed), "2026-03-05T23:00:00-05:00", "expected times as" },
  { REVISION, G_STRUCT_OFFSET (SyEvent, method), "gear", "expected the method of a “task”, found “gear”" },
  { 0, G_STRUCT_OFFSET (SyEvent, facts), "no policy", "expected a policy in JSON" },
  { 0, G_STRUCT_OFFSET (SyEvent, item), "0123456789abcdef", "expected no item" },
  { FILE_LINE, G_STRUCT_OFFSET (SyEvent, name), "../report.txt", "expected a file with the size and the SHA-256" },
  { FILE_LINE, G_STRUCT_OFFSET (SyEvent, facts), "{}", "expected a file with the size and the SHA-256" },
  { FILE_LINE, G_STRUCT_OFFSET (SyEvent, facts),
    "{\"file\":\"report.txt\",\"media\":\"text/plain\",\"bytes\":6,\"sha256\":"
    "\"0d6be69b264717f2dd33652e212b173104b4a647b7c11ae72e9885f11cd312fb\",\"content\":\"ZmFpbGVk\"}",
    "expected a file with the size and the SHA-256" },
  { SIGNATURE, G_STRUCT_OFFSET (SyEvent, role), " ", "role: given nothing" },
};

static void
test_what_no_edition_wrote (void **state)
{
  Two *two = *state;

  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_autoptr (SyBundle) bundle = take_apart (two->there);
      g_autofree char *message = NULL;

      set_text (event_at (bundle, changes[i].line), changes[i].offset, changes[i].value);
      message = bring (two->here, bundle);
      if (message == NULL || strstr (message, changes[i].said) == NULL)
        fail_msg ("%d: expected “%s”, found “%s”", (int) i, changes[i].said, message != NULL ? message : "taken over");
      assert_int_equal (head_of (two->here).number, 0);
    }
}

/* The list of actions and the count of an item's never part. */
static void
test_an_action_is_opened_once (void **state)
{
  Two *two = *state;
  g_autoptr (SyBundle) again = take_apart (two->there), other = take_apart (two->there);
  g_autofree char *message = NULL, *other_message = NULL;

  copy_line (again, ACTION);
  sy_event_set (&event_at (again, N_LINES)->by, "N. Vance");
  message = bring (two->here, again);
  assert_non_null (message);
  assert_non_null (strstr (message, "which was opened before"));

  copy_line (other, REVISION);
  sy_event_set (&event_at (other, N_LINES)->item, "0123456789abcdef");
  sy_event_set (&event_at (other, N_LINES)->name, "Hub");
  copy_line (other, ACTION);
  sy_event_set (&event_at (other, N_LINES + 1)->item, "0123456789abcdef");
  other_message = bring (two->here, other);
  assert_non_null (other_message);
  assert_non_null (strstr (other_message, "which was opened before"));
}

/* A forgery that says that it is a line which comes later: that one is never passed over in silence. */
static void
test_in_the_place_of_another (void **state)
{
  Two *two = *state;
  g_autoptr (SyBundle) forged = take_apart (two->there);
  g_autoptr (GBytes) genuine = export_all (two->there);
  g_autofree char *message = NULL, *back = NULL;
  SyImportReport report = { 0 };
  SyHash identity;

  sy_event_identity (event_at (forged, REVISION + 1), &identity);
  g_free (event_at (forged, REVISION + 1)->origin);
  event_at (forged, REVISION + 1)->origin = sy_hash_text (&identity);
  sy_event_set (&event_at (forged, REVISION + 1)->why, "never said so");
  /* where the genuine line is */
  back = bring (two->there, forged);
  assert_non_null (back);
  assert_non_null (strstr (back, "one of the two is forged"));
  /* and where it is not yet, when it comes */
  assert_null (bring (two->here, forged));
  message = import_bytes (two->here, genuine, FALSE, &report);
  assert_non_null (message);
  assert_non_null (strstr (message, "one of the two is forged"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_what_no_edition_wrote, set_up, tear_down_two),
    cmocka_unit_test_setup_teardown (test_an_action_is_opened_once, set_up, tear_down_two),
    cmocka_unit_test_setup_teardown (test_in_the_place_of_another, set_up, tear_down_two),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
