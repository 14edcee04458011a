/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <glib/gstdio.h>
#include <math.h>

#include "sy-json.h"
#include "sy-ledger.h"

#define FACTS                                                                                            \
  "{\"method\":\"lift\",\"units\":\"metric\",\"load\":{\"typical\":8,\"heaviest\":\"9,5 kg\"},"           \
  "\"origin\":{\"H\":\"16 in\",\"V\":60,\"A\":0},\"travel\":20.50,\"frequency\":1,\"duration\":\"short\"," \
  "\"coupling\":\"good\",\"conditions\":[]}"

static SyRecordRequest
request (const char *task, gint64 base)
{
  return (SyRecordRequest) { .task = task, .by = "B. Ostler", .role = "safety lead", .why = "measured", .base = base,
                             .now = "2026-03-04T05:06:07Z", .clock_set = TRUE };
}

static void
record (SyLedger *ledger, SyDesk *desk, const SyRecordRequest *what, SyRecordResult *result)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GError) error = NULL;

  if (!sy_ledger_record (ledger, desk, what, FACTS, strlen (FACTS), problems, result, &error))
    fail_msg ("%s", error->message);
}

static void
assert_record_fails (SyLedger *ledger, SyDesk *desk, const SyRecordRequest *what, const char *facts, int code,
                     const char *named)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GError) error = NULL;
  SyRecordResult result = { NULL };
  SyHead before, after;

  assert_true (sy_ledger_head (ledger, &before, NULL));
  assert_false (sy_ledger_record (ledger, desk, what, facts, strlen (facts), problems, &result, &error));
  assert_int_equal (error->domain, SY_LEDGER_ERROR);
  assert_int_equal (error->code, code);
  if (strstr (error->message, named) == NULL)
    fail_msg ("“%s” does not name “%s”", error->message, named);
  assert_true (sy_ledger_head (ledger, &after, NULL));
  assert_true (after.number == before.number); /* nothing was written */
}

static void
test_round_trip (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  g_autoptr (GPtrArray) history = NULL;
  g_autoptr (GPtrArray) tasks = NULL;
  SyRecordRequest what = request ("Ring to fixture", -1);
  SyRecordResult result = { NULL };

  (void) state;
  record (ledger, desk, &what, &result);
  assert_int_equal (result.revision, 1);
  assert_int_equal (result.clash, 0);

  /* The policy in force entered the journal first, whole, and only once. */
  assert_int_equal (result.head.number, 2);
  sy_record_result_clear (&result);
  record (ledger, desk, &what, &result);
  assert_int_equal (result.revision, 2);
  assert_int_equal (result.head.number, 3);

  history = sy_ledger_history (ledger, result.task_id, NULL, NULL);
  assert_int_equal (history->len, 2);
  const SyRevision *first = history->pdata[0];
  /* Facts stay as typed: "16 in", "9,5 kg", 20.50. */
  assert_string_equal (first->event->facts, FACTS);
  assert_string_equal (first->event->by, "B. Ostler");
  assert_string_equal (first->event->claimed, "2026-03-04T05:06:07Z");
  assert_true (first->event->clock_set);
  assert_int_equal (((SyRevision *) history->pdata[1])->event->base, 1);

  tasks = sy_ledger_tasks (ledger, NULL, NULL);
  assert_int_equal (tasks->len, 1);
  const SyTask *task = tasks->pdata[0];
  assert_string_equal (task->name, "Ring to fixture");
  assert_int_equal (task->verdict, result.verdict);
  assert_close (task->mass_kg, 9.5, 1e-12, 0);
  /* 1 lift a minute in a class of up to 60 minutes */
  assert_close (task->lifts_per_day, 60, 0, 1e-12);
  assert_close (task->rank, task->index * 60, 0, 1e-12);
  sy_record_result_clear (&result);
}

static void
test_bases (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  SyRecordRequest what = request ("Blank", -1);
  SyRecordResult result = { NULL };

  (void) state;
  record (ledger, desk, &what, &result);
  sy_record_result_clear (&result);
  what.base = 1;
  record (ledger, desk, &what, &result);
  sy_record_result_clear (&result);
  record (ledger, desk, &what, &result); /* a second one from the same base: kept, and said */
  assert_int_equal (result.revision, 3);
  assert_int_equal (result.clash, 2);
  sy_record_result_clear (&result);

  what.base = 7;
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_BASE, "1 to 3");
  what.base = 0;
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_BASE, "1 to 3");
}

