/* SPDX-License-Identifier: MIT */
#include "register-help.h"

#include "sy-date.h"
#include "sy-matrix.h"

/* A die of 1000 kg that was weighed and balances within itself. */
#define DIE(more) \
  "{\"method\":\"die-mass\",\"units\":\"metric\",\"weighed\":1000" more ",\"bodies\":[{\"label\":\"all\",\"mass\":1000," \
  "\"at\":[0,0,0]}]}"
#define AT_PRESS_3 ",\"machine\":\"Press 3\""

static double
today (void)
{
  double day = NAN;

  assert_true (sy_date_read ("2026-11-25", &day));
  return day;
}

static const SyMatrixCell *
cell_of (const GPtrArray *cells, const char *die, const char *gear)
{
  for (guint i = 0; i < cells->len; i++)
    {
      const SyMatrixCell *cell = cells->pdata[i];
      if (strcmp (cell->die_name, die) == 0 && strcmp (cell->gear_name, gear) == 0)
        return cell;
    }
  fail_msg ("nothing is said of %s under %s", die, gear);
  return NULL;
}

static void
test_by_mass (void **state)
{
  g_autoptr (GPtrArray) dies = help_items ();
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_add (dies, SY_ITEM_DIE, "die", DIE (AT_PRESS_3));
  help_gear (gear, "hoist", "just", "\"wll\":1000,\"serves\":\"Press 3\"");
  help_gear (gear, "hoist", "small", "\"wll\":999,\"serves\":\"Press 3\"");
  help_gear (gear, "crane", "large", "\"wll\":5000,\"serves\":[\"Press 1\",\"press 3 \"]");
  help_gear (gear, "hoist", "elsewhere", "\"wll\":5000,\"serves\":\"Press 1\"");
  help_gear (gear, "sling", "no means", "\"wll\":5000");
  g_autoptr (GPtrArray) cells = sy_matrix_make (desk, dies, gear, NULL, today (), NULL);

  assert_int_equal (cells->len, 4);
  const SyMatrixCell *cell = cell_of (cells, "die", "large");
  assert_int_equal (cell->verdict, SY_VERDICT_WITHIN_CAPACITY);
  assert_int_equal (cell->serves, SY_SERVES_YES);
  assert_close (cell->utilisation, 0.2, 0, 1e-12);
  assert_int_equal (cell->why->len, 0);
  assert_says (cell->remarks, "plan of the lift");

  cell = cell_of (cells, "die", "just"); /* a bound equal to its limit is within it */
  assert_int_equal (cell->verdict, SY_VERDICT_IMPROVE);
  assert_says (cell->why, "100 %");

  cell = cell_of (cells, "die", "small");
  assert_int_equal (cell->verdict, SY_VERDICT_DO_NOT_LIFT);
  assert_says (cell->why, "999 kg");

  cell = cell_of (cells, "die", "elsewhere");
  assert_int_equal (cell->verdict, SY_VERDICT_DO_NOT_LIFT);
  assert_int_equal (cell->serves, SY_SERVES_NO);
  assert_says (cell->why, "does not serve Press 3");

  /* The least strict first. */
  assert_string_equal (((SyMatrixCell *) cells->pdata[0])->gear_name, "large");
  assert_string_equal (((SyMatrixCell *) cells->pdata[1])->gear_name, "just");
}

static void
test_allowance (void **state)
{
  g_autoptr (GPtrArray) dies = help_items ();
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  /* 10 % by the drawing: 1100 kg */
  help_add (dies, SY_ITEM_DIE, "die",
            "{\"method\":\"die-mass\",\"units\":\"metric\",\"machine\":\"Press 3\",\"bodies\":[{\"label\":\"all\",\"mass\":1000,"
            "\"at\":[0,0,0]}]}");
  help_gear (gear, "hoist", "hoist", "\"wll\":1050,\"serves\":\"Press 3\"");
  g_autoptr (GPtrArray) cells = sy_matrix_make (desk, dies, gear, NULL, today (), NULL);

  assert_close (cell_of (cells, "die", "hoist")->mass_kg, 1100, 0, 1e-12);
  assert_int_equal (cell_of (cells, "die", "hoist")->verdict, SY_VERDICT_DO_NOT_LIFT);
}

