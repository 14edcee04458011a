/* SPDX-License-Identifier: MIT */
#include "sy-tasks-page.h"

#include "sy-drafts.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-tasks-choices.h"
#include "sy-tasks-columns.h"
#include "sy-tasks-states.h"
#include "sy-words.h"

struct _SyTasksPage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyTaskList *list;
  SyRegister which;
  const SyRegisterPage *words;
  SyTasksColumns *columns;
  SyTaskView *rows;
  GtkSingleSelection *selection;
  GdkFrameClock *clock; /* whose first frame is waited for; NULL: no more */
  gulong painted;
  gboolean entered; /* Enter was pressed in the search, which has not been answered yet */
  gboolean filling; /* the view has no rows yet: the window is painted first */

  GtkWidget *box, *bar, *count, *search, *choices, *drafts, *states;
  GtkWidget *view, *error_words, *retry;
};

G_DEFINE_FINAL_TYPE (SyTasksPage, sy_tasks_page, GTK_TYPE_WIDGET)

/* Topics: what is shown */

/* All that there is for what is asked for: what is retired counts only when it is asked for. */
static guint
count_all (SyTasksPage *self)
{
  guint all = sy_task_list_count (self->list, self->which);

  return sy_tasks_choices_get (SY_TASKS_CHOICES (self->choices))->retired
           ? all + sy_task_list_count_retired (self->list, self->which)
           : all;
}

static const char *
state_of (SyTasksPage *self)
{
  if (sy_task_list_get_error (self->list) != NULL || sy_task_view_get_error (self->rows) != NULL)
    return "error";
  if (sy_task_list_get_loading (self->list) || self->filling)
    return "loading";
  if (sy_task_list_count (self->list, self->which) + sy_task_list_count_retired (self->list, self->which) == 0)
    return "empty";
  return g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 0 ? "no-match" : "list";
}

static void
update_state (SyTasksPage *self)
{
  const char *state = state_of (self);
  const char *error = sy_task_list_get_error (self->list);
  guint all = count_all (self);
  gboolean was_loading = g_str_equal (sy_tasks_page_get_state (self), "loading");
  gboolean has_any = all + sy_task_list_count_retired (self->list, self->which) > 0;
  g_autofree char *words = NULL;

  if (error == NULL)
    error = sy_task_view_get_error (self->rows);
  if (error != NULL)
    gtk_label_set_text (GTK_LABEL (self->error_words), error);
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), state);

  /* Where there is nothing to search, the page has one next step and no other. */
  gtk_widget_set_visible (self->bar, has_any && !self->filling);
  if (error != NULL || !has_any)
    words = g_strdup ("");
  else
    words = sy_register_count (self->which, g_list_model_get_n_items (G_LIST_MODEL (self->rows)), all);
  gtk_label_set_text (GTK_LABEL (self->count), words);

  /* What the person came for was not there yet when the window opened. */
  if (was_loading && !g_str_equal (state, "loading") && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, SyTasksPage *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  update_state (self);
}

static void
notify_cb (GObject *object, GParamSpec *pspec, SyTasksPage *self)
{
  (void) object, (void) pspec;
  update_state (self);
}

static void
search_changed_cb (GtkEditable *editable, SyTasksPage *self)
{
  self->entered = FALSE;
  sy_task_view_search (self->rows, gtk_editable_get_text (editable));
}

static void
chosen_cb (SyTasksChoices *choices, SyTasksPage *self)
{
  sy_task_view_choose (self->rows, sy_tasks_choices_get (choices));
  update_state (self);
}

/* Topics: the first frame */

static void
stop_waiting (SyTasksPage *self)
{
  /* The clock of a window that is gone has let go of everybody. */
  if (self->painted != 0 && g_signal_handler_is_connected (self->clock, self->painted))
    g_signal_handler_disconnect (self->clock, self->painted);
  self->painted = 0;
  g_clear_object (&self->clock);
}

