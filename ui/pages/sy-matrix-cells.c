/* SPDX-License-Identifier: MIT */
#include "sy-matrix-cells.h"

#include <math.h>

#include "sy-i18n.h"
#include "sy-matrix-table.h"
#include "sy-name.h"
#include "sy-scroll.h"
#include "sy-task-parts.h"
#include "sy-view.h"
#include "sy-words.h"

#define SHAPE_SIZE 16

/* What does not reach the machine is no candidate at all, whatever else is to be said of it. */
static gboolean
serves_not (const SyMatrixCell *cell)
{
  return cell->serves == SY_SERVES_NO;
}

/* What stands under shape and figure. New string. */
static char *
cell_words (const SyMatrixCell *cell)
{
  if (serves_not (cell))
    /* Translators: of a crane, and a machine that it does not reach. */
    return g_strdup_printf (_("does not serve %s"), cell->machine);
  return g_strdup (sy_translate (sy_verdict_title (cell->verdict)));
}

static char *
cell_name (const SyMatrixCell *cell)
{
  g_autofree char *words = cell_words (cell);
  g_autofree char *percent = sy_matrix_cell_percent (cell);

  /* Translators: a die, what is to carry it, the verdict, and the part of what it may carry ("28 %"). */
  return *percent != '\0' ? g_strdup_printf (_("%s with %s: %s, %s"), cell->die_name, cell->gear_name, words, percent)
                          : g_strdup_printf (_("%s with %s: %s"), cell->die_name, cell->gear_name, words);
}

static void
setup_cell_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer user_data)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *percent = gtk_label_new (NULL), *words = gtk_label_new (NULL);

  (void) factory, (void) user_data;
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_label_set_ellipsize (GTK_LABEL (words), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (words, "sy-note");
  gtk_widget_add_css_class (percent, "sy-figures");
  gtk_box_append (GTK_BOX (line), sy_shape_new (SY_VERDICT_INCOMPLETE, SHAPE_SIZE));
  gtk_box_append (GTK_BOX (line), percent);
  gtk_box_append (GTK_BOX (box), line);
  gtk_box_append (GTK_BOX (box), words);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "sy-matrix-cell");
  gtk_list_item_set_child (item, button);
  gtk_list_item_set_activatable (item, FALSE);
}

static void
bind_cell_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const char *gear)
{
  const SyMatrixCell *cell = sy_matrix_row_find (gtk_list_item_get_item (item), gear);
  GtkWidget *button = gtk_list_item_get_child (item);
  GtkWidget *box = gtk_button_get_child (GTK_BUTTON (button));
  GtkWidget *line = gtk_widget_get_first_child (box);
  GtkWidget *shape = gtk_widget_get_first_child (line), *percent = gtk_widget_get_last_child (line);
  g_autofree char *words = NULL, *figure = NULL, *name = NULL;

  (void) factory;
  g_object_set_data (G_OBJECT (button), "sy-cell", (gpointer) cell);
  gtk_widget_set_visible (button, cell != NULL);
  if (cell == NULL)
    return;
  words = cell_words (cell);
  figure = sy_matrix_cell_percent (cell);
  name = cell_name (cell);
  gtk_widget_set_visible (shape, !serves_not (cell));
  sy_shape_set (shape, cell->verdict);
  if (serves_not (cell))
    gtk_widget_add_css_class (percent, "sy-quiet");
  else
    gtk_widget_remove_css_class (percent, "sy-quiet");
  gtk_label_set_text (GTK_LABEL (percent), figure);
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_last_child (box)), words);
  sy_name (button, name);
  sy_name_row_of (button, NULL, name);
}

static void
setup_die_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer user_data)
{
  (void) factory, (void) user_data;
  gtk_list_item_set_child (item, sy_part_two_lines ());
}

static void
bind_die_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer user_data)
{
  const SyMatrixCell *cell = sy_matrix_row_first (gtk_list_item_get_item (item));
  GtkWidget *box = gtk_list_item_get_child (item);
  SyUnits units = (SyUnits) GPOINTER_TO_INT (user_data);
  double mass = sy_unit_convert (SY_KIND_MASS, cell->mass_kg, SY_UNITS_METRIC, units);
  g_autofree char *weight = isnan (mass) ? g_strdup (_("mass not known"))
                                         : sy_words_quantity (mass, SY_KIND_MASS, units);
  /* Translators: a machine and the mass of a die. */
  g_autofree char *note = *cell->machine != '\0' ? g_strdup_printf (_("%s · %s"), cell->machine, weight)
                                                 : g_strdup (weight);
  g_autofree char *row = g_strdup_printf (_("%s, %s"), cell->die_name, note);

  (void) factory;
  sy_part_set_lines (box, cell->die_name, note);
  gtk_widget_set_tooltip_text (box, row);
  sy_name_row_of (box, row, row);
}

static void
free_text (gpointer data, GClosure *closure)
{
  (void) closure;
  g_free (data);
}

GtkListItemFactory *
sy_matrix_cells_of_gear (const char *gear)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cell_cb), NULL);
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cell_cb), g_strdup (gear), free_text, 0);
  return factory;
}

GtkListItemFactory *
sy_matrix_cells_of_dies (SyUnits units)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_die_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_die_cb), GINT_TO_POINTER (units));
  return factory;
}

const SyMatrixCell *
sy_matrix_cells_get (GtkWidget *button)
{
  return g_object_get_data (G_OBJECT (button), "sy-cell");
}

/* From cell to cell: the view itself only goes up and down. */
static gboolean
arrow_cb (GtkWidget *view, GVariant *arguments, gpointer user_data)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (view));
  GtkWidget *cell = focus != NULL ? gtk_widget_get_parent (focus) : NULL;
  GtkWidget *next;

  (void) arguments;
  if (!GTK_IS_BUTTON (focus) || !gtk_widget_has_css_class (focus, "sy-matrix-cell"))
    return FALSE;
  next = GPOINTER_TO_INT (user_data) > 0 ? gtk_widget_get_next_sibling (cell) : gtk_widget_get_prev_sibling (cell);
  return next != NULL && gtk_widget_child_focus (next, GTK_DIR_TAB_FORWARD);
}

void
sy_matrix_cells_add_arrows (GtkWidget *view)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();
  const struct
  {
    guint key;
    int step;
  } arrows[] = { { GDK_KEY_Left, -1 }, { GDK_KEY_Right, 1 } };

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  for (guint i = 0; i < G_N_ELEMENTS (arrows); i++)
    gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (controller),
      gtk_shortcut_new (gtk_keyval_trigger_new (arrows[i].key, 0),
                        gtk_callback_action_new (arrow_cb, GINT_TO_POINTER (arrows[i].step), NULL)));
  gtk_widget_add_controller (view, controller);
}
