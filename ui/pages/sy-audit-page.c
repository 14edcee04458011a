/* SPDX-License-Identifier: MIT */
#include "sy-audit-page.h"

#include <string.h>

#include "sy-audit-about.h"
#include "sy-audit-columns.h"
#include "sy-date.h"
#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-key-choice.h"
#include "sy-name.h"
#include "sy-print-folio.h"
#include "sy-progress-row.h"
#include "sy-register-sheet.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-tasks-states.h"
#include "sy-worker-audit.h"

#define PROGRAM "steelyard " SY_VERSION

struct _SyAuditPage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyAuditList *rows;
  GtkSingleSelection *selection;
  char *day;   /* that is shown, or asked for                 */
  char *made;  /* when what is shown was read, RFC 3339; NULL */
  GError *failed; /* why nothing is shown                     */
  gboolean asking, is_stale;
  GtkWidget *box, *entry, *listed, *paper, *message, *progress, *about, *states, *view, *error_words, *retry, *chosen;
};

G_DEFINE_FINAL_TYPE (SyAuditPage, sy_audit_page, GTK_TYPE_WIDGET)

/* Topics: what is shown */

static void
say (SyAuditPage *self, gboolean trouble, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->message), words);
  gtk_widget_set_visible (self->message, *words != '\0');
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->message), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (trouble)
    gtk_widget_add_css_class (self->message, "sy-problem");
  else
    gtk_widget_remove_css_class (self->message, "sy-problem");
}

static const char *
state_of (SyAuditPage *self)
{
  const SyAudit *audit = sy_audit_list_get (self->rows);

  if (audit == NULL && self->failed != NULL)
    return g_error_matches (self->failed, G_IO_ERROR, G_IO_ERROR_CANCELLED) ? "stopped" : "error";
  if (audit == NULL)
    return "loading";
  if (audit->lines_then == 0)
    return "empty";
  return g_list_model_get_n_items (G_LIST_MODEL (self->rows)) > 0 ? "list" : "no-match";
}

static void
update_state (SyAuditPage *self)
{
  const SyAudit *audit = sy_audit_list_get (self->rows);
  const gboolean was_loading = g_strcmp0 (sy_audit_page_get_state (self), "loading") == 0;
  const char *state = state_of (self);

  if (self->failed != NULL)
    gtk_label_set_text (GTK_LABEL (self->error_words), self->failed->message);
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), state);
  gtk_widget_set_visible (self->about, audit != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "audit.print", audit != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "audit.save", audit != NULL);
  if (audit != NULL)
    sy_audit_about_set (SY_AUDIT_ABOUT (self->about), audit);
  /* What the person came for was not there yet when the page was shown. */
  if (was_loading && !g_str_equal (state, "loading") && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
selected_cb (GObject *object, GParamSpec *pspec, SyAuditPage *self)
{
  SyAuditItem *item = gtk_single_selection_get_selected_item (self->selection);

  (void) object, (void) pspec;
  sy_audit_chosen_set (SY_AUDIT_CHOSEN (self->chosen), item != NULL ? sy_audit_item_get_row (item) : NULL);
}

/* Topics: asking */

static void
progress_cb (guint64 done, guint64 of, gpointer user_data)
{
  SyAuditPage *self = user_data;

  if (self->box != NULL)
    sy_progress_row_step (done, of, self->progress);
}

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyAuditPage) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (SyAudit) audit = sy_worker_audit_finish (SY_WORKER (source), result, &error);
  gboolean clock_set;

  self->asking = FALSE;
  if (self->box == NULL)
    return;
  sy_progress_row_end (SY_PROGRESS_ROW (self->progress));
  g_clear_error (&self->failed);
  if (audit != NULL)
    {
      g_free (self->made);
      self->made = sy_clock_now (&clock_set, NULL);
      sy_audit_list_take (self->rows, g_steal_pointer (&audit));
    }
  else
    {
      if (sy_audit_list_get (self->rows) != NULL)
        say (self, TRUE, g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)
                           ? _("Stopped: what is shown is as it was read before.")
                           : error->message);
      self->failed = g_steal_pointer (&error);
    }
  update_state (self);
}

static void
ask (SyAuditPage *self)
{
  g_autoptr (GCancellable) cancellable = NULL;

  if (self->asking)
    return;
  self->asking = TRUE;
  self->is_stale = FALSE;
  say (self, FALSE, "");
  cancellable = sy_progress_row_begin (SY_PROGRESS_ROW (self->progress), _("Looking back"));
  sy_worker_audit_async (self->worker, self->day, cancellable, progress_cb, self, answered_cb, g_object_ref (self));
}

