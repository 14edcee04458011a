/* SPDX-License-Identifier: MIT */
#include "sy-quantity-entry.h"

#include "sy-i18n.h"

#include <math.h>
#include <string.h>

struct _SyQuantityEntry
{
  GtkBox parent_instance;

  const SyField *field;
  SyUnits units;
  SyFactFrame frame;
  GtkWidget *entry;
  GtkWidget *unit;
  gulong changed_handler;
};

static void sy_quantity_entry_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyQuantityEntry, sy_quantity_entry, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_quantity_entry_fact_init))

/* What one press of an arrow key changes, in the unit as written. */
static double
step_of (SyKind kind)
{
  switch (kind)
    {
    case SY_KIND_MASS:
    case SY_KIND_FREQUENCY:
      return 0.5;
    case SY_KIND_ANGLE:
    case SY_KIND_MINUTES:
      return 5.0;
    case SY_KIND_RATIO:
      return 0.1;
    case SY_KIND_SLOPE:
    case SY_KIND_FORCE:
      return 0.5;
    case SY_KIND_REACH:
    case SY_KIND_COUNT:
    case SY_KIND_PERCENT:
    case SY_KIND_LENGTH:
    case SY_KIND_HAND_FORCE:
    case SY_KIND_DENSITY:
    case SY_KIND_AREA:
    case SY_KIND_TEMPERATURE:
    case SY_KIND_STIFFNESS:
    case SY_KIND_DATE:
    case SY_KIND_DISTANCE:
    case SY_KIND_MONEY:
      return 1.0;
    }
  g_return_val_if_reached (1.0);
}

gboolean
sy_quantity_entry_step (SyQuantityEntry *entry, int direction)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry->entry));
  gboolean comma = strchr (text, ',') != NULL;
  double bare, value;
  gsize used = 0;
  char number[SY_NUMBER_TEXT_MAX];
  g_autofree char *next = NULL;

  g_return_val_if_fail (SY_IS_QUANTITY_ENTRY (entry), FALSE);
  if (sy_quantity_entry_get_value (entry, &value) != SY_TEXT_OK
      || sy_number_parse (text, strlen (text), &bare, &used) != SY_TEXT_OK)
    return FALSE;
  bare += direction * step_of (entry->field->kind);
  /* A step must not show the noise of binary fractions. */
  bare = round (bare * 1e6) / 1e6;
  sy_number_print (bare, number);
  if (comma)
    for (char *p = number; *p != '\0'; p++)
      if (*p == '.')
        *p = ',';
  next = g_strconcat (number, text + used, NULL);
  if (sy_quantity_parse (next, strlen (next), entry->field->kind, entry->units, false, &value, NULL)
          != SY_TEXT_OK
      || !sy_field_in_range (entry->field, entry->units, value))
    return FALSE;
  gtk_editable_set_text (GTK_EDITABLE (entry->entry), next);
  gtk_editable_set_position (GTK_EDITABLE (entry->entry), -1);
  return TRUE;
}

static void
changed_cb (GtkEditable *editable G_GNUC_UNUSED, SyFact *fact)
{
  sy_fact_edited (fact);
}

static gboolean
key_cb (GtkEventControllerKey *controller G_GNUC_UNUSED, guint key, guint code G_GNUC_UNUSED,
        GdkModifierType state, SyQuantityEntry *entry)
{
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Up || key == GDK_KEY_KP_Up)
    return sy_quantity_entry_step (entry, 1);
  if (key == GDK_KEY_Down || key == GDK_KEY_KP_Down)
    return sy_quantity_entry_step (entry, -1);
  return GDK_EVENT_PROPAGATE;
}

static const char *
get_text (SyFact *fact)
{
  return gtk_editable_get_text (GTK_EDITABLE (SY_QUANTITY_ENTRY (fact)->entry));
}

static void
set_text (SyFact *fact, const char *text)
{
  SyQuantityEntry *entry = SY_QUANTITY_ENTRY (fact);

  g_signal_handler_block (entry->entry, entry->changed_handler);
  gtk_editable_set_text (GTK_EDITABLE (entry->entry), text);
  g_signal_handler_unblock (entry->entry, entry->changed_handler);
}

