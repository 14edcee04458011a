/* SPDX-License-Identifier: MIT */
#include "sy-fact.h"

#include "sy-choice-row.h"
#include "sy-i18n.h"
#include "sy-part-row.h"
#include "sy-quantity-entry.h"
#include "sy-set-row.h"
#include "sy-several-row.h"
#include "sy-text-row.h"
#include "sy-vector-row.h"

G_DEFINE_INTERFACE (SyFact, sy_fact, GTK_TYPE_WIDGET)

static void
sy_fact_default_init (SyFactInterface *iface)
{
  g_signal_new ("edited", G_TYPE_FROM_INTERFACE (iface), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 0);
}

const char *
sy_fact_get_text (SyFact *fact)
{
  SyFactInterface *iface = SY_FACT_GET_IFACE (fact);

  return iface->get_text != NULL ? iface->get_text (fact) : "";
}

void
sy_fact_set_text (SyFact *fact, const char *text)
{
  SyFactInterface *iface = SY_FACT_GET_IFACE (fact);

  if (iface->set_text != NULL)
    iface->set_text (fact, text);
}

void
sy_fact_set_note (SyFact *fact, const char *words, const char *aid)
{
  SyFactInterface *iface = SY_FACT_GET_IFACE (fact);

  if (iface->set_note != NULL)
    iface->set_note (fact, words, aid);
}

void
sy_fact_set_name (SyFact *fact, const char *name, SyUnits units)
{
  SyFactInterface *iface = SY_FACT_GET_IFACE (fact);

  if (iface->set_name != NULL)
    iface->set_name (fact, name, units);
}

GtkWidget *
sy_fact_get_field (SyFact *fact)
{
  return SY_FACT_GET_IFACE (fact)->get_field (fact);
}

void
sy_fact_edited (SyFact *fact)
{
  g_signal_emit_by_name (fact, "edited");
}

/* Binding */

typedef struct
{
  SyForm *form;
  char *path;
  /* What was said last: a form has thousands of facts, of which a change touches few. */
  char *text, *name, *words, *aid;
  SyUnits units;
} Binding;

static void
binding_free (gpointer data)
{
  Binding *binding = data;

  g_object_unref (binding->form);
  g_free (binding->path);
  g_free (binding->text);
  g_free (binding->name);
  g_free (binding->words);
  g_free (binding->aid);
  g_free (binding);
}

/* Keeps a copy of @new; whether it is another than before. */
static gboolean
differs (char **kept, const char *new)
{
  if (g_strcmp0 (*kept, new) == 0)
    return FALSE;
  g_free (*kept);
  *kept = g_strdup (new);
  return TRUE;
}

static Binding *
get_binding (SyFact *fact)
{
  return g_object_get_data (G_OBJECT (fact), "sy-binding");
}

/* The path of a list item that was taken away while its widget still stands says nothing any more. */
static void
follow_form (SyFact *fact)
{
  Binding *binding = get_binding (fact);
  const char *text = sy_form_get (binding->form, binding->path);
  const char *words = sy_form_get_problem (binding->form, binding->path);
  g_autofree char *aid = sy_form_dup_aid (binding->form, binding->path);
  g_autofree char *name = sy_form_dup_name (binding->form, binding->path, TRUE);
  SyUnits units = sy_form_get_units (binding->form);
  gboolean renamed, noted;

  gtk_widget_set_visible (GTK_WIDGET (fact), sy_form_applies (binding->form, binding->path));
  if (g_strcmp0 (sy_fact_get_text (fact), text) != 0)
    sy_fact_set_text (fact, text);
  if (sy_form_is_missing (binding->form, binding->path) && !sy_form_get_ask_missing (binding->form))
    words = NULL;
  renamed = differs (&binding->name, name) || binding->units != units;
  binding->units = units;
  if (renamed)
    sy_fact_set_name (fact, name, units);
  /* What is said where there is nothing to say can hang on whether there is a text. */
  noted = differs (&binding->text, text);
  noted |= differs (&binding->words, words);
  noted |= differs (&binding->aid, aid);
  if (noted || renamed)
    sy_fact_set_note (fact, words, aid);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyFact *fact)
{
  follow_form (fact);
}

static void
edited_cb (SyFact *fact, gpointer user_data G_GNUC_UNUSED)
{
  Binding *binding = get_binding (fact);

  sy_form_set (binding->form, binding->path, sy_fact_get_text (fact));
}

/* One that is made of others has only this to follow by itself. */
static void
show_where_it_applies_cb (SyForm *form, SyFact *fact)
{
  gtk_widget_set_visible (GTK_WIDGET (fact), sy_form_applies (form, get_binding (fact)->path));
}

