/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-difference.h"
#include "sy-method.h"

static SyEvent *
new_revision (gint64 revision, const char *method, const char *facts, const char *findings)
{
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);
  const SyMethod *known = sy_method_find (method);

  sy_event_set (&event->item, "0123456789abcdef");
  sy_event_set (&event->name, "Blanks to the press");
  sy_event_set (&event->method, method);
  event->edition = known != NULL ? known->edition : 1;
  sy_event_set (&event->policy, "steelyard-default 2");
  sy_event_set (&event->program, "steelyard 0.1.0");
  event->revision = revision;
  sy_event_set (&event->facts, facts);
  sy_event_set (&event->findings, findings);
  return event;
}

static GPtrArray *
compare_facts (const char *method, const char *before, const char *after)
{
  g_autoptr (SyEvent) old = new_revision (1, method, before, "{}");
  g_autoptr (SyEvent) new = new_revision (2, method, after, "{}");

  return sy_difference_of (old, new);
}

static GPtrArray *
compare_findings (const char *before, const char *after)
{
  g_autoptr (SyEvent) old = new_revision (1, "lift", "{}", before);
  g_autoptr (SyEvent) new = new_revision (2, "lift", "{}", after);

  return sy_difference_of (old, new);
}

static const char *
shown (const char *text)
{
  return text != NULL ? text : "(none)";
}

static void
assert_difference (GPtrArray *differences, guint i, const char *path, const char *name, const char *symbol,
                   const char *unit, const char *before, const char *after)
{
  const SyDifference *difference;

  assert_true (i < differences->len);
  difference = g_ptr_array_index (differences, i);
  assert_string_equal (difference->path, path);
  assert_string_equal (difference->name, name);
  assert_string_equal (difference->symbol, symbol);
  assert_string_equal (difference->unit, unit);
  assert_string_equal (shown (difference->before), shown (before));
  assert_string_equal (shown (difference->after), shown (after));
}

#define LIFT(more) "{\"method\":\"lift\",\"units\":\"metric\"" more "}"

static void
equal_revisions_have_no_difference (void **state)
{
  g_autoptr (GPtrArray) none
    = compare_facts ("lift", LIFT (",\"origin\":{\"H\":55,\"V\":20}"), LIFT (",\"origin\":{\"V\":20,\"H\":55}"));

  (void) state;
  assert_int_equal (none->len, 0); /* the order of members says nothing */
}

static void
a_fact_is_told_by_the_words_of_its_field (void **state)
{
  g_autoptr (GPtrArray) found = compare_facts (
    "lift", LIFT (",\"place\":\"Press 4\",\"origin\":{\"H\":55,\"V\":20},\"coupling\":\"fair\",\"conditions\":[]"),
    LIFT (",\"coupling\":\"good\",\"origin\":{\"V\":20,\"H\":\"16 in\"},\"travel\":12.50,\"conditions\":[\"one-hand\"]"));

  (void) state;
  assert_int_equal (found->len, 5);
  assert_difference (found, 0, "origin.H", "Origin: Reach", "H", "cm", "55", "16 in");
  assert_difference (found, 1, "travel", "Travel", "D", "cm", NULL, "12.50");
  assert_difference (found, 2, "coupling", "Grip", "", "", "fair", "good");
  assert_difference (found, 3, "conditions", "Conditions", "", "", "[]", "one-hand");
  assert_difference (found, 4, "place", "Place", "", "", "Press 4", NULL);
}

static void
the_same_value_typed_differently_differs (void **state)
{
  g_autoptr (GPtrArray) found
    = compare_facts ("lift", LIFT (",\"frequency\":1,\"lifts\":18,\"travel\":20"),
                     LIFT (",\"frequency\":1.0,\"lifts\":\"18\",\"travel\":20"));

  (void) state;
  assert_int_equal (found->len, 2);
  assert_string_equal (((SyDifference *) found->pdata[0])->before, "1");
  assert_string_equal (((SyDifference *) found->pdata[0])->after, "1.0");
  assert_string_equal (((SyDifference *) found->pdata[1])->path, "lifts");
}

