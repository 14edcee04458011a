/* SPDX-License-Identifier: MIT */
#include "sy-matrix-page.h"

#include <math.h>

#include "sy-i18n.h"
#include "sy-key-choice.h"
#include "sy-lookup.h"
#include "sy-matrix-cells.h"
#include "sy-matrix-table.h"
#include "sy-matrix-why.h"
#include "sy-name.h"
#include "sy-scroll.h"
#include "sy-task-order.h"
#include "sy-task-parts.h"
#include "sy-tasks-cells.h"
#include "sy-words.h"

#define DIE_WIDTH 210
#define CELL_WIDTH 158
#define WAIT_MS 200 /* what is recorded in one go is looked up once */

struct _SyMatrixPage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyTaskList *list;
  SyUnits units;
  GtkWidget *box, *bar, *machine, *count, *states, *view, *why, *error_words;
  GListStore *rows;
  GPtrArray *cells;   /* NULL: not looked up yet */
  GPtrArray *columns; /* of cells, borrowed      */
  GCancellable *cancellable;
  guint timer;
  gboolean asking, stale;
};

G_DEFINE_FINAL_TYPE (SyMatrixPage, sy_matrix_page, GTK_TYPE_WIDGET)

/* Topics: the table */

static void
pressed_cb (GtkButton *button, SyMatrixPage *self)
{
  const SyMatrixCell *cell = sy_matrix_cells_get (GTK_WIDGET (button));

  if (cell != NULL)
    sy_matrix_why_set (SY_MATRIX_WHY (self->why), cell, self->units);
}

static void
made_cell_cb (GtkSignalListItemFactory *factory, GtkListItem *item, SyMatrixPage *self)
{
  (void) factory;
  g_signal_connect (gtk_list_item_get_child (item), "clicked", G_CALLBACK (pressed_cb), self);
}

static void
add_column (SyMatrixPage *self, GtkListItemFactory *factory, const char *title, const char *tooltip, int width)
{
  GtkColumnViewColumn *column = gtk_column_view_column_new (title, factory);
  GtkWidget *heading;
  guint n = g_list_model_get_n_items (gtk_column_view_get_columns (GTK_COLUMN_VIEW (self->view)));

  gtk_column_view_column_set_fixed_width (column, width);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), column);
  g_object_unref (column);
  heading = sy_column_heading (GTK_COLUMN_VIEW (self->view), n);
  if (heading != NULL)
    gtk_widget_set_tooltip_text (heading, tooltip);
}

static void
add_gear_column (SyMatrixPage *self, const SyMatrixCell *gear)
{
  GtkListItemFactory *factory = sy_matrix_cells_of_gear (gear->gear);
  double wll = sy_unit_convert (SY_KIND_MASS, gear->wll_kg, SY_UNITS_METRIC, self->units);
  g_autofree char *limit = isnan (wll) ? g_strdup (_("rating not known"))
                                       : sy_words_quantity (wll, SY_KIND_MASS, self->units);
  /* Translators: kind and name of an item of gear, and what it may carry. */
  g_autofree char *tooltip
    = g_strdup_printf (_("%s: %s, %s"), sy_gear_kind_words (gear->kind), gear->gear_name, limit);

  g_signal_connect (factory, "setup", G_CALLBACK (made_cell_cb), self);
  add_column (self, factory, gear->gear_name, tooltip, CELL_WIDTH);
}

static void
make_columns (SyMatrixPage *self)
{
  GListModel *columns = gtk_column_view_get_columns (GTK_COLUMN_VIEW (self->view));

  for (guint i = g_list_model_get_n_items (columns); i > 0; i--)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i - 1);

      gtk_column_view_remove_column (GTK_COLUMN_VIEW (self->view), column);
    }
  add_column (self, sy_matrix_cells_of_dies (self->units), _("Die"),
              _("Die, its machine, and its mass with allowance"), DIE_WIDTH);
  for (guint i = 0; i < self->columns->len; i++)
    add_gear_column (self, self->columns->pdata[i]);
}

