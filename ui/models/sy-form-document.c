/* SPDX-License-Identifier: MIT */
/* The texts of a form as a facts document, and a facts document as texts. */
#include "sy-i18n.h"

#include "sy-form-private.h"

#include <string.h>

gsize
sy_form_n_fields (SyForm *form)
{
  return sy_n_common_fields + form->method->n_fields;
}

const SyField *
sy_form_field_at (SyForm *form, gsize i)
{
  return i < sy_n_common_fields ? &sy_common_fields[i]
                                : &form->method->fields[i - sy_n_common_fields];
}

static const char *
skip_digits (const char *p)
{
  while (g_ascii_isdigit (*p))
    p++;
  return p;
}

/* RFC 8259, section 6. */
gboolean
sy_form_is_json_number (const char *text)
{
  const char *p = text;

  if (*p == '-')
    p++;
  if (*p == '0')
    p++;
  else if (g_ascii_isdigit (*p))
    p = skip_digits (p);
  else
    return FALSE;
  if (*p == '.')
    {
      if (!g_ascii_isdigit (p[1]))
        return FALSE;
      p = skip_digits (p + 1);
    }
  if (*p == 'e' || *p == 'E')
    {
      p++;
      if (*p == '+' || *p == '-')
        p++;
      if (!g_ascii_isdigit (*p))
        return FALSE;
      p = skip_digits (p);
    }
  return *p == '\0';
}

guint
sy_form_count_items (GHashTable *texts, const char *path)
{
  const char *count = g_hash_table_lookup (texts, path);

  return count != NULL ? (guint) g_ascii_strtoull (count, NULL, 10) : 0;
}

/* A number as typed: a bare one stays a JSON number where JSON allows the spelling; otherwise it becomes text with
   the unit that was meant. What cannot be read goes as it is, so that the reader names the problem. */
static void
write_number (SyForm *form, const SyField *field, const char *typed, GString *out)
{
  g_autofree char *text = g_strstrip (g_strdup (typed));
  const char *unit = sy_unit_name (field->kind, form->now.units);
  double value;
  bool had_unit = true;

  if (sy_form_is_json_number (text))
    {
      g_string_append (out, text);
      return;
    }
  if (sy_quantity_parse (text, strlen (text), field->kind, form->now.units, false, &value,
                         &had_unit) == SY_TEXT_OK
      && !had_unit)
    {
      if (strcmp (unit, "1") == 0)
        {
          sy_json_write_number (out, value);
          return;
        }
      g_autofree char *with_unit = g_strdup_printf ("%s %s", text, unit);
      sy_json_write_text (out, with_unit);
      return;
    }
  sy_json_write_text (out, text);
}

static void
write_set (const char *text, GString *out)
{
  g_auto (GStrv) ids = g_strsplit_set (text, " \t\n", -1);
  gboolean any = FALSE;

  g_string_append_c (out, '[');
  for (guint i = 0; ids[i] != NULL; i++)
    {
      if (ids[i][0] == '\0' || strcmp (ids[i], "-") == 0)
        continue;
      if (any)
        g_string_append_c (out, ',');
      sy_json_write_text (out, ids[i]);
      any = TRUE;
    }
  g_string_append_c (out, ']');
}

static gboolean write_field (SyForm *form, const SyField *field, const char *path, GString *out);

static void
write_key (GString *out, const char *key, gboolean *any)
{
  if (*any)
    g_string_append_c (out, ',');
  *any = TRUE;
  sy_json_write_text (out, key);
  g_string_append_c (out, ':');
}

/* The members that have something to say; TRUE when there was one. */
static gboolean
write_members (SyForm *form, const SyField *group, const char *path, GString *out)
{
  gboolean any = FALSE;

  g_string_append_c (out, '{');
  for (gsize i = 0; i < group->n_members; i++)
    {
      const SyField *member = &group->members[i];
      g_autofree char *member_path = g_strdup_printf ("%s.%s", path, member->name);
      g_autoptr (GString) value = g_string_new (NULL);

      if (write_field (form, member, member_path, value))
        {
          write_key (out, member->name, &any);
          g_string_append_len (out, value->str, (gssize) value->len);
        }
    }
  g_string_append_c (out, '}');
  return any;
}

