/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-deed.h"

#define HASH "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"
#define ACTION "0123456789abcdef"
#define IMPROVEMENT(kind, revision, day)                                                                            \
  "{\"step\":\"add\",\"improvement\":\"" ACTION "\",\"what\":\"blanks on a table\",\"from_item\":\"" ACTION        \
  "\",\"from_kind\":\"" kind "\",\"from_name\":\"Blanks\",\"from_revision\":" revision ",\"from_hash\":\"" HASH          \
  "\",\"to_hash\":\"" HASH "\",\"idea_by\":\"O. Lund\",\"put_to_work\":\"" day "\"}"

/* One document of each shape, as it is written. */
static const struct
{
  SyEventKind kind;
  const char *facts, *words;
} documents[] = {
  { SY_EVENT_SIGNATURE, "{\"line_hash\":\"" HASH "\",\"competence\":\"\"}", "Signed off in the role of foreman" },
  { SY_EVENT_SIGNATURE, "{\"line_hash\":\"" HASH "\",\"competence\":\"rigger's card\"}",
    "Signed off in the role of foreman; competence: rigger's card" },
  { SY_EVENT_ACTION,
    "{\"step\":\"open\",\"action\":\"" ACTION "\",\"what\":\"fit a stop\",\"about\":\"\",\"assigned\":\"\",\"due\":\"\"}",
    "Action opened: fit a stop" },
  { SY_EVENT_ACTION,
    "{\"step\":\"open\",\"action\":\"" ACTION "\",\"what\":\"fit a stop\",\"about\":\"index-goal\","
    "\"assigned\":\"N. Vance\",\"due\":\"2026-12-01\"}",
    "Action opened: fit a stop; for N. Vance, due 2026-12-01" },
  { SY_EVENT_ACTION, "{\"step\":\"assign\",\"action\":\"" ACTION "\",\"assigned\":\"\",\"due\":\"\"}",
    "Action assigned to nobody yet" },
  { SY_EVENT_ACTION, "{\"step\":\"assign\",\"action\":\"" ACTION "\",\"assigned\":\"N. Vance\",\"due\":\"\"}",
    "Action assigned to N. Vance" },
  { SY_EVENT_ACTION, "{\"step\":\"close\",\"action\":\"" ACTION "\",\"evidence\":\"stop {what} fitted\"}",
    "Action closed: stop {what} fitted" },
  { SY_EVENT_REVIEW, "{\"trigger\":\"date\",\"due\":\"2027-02-28\"}", "To be reviewed on 2027-02-28" },
  { SY_EVENT_REVIEW, "{\"trigger\":\"accident\",\"due\":\"2027-02-28\"}", "To be reviewed on 2027-02-28, after an accident" },
  { SY_EVENT_REVIEW, "{\"trigger\":\"change\",\"due\":\"2027-02-28\"}",
    "To be reviewed on 2027-02-28, because the work is being changed" },
  { SY_EVENT_RETIREMENT, "{\"retired\":true}", "Taken out of use" },
  { SY_EVENT_RETIREMENT, "{\"retired\":false}", "Taken back into use" },
  { SY_EVENT_TOLD, "{\"who\":\"Day shift\",\"mass\":\"18 kg\",\"heaviest_side\":\"the bolster side\"}",
    "Told to Day shift: 18 kg, heaviest side the bolster side" },
  { SY_EVENT_IMPORT, "{\"head\":\"" HASH "\",\"lines\":412}", "Lines taken over from another record: 412" },
  { SY_EVENT_IMPROVEMENT, IMPROVEMENT ("task", "1", "2026-11-02"), "Improvement, thought of by O. Lund: blanks on a table" },
  { SY_EVENT_IMPROVEMENT, "{\"step\":\"withdraw\",\"improvement\":\"" ACTION "\"}", "Improvement withdrawn" },
};

