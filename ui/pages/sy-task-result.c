/* SPDX-License-Identifier: MIT */
#include "sy-task-result.h"

#include "sy-beam-view.h"
#include "sy-capacity-view.h"
#include "sy-carriers.h"
#include "sy-i18n.h"
#include "sy-task-kinds.h"
#include "sy-task-parts.h"
#include "sy-verdict-label.h"

#include <math.h>
#include <string.h>

/* What stands beside the tabs in a window 720 high; the whole is under "Load path". */
#define WEAKEST 4

struct _SyTaskResult
{
  GtkBox parent_instance;

  GtkWidget *verdict;
  GtkWidget *symbol;
  GtkWidget *index;
  GtkWidget *valid;    /* until when it holds                      */
  GtkWidget *picture;  /* holds what of these there is             */
  GtkWidget *beam;     /* NULL: the method has no steelyard        */
  GtkWidget *capacity; /* NULL: the method is not about capacities */
  GtkWidget *more;     /* leads to those that are not in @capacity */
  GtkWidget *sentence;
  GtkWidget *cautions;
  GtkWidget *all_cautions;
};

enum
{
  CAUTIONS,
  PATH,
  FACT,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskResult, sy_task_result, GTK_TYPE_BOX)

/* The figure beside the verdict and what stands before it. New strings. */
static void
get_figure (const SyFindings *findings, char **name, char **figure)
{
  const SyTaskKind *kind = sy_task_kind (findings->method);
  const char *symbol = kind->figure != NULL ? kind->figure : findings->sink.index_symbol;
  const SyQuantity *quantity = symbol != NULL ? sy_findings_quantity (findings, symbol) : NULL;

  *name = g_strdup (kind->figure_name != NULL ? sy_translate (kind->figure_name) : symbol);
  if (quantity == NULL || quantity->state == SY_STATE_ABSENT)
    *figure = g_strdup (symbol != NULL ? "–" : "");
  else if (kind->figure != NULL)
    *figure = sy_words_quantity (quantity->value, quantity->symbol->kind, findings->units);
  else
    *figure = findings->method->by_capacity ? sy_part_percent (quantity->value, findings)
                                            : sy_part_index_text (findings);
}

static void
update_valid (SyTaskResult *self, const SyFindings *findings)
{
  const SyQuantity *until = sy_findings_quantity (findings, "valid_until");
  g_autofree char *date = NULL;
  g_autofree char *words = NULL;
  gboolean has = until != NULL && until->state == SY_STATE_VALUE;
  gboolean expired = has && findings->as_of > until->value;

  /* What must not be lifted holds for no day at all. */
  has = has && (expired || findings->verdict != SY_VERDICT_DO_NOT_LIFT);
  gtk_widget_set_visible (self->valid, has);
  if (!has)
    return;
  date = sy_words_quantity (until->value, SY_KIND_DATE, findings->units);
  words = expired ? g_strdup_printf (_("Expired: held until %s"), date) : g_strdup_printf (_("Holds until %s"), date);
  gtk_label_set_text (GTK_LABEL (self->valid), words);
  if (expired)
    gtk_widget_add_css_class (self->valid, "sy-strong");
  else
    gtk_widget_remove_css_class (self->valid, "sy-strong");
}

/* What is not shown here, in words. */
static void
update_more (SyTaskResult *self, GPtrArray *carriers)
{
  guint more = carriers->len > WEAKEST ? carriers->len - WEAKEST : 0, unknown = 0;
  g_autofree char *words = NULL;

  gtk_widget_set_visible (self->more, more > 0);
  if (more == 0)
    return;
  for (guint i = WEAKEST; i < carriers->len; i++)
    unknown += isnan (((SyCarrier *) g_ptr_array_index (carriers, i))->ratio) ? 1 : 0;
  if (unknown > 0)
    words = g_strdup_printf (P_("%u more in the load path; what %u may carry is not known",
                                "%u more in the load path; what %u of them may carry is not known", more),
                             more, unknown);
  else
    words = g_strdup_printf (P_("%u more in the load path, loaded less", "%u more in the load path, loaded less", more),
                             more);
  gtk_button_set_label (GTK_BUTTON (self->more), words);
}

