/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-scene-move.h"
#include "sy-test-wait.h"

/* A drawing in which places are moved: by what the pointer and the keys call, into the form, and back into the drawing. */

static const char rig[]
  = "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"mass\":2000,\"mass_basis\":\"weighed\",\"cg\":[0,0,-100],"
    "\"points\":[{\"label\":\"A\",\"at\":[-1000,-600,0]},{\"label\":\"B\",\"at\":[1000,-600,0]},"
    "{\"label\":\"C\",\"at\":[1000,600,0]},{\"label\":\"D\",\"at\":[-1000,600,0]}],"
    "\"legs\":[{\"point\":\"A\"},{\"point\":\"B\"},{\"point\":\"C\"},{\"point\":\"D\"}],\"hook\":%s}";

typedef struct
{
  SyForm *form;
  GtkWidget *window, *view;
  int moves, ends;
} Place;

static void
changed_cb (SyForm *form, Place *place)
{
  sy_scene_view_set_assessment (SY_SCENE_VIEW (place->view), sy_form_get_assessment (form));
}

static void
moved_cb (SySceneView *view, const SySceneMove *move, gboolean dragging, Place *place)
{
  (void) view;
  assert_non_null (move->fact);
  place->moves++;
  place->ends += dragging ? 0 : 1;
}

static gboolean
has_size (gpointer widget)
{
  return gtk_widget_get_mapped (widget) && gtk_widget_get_width (widget) > 0;
}

static void
begin (Place *place, const char *hook, gsize view)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GString) document = g_string_new (rig);

  g_string_replace (document, "%s", hook, 1);
  *place = (Place) { .form = sy_form_new (desk, "rigged-lift", SY_UNITS_METRIC) };
  assert_true (sy_form_load_document (place->form, document->str, NULL));
  place->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (place->window), 420, 400);
  place->view = sy_scene_view_new (sy_method_find ("rigged-lift"), view);
  gtk_window_set_child (GTK_WINDOW (place->window), place->view);
  g_signal_connect (place->form, "changed", G_CALLBACK (changed_cb), place);
  g_signal_connect (place->view, "moved", G_CALLBACK (moved_cb), place);
  sy_scene_view_bind_form (SY_SCENE_VIEW (place->view), place->form);
  changed_cb (place->form, place);
  gtk_window_present (GTK_WINDOW (place->window));
  assert_true (sy_test_until (has_size, place->view, 20000));
}

static void
end (Place *place)
{
  GtkWidget *view = place->view;

  g_signal_handlers_disconnect_by_data (place->form, place);
  g_object_add_weak_pointer (G_OBJECT (view), (gpointer *) &place->view);
  gtk_window_destroy (GTK_WINDOW (place->window));
  assert_null (place->view);
  g_object_unref (place->form);
}

static guint
handle (Place *place, const char *fact)
{
  SySceneView *view = SY_SCENE_VIEW (place->view);

  for (guint i = 0; i < sy_scene_view_count_handles (view); i++)
    if (strcmp (sy_scene_view_handle_fact (view, i), fact) == 0)
      return i;
  fail_msg ("no handle %s", fact);
  return 0;
}

static double
number (Place *place, const char *path)
{
  return g_ascii_strtod (sy_form_get (place->form, path), NULL);
}

static void
assert_says (Place *place, const char *words)
{
  g_autofree char *said = gtk_test_accessible_check_property (GTK_ACCESSIBLE (place->view),
                                                              GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "");

  if (said == NULL || strstr (said, words) == NULL)
    fail_msg ("not said: %s; but %s", words, said);
}