/* The rows are made after the window was painted for the first time: it is there at once, however many they are. */
static void
fill (SyTasksPage *self)
{
  stop_waiting (self);
  if (!self->filling)
    return;
  self->filling = FALSE;
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), GTK_SELECTION_MODEL (self->selection));
  update_state (self);
}

static void
painted_cb (GdkFrameClock *clock, SyTasksPage *self)
{
  (void) clock;
  fill (self);
}

/* Topics: what can be done */

static void
activate_cb (GtkColumnView *view, guint position, SyTasksPage *self)
{
  g_autoptr (SyTaskRow) row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);

  (void) view;
  if (row != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open-task", "s",
                                sy_task_row_get_task (row)->id);
}

static void
search_activate_cb (GtkSearchEntry *entry, SyTasksPage *self)
{
  (void) entry;
  /* What stands there may not be what was searched for, until that is known. */
  self->entered = sy_task_view_get_pending (self->rows);
  if (self->entered)
    return;
  /* With one row left there is no doubt which is meant. */
  if (g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 1)
    activate_cb (NULL, 0, self);
  else
    sy_focus_rows (GTK_COLUMN_VIEW (self->view));
}

static void
pending_cb (GObject *object, GParamSpec *pspec, SyTasksPage *self)
{
  (void) object, (void) pspec;
  if (self->entered && !sy_task_view_get_pending (self->rows))
    search_activate_cb (NULL, self);
}

/* Typing anywhere in the page searches; the rest of the word must not be lost with a row that goes away. */
static void
search_started_cb (GtkSearchEntry *entry, gpointer user_data)
{
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (entry));

  (void) user_data;
  if (GTK_IS_TEXT (text))
    gtk_text_grab_focus_without_selecting (GTK_TEXT (text));
}

static void
stop_search_cb (GtkSearchEntry *entry, SyTasksPage *self)
{
  (void) self;
  gtk_editable_set_text (GTK_EDITABLE (entry), "");
}

static void
clear_cb (GtkButton *button, SyTasksPage *self)
{
  (void) button;
  sy_tasks_page_set_search (self, "");
  sy_tasks_choices_clear (SY_TASKS_CHOICES (self->choices));
  /* Where all are retired, all are these. */
  if (sy_task_list_count (self->list, self->which) == 0)
    sy_tasks_choices_set_retired (SY_TASKS_CHOICES (self->choices), TRUE);
  sy_tasks_page_focus_search (self);
}

static void
retry_cb (GtkButton *button, SyTasksPage *self)
{
  (void) button;
  if (sy_task_view_get_error (self->rows) != NULL)
    {
      sy_task_view_search (self->rows, NULL);
      sy_task_view_search (self->rows, gtk_editable_get_text (GTK_EDITABLE (self->search)));
    }
  sy_task_list_refresh (self->list);
}

/* Topics: building */

static GtkWidget *
new_list_state (SyTasksPage *self, SyUnits units)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->view = gtk_column_view_new (NULL);
  self->columns = sy_tasks_columns_new (GTK_COLUMN_VIEW (self->view), self->which, units);
  sy_tasks_columns_sort_by (self->columns, self->words->first,
                            self->words->descending ? GTK_SORT_DESCENDING : GTK_SORT_ASCENDING);
  sy_tasks_columns_set_rows (self->columns, self->rows);
  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->rows));

  gtk_widget_set_name (self->view, self->words->page);
  sy_name (self->view, sy_translate (self->words->title));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), sy_translate (self->words->title));
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  /* The rows hear of the list before the page does. */
  g_signal_connect_object (self->rows, "items-changed", G_CALLBACK (items_changed_cb), self, 0);
  g_signal_connect_object (self->rows, "notify", G_CALLBACK (notify_cb), self, 0);
  g_signal_connect_object (self->rows, "notify::pending", G_CALLBACK (pending_cb), self, 0);
  g_signal_connect_object (self->list, "items-changed", G_CALLBACK (items_changed_cb), self, 0);
  g_signal_connect_object (self->list, "notify", G_CALLBACK (notify_cb), self, 0);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  return scrolled;
}