void
sy_fact_bind (SyFact *fact, SyForm *form, const char *path)
{
  Binding *binding;

  g_return_if_fail (SY_IS_FACT (fact) && get_binding (fact) == NULL);
  binding = g_new0 (Binding, 1);
  binding->form = g_object_ref (form);
  binding->path = g_strdup (path);
  g_object_set_data_full (G_OBJECT (fact), "sy-binding", binding, binding_free);
  if (SY_FACT_GET_IFACE (fact)->bind != NULL)
    {
      SY_FACT_GET_IFACE (fact)->bind (fact, form, path);
      if (sy_form_may_not_apply (form, path))
        {
          g_signal_connect_object (form, "changed", G_CALLBACK (show_where_it_applies_cb), fact, 0);
          show_where_it_applies_cb (form, fact);
        }
      return;
    }
  gtk_widget_set_name (sy_fact_get_field (fact), path);
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), fact, 0);
  g_signal_connect (fact, "edited", G_CALLBACK (edited_cb), NULL);
  follow_form (fact);
}

const char *
sy_fact_get_path (SyFact *fact)
{
  Binding *binding = get_binding (fact);

  return binding != NULL ? binding->path : NULL;
}

GtkWidget *
sy_fact_get_caption (SyFact *fact)
{
  /* sy_fact_frame_begin puts it first. */
  return gtk_widget_get_first_child (GTK_WIDGET (fact));
}

GtkWidget *
sy_fact_new_for_field (const SyField *field)
{
  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
      return sy_quantity_entry_new (field);
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_BOOL:
      return sy_choice_row_new (field);
    case SY_MEMBER_SET:
      return sy_set_row_new (field);
    case SY_MEMBER_TEXT:
    case SY_MEMBER_DATE:
      return sy_text_row_new (field);
    case SY_MEMBER_VECTOR:
      return sy_vector_row_new (field);
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_TEXTS:
      return sy_several_row_new (field);
    case SY_MEMBER_FACTS:
      return sy_part_row_new (field);
    case SY_MEMBER_GROUP:
    case SY_MEMBER_LIST:
      break;
    }
  return NULL;
}

/* Caption and note */

void
sy_fact_frame_begin (SyFactFrame *frame, GtkBox *box, const SyField *field)
{
  g_autofree char *label = g_markup_escape_text (sy_translate (field->label), -1);
  g_autofree char *markup = field->symbol != NULL
                                ? g_strdup_printf ("<b>%s</b>  %s", field->symbol, label)
                                : g_strdup (label);

  frame->caption = gtk_label_new (NULL);
  gtk_label_set_markup (GTK_LABEL (frame->caption), markup);
  gtk_label_set_xalign (GTK_LABEL (frame->caption), 0);
  gtk_label_set_yalign (GTK_LABEL (frame->caption), 1);
  gtk_label_set_wrap (GTK_LABEL (frame->caption), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (frame->caption), GTK_NATURAL_WRAP_NONE);
  gtk_widget_add_css_class (frame->caption, "sy-caption");
  gtk_box_append (box, frame->caption);
  if (field->help != NULL)
    gtk_widget_set_tooltip_text (GTK_WIDGET (box), sy_translate (field->help));
}

void
sy_fact_frame_end (SyFactFrame *frame, GtkBox *box)
{
  frame->note = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (frame->note), 0);
  gtk_label_set_wrap (GTK_LABEL (frame->note), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (frame->note), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (frame->note, "sy-note");
  gtk_box_append (box, frame->note);
}

void
sy_fact_frame_note (SyFactFrame *frame, GtkWidget *field, const char *words, const char *aid)
{
  const char *shown = words != NULL ? words : aid != NULL ? aid : "";

  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (frame->note)), shown) != 0)
    gtk_label_set_text (GTK_LABEL (frame->note), shown);
  if (words != NULL)
    {
      gtk_widget_add_css_class (field, "sy-wrong");
      gtk_widget_add_css_class (frame->note, "sy-wrong-note");
      gtk_accessible_update_state (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_STATE_INVALID,
                                   GTK_ACCESSIBLE_INVALID_TRUE, -1);
      gtk_accessible_update_relation (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY,
                                      frame->note, NULL, -1);
    }
  else
    {
      gtk_widget_remove_css_class (field, "sy-wrong");
      gtk_widget_remove_css_class (frame->note, "sy-wrong-note");
      gtk_accessible_update_state (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_STATE_INVALID,
                                   GTK_ACCESSIBLE_INVALID_FALSE, -1);
      if (shown[0] != '\0')
        gtk_accessible_update_relation (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY,
                                        frame->note, NULL, -1);
      else
        gtk_accessible_reset_relation (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY);
    }
}
