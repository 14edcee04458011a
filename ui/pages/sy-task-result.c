/* SPDX-License-Identifier: MIT */
#include "sy-task-result.h"

#include "sy-beam-view.h"
#include "sy-i18n.h"
#include "sy-task-parts.h"
#include "sy-verdict-label.h"

struct _SyTaskResult
{
  GtkBox parent_instance;

  GtkWidget *verdict;
  GtkWidget *symbol;
  GtkWidget *index;
  GtkWidget *beam;
  GtkWidget *sentence;
  GtkWidget *cautions;
  GtkWidget *all_cautions;
};

enum
{
  CAUTIONS,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskResult, sy_task_result, GTK_TYPE_BOX)

static void
update_with_findings (SyTaskResult *self, const SyFindings *findings)
{
  g_autofree char *sentence = sy_words_result (findings, sy_translate);
  g_autofree char *index = sy_part_index_text (findings);
  g_autofree char *screening = sy_words_screening (sy_translate);
  int more = sy_words_n_cautions (findings) - 1;

  sy_verdict_label_set (SY_VERDICT_LABEL (self->verdict), findings->verdict, findings->urgency);
  /* The strictest reason stands beside the verdict: a mass over its limit must not hide behind an index. */
  if (findings->n_reasons > 0)
    {
      g_autofree char *why = sy_words_reason (findings, &findings->reasons[0], sy_translate);
      sy_verdict_label_set_why (SY_VERDICT_LABEL (self->verdict), why);
    }
  gtk_label_set_text (GTK_LABEL (self->symbol), findings->method->index_symbol);
  gtk_label_set_text (GTK_LABEL (self->index), index);
  gtk_label_set_text (GTK_LABEL (self->sentence), sentence);
  gtk_label_set_text (GTK_LABEL (self->cautions), screening);
  sy_beam_view_set_findings (SY_BEAM_VIEW (self->beam), findings, sentence);
  gtk_widget_set_visible (self->all_cautions, more > 0);
  if (more > 0)
    {
      g_autofree char *label
          = g_strdup_printf (P_("One more caution", "%d more cautions", (gulong) more), more);

      gtk_button_set_label (GTK_BUTTON (self->all_cautions), label);
    }
}

static void
update (GtkWidget *widget, SyForm *form)
{
  SyTaskResult *self = SY_TASK_RESULT (widget);
  SyAssessment *assessment = sy_form_get_assessment (form);
  g_autofree char *needed = NULL;
  g_autofree char *screening = NULL;

  if (assessment != NULL)
    {
      update_with_findings (self, assessment->findings);
      return;
    }
  needed = sy_part_problems_sentence (form);
  screening = sy_words_screening (sy_translate);
  sy_verdict_label_set_none (SY_VERDICT_LABEL (self->verdict), _("No result yet"),
                             needed != NULL ? needed : "");
  gtk_label_set_text (GTK_LABEL (self->symbol), "");
  gtk_label_set_text (GTK_LABEL (self->index), "");
  gtk_label_set_text (GTK_LABEL (self->sentence),
                      _("The steelyard moves as soon as every fact it needs is there."));
  gtk_label_set_text (GTK_LABEL (self->cautions), screening);
  gtk_widget_set_visible (self->all_cautions, FALSE);
  sy_beam_view_set_findings (SY_BEAM_VIEW (self->beam), NULL, _("No result yet"));
}

static void
cautions_cb (GtkButton *button G_GNUC_UNUSED, SyTaskResult *self)
{
  g_signal_emit (self, signals[CAUTIONS], 0);
}

static void
sy_task_result_class_init (SyTaskResultClass *class G_GNUC_UNUSED)
{
  signals[CAUTIONS] = g_signal_new ("cautions", SY_TYPE_TASK_RESULT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                    NULL, G_TYPE_NONE, 0);
}

static void
sy_task_result_init (SyTaskResult *self)
{
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *figure = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-outcome");
  self->verdict = sy_verdict_label_new (TRUE);
  gtk_widget_set_hexpand (self->verdict, TRUE);
  gtk_widget_set_valign (self->verdict, GTK_ALIGN_CENTER);
  self->symbol = sy_part_label (NULL, "sy-quiet");
  self->index = sy_part_label (NULL, "sy-result");
  gtk_widget_set_name (self->index, "result-index");
  gtk_label_set_wrap (GTK_LABEL (self->index), FALSE);
  gtk_widget_set_valign (self->symbol, GTK_ALIGN_BASELINE);
  gtk_widget_set_valign (self->index, GTK_ALIGN_BASELINE);
  gtk_box_append (GTK_BOX (figure), self->symbol);
  gtk_box_append (GTK_BOX (figure), self->index);
  gtk_widget_set_valign (figure, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (top), self->verdict);
  gtk_box_append (GTK_BOX (top), figure);
  self->beam = sy_beam_view_new ();
  self->sentence = sy_part_label (NULL, "sy-sentence");
  gtk_widget_set_name (self->sentence, "result-sentence");
  self->cautions = sy_part_label (NULL, "sy-note");
  gtk_widget_set_hexpand (self->cautions, TRUE);
  self->all_cautions = gtk_button_new_with_label ("");
  gtk_widget_add_css_class (self->all_cautions, "sy-link");
  gtk_widget_set_valign (self->all_cautions, GTK_ALIGN_START);
  g_signal_connect (self->all_cautions, "clicked", G_CALLBACK (cautions_cb), self);
  gtk_box_append (GTK_BOX (foot), self->cautions);
  gtk_box_append (GTK_BOX (foot), self->all_cautions);
  gtk_box_append (GTK_BOX (self), top);
  gtk_box_append (GTK_BOX (self), self->beam);
  gtk_box_append (GTK_BOX (self), self->sentence);
  gtk_box_append (GTK_BOX (self), foot);
}

GtkWidget *
sy_task_result_new (SyForm *form)
{
  GtkWidget *self = g_object_new (SY_TYPE_TASK_RESULT, NULL);

  sy_part_follow (self, form, update);
  return self;
}
