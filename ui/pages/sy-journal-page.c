/* SPDX-License-Identifier: MIT */
#include "sy-journal-page.h"

#include "sy-i18n.h"
#include "sy-journal-check.h"
#include "sy-journal-columns.h"
#include "sy-journal-narrow.h"
#include "sy-name.h"
#include "sy-policy-window.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-tasks-states.h"
#include "sy-words.h"

#define LOOK_MS 2000 /* for what another program wrote, while the page can be seen */

struct _SyJournalPage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyJournalList *lines;
  GtkSingleSelection *selection;
  GCancellable *cancellable;
  GtkWidget *box, *bar, *about, *narrow, *only, *count, *policy, *show_policy, *states, *view, *check;
  GtkWidget *error_words, *retry;
  char *policy_text;
  guint64 sought;   /* a line to go to once what hides it has gone, 0 for none */
  guint64 known;    /* lines of the journal when people and policy were asked  */
  guint timer;
};

G_DEFINE_FINAL_TYPE (SyJournalPage, sy_journal_page, GTK_TYPE_WIDGET)

/* Topics: what is shown */

static const char *
state_of (SyJournalPage *self)
{
  if (sy_journal_list_get_error (self->lines) != NULL)
    return "error";
  if (g_list_model_get_n_items (G_LIST_MODEL (self->lines)) > 0)
    return "list";
  if (sy_journal_list_get_loading (self->lines))
    return "loading";
  return sy_journal_list_get_total (self->lines) == 0 ? "empty" : "no-match";
}

static void
update_count (SyJournalPage *self)
{
  const guint64 all = sy_journal_list_get_total (self->lines);
  const guint shown = g_list_model_get_n_items (G_LIST_MODEL (self->lines));
  g_autofree char *words = NULL;

  if (sy_journal_list_is_filtered (self->lines))
    words = g_strdup_printf (P_ ("%u of %" G_GUINT64_FORMAT " line", "%u of %" G_GUINT64_FORMAT " lines", all), shown, all);
  else
    words = g_strdup_printf (P_ ("%" G_GUINT64_FORMAT " line", "%" G_GUINT64_FORMAT " lines", all), all);
  gtk_label_set_text (GTK_LABEL (self->count), words);
}

static void ask_about (SyJournalPage *self);

static void
update_state (SyJournalPage *self)
{
  const char *error = sy_journal_list_get_error (self->lines);
  const gboolean has_any = sy_journal_list_get_total (self->lines) > 0;
  gboolean was_loading;

  if (self->box == NULL)
    return;
  was_loading = g_strcmp0 (sy_journal_page_get_state (self), "loading") == 0;
  if (error != NULL)
    gtk_label_set_text (GTK_LABEL (self->error_words), error);
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), state_of (self));
  gtk_widget_set_visible (self->bar, has_any);
  gtk_widget_set_visible (self->count, has_any);
  gtk_widget_set_visible (self->check, has_any || error != NULL);
  update_count (self);
  if (self->known != sy_journal_list_get_total (self->lines))
    ask_about (self);
  /* What the person came for was not there yet when the page was shown. */
  if (was_loading && !g_str_equal (sy_journal_page_get_state (self), "loading") && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
notify_cb (GObject *object, GParamSpec *pspec, SyJournalPage *self)
{
  (void) object, (void) pspec;
  update_state (self);
}

static const SyJournalRow *
selected_row (SyJournalPage *self)
{
  SyJournalLine *line = gtk_single_selection_get_selected_item (self->selection);

  return line != NULL ? sy_journal_line_get_row (line) : NULL;
}

static void
selected_cb (GObject *object, GParamSpec *pspec, SyJournalPage *self)
{
  const SyJournalRow *row = selected_row (self);

  (void) object, (void) pspec;
  gtk_widget_set_sensitive (self->only, row != NULL && *row->item != '\0');
}

/* Topics: people, the policy in force */

static void
people_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyJournalPage) self = user_data;
  char **people = sy_worker_people_finish (SY_WORKER (source), result, NULL);

  if (people == NULL || self->box == NULL)
    g_strfreev (people);
  else
    sy_journal_narrow_set_people (SY_JOURNAL_NARROW (self->narrow), people);
}