static SyEvent *
new_event (SyEventKind kind, const char *facts)
{
  SyEvent *event = sy_event_new (kind);

  sy_event_set (&event->item, "t1");
  sy_event_set (&event->item_kind, "task");
  sy_event_set (&event->name, "Blanks to the press");
  sy_event_set (&event->by, "R. Example");
  sy_event_set (&event->role, "foreman");
  sy_event_set (&event->why, "so it was agreed");
  sy_event_set (&event->claimed, "2026-11-26T08:00:00Z");
  sy_event_set (&event->facts, facts);
  event->revision = 1;
  return event;
}

static void
each_document_is_written_as_it_was_read (void **state)
{
  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (documents); i++)
    {
      g_autoptr (SyEvent) event = new_event (documents[i].kind, documents[i].facts);
      g_autofree char *again = NULL;
      SyDeed deed;

      if (!sy_deed_read (event, &deed))
        fail_msg ("not read: %s", documents[i].facts);
      assert_int_equal (deed.kind, documents[i].kind);
      again = sy_deed_write (&deed);
      assert_string_equal (again, documents[i].facts);
      sy_deed_clear (&deed);
      assert_null (deed.what);
    }
}

static void
each_document_has_its_sentence (void **state)
{
  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (documents); i++)
    {
      g_autoptr (SyEvent) event = new_event (documents[i].kind, documents[i].facts);
      g_autofree char *words = sy_deed_words (event, NULL);

      assert_string_equal (words, documents[i].words);
    }
}

static void
what_is_no_deed_has_neither_facts_nor_words (void **state)
{
  static const SyEventKind kinds[] = { SY_EVENT_POLICY, SY_EVENT_REVISION, SY_EVENT_ATTACHMENT };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (SyEvent) event = new_event (kinds[i], "{\"retired\":true}");
      g_autofree char *words = sy_deed_words (event, NULL);
      SyDeed deed;

      assert_false (sy_deed_read (event, &deed));
      assert_null (deed.who);
      assert_string_equal (words, "");
    }
}

static void
assert_refused (SyEventKind kind, const char *facts)
{
  g_autoptr (SyEvent) event = new_event (kind, facts);
  g_autofree char *words = sy_deed_words (event, NULL);
  SyDeed deed;

  if (sy_deed_read (event, &deed))
    fail_msg ("read: %s", facts);
  assert_null (deed.action);
  assert_true (*words != '\0');
}

