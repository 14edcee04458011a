/* SPDX-License-Identifier: MIT */
#include "store-help.h"

/* The contract of sy-store.h, run over every backend; then both side by side on the same history. */

static SyStore *
store_of (void **state)
{
  return ((HelpFixture *) *state)->store;
}

/* Numbers of the lines a scan shows, and the last of them. */
typedef struct
{
  SyStore *store;
  GString *numbers;
  int stop_after;
  SyHash hash; /* of the last line shown */
  char *facts;
} Seen;

static gboolean
see_cb (const SyLine *line, gpointer user_data)
{
  Seen *seen = user_data;

  g_string_append_printf (seen->numbers, "%s%" G_GUINT64_FORMAT, seen->numbers->len > 0 ? " " : "",
                          line->number);
  seen->hash = line->hash;
  g_free (seen->facts);
  seen->facts = g_strdup (line->event->facts);
  return --seen->stop_after != 0;
}

static void
assert_scan (SyStore *store, guint64 from, int stop_after, const char *expected)
{
  g_autoptr (GError) error = NULL;
  Seen seen = { .numbers = g_string_new (NULL), .stop_after = stop_after };

  assert_true (sy_store_scan (store, from, see_cb, &seen, &error));
  assert_null (error);
  assert_string_equal (seen.numbers->str, expected);
  g_string_free (seen.numbers, TRUE);
  g_free (seen.facts);
}

static void
assert_scan_kind (SyStore *store, const char *item, SyEventKind kind, int stop_after, const char *expected)
{
  g_autoptr (GError) error = NULL;
  Seen seen = { .numbers = g_string_new (NULL), .stop_after = stop_after };

  assert_true (sy_store_scan_item (store, item, kind, see_cb, &seen, &error));
  assert_null (error);
  assert_string_equal (seen.numbers->str, expected);
  g_string_free (seen.numbers, TRUE);
  g_free (seen.facts);
}

static void
assert_scan_item (SyStore *store, const char *item, int stop_after, const char *expected)
{
  assert_scan_kind (store, item, SY_EVENT_REVISION, stop_after, expected);
}

static void
a_new_store_is_empty (void **state)
{
  SyStore *store = store_of (state);
  const SyHash zeros = { { 0 } };
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) changed = NULL;
  SyHead head = help_head (store);

  assert_int_equal (head.number, 0);
  assert_memory_equal (&head.hash, &zeros, sizeof zeros);
  help_assert_list (store, NULL, 0, "");
  help_assert_search (store, "anything", "");
  assert_scan (store, 1, 0, "");
  changed = sy_store_changed_since (store, 0, &error);
  assert_int_equal (changed->len, 0);
  assert_null (sy_store_policy (store, &error));
  assert_null (error);
  assert_null (sy_store_find (store, "a", NULL, &error));
  help_assert_error (error, SY_STORE_ERROR_NOT_FOUND, "a");
}

static gboolean
check_chain_cb (const SyLine *line, gpointer user_data)
{
  SyHead *end = user_data;
  g_autoptr (GBytes) bytes = sy_event_encode (line->event);

  end->number++;
  sy_chain_next (&end->hash, end->number, bytes, &end->hash);
  assert_int_equal (line->number, end->number);
  assert_memory_equal (&line->hash, &end->hash, sizeof end->hash);
  return TRUE;
}

