/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-difference-private.h"
#include "sy-words.h"

/* The fields that may stand at one place of a document: its heading, those of either revision's method, the common ones. */
#define TABLES_MAX 6
typedef struct
{
  struct
  {
    const SyField *fields;
    gsize n;
  } tables[TABLES_MAX];
  gsize n_tables;
} Fields;

static void
add_table (Fields *fields, const SyField *table, gsize n)
{
  for (gsize i = 0; i < fields->n_tables; i++)
    if (fields->tables[i].fields == table)
      return;
  if (table == NULL)
    return;
  fields->tables[fields->n_tables].fields = table;
  fields->tables[fields->n_tables++].n = n;
}

static const SyField *
find_field (const Fields *fields, const char *key)
{
  for (gsize i = 0; i < fields->n_tables; i++)
    for (gsize k = 0; k < fields->tables[i].n; k++)
      if (strcmp (fields->tables[i].fields[k].name, key) == 0)
        return &fields->tables[i].fields[k];
  return NULL;
}

/* The members of every field that is called so, in whichever table. */
static Fields
members_of (const Fields *fields, const char *key)
{
  Fields members = { .n_tables = 0 };

  for (gsize i = 0; i < fields->n_tables; i++)
    for (gsize k = 0; k < fields->tables[i].n; k++)
      if (strcmp (fields->tables[i].fields[k].name, key) == 0)
        add_table (&members, fields->tables[i].fields[k].members, fields->tables[i].fields[k].n_members);
  return members;
}

/* What every part begins with. */
static const SyField part_heading[] = {
  { .name = "method", .label = N_ ("Method"), .type = SY_MEMBER_TEXT },
};

/* The fields of facts inside facts: those of the methods that either side names. */
static void
add_part_tables (Fields *fields, const SyJson *before, const SyJson *after)
{
  const SyJson *sides[] = { after, before };

  add_table (fields, part_heading, G_N_ELEMENTS (part_heading));
  for (gsize i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      const char *id = sides[i] != NULL ? sy_json_member_text (sides[i], "method") : NULL;
      const SyMethod *method = id != NULL ? sy_method_find (id) : NULL;

      if (method != NULL)
        add_table (fields, method->fields, method->n_fields);
    }
  add_table (fields, sy_common_fields, sy_n_common_fields);
}

static void
append_value (GString *out, const SyJson *value, const char *between)
{
  if (value->type == SY_JSON_TEXT)
    g_string_append (out, value->text);
  else if (value->type != SY_JSON_ARRAY || value->first == NULL)
    sy_json_write_tree (out, value);
  else
    for (const SyJson *each = value->first; each != NULL; each = each->next)
      {
        if (each != value->first)
          g_string_append (out, each->type == SY_JSON_ARRAY ? "; " : between);
        append_value (out, each, between);
      }
}

/* A value as typed, without the marks of JSON where it can do without; NULL for none. */
static char *
value_text (const SyJson *value)
{
  GString *out;

  if (value == NULL)
    return NULL;
  out = g_string_new (NULL);
  append_value (out, value, ", ");
  return g_string_free (out, FALSE);
}

static gboolean
is_same (const SyJson *before, const SyJson *after)
{
  g_autoptr (GString) old = g_string_new (NULL);
  g_autoptr (GString) new = g_string_new (NULL);

  sy_json_write_tree (old, before);
  sy_json_write_tree (new, after);
  return g_string_equal (old, new);
}

/* A text brings its unit; so does a list with a text in it. */
static gboolean
is_bare (const SyJson *value)
{
  if (value->type == SY_JSON_ARRAY)
    for (const SyJson *each = value->first; each != NULL; each = each->next)
      if (!is_bare (each))
        return FALSE;
  return value->type != SY_JSON_TEXT;
}

static const char *
unit_of (const SyField *field, const SyJson *value, SyUnits units)
{
  const gboolean is_measure = field != NULL
                              && (field->type == SY_MEMBER_NUMBER || field->type == SY_MEMBER_VECTOR
                                  || field->type == SY_MEMBER_VECTORS);

  return is_measure && value != NULL && is_bare (value) ? sy_words_unit (field->kind, units) : "";
}

