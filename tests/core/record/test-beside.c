/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-beside.h"
#include "sy-json.h"
#include "sy-method.h"

static SyEvent *
new_event (const char *name, gint64 revision, const char *method, const char *facts, const char *findings)
{
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);
  const SyMethod *known = sy_method_find (method);

  sy_event_set (&event->item, "0123456789abcdef");
  sy_event_set (&event->name, name);
  sy_event_set (&event->method, method);
  event->edition = known != NULL ? known->edition : 1;
  sy_event_set (&event->policy, "steelyard-default 3");
  sy_event_set (&event->program, "steelyard 0.1.0");
  event->revision = revision;
  sy_event_set (&event->facts, facts);
  sy_event_set (&event->findings, findings);
  return event;
}

#define FACTS(more) "{\"method\":\"lift\",\"units\":\"metric\"" more "}"
#define US_FACTS(more) "{\"method\":\"lift\",\"units\":\"us\"" more "}"
/* A result with the goal of its index. */
#define FOUND(units, verdict, li, more)                                                                        \
  "{\"units\":\"" units "\",\"index\":\"LI\",\"quantities\":{\"LI\":" li                                       \
  ",\"mass_each\":{\"value\":20,\"unit\":\"kg\"}},\"governing\":\"origin.HM\",\"verdict\":\"" verdict           \
  "\",\"spread\":{\"index\":\"LI\",\"goal\":1}" more "}"

static SyBeside *
beside_of (const char *facts, const char *findings, const char *facts2, const char *findings2)
{
  g_autoptr (SyEvent) before = new_event ("Blanks", 1, "lift", facts, findings);
  g_autoptr (SyEvent) after = new_event ("Blanks (variant)", 2, "lift", facts2, findings2);

  return sy_beside_new (before, after, NULL, NULL);
}

static const SyBesideRow *
find_row (GPtrArray *rows, const char *id)
{
  for (guint i = 0; i < rows->len; i++)
    if (strcmp (((SyBesideRow *) rows->pdata[i])->id, id) == 0)
      return rows->pdata[i];
  return NULL;
}

static void
assert_row (GPtrArray *rows, const char *id, const char *before, const char *after, SyTurn turn)
{
  const SyBesideRow *row = find_row (rows, id);

  assert_non_null (row);
  assert_string_equal (row->texts[0] != NULL ? row->texts[0] : "(none)", before);
  assert_string_equal (row->texts[1] != NULL ? row->texts[1] : "(none)", after);
  assert_int_equal (row->turn, turn);
}

static void
what_a_slower_pace_buys_is_told (void **state)
{
  g_autoptr (SyBeside) beside = beside_of (
    FACTS (",\"frequency\":6,\"coupling\":\"fair\""), FOUND ("metric", "mechanical", "{\"value\":3.25}", ""),
    FACTS (",\"frequency\":1,\"coupling\":\"good\""), FOUND ("metric", "by-hand", "{\"value\":0.75}", ""));

  (void) state;
  assert_true (beside->same_method);
  assert_int_equal (beside->changed->len, 2);
  assert_row (beside->changed, "frequency", "6 / min", "1 / min", SY_TURN_NONE);
  assert_row (beside->changed, "coupling", "Fair", "Good", SY_TURN_NONE);
  assert_row (beside->bought, "verdict", "Mechanical handling required", "Within the hand-handling limits", SY_TURN_BETTER);
  assert_row (beside->bought, "index", "LI 3.25 (goal 1.00)", "LI 0.75 (goal 1.00)", SY_TURN_BETTER);
  assert_row (beside->bought, "mass", "20 kg", "20 kg", SY_TURN_NONE);
  assert_string_equal (beside->sentence, "The second is better: from Mechanical handling required, LI 3.25 (goal 1.00) to "
                                         "Within the hand-handling limits, LI 0.75 (goal 1.00).");
  assert_string_equal (beside->sides[0].who, "Blanks, revision 1");
  assert_int_equal (beside->remarks->len, 0);
}

static void
an_index_without_bound_is_worse_than_any (void **state)
{
  g_autoptr (SyBeside) beside
    = beside_of (FACTS (""), FOUND ("metric", "improve", "{\"value\":2}", ""), FACTS (""),
                 FOUND ("metric", "mechanical", "{\"value\":null,\"state\":\"unbounded\"}", ""));
  const SyBesideRow *row = find_row (beside->bought, "index");
  gboolean told;

  (void) state;
  assert_row (beside->bought, "index", "LI 2.00 (goal 1.00)", "LI \xe2\x88\x9e (goal 1.00)", SY_TURN_WORSE);
  assert_true (isinf (row->values[1]));
  assert_false (sy_beside_holds (row, 1, &told));
  assert_true (told);
  assert_int_equal (beside->changed->len, 0);
}