static void
lines_are_chained_and_come_back_as_written (void **state)
{
  SyStore *store = store_of (state);
  g_autoptr (SyEvent) policy = help_policy ("{\"goal\":1}");
  g_autoptr (GBytes) bytes = sy_event_encode (policy);
  Seen seen = { .numbers = g_string_new (NULL), .stop_after = 1 };
  SyHead end = { 0 }, head;
  SyHash first = { { 0 } };

  sy_chain_next (&first, 1, bytes, &first);
  help_append (store, g_steal_pointer (&policy), NULL, NULL, NULL);
  head = help_append (store, help_revision ("a", 1, "A", "by-hand", "0.5", "9"),
                      help_revision ("a", 2, "A", "improve", "1.5", "9"), NULL, NULL);
  assert_true (sy_store_scan (store, 1, see_cb, &seen, NULL));
  assert_memory_equal (&seen.hash, &first, sizeof first);
  assert_string_equal (seen.facts, "{\"goal\":1}");
  assert_true (sy_store_scan (store, 1, check_chain_cb, &end, NULL));
  assert_int_equal (end.number, 3);
  assert_int_equal (head.number, 3);
  assert_memory_equal (&end.hash, &head.hash, sizeof end.hash);
  head = help_head (store);
  assert_memory_equal (&end.hash, &head.hash, sizeof end.hash);
  g_string_free (seen.numbers, TRUE);
  g_free (seen.facts);
}

static void
a_stale_head_changes_nothing (void **state)
{
  SyStore *store = store_of (state);
  g_autoptr (GError) error = NULL;
  const SyHead empty = { 0 };
  SyHead head = help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"), NULL, NULL, NULL);
  SyHead wrong = head;

  assert_false (help_try (store, &empty, help_revision ("b", 1, "B", "by-hand", "1", "1"), &error));
  help_assert_error (error, SY_STORE_ERROR_STALE, "");
  g_clear_error (&error);
  wrong.hash.bytes[31] ^= 1;
  assert_false (help_try (store, &wrong, help_revision ("b", 1, "B", "by-hand", "1", "1"), &error));
  help_assert_error (error, SY_STORE_ERROR_STALE, "");
  g_clear_error (&error);
  wrong = head;
  wrong.number++;
  assert_false (help_try (store, &wrong, help_revision ("b", 1, "B", "by-hand", "1", "1"), &error));
  help_assert_error (error, SY_STORE_ERROR_STALE, "");
  help_assert_list (store, NULL, 0, "a");
  assert_scan (store, 1, 0, "1");

  assert_true (help_try (store, &head, help_revision ("b", 1, "B", "by-hand", "1", "1"), NULL));
  help_assert_list (store, NULL, 0, "a b");
}

static void
events_go_in_all_or_none (void **state)
{
  static const char bad[] = { 'x', (char) 0xC3, '\0' };
  SyStore *store = store_of (state);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  SyHead head = help_head (store), untouched = { .number = 77 };
  SyEvent *unfit = help_revision ("b", 1, "B", "by-hand", "1", "1");

  g_ptr_array_add (events, help_revision ("a", 1, "A", "by-hand", "1", "1"));
  g_ptr_array_add (events, unfit);
  sy_event_set (&unfit->why, bad);
  assert_false (sy_store_append (store, &head, events, &untouched, &error));
  help_assert_error (error, SY_STORE_ERROR_WRITE, "why");
  g_clear_error (&error);
  sy_event_set (&unfit->why, "");
  sy_event_set (&unfit->item, "");
  assert_false (sy_store_append (store, &head, events, &untouched, &error));
  help_assert_error (error, SY_STORE_ERROR_WRITE, "must name");
  assert_int_equal (untouched.number, 77);
  assert_int_equal (help_head (store).number, 0);
  help_assert_list (store, NULL, 0, "");
}

static void
no_events_is_a_check_of_the_head (void **state)
{
  SyStore *store = store_of (state);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  SyHead head = help_append (store, help_policy ("{}"), NULL, NULL, NULL), end, empty = { 0 };

  assert_true (sy_store_append (store, &head, none, &end, NULL));
  assert_int_equal (end.number, 1);
  assert_false (sy_store_append (store, &empty, none, &end, NULL));
}

