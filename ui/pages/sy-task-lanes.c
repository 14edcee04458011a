/* SPDX-License-Identifier: MIT */
#include "sy-task-lanes.h"

#include "sy-change-plan.h"
#include "sy-i18n.h"
#include "sy-lanes-view.h"
#include "sy-name.h"
#include "sy-task-parts.h"

#include <string.h>

#define PROBLEMS_MAX 12

struct _SyTaskLanes
{
  GtkBox parent_instance;

  GtkWidget *needed; /* what is missing, in the drawing's place */
  GtkWidget *whole;  /* everything else                         */
  GtkWidget *view, *words;
  GtkWidget *figures;
};

enum
{
  FACT,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskLanes, sy_task_lanes, GTK_TYPE_BOX)

/* What is missing */

static void
go_cb (GtkButton *button, SyTaskLanes *self)
{
  g_signal_emit (self, signals[FACT], 0, g_object_get_data (G_OBJECT (button), "path"));
}

/* The name of the step that a path is of: "Step 3 (Lift the old halves out)"; NULL: of none. */
static char *
dup_step (SyForm *form, const char *path)
{
  g_autofree char *label_path = NULL;
  const char *label, *end;
  int at;

  if (!g_str_has_prefix (path, "steps[") || (end = strchr (path, ']')) == NULL)
    return NULL;
  at = atoi (path + strlen ("steps["));
  label_path = g_strdup_printf ("steps[%d].label", at);
  label = sy_form_get (form, label_path);
  if (label[0] == '\0')
    return g_strdup_printf (_("Step %d"), at + 1);
  /* Translators: number and name of a step of a die change. */
  return g_strdup_printf (_("Step %d, %s"), at + 1, label);
}

/* Of another list: the item, "Die 1". NULL where the problem names what it is about by itself. */
static char *
dup_item (SyForm *form, const char *path)
{
  const char *end = strchr (path, ']');
  g_autofree char *item = end != NULL ? g_strndup (path, (gsize) (end + 1 - path)) : NULL;

  if (item != NULL)
    return sy_form_dup_name (form, item, FALSE);
  return path[0] == '\0' ? g_strdup (_("The whole")) : NULL;
}

static GtkWidget *
new_problem (SyTaskLanes *self, SyForm *form, guint i)
{
  const char *path = sy_form_problem_path (form, i);
  g_autofree char *step = dup_step (form, path);
  g_autofree char *of = step != NULL ? g_strdup (step) : dup_item (form, path);
  /* Translators: what a problem is of, and the problem. */
  g_autofree char *words = of != NULL ? g_strdup_printf (_("%s: %s"), of, sy_form_problem_words (form, i))
                                      : g_strdup (sy_form_problem_words (form, i));
  GtkWidget *button, *label;

  if (path[0] == '\0')
    return sy_part_label (words, "sy-problem");
  button = gtk_button_new ();
  label = sy_part_label (words, NULL);
  gtk_button_set_child (GTK_BUTTON (button), label);
  sy_name (button, words);
  gtk_widget_add_css_class (button, "sy-link");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_object_set_data_full (G_OBJECT (button), "path", g_strdup (path), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (go_cb), self);
  return button;
}

static void
show_needed (SyTaskLanes *self, SyForm *form)
{
  const guint n = sy_form_count_problems (form);

  sy_part_empty (self->needed);
  gtk_box_append (GTK_BOX (self->needed),
                  sy_part_label (sy_form_is_working (form)
                                   ? _("Being worked out…")
                                   : _("The timeline is drawn as soon as every step says what it needs:"),
                                 NULL));
  for (guint i = 0; i < n && i < PROBLEMS_MAX; i++)
    gtk_box_append (GTK_BOX (self->needed), new_problem (self, form, i));
  if (n > PROBLEMS_MAX)
    {
      g_autofree char *more = g_strdup_printf (P_("and %u more", "and %u more", n - PROBLEMS_MAX), n - PROBLEMS_MAX);

      gtk_box_append (GTK_BOX (self->needed), sy_part_label (more, "sy-quiet"));
    }
}

/* What it comes to */

