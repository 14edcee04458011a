/* SPDX-License-Identifier: MIT */
#include "sy-bad-cells.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-scroll.h"

#define N_TEXTS 5

/* Topics: a row */

#define SY_TYPE_BAD_CELL_ROW (sy_bad_cell_row_get_type ())
G_DECLARE_FINAL_TYPE (SyBadCellRow, sy_bad_cell_row, SY, BAD_CELL_ROW, GObject)

struct _SyBadCellRow
{
  GObject parent_instance;
  char *texts[N_TEXTS];
};

G_DEFINE_FINAL_TYPE (SyBadCellRow, sy_bad_cell_row, G_TYPE_OBJECT)

static void
sy_bad_cell_row_finalize (GObject *object)
{
  for (int i = 0; i < N_TEXTS; i++)
    g_free (SY_BAD_CELL_ROW (object)->texts[i]);
  G_OBJECT_CLASS (sy_bad_cell_row_parent_class)->finalize (object);
}

static void
sy_bad_cell_row_class_init (SyBadCellRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_bad_cell_row_finalize;
}

static void
sy_bad_cell_row_init (SyBadCellRow *self)
{
  (void) self;
}

static SyBadCellRow *
new_row (const SyBadCell *cell)
{
  SyBadCellRow *row = g_object_new (SY_TYPE_BAD_CELL_ROW, NULL);

  row->texts[0] = g_strdup_printf ("%" G_GUINT64_FORMAT, cell->line);
  row->texts[1] = g_strdup (cell->column);
  row->texts[2] = *cell->value != '\0' ? g_strdup (cell->value) : g_strdup (_("(empty)"));
  row->texts[3] = g_strdup (cell->allowed);
  row->texts[4] = g_strdup (cell->unit);
  return row;
}

/* Topics: the table */

struct _SyBadCells
{
  GtkWidget parent_instance;
  GtkWidget *scrolled, *view;
  GListStore *rows;
};

G_DEFINE_FINAL_TYPE (SyBadCells, sy_bad_cells, GTK_TYPE_WIDGET)

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  GtkWidget *label = gtk_label_new (NULL);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), GPOINTER_TO_INT (column) == 0 ? 1 : 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "sy-figures");
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  SyBadCellRow *row = gtk_list_item_get_item (item);
  GtkWidget *label = gtk_list_item_get_child (item);
  const char *text = row->texts[GPOINTER_TO_INT (column)];
  g_autofree char *all = NULL;

  (void) factory;
  if (GPOINTER_TO_INT (column) == 0)
    /* Translators: a cell of a table: line, column, what stands there, what is allowed, unit. */
    all = g_strdup_printf (_("Line %s, %s: %s; allowed: %s %s"), row->texts[0], row->texts[1], row->texts[2], row->texts[3],
                           row->texts[4]);
  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, text);
  sy_name_row_of (label, all, text);
}

static void
sy_bad_cells_dispose (GObject *object)
{
  SyBadCells *self = SY_BAD_CELLS (object);

  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  g_clear_object (&self->rows);
  G_OBJECT_CLASS (sy_bad_cells_parent_class)->dispose (object);
}

static void
sy_bad_cells_class_init (SyBadCellsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_bad_cells_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
sy_bad_cells_init (SyBadCells *self)
{
  const struct
  {
    const char *title;
    int width; /* px; -1: what is left */
  } columns[N_TEXTS] = { { _("Line"), 70 }, { _("Column"), 170 }, { _("What stands there"), 170 }, { _("Allowed"), -1 },
                         { _("Unit"), 70 } };

  self->rows = g_list_store_new (SY_TYPE_BAD_CELL_ROW);
  self->scrolled = gtk_scrolled_window_new ();
  self->view = gtk_column_view_new (
    GTK_SELECTION_MODEL (gtk_no_selection_new (g_object_ref (G_LIST_MODEL (self->rows)))));
  gtk_widget_set_name (self->view, "bad-cells");
  for (int i = 0; i < N_TEXTS; i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column = NULL;

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), GINT_TO_POINTER (i));
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), GINT_TO_POINTER (i));
      column = gtk_column_view_column_new (columns[i].title, factory);
      if (columns[i].width > 0)
        gtk_column_view_column_set_fixed_width (column, columns[i].width);
      else
        gtk_column_view_column_set_expand (column, TRUE);
      gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), column);
    }
  sy_align_heading_end (GTK_COLUMN_VIEW (self->view), 0);
  sy_name (self->view, _("Cells that cannot be taken"));
  sy_name_rows (GTK_COLUMN_VIEW (self->view), _("Cells that cannot be taken"));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->view);
  gtk_widget_set_vexpand (self->scrolled, TRUE);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
}

GtkWidget *
sy_bad_cells_new (void)
{
  return g_object_new (SY_TYPE_BAD_CELLS, NULL);
}

void
sy_bad_cells_set (SyBadCells *self, const GPtrArray *bad)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (g_object_unref);

  g_return_if_fail (SY_IS_BAD_CELLS (self));
  for (guint i = 0; bad != NULL && i < bad->len; i++)
    g_ptr_array_add (rows, new_row (bad->pdata[i]));
  g_list_store_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)), rows->pdata, rows->len);
}
