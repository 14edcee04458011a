/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <glib/gstdio.h>

#include "sy-json.h"
#include "sy-ledger-deeds.h"

#define FACTS                                                                                            \
  "{\"method\":\"lift\",\"units\":\"metric\",\"load\":{\"typical\":8,\"heaviest\":\"9,5 kg\"},"           \
  "\"origin\":{\"H\":\"16 in\",\"V\":60,\"A\":0},\"travel\":20.50,\"frequency\":1,\"duration\":\"short\"," \
  "\"coupling\":\"good\",\"conditions\":[]}"

#define TODAY "2026-11-26"
#define ITEM "Ring to fixture"

/* A record with two revisions of one task by Ann Bell, in memory. */
static SyLedger *
new_ledger (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  SyLedger *ledger = sy_ledger_open ("memory:", NULL);

  for (int i = 0; i < 2; i++)
    {
      const SyRecordRequest request = { .task = ITEM, .by = "Ann Bell", .role = "safety lead", .why = "measured", .base = -1,
                                        .now = TODAY "T07:00:00Z", .clock_set = TRUE };
      g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
      SyRecordResult result = { NULL };

      assert_true (sy_ledger_record (ledger, desk, &request, FACTS, strlen (FACTS), problems, &result, NULL));
      sy_record_result_clear (&result);
    }
  return ledger;
}

static SyDeedRequest
request (void)
{
  return (SyDeedRequest) { .item = ITEM, .by = "R. Example", .role = "foreman", .why = "agreed", .now = TODAY "T08:00:00Z",
                           .clock_set = TRUE };
}

static SyTask *
find (SyLedger *ledger)
{
  SyTask *task = sy_ledger_find (ledger, ITEM, NULL, NULL);

  assert_non_null (task);
  return task;
}

static guint64
count_lines (SyLedger *ledger)
{
  SyHead head;

  assert_true (sy_ledger_head (ledger, &head, NULL));
  return head.number;
}

/* Checks an error and clears it; nothing was written since there were @lines. */
static void
assert_failed (SyLedger *ledger, guint64 lines, gboolean done, GError **error, int code, const char *named)
{
  assert_false (done);
  assert_non_null (*error);
  assert_int_equal ((*error)->domain, SY_LEDGER_ERROR);
  if ((*error)->code != code || strstr ((*error)->message, named) == NULL)
    fail_msg ("“%s” (%d) does not name “%s”", (*error)->message, (*error)->code, named);
  g_clear_error (error);
  assert_int_equal (count_lines (ledger), lines);
}

static void
a_revision_is_signed_with_the_hash_of_its_line (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autoptr (GPtrArray) events = NULL;
  g_autoptr (SyTask) task = NULL;
  const SyDeedRequest by_other = request ();
  SyHead head;
  SyDeed deed;

  (void) state;
  assert_true (sy_ledger_sign (ledger, &by_other, 1, "rigger's card", &head, NULL));
  assert_int_equal (head.number, 4); /* policy, two revisions, this */
  events = sy_ledger_events (ledger, ITEM, NULL, NULL);
  assert_int_equal (events->len, 3);
  const SyRevision *line = events->pdata[2];
  const SyRevision *signed_line = events->pdata[0];
  g_autofree char *hash = sy_hash_text (&signed_line->hash);
  assert_int_equal (line->event->kind, SY_EVENT_SIGNATURE);
  assert_int_equal (line->event->revision, 1);
  assert_string_equal (line->event->name, ITEM);
  assert_string_equal (line->event->role, "foreman");
  assert_true (line->event->clock_set);
  assert_true (sy_deed_read (line->event, &deed));
  assert_string_equal (deed.line_hash, hash);
  assert_string_equal (deed.competence, "rigger's card");
  sy_deed_clear (&deed);

  task = find (ledger);
  assert_int_equal (task->signed_revision, 1);
  assert_false (task->signed_own);

  SyDeedRequest own = request ();
  own.by = " ann bell";
  assert_true (sy_ledger_sign (ledger, &own, 2, NULL, NULL, NULL));
  g_autoptr (SyTask) again = find (ledger);
  assert_int_equal (again->signed_revision, 2);
  assert_true (again->signed_own);
}

