/* SPDX-License-Identifier: MIT */
#include "sy-register-chooser.h"

#include <math.h>

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-registers.h"
#include "sy-take.h"
#include "sy-task-parts.h"
#include "sy-task-view.h"
#include "sy-tasks-cells.h"
#include "sy-view.h"

#define WIDTH 560
#define HEIGHT 520
#define SHAPE_SIZE 16

struct _SyRegisterChooser
{
  GtkWindow parent_instance;
  SyWorker *worker;
  SyRegister which;
  SyForm *plan;
  SyTaskList *list;
  SyTaskView *rows;
  GtkSingleSelection *selection;
  GtkWidget *search, *view, *where, *said, *take;
  GPtrArray *places; /* of SyTakePlace, as in the drop-down */
  char *chosen;      /* id of what is being read, NULL: none */
  gboolean searched; /* take what is found as soon as the store has answered */
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (SyRegisterChooser, sy_register_chooser, GTK_TYPE_WINDOW)

/* Topics: rows */

/* What is said of the item under its name: cells of the list, one after the other. */
static char *
dup_note (SyRegisterChooser *self, SyTaskRow *row)
{
  static const SyTaskColumn of_die[] = { SY_BY_MACHINE, SY_BY_MASS, SY_BY_BALANCE, SY_BY_STORAGE };
  static const SyTaskColumn of_gear[] = { SY_BY_GEAR, SY_BY_IDENTITY, SY_BY_WLL, SY_BY_DUE, SY_BY_STORAGE };
  gboolean is_die = self->which == SY_REGISTER_DIES;
  const SyTaskColumn *columns = is_die ? of_die : of_gear;
  gsize n = is_die ? G_N_ELEMENTS (of_die) : G_N_ELEMENTS (of_gear);
  GString *note = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *words = sy_tasks_cell_words (row, columns[i], sy_form_get_units (self->plan));

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
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, SyRegisterChooser *self)
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

/* Topics: taking */

static void
say (SyRegisterChooser *self, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->said), words);
  gtk_widget_set_visible (self->said, *words != '\0');
}

static gboolean
take_item (SyRegisterChooser *self, const SyRegisterItem *item, GError **error)
{
  guint where;

  if (self->which == SY_REGISTER_DIES)
    return sy_take_die (self->plan, item, error);
  where = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->where));
  if (where >= self->places->len)
    return FALSE;
  return sy_take_gear (self->plan, item, self->places->pdata[where], error);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyRegisterChooser) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) revisions = sy_worker_history_finish (SY_WORKER (source), result, &error);
  g_autofree char *id = g_steal_pointer (&self->chosen);

  if (self->plan == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (revisions != NULL && revisions->len > 0)
    {
      const SyRevision *latest = revisions->pdata[revisions->len - 1];
      g_autoptr (SyRegisterItem) item
        = sy_register_item_new (id, latest->event->name, latest->event->item_kind, latest->event->facts);

      if (take_item (self, item, &error))
        {
          gtk_window_destroy (GTK_WINDOW (self));
          return;
        }
    }
  say (self, error != NULL ? error->message : _("It cannot be taken into this plan."));
}

void
sy_register_chooser_take (SyRegisterChooser *self, guint position)
{
  g_autoptr (SyTaskRow) row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);

  /* What stands there may not be what was searched for, until that is known. */
  self->searched = sy_task_view_get_pending (self->rows);
  if (self->searched || row == NULL || self->chosen != NULL || !gtk_widget_get_sensitive (self->take))
    return;
  self->chosen = g_strdup (sy_task_row_get_task (row)->id);
  sy_worker_history_async (self->worker, self->chosen, self->cancellable, read_cb, g_object_ref (self));
}

static void
activate_cb (GtkListView *view, guint position, SyRegisterChooser *self)
{
  (void) view;
  sy_register_chooser_take (self, position);
}

static void
take_cb (GtkButton *button, SyRegisterChooser *self)
{
  (void) button;
  sy_register_chooser_take (self, gtk_single_selection_get_selected (self->selection));
}

static void
close_cb (GtkButton *button, SyRegisterChooser *self)
{
  (void) button;
  gtk_window_close (GTK_WINDOW (self));
}

/* Topics: choosing */

static char *
dup_place_words (const SyTakePlace *place)
{
  if (*place->leg == '\0')
    /* Translators: above the hook of a lift plan. */
    return *place->element != '\0' ? g_strdup_printf (_("Hung from: in place of %s"), place->element)
                                   : g_strdup (_("Hung from: as one more"));
  return *place->element != '\0' ? g_strdup_printf (_("Leg %s: in place of %s"), place->leg, place->element)
                                 : g_strdup_printf (_("Leg %s: as one more, next to the hook"), place->leg);
}

/* The places follow the kind of what is selected. */
static void
selected_cb (GObject *object, GParamSpec *pspec, SyRegisterChooser *self)
{
  SyTaskRow *row = gtk_single_selection_get_selected_item (self->selection);
  gboolean can = row != NULL;

  (void) object, (void) pspec;
  if (row != NULL && self->which == SY_REGISTER_GEAR)
    {
      g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);

      g_clear_pointer (&self->places, g_ptr_array_unref);
      self->places = sy_take_places (self->plan, sy_task_row_get_task (row)->detail.gear_kind);
      for (guint i = 0; i < self->places->len; i++)
        {
          g_autofree char *place = dup_place_words (self->places->pdata[i]);

          gtk_string_list_append (words, place);
        }
      gtk_drop_down_set_model (GTK_DROP_DOWN (self->where), G_LIST_MODEL (words));
      can = self->places->len > 0;
      say (self, can ? "" : _("A lift plan has no place for it: legs come first, and a fork truck or cart has a plan of its own."));
    }
  gtk_widget_set_sensitive (self->take, can);
}