static void
how_a_fact_was_had_is_compared_too (void **state)
{
  g_autoptr (GPtrArray) found = compare_facts (
    "lift", LIFT (",\"had\":{\"origin\":{\"H\":{\"how\":\"estimated\"}}}"),
    LIFT (",\"had\":{\"origin\":{\"H\":{\"how\":\"measured\",\"by\":\"A. Bell\",\"tolerance\":1}}}"));

  (void) state;
  assert_int_equal (found->len, 3);
  assert_difference (found, 0, "had.origin.H.how", "How each fact was had: Origin: Reach: How it was had", "", "",
                     "estimated", "measured");
  assert_difference (found, 1, "had.origin.H.by", "How each fact was had: Origin: Reach: By whom", "", "", NULL, "A. Bell");
  assert_string_equal (((SyDifference *) found->pdata[2])->unit, "cm");
}

static void
a_group_that_was_not_there_comes_member_by_member (void **state)
{
  g_autoptr (GPtrArray) found
    = compare_facts ("lift", LIFT (",\"travel\":20"), LIFT (",\"destination\":{\"H\":40,\"V\":110,\"A\":0}"));

  (void) state;
  assert_int_equal (found->len, 4);
  assert_difference (found, 0, "destination.H", "Destination: Reach", "H", "cm", NULL, "40");
  assert_string_equal (((SyDifference *) found->pdata[3])->path, "travel");
}

static void
another_system_of_units_goes_with_the_values (void **state)
{
  g_autoptr (GPtrArray) found
    = compare_facts ("lift", LIFT (",\"travel\":20"), "{\"method\":\"lift\",\"units\":\"us\",\"travel\":8}");

  (void) state;
  assert_int_equal (found->len, 2);
  assert_difference (found, 0, "units", "Units", "", "", "metric", "us");
  assert_difference (found, 1, "travel", "Travel", "D", "", "20 cm", "8 in");
}

#define DIE(bodies) "{\"method\":\"die-mass\",\"units\":\"metric\",\"bodies\":[" bodies "]}"

static void
members_of_a_list_belong_together_by_label (void **state)
{
  g_autoptr (GPtrArray) found = compare_facts (
    "die-mass",
    DIE ("{\"label\":\"upper\",\"mass\":10},{\"label\":\"lower\",\"size\":[10,20,30]},{\"label\":\"old\",\"mass\":1}"),
    DIE ("{\"label\":\"lower\",\"size\":[10,20,35]},{\"label\":\"upper\",\"mass\":10},{\"label\":\"new\",\"mass\":2}"));

  (void) state;
  assert_int_equal (found->len, 6);
  assert_string_equal (((SyDifference *) found->pdata[0])->path, "bodies");
  assert_string_equal (((SyDifference *) found->pdata[0])->before, "upper, lower");
  assert_string_equal (((SyDifference *) found->pdata[0])->after, "lower, upper");
  const SyDifference *size = found->pdata[1];
  assert_string_equal (size->path, "bodies[label=lower].size");
  assert_string_equal (size->before, "10, 20, 30");
  assert_string_equal (size->after, "10, 20, 35");
  assert_string_equal (size->unit, "mm");
  assert_non_null (strstr (size->name, " lower: "));
  assert_string_equal (((SyDifference *) found->pdata[2])->path, "bodies[label=new].label");
  assert_string_equal (((SyDifference *) found->pdata[3])->path, "bodies[label=new].mass");
  assert_null (((SyDifference *) found->pdata[3])->before);
  assert_string_equal (((SyDifference *) found->pdata[5])->path, "bodies[label=old].mass");
  assert_null (((SyDifference *) found->pdata[5])->after);
}