static void
test_refusals (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  SyRecordRequest what = request ("Blank", -1);
  SyRecordResult result = { NULL };

  (void) state;
  what.by = "  ";
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_MISSING, "by");
  what = request ("Blank", -1);
  what.why = "";
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_MISSING, "why");
  what = request ("Blank", -1);
  assert_record_fails (ledger, desk, &what, "{}", SY_LEDGER_ERROR_PROBLEMS, "problems");

  record (ledger, desk, &what, &result);
  what.is_new = TRUE;
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_NAME, "Blank");
  sy_record_result_clear (&result);
}

static void
test_rename (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  SyRecordRequest what = request ("One", -1);
  SyRecordResult one = { NULL }, other = { NULL };
  g_autoptr (GPtrArray) history = NULL;

  (void) state;
  record (ledger, desk, &what, &one);
  what.task = "Two";
  record (ledger, desk, &what, &other);
  assert_string_not_equal (one.task_id, other.task_id);

  what = request (one.task_id, -1);
  what.rename = "Two";
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_NAME, "name");
  what.rename = "Three";
  sy_record_result_clear (&other);
  record (ledger, desk, &what, &other);
  assert_string_equal (other.task_id, one.task_id);
  history = sy_ledger_history (ledger, "Three", NULL, NULL);
  assert_int_equal (history->len, 2);
  assert_string_equal (((SyRevision *) history->pdata[0])->event->name, "One");
  sy_record_result_clear (&one);
  sy_record_result_clear (&other);
}

/* A policy of the site's own is adopted in the journal when it first judges. */
static void
test_policy_adopted (void **state)
{
  g_autoptr (SyDesk) builtin = sy_desk_new (NULL, 0, NULL);
  gsize length;
  const char *text = sy_desk_policy_text (builtin, &length);
  g_autoptr (GString) own_text = g_string_new_len (text, (gssize) length);
  g_autoptr (SyDesk) own = NULL;
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  SyRecordRequest what = request ("One", -1);
  SyRecordResult result = { NULL };

  (void) state;
  assert_int_equal (g_string_replace (own_text, "\"over\": 1.0", "\"over\": 0.85", 1), 1);
  own = sy_desk_new (own_text->str, own_text->len, NULL);
  assert_non_null (own);
  record (ledger, builtin, &what, &result);
  assert_int_equal (result.head.number, 2);
  sy_record_result_clear (&result);
  record (ledger, own, &what, &result);
  assert_int_equal (result.head.number, 4);
  sy_record_result_clear (&result);
}

/* A die in the record, as an event past the ledger: what it is kept as is all that counts here. */
static void
put_die (const char *uri, const char *id, const char *name)
{
  g_autoptr (SyStore) store = sy_store_open (uri, NULL);
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);
  SyHead head;

  sy_event_set (&event->item, id);
  sy_event_set (&event->item_kind, SY_ITEM_DIE);
  sy_event_set (&event->name, name);
  sy_event_set (&event->method, "die-mass");
  event->revision = 1;
  sy_event_set (&event->facts, "{}");
  sy_event_set (&event->findings, "{}");
  g_ptr_array_add (events, event);
  assert_true (sy_store_head (store, &head, NULL));
  assert_true (sy_store_append (store, &head, events, NULL, NULL));
}

typedef struct
{
  char *folder, *uri;
} Place;

static int
set_up_place (void **state)
{
  Place *place = g_new0 (Place, 1);

  place->folder = g_dir_make_tmp ("steelyard-ledger-XXXXXX", NULL);
  place->uri = g_build_filename (place->folder, "one.store", NULL);
  *state = place;
  return 0;
}

static int
remove_place (void **state)
{
  Place *place = *state;

  g_unlink (place->uri);
  g_rmdir (place->folder);
  g_free (place->uri);
  g_free (place->folder);
  g_free (place);
  return 0;
}

