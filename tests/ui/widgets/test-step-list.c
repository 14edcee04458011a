/* SPDX-License-Identifier: MIT */
/* The steps of a die change as rows: added by kind, moved, doubled, split and taken away by the keyboard, told with how each stands. */
#include "sy-test.h"

#include "sy-set-row.h"
#include "sy-step-edit.h"
#include "sy-step-list.h"
#include "sy-step-row.h"
#include "sy-step-words.h"
#include "sy-test-wait.h"

typedef struct
{
  SyForm *form;
  GtkWidget *window, *list;
} Fixture;

static int
set_up (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  Fixture *fixture = g_new0 (Fixture, 1);

  fixture->form = sy_form_new (desk, "changeover", SY_UNITS_METRIC);
  fixture->window = gtk_window_new ();
  fixture->list = sy_step_list_new (fixture->form, "steps");
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->list);
  gtk_window_present (GTK_WINDOW (fixture->window));
  *state = fixture;
  return 0;
}

static int
tear_down (void **state)
{
  Fixture *fixture = *state;

  gtk_window_destroy (GTK_WINDOW (fixture->window));
  g_object_unref (fixture->form);
  g_free (fixture);
  return 0;
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
do_action (Fixture *fixture, const char *name, const char *kind)
{
  assert_true (gtk_widget_activate_action (fixture->list, name, kind != NULL ? "s" : NULL, kind));
}

static void
focus_row (Fixture *fixture, guint item)
{
  g_autofree char *name = g_strdup_printf ("steps[%u]", item);
  GtkWidget *row = find (fixture->list, name);

  assert_non_null (row);
  gtk_widget_set_focusable (row, TRUE);
  assert_true (gtk_widget_grab_focus (row));
}

static char *
labels (SyForm *form)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < sy_form_list_count (form, "steps"); i++)
    {
      g_autofree char *path = g_strdup_printf ("steps[%u].label", i);

      g_string_append_printf (all, "%s%s", i > 0 ? "|" : "", sy_form_get (form, path));
    }
  return g_string_free (all, FALSE);
}

#define assert_labels(form, expected) \
  G_STMT_START \
  { \
    g_autofree char *now_ = labels (form); \
    assert_string_equal (now_, expected); \
  } \
  G_STMT_END

static const char *
focused (Fixture *fixture)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (fixture->window));

  if (GTK_IS_TEXT (focus))
    focus = gtk_widget_get_parent (focus);
  return focus != NULL ? gtk_widget_get_name (focus) : "";
}

static void
three_steps (Fixture *fixture)
{
  do_action (fixture, "steps.add", "isolate");
  do_action (fixture, "steps.add", "lift");
  do_action (fixture, "steps.add", "first-off");
}

static void
a_step_is_added_by_its_kind (void **state)
{
  Fixture *fixture = *state;

  do_action (fixture, "steps.add", "lift");
  assert_string_equal (sy_form_get (fixture->form, "steps[0].kind"), "lift");
  assert_string_equal (sy_form_get (fixture->form, "steps[0].when"), "stopped");
  assert_string_equal (focused (fixture), "steps[0].label");
  assert_int_equal (sy_step_list_get_open (SY_STEP_LIST (fixture->list)), 0);
  do_action (fixture, "steps.add", "lift");
  do_action (fixture, "steps.add", "release");
  assert_labels (fixture->form, "Lift|Lift 2|Release to production");
  assert_string_equal (sy_form_get (fixture->form, "steps[2].when"), "running");
  /* the facts of one step only are there to be typed */
  assert_null (find (fixture->list, "steps[0].label"));
  assert_non_null (find (fixture->list, "steps[2].label"));
  /* one step of undo each */
  sy_form_undo (fixture->form);
  assert_labels (fixture->form, "Lift|Lift 2");
  assert_int_equal (sy_step_list_get_open (SY_STEP_LIST (fixture->list)), -1);
  assert_string_not_equal (focused (fixture), "");
  focus_row (fixture, 0);
  do_action (fixture, "steps.insert", "block");
  assert_labels (fixture->form, "Lift|Block the slide|Lift 2");
  assert_string_equal (focused (fixture), "steps[1].label");
}