static void
a_scan_begins_and_ends_where_told (void **state)
{
  SyStore *store = store_of (state);

  help_append (store, help_policy ("{}"), help_revision ("a", 1, "A", "by-hand", "1", "1"),
               help_revision ("b", 1, "B", "by-hand", "1", "1"),
               help_revision ("a", 2, "A", "by-hand", "1", "1"));
  assert_scan (store, 0, 0, "1 2 3 4");
  assert_scan (store, 1, 0, "1 2 3 4");
  assert_scan (store, 3, 0, "3 4");
  assert_scan (store, 2, 2, "2 3");
  assert_scan (store, 5, 0, "");
  assert_scan (store, G_MAXUINT64, 0, "");
  assert_scan_item (store, "a", 0, "2 4");
  assert_scan_item (store, "a", 1, "2");
  assert_scan_item (store, "b", 0, "3");
  assert_scan_item (store, "", 0, ""); /* the policy is no item */
  assert_scan_item (store, "A", 0, "");
}

static gboolean
scan_inside_cb (const SyLine *line, gpointer user_data)
{
  Seen *seen = user_data;
  g_autoptr (SyTask) task = sy_store_find (seen->store, "a", NULL, NULL);

  assert_non_null (task);
  assert_scan (seen->store, 1, 0, "1 2");
  assert_scan_item (seen->store, "a", 0, "1 2");
  return see_cb (line, seen);
}

static void
a_scan_may_read_inside (void **state)
{
  SyStore *store = store_of (state);
  Seen seen = { .store = store, .numbers = g_string_new (NULL) };

  help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"),
               help_revision ("a", 2, "A", "by-hand", "1", "1"), NULL, NULL);
  assert_true (sy_store_scan (store, 1, scan_inside_cb, &seen, NULL));
  assert_string_equal (seen.numbers->str, "1 2");
  g_string_free (seen.numbers, TRUE);
  g_free (seen.facts);
}

static void
tasks_are_listed_in_order (void **state)
{
  SyStore *store = store_of (state);
  const SyTaskFilter rank = { .order = SY_ORDER_RANK };
  const SyTaskFilter name = { .order = SY_ORDER_NAME };
  const SyTaskFilter recent = { .order = SY_ORDER_RECENT };

  help_append (store, help_revision ("none", 1, "echo", "incomplete", "null", "5"),
               help_revision ("low", 1, "Éclair", "by-hand", "0.5", "10"),
               help_revision ("endless", 1, "Delta", "mechanical", "", "1"),
               help_revision ("high", 1, "bravo", "mechanical", "4", "100"));
  help_append (store, help_revision ("endless2", 1, "alpha", "mechanical", "", "null"),
               help_revision ("none2", 1, "Zulu", "improve", "2", "null"),
               help_revision ("high2", 1, "Charlie", "mechanical", "8", "50"),
               help_revision ("low", 2, "Éclair", "by-hand", "0.5", "11"));
  /* Unbounded, then the product, then none; names within. */
  help_assert_list (store, NULL, 0, "endless2 endless high high2 low none none2");
  help_assert_list (store, &rank, 0, "endless2 endless high high2 low none none2");
  help_assert_list (store, &name, 0, "endless2 high high2 endless none low none2");
  help_assert_list (store, &recent, 0, "low high2 none2 endless2 high endless none");
  help_assert_list (store, &rank, 3, "endless2 endless high");
  help_assert_list (store, &recent, 1, "low");
  help_assert_list (store, &name, 100, "endless2 high high2 endless none low none2");
}

static void
tasks_are_filtered_by_verdict (void **state)
{
  SyStore *store = store_of (state);
  SyTaskFilter filter = { .by_verdict = TRUE, .order = SY_ORDER_NAME };

  help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"),
               help_revision ("b", 1, "B", "mechanical", "1", "1"),
               help_revision ("c", 1, "C", "by-hand", "1", "1"),
               help_revision ("c", 2, "C", "mechanical", "1", "1"));
  filter.verdict = SY_VERDICT_BY_HAND;
  help_assert_list (store, &filter, 0, "a");
  filter.verdict = SY_VERDICT_MECHANICAL;
  help_assert_list (store, &filter, 0, "b c");
  help_assert_list (store, &filter, 1, "b");
  filter.search = "nothing-like-it";
  help_assert_list (store, &filter, 0, "");
  filter.search = "c";
  help_assert_list (store, &filter, 0, "b c"); /* "costs" is in the reasons of both */
  filter.verdict = SY_VERDICT_DO_NOT_LIFT;
  help_assert_list (store, &filter, 0, "");
}

