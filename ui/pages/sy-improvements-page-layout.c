/* SPDX-License-Identifier: MIT */
/* The improvement log, for the eye: what stands where. */
#include "sy-improvements-page-private.h"

#include "sy-i18n.h"
#include "sy-improvements-columns.h"
#include "sy-name.h"
#include "sy-paper-out.h"
#include "sy-quarters-view.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-tasks-states.h"

#define LIST_LEAST 176 /* its heading and four rows, px */

/* Callbacks */

static void
selected_cb (GObject *object, GParamSpec *pspec, SyImprovementsPage *self)
{
  (void) object, (void) pspec;
  sy_improvements_page_choose (self, gtk_single_selection_get_selected_item (self->selection));
}

static void
activate_cb (GtkColumnView *view, guint position, SyImprovementsPage *self)
{
  g_autoptr (SyImprovementRow) row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);

  (void) view;
  if (row != NULL)
    sy_improvements_page_open (self, row, TRUE);
}

static void
compare_cb (GtkButton *button, SyImprovementsPage *self)
{
  (void) button;
  if (self->chosen != NULL)
    sy_improvements_page_open (self, self->chosen, TRUE);
}

static void
open_cb (GtkButton *button, SyImprovementsPage *self)
{
  (void) button;
  if (self->chosen != NULL)
    sy_improvements_page_open (self, self->chosen, FALSE);
}

static void
read_cb (SyImprovementList *list, SyImprovementsPage *self)
{
  (void) list;
  sy_improvements_page_update (self);
}

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, SyImprovementsPage *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  sy_improvements_page_update (self);
}

static void
search_cb (GtkEditable *editable, SyImprovementsPage *self)
{
  sy_improvement_list_set_search (self->rows, gtk_editable_get_text (editable));
  sy_improvements_page_update (self);
}

static void
stop_search_cb (GtkSearchEntry *entry, SyImprovementsPage *self)
{
  (void) self;
  gtk_editable_set_text (GTK_EDITABLE (entry), "");
}

static void
withdrawn_cb (GtkCheckButton *button, SyImprovementsPage *self)
{
  sy_improvement_list_set_withdrawn (self->rows, gtk_check_button_get_active (button));
  sy_improvements_page_update (self);
}

static void
show_all_cb (GtkButton *button, SyImprovementsPage *self)
{
  (void) button;
  sy_improvements_page_set_search (self, "");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->withdrawn), TRUE);
}

static void
retry_cb (GtkButton *button, SyImprovementsPage *self)
{
  (void) button;
  sy_improvement_list_refresh (self->rows);
}

/* Of the quarter that is looked at; otherwise how the figures are to be read. */
static void
told_cb (SyQuartersView *view, const char *words, SyImprovementsPage *self)
{
  gtk_label_set_text (GTK_LABEL (self->told),
                      sy_quarters_view_get_hot (view) >= 0 ? words : sy_translate (sy_improvement_reading));
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

static GtkWidget *
new_bar (SyImprovementsPage *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->search = gtk_search_entry_new ();
  gtk_widget_set_name (self->search, "search");
  gtk_widget_set_hexpand (self->search, TRUE);
  g_object_set (self->search, "placeholder-text", _("What, item, who, day"), NULL);
  sy_name (self->search, _("Search the improvements"));
  g_signal_connect_object (self->search, "changed", G_CALLBACK (search_cb), self, 0);
  g_signal_connect_object (self->search, "stop-search", G_CALLBACK (stop_search_cb), self, 0);
  self->withdrawn = gtk_check_button_new_with_mnemonic (_("Withdrawn ones t_oo"));
  gtk_widget_set_name (self->withdrawn, "withdrawn");
  sy_name (self->withdrawn, _("Withdrawn ones too"));
  g_signal_connect_object (self->withdrawn, "toggled", G_CALLBACK (withdrawn_cb), self, 0);
  gtk_box_append (GTK_BOX (bar), self->search);
  gtk_box_append (GTK_BOX (bar), self->withdrawn);
  self->paper = sy_paper_choice_add (GTK_BOX (bar));
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("Save as P_DF…"), "improvements.save"));
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("_Print…"), "improvements.print"));
  set_margins (bar, 12, 6);
  self->bar = bar;
  return bar;
}

static GtkWidget *
new_list_state (SyImprovementsPage *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), LIST_LEAST);
  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->rows));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self, 0);
  self->view = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  sy_improvements_columns_show (GTK_COLUMN_VIEW (self->view), &(SyQuarter) { 0 });
  gtk_widget_set_name (self->view, "improvements-list");
  sy_name (self->view, _("Improvements"));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), _("Improvements"));
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  return scrolled;
}

static GtkWidget *
new_no_match_state (SyImprovementsPage *self)
{
  GtkWidget *state = sy_tasks_state_new (_("No improvement is like that"),
                                         _("None that counts has all of these words; withdrawn ones may be hidden."), NULL);
  GtkWidget *show_all = sy_button_new (_("Show _all of them"), NULL);

  gtk_widget_set_halign (show_all, GTK_ALIGN_CENTER);
  g_signal_connect_object (show_all, "clicked", G_CALLBACK (show_all_cb), self, 0);
  gtk_box_append (GTK_BOX (state), show_all);
  return state;
}

