/* SPDX-License-Identifier: MIT */
/* Lanes of a die change with the keyboard and for assistive technology. */
#include "sy-test.h"

#include "sy-lanes-view.h"

static const char *const names[] = { "Ann", "Ben" };
static const SyLaneBar bars[] = {
  { "1", "Stop", 0, 5, 1u, true, false, false, SY_SHAPE_LEVEL, false },
  { "2", "Fetch", 0, 8, 2u, true, true, true, SY_SHAPE_DOWN, false },
  { "3", "Lift", 8, 12, 3u, true, false, true, SY_SHAPE_HOOK, true },
};
static const char *const words[] = { "the first", "the second", "the third" };

static SyLanes
lanes_of (int n)
{
  return (SyLanes) { .n_lanes = 2, .lanes = names, .n_bars = n, .bars = bars, .end = 12, .stands_from = 0, .stands_to = 12,
                     .machine_text = "Machine", .stands_text = "stands 12 min", .minutes_text = "Minutes", .hot = -1 };
}

static void
assert_described (GtkWidget *widget, const char *expected)
{
  g_autofree char *wrong
    = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, expected);

  if (wrong != NULL)
    print_error ("%s instead of %s\n", wrong, expected);
  assert_null (wrong);
}

static void
keep_cb (SyLanesView *view G_GNUC_UNUSED, const char *text, char **kept)
{
  g_free (*kept);
  *kept = g_strdup (text);
}

static void
press (GtkWidget *view, guint key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (view);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);
      gboolean done = FALSE;

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", key, 0u, (GdkModifierType) 0, &done);
    }
}

static void
free_cb (gpointer freed)
{
  (*(int *) freed)++;
}

static void
arrows_step_and_return_opens (void **state G_GNUC_UNUSED)
{
  const SyLanes lanes = lanes_of (3);
  GtkWidget *view = g_object_ref_sink (sy_lanes_view_new ());
  g_autofree char *path = NULL, *told = NULL;
  int freed = 0;

  g_signal_connect (view, "fact", G_CALLBACK (keep_cb), &path);
  g_signal_connect (view, "told", G_CALLBACK (keep_cb), &told);
  sy_lanes_view_set (SY_LANES_VIEW (view), &lanes, words, "the whole", &freed, free_cb);
  assert_true (gtk_test_accessible_has_role (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_ROLE_IMG));
  assert_true (gtk_widget_get_focusable (view));
  assert_described (view, "the whole");
  press (view, GDK_KEY_Return);
  assert_null (path);
  press (view, GDK_KEY_Right);
  assert_described (view, "the first");
  press (view, GDK_KEY_Down);
  assert_described (view, "the second");
  press (view, GDK_KEY_Up);
  assert_described (view, "the first");
  press (view, GDK_KEY_End);
  assert_described (view, "the third");
  assert_string_equal (told, "the third");
  press (view, GDK_KEY_Right);
  assert_int_equal (sy_lanes_view_get_hot (SY_LANES_VIEW (view)), 2);
  press (view, GDK_KEY_Return);
  assert_string_equal (path, "steps[2]");
  press (view, GDK_KEY_Home);
  press (view, GDK_KEY_space);
  assert_string_equal (path, "steps[0]");
  assert_int_equal (freed, 0);
  g_object_unref (view);
  assert_int_equal (freed, 1);
}

static void
what_is_told_stays_while_it_is_there (void **state G_GNUC_UNUSED)
{
  const SyLanes three = lanes_of (3), two = lanes_of (2);
  GtkWidget *view = g_object_ref_sink (sy_lanes_view_new ());

  sy_lanes_view_set (SY_LANES_VIEW (view), &three, words, "the whole", NULL, NULL);
  sy_lanes_view_step (SY_LANES_VIEW (view), 1);
  sy_lanes_view_set (SY_LANES_VIEW (view), &three, words, "the whole", NULL, NULL);
  assert_described (view, "the first");
  sy_lanes_view_step (SY_LANES_VIEW (view), 1);
  sy_lanes_view_step (SY_LANES_VIEW (view), 1);
  sy_lanes_view_set (SY_LANES_VIEW (view), &two, words, "of two", NULL, NULL);
  assert_described (view, "of two");
  sy_lanes_view_set (SY_LANES_VIEW (view), NULL, NULL, NULL, NULL, NULL);
  assert_false (gtk_widget_get_visible (view));
  sy_lanes_view_step (SY_LANES_VIEW (view), 1);
  assert_int_equal (sy_lanes_view_get_hot (SY_LANES_VIEW (view)), -1);
  g_object_unref (view);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (arrows_step_and_return_opens),
    cmocka_unit_test (what_is_told_stays_while_it_is_there),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