static void
a_drag_is_one_step_of_undo (void **state)
{
  Place place;
  SySceneView *view;
  double x, y, to_x, to_y;
  double across;

  (void) state;
  begin (&place, "{\"above\":1500}", 0);
  view = SY_SCENE_VIEW (place.view);
  assert_int_equal (sy_scene_view_count_handles (view), 5);
  assert_true (sy_scene_view_handle_place (view, handle (&place, "points[2].at"), &x, &y));
  assert_false (sy_scene_view_drag_begin (view, x + 40, y + 40));
  assert_true (sy_scene_view_drag_begin (view, x + 3, y - 3));
  for (int i = 1; i <= 20; i++)
    sy_scene_view_drag_update (view, -2 * i, i);
  /* Under the pointer all the time: what is shown of the world does not change while dragging. */
  assert_true (sy_scene_view_handle_place (view, handle (&place, "points[2].at"), &to_x, &to_y));
  assert_close (to_x, x - 40, 0.5, 0);
  assert_close (to_y, y + 20, 0.5, 0);
  sy_scene_view_drag_end (view);

  across = number (&place, "points[2].at[0]");
  assert_true (across < 1000 && across > 600);
  assert_close (across, round (across), 0, 0);
  assert_true (number (&place, "points[2].at[1]") < 600);
  assert_string_equal (sy_form_get (place.form, "points[2].at[2]"), "0");
  assert_string_equal (sy_form_get (place.form, "points[1].at[0]"), "1000");
  assert_int_equal (place.moves, 21);
  assert_int_equal (place.ends, 1);
  sy_form_undo (place.form);
  assert_string_equal (sy_form_get (place.form, "points[2].at[0]"), "1000");
  assert_string_equal (sy_form_get (place.form, "points[2].at[1]"), "600");
  assert_false (sy_form_can_undo (place.form));

  /* Taken hold of and let go: nothing moved, nothing to undo. */
  assert_true (sy_scene_view_handle_place (view, handle (&place, "points[2].at"), &x, &y));
  assert_true (sy_scene_view_drag_begin (view, x, y));
  sy_scene_view_drag_update (view, 0, 0);
  sy_scene_view_drag_end (view);
  assert_false (sy_form_can_undo (place.form));
  end (&place);
}

static void
tab_and_arrows_move_handles (void **state)
{
  Place place;
  SySceneView *view;

  (void) state;
  begin (&place, "{\"above\":1500}", 1);
  view = SY_SCENE_VIEW (place.view);
  assert_true (gtk_widget_get_focusable (place.view));
  gtk_widget_grab_focus (place.view);
  gtk_widget_child_focus (place.view, GTK_DIR_TAB_FORWARD);
  assert_int_equal (sy_scene_view_count_handles (view), 6);
  while (g_strcmp0 (sy_scene_view_get_focus_fact (view), "hook.above") != 0)
    assert_true (gtk_widget_child_focus (place.view, GTK_DIR_TAB_FORWARD));
  /* It is the last: Tab goes on to what is behind the drawing. */
  assert_false (gtk_widget_child_focus (place.view, GTK_DIR_TAB_FORWARD));
  assert_says (&place, "1500 mm");
  assert_says (&place, "arrow keys");
  assert_true (sy_scene_view_move (view, 0, 5));
  assert_string_equal (sy_form_get (place.form, "hook.above"), "1505");
  assert_says (&place, "1505 mm");
  assert_true (sy_scene_view_move (view, 25, 0)); /* a height does not go sideways */
  assert_string_equal (sy_form_get (place.form, "hook.above"), "1505");
  assert_true (gtk_widget_child_focus (place.view, GTK_DIR_TAB_BACKWARD));
  assert_string_equal (sy_scene_view_get_focus_fact (view), "cg");
  assert_true (sy_scene_view_move (view, -25, 1));
  assert_string_equal (sy_form_get (place.form, "cg[0]"), "-25");
  assert_string_equal (sy_form_get (place.form, "cg[1]"), "0");
  assert_string_equal (sy_form_get (place.form, "cg[2]"), "-99");
  end (&place);
}

/* A hook that is given as a place stays over the centre when the centre is moved. */
static void
the_hook_goes_along (void **state)
{
  Place place;
  SySceneView *view;

  (void) state;
  begin (&place, "{\"at\":[0,0,1500]}", 0);
  view = SY_SCENE_VIEW (place.view);
  gtk_widget_grab_focus (place.view);
  while (g_strcmp0 (sy_scene_view_get_focus_fact (view), "cg") != 0)
    assert_true (gtk_widget_child_focus (place.view, GTK_DIR_TAB_FORWARD));
  assert_true (sy_scene_view_move (view, 25, -5));
  assert_string_equal (sy_form_get (place.form, "cg[0]"), "25");
  assert_string_equal (sy_form_get (place.form, "hook.at[0]"), "25");
  assert_string_equal (sy_form_get (place.form, "hook.at[1]"), "-5");
  assert_string_equal (sy_form_get (place.form, "hook.at[2]"), "1500");
  assert_non_null (sy_form_get_assessment (place.form));
  end (&place);
}