static void
test_kinds (void **state)
{
  const Place *place = *state;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) history = NULL;
  g_autoptr (GPtrArray) dies = NULL;
  g_autoptr (GError) error = NULL;
  const SyTaskFilter only_dies = { .item_kind = SY_ITEM_DIE };
  SyRecordRequest what = request ("Upper die", -1);
  SyRecordResult result = { NULL };
  g_autofree char *id = NULL;

  put_die (place->uri, "d1", "Upper die");
  ledger = sy_ledger_open (place->uri, NULL);
  /* A lift of that name is another item: names are looked for within the kind of the facts. */
  record (ledger, desk, &what, &result);
  assert_int_equal (result.revision, 1);
  assert_string_not_equal (result.task_id, "d1");
  sy_record_result_clear (&result);
  record (ledger, desk, &what, &result);
  assert_int_equal (result.revision, 2);

  /* An id is of one item, and that is no task. */
  what.task = "d1";
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_KIND, "“lift”");
  assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_KIND, "a die");

  assert_null (sy_ledger_history (ledger, "Upper die", NULL, &error));
  assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_AMBIGUOUS));
  history = sy_ledger_history (ledger, "Upper die", SY_ITEM_TASK, NULL);
  assert_int_equal (history->len, 2);
  assert_string_equal (((SyRevision *) history->pdata[0])->event->item_kind, "task");
  dies = sy_ledger_tasks (ledger, &only_dies, NULL);
  assert_int_equal (dies->len, 1);
  assert_string_equal (((SyTask *) dies->pdata[0])->id, "d1");

  /* A task may take a die's name, not another task's. */
  id = g_strdup (result.task_id);
  what = request (id, -1);
  what.rename = "Lower die";
  sy_record_result_clear (&result);
  record (ledger, desk, &what, &result);
  what.rename = "Upper die";
  sy_record_result_clear (&result);
  record (ledger, desk, &what, &result);
  assert_int_equal (result.revision, 4);
  sy_record_result_clear (&result);
}

static SyAttachRequest
attach_request (const char *item, const char *name)
{
  return (SyAttachRequest) { .item = item, .name = name, .by = "B. Ostler", .role = "rigger", .why = "examined",
                             .now = "2026-03-04T05:06:07Z", .clock_set = TRUE };
}

static void
assert_attach_fails (SyLedger *ledger, const SyAttachRequest *what, GBytes *content, int code, const char *named)
{
  g_autoptr (GError) error = NULL;
  SyHead before, after;

  assert_true (sy_ledger_head (ledger, &before, NULL));
  assert_null (sy_ledger_attach (ledger, what, content, &error));
  assert_true (g_error_matches (error, SY_LEDGER_ERROR, code));
  if (strstr (error->message, named) == NULL)
    fail_msg ("“%s” does not name “%s”", error->message, named);
  assert_true (sy_ledger_head (ledger, &after, NULL));
  assert_true (after.number == before.number);
}

/* SHA-256 of "abc": FIPS 180-2, appendix B.1. */
static void
test_attachments (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  g_autoptr (GBytes) content = g_bytes_new_static ("abc", 3), other = g_bytes_new_static ("\0\xff\n", 3);
  g_autoptr (GBytes) latest = NULL, first = NULL;
  g_autoptr (SyAttachment) attached = NULL, again = NULL;
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GPtrArray) changed = NULL;
  g_autoptr (GPtrArray) history = NULL;
  g_autoptr (GError) error = NULL;
  SyRecordRequest what = request ("Ring", -1);
  SyAttachRequest file = attach_request ("Ring", "Certificate 7.PDF");
  SyRecordResult result = { NULL };
  SyHead head;

  (void) state;
  record (ledger, desk, &what, &result);
  attached = sy_ledger_attach (ledger, &file, content, &error);
  assert_non_null (attached);
  assert_string_equal (attached->item, result.task_id);
  assert_string_equal (attached->name, "Certificate 7.PDF");
  assert_string_equal (attached->media, "application/pdf");
  assert_int_equal (attached->bytes, 3);
  assert_string_equal (attached->sha256, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  assert_string_equal (attached->when, "2026-03-04T05:06:07Z");
  assert_int_equal (attached->line, 3);
  assert_true (sy_ledger_head (ledger, &head, NULL));
  assert_memory_equal (&attached->hash, &head.hash, sizeof head.hash);
  again = sy_ledger_attach (ledger, &file, other, NULL);
  assert_int_equal (again->line, 4);

  all = sy_ledger_attachments (ledger, result.task_id, NULL, NULL);
  assert_int_equal (all->len, 2);
  const SyAttachment *oldest = all->pdata[0];
  assert_string_equal (oldest->sha256, attached->sha256);
  assert_string_equal (oldest->by, "B. Ostler");
  assert_string_equal (oldest->role, "rigger");
  assert_string_equal (oldest->why, "examined");
  assert_int_equal (oldest->line, 3);
  latest = sy_ledger_attachment_content (ledger, "Ring", NULL, "Certificate 7.PDF", 0, NULL);
  assert_true (g_bytes_equal (latest, other));
  first = sy_ledger_attachment_content (ledger, "Ring", SY_ITEM_TASK, "Certificate 7.PDF", 3, NULL);
  assert_true (g_bytes_equal (first, content));
  assert_null (sy_ledger_attachment_content (ledger, "Ring", NULL, "other.pdf", 0, &error));
  assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NO_FILE));

  /* The item is as it was, and told as touched. */
  changed = sy_ledger_changed_since (ledger, 2, NULL);
  assert_int_equal (changed->len, 1);
  assert_int_equal (((SyTask *) changed->pdata[0])->revision, 1);
  history = sy_ledger_history (ledger, "Ring", NULL, NULL);
  assert_int_equal (history->len, 1);
  sy_record_result_clear (&result);
}

