/* SPDX-License-Identifier: MIT */
#include "sy-task-named.h"

#include <string.h>

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-task-parts.h"

/* So many columns have room beside what the rows are called; more stand under them. */
#define ABREAST 7

/* A symbol has three parts: "share.A.mass". What is named may have dots in it. */
typedef struct
{
  char *prefix, *middle, *suffix;
  const SyNamed *named;
} Cell;

static void
cell_free (gpointer data)
{
  Cell *cell = data;

  g_free (cell->prefix);
  g_free (cell->middle);
  g_free (cell->suffix);
  g_free (cell);
}

static Cell *
new_cell (const SyNamed *named)
{
  const char *first = strchr (named->text, '.'), *last = strrchr (named->text, '.');
  Cell *cell = g_new0 (Cell, 1);

  cell->named = named;
  if (first == NULL)
    first = last = named->text + strlen (named->text);
  cell->prefix = g_strndup (named->text, (gsize) (first - named->text));
  cell->middle = first < last ? g_strndup (first + 1, (gsize) (last - first - 1)) : g_strdup ("");
  cell->suffix = g_strdup (*last != '\0' ? last + 1 : "");
  return cell;
}

/* Titles */

static const struct
{
  const char *prefix, *title, *item; /* N_(); @item before a number, NULL: the name alone */
} kinds[] = {
  { "lift", N_ ("Lift by lift"), N_ ("Lift") },
  { "term", N_ ("What each lift adds to the index, the strictest first"), N_ ("Term") },
  { "person", N_ ("Person by person"), NULL },
  { "share", N_ ("What each of them carries"), NULL },
  { "equal", N_ ("Categories of equal width"), N_ ("Category") },
  { "ntile", N_ ("Categories of equal frequency"), N_ ("Category") },
};

static const char *
kind_title (const char *prefix)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (kinds[i].prefix, prefix) == 0)
      return sy_translate (kinds[i].title);
  return prefix;
}

/* "Lift 3 · Scrap to chute": a number is that of an item of the facts, which may have a name. */
static char *
row_title (SyForm *form, const Cell *cell)
{
  const char *item = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (kinds[i].prefix, cell->prefix) == 0)
      item = kinds[i].item;
  if (item == NULL)
    return g_strdup (cell->middle);
  if (strcmp (cell->prefix, "lift") == 0)
    {
      g_autofree char *path
          = g_strdup_printf ("lifts[%" G_GUINT64_FORMAT "].label", g_ascii_strtoull (cell->middle, NULL, 10) - 1);
      const char *label = sy_form_get (form, path);

      if (label[0] != '\0')
        return g_strdup_printf ("%s · %s", cell->middle, label);
    }
  return g_strdup_printf ("%s %s", sy_translate (item), cell->middle);
}

/* The table */

typedef struct
{
  SyForm *form;
  const SyFindings *findings;
  GPtrArray *cells;    /* of Cell, of one prefix       */
  GPtrArray *rows;     /* of Cell: the first of each   */
  GPtrArray *columns;  /* of Cell: the first of each   */
} Table;

static gboolean
has (GPtrArray *cells, const Cell *cell, gboolean by_row)
{
  for (guint i = 0; i < cells->len; i++)
    {
      const Cell *other = g_ptr_array_index (cells, i);

      if (strcmp (by_row ? other->middle : other->suffix, by_row ? cell->middle : cell->suffix) == 0)
        return TRUE;
    }
  return FALSE;
}

static GtkWidget *
new_label (const char *text, const char *css_class, float xalign)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static guint
place_of (GPtrArray *cells, const Cell *cell, gboolean by_row)
{
  for (guint i = 0; i < cells->len; i++)
    {
      const Cell *other = g_ptr_array_index (cells, i);

      if (strcmp (by_row ? other->middle : other->suffix, by_row ? cell->middle : cell->suffix) == 0)
        return i;
    }
  g_return_val_if_reached (0);
}

