/* SPDX-License-Identifier: MIT */
#include "sy-list-rows.h"

#include "sy-i18n.h"
#include "sy-name.h"

struct _SyListRows
{
  GtkBox parent_instance;

  SyForm *form;
  char *path;
  const SyField *field;
  GtkWidget *rows;
  GtkWidget *add;
  guint shown; /* rows that stand */
};

G_DEFINE_FINAL_TYPE (SyListRows, sy_list_rows, GTK_TYPE_BOX)

static void
remove_cb (GtkButton *button, SyListRows *self)
{
  guint item = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "sy-item"));

  /* The row with this button may go away with it: the keyboard must not be left nowhere. */
  gtk_widget_grab_focus (self->add);
  if (item < sy_form_list_count (self->form, self->path))
    sy_form_list_remove (self->form, self->path, item);
}

static GtkWidget *
new_row (SyListRows *self, guint item)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *name = NULL;

  for (gsize i = 0; i < self->field->n_members; i++)
    {
      g_autofree char *path
          = g_strdup_printf ("%s[%u].%s", self->path, item, self->field->members[i].name);
      GtkWidget *fact = sy_fact_new_for_field (&self->field->members[i]);

      sy_fact_bind (SY_FACT (fact), self->form, path);
      gtk_widget_set_hexpand (fact, TRUE);
      gtk_box_append (GTK_BOX (row), fact);
    }
  /* Translators: takes away one row of a list; %u is its number. */
  name = g_strdup_printf (_("Take row %u away"), item + 1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_tooltip_text (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  g_object_set_data (G_OBJECT (button), "sy-item", GUINT_TO_POINTER (item));
  g_signal_connect (button, "clicked", G_CALLBACK (remove_cb), self);
  gtk_box_append (GTK_BOX (row), button);
  return row;
}

/* Rows are told apart by number only, so it is always the last that comes or goes; the texts follow the form. */
static void
follow_form (SyListRows *self)
{
  guint n = sy_form_list_count (self->form, self->path);

  for (; self->shown < n; self->shown++)
    gtk_box_append (GTK_BOX (self->rows), new_row (self, self->shown));
  for (; self->shown > n; self->shown--)
    gtk_box_remove (GTK_BOX (self->rows), gtk_widget_get_last_child (self->rows));
  gtk_widget_set_sensitive (self->add, n < self->field->max_items);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyListRows *self)
{
  follow_form (self);
}

static void
add_cb (GtkButton *button G_GNUC_UNUSED, SyListRows *self)
{
  sy_form_list_add (self->form, self->path);
  gtk_widget_child_focus (gtk_widget_get_last_child (self->rows), GTK_DIR_TAB_FORWARD);
}

static void
sy_list_rows_dispose (GObject *object)
{
  SyListRows *self = SY_LIST_ROWS (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (sy_list_rows_parent_class)->dispose (object);
}

static void
sy_list_rows_class_init (SyListRowsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_list_rows_dispose;
}

static void
sy_list_rows_init (SyListRows *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
}

GtkWidget *
sy_list_rows_new (SyForm *form, const char *path)
{
  SyListRows *self = g_object_new (SY_TYPE_LIST_ROWS, NULL);

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  self->field = sy_form_find_field (form, path);
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self), self->rows);
  self->add = sy_button_new (_("_Add a row"), NULL);
  gtk_widget_set_halign (self->add, GTK_ALIGN_START);
  gtk_widget_set_name (self->add, path);
  g_signal_connect (self->add, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_append (GTK_BOX (self), self->add);
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
  return GTK_WIDGET (self);
}