/* 18 kg is 39.68… lb; 16 in is 40.64 cm, exactly. */
static void
other_units_are_converted_exactly_and_it_is_said (void **state)
{
  g_autoptr (SyBeside) beside = beside_of (
    FACTS (",\"load\":{\"typical\":18,\"heaviest\":18},\"origin\":{\"H\":55,\"V\":\"20 in\"}"),
    FOUND ("metric", "improve", "{\"value\":2}", ""),
    US_FACTS (",\"load\":{\"typical\":\"18 kg\",\"heaviest\":40},\"origin\":{\"H\":16,\"V\":20}"),
    "{\"units\":\"us\",\"verdict\":\"improve\",\"quantities\":{\"mass_each\":{\"value\":40,\"unit\":\"lb\"}}}");
  const SyBesideRow *reach = find_row (beside->changed, "origin.H"), *mass = find_row (beside->bought, "mass");

  (void) state;
  assert_null (find_row (beside->changed, "load.typical"));
  assert_null (find_row (beside->changed, "origin.V"));
  assert_row (beside->changed, "origin.H", "55 cm", "16 in = 40.64 cm", SY_TURN_NONE);
  assert_row (beside->changed, "load.heaviest", "18 kg", "40 lb = 18.1437 kg", SY_TURN_NONE);
  assert_close (reach->values[1], 16 * 2.54, 0, 1e-15);
  assert_close (mass->values[1], 40 * 0.45359237, 0, 1e-15);
  assert_row (beside->bought, "mass", "20 kg", "18.1 kg", SY_TURN_BETTER);
  assert_int_equal (beside->remarks->len, 1);
  assert_non_null (strstr (beside->remarks->pdata[0], "converted exactly"));
}

/* Another unit behind a number of the same document is told in the document's as well. */
static void
a_fact_typed_with_its_unit_is_told_in_both (void **state)
{
  g_autoptr (SyBeside) beside = beside_of (FACTS (",\"origin\":{\"H\":55}"), "{}", FACTS (",\"origin\":{\"H\":\"16 in\"}"), "{}");

  (void) state;
  assert_row (beside->changed, "origin.H", "55 cm", "16 in = 40.64 cm", SY_TURN_NONE);
  assert_null (find_row (beside->bought, "index"));
  assert_row (beside->bought, "verdict", "no verdict", "no verdict", SY_TURN_NONE);
}

#define LIMIT(id, ratio, goal)                                                                                 \
  "{\"id\":\"" id "\",\"title\":\"Limit " id "\",\"edition\":\"2003\",\"from_memory\":true,\"ratio\":" ratio    \
  ",\"goal\":" goal ",\"governs\":false}"

static void
limits_that_held_before_and_not_after_are_told (void **state)
{
  g_autoptr (SyBeside) beside = beside_of (
    FACTS (""),
    FOUND ("metric", "improve", "{\"value\":2}",
           ",\"limits\":[" LIMIT ("day", "0.5", "1") "," LIMIT ("hour", "1.2", "1") "," LIMIT ("old", "1", "1") "]"),
    FACTS (""),
    FOUND ("metric", "improve", "{\"value\":2}",
           ",\"limits\":[" LIMIT ("day", "1.0001", "1") "," LIMIT ("hour", "1", "1") "," LIMIT ("new", "0.9", "0.85") "]"));
  gboolean told;

  (void) state;
  assert_int_equal (beside->limits->len, 4);
  assert_row (beside->limits, "day", "held: 0.50 (goal 1.00)", "broken: 1.0001 (goal 1.00)", SY_TURN_WORSE);
  assert_row (beside->limits, "hour", "broken: 1.20 (goal 1.00)", "held: 1.00 (goal 1.00)", SY_TURN_BETTER);
  assert_row (beside->limits, "old", "held: 1.00 (goal 1.00)", "(none)", SY_TURN_NONE);
  assert_row (beside->limits, "new", "(none)", "broken: 0.90 (goal 0.85)", SY_TURN_NONE);
  assert_true (sy_beside_holds (find_row (beside->limits, "hour"), 1, &told));
  assert_false (sy_beside_holds (find_row (beside->limits, "new"), 0, &told));
  assert_false (told);
  assert_string_equal (find_row (beside->limits, "day")->name, "Limit day (2003) \xc2\xb7 from memory");
  assert_int_equal (beside->remarks->len, 1); /* that they stand from memory */
}

