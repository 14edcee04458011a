/* SPDX-License-Identifier: MIT */
#include "sy-vector-row.h"

#include "sy-name.h"
#include "sy-quantity-entry.h"

#define N_COORDINATES 3

struct _SyVectorRow
{
  GtkBox parent_instance;

  SyFactFrame frame; /* the caption; each entry has its note */
  GtkWidget *entries[N_COORDINATES];
  int n_entries;
};

static void sy_vector_row_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyVectorRow, sy_vector_row, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_vector_row_fact_init))

static GtkWidget *
get_field (SyFact *fact)
{
  return sy_fact_get_field (SY_FACT (SY_VECTOR_ROW (fact)->entries[0]));
}

static void
bind (SyFact *fact, SyForm *form, const char *path)
{
  SyVectorRow *row = SY_VECTOR_ROW (fact);
  g_autofree char *name = sy_form_dup_name (form, path, FALSE);

  sy_name (GTK_WIDGET (row), name);
  for (int i = 0; i < row->n_entries; i++)
    {
      g_autofree char *at = g_strdup_printf ("%s[%d]", path, i);

      sy_fact_bind (SY_FACT (row->entries[i]), form, at);
    }
}

static void
sy_vector_row_fact_init (SyFactInterface *iface)
{
  iface->get_field = get_field;
  iface->bind = bind;
}

static void
sy_vector_row_class_init (SyVectorRowClass *class)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-vector");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_vector_row_init (SyVectorRow *row)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (row), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
sy_vector_row_new (const SyField *field)
{
  static const char *const letters[N_COORDINATES] = { "x", "y", "z" };
  SyVectorRow *row = g_object_new (SY_TYPE_VECTOR_ROW, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  sy_fact_frame_begin (&row->frame, GTK_BOX (row), field);
  gtk_box_set_homogeneous (GTK_BOX (box), TRUE);
  row->n_entries = sy_field_most_coordinates (field);
  for (int i = 0; i < row->n_entries; i++)
    {
      row->entries[i] = sy_quantity_entry_new (field);
      sy_quantity_entry_set_letter (SY_QUANTITY_ENTRY (row->entries[i]), letters[i]);
      gtk_box_append (GTK_BOX (box), row->entries[i]);
    }
  gtk_box_append (GTK_BOX (row), box);
  return GTK_WIDGET (row);
}