static void
test_attachments_refused (void **state)
{
  static const char *const bad_names[] = { "a/b.pdf", "/b", ".", "..", "a\nb" };
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  g_autoptr (GBytes) content = g_bytes_new_static ("abc", 3), nothing = g_bytes_new_static ("", 0);
  g_autoptr (GBytes) most = g_bytes_new_take (g_malloc0 (SY_ATTACHMENT_MAX), SY_ATTACHMENT_MAX);
  g_autoptr (GBytes) too_much = g_bytes_new_take (g_malloc0 (SY_ATTACHMENT_MAX + 1), SY_ATTACHMENT_MAX + 1);
  g_autoptr (GBytes) back = NULL;
  g_autoptr (SyAttachment) attached = NULL;
  g_autofree char *long_name = g_strnfill (256, 'n');
  g_autoptr (GError) error = NULL;
  SyRecordRequest what = request ("Ring", -1);
  SyAttachRequest file = attach_request ("Ring", "file.pdf");
  SyRecordResult result = { NULL };

  (void) state;
  record (ledger, desk, &what, &result);
  sy_record_result_clear (&result);
  assert_attach_fails (ledger, &file, nothing, SY_LEDGER_ERROR_FILE, "file.pdf");
  assert_attach_fails (ledger, &file, too_much, SY_LEDGER_ERROR_FILE, "16777216");
  file.name = long_name;
  assert_attach_fails (ledger, &file, content, SY_LEDGER_ERROR_FILE, "255");
  for (gsize i = 0; i < G_N_ELEMENTS (bad_names); i++)
    {
      file.name = bad_names[i];
      assert_attach_fails (ledger, &file, content, SY_LEDGER_ERROR_FILE, "without folders");
    }
  file = attach_request ("Ring", " ");
  assert_attach_fails (ledger, &file, content, SY_LEDGER_ERROR_MISSING, "file");
  file = attach_request ("Ring", "file.pdf");
  file.why = " ";
  assert_attach_fails (ledger, &file, content, SY_LEDGER_ERROR_MISSING, "why");
  file = attach_request ("Nothing", "file.pdf");
  assert_null (sy_ledger_attach (ledger, &file, content, &error));
  assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND));

  /* The most that is allowed comes back. */
  file = attach_request ("Ring", "file.pdf");
  attached = sy_ledger_attach (ledger, &file, most, NULL);
  assert_non_null (attached);
  back = sy_ledger_attachment_content (ledger, "Ring", NULL, "file.pdf", 0, NULL);
  assert_true (g_bytes_equal (back, most));
}

