/* SPDX-License-Identifier: MIT */
/* What is done about an item, asked of the worker and folded as the window holds it. */
#include "sy-test.h"

#include <math.h>

#include "sy-item-log.h"
#include "sy-stored-result.h"
#include "sy-test-facts.h"
#include "sy-worker-deeds.h"

#define LIMIT_MS 20000

typedef struct
{
  SyWorker *worker;
  SyDesk *desk;
  char *item;
  guint changed;
} Room;

static void
changed_cb (SyWorker *worker, Room *room)
{
  (void) worker;
  room->changed++;
}

static int
set_up (void **state)
{
  Room *room = g_new0 (Room, 1);
  SyRecordResult saved = { 0 };

  room->desk = sy_desk_new (NULL, 0, NULL);
  room->worker = sy_worker_new ("memory:", room->desk);
  assert_true (sy_test_save (room->worker, "ring", 12, &saved, NULL));
  room->item = g_strdup (saved.task_id);
  sy_record_result_clear (&saved);
  sy_test_settle ();
  g_signal_connect (room->worker, "changed", G_CALLBACK (changed_cb), room);
  *state = room;
  return 0;
}

static int
tear_down (void **state)
{
  Room *room = *state;

  sy_worker_stop (room->worker);
  sy_test_settle ();
  g_object_unref (room->worker);
  sy_desk_unref (room->desk);
  g_free (room->item);
  g_free (room);
  return 0;
}

static SyDeedAsk *
new_ask (Room *room, SyEventKind kind, const char *by)
{
  SyDeedAsk *ask = sy_deed_ask_new (kind, room->item, by, "foreman", "because");

  ask->revision = 1;
  return ask;
}

