/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-task.h"

static const char facts_metric[]
  = "{\"method\":\"lift\",\"units\":\"metric\",\"place\":\"Press 4\",\"load\":{\"typical\":20,\"heaviest\":24},"
    "\"measured_by\":\"N. Sample\",\"had\":{\"load\":{\"how\":\"measured\",\"by\":\"Q. Scale\"},"
    "\"origin\":{\"H\":{\"how\":\"drawing\",\"by\":\"D. Pencil\"}}}}";

static const char findings_metric[]
  = "{\"method\":\"lift\",\"units\":\"metric\",\"quantities\":{"
    "\"LI\":{\"value\":2.5,\"unit\":\"1\"},\"LI_typical\":{\"value\":2.1,\"unit\":\"1\"},"
    "\"mass_each\":{\"value\":12,\"unit\":\"kg\"},\"persons\":{\"value\":2,\"unit\":\"1\"},"
    "\"lifts_per_day\":{\"value\":60,\"unit\":\"1\"}},\"verdict\":\"outside\","
    "\"reasons\":[{\"id\":\"team\",\"text\":\"Two persons lift together\"},"
    "{\"id\":\"goal\",\"text\":\"The index is over 1\"}],\"index\":\"LI\"}";

static SyEvent *
new_revision (gint64 revision, gint64 base, const char *facts, const char *findings)
{
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);

  sy_event_set (&event->item, "t1");
  sy_event_set (&event->item_kind, "task");
  sy_event_set (&event->name, "Blanks to the press");
  sy_event_set (&event->by, "R. Example");
  sy_event_set (&event->why, "first measurement");
  sy_event_set (&event->claimed, "2026-03-04T05:06:07Z");
  sy_event_set (&event->written, "2026-03-05T00:00:00Z");
  sy_event_set (&event->method, "lift");
  event->revision = revision;
  event->base = base;
  sy_event_set (&event->facts, facts);
  sy_event_set (&event->findings, findings);
  return event;
}

static SyTask *
apply_findings (const char *findings)
{
  g_autoptr (SyEvent) event = new_revision (1, 0, facts_metric, findings);

  return sy_task_apply (NULL, event);
}

/* Applies a revision that differs in nothing but its number and base. */
static SyTask *
revise (SyTask *task, gint64 revision, gint64 base)
{
  g_autoptr (SyEvent) event = new_revision (revision, base, facts_metric, findings_metric);

  return sy_task_apply (task, event);
}

static void
the_first_revision_begins_a_task (void **state)
{
  g_autoptr (SyTask) task = apply_findings (findings_metric);

  (void) state;
  assert_string_equal (task->id, "t1");
  assert_string_equal (task->name, "Blanks to the press");
  assert_string_equal (task->place, "Press 4");
  assert_string_equal (task->method, "lift");
  assert_string_equal (task->units, "metric");
  assert_int_equal (task->verdict, SY_VERDICT_OUTSIDE);
  assert_same_bits (task->index, 2.5);
  assert_string_equal (task->index_symbol, "LI");
  assert_same_bits (task->mass_kg, 24.0);
  assert_same_bits (task->persons, 2.0);
  assert_same_bits (task->lifts_per_day, 60.0);
  assert_same_bits (task->rank, 2.5 * 2.0 * 60.0);
  assert_int_equal (task->revision, 1);
  assert_int_equal (task->clash, 0);
  assert_string_equal (task->by, "R. Example");
  assert_string_equal (task->why, "first measurement");
  assert_string_equal (task->when, "2026-03-04T05:06:07Z");
}

static void
the_search_text_names_place_people_and_reasons (void **state)
{
  static const char *const parts[]
    = { "Blanks to the press", "Press 4",    "R. Example",                "N. Sample",
        "Q. Scale",            "D. Pencil", "Two persons lift together", "The index is over 1" };
  g_autoptr (SyTask) task = apply_findings (findings_metric);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    assert_non_null (strstr (task->search_text, parts[i]));
  assert_null (strstr (task->search_text, "measured")); /* how a fact was had is no person */
}

static void
pounds_become_kilograms (void **state)
{
  g_autoptr (SyTask) task
    = apply_findings ("{\"quantities\":{\"mass_each\":{\"value\":44,\"unit\":\"lb\"}}}");

  (void) state;
  assert_close (task->mass_kg, 19.95806428, 0.0, 1e-15); /* 44 × 0.45359237, exact by definition */
}

