/* SPDX-License-Identifier: MIT */
#include "sy-matrix-table.h"

#include <math.h>
#include <string.h>

struct _SyMatrixRow
{
  GObject parent_instance;
  GPtrArray *all;    /* that the cells are in                  */
  GHashTable *cells; /* id of the gear → SyMatrixCell, borrowed */
  const SyMatrixCell *first;
};

G_DEFINE_FINAL_TYPE (SyMatrixRow, sy_matrix_row, G_TYPE_OBJECT)

static void
sy_matrix_row_finalize (GObject *object)
{
  SyMatrixRow *self = SY_MATRIX_ROW (object);

  g_hash_table_unref (self->cells);
  g_ptr_array_unref (self->all);
  G_OBJECT_CLASS (sy_matrix_row_parent_class)->finalize (object);
}

static void
sy_matrix_row_class_init (SyMatrixRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_matrix_row_finalize;
}

static void
sy_matrix_row_init (SyMatrixRow *self)
{
  self->cells = g_hash_table_new (g_str_hash, g_str_equal);
}

const SyMatrixCell *
sy_matrix_row_first (SyMatrixRow *self)
{
  return self->first;
}

const SyMatrixCell *
sy_matrix_row_find (SyMatrixRow *self, const char *gear)
{
  return g_hash_table_lookup (self->cells, gear);
}

GPtrArray *
sy_matrix_rows (GPtrArray *cells)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GHashTable) by_die = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < cells->len; i++)
    {
      const SyMatrixCell *cell = cells->pdata[i];
      SyMatrixRow *row = g_hash_table_lookup (by_die, cell->die);

      if (row == NULL)
        {
          row = g_object_new (SY_TYPE_MATRIX_ROW, NULL);
          row->all = g_ptr_array_ref (cells);
          row->first = cell;
          g_ptr_array_add (rows, row);
          g_hash_table_insert (by_die, cell->die, row);
        }
      g_hash_table_insert (row->cells, cell->gear, (gpointer) cell);
    }
  return rows;
}

static int
kind_number (const char *id)
{
  for (int i = 0; i < SY_N_GEAR_KINDS; i++)
    if (strcmp (sy_gear_kind_choices[i].id, id) == 0)
      return i;
  return SY_N_GEAR_KINDS;
}

static int
compare_gear (gconstpointer a, gconstpointer b)
{
  const SyMatrixCell *one = *(const SyMatrixCell *const *) a, *other = *(const SyMatrixCell *const *) b;
  int order = kind_number (one->kind) - kind_number (other->kind);

  return order != 0 ? order : g_utf8_collate (one->gear_name, other->gear_name);
}

GPtrArray *
sy_matrix_columns (GPtrArray *cells)
{
  GPtrArray *columns = g_ptr_array_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < cells->len; i++)
    {
      SyMatrixCell *cell = cells->pdata[i];

      if (g_hash_table_add (seen, cell->gear))
        g_ptr_array_add (columns, cell);
    }
  g_ptr_array_sort (columns, compare_gear);
  return columns;
}

char *
sy_matrix_cell_percent (const SyMatrixCell *cell)
{
  if (isnan (cell->utilisation))
    return g_strdup ("");
  /* Never rounded down to 100 from above; the allowance is for what arithmetic itself leaves behind. */
  return g_strdup_printf ("%.0f %%", ceil (cell->utilisation * 100 - 1e-9));
}