static void
steps_change_places (void **state)
{
  Fixture *fixture = *state;

  three_steps (fixture);
  focus_row (fixture, 0);
  do_action (fixture, "steps.down", NULL);
  assert_labels (fixture->form, "Lift|Stop and isolate|First part off");
  assert_string_equal (focused (fixture), "steps[1]");
  /* what is open stays open where it goes */
  assert_int_equal (sy_step_list_get_open (SY_STEP_LIST (fixture->list)), 2);
  do_action (fixture, "steps.down", NULL);
  assert_int_equal (sy_step_list_get_open (SY_STEP_LIST (fixture->list)), 1);
  assert_non_null (find (fixture->list, "steps[1].minutes"));
  /* at the end of the list there is nowhere to go */
  do_action (fixture, "steps.down", NULL);
  assert_labels (fixture->form, "Lift|First part off|Stop and isolate");
  /* from within the facts, the keyboard stays in the same fact */
  assert_true (gtk_widget_grab_focus (find (fixture->list, "steps[1].minutes")));
  do_action (fixture, "steps.up", NULL);
  assert_labels (fixture->form, "First part off|Lift|Stop and isolate");
  assert_string_equal (focused (fixture), "steps[0].minutes");
  sy_form_undo (fixture->form);
  assert_labels (fixture->form, "Lift|First part off|Stop and isolate");
}

static GtkDropTarget *
drop_target_of (Fixture *fixture, const char *row)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (find (fixture->list, row));

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) each = g_list_model_get_item (controllers, i);

      if (GTK_IS_DROP_TARGET (each))
        return GTK_DROP_TARGET (each);
    }
  return NULL;
}

/* As the pointer lets go of the handle of one row over another. */
static gboolean
drop (Fixture *fixture, GtkWidget *from, const char *to)
{
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean taken = FALSE;

  g_value_init (&value, SY_TYPE_STEP_ROW);
  g_value_set_object (&value, from);
  g_signal_emit_by_name (drop_target_of (fixture, to), "drop", &value, 1.0, 1.0, &taken);
  return taken;
}

static void
a_step_is_dragged_to_another_place (void **state)
{
  Fixture *fixture = *state;
  Fixture *other = NULL;

  three_steps (fixture);
  assert_true (drop (fixture, find (fixture->list, "steps[2]"), "steps[0]"));
  assert_labels (fixture->form, "First part off|Stop and isolate|Lift");
  assert_true (drop (fixture, find (fixture->list, "steps[0]"), "steps[1]"));
  assert_labels (fixture->form, "Stop and isolate|First part off|Lift");
  assert_false (drop (fixture, find (fixture->list, "steps[1]"), "steps[1]"));
  /* one of another change */
  set_up ((void **) &other);
  three_steps (other);
  assert_false (drop (fixture, find (other->list, "steps[0]"), "steps[1]"));
  tear_down ((void **) &other);
  assert_labels (fixture->form, "Stop and isolate|First part off|Lift");
  sy_form_undo (fixture->form);
  assert_labels (fixture->form, "First part off|Stop and isolate|Lift");
}

static void
a_step_is_doubled_and_taken_away (void **state)
{
  Fixture *fixture = *state;

  three_steps (fixture);
  sy_form_set (fixture->form, "steps[1].minutes", "4");
  focus_row (fixture, 1);
  do_action (fixture, "steps.duplicate", NULL);
  assert_labels (fixture->form, "Stop and isolate|Lift|Lift 2|First part off");
  assert_string_equal (sy_form_get (fixture->form, "steps[2].minutes"), "4");
  focus_row (fixture, 1);
  do_action (fixture, "steps.remove", NULL);
  assert_labels (fixture->form, "Stop and isolate|Lift 2|First part off");
  assert_string_equal (focused (fixture), "steps[1]");
  sy_form_undo (fixture->form);
  assert_labels (fixture->form, "Stop and isolate|Lift|Lift 2|First part off");
  for (int i = 0; i < 4; i++)
    {
      focus_row (fixture, 0);
      do_action (fixture, "steps.remove", NULL);
    }
  assert_int_equal (sy_form_list_count (fixture->form, "steps"), 0);
  assert_string_equal (focused (fixture), "steps");
}

static void
a_step_is_split (void **state)
{
  Fixture *fixture = *state;

  three_steps (fixture);
  sy_form_set (fixture->form, "steps[1].minutes", "5 min");
  sy_form_set (fixture->form, "steps[1].after[0]", "Stop and isolate");
  sy_form_set (fixture->form, "steps[2].after[0]", "Lift");
  focus_row (fixture, 1);
  do_action (fixture, "steps.split", NULL);
  assert_labels (fixture->form, "Stop and isolate|Lift (1)|Lift (2)|First part off");
  assert_string_equal (sy_form_get (fixture->form, "steps[1].minutes"), "2.5 min");
  assert_string_equal (sy_form_get (fixture->form, "steps[2].minutes"), "2.5 min");
  assert_string_equal (sy_form_get (fixture->form, "steps[1].after[0]"), "Stop and isolate");
  assert_string_equal (sy_form_get (fixture->form, "steps[2].after[0]"), "Lift (1)");
  assert_string_equal (sy_form_get (fixture->form, "steps[3].after[0]"), "Lift (2)");
  sy_form_undo (fixture->form);
  assert_labels (fixture->form, "Stop and isolate|Lift|First part off");
  assert_string_equal (sy_form_get (fixture->form, "steps[2].after[0]"), "Lift");
}

