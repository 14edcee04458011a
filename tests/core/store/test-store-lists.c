/* SPDX-License-Identifier: MIT */
#include "store-deeds.h"

/* What is done about items, the list of lines, actions and an earlier day: the contract, over every backend. */

static SyStore *
story_of (void **state)
{
  SyStore *store = ((HelpFixture *) *state)->store;

  help_story (store);
  return store;
}

static void
an_item_shows_what_was_done_about_it (void **state)
{
  SyStore *store = story_of (state);
  g_autoptr (SyTask) a = sy_store_find (store, "a", NULL, NULL), b = sy_store_find (store, "b", NULL, NULL);

  assert_int_equal (a->revision, 3);
  assert_string_equal (a->name, "Coil to slitter");
  assert_int_equal (a->signed_revision, 2);
  assert_string_equal (a->signed_by, "R. Example");
  assert_string_equal (a->signed_role, "foreman");
  assert_false (a->signed_own); /* revision 2 was made by another */
  assert_int_equal (a->n_open, 1);
  assert_string_equal (a->action_due, "2026-06-01");
  assert_string_equal (a->review_due, "2026-12-01");
  assert_string_equal (a->review_trigger, "date");
  assert_string_equal (a->begun, "2026-03-01T09:00:00Z");
  assert_string_equal (a->role, "safety lead");
  assert_int_equal (a->seat, 1);
  assert_false (a->retired);
  assert_int_equal (b->n_open, 0);
  assert_true (b->retired);
  assert_int_equal (b->seat, 2);
}

static char *
journal_of (SyStore *store, SyJournalFilter filter, guint64 before, guint limit)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rows = sy_store_journal (store, &filter, before, limit, &error);
  GString *numbers = g_string_new (NULL);

  assert_null (error);
  for (guint i = 0; i < rows->len; i++)
    g_string_append_printf (numbers, "%s%d", i > 0 ? " " : "", (int) ((SyJournalRow *) rows->pdata[i])->number);
  return g_string_free (numbers, FALSE);
}

static void
assert_journal (SyStore *store, SyJournalFilter filter, guint64 before, guint limit, const char *expected)
{
  g_autofree char *numbers = journal_of (store, filter, before, limit);

  assert_string_equal (numbers, expected);
  if (before == 0 && limit == 0)
    {
      g_autoptr (GArray) alone = sy_store_journal_numbers (store, &filter, NULL);
      g_autoptr (GString) text = g_string_new (NULL);

      for (guint i = 0; i < alone->len; i++)
        g_string_append_printf (text, "%s%d", i > 0 ? " " : "", (int) g_array_index (alone, guint64, i));
      assert_string_equal (text->str, expected);
    }
}

static void
the_journal_is_listed_newest_first (void **state)
{
  SyStore *store = story_of (state);
  guint64 count;

  assert_journal (store, (SyJournalFilter) { 0 }, 0, 0, "11 10 9 8 7 6 5 4 3 2 1");
  assert_journal (store, (SyJournalFilter) { 0 }, 0, 3, "11 10 9");
  assert_journal (store, (SyJournalFilter) { 0 }, 9, 3, "8 7 6");
  assert_journal (store, (SyJournalFilter) { 0 }, 2, 3, "1");
  assert_journal (store, (SyJournalFilter) { 0 }, 1, 3, "");
  assert_journal (store, (SyJournalFilter) { .by = "P. Other" }, 0, 0, "4 3");
  assert_journal (store, (SyJournalFilter) { .kind = SY_EVENT_REVISION }, 0, 0, "10 4 3 2");
  assert_journal (store, (SyJournalFilter) { .kind = SY_EVENT_ACTION }, 0, 0, "9 7 6");
  assert_journal (store, (SyJournalFilter) { .item = "b" }, 0, 0, "11 9 7 3");
  assert_journal (store, (SyJournalFilter) { .from = "2026-03-09" }, 0, 0, "11 10 9 8");
  assert_journal (store, (SyJournalFilter) { .from = "2026-03-05", .to = "2026-03-07" }, 0, 0, "6 5 4");
  assert_journal (store, (SyJournalFilter) { .by = "R. Example", .kind = SY_EVENT_ACTION, .item = "a" }, 0, 0, "6");
  assert_journal (store, (SyJournalFilter) { .by = "' OR 1 --" }, 0, 0, "");
  assert_true (sy_store_journal_count (store, &(SyJournalFilter) { 0 }, &count, NULL));
  assert_int_equal (count, 11);
  assert_true (sy_store_journal_count (store, &(SyJournalFilter) { .item = "b", .kind = SY_EVENT_ACTION }, &count, NULL));
  assert_int_equal (count, 2);
}