static void
what_must_not_be_lifted_comes_first_among_those_without_a_rank (void **state)
{
  SyStore *store = store_of (state);

  help_append (store, help_item (SY_ITEM_DIE, "d", 1, "Alpha", "mechanical"),
               help_item (SY_ITEM_GEAR, "g", 1, "Zulu", "do-not-lift"),
               help_item (SY_ITEM_GEAR, "h", 1, "Yankee", "do-not-lift"),
               help_revision ("low", 1, "Ring", "by-hand", "0.1", "1"));
  help_append (store, help_revision ("endless", 1, "Beam", "mechanical", "", "1"),
               help_revision ("worse", 1, "Coil", "do-not-lift", "", "1"), NULL, NULL);
  help_assert_list (store, NULL, 0, "endless worse low h g d");
}

static void
kinds_are_kept_apart (void **state)
{
  SyStore *store = store_of (state);
  SyTaskFilter filter = { .order = SY_ORDER_NAME };

  help_append (store, help_revision ("t", 1, "Upper die", "by-hand", "1", "1"),
               help_item (SY_ITEM_DIE, "d", 1, "Upper die", "mechanical"),
               help_item (SY_ITEM_GEAR, "g", 1, "Bow", "improve"),
               help_item (SY_ITEM_GEAR, "h", 1, "Hook", "mechanical"));
  help_assert_list (store, &filter, 0, "g h d t");
  filter.item_kind = SY_ITEM_TASK;
  help_assert_list (store, &filter, 0, "t");
  filter.item_kind = SY_ITEM_DIE;
  help_assert_list (store, &filter, 0, "d");
  filter.item_kind = SY_ITEM_GEAR;
  help_assert_list (store, &filter, 0, "g h");
  help_assert_list (store, &filter, 1, "g");
  filter.search = "press";
  help_assert_list (store, &filter, 0, "g h");
  filter.by_verdict = TRUE;
  filter.verdict = SY_VERDICT_MECHANICAL;
  help_assert_list (store, &filter, 0, "h");
  filter.item_kind = "fork";
  help_assert_list (store, &filter, 0, "");
}

static void
assert_found_kind (SyStore *store, const char *key, const char *item_kind, const char *expected)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyTask) task = sy_store_find (store, key, item_kind, &error);

  if (task == NULL)
    fail_msg ("%s", error->message);
  assert_string_equal (task->id, expected);
}

static void
a_name_is_looked_for_within_its_kind (void **state)
{
  SyStore *store = store_of (state);
  g_autoptr (GError) error = NULL;

  help_append (store, help_revision ("t", 1, "Upper die", "by-hand", "1", "1"),
               help_item (SY_ITEM_DIE, "d", 1, "Upper die", "mechanical"),
               help_item (SY_ITEM_GEAR, "g", 1, "Bow", "improve"), NULL);
  assert_found_kind (store, "Upper die", SY_ITEM_TASK, "t");
  assert_found_kind (store, "Upper die", SY_ITEM_DIE, "d");
  assert_found_kind (store, "Bow", NULL, "g");
  assert_found_kind (store, "g", SY_ITEM_TASK, "g"); /* an id is of one item, whatever is asked for */
  assert_found_kind (store, "t", NULL, "t");
  assert_null (sy_store_find (store, "Upper die", SY_ITEM_GEAR, &error));
  help_assert_error (error, SY_STORE_ERROR_NOT_FOUND, "gear");
  g_clear_error (&error);
  assert_null (sy_store_find (store, "Upper die", NULL, &error));
  help_assert_error (error, SY_STORE_ERROR_AMBIGUOUS, "Upper die");
  assert_non_null (strstr (error->message, "die"));
  assert_non_null (strstr (error->message, "task"));
}

