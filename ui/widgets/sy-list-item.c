/* SPDX-License-Identifier: MIT */
#include "sy-list-item.h"

#include "sy-i18n.h"
#include "sy-list-rows.h"
#include "sy-name.h"

#include <string.h>

#define COLUMNS 3

struct _SyListItem
{
  GtkBox parent_instance;

  SyForm *form;
  char *path;           /* of the item */
  const SyField *field; /* of the list */
  guint item;
  GtkWidget *title;
  GtkWidget *buttons[SY_N_LIST_ITEM_ACTIONS];
  GtkWidget *fold;   /* NULL: nothing is given seldom */
  GPtrArray *nested; /* of SyListRows, borrowed */
};

enum
{
  ACT,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyListItem, sy_list_item, GTK_TYPE_BOX)

static char *
member_path (SyListItem *self, const SyField *member)
{
  return g_strdup_printf ("%s.%s", self->path, member->name);
}

/* Columns */

/* Letters of a choice that one column shows whole. */
#define CHOICE_LETTERS 11

static int
columns_of_choice (const SyField *field)
{
  for (gsize i = 0; i < field->n_choices; i++)
    if (g_utf8_strlen (sy_translate (field->choices[i].label), -1) > CHOICE_LETTERS)
      return 2;
  return 1;
}

/* How many columns a fact takes: figures and short choices one, words two, what has a row of its own all. */
static int
columns_of (const SyField *field)
{
  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
    case SY_MEMBER_BOOL:
    case SY_MEMBER_DATE:
      return 1;
    case SY_MEMBER_CHOICE:
      return columns_of_choice (field);
    case SY_MEMBER_TEXT:
      return 2;
    case SY_MEMBER_TEXTS:
      return field->max_items <= 2 ? 2 : COLUMNS;
    case SY_MEMBER_SET:
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_GROUP:
    case SY_MEMBER_LIST:
    case SY_MEMBER_FACTS:
      break;
    }
  return COLUMNS;
}

typedef struct
{
  GtkGrid *grid;
  GtkSizeGroup *captions; /* of the row: one that needs two lines must not push its entry below the others */
  int column, row;
} Flow;

static void
flow_add (Flow *flow, GtkWidget *fact, int columns)
{
  if (flow->column + columns > COLUMNS)
    {
      flow->column = 0;
      flow->row++;
      g_clear_object (&flow->captions);
    }
  if (flow->captions == NULL)
    flow->captions = gtk_size_group_new (GTK_SIZE_GROUP_VERTICAL);
  gtk_size_group_add_widget (flow->captions, sy_fact_get_caption (SY_FACT (fact)));
  gtk_widget_set_hexpand (fact, TRUE);
  gtk_grid_attach (flow->grid, fact, flow->column, flow->row, columns, 1);
  flow->column += columns;
}

static void flow_members (SyListItem *self, Flow *flow, const SyField *members, gsize n, const char *path,
                          const char *above, gboolean seldom);

/* A group begins a row, under what it is called: "Origin" and "Destination" have facts of the same names. Of a group of
   groups each inner one says both names. */
static void
flow_group (SyListItem *self, Flow *flow, const SyField *group, const char *path, const char *above)
{
  const char *own = sy_translate (group->label);
  g_autofree char *name = above[0] != '\0' ? g_strdup_printf (_("%s: %s"), above, own) : g_strdup (own);
  GtkWidget *label;

  if (group->n_members > 0 && group->members[0].type == SY_MEMBER_GROUP)
    {
      flow_members (self, flow, group->members, group->n_members, path, name, FALSE);
      return;
    }
  if (flow->column > 0)
    flow->row++;
  g_clear_object (&flow->captions);
  label = gtk_label_new (name);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "sy-quiet");
  gtk_grid_attach (flow->grid, label, 0, flow->row++, COLUMNS, 1);
  flow->column = 0;
  flow_members (self, flow, group->members, group->n_members, path, name, FALSE);
  flow->column = COLUMNS;
}

/* Those that may go away stand last, so that they leave no gap; and a set of many checks behind the way to the facts of the item's
   own, to which the keyboard would have to go through it. */
