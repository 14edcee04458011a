/* SPDX-License-Identifier: MIT */
/* Totals by quarter with the keyboard and for assistive technology. */
#include "sy-test.h"

#include <math.h>

#include "sy-quarters-view.h"

static const char *const names[] = { "2026 Q1", "2026 Q2", "2026 Q3" };
static const char *const words[] = { "the first", "the second", "the third" };
static const double index_values[] = { 1.1, NAN, -0.4 }, minutes[] = { 0, 12, 3 };
static const char *const index_texts[] = { "1.10", NULL, "−0.40" }, *const minute_texts[] = { "0 min", "12 min", "3 min" };
static const SyQuarterRow rows[] = {
  { "Index lower by", index_values, index_texts },
  { "Machine stands less", minutes, minute_texts },
};

static SyQuarters
quarters_of (int n)
{
  return (SyQuarters) { .n_quarters = n, .quarters = names, .n_rows = 2, .rows = rows };
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
keep_cb (SyQuartersView *view G_GNUC_UNUSED, const char *text, char **kept)
{
  g_free (*kept);
  *kept = g_strdup (text);
}

static void
press (GtkWidget *view, guint key, gboolean expected)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (view);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);
      gboolean done = FALSE;

      if (!GTK_IS_EVENT_CONTROLLER_KEY (controller))
        continue;
      g_signal_emit_by_name (controller, "key-pressed", key, 0u, (GdkModifierType) 0, &done);
      assert_int_equal (done, expected);
    }
}

static void
a_quarter_is_told_about_at_a_time (void **state)
{
  GtkWidget *widget = g_object_ref_sink (sy_quarters_view_new ("What improvements bought"));
  SyQuartersView *view = SY_QUARTERS_VIEW (widget);
  SyQuarters quarters = quarters_of (3);
  g_autofree char *told = NULL;

  (void) state;
  g_signal_connect (view, "told", G_CALLBACK (keep_cb), &told);
  assert_false (gtk_widget_get_visible (widget));
  sy_quarters_view_step (view, 1);
  assert_int_equal (sy_quarters_view_get_hot (view), -1);
  sy_quarters_view_set (view, &quarters, words, "all of them");
  assert_true (gtk_widget_get_visible (widget) && gtk_widget_get_focusable (widget));
  assert_described (widget, "all of them");
  press (widget, GDK_KEY_Right, TRUE);
  assert_described (widget, "the first");
  assert_string_equal (told, "the first");
  press (widget, GDK_KEY_End, TRUE);
  press (widget, GDK_KEY_Right, TRUE);
  assert_int_equal (sy_quarters_view_get_hot (view), 2);
  press (widget, GDK_KEY_Left, TRUE);
  assert_described (widget, "the second");
  press (widget, GDK_KEY_Home, TRUE);
  assert_int_equal (sy_quarters_view_get_hot (view), 0);
  press (widget, GDK_KEY_a, FALSE);

  /* What is told about stays where there still is one. */
  sy_quarters_view_set (view, &quarters, words, "all of them");
  assert_described (widget, "the first");
  press (widget, GDK_KEY_End, TRUE);
  quarters = quarters_of (2);
  sy_quarters_view_set (view, &quarters, words, "two of them");
  assert_described (widget, "two of them");
  sy_quarters_view_set (view, NULL, NULL, NULL);
  assert_false (gtk_widget_get_visible (widget));
  assert_string_equal (told, "");
  g_object_unref (widget);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_quarter_is_told_about_at_a_time),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
