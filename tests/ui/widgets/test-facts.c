/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-choice-row.h"
#include "sy-list-rows.h"
#include "sy-prose-row.h"
#include "sy-quantity-entry.h"
#include "sy-set-row.h"
#include "sy-test-wait.h"
#include "sy-text-row.h"

static SyForm *
new_form (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_form_new (desk, "lift", SY_UNITS_METRIC);
}

static GtkWidget *
new_bound (SyForm *form, const char *path)
{
  GtkWidget *fact = sy_fact_new_for_field (sy_form_find_field (form, path));

  g_object_ref_sink (fact);
  sy_fact_bind (SY_FACT (fact), form, path);
  return fact;
}

/* The accessibility checks say "equal" for anything when there is no test backend. */
static void
assert_label (GtkWidget *widget, const char *label)
{
  g_autofree char *differs = gtk_test_accessible_check_property (
    GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, "no such label");
  g_autofree char *wrong
      = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label);

  assert_non_null (differs);
  assert_null (wrong);
}

static void
assert_invalid (GtkWidget *widget, GtkAccessibleInvalidState state)
{
  g_autofree char *wrong
      = gtk_test_accessible_check_state (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_STATE_INVALID, state);

  assert_null (wrong);
}

static void
a_quantity_is_understood_and_kept_as_typed (void **state)
{
  static const struct
  {
    const char *text;
    SyTextStatus status;
    double value;
  } cases[] = {
    { "55", SY_TEXT_OK, 55 },       { "16 in", SY_TEXT_OK, 40.64 }, { "12,5", SY_TEXT_OK, 12.5 },
    { "0,55 m", SY_TEXT_OK, 55 },   { " 20 cm ", SY_TEXT_OK, 20 },  { "", SY_TEXT_EMPTY, 0 },
    { "far", SY_TEXT_NOT_NUMBER, 0 }, { "1,250", SY_TEXT_AMBIGUOUS, 0 }, { "5 kg", SY_TEXT_WRONG_UNIT, 0 },
  };
  g_autoptr (SyForm) form = new_form ();
  g_autoptr (GtkWidget) fact = new_bound (form, "origin.H");
  GtkWidget *entry = sy_fact_get_field (SY_FACT (fact));

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double value = -1;

      gtk_editable_set_text (GTK_EDITABLE (entry), cases[i].text);
      assert_int_equal (sy_quantity_entry_get_value (SY_QUANTITY_ENTRY (fact), &value), cases[i].status);
      if (cases[i].status == SY_TEXT_OK)
        assert_close (value, cases[i].value, 1e-12, 1e-12);
      assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), cases[i].text);
      assert_string_equal (sy_form_get (form, "origin.H"), cases[i].text);
    }
}

static void
a_wrong_entry_is_marked_in_words_and_for_assistive_technology (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autoptr (GtkWidget) fact = new_bound (form, "origin.H");
  GtkWidget *entry = sy_fact_get_field (SY_FACT (fact));

  (void) state;
  assert_string_equal (gtk_widget_get_name (entry), "origin.H");
  assert_label (entry, "Origin: Reach H, cm");
  assert_invalid (entry, GTK_ACCESSIBLE_INVALID_FALSE);
  gtk_editable_set_text (GTK_EDITABLE (entry), "-5");
  assert_invalid (entry, GTK_ACCESSIBLE_INVALID_TRUE);
  assert_true (gtk_widget_has_css_class (entry, "sy-wrong"));
  assert_true (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (entry),
                                                 GTK_ACCESSIBLE_RELATION_DESCRIBED_BY));
  assert_string_equal (gtk_label_get_text (GTK_LABEL (gtk_widget_get_last_child (fact))),
                       "Reach H must be over 0 cm; you gave -5.");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), "-5");
  gtk_editable_set_text (GTK_EDITABLE (entry), "16 in");
  assert_invalid (entry, GTK_ACCESSIBLE_INVALID_FALSE);
  assert_non_null (strstr (gtk_label_get_text (GTK_LABEL (gtk_widget_get_last_child (fact))), "40.6"));
}

static void
what_is_missing_is_marked_only_when_asked (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autoptr (GtkWidget) fact = new_bound (form, "load.heaviest");
  GtkWidget *entry = sy_fact_get_field (SY_FACT (fact));

  (void) state;
  assert_true (sy_form_is_missing (form, "load.heaviest"));
  assert_invalid (entry, GTK_ACCESSIBLE_INVALID_FALSE);
  sy_form_set_ask_missing (form, TRUE);
  assert_invalid (entry, GTK_ACCESSIBLE_INVALID_TRUE);
}

static void
arrows_step_a_number_in_the_unit_it_was_written_in (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autoptr (GtkWidget) fact = new_bound (form, "origin.V");
  SyQuantityEntry *quantity = SY_QUANTITY_ENTRY (fact);

  (void) state;
  sy_form_set (form, "origin.V", "16 in");
  assert_true (sy_quantity_entry_step (quantity, 1));
  assert_string_equal (sy_form_get (form, "origin.V"), "17 in");
  sy_form_set (form, "origin.V", "12,5");
  assert_true (sy_quantity_entry_step (quantity, -1));
  assert_string_equal (sy_form_get (form, "origin.V"), "11,5");
  sy_form_set (form, "origin.V", "0.5");
  assert_false (sy_quantity_entry_step (quantity, -1)); /* would be below 0 */
  assert_string_equal (sy_form_get (form, "origin.V"), "0.5");
  sy_form_set (form, "origin.V", "high");
  assert_false (sy_quantity_entry_step (quantity, 1));
  assert_string_equal (sy_form_get (form, "origin.V"), "high");
}