static GtkWidget *
new_bar (SyTasksPage *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->search = gtk_search_entry_new ();
  gtk_widget_set_name (self->search, "search");
  gtk_widget_set_hexpand (self->search, TRUE);
  g_object_set (self->search, "placeholder-text", sy_translate (self->words->search), NULL);
  sy_name (self->search, sy_translate (self->words->search_name));
  gtk_search_entry_set_key_capture_widget (GTK_SEARCH_ENTRY (self->search), GTK_WIDGET (self));
  g_signal_connect_object (self->search, "changed", G_CALLBACK (search_changed_cb), self, 0);
  g_signal_connect_object (self->search, "activate", G_CALLBACK (search_activate_cb), self, 0);
  g_signal_connect (self->search, "search-started", G_CALLBACK (search_started_cb), NULL);
  g_signal_connect_object (self->search, "stop-search", G_CALLBACK (stop_search_cb), self, 0);

  self->count = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->count, "sy-quiet");
  gtk_widget_add_css_class (self->count, "sy-figures");

  gtk_box_append (GTK_BOX (bar), self->search);
  self->choices = sy_tasks_choices_new (self->which, self->list);
  g_signal_connect_object (self->choices, "chosen", G_CALLBACK (chosen_cb), self, 0);
  gtk_box_append (GTK_BOX (bar), self->choices);
  gtk_box_append (GTK_BOX (bar), self->count);
  gtk_box_append (GTK_BOX (bar), sy_tasks_begin_new (self->words));
  gtk_widget_set_margin_start (bar, 18);
  gtk_widget_set_margin_end (bar, 18);
  gtk_widget_set_margin_top (bar, 12);
  gtk_widget_set_margin_bottom (bar, 12);
  self->bar = bar;
  return bar;
}

static void
build (SyTasksPage *self, SyUnits units)
{
  g_autofree char *screening = sy_words_screening (sy_translate);
  GtkWidget *show_all;
  GtkStack *states;

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->states = gtk_stack_new ();
  states = GTK_STACK (self->states);
  gtk_widget_set_vexpand (self->states, TRUE);
  gtk_stack_add_named (states, sy_tasks_state_new (_("Reading the record…"), "", NULL), "loading");
  gtk_stack_add_named (states, new_list_state (self, units), "list");
  gtk_stack_add_named (states, sy_tasks_state_empty (self->words), "empty");
  gtk_stack_add_named (states, sy_tasks_state_no_match (self->words, &show_all), "no-match");
  gtk_stack_add_named (states, sy_tasks_state_error (sy_worker_get_store (self->worker), &self->error_words, &self->retry),
                       "error");
  g_signal_connect_object (show_all, "clicked", G_CALLBACK (clear_cb), self, 0);
  g_signal_connect_object (self->retry, "clicked", G_CALLBACK (retry_cb), self, 0);

  gtk_box_append (GTK_BOX (self->box), new_bar (self));
  self->drafts = sy_drafts_new (sy_worker_get_store (self->worker), sy_register_item_kind (self->which));
  gtk_box_append (GTK_BOX (self->box), self->drafts);
  gtk_box_append (GTK_BOX (self->box), self->states);
  gtk_box_append (GTK_BOX (self->box), sy_part_label (screening, "sy-caution"));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  update_state (self);
}

static void
sy_tasks_page_map (GtkWidget *widget)
{
  SyTasksPage *self = SY_TASKS_PAGE (widget);

  sy_tasks_page_refresh_drafts (self);
  GTK_WIDGET_CLASS (sy_tasks_page_parent_class)->map (widget);
  if (!self->filling || self->painted != 0)
    return;
  self->clock = g_object_ref (gtk_widget_get_frame_clock (widget));
  if (gdk_frame_clock_get_frame_counter (self->clock) > 1)
    fill (self);
  else
    self->painted = g_signal_connect (self->clock, "after-paint", G_CALLBACK (painted_cb), self);
}