static void
in_force_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyJournalPage) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = sy_worker_policy_finish (SY_WORKER (source), result, &error);
  g_autofree char *words = NULL;

  if (self->box == NULL || error != NULL)
    return;
  if (text != NULL)
    words = sy_policy_words (text);
  else
    words = g_strdup (_("No policy was adopted yet: the first revision does that."));
  gtk_label_set_text (GTK_LABEL (self->policy),
                      words != NULL ? words : _("The policy in force is none that this edition can read."));
  gtk_widget_set_visible (self->show_policy, text != NULL);
  g_free (self->policy_text);
  self->policy_text = g_steal_pointer (&text);
}

static void
ask_about (SyJournalPage *self)
{
  self->known = sy_journal_list_get_total (self->lines);
  sy_worker_people_async (self->worker, self->cancellable, people_cb, g_object_ref (self));
  sy_worker_policy_async (self->worker, 0, self->cancellable, in_force_cb, g_object_ref (self));
}

static void
present_policy (SyJournalPage *self, const char *text)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  gtk_window_present (GTK_WINDOW (sy_policy_window_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, text)));
}

static void
show_policy_cb (GtkButton *button, SyJournalPage *self)
{
  (void) button;
  if (self->policy_text != NULL)
    present_policy (self, self->policy_text);
}

static void
line_policy_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyJournalPage) self = user_data;
  g_autofree char *text = sy_worker_policy_finish (SY_WORKER (source), result, NULL);

  if (text != NULL && self->box != NULL)
    present_policy (self, text);
}

/* Topics: what can be done */

static void
activate_cb (GtkColumnView *view, guint position, SyJournalPage *self)
{
  g_autoptr (SyJournalLine) line = g_list_model_get_item (G_LIST_MODEL (self->lines), position);
  const SyJournalRow *row = line != NULL ? sy_journal_line_get_row (line) : NULL;

  (void) view;
  if (row == NULL)
    return;
  if (row->kind == SY_EVENT_POLICY)
    sy_worker_policy_async (self->worker, row->number, self->cancellable, line_policy_cb, g_object_ref (self));
  else if (*row->item != '\0')
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open-history", "s", row->item);
}

static void
chosen_cb (SyJournalNarrow *narrow, SyJournalPage *self)
{
  sy_journal_list_set_filter (self->lines, sy_journal_narrow_get (narrow));
  update_state (self);
}

static void
only_cb (GtkButton *button, SyJournalPage *self)
{
  const SyJournalRow *row = selected_row (self);

  (void) button;
  if (row != NULL && *row->item != '\0')
    sy_journal_narrow_set_item (SY_JOURNAL_NARROW (self->narrow), row->item, row->name);
}

static void
clear_cb (GtkButton *button, SyJournalPage *self)
{
  (void) button;
  sy_journal_narrow_clear (SY_JOURNAL_NARROW (self->narrow));
}

static void
retry_cb (GtkButton *button, SyJournalPage *self)
{
  (void) button;
  sy_journal_list_refresh (self->lines);
}

static gboolean
show_line (SyJournalPage *self, guint64 number)
{
  guint position;

  if (!sy_journal_list_find (self->lines, number, &position))
    return FALSE;
  self->sought = 0;
  gtk_single_selection_set_selected (self->selection, position);
  sy_scroll_to_row (GTK_COLUMN_VIEW (self->view), position);
  return TRUE;
}

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, SyJournalPage *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  update_state (self);
  if (self->sought > 0 && !sy_journal_list_is_filtered (self->lines))
    show_line (self, self->sought);
}

static void
found_cb (SyJournalCheck *check, guint64 line, SyJournalPage *self)
{
  (void) check;
  sy_journal_page_go_to (self, line);
}