/* A hook dragged below the points holds nothing; it is drawn all the same, and can be dragged up again. */
static void
a_drag_leads_back_again (void **state)
{
  Place place;
  SySceneView *view;
  double x, y;

  (void) state;
  begin (&place, "{\"above\":1500}", 1);
  view = SY_SCENE_VIEW (place.view);
  assert_true (sy_scene_view_handle_place (view, handle (&place, "hook.above"), &x, &y));
  assert_true (sy_scene_view_drag_begin (view, x, y));
  for (int i = 1; i <= 100; i++)
    sy_scene_view_drag_update (view, 0, 4 * i);
  sy_scene_view_drag_end (view);
  assert_true (number (&place, "hook.above") < 0);
  assert_non_null (sy_form_get_assessment (place.form));
  assert_true (sy_scene_view_handle_place (view, handle (&place, "hook.above"), &x, &y));
  assert_true (y > 0 && y < gtk_widget_get_height (place.view));
  assert_true (sy_scene_view_drag_begin (view, x, y));
  sy_scene_view_drag_update (view, 0, -1.5 * gtk_widget_get_height (place.view));
  sy_scene_view_drag_end (view);
  assert_true (number (&place, "hook.above") > 0);
  sy_form_undo (place.form);
  sy_form_undo (place.form);
  assert_string_equal (sy_form_get (place.form, "hook.above"), "1500");
  end (&place);
}

/* What makes the facts impossible leaves the last drawing under the pointer; it is gone when the drag ends there. */
static void
a_drag_outlives_its_drawing (void **state)
{
  Place place;
  SySceneView *view;
  double x, y;

  (void) state;
  begin (&place, "{\"above\":1500}", 0);
  view = SY_SCENE_VIEW (place.view);
  assert_true (sy_scene_view_handle_place (view, handle (&place, "cg"), &x, &y));
  assert_true (sy_scene_view_drag_begin (view, x, y));
  sy_scene_view_set_assessment (view, NULL);
  assert_int_equal (sy_scene_view_count_handles (view), 5);
  sy_scene_view_drag_end (view);
  assert_int_equal (sy_scene_view_count_handles (view), 0);
  end (&place);
}

static void
a_drawing_to_look_at_has_no_handles (void **state)
{
  GtkWidget *view = g_object_ref_sink (sy_scene_view_new (sy_method_find ("rigged-lift"), 0));

  (void) state;
  assert_int_equal (sy_scene_view_count_handles (SY_SCENE_VIEW (view)), 0);
  assert_false (gtk_widget_get_focusable (view));
  assert_false (sy_scene_view_drag_begin (SY_SCENE_VIEW (view), 10, 10));
  assert_false (sy_scene_view_move (SY_SCENE_VIEW (view), 1, 1));
  g_object_unref (view);
}

static void
steps_are_round (void **state)
{
  const SyMethod *method = sy_method_find ("rigged-lift");
  const SyHandle point = { .fact = "points[0].at", .value = { 10.5, 3.5, 7.25 }, .right = { 1, 0, 0 }, .up = { 0, 0, 1 } };
  const SyHandle mass = { .fact = "mass", .number = true, .value = { 10 }, .up = { 1, 0, 0 } };
  SySceneMove move;

  (void) state;
  assert_true (sy_scene_move_make (method, &point, SY_UNITS_METRIC, 3.4, 0, &move));
  assert_close (move.value[0], 14, 0, 0);
  assert_close (move.value[1], 3.5, 0, 0);  /* not seen from here: as it was */
  assert_close (move.value[2], 7.25, 0, 0); /* not moved: as it was          */
  assert_true (move.changes[0] && !move.changes[1] && move.changes[2]);
  assert_true (sy_scene_move_make (method, &point, SY_UNITS_US, 0.07, -0.26, &move));
  assert_close (move.value[0], 10.55, 1e-12, 0);
  assert_close (move.value[2], 7, 1e-12, 0);
  /* A fact does not leave the range of its field. */
  assert_false (sy_scene_move_make (method, &mass, SY_UNITS_METRIC, 0, -20, &move));
  assert_true (sy_scene_move_make (method, &mass, SY_UNITS_METRIC, 0, -5, &move));
  assert_close (move.value[0], 5, 0, 0);
  assert_close (sy_scene_step (SY_UNITS_METRIC), 1, 0, 0);
  assert_close (sy_scene_step (SY_UNITS_US), 0.05, 0, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_drag_is_one_step_of_undo),
    cmocka_unit_test (tab_and_arrows_move_handles),
    cmocka_unit_test (the_hook_goes_along),
    cmocka_unit_test (a_drag_leads_back_again),
    cmocka_unit_test (a_drag_outlives_its_drawing),
    cmocka_unit_test (a_drawing_to_look_at_has_no_handles),
    cmocka_unit_test (steps_are_round),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