static void
a_listed_line_says_what_it_is (void **state)
{
  SyStore *store = story_of (state);
  g_autoptr (GPtrArray) rows = sy_store_journal (store, &(SyJournalFilter) { 0 }, 0, 0, NULL);
  const SyJournalRow *first = rows->pdata[9], *sign = rows->pdata[6], *policy = rows->pdata[10];

  assert_int_equal (first->number, 2);
  assert_string_equal (first->name, "Coil to slitter"); /* as it is called now */
  assert_string_equal (first->verdict, "mechanical");
  assert_string_equal (first->words, "");
  assert_string_equal (first->why, "measured");
  assert_int_equal (first->revision, 1);
  assert_int_equal (sign->kind, SY_EVENT_SIGNATURE);
  assert_string_equal (sign->verdict, "");
  assert_non_null (strstr (sign->words, "foreman"));
  assert_string_equal (policy->name, "house rules");
  assert_string_equal (policy->item, "");
}

static void
everybody_who_wrote_is_named_once (void **state)
{
  g_auto (GStrv) people = sy_store_people (story_of (state), NULL);
  g_autofree char *names = g_strjoinv ("|", people);

  assert_string_equal (names, "M. Fitter|P. Other|R. Example");
}

static void
actions_come_open_first_then_by_day (void **state)
{
  SyStore *store = story_of (state);
  g_autoptr (GPtrArray) all = NULL, open = NULL, of_b = NULL;
  g_autoptr (SyAction) action = NULL, none = NULL;
  g_autoptr (GError) error = NULL;

  help_append (store, help_open_action ("a", "3333333333333333", "Ask the maker", "", "2026-04-03"),
               help_open_action ("a", "4444444444444444", "Fit a stop", "2026-05-01", "2026-04-03"), NULL, NULL);
  all = sy_store_actions (store, &(SyActionFilter) { 0 }, NULL);
  assert_int_equal (all->len, 4);
  assert_string_equal (((SyAction *) all->pdata[0])->what, "Fit a stop");
  assert_string_equal (((SyAction *) all->pdata[1])->what, "Raise the table");
  assert_string_equal (((SyAction *) all->pdata[2])->what, "Ask the maker");
  assert_string_equal (((SyAction *) all->pdata[3])->what, "Mark the bin");
  assert_string_equal (((SyAction *) all->pdata[3])->evidence, "seen on the floor");
  assert_string_equal (((SyAction *) all->pdata[3])->closed_by, "M. Fitter");
  assert_string_equal (((SyAction *) all->pdata[0])->item_name, "Coil to slitter");
  open = sy_store_actions (store, &(SyActionFilter) { .open = TRUE, .assigned = "M. Fitter" }, NULL);
  assert_int_equal (open->len, 3);
  of_b = sy_store_actions (store, &(SyActionFilter) { .item = "b" }, NULL);
  assert_int_equal (of_b->len, 1);
  action = sy_store_find_action (store, ACTION_1, NULL);
  assert_int_equal (action->line, 6);
  assert_true (action->open);
  none = sy_store_find_action (store, "9999999999999999", &error);
  assert_null (none);
  help_assert_error (error, SY_STORE_ERROR_NOT_FOUND, "9999999999999999");
}

static char *
as_at (SyStore *store, const char *day)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) tasks = sy_store_as_at (store, day, NULL, NULL, &error);
  GString *out = g_string_new (NULL);

  assert_null (error);
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];

      g_string_append_printf (out, "%s%s %s %d %s s%d o%d %s%s", i > 0 ? " | " : "", task->id, task->name,
                              (int) task->revision, sy_verdict_id (task->verdict), (int) task->signed_revision,
                              (int) task->n_open, task->review_due, task->retired ? " retired" : "");
    }
  return g_string_free (out, FALSE);
}