static void
members_without_labels_belong_together_by_place (void **state)
{
  g_autoptr (GPtrArray) found
    = compare_facts ("lift", LIFT (",\"sessions\":[{\"work\":60,\"recovery\":10}]"),
                     LIFT (",\"sessions\":[{\"work\":60,\"recovery\":15},{\"work\":30,\"recovery\":0}]"));

  (void) state;
  assert_int_equal (found->len, 3);
  assert_string_equal (((SyDifference *) found->pdata[0])->path, "sessions[0].recovery");
  assert_string_equal (((SyDifference *) found->pdata[0])->unit, "min");
  assert_string_equal (((SyDifference *) found->pdata[1])->path, "sessions[1].work");
  assert_null (((SyDifference *) found->pdata[1])->before);
}

static void
what_no_field_knows_is_told_by_its_path (void **state)
{
  g_autoptr (SyEvent) before = new_revision (1, "lift", LIFT (",\"travel\":20,\"odd\":{\"deep\":1}"), "{}");
  g_autoptr (SyEvent) after = new_revision (2, "lift", LIFT (",\"travel\":25,\"odd\":{\"deep\":2}"), "{}");
  g_autoptr (GPtrArray) found = sy_difference_of (before, after);
  g_autoptr (GPtrArray) newer = NULL;

  (void) state;
  assert_difference (found, 1, "odd.deep", "odd.deep", "", "", "1", "2");

  /* an edition that this program does not know yet */
  before->edition = after->edition = 1000;
  newer = sy_difference_of (before, after);
  assert_int_equal (newer->len, 2);
  assert_difference (newer, 0, "travel", "travel", "", "", "20", "25");

  sy_event_set (&before->method, "balloon");
  sy_event_set (&after->method, "balloon");
  g_autoptr (GPtrArray) unknown = sy_difference_of (before, after);
  assert_int_equal (unknown->len, 2);
}

static void
quantities_and_verdict_are_compared_as_stored (void **state)
{
  g_autoptr (GPtrArray) found = compare_findings (
    "{\"units\":\"metric\",\"verdict\":\"improve\",\"quantities\":{\"LI\":{\"value\":1.4567890123,\"unit\":\"1\"},"
    "\"RWL\":{\"value\":10,\"unit\":\"kg\"},\"F\":{\"value\":1,\"unit\":\"1/min\"}}}",
    "{\"units\":\"metric\",\"verdict\":\"mechanical\",\"quantities\":{\"LI\":{\"value\":null,\"unit\":\"1\","
    "\"state\":\"unbounded\"},\"RWL\":{\"value\":0,\"unit\":\"kg\"},\"leg.A.load\":{\"value\":2,\"unit\":\"kN\"}}}");

  (void) state;
  assert_int_equal (found->len, 5);
  assert_difference (found, 0, "verdict", "Verdict", "", "", "improve", "mechanical");
  assert_string_equal (((SyDifference *) found->pdata[1])->path, "quantities.LI");
  assert_string_equal (((SyDifference *) found->pdata[1])->before, "1.4567890123");
  assert_string_equal (((SyDifference *) found->pdata[1])->after, "unbounded");
  assert_string_equal (((SyDifference *) found->pdata[1])->unit, "");
  assert_true (strcmp (((SyDifference *) found->pdata[1])->name, "LI") != 0);
  assert_string_equal (((SyDifference *) found->pdata[2])->unit, "kg");
  assert_difference (found, 3, "quantities.leg.A.load", "leg.A.load", "leg.A.load", "kN", NULL, "2");
  assert_string_equal (((SyDifference *) found->pdata[4])->path, "quantities.F");
  assert_null (((SyDifference *) found->pdata[4])->after);
}