static void
an_attachment_touches_its_item_and_changes_nothing_else (void **state)
{
  SyStore *store = store_of (state);
  const SyTaskFilter recent = { .order = SY_ORDER_RECENT };
  g_autoptr (GPtrArray) changed = NULL;
  g_autoptr (SyTask) task = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *ids = NULL;
  SyHead head;

  help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"),
               help_revision ("b", 1, "B", "by-hand", "1", "1"), help_attachment ("a", "one.pdf"),
               help_attachment ("nobody's", "two.pdf"));
  changed = sy_store_changed_since (store, 2, &error);
  ids = help_ids (changed);
  assert_string_equal (ids, "a");
  help_assert_list (store, &recent, 0, "a b");
  task = sy_store_find (store, "a", NULL, NULL);
  assert_int_equal (task->revision, 1);
  assert_string_equal (task->name, "A");
  help_assert_search (store, "photograph", "");
  assert_scan_item (store, "a", 0, "1");
  assert_scan_kind (store, "a", SY_EVENT_ATTACHMENT, 0, "3");
  assert_scan_kind (store, "b", SY_EVENT_ATTACHMENT, 0, "");

  head = help_head (store);
  assert_false (help_try (store, &head, help_attachment ("", "three.pdf"), &error));
  help_assert_error (error, SY_STORE_ERROR_WRITE, "must name");
}

static void
a_search_finds_words_by_their_beginning (void **state)
{
  /* Signs are not looked for; what looks like a query is words like any other. */
  static const char *const found[]
    = { "coil",     "COIL",   "coi",     "coil press",   "press coil", "rings 12",    "ring",
        "käse",     "kase",   "KASE",    "ka\xCC\x88se", "\"coil\"",   "coil*",       "-coil",
        "+coil",    "(coil)", "^coil",   "coil, press",  "  coil  ",   "strasse",     "STRASSE",
        "4711-b",   "coil%",  "{ends}",  "c:en",         "\xE2\x85\xA3" /* Roman four as one sign */ };
  static const char *const not_found[]
    = { "oil",          "coils",       "coil OR nothing", "coil NOT press", "NEAR(coil press)",
        "coil AND",     "words:coil",  "\"coil\" \"xyz\"", "' OR 1=1 --",   "coil;drop",
        "search_text",  "rowid:1",     "5711",            "711" };
  SyStore *store = store_of (state);
  SyEvent *event = help_revision ("a", 1, "Coil ends, rings (12) at the press: Käse, Straße 4711-B iv",
                                  "by-hand", "1", "1");

  help_append (store, event, help_revision ("b", 1, "Blanks", "by-hand", "1", "1"), NULL, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (found); i++)
    help_assert_search (store, found[i], "a");
  for (gsize i = 0; i < G_N_ELEMENTS (not_found); i++)
    help_assert_search (store, not_found[i], "");
  help_assert_search (store, "example", "b a");    /* who */
  help_assert_search (store, "bay nahe", "b a");   /* where */
  help_assert_search (store, "reach most", "b a"); /* why */
  help_assert_search (store, "", "b a");
  help_assert_search (store, " \"*'() ", "b a");
}

static void
a_long_search_is_still_a_search (void **state)
{
  SyStore *store = store_of (state);
  g_autoptr (GString) search = g_string_new (NULL);

  help_append (store, help_revision ("a", 1, "Coil", "by-hand", "1", "1"), NULL, NULL, NULL);
  for (int i = 0; i < 1000; i++)
    g_string_append (search, "coil ");
  help_assert_search (store, search->str, "a");
  g_string_append (search, "nothing");
  help_assert_search (store, search->str, "");
}

static void
a_search_knows_only_what_is_current (void **state)
{
  SyStore *store = store_of (state);

  help_append (store, help_revision ("a", 1, "Old name", "by-hand", "1", "1"),
               help_revision ("b", 1, "Other", "by-hand", "1", "1"), NULL, NULL);
  help_assert_search (store, "old", "a");
  help_append (store, help_revision ("a", 2, "New name", "by-hand", "1", "1"), NULL, NULL, NULL);
  help_assert_search (store, "old", "");
  help_assert_search (store, "new", "a");
  help_assert_search (store, "other", "b");
}

