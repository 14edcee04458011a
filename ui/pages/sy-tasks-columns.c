/* SPDX-License-Identifier: MIT */
#include "sy-tasks-columns.h"

#include "sy-registers.h"
#include "sy-scroll.h"
#include "sy-tasks-cells.h"
#include "sy-view.h"

#define SHAPE_SIZE 16

typedef struct
{
  SyTasksColumns *columns;
  SyTaskColumn column;
} ColumnOrder;

struct SyTasksColumns
{
  GtkColumnView *view;
  SyRegister which;
  GtkColumnViewColumn *column[SY_N_TASK_COLUMNS]; /* NULL: the list has no such */
  SyUnits units;
  guint units_serial; /* another after each change of the units */
  gboolean descending[SY_N_TASK_COLUMNS];
  /* Two rows for each column that differ in nothing else: the view's sorter tells by them which way it is
     turned, as GTK 4.8 has no other way to ask. */
  SyTaskRow *low[SY_N_TASK_COLUMNS], *high[SY_N_TASK_COLUMNS];
  SyTaskKey asked[SY_TASK_KEYS_MAX]; /* by which columns two rows were compared, in turn */
  guint n_asked;
  SyTaskView *rows;
  gulong changed;
};

/* What a cell shows. GTK binds all rows below one that comes or goes anew, for their numbers change; nearly all show then
   what they did. */
typedef struct
{
  SyTaskRow *row;
  guint serial, units_serial;
} Shown;
static GQuark shown_quark;

static void
free_shown (gpointer data)
{
  g_clear_object (&((Shown *) data)->row);
  g_free (data);
}

/* Topics: cells */

/* An inscription does not ask for room by what it says: a change of words measures nothing anew, and what is not in sight is not
   laid out. */
static GtkWidget *
new_label (SyTaskColumn column)
{
  GtkWidget *label = gtk_inscription_new (NULL);
  gboolean figures = sy_tasks_column_is_figures (column);

  gtk_inscription_set_xalign (GTK_INSCRIPTION (label), figures ? 1.0F : 0.0F);
  /* The sign for what was left out may be of another font and make the line higher: lines are set by their tops. */
  gtk_inscription_set_yalign (GTK_INSCRIPTION (label), 0);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (label), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (label), 4);
  gtk_inscription_set_nat_chars (GTK_INSCRIPTION (label), 8);
  gtk_widget_set_hexpand (label, TRUE);
  if (figures || column == SY_BY_WHEN || column == SY_BY_DAY || column == SY_BY_DUE || column == SY_BY_REVIEW)
    gtk_widget_add_css_class (label, "sy-figures");
  if (column == SY_BY_WHEN || column == SY_BY_DAY || column == SY_BY_PLACE || column == SY_BY_STORAGE)
    gtk_widget_add_css_class (label, "sy-quiet");
  return label;
}

/* Asked for only where the pointer rests. */
static gboolean
tooltip_cb (GtkWidget *child, int x, int y, gboolean by_key, GtkTooltip *tooltip, ColumnOrder *order)
{
  const Shown *shown = g_object_get_qdata (G_OBJECT (child), shown_quark);
  g_autofree char *words = shown->row != NULL ? sy_tasks_cell_tooltip (shown->row, order->column) : NULL;

  (void) x, (void) y, (void) by_key;
  gtk_tooltip_set_text (tooltip, words);
  return words != NULL;
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, ColumnOrder *order)
{
  GtkWidget *label = new_label (order->column), *child = label;

  (void) factory;
  if (order->column == SY_BY_VERDICT)
    {
      child = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
      gtk_box_append (GTK_BOX (child), sy_shape_new (SY_VERDICT_INCOMPLETE, SHAPE_SIZE));
      gtk_box_append (GTK_BOX (child), label);
    }
  g_object_set_qdata_full (G_OBJECT (child), shown_quark, g_new0 (Shown, 1), free_shown);
  gtk_widget_set_has_tooltip (child, TRUE);
  g_signal_connect (child, "query-tooltip", G_CALLBACK (tooltip_cb), order);
  gtk_list_item_set_child (item, child);
}