static GtkWidget *
new_empty_state (void)
{
  GtkWidget *state = sy_tasks_state_new (
    _("No improvement is in the log yet"),
    _("This is where it stands what was changed for the better: by whose idea, since when, and what it bought in index, minutes "
      "and persons, quarter by quarter. One is added where its two assessments are: compare what was with what is and choose "
      "“Put in the improvement log”, or choose the same in the part “Follow-up” of a task or a changeover."),
    NULL);
  GtkWidget *button = sy_button_new (_("_Compare two assessments"), "win.compare");

  gtk_widget_set_halign (button, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (state), button);
  return state;
}

static void
add_states (SyImprovementsPage *self)
{
  GtkStack *states = GTK_STACK (self->states = gtk_stack_new ());

  gtk_widget_set_vexpand (self->states, TRUE);
  gtk_stack_add_named (states, sy_tasks_state_new (_("Reading the record…"), "", NULL), "loading");
  gtk_stack_add_named (states, new_list_state (self), "list");
  gtk_stack_add_named (states, new_empty_state (), "empty");
  gtk_stack_add_named (states, new_no_match_state (self), "no-match");
  gtk_stack_add_named (states, sy_tasks_state_error (sy_worker_get_store (self->worker), &self->error_words, &self->retry),
                       "error");
  g_signal_connect_object (self->retry, "clicked", G_CALLBACK (retry_cb), self, 0);
}

static GtkWidget *
new_below (SyImprovementsPage *self)
{
  const SyDeedField why = { "why", _("Why"), _("Why it does not count: what was wrong, what was taken back"), TRUE };
  GtkWidget *deeds = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->below = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->about = sy_part_label (NULL, "sy-strong");
  self->bought = sy_part_label (NULL, NULL);
  self->history = sy_part_label (NULL, "sy-quiet");
  gtk_widget_set_name (self->about, "about");
  gtk_widget_set_name (self->bought, "bought");
  gtk_widget_set_name (self->history, "improvement-history");
  self->withdraw = sy_deed_form_new (self->worker, "withdraw", _("Withdraw"), _("_Withdraw…"), _("_Withdraw it"), FALSE);
  sy_deed_form_add (SY_DEED_FORM (self->withdraw), &why, 1);
  sy_deed_form_set_make (SY_DEED_FORM (self->withdraw), sy_improvements_page_make_withdrawal, self);
  self->compare = sy_button_new (_("_Compare the two"), NULL);
  self->open = sy_button_new (_("O_pen the item"), NULL);
  gtk_widget_set_name (self->compare, "compare");
  gtk_widget_set_name (self->open, "open");
  gtk_widget_set_valign (self->compare, GTK_ALIGN_START);
  gtk_widget_set_valign (self->open, GTK_ALIGN_START);
  g_signal_connect_object (self->compare, "clicked", G_CALLBACK (compare_cb), self, 0);
  g_signal_connect_object (self->open, "clicked", G_CALLBACK (open_cb), self, 0);
  gtk_box_append (GTK_BOX (deeds), self->compare);
  gtk_box_append (GTK_BOX (deeds), self->open);
  gtk_box_append (GTK_BOX (deeds), self->withdraw);
  gtk_box_append (GTK_BOX (self->below), self->about);
  gtk_box_append (GTK_BOX (self->below), self->bought);
  gtk_box_append (GTK_BOX (self->below), self->history);
  gtk_box_append (GTK_BOX (self->below), deeds);
  set_margins (self->below, 9, 9);
  return self->below;
}

void
sy_improvements_page_build (SyImprovementsPage *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *scroller;

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->message = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "wrap", TRUE, "wrap-mode",
                                PANGO_WRAP_WORD_CHAR, "xalign", 0.0, "selectable", TRUE, "visible", FALSE, NULL);
  gtk_widget_set_name (self->message, "message");
  self->totals = sy_part_label (NULL, "sy-strong");
  gtk_widget_set_name (self->totals, "totals");
  self->quarters = sy_quarters_view_new (_("What improvements bought, by quarter"));
  self->told = sy_part_label (sy_translate (sy_improvement_reading), "sy-note");
  gtk_widget_set_name (self->told, "told");
  g_signal_connect_object (self->quarters, "told", G_CALLBACK (told_cb), self, 0);
  self->caution = sy_part_label (NULL, "sy-caution");
  set_margins (self->message, 0, 6);
  set_margins (self->totals, 3, 6);
  set_margins (self->quarters, 0, 3);
  set_margins (self->told, 0, 9);
  add_states (self);
  gtk_box_append (GTK_BOX (self->box), new_bar (self));
  gtk_box_append (GTK_BOX (self->box), self->message);
  gtk_box_append (GTK_BOX (column), self->totals);
  gtk_box_append (GTK_BOX (column), self->quarters);
  gtk_box_append (GTK_BOX (column), self->told);
  gtk_box_append (GTK_BOX (column), self->states);
  gtk_box_append (GTK_BOX (column), new_below (self));
  /* Where the window is low, a form that is opened under the list scrolls into sight. */
  scroller = sy_part_scroller (column, _("Improvements"));
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (self->box), scroller);
  gtk_box_append (GTK_BOX (self->box), self->caution);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  g_signal_connect_object (self->rows, "items-changed", G_CALLBACK (items_changed_cb), self, 0);
  g_signal_connect_object (self->rows, "read", G_CALLBACK (read_cb), self, 0);
}