static void
an_older_revision_without_limits_is_no_trouble (void **state)
{
  g_autoptr (SyBeside) beside
    = beside_of (FACTS (""), FOUND ("metric", "improve", "{\"value\":2}", ""), FACTS (""),
                 FOUND ("metric", "improve", "{\"value\":2}", ",\"limits\":[" LIMIT ("day", "0.5", "1") "]"));

  (void) state;
  assert_row (beside->limits, "day", "(none)", "held: 0.50 (goal 1.00)", SY_TURN_NONE);
}

#define REASON(id, text) "{\"id\":\"" id "\",\"text\":\"" text "\"}"

static void
reasons_went_came_and_stay (void **state)
{
  g_autoptr (SyBeside) beside = beside_of (
    FACTS (""),
    FOUND ("metric", "improve", "{\"value\":2}",
           ",\"reasons\":[" REASON ("index-goal", "LI 2 is over 1") "," REASON ("mass-limit", "Too heavy") "]"),
    FACTS (""),
    FOUND ("metric", "improve", "{\"value\":1.5}",
           ",\"reasons\":[" REASON ("index-goal", "LI 1.5 is over 1") "," REASON ("day", "Too much a day") "]"));

  (void) state;
  assert_int_equal (beside->reasons->len, 3);
  assert_row (beside->reasons, "mass-limit", "Too heavy", "(none)", SY_TURN_BETTER);
  assert_row (beside->reasons, "day", "(none)", "Too much a day", SY_TURN_WORSE);
  assert_row (beside->reasons, "index-goal", "LI 2 is over 1", "LI 1.5 is over 1", SY_TURN_NONE);
  assert_string_equal (((SyBesideRow *) beside->reasons->pdata[2])->id, "index-goal");
}

static void
two_ways_of_handling_are_compared_by_their_results (void **state)
{
  g_autoptr (SyEvent) before = new_event ("Blanks", 1, "lift", FACTS (",\"frequency\":6"),
                                          FOUND ("metric", "improve", "{\"value\":2}", ",\"reasons\":[" REASON ("a", "A") "]"));
  g_autoptr (SyEvent) after = new_event (
    "Blanks on a cart", 3, "cart", "{\"method\":\"cart\",\"units\":\"metric\"}",
    "{\"units\":\"metric\",\"index\":\"utilisation\",\"quantities\":{\"utilisation\":{\"value\":0.5},\"initial\":{\"value\":100}},"
    "\"verdict\":\"within-capacity\",\"spread\":{\"index\":\"utilisation\",\"goal\":0.75}}");
  g_autoptr (SyBeside) beside = sy_beside_new (before, after, NULL, NULL);

  (void) state;
  assert_false (beside->same_method);
  assert_int_equal (beside->changed->len, 0);
  /* over its goal against within its goal: better, though the two are not on one scale */
  assert_row (beside->bought, "index", "LI 2.00 (goal 1.00)", "Load against the rated load 50 % (goal 75 %)", SY_TURN_BETTER);
  assert_row (beside->bought, "verdict", "Improve the task", "Within rated capacity", SY_TURN_BETTER);
  assert_row (beside->bought, "mass", "20 kg", "(none)", SY_TURN_NONE);
  assert_row (beside->bought, "force-start", "(none)", "100 N", SY_TURN_NONE);
  assert_row (beside->reasons, "a", "A", "(none)", SY_TURN_NONE);
  assert_non_null (strstr (beside->remarks->pdata[0], "Two ways of handling"));
}

/* More people who could is better; less on the back is; of a team it is the heavy end that somebody has in the hands. */
static void
people_the_back_and_the_heavy_end_are_told (void **state)
{
  g_autoptr (SyEvent) before = new_event (
    "By two", 1, "team-lift", "{\"method\":\"team-lift\"}",
    "{\"units\":\"metric\",\"quantities\":{\"mass_each\":{\"value\":20},\"heaviest.share\":{\"value\":26}}}");
  g_autoptr (SyEvent) after = new_event ("Alone", 1, "lift", FACTS (""),
                                         "{\"units\":\"us\",\"quantities\":{\"mass_each\":{\"value\":20},"
                                         "\"back\":{\"value\":600}}}");
  g_autoptr (SyEvent) carried = new_event ("Carried", 1, "carry", "{\"method\":\"carry\"}",
                                           "{\"units\":\"metric\",\"quantities\":{\"women.percent\":{\"value\":40}}}");
  g_autoptr (SyEvent) less = new_event ("Carried less", 1, "carry", "{\"method\":\"carry\"}",
                                        "{\"units\":\"metric\",\"quantities\":{\"women.percent\":{\"value\":90}}}");
  g_autoptr (SyBeside) beside = sy_beside_new (before, after, NULL, NULL);
  g_autoptr (SyBeside) people = sy_beside_new (carried, less, NULL, NULL);

  (void) state;
  assert_close (find_row (beside->bought, "mass")->values[0], 26, 0, 0);
  assert_close (find_row (beside->bought, "mass")->values[1], 20 * 0.45359237, 0, 1e-15);
  /* 600 lbf in kN, by the standard gravity */
  assert_close (find_row (beside->bought, "back")->values[1], 600 * 0.45359237 * 9.80665 / 1000, 0, 1e-12);
  assert_row (people->bought, "women", "40 %", "90 %", SY_TURN_BETTER);
}