static void
set_class (GtkWidget *widget, const char *css_class, gboolean has)
{
  if (has)
    gtk_widget_add_css_class (widget, css_class);
  else
    gtk_widget_remove_css_class (widget, css_class);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, ColumnOrder *order)
{
  SyTaskRow *task = gtk_list_item_get_item (item);
  GtkWidget *child = gtk_list_item_get_child (item);
  GtkWidget *label = child;
  Shown *shown = g_object_get_qdata (G_OBJECT (child), shown_quark);
  const Shown now = { task, sy_task_row_get_serial (task), order->columns->units_serial };
  g_autofree char *words = NULL, *row = NULL;

  (void) factory;
  if (shown->row == now.row && shown->serial == now.serial && shown->units_serial == now.units_serial)
    return;
  g_set_object (&shown->row, now.row);
  shown->serial = now.serial;
  shown->units_serial = now.units_serial;
  words = sy_tasks_cell_words (task, order->column, order->columns->units);
  if (order->column == SY_BY_VERDICT)
    {
      label = gtk_widget_get_last_child (child);
      sy_shape_set (gtk_widget_get_first_child (child), sy_task_row_get_verdict (task));
      row = sy_tasks_row_words (task);
    }
  if (order->column == SY_BY_DUE)
    set_class (label, "sy-strong",
               sy_task_row_is_expired (task) && !sy_task_row_get_task (task)->detail.withdrawn);
  if (order->column == SY_BY_REVIEW)
    set_class (label, "sy-strong", sy_task_row_get_review_left (task) < 0);
  gtk_inscription_set_text (GTK_INSCRIPTION (label), words);
  sy_name_row_of (child, row, words);
}

/* Topics: order */

/* The sorts of the columns are never used for rows: GTK's sorter asks them about probes only. */
static int
compare_cb (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const ColumnOrder *order = user_data;
  SyTasksColumns *columns = order->columns;

  if (columns->n_asked < SY_TASK_KEYS_MAX)
    columns->asked[columns->n_asked++].column = order->column;
  return sy_task_order ((SyTaskRow *) (gpointer) a, (SyTaskRow *) (gpointer) b, order->column, FALSE);
}

static SyTaskRow *
new_probe (SyTaskColumn column, gboolean high)
{
  g_autoptr (SyTask) task = sy_task_new ();
  gboolean is[SY_N_TASK_COLUMNS] = { FALSE };
  SyItemFigures *figures = g_new0 (SyItemFigures, 1);
  SyTaskRow *row;

  is[column] = high;
  task->verdict = is[SY_BY_VERDICT] ? SY_VERDICT_DO_NOT_LIFT : SY_VERDICT_BY_HAND;
  sy_event_set (&task->name, is[SY_BY_NAME] ? "b" : "a");
  sy_event_set (&task->place, is[SY_BY_PLACE] ? "b" : "a");
  sy_event_set (&task->when, is[SY_BY_WHEN] || is[SY_BY_DAY] ? "2000-01-02T00:00:00Z" : "2000-01-01T00:00:00Z");
  task->index = is[SY_BY_INDEX] ? 2 : 1;
  task->rank = is[SY_BY_RANK] ? 2 : 1;
  task->mass_kg = is[SY_BY_MASS] ? 2 : 1;
  task->persons = is[SY_BY_PERSONS] ? 2 : 1;
  sy_event_set (&task->detail.machine, is[SY_BY_MACHINE] ? "b" : "a");
  sy_event_set (&task->detail.storage, is[SY_BY_STORAGE] ? "b" : "a");
  sy_event_set (&task->detail.identity, is[SY_BY_IDENTITY] ? "b" : "a");
  sy_event_set (&task->detail.gear_kind, is[SY_BY_GEAR] ? "b" : "a");
  task->detail.cg_mm[0] = is[SY_BY_BALANCE] ? 2 : 1;
  task->detail.wll_kg = is[SY_BY_WLL] ? 2 : 1;
  task->detail.withdrawn = is[SY_BY_USE];
  sy_event_set (&task->detail.condition, is[SY_BY_CONDITION] ? "worn" : "good");
  sy_event_set (&task->review_due, is[SY_BY_REVIEW] ? "2000-01-02" : "2000-01-01");
  sy_event_set (&task->valid_until, is[SY_BY_DUE] ? "2000-01-02" : "2000-01-01");
  row = sy_task_row_new (task);
  sy_task_row_set_today (row, 0);
  figures->stands_minutes = is[SY_BY_STANDS] ? 2 : 1;
  figures->payback_years = is[SY_BY_PAYBACK] ? 2 : 1;
  figures->npv = is[SY_BY_NPV] ? 2 : 1;
  figures->winner = g_strdup (is[SY_BY_WINNER] ? "b" : "a");
  figures->currency = g_strdup ("");
  sy_task_row_take_figures (row, figures);
  return row;
}