static void
compare_values (const SyComparison *comparison, const char *path, const char *name, const SyField *field,
                const SyJson *before, const SyJson *after)
{
  const char *unit_before = unit_of (field, before, comparison->before.units);
  const char *unit_after = unit_of (field, after, comparison->after.units);
  const char *symbol = field != NULL ? field->symbol : NULL;

  if (before != NULL && after != NULL && is_same (before, after))
    return;
  /* of "16 in" and a bare 41 only one needs its unit said; it is said as that of a value that has none */
  if (before != NULL && after != NULL && is_bare (before) != is_bare (after))
    sy_difference_add (comparison->out, SY_PART_FACTS, path, name, symbol, is_bare (before) ? unit_before : unit_after,
                       value_text (before), value_text (after));
  else
    sy_difference_add_measured (comparison->out, SY_PART_FACTS, path, name, symbol, unit_before, unit_after,
                                value_text (before), value_text (after));
}

static void compare_objects (const SyComparison *comparison, const char *path, const char *name, const Fields *fields,
                             const SyJson *before, const SyJson *after);

static gboolean
is_list_of_objects (const SyJson *value)
{
  if (value == NULL)
    return TRUE;
  if (value->type != SY_JSON_ARRAY)
    return FALSE;
  for (const SyJson *each = value->first; each != NULL; each = each->next)
    if (each->type != SY_JSON_OBJECT)
      return FALSE;
  return TRUE;
}

static const SyJson *
find_labelled (const SyJson *list, const char *label)
{
  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next)
    if (strcmp (sy_json_member_text (each, "label"), label) == 0)
      return each;
  return NULL;
}

/* Whether every member of a list has a label, and none the label of another. */
static gboolean
is_labelled (const SyJson *list)
{
  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next)
    if (sy_json_member_text (each, "label") == NULL)
      return FALSE;
  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next)
    if (find_labelled (list, sy_json_member_text (each, "label")) != each)
      return FALSE;
  return TRUE;
}

static void
compare_labelled (const SyComparison *comparison, const char *path, const char *item_name, const Fields *members,
                  const SyJson *label_of, const SyJson *before, const SyJson *after)
{
  const char *label = sy_json_member_text (label_of, "label");
  g_autofree char *at = g_strdup_printf ("%s[label=%s]", path, label);
  g_autofree char *name = g_strdup_printf ("%s %s", item_name, label);

  compare_objects (comparison, at, name, members, before, after);
}

/* The labels of those that are in the other list too, as the list has them. */
static char *
order_of (const SyJson *list, const SyJson *other)
{
  GString *out = g_string_new (NULL);

  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next)
    if (find_labelled (other, sy_json_member_text (each, "label")) != NULL)
      g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", sy_json_member_text (each, "label"));
  return g_string_free (out, FALSE);
}

static void
compare_lists (const SyComparison *comparison, const char *path, const char *name, const char *item_name,
               const Fields *members, const SyJson *before, const SyJson *after)
{
  const SyJson *old = before != NULL ? before->first : NULL, *new = after != NULL ? after->first : NULL;

  if (is_labelled (before) && is_labelled (after))
    {
      g_autofree char *order_before = order_of (before, after);
      g_autofree char *order_after = order_of (after, before);

      if (strcmp (order_before, order_after) != 0)
        {
          g_autofree char *order = g_strdup_printf ("%s: %s", name, N_ ("Order"));
          sy_difference_add (comparison->out, SY_PART_FACTS, path, order, NULL, "", g_steal_pointer (&order_before),
                             g_steal_pointer (&order_after));
        }
      for (; new != NULL; new = new->next)
        compare_labelled (comparison, path, item_name, members, new,
                          find_labelled (before, sy_json_member_text (new, "label")), new);
      for (; old != NULL; old = old->next)
        if (find_labelled (after, sy_json_member_text (old, "label")) == NULL)
          compare_labelled (comparison, path, item_name, members, old, old, NULL);
      return;
    }
  for (gsize i = 0; old != NULL || new != NULL; i++)
    {
      g_autofree char *at = g_strdup_printf ("%s[%" G_GSIZE_FORMAT "]", path, i);
      g_autofree char *item = g_strdup_printf ("%s %" G_GSIZE_FORMAT, item_name, i + 1);

      compare_objects (comparison, at, item, members, old, new);
      old = old != NULL ? old->next : NULL;
      new = new != NULL ? new->next : NULL;
    }
}

