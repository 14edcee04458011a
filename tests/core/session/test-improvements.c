/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <math.h>

#include "sy-json.h"
#include "sy-ledger-improvement.h"

/* The figures are those of a lift and of two changeovers made up here; what is expected of them is before less after. */

#define LIFT(typical, persons)                                                                                          \
  "{\"method\":\"lift\",\"units\":\"metric\",\"load\":{\"typical\":" typical ",\"heaviest\":" typical "},\"persons\":" persons \
  ",\"origin\":{\"H\":40,\"V\":60,\"A\":0},\"travel\":20,\"frequency\":1,\"duration\":\"short\",\"coupling\":\"good\"," \
  "\"conditions\":[]}"
#define CHANGE(minutes, people)                                                                                   \
  "{\"method\":\"changeover\",\"units\":\"metric\",\"machine\":\"Press 9\",\"people\":" people                    \
  ",\"steps\":[{\"kind\":\"isolate\",\"label\":\"Stop it\",\"when\":\"stopped\",\"minutes\":" minutes "}]}"

#define TODAY "2026-11-26"
#define ITEM "Ring to fixture"
#define CHANGE_ITEM "Change press 9"

static void
record (SyLedger *ledger, const char *name, const char *facts, const char *now)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  const SyRecordRequest request = { .task = name, .by = "Ann Bell", .role = "safety lead", .why = "measured", .base = -1,
                                    .now = now, .clock_set = TRUE };
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GError) error = NULL;
  SyRecordResult result = { NULL };

  if (!sy_ledger_record (ledger, desk, &request, facts, strlen (facts), problems, &result, &error))
    fail_msg ("%s: %s %s", name, error->message, problems->items[0].path);
  sy_record_result_clear (&result);
}

/* One task and one changeover, with two revisions each: lines 2 to 5 after the policy's. */
static SyLedger *
new_ledger (void)
{
  SyLedger *ledger = sy_ledger_open ("memory:", NULL);

  record (ledger, ITEM, LIFT ("30", "1"), TODAY "T07:00:00Z");
  record (ledger, ITEM, LIFT ("10", "1"), TODAY "T07:00:01Z");
  record (ledger, CHANGE_ITEM, CHANGE ("50", "[\"A\",\"B\",\"C\"]"), TODAY "T07:00:02Z");
  record (ledger, CHANGE_ITEM, CHANGE ("12.5", "[\"A\",\"B\"]"), TODAY "T07:00:03Z");
  return ledger;
}
#define LINES 5

static SyDeedRequest
request (const char *item)
{
  return (SyDeedRequest) { .item = item, .by = "R. Example", .role = "foreman", .now = TODAY "T08:00:00Z", .clock_set = TRUE };
}

static char *
add (SyLedger *ledger, const char *item, const char *day)
{
  const SyDeedRequest by = request (item);
  const SyImprovementAsk ask = { .from_revision = 1, .what = "A table", .idea_by = "O. Lund", .put_to_work = day };
  char *id = NULL;

  assert_true (sy_ledger_add_improvement (ledger, &by, &ask, &id, NULL, NULL));
  assert_int_equal (strlen (id), 16);
  return id;
}

static GPtrArray *
list (SyLedger *ledger, const char *item, gboolean withdrawn)
{
  const SyImprovementFilter filter = { .item = item, .withdrawn = withdrawn };
  GPtrArray *views = sy_ledger_improvements (ledger, &filter, NULL, NULL, NULL);

  assert_non_null (views);
  return views;
}

static void
what_it_bought_is_read_from_both (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autofree char *lift = add (ledger, ITEM, "2026-10-01"), *change = add (ledger, CHANGE_ITEM, NULL);
  g_autoptr (GPtrArray) views = list (ledger, NULL, FALSE);
  const SyImprovementView *last, *first;

  (void) state;
  assert_int_equal (views->len, 2);
  last = views->pdata[0];
  first = views->pdata[1];
  assert_string_equal (last->improvement->id, change);
  assert_string_equal (last->improvement->put_to_work, TODAY);
  assert_string_equal (last->improvement->item_kind, "changeover");
  assert_int_equal (last->improvement->from_revision, 1);
  assert_int_equal (last->improvement->revision, 2);
  assert_string_equal (last->improvement->idea_by, "O. Lund");
  assert_string_equal (last->improvement->entered_by, "R. Example");
  assert_close (last->gains[SY_GAIN_STOPPED], 50 - 12.5, 0, 1e-12);
  assert_close (last->gains[SY_GAIN_PERSON_MINUTES], 50 - 12.5, 0, 1e-12);
  assert_close (last->gains[SY_GAIN_PERSONS], 1, 0, 0);
  assert_true (isnan (last->gains[SY_GAIN_INDEX]));

  assert_string_equal (first->improvement->id, lift);
  assert_close (first->gains[SY_GAIN_MASS], 20, 0, 1e-12);
  /* one limit for both, so that the index falls as the mass does */
  assert_close (first->gains[SY_GAIN_INDEX], first->beside->sides[0].index * 20 / 30, 0, 1e-12);
  assert_true (isnan (first->gains[SY_GAIN_STOPPED]));
  assert_true (first->reached);
}

