/* SPDX-License-Identifier: MIT */
/* The texts of a form as a facts document. */
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

/* The facts of another method as they stand; what is no object goes as a text, so that the reader names the problem. */
static void
write_part (const char *text, GString *out)
{
  if (text[0] == '{')
    g_string_append (out, text);
  else
    sy_json_write_text (out, text);
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

/* What is there of the coordinates; a blank one between them is named as missing by the reader, the last where it need not be
   there is left away. */
static gboolean
write_vector (SyForm *form, const SyField *field, const char *path, GString *out)
{
  if (sy_form_is_blank (form, path))
    return FALSE;
  for (int i = 0; i < sy_field_most_coordinates (field); i++)
    {
      g_autofree char *at = g_strdup_printf ("%s[%d]", path, i);
      g_autofree char *text = g_strstrip (g_strdup (sy_form_get (form, at)));

      if (text[0] == '\0' && i >= sy_field_least_coordinates (field))
        break;
      g_string_append_c (out, i == 0 ? '[' : ',');
      if (text[0] != '\0')
        write_number (form, field, text, out);
      else
        g_string_append (out, "null");
    }
  g_string_append_c (out, ']');
  return TRUE;
}

/* Numbers of the items of a list of texts or vectors that are not blank. */
static GArray *
written_items (SyForm *form, const char *path)
{
  GArray *items = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < sy_form_list_count (form, path); i++)
    {
      g_autofree char *item = g_strdup_printf ("%s[%u]", path, i);

      if (!sy_form_is_blank (form, item))
        g_array_append_val (items, i);
    }
  return items;
}

/* A single one stands without a list. */
static gboolean
write_several (SyForm *form, const SyField *field, const char *path, GString *out)
{
  g_autoptr (GArray) items = written_items (form, path);
  gboolean list = items->len != 1;

  if (items->len == 0 && strcmp (sy_form_get (form, path), "0") != 0)
    return FALSE;
  if (list)
    g_string_append_c (out, '[');
  for (guint i = 0; i < items->len; i++)
    {
      g_autofree char *item = g_strdup_printf ("%s[%u]", path, g_array_index (items, guint, i));

      if (i > 0)
        g_string_append_c (out, ',');
      if (field->type == SY_MEMBER_VECTORS)
        write_vector (form, field, item, out);
      else
        sy_json_write_text (out, sy_form_get (form, item));
    }
  if (list)
    g_string_append_c (out, ']');
  return TRUE;
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
        gsize length;
        const char *json = sy_form_long_json (form, path, &length);

        if (json != NULL)
          {
            g_string_append_len (out, json, (gssize) length);
            return TRUE;
          }
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
      return write_vector (form, field, path, out);
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_TEXTS:
      return write_several (form, field, path, out);
    case SY_MEMBER_FACTS:
      if (!blank)
        write_part (stripped, out);
      return !blank;
    }
  g_return_val_if_reached (FALSE);
}

static char *
build (SyForm *form, gboolean with_units)
{
  GString *out = g_string_new ("{\"method\":");
  gboolean any = TRUE;

  sy_json_write_text (out, form->method->id);
  if (with_units)
    {
      g_string_append (out, ",\"units\":");
      sy_json_write_text (out, sy_units_id (form->now.units));
    }
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

char *
sy_form_build_document (SyForm *form)
{
  return build (form, TRUE);
}

char *
sy_form_build_part (SyForm *form)
{
  return build (form, FALSE);
}

/* Appends the numbers behind the name of a list of texts or vectors as the form has them. */
static void
append_written (SyForm *form, GString *path, const SyField *field, const guint *numbers, guint n)
{
  g_autoptr (GArray) items = written_items (form, path->str);
  gboolean vectors = field->type == SY_MEMBER_VECTORS;
  gboolean single = items->len == 1;
  guint item = n > 0 && !single ? numbers[0] : 0;
  const guint *coordinate = !vectors ? NULL : single ? (n > 0 ? &numbers[0] : NULL) : n > 1 ? &numbers[1] : NULL;

  if ((n == 0 && (!single || vectors)) || item >= items->len)
    return;
  g_string_append_printf (path, "[%u]", g_array_index (items, guint, item));
  if (coordinate != NULL)
    g_string_append_printf (path, "[%u]", *coordinate);
}

char *
sy_form_path_from_document (SyForm *form, const char *path)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_auto (GStrv) names = g_strsplit (path, ".", -1);

  for (guint i = 0; names[i] != NULL; i++)
    {
      gsize length = strcspn (names[i], "[");
      const char *bracket = names[i] + length;
      const SyField *field;
      guint numbers[2] = { 0, 0 }, n = 0;

      if (i > 0)
        g_string_append_c (out, '.');
      g_string_append_len (out, names[i], (gssize) length);
      field = sy_form_find_field (form, out->str);
      if (field == NULL || (field->type != SY_MEMBER_VECTORS && field->type != SY_MEMBER_TEXTS))
        {
          g_string_append (out, bracket);
          continue;
        }
      while (*bracket == '[' && n < G_N_ELEMENTS (numbers))
        {
          numbers[n++] = (guint) g_ascii_strtoull (bracket + 1, NULL, 10);
          bracket += strcspn (bracket, "]");
          bracket += *bracket == ']';
        }
      append_written (form, out, field, numbers, n);
    }
  return g_strdup (out->str);
}
