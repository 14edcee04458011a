/* SPDX-License-Identifier: MIT */
#include "sy-step-list.h"

#include "sy-i18n.h"
#include "sy-kind-popover.h"
#include "sy-name.h"
#include "sy-show.h"
#include "sy-step-deeds.h"
#include "sy-step-edit.h"
#include "sy-step-row.h"
#include "sy-step-words.h"

#include <string.h>

struct _SyStepList
{
  GtkBox parent_instance;

  SyForm *form;
  char *path;
  const SyField *field;
  SyFactFrame frame;
  GtkWidget *box;     /* rows, and the facts of one under its row */
  GPtrArray *rows;    /* of SyStepRow, borrowed                    */
  GtkWidget *edit;    /* SyStepEdit; NULL: none is open            */
  int open;           /* -1: none                                  */
  guint current;      /* the row that Tab leads to                 */
  GtkWidget *add;
  GtkWidget *kinds;   /* SyKindPopover; NULL: items have no kind   */
  gboolean inserts;   /* what is picked goes behind the current    */
};

G_DEFINE_FINAL_TYPE (SyStepList, sy_step_list, GTK_TYPE_BOX)

static void act_cb (SyStepEdit *edit, guint action, SyStepList *self);
static void split_cb (SyStepEdit *edit, SyStepList *self);

/* Topics: rows and what is open */

static GtkWidget *
row_at (SyStepList *self, guint item)
{
  return item < self->rows->len ? g_ptr_array_index (self->rows, item) : NULL;
}

/* Tab goes to one row only, from there into its facts. */
static void
set_current (SyStepList *self, guint item)
{
  self->current = item;
  for (guint i = 0; i < self->rows->len; i++)
    gtk_widget_set_focusable (row_at (self, i), i == item);
}

static void
focus_row (SyStepList *self, guint item)
{
  GtkWidget *row = row_at (self, item);

  if (row == NULL)
    {
      gtk_widget_grab_focus (self->add);
      return;
    }
  gtk_widget_set_focusable (row, TRUE);
  gtk_widget_grab_focus (row);
  set_current (self, item);
}

static void
set_open (SyStepList *self, int item)
{
  if (self->edit != NULL)
    gtk_box_remove (GTK_BOX (self->box), self->edit);
  self->edit = NULL;
  self->open = item < (int) self->rows->len ? item : -1;
  for (guint i = 0; i < self->rows->len; i++)
    sy_step_row_set_open (SY_STEP_ROW (row_at (self, i)), (int) i == self->open);
  if (self->open < 0)
    return;
  self->edit = sy_step_edit_new (self->form, self->path, (guint) item);
  sy_step_edit_set_count (SY_STEP_EDIT (self->edit), self->rows->len);
  g_signal_connect (self->edit, "act", G_CALLBACK (act_cb), self);
  g_signal_connect (self->edit, "split", G_CALLBACK (split_cb), self);
  gtk_box_insert_child_after (GTK_BOX (self->box), self->edit, row_at (self, (guint) item));
}

static void
clicked_cb (SyStepRow *row, SyStepList *self)
{
  guint item = sy_step_row_get_item (row);

  focus_row (self, item);
  set_open (self, self->open == (int) item ? -1 : (int) item);
}

static void
move_to (SyStepList *self, guint from, guint to)
{
  int open = self->open;
  g_autofree char *kept = NULL;

  if (from == to || to >= self->rows->len || from >= self->rows->len)
    return;
  if (self->edit != NULL && open == (int) from)
    kept = sy_step_edit_dup_focus (SY_STEP_EDIT (self->edit));
  focus_row (self, to);
  sy_form_list_move (self->form, self->path, from, to);
  if (open == (int) from)
    set_open (self, (int) to);
  else if (open >= 0 && from < (guint) open && to >= (guint) open)
    set_open (self, open - 1);
  else if (open >= 0 && from > (guint) open && to <= (guint) open)
    set_open (self, open + 1);
  if (kept != NULL)
    sy_step_edit_focus (SY_STEP_EDIT (self->edit), kept);
  sy_show_whole (row_at (self, to));
}