static void
what_cannot_be_signed_is_said (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  GError *error = NULL;
  SyDeedRequest what = request ();

  (void) state;
  assert_failed (ledger, 3, sy_ledger_sign (ledger, &what, 3, NULL, NULL, &error), &error, SY_LEDGER_ERROR_DEED,
                 "revision: given 3; allowed: a revision of “" ITEM "”, from 1 to 2");
  assert_failed (ledger, 3, sy_ledger_sign (ledger, &what, 0, NULL, NULL, &error), &error, SY_LEDGER_ERROR_DEED,
                 "given 0");
  what.role = " \t";
  assert_failed (ledger, 3, sy_ledger_sign (ledger, &what, 1, NULL, NULL, &error), &error, SY_LEDGER_ERROR_MISSING, "role");
  what = request ();
  what.by = NULL;
  assert_failed (ledger, 3, sy_ledger_sign (ledger, &what, 1, NULL, NULL, &error), &error, SY_LEDGER_ERROR_MISSING, "by");
  what = request ();
  what.by = "\xff";
  assert_failed (ledger, 3, sy_ledger_sign (ledger, &what, 1, NULL, NULL, &error), &error, SY_LEDGER_ERROR_MISSING, "UTF-8");
  what = request ();
  assert_failed (ledger, 3, sy_ledger_sign (ledger, &what, 1, "\xff", NULL, &error), &error, SY_LEDGER_ERROR_MISSING,
                 "competence");
  what.item = "Somewhere else";
  assert_false (sy_ledger_sign (ledger, &what, 1, NULL, NULL, &error));
  assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND));
  g_clear_error (&error);
}

static void
an_action_goes_from_open_to_closed (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autoptr (GPtrArray) open = NULL;
  g_autofree char *id = NULL;
  g_autofree char *other = NULL;
  const SyDeedRequest what = request ();
  const SyActionFilter filter = { .open = TRUE };
  SyHead head;

  (void) state;
  assert_true (sy_ledger_open_action (ledger, &what, "Fit a stop", "index-goal", NULL, TODAY, &id, &head, NULL));
  assert_int_equal (strlen (id), 16);
  assert_int_equal (head.number, 4);
  assert_true (sy_ledger_open_action (ledger, &what, "Fit a stop", NULL, "N. Vance", NULL, &other, NULL, NULL));
  assert_true (strcmp (id, other) != 0); /* the same words, another action */
  open = sy_ledger_actions (ledger, &filter, NULL);
  assert_int_equal (open->len, 2);
  const SyAction *first = open->pdata[0];
  assert_string_equal (first->id, id);
  assert_string_equal (first->about, "index-goal");
  assert_string_equal (first->item_name, ITEM);
  assert_string_equal (first->why, "agreed");
  assert_string_equal (first->opened_by, "R. Example");

  /* what is not given stays as it was; nothing given takes it away */
  assert_true (sy_ledger_assign_action (ledger, &what, id, "N. Vance", NULL, NULL, NULL));
  assert_true (sy_ledger_assign_action (ledger, &what, other, NULL, "2026-12-24", NULL, NULL));
  g_autoptr (GPtrArray) assigned = sy_ledger_actions (ledger, &filter, NULL);
  assert_string_equal (((SyAction *) assigned->pdata[0])->assigned, "N. Vance");
  assert_string_equal (((SyAction *) assigned->pdata[0])->due, TODAY);
  assert_string_equal (((SyAction *) assigned->pdata[1])->assigned, "N. Vance");
  assert_string_equal (((SyAction *) assigned->pdata[1])->due, "2026-12-24");
  assert_true (sy_ledger_assign_action (ledger, &what, id, "", "", NULL, NULL));
  g_autoptr (SyTask) task = find (ledger);
  assert_int_equal (task->n_open, 2);
  assert_string_equal (task->action_due, "2026-12-24");

  assert_true (sy_ledger_close_action (ledger, &what, id, "seen on the floor", NULL, NULL));
  g_autoptr (GPtrArray) left = sy_ledger_actions (ledger, &filter, NULL);
  assert_int_equal (left->len, 1);
  const SyActionFilter any = { .open = FALSE };
  g_autoptr (GPtrArray) all = sy_ledger_actions (ledger, &any, NULL);
  assert_int_equal (all->len, 2);
  assert_string_equal (((SyAction *) all->pdata[1])->evidence, "seen on the floor");
  assert_string_equal (((SyAction *) all->pdata[1])->assigned, "");
}

