/* SPDX-License-Identifier: MIT */
#include "sy-actions-page.h"

#include "sy-actions-columns.h"
#include "sy-deed-form.h"
#include "sy-i18n.h"
#include "sy-key-choice.h"
#include "sy-name.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-tasks-states.h"
#include "sy-words.h"

struct _SyActionsPage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyDueList *rows;
  GtkSingleSelection *selection;
  SyDueRow *chosen; /* what is shown under the list and what the forms are about; NULL: nothing */
  GtkWidget *box, *bar, *search, *assigned, *closed, *count, *states, *view, *error_words, *retry;
  GtkWidget *below, *about, *history, *close, *assign, *open;
};

G_DEFINE_FINAL_TYPE (SyActionsPage, sy_actions_page, GTK_TYPE_WIDGET)

/* Topics: what is shown */

static const char *
state_of (SyActionsPage *self)
{
  guint all = 0;

  if (sy_due_list_get_error (self->rows) != NULL)
    return "error";
  if (g_list_model_get_n_items (G_LIST_MODEL (self->rows)) > 0)
    return "list";
  if (sy_due_list_get_loading (self->rows))
    return "loading";
  for (int when = 0; when < SY_N_DUE; when++)
    all += sy_due_list_count (self->rows, (SyDueWhen) when);
  return all == 0 ? "empty" : "no-match";
}

static void
add_count (GString *words, guint count, const char *text)
{
  if (count > 0)
    g_string_append_printf (words, "%s%u %s", words->len > 0 ? " · " : "", count, text);
}

static void
update_count (SyActionsPage *self)
{
  g_autoptr (GString) words = g_string_new (NULL);

  add_count (words, sy_due_list_count (self->rows, SY_DUE_OVERDUE), _("overdue"));
  add_count (words, sy_due_list_count (self->rows, SY_DUE_THIS_WEEK), _("this week"));
  add_count (words, sy_due_list_count (self->rows, SY_DUE_LATER), _("later"));
  add_count (words, sy_due_list_count (self->rows, SY_DUE_NO_DATE), _("without a date"));
  gtk_label_set_text (GTK_LABEL (self->count), words->str);
}

static void
update_state (SyActionsPage *self)
{
  const char *error = sy_due_list_get_error (self->rows);
  const char *state;
  gboolean was_loading;

  if (self->box == NULL)
    return;
  was_loading = g_strcmp0 (sy_actions_page_get_state (self), "loading") == 0;
  state = state_of (self);
  if (error != NULL)
    gtk_label_set_text (GTK_LABEL (self->error_words), error);
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), state);
  gtk_widget_set_visible (self->below, self->chosen != NULL && g_str_equal (state, "list"));
  update_count (self);
  /* What the person came for was not there yet when the page was shown. */
  if (was_loading && !g_str_equal (state, "loading") && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* What was done about an action, and why it was opened. New string. */
static char *
history_of (const SyAction *action)
{
  g_autoptr (GString) words = g_string_new (NULL);

  /* Translators: by whom and when an action was opened. */
  g_string_append_printf (words, _("Opened by %s, %.10s."), action->opened_by, action->opened_when);
  if (*action->why != '\0')
    g_string_append_printf (words, " %s", action->why);
  if (!action->open)
    {
      g_string_append_c (words, ' ');
      g_string_append_printf (words, _("Closed by %s, %.10s: %s"), action->closed_by, action->closed_when, action->evidence);
    }
  return g_string_free (g_steal_pointer (&words), FALSE);
}

static void
show_chosen (SyActionsPage *self)
{
  const SyAction *action = self->chosen != NULL ? sy_due_row_get_action (self->chosen) : NULL;
  g_autofree char *what = NULL, *about = NULL, *history = NULL;
  const gboolean is_open = action != NULL && action->open;

  update_state (self);
  gtk_widget_set_visible (self->close, is_open);
  gtk_widget_set_visible (self->assign, is_open);
  if (self->chosen == NULL)
    return;
  what = sy_due_row_what (self->chosen);
  about = g_strdup_printf ("%s: %s", sy_due_row_get_item_name (self->chosen), what);
  history = action != NULL ? history_of (action) : g_strdup (_("A new revision settles the review."));
  gtk_label_set_text (GTK_LABEL (self->about), about);
  gtk_label_set_text (GTK_LABEL (self->history), history);
}

static void
choose (SyActionsPage *self, SyDueRow *row)
{
  const gboolean is_same = row != NULL && self->chosen != NULL
                           && g_str_equal (sy_due_row_get_key (row), sy_due_row_get_key (self->chosen));

  if (!is_same)
    {
      sy_deed_form_close (SY_DEED_FORM (self->close));
      sy_deed_form_close (SY_DEED_FORM (self->assign));
    }
  g_set_object (&self->chosen, row);
  show_chosen (self);
}

static void
selected_cb (GObject *object, GParamSpec *pspec, SyActionsPage *self)
{
  (void) object, (void) pspec;
  choose (self, gtk_single_selection_get_selected_item (self->selection));
}

static void
notify_cb (GObject *object, GParamSpec *pspec, SyActionsPage *self)
{
  (void) object, (void) pspec;
  update_state (self);
}

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, SyActionsPage *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  update_state (self);
  sy_key_choice_set_keys (SY_KEY_CHOICE (self->assigned), sy_due_list_people (self->rows));
}

