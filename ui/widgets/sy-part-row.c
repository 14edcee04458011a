/* SPDX-License-Identifier: MIT */
#include "sy-part-row.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-step-words.h"
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

static void
copy_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  SyPartRow *self = SY_PART_ROW (widget);

  sy_form_copy_part (self->form, self->path, g_variant_get_string (parameter, NULL));
  gtk_widget_grab_focus (self->open);
}

static void
take_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  SyPartRow *self = SY_PART_ROW (widget);

  gtk_widget_activate_action (widget, "task.take-part", "(ss)", self->path, g_variant_get_string (parameter, NULL));
}

/* Topics: what can be begun with */

static void
add_item (GMenu *menu, const char *label, const char *action, const char *target)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target (item, action, "s", target);
  g_menu_append_item (menu, item);
}

static void
add_section (GMenu *menu, const char *label, GMenu *section)
{
  if (g_menu_model_get_n_items (G_MENU_MODEL (section)) > 0)
    g_menu_append_section (menu, label, G_MENU_MODEL (section));
}

/* By what the kind of the step says, which is mostly it. */
static const char *const *
find_suggested (SyPartRow *self)
{
  const char *dot = strrchr (self->path, '.');
  g_autofree char *kind = g_strdup_printf ("%.*s.kind", (int) (dot != NULL ? dot - self->path : 0), self->path);

  return sy_step_suggested (dot != NULL && strchr (self->path, '[') != NULL ? sy_form_get (self->form, kind) : "");
}

static void
add_methods (SyPartRow *self, GMenu *menu)
{
  g_autoptr (GMenu) first = g_menu_new (), rest = g_menu_new ();
  const char *const *suggested = find_suggested (self);

  for (gsize i = 0; suggested[i] != NULL; i++)
    if (sy_method_find (suggested[i]) != NULL && sy_form_may_be_part (self->form, sy_method_find (suggested[i])))
      add_item (first, sy_translate (sy_method_find (suggested[i])->title), "part.begin", suggested[i]);
  for (gsize i = 0; i < sy_method_count (); i++)
    if (sy_form_may_be_part (self->form, sy_method_at (i)) && !g_strv_contains (suggested, sy_method_at (i)->id))
      add_item (rest, sy_translate (sy_method_at (i)->title), "part.begin", sy_method_at (i)->id);
  add_section (menu, NULL, first);
  add_section (menu, NULL, rest);
}

/* Whose facts a path is of, as it calls itself: "Lift it out"; else as the form calls it. New string. */
static char *
dup_owner (SyForm *form, const char *path)
{
  const char *dot = strrchr (path, '.');
  g_autofree char *label = g_strdup_printf ("%.*s.label", (int) (dot != NULL ? dot - path : 0), path);
  const char *text = dot != NULL && strchr (path, '[') != NULL ? sy_form_get (form, label) : "";

  return text[0] != '\0' ? g_strdup (text) : sy_form_dup_name (form, path, FALSE);
}

static void
add_sources (SyPartRow *self, GMenu *menu)
{
  g_autoptr (GMenu) section = g_menu_new (), others = g_menu_new ();
  g_auto (GStrv) paths = sy_form_list_paths (self->form);
  const SyMethod *changeover = sy_method_find ("changeover");

  add_item (section, _("Take from a task…"), "part.take", "task");
  if (changeover != NULL && sy_form_may_be_part (self->form, changeover))
    add_item (section, _("Take from a changeover…"), "part.take", "changeover");
  for (gsize i = 0; paths[i] != NULL; i++)
    {
      const SyMethod *method;
      g_autofree char *owner = NULL, *label = NULL;

      if (!sy_form_is_part (self->form, paths[i]) || strcmp (paths[i], self->path) == 0)
        continue;
      method = sy_form_get_part_method (self->form, paths[i]);
      if (method == NULL)
        continue;
      owner = dup_owner (self->form, paths[i]);
      /* Translators: whose facts are copied, and by which method they are assessed. */
      label = g_strdup_printf (_("%s: %s"), owner, sy_translate (method->title));
      add_item (others, label, "part.copy", paths[i]);
    }
  if (g_menu_model_get_n_items (G_MENU_MODEL (others)) > 0)
    g_menu_append_submenu (section, _("Copy from"), G_MENU_MODEL (others));
  add_section (menu, NULL, section);
}

/* Made when it is opened: what there is to copy changes. */
static void
menu_cb (GtkMenuButton *button, gpointer data)
{
  SyPartRow *self = data;
  g_autoptr (GMenu) menu = g_menu_new ();

  add_methods (self, menu);
  add_sources (self, menu);
  gtk_menu_button_set_menu_model (button, G_MENU_MODEL (menu));
}

static void
name_button (GtkWidget *button, const char *fact, const char *words)
{
  /* Translators: the name of a button for assistive technology: a fact, then what the button does. */
  g_autofree char *name = g_strdup_printf (_("%s: %s"), fact, words);

  sy_name (button, name);
}

static void
bind (SyFact *fact, SyForm *form, const char *path)
{
  SyPartRow *self = SY_PART_ROW (fact);
  g_autofree char *name = sy_form_dup_name (form, path, FALSE);

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->begin), menu_cb, self, NULL);
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
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (class), "part.copy", "s", copy_action);
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (class), "part.take", "s", take_action);
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