static gboolean
stands_last (SyListItem *self, const SyField *members, gsize n, const SyField *member, const char *at)
{
  gboolean has_facts = FALSE;

  for (gsize i = 0; i < n; i++)
    has_facts |= members[i].type == SY_MEMBER_FACTS;
  return sy_form_may_not_apply (self->form, at) || (has_facts && member->type == SY_MEMBER_SET);
}

static void
flow_members (SyListItem *self, Flow *flow, const SyField *members, gsize n, const char *path, const char *above,
              gboolean seldom)
{
  for (gsize k = 0; k < 2 * n; k++)
    {
      gsize i = k % n;
      g_autofree char *at = g_strdup_printf ("%s.%s", path, members[i].name);
      GtkWidget *fact;

      if (members[i].seldom != seldom || members[i].type == SY_MEMBER_LIST
          || stands_last (self, members, n, &members[i], at) != (k >= n))
        continue;
      if (members[i].type == SY_MEMBER_GROUP)
        {
          flow_group (self, flow, &members[i], at, above);
          continue;
        }
      fact = sy_fact_new_for_field (&members[i]);
      sy_fact_bind (SY_FACT (fact), self->form, at);
      flow_add (flow, fact, columns_of (&members[i]));
    }
}

static GtkWidget *
new_grid (SyListItem *self, gboolean seldom)
{
  GtkWidget *grid = gtk_grid_new ();
  Flow flow = { GTK_GRID (grid), NULL, 0, 0 };

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 3);
  flow_members (self, &flow, self->field->members, self->field->n_members, self->path, "", seldom);
  g_clear_object (&flow.captions);
  return grid;
}

/* The lists inside */

static void
add_lists (SyListItem *self, GtkBox *box, gboolean seldom)
{
  for (gsize i = 0; i < self->field->n_members; i++)
    {
      const SyField *list = &self->field->members[i];
      g_autofree char *path = member_path (self, list);
      GtkWidget *rows;

      if (list->type != SY_MEMBER_LIST || list->seldom != seldom)
        continue;
      rows = sy_list_rows_new (self->form, path);
      gtk_widget_set_visible (sy_list_rows_get_caption (SY_LIST_ROWS (rows)), TRUE);
      gtk_widget_add_css_class (rows, "sy-nested");
      g_ptr_array_add (self->nested, rows);
      gtk_box_append (box, rows);
    }
}

/* The fold */

static void
expanded_cb (GtkExpander *fold, GParamSpec *pspec G_GNUC_UNUSED, SyListItem *self)
{
  GtkWidget *box;

  /* Made when it is first looked into: most are never opened. */
  if (!gtk_expander_get_expanded (fold) || gtk_expander_get_child (fold) != NULL)
    return;
  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_box_append (GTK_BOX (box), new_grid (self, TRUE));
  add_lists (self, GTK_BOX (box), TRUE);
  gtk_expander_set_child (fold, box);
}

static gboolean
has_seldom (SyListItem *self)
{
  for (gsize i = 0; i < self->field->n_members; i++)
    if (self->field->members[i].seldom)
      return TRUE;
  return FALSE;
}

static gboolean
is_at_or_below (const char *path, const char *above)
{
  return g_str_has_prefix (path, above) && strchr (".[", path[strlen (above)]) != NULL;
}

/* Whether a problem is to be seen now. What the table does not need by itself is missing because of what was given
   beside it: a cylinder asks for its diameter at once. */
static gboolean
is_asked (SyListItem *self, const char *path)
{
  return !sy_form_is_missing (self->form, path) || sy_form_get_ask_missing (self->form)
         || !sy_form_find_field (self->form, path)->required;
}

/* Whether the fold hides something that is given, or that is said to be wrong. */
static gboolean
hides_something (SyListItem *self)
{
  for (gsize i = 0; i < self->field->n_members; i++)
    {
      g_autofree char *at = member_path (self, &self->field->members[i]);

      if (!self->field->members[i].seldom)
        continue;
      if (!sy_form_is_blank (self->form, at))
        return TRUE;
      for (guint p = 0; p < sy_form_count_problems (self->form); p++)
        {
          const char *path = sy_form_problem_path (self->form, p);

          if (is_at_or_below (path, at) && is_asked (self, path))
            return TRUE;
        }
    }
  return FALSE;
}