/* Written past the ledger: a content that is not what its hash says, or no content at all. */
static void
test_attachment_that_is_another (void **state)
{
  static const char *const wrong[] = {
    "{\"file\":\"f\",\"media\":\"text/plain\",\"bytes\":3,\"sha256\":"
    "\"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ae\",\"content\":\"YWJj\"}",
    "{\"file\":\"f\",\"media\":\"text/plain\",\"bytes\":3,\"sha256\":"
    "\"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad\",\"content\":\"YWJk\"}",
    "{\"file\":\"f\",\"media\":\"text/plain\",\"bytes\":4,\"sha256\":"
    "\"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad\",\"content\":\"YWJj\"}",
    "{\"bytes\":0,\"sha256\":\"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855\"}",
    "{}",
    "no JSON",
  };
  const Place *place = *state;
  g_autoptr (SyLedger) ledger = NULL;
  g_autoptr (GPtrArray) all = NULL;

  put_die (place->uri, "d1", "Upper die");
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (SyStore) store = sy_store_open (place->uri, NULL);
      g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
      SyEvent *event = sy_event_new (SY_EVENT_ATTACHMENT);
      SyHead head;

      sy_event_set (&event->item, "d1");
      sy_event_set (&event->name, "f");
      sy_event_set (&event->facts, wrong[i]);
      g_ptr_array_add (events, event);
      assert_true (sy_store_head (store, &head, NULL));
      assert_true (sy_store_append (store, &head, events, NULL, NULL));
    }
  ledger = sy_ledger_open (place->uri, NULL);
  all = sy_ledger_attachments (ledger, "Upper die", NULL, NULL);
  assert_int_equal (all->len, G_N_ELEMENTS (wrong));
  for (guint i = 0; i < all->len; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *line = g_strdup_printf ("line %u ", i + 2);

      assert_null (sy_ledger_attachment_content (ledger, "d1", NULL, "f", i + 2, &error));
      assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_CONTENT));
      assert_non_null (strstr (error->message, line));
    }
}

/* What has run out is said as of a day. */
static void
test_task_json (void **state)
{
  g_autoptr (SyTask) task = sy_task_new ();
  const double day = 20878; /* 2027-03-01 */
  const struct
  {
    double today;
    gboolean is_expired;
  } cases[] = { { day - 1, FALSE }, { day, FALSE }, { day + 1, TRUE }, { NAN, FALSE } };

  (void) state;
  sy_event_set (&task->item_kind, SY_ITEM_GEAR);
  sy_event_set (&task->valid_until, "2027-03-01");
  sy_event_set (&task->detail.identity, "SH-07");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GString) out = g_string_new (NULL);

      sy_task_write_json (out, task, cases[i].today);
      assert_non_null (strstr (out->str, "\"kind\":\"gear\""));
      assert_non_null (strstr (out->str, "\"valid_until\":\"2027-03-01\""));
      assert_non_null (strstr (out->str, "\"identity\":\"SH-07\""));
      assert_int_equal (strstr (out->str, "\"expired\":true") != NULL, cases[i].is_expired);
    }
}

typedef struct
{
  const char *uri;
  int saved;
} Writer;

static gpointer
write_many (gpointer data)
{
  Writer *writer = data;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open (writer->uri, NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  SyRecordRequest what = request ("Shared", -1);

  for (int i = 0; i < 20 && ledger != NULL; i++)
    {
      SyRecordResult result = { NULL };
      if (sy_ledger_record (ledger, desk, &what, FACTS, strlen (FACTS), problems, &result, NULL))
        writer->saved++;
      sy_record_result_clear (&result);
    }
  return NULL;
}

/* Two programs on one store: neither loses a revision. */
static void
test_two_writers (void **state)
{
  g_autofree char *folder = g_dir_make_tmp ("steelyard-ledger-XXXXXX", NULL);
  g_autofree char *uri = g_build_filename (folder, "two.store", NULL);
  Writer writers[2] = { { uri, 0 }, { uri, 0 } };
  GThread *threads[2];
  g_autoptr (GPtrArray) history = NULL;

  (void) state;
  /* made before, so that both open the same file */
  SyLedger *first = sy_ledger_open (uri, NULL);
  assert_non_null (first);
  sy_ledger_close (first);
  for (int i = 0; i < 2; i++)
    threads[i] = g_thread_new ("writer", write_many, &writers[i]);
  for (int i = 0; i < 2; i++)
    g_thread_join (threads[i]);

  SyLedger *ledger = sy_ledger_open (uri, NULL);
  history = sy_ledger_history (ledger, "Shared", NULL, NULL);
  assert_non_null (history);
  assert_int_equal (history->len, writers[0].saved + writers[1].saved);
  assert_true (history->len > 0);
  for (guint i = 0; i < history->len; i++)
    assert_int_equal (((SyRevision *) history->pdata[i])->event->revision, i + 1);
  sy_ledger_close (ledger);

  static const char *const ends[] = { "", "-wal", "-shm" };
  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      g_autofree char *path = g_strconcat (uri, ends[i], NULL);
      g_unlink (path);
    }
  g_rmdir (folder);
}

