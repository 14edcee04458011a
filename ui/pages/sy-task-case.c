/* SPDX-License-Identifier: MIT */
#include "sy-task-case.h"

#include "sy-case-table.h"
#include "sy-i18n.h"
#include "sy-task-parts.h"

static GtkWidget *
new_cell (const char *text, gboolean strong, gboolean first)
{
  GtkWidget *label = sy_part_label (text, strong ? "sy-strong" : NULL);

  gtk_label_set_xalign (GTK_LABEL (label), first ? 0.0F : 1.0F);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0F);
  gtk_widget_set_hexpand (label, TRUE);
  return label;
}

static void
add_line (GtkGrid *grid, int line, const char *title, char **cells, gboolean heavy, int winner)
{
  gtk_grid_attach (grid, new_cell (title, heavy, TRUE), 0, line, 1, 1);
  for (int c = 0; cells[c] != NULL; c++)
    gtk_grid_attach (grid, new_cell (cells[c], heavy || c == winner, FALSE), c + 1, line, 1, 1);
}

static void
add_swings (GtkWidget *box, const SyCaseTable *table)
{
  GtkWidget *grid = gtk_grid_new ();
  char *heads[] = { (char *) _("With it low"), (char *) _("With it high"), NULL };

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  add_line (GTK_GRID (grid), 0, _("Net present value with one figure off"), heads, TRUE, -1);
  for (guint i = 0; i < table->swings->len; i++)
    {
      const SyCaseSwing *swing = g_ptr_array_index (table->swings, i);
      char *cells[] = { swing->low, swing->high, NULL };

      add_line (GTK_GRID (grid), (int) i + 1, swing->input, cells, FALSE, -1);
    }
  gtk_box_append (GTK_BOX (box), grid);
}

static void
update (GtkWidget *box, SyForm *form)
{
  SyAssessment *assessment = sy_form_get_assessment (form);
  g_autoptr (SyCaseTable) table = NULL;
  GtkWidget *grid;

  if (!sy_part_begin_tab (box, form))
    return;
  table = sy_case_table_new (assessment->findings, sy_translate);
  grid = gtk_grid_new ();
  gtk_widget_set_name (grid, "side-by-side");
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  add_line (GTK_GRID (grid), 0, "", table->heads, TRUE, -1);
  for (guint i = 0; i < table->rows->len; i++)
    {
      const SyCaseRow *row = g_ptr_array_index (table->rows, i);

      add_line (GTK_GRID (grid), (int) i + 1, row->title, row->cells, row->heavy, table->winner);
    }
  gtk_box_append (GTK_BOX (box), grid);
  if (*table->depends != '\0')
    gtk_box_append (GTK_BOX (box), sy_part_label (table->depends, "sy-strong"));
  if (table->swings->len > 0)
    add_swings (box, table);
  sy_part_end_tab (box);
}

GtkWidget *
sy_task_case_new (SyForm *form)
{
  GtkWidget *box = sy_part_tab ();

  sy_part_follow (box, form, update);
  return box;
}