static gboolean
is_object_or_none (const SyJson *value)
{
  return value == NULL || value->type == SY_JSON_OBJECT;
}

/* One member of two objects; not absent in both. */
static void
compare_member (const SyComparison *comparison, const char *path, const char *name, const Fields *fields, const char *key,
                const SyJson *before, const SyJson *after)
{
  const SyField *field = find_field (fields, key);
  g_autofree char *at = *path != '\0' ? g_strdup_printf ("%s.%s", path, key) : g_strdup (key);
  const char *label = field != NULL ? field->label : at;
  /* an unknown member is told by its whole path */
  g_autofree char *whole
    = *name != '\0' && field != NULL ? g_strdup_printf ("%s: %s", name, label) : g_strdup (label);
  const gboolean is_empty = (before != NULL && before->n_children == 0) || (after != NULL && after->n_children == 0);
  Fields members = members_of (fields, key);

  if (field != NULL && field->type == SY_MEMBER_FACTS)
    add_part_tables (&members, before, after);
  /* told with what the revisions were made under, where that is not the same */
  if (*path == '\0' && strcmp (key, "method") == 0 && !comparison->same_method)
    return;
  if (is_object_or_none (before) && is_object_or_none (after) && !(is_empty && (before == NULL || after == NULL)))
    compare_objects (comparison, at, whole, &members, before, after);
  else if (is_list_of_objects (before) && is_list_of_objects (after) && !is_empty)
    compare_lists (comparison, at, whole, field != NULL && field->item_label != NULL ? field->item_label : whole, &members,
                   before, after);
  else
    compare_values (comparison, at, whole, field, before, after);
}

static void
compare_objects (const SyComparison *comparison, const char *path, const char *name, const Fields *fields,
                 const SyJson *before, const SyJson *after)
{
  /* one without members has nothing by which it could be told member by member */
  if ((before == NULL && after->first == NULL) || (after == NULL && before->first == NULL))
    {
      compare_values (comparison, path, name, NULL, before, after);
      return;
    }
  /* in the order of the fields */
  for (gsize i = 0; i < fields->n_tables; i++)
    for (gsize k = 0; k < fields->tables[i].n; k++)
      {
        const SyField *field = &fields->tables[i].fields[k];
        const SyJson *old = before != NULL ? sy_json_member (before, field->name) : NULL;
        const SyJson *new = after != NULL ? sy_json_member (after, field->name) : NULL;

        if (find_field (fields, field->name) == field && (old != NULL || new != NULL))
          compare_member (comparison, path, name, fields, field->name, old, new);
      }
  /* then what the fields do not know, as it was typed */
  for (const SyJson *each = after != NULL ? after->first : NULL; each != NULL; each = each->next)
    if (find_field (fields, each->key) == NULL)
      compare_member (comparison, path, name, fields, each->key, before != NULL ? sy_json_member (before, each->key) : NULL,
                      each);
  for (const SyJson *each = before != NULL ? before->first : NULL; each != NULL; each = each->next)
    if (find_field (fields, each->key) == NULL && (after == NULL || sy_json_member (after, each->key) == NULL))
      compare_member (comparison, path, name, fields, each->key, each, NULL);
}

/* What every document begins with. */
static const SyField heading[] = {
  { .name = "units", .label = N_ ("Units"), .type = SY_MEMBER_TEXT },
};

void
sy_difference_facts (const SyComparison *comparison)
{
  const SyMethod *methods[] = { comparison->after.method, comparison->before.method };
  const SyJson *old = comparison->before.root, *new = comparison->after.root;
  Fields fields = { .n_tables = 0 };

  if (old->type != SY_JSON_OBJECT || new->type != SY_JSON_OBJECT)
    {
      compare_values (comparison, "facts", N_ ("Facts"), NULL, old, new);
      return;
    }
  add_table (&fields, heading, G_N_ELEMENTS (heading));
  for (gsize i = 0; i < G_N_ELEMENTS (methods); i++)
    if (methods[i] != NULL)
      add_table (&fields, methods[i]->fields, methods[i]->n_fields);
  if (methods[0] != NULL || methods[1] != NULL)
    add_table (&fields, sy_common_fields, sy_n_common_fields);
  compare_objects (comparison, "", "", &fields, old, new);
}