static void
dropped_cb (SyStepRow *row, guint from, SyStepList *self)
{
  move_to (self, from, sy_step_row_get_item (row));
}

static void
follow_form (SyStepList *self)
{
  guint n = sy_form_list_count (self->form, self->path), before = self->rows->len;
  const char *words = sy_form_get_problem (self->form, self->path);

  if (sy_form_is_missing (self->form, self->path) && !sy_form_get_ask_missing (self->form))
    words = NULL;
  sy_fact_frame_note (&self->frame, self->add, words, NULL);
  gtk_widget_set_visible (self->frame.note, words != NULL);
  if (self->open >= (int) n)
    {
      /* The keyboard must not be left nowhere. */
      if (gtk_widget_get_focus_child (self->box) == self->edit)
        gtk_widget_grab_focus (self->add);
      set_open (self, -1);
    }
  while (self->rows->len > n)
    {
      GtkWidget *last = row_at (self, self->rows->len - 1);

      if (gtk_widget_has_focus (last))
        gtk_widget_grab_focus (self->add);
      gtk_box_remove (GTK_BOX (self->box), last);
      g_ptr_array_set_size (self->rows, (int) self->rows->len - 1);
    }
  for (guint i = 0; i < self->rows->len; i++)
    sy_step_row_follow (SY_STEP_ROW (row_at (self, i)));
  while (self->rows->len < n)
    {
      GtkWidget *row = sy_step_row_new (self->form, self->path, self->rows->len);

      g_signal_connect (row, "clicked", G_CALLBACK (clicked_cb), self);
      g_signal_connect (row, "dropped", G_CALLBACK (dropped_cb), self);
      gtk_box_append (GTK_BOX (self->box), row);
      g_ptr_array_add (self->rows, row);
    }
  gtk_widget_set_sensitive (self->add, n < self->field->max_items);
  if (n == before)
    return;
  set_current (self, MIN (self->current, n > 0 ? n - 1 : 0));
  if (self->edit != NULL)
    sy_step_edit_set_count (SY_STEP_EDIT (self->edit), n);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyStepList *self)
{
  follow_form (self);
}

/* Topics: what is done with an item */

/* The item that the keyboard is on, or whose facts it is in; FALSE: none. */
static gboolean
find_current (SyStepList *self, guint *item)
{
  GtkWidget *child = gtk_widget_get_focus_child (self->box);

  if (child == NULL || self->rows->len == 0)
    return FALSE;
  *item = child == self->edit ? (guint) self->open : sy_step_row_get_item (SY_STEP_ROW (child));
  return *item < self->rows->len;
}

static void
open_new (SyStepList *self, guint item)
{
  set_current (self, item);
  set_open (self, (int) item);
  sy_step_edit_focus (SY_STEP_EDIT (self->edit), "label");
  sy_show_whole (row_at (self, item));
}

static void
insert (SyStepList *self, guint at, const char *kind)
{
  if (self->open >= (int) at)
    set_open (self, -1);
  if (sy_step_insert (self->form, self->path, at, kind))
    open_new (self, at);
}

static void
duplicate (SyStepList *self, guint item)
{
  if (self->open > (int) item)
    set_open (self, -1);
  if (sy_step_duplicate (self->form, self->path, item))
    open_new (self, item + 1);
}

static void
split (SyStepList *self, guint item)
{
  if (self->open > (int) item)
    set_open (self, -1);
  if (sy_step_split (self->form, self->path, item))
    open_new (self, item);
}

static void
remove_item (SyStepList *self, guint item)
{
  int open = self->open;

  if (open >= (int) item)
    set_open (self, -1);
  focus_row (self, item + 1 < self->rows->len ? item : item > 0 ? item - 1 : item);
  sy_form_list_remove (self->form, self->path, item);
  if (open > (int) item)
    set_open (self, open - 1);
  if (self->rows->len == 0)
    gtk_widget_grab_focus (self->add);
}

static void
act_cb (SyStepEdit *edit G_GNUC_UNUSED, guint action, SyStepList *self)
{
  guint item = (guint) self->open;

  switch ((SyListItemAction) action)
    {
    case SY_LIST_ITEM_DUPLICATE:
      duplicate (self, item);
      break;
    case SY_LIST_ITEM_UP:
      move_to (self, item, item - 1);
      break;
    case SY_LIST_ITEM_DOWN:
      move_to (self, item, item + 1);
      break;
    case SY_LIST_ITEM_REMOVE:
      remove_item (self, item);
      break;
    }
}