static gboolean
sy_tasks_page_grab_focus (GtkWidget *widget)
{
  SyTasksPage *self = SY_TASKS_PAGE (widget);

  if (g_str_equal (sy_tasks_page_get_state (self), "list"))
    return sy_focus_rows (GTK_COLUMN_VIEW (self->view)) || gtk_widget_grab_focus (self->search);
  if (g_str_equal (sy_tasks_page_get_state (self), "error"))
    return gtk_widget_grab_focus (self->retry);
  return gtk_widget_child_focus (self->states, GTK_DIR_TAB_FORWARD);
}

static void
sy_tasks_page_dispose (GObject *object)
{
  SyTasksPage *self = SY_TASKS_PAGE (object);

  stop_waiting (self);
  if (self->columns != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  g_clear_pointer (&self->columns, sy_tasks_columns_free);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->list);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_tasks_page_parent_class)->dispose (object);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_tasks_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (SY_TASKS_PAGE (widget)->box, direction);
}

static void
sy_tasks_page_class_init (SyTasksPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_tasks_page_dispose;
  widget_class->map = sy_tasks_page_map;
  widget_class->grab_focus = sy_tasks_page_grab_focus;
  widget_class->focus = sy_tasks_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-tasks");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_tasks_page_init (SyTasksPage *self)
{
  self->filling = TRUE;
}

GtkWidget *
sy_tasks_page_new (SyWorker *worker, SyTaskList *list, SyRegister which, SyUnits units)
{
  SyTasksPage *self = g_object_new (SY_TYPE_TASKS_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->list = g_object_ref (list);
  self->which = which;
  self->words = sy_register_page (which);
  if (sy_item_has_figures (sy_register_item_kind (which)))
    sy_task_list_want_figures (list);
  self->rows = sy_task_view_new (list, sy_register_item_kind (which), NULL, 0);
  build (self, units);
  sy_name (GTK_WIDGET (self), sy_translate (self->words->title));
  return GTK_WIDGET (self);
}

void
sy_tasks_page_set_units (SyTasksPage *self, SyUnits units)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  sy_tasks_columns_set_units (self->columns, units);
  if (self->filling)
    return;
  /* All rows are bound anew; nothing is selected by it. */
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), GTK_SELECTION_MODEL (self->selection));
}

void
sy_tasks_page_refresh_drafts (SyTasksPage *self)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  sy_drafts_refresh (SY_DRAFTS (self->drafts));
}

void
sy_tasks_page_focus_search (SyTasksPage *self)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  gtk_widget_grab_focus (self->search);
}

void
sy_tasks_page_set_search (SyTasksPage *self, const char *search)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  gtk_editable_set_text (GTK_EDITABLE (self->search), search);
}

void
sy_tasks_page_set_choice (SyTasksPage *self, const char *key)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  sy_tasks_choices_set (SY_TASKS_CHOICES (self->choices), self->words->narrow, key);
}

void
sy_tasks_page_set_due (SyTasksPage *self, gboolean due)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  sy_tasks_choices_set (SY_TASKS_CHOICES (self->choices), SY_NARROW_DUE, due ? "any" : NULL);
}

GListModel *
sy_tasks_page_get_rows (SyTasksPage *self)
{
  g_return_val_if_fail (SY_IS_TASKS_PAGE (self), NULL);
  return G_LIST_MODEL (self->rows);
}

const char *
sy_tasks_page_get_selected (SyTasksPage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  SyTaskRow *row;

  g_return_val_if_fail (SY_IS_TASKS_PAGE (self), NULL);
  row = gtk_single_selection_get_selected_item (self->selection);
  /* In GTK 4.8 a row that the keyboard comes to is not selected by it. */
  if (row == NULL && focus != NULL && gtk_widget_is_ancestor (focus, self->view))
    {
      gtk_widget_activate_action (focus, "listitem.select", "(bb)", FALSE, FALSE);
      row = gtk_single_selection_get_selected_item (self->selection);
    }
  return row != NULL ? sy_task_row_get_task (row)->id : NULL;
}

const char *
sy_tasks_page_get_state (SyTasksPage *self)
{
  g_return_val_if_fail (SY_IS_TASKS_PAGE (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->states));
}
