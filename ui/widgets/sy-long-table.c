/* SPDX-License-Identifier: MIT */
#include "sy-long-table.h"

#include <string.h>

#include "sy-i18n.h"
#include "sy-long-list.h"
#include "sy-name.h"
#include "sy-scroll.h"

#define HEIGHT 300
#define PROBLEMS_MAX 5
#define NUMBER_WIDTH 66
#define FIGURE_WIDTH 124
#define WORDS_WIDTH 120

struct _SyLongTable
{
  GtkBox parent_instance;

  SyForm *form;
  char *path;
  const SyField *field;
  SyLongList *list;
  GtkWidget *count, *problems, *view;
};

G_DEFINE_FINAL_TYPE (SyLongTable, sy_long_table, GTK_TYPE_BOX)

/* Cells. Column 0 is the number of the item, the others those of the list. */

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, SyLongTable *self)
{
  guint column = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (factory), "sy-column"));
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 || sy_long_list_is_figure (self->list, column - 1) ? 1 : 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "sy-figures");
  gtk_list_item_set_child (item, label);
}

/* A row is read out as a whole, by its titles. */
static char *
row_words (SyLongTable *self, guint place)
{
  g_autoptr (GString) words = g_string_new (NULL);

  g_string_append_printf (words, "%s %u",
                          sy_translate (self->field->item_label != NULL ? self->field->item_label : self->field->label),
                          place + 1);
  for (guint i = 0; i < sy_long_list_n_columns (self->list); i++)
    {
      g_autofree char *title = sy_long_list_dup_title (self->list, i);
      g_autofree char *cell = sy_long_list_dup_cell (self->list, place, i);

      if (cell[0] != '\0')
        g_string_append_printf (words, "; %s: %s", title, cell);
    }
  return g_strdup (words->str);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, SyLongTable *self)
{
  guint column = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (factory), "sy-column"));
  guint place = sy_long_row_get_place (gtk_list_item_get_item (item));
  GtkWidget *label = gtk_list_item_get_child (item);
  g_autofree char *text = column == 0 ? g_strdup_printf ("%u", place + 1)
                                      : sy_long_list_dup_cell (self->list, place, column - 1);
  g_autofree char *row = column == 0 ? row_words (self, place) : NULL;

  gtk_label_set_text (GTK_LABEL (label), text);
  sy_name_row_of (label, row, text);
}

static void
add_column (SyLongTable *self, guint at, const char *title, int width)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) column = NULL;

  g_object_set_data (G_OBJECT (factory), "sy-column", GUINT_TO_POINTER (at));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  column = gtk_column_view_column_new (title, factory);
  gtk_column_view_column_set_fixed_width (column, width);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), column);
}

static void
make_columns (SyLongTable *self)
{
  GListModel *columns = gtk_column_view_get_columns (GTK_COLUMN_VIEW (self->view));

  for (guint n = g_list_model_get_n_items (columns); n > 0; n--)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, n - 1);

      gtk_column_view_remove_column (GTK_COLUMN_VIEW (self->view), column);
    }
  add_column (self, 0, _("No."), NUMBER_WIDTH);
  sy_align_heading_end (GTK_COLUMN_VIEW (self->view), 0);
  for (guint i = 0; i < sy_long_list_n_columns (self->list); i++)
    {
      g_autofree char *title = sy_long_list_dup_title (self->list, i);
      gboolean figure = sy_long_list_is_figure (self->list, i);

      add_column (self, i + 1, title, figure ? FIGURE_WIDTH : WORDS_WIDTH);
      if (figure)
        sy_align_heading_end (GTK_COLUMN_VIEW (self->view), i + 1);
    }
}

