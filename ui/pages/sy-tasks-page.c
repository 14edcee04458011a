/* SPDX-License-Identifier: MIT */
#include "sy-tasks-page.h"

#include "sy-drafts.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-tasks-columns.h"
#include "sy-tasks-narrow.h"
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
  GtkFilterListModel *filtered; /* items of the kind that are chosen */
  GtkSortListModel *sorted;
  GtkSingleSelection *selection;
  GtkFilter *filter;
  SyTaskChoice choice;
  char *searched;
  guint reading;   /* idle in which the machines are read */

  GtkWidget *box, *bar, *count, *search, *narrow, *due, *drafts, *states;
  GtkWidget *view, *error_words, *retry;
};

G_DEFINE_FINAL_TYPE (SyTasksPage, sy_tasks_page, GTK_TYPE_WIDGET)

/* Topics: what is shown */

static gboolean
match_cb (gpointer item, gpointer user_data)
{
  return sy_task_chosen (item, &SY_TASKS_PAGE (user_data)->choice);
}

static void
update_state (SyTasksPage *self)
{
  guint all = sy_task_list_count (self->list, self->which);
  guint shown = g_list_model_get_n_items (G_LIST_MODEL (self->sorted));
  const char *error = sy_task_list_get_error (self->list);
  gboolean was_loading = g_str_equal (sy_tasks_page_get_state (self), "loading");
  g_autofree char *words = NULL;

  if (error != NULL)
    gtk_label_set_text (GTK_LABEL (self->error_words), error);
  if (error != NULL)
    gtk_stack_set_visible_child_name (GTK_STACK (self->states), "error");
  else if (sy_task_list_get_loading (self->list))
    gtk_stack_set_visible_child_name (GTK_STACK (self->states), "loading");
  else if (all == 0)
    gtk_stack_set_visible_child_name (GTK_STACK (self->states), "empty");
  else if (shown == 0)
    gtk_stack_set_visible_child_name (GTK_STACK (self->states), "no-match");
  else
    gtk_stack_set_visible_child_name (GTK_STACK (self->states), "list");

  /* Where there is nothing to search, the page has one next step and no other. */
  gtk_widget_set_visible (self->bar, all > 0);
  if (error != NULL || all == 0)
    words = g_strdup ("");
  else
    words = sy_register_count (self->which, shown, all);
  gtk_label_set_text (GTK_LABEL (self->count), words);

  /* What the person came for was not there yet when the window opened. */
  if (was_loading && !sy_task_list_get_loading (self->list) && gtk_widget_get_mapped (GTK_WIDGET (self)))
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
  const char *text = gtk_editable_get_text (editable);
  g_autofree char *before = g_steal_pointer (&self->searched);
  g_auto (GStrv) words = g_steal_pointer (&self->choice.words);
  GtkFilterChange change = GTK_FILTER_CHANGE_DIFFERENT;

  /* Typing on can only take rows away, rubbing out can only bring rows back. */
  if (g_str_has_prefix (text, before))
    change = GTK_FILTER_CHANGE_MORE_STRICT;
  else if (g_str_has_prefix (before, text))
    change = GTK_FILTER_CHANGE_LESS_STRICT;
  self->searched = g_strdup (text);
  self->choice.words = sy_task_words (text);
  gtk_filter_changed (self->filter, change);
  update_state (self);
}

static void
refilter (SyTasksPage *self)
{
  gtk_filter_changed (self->filter, GTK_FILTER_CHANGE_DIFFERENT);
  update_state (self);
}

static void
narrow_changed_cb (SyKeyChoice *choice, SyTasksPage *self)
{
  sy_tasks_narrow_choose (self->words->narrow, sy_key_choice_get (choice), &self->choice);
  refilter (self);
}

static void
due_toggled_cb (GtkCheckButton *button, SyTasksPage *self)
{
  self->choice.due = gtk_check_button_get_active (button);
  refilter (self);
}

static gboolean
read_machines_cb (gpointer user_data)
{
  SyTasksPage *self = user_data;

  self->reading = 0;
  sy_key_choice_set_keys (SY_KEY_CHOICE (self->narrow),
                          sy_task_machines (G_LIST_MODEL (self->list), self->choice.item_kind));
  return G_SOURCE_REMOVE;
}

static void
list_changed_cb (GListModel *model, guint position, guint removed, guint added, SyTasksPage *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  /* Once, however many rows are announced one after the other. */
  if (self->words->narrow == SY_NARROW_MACHINE && self->reading == 0)
    self->reading = g_idle_add_full (G_PRIORITY_LOW, read_machines_cb, self, NULL);
  update_state (self);
}

/* Topics: what can be done */

static void
activate_cb (GtkColumnView *view, guint position, SyTasksPage *self)
{
  g_autoptr (SyTaskRow) row = g_list_model_get_item (G_LIST_MODEL (self->sorted), position);

  (void) view;
  if (row != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open-task", "s",
                                sy_task_row_get_task (row)->id);
}

static void
search_activate_cb (GtkSearchEntry *entry, SyTasksPage *self)
{
  (void) entry;
  /* With one row left there is no doubt which is meant. */
  if (g_list_model_get_n_items (G_LIST_MODEL (self->sorted)) == 1)
    activate_cb (NULL, 0, self);
  else
    sy_focus_rows (GTK_COLUMN_VIEW (self->view));
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
  sy_tasks_page_set_choice (self, NULL);
  sy_tasks_page_set_due (self, FALSE);
  sy_tasks_page_focus_search (self);
}