static gboolean
is_of_machine (SyMatrixPage *self, SyMatrixRow *row)
{
  const char *machine = sy_key_choice_get (SY_KEY_CHOICE (self->machine));

  return machine == NULL || g_str_equal (sy_matrix_row_first (row)->machine, machine);
}

static void
fill (SyMatrixPage *self)
{
  g_autoptr (GPtrArray) rows = self->cells != NULL ? sy_matrix_rows (self->cells) : NULL;
  g_autofree char *words = NULL;

  if (rows == NULL)
    return;
  g_list_store_remove_all (self->rows);
  make_columns (self);
  for (guint i = 0; i < rows->len; i++)
    if (is_of_machine (self, rows->pdata[i]))
      g_list_store_append (self->rows, rows->pdata[i]);
  words = g_strdup_printf (P_ ("%u die", "%u dies", sy_matrix_page_count_dies (self)), sy_matrix_page_count_dies (self));
  gtk_label_set_text (GTK_LABEL (self->count), words);
}

/* What is shown below the table is shown anew, or no longer where it went. */
static void
renew_why (SyMatrixPage *self)
{
  g_autofree char *die = g_strdup (sy_matrix_why_get_die (SY_MATRIX_WHY (self->why)));
  g_autofree char *gear = g_strdup (sy_matrix_why_get_gear (SY_MATRIX_WHY (self->why)));

  sy_matrix_why_set (SY_MATRIX_WHY (self->why), NULL, self->units);
  if (die != NULL)
    sy_matrix_page_show (self, die, gear);
}

/* Topics: looking up */

static void ask (SyMatrixPage *self);

static void
show_state (SyMatrixPage *self, const char *state)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), state);
  gtk_widget_set_visible (self->bar, g_str_equal (state, "table"));
}

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyMatrixPage) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) cells = sy_lookup_matrix_finish (result, &error);

  (void) source;
  self->asking = FALSE;
  if (self->box == NULL)
    return;
  if (cells == NULL)
    {
      gtk_label_set_text (GTK_LABEL (self->error_words), error->message);
      show_state (self, "error");
      return;
    }
  /* Rows and columns look into the cells that they were made of. */
  g_list_store_remove_all (self->rows);
  g_clear_pointer (&self->columns, g_ptr_array_unref);
  g_clear_pointer (&self->cells, g_ptr_array_unref);
  self->columns = sy_matrix_columns (cells);
  self->cells = g_steal_pointer (&cells);
  sy_key_choice_set_keys (SY_KEY_CHOICE (self->machine),
                          sy_task_machines (G_LIST_MODEL (self->list), SY_ITEM_DIE));
  fill (self);
  renew_why (self);
  show_state (self, self->cells->len > 0 ? "table" : "empty");
  if (self->stale && gtk_widget_get_mapped (GTK_WIDGET (self)))
    ask (self);
}

static void
ask (SyMatrixPage *self)
{
  if (self->asking)
    {
      self->stale = TRUE;
      return;
    }
  self->stale = FALSE;
  self->asking = TRUE;
  sy_lookup_matrix_async (self->worker, NULL, self->cancellable, answered_cb, g_object_ref (self));
}

static gboolean
ask_cb (gpointer user_data)
{
  SyMatrixPage *self = user_data;

  self->timer = 0;
  ask (self);
  return G_SOURCE_REMOVE;
}

static void
list_changed_cb (GListModel *model, guint position, guint removed, guint added, SyMatrixPage *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && self->timer == 0)
    self->timer = g_timeout_add (WAIT_MS, ask_cb, self);
}

static void
chosen_cb (SyKeyChoice *choice, SyMatrixPage *self)
{
  (void) choice;
  fill (self);
}

/* Topics: building */

