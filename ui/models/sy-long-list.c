/* SPDX-License-Identifier: MIT */
#include "sy-long-list.h"

#include <string.h>

#include "sy-i18n.h"

/* So many items say which columns there are. */
#define LOOKED_AT 200
#define COLUMNS_MAX 12

typedef struct
{
  const SyField *group; /* NULL: a member of the item itself */
  const SyField *field;
} Column;

struct _SyLongList
{
  GObject parent_instance;

  const SyField *list;
  GBytes *json;
  SyUnits units;
  GArray *starts;  /* of gsize: where each item begins, and where the last ends */
  GArray *columns; /* of Column */
  SyMemory *memory; /* of the item that was read last */
  const SyJson *item;
  guint item_place;
};

struct _SyLongRow
{
  GObject parent_instance;
  guint place;
};

static void sy_long_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyLongList, sy_long_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, sy_long_list_model_init))
G_DEFINE_FINAL_TYPE (SyLongRow, sy_long_row, G_TYPE_OBJECT)

static void
sy_long_row_class_init (SyLongRowClass *class G_GNUC_UNUSED)
{
}

static void
sy_long_row_init (SyLongRow *row G_GNUC_UNUSED)
{
}

guint
sy_long_row_get_place (SyLongRow *row)
{
  return row->place;
}

/* The model */

static guint
count (SyLongList *self)
{
  return self->starts->len > 0 ? self->starts->len - 1 : 0;
}

static GType
get_item_type (GListModel *model G_GNUC_UNUSED)
{
  return SY_TYPE_LONG_ROW;
}

static guint
get_n_items (GListModel *model)
{
  return count (SY_LONG_LIST (model));
}

static gpointer
get_item (GListModel *model, guint place)
{
  SyLongRow *row;

  if (place >= count (SY_LONG_LIST (model)))
    return NULL;
  row = g_object_new (SY_TYPE_LONG_ROW, NULL);
  row->place = place;
  return row;
}

static void
sy_long_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

static void
sy_long_list_finalize (GObject *object)
{
  SyLongList *self = SY_LONG_LIST (object);

  g_clear_pointer (&self->json, g_bytes_unref);
  g_clear_pointer (&self->memory, sy_memory_free);
  g_array_unref (self->starts);
  g_array_unref (self->columns);
  G_OBJECT_CLASS (sy_long_list_parent_class)->finalize (object);
}

static void
sy_long_list_class_init (SyLongListClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_long_list_finalize;
}

static void
sy_long_list_init (SyLongList *self)
{
  self->starts = g_array_new (FALSE, FALSE, sizeof (gsize));
  self->columns = g_array_new (FALSE, FALSE, sizeof (Column));
}

SyLongList *
sy_long_list_new (const SyField *list)
{
  SyLongList *self = g_object_new (SY_TYPE_LONG_LIST, NULL);

  self->list = list;
  return self;
}

/* Items */

/* The array was read before: it is JSON, so that brackets outside texts tell the items apart. */
static void
find_items (SyLongList *self)
{
  gsize length = 0;
  const char *text = self->json != NULL ? g_bytes_get_data (self->json, &length) : "";
  int depth = 0;
  gboolean in_text = FALSE;

  g_array_set_size (self->starts, 0);
  for (gsize i = 0; i < length; i++)
    {
      if (in_text)
        {
          if (text[i] == '\\')
            i++;
          else if (text[i] == '"')
            in_text = FALSE;
          continue;
        }
      if (text[i] == '"')
        in_text = TRUE;
      else if (text[i] == '[' || text[i] == '{')
        {
          if (text[i] == '{' && depth == 1)
            g_array_append_val (self->starts, i);
          depth++;
        }
      else if ((text[i] == ']' || text[i] == '}') && --depth == 0 && self->starts->len > 0)
        g_array_append_val (self->starts, i);
    }
}

/* Ends before the comma or bracket behind it. */
static const SyJson *
read_item (SyLongList *self, guint place)
{
  g_autofree SyProblems *problems = NULL;
  const char *text;
  gsize from, to;

  if (self->memory != NULL && self->item_place == place)
    return self->item;
  g_clear_pointer (&self->memory, sy_memory_free);
  self->item = NULL;
  self->item_place = place;
  text = g_bytes_get_data (self->json, NULL);
  from = g_array_index (self->starts, gsize, place);
  to = g_array_index (self->starts, gsize, place + 1);
  while (to > from && text[to - 1] != '}')
    to--;
  problems = g_new0 (SyProblems, 1);
  self->memory = sy_memory_new ();
  self->item = sy_json_scan (text + from, to - from, SY_JSON_DOCUMENT_MAX, self->memory, problems);
  return self->item;
}

static const SyJson *
find_value (const SyJson *item, const Column *column)
{
  const SyJson *at = item;

  if (at != NULL && column->group != NULL)
    at = sy_json_member (at, column->group->name);
  return at != NULL ? sy_json_member (at, column->field->name) : NULL;
}

