/* SPDX-License-Identifier: MIT */
#include "sy-part-row.h"

#include "sy-i18n.h"
#include "sy-verdict.h"

#include <string.h>

struct _SyPartRow
{
  GtkBox parent_instance;

  SyFactFrame frame;
  GtkWidget *state;   /* what stands there */
  GtkWidget *open;    /* GtkButton: facts are there     */
  GtkWidget *begin;   /* GtkMenuButton: there are none  */
  GtkWidget *remove;
  SyForm *form;       /* NULL: not bound */
  char *path;
  char *text;         /* that the state is of */
  SyUnits units;
};

static void sy_part_row_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyPartRow, sy_part_row, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_part_row_fact_init))

/* What the facts come to by their own method: its verdict, or what is wrong with them. */
static char *
state_words (SyPartRow *self)
{
  const SyMethod *method = sy_form_get_part_method (self->form, self->path);
  g_autoptr (SyForm) part = NULL;
  SyAssessment *assessment;

  if (method == NULL)
    return g_strdup (_("Not assessed yet."));
  part = sy_form_new_part (self->form, self->path, NULL);
  if (part == NULL)
    return g_strdup_printf (_("%s: cannot be read."), sy_translate (method->title));
  assessment = sy_form_get_assessment (part);
  if (assessment == NULL)
    return g_strdup_printf (P_ ("%s: %u fact to give or to mend.", "%s: %u facts to give or to mend.",
                                sy_form_count_problems (part)),
                            sy_translate (method->title), sy_form_count_problems (part));
  return g_strdup_printf (_("%s: %s."), sy_translate (method->title),
                          sy_translate (sy_verdict_title_for (method, assessment->findings->verdict)));
}

static void
follow_form (SyPartRow *self)
{
  const char *text = sy_form_get (self->form, self->path);
  const char *words = sy_form_get_problem (self->form, self->path);
  gboolean given = text[0] != '\0';

  if (self->text == NULL || strcmp (self->text, text) != 0 || self->units != sy_form_get_units (self->form))
    {
      g_autofree char *state = NULL;

      g_free (self->text);
      self->text = g_strdup (text);
      self->units = sy_form_get_units (self->form);
      state = state_words (self);
      gtk_label_set_text (GTK_LABEL (self->state), state);
      gtk_widget_set_visible (self->open, given);
      gtk_widget_set_visible (self->begin, !given);
      gtk_widget_set_visible (self->remove, given);
      gtk_widget_set_name (self->open, given ? self->path : "");
      gtk_widget_set_name (self->begin, given ? "" : self->path);
    }
  if (sy_form_is_missing (self->form, self->path) && !sy_form_get_ask_missing (self->form) && !given)
    words = NULL;
  sy_fact_frame_note (&self->frame, given ? self->open : self->begin, words, NULL);
  gtk_widget_set_visible (self->frame.note, words != NULL);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyPartRow *self)
{
  follow_form (self);
}

static void
open_cb (GtkButton *button G_GNUC_UNUSED, SyPartRow *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "task.open-part", "s", self->path);
}

static void
remove_cb (GtkButton *button G_GNUC_UNUSED, SyPartRow *self)
{
  sy_form_remove_part (self->form, self->path);
  gtk_widget_grab_focus (self->begin);
}

static void
begin_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  SyPartRow *self = SY_PART_ROW (widget);

  sy_form_begin_part (self->form, self->path, g_variant_get_string (parameter, NULL));
  gtk_widget_activate_action (widget, "task.open-part", "s", self->path);
}

/* Ways to move a load, and for what stands over them a change as a whole: what comes before the form's own method. */
static GMenuModel *
method_menu (const SyMethod *outer)
{
  GMenu *menu = g_menu_new ();

  for (gsize i = 0; i < sy_method_count () && sy_method_at (i) != outer; i++)
    {
      const SyMethod *method = sy_method_at (i);
      g_autoptr (GMenuItem) item = NULL;

      if (strcmp (method->item_kind, "task") != 0 && strcmp (method->item_kind, "changeover") != 0)
        continue;
      item = g_menu_item_new (sy_translate (method->title), NULL);
      g_menu_item_set_action_and_target (item, "part.begin", "s", method->id);
      g_menu_append_item (menu, item);
    }
  return G_MENU_MODEL (menu);
}

static void
name_button (GtkWidget *button, const char *fact, const char *words)
{
  /* Translators: the name of a button for assistive technology: a fact, then what the button does. */
  g_autofree char *name = g_strdup_printf (_("%s: %s"), fact, words);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
bind (SyFact *fact, SyForm *form, const char *path)
{
  SyPartRow *self = SY_PART_ROW (fact);
  g_autofree char *name = sy_form_dup_name (form, path, FALSE);
  g_autoptr (GMenuModel) menu = method_menu (sy_form_get_method (form));

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (self->begin), menu);
  name_button (self->open, name, _("Open"));
  name_button (self->begin, name, _("Assess"));
  name_button (self->remove, name, _("Remove"));
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
}

static GtkWidget *
get_field (SyFact *fact)
{
  SyPartRow *self = SY_PART_ROW (fact);

  return gtk_widget_get_visible (self->open) ? self->open : self->begin;
}

static void
sy_part_row_fact_init (SyFactInterface *iface)
{
  iface->get_field = get_field;
  iface->bind = bind;
}

static void
sy_part_row_dispose (GObject *object)
{
  SyPartRow *self = SY_PART_ROW (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->text, g_free);
  G_OBJECT_CLASS (sy_part_row_parent_class)->dispose (object);
}

static void
sy_part_row_class_init (SyPartRowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_part_row_dispose;
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (class), "part.begin", "s", begin_action);
}

static void
sy_part_row_init (SyPartRow *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
sy_part_row_new (const SyField *field)
{
  SyPartRow *self = g_object_new (SY_TYPE_PART_ROW, NULL);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  sy_fact_frame_begin (&self->frame, GTK_BOX (self), field);
  self->state = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0, "wrap", TRUE, "hexpand", TRUE, NULL);
  self->open = gtk_button_new_with_mnemonic (_("_Open…"));
  self->begin = gtk_menu_button_new ();
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->begin), _("Assess…"));
  self->remove = gtk_button_new_with_label (_("Remove"));
  gtk_widget_add_css_class (self->remove, "flat");
  g_signal_connect (self->open, "clicked", G_CALLBACK (open_cb), self);
  g_signal_connect (self->remove, "clicked", G_CALLBACK (remove_cb), self);
  gtk_box_append (GTK_BOX (line), self->state);
  gtk_box_append (GTK_BOX (line), self->open);
  gtk_box_append (GTK_BOX (line), self->begin);
  gtk_box_append (GTK_BOX (line), self->remove);
  gtk_box_append (GTK_BOX (self), line);
  sy_fact_frame_end (&self->frame, GTK_BOX (self));
  return GTK_WIDGET (self);
}
