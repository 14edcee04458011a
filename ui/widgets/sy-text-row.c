/* SPDX-License-Identifier: MIT */
#include "sy-text-row.h"

#include "sy-i18n.h"

struct _SyTextRow
{
  GtkBox parent_instance;

  SyFactFrame frame;
  GtkWidget *entry;
  gulong changed_handler;
};

static void sy_text_row_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyTextRow, sy_text_row, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_text_row_fact_init))

static void
changed_cb (GtkEditable *editable G_GNUC_UNUSED, SyFact *fact)
{
  sy_fact_edited (fact);
}

static const char *
get_text (SyFact *fact)
{
  return gtk_editable_get_text (GTK_EDITABLE (SY_TEXT_ROW (fact)->entry));
}

static void
set_text (SyFact *fact, const char *text)
{
  SyTextRow *row = SY_TEXT_ROW (fact);

  g_signal_handler_block (row->entry, row->changed_handler);
  gtk_editable_set_text (GTK_EDITABLE (row->entry), text);
  g_signal_handler_unblock (row->entry, row->changed_handler);
}

static void
set_note (SyFact *fact, const char *words, const char *aid)
{
  SyTextRow *row = SY_TEXT_ROW (fact);

  sy_fact_frame_note (&row->frame, row->entry, words, aid);
  gtk_widget_set_visible (row->frame.note, words != NULL || aid != NULL);
}

static void
set_name (SyFact *fact, const char *name, SyUnits units G_GNUC_UNUSED)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (SY_TEXT_ROW (fact)->entry),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
get_field (SyFact *fact)
{
  return SY_TEXT_ROW (fact)->entry;
}

static void
sy_text_row_fact_init (SyFactInterface *iface)
{
  iface->get_text = get_text;
  iface->set_text = set_text;
  iface->set_note = set_note;
  iface->set_name = set_name;
  iface->get_field = get_field;
}

static void
sy_text_row_class_init (SyTextRowClass *class)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-text");
}

static void
sy_text_row_init (SyTextRow *row)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (row), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
sy_text_row_new (const SyField *field)
{
  SyTextRow *row = g_object_new (SY_TYPE_TEXT_ROW, NULL);

  sy_fact_frame_begin (&row->frame, GTK_BOX (row), field);
  row->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (row->entry), 8);
  /* Undo is the form's: one history for all facts. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (row->entry), FALSE);
  gtk_widget_set_hexpand (row->entry, TRUE);
  if (field->type == SY_MEMBER_DATE)
    gtk_entry_set_placeholder_text (GTK_ENTRY (row->entry), _("year-month-day"));
  row->changed_handler = g_signal_connect (row->entry, "changed", G_CALLBACK (changed_cb), row);
  gtk_box_append (GTK_BOX (row), row->entry);
  sy_fact_frame_end (&row->frame, GTK_BOX (row));
  set_name (SY_FACT (row), sy_translate (field->label), SY_UNITS_METRIC);
  if (field->help != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (row->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    sy_translate (field->help), -1);
  set_note (SY_FACT (row), NULL, NULL);
  return GTK_WIDGET (row);
}
