/* SPDX-License-Identifier: MIT */
#include "exchange-help.h"

#include "sy-csv.h"
#include "sy-json.h"

/* Tables: many lifts from one, and the items as one. */

#define COLUMNS "task,place,units,load.typical,load.heaviest,origin.H,origin.V,origin.A,travel,frequency,duration,coupling,conditions"

typedef struct
{
  SyDesk *desk;
  SyLedger *ledger;
} One;

static int
set_up (void **state)
{
  One *one = g_new0 (One, 1);

  one->desk = sy_desk_new (NULL, 0, NULL);
  one->ledger = sy_ledger_open ("memory:", NULL);
  *state = one;
  return 0;
}

static int
tear_down (void **state)
{
  One *one = *state;

  sy_ledger_close (one->ledger);
  sy_desk_unref (one->desk);
  g_free (one);
  return 0;
}

static SyLiftsReport
take_lifts (const One *one, const char *text, gboolean dry_run)
{
  const SyImportRequest request = { .by = "I. Tannick", .why = "round of hall 2", .now = "2026-03-04T05:06:07Z",
                                    .dry_run = dry_run };
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  g_autoptr (GError) error = NULL;
  SyLiftsReport report;

  if (!sy_ledger_import_lifts (one->ledger, one->desk, bytes, &request, NULL, NULL, &report, &error))
    fail_msg ("%s", error->message);
  return report;
}

/* "line column value allowed unit" of each, a line each. */
static char *
bad_words (const SyLiftsReport *report)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < report->bad->len; i++)
    {
      const SyBadCell *cell = report->bad->pdata[i];

      g_string_append_printf (out, "%d|%s|%s|%s|%s\n", (int) cell->line, cell->column, cell->value, cell->allowed,
                              cell->unit);
    }
  return g_string_free (out, FALSE);
}

static char *
facts_of (const One *one, const char *task)
{
  g_autoptr (GPtrArray) history = sy_ledger_history (one->ledger, task, NULL, NULL);

  assert_non_null (history);
  return g_strdup (((SyRevision *) history->pdata[history->len - 1])->event->facts);
}

static void
assert_no_bad (const SyLiftsReport *report)
{
  g_autofree char *words = bad_words (report);

  assert_string_equal (words, "");
}

static void
test_lifts_begin_and_revise_tasks (void **state)
{
  const One *one = *state;
  static const char table[] = "\xef\xbb\xbf" COLUMNS "\r\n"
                              "\"Ring, large\",Hall 2,metric,8,9.50,40,60,0,20,1,short,good,none\r\n"
                              "Bar,Hall 2,us,20 lb,10 kg,16 in,25,0,8,\"0,5\",short,good,slippery-floor | one-hand\r\n"
                              ",,,,,,,,,,,,\r\n"
                              "Box,,metric,30,30,55,20,0,90,1,moderate,fair,\r\n";
  g_autofree char *ring = NULL, *bar = NULL, *box = NULL;
  SyLiftsReport report;

  report = take_lifts (one, table, TRUE);
  assert_no_bad (&report);
  assert_int_equal (report.rows, 3);
  assert_int_equal (report.begun, 3);
  assert_int_equal (report.revised, 0);
  assert_int_equal (report.added, 0);
  assert_int_equal (report.by_verdict[SY_VERDICT_MECHANICAL], 1); /* Box: 30 kg is over the reference mass */
  assert_int_equal (report.by_verdict[SY_VERDICT_OUTSIDE], 1);    /* Bar: conditions that the method leaves out */
  assert_int_equal (head_of (one->ledger).number, 0);
  sy_lifts_report_clear (&report);

  record (one->ledger, one->desk, "Box", NULL, -1);
  report = take_lifts (one, table, FALSE);
  assert_no_bad (&report);
  assert_int_equal (report.added, 3);
  assert_int_equal (report.begun, 2);
  assert_int_equal (report.revised, 1);
  assert_int_equal (report.head.number, 2 + 3);
  sy_lifts_report_clear (&report);

  ring = facts_of (one, "Ring, large");
  bar = facts_of (one, "Bar");
  box = facts_of (one, "Box");
  /* As typed, in the order of the method's fields; a decimal comma becomes a point. */
  assert_string_equal (ring, "{\"method\":\"lift\",\"units\":\"metric\",\"place\":\"Hall 2\",\"load\":{\"typical\":8,"
                             "\"heaviest\":9.50},\"origin\":{\"H\":40,\"V\":60,\"A\":0},\"travel\":20,\"frequency\":1,"
                             "\"duration\":\"short\",\"coupling\":\"good\",\"conditions\":[]}");
  assert_non_null (strstr (bar, "\"load\":{\"typical\":\"20 lb\",\"heaviest\":\"10 kg\"},\"origin\":{\"H\":\"16 in\",\"V\":25"));
  assert_non_null (strstr (bar, "\"frequency\":0.5"));
  assert_non_null (strstr (bar, "\"conditions\":[\"slippery-floor\",\"one-hand\"]"));
  assert_null (strstr (box, "conditions"));
  assert_sound (one->ledger);
}