static void
a_mass_in_an_unknown_unit_is_none (void **state)
{
  g_autoptr (SyTask) task
    = apply_findings ("{\"quantities\":{\"mass_each\":{\"value\":44,\"unit\":\"st\"}}}");

  (void) state;
  assert_true (isnan (task->mass_kg));
}

static void
an_unbounded_index_ranks_first (void **state)
{
  g_autoptr (SyTask) task = apply_findings (
    "{\"index\":\"LI\",\"quantities\":{\"LI\":{\"value\":null,\"unit\":\"1\",\"state\":\"unbounded\"},"
    "\"lifts_per_day\":{\"value\":3,\"unit\":\"1\"}},\"verdict\":\"mechanical\"}");
  g_autoptr (SyTask) no_pace = apply_findings (
    "{\"index\":\"LI\",\"quantities\":{\"LI\":{\"value\":null,\"unit\":\"1\",\"state\":\"unbounded\"}}}");

  (void) state;
  assert_same_bits (task->index, INFINITY);
  assert_same_bits (task->rank, INFINITY);
  assert_same_bits (no_pace->rank, INFINITY);
}

static void
a_missing_part_leaves_no_rank (void **state)
{
  g_autoptr (SyTask) no_pace
    = apply_findings ("{\"index\":\"LI\",\"quantities\":{\"LI\":{\"value\":2,\"unit\":\"1\"}}}");
  g_autoptr (SyTask) no_index = apply_findings (
    "{\"index\":\"LI\",\"quantities\":{\"lifts_per_day\":{\"value\":2,\"unit\":\"1\"}}}");
  g_autoptr (SyTask) null_index = apply_findings (
    "{\"index\":\"LI\",\"quantities\":{\"LI\":{\"value\":null,\"unit\":\"1\"},"
    "\"lifts_per_day\":{\"value\":2,\"unit\":\"1\"}}}");

  (void) state;
  assert_same_bits (no_pace->index, 2.0);
  assert_true (isnan (no_pace->lifts_per_day));
  assert_true (isnan (no_pace->rank));
  assert_true (isnan (no_index->index));
  assert_true (isnan (no_index->rank));
  assert_true (isnan (null_index->index));
  assert_true (isnan (null_index->rank));
}

static void
one_person_is_taken_when_not_said (void **state)
{
  g_autoptr (SyTask) task = apply_findings (
    "{\"index\":\"CLI\",\"quantities\":{\"LI\":{\"value\":9,\"unit\":\"1\"},"
    "\"CLI\":{\"value\":1.5,\"unit\":\"1\"},\"lifts_per_day\":{\"value\":10,\"unit\":\"1\"},"
    "\"mass_each\":{\"value\":7,\"unit\":\"kg\"}}}");

  (void) state;
  assert_same_bits (task->persons, 1.0);
  assert_same_bits (task->mass_kg, 7.0);
  assert_string_equal (task->index_symbol, "CLI");
  assert_same_bits (task->rank, 15.0);
}

static void
findings_that_cannot_be_read_are_never_within_limits (void **state)
{
  static const char *const cases[] = { "",
                                       "{}",
                                       "[]",
                                       "null",
                                       "{\"verdict\":\"by-hand\"",
                                       "{\"verdict\":\"fine\"}",
                                       "{\"verdict\":7}",
                                       "{\"verdict\":null,\"reasons\":3,\"quantities\":[],\"index\":{}}" };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyTask) task = apply_findings (cases[i]);

      assert_int_equal (task->verdict, SY_VERDICT_INCOMPLETE);
      assert_true (isnan (task->index));
      assert_true (isnan (task->rank));
      assert_true (isnan (task->mass_kg));
      assert_string_equal (task->name, "Blanks to the press");
    }
}

static void
facts_that_cannot_be_read_leave_the_rest (void **state)
{
  g_autoptr (SyEvent) event = new_revision (1, 0, "{\"place\":", findings_metric);
  g_autoptr (SyTask) task = sy_task_apply (NULL, event);

  (void) state;
  assert_string_equal (task->place, "");
  assert_string_equal (task->units, "");
  assert_same_bits (task->index, 2.5);
}

