/* SPDX-License-Identifier: MIT */
#include "sy-list-rows.h"

#include "sy-i18n.h"
#include "sy-list-item.h"
#include "sy-long-table.h"
#include "sy-name.h"
#include "sy-show.h"

/* An item of so few figures is one row. */
#define FIGURES_IN_A_ROW 3

struct _SyListRows
{
  GtkBox parent_instance;

  SyForm *form;
  char *path;
  const SyField *field;
  gboolean flat; /* a row an item */
  SyFactFrame frame;
  GtkWidget *rows;
  GtkWidget *buttons;
  GtkWidget *add;
  GtkWidget *table;           /* of more items than are typed; NULL: there are not so many */
  GtkWidget *take, *take_all; /* from a table, all away; NULL: of no list so long   */
  guint shown; /* rows that stand */
};

G_DEFINE_FINAL_TYPE (SyListRows, sy_list_rows, GTK_TYPE_BOX)

static void
remove_cb (GtkButton *button, SyListRows *self)
{
  guint item = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "sy-item"));

  /* The row with this button may go away with it: the keyboard must not be left nowhere. */
  gtk_widget_grab_focus (self->add);
  if (item < sy_form_list_count (self->form, self->path))
    sy_form_list_remove (self->form, self->path, item);
}

static GtkWidget *
new_row (SyListRows *self, guint item)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *name = NULL;

  for (gsize i = 0; i < self->field->n_members; i++)
    {
      g_autofree char *path
          = g_strdup_printf ("%s[%u].%s", self->path, item, self->field->members[i].name);
      GtkWidget *fact = sy_fact_new_for_field (&self->field->members[i]);

      sy_fact_bind (SY_FACT (fact), self->form, path);
      gtk_widget_set_hexpand (fact, TRUE);
      gtk_box_append (GTK_BOX (row), fact);
    }
  /* Translators: takes away one row of a list; %u is its number. */
  name = g_strdup_printf (_("Take row %u away"), item + 1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_tooltip_text (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  g_object_set_data (G_OBJECT (button), "sy-item", GUINT_TO_POINTER (item));
  g_signal_connect (button, "clicked", G_CALLBACK (remove_cb), self);
  gtk_box_append (GTK_BOX (row), button);
  return row;
}

/* To the first fact of a row, past the buttons of its heading. */
static void
focus_fact (GtkWidget *row)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (row, GTK_TYPE_VIEWPORT);
  GtkWidget *facts = SY_IS_LIST_ITEM (row) ? gtk_widget_get_next_sibling (gtk_widget_get_first_child (row)) : row;

  /* A row that was just made has no place yet when the focus comes to it: a viewport would scroll to where the list begins. */
  if (viewport != NULL)
    gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (viewport), FALSE);
  gtk_widget_child_focus (facts, GTK_DIR_TAB_FORWARD);
  if (viewport != NULL)
    gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (viewport), TRUE);
  sy_show_whole (row);
}

static gboolean
is_flat (const SyField *list)
{
  for (gsize i = 0; i < list->n_members; i++)
    if (list->members[i].type != SY_MEMBER_NUMBER)
      return FALSE;
  return list->n_members <= FIGURES_IN_A_ROW;
}

static GtkWidget *
item_at (SyListRows *self, guint item)
{
  GtkWidget *row = gtk_widget_get_first_child (self->rows);

  for (; item > 0 && row != NULL; item--)
    row = gtk_widget_get_next_sibling (row);
  return row;
}

/* The focus stays with what was moved or added; where an item was taken away it goes to the one in its place. */
static void
act_cb (SyListItem *widget, guint action, SyListRows *self)
{
  guint item = sy_list_item_get_item (widget), n = sy_form_list_count (self->form, self->path);
  guint to = item;

  if (item >= n)
    return;
  switch ((SyListItemAction) action)
    {
    case SY_LIST_ITEM_DUPLICATE:
      sy_form_list_duplicate (self->form, self->path, item);
      focus_fact (item_at (self, item + 1));
      return;
    case SY_LIST_ITEM_UP:
      to = item - 1;
      break;
    case SY_LIST_ITEM_DOWN:
      to = item + 1;
      break;
    case SY_LIST_ITEM_REMOVE:
      gtk_widget_grab_focus (self->add);
      sy_form_list_remove (self->form, self->path, item);
      if (item + 1 < n)
        sy_list_item_focus (widget, SY_LIST_ITEM_REMOVE);
      return;
    }
  if (to >= n)
    return;
  sy_form_list_move (self->form, self->path, item, to);
  sy_list_item_focus (SY_LIST_ITEM (item_at (self, to)), action);
}

static GtkWidget *
new_item (SyListRows *self, guint item)
{
  GtkWidget *widget;

  if (self->flat)
    return new_row (self, item);
  widget = sy_list_item_new (self->form, self->path, item);
  g_signal_connect (widget, "act", G_CALLBACK (act_cb), self);
  return widget;
}

/* More items than anybody types are a table to look at. */
static void
follow_long (SyListRows *self, gboolean is_long, guint n)
{
  const char *words = n > 0 ? _("Replace from a CSV _file…") : _("From a CSV _file…");

  if (is_long && self->table == NULL)
    {
      self->table = sy_long_table_new (self->form, self->path);
      gtk_box_insert_child_after (GTK_BOX (self), self->table, self->rows);
    }
  else if (!is_long && self->table != NULL)
    {
      gtk_box_remove (GTK_BOX (self), self->table);
      self->table = NULL;
    }
  gtk_widget_set_visible (self->add, !is_long);
  /* Whatever can take the focus for the list has its path for a name. */
  gtk_widget_set_name (self->add, is_long ? "" : self->path);
  gtk_button_set_label (GTK_BUTTON (self->take), words);
  gtk_widget_set_visible (self->take_all, is_long);
}

