/* SPDX-License-Identifier: MIT */
/* What the pages of the other ways of handling have besides a lift's: limits beside each other, tables of what each lift or
   person gets, a long list in the form, and lifts that come from a table. */
#include "sy-test.h"

#include <glib/gstdio.h>

#include "sy-long-table.h"
#include "sy-look-resource.h"
#include "sy-set-table-window.h"
#include "sy-style.h"
#include "sy-task-findings.h"
#include "sy-task-form.h"
#include "sy-task-limits.h"
#include "sy-task-result.h"
#include "sy-test-page.h"
#include "sy-test-wait.h"

#define LIMIT_MS 30000

typedef struct
{
  SyForm *form;
  GtkWidget *window, *box;
} Fixture;

static char *
read_demo (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("SY_SOURCE_DIR"), "data", "demo", "hands", name, NULL);
  char *facts = NULL;

  assert_true (g_file_get_contents (path, &facts, NULL, NULL));
  return facts;
}

static void
begin (Fixture *fixture, const char *method, const char *demo)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  fixture->form = sy_form_new (desk, method, SY_UNITS_METRIC);
  if (demo != NULL)
    {
      g_autofree char *facts = read_demo (demo);

      assert_true (sy_form_load_document (fixture->form, facts, NULL));
      assert_non_null (sy_form_get_assessment (fixture->form));
    }
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 620, 600);
  fixture->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->box);
}

static GtkWidget *
show (Fixture *fixture, GtkWidget *widget)
{
  gtk_box_append (GTK_BOX (fixture->box), widget);
  gtk_window_present (GTK_WINDOW (fixture->window));
  sy_test_settle ();
  return widget;
}

static void
end (Fixture *fixture)
{
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  sy_test_settle ();
  g_object_unref (fixture->form);
}

static gboolean
says (GtkWidget *widget, const char *text)
{
  gboolean found = GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && !found;
       child = gtk_widget_get_next_sibling (child))
    found = says (child, text);
  return found;
}

static gboolean
is_named (GtkWidget *widget, const char *label)
{
  g_autofree char *wrong
      = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label);

  return wrong == NULL;
}

static GtkWidget *
need (Fixture *fixture, const char *name)
{
  GtkWidget *widget = sy_test_find_shown (fixture->box, name);

  if (widget == NULL)
    print_error ("no widget is called %s\n", name);
  assert_non_null (widget);
  return widget;
}

/* Limits */

static void
limits_stand_beside_each_other_as_one_list (void **state)
{
  static const char *const demo[][2] = {
    { "team-lift", "checking-fixture-by-two.1.json" }, { "carry", "blanks-to-bay-3.1.json" },
    { "push", "die-cart-up-the-ramp.1.json" },         { "slide", "die-onto-rollers.1.json" },
    { "lift-set", "press-4-all-lifts.1.json" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (demo); i++)
    {
      Fixture fixture;
      const SyFindings *findings;
      GtkWidget *list, *row;
      int governing = 0, n = 0;

      begin (&fixture, demo[i][0], demo[i][1]);
      show (&fixture, sy_task_limits_new (fixture.form));
      findings = sy_form_get_assessment (fixture.form)->findings;
      list = need (&fixture, "limits");
      assert_int_equal (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (list)), GTK_ACCESSIBLE_ROLE_LIST);
      for (row = gtk_widget_get_first_child (list); row != NULL; row = gtk_widget_get_next_sibling (row), n++)
        {
          const SyLimitShown *shown = &findings->limits[n];
          g_autofree char *words = sy_task_limits_dup_words (findings, shown);

          assert_int_equal (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (row)), GTK_ACCESSIBLE_ROLE_LIST_ITEM);
          assert_true (is_named (row, words));
          assert_true (says (row, shown->limit->title));
          assert_true (says (row, shown->limit->edition));
          assert_int_equal (says (row, "From memory, not checked against the standard."), shown->limit->from_memory);
          assert_int_equal (says (row, "governs"), shown->governs);
          governing += shown->governs ? 1 : 0;
        }
      assert_int_equal (n, findings->n_limits);
      assert_true (n > 1);
      assert_int_equal (governing, 1);
      end (&fixture);
    }
}

static void
without_a_result_there_are_no_limits (void **state)
{
  Fixture fixture;

  (void) state;
  begin (&fixture, "carry", NULL);
  show (&fixture, sy_task_limits_new (fixture.form));
  assert_null (sy_test_find_shown (fixture.box, "limits"));
  assert_true (says (fixture.box, "There is no result yet."));
  end (&fixture);
}

