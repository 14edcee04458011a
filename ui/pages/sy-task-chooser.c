/* SPDX-License-Identifier: MIT */
#include "sy-task-chooser.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-registers.h"
#include "sy-task-parts.h"
#include "sy-task-view.h"
#include "sy-tasks-cells.h"
#include "sy-view.h"

#define WIDTH 560
#define HEIGHT 520
#define SHAPE_SIZE 16

struct _SyTaskChooser
{
  GtkWindow parent_instance;
  SyTaskList *list;
  SyRegister which;
  SyUnits units;
  SyTaskView *rows;
  GtkSingleSelection *selection;
  GtkWidget *search, *view, *said, *choose;
  gboolean searched; /* choose what is found as soon as the store has answered */
  gboolean chosen;
};

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskChooser, sy_task_chooser, GTK_TYPE_WINDOW)

/* Topics: rows */

/* What is said of the item under its name: cells of the list, one after the other. */
static char *
dup_note (SyTaskChooser *self, SyTaskRow *row)
{
  static const SyTaskColumn columns[] = { SY_BY_VERDICT, SY_BY_INDEX, SY_BY_MASS, SY_BY_PLACE, SY_BY_DAY };
  GString *note = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      g_autofree char *words = sy_tasks_cell_words (row, columns[i], self->units);

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
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, SyTaskChooser *self)
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

/* Topics: choosing */

static void
say (SyTaskChooser *self, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->said), words);
  gtk_widget_set_visible (self->said, *words != '\0');
}

/* Why nothing is there, if nothing is. */
static void
say_nothing (SyTaskChooser *self)
{
  if (g_list_model_get_n_items (G_LIST_MODEL (self->rows)) > 0)
    say (self, "");
  else if (sy_task_view_get_error (self->rows) != NULL)
    say (self, sy_task_view_get_error (self->rows));
  else if (sy_task_list_get_loading (self->list))
    say (self, _("Reading the record…"));
  else if (sy_task_list_count (self->list, self->which) == 0)
    say (self, sy_translate (sy_register_page (self->which)->empty));
  else
    say (self, sy_translate (sy_register_page (self->which)->no_match));
}

void
sy_task_chooser_choose (SyTaskChooser *self, guint position)
{
  g_autoptr (SyTaskRow) row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);
  g_autofree char *id = NULL;

  /* What stands there may not be what was searched for, until that is known. */
  self->searched = sy_task_view_get_pending (self->rows);
  if (self->searched || row == NULL || self->chosen)
    return;
  self->chosen = TRUE;
  id = g_strdup (sy_task_row_get_task (row)->id);
  g_object_ref (self);
  g_signal_emit (self, signals[CHOSEN], 0, id);
  gtk_window_destroy (GTK_WINDOW (self));
  g_object_unref (self);
}

static void
activate_cb (GtkListView *view, guint position, SyTaskChooser *self)
{
  (void) view;
  sy_task_chooser_choose (self, position);
}

static void
choose_cb (GtkButton *button, SyTaskChooser *self)
{
  (void) button;
  sy_task_chooser_choose (self, gtk_single_selection_get_selected (self->selection));
}

static void
close_cb (GtkButton *button, SyTaskChooser *self)
{
  (void) button;
  gtk_window_close (GTK_WINDOW (self));
}

static void
selected_cb (GObject *object, GParamSpec *pspec, SyTaskChooser *self)
{
  (void) object, (void) pspec;
  gtk_widget_set_sensitive (self->choose, gtk_single_selection_get_selected_item (self->selection) != NULL);
}

static void
rows_changed_cb (GListModel *rows, guint position, guint removed, guint added, SyTaskChooser *self)
{
  (void) rows, (void) position, (void) removed, (void) added;
  say_nothing (self);
  selected_cb (NULL, NULL, self);
}

static void
loading_cb (GObject *object, GParamSpec *pspec, SyTaskChooser *self)
{
  (void) object, (void) pspec;
  say_nothing (self);
}

static void
search_activate_cb (GtkSearchEntry *entry, SyTaskChooser *self)
{
  (void) entry;
  if (sy_task_view_get_pending (self->rows) || g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 1)
    sy_task_chooser_choose (self, 0);
  else
    gtk_widget_grab_focus (self->view);
}

