/* SPDX-License-Identifier: MIT */
#include "sy-step-edit.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-set-row.h"
#include "sy-show.h"
#include "sy-step-words.h"

#include <string.h>

struct _SyStepEdit
{
  GtkBox parent_instance;

  SyForm *form;
  char *list, *path; /* path: of the item */
  guint item;
  GtkWidget *inside;
  GtkWidget *checks; /* SySetRow; NULL: none are asked for by kind */
};

enum { ACT, SPLIT, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyStepEdit, sy_step_edit, GTK_TYPE_BOX)

static GtkWidget *
find_named (GtkWidget *widget, const char *name)
{
  GtkWidget *found = NULL;

  if (strcmp (gtk_widget_get_name (widget), name) == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_named (child, name);
  return found;
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyStepEdit *self)
{
  char **asked;

  if (self->checks == NULL || self->item >= sy_form_list_count (self->form, self->list))
    return;
  asked = sy_step_dup_asked (self->form, self->list, self->item);
  sy_set_row_ask (SY_SET_ROW (self->checks), (const char *const *) asked);
  sy_step_asked_free (asked);
}

static void
inside_act_cb (SyListItem *inside G_GNUC_UNUSED, guint action, SyStepEdit *self)
{
  g_signal_emit (self, signals[ACT], 0, action);
}

static void
split_cb (GtkButton *button G_GNUC_UNUSED, SyStepEdit *self)
{
  g_signal_emit (self, signals[SPLIT], 0);
}

static void
sy_step_edit_dispose (GObject *object)
{
  SyStepEdit *self = SY_STEP_EDIT (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->list, g_free);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (sy_step_edit_parent_class)->dispose (object);
}

static void
sy_step_edit_class_init (SyStepEditClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_step_edit_dispose;
  signals[ACT] = g_signal_new ("act", SY_TYPE_STEP_EDIT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                               G_TYPE_UINT);
  signals[SPLIT] = g_signal_new ("split", SY_TYPE_STEP_EDIT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sy_step_edit_init (SyStepEdit *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-step-edit");
}

/* Only where the item has minutes to be divided. */
static void
add_split (SyStepEdit *self)
{
  GtkWidget *button;
  g_autofree char *item = NULL, *name = NULL;

  if (sy_step_member (sy_form_find_field (self->form, self->list), "minutes") == NULL)
    return;
  button = gtk_button_new_with_label (_("Split into two"));
  item = sy_form_dup_name (self->form, self->path, FALSE);
  name = g_strdup_printf (_("%s: %s"), item, _("Split into two"));
  sy_name (button, name);
  gtk_widget_set_name (button, "split");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect (button, "clicked", G_CALLBACK (split_cb), self);
  gtk_box_append (GTK_BOX (self), button);
}

GtkWidget *
sy_step_edit_new (SyForm *form, const char *list, guint item)
{
  SyStepEdit *self = g_object_new (SY_TYPE_STEP_EDIT, NULL);
  g_autofree char *checks = g_strdup_printf ("%s[%u].checks", list, item);
  GtkWidget *group;

  self->form = g_object_ref (form);
  self->list = g_strdup (list);
  self->path = g_strdup_printf ("%s[%u]", list, item);
  self->item = item;
  self->inside = sy_list_item_new (form, list, item);
  g_signal_connect (self->inside, "act", G_CALLBACK (inside_act_cb), self);
  gtk_box_append (GTK_BOX (self), self->inside);
  add_split (self);
  group = find_named (self->inside, checks);
  self->checks = group != NULL ? gtk_widget_get_ancestor (group, SY_TYPE_SET_ROW) : NULL;
  form_changed_cb (form, self);
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  return GTK_WIDGET (self);
}

void
sy_step_edit_set_count (SyStepEdit *self, guint n_items)
{
  sy_list_item_set_count (SY_LIST_ITEM (self->inside), n_items);
}

gboolean
sy_step_edit_reveal (SyStepEdit *self, const char *path)
{
  return sy_list_item_reveal (SY_LIST_ITEM (self->inside), path);
}

char *
sy_step_edit_dup_focus (SyStepEdit *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  gsize n = strlen (self->path);

  for (GtkWidget *at = root != NULL ? gtk_root_get_focus (root) : NULL; at != NULL && at != GTK_WIDGET (self);
       at = gtk_widget_get_parent (at))
    {
      const char *name = gtk_widget_get_name (at);

      if (g_str_has_prefix (name, self->path) && name[n] == '.' && gtk_widget_is_ancestor (at, GTK_WIDGET (self)))
        return g_strdup (name + n + 1);
    }
  return NULL;
}

void
sy_step_edit_focus (SyStepEdit *self, const char *member)
{
  g_autofree char *path = g_strdup_printf ("%s.%s", self->path, member);
  GtkWidget *viewport = gtk_widget_get_ancestor (GTK_WIDGET (self), GTK_TYPE_VIEWPORT);
  GtkWidget *field = find_named (self->inside, path);

  /* What was just made has no place yet when the focus comes to it: a viewport would scroll to the list's beginning. */
  if (viewport != NULL)
    gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (viewport), FALSE);
  if (field == NULL || !(gtk_widget_grab_focus (field) || gtk_widget_child_focus (field, GTK_DIR_TAB_FORWARD)))
    gtk_widget_child_focus (self->inside, GTK_DIR_TAB_FORWARD);
  if (viewport != NULL)
    gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (viewport), TRUE);
  sy_show_whole (GTK_WIDGET (self));
}
