/* SPDX-License-Identifier: MIT */
#include "sy-kind-popover.h"

#include "sy-i18n.h"
#include "sy-name.h"

#include <string.h>

#define HEIGHT 320

struct _SyKindPopover
{
  GtkPopover parent_instance;

  const SyField *field;
  GtkWidget *entry, *list;
};

enum { PICKED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyKindPopover, sy_kind_popover, GTK_TYPE_POPOVER)

static char *
dup_words (const SyChoice *choice)
{
  return choice->help != NULL ? g_strdup_printf ("%s: %s", sy_translate (choice->label), sy_translate (choice->help))
                              : g_strdup (sy_translate (choice->label));
}

static gboolean
matches_cb (GtkListBoxRow *row, gpointer data)
{
  SyKindPopover *self = data;
  g_autofree char *words = dup_words (&self->field->choices[gtk_list_box_row_get_index (row)]);

  return g_str_match_string (gtk_editable_get_text (GTK_EDITABLE (self->entry)), words, TRUE);
}

static void
typed_cb (GtkEditable *editable G_GNUC_UNUSED, SyKindPopover *self)
{
  gtk_list_box_invalidate_filter (GTK_LIST_BOX (self->list));
}

static void
pick (SyKindPopover *self, int index)
{
  gtk_popover_popdown (GTK_POPOVER (self));
  g_signal_emit (self, signals[PICKED], 0, self->field->choices[index].id);
}

static void
row_cb (GtkListBox *list G_GNUC_UNUSED, GtkListBoxRow *row, SyKindPopover *self)
{
  pick (self, gtk_list_box_row_get_index (row));
}

static void
entry_cb (GtkEntry *entry G_GNUC_UNUSED, SyKindPopover *self)
{
  for (int i = 0; i < (int) self->field->n_choices; i++)
    if (gtk_widget_get_child_visible (GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), i))))
      {
        pick (self, i);
        return;
      }
}

static gboolean
down_cb (GtkWidget *widget, GVariant *args G_GNUC_UNUSED, gpointer user_data G_GNUC_UNUSED)
{
  SyKindPopover *self = SY_KIND_POPOVER (widget);

  return gtk_widget_has_focus (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))))
         && gtk_widget_child_focus (self->list, GTK_DIR_TAB_FORWARD);
}

static GtkWidget *
new_choice (const SyChoice *choice)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *words = dup_words (choice);
  GtkWidget *label = gtk_label_new (sy_translate (choice->label));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_box_append (GTK_BOX (box), label);
  if (choice->help != NULL)
    {
      GtkWidget *help = gtk_label_new (sy_translate (choice->help));

      gtk_label_set_xalign (GTK_LABEL (help), 0);
      gtk_widget_add_css_class (help, "sy-note");
      gtk_box_append (GTK_BOX (box), help);
    }
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  return row;
}

static void
sy_kind_popover_class_init (SyKindPopoverClass *class)
{
  signals[PICKED] = g_signal_new ("picked", SY_TYPE_KIND_POPOVER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  G_TYPE_STRING);
  gtk_widget_class_add_binding (GTK_WIDGET_CLASS (class), GDK_KEY_Down, 0, down_cb, NULL);
}

static void
sy_kind_popover_init (SyKindPopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *scroller = gtk_scrolled_window_new ();

  self->entry = gtk_entry_new ();
  self->list = gtk_list_box_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), _("Type to narrow down"));
  gtk_widget_set_name (self->entry, "kind-filter");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_list_box_set_filter_func (GTK_LIST_BOX (self->list), matches_cb, self, NULL);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->list);
  g_signal_connect (self->entry, "changed", G_CALLBACK (typed_cb), self);
  g_signal_connect (self->entry, "activate", G_CALLBACK (entry_cb), self);
  g_signal_connect (self->list, "row-activated", G_CALLBACK (row_cb), self);
  gtk_box_append (GTK_BOX (box), self->entry);
  gtk_box_append (GTK_BOX (box), scroller);
  gtk_popover_set_child (GTK_POPOVER (self), box);
}

GtkWidget *
sy_kind_popover_new (const SyField *field, const char *name)
{
  SyKindPopover *self = g_object_new (SY_TYPE_KIND_POPOVER, NULL);

  self->field = field;
  for (gsize i = 0; i < field->n_choices; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list), new_choice (&field->choices[i]));
  sy_name (GTK_WIDGET (self), name);
  sy_name (self->entry, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return GTK_WIDGET (self);
}

void
sy_kind_popover_ask (SyKindPopover *self, GtkWidget *at)
{
  graphene_rect_t bounds;

  if (gtk_widget_compute_bounds (at, gtk_widget_get_parent (GTK_WIDGET (self)), &bounds))
    gtk_popover_set_pointing_to (GTK_POPOVER (self),
                                 &(GdkRectangle) { (int) bounds.origin.x, (int) bounds.origin.y, (int) bounds.size.width,
                                                   (int) bounds.size.height });
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  gtk_popover_popup (GTK_POPOVER (self));
  gtk_widget_grab_focus (self->entry);
}
