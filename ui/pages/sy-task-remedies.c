/* SPDX-License-Identifier: MIT */
#include "sy-task-remedies.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-task-parts.h"
#include "sy-verdict-label.h"

struct _SyTaskRemedies
{
  GtkBox parent_instance;

  SyForm *form;
  SyTrial *trial;
  GtkWidget *trial_box; /* shown while something is tried */
  GtkWidget *list;
};

enum
{
  USED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskRemedies, sy_task_remedies, GTK_TYPE_BOX)

/* The trial beside the facts as they are */

static GtkWidget *
new_side (const char *title, SyForm *form)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  SyAssessment *assessment = sy_form_get_assessment (form);
  GtkWidget *verdict = sy_verdict_label_new (FALSE);
  const SyFindings *findings = assessment != NULL ? assessment->findings : NULL;
  g_autofree char *index = sy_part_index_text (findings);

  gtk_box_append (GTK_BOX (side), sy_part_label (title, "sy-note"));
  gtk_box_append (GTK_BOX (side), sy_part_label (index, "sy-trial-index"));
  if (findings != NULL)
    sy_verdict_label_set (SY_VERDICT_LABEL (verdict), findings->method, findings->verdict, findings->urgency);
  else
    sy_verdict_label_set_none (SY_VERDICT_LABEL (verdict), _("No result"), "");
  gtk_box_append (GTK_BOX (side), verdict);
  gtk_widget_set_hexpand (side, TRUE);
  return side;
}

static void
use_cb (GtkButton *button G_GNUC_UNUSED, SyTaskRemedies *self)
{
  sy_task_remedies_use (self);
}

static void
leave_cb (GtkButton *button G_GNUC_UNUSED, SyTaskRemedies *self)
{
  sy_task_remedies_leave (self);
}

static void
show_trial (SyTaskRemedies *self)
{
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *use = sy_button_new (_("_Use these values"), NULL);
  GtkWidget *leave = sy_button_new (_("_Leave as it is"), NULL);

  sy_part_empty (self->trial_box);
  gtk_box_append (GTK_BOX (self->trial_box), sy_part_heading (_("Tried on a copy")));
  gtk_box_set_homogeneous (GTK_BOX (sides), TRUE);
  gtk_box_append (GTK_BOX (sides), new_side (_("As it is"), self->form));
  gtk_box_append (GTK_BOX (sides), new_side (_("With this change"), self->trial->form));
  gtk_box_append (GTK_BOX (self->trial_box), sides);
  for (guint i = 0; i < self->trial->paths->len; i++)
    {
      const char *path = g_ptr_array_index (self->trial->paths, i);
      g_autofree char *name = sy_form_dup_name (self->form, path, FALSE);
      g_autofree char *before = sy_form_dup_shown (self->form, path);
      g_autofree char *after = sy_form_dup_shown (self->trial->form, path);
      g_autofree char *words = g_strdup_printf (_("%s: %s in place of %s"), name, after,
                                                before[0] != '\0' ? before : _("nothing"));

      gtk_box_append (GTK_BOX (self->trial_box), sy_part_label (words, NULL));
    }
  gtk_widget_add_css_class (use, "suggested-action");
  gtk_widget_set_name (use, "trial-use");
  gtk_widget_set_name (leave, "trial-leave");
  g_signal_connect (use, "clicked", G_CALLBACK (use_cb), self);
  g_signal_connect (leave, "clicked", G_CALLBACK (leave_cb), self);
  gtk_box_append (GTK_BOX (buttons), use);
  gtk_box_append (GTK_BOX (buttons), leave);
  gtk_box_append (GTK_BOX (self->trial_box), buttons);
  gtk_widget_set_visible (self->trial_box, TRUE);
  gtk_widget_grab_focus (use);
}

static void
end_trial (SyTaskRemedies *self)
{
  gboolean had_focus = gtk_widget_get_focus_child (self->trial_box) != NULL;

  g_clear_pointer (&self->trial, sy_trial_free);
  gtk_widget_set_visible (self->trial_box, FALSE);
  sy_part_empty (self->trial_box);
  if (had_focus)
    gtk_widget_child_focus (self->list, GTK_DIR_TAB_FORWARD);
}

/* The list */

static void
try_cb (GtkButton *button, SyTaskRemedies *self)
{
  sy_task_remedies_try (self, GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "sy-remedy")));
}