static GtkWidget *
new_empty_state (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = sy_part_label (_("This is where every die stands against every hoist, crane, fork truck, cart and "
                                      "manipulator: which carries it by its mass, which is out of date, which does not "
                                      "serve the machine. It needs at least one die and one of them in the registers."),
                                    "sy-prose");
  struct
  {
    const char *label, *method;
  } const steps[] = { { _("_New die"), "die-mass" }, { _("New _item of gear"), "gear" } };

  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (words), 66);
  gtk_label_set_justify (GTK_LABEL (words), GTK_JUSTIFY_CENTER);
  gtk_box_append (GTK_BOX (box), sy_part_heading (_("Nothing to hold against each other yet")));
  gtk_box_append (GTK_BOX (box), words);
  gtk_widget_set_halign (gtk_widget_get_first_child (box), GTK_ALIGN_CENTER);
  gtk_widget_set_halign (buttons, GTK_ALIGN_CENTER);
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      GtkWidget *button = sy_button_new (steps[i].label, NULL);

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.new-item");
      gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", steps[i].method);
      gtk_box_append (GTK_BOX (buttons), button);
    }
  gtk_box_append (GTK_BOX (box), buttons);
  return box;
}

static GtkWidget *
new_bar (SyMatrixPage *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *hint = sy_part_label (_("By mass alone, with allowance: how a die hangs or stands needs a plan of its own. "
                                     "Press a cell to see why."),
                                   "sy-quiet");

  self->machine = sy_key_choice_new (_("Any machine"), _("Show only dies of this machine"), NULL);
  gtk_widget_set_name (self->machine, "machine");
  gtk_widget_set_valign (self->machine, GTK_ALIGN_CENTER);
  g_signal_connect_object (self->machine, "chosen", G_CALLBACK (chosen_cb), self, 0);
  self->count = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->count, "sy-quiet");
  gtk_widget_set_hexpand (hint, TRUE);
  gtk_box_append (GTK_BOX (bar), hint);
  gtk_box_append (GTK_BOX (bar), self->machine);
  gtk_box_append (GTK_BOX (bar), self->count);
  gtk_widget_set_margin_start (bar, 18);
  gtk_widget_set_margin_end (bar, 18);
  gtk_widget_set_margin_top (bar, 12);
  gtk_widget_set_margin_bottom (bar, 12);
  self->bar = bar;
  return bar;
}

static GtkWidget *
new_table (SyMatrixPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->rows = g_list_store_new (SY_TYPE_MATRIX_ROW);
  self->view = gtk_column_view_new (
    GTK_SELECTION_MODEL (gtk_no_selection_new (g_object_ref (G_LIST_MODEL (self->rows)))));
  sy_matrix_cells_add_arrows (self->view);
  gtk_widget_set_name (self->view, "matrix");
  sy_name (self->view, _("What lifts what"));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), _("What lifts what"));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  gtk_widget_set_vexpand (scrolled, TRUE);
  self->why = sy_matrix_why_new ();
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_box_append (GTK_BOX (box), self->why);
  return box;
}

static void
build (SyMatrixPage *self)
{
  g_autofree char *screening = sy_words_screening (sy_translate);
  GtkStack *states;

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->states = gtk_stack_new ();
  states = GTK_STACK (self->states);
  self->error_words = sy_part_label (NULL, "sy-problem");
  gtk_widget_set_halign (self->error_words, GTK_ALIGN_CENTER);
  gtk_widget_set_vexpand (self->states, TRUE);
  gtk_stack_add_named (states, sy_part_label (_("Looking through the registers…"), "sy-waiting"), "loading");
  gtk_stack_add_named (states, new_table (self), "table");
  gtk_stack_add_named (states, new_empty_state (), "empty");
  gtk_stack_add_named (states, self->error_words, "error");
  gtk_box_append (GTK_BOX (self->box), new_bar (self));
  gtk_box_append (GTK_BOX (self->box), self->states);
  gtk_box_append (GTK_BOX (self->box), sy_part_label (screening, "sy-caution"));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  show_state (self, "loading");
}