static void
pending_cb (GObject *object, GParamSpec *pspec, SyTaskChooser *self)
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
search_changed_cb (GtkEditable *editable, SyTaskChooser *self)
{
  self->searched = FALSE;
  sy_task_view_search (self->rows, gtk_editable_get_text (editable));
}

/* Escape in the search. */
static void
search_stop_cb (GtkSearchEntry *entry, SyTaskChooser *self)
{
  (void) entry;
  gtk_window_close (GTK_WINDOW (self));
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  (void) arguments, (void) user_data;
  gtk_window_close (GTK_WINDOW (widget));
  return TRUE;
}

/* Topics: building */

static void
build_rows (SyTaskChooser *self, const char *name)
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

static GtkWidget *
new_buttons (SyTaskChooser *self, const char *choose)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *cancel = sy_button_new (_("_Cancel"), NULL);

  self->choose = sy_button_new (choose, NULL);
  gtk_widget_add_css_class (self->choose, "suggested-action");
  gtk_widget_set_name (self->choose, "choose");
  g_signal_connect_object (self->choose, "clicked", G_CALLBACK (choose_cb), self, 0);
  g_signal_connect_object (cancel, "clicked", G_CALLBACK (close_cb), self, 0);
  gtk_widget_set_halign (line, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (line), cancel);
  gtk_box_append (GTK_BOX (line), self->choose);
  return line;
}

static void
build (SyTaskChooser *self, const char *choose)
{
  const SyRegisterPage *page = sy_register_page (self->which);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkEventController *keys = gtk_shortcut_controller_new ();

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
  gtk_box_append (GTK_BOX (box), self->search);
  gtk_box_append (GTK_BOX (box), sy_part_scroller (self->view, sy_translate (page->title)));
  gtk_box_append (GTK_BOX (box), self->said);
  gtk_box_append (GTK_BOX (box), new_buttons (self, choose));
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_shortcut_controller_add_shortcut (
    GTK_SHORTCUT_CONTROLLER (keys),
    gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0), gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_object (self->rows, "items-changed", G_CALLBACK (rows_changed_cb), self, 0);
  g_signal_connect_object (self->rows, "notify::pending", G_CALLBACK (pending_cb), self, 0);
  g_signal_connect_object (self->list, "notify::loading", G_CALLBACK (loading_cb), self, 0);
  say_nothing (self);
  selected_cb (NULL, NULL, self);
}

static void
sy_task_chooser_dispose (GObject *object)
{
  SyTaskChooser *self = SY_TASK_CHOOSER (object);

  if (self->view != NULL)
    gtk_list_view_set_model (GTK_LIST_VIEW (self->view), NULL);
  self->view = NULL;
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->list);
  G_OBJECT_CLASS (sy_task_chooser_parent_class)->dispose (object);
}

static void
sy_task_chooser_class_init (SyTaskChooserClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_task_chooser_dispose;
  signals[CHOSEN] = g_signal_new ("chosen", SY_TYPE_TASK_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  G_TYPE_STRING);
}

static void
sy_task_chooser_init (SyTaskChooser *self)
{
  (void) self;
}

GtkWidget *
sy_task_chooser_new (GtkWindow *parent, SyTaskList *list, SyRegister which, SyUnits units, const char *title, const char *choose)
{
  SyTaskChooser *self = g_object_new (SY_TYPE_TASK_CHOOSER, "transient-for", parent, "modal", TRUE, "destroy-with-parent", TRUE,
                                      "title", title, "default-width", WIDTH, "default-height", HEIGHT, NULL);

  self->list = g_object_ref (list);
  self->which = which;
  self->units = units;
  build (self, choose);
  return GTK_WIDGET (self);
}

GListModel *
sy_task_chooser_get_rows (SyTaskChooser *self)
{
  g_return_val_if_fail (SY_IS_TASK_CHOOSER (self), NULL);
  return G_LIST_MODEL (self->rows);
}

void
sy_task_chooser_set_search (SyTaskChooser *self, const char *search)
{
  g_return_if_fail (SY_IS_TASK_CHOOSER (self));
  gtk_editable_set_text (GTK_EDITABLE (self->search), search);
}
