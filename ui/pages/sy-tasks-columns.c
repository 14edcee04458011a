/* SPDX-License-Identifier: MIT */
#include "sy-tasks-columns.h"

#include <math.h>

#include "sy-i18n.h"
#include "sy-scroll.h"
#include "sy-view.h"
#include "sy-words.h"

#define NONE "–"
#define SHAPE_SIZE 16

typedef struct
{
  SyTasksColumns *columns;
  SyTaskColumn column;
} ColumnOrder;

struct SyTasksColumns
{
  GtkColumnView *view;
  GtkColumnViewColumn *column[SY_N_TASK_COLUMNS];
  SyUnits units;
  gboolean descending[SY_N_TASK_COLUMNS];
  /* Two rows for each column that differ in nothing else: the view's sorter tells by them which way it is
     turned, as GTK 4.8 has no other way to ask. */
  SyTaskRow *low[SY_N_TASK_COLUMNS], *high[SY_N_TASK_COLUMNS];
  gulong changed;
};

/* Topics: words of a row */

static char *
index_words (const SyTask *task)
{
  if (isnan (task->index))
    return g_strdup (NONE);
  if (isinf (task->index))
    return g_strdup (_("no limit"));
  return sy_words_number (task->index, 2);
}

static char *
rank_words (const SyTask *task)
{
  if (isnan (task->rank))
    return g_strdup (NONE);
  if (isinf (task->rank))
    return g_strdup (_("no limit"));
  return sy_words_number (task->rank, task->rank < 10 ? 1 : 0);
}

static char *
mass_words (const SyTask *task, SyUnits units)
{
  if (isnan (task->mass_kg))
    return g_strdup (NONE);
  return sy_words_quantity (sy_unit_convert (SY_KIND_MASS, task->mass_kg, SY_UNITS_METRIC, units),
                            SY_KIND_MASS, units);
}

static char *
when_words (const SyTask *task)
{
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) claimed = g_date_time_new_from_iso8601 (task->when, utc);
  g_autoptr (GDateTime) here = claimed != NULL ? g_date_time_to_local (claimed) : NULL;
  g_autofree char *day = here != NULL ? g_date_time_format (here, "%Y-%m-%d") : g_strdup (task->when);

  /* Translators: when and by whom a task was last revised: "2026-11-25 · A. Marsh". */
  return g_strdup_printf (C_ ("last revised", "%s · %s"), day, task->by != NULL ? task->by : "");
}

static char *
rank_explained (const SyTask *task)
{
  g_autofree char *index = index_words (task);
  g_autofree char *persons = sy_words_number (task->persons, 0);
  g_autofree char *lifts = NULL;
  g_autofree char *rank = rank_words (task);

  if (isnan (task->index))
    return g_strdup (_("Not ranked: the index cannot be worked out from what is known."));
  if (isnan (task->lifts_per_day))
    return g_strdup (_("Not ranked: how many lifts a day is not known."));
  lifts = sy_words_number (task->lifts_per_day, 0);
  /* Translators: index × people × lifts a day = rank. */
  return g_strdup_printf (_("Index %s × people %s × lifts a day %s = %s"), index, persons, lifts, rank);
}

char *
sy_tasks_row_words (const SyTask *task)
{
  g_autofree char *index = index_words (task);

  if (isnan (task->index))
    /* Translators: name of a task and its verdict. */
    return g_strdup_printf (_("%s: %s"), task->name, sy_translate (sy_verdict_title (task->verdict)));
  /* Translators: name of a task, its verdict, symbol and value of its index: "LI 2.1". */
  return g_strdup_printf (_("%s: %s, %s %s"), task->name,
                          sy_translate (sy_verdict_title (task->verdict)), task->index_symbol, index);
}

static char *
cell_words (const SyTask *task, SyTaskColumn column, SyUnits units)
{
  switch (column)
    {
    case SY_BY_VERDICT:
      return g_strdup (sy_translate (sy_verdict_title (task->verdict)));
    case SY_BY_NAME:
      return g_strdup (task->name);
    case SY_BY_PLACE:
      return g_strdup (*task->place != '\0' ? task->place : NONE);
    case SY_BY_INDEX:
      return index_words (task);
    case SY_BY_RANK:
      return rank_words (task);
    case SY_BY_MASS:
      return mass_words (task, units);
    case SY_BY_WHEN:
      return when_words (task);
    }
  return NULL;
}

static char *
cell_tooltip (const SyTask *task, SyTaskColumn column)
{
  switch (column)
    {
    case SY_BY_VERDICT:
      return g_strdup (sy_translate (sy_verdict_meaning (task->verdict)));
    case SY_BY_NAME:
      if (task->clash != 0)
        return g_strdup_printf (_("%s\nTwo revisions were made from the same one: %" G_GINT64_FORMAT
                                  " and %" G_GINT64_FORMAT ". Both are kept."),
                                task->name, MIN (task->revision, task->clash),
                                MAX (task->revision, task->clash));
      return g_strdup (task->name);
    case SY_BY_PLACE:
      return *task->place != '\0' ? g_strdup (task->place) : NULL;
    case SY_BY_INDEX:
      return isinf (task->index) ? g_strdup (_("No limit holds: a fact is beyond what the method allows, "
                                               "so the recommended weight limit is zero."))
                                 : NULL;
    case SY_BY_RANK:
      return rank_explained (task);
    case SY_BY_MASS:
      return NULL;
    case SY_BY_WHEN:
      return g_strdup_printf (_("Revision %" G_GINT64_FORMAT ", %s, by %s: %s"), task->revision,
                              task->when, task->by, task->why);
    }
  return NULL;
}