static void
what_cannot_be_done_about_an_action_is_said (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree char *id = NULL;
  char *none = NULL;
  SyRecordResult result = { NULL };
  SyDeedRequest what = request ();
  const SyRecordRequest elsewhere = { .task = "Elsewhere", .by = "Ann Bell", .why = "measured", .base = -1,
                                      .now = TODAY "T07:00:00Z" };
  GError *error = NULL;

  (void) state;
  assert_true (sy_ledger_record (ledger, desk, &elsewhere, FACTS, strlen (FACTS), problems, &result, NULL));
  sy_record_result_clear (&result);
  assert_true (sy_ledger_open_action (ledger, &what, "Fit a stop", NULL, NULL, NULL, &id, NULL, NULL));
  assert_failed (ledger, 5, sy_ledger_open_action (ledger, &what, " ", NULL, NULL, NULL, &none, NULL, &error), &error,
                 SY_LEDGER_ERROR_MISSING, "what");
  assert_failed (ledger, 5, sy_ledger_open_action (ledger, &what, "x", NULL, NULL, "tomorrow", &none, NULL, &error), &error,
                 SY_LEDGER_ERROR_DEED, "due: given “tomorrow”; allowed: a date such as " TODAY);
  assert_failed (ledger, 5, sy_ledger_open_action (ledger, &what, "x", NULL, NULL, "2026-11-25", &none, NULL, &error),
                 &error, SY_LEDGER_ERROR_DEED, "due: given 2026-11-25, which is past; allowed: " TODAY " or later");
  assert_failed (ledger, 5, sy_ledger_assign_action (ledger, &what, id, NULL, "2026-11-25", NULL, &error), &error,
                 SY_LEDGER_ERROR_DEED, "2026-11-25");
  assert_failed (ledger, 5, sy_ledger_close_action (ledger, &what, id, "", NULL, &error), &error, SY_LEDGER_ERROR_MISSING,
                 "evidence");
  assert_null (none);

  what.item = "Elsewhere";
  assert_failed (ledger, 5, sy_ledger_close_action (ledger, &what, id, "seen", NULL, &error), &error, SY_LEDGER_ERROR_DEED,
                 "belongs to “" ITEM "”; allowed: an action of “Elsewhere”");
  what.item = ITEM;
  assert_false (sy_ledger_close_action (ledger, &what, "ffffffffffffffff", "seen", NULL, &error));
  assert_true (g_error_matches (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND));
  g_clear_error (&error);
  assert_true (sy_ledger_close_action (ledger, &what, id, "seen", NULL, NULL));
  assert_failed (ledger, 6, sy_ledger_assign_action (ledger, &what, id, "N. Vance", NULL, NULL, &error), &error,
                 SY_LEDGER_ERROR_DEED, "was closed by R. Example on " TODAY);
}

static void
a_review_has_a_day_and_a_reason (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  SyDeedRequest what = request ();
  GError *error = NULL;

  (void) state;
  assert_failed (ledger, 3, sy_ledger_set_review (ledger, &what, SY_TRIGGER_DATE, NULL, NULL, &error), &error,
                 SY_LEDGER_ERROR_DEED, "due: given nothing");
  assert_failed (ledger, 3, sy_ledger_set_review (ledger, &what, SY_TRIGGER_DATE, "2026-11-25", NULL, &error), &error,
                 SY_LEDGER_ERROR_DEED, "which is past");
  what.why = NULL;
  assert_failed (ledger, 3, sy_ledger_set_review (ledger, &what, SY_TRIGGER_CHANGE, NULL, NULL, &error), &error,
                 SY_LEDGER_ERROR_MISSING, "why");
  what = request ();
  assert_true (sy_ledger_set_review (ledger, &what, SY_TRIGGER_DATE, "2027-11-26", NULL, NULL));
  assert_true (sy_ledger_set_review (ledger, &what, SY_TRIGGER_ACCIDENT, NULL, NULL, NULL));
  g_autoptr (SyTask) task = find (ledger);
  assert_string_equal (task->review_due, TODAY);
  assert_string_equal (task->review_trigger, "accident");
}

