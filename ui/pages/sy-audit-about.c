/* SPDX-License-Identifier: MIT */
#include "sy-audit-about.h"

#include "sy-audit-words.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-task-parts.h"

#define ROW_HEIGHT_MAX 116 /* px: more of it scrolls, so that the list keeps its room */

/* Topics: the whole */

struct _SyAuditAbout
{
  GtkBox parent_instance;
  GtkWidget *counts, *policies, *heads;
};

G_DEFINE_FINAL_TYPE (SyAuditAbout, sy_audit_about, GTK_TYPE_BOX)

static GtkWidget *
add_words (GtkBox *box, const char *name, const char *css_class)
{
  GtkWidget *label = sy_part_label (NULL, css_class);

  gtk_widget_set_name (label, name);
  gtk_box_append (box, label);
  return label;
}

static void
set_words (GtkWidget *label, char *words)
{
  gtk_label_set_text (GTK_LABEL (label), words);
  gtk_widget_set_visible (label, *words != '\0');
  g_free (words);
}

static void
sy_audit_about_class_init (SyAuditAboutClass *klass)
{
  (void) klass;
}

static void
sy_audit_about_init (SyAuditAbout *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 3);
  self->counts = add_words (GTK_BOX (self), "counts", "sy-figures");
  self->policies = add_words (GTK_BOX (self), "policies", NULL);
  self->heads = add_words (GTK_BOX (self), "heads", "sy-figures");
  gtk_label_set_selectable (GTK_LABEL (self->heads), TRUE);
  gtk_box_append (GTK_BOX (self), sy_part_label (sy_translate (sy_audit_day_means), "sy-note"));
}

GtkWidget *
sy_audit_about_new (void)
{
  return g_object_new (SY_TYPE_AUDIT_ABOUT, NULL);
}

void
sy_audit_about_set (SyAuditAbout *self, const SyAudit *audit)
{
  g_autofree char *counts = NULL;

  g_return_if_fail (SY_IS_AUDIT_ABOUT (self));
  counts = sy_audit_count_words (audit, sy_translate);
  /* Translators: a day, and how many items there were of which kind then. */
  set_words (self->counts, g_strdup_printf (_("As at %s · %s"), audit->day, counts));
  set_words (self->policies, sy_audit_policy_words (audit, sy_translate));
  set_words (self->heads, sy_audit_head_words (audit, sy_translate));
}

/* Topics: one row */

struct _SyAuditChosen
{
  GtkBox parent_instance;
  GtkWidget *title, *words, *missing, *scrolled, *open;
  char *item; /* id */
};

G_DEFINE_FINAL_TYPE (SyAuditChosen, sy_audit_chosen, GTK_TYPE_BOX)

static void
open_cb (GtkButton *button, SyAuditChosen *self)
{
  (void) button;
  if (self->item != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open-history", "s", self->item);
}

static void
sy_audit_chosen_finalize (GObject *object)
{
  g_free (SY_AUDIT_CHOSEN (object)->item);
  G_OBJECT_CLASS (sy_audit_chosen_parent_class)->finalize (object);
}

static void
sy_audit_chosen_class_init (SyAuditChosenClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_audit_chosen_finalize;
}

static void
sy_audit_chosen_init (SyAuditChosen *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  self->title = add_words (GTK_BOX (words), "chosen", "sy-strong");
  self->missing = add_words (GTK_BOX (words), "chosen-missing", NULL);
  self->words = add_words (GTK_BOX (words), "chosen-words", "sy-quiet");
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), words);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->scrolled), ROW_HEIGHT_MAX);
  gtk_widget_set_hexpand (self->scrolled, TRUE);
  /* Arrow keys scroll it. */
  gtk_widget_set_focusable (self->scrolled, TRUE);
  sy_name (self->scrolled, _("What the register says of the item"));
  self->open = sy_button_new (_("O_pen its history"), NULL);
  gtk_widget_set_name (self->open, "open");
  gtk_widget_set_valign (self->open, GTK_ALIGN_START);
  g_signal_connect_object (self->open, "clicked", G_CALLBACK (open_cb), self, 0);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_box_append (GTK_BOX (self), self->scrolled);
  gtk_box_append (GTK_BOX (self), self->open);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
sy_audit_chosen_new (void)
{
  return g_object_new (SY_TYPE_AUDIT_CHOSEN, NULL);
}

void
sy_audit_chosen_set (SyAuditChosen *self, const SyAuditRow *row)
{
  g_autofree char *verdict = NULL, *made = NULL, *basis = NULL, *signature = NULL, *due = NULL;

  g_return_if_fail (SY_IS_AUDIT_CHOSEN (self));
  gtk_widget_set_visible (GTK_WIDGET (self), row != NULL);
  g_clear_pointer (&self->item, g_free);
  if (row == NULL)
    return;
  self->item = g_strdup (row->task->id);
  verdict = sy_audit_verdict_words (row, sy_translate);
  made = sy_audit_made_words (row, sy_translate);
  basis = sy_audit_basis_words (row, sy_translate);
  signature = sy_audit_signed_words (row, sy_translate);
  due = sy_audit_due_words (row, sy_translate);
  set_words (self->title, g_strdup_printf (_("%s: %s"), row->task->name, verdict));
  set_words (self->missing, sy_audit_missing_words (row, sy_translate));
  set_words (self->words, g_strjoin ("\n", made, signature, due, basis, NULL));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scrolled)), 0);
}
