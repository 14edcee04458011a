/* SPDX-License-Identifier: MIT */
#include "sy-audit-page-private.h"

#include <string.h>

#include "sy-audit-about.h"
#include "sy-date.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-paper-out.h"
#include "sy-progress-row.h"
#include "sy-register-sheet.h"
#include "sy-scroll.h"
#include "sy-worker-audit.h"

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

void
sy_audit_page_update (SyAuditPage *self)
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
  sy_audit_page_update (self);
}

void
sy_audit_page_ask (SyAuditPage *self)
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

void
sy_audit_page_show_typed (SyAuditPage *self)
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
  sy_audit_page_ask (self);
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

/* Topics: paper */

static SyFolio *
make_folio (GtkWidget *page, char **made, GError **error)
{
  SyAuditPage *self = SY_AUDIT_PAGE (page);
  const SyAudit *audit = sy_audit_list_get (self->rows);

  (void) error;
  /* The clock was set to what is no time, or nothing was read yet. */
  if (audit == NULL || self->made == NULL)
    return NULL;
  *made = g_strdup (self->made);
  return sy_register_sheet_new (&(SyRegisterSheet) { .audit = audit, .paper = sy_paper_choice_get (self->paper),
                                                     .translate = sy_translate, .program = "steelyard " SY_VERSION,
                                                     .made = self->made });
}

static void
say_of_paper (GtkWidget *page, gboolean trouble, const char *words)
{
  say (SY_AUDIT_PAGE (page), trouble, words);
}

static const SyPaperOut paper_out = {
  .make = make_folio,
  .say = say_of_paper,
  .ask = N_ ("Save the register"),
  .job = N_ ("Register"),
  .not_saved = N_ ("The register was not saved: {why}"),
  .not_printed = N_ ("The register was not printed: {why}"),
  .sent = N_ ("The register was sent to the printer."),
};

gboolean
sy_audit_page_write (SyAuditPage *self, const char *path)
{
  g_return_val_if_fail (SY_IS_AUDIT_PAGE (self), FALSE);
  return sy_paper_out_write (GTK_WIDGET (self), &paper_out, path);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  /* Translators: file name; a day. */
  g_autofree char *file
    = g_strdup_printf (_("register-%s.pdf"), sy_audit_list_get (SY_AUDIT_PAGE (widget)->rows)->day);

  (void) name, (void) parameter;
  sy_paper_out_save (widget, &paper_out, file);
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  sy_paper_out_print (widget, &paper_out);
}

/* Topics: the widget */

static void
sy_audit_page_map (GtkWidget *widget)
{
  SyAuditPage *self = SY_AUDIT_PAGE (widget);

  GTK_WIDGET_CLASS (sy_audit_page_parent_class)->map (widget);
  if (self->is_stale || (sy_audit_list_get (self->rows) == NULL && self->failed == NULL))
    sy_audit_page_ask (self);
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
  sy_audit_page_build (self);
  sy_audit_page_update (self);
  sy_name (GTK_WIDGET (self), _("Register"));
  return GTK_WIDGET (self);
}

void
sy_audit_page_show_day (SyAuditPage *self, const char *day)
{
  g_return_if_fail (SY_IS_AUDIT_PAGE (self));
  gtk_editable_set_text (GTK_EDITABLE (self->entry), day);
  sy_audit_page_show_typed (self);
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