static void
add_figures (GtkWidget *box, const char *heading, GPtrArray *figures, const char *name)
{
  GtkWidget *list
      = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "accessible-role", GTK_ACCESSIBLE_ROLE_LIST, NULL);

  gtk_widget_set_name (list, name);
  sy_name (list, heading);
  gtk_box_append (GTK_BOX (box), sy_part_heading (heading));
  for (guint i = 0; i < figures->len; i++)
    {
      const SyPlanFigure *figure = g_ptr_array_index (figures, i);
      GtkWidget *row = g_object_new (GTK_TYPE_BOX, "spacing", 12, "accessible-role", GTK_ACCESSIBLE_ROLE_LIST_ITEM, NULL);
      GtkWidget *title = sy_part_label (figure->title, figure->heavy ? "sy-strong" : NULL);
      GtkWidget *value = sy_part_label (figure->value, "sy-figures");
      /* Translators: a quantity and its value. */
      g_autofree char *words = g_strdup_printf (_("%s: %s"), figure->title, figure->value);

      sy_name (row, words);
      gtk_widget_add_css_class (row, "sy-quantity-row");
      gtk_widget_set_hexpand (title, TRUE);
      gtk_label_set_xalign (GTK_LABEL (value), 1);
      if (figure->heavy)
        gtk_widget_add_css_class (value, "sy-strong");
      gtk_box_append (GTK_BOX (row), title);
      gtk_box_append (GTK_BOX (row), value);
      gtk_box_append (GTK_BOX (list), row);
    }
  gtk_box_append (GTK_BOX (box), list);
}

static void
free_plan (gpointer plan)
{
  sy_change_plan_free (plan);
}

static void
show_plan (SyTaskLanes *self, const SyAssessment *assessment)
{
  SyChangePlan *plan = sy_change_plan_new (&assessment->facts, assessment->findings, sy_translate);
  g_autoptr (GPtrArray) figures = sy_change_plan_figures (assessment->findings, sy_translate);
  g_autoptr (GPtrArray) people = sy_change_plan_people (&assessment->facts, assessment->findings, sy_translate);
  g_autofree const char **words = g_new (const char *, plan->n_steps + 1);

  for (guint i = 0; i < plan->n_steps; i++)
    words[i] = plan->steps[i].words;
  sy_lanes_view_set (SY_LANES_VIEW (self->view), &plan->lanes, words, plan->sentence, plan, free_plan);
  sy_part_empty (self->figures);
  add_figures (self->figures, _("As a whole"), figures, "change-figures");
  add_figures (self->figures, _("Person by person"), people, "change-people");
  sy_part_end_tab (self->figures);
}

static void
update (GtkWidget *widget, SyForm *form)
{
  SyTaskLanes *self = SY_TASK_LANES (widget);
  const SyAssessment *assessment = sy_form_get_assessment (form);

  gtk_widget_set_visible (self->needed, assessment == NULL);
  gtk_widget_set_visible (self->whole, assessment != NULL);
  if (assessment == NULL)
    show_needed (self, form);
  else
    show_plan (self, assessment);
}

/* The tab */

static void
fact_cb (SyLanesView *view G_GNUC_UNUSED, const char *path, SyTaskLanes *self)
{
  g_signal_emit (self, signals[FACT], 0, path);
}

static void
told_cb (SyLanesView *view G_GNUC_UNUSED, const char *words, SyTaskLanes *self)
{
  gtk_label_set_text (GTK_LABEL (self->words), words);
}

static void
sy_task_lanes_class_init (SyTaskLanesClass *class)
{
  signals[FACT] = g_signal_new ("fact", SY_TYPE_TASK_LANES, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "box");
}

static void
sy_task_lanes_init (SyTaskLanes *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->needed = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->whole = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->view = sy_lanes_view_new ();
  self->words = sy_part_label (NULL, "sy-quiet");
  self->figures = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_name (self->needed, "lanes-needed");
  gtk_widget_set_name (self->words, "lanes-words");
  /* Two lines, so that what stands under them does not move from bar to bar. */
  gtk_label_set_lines (GTK_LABEL (self->words), 2);
  gtk_widget_set_size_request (self->words, -1, 40);
  gtk_widget_set_valign (self->words, GTK_ALIGN_START);
  gtk_label_set_yalign (GTK_LABEL (self->words), 0);
  g_signal_connect (self->view, "fact", G_CALLBACK (fact_cb), self);
  g_signal_connect (self->view, "told", G_CALLBACK (told_cb), self);
  gtk_box_append (GTK_BOX (self->whole), self->view);
  gtk_box_append (GTK_BOX (self->whole), self->words);
  gtk_box_append (GTK_BOX (self->whole), self->figures);
  gtk_box_append (GTK_BOX (self), self->needed);
  gtk_box_append (GTK_BOX (self), self->whole);
}

GtkWidget *
sy_task_lanes_new (SyForm *form)
{
  GtkWidget *self = g_object_new (SY_TYPE_TASK_LANES, NULL);

  sy_part_follow (self, form, update);
  return self;
}