/* Topics: what can be done */

static void
open_item (SyActionsPage *self, SyDueRow *row)
{
  /* An action is closed where it was opened; a review is settled by a revision, which begins with the facts. */
  gtk_widget_activate_action (GTK_WIDGET (self), sy_due_row_get_action (row) != NULL ? "win.open-follow-up" : "win.open-task",
                              "s", sy_due_row_get_item (row));
}

static void
activate_cb (GtkColumnView *view, guint position, SyActionsPage *self)
{
  g_autoptr (SyDueRow) row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);

  (void) view;
  if (row != NULL)
    open_item (self, row);
}

static void
open_cb (GtkButton *button, SyActionsPage *self)
{
  (void) button;
  if (self->chosen != NULL)
    open_item (self, self->chosen);
}

static void
search_cb (GtkEditable *editable, SyActionsPage *self)
{
  sy_due_list_set_search (self->rows, gtk_editable_get_text (editable));
  update_state (self);
}

static void
stop_search_cb (GtkSearchEntry *entry, SyActionsPage *self)
{
  (void) self;
  gtk_editable_set_text (GTK_EDITABLE (entry), "");
}

static void
assigned_cb (SyKeyChoice *choice, SyActionsPage *self)
{
  sy_due_list_set_assigned (self->rows, sy_key_choice_get (choice));
  update_state (self);
}

static void
closed_cb (GtkCheckButton *button, SyActionsPage *self)
{
  sy_due_list_set_closed (self->rows, gtk_check_button_get_active (button));
}

static void
clear_cb (GtkButton *button, SyActionsPage *self)
{
  (void) button;
  sy_actions_page_set_search (self, "");
  sy_key_choice_choose (SY_KEY_CHOICE (self->assigned), NULL);
}

static void
retry_cb (GtkButton *button, SyActionsPage *self)
{
  (void) button;
  sy_due_list_refresh (self->rows);
}

/* Of the action that is chosen; NULL: it has gone meanwhile. */
static SyDeedAsk *
begin_ask (SyActionsPage *self, SyDeedForm *form, SyDeedStep step, const char *why)
{
  const SyAction *action = self->chosen != NULL ? sy_due_row_get_action (self->chosen) : NULL;
  g_autofree char *by = sy_deed_form_dup (form, "by"), *role = sy_deed_form_dup (form, "role");
  SyDeedAsk *ask;

  if (action == NULL)
    return NULL;
  ask = sy_deed_ask_new (SY_EVENT_ACTION, action->item, by, role, why);
  ask->deed.step = step;
  ask->deed.action = g_strdup (action->id);
  return ask;
}

