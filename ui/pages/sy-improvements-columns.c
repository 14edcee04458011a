/* SPDX-License-Identifier: MIT */
#include "sy-improvements-columns.h"

#include "sy-i18n.h"
#include "sy-improvement-row.h"
#include "sy-scroll.h"

typedef enum
{
  BY_SINCE,
  BY_WHAT,
  BY_CHANGE,
  BY_IDEA,
  BY_INDEX,
  BY_STOPPED,
  BY_PERSON_MINUTES,
  BY_PERSONS,
  BY_REACHED,
} Column;

/* New string. */
static char *
words_of (SyImprovementRow *row, Column column)
{
  const SyImprovement *improvement = sy_improvement_row_get_view (row)->improvement;

  switch (column)
    {
    case BY_SINCE:
      return g_strdup (improvement->put_to_work);
    case BY_WHAT:
      return g_strdup (improvement->what);
    case BY_CHANGE:
      return sy_improvement_row_change (row);
    case BY_IDEA:
      return g_strdup (improvement->idea_by);
    case BY_INDEX:
      return sy_improvement_row_gain (row, SY_GAIN_INDEX);
    case BY_STOPPED:
      return sy_improvement_row_gain (row, SY_GAIN_STOPPED);
    case BY_PERSON_MINUTES:
      return sy_improvement_row_gain (row, SY_GAIN_PERSON_MINUTES);
    case BY_PERSONS:
      return sy_improvement_row_gain (row, SY_GAIN_PERSONS);
    case BY_REACHED:
      return sy_improvement_row_reached (row);
    }
  g_return_val_if_reached (NULL);
}

static char *
row_words (SyImprovementRow *row)
{
  const SyImprovement *improvement = sy_improvement_row_get_view (row)->improvement;
  g_autofree char *change = sy_improvement_row_change (row), *reached = sy_improvement_row_reached (row);

  /* Translators: what was done, from where to where, by whose idea, since when, whether the verdict was reached. */
  return g_strdup_printf (_("%s; %s; thought of by %s; since %s; %s"), improvement->what, change, improvement->idea_by,
                          improvement->put_to_work, reached);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  GtkWidget *label = gtk_label_new (NULL);
  const int which = GPOINTER_TO_INT (column);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_single_line_mode (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  if (which == BY_SINCE || (which >= BY_INDEX && which <= BY_PERSONS))
    gtk_widget_add_css_class (label, "sy-figures");
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  SyImprovementRow *row = gtk_list_item_get_item (item);
  GtkWidget *label = gtk_list_item_get_child (item);
  const Column which = (Column) GPOINTER_TO_INT (column);
  g_autofree char *words = words_of (row, which), *all = which == BY_SINCE ? row_words (row) : NULL;

  (void) factory;
  if (sy_improvement_row_get_view (row)->improvement->withdrawn)
    gtk_widget_add_css_class (label, "sy-quiet");
  else
    gtk_widget_remove_css_class (label, "sy-quiet");
  gtk_label_set_text (GTK_LABEL (label), words);
  gtk_widget_set_tooltip_text (label, *words != '\0' ? words : NULL);
  sy_name_row_of (label, all, words);
}

#define ALWAYS -1

static const struct
{
  const char *title; /* N_()                              */
  int width;         /* px; -1: a part of what is left    */
  int gain;          /* SyGain that it shows, or ALWAYS   */
} columns[] = {
  [BY_SINCE] = { N_ ("Since"), 114, ALWAYS },
  [BY_WHAT] = { N_ ("What was done"), -1, ALWAYS },
  [BY_CHANGE] = { N_ ("From → to"), -1, ALWAYS },
  [BY_IDEA] = { N_ ("Thought of by"), 124, ALWAYS },
  [BY_INDEX] = { N_ ("Index"), 88, SY_GAIN_INDEX },
  [BY_STOPPED] = { N_ ("Machine stands"), 118, SY_GAIN_STOPPED },
  [BY_PERSON_MINUTES] = { N_ ("All people"), 104, SY_GAIN_PERSON_MINUTES },
  [BY_PERSONS] = { N_ ("Persons"), 78, SY_GAIN_PERSONS },
  [BY_REACHED] = { N_ ("Verdict"), 110, ALWAYS },
};

static GtkColumnViewColumn *
new_column (Column which)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkColumnViewColumn *column;

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), GINT_TO_POINTER ((int) which));
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), GINT_TO_POINTER ((int) which));
  column = gtk_column_view_column_new (sy_translate (columns[which].title), factory);
  gtk_column_view_column_set_resizable (column, TRUE);
  if (columns[which].width > 0)
    gtk_column_view_column_set_fixed_width (column, columns[which].width);
  else
    gtk_column_view_column_set_expand (column, TRUE);
  g_object_set_data (G_OBJECT (column), "sy-column", GINT_TO_POINTER ((int) which));
  return column;
}

/* GTK 4.8 leaves the room of a column that is hidden: what is not known of any has none. */
void
sy_improvements_columns_show (GtkColumnView *view, const SyQuarter *total)
{
  GListModel *shown = gtk_column_view_get_columns (view);
  guint at = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      const gboolean wanted = columns[i].gain == ALWAYS || total->n_known[columns[i].gain] > 0;
      g_autoptr (GtkColumnViewColumn) there = g_list_model_get_item (shown, at), made = NULL;
      const gboolean is_there
        = there != NULL && GPOINTER_TO_INT (g_object_get_data (G_OBJECT (there), "sy-column")) == (int) i;

      if (wanted && !is_there)
        gtk_column_view_insert_column (view, at, made = new_column ((Column) i));
      else if (!wanted && is_there)
        gtk_column_view_remove_column (view, there);
      at += wanted ? 1 : 0;
    }
}