static gboolean
look_cb (gpointer user_data)
{
  SyJournalPage *self = user_data;

  sy_journal_list_refresh (self->lines);
  return G_SOURCE_CONTINUE;
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
new_bar (SyJournalPage *self, SyTaskList *list)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);

  self->narrow = sy_journal_narrow_new (list);
  gtk_widget_set_hexpand (self->narrow, TRUE);
  g_signal_connect_object (self->narrow, "chosen", G_CALLBACK (chosen_cb), self, 0);
  self->only = sy_button_new (_("_Only this item"), NULL);
  gtk_widget_set_name (self->only, "only");
  gtk_widget_set_tooltip_text (self->only, _("Show only lines about the item of the line that is selected"));
  gtk_widget_set_sensitive (self->only, FALSE);
  g_signal_connect_object (self->only, "clicked", G_CALLBACK (only_cb), self, 0);
  gtk_box_append (GTK_BOX (bar), self->narrow);
  gtk_box_append (GTK_BOX (bar), self->only);
  set_margins (bar, 12, 6);
  self->bar = bar;
  return bar;
}

static GtkWidget *
new_about (SyJournalPage *self)
{
  GtkWidget *about = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->policy = sy_part_label (NULL, "sy-quiet");
  gtk_widget_set_name (self->policy, "in-force");
  gtk_widget_set_hexpand (self->policy, TRUE);
  self->show_policy = sy_button_new (_("Show the _policy"), NULL);
  gtk_widget_set_name (self->show_policy, "show-policy");
  gtk_widget_set_visible (self->show_policy, FALSE);
  g_signal_connect_object (self->show_policy, "clicked", G_CALLBACK (show_policy_cb), self, 0);
  self->count = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->count, "sy-quiet");
  gtk_widget_add_css_class (self->count, "sy-figures");
  gtk_box_append (GTK_BOX (about), self->policy);
  gtk_box_append (GTK_BOX (about), self->show_policy);
  gtk_box_append (GTK_BOX (about), self->count);
  set_margins (about, 6, 6);
  self->about = about;
  return about;
}

static GtkWidget *
new_list_state (SyJournalPage *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->lines));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self, 0);
  self->view = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  sy_journal_columns_add (GTK_COLUMN_VIEW (self->view));
  gtk_widget_set_name (self->view, "journal");
  sy_name (self->view, _("Journal"));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), _("Journal"));
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  g_signal_connect_object (self->lines, "items-changed", G_CALLBACK (items_changed_cb), self, 0);
  g_signal_connect_object (self->lines, "notify", G_CALLBACK (notify_cb), self, 0);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  return scrolled;
}

static GtkWidget *
new_no_match_state (SyJournalPage *self)
{
  GtkWidget *state = sy_tasks_state_new (_("No line is like that"), _("Nobody wrote such a line on these days."), NULL);
  GtkWidget *show_all = sy_button_new (_("Show _all lines"), NULL);

  gtk_widget_set_halign (show_all, GTK_ALIGN_CENTER);
  gtk_widget_set_name (show_all, "show-all");
  g_signal_connect_object (show_all, "clicked", G_CALLBACK (clear_cb), self, 0);
  gtk_box_append (GTK_BOX (state), show_all);
  return state;
}

static void
build (SyJournalPage *self, SyTaskList *list)
{
  g_autofree char *screening = sy_words_screening (sy_translate);
  GtkStack *states;

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->states = gtk_stack_new ();
  states = GTK_STACK (self->states);
  gtk_widget_set_vexpand (self->states, TRUE);
  gtk_box_append (GTK_BOX (self->box), new_bar (self, list));
  gtk_box_append (GTK_BOX (self->box), new_about (self));
  gtk_stack_add_named (states, sy_tasks_state_new (_("Reading the record…"), "", NULL), "loading");
  gtk_stack_add_named (states, new_list_state (self), "list");
  gtk_stack_add_named (states,
                       sy_tasks_state_new (_("Nothing was written yet"),
                                           _("Every revision, sign-off, action and file becomes a line of the journal here, "
                                             "with who, when and why, and cannot be altered unnoticed. The first is written "
                                             "when something is saved."),
                                           NULL),
                       "empty");
  gtk_stack_add_named (states, new_no_match_state (self), "no-match");
  gtk_stack_add_named (states, sy_tasks_state_error (sy_worker_get_store (self->worker), &self->error_words, &self->retry),
                       "error");
  g_signal_connect_object (self->retry, "clicked", G_CALLBACK (retry_cb), self, 0);
  gtk_box_append (GTK_BOX (self->box), self->states);
  self->check = sy_journal_check_new (self->worker);
  set_margins (self->check, 12, 12);
  g_signal_connect_object (self->check, "found", G_CALLBACK (found_cb), self, 0);
  gtk_box_append (GTK_BOX (self->box), self->check);
  gtk_box_append (GTK_BOX (self->box), sy_part_label (screening, "sy-caution"));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  update_state (self);
}