static void
test_semicolons_and_commas (void **state)
{
  const One *one = *state;
  static const char table[] = "task;units;load.typical;load.heaviest;origin.H;origin.V;origin.A;destination.H;destination.V;destination.A;lifts;in_minutes;duration;"
                              "coupling;control_at_destination;had.load.how;had.load.tolerance;measured_on;avoid.possible\n"
                              "Ring;metric;8,5;9,75 kg;40,5;60;0;40;80,5;0;12;15;short;good;TRUE;measured;2,5;2026-03-01;no\n";
  g_autofree char *facts = NULL;
  SyLiftsReport report = take_lifts (one, table, FALSE);

  assert_no_bad (&report);
  sy_lifts_report_clear (&report);
  facts = facts_of (one, "Ring");
  assert_string_equal (facts, "{\"method\":\"lift\",\"units\":\"metric\",\"avoid\":{\"possible\":\"no\"},"
                              "\"measured_on\":\"2026-03-01\",\"load\":{\"typical\":8.5,\"heaviest\":\"9,75 kg\"},"
                              "\"origin\":{\"H\":40.5,\"V\":60,\"A\":0},\"destination\":{\"H\":40,\"V\":80.5,\"A\":0},"
                              "\"control_at_destination\":true,"
                              "\"lifts\":12,\"in_minutes\":15,\"duration\":\"short\",\"coupling\":\"good\","
                              "\"had\":{\"load\":{\"how\":\"measured\",\"tolerance\":2.5}}}");
}

static void
test_every_bad_cell_is_told (void **state)
{
  const One *one = *state;
  static const char table[] = COLUMNS ",colour,sessions[].work,task\r\n"
                              "Good,,metric,8,9,40,60,0,20,1,short,good,none,,,\r\n"
                              ",,metric,8,9,40,60,0,20,1,short,good,none,,,\r\n"
                              "\"Two\nlines\",,metric,8,7,-40,far,0,20,1,brief,good,none cold,,,\r\n"
                              "Short,,metric,8\r\n"
                              "Good,,,8,9,40,60,0,20,1,short,,none,,,\r\n"
                              "Comma,,metric,\"1,250\",9,40,60 lb,0,20,1,short,good,none,,,\r\n";
  SyLiftsReport report = take_lifts (one, table, FALSE);
  g_autofree char *words = bad_words (&report);
  static const char *const told[] = {
    "1|colour|colour|“task” or a field of the method “lift”",
    "1|sessions[].work|sessions[].work|work_minutes and recovery_minutes, or duration;",
    "1|task|task|a name that no other column has|\n",
    "3|task||a text that is not blank|\n",
    "4|origin.H|-40|", /* the cell with a line end in it is one line of the table, two of the file */
    "4|origin.V|far|",
    "4|duration|brief|one of: short, moderate, long",
    "4|conditions|none cold|",
    "6||4 cells|16 cells, as in the first line|\n",
    "7|task|Good|a name that no other line has; line 2 has it|\n",
    "7|units||",
    "8|load.typical|1,250|",
    "8|origin.V|60 lb|",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (told); i++)
    if (strstr (words, told[i]) == NULL)
      fail_msg ("“%s” is not in\n%s", told[i], words);
  assert_int_equal (report.rows, 5);
  assert_int_equal (report.added, 0);
  assert_int_equal (report.begun, 1);
  assert_int_equal (head_of (one->ledger).number, 0);
  sy_lifts_report_clear (&report);
}