/* What is not known is never favourable. */
static void
test_unknown (void **state)
{
  g_autoptr (GPtrArray) dies = help_items ();
  g_autoptr (GPtrArray) gear = help_items ();
  static const struct
  {
    const char *die, *gear, *words;
  } cases[] = {
    { "homeless", "good", "Which machine the die belongs to" },
    { "no bodies", "good", "Where it balances" },
    { "nonsense", "good", "cannot be assessed" },
    { "die", "serves nobody", "Which machines it serves" },
    { "die", "unmarked", "No working load limit" },
    { "die", "no date", "not known" },
    { "die", "truck", "load centre" },
    { "die", "two of one base", "revisions" },
  };

  (void) state;
  help_add (dies, SY_ITEM_DIE, "die", DIE (AT_PRESS_3));
  help_add (dies, SY_ITEM_DIE, "homeless", DIE (""));
  help_add (dies, SY_ITEM_DIE, "nonsense", DIE (",\"colour\":1"));
  help_add (dies, SY_ITEM_DIE, "no bodies",
            "{\"method\":\"die-mass\",\"units\":\"metric\",\"machine\":\"Press 3\",\"weighed\":1000}");
  help_gear (gear, "hoist", "good", "\"wll\":5000,\"serves\":\"Press 3\"");
  help_gear (gear, "hoist", "serves nobody", "\"wll\":5000");
  help_gear (gear, "hoist", "unmarked", "\"serves\":\"Press 3\"");
  help_add (gear, SY_ITEM_GEAR, "no date",
            "{\"method\":\"gear\",\"units\":\"metric\",\"kind\":\"hoist\",\"identity\":\"1\",\"wll\":5000,"
            "\"serves\":\"Press 3\"}");
  help_gear (gear, "truck", "truck", "\"wll\":5000,\"serves\":\"Press 3\"");
  help_gear (gear, "hoist", "two of one base", "\"wll\":5000,\"serves\":\"Press 3\"")->clash = TRUE;
  g_autoptr (GPtrArray) cells = sy_matrix_make (desk, dies, gear, NULL, today (), NULL);

  assert_int_equal (cell_of (cells, "die", "good")->verdict, SY_VERDICT_WITHIN_CAPACITY);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SyMatrixCell *cell = cell_of (cells, cases[i].die, cases[i].gear);

      if (cell->verdict != SY_VERDICT_INCOMPLETE)
        fail_msg ("%s under %s: %s", cases[i].die, cases[i].gear, sy_verdict_id (cell->verdict));
      assert_says (cell->why, cases[i].words);
    }
}

static void
test_standing_on_the_day (void **state)
{
  g_autoptr (GPtrArray) dies = help_items ();
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_add (dies, SY_ITEM_DIE, "die", DIE (AT_PRESS_3));
  help_gear (gear, "hoist", "hoist", "\"wll\":5000,\"serves\":\"Press 3\",\"as_of\":\"2026-11-25\"");
  help_gear (gear, "hoist", "withdrawn", "\"wll\":5000,\"serves\":\"Press 3\",\"withdrawn\":true");
  help_gear (gear, "truck", "truck", "\"wll\":5000,\"serves\":\"Press 3\",\"load_centre\":500");
  help_gear (gear, "cart", "cart", "\"wll\":5000,\"serves\":\"Press 3\"");
  g_autoptr (GPtrArray) cells = sy_matrix_make (desk, dies, gear, NULL, today (), NULL);
  g_autoptr (GPtrArray) later = sy_matrix_make (desk, dies, gear, NULL, today () + 97, NULL);

  assert_int_equal (cell_of (cells, "die", "withdrawn")->verdict, SY_VERDICT_DO_NOT_LIFT);
  assert_int_equal (cell_of (cells, "die", "hoist")->verdict, SY_VERDICT_WITHIN_CAPACITY);
  assert_int_equal (cell_of (later, "die", "hoist")->verdict, SY_VERDICT_DO_NOT_LIFT);
  assert_says (cell_of (later, "die", "hoist")->why, "due on 2027-03-01");
  assert_int_equal (cell_of (cells, "die", "truck")->verdict, SY_VERDICT_WITHIN_CAPACITY);
  assert_says (cell_of (cells, "die", "truck")->remarks, "500 mm");
  assert_says (cell_of (cells, "die", "cart")->remarks, "tipping");
}

/* Dies that cannot be lifted as they are. */
static void
test_die_that_forbids_it (void **state)
{
  g_autoptr (GPtrArray) dies = help_items ();
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_add (dies, SY_ITEM_DIE, "outside its points",
            DIE (AT_PRESS_3 ",\"points\":[{\"label\":\"1\",\"at\":[100,0,0]},{\"label\":\"2\",\"at\":[200,0,0]},"
                            "{\"label\":\"3\",\"at\":[100,100,0]}]"));
  help_gear (gear, "hoist", "hoist", "\"wll\":5000,\"serves\":\"Press 3\"");
  g_autoptr (GPtrArray) cells = sy_matrix_make (desk, dies, gear, NULL, today (), NULL);

  assert_int_equal (cell_of (cells, "outside its points", "hoist")->verdict, SY_VERDICT_DO_NOT_LIFT);
}