/* Appends the value; FALSE: the fact is absent and what was appended is to be thrown away. */
static gboolean
write_field (SyForm *form, const SyField *field, const char *path, GString *out)
{
  const char *text = sy_form_get (form, path);
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  gboolean blank = stripped[0] == '\0';

  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
      if (!blank)
        write_number (form, field, text, out);
      return !blank;
    case SY_MEMBER_BOOL:
      if (strcmp (text, "true") == 0 || strcmp (text, "false") == 0)
        g_string_append (out, text);
      else if (!blank)
        sy_json_write_text (out, text);
      return !blank;
    case SY_MEMBER_SET:
      if (!blank)
        write_set (text, out);
      return !blank;
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_DATE:
      if (!blank)
        sy_json_write_text (out, stripped);
      return !blank;
    case SY_MEMBER_TEXT:
      if (!blank)
        sy_json_write_text (out, text);
      return !blank;
    case SY_MEMBER_GROUP:
      /* A required group is there even when empty, so that its missing members are named one by one. */
      return write_members (form, field, path, out) || field->required;
    case SY_MEMBER_LIST:
      {
        guint n = sy_form_count_items (form->now.texts, path);

        g_string_append_c (out, '[');
        for (guint i = 0; i < n; i++)
          {
            g_autofree char *item = g_strdup_printf ("%s[%u]", path, i);

            if (i > 0)
              g_string_append_c (out, ',');
            write_members (form, field, item, out);
          }
        g_string_append_c (out, ']');
        return n > 0;
      }
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_TEXTS:
      return FALSE;
    }
  g_return_val_if_reached (FALSE);
}

char *
sy_form_build_document (SyForm *form)
{
  GString *out = g_string_new ("{\"method\":");
  gboolean any = TRUE;

  sy_json_write_text (out, form->method->id);
  g_string_append (out, ",\"units\":");
  sy_json_write_text (out, sy_units_id (form->now.units));
  for (gsize i = 0; i < sy_form_n_fields (form); i++)
    {
      const SyField *field = sy_form_field_at (form, i);
      g_autoptr (GString) value = g_string_new (NULL);

      if (write_field (form, field, field->name, value))
        {
          write_key (out, field->name, &any);
          g_string_append_len (out, value->str, (gssize) value->len);
        }
    }
  g_string_append_c (out, '}');
  return g_string_free (out, FALSE);
}

/* A document as texts */

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
                            GHashTable *texts, GError **error);

static gboolean
read_members (const SyField *group, const char *path, const SyJson *object, GHashTable *texts,
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
      if (!read_value (member, member_path, value, texts, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_set (const char *path, const SyJson *value, GHashTable *texts, GError **error)
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
  g_hash_table_insert (texts, g_strdup (path), g_strdup (ids->len > 0 ? ids->str : "-"));
  return TRUE;
}

static gboolean
read_list (const SyField *field, const char *path, const SyJson *value, GHashTable *texts,
           GError **error)
{
  guint n = 0;

  if (value->type != SY_JSON_ARRAY)
    return refuse (error, path);
  for (const SyJson *item = value->first; item != NULL; item = item->next, n++)
    {
      g_autofree char *item_path = g_strdup_printf ("%s[%u]", path, n);

      if (!read_members (field, item_path, item, texts, error))
        return FALSE;
    }
  if (n > 0)
    g_hash_table_insert (texts, g_strdup (path), g_strdup_printf ("%u", n));
  return TRUE;
}

static gboolean
read_value (const SyField *field, const char *path, const SyJson *value, GHashTable *texts,
            GError **error)
{
  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_BOOL:
    case SY_MEMBER_TEXT:
    case SY_MEMBER_DATE:
      if (value->type == SY_JSON_ARRAY || value->type == SY_JSON_OBJECT
          || value->type == SY_JSON_NULL)
        return refuse (error, path);
      g_hash_table_insert (texts, g_strdup (path), raw_text (value));
      return TRUE;
    case SY_MEMBER_SET:
      return read_set (path, value, texts, error);
    case SY_MEMBER_GROUP:
      return read_members (field, path, value, texts, error);
    case SY_MEMBER_LIST:
      return read_list (field, path, value, texts, error);
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_TEXTS:
      return refuse (error, path);
    }
  g_return_val_if_reached (FALSE);
}

gboolean
sy_form_read_document (SyForm *form, const char *facts, GHashTable *texts, SyUnits *units,
                       GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (facts, strlen (facts), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *method = root != NULL ? sy_json_member_text (root, "method") : NULL;
  const char *id = root != NULL ? sy_json_member_text (root, "units") : NULL;

  if (method == NULL || id == NULL || strcmp (method, form->method->id) != 0
      || !sy_units_from_id (id, units))
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
      if (!read_value (field, value->key, value, texts, error))
        return FALSE;
    }
  return TRUE;
}