static void
split_cb (SyStepEdit *edit G_GNUC_UNUSED, SyStepList *self)
{
  split (self, (guint) self->open);
}

/* Topics: keys */

static void
do_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SyStepList *self = SY_STEP_LIST (widget);
  guint item;

  if (strcmp (name, "steps.add") == 0)
    insert (self, self->rows->len, g_variant_get_string (parameter, NULL));
  else if (!find_current (self, &item))
    return;
  else if (strcmp (name, "steps.insert") == 0)
    insert (self, item + 1, g_variant_get_string (parameter, NULL));
  else if (strcmp (name, "steps.duplicate") == 0)
    duplicate (self, item);
  else if (strcmp (name, "steps.split") == 0)
    split (self, item);
  else if (strcmp (name, "steps.up") == 0)
    move_to (self, item, item - 1);
  else if (strcmp (name, "steps.down") == 0)
    move_to (self, item, item + 1);
  else
    remove_item (self, item);
}

typedef enum { GO_UP, GO_DOWN, GO_FIRST, GO_LAST, TAKE_AWAY, ASK_ON_ROW, ASK } Key;

static void
ask (SyStepList *self, GtkWidget *at, gboolean inserts)
{
  self->inserts = inserts;
  if (self->kinds != NULL)
    sy_kind_popover_ask (SY_KIND_POPOVER (self->kinds), at);
  else
    insert (self, inserts ? self->current + 1 : self->rows->len, "");
}

static gboolean
key_cb (GtkWidget *widget, GVariant *args, gpointer user_data G_GNUC_UNUSED)
{
  SyStepList *self = SY_STEP_LIST (widget);
  const Key key = (Key) g_variant_get_int32 (args);
  guint item;

  if (!find_current (self, &item) || (key != ASK && !gtk_widget_has_focus (row_at (self, item))))
    return GDK_EVENT_PROPAGATE;
  switch (key)
    {
    case GO_UP:
      focus_row (self, item > 0 ? item - 1 : 0);
      break;
    case GO_DOWN:
      focus_row (self, MIN (item + 1, self->rows->len - 1));
      break;
    case GO_FIRST:
      focus_row (self, 0);
      break;
    case GO_LAST:
      focus_row (self, self->rows->len - 1);
      break;
    case TAKE_AWAY:
      remove_item (self, item);
      break;
    case ASK_ON_ROW:
    case ASK:
      if (self->rows->len >= self->field->max_items)
        return GDK_EVENT_PROPAGATE;
      set_current (self, item);
      ask (self, row_at (self, item), TRUE);
      break;
    }
  return GDK_EVENT_STOP;
}

static void
picked_cb (SyKindPopover *kinds G_GNUC_UNUSED, const char *kind, SyStepList *self)
{
  insert (self, self->inserts ? self->current + 1 : self->rows->len, kind);
}

static void
add_cb (GtkButton *button, SyStepList *self)
{
  ask (self, GTK_WIDGET (button), FALSE);
}

/* Topics: class */

static void
sy_step_list_dispose (GObject *object)
{
  SyStepList *self = SY_STEP_LIST (object);

  g_clear_pointer (&self->kinds, gtk_widget_unparent);
  g_clear_object (&self->form);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (sy_step_list_parent_class)->dispose (object);
}