static SyDeedAsk *
make_close (SyDeedForm *form, gpointer user_data)
{
  SyDeedAsk *ask = begin_ask (user_data, form, SY_STEP_CLOSE, "");

  if (ask != NULL)
    ask->deed.evidence = sy_deed_form_dup (form, "evidence");
  return ask;
}

static SyDeedAsk *
make_assign (SyDeedForm *form, gpointer user_data)
{
  g_autofree char *due = sy_deed_form_dup (form, "due"), *to = sy_deed_form_dup (form, "assigned");
  SyDeedAsk *ask;

  if (!sy_deed_day_is_fine (due))
    {
      sy_deed_form_say (form, _("A day is written like 2026-12-01."), TRUE);
      return NULL;
    }
  if (*due == '\0' && *to == '\0')
    {
      sy_deed_form_say (form, _("Say to whom, or until when."), TRUE);
      return NULL;
    }
  ask = begin_ask (user_data, form, SY_STEP_ASSIGN, "");
  if (ask != NULL)
    {
      ask->deed.assigned = g_steal_pointer (&to);
      ask->deed.due = g_steal_pointer (&due);
    }
  return ask;
}

static void
opened_cb (SyDeedForm *form, SyActionsPage *self)
{
  sy_deed_form_close (SY_DEED_FORM (GTK_WIDGET (form) == self->close ? self->assign : self->close));
}

static void
done_cb (SyDeedForm *form, SyActionsPage *self)
{
  (void) form;
  sy_due_list_refresh (self->rows);
}

/* Topics: building */

static void
set_margins (GtkWidget *widget)
{
  gtk_widget_set_margin_start (widget, 18);
  gtk_widget_set_margin_end (widget, 18);
  gtk_widget_set_margin_top (widget, 12);
  gtk_widget_set_margin_bottom (widget, 12);
}

static GtkWidget *
new_bar (SyActionsPage *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->search = gtk_search_entry_new ();
  gtk_widget_set_name (self->search, "search");
  gtk_widget_set_hexpand (self->search, TRUE);
  g_object_set (self->search, "placeholder-text", _("What, item, who, why"), NULL);
  sy_name (self->search, _("Search what is to be done"));
  g_signal_connect_object (self->search, "changed", G_CALLBACK (search_cb), self, 0);
  g_signal_connect_object (self->search, "stop-search", G_CALLBACK (stop_search_cb), self, 0);
  self->assigned = sy_key_choice_new (_("Anybody"), _("Show only what is assigned to this person"), NULL);
  gtk_widget_set_name (self->assigned, "assigned");
  gtk_widget_set_valign (self->assigned, GTK_ALIGN_CENTER);
  g_signal_connect_object (self->assigned, "chosen", G_CALLBACK (assigned_cb), self, 0);
  self->closed = gtk_check_button_new_with_mnemonic (_("Closed ones t_oo"));
  gtk_widget_set_name (self->closed, "closed");
  sy_name (self->closed, _("Closed ones too"));
  g_signal_connect_object (self->closed, "toggled", G_CALLBACK (closed_cb), self, 0);
  self->count = gtk_label_new (NULL);
  gtk_widget_set_name (self->count, "count");
  gtk_widget_add_css_class (self->count, "sy-quiet");
  gtk_widget_add_css_class (self->count, "sy-figures");
  gtk_box_append (GTK_BOX (bar), self->search);
  gtk_box_append (GTK_BOX (bar), self->assigned);
  gtk_box_append (GTK_BOX (bar), self->closed);
  gtk_box_append (GTK_BOX (bar), self->count);
  set_margins (bar);
  self->bar = bar;
  return bar;
}

static GtkWidget *
new_list_state (SyActionsPage *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->rows));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self, 0);
  self->view = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  sy_actions_columns_add (GTK_COLUMN_VIEW (self->view));
  gtk_widget_set_name (self->view, "actions");
  sy_name (self->view, _("What is to be done"));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), _("What is to be done"));
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  return scrolled;
}