static void
an_item_is_retired_once_and_taken_back_once (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  SyDeedRequest what = request ();
  GError *error = NULL;

  (void) state;
  assert_failed (ledger, 3, sy_ledger_retire (ledger, &what, FALSE, NULL, &error), &error, SY_LEDGER_ERROR_DEED,
                 "in use already");
  assert_true (sy_ledger_retire (ledger, &what, TRUE, NULL, NULL));
  assert_failed (ledger, 4, sy_ledger_retire (ledger, &what, TRUE, NULL, &error), &error, SY_LEDGER_ERROR_DEED,
                 "out of use already");
  g_autoptr (SyTask) task = find (ledger);
  assert_true (task->retired);
  assert_true (sy_ledger_retire (ledger, &what, FALSE, NULL, NULL));
}

static void
workers_are_told_of_a_revision (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  SyDeedRequest what = request ();
  GError *error = NULL;

  (void) state;
  what.why = what.role = NULL;
  assert_failed (ledger, 3, sy_ledger_tell (ledger, &what, 1, "", "18 kg", "left", NULL, &error), &error,
                 SY_LEDGER_ERROR_MISSING, "who");
  assert_failed (ledger, 3, sy_ledger_tell (ledger, &what, 1, "A", " ", "left", NULL, &error), &error,
                 SY_LEDGER_ERROR_MISSING, "mass");
  assert_failed (ledger, 3, sy_ledger_tell (ledger, &what, 1, "A", "18 kg", "\342\200\213", NULL, &error), &error,
                 SY_LEDGER_ERROR_MISSING, "heaviest side");
  assert_failed (ledger, 3, sy_ledger_tell (ledger, &what, 5, "A", "18 kg", "left", NULL, &error), &error,
                 SY_LEDGER_ERROR_DEED, "from 1 to 2");
  assert_true (sy_ledger_tell (ledger, &what, 2, "A. Bee, C. Dee", "18 kg", "left", NULL, NULL));
  g_autoptr (SyTask) task = find (ledger);
  assert_int_equal (task->told_revision, 2);
}

static void
one_revision_is_found_or_it_is_said (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autoptr (GError) error = NULL;
  SyRevision *second = sy_ledger_revision (ledger, ITEM, NULL, 2, NULL);

  (void) state;
  assert_non_null (second);
  assert_int_equal (second->event->revision, 2);
  assert_int_equal (second->number, 3);
  sy_revision_free (second);
  assert_null (sy_ledger_revision (ledger, ITEM, NULL, 3, &error));
  assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BASE));
  assert_non_null (strstr (error->message, "from 1 to 2"));
}

/* Topics: words and JSON */

static void
what_was_verified_is_said_with_what_it_cannot_show (void **state)
{
  static const struct
  {
    SyVerification verification;
    const char *parts[4];
  } cases[] = {
    { { .fault = SY_FAULT_NONE }, { "The journal is empty" } },
    { { .fault = SY_FAULT_NONE, .lines = 1 }, { "The one line of the journal holds" } },
    { { .fault = SY_FAULT_NONE, .lines = 412 }, { "All 412 lines of the journal hold", "The head is 0000" } },
    { { .fault = SY_FAULT_NONE, .lines = 412, .known_at = 412 }, { "All 412", "nothing was removed from the end" } },
    { { .fault = SY_FAULT_NONE, .lines = 412, .known_at = 400 }, { "All 412", "stands at line 400" } },
    { { .fault = SY_FAULT_NUMBER, .line = 17, .lines = 16, .expected = (char *) "17", .found = (char *) "18" },
      { "Line 17", "expected 17", "found 18", "hold: 16" } },
    { { .fault = SY_FAULT_HASH, .line = 17, .lines = 16, .expected = (char *) "aa", .found = (char *) "bb" },
      { "Line 17", "expected aa", "found bb", "hold: 16" } },
    { { .fault = SY_FAULT_COLUMN, .line = 17, .expected = (char *) "task", .found = (char *) "die" },
      { "Line 17", "expected task", "found die" } },
    { { .fault = SY_FAULT_EVENT, .line = 17, .expected = (char *) "an event" }, { "Line 17", "expected an event" } },
    { { .fault = SY_FAULT_END, .line = 9, .lines = 9, .expected = (char *) "12", .found = (char *) "9" },
      { "at line 9", "expected 12", "found 9" } },
    { { .fault = SY_FAULT_HEAD, .line = 9, .lines = 9, .expected = (char *) "aa", .found = (char *) "bb" },
      { "none of the 9 lines", "expected aa", "found bb" } },
    { { .fault = SY_FAULT_FILE, .line = 9, .lines = 8, .expected = (char *) "a line", .found = (char *) "nothing" },
      { "damaged at line 9", "expected a line" } },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = sy_verification_words (&cases[i].verification, NULL);

      for (gsize k = 0; k < G_N_ELEMENTS (cases[i].parts); k++)
        if (cases[i].parts[k] != NULL && strstr (words, cases[i].parts[k]) == NULL)
          fail_msg ("“%s” is not in “%s”", cases[i].parts[k], words);
      assert_non_null (strstr (words, "names are typed, not proven"));
      assert_non_null (strstr (words, "only a head that was kept elsewhere"));
      assert_null (strchr (words, '{'));
    }
}