static void
sy_step_list_class_init (SyStepListClass *class)
{
  static const struct
  {
    const char *name, *parameter;
    guint key;
    GdkModifierType with;
  } actions[] = {
    { "steps.add", "s", 0, 0 },
    { "steps.insert", "s", 0, 0 },
    { "steps.duplicate", NULL, GDK_KEY_d, GDK_CONTROL_MASK | GDK_SHIFT_MASK },
    { "steps.split", NULL, 0, 0 },
    { "steps.up", NULL, GDK_KEY_Up, GDK_ALT_MASK },
    { "steps.down", NULL, GDK_KEY_Down, GDK_ALT_MASK },
    { "steps.remove", NULL, 0, 0 },
  };
  static const struct
  {
    guint key;
    GdkModifierType with;
    Key does;
  } keys[] = {
    { GDK_KEY_Up, 0, GO_UP },          { GDK_KEY_Down, 0, GO_DOWN },        { GDK_KEY_Home, 0, GO_FIRST },
    { GDK_KEY_End, 0, GO_LAST },       { GDK_KEY_Delete, 0, TAKE_AWAY },    { GDK_KEY_Insert, 0, ASK_ON_ROW },
    { GDK_KEY_Return, GDK_CONTROL_MASK, ASK }, { GDK_KEY_KP_Enter, GDK_CONTROL_MASK, ASK },
  };
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sy_step_list_dispose;
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      gtk_widget_class_install_action (widget_class, actions[i].name, actions[i].parameter, do_action);
      if (actions[i].key != 0)
        gtk_widget_class_add_binding_action (widget_class, actions[i].key, actions[i].with, actions[i].name, NULL);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, keys[i].with, key_cb, "i", keys[i].does);
}

static void
sy_step_list_init (SyStepList *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->rows = g_ptr_array_new ();
  self->open = -1;
}

static GtkWidget *
new_add (SyStepList *self)
{
  const char *item = sy_translate (self->field->item_label != NULL ? self->field->item_label : self->field->label);
  g_autofree char *list = sy_form_dup_name (self->form, self->path, FALSE);
  /* Translators: a button that adds one more item to a list, e.g. "Add: Leg". */
  g_autofree char *label = g_strdup_printf (_("Add: %s"), item);
  g_autofree char *name = g_strdup_printf (_("%s: %s"), list, label);
  GtkWidget *button = gtk_button_new_with_label (label);

  sy_name (button, name);
  gtk_widget_set_name (button, self->path);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect (button, "clicked", G_CALLBACK (add_cb), self);
  return button;
}

gboolean
sy_step_list_suits (SyForm *form, const char *path)
{
  const SyField *field = sy_form_find_field (form, path);

  return field != NULL && field->type == SY_MEMBER_LIST && sy_step_facts_member (field) != NULL;
}

GtkWidget *
sy_step_list_new (SyForm *form, const char *path)
{
  SyStepList *self = g_object_new (SY_TYPE_STEP_LIST, NULL);
  const SyField *kind;
  g_autofree char *name = sy_form_dup_name (form, path, FALSE);

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  self->field = sy_form_find_field (form, path);
  sy_fact_frame_begin (&self->frame, GTK_BOX (self), self->field);
  gtk_widget_set_visible (self->frame.caption, FALSE);
  self->box = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "accessible-role",
                            GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  sy_name (self->box, name);
  gtk_box_append (GTK_BOX (self), self->box);
  self->add = new_add (self);
  gtk_box_append (GTK_BOX (self), self->add);
  sy_fact_frame_end (&self->frame, GTK_BOX (self));
  kind = sy_step_member (self->field, "kind");
  if (kind != NULL && kind->type == SY_MEMBER_CHOICE)
    {
      self->kinds = sy_kind_popover_new (kind, sy_translate (kind->label));
      gtk_widget_set_parent (self->kinds, GTK_WIDGET (self));
      g_signal_connect (self->kinds, "picked", G_CALLBACK (picked_cb), self);
    }
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
  return GTK_WIDGET (self);
}

int
sy_step_list_get_open (SyStepList *self)
{
  return self->open;
}

gboolean
sy_step_list_reveal (SyStepList *self, const char *path)
{
  gsize n = strlen (self->path);
  guint item;
  gboolean revealed = FALSE;

  if (!g_str_has_prefix (path, self->path) || path[n] != '[')
    return FALSE;
  item = (guint) g_ascii_strtoull (path + n + 1, NULL, 10);
  if (item >= self->rows->len)
    return FALSE;
  if (self->open != (int) item)
    {
      set_current (self, item);
      set_open (self, (int) item);
      revealed = TRUE;
    }
  return sy_step_edit_reveal (SY_STEP_EDIT (self->edit), path) || revealed;
}
