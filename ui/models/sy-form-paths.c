/* SPDX-License-Identifier: MIT */
/* Where a path leads in the table of fields, what it is called, and what its text says to a person. */
#include "sy-form-private.h"
#include "sy-i18n.h"

#include <string.h>

static const SyField *
find_member (const SyField *members, gsize n, const char *name, gsize length)
{
  for (gsize i = 0; i < n; i++)
    if (strlen (members[i].name) == length && strncmp (members[i].name, name, length) == 0)
      return &members[i];
  return NULL;
}

/* Follows a path down the table; @groups (may be NULL) receives the fields passed through. */
static const SyField *
follow (SyForm *form, const char *path, GPtrArray *groups)
{
  const SyField *field = NULL;
  const char *part = path;

  for (;;)
    {
      gsize length = strcspn (part, ".[");

      if (field == NULL)
        for (gsize i = 0; i < sy_form_n_fields (form) && field == NULL; i++)
          field = find_member (sy_form_field_at (form, i), 1, part, length);
      else
        field = find_member (field->members, field->n_members, part, length);
      if (field == NULL)
        return NULL;
      part += length;
      if (*part == '[')
        {
          part = strchr (part, ']');
          if (part == NULL || field->type != SY_MEMBER_LIST)
            return NULL;
          part++;
        }
      if (*part == '\0')
        return field;
      if (*part != '.' || field->n_members == 0)
        return NULL;
      part++;
      if (groups != NULL)
        g_ptr_array_add (groups, (gpointer) field);
    }
}

const SyField *
sy_form_find_field (SyForm *form, const char *path)
{
  g_return_val_if_fail (SY_IS_FORM (form), NULL);
  return path[0] != '\0' ? follow (form, path, NULL) : NULL;
}

char *
sy_form_dup_name (SyForm *form, const char *path, gboolean with_unit)
{
  g_autoptr (GPtrArray) groups = g_ptr_array_new ();
  const SyField *field = path[0] != '\0' ? follow (form, path, groups) : NULL;
  g_autofree char *name = NULL;
  const char *bracket;

  if (field == NULL)
    return g_strdup (path);
  name = field->symbol != NULL ? g_strdup_printf ("%s %s", sy_translate (field->label), field->symbol)
                               : g_strdup (sy_translate (field->label));
  for (guint i = groups->len; i > 0; i--)
    {
      const SyField *group = g_ptr_array_index (groups, i - 1);
      g_autofree char *inner = g_steal_pointer (&name);
      g_autofree char *outer = NULL;

      bracket = group->type == SY_MEMBER_LIST ? strchr (path, '[') : NULL;
      outer = bracket != NULL
                  ? g_strdup_printf ("%s %" G_GUINT64_FORMAT, sy_translate (group->label),
                                     g_ascii_strtoull (bracket + 1, NULL, 10) + 1)
                  : g_strdup (sy_translate (group->label));
      /* Translators: a fact and the group that it belongs to, e.g. "Origin: reach H". */
      name = g_strdup_printf (_("%s: %s"), outer, inner);
    }
  if (with_unit && field->type == SY_MEMBER_NUMBER)
    {
      const char *unit = sy_unit_name (field->kind, form->now.units);

      if (strcmp (unit, "1") != 0)
        return g_strdup_printf ("%s, %s", name, unit);
    }
  return g_steal_pointer (&name);
}

void
sy_form_walk (SyForm *form, const SyField *field, const char *path, SyLeafFunc visit, gpointer data)
{
  guint n = 1;

  if (field->type == SY_MEMBER_LIST)
    n = sy_form_count_items (form->now.texts, path);
  else if (field->type != SY_MEMBER_GROUP)
    {
      visit (form, field, path, data);
      return;
    }
  for (guint item = 0; item < n; item++)
    for (gsize i = 0; i < field->n_members; i++)
      {
        g_autofree char *at = field->type == SY_MEMBER_LIST
                                  ? g_strdup_printf ("%s[%u].%s", path, item, field->members[i].name)
                                  : g_strdup_printf ("%s.%s", path, field->members[i].name);

        sy_form_walk (form, &field->members[i], at, visit, data);
      }
}

static void
collect_path (SyForm *form, const SyField *field G_GNUC_UNUSED, const char *path, gpointer data)
{
  if (sy_form_get (form, path)[0] != '\0')
    g_ptr_array_add (data, g_strdup (path));
}