static void
an_earlier_day_is_shown_as_it_was (void **state)
{
  static const struct
  {
    const char *day, *expected;
    guint64 head;
  } days[] = {
    { "2026-02-28", "", 0 },
    { "2026-03-01", "a Coil 1 mechanical s0 o0 ", 2 },
    { "2026-03-02", "a Coil 1 mechanical s0 o0  | b Blank 1 by-hand s0 o0 ", 3 },
    { "2026-03-05", "a Coil 2 improve s0 o0  | b Blank 1 by-hand s0 o0 ", 4 },
    { "2026-03-06", "a Coil 2 improve s2 o0  | b Blank 1 by-hand s0 o0 ", 5 },
    { "2026-03-08", "a Coil 2 improve s2 o1  | b Blank 1 by-hand s0 o1 ", 7 },
    { "2026-03-31", "a Coil 2 improve s2 o1 2026-12-01 | b Blank 1 by-hand s0 o0 ", 9 },
    { "2026-04-01", "a Coil to slitter 3 by-hand s2 o1 2026-12-01 | b Blank 1 by-hand s0 o0 ", 10 },
    { "2099-01-01", "a Coil to slitter 3 by-hand s2 o1 2026-12-01 | b Blank 1 by-hand s0 o0  retired", 11 },
  };
  SyStore *store = story_of (state);

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_autofree char *was = as_at (store, days[i].day);
      SyHead head;

      assert_string_equal (was, days[i].expected);
      assert_true (sy_store_head_as_at (store, days[i].day, &head, NULL));
      assert_int_equal (head.number, days[i].head);
    }
}

static SyEvent *
help_import (gint64 lines, const char *day)
{
  g_autofree char *hash = g_strnfill (64, 'b');
  SyEvent *event = help_deed ("", (SyDeed) { .kind = SY_EVENT_IMPORT, .head = hash, .lines = lines }, "R. Example", day);

  sy_event_set (&event->item_kind, "import");
  return event;
}

/* Whenever it was written, elsewhere: nobody here knew of it. */
static void
what_was_taken_over_counts_from_that_day (void **state)
{
  SyStore *store = story_of (state);
  g_autofree char *before = NULL, *that_day = NULL;

  help_append (store, help_import (2, "2026-05-10"),
               help_revision_on ("c", 1, "Cart", "by-hand", "P. Other", "2026-02-01"),
               help_revision_on ("b", 2, "Blank", "improve", "P. Other", "2026-03-20"),
               help_revision_on ("a", 4, "Coil", "improve", "P. Other", "2026-05-11"));
  before = as_at (store, "2026-05-09");
  that_day = as_at (store, "2026-05-10");
  assert_string_equal (before, "a Coil to slitter 3 by-hand s2 o1 2026-12-01 | b Blank 1 by-hand s0 o0  retired");
  assert_string_equal (that_day, "a Coil to slitter 3 by-hand s2 o1 2026-12-01 | b Blank 2 improve s0 o0  retired"
                                 " | c Cart 1 by-hand s0 o0 ");
}

static guint64
end_as_at (SyStore *store, const char *day)
{
  SyHead head = { 0 };

  assert_true (sy_store_head_as_at (store, day, &head, NULL));
  return head.number;
}

