/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <glib/gstdio.h>

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

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_round_trip),     cmocka_unit_test (test_bases),  cmocka_unit_test (test_refusals),
    cmocka_unit_test (test_rename),         cmocka_unit_test (test_policy_adopted),
    cmocka_unit_test (test_two_writers),
  };

  return cmocka_run_group_tests_name ("ledger", tests, NULL, NULL);
}
