/* SPDX-License-Identifier: MIT */
#include "exchange-help.h"

#include "sy-ledger-improvement.h"

static SyImprovementView *
only_one (SyLedger *ledger)
{
  const SyImprovementFilter filter = { .withdrawn = TRUE };
  g_autoptr (GPtrArray) views = sy_ledger_improvements (ledger, &filter, NULL, NULL, NULL);

  assert_int_equal (views->len, 1);
  return g_ptr_array_steal_index (views, 0);
}

/* Both records went on from revision 1 by themselves. */
static void
which_revisions_are_meant_holds_under_other_numbers (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) here = sy_ledger_open ("memory:", NULL);
  g_autoptr (SyLedger) there = sy_ledger_open ("memory:", NULL);
  const SyImprovementAsk ask = { .from_revision = 1, .what = "A table", .idea_by = "O. Lund", .put_to_work = "2026-03-01" };
  SyDeedRequest request;
  g_autofree char *id = NULL;

  (void) state;
  record (there, desk, "Blank", NULL, 0);
  take_over (here, there);
  record (there, desk, "Blank", NULL, 1);
  record (here, desk, "Blank", NULL, 1);
  request = deed_of ("Blank");
  assert_true (sy_ledger_add_improvement (there, &request, &ask, &id, NULL, NULL));

  take_over (here, there);
  g_autoptr (SyImprovementView) view = only_one (here);
  assert_string_equal (view->improvement->id, id);
  assert_int_equal (view->improvement->revision, 3);
  assert_int_equal (view->improvement->from_revision, 1);
  assert_non_null (view->beside);
  assert_false (view->improvement->withdrawn);

  request = deed_of ("Blank");
  assert_true (sy_ledger_withdraw_improvement (here, &request, id, NULL, NULL));
  take_over (there, here);
  g_autoptr (SyImprovementView) withdrawn = only_one (there);
  assert_true (withdrawn->improvement->withdrawn);
  assert_int_equal (withdrawn->improvement->revision, 2);
  assert_string_equal (withdrawn->improvement->withdrawn_why, "as agreed");
  take_over (here, there);
  g_autofree char *lines_here = identities_of (here), *lines_there = identities_of (there);
  assert_string_equal (lines_here, lines_there);
}

static GBytes *
export_one (SyLedger *ledger, const char *item)
{
  const char *const items[] = { item, NULL };
  GBytes *bytes = sy_ledger_export (ledger, items, NULL, NULL, NULL);

  assert_non_null (bytes);
  return bytes;
}

/* Only what it became goes over: what it was before is not there, and that is said. */
static void
without_what_it_was_before_nothing_is_said_of_it (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyLedger) here = sy_ledger_open ("memory:", NULL);
  g_autoptr (SyLedger) there = sy_ledger_open ("memory:", NULL);
  const SyImprovementAsk ask = { .from_item = "By hand", .what = "A cart", .idea_by = "O. Lund", .put_to_work = "2026-03-01" };
  SyImportReport report = { 0 };
  SyDeedRequest request;

  (void) state;
  record (there, desk, "By hand", NULL, 0);
  record (there, desk, "By cart", NULL, 0);
  request = deed_of ("By cart");
  assert_true (sy_ledger_add_improvement (there, &request, &ask, NULL, NULL, NULL));
  g_autoptr (GBytes) bytes = export_one (there, "By cart");
  g_autofree char *message = import_bytes (here, bytes, FALSE, &report);
  assert_null (message);
  sy_import_report_clear (&report);

  g_autoptr (SyImprovementView) view = only_one (here);
  assert_null (view->beside);
  assert_string_equal (view->improvement->from_name, "By hand");
  g_autoptr (GString) out = g_string_new (NULL);
  sy_improvement_write_json (out, view);
  assert_non_null (strstr (out->str, "\"not_here\":true"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (which_revisions_are_meant_holds_under_other_numbers),
    cmocka_unit_test (without_what_it_was_before_nothing_is_said_of_it),
  };

  return cmocka_run_group_tests_name ("improvements-exchanged", tests, NULL, NULL);
}