static void
minutes_are_halved_as_they_are_written (void **state)
{
  static const char *const halves[][2] = { { "5", "2.5" }, { "0,5", "0.25" }, { "10 min", "5 min" }, { "", "" },
                                           { "1:30", "" }, { "soon", "" },    { "inf", "" } };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (halves); i++)
    {
      g_autofree char *half = sy_step_dup_half (halves[i][0]);

      assert_string_equal (half, halves[i][1]);
    }
}

static const char *
state_of (Fixture *fixture, const char *row)
{
  return sy_step_row_get_state (SY_STEP_ROW (find (fixture->list, row)));
}

static void
a_row_tells_how_its_step_stands (void **state)
{
  static const char *const facts[][2] = {
    { "load.typical", "8" }, { "load.heaviest", "8" }, { "origin.H", "40" },      { "origin.V", "75" },
    { "origin.A", "0" },      { "destination.H", "40" }, { "destination.V", "100" }, { "destination.A", "0" },
    { "frequency", "0.2" },   { "duration", "short" },   { "coupling", "good" },    { "conditions", "-" },
  };
  static const char lift[] = "steps[1].facts";
  Fixture *fixture = *state;
  g_autoptr (SyForm) part = NULL;

  three_steps (fixture);
  assert_string_equal (state_of (fixture, "steps[0]"), "");
  assert_string_equal (state_of (fixture, "steps[1]"), "Not assessed yet");
  sy_form_begin_part (fixture->form, lift, "lift");
  assert_non_null (strstr (state_of (fixture, "steps[1]"), "missing"));
  part = sy_form_new_part (fixture->form, lift, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    sy_form_set (part, facts[i][0], facts[i][1]);
  sy_form_set_part (fixture->form, lift, part);
  assert_non_null (sy_form_get_assessment (part));
  assert_string_equal (state_of (fixture, "steps[1]"), "Within the hand-handling limits");
  /* with the whole assessed, the checks that are missing are counted too */
  sy_form_set (fixture->form, "people[0]", "Ann");
  for (guint i = 0; i < 3; i++)
    {
      g_autofree char *minutes = g_strdup_printf ("steps[%u].minutes", i);

      sy_form_set (fixture->form, minutes, "5");
    }
  assert_non_null (sy_form_get_assessment (fixture->form));
  {
    SyStepState now;

    sy_step_state_of (fixture->form, "steps", 0, &now);
    assert_true (now.missing > 0);
    sy_step_state_clear (&now);
  }
}

static void
the_checks_of_a_kind_come_first (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *group, *row;

  do_action (fixture, "steps.add", "release");
  group = find (fixture->list, "steps[0].checks");
  row = gtk_widget_get_ancestor (group, SY_TYPE_SET_ROW);
  assert_ptr_equal (gtk_widget_get_next_sibling (sy_set_row_get_check (SY_SET_ROW (row), "-")),
                    sy_set_row_get_check (SY_SET_ROW (row), "clamps-torqued"));
  sy_form_set (fixture->form, "steps[0].kind", "isolate");
  assert_ptr_equal (gtk_widget_get_next_sibling (sy_set_row_get_check (SY_SET_ROW (row), "-")),
                    sy_set_row_get_check (SY_SET_ROW (row), "isolated"));
}

static void
a_fact_of_a_step_is_revealed (void **state)
{
  Fixture *fixture = *state;

  three_steps (fixture);
  assert_true (sy_step_list_reveal (SY_STEP_LIST (fixture->list), "steps[0].facts"));
  assert_non_null (find (fixture->list, "steps[0].facts"));
  assert_false (sy_step_list_reveal (SY_STEP_LIST (fixture->list), "steps[0].minutes"));
  assert_false (sy_step_list_reveal (SY_STEP_LIST (fixture->list), "steps[7].minutes"));
  assert_false (sy_step_list_reveal (SY_STEP_LIST (fixture->list), "people"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (a_step_is_added_by_its_kind, set_up, tear_down),
    cmocka_unit_test_setup_teardown (steps_change_places, set_up, tear_down),
    cmocka_unit_test_setup_teardown (a_step_is_dragged_to_another_place, set_up, tear_down),
    cmocka_unit_test_setup_teardown (a_step_is_doubled_and_taken_away, set_up, tear_down),
    cmocka_unit_test_setup_teardown (a_step_is_split, set_up, tear_down),
    cmocka_unit_test (minutes_are_halved_as_they_are_written),
    cmocka_unit_test_setup_teardown (a_row_tells_how_its_step_stands, set_up, tear_down),
    cmocka_unit_test_setup_teardown (the_checks_of_a_kind_come_first, set_up, tear_down),
    cmocka_unit_test_setup_teardown (a_fact_of_a_step_is_revealed, set_up, tear_down),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