/* Each line counts by its own time, what was taken over by that of the import alone; the end is the last that counts. */
static void
clocks_that_run_backwards_hide_nothing (void **state)
{
  SyStore *store = story_of (state);
  g_autofree char *before = NULL, *between = NULL, *then = NULL;

  help_append (store, help_revision_on ("a", 4, "Coil", "improve", "P. Other", "2026-08-30"),   /* 12: ahead */
               help_revision_on ("b", 2, "Blank", "improve", "P. Other", "2026-05-02"),          /* 13 */
               help_import (1, "2026-05-03"),                                                    /* 14 */
               help_revision_on ("c", 1, "Cart", "by-hand", "P. Other", "2026-09-30"));          /* 15: ahead, there */
  help_append (store, help_revision_on ("a", 5, "Coil", "by-hand", "P. Other", "2026-05-05"), NULL, NULL,
               NULL); /* 16 */
  before = as_at (store, "2026-05-01");
  between = as_at (store, "2026-05-02");
  then = as_at (store, "2026-05-03");
  assert_string_equal (before, "a Coil to slitter 3 by-hand s2 o1 2026-12-01 | b Blank 1 by-hand s0 o0  retired");
  assert_string_equal (between, "a Coil to slitter 3 by-hand s2 o1 2026-12-01 | b Blank 2 improve s0 o0  retired");
  assert_string_equal (then, "a Coil to slitter 3 by-hand s2 o1 2026-12-01 | b Blank 2 improve s0 o0  retired"
                             " | c Cart 1 by-hand s0 o0 ");
  assert_int_equal (end_as_at (store, "2026-05-01"), 11);
  assert_int_equal (end_as_at (store, "2026-05-02"), 13);
  assert_int_equal (end_as_at (store, "2026-05-03"), 15);
  assert_int_equal (end_as_at (store, "2026-05-05"), 16);
}

/* Today as at a day long hence is today as it is. */
static void
the_last_day_is_the_current_state (void **state)
{
  SyStore *store = story_of (state);
  g_autoptr (GPtrArray) then = sy_store_as_at (store, "2999-12-31", NULL, NULL, NULL);

  for (guint i = 0; i < then->len; i++)
    {
      const SyTask *past = then->pdata[i];
      g_autoptr (SyTask) now = sy_store_find (store, past->id, NULL, NULL);

      assert_string_equal (past->name, now->name);
      assert_string_equal (past->lineage, now->lineage);
      assert_string_equal (past->open_actions, now->open_actions);
      assert_string_equal (past->begun, now->begun);
      assert_string_equal (past->policy, now->policy);
      assert_string_equal (past->review_due, now->review_due);
      assert_int_equal (past->clash, now->clash);
      assert_int_equal (past->signed_own, now->signed_own);
      assert_int_equal (past->seat, now->seat);
      assert_int_equal (past->verdict, now->verdict);
      assert_same_bits (past->rank, now->rank);
    }
  assert_int_equal (then->len, 2);
}

static void
a_search_names_the_seats (void **state)
{
  SyStore *store = story_of (state);
  g_autoptr (GArray) coils = sy_store_search (store, "COI", NULL), both = sy_store_search (store, "bay 12", NULL);
  g_autoptr (GArray) none = sy_store_search (store, "zzz", NULL), action = sy_store_search (store, "raise table", NULL);

  assert_int_equal (coils->len, 1);
  assert_int_equal (g_array_index (coils, gint64, 0), 1);
  assert_int_equal (both->len, 2);
  assert_int_equal (g_array_index (both, gint64, 1), 2);
  assert_int_equal (none->len, 0);
  assert_null (sy_store_search (store, " - ", NULL));
  (void) action;
}

static void
what_is_done_to_an_item_touches_it (void **state)
{
  SyStore *store = story_of (state);
  g_autoptr (GPtrArray) touched = sy_store_changed_since (store, 10, NULL);

  assert_int_equal (touched->len, 1);
  assert_string_equal (((SyTask *) touched->pdata[0])->id, "b");
}

static gboolean
count_cb (const SyLine *line, gpointer user_data)
{
  (void) line;
  ++*(int *) user_data;
  return TRUE;
}

static void
every_line_of_an_item_can_be_read (void **state)
{
  SyStore *store = story_of (state);
  int all = 0, signatures = 0;

  assert_true (sy_store_scan_item (store, "a", 0, count_cb, &all, NULL));
  assert_true (sy_store_scan_item (store, "a", SY_EVENT_SIGNATURE, count_cb, &signatures, NULL));
  assert_int_equal (all, 6);
  assert_int_equal (signatures, 1);
}