static GtkWidget *
new_form (SyActionsPage *self, const char *id, const char *title, const char *button, const char *act,
          const SyDeedField *fields, gsize n, SyDeedMake make)
{
  GtkWidget *form = sy_deed_form_new (self->worker, id, title, button, act, FALSE);

  sy_deed_form_add (SY_DEED_FORM (form), fields, n);
  sy_deed_form_set_make (SY_DEED_FORM (form), make, self);
  g_signal_connect_object (form, "opened", G_CALLBACK (opened_cb), self, 0);
  g_signal_connect_object (form, "done", G_CALLBACK (done_cb), self, 0);
  return form;
}

static GtkWidget *
new_below (SyActionsPage *self)
{
  const SyDeedField close[] = {
    { "evidence", _("By what it can be seen"), _("What was done, and where that can be seen"), TRUE },
  };
  const SyDeedField assign[] = {
    { "assigned", _("To whom"), _("Left empty: as it was"), FALSE },
    { "due", _("Until"), _("2026-12-01; left empty: as it was"), FALSE },
  };
  GtkWidget *deeds = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->below = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->about = sy_part_label (NULL, "sy-strong");
  self->history = sy_part_label (NULL, "sy-quiet");
  gtk_widget_set_name (self->about, "about");
  self->close = new_form (self, "close", _("Close the action"), _("_Close the action"), _("_Close it"), close,
                          G_N_ELEMENTS (close), make_close);
  self->assign = new_form (self, "assign", _("Assign"), _("_Assign"), _("_Assign it"), assign, G_N_ELEMENTS (assign),
                           make_assign);
  self->open = sy_button_new (_("O_pen the item"), NULL);
  gtk_widget_set_name (self->open, "open");
  gtk_widget_set_valign (self->open, GTK_ALIGN_START);
  g_signal_connect_object (self->open, "clicked", G_CALLBACK (open_cb), self, 0);
  gtk_box_append (GTK_BOX (deeds), self->close);
  gtk_box_append (GTK_BOX (deeds), self->assign);
  gtk_box_append (GTK_BOX (deeds), self->open);
  gtk_box_append (GTK_BOX (self->below), self->about);
  gtk_box_append (GTK_BOX (self->below), self->history);
  gtk_box_append (GTK_BOX (self->below), deeds);
  set_margins (self->below);
  return self->below;
}

static GtkWidget *
new_no_match_state (SyActionsPage *self)
{
  GtkWidget *state = sy_tasks_state_new (_("Nothing of what is to be done is like that"), "", NULL);
  GtkWidget *show_all = sy_button_new (_("Show _all of it"), NULL);

  gtk_widget_set_halign (show_all, GTK_ALIGN_CENTER);
  g_signal_connect_object (show_all, "clicked", G_CALLBACK (clear_cb), self, 0);
  gtk_box_append (GTK_BOX (state), show_all);
  return state;
}

static GtkWidget *
new_empty_state (void)
{
  GtkWidget *state = sy_tasks_state_new (
    _("Nothing is to be done"),
    _("Actions that are opened in a task, a die or an item of gear (its part “Follow-up”) stand here until they are closed, "
      "and so do the reviews that are set there: what is overdue first."),
    NULL);
  GtkWidget *button = sy_button_new (_("Show the _tasks"), NULL);

  gtk_widget_set_halign (button, GTK_ALIGN_CENTER);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.page");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", "tasks");
  gtk_box_append (GTK_BOX (state), button);
  return state;
}

