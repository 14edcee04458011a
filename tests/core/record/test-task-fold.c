/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-deed.h"
#include "sy-task.h"

/* What is done about an item, folded into its state. */

#define HASH "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"
#define FACTS "{\"method\":\"gear\",\"units\":\"metric\",\"condition\":\"worn\",\"notes\":\"bent \\u001ehook\"}"

static SyTask *
add (SyTask *task, SyEvent *event)
{
  task = sy_task_apply (task, event);
  sy_event_free (event);
  return task;
}

static SyEvent *
new_event (SyEventKind kind, const char *by, const char *day)
{
  SyEvent *event = sy_event_new (kind);
  g_autofree char *when = g_strconcat (day, "T08:00:00Z", NULL);

  sy_event_set (&event->item, "t1");
  sy_event_set (&event->item_kind, "gear");
  sy_event_set (&event->name, "Shackle 7");
  sy_event_set (&event->by, by);
  sy_event_set (&event->claimed, when);
  return event;
}

static SyTask *
revise (SyTask *task, gint64 revision, const char *by, const char *day)
{
  SyEvent *event = new_event (SY_EVENT_REVISION, by, day);

  event->revision = revision;
  event->base = revision - 1;
  event->edition = 3;
  sy_event_set (&event->role, "safety lead");
  sy_event_set (&event->why, "measured again");
  sy_event_set (&event->method, "gear");
  sy_event_set (&event->policy, "steelyard-default 2");
  sy_event_set (&event->program, "steelyard 0.1.0");
  sy_event_set (&event->facts, FACTS);
  sy_event_set (&event->findings, "{\"verdict\":\"improve\",\"cautions\":[{\"id\":\"screening\"}]}");
  return add (task, event);
}

static SyTask *
do_deed (SyTask *task, const SyDeed *deed, gint64 revision, const char *by, const char *day)
{
  SyEvent *event = new_event (deed->kind, by, day);
  g_autofree char *facts = sy_deed_write (deed);

  event->revision = revision;
  sy_event_set (&event->role, "foreman");
  sy_event_set (&event->why, "agreed on the floor");
  sy_event_set (&event->facts, facts);
  return add (task, event);
}

static SyTask *
sign (SyTask *task, gint64 revision, const char *by)
{
  const SyDeed deed = { .kind = SY_EVENT_SIGNATURE, .line_hash = (char *) HASH };

  return do_deed (task, &deed, revision, by, "2026-05-01");
}

static SyTask *
act (SyTask *task, SyDeedStep step, const char *id, const char *due)
{
  const SyDeed deed = { .kind = SY_EVENT_ACTION, .step = step, .action = (char *) id, .what = (char *) "grind the burr",
                        .assigned = (char *) "N. Vance", .due = (char *) due, .evidence = (char *) "seen" };

  return do_deed (task, &deed, 0, "K. Opener", "2026-05-01");
}

static SyTask *
review (SyTask *task, SyTrigger trigger, const char *due)
{
  const SyDeed deed = { .kind = SY_EVENT_REVIEW, .trigger = trigger, .due = (char *) due };

  return do_deed (task, &deed, 0, "K. Opener", "2026-05-01");
}

static void
a_task_knows_under_what_it_was_made (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");

  (void) state;
  task = revise (g_steal_pointer (&task), 2, "Ann Bell", "2026-04-01");
  assert_string_equal (task->begun, "2026-03-01T08:00:00Z");
  assert_string_equal (task->when, "2026-04-01T08:00:00Z");
  assert_string_equal (task->role, "safety lead");
  assert_int_equal (task->edition, 3);
  assert_string_equal (task->policy, "steelyard-default 2");
  assert_string_equal (task->program, "steelyard 0.1.0");
  assert_string_equal (task->detail.condition, "worn");
  assert_false (task->loosened);
}

static void
a_looser_policy_is_known_by_its_caution (void **state)
{
  SyEvent *event = new_event (SY_EVENT_REVISION, "Ann Bell", "2026-03-01");
  g_autoptr (SyTask) task = NULL;

  (void) state;
  event->revision = 1;
  sy_event_set (&event->findings, "{\"cautions\":[{\"id\":\"screening\"},{\"id\":\"policy-loosened\",\"text\":\"…\"}]}");
  task = add (NULL, event);
  assert_true (task->loosened);
  task = revise (g_steal_pointer (&task), 2, "Ann Bell", "2026-04-01");
  assert_false (task->loosened);
}

static void
a_signature_is_the_last_one (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");

  (void) state;
  assert_int_equal (task->signed_revision, 0);
  task = sign (g_steal_pointer (&task), 1, "R. Example");
  assert_int_equal (task->signed_revision, 1);
  assert_string_equal (task->signed_by, "R. Example");
  assert_string_equal (task->signed_role, "foreman");
  assert_string_equal (task->signed_when, "2026-05-01T08:00:00Z");
  assert_false (task->signed_own);
  /* a revision after it is not signed by that */
  task = revise (g_steal_pointer (&task), 2, "Ann Bell", "2026-06-01");
  assert_int_equal (task->signed_revision, 1);
}