static void
each_item_has_those_from_and_to_it (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  const SyDeedRequest by = request (CHANGE_ITEM);
  const SyImprovementAsk across = { .from_item = ITEM, .what = "All of it", .idea_by = "O. Lund" };
  g_autoptr (SyTask) lift = sy_ledger_find (ledger, ITEM, NULL, NULL);
  g_autoptr (SyTask) change = sy_ledger_find (ledger, CHANGE_ITEM, NULL, NULL);
  g_autofree char *own = add (ledger, ITEM, NULL);
  g_autoptr (GPtrArray) of_lift = NULL;
  g_autoptr (GPtrArray) of_change = NULL;

  (void) state;
  assert_true (sy_ledger_add_improvement (ledger, &by, &across, NULL, NULL, NULL));
  of_lift = list (ledger, lift->id, FALSE);
  of_change = list (ledger, change->id, FALSE);
  assert_int_equal (of_lift->len, 2);
  assert_int_equal (of_change->len, 1);
  const SyImprovementView *view = of_change->pdata[0];
  assert_string_equal (view->improvement->from_name, ITEM);
  assert_int_equal (view->improvement->from_revision, 2);
  /* no index of two methods is on one scale */
  assert_true (isnan (view->gains[SY_GAIN_INDEX]));
}

static void
what_is_withdrawn_stays_and_counts_no_more (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autofree char *id = add (ledger, ITEM, NULL), *again = NULL;
  SyDeedRequest by = request (ITEM);
  GError *error = NULL;

  (void) state;
  assert_false (sy_ledger_withdraw_improvement (ledger, &by, id, NULL, &error));
  assert_true (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_MISSING));
  g_clear_error (&error);
  by.why = "The table was sold";
  assert_true (sy_ledger_withdraw_improvement (ledger, &by, id, NULL, NULL));

  g_autoptr (GPtrArray) counted = list (ledger, NULL, FALSE);
  g_autoptr (GPtrArray) all = list (ledger, NULL, TRUE);
  assert_int_equal (counted->len, 0);
  assert_int_equal (all->len, 1);
  const SyImprovement *gone = ((SyImprovementView *) all->pdata[0])->improvement;
  assert_true (gone->withdrawn);
  assert_string_equal (gone->withdrawn_why, "The table was sold");
  g_autoptr (GArray) quarters = sy_improvement_quarters (all);
  assert_int_equal (quarters->len, 0);

  assert_false (sy_ledger_withdraw_improvement (ledger, &by, id, NULL, &error));
  assert_non_null (strstr (error->message, "which was withdrawn by R. Example on " TODAY));
  g_clear_error (&error);
  again = add (ledger, ITEM, NULL);
  assert_string_not_equal (id, again);
}

static void
assert_refused (SyLedger *ledger, const SyDeedRequest *by, const SyImprovementAsk *ask, const char *named)
{
  g_autoptr (GError) error = NULL;
  SyHead head;

  assert_false (sy_ledger_add_improvement (ledger, by, ask, NULL, NULL, &error));
  assert_non_null (error);
  if (strstr (error->message, named) == NULL)
    fail_msg ("“%s” does not name “%s”", error->message, named);
  assert_true (sy_ledger_head (ledger, &head, NULL));
  assert_int_equal (head.number, LINES);
}

static void
what_is_no_improvement_is_said (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  const SyDeedRequest by = request (ITEM);
  const SyImprovementAsk good = { .from_revision = 1, .what = "A table", .idea_by = "O. Lund" };
  SyImprovementAsk ask = good;

  (void) state;
  ask.what = " ";
  assert_refused (ledger, &by, &ask, "what");
  ask = good;
  ask.idea_by = NULL;
  assert_refused (ledger, &by, &ask, "idea by");
  ask = good;
  ask.from_revision = 0;
  assert_refused (ledger, &by, &ask, "from revision: given nothing; allowed: a revision of “" ITEM "” before 2");
  ask.from_revision = 2;
  assert_refused (ledger, &by, &ask, "from revision: given 2; allowed: a revision of “" ITEM "” before 2");
  ask.revision = 1;
  assert_refused (ledger, &by, &ask, "“" ITEM "” has no revision before 1");
  ask = good;
  ask.revision = 3;
  assert_refused (ledger, &by, &ask, "revision: given 3; allowed: a revision of “" ITEM "”, from 1 to 2");
  ask = good;
  ask.put_to_work = "2026-11-27";
  assert_refused (ledger, &by, &ask, "put to work: given 2026-11-27, which is still to come; allowed: 2026-11-26 or before");
  ask.put_to_work = "lately";
  assert_refused (ledger, &by, &ask, "put to work: given “lately”; allowed: a date such as");
  ask = good;
  ask.from_item = "Nothing of that name";
  assert_refused (ledger, &by, &ask, "Nothing of that name");
}