static void
set_note (SyFact *fact, const char *words, const char *aid)
{
  SyQuantityEntry *entry = SY_QUANTITY_ENTRY (fact);
  const char *idle = entry->field->default_text;
  g_autofree char *absent = NULL;

  if (aid == NULL && idle != NULL && get_text (fact)[0] == '\0')
    aid = absent = g_strdup_printf (_("left empty: %s"), sy_translate (idle));
  sy_fact_frame_note (&entry->frame, entry->entry, words, aid);
}

static void
set_name (SyFact *fact, const char *name, SyUnits units)
{
  SyQuantityEntry *entry = SY_QUANTITY_ENTRY (fact);

  entry->units = units;
  gtk_label_set_text (GTK_LABEL (entry->unit), sy_words_unit (entry->field->kind, units));
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
}

static GtkWidget *
get_field (SyFact *fact)
{
  return SY_QUANTITY_ENTRY (fact)->entry;
}

static void
sy_quantity_entry_fact_init (SyFactInterface *iface)
{
  iface->get_text = get_text;
  iface->set_text = set_text;
  iface->set_note = set_note;
  iface->set_name = set_name;
  iface->get_field = get_field;
}

static void
sy_quantity_entry_class_init (SyQuantityEntryClass *class)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-quantity");
}

static void
sy_quantity_entry_init (SyQuantityEntry *entry)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (entry), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
sy_quantity_entry_new (const SyField *field)
{
  SyQuantityEntry *entry = g_object_new (SY_TYPE_QUANTITY_ENTRY, NULL);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkEventController *keys = gtk_event_controller_key_new ();

  entry->field = field;
  sy_fact_frame_begin (&entry->frame, GTK_BOX (entry), field);
  entry->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (entry->entry), 8);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry->entry), 12);
  /* Undo is the form's: one history for all facts. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (entry->entry), FALSE);
  gtk_widget_set_hexpand (entry->entry, TRUE);
  gtk_entry_set_input_purpose (GTK_ENTRY (entry->entry), GTK_INPUT_PURPOSE_FREE_FORM);
  gtk_widget_add_css_class (entry->entry, "sy-figure");
  entry->changed_handler
      = g_signal_connect (entry->entry, "changed", G_CALLBACK (changed_cb), entry);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), entry);
  gtk_widget_add_controller (entry->entry, keys);
  entry->unit = gtk_label_new (NULL);
  gtk_label_set_width_chars (GTK_LABEL (entry->unit), 4);
  gtk_label_set_xalign (GTK_LABEL (entry->unit), 0);
  gtk_widget_add_css_class (entry->unit, "sy-unit");
  gtk_box_append (GTK_BOX (row), entry->entry);
  gtk_box_append (GTK_BOX (row), entry->unit);
  gtk_box_append (GTK_BOX (entry), row);
  sy_fact_frame_end (&entry->frame, GTK_BOX (entry));
  set_name (SY_FACT (entry), sy_translate (field->label), SY_UNITS_METRIC);
  if (field->help != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (entry->entry),
                                    GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sy_translate (field->help),
                                    -1);
  set_note (SY_FACT (entry), NULL, NULL);
  return GTK_WIDGET (entry);
}

SyTextStatus
sy_quantity_entry_get_value (SyQuantityEntry *entry, double *value)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry->entry));

  return sy_quantity_parse (text, strlen (text), entry->field->kind, entry->units, false, value, NULL);
}

void
sy_quantity_entry_set_letter (SyQuantityEntry *entry, const char *letter)
{
  GtkWidget *label = gtk_label_new (letter);

  g_return_if_fail (SY_IS_QUANTITY_ENTRY (entry));
  gtk_widget_add_css_class (label, "sy-unit");
  gtk_box_prepend (GTK_BOX (gtk_widget_get_parent (entry->entry)), label);
  gtk_widget_set_visible (entry->frame.caption, FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry->entry), 6);
}