static void
update_capacity (SyTaskResult *self, SyAssessment *assessment)
{
  g_autoptr (GPtrArray) carriers = sy_carriers_list (assessment);

  sy_carriers_show (carriers, assessment->findings, WEAKEST, SY_CAPACITY_VIEW (self->capacity));
  gtk_widget_set_visible (self->capacity, carriers->len > 0);
  update_more (self, carriers);
}

/* That it is no permission, and what it defers to. New string. */
static char *
foot_words (const SyFindings *findings)
{
  g_autoptr (GString) out = g_string_new (NULL);

  for (int i = 0; i < sy_words_n_foot (findings); i++)
    {
      g_autofree char *words = sy_words_caution (findings, i, NULL, sy_translate);

      g_string_append_printf (out, "%s%s", i > 0 ? " " : "", words);
    }
  return g_string_free (g_steal_pointer (&out), FALSE);
}

static void
update_with_findings (SyTaskResult *self, SyAssessment *assessment)
{
  const SyFindings *findings = assessment->findings;
  g_autofree char *sentence = sy_words_result (findings, sy_translate);
  g_autofree char *name = NULL;
  g_autofree char *figure = NULL;
  g_autofree char *foot = foot_words (findings);
  int more = sy_words_n_cautions (findings) - sy_words_n_foot (findings);

  sy_verdict_label_set (SY_VERDICT_LABEL (self->verdict), findings->method, findings->verdict, findings->urgency);
  /* The strictest reason stands beside the verdict: a mass over its limit must not hide behind an index. */
  if (findings->n_reasons > 0)
    {
      g_autofree char *why = sy_words_reason (findings, &findings->reasons[0], sy_translate);
      sy_verdict_label_set_why (SY_VERDICT_LABEL (self->verdict), why);
    }
  get_figure (findings, &name, &figure);
  gtk_label_set_text (GTK_LABEL (self->symbol), name != NULL ? name : "");
  gtk_label_set_text (GTK_LABEL (self->index), figure);
  gtk_widget_set_visible (gtk_widget_get_parent (self->index), figure[0] != '\0');
  gtk_label_set_text (GTK_LABEL (self->sentence), sentence != NULL ? sentence : "");
  gtk_label_set_text (GTK_LABEL (self->cautions), foot);
  update_valid (self, findings);
  if (self->beam != NULL)
    sy_beam_view_set_findings (SY_BEAM_VIEW (self->beam), findings, sentence);
  if (self->capacity != NULL)
    update_capacity (self, assessment);
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
      update_with_findings (self, assessment);
      if (sy_form_is_working (form))
        gtk_label_set_text (GTK_LABEL (self->sentence), _("Being worked out again…"));
      return;
    }
  needed = sy_part_problems_sentence (form);
  screening = sy_words_screening (sy_translate);
  sy_verdict_label_set_none (SY_VERDICT_LABEL (self->verdict), _("No result yet"),
                             needed != NULL ? needed : "");
  gtk_label_set_text (GTK_LABEL (self->symbol), "");
  gtk_label_set_text (GTK_LABEL (self->index), "");
  gtk_label_set_text (GTK_LABEL (self->sentence),
                      sy_form_is_working (form) ? _("Being worked out…")
                                                : sy_translate (sy_task_kind (sy_form_get_method (form))->no_result));
  gtk_label_set_text (GTK_LABEL (self->cautions), screening);
  gtk_widget_set_visible (self->valid, FALSE);
  gtk_widget_set_visible (self->all_cautions, FALSE);
  if (self->beam != NULL)
    sy_beam_view_set_findings (SY_BEAM_VIEW (self->beam), NULL, _("No result yet"));
  if (self->capacity != NULL)
    {
      gtk_widget_set_visible (self->capacity, FALSE);
      gtk_widget_set_visible (self->more, FALSE);
    }
}

static void
cautions_cb (GtkButton *button G_GNUC_UNUSED, SyTaskResult *self)
{
  g_signal_emit (self, signals[CAUTIONS], 0);
}

static void
more_cb (GtkButton *button G_GNUC_UNUSED, SyTaskResult *self)
{
  g_signal_emit (self, signals[PATH], 0);
}

static void
pressed_cb (SyCapacityView *view G_GNUC_UNUSED, const char *path, SyTaskResult *self)
{
  g_signal_emit (self, signals[FACT], 0, path);
}

