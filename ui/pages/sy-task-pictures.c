/* SPDX-License-Identifier: MIT */
#include "sy-task-result.h"

#include "sy-bars-view.h"
#include "sy-beam-view.h"
#include "sy-i18n.h"
#include "sy-lift.h"
#include "sy-scene-view.h"
#include "sy-task-kinds.h"
#include "sy-task-parts.h"
#include "sy-task-plan.h"

#define VIEWS_MAX 4
#define LARGE_HEIGHT 300 /* of a view of a method that has nothing but views here */
#define ENDS_MAX 2

struct _SyTaskPictures
{
  GtkBox parent_instance;

  SyForm *form;
  GtkWidget *empty;   /* said while there is nothing to draw */
  GtkWidget *full;
  GtkWidget *views[VIEWS_MAX];
  GtkWidget *mass;
  GtkWidget *mass_words;
  GtkWidget *bars_title;
  GtkWidget *ends[ENDS_MAX];
  GtkWidget *end_row;
  GtkWidget *bars;
  int end;            /* whose bars are shown; -1: the end that governs */
  gboolean loading;
};

enum
{
  FACT,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskPictures, sy_task_pictures, GTK_TYPE_BOX)

static const SyQuantity *
end_quantity (const SyFindings *findings, const SyPlanEnd *end, const char *name)
{
  g_autofree char *symbol = g_strdup_printf ("%s.%s", end->id, name);

  return sy_findings_quantity (findings, symbol);
}

static gboolean
has_end (const SyFindings *findings, const SyPlanEnd *end)
{
  const SyQuantity *limit = end_quantity (findings, end, "RWL");

  return limit != NULL && limit->state != SY_STATE_ABSENT;
}

/* What a bar's fact is, in words short enough to stand beside it, and where to go for it. */
static char *
bar_fact (SyTaskPictures *self, const SyFindings *findings, const SyPlanBar *bar, const SyPlanEnd *end,
          char **path)
{
  const SyQuantity *derived = sy_findings_quantity (findings, bar->symbol);
  g_autofree char *at
      = bar->of_end ? g_strdup_printf ("%s.%s", end->id, bar->fact) : g_strdup (bar->fact);

  if (bar->other != NULL && sy_form_get (self->form, at)[0] == '\0')
    {
      g_free (at);
      at = g_strdup (bar->other);
    }
  *path = g_strdup (at);
  /* A quantity of the findings (D, F) says more than the fact that it comes from. */
  if (derived != NULL && derived->state == SY_STATE_VALUE)
    return sy_words_quantity (derived->value, derived->symbol->kind, findings->units);
  return sy_form_dup_shown (self->form, at);
}

static void
update_bars (SyTaskPictures *self, const SyFindings *findings)
{
  gsize n_ends, n_bars;
  const SyPlanEnd *ends = sy_task_plan_ends (findings->method, &n_ends);
  const SyPlanBar *bars = sy_task_plan_bars (findings->method, &n_bars);
  int shown = self->end;
  double start = sy_lift_constants (findings->units)->load_constant;
  const SyQuantity *limit;
  g_autofree char *start_text = sy_words_quantity (start, SY_KIND_MASS, findings->units);
  g_autofree char *limit_text = NULL;
  g_autofree char *end_text = NULL;
  g_autofree char *title = NULL;
  guint given = 0;

  if (shown < 0 || !has_end (findings, &ends[shown]))
    shown = findings->sink.governing_end;
  limit = end_quantity (findings, &ends[shown], "RWL");
  limit_text = sy_words_quantity (limit->value, SY_KIND_MASS, findings->units);
  end_text = g_strdup_printf ("%s RWL", limit_text);
  title = g_strdup_printf (_("What takes %s down to %s"), start_text, limit_text);
  gtk_label_set_text (GTK_LABEL (self->bars_title), title);
  self->loading = TRUE;
  for (gsize i = 0; i < n_ends && i < ENDS_MAX; i++)
    {
      gtk_widget_set_visible (self->ends[i], has_end (findings, &ends[i]));
      given += has_end (findings, &ends[i]) ? 1 : 0;
    }
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->ends[shown]), TRUE);
  gtk_widget_set_visible (self->end_row, given > 1);
  self->loading = FALSE;
  sy_bars_view_begin (SY_BARS_VIEW (self->bars), start, start_text, end_text);
  for (gsize i = 0; i < n_bars; i++)
    {
      const SyQuantity *factor = end_quantity (findings, &ends[shown], bars[i].multiplier);
      g_autofree char *path = NULL;
      g_autofree char *fact = NULL;

      if (factor == NULL || factor->state != SY_STATE_VALUE)
        continue;
      fact = bar_fact (self, findings, &bars[i], &ends[shown], &path);
      sy_bars_view_add (SY_BARS_VIEW (self->bars), bars[i].symbol, fact, factor->value, path);
    }
  sy_bars_view_end (SY_BARS_VIEW (self->bars));
}