static void
sy_journal_page_map (GtkWidget *widget)
{
  SyJournalPage *self = SY_JOURNAL_PAGE (widget);

  GTK_WIDGET_CLASS (sy_journal_page_parent_class)->map (widget);
  sy_journal_list_refresh (self->lines);
  if (self->timer == 0)
    self->timer = g_timeout_add (LOOK_MS, look_cb, self);
}

static void
sy_journal_page_unmap (GtkWidget *widget)
{
  g_clear_handle_id (&SY_JOURNAL_PAGE (widget)->timer, g_source_remove);
  GTK_WIDGET_CLASS (sy_journal_page_parent_class)->unmap (widget);
}

static gboolean
sy_journal_page_grab_focus (GtkWidget *widget)
{
  SyJournalPage *self = SY_JOURNAL_PAGE (widget);

  if (g_str_equal (sy_journal_page_get_state (self), "list") && sy_focus_rows (GTK_COLUMN_VIEW (self->view)))
    return TRUE;
  return gtk_widget_child_focus (self->box, GTK_DIR_TAB_FORWARD);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_journal_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SyJournalPage *self = SY_JOURNAL_PAGE (widget);

  if (sy_tab_leaves_rows (GTK_COLUMN_VIEW (self->view), direction))
    return gtk_widget_child_focus (direction == GTK_DIR_TAB_FORWARD ? self->check : self->about, direction);
  return gtk_widget_child_focus (self->box, direction);
}

static void
sy_journal_page_dispose (GObject *object)
{
  SyJournalPage *self = SY_JOURNAL_PAGE (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  if (self->box != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->lines);
  g_clear_object (&self->worker);
  g_clear_pointer (&self->policy_text, g_free);
  G_OBJECT_CLASS (sy_journal_page_parent_class)->dispose (object);
}

static void
sy_journal_page_class_init (SyJournalPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_journal_page_dispose;
  widget_class->map = sy_journal_page_map;
  widget_class->unmap = sy_journal_page_unmap;
  widget_class->grab_focus = sy_journal_page_grab_focus;
  widget_class->focus = sy_journal_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-journal");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_journal_page_init (SyJournalPage *self)
{
  self->cancellable = g_cancellable_new ();
}

GtkWidget *
sy_journal_page_new (SyWorker *worker, SyTaskList *list)
{
  SyJournalPage *self = g_object_new (SY_TYPE_JOURNAL_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->lines = sy_journal_list_new (worker);
  build (self, list);
  sy_name (GTK_WIDGET (self), _("Journal"));
  return GTK_WIDGET (self);
}

GListModel *
sy_journal_page_get_lines (SyJournalPage *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_PAGE (self), NULL);
  return G_LIST_MODEL (self->lines);
}

const char *
sy_journal_page_get_state (SyJournalPage *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_PAGE (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->states));
}

gboolean
sy_journal_page_go_to (SyJournalPage *self, guint64 number)
{
  g_return_val_if_fail (SY_IS_JOURNAL_PAGE (self), FALSE);
  if (number == 0 || number > sy_journal_list_get_total (self->lines))
    return FALSE;
  if (!show_line (self, number))
    {
      self->sought = number;
      sy_journal_narrow_clear (SY_JOURNAL_NARROW (self->narrow));
    }
  return TRUE;
}