static void
who_signs_an_own_revision_is_told_whatever_the_letters (void **state)
{
  static const char *const own[] = { "Ann Bell", "ann bell", "  ANN  BELL\t", "Ann\302\240Bell", "\342\200\213Ann Bell",
                                     "A\342\200\213nn Bell", "Ann Be\302\255ll", "Ann Bell\357\270\217", "Ann\342\201\240 Bell" };
  static const char *const others[] = { "Ann Bel", "AnnBell", "Bell Ann", "Ann Bell jr" };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (own) + G_N_ELEMENTS (others); i++)
    {
      const gboolean is_own = i < G_N_ELEMENTS (own);
      g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");

      task = sign (g_steal_pointer (&task), 1, is_own ? own[i] : others[i - G_N_ELEMENTS (own)]);
      assert_int_equal (task->signed_own, is_own);
    }
}

static void
the_author_of_the_signed_revision_counts_not_of_the_latest (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");

  (void) state;
  task = revise (g_steal_pointer (&task), 2, "R. Example", "2026-04-01");
  task = sign (g_steal_pointer (&task), 1, "R. Example");
  assert_false (task->signed_own);
  task = sign (g_steal_pointer (&task), 2, "R. Example");
  assert_true (task->signed_own);
  task = sign (g_steal_pointer (&task), 1, "ANN BELL");
  assert_true (task->signed_own);
  task = sign (g_steal_pointer (&task), 9, "M. Other"); /* no such revision: nothing was signed */
  assert_int_equal (task->signed_revision, 1);
}

static void
open_actions_are_counted_and_the_first_day_known (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");

  (void) state;
  task = act (g_steal_pointer (&task), SY_STEP_OPEN, "aaaaaaaaaaaaaaaa", "");
  assert_int_equal (task->n_open, 1);
  assert_string_equal (task->open_actions, "aaaaaaaaaaaaaaaa=");
  assert_string_equal (task->action_due, "");
  task = act (g_steal_pointer (&task), SY_STEP_OPEN, "bbbbbbbbbbbbbbbb", "2026-12-01");
  task = act (g_steal_pointer (&task), SY_STEP_OPEN, "cccccccccccccccc", "2026-09-30");
  assert_string_equal (task->open_actions, "aaaaaaaaaaaaaaaa= bbbbbbbbbbbbbbbb=2026-12-01 cccccccccccccccc=2026-09-30");
  assert_int_equal (task->n_open, 3);
  assert_string_equal (task->action_due, "2026-09-30");
  task = act (g_steal_pointer (&task), SY_STEP_ASSIGN, "aaaaaaaaaaaaaaaa", "2026-08-01");
  assert_string_equal (task->action_due, "2026-08-01");
  task = act (g_steal_pointer (&task), SY_STEP_CLOSE, "aaaaaaaaaaaaaaaa", "");
  assert_string_equal (task->open_actions, "bbbbbbbbbbbbbbbb=2026-12-01 cccccccccccccccc=2026-09-30");
  assert_int_equal (task->n_open, 2);
  /* what is not open cannot be changed */
  task = act (g_steal_pointer (&task), SY_STEP_ASSIGN, "aaaaaaaaaaaaaaaa", "2026-01-01");
  task = act (g_steal_pointer (&task), SY_STEP_CLOSE, "dddddddddddddddd", "");
  assert_int_equal (task->n_open, 2);
  task = act (g_steal_pointer (&task), SY_STEP_CLOSE, "cccccccccccccccc", "");
  task = act (g_steal_pointer (&task), SY_STEP_CLOSE, "bbbbbbbbbbbbbbbb", "");
  assert_string_equal (task->open_actions, "");
  assert_int_equal (task->n_open, 0);
  assert_string_equal (task->action_due, "");
}

static void
a_review_for_a_day_is_settled_by_a_revision_of_that_day (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");

  (void) state;
  task = review (g_steal_pointer (&task), SY_TRIGGER_DATE, "2027-03-01");
  assert_string_equal (task->review_due, "2027-03-01");
  assert_string_equal (task->review_trigger, "date");
  task = revise (g_steal_pointer (&task), 2, "Ann Bell", "2026-12-24");
  assert_string_equal (task->review_due, "2027-03-01");
  task = revise (g_steal_pointer (&task), 3, "Ann Bell", "2027-03-01");
  assert_string_equal (task->review_due, "");
  assert_string_equal (task->review_trigger, "");
}

