/* SPDX-License-Identifier: MIT */
#include "sy-verdict-label.h"

#include "sy-i18n.h"
#include "sy-view.h"

struct _SyVerdictLabel
{
  GtkBox parent_instance;

  GtkWidget *shape;
  GtkWidget *title;
  GtkWidget *meaning;
  gboolean large;
};

G_DEFINE_FINAL_TYPE (SyVerdictLabel, sy_verdict_label, GTK_TYPE_BOX)

static void
sy_verdict_label_class_init (SyVerdictLabelClass *class)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-verdict");
}

static void
sy_verdict_label_init (SyVerdictLabel *self)
{
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static GtkWidget *
new_label (gboolean alert)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role",
                                   alert ? GTK_ACCESSIBLE_ROLE_ALERT : GTK_ACCESSIBLE_ROLE_LABEL, NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}

GtkWidget *
sy_verdict_label_new (gboolean large)
{
  SyVerdictLabel *self = g_object_new (SY_TYPE_VERDICT_LABEL, NULL);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->large = large;
  self->shape = sy_shape_new (SY_VERDICT_INCOMPLETE, large ? 32 : 16);
  self->title = new_label (large);
  self->meaning = new_label (FALSE);
  gtk_widget_add_css_class (self->title, large ? "sy-heading" : "sy-strong");
  gtk_widget_add_css_class (self->meaning, "sy-note");
  gtk_widget_set_visible (self->meaning, large);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), self->title);
  gtk_box_append (GTK_BOX (words), self->meaning);
  gtk_box_append (GTK_BOX (self), self->shape);
  gtk_box_append (GTK_BOX (self), words);
  return GTK_WIDGET (self);
}

static void
show (SyVerdictLabel *self, SyVerdict verdict, const char *title, const char *meaning)
{
  sy_shape_set (self->shape, verdict);
  /* Unchanged words must not be announced again with every keystroke. */
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (self->title)), title) != 0)
    {
      gtk_label_set_text (GTK_LABEL (self->title), title);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->title), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      title, -1);
    }
  gtk_label_set_text (GTK_LABEL (self->meaning), meaning);
}

void
sy_verdict_label_set (SyVerdictLabel *self, const SyMethod *method, SyVerdict verdict, SyUrgency urgency)
{
  const char *title = sy_translate (sy_verdict_title_for (method, verdict));
  g_autofree char *soon = NULL;

  g_return_if_fail (SY_IS_VERDICT_LABEL (self));
  /* Only an improvement can be put off for a while; every other verdict holds at once. */
  switch (verdict == SY_VERDICT_IMPROVE ? urgency : SY_URGENCY_NONE)
    {
    case SY_URGENCY_NOW:
      /* Translators: a verdict and how soon something must be done about it. */
      soon = g_strdup_printf (_("%s · now"), title);
      break;
    case SY_URGENCY_SOON:
      soon = g_strdup_printf (_("%s · soon"), title);
      break;
    case SY_URGENCY_NONE:
      break;
    }
  show (self, verdict, soon != NULL ? soon : title, sy_translate (sy_verdict_meaning_for (method, verdict)));
}

void
sy_verdict_label_set_why (SyVerdictLabel *self, const char *why)
{
  g_return_if_fail (SY_IS_VERDICT_LABEL (self));
  gtk_label_set_text (GTK_LABEL (self->meaning), why);
}

void
sy_verdict_label_set_none (SyVerdictLabel *self, const char *title, const char *meaning)
{
  g_return_if_fail (SY_IS_VERDICT_LABEL (self));
  show (self, SY_VERDICT_INCOMPLETE, title, meaning);
}

const char *
sy_verdict_label_get_title (SyVerdictLabel *self)
{
  return gtk_label_get_text (GTK_LABEL (self->title));
}

GtkWidget *
sy_reason_row_new (const SyVerdict *verdict, const char *words, const char *quiet)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *label = new_label (FALSE);

  if (verdict != NULL)
    gtk_box_append (GTK_BOX (row), sy_shape_new (*verdict, 18));
  gtk_label_set_text (GTK_LABEL (label), words);
  gtk_widget_set_hexpand (column, TRUE);
  gtk_box_append (GTK_BOX (column), label);
  if (quiet != NULL && quiet[0] != '\0')
    {
      GtkWidget *note = new_label (FALSE);

      gtk_label_set_text (GTK_LABEL (note), quiet);
      gtk_widget_add_css_class (note, "sy-note");
      gtk_box_append (GTK_BOX (column), note);
    }
  gtk_box_append (GTK_BOX (row), column);
  gtk_widget_add_css_class (row, "sy-reason");
  return row;
}