static void
build (SyActionsPage *self)
{
  g_autofree char *screening = sy_words_screening (sy_translate);
  GtkStack *states;

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->states = gtk_stack_new ();
  states = GTK_STACK (self->states);
  gtk_widget_set_vexpand (self->states, TRUE);
  gtk_box_append (GTK_BOX (self->box), new_bar (self));
  gtk_stack_add_named (states, sy_tasks_state_new (_("Reading the record…"), "", NULL), "loading");
  gtk_stack_add_named (states, new_list_state (self), "list");
  gtk_stack_add_named (states, new_empty_state (), "empty");
  gtk_stack_add_named (states, new_no_match_state (self), "no-match");
  gtk_stack_add_named (states, sy_tasks_state_error (sy_worker_get_store (self->worker), &self->error_words, &self->retry),
                       "error");
  g_signal_connect_object (self->retry, "clicked", G_CALLBACK (retry_cb), self, 0);
  gtk_box_append (GTK_BOX (self->box), self->states);
  gtk_box_append (GTK_BOX (self->box), new_below (self));
  gtk_box_append (GTK_BOX (self->box), sy_part_label (screening, "sy-caution"));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  g_signal_connect_object (self->rows, "items-changed", G_CALLBACK (items_changed_cb), self, 0);
  g_signal_connect_object (self->rows, "notify", G_CALLBACK (notify_cb), self, 0);
  show_chosen (self);
}

static void
sy_actions_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sy_actions_page_parent_class)->map (widget);
  sy_due_list_set_watched (SY_ACTIONS_PAGE (widget)->rows, TRUE);
}

static void
sy_actions_page_unmap (GtkWidget *widget)
{
  sy_due_list_set_watched (SY_ACTIONS_PAGE (widget)->rows, FALSE);
  GTK_WIDGET_CLASS (sy_actions_page_parent_class)->unmap (widget);
}

static gboolean
sy_actions_page_grab_focus (GtkWidget *widget)
{
  SyActionsPage *self = SY_ACTIONS_PAGE (widget);

  if (g_str_equal (sy_actions_page_get_state (self), "list") && sy_focus_rows (GTK_COLUMN_VIEW (self->view)))
    return TRUE;
  return gtk_widget_child_focus (self->box, GTK_DIR_TAB_FORWARD);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_actions_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SyActionsPage *self = SY_ACTIONS_PAGE (widget);

  if (sy_tab_leaves_rows (GTK_COLUMN_VIEW (self->view), direction))
    return gtk_widget_child_focus (direction == GTK_DIR_TAB_FORWARD ? self->below : self->bar, direction);
  return gtk_widget_child_focus (self->box, direction);
}

static void
sy_actions_page_dispose (GObject *object)
{
  SyActionsPage *self = SY_ACTIONS_PAGE (object);

  if (self->box != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->chosen);
  g_clear_object (&self->rows);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_actions_page_parent_class)->dispose (object);
}

static void
sy_actions_page_class_init (SyActionsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_actions_page_dispose;
  widget_class->map = sy_actions_page_map;
  widget_class->unmap = sy_actions_page_unmap;
  widget_class->grab_focus = sy_actions_page_grab_focus;
  widget_class->focus = sy_actions_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-actions");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_actions_page_init (SyActionsPage *self)
{
  (void) self;
}

GtkWidget *
sy_actions_page_new (SyWorker *worker, SyTaskList *list)
{
  SyActionsPage *self = g_object_new (SY_TYPE_ACTIONS_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->rows = sy_due_list_new (worker, list);
  build (self);
  sy_name (GTK_WIDGET (self), _("What is to be done"));
  return GTK_WIDGET (self);
}

GListModel *
sy_actions_page_get_rows (SyActionsPage *self)
{
  g_return_val_if_fail (SY_IS_ACTIONS_PAGE (self), NULL);
  return G_LIST_MODEL (self->rows);
}

const char *
sy_actions_page_get_state (SyActionsPage *self)
{
  g_return_val_if_fail (SY_IS_ACTIONS_PAGE (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->states));
}

void
sy_actions_page_set_search (SyActionsPage *self, const char *search)
{
  g_return_if_fail (SY_IS_ACTIONS_PAGE (self));
  gtk_editable_set_text (GTK_EDITABLE (self->search), search);
}

void
sy_actions_page_select (SyActionsPage *self, guint position)
{
  g_return_if_fail (SY_IS_ACTIONS_PAGE (self));
  gtk_single_selection_set_selected (self->selection, position);
}