static void
an_intact_record_verifies_and_is_rebuilt_the_same (void **state)
{
  SyStore *store = story_of (state);
  SyHead head = help_head (store);
  SyVerification verification;
  SyRebuild rebuild;
  g_autofree char *before = NULL, *after = NULL;

  assert_true (sy_store_verify (store, NULL, NULL, NULL, &verification, NULL));
  assert_int_equal (verification.fault, SY_FAULT_NONE);
  assert_int_equal (verification.lines, 11);
  assert_memory_equal (&verification.head, &head, sizeof head);
  assert_true (sy_store_verify (store, &head.hash, NULL, NULL, &verification, NULL));
  assert_int_equal (verification.known_at, 11);
  before = as_at (store, "2999-01-01");
  assert_true (sy_store_rebuild (store, NULL, NULL, &rebuild, NULL));
  assert_int_equal (rebuild.n_different, 0);
  assert_int_equal (rebuild.differences->len, 0);
  assert_int_equal (rebuild.items, 2);
  assert_int_equal (rebuild.actions, 2);
  assert_int_equal (rebuild.lines, 11);
  sy_rebuild_clear (&rebuild);
  after = as_at (store, "2999-01-01");
  assert_string_equal (before, after);
  help_assert_search (store, "coil", "a");
  help_append (store, help_revision ("a", 4, "Coil", "by-hand", "0.5", "1"), NULL, NULL, NULL);
}

static void
a_head_that_is_nowhere_is_a_fault (void **state)
{
  SyStore *store = story_of (state);
  SyHash other = { { 7 } };
  SyVerification verification;

  assert_true (sy_store_verify (store, &other, NULL, NULL, &verification, NULL));
  assert_int_equal (verification.fault, SY_FAULT_HEAD);
  assert_int_equal (verification.line, 11);
  assert_string_equal (verification.expected, "0700000000000000000000000000000000000000000000000000000000000000");
  sy_verification_clear (&verification);
}

static gboolean
stop_cb (guint64 done, guint64 of, gpointer user_data)
{
  (void) done, (void) of, (void) user_data;
  return FALSE;
}

static void
what_is_stopped_changes_nothing (void **state)
{
  SyStore *store = story_of (state);
  g_autoptr (GError) verify = NULL, rebuilt = NULL;
  SyVerification verification;
  SyRebuild rebuild;

  assert_false (sy_store_verify (store, NULL, stop_cb, NULL, &verification, &verify));
  help_assert_error (verify, SY_STORE_ERROR_STOPPED, "stopped");
  for (int i = 0; i < 1030; i++)
    help_append (store, help_review ("a", "2026-12-01", "2026-05-01"), NULL, NULL, NULL);
  assert_false (sy_store_rebuild (store, stop_cb, NULL, &rebuild, &rebuilt));
  help_assert_error (rebuilt, SY_STORE_ERROR_STOPPED, "stopped");
  help_assert_search (store, "coil", "a");
  help_append (store, help_revision ("a", 4, "Coil", "by-hand", "0.5", "1"), NULL, NULL, NULL);
}

#define OVER_BOTH(test)                                                                                    \
  { "memory: " #test, test, help_set_up_memory, help_tear_down, NULL }, { "sqlite: " #test, test, help_set_up_sqlite, help_tear_down, NULL }

int
main (void)
{
  const struct CMUnitTest tests[] = {
    OVER_BOTH (an_item_shows_what_was_done_about_it),
    OVER_BOTH (the_journal_is_listed_newest_first),
    OVER_BOTH (a_listed_line_says_what_it_is),
    OVER_BOTH (everybody_who_wrote_is_named_once),
    OVER_BOTH (actions_come_open_first_then_by_day),
    OVER_BOTH (an_earlier_day_is_shown_as_it_was),
    OVER_BOTH (what_was_taken_over_counts_from_that_day),
    OVER_BOTH (clocks_that_run_backwards_hide_nothing),
    OVER_BOTH (the_last_day_is_the_current_state),
    OVER_BOTH (a_search_names_the_seats),
    OVER_BOTH (what_is_done_to_an_item_touches_it),
    OVER_BOTH (every_line_of_an_item_can_be_read),
    OVER_BOTH (an_intact_record_verifies_and_is_rebuilt_the_same),
    OVER_BOTH (a_head_that_is_nowhere_is_a_fault),
    OVER_BOTH (what_is_stopped_changes_nothing),
  };

  return cmocka_run_group_tests_name ("store lists", tests, NULL, NULL);
}
