/* SPDX-License-Identifier: MIT */
#include "sy-actions-columns.h"

#include "sy-due-row.h"
#include "sy-i18n.h"
#include "sy-scroll.h"

typedef enum
{
  BY_WHEN,
  BY_DAY,
  BY_WHAT,
  BY_ITEM,
  BY_WHO,
} Column;

/* Weight of the ink, no colour: what is over its day is filled, what comes this week is an outline. */
static const char *const marks[SY_N_DUE] = { "■", "□", "", "", "✓" };

/* New string. */
static char *
words_of (SyDueRow *row, Column column)
{
  switch (column)
    {
    case BY_WHEN:
      return sy_due_row_when_words (row);
    case BY_DAY:
      return g_strdup (*sy_due_row_get_due (row) != '\0' ? sy_due_row_get_due (row) : "–");
    case BY_WHAT:
      return sy_due_row_what (row);
    case BY_ITEM:
      return g_strdup (sy_due_row_get_item_name (row));
    case BY_WHO:
      if (sy_due_row_get_action (row) == NULL)
        return g_strdup ("–");
      return g_strdup (*sy_due_row_get_assigned (row) != '\0' ? sy_due_row_get_assigned (row) : _("Nobody yet"));
    }
  g_return_val_if_reached (NULL);
}

static char *
row_words (SyDueRow *row)
{
  g_autofree char *when = words_of (row, BY_WHEN), *what = words_of (row, BY_WHAT), *item = words_of (row, BY_ITEM);
  g_autofree char *who = words_of (row, BY_WHO);

  if (sy_due_row_get_action (row) == NULL)
    /* Translators: what is to be done, about which item, when. */
    return g_strdup_printf (_("%s: %s; %s"), item, what, when);
  /* Translators: what is to be done, about which item, when, by whom. */
  return g_strdup_printf (_("%s: %s; %s; %s"), item, what, when, who);
}

static GtkWidget *
new_text (gboolean is_day)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_single_line_mode (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  if (is_day)
    gtk_widget_add_css_class (label, "sy-figures");
  return label;
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  GtkWidget *label = new_text (GPOINTER_TO_INT (column) == BY_DAY), *child = label;

  (void) factory;
  if (GPOINTER_TO_INT (column) == BY_WHEN)
    {
      GtkWidget *mark = gtk_label_new (NULL);

      gtk_label_set_width_chars (GTK_LABEL (mark), 2);
      child = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 3);
      gtk_box_append (GTK_BOX (child), mark);
      gtk_box_append (GTK_BOX (child), label);
    }
  gtk_list_item_set_child (item, child);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  SyDueRow *row = gtk_list_item_get_item (item);
  GtkWidget *child = gtk_list_item_get_child (item), *label = child;
  const Column which = (Column) GPOINTER_TO_INT (column);
  const SyDueWhen when = sy_due_row_get_when (row);
  g_autofree char *words = words_of (row, which), *all = which == BY_WHEN ? row_words (row) : NULL;

  (void) factory;
  if (which == BY_WHEN)
    {
      label = gtk_widget_get_last_child (child);
      gtk_label_set_text (GTK_LABEL (gtk_widget_get_first_child (child)), marks[when]);
    }
  if (when == SY_DUE_OVERDUE && which == BY_WHEN)
    gtk_widget_add_css_class (label, "sy-strong");
  else
    gtk_widget_remove_css_class (label, "sy-strong");
  if (when == SY_DUE_CLOSED)
    gtk_widget_add_css_class (label, "sy-quiet");
  else
    gtk_widget_remove_css_class (label, "sy-quiet");
  gtk_label_set_text (GTK_LABEL (label), words);
  gtk_widget_set_tooltip_text (label, *words != '\0' ? words : NULL);
  sy_name_row_of (child, all, words);
}

void
sy_actions_columns_add (GtkColumnView *view)
{
  const struct
  {
    Column column;
    const char *title;
    int width; /* px; -1: a part of what is left */
  } columns[] = {
    { BY_WHEN, _("When"), 216 }, { BY_DAY, _("Day"), 110 }, { BY_WHAT, _("What"), -1 },
    { BY_ITEM, _("Item"), 240 }, { BY_WHO, _("Who"), 160 },
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
