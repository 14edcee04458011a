/* SPDX-License-Identifier: MIT */
/* Facts inside facts: how one step of a die change moves its load. The outer form has them as one text, a facts
   document without units; a form of their own is where they are typed. */
#include "sy-form-private.h"
#include "sy-i18n.h"

#include <string.h>

/* NULL: the text is no document of a method. */
static SyForm *
read_part (SyDesk *desk, SyUnits units, const char *text, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *method = root != NULL && root->type == SY_JSON_OBJECT ? sy_json_member_text (root, "method") : NULL;
  const char *brace = strchr (text, '{');
  g_autoptr (SyForm) part = NULL;
  g_autofree char *whole = NULL;

  if (method == NULL || sy_method_find (method) == NULL)
    {
      g_set_error_literal (error, SY_FORM_ERROR, SY_FORM_ERROR_DOCUMENT, _("These are not facts of a method."));
      return NULL;
    }
  whole = g_strdup_printf ("{\"units\":\"%s\",%s", sy_units_id (units), brace + 1);
  part = sy_form_new (desk, method, units);
  if (!sy_form_load_document (part, whole, error))
    return NULL;
  return g_steal_pointer (&part);
}

gboolean
sy_form_is_part (SyForm *form, const char *path)
{
  const SyField *field = sy_form_find_field (form, path);

  return field != NULL && field->type == SY_MEMBER_FACTS;
}

SyForm *
sy_form_new_part (SyForm *form, const char *path, GError **error)
{
  g_return_val_if_fail (sy_form_is_part (form, path), NULL);
  return read_part (form->desk, form->now.units, sy_form_get (form, path), error);
}

void
sy_form_set_part (SyForm *form, const char *path, SyForm *part)
{
  g_autofree char *document = NULL;

  g_return_if_fail (sy_form_is_part (form, path) && part->now.units == form->now.units);
  document = sy_form_build_part (part);
  sy_form_set (form, path, document);
}

void
sy_form_begin_part (SyForm *form, const char *path, const char *method)
{
  g_autofree char *document = g_strdup_printf ("{\"method\":\"%s\"}", method);

  g_return_if_fail (sy_form_is_part (form, path) && sy_method_find (method) != NULL);
  sy_form_set_many (form, &path, (const char *const *) &document, 1);
}

void
sy_form_remove_part (SyForm *form, const char *path)
{
  const char *nothing = "";

  g_return_if_fail (sy_form_is_part (form, path));
  sy_form_set_many (form, &path, &nothing, 1);
}

gboolean
sy_form_may_be_part (SyForm *form, const SyMethod *method)
{
  for (gsize i = 0; i < sy_method_count () && sy_method_at (i) != form->method; i++)
    if (sy_method_at (i) == method)
      return strcmp (method->item_kind, "task") == 0 || strcmp (method->item_kind, "changeover") == 0;
  return FALSE;
}

/* The form of a whole document, in its own units; NULL: it may not stand inside @form. */
static SyForm *
read_whole (SyForm *form, const char *facts, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (facts, strlen (facts), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *id = root != NULL && root->type == SY_JSON_OBJECT ? sy_json_member_text (root, "method") : NULL;
  const SyMethod *method = id != NULL ? sy_method_find (id) : NULL;
  g_autoptr (SyForm) whole = NULL;

  if (method == NULL || !sy_form_may_be_part (form, method))
    {
      g_set_error_literal (error, SY_FORM_ERROR, SY_FORM_ERROR_DOCUMENT, _("These facts do not say how this load is moved."));
      return NULL;
    }
  whole = sy_form_new (form->desk, id, form->now.units);
  if (!sy_form_load_document (whole, facts, error))
    return NULL;
  return g_steal_pointer (&whole);
}

gboolean
sy_form_take_part (SyForm *form, const char *path, const char *facts, GError **error)
{
  static const char *const of_whole[] = { "avoid", "place", "as_of" };
  g_autoptr (SyForm) whole = NULL;
  g_autofree char *document = NULL;

  g_return_val_if_fail (sy_form_is_part (form, path), FALSE);
  whole = read_whole (form, facts, error);
  if (whole == NULL)
    return FALSE;
  sy_form_set_units (whole, form->now.units);
  for (gsize i = 0; i < G_N_ELEMENTS (of_whole); i++)
    {
      g_auto (GStrv) paths = sy_form_list_paths_below (whole, of_whole[i]);

      for (gsize k = 0; paths[k] != NULL; k++)
        sy_form_set (whole, paths[k], "");
    }
  document = sy_form_build_part (whole);
  sy_form_set_many (form, &path, (const char *const *) &document, 1);
  return TRUE;
}

void
sy_form_copy_part (SyForm *form, const char *path, const char *from)
{
  g_autofree char *document = NULL;

  g_return_if_fail (sy_form_is_part (form, path) && sy_form_is_part (form, from));
  document = g_strdup (sy_form_get (form, from));
  sy_form_set_many (form, &path, (const char *const *) &document, 1);
}

const SyMethod *
sy_form_get_part_method (SyForm *form, const char *path)
{
  const char *text = sy_form_get (form, path);
  g_autoptr (SyMemory) memory = NULL;
  g_autofree SyProblems *problems = NULL;

  if (text[0] == '\0')
    return NULL;
  memory = sy_memory_new ();
  problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *id = root != NULL && root->type == SY_JSON_OBJECT ? sy_json_member_text (root, "method") : NULL;
  return id != NULL ? sy_method_find (id) : NULL;
}

void
sy_form_part_write_units (SyForm *form, const char *path, SyUnits units)
{
  g_autoptr (SyForm) part = sy_form_new_part (form, path, NULL);
  g_autofree char *document = NULL;

  if (part == NULL)
    return;
  sy_form_set_units (part, units);
  document = sy_form_build_part (part);
  sy_form_put (form, path, document);
}

const char *
sy_form_split_part (SyForm *form, const char *path, char **outer)
{
  for (const char *dot = strchr (path, '.'); dot != NULL; dot = strchr (dot + 1, '.'))
    {
      g_autofree char *before = g_strndup (path, (gsize) (dot - path));

      if (sy_form_is_part (form, before))
        {
          *outer = g_steal_pointer (&before);
          return dot + 1;
        }
    }
  return NULL;
}

char *
sy_form_part_problem_words (SyForm *form, const char *path, const char *inside, const SyProblem *problem)
{
  g_autoptr (SyForm) part = sy_form_new_part (form, path, NULL);
  g_autofree char *outer = NULL, *of = NULL;
  const char *deeper;

  if (part == NULL)
    return NULL;
  deeper = sy_form_split_part (part, inside, &outer);
  if (deeper != NULL)
    return sy_form_part_problem_words (part, outer, deeper, problem);
  of = sy_form_path_from_document (part, inside);
  return sy_form_problem_to_words (part, problem, of, of);
}