/* Rows are told apart by number only, so it is always the last that comes or goes; the texts follow the form. */
static void
follow_form (SyListRows *self)
{
  gboolean is_long = sy_form_list_get_long (self->form, self->path) != NULL;
  guint n = sy_form_list_count (self->form, self->path);
  guint most = (guint) self->field->max_items;
  const char *words = sy_form_get_problem (self->form, self->path);
  const char *aid = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), sy_form_applies (self->form, self->path));
  if (self->take != NULL)
    {
      follow_long (self, is_long, n);
      most = MIN (most, SY_FORM_ITEMS_TYPED);
      n = is_long ? 0 : n;
      if (n >= most)
        aid = _("More than these come from a CSV file.");
    }
  if (sy_form_is_missing (self->form, self->path) && !sy_form_get_ask_missing (self->form))
    words = NULL;
  sy_fact_frame_note (&self->frame, self->add, words, aid);
  gtk_widget_set_visible (self->frame.note, words != NULL || aid != NULL);
  if (self->shown == n)
    return;
  for (; self->shown < n; self->shown++)
    gtk_box_append (GTK_BOX (self->rows), new_item (self, self->shown));
  for (; self->shown > n; self->shown--)
    gtk_box_remove (GTK_BOX (self->rows), gtk_widget_get_last_child (self->rows));
  gtk_widget_set_sensitive (self->add, n < most);
  for (guint i = 0; i < n && !self->flat; i++)
    sy_list_item_set_count (SY_LIST_ITEM (item_at (self, i)), n);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyListRows *self)
{
  follow_form (self);
}

static void
add_cb (GtkButton *button G_GNUC_UNUSED, SyListRows *self)
{
  sy_form_list_add (self->form, self->path);
  focus_fact (gtk_widget_get_last_child (self->rows));
}

static GtkWidget *
new_add (SyListRows *self)
{
  const char *item = self->field->item_label != NULL ? self->field->item_label : self->field->label;
  g_autofree char *list = sy_form_dup_name (self->form, self->path, FALSE);
  g_autofree char *label = NULL, *name = NULL;
  GtkWidget *button;

  if (self->flat)
    return sy_button_new (_("_Add a row"), NULL);
  /* Translators: a button that adds one more item to a list, e.g. "Add: Leg". */
  label = g_strdup_printf (_("Add: %s"), sy_translate (item));
  name = g_strdup_printf (_("%s: %s"), list, label);
  button = gtk_button_new_with_label (label);
  sy_name (button, name);
  return button;
}

static void
take_cb (GtkButton *button G_GNUC_UNUSED, SyListRows *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "task.list-from-file", "s", self->path);
}

static void
take_all_cb (GtkButton *button G_GNUC_UNUSED, SyListRows *self)
{
  sy_form_list_clear (self->form, self->path);
  gtk_widget_grab_focus (self->add);
}

static GtkWidget *
new_link (SyListRows *self, const char *label, const char *id, GCallback clicked)
{
  GtkWidget *button = sy_button_new (label, NULL);
  g_autofree char *name = g_strdup_printf ("%s:%s", id, self->path);

  gtk_widget_set_name (button, name);
  g_signal_connect (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (self->buttons), button);
  return button;
}

static void
sy_list_rows_dispose (GObject *object)
{
  SyListRows *self = SY_LIST_ROWS (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (sy_list_rows_parent_class)->dispose (object);
}

static void
sy_list_rows_class_init (SyListRowsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_list_rows_dispose;
}

static void
sy_list_rows_init (SyListRows *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
}

GtkWidget *
sy_list_rows_new (SyForm *form, const char *path)
{
  SyListRows *self = g_object_new (SY_TYPE_LIST_ROWS, NULL);

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  self->field = sy_form_find_field (form, path);
  self->flat = is_flat (self->field);
  sy_fact_frame_begin (&self->frame, GTK_BOX (self), self->field);
  gtk_widget_set_visible (self->frame.caption, FALSE);
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self), self->rows);
  self->buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->add = new_add (self);
  gtk_widget_set_name (self->add, path);
  g_signal_connect (self->add, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_append (GTK_BOX (self->buttons), self->add);
  if (sy_form_is_long_field (self->field))
    {
      self->take = new_link (self, _("From a CSV _file…"), "from-file", G_CALLBACK (take_cb));
      self->take_all = new_link (self, _("Remove _all"), "remove-all", G_CALLBACK (take_all_cb));
    }
  gtk_box_append (GTK_BOX (self), self->buttons);
  sy_fact_frame_end (&self->frame, GTK_BOX (self));
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
  return GTK_WIDGET (self);
}

GtkWidget *
sy_list_rows_get_caption (SyListRows *self)
{
  return self->frame.caption;
}

gboolean
sy_list_rows_reveal (SyListRows *self, const char *path)
{
  gboolean revealed = FALSE;

  g_return_val_if_fail (SY_IS_LIST_ROWS (self), FALSE);
  if (self->flat || !g_str_has_prefix (path, self->path))
    return FALSE;
  for (GtkWidget *row = gtk_widget_get_first_child (self->rows); row != NULL; row = gtk_widget_get_next_sibling (row))
    revealed |= sy_list_item_reveal (SY_LIST_ITEM (row), path);
  return revealed;
}