static void
reasons_come_go_and_change (void **state)
{
  g_autoptr (GPtrArray) found = compare_findings (
    "{\"reasons\":[{\"id\":\"goal\",\"text\":\"A is over\"},{\"id\":\"over\",\"text\":\"E1 over\",\"subject\":\"E1\"},"
    "{\"id\":\"gone\",\"text\":\"gone\"}],\"cautions\":[{\"id\":\"screening\",\"text\":\"S\"}]}",
    "{\"reasons\":[{\"id\":\"over\",\"text\":\"E2 over\",\"subject\":\"E2\"},{\"id\":\"over\",\"text\":\"E1 far over\","
    "\"subject\":\"E1\"},{\"id\":\"goal\",\"text\":\"A is over\"}],\"remedies\":[{\"id\":\"closer\",\"text\":\"Closer\"}],"
    "\"cautions\":[{\"id\":\"screening\",\"text\":\"S\"},{\"id\":\"policy-loosened\",\"text\":\"L\"}]}");

  (void) state;
  assert_int_equal (found->len, 5);
  assert_difference (found, 0, "reasons.over", "Reason", "", "", NULL, "E2 over");
  assert_difference (found, 1, "reasons.over", "Reason", "", "", "E1 over", "E1 far over");
  assert_difference (found, 2, "reasons.gone", "Reason", "", "", "gone", NULL);
  assert_difference (found, 3, "remedies.closer", "Remedy", "", "", NULL, "Closer");
  assert_difference (found, 4, "cautions.policy-loosened", "Caution", "", "", NULL, "L");
}

static void
under_what_it_was_made_comes_last (void **state)
{
  g_autoptr (SyEvent) before = new_revision (1, "lift", LIFT (",\"travel\":20"), "{}");
  g_autoptr (SyEvent) after = new_revision (2, "truck", "{\"method\":\"truck\",\"units\":\"metric\",\"mass\":20}", "{}");
  g_autoptr (GPtrArray) found = NULL;

  (void) state;
  after->edition = before->edition + 1;
  sy_event_set (&after->policy, "site 1");
  sy_event_set (&after->program, "steelyard 0.2.0");
  sy_event_set (&after->name, "Blanks by truck");
  found = sy_difference_of (before, after);
  assert_int_equal (found->len, 7);
  assert_int_equal (((SyDifference *) found->pdata[1])->part, SY_PART_FACTS);
  assert_difference (found, 2, "method", "Method", "", "", "lift", "truck");
  assert_string_equal (((SyDifference *) found->pdata[3])->path, "edition");
  assert_difference (found, 4, "policy", "Policy", "", "", "steelyard-default 2", "site 1");
  assert_difference (found, 5, "program", "Program", "", "", "steelyard 0.1.0", "steelyard 0.2.0");
  assert_difference (found, 6, "name", "Name", "", "", "Blanks to the press", "Blanks by truck");
  assert_int_equal (((SyDifference *) found->pdata[6])->part, SY_PART_BASIS);
}

static void
what_cannot_be_read_is_told_whole (void **state)
{
  g_autoptr (GPtrArray) found = compare_facts ("lift", "{", LIFT (""));
  g_autoptr (GPtrArray) lists = compare_facts ("lift", "[]", LIFT (""));

  (void) state;
  assert_int_equal (found->len, 1);
  assert_difference (found, 0, "facts", "Facts", "", "", "{", LIFT (""));
  assert_int_equal (lists->len, 1);
}

static void
the_json_is_as_described (void **state)
{
  g_autoptr (SyEvent) before = new_revision (1, "lift", LIFT (",\"travel\":20"), "{}");
  g_autoptr (SyEvent) after = new_revision (3, "lift", LIFT (""), "{}");
  g_autoptr (GPtrArray) found = sy_difference_of (before, after);
  g_autoptr (GString) out = g_string_new (NULL);

  (void) state;
  sy_difference_write_json (out, before, after, found);
  assert_string_equal (out->str, "{\"task\":\"Blanks to the press\",\"id\":\"0123456789abcdef\",\"from\":1,\"to\":3,"
                                 "\"differences\":[{\"part\":\"facts\",\"path\":\"travel\",\"name\":\"Travel\","
                                 "\"symbol\":\"D\",\"unit\":\"cm\",\"old\":\"20\",\"new\":null}]}");
  sy_difference_free (NULL);
}