static void
mark (SyAuditPage *self, gboolean is_wrong)
{
  if (is_wrong)
    gtk_widget_add_css_class (self->entry, "sy-wrong");
  else
    gtk_widget_remove_css_class (self->entry, "sy-wrong");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
show_typed (SyAuditPage *self)
{
  g_autofree char *day = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)))), *words = NULL;
  double days;
  const gboolean is_day = sy_date_read (day, &days);

  if (self->asking)
    return;
  mark (self, !is_day);
  if (!is_day)
    {
      words = g_strdup_printf (_("Day: given “%s”; allowed: a day as year-month-day, such as 2026-11-26."), day);
      say (self, TRUE, words);
      gtk_widget_grab_focus (self->entry);
      return;
    }
  g_free (self->day);
  self->day = g_steal_pointer (&day);
  ask (self);
}

static void
show_cb (GtkWidget *widget, SyAuditPage *self)
{
  (void) widget;
  show_typed (self);
}

static void
retry_cb (GtkButton *button, SyAuditPage *self)
{
  (void) button;
  ask (self);
}

static void
changed_cb (SyWorker *worker, SyAuditPage *self)
{
  (void) worker;
  if (self->box == NULL || sy_audit_list_get (self->rows) == NULL)
    return;
  self->is_stale = TRUE;
  /* What is being read must not change under the reader. */
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && !self->asking)
    say (self, FALSE, _("The record has moved on since this was read: “Show” reads it anew."));
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
  update_state (self);
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

/* Topics: paper */

static SyPaper
chosen_paper (SyAuditPage *self)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->paper)) == 1 ? SY_PAPER_LETTER : SY_PAPER_A4;
}

/* NULL: the clock is set to what is no time, or nothing was read yet. */
static SyFolio *
make_folio (SyAuditPage *self)
{
  const SyAudit *audit = sy_audit_list_get (self->rows);

  if (audit == NULL || self->made == NULL)
    return NULL;
  return sy_register_sheet_new (&(SyRegisterSheet) { .audit = audit, .paper = chosen_paper (self), .translate = sy_translate,
                                                     .program = PROGRAM, .made = self->made });
}

gboolean
sy_audit_page_write (SyAuditPage *self, const char *path)
{
  g_autoptr (SyFolio) folio = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL;

  g_return_val_if_fail (SY_IS_AUDIT_PAGE (self), FALSE);
  folio = make_folio (self);
  if (folio == NULL)
    return FALSE;
  if (!sy_folio_write_pdf (folio, path, self->made, &error))
    {
      words = g_strdup_printf (_("The register was not saved: %s"), error->message);
      say (self, TRUE, words);
      return FALSE;
    }
  words = g_strdup_printf (_("Saved as %s"), path);
  say (self, FALSE, words);
  return TRUE;
}

static void
file_chosen_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyAuditPage) self = SY_AUDIT_PAGE (user_data);
  g_autoptr (GFile) file = sy_file_ask_save_finish (result);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  (void) source;
  if (self->box == NULL)
    return;
  if (path != NULL)
    sy_audit_page_write (self, path);
  else if (file != NULL)
    say (self, TRUE, _("The register was not saved: this place is not a folder of this computer."));
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SyAuditPage *self = SY_AUDIT_PAGE (widget);
  GtkRoot *root = gtk_widget_get_root (widget);
  /* Translators: file name; a day. */
  g_autofree char *file = g_strdup_printf (_("register-%s.pdf"), sy_audit_list_get (self->rows)->day);

  (void) name, (void) parameter;
  sy_file_ask_save_async (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, _("Save the register"), file, _("PDF documents"),
                          "*.pdf", NULL, file_chosen_cb, g_object_ref (widget));
}

static void
printed_cb (gboolean sent, const GError *error, gpointer user_data)
{
  SyAuditPage *self = user_data;
  g_autofree char *words = NULL;

  if (self->box == NULL)
    return;
  if (error != NULL)
    {
      words = g_strdup_printf (_("The register was not printed: %s"), error->message);
      say (self, TRUE, words);
    }
  else if (sent)
    say (self, FALSE, _("The register was sent to the printer."));
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SyAuditPage *self = SY_AUDIT_PAGE (widget);
  SyFolio *folio = make_folio (self);

  (void) name, (void) parameter;
  say (self, FALSE, "");
  if (folio != NULL)
    sy_print_folio (widget, folio, chosen_paper (self), _("Register"), printed_cb);
}

/* Topics: building */

static void
set_margins (GtkWidget *widget, int top, int bottom)
{
  gtk_widget_set_margin_start (widget, 18);
  gtk_widget_set_margin_end (widget, 18);
  gtk_widget_set_margin_top (widget, top);
  gtk_widget_set_margin_bottom (widget, bottom);
}

static GtkWidget *
new_caption (const char *mnemonic, GtkWidget *of)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (mnemonic);

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), of);
  gtk_widget_add_css_class (label, "sy-quiet");
  return label;
}