static gboolean
deed_done (Room *room, SyDeedAsk *ask, char **id, GError **error)
{
  SyTestAnswer answer = { NULL, NULL };
  gboolean done;

  sy_worker_deed_async (room->worker, ask, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  assert_ptr_equal (answer.thread, g_thread_self ());
  done = sy_worker_deed_finish (room->worker, answer.result, id, error);
  g_object_unref (answer.result);
  sy_test_settle ();
  return done;
}

static SyItemLog *
read_log (Room *room)
{
  SyTestAnswer answer = { NULL, NULL };
  GPtrArray *lines;

  sy_worker_events_async (room->worker, room->item, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  lines = sy_worker_events_finish (room->worker, answer.result, NULL);
  g_object_unref (answer.result);
  assert_non_null (lines);
  return sy_item_log_new (lines);
}

static void
revise (Room *room, double mass, gint64 base)
{
  SySaveRequest *request = sy_save_request_new ();
  SyTestAnswer answer = { NULL, NULL };

  request->task = g_strdup (room->item);
  request->by = g_strdup ("A. Tester");
  request->role = g_strdup ("safety lead");
  request->why = g_strdup ("again");
  request->base = base;
  request->facts = sy_test_facts (mass, "hall");
  sy_worker_save_async (room->worker, request, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  assert_true (sy_worker_save_finish (room->worker, answer.result, NULL, NULL));
  g_object_unref (answer.result);
}

static void
a_revision_is_signed_off (void **state)
{
  Room *room = *state;
  SyDeedAsk *ask = new_ask (room, SY_EVENT_SIGNATURE, "I. Tannick");
  g_autoptr (GError) error = NULL;
  g_autoptr (SyItemLog) log = NULL;

  ask->deed.competence = g_strdup ("trained in 2025");
  assert_true (deed_done (room, ask, NULL, &error));
  assert_int_equal (room->changed, 1);
  log = read_log (room);
  assert_int_equal (log->lines->len, 2);
  assert_int_equal (log->revisions->len, 1);
  assert_int_equal (log->task->signed_revision, 1);
  assert_string_equal (log->task->signed_by, "I. Tannick");
  assert_false (log->task->signed_own);
  /* People are told apart by their name, whatever its case and blanks. */
  assert_true (sy_item_log_is_author (log, 1, " a.  TESTER "));
  assert_false (sy_item_log_is_author (log, 1, "I. Tannick"));
  assert_false (sy_item_log_is_author (log, 2, "A. Tester"));
}

static void
what_cannot_be_done_is_said (void **state)
{
  Room *room = *state;
  SyDeedAsk *ask = new_ask (room, SY_EVENT_SIGNATURE, "I. Tannick");
  g_autoptr (GError) no_role = NULL, no_revision = NULL;

  g_clear_pointer (&ask->role, g_free);
  assert_false (deed_done (room, ask, NULL, &no_role));
  assert_int_equal (no_role->code, SY_LEDGER_ERROR_MISSING);
  ask = new_ask (room, SY_EVENT_SIGNATURE, "I. Tannick");
  ask->revision = 9;
  assert_false (deed_done (room, ask, NULL, &no_revision));
  assert_true (no_revision->code == SY_LEDGER_ERROR_DEED || no_revision->code == SY_LEDGER_ERROR_BASE);
  assert_int_equal (room->changed, 0);
}

static void
an_action_is_opened_assigned_and_closed (void **state)
{
  Room *room = *state;
  SyDeedAsk *open = new_ask (room, SY_EVENT_ACTION, "I. Tannick"), *assign, *close;
  g_autoptr (SyItemLog) opened = NULL, assigned = NULL, closed = NULL;
  g_autofree char *id = NULL;
  const SyAction *action;

  open->deed.step = SY_STEP_OPEN;
  open->deed.what = g_strdup ("raise the pallet");
  open->deed.about = g_strdup ("origin.V");
  open->deed.due = g_strdup ("2026-12-01");
  assert_true (deed_done (room, open, &id, NULL));
  assert_non_null (id);
  opened = read_log (room);
  assert_int_equal (opened->task->n_open, 1);
  assert_int_equal (opened->actions->len, 1);
  action = opened->actions->pdata[0];
  assert_true (action->open);
  assert_string_equal (action->id, id);
  assert_string_equal (action->about, "origin.V");

  assign = new_ask (room, SY_EVENT_ACTION, "I. Tannick");
  assign->deed.step = SY_STEP_ASSIGN;
  assign->deed.action = g_strdup (id);
  assign->deed.assigned = g_strdup ("B. Fitter");
  assert_true (deed_done (room, assign, NULL, NULL));
  assigned = read_log (room);
  action = assigned->actions->pdata[0];
  assert_string_equal (action->assigned, "B. Fitter");
  assert_string_equal (action->due, "2026-12-01");

  close = new_ask (room, SY_EVENT_ACTION, "B. Fitter");
  close->deed.step = SY_STEP_CLOSE;
  close->deed.action = g_strdup (id);
  close->deed.evidence = g_strdup ("seen on 1 December");
  assert_true (deed_done (room, close, NULL, NULL));
  closed = read_log (room);
  action = closed->actions->pdata[0];
  assert_false (action->open);
  assert_string_equal (action->evidence, "seen on 1 December");
  assert_int_equal (closed->task->n_open, 0);
}

static void
open_actions_come_first_by_their_day (void **state)
{
  static const char *const days[] = { "", "2026-12-20", "2026-12-01" };
  Room *room = *state;
  g_autoptr (SyItemLog) log = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      SyDeedAsk *ask = new_ask (room, SY_EVENT_ACTION, "I. Tannick");

      ask->deed.step = SY_STEP_OPEN;
      ask->deed.what = g_strdup_printf ("number %d", (int) i);
      ask->deed.due = g_strdup (days[i]);
      assert_true (deed_done (room, ask, NULL, NULL));
    }
  log = read_log (room);
  assert_string_equal (((SyAction *) log->actions->pdata[0])->due, "2026-12-01");
  assert_string_equal (((SyAction *) log->actions->pdata[1])->due, "2026-12-20");
  assert_string_equal (((SyAction *) log->actions->pdata[2])->due, "");
}

static void
review_retirement_and_telling_are_kept (void **state)
{
  Room *room = *state;
  SyDeedAsk *review = new_ask (room, SY_EVENT_REVIEW, "I. Tannick"), *retire = new_ask (room, SY_EVENT_RETIREMENT, "I. Tannick");
  SyDeedAsk *tell = new_ask (room, SY_EVENT_TOLD, "I. Tannick");
  g_autoptr (SyItemLog) log = NULL;

  review->deed.trigger = SY_TRIGGER_ACCIDENT;
  review->deed.due = g_strdup ("2026-12-01");
  assert_true (deed_done (room, review, NULL, NULL));
  retire->deed.retired = TRUE;
  assert_true (deed_done (room, retire, NULL, NULL));
  tell->deed.who = g_strdup ("shift 2");
  tell->deed.mass = g_strdup ("12 kg");
  tell->deed.heaviest_side = g_strdup ("even");
  assert_true (deed_done (room, tell, NULL, NULL));
  log = read_log (room);
  assert_string_equal (log->task->review_due, "2026-12-01");
  assert_string_equal (log->task->review_trigger, "accident");
  assert_true (log->task->retired);
  assert_int_equal (log->task->told_revision, 1);
  assert_int_equal (log->lines->len, 4);
}

static void
a_clash_is_said_of_the_revision_that_made_it (void **state)
{
  Room *room = *state;
  g_autoptr (SyItemLog) log = NULL;

  revise (room, 10, 1);
  revise (room, 9, 1);
  revise (room, 8, 3);
  log = read_log (room);
  assert_int_equal (sy_item_log_clash (log, 1), 0);
  assert_int_equal (sy_item_log_clash (log, 2), 0);
  assert_int_equal (sy_item_log_clash (log, 3), 2);
  assert_int_equal (sy_item_log_clash (log, 4), 0);
  assert_string_equal (log->task->role, "safety lead");
}

static void
the_same_facts_judged_again_give_the_same (void **state)
{
  Room *room = *state;
  g_autoptr (SyItemLog) log = read_log (room);
  g_autoptr (SyEvent) judged = sy_item_log_judge (log, 1, room->desk, NULL);
  g_autoptr (GPtrArray) differences = NULL;
  SyStoredResult result;
  g_autofree char *index = NULL;

  assert_non_null (judged);
  differences = sy_difference_of (sy_item_log_find (log, 1)->event, judged);
  assert_int_equal (differences->len, 0);
  sy_stored_result_read (judged, &result);
  assert_true (result.has_verdict);
  assert_true (isfinite (result.index));
  index = sy_stored_index_text (&result);
  assert_true (g_str_has_prefix (index, "LI "));
  sy_stored_result_clear (&result);
}

int
main (void)
{
#define DEED_TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    DEED_TEST (a_revision_is_signed_off),
    DEED_TEST (what_cannot_be_done_is_said),
    DEED_TEST (an_action_is_opened_assigned_and_closed),
    DEED_TEST (open_actions_come_first_by_their_day),
    DEED_TEST (review_retirement_and_telling_are_kept),
    DEED_TEST (a_clash_is_said_of_the_revision_that_made_it),
    DEED_TEST (the_same_facts_judged_again_give_the_same),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