/* Columns */

static gboolean
is_cell (const SyField *field)
{
  return field->type == SY_MEMBER_NUMBER || field->type == SY_MEMBER_CHOICE || field->type == SY_MEMBER_TEXT
         || field->type == SY_MEMBER_DATE || field->type == SY_MEMBER_BOOL;
}

static gboolean
is_given (SyLongList *self, const Column *column)
{
  for (guint i = 0; i < MIN (count (self), LOOKED_AT); i++)
    if (find_value (read_item (self, i), column) != NULL)
      return TRUE;
  return FALSE;
}

static void
add_column (SyLongList *self, GArray *columns, const SyField *group, const SyField *field)
{
  const Column column = { group, field };

  if (is_cell (field) && columns->len < COLUMNS_MAX && is_given (self, &column))
    g_array_append_val (columns, column);
}

/* What an item is called stands first. */
static gboolean
find_columns (SyLongList *self)
{
  g_autoptr (GArray) columns = g_array_new (FALSE, FALSE, sizeof (Column));
  gboolean same;

  for (int first = 1; first >= 0; first--)
    for (gsize i = 0; i < self->list->n_members; i++)
      {
        const SyField *member = &self->list->members[i];

        if ((strcmp (member->name, "label") == 0) == (first == 0))
          continue;
        if (member->type != SY_MEMBER_GROUP)
          add_column (self, columns, NULL, member);
        else
          for (gsize k = 0; k < member->n_members; k++)
            add_column (self, columns, member, &member->members[k]);
      }
  same = columns->len == self->columns->len
         && (columns->len == 0 || memcmp (columns->data, self->columns->data, columns->len * sizeof (Column)) == 0);
  g_array_unref (self->columns);
  self->columns = g_steal_pointer (&columns);
  return !same;
}

gboolean
sy_long_list_set (SyLongList *self, GBytes *json, SyUnits units)
{
  guint before = count (self);
  gboolean others;

  g_return_val_if_fail (SY_IS_LONG_LIST (self), FALSE);
  if (json == self->json && units == self->units)
    return FALSE;
  others = units != self->units;
  self->units = units;
  if (json != self->json)
    {
      g_clear_pointer (&self->json, g_bytes_unref);
      self->json = json != NULL ? g_bytes_ref (json) : NULL;
      g_clear_pointer (&self->memory, sy_memory_free);
      find_items (self);
      others |= find_columns (self);
    }
  g_list_model_items_changed (G_LIST_MODEL (self), 0, before, count (self));
  return others;
}

guint
sy_long_list_n_columns (SyLongList *self)
{
  return self->columns->len;
}

static const Column *
column_at (SyLongList *self, guint column)
{
  return &g_array_index (self->columns, Column, column);
}

/* Two facts of a group may share a symbol: a typical and a heaviest load are both L. */
static gboolean
has_own_symbol (const Column *column)
{
  const SyField *group = column->group;

  if (column->field->symbol == NULL)
    return FALSE;
  for (gsize i = 0; group != NULL && i < group->n_members; i++)
    if (&group->members[i] != column->field && g_strcmp0 (group->members[i].symbol, column->field->symbol) == 0)
      return FALSE;
  return TRUE;
}

char *
sy_long_list_dup_title (SyLongList *self, guint at)
{
  const Column *column = column_at (self, at);
  const SyField *field = column->field;
  gboolean by_symbol = has_own_symbol (column);
  const char *name = by_symbol ? field->symbol : sy_translate (field->label);
  const char *unit = field->type == SY_MEMBER_NUMBER ? sy_words_unit (field->kind, self->units) : "";
  g_autofree char *whole
      = column->group != NULL && by_symbol ? g_strdup_printf ("%s %s", sy_translate (column->group->label), name)
                                                       : g_strdup (name);

  return unit[0] != '\0' ? g_strdup_printf ("%s, %s", whole, unit) : g_steal_pointer (&whole);
}

gboolean
sy_long_list_is_figure (SyLongList *self, guint column)
{
  return column_at (self, column)->field->type == SY_MEMBER_NUMBER;
}

char *
sy_long_list_dup_cell (SyLongList *self, guint place, guint at)
{
  const Column *column = column_at (self, at);
  const SyJson *value = place < count (self) ? find_value (read_item (self, place), column) : NULL;

  if (value == NULL)
    return g_strdup ("");
  if (value->type == SY_JSON_TRUE || value->type == SY_JSON_FALSE)
    return g_strdup (value->type == SY_JSON_TRUE ? _("yes") : _("no"));
  if (value->type != SY_JSON_TEXT)
    return g_strndup (value->raw, value->raw_length);
  for (gsize i = 0; i < column->field->n_choices; i++)
    if (strcmp (column->field->choices[i].id, value->text) == 0)
      return g_strdup (sy_translate (column->field->choices[i].label));
  return g_strdup (value->text);
}
