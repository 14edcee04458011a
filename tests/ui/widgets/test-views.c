/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-bars-view.h"
#include "sy-beam-view.h"
#include "sy-scene-view.h"
#include "sy-test-wait.h"
#include "sy-verdict-label.h"

static const char task[]
  = "{\"method\":\"lift\",\"units\":\"metric\",\"avoid\":{\"possible\":\"no\"},\"load\":{\"typical\":%d,\"heaviest\":%d},"
    "\"origin\":{\"H\":55,\"V\":20,\"A\":0},\"destination\":{\"H\":45,\"V\":110,\"A\":30},\"frequency\":1,"
    "\"duration\":\"moderate\",\"coupling\":\"fair\",\"conditions\":[],\"assigned\":\"mixed-adults\"}";

static SyAssessment *
assess (int mass)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree char *text = g_strdup_printf (task, mass, mass);

  return sy_desk_assess (desk, text, strlen (text), SY_JUDGE_RECORD | SY_JUDGE_SPREAD, problems);
}

static double
index_of (const SyAssessment *assessment)
{
  return sy_findings_quantity (assessment->findings, "LI")->value;
}

static void
assert_described (GtkWidget *widget, const char *words)
{
  g_autofree char *wrong = gtk_test_accessible_check_property (
    GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words);

  assert_null (wrong);
  assert_true (gtk_test_accessible_has_role (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_ROLE_IMG));
}

static gboolean
is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

typedef struct
{
  SyBeamView *beam;
  double index;
} Arrival;

static gboolean
has_arrived (gpointer data)
{
  Arrival *arrival = data;

  return sy_beam_view_get_shown (arrival->beam) == arrival->index;
}

/* With animations the poise moves and comes to stand at the value; without, it is there at once. */
static void
the_poise_follows_the_index (void **state)
{
  g_autoptr (SyAssessment) light = assess (10);
  g_autoptr (SyAssessment) heavy = assess (18);
  GtkWidget *window = gtk_window_new ();
  GtkWidget *beam = sy_beam_view_new ();
  Arrival arrival = { SY_BEAM_VIEW (beam), index_of (heavy) };

  (void) state;
  gtk_window_set_child (GTK_WINDOW (window), beam);
  gtk_window_present (GTK_WINDOW (window));
  assert_true (sy_test_until (is_mapped, beam, 20000));
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", TRUE, NULL);
  assert_true (isnan (sy_beam_view_get_shown (arrival.beam)));
  sy_beam_view_set_findings (arrival.beam, light->findings, "light");
  assert_close (sy_beam_view_get_shown (arrival.beam), index_of (light), 0, 0);
  sy_beam_view_set_findings (arrival.beam, heavy->findings, "heavy");
  assert_true (sy_beam_view_get_shown (arrival.beam) < index_of (heavy));
  assert_true (sy_test_until (has_arrived, &arrival, 20000));
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  sy_beam_view_set_findings (arrival.beam, light->findings, "light again");
  assert_close (sy_beam_view_get_shown (arrival.beam), index_of (light), 0, 0);
  assert_described (beam, "light again");
  sy_beam_view_set_findings (arrival.beam, NULL, "none");
  assert_true (isnan (sy_beam_view_get_shown (arrival.beam)));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
a_drawing_is_described_by_its_measures (void **state)
{
  g_autoptr (SyAssessment) assessment = assess (18);
  const SyMethod *method = sy_method_find ("lift");
  GtkWidget *view = g_object_ref_sink (sy_scene_view_new (method, 0));
  g_autofree char *none = NULL;
  g_autofree char *said = NULL;

  (void) state;
  none = gtk_test_accessible_check_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "");
  assert_non_null (strstr (none, "nothing to draw"));
  sy_scene_view_set_assessment (SY_SCENE_VIEW (view), assessment);
  said = gtk_test_accessible_check_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "");
  assert_non_null (strstr (said, "H 55"));
  assert_non_null (strstr (said, "V 110"));
  g_object_unref (view);
}

static void
pressed_cb (SyBarsView *bars, const char *path, char **pressed)
{
  (void) bars;
  g_free (*pressed);
  *pressed = g_strdup (path);
}

static void
a_bar_leads_to_its_fact (void **state)
{
  GtkWidget *widget = g_object_ref_sink (sy_bars_view_new ());
  SyBarsView *bars = SY_BARS_VIEW (widget);
  char *pressed = NULL;

  (void) state;
  g_signal_connect (bars, "pressed", G_CALLBACK (pressed_cb), &pressed);
  sy_bars_view_begin (bars, 23, "23 kg", "6.3 kg RWL");
  sy_bars_view_add (bars, "H", "55 cm", 0.45, "origin.H");
  sy_bars_view_add (bars, "V", "20 cm", 0.84, "origin.V");
  sy_bars_view_end (bars);
  assert_described (widget, "H 55 cm × 0.45, V 20 cm × 0.84 → 6.3 kg RWL");
  sy_bars_view_press (bars, 1);
  assert_string_equal (pressed, "origin.V");
  sy_bars_view_press (bars, 2); /* no such bar */
  assert_string_equal (pressed, "origin.V");
  assert_true (gtk_widget_get_focusable (widget));
  g_free (pressed);
  g_object_unref (widget);
}

static void
a_verdict_is_said_in_words (void **state)
{
  GtkWidget *widget = g_object_ref_sink (sy_verdict_label_new (TRUE));
  SyVerdictLabel *label = SY_VERDICT_LABEL (widget);

  (void) state;
  for (int verdict = 0; verdict < SY_N_VERDICTS; verdict++)
    {
      sy_verdict_label_set (label, NULL, (SyVerdict) verdict, SY_URGENCY_NONE);
      assert_string_equal (sy_verdict_label_get_title (label), sy_verdict_title ((SyVerdict) verdict));
    }
  sy_verdict_label_set (label, NULL, SY_VERDICT_IMPROVE, SY_URGENCY_NOW);
  assert_string_equal (sy_verdict_label_get_title (label), "Improve the task · now");
  sy_verdict_label_set (label, NULL, SY_VERDICT_MECHANICAL, SY_URGENCY_NOW);
  assert_string_equal (sy_verdict_label_get_title (label), "Mechanical handling required");
  sy_verdict_label_set_none (label, "No result yet", "");
  assert_string_equal (sy_verdict_label_get_title (label), "No result yet");
  g_object_unref (widget);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (the_poise_follows_the_index),
    cmocka_unit_test (a_drawing_is_described_by_its_measures),
    cmocka_unit_test (a_bar_leads_to_its_fact),
    cmocka_unit_test (a_verdict_is_said_in_words),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