static GtkWidget *
new_fold (SyListItem *self)
{
  GtkWidget *fold = gtk_expander_new (_("More"));
  g_autofree char *item = sy_form_dup_name (self->form, self->path, FALSE);
  g_autofree char *name = g_strdup_printf (_("%s: %s"), item, _("More"));

  sy_name (fold, name);
  g_signal_connect (fold, "notify::expanded", G_CALLBACK (expanded_cb), self);
  return fold;
}

gboolean
sy_list_item_reveal (SyListItem *self, const char *path)
{
  gboolean revealed = FALSE;

  g_return_val_if_fail (SY_IS_LIST_ITEM (self), FALSE);
  for (guint i = 0; i < self->nested->len; i++)
    revealed |= sy_list_rows_reveal (g_ptr_array_index (self->nested, i), path);
  for (gsize i = 0; i < self->field->n_members && self->fold != NULL; i++)
    {
      g_autofree char *at = member_path (self, &self->field->members[i]);

      if (self->field->members[i].seldom && is_at_or_below (path, at)
          && !gtk_expander_get_expanded (GTK_EXPANDER (self->fold)))
        {
          gtk_expander_set_expanded (GTK_EXPANDER (self->fold), TRUE);
          revealed = TRUE;
        }
    }
  return revealed;
}

/* The heading */

/* What the item calls itself: its label, or else its first words. */
static char *
own_name (SyListItem *self)
{
  const SyField *named = NULL;
  g_autofree char *path = NULL;
  g_autoptr (GString) name = g_string_new (NULL);

  for (gsize i = 0; i < self->field->n_members; i++)
    {
      const SyField *member = &self->field->members[i];

      if (strcmp (member->name, "label") == 0
          || (named == NULL && (member->type == SY_MEMBER_TEXT || member->type == SY_MEMBER_TEXTS)))
        named = member;
    }
  if (named == NULL)
    return g_strdup ("");
  path = member_path (self, named);
  if (named->type != SY_MEMBER_TEXTS)
    return g_strdup (sy_form_get (self->form, path));
  for (guint i = 0; i < sy_form_list_count (self->form, path); i++)
    {
      g_autofree char *at = g_strdup_printf ("%s[%u]", path, i);
      const char *text = sy_form_get (self->form, at);

      if (text[0] != '\0')
        g_string_append_printf (name, "%s%s", name->len > 0 ? ", " : "", text);
    }
  return g_strdup (name->str);
}

static void
follow_form (SyListItem *self)
{
  const SyField *field = self->field;
  g_autofree char *own = own_name (self);
  g_autofree char *title
      = g_strdup_printf ("%s %u%s%s", sy_translate (field->item_label != NULL ? field->item_label : field->label),
                         self->item + 1, own[0] != '\0' ? " · " : "", own);

  if (strcmp (gtk_label_get_text (GTK_LABEL (self->title)), title) != 0)
    gtk_label_set_text (GTK_LABEL (self->title), title);
  if (self->fold != NULL && !gtk_expander_get_expanded (GTK_EXPANDER (self->fold)) && hides_something (self))
    gtk_expander_set_expanded (GTK_EXPANDER (self->fold), TRUE);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyListItem *self)
{
  follow_form (self);
}

static void
clicked_cb (GtkButton *button, SyListItem *self)
{
  for (guint i = 0; i < SY_N_LIST_ITEM_ACTIONS; i++)
    if (self->buttons[i] == GTK_WIDGET (button))
      g_signal_emit (self, signals[ACT], 0, i);
}