static void
every_verdict_is_taken_over (void **state)
{
  (void) state;
  for (int i = 0; i < SY_N_VERDICTS; i++)
    {
      g_autofree char *findings
        = g_strdup_printf ("{\"verdict\":\"%s\"}", sy_verdict_id ((SyVerdict) i));
      g_autoptr (SyTask) task = apply_findings (findings);

      assert_int_equal (task->verdict, i);
    }
}

static void
a_later_revision_replaces_everything (void **state)
{
  g_autoptr (SyTask) task = apply_findings (findings_metric);
  g_autoptr (SyEvent) event = new_revision (2, 1, "{\"units\":\"us\"}", "{\"verdict\":\"improve\"}");

  (void) state;
  sy_event_set (&event->name, "Blanks, from a lift table");
  sy_event_set (&event->by, "M. Other");
  sy_event_set (&event->why, "a lift table was bought");
  sy_event_set (&event->claimed, "2026-05-01T00:00:00Z");
  task = sy_task_apply (g_steal_pointer (&task), event);
  assert_string_equal (task->id, "t1");
  assert_string_equal (task->name, "Blanks, from a lift table");
  assert_string_equal (task->by, "M. Other");
  assert_string_equal (task->why, "a lift table was bought");
  assert_string_equal (task->when, "2026-05-01T00:00:00Z");
  assert_string_equal (task->units, "us");
  assert_string_equal (task->place, "");
  assert_string_equal (task->index_symbol, "");
  assert_int_equal (task->verdict, SY_VERDICT_IMPROVE);
  assert_true (isnan (task->index));
  assert_true (isnan (task->mass_kg));
  assert_same_bits (task->persons, 1.0);
  assert_int_equal (task->revision, 2);
  assert_null (strstr (task->search_text, "R. Example"));
}

static const char facts_die[]
  = "{\"method\":\"die-mass\",\"units\":\"us\",\"machine\":\"Press 4\",\"storage\":\"Rack C\",\"drawing\":\"D-118\"}";

static const char findings_die[]
  = "{\"quantities\":{\"mass\":{\"value\":1000,\"unit\":\"lb\"},\"mass_with_allowance\":{\"value\":1100,"
    "\"unit\":\"lb\"},\"cg.x\":{\"value\":10,\"unit\":\"in\"},\"cg.y\":{\"value\":-2.5,\"unit\":\"in\"}},"
    "\"verdict\":\"mechanical\"}";

static const char facts_gear[]
  = "{\"method\":\"gear\",\"units\":\"metric\",\"kind\":\"shackle\",\"identity\":\"SH-07\",\"wll\":\"2 t\","
    "\"serves\":[\"Press 4\",\"Roll former\"],\"storage\":\"Hook 3\",\"due\":\"2027-03-01\",\"withdrawn\":true}";

static SyTask *
apply_item (const char *kind, const char *method, const char *facts, const char *findings)
{
  g_autoptr (SyEvent) event = new_revision (1, 0, facts, findings);

  sy_event_set (&event->item_kind, kind);
  sy_event_set (&event->method, method);
  return sy_task_apply (NULL, event);
}

static void
a_die_is_told_by_mass_centre_machine_and_place (void **state)
{
  g_autoptr (SyTask) die = apply_item (SY_ITEM_DIE, "die-mass", facts_die, findings_die);

  (void) state;
  assert_string_equal (die->item_kind, "die");
  /* × 0.45359237 and × 25.4, exact by definition */
  assert_close (die->detail.mass_with_allowance_kg, 498.951607, 0.0, 1e-15);
  assert_close (die->mass_kg, 498.951607, 0.0, 1e-15);
  assert_close (die->detail.cg_mm[0], 254.0, 0.0, 1e-15);
  assert_close (die->detail.cg_mm[1], -63.5, 0.0, 1e-15);
  assert_true (isnan (die->detail.cg_mm[2])); /* not known */
  assert_string_equal (die->detail.machine, "Press 4");
  assert_string_equal (die->detail.storage, "Rack C");
  assert_string_equal (die->detail.gear_kind, "");
  assert_true (isnan (die->detail.wll_kg));
  assert_true (isnan (die->rank));
  assert_string_equal (die->valid_until, "");
  assert_non_null (strstr (die->search_text, "Press 4"));
  assert_non_null (strstr (die->search_text, "Rack C"));
  assert_non_null (strstr (die->search_text, "D-118"));
}