/* A document as no method has it, but as one could come from elsewhere: members in a fixed order, so that two are the same
   exactly when their texts are. */
static void
write_random (GRand *random, GString *out, int depth)
{
  static const char *const members[] = { "units", "place", "legs", "label", "elements", "other" };
  const int kind = g_rand_int_range (random, 0, depth > 0 ? 6 : 4);
  gboolean any = FALSE;

  switch (kind)
    {
    case 0:
      g_string_append_printf (out, "%d", g_rand_int_range (random, 0, 3));
      break;
    case 1:
      g_string_append_printf (out, "\"%c\"", g_rand_int_range (random, 'a', 'c'));
      break;
    case 2:
      g_string_append (out, g_rand_boolean (random) ? "{}" : "[]");
      break;
    case 3:
      g_string_append (out, g_rand_boolean (random) ? "null" : "\"\"");
      break;
    case 4:
      g_string_append_c (out, '[');
      for (int n = g_rand_int_range (random, 0, 4); n > 0; n--)
        {
          write_random (random, out, depth - 1);
          g_string_append (out, n > 1 ? "," : "");
        }
      g_string_append_c (out, ']');
      break;
    default:
      g_string_append_c (out, '{');
      for (gsize i = 0; i < G_N_ELEMENTS (members); i++)
        if (g_rand_int_range (random, 0, 3) == 0)
          {
            g_string_append_printf (out, "%s\"%s\":", any ? "," : "", members[i]);
            write_random (random, out, depth - 1);
            any = TRUE;
          }
      g_string_append_c (out, '}');
    }
}

static void
no_changed_fact_is_hidden (void **state)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20261126);

  (void) state;
  for (int i = 0; i < 20000; i++)
    {
      g_autoptr (GString) before = g_string_new ("{\"legs\":"), after = g_string_new ("{\"legs\":");
      GString *const sides[] = { before, after };
      g_autoptr (GPtrArray) differences = NULL;

      for (int k = 0; k < 2; k++)
        {
          write_random (random, sides[k], 3);
          g_string_append_c (sides[k], '}');
        }
      differences = compare_facts ("rigged-lift", sides[0]->str, sides[1]->str);
      if ((differences->len == 0) != (strcmp (sides[0]->str, sides[1]->str) == 0))
        fail_msg ("%u differences between %s and %s", differences->len, sides[0]->str, sides[1]->str);
    }
}

/* One that says in its facts that another method is meant than the one it was made by. */
static void
a_method_changed_in_the_facts_alone_is_told (void **state)
{
  g_autoptr (GPtrArray) differences
    = compare_facts ("lift", "{\"method\":\"lift\"}", "{\"method\":\"gear\"}");

  (void) state;
  assert_int_equal (differences->len, 1);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (equal_revisions_have_no_difference),
    cmocka_unit_test (a_fact_is_told_by_the_words_of_its_field),
    cmocka_unit_test (the_same_value_typed_differently_differs),
    cmocka_unit_test (how_a_fact_was_had_is_compared_too),
    cmocka_unit_test (a_group_that_was_not_there_comes_member_by_member),
    cmocka_unit_test (another_system_of_units_goes_with_the_values),
    cmocka_unit_test (members_of_a_list_belong_together_by_label),
    cmocka_unit_test (members_without_labels_belong_together_by_place),
    cmocka_unit_test (what_no_field_knows_is_told_by_its_path),
    cmocka_unit_test (quantities_and_verdict_are_compared_as_stored),
    cmocka_unit_test (reasons_come_go_and_change),
    cmocka_unit_test (under_what_it_was_made_comes_last),
    cmocka_unit_test (what_cannot_be_read_is_told_whole),
    cmocka_unit_test (no_changed_fact_is_hidden),
    cmocka_unit_test (a_method_changed_in_the_facts_alone_is_told),
    cmocka_unit_test (the_json_is_as_described),
  };

  return cmocka_run_group_tests_name ("difference", tests, NULL, NULL);
}
