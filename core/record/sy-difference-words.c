/* SPDX-License-Identifier: MIT */
#include "sy-difference-words.h"

#include <string.h>

static const char *
in_words (SyTranslate translate, const char *msgid)
{
  return translate != NULL && *msgid != '\0' ? translate (msgid) : msgid;
}

/* As sy_field_find(), into the members of lists too. */
static const SyField *
find_field (const SyField *fields, size_t n, const char *path)
{
  for (;;)
    {
      const size_t length = strcspn (path, ".");
      const SyField *found = NULL;

      for (size_t i = 0; i < n && found == NULL; i++)
        if (strlen (fields[i].name) == length && memcmp (fields[i].name, path, length) == 0)
          found = &fields[i];
      if (found == NULL || path[length] == '\0')
        return found;
      fields = found->members;
      n = found->n_members;
      path += length + 1;
    }
}

const SyField *
sy_difference_field (const SyMethod *method, const char *path)
{
  g_autoptr (GString) plain = g_string_new (NULL);
  gboolean inside = FALSE;
  const SyField *found = NULL;

  for (const char *at = path; *at != '\0'; at++)
    {
      if (*at == '[')
        inside = TRUE;
      if (!inside)
        g_string_append_c (plain, *at);
      if (*at == ']')
        inside = FALSE;
    }
  if (method != NULL)
    found = find_field (method->fields, method->n_fields, plain->str);
  return found != NULL ? found : find_field (sy_common_fields, sy_n_common_fields, plain->str);
}

char *
sy_difference_name_words (const SyDifference *difference, SyTranslate translate)
{
  g_auto (GStrv) parts = g_strsplit (difference->name, ": ", -1);
  GString *out = g_string_new (NULL);

  for (char **part = parts; *part != NULL; part++)
    g_string_append_printf (out, "%s%s", part != parts ? ": " : "", in_words (translate, *part));
  if (difference->symbol[0] != '\0' && strcmp (difference->symbol, difference->name) != 0)
    g_string_append_printf (out, " (%s)", difference->symbol);
  return g_string_free (out, FALSE);
}

static const char *
choice_label (const SyField *field, const char *id, SyTranslate translate)
{
  for (gsize i = 0; i < field->n_choices; i++)
    if (strcmp (field->choices[i].id, id) == 0)
      return in_words (translate, field->choices[i].label);
  return id;
}

char *
sy_difference_fact_words (const SyMethod *method, const SyDifference *difference, const char *value, SyTranslate translate)
{
  const SyField *field = method != NULL ? sy_difference_field (method, difference->path) : NULL;
  g_auto (GStrv) ids = NULL;
  GString *out;

  if (field == NULL || field->n_choices == 0)
    return g_strdup (value);
  ids = g_strsplit (value, ", ", -1);
  out = g_string_new (NULL);
  for (char **id = ids; *id != NULL; id++)
    g_string_append_printf (out, "%s%s", id != ids ? ", " : "", choice_label (field, *id, translate));
  return g_string_free (out, FALSE);
}