/* RFC 3339, and no other form of ISO 8601; in UTC the year has four digits. */
static void
test_clock (void **state)
{
  static const struct
  {
    const char *set, *now; /* NULL: refused */
  } cases[] = {
    { "2026-11-26T10:00:00Z", "2026-11-26T10:00:00Z" },
    { "2026-11-26T10:00:00.25+02:00", "2026-11-26T08:00:00Z" },
    { "2026-12-31T23:59:60Z", "2026-12-31T23:59:59Z" },
    { "9999-12-31T23:59:59Z", "9999-12-31T23:59:59Z" },
    { "9999-12-31T23:59:59-01:00", NULL },
    { "0001-01-01T00:00:00+14:00", NULL },
    { "0999-01-01T00:00:00Z", NULL },
    { "2026-11-26T10:00:00", NULL },
    { "2026-11-26T10:00Z", NULL },
    { "2026-W48-4T10:00:00Z", NULL },
    { "2026-330T10:00:00.00Z", NULL },
    { "20261126T100000.00000Z", NULL },
    { "2026-11-26 10:00:00Z", NULL },
    { "yesterday", NULL },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gboolean clock_set;
      g_autoptr (GError) error = NULL;
      g_autofree char *now = NULL;

      g_setenv ("STEELYARD_CLOCK", cases[i].set, TRUE);
      now = sy_clock_now (&clock_set, &error);
      if (g_strcmp0 (now, cases[i].now) != 0)
        fail_msg ("%s: %s", cases[i].set, now != NULL ? now : "refused");
      assert_true (clock_set);
      assert_int_equal (error == NULL, now != NULL);
      assert_int_equal (isnan (sy_clock_today ()), now == NULL);
    }
  g_unsetenv ("STEELYARD_CLOCK");
}

/* A name that looks like nothing, or like another one. */
static void
test_names_that_cannot_be_seen (void **state)
{
  static const char *const blank[]
    = { "\342\200\213", "\342\200\215\302\255", "\342\201\240 ", "\343\205\244", "\342\240\200", "\001" };
  static const char *const turned[]
    = { "\342\200\256kcinnaT .I", "I. Tannick\nM. Other", "I.\tTannick", "\342\201\246I. Tannick", "I. Tannick\342\200\250",
        "\357\273\277I. Tannick", "I. Tan\342\200\213nick", "I. T\302\255annick" };
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  SyRecordRequest what = request ("Ring", -1);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (blank); i++)
    {
      what.by = blank[i];
      assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_MISSING, "by: given nothing");
    }
  for (gsize i = 0; i < G_N_ELEMENTS (turned); i++)
    {
      what.by = turned[i];
      assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_MISSING, "allowed: a name in one line");
      what.by = "B. Ostler";
      what.task = turned[i];
      assert_record_fails (ledger, desk, &what, FACTS, SY_LEDGER_ERROR_MISSING, "allowed: a name in one line");
      what.task = "Ring";
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_round_trip),     cmocka_unit_test (test_bases),  cmocka_unit_test (test_refusals),
    cmocka_unit_test (test_rename),         cmocka_unit_test (test_policy_adopted),
    cmocka_unit_test (test_two_writers),
    cmocka_unit_test_setup_teardown (test_kinds, set_up_place, remove_place),
    cmocka_unit_test (test_attachments),    cmocka_unit_test (test_attachments_refused),
    cmocka_unit_test_setup_teardown (test_attachment_that_is_another, set_up_place, remove_place),
    cmocka_unit_test (test_task_json),      cmocka_unit_test (test_clock),
    cmocka_unit_test (test_names_that_cannot_be_seen),
  };

  return cmocka_run_group_tests_name ("ledger", tests, NULL, NULL);
}
