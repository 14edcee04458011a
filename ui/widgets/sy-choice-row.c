/* SPDX-License-Identifier: MIT */
#include "sy-choice-row.h"

#include "sy-i18n.h"

#include <string.h>

struct _SyChoiceRow
{
  GtkBox parent_instance;

  const SyField *field;
  SyFactFrame frame;
  GtkWidget *drop_down;
  char *text; /* the id of what is chosen; kept as it came when it is none of the choices */
  gulong selected_handler;
};

static void sy_choice_row_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyChoiceRow, sy_choice_row, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_choice_row_fact_init))

static const char *const bool_ids[] = { "true", "false" };

/* What line @i after the first stands for; NULL past the end. */
static const char *
id_at (const SyField *field, guint i)
{
  if (field->type == SY_MEMBER_BOOL)
    return i < G_N_ELEMENTS (bool_ids) ? bool_ids[i] : NULL;
  return i < field->n_choices ? field->choices[i].id : NULL;
}

static void
selected_cb (GtkDropDown *drop_down, GParamSpec *pspec G_GNUC_UNUSED, SyChoiceRow *row)
{
  guint selected = gtk_drop_down_get_selected (drop_down);
  const char *id = selected == 0 || selected == GTK_INVALID_LIST_POSITION
                       ? ""
                       : id_at (row->field, selected - 1);

  if (strcmp (row->text, id) == 0)
    return;
  g_free (row->text);
  row->text = g_strdup (id);
  sy_fact_edited (SY_FACT (row));
}

static const char *
get_text (SyFact *fact)
{
  return SY_CHOICE_ROW (fact)->text;
}

static void
set_text (SyFact *fact, const char *text)
{
  SyChoiceRow *row = SY_CHOICE_ROW (fact);
  guint selected = 0;

  g_free (row->text);
  row->text = g_strdup (text);
  for (guint i = 0; id_at (row->field, i) != NULL; i++)
    if (strcmp (id_at (row->field, i), text) == 0)
      selected = i + 1;
  g_signal_handler_block (row->drop_down, row->selected_handler);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row->drop_down), selected);
  g_signal_handler_unblock (row->drop_down, row->selected_handler);
}

static void
set_note (SyFact *fact, const char *words, const char *aid)
{
  SyChoiceRow *row = SY_CHOICE_ROW (fact);
  g_autofree char *absent = NULL;

  if (row->field->type == SY_MEMBER_CHOICE)
    for (gsize i = 0; i < row->field->n_choices; i++)
      if (strcmp (row->field->choices[i].id, row->text) == 0 && row->field->choices[i].help != NULL)
        aid = sy_translate (row->field->choices[i].help);
  if (aid == NULL && row->text[0] == '\0' && row->field->default_text != NULL)
    aid = absent = g_strdup_printf (_("not chosen: %s"), sy_translate (row->field->default_text));
  sy_fact_frame_note (&row->frame, row->drop_down, words, aid);
  gtk_widget_set_visible (row->frame.note, words != NULL || aid != NULL);
}

static void
set_name (SyFact *fact, const char *name, SyUnits units G_GNUC_UNUSED)
{
  GtkWidget *drop_down = SY_CHOICE_ROW (fact)->drop_down;

  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  /* The button inside is what takes the focus. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (drop_down)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
get_field (SyFact *fact)
{
  return SY_CHOICE_ROW (fact)->drop_down;
}

static void
sy_choice_row_fact_init (SyFactInterface *iface)
{
  iface->get_text = get_text;
  iface->set_text = set_text;
  iface->set_note = set_note;
  iface->set_name = set_name;
  iface->get_field = get_field;
}

static void
sy_choice_row_finalize (GObject *object)
{
  g_free (SY_CHOICE_ROW (object)->text);
  G_OBJECT_CLASS (sy_choice_row_parent_class)->finalize (object);
}

static void
sy_choice_row_class_init (SyChoiceRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_choice_row_finalize;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-choice");
}

static void
sy_choice_row_init (SyChoiceRow *row)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (row), GTK_ORIENTATION_VERTICAL);
  row->text = g_strdup ("");
}

static void
setup_whole_cb (GtkSignalListItemFactory *factory G_GNUC_UNUSED, GtkListItem *item,
                gpointer user_data G_GNUC_UNUSED)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_item_set_child (item, label);
}

static void
setup_short_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer user_data)
{
  setup_whole_cb (factory, item, user_data);
  gtk_label_set_ellipsize (GTK_LABEL (gtk_list_item_get_child (item)), PANGO_ELLIPSIZE_END);
}

static void
bind_label_cb (GtkSignalListItemFactory *factory G_GNUC_UNUSED, GtkListItem *item,
               gpointer user_data G_GNUC_UNUSED)
{
  GtkStringObject *string = gtk_list_item_get_item (item);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (string));
}

/* The drop-down's list grows with its lines; its button must not, so that a long choice is cut with dots in a narrow
   column. */
static GtkListItemFactory *
new_factory (GCallback setup)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", setup, NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_label_cb), NULL);
  return factory;
}

GtkWidget *
sy_choice_row_new (const SyField *field)
{
  SyChoiceRow *row = g_object_new (SY_TYPE_CHOICE_ROW, NULL);
  g_autoptr (GtkStringList) lines = gtk_string_list_new (NULL);
  g_autoptr (GtkListItemFactory) factory = new_factory (G_CALLBACK (setup_short_cb));
  g_autoptr (GtkListItemFactory) list_factory = new_factory (G_CALLBACK (setup_whole_cb));

  row->field = field;
  sy_fact_frame_begin (&row->frame, GTK_BOX (row), field);
  gtk_string_list_append (lines, _("choose…"));
  if (field->type == SY_MEMBER_BOOL)
    {
      gtk_string_list_append (lines, _("Yes"));
      gtk_string_list_append (lines, _("No"));
    }
  for (gsize i = 0; i < field->n_choices; i++)
    gtk_string_list_append (lines, sy_translate (field->choices[i].label));
  row->drop_down = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&lines)), NULL);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (row->drop_down), factory);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (row->drop_down), list_factory);
  row->selected_handler
      = g_signal_connect (row->drop_down, "notify::selected", G_CALLBACK (selected_cb), row);
  gtk_box_append (GTK_BOX (row), row->drop_down);
  sy_fact_frame_end (&row->frame, GTK_BOX (row));
  set_name (SY_FACT (row), sy_translate (field->label), SY_UNITS_METRIC);
  if (field->help != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (row->drop_down),
                                    GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sy_translate (field->help),
                                    -1);
  set_note (SY_FACT (row), NULL, NULL);
  return GTK_WIDGET (row);
}