static void
sy_matrix_page_map (GtkWidget *widget)
{
  SyMatrixPage *self = SY_MATRIX_PAGE (widget);

  GTK_WIDGET_CLASS (sy_matrix_page_parent_class)->map (widget);
  if (self->stale)
    ask (self);
}

static gboolean
sy_matrix_page_grab_focus (GtkWidget *widget)
{
  SyMatrixPage *self = SY_MATRIX_PAGE (widget);

  if (g_str_equal (sy_matrix_page_get_state (self), "table"))
    return sy_focus_rows (GTK_COLUMN_VIEW (self->view));
  return gtk_widget_child_focus (self->states, GTK_DIR_TAB_FORWARD);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_matrix_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (SY_MATRIX_PAGE (widget)->box, direction);
}

static void
sy_matrix_page_dispose (GObject *object)
{
  SyMatrixPage *self = SY_MATRIX_PAGE (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  if (self->box != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->rows);
  g_clear_pointer (&self->columns, g_ptr_array_unref);
  g_clear_pointer (&self->cells, g_ptr_array_unref);
  g_clear_object (&self->list);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_matrix_page_parent_class)->dispose (object);
}

static void
sy_matrix_page_class_init (SyMatrixPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_matrix_page_dispose;
  widget_class->map = sy_matrix_page_map;
  widget_class->grab_focus = sy_matrix_page_grab_focus;
  widget_class->focus = sy_matrix_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-matrix");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_matrix_page_init (SyMatrixPage *self)
{
  self->cancellable = g_cancellable_new ();
  self->stale = TRUE;
}

GtkWidget *
sy_matrix_page_new (SyWorker *worker, SyTaskList *list, SyUnits units)
{
  SyMatrixPage *self = g_object_new (SY_TYPE_MATRIX_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->list = g_object_ref (list);
  self->units = units;
  build (self);
  sy_name (GTK_WIDGET (self), _("What lifts what"));
  g_signal_connect_object (list, "items-changed", G_CALLBACK (list_changed_cb), self, 0);
  return GTK_WIDGET (self);
}

void
sy_matrix_page_set_units (SyMatrixPage *self, SyUnits units)
{
  g_return_if_fail (SY_IS_MATRIX_PAGE (self));
  self->units = units;
  fill (self);
  renew_why (self);
}

void
sy_matrix_page_set_machine (SyMatrixPage *self, const char *machine)
{
  g_return_if_fail (SY_IS_MATRIX_PAGE (self));
  sy_key_choice_choose (SY_KEY_CHOICE (self->machine), machine);
}

void
sy_matrix_page_show (SyMatrixPage *self, const char *die, const char *gear)
{
  g_return_if_fail (SY_IS_MATRIX_PAGE (self));
  for (guint i = 0; self->cells != NULL && i < self->cells->len; i++)
    {
      const SyMatrixCell *cell = self->cells->pdata[i];

      if (g_str_equal (cell->die, die) && g_str_equal (cell->gear, gear))
        sy_matrix_why_set (SY_MATRIX_WHY (self->why), cell, self->units);
    }
}

guint
sy_matrix_page_count_dies (SyMatrixPage *self)
{
  g_return_val_if_fail (SY_IS_MATRIX_PAGE (self), 0);
  return g_list_model_get_n_items (G_LIST_MODEL (self->rows));
}

guint
sy_matrix_page_count_gear (SyMatrixPage *self)
{
  g_return_val_if_fail (SY_IS_MATRIX_PAGE (self), 0);
  return self->columns != NULL ? self->columns->len : 0;
}

const char *
sy_matrix_page_get_state (SyMatrixPage *self)
{
  g_return_val_if_fail (SY_IS_MATRIX_PAGE (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->states));
}