static void
a_ratio_is_held_against_one (void **state)
{
  Fixture fixture;

  (void) state;
  begin (&fixture, "team-lift", "checking-fixture-by-two.1.json");
  show (&fixture, sy_task_result_new (fixture.form));
  assert_true (says (fixture.box, "Ratio"));
  assert_string_equal (gtk_label_get_text (GTK_LABEL (need (&fixture, "result-index"))), "1.39");
  end (&fixture);
}

/* Tables */

static void
the_working_of_a_set_is_a_table (void **state)
{
  Fixture fixture;

  (void) state;
  begin (&fixture, "lift-set", "press-4-all-lifts.1.json");
  show (&fixture, sy_task_findings_new (fixture.form));
  assert_true (says (fixture.box, "What each lift adds to the index"));
  assert_true (says (fixture.box, "Term 1"));
  assert_true (says (fixture.box, "4 · Empty frame off pallet"));
  assert_true (says (fixture.box, "FILI: Frequency-independent lifting index"));
  end (&fixture);
}

static void
each_person_s_index_and_share_is_a_row (void **state)
{
  Fixture fixture;

  (void) state;
  begin (&fixture, "lift-set", "washer-bay-rota.1.json");
  show (&fixture, sy_task_findings_new (fixture.form));
  assert_true (says (fixture.box, "Person by person"));
  assert_true (says (fixture.box, "Early, place 2"));
  end (&fixture);
  begin (&fixture, "team-lift", "checking-fixture-by-two.1.json");
  show (&fixture, sy_task_findings_new (fixture.form));
  assert_true (says (fixture.box, "What each of them carries"));
  assert_true (says (fixture.box, "Rack end"));
  end (&fixture);
}

/* Forms */

static void
what_applies_beside_others_only_is_hidden_until_then (void **state)
{
  Fixture fixture;

  (void) state;
  begin (&fixture, "lift-set", NULL);
  sy_form_list_add (fixture.form, "lifts");
  show (&fixture, sy_task_form_new (fixture.form));
  assert_false (gtk_widget_get_mapped (need (&fixture, "lifts[0].share")));
  assert_false (gtk_widget_get_mapped (need (&fixture, "rota")));
  sy_form_set (fixture.form, "combine", "sequence");
  sy_test_settle ();
  assert_true (gtk_widget_get_mapped (need (&fixture, "lifts[0].share")));
  assert_true (gtk_widget_get_mapped (need (&fixture, "rota")));
  assert_false (gtk_widget_get_mapped (need (&fixture, "categories")));
  end (&fixture);
}

static void
groups_of_an_item_are_named (void **state)
{
  Fixture fixture;

  (void) state;
  begin (&fixture, "lift-set", "press-4-all-lifts.1.json");
  show (&fixture, sy_task_form_new (fixture.form));
  assert_true (says (need (&fixture, "lifts[0]"), "Origin"));
  assert_true (says (need (&fixture, "lifts[0]"), "Destination"));
  assert_true (gtk_widget_get_mapped (need (&fixture, "lifts[3].destination.V")));
  end (&fixture);
}

/* A long list */

static void
a_long_list_is_a_table_to_look_at (void **state)
{
  Fixture fixture;
  GtkWidget *facts, *view;

  (void) state;
  begin (&fixture, "lift-set", "spare-parts-picking.1.json");
  facts = show (&fixture, sy_task_form_new (fixture.form));
  view = need (&fixture, "lifts");
  assert_true (GTK_IS_COLUMN_VIEW (view));
  assert_true (says (fixture.box, "60 in all"));
  assert_true (says (view, "Order line 1"));
  assert_null (sy_test_find_shown (fixture.box, "lifts[0].origin.H"));
  /* A place in it is gone to by its row. */
  assert_true (sy_task_form_focus (SY_TASK_FORM (facts), "lifts[57].origin.H"));
  sy_test_settle ();
  assert_true (says (view, "Order line 58"));
  assert_true (gtk_widget_get_mapped (need (&fixture, "remove-all:lifts")));
  g_signal_emit_by_name (need (&fixture, "remove-all:lifts"), "clicked");
  sy_test_settle ();
  assert_int_equal (sy_form_list_count (fixture.form, "lifts"), 0);
  assert_true (GTK_IS_BUTTON (need (&fixture, "lifts")));
  assert_true (gtk_widget_get_mapped (need (&fixture, "lifts")));
  sy_form_undo (fixture.form);
  sy_test_settle ();
  assert_true (GTK_IS_COLUMN_VIEW (need (&fixture, "lifts")));
  end (&fixture);
}