static void
sy_task_result_class_init (SyTaskResultClass *class G_GNUC_UNUSED)
{
  signals[CAUTIONS] = g_signal_new ("cautions", SY_TYPE_TASK_RESULT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                    NULL, G_TYPE_NONE, 0);
  signals[PATH] = g_signal_new ("path", SY_TYPE_TASK_RESULT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[FACT] = g_signal_new ("fact", SY_TYPE_TASK_RESULT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
}

static void
sy_task_result_init (SyTaskResult *self)
{
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *figures = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *figure = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-outcome");
  self->verdict = sy_verdict_label_new (TRUE);
  gtk_widget_set_hexpand (self->verdict, TRUE);
  gtk_widget_set_valign (self->verdict, GTK_ALIGN_CENTER);
  self->symbol = sy_part_label (NULL, "sy-quiet");
  gtk_label_set_wrap (GTK_LABEL (self->symbol), FALSE);
  self->index = sy_part_label (NULL, "sy-result");
  gtk_widget_set_name (self->index, "result-index");
  gtk_label_set_wrap (GTK_LABEL (self->index), FALSE);
  /* Not by baseline: GTK 4.8 then measures the row lower than it becomes. */
  gtk_widget_set_valign (self->symbol, GTK_ALIGN_END);
  gtk_widget_set_margin_bottom (self->symbol, 6);
  gtk_box_append (GTK_BOX (figure), self->symbol);
  gtk_box_append (GTK_BOX (figure), self->index);
  self->valid = sy_part_label (NULL, "sy-note");
  gtk_widget_set_name (self->valid, "result-valid");
  gtk_label_set_wrap (GTK_LABEL (self->valid), FALSE);
  gtk_widget_set_halign (self->valid, GTK_ALIGN_END);
  gtk_widget_set_halign (figure, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (figures), figure);
  gtk_box_append (GTK_BOX (figures), self->valid);
  gtk_widget_set_valign (figures, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (top), self->verdict);
  gtk_box_append (GTK_BOX (top), figures);
  self->sentence = sy_part_label (NULL, "sy-sentence");
  gtk_widget_set_name (self->sentence, "result-sentence");
  self->cautions = sy_part_label (NULL, "sy-note");
  gtk_widget_set_name (self->cautions, "result-cautions");
  gtk_widget_set_hexpand (self->cautions, TRUE);
  self->all_cautions = gtk_button_new_with_label ("");
  gtk_widget_add_css_class (self->all_cautions, "sy-link");
  gtk_widget_set_valign (self->all_cautions, GTK_ALIGN_START);
  g_signal_connect (self->all_cautions, "clicked", G_CALLBACK (cautions_cb), self);
  gtk_box_append (GTK_BOX (foot), self->cautions);
  gtk_box_append (GTK_BOX (foot), self->all_cautions);
  self->picture = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self), top);
  gtk_box_append (GTK_BOX (self), self->picture);
  gtk_box_append (GTK_BOX (self), self->sentence);
  gtk_box_append (GTK_BOX (self), foot);
}

static void
add_capacity (SyTaskResult *self)
{
  self->capacity = sy_capacity_view_new ();
  gtk_widget_set_name (self->capacity, "capacity");
  g_signal_connect (self->capacity, "pressed", G_CALLBACK (pressed_cb), self);
  self->more = gtk_button_new_with_label ("");
  gtk_widget_set_name (self->more, "capacity-more");
  gtk_widget_add_css_class (self->more, "sy-link");
  gtk_widget_set_halign (self->more, GTK_ALIGN_START);
  g_signal_connect (self->more, "clicked", G_CALLBACK (more_cb), self);
  gtk_box_append (GTK_BOX (self->picture), self->capacity);
  gtk_box_append (GTK_BOX (self->picture), self->more);
}

GtkWidget *
sy_task_result_new (SyForm *form)
{
  SyTaskResult *self = g_object_new (SY_TYPE_TASK_RESULT, NULL);
  const SyMethod *method = sy_form_get_method (form);

  if (method->index_symbol != NULL && method->by_capacity)
    add_capacity (self);
  else if (method->index_symbol != NULL)
    {
      self->beam = sy_beam_view_new ();
      gtk_box_append (GTK_BOX (self->picture), self->beam);
    }
  sy_part_follow (GTK_WIDGET (self), form, update);
  return GTK_WIDGET (self);
}
