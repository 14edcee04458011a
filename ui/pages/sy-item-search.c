/* SPDX-License-Identifier: MIT */
#include "sy-item-search.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-registers.h"
#include "sy-task-parts.h"
#include "sy-task-view.h"
#include "sy-tasks-cells.h"
#include "sy-view.h"

#define SHAPE_SIZE 16

struct _SyItemSearch
{
  GtkBox parent_instance;
  SyTaskList *list;
  SyRegister which;
  SyItemNote note;
  SyUnits units;
  SyTaskView *rows;
  GtkSingleSelection *selection;
  GtkWidget *search, *view, *said;
  gboolean searched; /* pick what is found as soon as the store has answered */
};

enum
{
  SELECTED,
  PICKED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyItemSearch, sy_item_search, GTK_TYPE_BOX)

/* Topics: rows */

static char *
dup_note (SyItemSearch *self, SyTaskRow *row)
{
  GString *note = g_string_new (NULL);

  for (gsize i = 0; i < self->note.n; i++)
    {
      g_autofree char *words = sy_tasks_cell_words (row, self->note.columns[i], self->units);

      if (!g_str_equal (words, "–"))
        g_string_append_printf (note, "%s%s", note->len > 0 ? " · " : "", words);
    }
  return g_string_free (note, FALSE);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer user_data)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);

  (void) factory, (void) user_data;
  gtk_widget_add_css_class (line, "sy-register-row");
  gtk_box_append (GTK_BOX (line), sy_shape_new (SY_VERDICT_INCOMPLETE, SHAPE_SIZE));
  gtk_box_append (GTK_BOX (line), sy_part_two_lines ());
  gtk_list_item_set_child (item, line);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, SyItemSearch *self)
{
  SyTaskRow *row = gtk_list_item_get_item (item);
  GtkWidget *line = gtk_list_item_get_child (item);
  g_autofree char *note = dup_note (self, row);
  g_autofree char *words = sy_tasks_row_words (row);

  (void) factory;
  sy_shape_set (gtk_widget_get_first_child (line), sy_task_row_get_verdict (row));
  sy_part_set_lines (gtk_widget_get_last_child (line), sy_task_row_get_task (row)->name, note);
  gtk_widget_set_tooltip_text (line, note);
  if (gtk_widget_get_parent (line) != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (line)), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                    -1);
}

/* Topics: what is said */

void
sy_item_search_say (SyItemSearch *self, const char *words)
{
  g_return_if_fail (SY_IS_ITEM_SEARCH (self));
  gtk_label_set_text (GTK_LABEL (self->said), words);
  gtk_widget_set_visible (self->said, *words != '\0');
}

/* Why nothing is there, if nothing is. */
static void
say_nothing (SyItemSearch *self)
{
  if (g_list_model_get_n_items (G_LIST_MODEL (self->rows)) > 0)
    sy_item_search_say (self, "");
  else if (sy_task_view_get_error (self->rows) != NULL)
    sy_item_search_say (self, sy_task_view_get_error (self->rows));
  else if (sy_task_list_get_loading (self->list))
    sy_item_search_say (self, _("Reading the record…"));
  else if (sy_task_list_count (self->list, self->which) == 0)
    sy_item_search_say (self, sy_translate (sy_register_page (self->which)->empty));
  else
    sy_item_search_say (self, sy_translate (sy_register_page (self->which)->no_match));
}

/* Topics: picking */

void
sy_item_search_pick (SyItemSearch *self, guint position)
{
  g_autoptr (SyTaskRow) row = NULL;

  g_return_if_fail (SY_IS_ITEM_SEARCH (self));
  /* What stands there may not be what was searched for, until that is known. */
  self->searched = sy_task_view_get_pending (self->rows);
  row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);
  if (!self->searched && row != NULL)
    g_signal_emit (self, signals[PICKED], 0, row);
}

void
sy_item_search_pick_selected (SyItemSearch *self)
{
  g_return_if_fail (SY_IS_ITEM_SEARCH (self));
  sy_item_search_pick (self, gtk_single_selection_get_selected (self->selection));
}

static void
activate_cb (GtkListView *view, guint position, SyItemSearch *self)
{
  (void) view;
  sy_item_search_pick (self, position);
}

static void
selected_cb (GObject *object, GParamSpec *pspec, SyItemSearch *self)
{
  (void) object, (void) pspec;
  g_signal_emit (self, signals[SELECTED], 0);
}

static void
rows_changed_cb (GListModel *rows, guint position, guint removed, guint added, SyItemSearch *self)
{
  (void) rows, (void) position, (void) removed, (void) added;
  say_nothing (self);
  selected_cb (NULL, NULL, self);
}

static void
loading_cb (GObject *object, GParamSpec *pspec, SyItemSearch *self)
{
  (void) object, (void) pspec;
  if (g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 0)
    say_nothing (self);
}

static void
search_activate_cb (GtkSearchEntry *entry, SyItemSearch *self)
{
  (void) entry;
  if (sy_task_view_get_pending (self->rows) || g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 1)
    sy_item_search_pick (self, 0);
  else
    gtk_widget_grab_focus (self->view);
}

static void
pending_cb (GObject *object, GParamSpec *pspec, SyItemSearch *self)
{
  (void) object, (void) pspec;
  if (sy_task_view_get_pending (self->rows))
    return;
  say_nothing (self);
  gtk_single_selection_set_selected (self->selection, 0);
  selected_cb (NULL, NULL, self);
  if (!self->searched)
    return;
  self->searched = FALSE;
  search_activate_cb (NULL, self);
}

static void
search_changed_cb (GtkEditable *editable, SyItemSearch *self)
{
  self->searched = FALSE;
  sy_task_view_search (self->rows, gtk_editable_get_text (editable));
}