static void
test_one_machine (void **state)
{
  g_autoptr (GPtrArray) dies = help_items ();
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_add (dies, SY_ITEM_DIE, "die", DIE (AT_PRESS_3));
  help_add (dies, SY_ITEM_DIE, "other", DIE (",\"machine\":\"Press 4\""));
  help_add (dies, SY_ITEM_DIE, "homeless", DIE (""));
  help_gear (gear, "hoist", "hoist", "\"wll\":5000,\"serves\":\"Press 3\"");
  g_autoptr (GPtrArray) cells = sy_matrix_make (desk, dies, gear, "press 3", today (), NULL);

  assert_int_equal (cells->len, 1);
  assert_string_equal (((SyMatrixCell *) cells->pdata[0])->die_name, "die");
}

static SyRecordRequest
request (const char *name, gint64 base)
{
  return (SyRecordRequest) { .task = name, .by = "B. Ostler", .why = "taken stock of", .base = base,
                             .now = "2026-11-25T05:06:07Z", .clock_set = TRUE };
}

/* From a store: the latest revision counts, and a clash is carried along. */
static void
test_from_a_store (void **state)
{
  g_autoptr (SyLedger) ledger = sy_ledger_open ("memory:", NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GString) out = g_string_new (NULL);
  static const char *const masses[] = { DIE (AT_PRESS_3), DIE (AT_PRESS_3 ",\"allowance_percent\":5") };
  static const char hoist[]
    = "{\"method\":\"gear\",\"units\":\"us\",\"kind\":\"hoist\",\"identity\":\"H-1\",\"wll\":5000,\"serves\":\"Press 3\","
      "\"last_examined\":\"2026-09-01\",\"due\":\"2027-03-01\"}";
  SyRecordResult result = { NULL };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (masses); i++)
    {
      SyRecordRequest what = request ("die", -1);
      assert_true (sy_ledger_record (ledger, desk, &what, masses[i], strlen (masses[i]), problems, &result, NULL));
      sy_record_result_clear (&result);
    }
  SyRecordRequest what = request ("hoist", -1);
  assert_true (sy_ledger_record (ledger, desk, &what, hoist, strlen (hoist), problems, &result, NULL));
  sy_record_result_clear (&result);

  g_autoptr (GPtrArray) dies = sy_register_read (ledger, SY_ITEM_DIE, NULL);
  g_autoptr (GPtrArray) gear = sy_register_read (ledger, SY_ITEM_GEAR, NULL);
  assert_int_equal (dies->len, 1);
  assert_int_equal (gear->len, 1);
  g_autoptr (GPtrArray) cells = sy_matrix_make (desk, dies, gear, NULL, today (), NULL);
  const SyMatrixCell *cell = cell_of (cells, "die", "hoist");
  assert_close (cell->mass_kg, 1050, 0, 1e-12);
  assert_close (cell->utilisation, 1050 / (5000 * 0.45359237), 0, 1e-12);
  assert_int_equal (cell->verdict, SY_VERDICT_WITHIN_CAPACITY);
  sy_matrix_cell_write_json (out, cell);
  assert_true (g_str_has_prefix (out->str, "{\"die\":\"die\","));
  assert_non_null (strstr (out->str, ",\"serves\":true,\"verdict\":\"within-capacity\",\"why\":[],"));
  assert_non_null (strstr (out->str, "\"caution\":\"A screening result"));

  what = request ("die", 1); /* a second one made from the first */
  assert_true (sy_ledger_record (ledger, desk, &what, masses[0], strlen (masses[0]), problems, &result, NULL));
  sy_record_result_clear (&result);
  g_autoptr (GPtrArray) clashed = sy_register_read (ledger, SY_ITEM_DIE, NULL);
  assert_true (((SyRegisterItem *) clashed->pdata[0])->clash);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_by_mass),
    cmocka_unit_test (test_allowance),
    cmocka_unit_test (test_unknown),
    cmocka_unit_test (test_standing_on_the_day),
    cmocka_unit_test (test_die_that_forbids_it),
    cmocka_unit_test (test_one_machine),
    cmocka_unit_test (test_from_a_store),
  };

  return cmocka_run_group_tests_name ("matrix", tests, help_set_up, help_tear_down);
}