static void
test_what_is_no_table (void **state)
{
  const One *one = *state;
  static const struct
  {
    const char *text, *by, *named;
  } cases[] = {
    { "", "I. Tannick", "line 1: given nothing; allowed: the names of the columns" },
    { "task\n\"open", "I. Tannick", "line 2: given a quote that is not closed" },
    { "task\nA\n", " ", "by: given nothing" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SyImportRequest request = { .by = cases[i].by, .why = "round", .now = "2026-03-04T05:06:07Z" };
      g_autoptr (GBytes) bytes = g_bytes_new (cases[i].text, strlen (cases[i].text));
      g_autoptr (GError) error = NULL;
      SyLiftsReport report;

      assert_false (sy_ledger_import_lifts (one->ledger, one->desk, bytes, &request, NULL, NULL, &report, &error));
      assert_int_equal (error->domain, SY_LEDGER_ERROR);
      if (strstr (error->message, cases[i].named) == NULL)
        fail_msg ("“%s” does not name “%s”", error->message, cases[i].named);
    }
}

static void
test_only_lifts_and_only_tasks (void **state)
{
  const One *one = *state;
  static const char table[] = "method,task,units\ncart,A,metric\n";
  SyLiftsReport report = take_lifts (one, table, TRUE);
  g_autofree char *words = bad_words (&report);

  assert_non_null (strstr (words, "2|method|cart|lift, or nothing: a table has lifts by hand only|\n"));
  assert_non_null (strstr (words, "2|load||"));
  sy_lifts_report_clear (&report);

  /* Nothing but the names of columns: nothing to do. */
  report = take_lifts (one, "task,units\n", FALSE);
  assert_no_bad (&report);
  assert_int_equal (report.rows, 0);
  assert_int_equal (head_of (one->ledger).number, 0);
  sy_lifts_report_clear (&report);
}

static void
test_one_task_by_id_and_by_name (void **state)
{
  const One *one = *state;
  const SyImportRequest request = { .by = "I. Tannick", .why = "round", .now = "2026-03-04T05:06:07Z" };
  g_autoptr (GString) table = g_string_new (COLUMNS "\n");
  g_autoptr (GPtrArray) tasks = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  SyLiftsReport report;

  record (one->ledger, one->desk, "Ring", NULL, -1);
  tasks = sy_ledger_tasks (one->ledger, NULL, NULL);
  g_string_append_printf (table, "Ring,,metric,8,9,40,60,0,20,1,short,good,none\n%s,,metric,8,9,40,60,0,20,1,short,good,none\n",
                          ((SyTask *) tasks->pdata[0])->id);
  bytes = g_bytes_new (table->str, table->len);
  assert_false (sy_ledger_import_lifts (one->ledger, one->desk, bytes, &request, NULL, NULL, &report, &error));
  assert_true (g_str_has_prefix (error->message, "line 3: task: given"));
  assert_int_equal (head_of (one->ledger).number, 2);
}

static const char *
cell_of (const SyCsv *csv, guint row, const char *column)
{
  const SyCsvRow *names = csv->rows->pdata[0], *cells = csv->rows->pdata[row];

  assert_int_equal (cells->n_cells, names->n_cells);
  for (gsize i = 0; i < names->n_cells; i++)
    if (strcmp (names->cells[i], column) == 0)
      return cells->cells[i];
  fail_msg ("no column “%s”", column);
  return NULL;
}

static void
test_items_as_a_table (void **state)
{
  const One *one = *state;
  const SyTaskFilter by_name = { .order = SY_ORDER_NAME };
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (SyCsv) csv = NULL;
  g_autoptr (GError) error = NULL;
  gsize size;
  SyLiftsReport report
    = take_lifts (one, COLUMNS "\n\"Box, heavy\",=HYPERLINK(1),metric,30,30,55,20,0,90,1,moderate,fair,none\n", FALSE);

  assert_no_bad (&report);
  sy_lifts_report_clear (&report);
  record (one->ledger, one->desk, "+ Ring", NULL, -1);
  sign (one->ledger, "+ Ring", 1);
  bytes = sy_ledger_export_csv (one->ledger, &by_name, NULL, NULL, &error);
  assert_non_null (bytes);
  const char *text = g_bytes_get_data (bytes, &size);
  assert_memory_equal (text, "\xef\xbb\xbfkind,name,id,", 16);
  csv = sy_csv_read (text, size, NULL);
  assert_int_equal (csv->rows->len, 3);
  assert_string_equal (cell_of (csv, 1, "name"), "'+ Ring");
  assert_string_equal (cell_of (csv, 1, "role"), "safety lead");
  assert_string_equal (cell_of (csv, 1, "signed by"), "Q. Falk");
  assert_string_equal (cell_of (csv, 1, "signed revision"), "1");
  assert_string_equal (cell_of (csv, 2, "name"), "Box, heavy");
  assert_string_equal (cell_of (csv, 2, "place"), "'=HYPERLINK(1)");
  assert_string_equal (cell_of (csv, 2, "kind"), "task");
  assert_string_equal (cell_of (csv, 2, "verdict"), "mechanical");
  assert_string_equal (cell_of (csv, 2, "verdict in words"), "Mechanical handling required");
  assert_string_equal (cell_of (csv, 2, "mass kg"), "30");
  assert_string_equal (cell_of (csv, 2, "edition"), "2");
  assert_string_equal (cell_of (csv, 2, "retired"), "no");
  assert_string_equal (cell_of (csv, 2, "signed revision"), "");
  assert_non_null (strstr (cell_of (csv, 2, "reasons"), ". "));
  assert_non_null (strstr (cell_of (csv, 2, "caution"), "screen"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_lifts_begin_and_revise_tasks, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_semicolons_and_commas, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_every_bad_cell_is_told, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_what_is_no_table, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_only_lifts_and_only_tasks, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_one_task_by_id_and_by_name, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_items_as_a_table, set_up, tear_down),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