static void
a_die_change_is_told_by_machine_people_and_heaviest_by_hand (void **state)
{
  g_autoptr (SyTask) change = apply_item (
    SY_ITEM_CHANGEOVER, "changeover",
    "{\"units\":\"us\",\"machine\":\"Press 4\",\"people\":[\"Ann\",\"Ben\"],\"dies\":[{\"label\":\"Tray die\"}],"
    "\"steps\":[{\"label\":\"Block the slide\"},{\"label\":7}]}",
    "{\"verdict\":\"mechanical\",\"index\":\"worst.index\",\"quantities\":{\"worst.index\":{\"value\":3.5,\"unit\":\"1\"},"
    "\"people\":{\"value\":2,\"unit\":\"1\"},\"heaviest_by_hand\":{\"value\":100,\"unit\":\"lb\"},"
    "\"valid_until\":{\"value\":\"2027-04-12\"}}}");

  (void) state;
  assert_string_equal (change->item_kind, "changeover");
  assert_string_equal (change->detail.machine, "Press 4");
  assert_close (change->mass_kg, 45.359237, 0.0, 1e-15);
  assert_same_bits (change->persons, 2.0);
  assert_same_bits (change->index, 3.5);
  assert_true (isnan (change->rank));
  assert_string_equal (change->valid_until, "2027-04-12");
  assert_non_null (strstr (change->search_text, "Tray die"));
  assert_non_null (strstr (change->search_text, "Block the slide"));
  assert_non_null (strstr (change->search_text, "Ben"));
}

static void
kinds_of_items_stand_in_one_order (void **state)
{
  (void) state;
  for (int i = 0; i < SY_N_ITEM_KINDS; i++)
    assert_int_equal (sy_item_kind_place (sy_item_kinds[i].id), i);
  assert_int_equal (sy_item_kind_place ("fork"), -1);
  assert_int_equal (sy_item_kind_place (""), -1);
}

static void
gear_is_told_by_kind_identity_limit_and_due_date (void **state)
{
  g_autoptr (SyTask) gear = apply_item (SY_ITEM_GEAR, "gear", facts_gear, "{\"verdict\":\"do-not-lift\"}");

  (void) state;
  assert_string_equal (gear->detail.gear_kind, "shackle");
  assert_string_equal (gear->detail.identity, "SH-07");
  assert_same_bits (gear->detail.wll_kg, 2000.0);
  assert_string_equal (gear->detail.machine, "Press 4, Roll former");
  assert_string_equal (gear->detail.storage, "Hook 3");
  assert_string_equal (gear->detail.due, "2027-03-01");
  assert_true (gear->detail.withdrawn);
  assert_true (isnan (gear->mass_kg));
  assert_true (isnan (gear->detail.mass_with_allowance_kg));
  assert_string_equal (gear->valid_until, "2027-03-01"); /* the findings name none */
  assert_non_null (strstr (gear->search_text, "SH-07"));
  assert_non_null (strstr (gear->search_text, "shackle"));
  assert_non_null (strstr (gear->search_text, "Roll former"));
}

/* A number is in the document's unit; a text has its own; anything else was no mass. */
static void
a_limit_is_converted_from_the_unit_it_was_typed_in (void **state)
{
  static const struct
  {
    const char *facts;
    double kg;
  } cases[] = {
    { "{\"units\":\"metric\",\"wll\":1600}", 1600 },
    { "{\"units\":\"us\",\"wll\":1000}", 453.59237 },
    { "{\"units\":\"us\",\"wll\":\"1.5 t\"}", 1500 },
    { "{\"units\":\"metric\",\"wll\":\"1000 lb\"}", 453.59237 },
    { "{\"wll\":1600}", NAN },
    { "{\"units\":\"metric\",\"wll\":\"much\"}", NAN },
    { "{\"units\":\"metric\",\"wll\":true}", NAN },
    { "{\"units\":\"metric\"}", NAN },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyTask) gear = apply_item (SY_ITEM_GEAR, "gear", cases[i].facts, "{}");

      if (isnan (cases[i].kg))
        assert_true (isnan (gear->detail.wll_kg));
      else
        assert_close (gear->detail.wll_kg, cases[i].kg, 0.0, 1e-15);
    }
}

