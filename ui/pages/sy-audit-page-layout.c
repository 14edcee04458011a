/* SPDX-License-Identifier: MIT */
/* The register as at a day, for the eye: what stands where. */
#include "sy-audit-page-private.h"

#include "sy-audit-about.h"
#include "sy-audit-columns.h"
#include "sy-audit-words.h"
#include "sy-i18n.h"
#include "sy-key-choice.h"
#include "sy-name.h"
#include "sy-paper-out.h"
#include "sy-progress-row.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-tasks-states.h"

/* Callbacks */

static void
show_cb (GtkWidget *widget, SyAuditPage *self)
{
  (void) widget;
  sy_audit_page_show_typed (self);
}

static void
retry_cb (GtkButton *button, SyAuditPage *self)
{
  (void) button;
  sy_audit_page_ask (self);
}

static void
listed_cb (SyKeyChoice *choice, SyAuditPage *self)
{
  const char *key = sy_key_choice_get (choice);
  const SyAuditListed listed = key == NULL                         ? SY_AUDIT_LIST_IN_USE
                               : g_str_equal (key, "not-assessed") ? SY_AUDIT_LIST_NOT_ASSESSED
                               : g_str_equal (key, "unsigned")     ? SY_AUDIT_LIST_UNSIGNED
                                                                   : SY_AUDIT_LIST_RETIRED;

  sy_audit_list_show (self->rows, listed);
  sy_audit_page_update (self);
}

static const char *
listed_words (const char *key)
{
  if (g_str_equal (key, "not-assessed"))
    return _("Not assessed, or no longer");
  return g_str_equal (key, "unsigned") ? _("Not signed off") : _("Out of use");
}

static void
show_all_cb (GtkButton *button, SyAuditPage *self)
{
  (void) button;
  sy_key_choice_choose (SY_KEY_CHOICE (self->listed), NULL);
  listed_cb (SY_KEY_CHOICE (self->listed), self);
}

static void
activate_cb (GtkColumnView *view, guint position, SyAuditPage *self)
{
  g_autoptr (SyAuditItem) item = g_list_model_get_item (G_LIST_MODEL (self->rows), position);

  (void) view;
  if (item != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open-history", "s", sy_audit_item_get_row (item)->task->id);
}

static void
selected_cb (GObject *object, GParamSpec *pspec, SyAuditPage *self)
{
  SyAuditItem *item = gtk_single_selection_get_selected_item (self->selection);

  (void) object, (void) pspec;
  sy_audit_chosen_set (SY_AUDIT_CHOSEN (self->chosen), item != NULL ? sy_audit_item_get_row (item) : NULL);
}

/* Layout */

static void
set_margins (GtkWidget *widget, int top, int bottom)
{
  gtk_widget_set_margin_start (widget, 18);
  gtk_widget_set_margin_end (widget, 18);
  gtk_widget_set_margin_top (widget, top);
  gtk_widget_set_margin_bottom (widget, bottom);
}

static void
add_asking (SyAuditPage *self, GtkBox *bar)
{
  const char *const keys[] = { "not-assessed", "unsigned", "retired", NULL };
  GtkWidget *show = sy_button_new (_("_Show"), NULL);
  GtkWidget *caption = gtk_label_new_with_mnemonic (_("_Day"));

  self->entry = gtk_entry_new ();
  gtk_widget_set_name (self->entry, "day");
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 11);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 11);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), self->day);
  gtk_widget_set_tooltip_text (self->entry, _("Year-month-day, such as 2026-11-26"));
  sy_name (self->entry, _("Day of the register, as year-month-day"));
  g_signal_connect_object (self->entry, "activate", G_CALLBACK (show_cb), self, 0);
  gtk_widget_set_name (show, "show");
  g_signal_connect_object (show, "clicked", G_CALLBACK (show_cb), self, 0);
  self->listed = sy_key_choice_new (_("All in use"), _("Which items are listed"), listed_words);
  gtk_widget_set_name (self->listed, "listed");
  sy_key_choice_set_keys (SY_KEY_CHOICE (self->listed), g_strdupv ((char **) keys));
  g_signal_connect_object (self->listed, "chosen", G_CALLBACK (listed_cb), self, 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (caption), self->entry);
  gtk_widget_add_css_class (caption, "sy-quiet");
  gtk_box_append (bar, caption);
  gtk_box_append (bar, self->entry);
  gtk_box_append (bar, show);
  gtk_box_append (bar, self->listed);
}