static void
a_review_because_of_something_is_settled_by_the_next_revision_made_here (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");
  SyEvent *foreign = new_event (SY_EVENT_REVISION, "Far Away", "2026-04-01");

  (void) state;
  task = review (g_steal_pointer (&task), SY_TRIGGER_DATE, "2027-03-01");
  task = review (g_steal_pointer (&task), SY_TRIGGER_ACCIDENT, "2026-05-08");
  assert_string_equal (task->review_trigger, "accident");
  foreign->revision = 2;
  sy_event_set (&foreign->origin, HASH); /* made in another record, before anybody there knew of it */
  task = add (g_steal_pointer (&task), foreign);
  assert_string_equal (task->review_due, "2026-05-08");
  task = revise (g_steal_pointer (&task), 3, "Ann Bell", "2026-05-02");
  assert_string_equal (task->review_due, "");
}

static void
an_item_is_retired_and_taken_back (void **state)
{
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");
  SyDeed deed = { .kind = SY_EVENT_RETIREMENT, .retired = TRUE };

  (void) state;
  task = do_deed (g_steal_pointer (&task), &deed, 0, "K. Opener", "2026-05-01");
  assert_true (task->retired);
  task = revise (g_steal_pointer (&task), 2, "Ann Bell", "2026-06-01");
  assert_true (task->retired);
  deed.retired = FALSE;
  task = do_deed (g_steal_pointer (&task), &deed, 0, "K. Opener", "2026-07-01");
  assert_false (task->retired);
}

static void
the_latest_revision_that_was_told_is_known (void **state)
{
  const SyDeed deed = { .kind = SY_EVENT_TOLD, .who = (char *) "Day shift", .mass = (char *) "18 kg",
                        .heaviest_side = (char *) "left" };
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");

  (void) state;
  task = revise (g_steal_pointer (&task), 2, "Ann Bell", "2026-04-01");
  task = do_deed (g_steal_pointer (&task), &deed, 2, "K. Opener", "2026-05-01");
  task = do_deed (g_steal_pointer (&task), &deed, 1, "K. Opener", "2026-05-01");
  task = do_deed (g_steal_pointer (&task), &deed, 7, "K. Opener", "2026-05-01");
  assert_int_equal (task->told_revision, 2);
}

static void
words_of_deeds_can_be_searched_and_outlive_a_revision (void **state)
{
  static const char *const parts[] = { "Ann Bell", "measured again", "R. Example", "agreed on the floor", "grind the burr",
                                       "N. Vance", "bent  hook" };
  g_autoptr (SyTask) task = revise (NULL, 1, "Ann Bell", "2026-03-01");
  gsize length;

  (void) state;
  task = sign (g_steal_pointer (&task), 1, "R. Example");
  task = act (g_steal_pointer (&task), SY_STEP_OPEN, "aaaaaaaaaaaaaaaa", "");
  length = strlen (task->search_text);
  task = act (g_steal_pointer (&task), SY_STEP_CLOSE, "aaaaaaaaaaaaaaaa", ""); /* nothing that was not said */
  assert_int_equal (strlen (task->search_text), length);
  task = revise (g_steal_pointer (&task), 2, "Ann Bell", "2026-06-01");
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (strstr (task->search_text, parts[i]) == NULL)
      fail_msg ("“%s” is not in “%s”", parts[i], task->search_text);
  assert_int_equal (strlen (task->search_text), length);
}

static void
a_deed_that_cannot_be_read_or_begins_nothing_changes_nothing (void **state)
{
  g_autoptr (SyTask) task = NULL;
  SyEvent *event = new_event (SY_EVENT_RETIREMENT, "K. Opener", "2026-05-01");

  (void) state;
  task = sign (NULL, 1, "R. Example");
  assert_null (task);
  task = revise (NULL, 1, "Ann Bell", "2026-03-01");
  sy_event_set (&event->facts, "{\"retired\":true,\"for\":\"ever\"}");
  task = add (g_steal_pointer (&task), event);
  assert_false (task->retired);
  assert_null (strstr (task->search_text, "K. Opener"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_task_knows_under_what_it_was_made),
    cmocka_unit_test (a_looser_policy_is_known_by_its_caution),
    cmocka_unit_test (a_signature_is_the_last_one),
    cmocka_unit_test (who_signs_an_own_revision_is_told_whatever_the_letters),
    cmocka_unit_test (the_author_of_the_signed_revision_counts_not_of_the_latest),
    cmocka_unit_test (open_actions_are_counted_and_the_first_day_known),
    cmocka_unit_test (a_review_for_a_day_is_settled_by_a_revision_of_that_day),
    cmocka_unit_test (a_review_because_of_something_is_settled_by_the_next_revision_made_here),
    cmocka_unit_test (an_item_is_retired_and_taken_back),
    cmocka_unit_test (the_latest_revision_that_was_told_is_known),
    cmocka_unit_test (words_of_deeds_can_be_searched_and_outlive_a_revision),
    cmocka_unit_test (a_deed_that_cannot_be_read_or_begins_nothing_changes_nothing),
  };

  return cmocka_run_group_tests_name ("task-fold", tests, NULL, NULL);
}
