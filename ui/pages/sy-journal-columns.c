/* SPDX-License-Identifier: MIT */
#include "sy-journal-columns.h"

#include "sy-i18n.h"
#include "sy-journal-line.h"
#include "sy-scroll.h"

typedef enum
{
  BY_LINE,
  BY_WHEN,
  BY_WHO,
  BY_KIND,
  BY_WHAT,
  BY_WHY,
  BY_ITEM,
} Column;

/* Of one cell: the line it shows now, and how it hears of it. */
typedef struct
{
  SyJournalLine *line;
  gulong handler;
} Shown;

static void
free_shown (gpointer data)
{
  Shown *shown = data;

  if (shown->line != NULL)
    g_signal_handler_disconnect (shown->line, shown->handler);
  g_clear_object (&shown->line);
  g_free (shown);
}

/* New string. */
static char *
words_of (SyJournalLine *line, Column column)
{
  const SyJournalRow *row = sy_journal_line_get_row (line);

  if (column == BY_LINE)
    return g_strdup_printf ("%" G_GUINT64_FORMAT, sy_journal_line_get_number (line));
  if (row == NULL)
    return g_strdup ("");
  switch (column)
    {
    case BY_WHEN:
      return sy_journal_row_when (row);
    case BY_WHO:
      return sy_journal_row_who (row);
    case BY_KIND:
      return g_strdup (sy_journal_kind_words (row->kind));
    case BY_WHAT:
      return sy_journal_row_what (row);
    case BY_WHY:
      return g_strdup (row->why);
    case BY_ITEM:
      return g_strdup (*row->item != '\0' ? row->name : "");
    case BY_LINE:
      break;
    }
  g_return_val_if_reached (NULL);
}

/* The whole line, as assistive technology says it. New string. */
static char *
line_words (SyJournalLine *line)
{
  g_autofree char *number = words_of (line, BY_LINE), *when = words_of (line, BY_WHEN), *who = words_of (line, BY_WHO);
  g_autofree char *kind = words_of (line, BY_KIND), *what = words_of (line, BY_WHAT), *item = words_of (line, BY_ITEM);

  if (sy_journal_line_get_row (line) == NULL)
    return g_strdup_printf (_("Line %s"), number);
  if (*item == '\0')
    /* Translators: a line of the journal that is about no item: number, kind, who, when. */
    return g_strdup_printf (_("Line %s: %s; %s, %s"), number, kind, who, when);
  /* Translators: a line of the journal: number, item, kind, what, who, when. */
  return g_strdup_printf (_("Line %s: %s, %s, %s; %s, %s"), number, item, kind, what, who, when);
}

static void
show (GtkWidget *child, Column column)
{
  const Shown *shown = g_object_get_data (G_OBJECT (child), "sy-shown");
  const SyJournalRow *shown_row = sy_journal_line_get_row (shown->line);
  g_autofree char *words = words_of (shown->line, column);
  g_autofree char *row = column == BY_LINE ? line_words (shown->line) : NULL;

  gtk_label_set_text (GTK_LABEL (child), words);
  if (column == BY_WHEN && shown_row != NULL && shown_row->clock_set)
    gtk_widget_set_tooltip_text (child, _("The time was set; it did not come from the computer's clock."));
  else
    gtk_widget_set_tooltip_text (child, column == BY_LINE ? NULL : words);
  sy_name_row_of (child, row, *words != '\0' ? words : "–");
}

static Column
column_of (GtkWidget *child)
{
  return (Column) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (child), "sy-column"));
}

static void
row_cb (SyJournalLine *line, GParamSpec *pspec, GtkWidget *child)
{
  (void) line, (void) pspec;
  show (child, column_of (child));
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  GtkWidget *label = gtk_label_new (NULL);
  const Column which = (Column) GPOINTER_TO_INT (column);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), which == BY_LINE ? 1.0F : 0.0F);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_single_line_mode (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  if (which == BY_LINE || which == BY_WHEN)
    gtk_widget_add_css_class (label, "sy-figures");
  if (which == BY_WHEN || which == BY_WHY)
    gtk_widget_add_css_class (label, "sy-quiet");
  g_object_set_data (G_OBJECT (label), "sy-column", column);
  g_object_set_data_full (G_OBJECT (label), "sy-shown", g_new0 (Shown, 1), free_shown);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  GtkWidget *child = gtk_list_item_get_child (item);
  Shown *shown = g_object_get_data (G_OBJECT (child), "sy-shown");

  (void) factory;
  shown->line = g_object_ref (gtk_list_item_get_item (item));
  shown->handler = g_signal_connect (shown->line, "notify::row", G_CALLBACK (row_cb), child);
  show (child, (Column) GPOINTER_TO_INT (column));
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  Shown *shown = g_object_get_data (G_OBJECT (gtk_list_item_get_child (item)), "sy-shown");

  (void) factory, (void) column;
  g_signal_handler_disconnect (shown->line, shown->handler);
  g_clear_object (&shown->line);
}

void
sy_journal_columns_add (GtkColumnView *view)
{
  const struct
  {
    Column column;
    const char *title;
    int width; /* px; -1: a part of what is left */
  } columns[] = {
    { BY_LINE, _("Line"), 60 },   { BY_WHEN, _("When"), 184 }, { BY_WHO, _("Who"), 164 }, { BY_KIND, _("Kind"), 104 },
    { BY_WHAT, _("What"), -1 },   { BY_WHY, _("Why"), -1 },    { BY_ITEM, _("Item"), 160 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      gpointer which = GINT_TO_POINTER ((int) columns[i].column);
      g_autoptr (GtkColumnViewColumn) column = NULL;

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), which);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), which);
      g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), which);
      column = gtk_column_view_column_new (columns[i].title, factory);
      gtk_column_view_column_set_resizable (column, TRUE);
      if (columns[i].width > 0)
        gtk_column_view_column_set_fixed_width (column, columns[i].width);
      else
        gtk_column_view_column_set_expand (column, TRUE);
      gtk_column_view_append_column (view, column);
    }
  sy_align_heading_end (view, 0);
}