static void
what_changed_since_a_line_is_listed (void **state)
{
  SyStore *store = store_of (state);
  static const char *const expected[] = { "b a c", "b a c", "b a c", "a c", "c", "c", "" };

  help_append (store, help_revision ("a", 1, "A", "by-hand", "1", "1"),
               help_revision ("c", 1, "C", "by-hand", "1", "1"),
               help_revision ("b", 1, "B", "by-hand", "1", "1"),
               help_revision ("a", 2, "A", "by-hand", "1", "1"));
  help_append (store, help_policy ("{}"), help_revision ("c", 2, "C", "by-hand", "1", "1"), NULL, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      g_autoptr (GPtrArray) tasks = sy_store_changed_since (store, i, NULL);
      g_autofree char *ids = help_ids (tasks);

      assert_string_equal (ids, expected[i]);
    }
}

static void
assert_found (SyStore *store, const char *key, const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyTask) task = sy_store_find (store, key, NULL, &error);

  assert_null (error);
  assert_string_equal (task->id, id);
}

static void
a_task_is_found_by_id_then_by_name (void **state)
{
  SyStore *store = store_of (state);
  g_autoptr (GError) error = NULL;

  help_append (store, help_revision ("first", 1, "same", "by-hand", "1", "1"),
               help_revision ("second", 1, "same", "by-hand", "1", "1"),
               help_revision ("third", 1, "first", "by-hand", "1", "1"),
               help_revision ("first", 2, "same", "by-hand", "1", "1"));
  assert_found (store, "second", "second");
  assert_found (store, "first", "first"); /* not the one with that name */
  assert_found (store, "same", "first");  /* the oldest, though touched last */
  assert_null (sy_store_find (store, "Same", NULL, &error));
  help_assert_error (error, SY_STORE_ERROR_NOT_FOUND, "Same");
  g_clear_error (&error);
  assert_null (sy_store_find (store, "", NULL, &error));
  help_assert_error (error, SY_STORE_ERROR_NOT_FOUND, "");
}

static void
the_last_policy_is_in_force (void **state)
{
  SyStore *store = store_of (state);
  g_autofree char *first = NULL, *second = NULL;

  help_append (store, help_policy ("{\"n\":1}"), help_revision ("a", 1, "A", "by-hand", "1", "1"), NULL,
               NULL);
  first = sy_store_policy (store, NULL);
  assert_string_equal (first, "{\"n\":1}");
  help_append (store, help_policy ("{\"n\":2}"), NULL, NULL, NULL);
  second = sy_store_policy (store, NULL);
  assert_string_equal (second, "{\"n\":2}");
}

static void
assert_same_number (double actual, double expected)
{
  if (isnan (expected))
    assert_true (isnan (actual));
  else
    assert_same_bits (actual, expected);
}

static void
assert_same_task (const SyTask *actual, const SyTask *expected)
{
  assert_string_equal (actual->id, expected->id);
  assert_string_equal (actual->name, expected->name);
  assert_string_equal (actual->place, expected->place);
  assert_string_equal (actual->method, expected->method);
  assert_string_equal (actual->units, expected->units);
  assert_int_equal (actual->verdict, expected->verdict);
  assert_same_number (actual->index, expected->index);
  assert_string_equal (actual->index_symbol, expected->index_symbol);
  assert_same_number (actual->mass_kg, expected->mass_kg);
  assert_same_number (actual->persons, expected->persons);
  assert_same_number (actual->lifts_per_day, expected->lifts_per_day);
  assert_same_number (actual->rank, expected->rank);
  assert_int_equal (actual->revision, expected->revision);
  assert_int_equal (actual->clash, expected->clash);
  assert_string_equal (actual->lineage, expected->lineage);
  assert_string_equal (actual->by, expected->by);
  assert_string_equal (actual->why, expected->why);
  assert_string_equal (actual->when, expected->when);
  assert_string_equal (actual->search_text, expected->search_text);
  assert_string_equal (actual->item_kind, expected->item_kind);
  assert_string_equal (actual->valid_until, expected->valid_until);
  assert_same_number (actual->detail.mass_with_allowance_kg, expected->detail.mass_with_allowance_kg);
  for (int i = 0; i < 3; i++)
    assert_same_number (actual->detail.cg_mm[i], expected->detail.cg_mm[i]);
  assert_string_equal (actual->detail.machine, expected->detail.machine);
  assert_string_equal (actual->detail.storage, expected->detail.storage);
  assert_string_equal (actual->detail.gear_kind, expected->detail.gear_kind);
  assert_string_equal (actual->detail.identity, expected->detail.identity);
  assert_same_number (actual->detail.wll_kg, expected->detail.wll_kg);
  assert_string_equal (actual->detail.due, expected->detail.due);
  assert_int_equal (actual->detail.withdrawn, expected->detail.withdrawn);
}