static void
no_choice_is_made_by_itself (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autoptr (GtkWidget) fact = new_bound (form, "coupling");
  GtkDropDown *drop_down = GTK_DROP_DOWN (sy_fact_get_field (SY_FACT (fact)));

  (void) state;
  assert_int_equal (gtk_drop_down_get_selected (drop_down), 0);
  assert_string_equal (sy_form_get (form, "coupling"), "");
  assert_false (sy_form_can_undo (form));
  gtk_drop_down_set_selected (drop_down, 2);
  assert_string_equal (sy_form_get (form, "coupling"), "fair");
  sy_form_undo (form);
  assert_int_equal (gtk_drop_down_get_selected (drop_down), 0);
  sy_form_set (form, "coupling", "poor");
  assert_int_equal (gtk_drop_down_get_selected (drop_down), 3);
  assert_label (GTK_WIDGET (drop_down), "Grip");
  assert_label (gtk_widget_get_first_child (GTK_WIDGET (drop_down)), "Grip");
}

static void
yes_and_no_are_choices (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autoptr (GtkWidget) fact = new_bound (form, "control_at_destination");
  GtkDropDown *drop_down = GTK_DROP_DOWN (sy_fact_get_field (SY_FACT (fact)));

  (void) state;
  gtk_drop_down_set_selected (drop_down, 2);
  assert_string_equal (sy_form_get (form, "control_at_destination"), "false");
  gtk_drop_down_set_selected (drop_down, 0);
  assert_string_equal (sy_form_get (form, "control_at_destination"), "");
}

static void
asked_and_none_applies_is_an_answer_of_its_own (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  g_autoptr (GtkWidget) fact = new_bound (form, "conditions");
  SySetRow *row = SY_SET_ROW (fact);
  GtkCheckButton *none = GTK_CHECK_BUTTON (sy_set_row_get_check (row, "-"));
  GtkCheckButton *floor = GTK_CHECK_BUTTON (sy_set_row_get_check (row, "slippery-floor"));
  GtkCheckButton *hand = GTK_CHECK_BUTTON (sy_set_row_get_check (row, "one-hand"));

  (void) state;
  assert_string_equal (sy_form_get (form, "conditions"), "");
  gtk_check_button_set_active (none, TRUE);
  assert_string_equal (sy_form_get (form, "conditions"), "-");
  gtk_check_button_set_active (floor, TRUE);
  assert_false (gtk_check_button_get_active (none));
  assert_string_equal (sy_form_get (form, "conditions"), "slippery-floor");
  gtk_check_button_set_active (hand, TRUE);
  assert_string_equal (sy_form_get (form, "conditions"), "one-hand slippery-floor");
  gtk_check_button_set_active (none, TRUE);
  assert_false (gtk_check_button_get_active (floor));
  assert_string_equal (sy_form_get (form, "conditions"), "-");
  gtk_check_button_set_active (none, FALSE);
  assert_string_equal (sy_form_get (form, "conditions"), "");
  sy_form_set (form, "conditions", "one-hand");
  assert_true (gtk_check_button_get_active (hand));
}

static void
words_may_take_several_lines (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  GtkWidget *fact = g_object_ref_sink (sy_prose_row_new (sy_form_find_field (form, "notes")));
  GtkTextBuffer *buffer;

  (void) state;
  sy_fact_bind (SY_FACT (fact), form, "notes");
  buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (sy_fact_get_field (SY_FACT (fact))));
  gtk_text_buffer_set_text (buffer, "one\ntwo", -1);
  assert_string_equal (sy_form_get (form, "notes"), "one\ntwo");
  sy_form_set (form, "notes", "three");
  assert_string_equal (sy_fact_get_text (SY_FACT (fact)), "three");
  g_object_unref (fact);
}

static GtkWidget *
find (GtkWidget *widget, const char *name)
{
  GtkWidget *found = NULL;

  if (strcmp (gtk_widget_get_name (widget), name) == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, name);
  return found;
}

static void
rows_follow_the_list (void **state)
{
  g_autoptr (SyForm) form = new_form ();
  GtkWidget *rows = g_object_ref_sink (sy_list_rows_new (form, "sessions"));
  GtkWidget *add = find (rows, "sessions");

  (void) state;
  assert_null (find (rows, "sessions[0].work"));
  g_signal_emit_by_name (add, "clicked");
  g_signal_emit_by_name (add, "clicked");
  assert_int_equal (sy_form_list_count (form, "sessions"), 2);
  gtk_editable_set_text (GTK_EDITABLE (find (rows, "sessions[1].work")), "45");
  assert_string_equal (sy_form_get (form, "sessions[1].work"), "45");
  sy_form_list_remove (form, "sessions", 0);
  assert_null (find (rows, "sessions[1].work"));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (find (rows, "sessions[0].work"))), "45");
  sy_form_undo (form);
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (find (rows, "sessions[1].work"))), "45");
  g_object_unref (rows);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_quantity_is_understood_and_kept_as_typed),
    cmocka_unit_test (a_wrong_entry_is_marked_in_words_and_for_assistive_technology),
    cmocka_unit_test (what_is_missing_is_marked_only_when_asked),
    cmocka_unit_test (arrows_step_a_number_in_the_unit_it_was_written_in),
    cmocka_unit_test (no_choice_is_made_by_itself),
    cmocka_unit_test (yes_and_no_are_choices),
    cmocka_unit_test (asked_and_none_applies_is_an_answer_of_its_own),
    cmocka_unit_test (words_may_take_several_lines),
    cmocka_unit_test (rows_follow_the_list),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