static GtkWidget *
new_grid (const Table *table, guint from)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 3);
  for (guint i = from; i < MIN (from + ABREAST, table->columns->len); i++)
    {
      const Cell *column = g_ptr_array_index (table->columns, i);
      GtkWidget *label = new_label (column->suffix, "sy-note", 1);

      gtk_widget_set_tooltip_text (label, sy_translate (column->named->symbol.label));
      gtk_grid_attach (GTK_GRID (grid), label, (int) (i - from) + 1, 0, 1, 1);
    }
  for (guint i = 0; i < table->rows->len; i++)
    {
      g_autofree char *title = row_title (table->form, g_ptr_array_index (table->rows, i));

      gtk_grid_attach (GTK_GRID (grid), new_label (title, "sy-strong", 0), 0, (int) i + 1, 1, 1);
    }
  for (guint i = 0; i < table->cells->len; i++)
    {
      const Cell *cell = g_ptr_array_index (table->cells, i);
      guint column = place_of (table->columns, cell, FALSE);

      if (column < from || column >= from + ABREAST)
        continue;
      const SyQuantity *quantity = &cell->named->quantity;
      g_autofree char *value = sy_words_quantity (quantity->value, quantity->symbol->kind, table->findings->units);
      g_autofree char *row = row_title (table->form, cell);
      /* Translators: a figure of a table, read out: row, what it is, figure. */
      g_autofree char *name = g_strdup_printf (_("%s, %s: %s"), row, sy_translate (quantity->symbol->label), value);
      GtkWidget *label = new_label (value, "sy-figures", 1);

      gtk_accessible_update_property (GTK_ACCESSIBLE (label), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
      gtk_grid_attach (GTK_GRID (grid), label, (int) (column - from) + 1,
                       (int) place_of (table->rows, cell, TRUE) + 1, 1, 1);
    }
  return grid;
}

/* What the columns are. */
static GtkWidget *
new_legend (const Table *table)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < table->columns->len; i++)
    {
      const Cell *column = g_ptr_array_index (table->columns, i);

      g_string_append_printf (words, "%s%s: %s", i > 0 ? " · " : "", column->suffix,
                              sy_translate (column->named->symbol.label));
    }
  return sy_part_label (words->str, "sy-note");
}

/* Formulas on demand: they may be hundreds. */

static void
expanded_cb (GtkExpander *fold, GParamSpec *pspec G_GNUC_UNUSED, gpointer user_data G_GNUC_UNUSED)
{
  SyForm *form = g_object_get_data (G_OBJECT (fold), "sy-form");
  SyAssessment *assessment = sy_form_get_assessment (form);
  const char *start = g_object_get_data (G_OBJECT (fold), "sy-start");
  GtkWidget *box;

  if (!gtk_expander_get_expanded (fold) || gtk_expander_get_child (fold) != NULL || assessment == NULL)
    return;
  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  for (gsize i = 0; i < assessment->findings->sink.n_named; i++)
    {
      const SyNamed *named = &assessment->findings->named[i];
      g_autofree char *formula
          = g_str_has_prefix (named->text, start) ? sy_words_formula (assessment->findings, &named->quantity) : NULL;
      GtkWidget *line;

      if (formula == NULL)
        continue;
      line = sy_part_label (formula, "sy-formula");
      gtk_label_set_selectable (GTK_LABEL (line), TRUE);
      gtk_accessible_update_property (GTK_ACCESSIBLE (line), GTK_ACCESSIBLE_PROPERTY_LABEL, formula, -1);
      gtk_box_append (GTK_BOX (box), line);
    }
  gtk_expander_set_child (fold, box);
}

static gboolean
has_formula (const Table *table)
{
  for (guint i = 0; i < table->cells->len; i++)
    {
      const Cell *cell = g_ptr_array_index (table->cells, i);
      g_autofree char *formula = sy_words_formula (table->findings, &cell->named->quantity);

      if (formula != NULL)
        return TRUE;
    }
  return FALSE;
}