static void
add_paper (SyAuditPage *self, GtkBox *bar)
{
  GtkWidget *space = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_hexpand (space, TRUE);
  gtk_box_append (bar, space);
  self->paper = sy_paper_choice_add (bar);
  gtk_box_append (bar, sy_button_new (_("Save as P_DF…"), "audit.save"));
  gtk_box_append (bar, sy_button_new (_("_Print…"), "audit.print"));
}

static GtkWidget *
new_list_state (SyAuditPage *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->rows));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self, 0);
  self->view = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  sy_audit_columns_add (GTK_COLUMN_VIEW (self->view));
  gtk_widget_set_name (self->view, "register");
  sy_name (self->view, _("Register"));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), _("Register"));
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  return scrolled;
}

static GtkWidget *
new_no_match_state (SyAuditPage *self)
{
  GtkWidget *state = sy_tasks_state_new (_("Nothing in the register was like that on this day"), "", NULL);
  GtkWidget *show_all = sy_button_new (_("Show _all in use"), NULL);

  gtk_widget_set_halign (show_all, GTK_ALIGN_CENTER);
  gtk_widget_set_name (show_all, "show-all");
  g_signal_connect_object (show_all, "clicked", G_CALLBACK (show_all_cb), self, 0);
  gtk_box_append (GTK_BOX (state), show_all);
  return state;
}

static void
add_states (SyAuditPage *self)
{
  GtkStack *states = GTK_STACK (self->states = gtk_stack_new ());

  gtk_widget_set_vexpand (self->states, TRUE);
  gtk_stack_add_named (states, sy_tasks_state_new (_("Reading the record…"), "", NULL), "loading");
  gtk_stack_add_named (states, new_list_state (self), "list");
  gtk_stack_add_named (states,
                       sy_tasks_state_new (_("Nothing was in the record on this day"),
                                           _("The register shows what was in force at the end of a day, as the record knew it "
                                             "then. The first line of the journal was written later, or none is there yet: "
                                             "choose a later day."),
                                           NULL),
                       "empty");
  gtk_stack_add_named (states, new_no_match_state (self), "no-match");
  gtk_stack_add_named (states, sy_tasks_state_new (_("Stopped"), _("“Show” reads the register of the day."), NULL), "stopped");
  gtk_stack_add_named (states, sy_tasks_state_error (sy_worker_get_store (self->worker), &self->error_words, &self->retry),
                       "error");
  g_signal_connect_object (self->retry, "clicked", G_CALLBACK (retry_cb), self, 0);
}

void
sy_audit_page_build (SyAuditPage *self)
{
  g_autofree char *screening = sy_words_screening (sy_translate);
  g_autofree char *caution = g_strdup_printf ("%s %s", sy_translate (sy_audit_elsewhere), screening);
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->message = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "wrap", TRUE, "wrap-mode",
                                PANGO_WRAP_WORD_CHAR, "xalign", 0.0, "selectable", TRUE, "visible", FALSE, NULL);
  gtk_widget_set_name (self->message, "message");
  self->progress = sy_progress_row_new ();
  self->about = sy_audit_about_new ();
  self->chosen = sy_audit_chosen_new ();
  add_asking (self, GTK_BOX (bar));
  add_paper (self, GTK_BOX (bar));
  add_states (self);
  set_margins (bar, 12, 6);
  set_margins (self->message, 0, 6);
  set_margins (self->progress, 0, 6);
  set_margins (self->about, 0, 9);
  set_margins (self->chosen, 9, 9);
  gtk_box_append (GTK_BOX (self->box), bar);
  gtk_box_append (GTK_BOX (self->box), self->message);
  gtk_box_append (GTK_BOX (self->box), self->progress);
  gtk_box_append (GTK_BOX (self->box), self->about);
  gtk_box_append (GTK_BOX (self->box), self->states);
  gtk_box_append (GTK_BOX (self->box), self->chosen);
  gtk_box_append (GTK_BOX (self->box), sy_part_label (caution, "sy-caution"));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