static void
update_mass (SyTaskPictures *self, const SyFindings *findings)
{
  const SyQuantity *mass = sy_findings_quantity (findings, "mass_each");
  const SyQuantity *limit = sy_findings_quantity (findings, "m_ref");
  g_autofree char *mass_text = NULL;
  g_autofree char *limit_text = NULL;
  g_autofree char *limit_words = NULL;
  g_autofree char *sentence = NULL;

  gtk_widget_set_visible (self->mass, mass != NULL && limit != NULL);
  gtk_widget_set_visible (self->mass_words, mass != NULL && limit != NULL);
  if (mass == NULL || limit == NULL)
    return;
  mass_text = sy_words_against (mass->value, limit->value, SY_KIND_MASS, findings->units);
  limit_text = sy_words_quantity (limit->value, SY_KIND_MASS, findings->units);
  limit_words = g_strdup_printf (_("%s reference mass"), limit_text);
  if (mass->value > limit->value)
    sentence = g_strdup_printf (_("%s by person is over the reference mass of %s for who may be assigned."),
                                mass_text, limit_text);
  else
    sentence = g_strdup_printf (
      _("%s by person is within the reference mass of %s for who may be assigned."), mass_text,
      limit_text);
  gtk_label_set_text (GTK_LABEL (self->mass_words), sentence);
  sy_mass_view_set (SY_MASS_VIEW (self->mass), mass->value, limit->value, mass_text, limit_words,
                    sentence);
}

static void
update (GtkWidget *widget, SyForm *form)
{
  SyTaskPictures *self = SY_TASK_PICTURES (widget);
  SyAssessment *assessment = sy_form_get_assessment (form);

  gtk_widget_set_visible (self->empty, assessment == NULL);
  gtk_widget_set_visible (self->full, assessment != NULL);
  for (gsize i = 0; i < VIEWS_MAX && self->views[i] != NULL; i++)
    sy_scene_view_set_assessment (SY_SCENE_VIEW (self->views[i]), assessment);
  if (assessment == NULL)
    return;
  if (self->bars == NULL)
    return;
  update_mass (self, assessment->findings);
  update_bars (self, assessment->findings);
}

static void
end_toggled_cb (GtkCheckButton *radio, SyTaskPictures *self)
{
  SyAssessment *assessment;

  if (self->loading || !gtk_check_button_get_active (radio))
    return;
  for (int i = 0; i < ENDS_MAX; i++)
    if (self->ends[i] == GTK_WIDGET (radio))
      self->end = i;
  assessment = sy_form_get_assessment (self->form);
  if (assessment != NULL)
    update_bars (self, assessment->findings);
}

static void
pressed_cb (SyBarsView *bars G_GNUC_UNUSED, const char *path, SyTaskPictures *self)
{
  g_signal_emit (self, signals[FACT], 0, path);
}

static void
sy_task_pictures_dispose (GObject *object)
{
  g_clear_object (&SY_TASK_PICTURES (object)->form);
  G_OBJECT_CLASS (sy_task_pictures_parent_class)->dispose (object);
}