/* Every kind of number, and a clash that needs the revisions before. */
static void
the_list_is_the_projection_of_the_journal (void **state)
{
  static const char *const indices[] = { "0.1", "1e-300", "", "null", "3" };
  static const char *const paces[] = { "0.30000000000000004", "null", "7", "1", "0" };
  static const gint64 bases[] = { 0, 1, 1, 2, 4 };
  SyStore *store = store_of (state);
  g_autoptr (SyTask) expected = NULL;

  for (gint64 i = 0; i < (gint64) G_N_ELEMENTS (indices); i++)
    {
      SyEvent *event = help_revision ("a", i + 1, "A", "mechanical", indices[i], paces[i]);
      g_autoptr (SyTask) actual = NULL;

      event->base = bases[i];
      expected = sy_task_apply (g_steal_pointer (&expected), event);
      help_append (store, event, NULL, NULL, NULL);
      actual = sy_store_find (store, "a", NULL, NULL);
      assert_same_task (actual, expected);
    }
}

static void
registers_are_the_projection_of_the_journal (void **state)
{
  static const char *const kinds[] = { SY_ITEM_DIE, SY_ITEM_GEAR };
  SyStore *store = store_of (state);

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      SyEvent *event = help_item (kinds[i], kinds[i], 1, "Bow", "improve");
      g_autoptr (SyTask) expected = sy_task_apply (NULL, event);
      g_autoptr (SyTask) actual = NULL;

      help_append (store, event, NULL, NULL, NULL);
      actual = sy_store_find (store, kinds[i], NULL, NULL);
      assert_same_task (actual, expected);
    }
}

static SyEvent *
random_event (GRand *random, GHashTable *revisions)
{
  static const char *const names[]
    = { "Coil ends", "coil", "Ärmel", "arm", "Zange 10", "zange 9", "Ring, kalt", "" };
  static const char *const numbers[] = { "0.5", "1", "2.5", "null", "300", "0" };
  char id[2] = { (char) ('a' + g_rand_int_range (random, 0, 12)), '\0' };
  gint64 revision = GPOINTER_TO_INT (g_hash_table_lookup (revisions, id)) + 1;
  SyEvent *event;

  if (g_rand_int_range (random, 0, 10) == 0)
    return help_policy ("{}");
  if (g_rand_int_range (random, 0, 10) == 0)
    return help_attachment (id, "file.pdf");
  if (id[0] >= 'j')
    {
      g_hash_table_replace (revisions, g_strdup (id), GINT_TO_POINTER ((int) revision));
      return help_item (id[0] == 'j' ? SY_ITEM_DIE : SY_ITEM_GEAR, id, revision,
                        names[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (names))],
                        sy_verdict_id ((SyVerdict) g_rand_int_range (random, 0, SY_N_VERDICTS)));
    }
  event = help_revision (
    id, revision, names[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (names))],
    sy_verdict_id ((SyVerdict) g_rand_int_range (random, 0, SY_N_VERDICTS)),
    g_rand_int_range (random, 0, 5) == 0
      ? ""
      : numbers[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (numbers))],
    numbers[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (numbers))]);
  event->base = g_rand_int_range (random, 0, (gint32) revision);
  g_hash_table_replace (revisions, g_strdup (id), GINT_TO_POINTER ((int) revision));
  return event;
}

