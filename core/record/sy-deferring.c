/* SPDX-License-Identifier: MIT */
#include "sy-deferring.h"

#include <string.h>

typedef struct
{
  char *title, *section;
  gboolean from_memory;
} Row;

static void
row_free (gpointer data)
{
  Row *row = data;

  g_free (row->title);
  g_free (row->section);
  g_free (row);
}

SyDeferring *
sy_deferring_new (void)
{
  SyDeferring *self = g_new0 (SyDeferring, 1);

  self->rows = g_ptr_array_new_with_free_func (row_free);
  return self;
}

void
sy_deferring_free (SyDeferring *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->rows);
  g_free (self);
}

/* Each once; from memory where one of those that say it has it so. */
static void
add (SyDeferring *self, const char *title, const char *section, gboolean from_memory)
{
  Row *row;

  for (guint i = 0; i < self->rows->len; i++)
    {
      row = self->rows->pdata[i];
      if (strcmp (row->title, title) == 0 && strcmp (row->section, section) == 0)
        {
          row->from_memory = row->from_memory || from_memory;
          return;
        }
    }
  row = g_new0 (Row, 1);
  row->title = g_strdup (title);
  row->section = g_strdup (section);
  row->from_memory = from_memory;
  g_ptr_array_add (self->rows, row);
}

void
sy_deferring_add_policy (SyDeferring *self, const SyPolicy *policy, const SyMethod *method)
{
  const SyDefersTo *row;

  self->said = self->said || sy_policy_says_defers_to (policy);
  for (int i = 0; (row = sy_policy_defers_to (policy, method, i)) != NULL; i++)
    add (self, row->title, row->section, row->from_memory);
}

static gboolean
is_about (const SyJson *row, const char *const *methods)
{
  const SyJson *of = sy_json_member (row, "methods");

  for (const SyJson *each = of != NULL ? of->first : NULL; each != NULL; each = each->next)
    if (each->type == SY_JSON_TEXT && g_strv_contains (methods, each->text))
      return TRUE;
  return of == NULL;
}

/* @methods NULL: all of the rows. */
static void
add_rows (SyDeferring *self, const SyJson *rows, const char *const *methods)
{
  for (const SyJson *row = rows != NULL ? rows->first : NULL; row != NULL; row = row->next)
    {
      const char *title = sy_json_member_text (row, "title"), *section = sy_json_member_text (row, "section");
      const SyJson *memory = sy_json_member (row, "from_memory");

      if (title != NULL && (methods == NULL || is_about (row, methods)))
        add (self, title, section != NULL ? section : "", memory != NULL && memory->type == SY_JSON_TRUE);
    }
}

void
sy_deferring_add_findings (SyDeferring *self, const char *findings)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (findings, strlen (findings), SY_JSON_DOCUMENT_MAX, memory, problems);
  const SyJson *rows = sy_json_member (root, "defers_to");

  self->said = self->said || rows != NULL;
  add_rows (self, rows, NULL);
}

void
sy_deferring_add_stored_policy (SyDeferring *self, const SyJson *policy, const char *const *methods)
{
  const SyJson *region = sy_json_member (policy, "region"), *rules = sy_json_member (policy, "rules");

  self->said = self->said || region != NULL || (rules != NULL && rules->n_children > 0);
  add_rows (self, sy_json_member (region, "defers_to"), methods);
  add_rows (self, rules, methods);
}

void
sy_deferring_add_all (SyDeferring *self, const SyDeferring *other)
{
  self->said = self->said || other->said;
  for (guint i = 0; i < other->rows->len; i++)
    {
      const Row *row = other->rows->pdata[i];

      add (self, row->title, row->section, row->from_memory);
    }
}

/* A title with all its sections, where it first stands. */
static void
say_title (GString *out, const SyDeferring *self, guint first, SyTranslate translate)
{
  static const char from_memory[] = N_ ("from memory");
  const char *title = ((const Row *) self->rows->pdata[first])->title, *between = " ";

  g_string_append (out, title);
  for (guint i = first; i < self->rows->len; i++)
    {
      const Row *row = self->rows->pdata[i];

      if (strcmp (row->title, title) != 0)
        continue;
      if (*row->section != '\0')
        g_string_append_printf (out, "%s%s", between, row->section);
      if (row->from_memory)
        g_string_append_printf (out, " (%s)", translate != NULL ? translate (from_memory) : from_memory);
      between = ", ";
    }
}

char *
sy_deferring_words (const SyDeferring *self, SyTranslate translate)
{
  g_autoptr (GString) titles = g_string_new (NULL);

  if (!self->said)
    return g_strdup ("");
  for (guint i = 0; i < self->rows->len; i++)
    {
      gboolean told = FALSE;

      for (guint k = 0; k < i && !told; k++)
        told = strcmp (((const Row *) self->rows->pdata[k])->title, ((const Row *) self->rows->pdata[i])->title) == 0;
      if (told)
        continue;
      if (titles->len > 0)
        g_string_append (titles, "; ");
      say_title (titles, self, i, translate);
    }
  if (titles->len == 0)
    return sy_words_say (translate, N_ ("Defers to: local regulations and a competent person."), NULL);
  return sy_words_say (translate, N_ ("Defers to: {titles}; local regulations and a competent person."), "titles",
                       titles->str, NULL);
}