/* Why nothing is there, if nothing is. */
static void
say_nothing (SyRegisterChooser *self)
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

static void
rows_changed_cb (GListModel *rows, guint position, guint removed, guint added, SyRegisterChooser *self)
{
  (void) rows, (void) position, (void) removed, (void) added;
  say_nothing (self);
  selected_cb (NULL, NULL, self);
}

static void
loading_cb (GObject *object, GParamSpec *pspec, SyRegisterChooser *self)
{
  (void) object, (void) pspec;
  if (g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 0)
    say_nothing (self);
}

static void
search_activate_cb (GtkSearchEntry *entry, SyRegisterChooser *self)
{
  (void) entry;
  if (sy_task_view_get_pending (self->rows) || g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 1)
    sy_register_chooser_take (self, 0);
  else
    gtk_widget_grab_focus (self->view);
}

static void
pending_cb (GObject *object, GParamSpec *pspec, SyRegisterChooser *self)
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
search_changed_cb (GtkEditable *editable, SyRegisterChooser *self)
{
  self->searched = FALSE;
  sy_task_view_search (self->rows, gtk_editable_get_text (editable));
}

/* Escape in the search. */
static void
search_stop_cb (GtkSearchEntry *entry, SyRegisterChooser *self)
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
build_rows (SyRegisterChooser *self, SyTaskList *list, const char *name)
{
  const SyTaskKey by_name = { SY_BY_NAME, FALSE };
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  self->rows = sy_task_view_new (list, sy_register_item_kind (self->which), &by_name, 1);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->rows)));
  self->view = gtk_list_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)), factory);
  gtk_widget_set_name (self->view, "register");
  sy_name (self->view, name);
  g_signal_connect_object (self->view, "activate", G_CALLBACK (activate_cb), self, 0);
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self, 0);
}

static GtkWidget *
new_buttons (SyRegisterChooser *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *cancel = sy_button_new (_("_Cancel"), NULL);

  self->take = sy_button_new (_("_Take it into the plan"), NULL);
  gtk_widget_add_css_class (self->take, "suggested-action");
  gtk_widget_set_name (self->take, "take");
  g_signal_connect_object (self->take, "clicked", G_CALLBACK (take_cb), self, 0);
  g_signal_connect_object (cancel, "clicked", G_CALLBACK (close_cb), self, 0);
  self->where = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_name (self->where, "where");
  sy_name (self->where, _("Where in the plan"));
  gtk_widget_set_visible (self->where, self->which == SY_REGISTER_GEAR);
  gtk_widget_set_hexpand (self->where, TRUE);
  gtk_widget_set_hexpand (cancel, self->which != SY_REGISTER_GEAR);
  gtk_widget_set_halign (cancel, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (line), self->where);
  gtk_box_append (GTK_BOX (line), cancel);
  gtk_box_append (GTK_BOX (line), self->take);
  return line;
}

static void
build (SyRegisterChooser *self, SyTaskList *list)
{
  const SyRegisterPage *page = sy_register_page (self->which);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *scroller;
  GtkEventController *keys = gtk_shortcut_controller_new ();

  build_rows (self, list, sy_translate (page->title));
  scroller = sy_part_scroller (self->view, sy_translate (page->title));
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
  gtk_box_append (GTK_BOX (box), scroller);
  gtk_box_append (GTK_BOX (box), self->said);
  gtk_box_append (GTK_BOX (box), new_buttons (self));
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
  g_signal_connect_object (list, "notify::loading", G_CALLBACK (loading_cb), self, 0);
  say_nothing (self);
  selected_cb (NULL, NULL, self);
}

static void
sy_register_chooser_dispose (GObject *object)
{
  SyRegisterChooser *self = SY_REGISTER_CHOOSER (object);

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  if (self->view != NULL)
    gtk_list_view_set_model (GTK_LIST_VIEW (self->view), NULL);
  self->view = NULL;
  g_clear_object (&self->cancellable);
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->list);
  g_clear_object (&self->plan);
  g_clear_object (&self->worker);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  g_clear_pointer (&self->chosen, g_free);
  G_OBJECT_CLASS (sy_register_chooser_parent_class)->dispose (object);
}

static void
sy_register_chooser_class_init (SyRegisterChooserClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_register_chooser_dispose;
}

static void
sy_register_chooser_init (SyRegisterChooser *self)
{
  self->cancellable = g_cancellable_new ();
}

GtkWidget *
sy_register_chooser_new (GtkWindow *parent, SyWorker *worker, SyTaskList *list, SyRegister which, SyForm *plan)
{
  SyRegisterChooser *self = g_object_new (
    SY_TYPE_REGISTER_CHOOSER, "transient-for", parent, "modal", TRUE, "destroy-with-parent", TRUE, "title",
    which == SY_REGISTER_DIES ? _("Take a die from the register") : _("Take gear from the register"),
    "default-width", WIDTH, "default-height", HEIGHT, NULL);

  self->worker = g_object_ref (worker);
  self->which = which;
  self->plan = g_object_ref (plan);
  self->list = g_object_ref (list);
  build (self, list);
  return GTK_WIDGET (self);
}

GListModel *
sy_register_chooser_get_rows (SyRegisterChooser *self)
{
  return G_LIST_MODEL (self->rows);
}

void
sy_register_chooser_set_search (SyRegisterChooser *self, const char *search)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), search);
}
