/* SPDX-License-Identifier: MIT */
/* What comes of the texts of a form: the assessment, or the problems and where they belong. */
#include "sy-form-private.h"

#include <string.h>

void
sy_form_problem_free (gpointer data)
{
  SyFormProblem *problem = data;

  g_free (problem->path);
  g_free (problem->words);
  g_free (problem);
}

static void
collect_first (SyForm *form, const SyField *field, const char *path, gpointer data)
{
  char **found = data;

  if (found[0] == NULL)
    found[0] = g_strdup (path);
  if (found[1] == NULL && sy_form_get (form, path)[0] == '\0' && field->required)
    found[1] = g_strdup (path);
}

/* A problem of a whole group belongs where something can be typed: its first blank fact, or its first. */
static char *
place_of_problem (SyForm *form, const char *problem_path)
{
  const char *path = g_str_has_prefix (problem_path, "$.") ? problem_path + 2 : "";
  const SyField *field = sy_form_find_field (form, path);
  char *found[2] = { NULL, NULL };
  char *place;

  if (field == NULL)
    return g_strdup ("");
  if (field->type != SY_MEMBER_GROUP
      && !(field->type == SY_MEMBER_LIST && sy_form_list_count (form, path) > 0))
    return g_strdup (path);
  sy_form_walk (form, field, path, collect_first, found);
  place = g_strdup (found[1] != NULL ? found[1] : found[0] != NULL ? found[0] : path);
  g_free (found[0]);
  g_free (found[1]);
  return place;
}

static SyFormProblem *
find_problem (SyForm *form, const char *path)
{
  for (guint i = 0; i < form->problems->len; i++)
    {
      SyFormProblem *problem = g_ptr_array_index (form->problems, i);

      if (strcmp (problem->path, path) == 0)
        return problem;
    }
  return NULL;
}

static void
add_problems (SyForm *form, const SyProblems *problems, gboolean missing)
{
  for (int i = 0; i < problems->count; i++)
    {
      const SyProblem *problem = &problems->items[i];
      g_autofree char *path = place_of_problem (form, problem->path);
      SyFormProblem *kept;

      if ((problem->kind == SY_PROBLEM_MISSING) != missing
          || (path[0] != '\0' && find_problem (form, path) != NULL))
        continue;
      kept = g_new0 (SyFormProblem, 1);
      kept->missing = missing;
      kept->words = sy_form_problem_to_words (form, problem, path);
      kept->path = g_steal_pointer (&path);
      g_ptr_array_add (form->problems, kept);
    }
}

static void
refresh (SyForm *form)
{
  g_autofree char *document = NULL;
  g_autofree SyProblems *problems = NULL;

  if (!form->stale)
    return;
  form->stale = FALSE;
  problems = g_new0 (SyProblems, 1);
  document = sy_form_build_document (form);
  g_clear_pointer (&form->assessment, sy_assessment_unref);
  g_ptr_array_set_size (form->problems, 0);
  form->assessment = sy_desk_assess (form->desk, document, strlen (document),
                                     SY_JUDGE_RECORD | SY_JUDGE_REMEDIES | SY_JUDGE_SPREAD, problems);
  if (form->assessment == NULL)
    {
      add_problems (form, problems, FALSE);
      add_problems (form, problems, TRUE);
    }
}

SyAssessment *
sy_form_get_assessment (SyForm *form)
{
  refresh (form);
  return form->assessment;
}

const char *
sy_form_get_problem (SyForm *form, const char *path)
{
  SyFormProblem *problem;

  refresh (form);
  problem = find_problem (form, path);
  return problem != NULL ? problem->words : NULL;
}

gboolean
sy_form_is_missing (SyForm *form, const char *path)
{
  SyFormProblem *problem;

  refresh (form);
  problem = find_problem (form, path);
  return problem != NULL && problem->missing;
}

guint
sy_form_count_problems (SyForm *form)
{
  refresh (form);
  return form->problems->len;
}

guint
sy_form_count_missing (SyForm *form)
{
  guint n = 0;

  refresh (form);
  for (guint i = 0; i < form->problems->len; i++)
    n += ((SyFormProblem *) g_ptr_array_index (form->problems, i))->missing ? 1 : 0;
  return n;
}

const char *
sy_form_problem_path (SyForm *form, guint i)
{
  refresh (form);
  g_return_val_if_fail (i < form->problems->len, "");
  return ((SyFormProblem *) g_ptr_array_index (form->problems, i))->path;
}

const char *
sy_form_problem_words (SyForm *form, guint i)
{
  refresh (form);
  g_return_val_if_fail (i < form->problems->len, "");
  return ((SyFormProblem *) g_ptr_array_index (form->problems, i))->words;
}