static void
assert_same_lists (SyStore *one, SyStore *other, GRand *random)
{
  static const char *const searches[] = { NULL, "coil", "ar", "zange 1", "r k", "reach", "a b", "9" };
  static const char *const kinds[] = { NULL, NULL, SY_ITEM_TASK, SY_ITEM_DIE, SY_ITEM_GEAR };
  const SyTaskFilter filter = {
    .item_kind = kinds[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (kinds))],
    .search = searches[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (searches))],
    .by_verdict = g_rand_boolean (random),
    .verdict = (SyVerdict) g_rand_int_range (random, 0, SY_N_VERDICTS),
    .order = (SyTaskOrder) g_rand_int_range (random, 0, 3),
  };
  guint limit = (guint) g_rand_int_range (random, 0, 6);
  g_autoptr (GPtrArray) tasks = sy_store_list (one, &filter, limit, NULL);
  g_autoptr (GPtrArray) others = sy_store_list (other, &filter, limit, NULL);

  assert_int_equal (tasks->len, others->len);
  for (guint i = 0; i < tasks->len; i++)
    assert_same_task (g_ptr_array_index (tasks, i), g_ptr_array_index (others, i));
}

/* State is a SQLite store; memory stands beside it. */
static void
both_backends_agree_on_a_random_history (void **state)
{
  SyStore *store = store_of (state);
  g_autoptr (SyStore) memory = sy_store_open ("memory:", NULL);
  g_autoptr (GRand) random = g_rand_new_with_seed (4);
  g_autoptr (GHashTable) revisions = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (int i = 0; i < 80; i++)
    {
      SyEvent *event = random_event (random, revisions);
      g_autoptr (GBytes) bytes = sy_event_encode (event);
      SyHead head = help_append (store, event, NULL, NULL, NULL);
      SyHead other = help_append (memory, sy_event_decode (bytes, NULL), NULL, NULL, NULL);

      assert_int_equal (head.number, other.number);
      assert_memory_equal (&head.hash, &other.hash, sizeof head.hash);
      for (int n = 0; n < 4; n++)
        assert_same_lists (store, memory, random);
    }
}

#define BOTH(test) \
  { "memory: " #test, test, help_set_up_memory, help_tear_down, NULL }, \
  { "sqlite: " #test, test, help_set_up_sqlite, help_tear_down, NULL }

int
main (void)
{
  const struct CMUnitTest tests[] = {
    BOTH (a_new_store_is_empty),
    BOTH (lines_are_chained_and_come_back_as_written),
    BOTH (a_stale_head_changes_nothing),
    BOTH (events_go_in_all_or_none),
    BOTH (no_events_is_a_check_of_the_head),
    BOTH (a_scan_begins_and_ends_where_told),
    BOTH (a_scan_may_read_inside),
    BOTH (tasks_are_listed_in_order),
    BOTH (tasks_are_filtered_by_verdict),
    BOTH (what_must_not_be_lifted_comes_first_among_those_without_a_rank),
    BOTH (kinds_are_kept_apart),
    BOTH (a_name_is_looked_for_within_its_kind),
    BOTH (an_attachment_touches_its_item_and_changes_nothing_else),
    BOTH (a_search_finds_words_by_their_beginning),
    BOTH (a_long_search_is_still_a_search),
    BOTH (a_search_knows_only_what_is_current),
    BOTH (what_changed_since_a_line_is_listed),
    BOTH (a_task_is_found_by_id_then_by_name),
    BOTH (the_last_policy_is_in_force),
    BOTH (the_list_is_the_projection_of_the_journal),
    BOTH (registers_are_the_projection_of_the_journal),
    cmocka_unit_test_setup_teardown (both_backends_agree_on_a_random_history, help_set_up_sqlite, help_tear_down),
  };

  return cmocka_run_group_tests_name ("store", tests, NULL, NULL);
}