/* What only registers list is no part of a task, whatever its facts are called. */
static void
a_rigged_lift_has_a_mass_and_a_day_but_no_rank (void **state)
{
  g_autoptr (SyTask) lift = apply_item (
    SY_ITEM_TASK, "rigged-lift", "{\"units\":\"metric\",\"machine\":\"Press 4\",\"due\":\"2026-12-01\"}",
    "{\"index\":\"utilisation\",\"quantities\":{\"utilisation\":{\"value\":0.7,\"unit\":\"1\"},"
    "\"mass_with_allowance\":{\"value\":420,\"unit\":\"kg\"},"
    "\"valid_until\":{\"value\":\"2027-01-31\",\"unit\":\"date\"}},\"verdict\":\"within-capacity\"}");
  g_autoptr (SyTask) endless = apply_item (
    SY_ITEM_TASK, "rigged-lift", "{}",
    "{\"index\":\"utilisation\",\"quantities\":{\"utilisation\":{\"value\":null,\"state\":\"unbounded\"}}}");

  (void) state;
  assert_same_bits (lift->index, 0.7);
  assert_true (isnan (lift->rank));
  assert_same_bits (lift->mass_kg, 420.0);
  assert_true (isnan (lift->detail.mass_with_allowance_kg));
  assert_string_equal (lift->detail.machine, "");
  assert_string_equal (lift->valid_until, "2027-01-31"); /* the earliest of all dates, not the one of the facts */
  assert_same_bits (endless->index, INFINITY);
  assert_true (isnan (endless->rank));
}

static void
the_mass_of_a_cart_is_its_gross_mass (void **state)
{
  g_autoptr (SyTask) cart
    = apply_item (SY_ITEM_TASK, "cart", "{\"units\":\"metric\",\"gross_mass\":\"0.35 t\"}", "{}");

  (void) state;
  assert_close (cart->mass_kg, 350.0, 0.0, 1e-15);
}

/* 2027-03-01 is day 20878 (57 years of 365 days, 14 leap days, January and February). */
static void
a_verdict_holds_through_its_last_day (void **state)
{
  g_autoptr (SyTask) gear = apply_item (SY_ITEM_GEAR, "gear", facts_gear, "{}");
  g_autoptr (SyTask) lift = apply_findings (findings_metric);

  (void) state;
  assert_false (sy_task_is_expired (gear, 20877));
  assert_false (sy_task_is_expired (gear, 20878));
  assert_true (sy_task_is_expired (gear, 20879));
  assert_false (sy_task_is_expired (gear, NAN));
  assert_false (sy_task_is_expired (lift, 20879)); /* nothing of it falls due */
}

static void
what_is_no_date_is_none (void **state)
{
  static const char *const dates[] = { "\"2027-02-29\"", "\"tomorrow\"", "20270301", "null", "\"\"" };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (dates); i++)
    {
      g_autofree char *findings
        = g_strdup_printf ("{\"quantities\":{\"valid_until\":{\"value\":%s}}}", dates[i]);
      g_autofree char *facts = g_strdup_printf ("{\"due\":%s}", dates[i]);
      g_autoptr (SyTask) gear = apply_item (SY_ITEM_GEAR, "gear", facts, findings);

      assert_string_equal (gear->valid_until, "");
      assert_string_equal (gear->detail.due, "");
    }
}

static void
other_events_leave_a_task_as_it_is (void **state)
{
  g_autoptr (SyEvent) policy = sy_event_new (SY_EVENT_POLICY);
  g_autoptr (SyEvent) attachment = sy_event_new (SY_EVENT_ATTACHMENT);
  g_autoptr (SyTask) task = apply_findings (findings_metric);
  SyTask *same;

  (void) state;
  sy_event_set (&policy->name, "steelyard-default");
  assert_null (sy_task_apply (NULL, policy));
  same = sy_task_apply (task, policy);
  assert_ptr_equal (same, task);
  sy_event_set (&attachment->item, "t1");
  sy_event_set (&attachment->name, "drawing.pdf");
  assert_null (sy_task_apply (NULL, attachment));
  same = sy_task_apply (task, attachment);
  assert_ptr_equal (same, task);
  assert_string_equal (task->name, "Blanks to the press");
}

static void
two_revisions_on_one_base_clash_until_one_follows_the_latest (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, 0);

  (void) state;
  task = revise (g_steal_pointer (&task), 2, 1);
  assert_int_equal (task->clash, 0);
  task = revise (g_steal_pointer (&task), 3, 1);
  assert_int_equal (task->revision, 3);
  assert_int_equal (task->clash, 2);
  task = revise (g_steal_pointer (&task), 4, 3);
  assert_int_equal (task->revision, 4);
  assert_int_equal (task->clash, 0);
}