static const SyJson *
scan (const char *text, SyMemory *memory)
{
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);

  if (root == NULL)
    fail_msg ("no JSON: %s", text);
  return root;
}

static void
every_line_is_json_that_says_what_it_is (void **state)
{
  static const char *const events[] = { "revision", "revision", "signature", "action", "attachment" };
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autoptr (GBytes) content = g_bytes_new_static ("x", 1);
  g_autoptr (SyAttachment) attachment = NULL;
  g_autofree char *id = NULL;
  const SyDeedRequest what = request ();
  const SyAttachRequest file = { .item = ITEM, .name = "note.txt", .by = "Ann Bell", .why = "seen",
                                 .now = TODAY "T07:00:00Z" };

  (void) state;
  assert_true (sy_ledger_sign (ledger, &what, 2, NULL, NULL, NULL));
  assert_true (sy_ledger_open_action (ledger, &what, "Fit a “stop”", NULL, NULL, TODAY, &id, NULL, NULL));
  attachment = sy_ledger_attach (ledger, &file, content, NULL);
  assert_non_null (attachment);
  lines = sy_ledger_events (ledger, ITEM, NULL, NULL);
  assert_int_equal (lines->len, G_N_ELEMENTS (events));
  for (gsize i = 0; i < G_N_ELEMENTS (events); i++)
    {
      g_autoptr (GString) out = g_string_new (NULL);
      const SyJson *line;

      sy_line_write_json (out, lines->pdata[i]);
      line = scan (out->str, memory);
      assert_string_equal (sy_json_member_text (line, "event"), events[i]);
      assert_string_equal (sy_json_member_text (line, i == 4 ? "name" : "task"), i == 4 ? "note.txt" : ITEM);
      assert_true ((sy_json_member (line, "facts") != NULL) == (i != 4));
      assert_close (sy_json_member_number (line, "line", 0), (double) i + 2, 0, 0);
    }
}

static void
an_action_as_json_says_when_it_is_overdue (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (GPtrArray) actions = NULL;
  g_autofree char *id = NULL;
  const SyDeedRequest what = request ();
  const SyActionFilter filter = { .open = FALSE };
  const SyJson *json;
  double today = 20783; /* 2026-11-26 by calendar: 56 years of 365.25 days to 2026-01-01, 20454, and 329 */

  (void) state;
  assert_true (sy_ledger_open_action (ledger, &what, "Fit a stop", "goal", "N. Vance", TODAY, &id, NULL, NULL));
  actions = sy_ledger_actions (ledger, &filter, NULL);
  sy_action_write_json (out, actions->pdata[0], today);
  json = scan (out->str, memory);
  assert_string_equal (sy_json_member_text (json, "action"), id);
  assert_string_equal (sy_json_member_text (json, "task"), ITEM);
  assert_string_equal (sy_json_member_text (json, "assigned"), "N. Vance");
  assert_int_equal (sy_json_member (json, "open")->type, SY_JSON_TRUE);
  assert_null (sy_json_member (json, "overdue")); /* the day itself is in time */
  assert_null (sy_json_member (json, "closed"));
  g_string_truncate (out, 0);
  sy_action_write_json (out, actions->pdata[0], today + 1);
  assert_non_null (sy_json_member (scan (out->str, memory), "overdue"));

  assert_true (sy_ledger_close_action (ledger, &what, id, "seen", NULL, NULL));
  g_autoptr (GPtrArray) closed = sy_ledger_actions (ledger, &filter, NULL);
  g_string_truncate (out, 0);
  sy_action_write_json (out, closed->pdata[0], today + 1);
  json = scan (out->str, memory);
  assert_null (sy_json_member (json, "overdue"));
  assert_string_equal (sy_json_member_text (sy_json_member (json, "closed"), "evidence"), "seen");
}