static void
retry_cb (GtkButton *button, SyTasksPage *self)
{
  (void) button;
  sy_task_list_refresh (self->list);
}

/* Topics: building */

static GtkWidget *
new_list_state (SyTasksPage *self, SyUnits units)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkSorter *sorter;

  self->view = gtk_column_view_new (NULL);
  self->columns = sy_tasks_columns_new (GTK_COLUMN_VIEW (self->view), self->which, units);
  sorter = sy_tasks_columns_sorter (self->columns);

  self->filter = GTK_FILTER (gtk_custom_filter_new (match_cb, self, NULL));
  self->filtered = gtk_filter_list_model_new (g_object_ref (G_LIST_MODEL (self->list)),
                                              g_object_ref (self->filter));
  self->sorted = gtk_sort_list_model_new (g_object_ref (G_LIST_MODEL (self->filtered)), sorter);
  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->sorted));
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), GTK_SELECTION_MODEL (self->selection));
  sy_tasks_columns_sort_by (self->columns, self->words->first,
                            self->words->descending ? GTK_SORT_DESCENDING : GTK_SORT_ASCENDING);

  gtk_widget_set_name (self->view, self->words->page);
  sy_name (self->view, sy_translate (self->words->title));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), sy_translate (self->words->title));
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  g_signal_connect_object (self->sorted, "items-changed", G_CALLBACK (items_changed_cb), self, 0);
  g_signal_connect_object (self->list, "items-changed", G_CALLBACK (list_changed_cb), self, 0);
  g_signal_connect_object (self->list, "notify", G_CALLBACK (notify_cb), self, 0);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  return scrolled;
}

static GtkWidget *
new_narrow (SyTasksPage *self)
{
  self->narrow = sy_tasks_narrow_new (self->words);
  sy_key_choice_set_keys (SY_KEY_CHOICE (self->narrow),
                          sy_tasks_narrow_keys (self->words->narrow, G_LIST_MODEL (self->list), self->choice.item_kind));
  g_signal_connect_object (self->narrow, "chosen", G_CALLBACK (narrow_changed_cb), self, 0);
  return self->narrow;
}

static GtkWidget *
new_due (SyTasksPage *self)
{
  self->due = gtk_check_button_new_with_mnemonic (sy_translate (self->words->due));
  gtk_widget_set_name (self->due, "due");
  gtk_widget_set_tooltip_text (self->due, _("Show only what is out of date or falls due within 30 days"));
  sy_name (self->due, _("Show only what is out of date or falls due within 30 days"));
  g_signal_connect_object (self->due, "toggled", G_CALLBACK (due_toggled_cb), self, 0);
  return self->due;
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
  gtk_box_append (GTK_BOX (bar), new_narrow (self));
  if (self->words->due != NULL)
    gtk_box_append (GTK_BOX (bar), new_due (self));
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
  self->drafts = sy_drafts_new (sy_worker_get_store (self->worker), self->choice.item_kind);
  gtk_box_append (GTK_BOX (self->box), self->drafts);
  gtk_box_append (GTK_BOX (self->box), self->states);
  gtk_box_append (GTK_BOX (self->box), sy_part_label (screening, "sy-caution"));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  update_state (self);
}

static void
sy_tasks_page_map (GtkWidget *widget)
{
  sy_tasks_page_refresh_drafts (SY_TASKS_PAGE (widget));
  GTK_WIDGET_CLASS (sy_tasks_page_parent_class)->map (widget);
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

  g_clear_handle_id (&self->reading, g_source_remove);
  if (self->columns != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  g_clear_pointer (&self->columns, sy_tasks_columns_free);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->sorted);
  g_clear_object (&self->filtered);
  g_clear_object (&self->filter);
  g_clear_object (&self->list);
  g_clear_object (&self->worker);
  g_clear_pointer (&self->choice.words, g_strfreev);
  g_clear_pointer (&self->choice.machine, g_free);
  g_clear_pointer (&self->choice.gear_kind, g_free);
  g_clear_pointer (&self->searched, g_free);
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
  self->searched = g_strdup ("");
}

GtkWidget *
sy_tasks_page_new (SyWorker *worker, SyTaskList *list, SyRegister which, SyUnits units)
{
  SyTasksPage *self = g_object_new (SY_TYPE_TASKS_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->list = g_object_ref (list);
  self->which = which;
  self->words = sy_register_page (which);
  self->choice.item_kind = sy_register_item_kind (which);
  build (self, units);
  sy_name (GTK_WIDGET (self), sy_translate (self->words->title));
  return GTK_WIDGET (self);
}

void
sy_tasks_page_set_units (SyTasksPage *self, SyUnits units)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  sy_tasks_columns_set_units (self->columns, units);
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
  sy_key_choice_choose (SY_KEY_CHOICE (self->narrow), key);
}

void
sy_tasks_page_set_due (SyTasksPage *self, gboolean due)
{
  g_return_if_fail (SY_IS_TASKS_PAGE (self));
  if (self->due != NULL)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->due), due);
}

GListModel *
sy_tasks_page_get_rows (SyTasksPage *self)
{
  g_return_val_if_fail (SY_IS_TASKS_PAGE (self), NULL);
  return G_LIST_MODEL (self->sorted);
}

const char *
sy_tasks_page_get_state (SyTasksPage *self)
{
  g_return_val_if_fail (SY_IS_TASKS_PAGE (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->states));
}