static GtkWidget *
new_fold (const Table *table, const char *prefix, const char *title)
{
  GtkWidget *fold = gtk_expander_new (_("Formulas"));
  g_autofree char *name = g_strdup_printf (_("%s: %s"), title, _("Formulas"));

  sy_name (fold, name);
  g_object_set_data_full (G_OBJECT (fold), "sy-form", g_object_ref (table->form), g_object_unref);
  g_object_set_data_full (G_OBJECT (fold), "sy-start", g_strconcat (prefix, ".", NULL), g_free);
  g_signal_connect (fold, "notify::expanded", G_CALLBACK (expanded_cb), NULL);
  return fold;
}

/* The sources of the columns, each once. */
static GtkWidget *
new_sources (const Table *table)
{
  g_autoptr (GPtrArray) said = g_ptr_array_new ();
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < table->columns->len; i++)
    {
      const char *source = ((const Cell *) g_ptr_array_index (table->columns, i))->named->symbol.source;

      if (source == NULL || g_ptr_array_find_with_equal_func (said, source, g_str_equal, NULL))
        continue;
      g_ptr_array_add (said, (gpointer) source);
      g_string_append_printf (words, "%s%s", words->len > 0 ? "; " : "", source);
    }
  return sy_part_label (words->str, "sy-note");
}

static void
add_table (GtkWidget *box, SyForm *form, const SyFindings *findings, GPtrArray *cells)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new ();
  g_autoptr (GPtrArray) columns = g_ptr_array_new ();
  const Table table = { form, findings, cells, rows, columns };
  const char *prefix = ((const Cell *) g_ptr_array_index (cells, 0))->prefix, *title = kind_title (prefix);

  for (guint i = 0; i < cells->len; i++)
    {
      Cell *cell = g_ptr_array_index (cells, i);

      if (!has (rows, cell, TRUE))
        g_ptr_array_add (rows, cell);
      if (!has (columns, cell, FALSE))
        g_ptr_array_add (columns, cell);
    }
  gtk_box_append (GTK_BOX (box), sy_part_heading (title));
  for (guint from = 0; from < columns->len; from += ABREAST)
    {
      GtkWidget *scrolled = gtk_scrolled_window_new ();

      gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
      gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), new_grid (&table, from));
      gtk_accessible_update_property (GTK_ACCESSIBLE (scrolled), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
      gtk_box_append (GTK_BOX (box), scrolled);
    }
  gtk_box_append (GTK_BOX (box), new_legend (&table));
  gtk_box_append (GTK_BOX (box), new_sources (&table));
  if (has_formula (&table))
    gtk_box_append (GTK_BOX (box), new_fold (&table, prefix, title));
}

void
sy_task_named_add (GtkWidget *box, SyForm *form, const SyFindings *findings)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (cell_free);
  g_autoptr (GPtrArray) done = g_ptr_array_new ();

  for (gsize i = 0; i < findings->sink.n_named; i++)
    if (findings->named[i].quantity.state != SY_STATE_ABSENT)
      g_ptr_array_add (all, new_cell (&findings->named[i]));
  for (guint i = 0; i < all->len; i++)
    {
      const char *prefix = ((const Cell *) g_ptr_array_index (all, i))->prefix;
      g_autoptr (GPtrArray) cells = g_ptr_array_new ();

      if (g_ptr_array_find_with_equal_func (done, prefix, g_str_equal, NULL))
        continue;
      g_ptr_array_add (done, (gpointer) prefix);
      for (guint k = i; k < all->len; k++)
        if (strcmp (((const Cell *) g_ptr_array_index (all, k))->prefix, prefix) == 0)
          g_ptr_array_add (cells, g_ptr_array_index (all, k));
      add_table (box, form, findings, cells);
    }
}