static void
what_it_was_judged_under_is_never_hidden (void **state)
{
  g_autoptr (SyEvent) before = new_event ("Blanks", 1, "lift", FACTS (""), FOUND ("metric", "improve", "{\"value\":2}", ""));
  g_autoptr (SyEvent) after = new_event ("Blanks", 2, "lift", FACTS (""), FOUND ("metric", "improve", "{\"value\":2}", ""));
  g_autoptr (SyBeside) same = sy_beside_new (before, after, NULL, NULL);
  g_autoptr (SyBeside) other = NULL;

  (void) state;
  assert_int_equal (same->remarks->len, 0);
  sy_event_set (&after->policy, "our-own 7");
  before->edition = after->edition - 1;
  other = sy_beside_new (before, after, NULL, NULL);
  assert_int_equal (other->remarks->len, 2);
  assert_non_null (strstr (other->remarks->pdata[0], "different editions"));
  assert_non_null (strstr (other->remarks->pdata[1], "our-own 7"));
}

static void
what_cannot_be_read_is_said (void **state)
{
  g_autoptr (SyEvent) before = new_event ("Blanks", 1, "lift", FACTS (""), "no findings");
  g_autoptr (SyEvent) after = new_event ("Blanks", 2, "hover", "{}", FOUND ("metric", "improve", "{\"value\":2}", ""));
  g_autoptr (SyBeside) beside = sy_beside_new (before, after, NULL, NULL);

  (void) state;
  assert_non_null (strstr (beside->remarks->pdata[0], "cannot be read"));
  assert_non_null (strstr (beside->remarks->pdata[1], "does not have"));
  assert_row (beside->bought, "verdict", "no verdict", "Improve the task", SY_TURN_NONE);
  assert_null (find_row (beside->bought, "mass"));
}

static void
the_json_is_one_document_with_the_caution (void **state)
{
  g_autoptr (SyEvent) before
    = new_event ("Blanks \"1\"", 1, "lift", FACTS (",\"frequency\":6"),
                 FOUND ("metric", "mechanical", "{\"value\":null,\"state\":\"unbounded\"}",
                        ",\"limits\":[" LIMIT ("day", "null,\"state\":\"unbounded\"", "1") "]"));
  g_autoptr (SyEvent) after
    = new_event ("Blanks", 2, "lift", FACTS (""), FOUND ("metric", "improve", "{\"value\":2}", ""));
  g_autoptr (SyBeside) beside = sy_beside_new (before, after, NULL, NULL);
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root, *side;

  (void) state;
  sy_beside_write_json (out, beside, before, after);
  root = sy_json_scan (out->str, out->len, SY_JSON_DOCUMENT_MAX, memory, problems);
  assert_non_null (root);
  assert_non_null (strstr (sy_json_member_text (root, "caution"), "not a permission to lift"));
  side = sy_json_member (root, "before");
  assert_string_equal (sy_json_member_text (side, "task"), "Blanks \"1\"");
  assert_string_equal (sy_json_member_text (side, "state"), "unbounded");
  assert_close (sy_json_member_number (sy_json_member (root, "after"), "value", NAN), 2, 0, 0);
  assert_int_equal (sy_json_member (root, "changed")->n_children, 1);
  assert_int_equal (sy_json_member (sy_json_member (root, "limits")->first, "new")->type, SY_JSON_NULL);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (what_a_slower_pace_buys_is_told),
    cmocka_unit_test (an_index_without_bound_is_worse_than_any),
    cmocka_unit_test (other_units_are_converted_exactly_and_it_is_said),
    cmocka_unit_test (a_fact_typed_with_its_unit_is_told_in_both),
    cmocka_unit_test (limits_that_held_before_and_not_after_are_told),
    cmocka_unit_test (an_older_revision_without_limits_is_no_trouble),
    cmocka_unit_test (reasons_went_came_and_stay),
    cmocka_unit_test (two_ways_of_handling_are_compared_by_their_results),
    cmocka_unit_test (people_the_back_and_the_heavy_end_are_told),
    cmocka_unit_test (what_it_was_judged_under_is_never_hidden),
    cmocka_unit_test (what_cannot_be_read_is_said),
    cmocka_unit_test (the_json_is_one_document_with_the_caution),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