static void
sy_task_pictures_class_init (SyTaskPicturesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_task_pictures_dispose;
  signals[FACT] = g_signal_new ("fact", SY_TYPE_TASK_PICTURES, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sy_task_pictures_init (SyTaskPictures *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->end = -1;
}

static GtkWidget *
new_view (SyTaskPictures *self, gsize view)
{
  const SyMethod *method = sy_form_get_method (self->form);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *title = sy_part_label (sy_translate (method->view_titles[view]), "sy-note");

  self->views[view] = sy_scene_view_new (method, view);
  gtk_widget_add_css_class (self->views[view], "sy-drawing");
  sy_scene_view_bind_form (SY_SCENE_VIEW (self->views[view]), self->form);
  gtk_box_append (GTK_BOX (column), title);
  gtk_box_append (GTK_BOX (column), self->views[view]);
  return column;
}

static void
add_ends (SyTaskPictures *self)
{
  gsize n;
  const SyPlanEnd *ends = sy_task_plan_ends (sy_form_get_method (self->form), &n);

  self->end_row = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_HORIZONTAL, "spacing", 18,
                                "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->end_row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Which end the bars are for"), -1);
  for (gsize i = 0; i < n && i < ENDS_MAX; i++)
    {
      self->ends[i] = sy_part_radio (sy_translate (ends[i].title));
      if (i > 0)
        gtk_check_button_set_group (GTK_CHECK_BUTTON (self->ends[i]), GTK_CHECK_BUTTON (self->ends[0]));
      g_signal_connect (self->ends[i], "toggled", G_CALLBACK (end_toggled_cb), self);
      gtk_box_append (GTK_BOX (self->end_row), self->ends[i]);
    }
}

/* Of a lift: what takes the limit down, and the mass against the reference mass. */
static void
add_limits (SyTaskPictures *self)
{
  self->mass = sy_mass_view_new ();
  self->mass_words = sy_part_label (NULL, "sy-note");
  self->bars_title = sy_part_heading ("");
  add_ends (self);
  self->bars = sy_bars_view_new ();
  gtk_widget_set_name (self->bars, "bars");
  g_signal_connect (self->bars, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_box_append (GTK_BOX (self->full), self->bars_title);
  gtk_box_append (GTK_BOX (self->full), self->end_row);
  gtk_box_append (GTK_BOX (self->full), self->bars);
  gtk_box_append (GTK_BOX (self->full),
                  sy_part_label (_("Press a bar to go to its fact."), "sy-note"));
  gtk_box_append (GTK_BOX (self->full), sy_part_heading (_("Mass against the reference mass")));
  gtk_box_append (GTK_BOX (self->full), self->mass);
  gtk_box_append (GTK_BOX (self->full), self->mass_words);
}

/* In pairs; the first of an odd number has a row to itself. */
static GtkWidget *
new_views (SyTaskPictures *self, const SyMethod *method, gboolean large)
{
  GtkWidget *grid = gtk_grid_new ();
  gsize n = MIN (method->n_views, VIEWS_MAX);
  int at = n % 2 == 1 && n > 1 ? -1 : 0;

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 12);
  for (gsize i = 0; i < n; i++, at++)
    {
      GtkWidget *view = new_view (self, i);

      if (large)
        gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->views[i]), LARGE_HEIGHT);
      if (at < 0)
        gtk_grid_attach (GTK_GRID (grid), view, 0, 0, 2, 1);
      else
        gtk_grid_attach (GTK_GRID (grid), view, at % 2, at / 2 + (n % 2 == 1 && n > 1), 1, 1);
    }
  return grid;
}

GtkWidget *
sy_task_pictures_new (SyForm *form)
{
  SyTaskPictures *self = g_object_new (SY_TYPE_TASK_PICTURES, NULL);
  const SyMethod *method = sy_form_get_method (form);
  gsize n_bars;

  (void) sy_task_plan_bars (method, &n_bars);
  self->form = g_object_ref (form);
  self->empty = sy_part_label (sy_translate (sy_task_kind (method)->no_drawing), "sy-quiet");
  self->full = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->full), new_views (self, method, n_bars == 0));
  if (n_bars > 0)
    add_limits (self);
  gtk_box_append (GTK_BOX (self), self->empty);
  gtk_box_append (GTK_BOX (self), self->full);
  sy_part_follow (GTK_WIDGET (self), form, update);
  return GTK_WIDGET (self);
}