char **
sy_form_list_paths (SyForm *form)
{
  GPtrArray *paths = g_ptr_array_new ();

  for (gsize i = 0; i < sy_form_n_fields (form); i++)
    sy_form_walk (form, sy_form_field_at (form, i), sy_form_field_at (form, i)->name, collect_path, paths);
  g_ptr_array_add (paths, NULL);
  return (char **) g_ptr_array_free (paths, FALSE);
}

/* Numbers in another unit */

/* The quantity in words, "= 40.6 cm"; sets @written_in to the system whose unit was typed. */
static gboolean
parse_path (SyForm *form, const char *path, double *value, SyKind *kind, SyUnits *written_in)
{
  const SyField *field = sy_form_find_field (form, path);
  g_autofree char *text = g_strstrip (g_strdup (sy_form_get (form, path)));
  SyUnits other = form->now.units == SY_UNITS_METRIC ? SY_UNITS_US : SY_UNITS_METRIC;
  gsize used = 0;
  double bare;

  if (field == NULL || field->type != SY_MEMBER_NUMBER
      || strcmp (sy_unit_name (field->kind, SY_UNITS_METRIC), sy_unit_name (field->kind, SY_UNITS_US)) == 0
      || sy_quantity_parse (text, strlen (text), field->kind, form->now.units, false, value, NULL)
             != SY_TEXT_OK)
    return FALSE;
  *kind = field->kind;
  *written_in = form->now.units;
  if (sy_number_parse (text, strlen (text), &bare, &used) == SY_TEXT_OK)
    {
      const char *unit = text + used;

      while (*unit == ' ')
        unit++;
      if (*unit != '\0' && strcmp (unit, sy_unit_name (field->kind, form->now.units)) != 0)
        *written_in = other;
    }
  return TRUE;
}

static char *
aid_in (SyForm *form, double value, SyKind kind, SyUnits units)
{
  g_autofree char *words
      = sy_words_quantity (sy_unit_convert (kind, value, form->now.units, units), kind, units);

  return g_strdup_printf ("= %s", words);
}

char *
sy_form_get_number_as (SyForm *form, const char *path, SyUnits units)
{
  double value;
  SyKind kind;
  SyUnits written_in;

  if (!parse_path (form, path, &value, &kind, &written_in))
    return NULL;
  return aid_in (form, value, kind, units);
}

char *
sy_form_dup_aid (SyForm *form, const char *path)
{
  double value;
  SyKind kind;
  SyUnits written_in;

  if (!parse_path (form, path, &value, &kind, &written_in))
    return NULL;
  if (written_in != form->now.units)
    return aid_in (form, value, kind, form->now.units);
  return aid_in (form, value, kind,
                 form->now.units == SY_UNITS_METRIC ? SY_UNITS_US : SY_UNITS_METRIC);
}

/* As a person reads it */

static const SyChoice *
find_choice (const SyField *field, const char *id)
{
  for (gsize i = 0; i < field->n_choices; i++)
    if (strcmp (field->choices[i].id, id) == 0)
      return &field->choices[i];
  return NULL;
}

char *
sy_form_dup_shown (SyForm *form, const char *path)
{
  const SyField *field = sy_form_find_field (form, path);
  const char *text = sy_form_get (form, path);
  g_autoptr (GString) shown = g_string_new (NULL);

  if (field == NULL || text[0] == '\0')
    return g_strdup (text);
  if (field->type == SY_MEMBER_BOOL)
    return g_strdup (strcmp (text, "true") == 0 ? _("yes") : strcmp (text, "false") == 0 ? _("no") : text);
  if (field->type == SY_MEMBER_NUMBER && sy_form_is_json_number (text)
      && strcmp (sy_unit_name (field->kind, form->now.units), "1") != 0)
    return g_strdup_printf ("%s %s", text, sy_unit_name (field->kind, form->now.units));
  if (field->type != SY_MEMBER_CHOICE && field->type != SY_MEMBER_SET)
    return g_strdup (text);
  if (strcmp (text, "-") == 0)
    return g_strdup (_("asked, none applies"));
  g_auto (GStrv) ids = g_strsplit (text, " ", -1);
  for (guint i = 0; ids[i] != NULL; i++)
    {
      const SyChoice *choice = find_choice (field, ids[i]);

      if (shown->len > 0)
        g_string_append (shown, "; ");
      g_string_append (shown, choice != NULL ? sy_translate (choice->label) : ids[i]);
    }
  return g_strdup (shown->str);
}