/* Topics: cells */

static gboolean
is_figures (SyTaskColumn column)
{
  return column == SY_BY_INDEX || column == SY_BY_RANK || column == SY_BY_MASS;
}

static GtkWidget *
new_label (SyTaskColumn column)
{
  GtkWidget *label = gtk_label_new (NULL);
  gboolean figures = is_figures (column);

  gtk_label_set_xalign (GTK_LABEL (label), figures ? 1.0F : 0.0F);
  gtk_label_set_ellipsize (GTK_LABEL (label), figures ? PANGO_ELLIPSIZE_NONE : PANGO_ELLIPSIZE_END);
  if (figures || column == SY_BY_WHEN)
    gtk_widget_add_css_class (label, "sy-figures");
  if (column == SY_BY_WHEN || column == SY_BY_PLACE)
    gtk_widget_add_css_class (label, "sy-quiet");
  return label;
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, ColumnOrder *order)
{
  GtkWidget *label = new_label (order->column);

  (void) factory;
  if (order->column == SY_BY_VERDICT)
    {
      GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);

      gtk_box_append (GTK_BOX (box), sy_shape_new (SY_VERDICT_INCOMPLETE, SHAPE_SIZE));
      gtk_box_append (GTK_BOX (box), label);
      gtk_list_item_set_child (item, box);
    }
  else
    gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, ColumnOrder *order)
{
  const SyTask *task = sy_task_row_get_task (gtk_list_item_get_item (item));
  GtkWidget *child = gtk_list_item_get_child (item);
  GtkWidget *label = child;
  g_autofree char *words = cell_words (task, order->column, order->columns->units);
  g_autofree char *tooltip = cell_tooltip (task, order->column);
  g_autofree char *row = NULL;

  (void) factory;
  if (order->column == SY_BY_VERDICT)
    {
      label = gtk_widget_get_last_child (child);
      sy_shape_set (gtk_widget_get_first_child (child), task->verdict);
      row = sy_tasks_row_words (task);
    }
  if (order->column == SY_BY_NAME && task->clash != 0)
    {
      /* Translators: a task of which two revisions were made from the same one. */
      g_autofree char *clashing = g_strdup_printf (_("%s (two versions)"), words);

      gtk_label_set_text (GTK_LABEL (label), clashing);
    }
  else
    gtk_label_set_text (GTK_LABEL (label), words);
  gtk_widget_set_tooltip_text (child, tooltip);
  sy_name_row_of (child, row, words);
}

/* Topics: order */

static int
compare_cb (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const ColumnOrder *order = user_data;

  return sy_task_order ((SyTaskRow *) (gpointer) a, (SyTaskRow *) (gpointer) b, order->column,
                        order->columns->descending[order->column]);
}

static int
compare_rest_cb (gconstpointer a, gconstpointer b, gpointer user_data)
{
  (void) user_data;
  return sy_task_order_rest ((SyTaskRow *) (gpointer) a, (SyTaskRow *) (gpointer) b);
}

static SyTaskRow *
new_probe (SyTaskColumn column, gboolean high)
{
  g_autoptr (SyTask) task = sy_task_new ();
  gboolean is[SY_N_TASK_COLUMNS] = { FALSE };

  is[column] = high;
  task->verdict = is[SY_BY_VERDICT] ? SY_VERDICT_DO_NOT_LIFT : SY_VERDICT_BY_HAND;
  sy_event_set (&task->name, is[SY_BY_NAME] ? "b" : "a");
  sy_event_set (&task->place, is[SY_BY_PLACE] ? "b" : "a");
  sy_event_set (&task->when, is[SY_BY_WHEN] ? "2000-01-02T00:00:00Z" : "2000-01-01T00:00:00Z");
  task->index = is[SY_BY_INDEX] ? 2 : 1;
  task->rank = is[SY_BY_RANK] ? 2 : 1;
  task->mass_kg = is[SY_BY_MASS] ? 2 : 1;
  return sy_task_row_new (task);
}

static void
sorter_changed_cb (GtkSorter *sorter, GtkSorterChange change, SyTasksColumns *columns)
{
  (void) change;
  for (guint i = 0; i < SY_N_TASK_COLUMNS; i++)
    columns->descending[i] = gtk_sorter_compare (sorter, columns->low[i], columns->high[i])
                             == GTK_ORDERING_LARGER;
}

/* Topics: making */