static GtkWidget *
new_heading (SyListItem *self)
{
  static const struct
  {
    const char *icon, *name;
  } actions[SY_N_LIST_ITEM_ACTIONS] = {
    [SY_LIST_ITEM_DUPLICATE] = { "edit-copy-symbolic", N_ ("Duplicate") },
    [SY_LIST_ITEM_UP] = { "go-up-symbolic", N_ ("Move up") },
    [SY_LIST_ITEM_DOWN] = { "go-down-symbolic", N_ ("Move down") },
    [SY_LIST_ITEM_REMOVE] = { "list-remove-symbolic", N_ ("Take away") },
  };
  GtkWidget *heading = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  g_autofree char *item = sy_form_dup_name (self->form, self->path, FALSE);

  self->title = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->title), 0);
  gtk_label_set_ellipsize (GTK_LABEL (self->title), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (self->title, TRUE);
  gtk_widget_add_css_class (self->title, "sy-item-title");
  gtk_box_append (GTK_BOX (heading), self->title);
  for (guint i = 0; i < SY_N_LIST_ITEM_ACTIONS; i++)
    {
      g_autofree char *name = g_strdup_printf (_("%s: %s"), item, sy_translate (actions[i].name));

      self->buttons[i] = gtk_button_new_from_icon_name (actions[i].icon);
      sy_name (self->buttons[i], name);
      gtk_widget_set_tooltip_text (self->buttons[i], sy_translate (actions[i].name));
      gtk_widget_add_css_class (self->buttons[i], "flat");
      g_signal_connect (self->buttons[i], "clicked", G_CALLBACK (clicked_cb), self);
      gtk_box_append (GTK_BOX (heading), self->buttons[i]);
    }
  return heading;
}

/* Class */

static void
sy_list_item_dispose (GObject *object)
{
  SyListItem *self = SY_LIST_ITEM (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->nested, g_ptr_array_unref);
  G_OBJECT_CLASS (sy_list_item_parent_class)->dispose (object);
}

static void
sy_list_item_class_init (SyListItemClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_list_item_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-item");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_GROUP);
  signals[ACT] = g_signal_new ("act", SY_TYPE_LIST_ITEM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                               G_TYPE_UINT);
}

static void
sy_list_item_init (SyListItem *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 3);
  self->nested = g_ptr_array_new ();
}

GtkWidget *
sy_list_item_new (SyForm *form, const char *list, guint item)
{
  SyListItem *self = g_object_new (SY_TYPE_LIST_ITEM, NULL);
  g_autofree char *name = NULL;

  self->form = g_object_ref (form);
  self->path = g_strdup_printf ("%s[%u]", list, item);
  self->field = sy_form_find_field (form, list);
  self->item = item;
  name = sy_form_dup_name (form, self->path, FALSE);
  sy_name (GTK_WIDGET (self), name);
  gtk_widget_set_name (GTK_WIDGET (self), self->path);
  gtk_box_append (GTK_BOX (self), new_heading (self));
  gtk_box_append (GTK_BOX (self), new_grid (self, FALSE));
  if (has_seldom (self))
    {
      self->fold = new_fold (self);
      gtk_box_append (GTK_BOX (self), self->fold);
    }
  add_lists (self, GTK_BOX (self), FALSE);
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
  return GTK_WIDGET (self);
}

guint
sy_list_item_get_item (SyListItem *self)
{
  return self->item;
}

void
sy_list_item_set_count (SyListItem *self, guint n_items)
{
  gtk_widget_set_sensitive (self->buttons[SY_LIST_ITEM_DUPLICATE], n_items < self->field->max_items);
  gtk_widget_set_sensitive (self->buttons[SY_LIST_ITEM_UP], self->item > 0);
  gtk_widget_set_sensitive (self->buttons[SY_LIST_ITEM_DOWN], self->item + 1 < n_items);
}

void
sy_list_item_focus (SyListItem *self, SyListItemAction action)
{
  /* At an end of the list the way back can be pressed. */
  static const SyListItemAction instead[SY_N_LIST_ITEM_ACTIONS] = {
    [SY_LIST_ITEM_DUPLICATE] = SY_LIST_ITEM_REMOVE,
    [SY_LIST_ITEM_UP] = SY_LIST_ITEM_DOWN,
    [SY_LIST_ITEM_DOWN] = SY_LIST_ITEM_UP,
    [SY_LIST_ITEM_REMOVE] = SY_LIST_ITEM_REMOVE,
  };

  if (!gtk_widget_get_sensitive (self->buttons[action]))
    action = instead[action];
  gtk_widget_grab_focus (self->buttons[action]);
}