static GtkWidget *
new_remedy (SyTaskRemedies *self, const SyFindings *findings, int i)
{
  const SyRemedy *remedy = &findings->remedies[i];
  g_autofree char *words = sy_words_remedy (findings, remedy, sy_translate);
  g_autofree char *outcome = NULL;
  GtkWidget *button = gtk_button_new ();
  GtkWidget *row = sy_reason_row_new (&remedy->verdict, words,
                                      sy_translate (sy_verdict_title (remedy->verdict)));
  g_autofree char *name = g_strdup_printf ("remedy:%s", remedy->id);

  /* Translators: the name of a button: try a remedy, then what the remedy says. */
  outcome = g_strdup_printf (_("Try: %s"), words);
  gtk_button_set_child (GTK_BUTTON (button), row);
  gtk_widget_set_name (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, outcome, -1);
  gtk_widget_set_tooltip_text (button, _("Try this on a copy of the facts"));
  gtk_widget_add_css_class (button, "sy-remedy");
  g_object_set_data (G_OBJECT (button), "sy-remedy", GINT_TO_POINTER (i));
  g_signal_connect (button, "clicked", G_CALLBACK (try_cb), self);
  return sy_part_with_action (button, remedy->id, words);
}

static void
update (GtkWidget *widget, SyForm *form)
{
  SyTaskRemedies *self = SY_TASK_REMEDIES (widget);
  SyAssessment *assessment = sy_form_get_assessment (form);
  const SyFindings *findings = assessment != NULL ? assessment->findings : NULL;
  gboolean had_focus = gtk_widget_get_focus_child (widget) != NULL;

  /* What was tried was a change to other facts than there are now. */
  g_clear_pointer (&self->trial, sy_trial_free);
  gtk_widget_set_visible (self->trial_box, FALSE);
  sy_part_empty (self->trial_box);
  sy_part_empty (self->list);
  if (findings == NULL)
    gtk_box_append (GTK_BOX (self->list),
                    sy_part_label (_("What would help can be said once there is a result."), "sy-quiet"));
  else if (findings->n_remedies == 0)
    gtk_box_append (GTK_BOX (self->list),
                    sy_part_label (_("Nothing needs to be changed to reach the goals of this policy, or no "
                                     "single change or pair of changes brings the index down."),
                                   "sy-quiet"));
  else
    for (int i = 0; i < findings->n_remedies; i++)
      gtk_box_append (GTK_BOX (self->list), new_remedy (self, findings, i));
  if (had_focus)
    gtk_widget_child_focus (self->list, GTK_DIR_TAB_FORWARD);
}

static void
sy_task_remedies_dispose (GObject *object)
{
  SyTaskRemedies *self = SY_TASK_REMEDIES (object);

  g_clear_pointer (&self->trial, sy_trial_free);
  g_clear_object (&self->form);
  G_OBJECT_CLASS (sy_task_remedies_parent_class)->dispose (object);
}

static void
sy_task_remedies_class_init (SyTaskRemediesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_task_remedies_dispose;
  signals[USED] = g_signal_new ("used", SY_TYPE_TASK_REMEDIES, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
sy_task_remedies_init (SyTaskRemedies *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->trial_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (self->trial_box, "sy-trial");
  gtk_widget_set_visible (self->trial_box, FALSE);
  self->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self), self->trial_box);
  gtk_box_append (GTK_BOX (self), sy_part_heading (_("What would help")));
  gtk_box_append (GTK_BOX (self),
                  sy_part_label (_("Press one to try it on a copy of the facts. The form stays as it is."),
                                 "sy-note"));
  gtk_box_append (GTK_BOX (self), self->list);
}

GtkWidget *
sy_task_remedies_new (SyForm *form)
{
  SyTaskRemedies *self = g_object_new (SY_TYPE_TASK_REMEDIES, NULL);

  self->form = g_object_ref (form);
  sy_part_follow (GTK_WIDGET (self), form, update);
  return GTK_WIDGET (self);
}

void
sy_task_remedies_try (SyTaskRemedies *self, int i)
{
  SyAssessment *assessment = sy_form_get_assessment (self->form);

  g_return_if_fail (assessment != NULL && i >= 0 && i < assessment->findings->n_remedies);
  sy_part_catch_up (GTK_WIDGET (self));
  g_clear_pointer (&self->trial, sy_trial_free);
  self->trial = sy_trial_new (self->form, &assessment->findings->remedies[i]);
  show_trial (self);
}

void
sy_task_remedies_use (SyTaskRemedies *self)
{
  /* The change of the form ends the trial. */
  g_autoptr (SyTrial) trial = g_steal_pointer (&self->trial);

  if (trial == NULL)
    return;
  sy_trial_use (trial, self->form);
  g_signal_emit (self, signals[USED], 0);
}

void
sy_task_remedies_leave (SyTaskRemedies *self)
{
  end_trial (self);
}