static void
sorter_changed_cb (GtkSorter *sorter, GtkSorterChange change, SyTasksColumns *columns)
{
  const SyRegisterPage *page = sy_register_page (columns->which);
  SyTaskKey keys[SY_TASK_KEYS_MAX];
  guint n_keys;

  (void) change;
  for (guint i = 0; i < page->n_columns; i++)
    {
      SyTaskColumn column = page->columns[i].column;

      columns->descending[column]
        = gtk_sorter_compare (sorter, columns->low[column], columns->high[column]) == GTK_ORDERING_LARGER;
    }
  /* Two rows without a difference are compared by every heading that was pressed, the last first. */
  columns->n_asked = 0;
  gtk_sorter_compare (sorter, columns->low[page->columns[0].column], columns->low[page->columns[1].column]);
  n_keys = columns->n_asked;
  for (guint i = 0; i < n_keys; i++)
    keys[i] = (SyTaskKey) { columns->asked[i].column, columns->descending[columns->asked[i].column] };
  if (columns->rows != NULL)
    sy_task_view_sort (columns->rows, keys, n_keys);
}

/* Topics: making */

static void
free_order (gpointer data, GClosure *closure)
{
  (void) closure;
  g_free (data);
}

static GtkColumnViewColumn *
add_column (SyTasksColumns *columns, SyTaskColumn column, int width)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  ColumnOrder *order = g_new (ColumnOrder, 1);
  GtkSorter *sorter;
  GtkColumnViewColumn *made;

  order->columns = columns;
  order->column = column;
  g_signal_connect_data (factory, "setup", G_CALLBACK (setup_cb), order, free_order, 0);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), order);
  made = gtk_column_view_column_new (sy_tasks_column_title (columns->which, column), factory);

  order = g_new (ColumnOrder, 1);
  order->columns = columns;
  order->column = column;
  sorter = GTK_SORTER (gtk_custom_sorter_new (compare_cb, order, g_free));
  gtk_column_view_column_set_sorter (made, sorter);
  g_object_unref (sorter);

  gtk_column_view_column_set_resizable (made, TRUE);
  gtk_column_view_column_set_expand (made, width < 0);
  gtk_column_view_column_set_fixed_width (made, width);
  gtk_column_view_append_column (columns->view, made);
  return made;
}

SyTasksColumns *
sy_tasks_columns_new (GtkColumnView *view, SyRegister which, SyUnits units)
{
  const SyRegisterPage *page = sy_register_page (which);
  SyTasksColumns *columns = g_new0 (SyTasksColumns, 1);

  shown_quark = g_quark_from_static_string ("sy-tasks-shown");
  columns->view = g_object_ref (view);
  columns->which = which;
  columns->units = units;
  for (guint i = 0; i < page->n_columns; i++)
    {
      SyTaskColumn column = page->columns[i].column;
      GtkWidget *heading;

      columns->low[column] = new_probe (column, FALSE);
      columns->high[column] = new_probe (column, TRUE);
      columns->column[column] = add_column (columns, column, page->columns[i].width);
      heading = sy_column_heading (view, i);
      if (heading != NULL)
        gtk_widget_set_tooltip_text (heading, sy_tasks_column_tooltip (which, column));
      if (sy_tasks_column_is_figures (column))
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
    if (columns->column[i] != NULL)
      {
        g_object_unref (columns->low[i]);
        g_object_unref (columns->high[i]);
        gtk_column_view_remove_column (columns->view, columns->column[i]);
        g_object_unref (columns->column[i]);
      }
  g_object_unref (columns->view);
  g_free (columns);
}

void
sy_tasks_columns_set_rows (SyTasksColumns *columns, SyTaskView *rows)
{
  columns->rows = rows;
  sorter_changed_cb (gtk_column_view_get_sorter (columns->view), GTK_SORTER_CHANGE_DIFFERENT, columns);
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
  columns->units_serial++;
}