static void
a_clash_names_the_revision_with_the_same_base (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, 0);

  (void) state;
  for (gint64 revision = 2; revision <= 12; revision++)
    task = revise (g_steal_pointer (&task), revision, revision - 1);
  task = revise (g_steal_pointer (&task), 13, 1); /* 1 is not 11 or 12 */
  assert_int_equal (task->clash, 2);
  task = revise (g_steal_pointer (&task), 14, 1); /* a third: the nearest */
  assert_int_equal (task->clash, 13);
  task = revise (g_steal_pointer (&task), 15, 0); /* begun anew, like the first */
  assert_int_equal (task->clash, 1);
}

/* 3 clashed with 2; 4 goes on from 2, so 3 is still a line of its own. */
static void
a_clash_that_is_not_taken_up_stays (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, 0);

  (void) state;
  task = revise (g_steal_pointer (&task), 2, 1);
  task = revise (g_steal_pointer (&task), 3, 1);
  task = revise (g_steal_pointer (&task), 4, 2);
  assert_int_equal (task->clash, 3);
  task = revise (g_steal_pointer (&task), 5, 4);
  assert_int_equal (task->clash, 0);
}

static void
a_copy_is_equal_and_apart (void **state)
{
  g_autoptr (SyTask) task = apply_findings (findings_metric);
  g_autoptr (SyTask) copy = sy_task_copy (task);

  (void) state;
  task = revise (g_steal_pointer (&task), 2, 0);
  sy_event_set (&task->name, "changed");
  sy_event_set (&task->place, "changed");
  assert_string_equal (copy->id, "t1");
  assert_string_equal (copy->item_kind, "task");
  assert_string_equal (copy->detail.machine, "");
  assert_string_equal (copy->name, "Blanks to the press");
  assert_string_equal (copy->place, "Press 4");
  assert_string_equal (copy->units, "metric");
  assert_string_equal (copy->index_symbol, "LI");
  assert_true (g_str_has_prefix (copy->lineage, "1<0~"));
  assert_same_bits (copy->rank, 300.0);
  assert_int_equal (copy->revision, 1);
  assert_int_equal (copy->clash, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (the_first_revision_begins_a_task),
    cmocka_unit_test (the_search_text_names_place_people_and_reasons),
    cmocka_unit_test (pounds_become_kilograms),
    cmocka_unit_test (a_mass_in_an_unknown_unit_is_none),
    cmocka_unit_test (an_unbounded_index_ranks_first),
    cmocka_unit_test (a_missing_part_leaves_no_rank),
    cmocka_unit_test (one_person_is_taken_when_not_said),
    cmocka_unit_test (findings_that_cannot_be_read_are_never_within_limits),
    cmocka_unit_test (facts_that_cannot_be_read_leave_the_rest),
    cmocka_unit_test (every_verdict_is_taken_over),
    cmocka_unit_test (a_later_revision_replaces_everything),
    cmocka_unit_test (a_die_is_told_by_mass_centre_machine_and_place),
    cmocka_unit_test (a_die_change_is_told_by_machine_people_and_heaviest_by_hand),
    cmocka_unit_test (kinds_of_items_stand_in_one_order),
    cmocka_unit_test (gear_is_told_by_kind_identity_limit_and_due_date),
    cmocka_unit_test (a_limit_is_converted_from_the_unit_it_was_typed_in),
    cmocka_unit_test (a_rigged_lift_has_a_mass_and_a_day_but_no_rank),
    cmocka_unit_test (the_mass_of_a_cart_is_its_gross_mass),
    cmocka_unit_test (a_verdict_holds_through_its_last_day),
    cmocka_unit_test (what_is_no_date_is_none),
    cmocka_unit_test (other_events_leave_a_task_as_it_is),
    cmocka_unit_test (two_revisions_on_one_base_clash_until_one_follows_the_latest),
    cmocka_unit_test (a_clash_names_the_revision_with_the_same_base),
    cmocka_unit_test (a_clash_that_is_not_taken_up_stays),
    cmocka_unit_test (a_copy_is_equal_and_apart),
  };

  return cmocka_run_group_tests_name ("task", tests, NULL, NULL);
}