static void
documents_are_strict (void **state)
{
  static const struct
  {
    SyEventKind kind;
    const char *facts;
  } bad[] = {
    { SY_EVENT_RETIREMENT, "" },
    { SY_EVENT_RETIREMENT, "[]" },
    { SY_EVENT_RETIREMENT, "{}" },
    { SY_EVENT_RETIREMENT, "{\"retired\":1}" },
    { SY_EVENT_RETIREMENT, "{\"retired\":\"true\"}" },
    { SY_EVENT_RETIREMENT, "{\"retired\":true,\"retired\":true}" },
    { SY_EVENT_RETIREMENT, "{\"retired\":true,\"more\":1}" },
    { SY_EVENT_RETIREMENT, "{\"retired\":true} " "x" },
    { SY_EVENT_SIGNATURE, "{\"line_hash\":\"" HASH "\"}" },
    { SY_EVENT_SIGNATURE, "{\"line_hash\":\"" HASH "0\",\"competence\":\"\"}" },
    { SY_EVENT_SIGNATURE, "{\"line_hash\":\"\",\"competence\":\"\"}" },
    { SY_EVENT_SIGNATURE,
      "{\"line_hash\":\"00112233445566778899AABBCCDDEEFF00112233445566778899aabbccddeeff\",\"competence\":\"\"}" },
    { SY_EVENT_SIGNATURE, "{\"line_hash\":\"" HASH "\",\"competence\":null}" },
    { SY_EVENT_ACTION, "{\"step\":\"reopen\",\"action\":\"" ACTION "\"}" },
    { SY_EVENT_ACTION, "{\"action\":\"" ACTION "\",\"evidence\":\"x\"}" },
    { SY_EVENT_ACTION, "{\"step\":\"close\",\"action\":\"" ACTION "\",\"evidence\":\" \"}" },
    { SY_EVENT_ACTION, "{\"step\":\"close\",\"action\":\"0123\",\"evidence\":\"x\"}" },
    { SY_EVENT_ACTION, "{\"step\":\"assign\",\"action\":\"" ACTION "\",\"assigned\":\"\",\"due\":\"2026-02-30\"}" },
    { SY_EVENT_ACTION, "{\"step\":\"assign\",\"action\":\"" ACTION "\",\"assigned\":\"\",\"due\":\"soon\"}" },
    { SY_EVENT_ACTION, "{\"step\":\"open\",\"action\":\"" ACTION
                       "\",\"what\":\"\",\"about\":\"\",\"assigned\":\"\",\"due\":\"\"}" },
    { SY_EVENT_REVIEW, "{\"trigger\":\"date\",\"due\":\"\"}" },
    { SY_EVENT_REVIEW, "{\"trigger\":\"whim\",\"due\":\"2027-02-28\"}" },
    { SY_EVENT_REVIEW, "{\"trigger\":1,\"due\":\"2027-02-28\"}" },
    { SY_EVENT_TOLD, "{\"who\":\"\",\"mass\":\"18 kg\",\"heaviest_side\":\"left\"}" },
    { SY_EVENT_TOLD, "{\"who\":\"A\",\"mass\":18,\"heaviest_side\":\"left\"}" },
    { SY_EVENT_IMPORT, "{\"head\":\"" HASH "\",\"lines\":1.5}" },
    { SY_EVENT_IMPORT, "{\"head\":\"" HASH "\",\"lines\":-1}" },
    { SY_EVENT_IMPORT, "{\"head\":\"" HASH "\",\"lines\":1e300}" },
    { SY_EVENT_IMPROVEMENT, IMPROVEMENT ("trolley", "1", "2026-11-02") },
    { SY_EVENT_IMPROVEMENT, IMPROVEMENT ("task", "-1", "2026-11-02") },
    { SY_EVENT_IMPROVEMENT, IMPROVEMENT ("task", "1", "") },
    { SY_EVENT_IMPROVEMENT, "{\"step\":\"open\",\"improvement\":\"" ACTION "\"}" },
    { SY_EVENT_IMPROVEMENT, "{\"step\":\"withdraw\",\"improvement\":\"\"}" },
    { SY_EVENT_ACTION, "{\"step\":\"withdraw\",\"improvement\":\"" ACTION "\"}" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    assert_refused (bad[i].kind, bad[i].facts);
}

static void
what_is_about_a_revision_names_it (void **state)
{
  static const gsize naming[] = { 0, 12, 14 };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (naming); i++)
    {
      g_autoptr (SyEvent) event = new_event (documents[naming[i]].kind, documents[naming[i]].facts);
      SyDeed deed;

      event->revision = 0;
      assert_false (sy_deed_read (event, &deed));
    }
}

static void
nothing_is_written_like_an_empty_text (void **state)
{
  const SyDeed deed = { .kind = SY_EVENT_ACTION, .step = SY_STEP_OPEN };
  g_autofree char *facts = sy_deed_write (&deed);

  (void) state;
  assert_string_equal (facts, "{\"step\":\"open\",\"action\":\"\",\"what\":\"\",\"about\":\"\",\"assigned\":\"\",\"due\":\"\"}");
}

static void
triggers_have_ids (void **state)
{
  SyTrigger trigger = SY_TRIGGER_DATE;

  (void) state;
  for (int i = 0; i < SY_N_TRIGGERS; i++)
    {
      assert_true (sy_trigger_from_id (sy_trigger_id ((SyTrigger) i), &trigger));
      assert_int_equal (trigger, i);
    }
  assert_false (sy_trigger_from_id ("", &trigger));
  assert_false (sy_trigger_from_id (NULL, &trigger));
}

/* Topics: an action */

static SyAction *
apply (SyAction *action, const char *facts, const char *by, guint64 line)
{
  g_autoptr (SyEvent) event = new_event (SY_EVENT_ACTION, facts);

  sy_event_set (&event->by, by);
  return sy_action_apply (action, event, line);
}

static void
an_action_is_opened_assigned_and_closed (void **state)
{
  g_autoptr (SyAction) action = apply (NULL, documents[3].facts, "R. Example", 7);
  g_autoptr (SyAction) copy = NULL;

  (void) state;
  assert_non_null (action);
  assert_true (action->open);
  assert_string_equal (action->id, ACTION);
  assert_string_equal (action->item, "t1");
  assert_string_equal (action->item_kind, "task");
  assert_string_equal (action->item_name, "Blanks to the press");
  assert_string_equal (action->what, "fit a stop");
  assert_string_equal (action->about, "index-goal");
  assert_string_equal (action->assigned, "N. Vance");
  assert_string_equal (action->due, "2026-12-01");
  assert_string_equal (action->opened_by, "R. Example");
  assert_string_equal (action->opened_when, "2026-11-26T08:00:00Z");
  assert_string_equal (action->why, "so it was agreed");
  assert_string_equal (action->closed_by, "");
  assert_int_equal (action->line, 7);

  copy = sy_action_copy (action);
  action = apply (g_steal_pointer (&action), documents[4].facts, "R. Example", 8);
  assert_string_equal (action->assigned, "");
  assert_string_equal (action->due, "");
  assert_int_equal (action->line, 8);
  assert_string_equal (copy->assigned, "N. Vance");

  action = apply (g_steal_pointer (&action), documents[6].facts, "N. Vance", 9);
  assert_false (action->open);
  assert_string_equal (action->closed_by, "N. Vance");
  assert_string_equal (action->closed_when, "2026-11-26T08:00:00Z");
  assert_string_equal (action->evidence, "stop {what} fitted");
}

static void
what_is_closed_stays_as_it_was_closed (void **state)
{
  g_autoptr (SyAction) action = apply (NULL, documents[2].facts, "R. Example", 7);

  (void) state;
  action = apply (g_steal_pointer (&action), documents[6].facts, "N. Vance", 8);
  action = apply (g_steal_pointer (&action), documents[6].facts, "M. Other", 9);
  action = apply (g_steal_pointer (&action), documents[5].facts, "M. Other", 10);
  action = apply (g_steal_pointer (&action), documents[2].facts, "M. Other", 11);
  assert_false (action->open);
  assert_string_equal (action->closed_by, "N. Vance");
  assert_string_equal (action->assigned, "");
  assert_string_equal (action->opened_by, "R. Example");
  assert_int_equal (action->line, 11);
}

static void
an_action_begins_with_being_opened (void **state)
{
  g_autoptr (SyAction) action = NULL;

  (void) state;
  assert_null (apply (NULL, documents[4].facts, "R. Example", 7));
  assert_null (apply (NULL, documents[6].facts, "R. Example", 7));
  assert_null (apply (NULL, "{}", "R. Example", 7));
  action = apply (NULL, documents[2].facts, "R. Example", 7);
  action = apply (g_steal_pointer (&action), "{\"step\":\"close\",\"action\":\"ffffffffffffffff\",\"evidence\":\"x\"}",
                  "R. Example", 8);
  assert_true (action->open);
  assert_int_equal (action->line, 7);
  sy_action_free (NULL);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (each_document_is_written_as_it_was_read),
    cmocka_unit_test (each_document_has_its_sentence),
    cmocka_unit_test (what_is_no_deed_has_neither_facts_nor_words),
    cmocka_unit_test (documents_are_strict),
    cmocka_unit_test (what_is_about_a_revision_names_it),
    cmocka_unit_test (nothing_is_written_like_an_empty_text),
    cmocka_unit_test (triggers_have_ids),
    cmocka_unit_test (an_action_is_opened_assigned_and_closed),
    cmocka_unit_test (what_is_closed_stays_as_it_was_closed),
    cmocka_unit_test (an_action_begins_with_being_opened),
  };

  return cmocka_run_group_tests_name ("deed", tests, NULL, NULL);
}