static void
one_step_is_in_the_log_once (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autofree char *id = add (ledger, ITEM, NULL);
  const SyDeedRequest by = request (ITEM);
  const SyImprovementAsk ask = { .from_revision = 1, .what = "Once more", .idea_by = "O. Lund" };
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_false (sy_ledger_add_improvement (ledger, &by, &ask, NULL, NULL, &error));
  assert_non_null (strstr (error->message, id));
}

/* 1 January and 31 December, a year between them: every quarter has its place. */
static void
totals_go_by_the_quarter_in_which_it_was_put_to_work (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autofree char *late = add (ledger, ITEM, "2026-01-01"), *early = add (ledger, CHANGE_ITEM, "2024-12-31");
  g_autoptr (GPtrArray) views = list (ledger, NULL, FALSE);
  g_autoptr (GArray) quarters = sy_improvement_quarters (views);
  const SyQuarter total = sy_improvement_total (quarters);
  g_autofree char *first = NULL, *last = NULL;

  (void) state;
  assert_int_equal (quarters->len, 6); /* 2024 Q4, 2025 Q1 to Q4, 2026 Q1 */
  first = sy_quarter_label (&g_array_index (quarters, SyQuarter, 0));
  last = sy_quarter_label (&g_array_index (quarters, SyQuarter, 5));
  assert_string_equal (first, "2024 Q4");
  assert_string_equal (last, "2026 Q1");
  for (guint i = 0; i < quarters->len; i++)
    assert_int_equal (g_array_index (quarters, SyQuarter, i).n, i == 0 || i == 5 ? 1 : 0);
  assert_int_equal (total.n, 2);
  assert_int_equal (total.n_known[SY_GAIN_STOPPED], 1);
  assert_close (total.sums[SY_GAIN_STOPPED], 37.5, 0, 1e-12);
  assert_close (total.sums[SY_GAIN_MASS], 20, 0, 1e-12);
}

static void
json_says_all_of_it (void **state)
{
  g_autoptr (SyLedger) ledger = new_ledger ();
  g_autofree char *id = add (ledger, CHANGE_ITEM, "2026-11-02");
  g_autoptr (GPtrArray) views = list (ledger, NULL, FALSE);
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (SyMemory) memory = sy_memory_new ();
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root;

  (void) state;
  sy_improvement_write_json (out, views->pdata[0]);
  root = sy_json_scan (out->str, out->len, SY_JSON_DOCUMENT_MAX, memory, problems);
  assert_non_null (root);
  assert_string_equal (sy_json_member_text (root, "improvement"), id);
  assert_string_equal (sy_json_member_text (sy_json_member (root, "from"), "task"), CHANGE_ITEM);
  assert_close (sy_json_member_number (sy_json_member (root, "gains"), "stopped", NAN), 37.5, 0, 1e-12);
  assert_null (sy_json_member (sy_json_member (root, "gains"), "index"));
  assert_null (sy_json_member (root, "withdrawn"));
}

static void
a_figure_that_was_lost_has_a_minus (void **state)
{
  const struct
  {
    SyGain gain;
    double value;
    SyUnits units;
    const char *words;
  } cases[] = {
    { SY_GAIN_INDEX, 0.62, SY_UNITS_METRIC, "0.62" },   { SY_GAIN_MASS, 2, SY_UNITS_METRIC, "2 kg" },
    { SY_GAIN_MASS, 10, SY_UNITS_US, "22 lb" },         { SY_GAIN_STOPPED, -5, SY_UNITS_METRIC, "−5 min" },
    { SY_GAIN_PERSONS, NAN, SY_UNITS_METRIC, "–" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = sy_gain_words (cases[i].gain, cases[i].value, cases[i].units);

      assert_string_equal (words, cases[i].words);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (what_it_bought_is_read_from_both),
    cmocka_unit_test (each_item_has_those_from_and_to_it),
    cmocka_unit_test (what_is_withdrawn_stays_and_counts_no_more),
    cmocka_unit_test (what_is_no_improvement_is_said),
    cmocka_unit_test (one_step_is_in_the_log_once),
    cmocka_unit_test (totals_go_by_the_quarter_in_which_it_was_put_to_work),
    cmocka_unit_test (json_says_all_of_it),
    cmocka_unit_test (a_figure_that_was_lost_has_a_minus),
  };

  return cmocka_run_group_tests_name ("improvements", tests, NULL, NULL);
}