static const char *const titles[SY_N_TASK_COLUMNS] = {
  [SY_BY_VERDICT] = N_ ("Verdict"),
  [SY_BY_NAME] = N_ ("Task"),
  [SY_BY_PLACE] = N_ ("Place"),
  [SY_BY_INDEX] = N_ ("Index"),
  [SY_BY_RANK] = N_ ("Rank"),
  [SY_BY_MASS] = N_ ("Heaviest"),
  [SY_BY_WHEN] = N_ ("Last revised"),
};

static const char *const heading_tooltips[SY_N_TASK_COLUMNS] = {
  [SY_BY_VERDICT] = N_ ("What the record says of the task under the policy in force then"),
  [SY_BY_NAME] = N_ ("Name of the task"),
  [SY_BY_PLACE] = N_ ("Where it is done"),
  [SY_BY_INDEX] = N_ ("Lifting index: the heaviest load against the recommended weight limit"),
  [SY_BY_RANK] = N_ ("Index × people × lifts a day: where a change would help most. Not a measure of harm."),
  [SY_BY_MASS] = N_ ("Mass of the heaviest load"),
  [SY_BY_WHEN] = N_ ("When the task was last revised, and by whom"),
};

static const int widths[SY_N_TASK_COLUMNS] = {
  [SY_BY_VERDICT] = 258, [SY_BY_NAME] = -1, [SY_BY_PLACE] = 150, [SY_BY_INDEX] = 78,
  [SY_BY_RANK] = 78,     [SY_BY_MASS] = 90, [SY_BY_WHEN] = 194,
};

static void
free_order (gpointer data, GClosure *closure)
{
  (void) closure;
  g_free (data);
}

static GtkColumnViewColumn *
add_column (SyTasksColumns *columns, SyTaskColumn column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  ColumnOrder *order = g_new (ColumnOrder, 1);
  GtkSorter *sorter;
  GtkColumnViewColumn *made;

  order->columns = columns;
  order->column = column;
  g_signal_connect_data (factory, "setup", G_CALLBACK (setup_cb), order, free_order, 0);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), order);
  made = gtk_column_view_column_new (sy_translate (titles[column]), factory);

  order = g_new (ColumnOrder, 1);
  order->columns = columns;
  order->column = column;
  sorter = GTK_SORTER (gtk_custom_sorter_new (compare_cb, order, g_free));
  gtk_column_view_column_set_sorter (made, sorter);
  g_object_unref (sorter);

  gtk_column_view_column_set_resizable (made, TRUE);
  gtk_column_view_column_set_expand (made, column == SY_BY_NAME);
  gtk_column_view_column_set_fixed_width (made, widths[column]);
  gtk_column_view_append_column (columns->view, made);
  return made;
}

SyTasksColumns *
sy_tasks_columns_new (GtkColumnView *view, SyUnits units)
{
  SyTasksColumns *columns = g_new0 (SyTasksColumns, 1);

  columns->view = g_object_ref (view);
  columns->units = units;
  for (guint i = 0; i < SY_N_TASK_COLUMNS; i++)
    {
      GtkWidget *heading;

      columns->low[i] = new_probe ((SyTaskColumn) i, FALSE);
      columns->high[i] = new_probe ((SyTaskColumn) i, TRUE);
      columns->column[i] = add_column (columns, (SyTaskColumn) i);
      heading = sy_column_heading (view, i);
      if (heading != NULL)
        gtk_widget_set_tooltip_text (heading, sy_translate (heading_tooltips[i]));
      if (is_figures ((SyTaskColumn) i))
        sy_align_heading_end (view, i);
    }
  columns->changed = g_signal_connect (gtk_column_view_get_sorter (view), "changed",
                                       G_CALLBACK (sorter_changed_cb), columns);
  return columns;
}

void
sy_tasks_columns_free (SyTasksColumns *columns)
{
  if (columns == NULL)
    return;
  g_signal_handler_disconnect (gtk_column_view_get_sorter (columns->view), columns->changed);
  for (guint i = 0; i < SY_N_TASK_COLUMNS; i++)
    {
      g_object_unref (columns->low[i]);
      g_object_unref (columns->high[i]);
      gtk_column_view_remove_column (columns->view, columns->column[i]);
      g_object_unref (columns->column[i]);
    }
  g_object_unref (columns->view);
  g_free (columns);
}

GtkSorter *
sy_tasks_columns_sorter (SyTasksColumns *columns)
{
  GtkMultiSorter *sorter = gtk_multi_sorter_new ();

  gtk_multi_sorter_append (sorter, g_object_ref (gtk_column_view_get_sorter (columns->view)));
  gtk_multi_sorter_append (sorter, GTK_SORTER (gtk_custom_sorter_new (compare_rest_cb, NULL, NULL)));
  return GTK_SORTER (sorter);
}

void
sy_tasks_columns_sort_by (SyTasksColumns *columns, SyTaskColumn column, GtkSortType direction)
{
  gtk_column_view_sort_by_column (columns->view, columns->column[column], direction);
}

gboolean
sy_tasks_columns_descending (SyTasksColumns *columns, SyTaskColumn column)
{
  return columns->descending[column];
}

void
sy_tasks_columns_set_units (SyTasksColumns *columns, SyUnits units)
{
  columns->units = units;
}
