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

void
sy_improvements_columns_add (GtkColumnView *view)
{
  const struct
  {
    Column column;
    const char *title;
    int width; /* px; -1: a part of what is left */
  } columns[] = {
    { BY_SINCE, _("Since"), 114 },
    { BY_WHAT, _("What was done"), -1 },
    { BY_CHANGE, _("From → to"), -1 },
    { BY_IDEA, _("Thought of by"), 112 },
    { BY_INDEX, _("Index"), 80 },
    { BY_STOPPED, _("Machine stands"), 118 },
    { BY_PERSON_MINUTES, _("All people"), 104 },
    { BY_PERSONS, _("Persons"), 78 },
    { BY_REACHED, _("Verdict"), 104 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      gpointer which = GINT_TO_POINTER ((int) columns[i].column);
      g_autoptr (GtkColumnViewColumn) column = NULL;

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), which);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), which);
      column = gtk_column_view_column_new (columns[i].title, factory);
      gtk_column_view_column_set_resizable (column, TRUE);
      if (columns[i].width > 0)
        gtk_column_view_column_set_fixed_width (column, columns[i].width);
      else
        gtk_column_view_column_set_expand (column, TRUE);
      gtk_column_view_append_column (view, column);
    }
}

void
sy_improvements_columns_show (GtkColumnView *view, const SyQuarter *total)
{
  const struct
  {
    Column column;
    SyGain gain;
  } known[] = {
    { BY_INDEX, SY_GAIN_INDEX },
    { BY_STOPPED, SY_GAIN_STOPPED },
    { BY_PERSON_MINUTES, SY_GAIN_PERSON_MINUTES },
    { BY_PERSONS, SY_GAIN_PERSONS },
  };
  GListModel *columns = gtk_column_view_get_columns (view);

  for (gsize i = 0; i < G_N_ELEMENTS (known); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, known[i].column);

      gtk_column_view_column_set_visible (column, total->n_known[known[i].gain] > 0);
    }
}