static void
what_is_wrong_in_a_long_list_is_said_over_it (void **state)
{
  Fixture fixture;
  g_autofree char *facts = NULL;
  g_autoptr (GString) changed = NULL;

  (void) state;
  begin (&fixture, "lift-set", "spare-parts-picking.1.json");
  facts = read_demo ("spare-parts-picking.1.json");
  changed = g_string_new (facts);
  assert_true (g_string_replace (changed, "\"origin\": {\"H\": ", "\"origin\": {\"H\": -", 1) == 1);
  assert_true (sy_form_load_document (fixture.form, changed->str, NULL));
  show (&fixture, sy_task_form_new (fixture.form));
  assert_true (says (fixture.box, "Lift 1: "));
  assert_true (says (fixture.box, "must be over 0 cm"));
  end (&fixture);
}

/* Lifts from a table */

static gboolean
is_looked_through (gpointer window)
{
  return strstr (sy_set_table_window_get_words (window), "lifts were read") != NULL
         || strstr (sy_set_table_window_get_words (window), "cannot be taken") != NULL;
}

static void
look (SySetTableWindow *window, const char *table)
{
  g_autofree char *path = NULL;
  g_autoptr (GFile) file = NULL;
  int handle = g_file_open_tmp ("steelyard-XXXXXX.csv", &path, NULL);

  assert_true (handle >= 0);
  close (handle);
  assert_true (g_file_set_contents (path, table, -1, NULL));
  file = g_file_new_for_path (path);
  sy_set_table_window_look (window, file);
  assert_true (sy_test_until (is_looked_through, window, LIMIT_MS));
  g_unlink (path);
}

#define HEAD "label,load.typical,load.heaviest,origin.H,origin.V,origin.A,travel,coupling\n"

static void
lifts_come_from_a_table (void **state)
{
  Fixture fixture;
  SySetTableWindow *window;
  g_autoptr (GString) table = g_string_new (HEAD);

  (void) state;
  begin (&fixture, "lift-set", "press-4-all-lifts.1.json");
  sy_form_set (fixture.form, "combine", "variable");
  window = SY_SET_TABLE_WINDOW (sy_set_table_window_new (GTK_WINDOW (fixture.window), fixture.form, "lifts"));
  gtk_window_present (GTK_WINDOW (window));
  look (window, HEAD "Wrong,5,6,-4,75,0,25,good\n");
  assert_false (sy_set_table_window_can_take (window));
  sy_set_table_window_take (window);
  assert_int_equal (sy_form_list_count (fixture.form, "lifts"), 4);
  for (int i = 0; i < 50; i++)
    g_string_append_printf (table, "Line %d,5,6,40,75,0,25,good\n", i + 1);
  look (window, table->str);
  if (!sy_set_table_window_can_take (window))
    fail_msg ("%s", sy_set_table_window_get_words (window));
  assert_non_null (strstr (sy_set_table_window_get_words (window), "replace the 4"));
  sy_set_table_window_take (window);
  sy_test_settle ();
  assert_int_equal (sy_form_list_count (fixture.form, "lifts"), 50);
  assert_non_null (sy_form_list_get_long (fixture.form, "lifts"));
  sy_form_undo (fixture.form);
  assert_string_equal (sy_form_get (fixture.form, "lifts[3].label"), "Empty frame off pallet");
  end (&fixture);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (limits_stand_beside_each_other_as_one_list),
    cmocka_unit_test (without_a_result_there_are_no_limits),
    cmocka_unit_test (a_ratio_is_held_against_one),
    cmocka_unit_test (the_working_of_a_set_is_a_table),
    cmocka_unit_test (each_person_s_index_and_share_is_a_row),
    cmocka_unit_test (what_applies_beside_others_only_is_hidden_until_then),
    cmocka_unit_test (groups_of_an_item_are_named),
    cmocka_unit_test (a_long_list_is_a_table_to_look_at),
    cmocka_unit_test (what_is_wrong_in_a_long_list_is_said_over_it),
    cmocka_unit_test (lifts_come_from_a_table),
  };
  SyStyleSheet *sheet;
  int failed;

  gtk_init ();
  (void) sy_look_get_resource ();
  sheet = sy_style_sheet_new (gdk_display_get_default (), "/org/steelyard/Steelyard/look", TRUE);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  failed = cmocka_run_group_tests_name ("hands-page", tests, NULL, NULL);
  g_object_unref (sheet);
  return failed;
}
