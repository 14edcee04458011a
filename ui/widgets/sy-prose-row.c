/* SPDX-License-Identifier: MIT */
#include "sy-prose-row.h"

#include "sy-i18n.h"

struct _SyProseRow
{
  GtkBox parent_instance;

  SyFactFrame frame;
  GtkWidget *view;
  char *text; /* what is in the view */
  gulong changed_handler;
};

static void sy_prose_row_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyProseRow, sy_prose_row, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_prose_row_fact_init))

static GtkTextBuffer *
buffer_of (SyProseRow *row)
{
  return gtk_text_view_get_buffer (GTK_TEXT_VIEW (row->view));
}

static void
changed_cb (GtkTextBuffer *buffer, SyProseRow *row)
{
  g_free (row->text);
  g_object_get (buffer, "text", &row->text, NULL);
  sy_fact_edited (SY_FACT (row));
}

static const char *
get_text (SyFact *fact)
{
  return SY_PROSE_ROW (fact)->text;
}

static void
set_text (SyFact *fact, const char *text)
{
  SyProseRow *row = SY_PROSE_ROW (fact);
  GtkTextBuffer *buffer = buffer_of (row);

  g_signal_handler_block (buffer, row->changed_handler);
  gtk_text_buffer_set_text (buffer, text, -1);
  g_signal_handler_unblock (buffer, row->changed_handler);
  g_free (row->text);
  row->text = g_strdup (text);
}

static void
set_note (SyFact *fact, const char *words, const char *aid)
{
  SyProseRow *row = SY_PROSE_ROW (fact);

  sy_fact_frame_note (&row->frame, row->view, words, aid);
  gtk_widget_set_visible (row->frame.note, words != NULL || aid != NULL);
}

static void
set_name (SyFact *fact, const char *name, SyUnits units G_GNUC_UNUSED)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (SY_PROSE_ROW (fact)->view),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
get_field (SyFact *fact)
{
  return SY_PROSE_ROW (fact)->view;
}

static void
sy_prose_row_fact_init (SyFactInterface *iface)
{
  iface->get_text = get_text;
  iface->set_text = set_text;
  iface->set_note = set_note;
  iface->set_name = set_name;
  iface->get_field = get_field;
}

static void
sy_prose_row_finalize (GObject *object)
{
  g_free (SY_PROSE_ROW (object)->text);
  G_OBJECT_CLASS (sy_prose_row_parent_class)->finalize (object);
}

static void
sy_prose_row_class_init (SyProseRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_prose_row_finalize;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-prose-row");
}

static void
sy_prose_row_init (SyProseRow *row)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (row), GTK_ORIENTATION_VERTICAL);
  row->text = g_strdup ("");
}

GtkWidget *
sy_prose_row_new (const SyField *field)
{
  SyProseRow *row = g_object_new (SY_TYPE_PROSE_ROW, NULL);
  GtkWidget *lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  sy_fact_frame_begin (&row->frame, GTK_BOX (row), field);
  row->view = gtk_text_view_new ();
  /* Undo is the form's: one history for all facts. */
  gtk_text_buffer_set_enable_undo (buffer_of (row), FALSE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (row->view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (row->view), FALSE);
  gtk_widget_set_size_request (row->view, -1, 40);
  row->changed_handler
      = g_signal_connect (buffer_of (row), "changed", G_CALLBACK (changed_cb), row);
  gtk_widget_add_css_class (lines, "sy-lines");
  gtk_box_append (GTK_BOX (lines), row->view);
  gtk_box_append (GTK_BOX (row), lines);
  sy_fact_frame_end (&row->frame, GTK_BOX (row));
  set_name (SY_FACT (row), sy_translate (field->label), SY_UNITS_METRIC);
  if (field->help != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (row->view), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    sy_translate (field->help), -1);
  set_note (SY_FACT (row), NULL, NULL);
  return GTK_WIDGET (row);
}