static void
a_task_as_json_says_what_was_done (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autoptr (GString) plain = g_string_new (NULL);
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *id = NULL;
  const SyDeedRequest what = request ();
  static const char *const rare[]
    = { "signed", "open_actions", "action_due", "review", "retired", "told_revision", "loosened" };
  g_autoptr (SyTask) before = find (ledger);
  const SyJson *json;

  (void) state;
  sy_task_write_json (plain, before, 20783);
  json = scan (plain->str, memory);
  assert_string_equal (sy_json_member_text (json, "begun"), TODAY "T07:00:00Z");
  assert_string_equal (sy_json_member_text (json, "role"), "safety lead");
  assert_true (g_str_has_prefix (sy_json_member_text (json, "policy"), "steelyard-default "));
  assert_non_null (sy_json_member (json, "edition"));
  for (gsize i = 0; i < G_N_ELEMENTS (rare); i++)
    assert_null (sy_json_member (json, rare[i]));

  assert_true (sy_ledger_sign (ledger, &what, 2, NULL, NULL, NULL));
  assert_true (sy_ledger_open_action (ledger, &what, "Fit a stop", NULL, NULL, TODAY, &id, NULL, NULL));
  assert_true (sy_ledger_set_review (ledger, &what, SY_TRIGGER_CHANGE, NULL, NULL, NULL));
  assert_true (sy_ledger_tell (ledger, &what, 2, "A", "18 kg", "left", NULL, NULL));
  assert_true (sy_ledger_retire (ledger, &what, TRUE, NULL, NULL));
  g_autoptr (SyTask) after = find (ledger);
  sy_task_write_json (out, after, 20784);
  json = scan (out->str, memory);
  assert_string_equal (sy_json_member_text (sy_json_member (json, "signed"), "who"), "R. Example");
  assert_int_equal (sy_json_member (sy_json_member (json, "signed"), "own")->type, SY_JSON_FALSE);
  assert_close (sy_json_member_number (json, "open_actions", 0), 1, 0, 0);
  assert_string_equal (sy_json_member_text (json, "action_due"), TODAY);
  assert_string_equal (sy_json_member_text (sy_json_member (json, "review"), "trigger"), "change");
  assert_non_null (sy_json_member (sy_json_member (json, "review"), "overdue"));
  assert_non_null (sy_json_member (json, "retired"));
  assert_close (sy_json_member_number (json, "told_revision", 0), 2, 0, 0);
}

static SyTask *
listed (const char *name, const char *method, const char *machine, const char *review_due)
{
  SyTask *task = sy_task_new ();

  sy_event_set (&task->name, name);
  sy_event_set (&task->method, method);
  sy_event_set (&task->detail.machine, machine);
  sy_event_set (&task->review_due, review_due);
  return task;
}

static void
assert_sieved (SyTaskSieve sieve, const char *expected)
{
  g_autoptr (GPtrArray) tasks = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_task_free);
  g_autoptr (GString) names = g_string_new (NULL);

  g_ptr_array_add (tasks, listed ("a", "lift", "", "2026-12-01"));
  g_ptr_array_add (tasks, listed ("b", "die-mass", "Press 4", ""));
  g_ptr_array_add (tasks, listed ("c", "gear", "Press 4, PRESS 12", "2027-01-01"));
  g_ptr_array_add (tasks, listed ("d", "gear", "Press 4, left, Press 1", ""));
  sy_tasks_sieve (tasks, &sieve);
  for (guint i = 0; i < tasks->len; i++)
    g_string_append (names, ((SyTask *) tasks->pdata[i])->name);
  assert_string_equal (names->str, expected);
}

