/* SPDX-License-Identifier: MIT */
#include "sy-several-row.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-text-row.h"
#include "sy-vector-row.h"

/* So many texts stand side by side. */
#define TEXTS_ABREAST 2

struct _SySeveralRow
{
  GtkBox parent_instance;

  const SyField *field;
  SyForm *form; /* NULL: not bound yet */
  char *path;
  SyFactFrame frame; /* the caption; each row has its note */
  GtkWidget *rows;
  GtkWidget *add; /* NULL: all rows are there from the start */
  guint shown;    /* rows that stand */
};

static void sy_several_row_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SySeveralRow, sy_several_row, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_several_row_fact_init))

static void
remove_cb (GtkButton *button, SySeveralRow *self)
{
  guint item = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "sy-item"));

  /* The row with this button may go away with it: the keyboard must not be left nowhere. */
  gtk_widget_set_sensitive (self->add, TRUE);
  gtk_widget_grab_focus (self->add);
  if (item < sy_form_list_count (self->form, self->path))
    sy_form_list_remove (self->form, self->path, item);
}

static GtkWidget *
new_remove (SySeveralRow *self, guint item)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *list = sy_form_dup_name (self->form, self->path, FALSE);
  /* Translators: takes away one row; the first %s is of what, %u its number. */
  g_autofree char *name = g_strdup_printf (_("%s: take %u away"), list, item + 1);

  sy_name (button, name);
  gtk_widget_set_tooltip_text (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_widget_add_css_class (button, "flat");
  g_object_set_data (G_OBJECT (button), "sy-item", GUINT_TO_POINTER (item));
  g_signal_connect (button, "clicked", G_CALLBACK (remove_cb), self);
  return button;
}

static GtkWidget *
new_row (SySeveralRow *self, guint item)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gboolean texts = self->field->type == SY_MEMBER_TEXTS;
  GtkWidget *fact = texts ? sy_text_row_new (self->field) : sy_vector_row_new (self->field);
  g_autofree char *path = g_strdup_printf ("%s[%u]", self->path, item);

  gtk_widget_set_visible (sy_fact_get_caption (SY_FACT (fact)), FALSE);
  sy_fact_bind (SY_FACT (fact), self->form, path);
  gtk_widget_set_hexpand (fact, TRUE);
  gtk_box_append (GTK_BOX (row), fact);
  if (self->add != NULL)
    gtk_box_append (GTK_BOX (row), new_remove (self, item));
  return row;
}

static GtkWidget *
first_fact (SySeveralRow *self)
{
  GtkWidget *row = gtk_widget_get_first_child (self->rows);

  return row != NULL ? gtk_widget_get_first_child (row) : NULL;
}

/* As in a list of items it is always the last that comes or goes; the texts follow the form. */
static void
follow_form (SySeveralRow *self)
{
  guint n = self->add != NULL ? sy_form_list_count (self->form, self->path) : (guint) self->field->max_items;

  for (; self->shown < n; self->shown++)
    gtk_box_append (GTK_BOX (self->rows), new_row (self, self->shown));
  for (; self->shown > n; self->shown--)
    gtk_box_remove (GTK_BOX (self->rows), gtk_widget_get_last_child (self->rows));
  if (self->add == NULL)
    return;
  gtk_widget_set_visible (gtk_widget_get_last_child (gtk_widget_get_first_child (self->rows)), n > 1);
  gtk_widget_set_sensitive (self->add, n < self->field->max_items);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SySeveralRow *self)
{
  follow_form (self);
}

static void
add_cb (GtkButton *button G_GNUC_UNUSED, SySeveralRow *self)
{
  sy_form_list_add (self->form, self->path);
  gtk_widget_child_focus (gtk_widget_get_last_child (self->rows), GTK_DIR_TAB_FORWARD);
}

static GtkWidget *
get_field (SyFact *fact)
{
  GtkWidget *first = first_fact (SY_SEVERAL_ROW (fact));

  return first != NULL ? sy_fact_get_field (SY_FACT (first)) : NULL;
}

static void
bind (SyFact *fact, SyForm *form, const char *path)
{
  SySeveralRow *self = SY_SEVERAL_ROW (fact);
  g_autofree char *name = sy_form_dup_name (form, path, FALSE);

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  sy_name (GTK_WIDGET (self), name);
  if (self->add != NULL)
    {
      const char *visible = gtk_label_get_text (GTK_LABEL (gtk_widget_get_first_child (self->add)));
      g_autofree char *add_name = g_strdup_printf (_("%s: %s"), name, visible);

      sy_name (self->add, add_name);
      gtk_widget_set_name (self->add, path);
    }
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
}

static void
sy_several_row_fact_init (SyFactInterface *iface)
{
  iface->get_field = get_field;
  iface->bind = bind;
}

static void
sy_several_row_dispose (GObject *object)
{
  SySeveralRow *self = SY_SEVERAL_ROW (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (sy_several_row_parent_class)->dispose (object);
}

static void
sy_several_row_class_init (SySeveralRowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_several_row_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-several");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_several_row_init (SySeveralRow *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
sy_several_row_new (const SyField *field)
{
  SySeveralRow *self = g_object_new (SY_TYPE_SEVERAL_ROW, NULL);
  gboolean abreast = field->type == SY_MEMBER_TEXTS && field->max_items <= TEXTS_ABREAST;

  self->field = field;
  sy_fact_frame_begin (&self->frame, GTK_BOX (self), field);
  self->rows = gtk_box_new (abreast ? GTK_ORIENTATION_HORIZONTAL : GTK_ORIENTATION_VERTICAL, abreast ? 12 : 3);
  gtk_box_set_homogeneous (GTK_BOX (self->rows), abreast);
  gtk_box_append (GTK_BOX (self), self->rows);
  if (!abreast)
    {
      self->add = sy_button_new (_("Add another"), NULL);
      gtk_widget_set_halign (self->add, GTK_ALIGN_START);
      gtk_widget_add_css_class (self->add, "sy-link");
      g_signal_connect (self->add, "clicked", G_CALLBACK (add_cb), self);
      gtk_box_append (GTK_BOX (self), self->add);
    }
  return GTK_WIDGET (self);
}