static void
close_window (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);

  if (GTK_IS_WINDOW (root))
    gtk_window_close (GTK_WINDOW (root));
}

/* Escape in the search. */
static void
search_stop_cb (GtkSearchEntry *entry, SyItemSearch *self)
{
  (void) entry;
  close_window (GTK_WIDGET (self));
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  (void) arguments, (void) user_data;
  close_window (widget);
  return TRUE;
}

static void
cancel_cb (GtkButton *button, SyItemSearch *self)
{
  (void) button;
  close_window (GTK_WIDGET (self));
}

static void
take_cb (GtkButton *button, SyItemSearch *self)
{
  (void) button;
  sy_item_search_pick_selected (self);
}

/* Topics: building */

static void
build_rows (SyItemSearch *self, const char *name)
{
  const SyTaskKey by_name = { SY_BY_NAME, FALSE };
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  self->rows = sy_task_view_new (self->list, sy_register_item_kind (self->which), &by_name, 1);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->rows)));
  self->view = gtk_list_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)), factory);
  gtk_widget_set_name (self->view, "items");
  sy_name (self->view, name);
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self, 0);
}

static void
build (SyItemSearch *self)
{
  const SyRegisterPage *page = sy_register_page (self->which);

  build_rows (self, sy_translate (page->title));
  self->search = gtk_search_entry_new ();
  gtk_widget_set_name (self->search, "search");
  g_object_set (self->search, "placeholder-text", sy_translate (page->search), NULL);
  sy_name (self->search, sy_translate (page->search_name));
  g_signal_connect_object (self->search, "changed", G_CALLBACK (search_changed_cb), self, 0);
  g_signal_connect_object (self->search, "activate", G_CALLBACK (search_activate_cb), self, 0);
  g_signal_connect_object (self->search, "stop-search", G_CALLBACK (search_stop_cb), self, 0);
  self->said = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0, "wrap", TRUE,
                             "visible", FALSE, NULL);
  gtk_box_append (GTK_BOX (self), self->search);
  gtk_box_append (GTK_BOX (self), sy_part_scroller (self->view, sy_translate (page->title)));
  gtk_box_append (GTK_BOX (self), self->said);
  g_signal_connect_object (self->rows, "items-changed", G_CALLBACK (rows_changed_cb), self, 0);
  g_signal_connect_object (self->rows, "notify::pending", G_CALLBACK (pending_cb), self, 0);
  g_signal_connect_object (self->list, "notify::loading", G_CALLBACK (loading_cb), self, 0);
  say_nothing (self);
}

GtkWidget *
sy_item_search_fill (SyItemSearch *self, GtkWindow *window, GtkWidget *first, const char *words, const char *name)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *cancel = sy_button_new (_("_Cancel"), NULL);
  GtkWidget *take = sy_button_new (words, NULL);
  GtkEventController *keys = gtk_shortcut_controller_new ();

  g_return_val_if_fail (SY_IS_ITEM_SEARCH (self), NULL);
  gtk_widget_add_css_class (take, "suggested-action");
  gtk_widget_set_name (take, name);
  g_signal_connect_object (take, "clicked", G_CALLBACK (take_cb), self, 0);
  g_signal_connect_object (cancel, "clicked", G_CALLBACK (cancel_cb), self, 0);
  gtk_widget_set_hexpand (cancel, first == NULL || !gtk_widget_get_visible (first));
  gtk_widget_set_halign (cancel, GTK_ALIGN_END);
  if (first != NULL)
    gtk_box_append (GTK_BOX (line), first);
  gtk_box_append (GTK_BOX (line), cancel);
  gtk_box_append (GTK_BOX (line), take);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (box), line);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_window_set_child (window, box);
  gtk_shortcut_controller_add_shortcut (
    GTK_SHORTCUT_CONTROLLER (keys),
    gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0), gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
  return take;
}

static void
sy_item_search_dispose (GObject *object)
{
  SyItemSearch *self = SY_ITEM_SEARCH (object);

  if (self->view != NULL)
    gtk_list_view_set_model (GTK_LIST_VIEW (self->view), NULL);
  self->view = NULL;
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->list);
  G_OBJECT_CLASS (sy_item_search_parent_class)->dispose (object);
}

static void
sy_item_search_class_init (SyItemSearchClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_item_search_dispose;
  signals[SELECTED] = g_signal_new ("selected", SY_TYPE_ITEM_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[PICKED] = g_signal_new ("picked", SY_TYPE_ITEM_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  SY_TYPE_TASK_ROW);
}

static void
sy_item_search_init (SyItemSearch *self)
{
  (void) self;
}

GtkWidget *
sy_item_search_new (SyTaskList *list, SyRegister which, SyItemNote note, SyUnits units)
{
  SyItemSearch *self = g_object_new (SY_TYPE_ITEM_SEARCH, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 12, "vexpand",
                                     TRUE, NULL);

  self->list = g_object_ref (list);
  self->which = which;
  self->note = note;
  self->units = units;
  build (self);
  return GTK_WIDGET (self);
}

GListModel *
sy_item_search_get_rows (SyItemSearch *self)
{
  g_return_val_if_fail (SY_IS_ITEM_SEARCH (self), NULL);
  return G_LIST_MODEL (self->rows);
}

SyTaskRow *
sy_item_search_get_selected (SyItemSearch *self)
{
  g_return_val_if_fail (SY_IS_ITEM_SEARCH (self), NULL);
  return gtk_single_selection_get_selected_item (self->selection);
}

void
sy_item_search_find (SyItemSearch *self, const char *words)
{
  g_return_if_fail (SY_IS_ITEM_SEARCH (self));
  gtk_editable_set_text (GTK_EDITABLE (self->search), words);
}