static void
add_asking (SyAuditPage *self, GtkBox *bar)
{
  const char *const keys[] = { "not-assessed", "unsigned", "retired", NULL };
  GtkWidget *show = sy_button_new (_("_Show"), NULL);

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
  gtk_box_append (bar, new_caption (_("_Day"), self->entry));
  gtk_box_append (bar, self->entry);
  gtk_box_append (bar, show);
  gtk_box_append (bar, self->listed);
}

static void
add_paper (SyAuditPage *self, GtkBox *bar)
{
  const char *const papers[] = { _("A4"), _("Letter"), NULL };
  GtkWidget *print = sy_button_new (_("_Print…"), "audit.print");
  GtkWidget *space = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_hexpand (space, TRUE);
  self->paper = gtk_drop_down_new_from_strings (papers);
  /* The paper that the locale prints on. */
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->paper),
                              g_strcmp0 (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) == 0 ? 1 : 0);
  sy_name (self->paper, _("Paper"));
  gtk_box_append (bar, space);
  gtk_box_append (bar, new_caption (_("P_aper"), self->paper));
  gtk_box_append (bar, self->paper);
  gtk_box_append (bar, sy_button_new (_("Save as P_DF…"), "audit.save"));
  gtk_box_append (bar, print);
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

static void
build (SyAuditPage *self)
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
  update_state (self);
}

static void
sy_audit_page_map (GtkWidget *widget)
{
  SyAuditPage *self = SY_AUDIT_PAGE (widget);

  GTK_WIDGET_CLASS (sy_audit_page_parent_class)->map (widget);
  if (self->is_stale || (sy_audit_list_get (self->rows) == NULL && self->failed == NULL))
    ask (self);
}

static gboolean
sy_audit_page_grab_focus (GtkWidget *widget)
{
  SyAuditPage *self = SY_AUDIT_PAGE (widget);

  if (g_str_equal (sy_audit_page_get_state (self), "list") && sy_focus_rows (GTK_COLUMN_VIEW (self->view)))
    return TRUE;
  return gtk_widget_child_focus (self->box, GTK_DIR_TAB_FORWARD);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_audit_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SyAuditPage *self = SY_AUDIT_PAGE (widget);

  if (sy_tab_leaves_rows (GTK_COLUMN_VIEW (self->view), direction))
    return gtk_widget_child_focus (direction == GTK_DIR_TAB_FORWARD ? self->chosen : self->about, direction);
  return gtk_widget_child_focus (self->box, direction);
}

static void
sy_audit_page_dispose (GObject *object)
{
  SyAuditPage *self = SY_AUDIT_PAGE (object);

  if (self->box != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->worker);
  g_clear_error (&self->failed);
  g_clear_pointer (&self->day, g_free);
  g_clear_pointer (&self->made, g_free);
  G_OBJECT_CLASS (sy_audit_page_parent_class)->dispose (object);
}

static void
sy_audit_page_class_init (SyAuditPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_audit_page_dispose;
  widget_class->map = sy_audit_page_map;
  widget_class->grab_focus = sy_audit_page_grab_focus;
  widget_class->focus = sy_audit_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-audit");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_install_action (widget_class, "audit.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "audit.save", NULL, save_action);
}

static void
sy_audit_page_init (SyAuditPage *self)
{
  self->rows = sy_audit_list_new ();
}

/* In UTC, as the days of the record are. New string; "" where the clock is set to what is no time. */
static char *
today (void)
{
  gboolean clock_set;
  char *now = sy_clock_now (&clock_set, NULL);

  if (now == NULL)
    return g_strdup ("");
  now[strcspn (now, "T")] = '\0';
  return now;
}

GtkWidget *
sy_audit_page_new (SyWorker *worker)
{
  SyAuditPage *self = g_object_new (SY_TYPE_AUDIT_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->day = today ();
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  build (self);
  sy_name (GTK_WIDGET (self), _("Register"));
  return GTK_WIDGET (self);
}

void
sy_audit_page_show_day (SyAuditPage *self, const char *day)
{
  g_return_if_fail (SY_IS_AUDIT_PAGE (self));
  gtk_editable_set_text (GTK_EDITABLE (self->entry), day);
  show_typed (self);
}

GListModel *
sy_audit_page_get_rows (SyAuditPage *self)
{
  g_return_val_if_fail (SY_IS_AUDIT_PAGE (self), NULL);
  return G_LIST_MODEL (self->rows);
}

const char *
sy_audit_page_get_state (SyAuditPage *self)
{
  g_return_val_if_fail (SY_IS_AUDIT_PAGE (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->states));
}

void
sy_audit_page_select (SyAuditPage *self, guint position)
{
  g_return_if_fail (SY_IS_AUDIT_PAGE (self));
  gtk_single_selection_set_selected (self->selection, position);
}