static void
a_list_is_sieved (void **state)
{
  (void) state;
  assert_sieved ((SyTaskSieve) { NULL }, "abcd");
  assert_sieved ((SyTaskSieve) { .method = "gear" }, "cd");
  assert_sieved ((SyTaskSieve) { .machine = " press 4" }, "bcd");
  assert_sieved ((SyTaskSieve) { .machine = "Press 1" }, "d");
  assert_sieved ((SyTaskSieve) { .machine = "Press 4, left" }, "d");
  assert_sieved ((SyTaskSieve) { .machine = "Press" }, "");
  assert_sieved ((SyTaskSieve) { .review_due = "2026-12-01" }, "a");
  assert_sieved ((SyTaskSieve) { .review_due = "2027-06-01", .method = "gear" }, "c");
}

/* Topics: two at once */

#define N_EACH 12

typedef struct
{
  const char *uri;
  int done;
} Worker;

static gpointer
open_many (gpointer data)
{
  Worker *worker = data;
  g_autoptr (SyLedger) ledger = sy_ledger_open (worker->uri, NULL);
  const SyDeedRequest what = request ();

  for (int i = 0; i < N_EACH; i++)
    {
      g_autofree char *id = NULL;
      g_autofree char *text = g_strdup_printf ("%p %d", (void *) worker, i);

      /* giving up after many tries is an answer too */
      worker->done += sy_ledger_open_action (ledger, &what, text, NULL, NULL, NULL, &id, NULL, NULL);
    }
  return NULL;
}

static void
two_writers_lose_nothing (void **state)
{
  g_autofree char *folder = g_dir_make_tmp ("steelyard-deeds-XXXXXX", NULL);
  g_autofree char *uri = g_build_filename (folder, "two.store", NULL);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  SyLedger *ledger = sy_ledger_open (uri, NULL);
  const SyRecordRequest first = { .task = ITEM, .by = "Ann Bell", .why = "measured", .base = -1,
                                  .now = TODAY "T07:00:00Z" };
  const SyActionFilter filter = { .open = TRUE };
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  Worker workers[2] = { { uri, 0 }, { uri, 0 } };
  GThread *threads[2];
  SyRecordResult result = { NULL };

  (void) state;
  assert_true (sy_ledger_record (ledger, desk, &first, FACTS, strlen (FACTS), problems, &result, NULL));
  sy_record_result_clear (&result);
  for (int i = 0; i < 2; i++)
    threads[i] = g_thread_new ("worker", open_many, &workers[i]);
  for (int i = 0; i < 2; i++)
    g_thread_join (threads[i]);
  {
    g_autoptr (GPtrArray) open = sy_ledger_actions (ledger, &filter, NULL);
    g_autoptr (SyTask) task = find (ledger);

    assert_true (workers[0].done + workers[1].done > 0);
    assert_int_equal (open->len, workers[0].done + workers[1].done);
    assert_int_equal (task->n_open, open->len);
  }
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
    cmocka_unit_test (a_revision_is_signed_with_the_hash_of_its_line),
    cmocka_unit_test (what_cannot_be_signed_is_said),
    cmocka_unit_test (an_action_goes_from_open_to_closed),
    cmocka_unit_test (what_cannot_be_done_about_an_action_is_said),
    cmocka_unit_test (a_review_has_a_day_and_a_reason),
    cmocka_unit_test (an_item_is_retired_once_and_taken_back_once),
    cmocka_unit_test (workers_are_told_of_a_revision),
    cmocka_unit_test (one_revision_is_found_or_it_is_said),
    cmocka_unit_test (what_was_verified_is_said_with_what_it_cannot_show),
    cmocka_unit_test (every_line_is_json_that_says_what_it_is),
    cmocka_unit_test (an_action_as_json_says_when_it_is_overdue),
    cmocka_unit_test (a_task_as_json_says_what_was_done),
    cmocka_unit_test (a_list_is_sieved),
    cmocka_unit_test (two_writers_lose_nothing),
  };

  return cmocka_run_group_tests_name ("deeds", tests, NULL, NULL);
}