/* What is wrong, item by item: there is no entry to say it beside. */
static char *
problem_words (SyLongTable *self)
{
  g_autoptr (GString) words = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < sy_form_count_problems (self->form); i++)
    {
      const char *path = sy_form_problem_path (self->form, i);
      g_autofree char *item = NULL;
      gsize length = strlen (self->path);

      if (!g_str_has_prefix (path, self->path) || path[length] != '[')
        continue;
      if (n++ >= PROBLEMS_MAX)
        continue;
      item = g_strndup (path, (gsize) (strchr (path, ']') - path) + 1);
      {
        g_autofree char *name = sy_form_dup_name (self->form, item, FALSE);

        g_string_append_printf (words, "%s%s: %s", words->len > 0 ? "\n" : "", name, sy_form_problem_words (self->form, i));
      }
    }
  if (n > PROBLEMS_MAX)
    {
      g_autofree char *more = g_strdup_printf (P_("and %u more", "and %u more", n - PROBLEMS_MAX), n - PROBLEMS_MAX);

      g_string_append_printf (words, "\n%s", more);
    }
  return g_strdup (words->str);
}

static void
follow_form (SyLongTable *self)
{
  GBytes *json = sy_form_list_get_long (self->form, self->path);
  g_autofree char *words = NULL;
  g_autofree char *name = NULL;
  guint n = sy_form_list_count (self->form, self->path);

  if (json == NULL)
    return;
  if (sy_long_list_set (self->list, json, sy_form_get_units (self->form)))
    make_columns (self);
  words = g_strdup_printf (P_("%u in all; they came from a table and are looked at here, not typed.",
                              "%u in all; they came from a table and are looked at here, not typed.", n),
                           n);
  if (strcmp (gtk_label_get_text (GTK_LABEL (self->count)), words) != 0)
    {
      gtk_label_set_text (GTK_LABEL (self->count), words);
      name = g_strdup_printf ("%s: %s", sy_translate (self->field->label), words);
      sy_name (self->view, name);
      sy_name_rows (GTK_COLUMN_VIEW (self->view), name);
    }
  g_free (words);
  words = problem_words (self);
  gtk_label_set_text (GTK_LABEL (self->problems), words);
  gtk_widget_set_visible (self->problems, words[0] != '\0');
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyLongTable *self)
{
  follow_form (self);
}

/* With Tab GTK 4.8 would go through every row. */
static gboolean
sy_long_table_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SyLongTable *self = SY_LONG_TABLE (widget);

  if (sy_tab_leaves_rows (GTK_COLUMN_VIEW (self->view), direction))
    return FALSE;
  return GTK_WIDGET_CLASS (sy_long_table_parent_class)->focus (widget, direction);
}

static void
sy_long_table_dispose (GObject *object)
{
  SyLongTable *self = SY_LONG_TABLE (object);

  g_clear_object (&self->form);
  g_clear_object (&self->list);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (sy_long_table_parent_class)->dispose (object);
}

static void
sy_long_table_class_init (SyLongTableClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_long_table_dispose;
  GTK_WIDGET_CLASS (class)->focus = sy_long_table_focus;
}

static void
sy_long_table_init (SyLongTable *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 3);
}

static GtkWidget *
new_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

GtkWidget *
sy_long_table_new (SyForm *form, const char *path)
{
  SyLongTable *self = g_object_new (SY_TYPE_LONG_TABLE, NULL);
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  self->field = sy_form_find_field (form, path);
  self->list = sy_long_list_new (self->field);
  self->count = new_label ("sy-note");
  self->problems = new_label ("sy-wrong-note");
  self->view = gtk_column_view_new (
    GTK_SELECTION_MODEL (gtk_no_selection_new (g_object_ref (G_LIST_MODEL (self->list)))));
  gtk_widget_set_name (self->view, path);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  gtk_widget_add_css_class (scrolled, "sy-drawing");
  gtk_box_append (GTK_BOX (self), self->count);
  gtk_box_append (GTK_BOX (self), self->problems);
  gtk_box_append (GTK_BOX (self), scrolled);
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
  return GTK_WIDGET (self);
}

gboolean
sy_long_table_show_item (SyLongTable *self, guint item)
{
  g_return_val_if_fail (SY_IS_LONG_TABLE (self), FALSE);
  return sy_scroll_to_row (GTK_COLUMN_VIEW (self->view), item) && sy_focus_rows (GTK_COLUMN_VIEW (self->view));
}
