/* SPDX-License-Identifier: MIT */
/* A facts document as the texts of a form. */
#include "sy-i18n.h"

#include "sy-form-private.h"

#include <string.h>

static gboolean
refuse (GError **error, const char *path)
{
  g_set_error (error, SY_FORM_ERROR, SY_FORM_ERROR_DOCUMENT,
               _("The stored facts hold something that this edition does not know: %s"), path);
  return FALSE;
}

static char *
raw_text (const SyJson *value)
{
  if (value->type == SY_JSON_TEXT)
    return g_strndup (value->text, value->text_length);
  return g_strndup (value->raw, value->raw_length);
}

static gboolean read_value (const SyField *field, const char *path, const SyJson *value,
                            SyFormState *to, GError **error);

static gboolean
read_members (const SyField *group, const char *path, const SyJson *object, SyFormState *to,
              GError **error)
{
  if (object->type != SY_JSON_OBJECT)
    return refuse (error, path);
  for (const SyJson *value = object->first; value != NULL; value = value->next)
    {
      const SyField *member = NULL;
      g_autofree char *member_path = g_strdup_printf ("%s.%s", path, value->key);

      for (gsize i = 0; i < group->n_members && member == NULL; i++)
        if (strcmp (group->members[i].name, value->key) == 0)
          member = &group->members[i];
      if (member == NULL)
        return refuse (error, member_path);
      if (!read_value (member, member_path, value, to, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_set (const char *path, const SyJson *value, SyFormState *to, GError **error)
{
  g_autoptr (GString) ids = g_string_new (NULL);

  if (value->type != SY_JSON_ARRAY)
    return refuse (error, path);
  for (const SyJson *id = value->first; id != NULL; id = id->next)
    {
      if (id->type != SY_JSON_TEXT)
        return refuse (error, path);
      if (ids->len > 0)
        g_string_append_c (ids, ' ');
      g_string_append (ids, id->text);
    }
  g_hash_table_insert (to->texts, g_strdup (path), g_strdup (ids->len > 0 ? ids->str : "-"));
  return TRUE;
}

gboolean
sy_form_read_list (const SyField *field, const char *path, const SyJson *value, SyFormState *to, GError **error)
{
  guint n = 0;

  if (value->type != SY_JSON_ARRAY)
    return refuse (error, path);
  if (sy_form_keeps_whole (field, path, (guint) value->n_children))
    {
      g_hash_table_insert (to->longs, g_strdup (path), g_bytes_new (value->raw, value->raw_length));
      g_hash_table_insert (to->texts, g_strdup (path), g_strdup_printf ("%" G_GSIZE_FORMAT, value->n_children));
      return TRUE;
    }
  for (const SyJson *item = value->first; item != NULL; item = item->next, n++)
    {
      g_autofree char *item_path = g_strdup_printf ("%s[%u]", path, n);

      if (!read_members (field, item_path, item, to, error))
        return FALSE;
    }
  if (n > 0)
    g_hash_table_insert (to->texts, g_strdup (path), g_strdup_printf ("%u", n));
  return TRUE;
}

static gboolean
is_plain (const SyJson *value)
{
  return value->type != SY_JSON_ARRAY && value->type != SY_JSON_OBJECT && value->type != SY_JSON_NULL;
}

/* A coordinate that was left blank is null. */
static gboolean
read_vector (const SyField *field, const char *path, const SyJson *value, SyFormState *to, GError **error)
{
  guint n = 0;

  if (value->type != SY_JSON_ARRAY || value->n_children > (gsize) sy_field_most_coordinates (field)
      || value->n_children < (gsize) sy_field_least_coordinates (field))
    return refuse (error, path);
  for (const SyJson *at = value->first; at != NULL; at = at->next, n++)
    if (is_plain (at))
      g_hash_table_insert (to->texts, g_strdup_printf ("%s[%u]", path, n), raw_text (at));
    else if (at->type != SY_JSON_NULL)
      return refuse (error, path);
  return TRUE;
}

/* One vector or text, or a list of them. */
static gboolean
read_several (const SyField *field, const char *path, const SyJson *value, SyFormState *to,
              GError **error)
{
  gboolean vectors = field->type == SY_MEMBER_VECTORS;
  gboolean list = value->type == SY_JSON_ARRAY
                  && (!vectors || value->first == NULL || value->first->type == SY_JSON_ARRAY);
  guint n = 0;

  for (const SyJson *item = list ? value->first : value; item != NULL; item = list ? item->next : NULL, n++)
    {
      g_autofree char *item_path = g_strdup_printf ("%s[%u]", path, n);

      if (vectors)
        {
          if (!read_vector (field, item_path, item, to, error))
            return FALSE;
        }
      else if (item->type != SY_JSON_TEXT)
        return refuse (error, path);
      else
        g_hash_table_insert (to->texts, g_strdup (item_path), raw_text (item));
    }
  g_hash_table_insert (to->texts, g_strdup (path), g_strdup_printf ("%u", n));
  return TRUE;
}

static gboolean
read_value (const SyField *field, const char *path, const SyJson *value, SyFormState *to,
            GError **error)
{
  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_BOOL:
    case SY_MEMBER_TEXT:
    case SY_MEMBER_DATE:
      if (!is_plain (value))
        return refuse (error, path);
      g_hash_table_insert (to->texts, g_strdup (path), raw_text (value));
      return TRUE;
    case SY_MEMBER_SET:
      return read_set (path, value, to, error);
    case SY_MEMBER_GROUP:
      return read_members (field, path, value, to, error);
    case SY_MEMBER_LIST:
      return sy_form_read_list (field, path, value, to, error);
    case SY_MEMBER_VECTOR:
      return read_vector (field, path, value, to, error);
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_TEXTS:
      return read_several (field, path, value, to, error);
    case SY_MEMBER_FACTS:
      if (value->type != SY_JSON_OBJECT)
        return refuse (error, path);
      g_hash_table_insert (to->texts, g_strdup (path), raw_text (value));
      return TRUE;
    }
  g_return_val_if_reached (FALSE);
}

gboolean
sy_form_read_document (SyForm *form, const char *facts, SyFormState *to, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (facts, strlen (facts), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *method = root != NULL ? sy_json_member_text (root, "method") : NULL;
  const char *id = root != NULL ? sy_json_member_text (root, "units") : NULL;

  if (method == NULL || id == NULL || strcmp (method, form->method->id) != 0
      || !sy_units_from_id (id, &to->units))
    {
      g_set_error (error, SY_FORM_ERROR, SY_FORM_ERROR_DOCUMENT,
                   _("This is not a facts document of the method “%s”."), form->method->id);
      return FALSE;
    }
  for (const SyJson *value = root->first; value != NULL; value = value->next)
    {
      const SyField *field = NULL;

      if (strcmp (value->key, "method") == 0 || strcmp (value->key, "units") == 0)
        continue;
      for (gsize i = 0; i < sy_form_n_fields (form) && field == NULL; i++)
        if (strcmp (sy_form_field_at (form, i)->name, value->key) == 0)
          field = sy_form_field_at (form, i);
      if (field == NULL)
        return refuse (error, value->key);
      if (!read_value (field, value->key, value, to, error))
        return FALSE;
    }
  return TRUE;
}
