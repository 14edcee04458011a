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

/* Of facts inside facts all is told at their own place, in the words of their own form. */
static gboolean
keep_inside (SyForm *form, const SyProblem *problem)
{
  g_autofree char *outer = NULL;
  const char *inside
      = g_str_has_prefix (problem->path, "$.") ? sy_form_split_part (form, problem->path + 2, &outer) : NULL;
  SyFormProblem *kept;

  if (inside == NULL)
    return FALSE;
  if (find_problem (form, outer) != NULL)
    return TRUE;
  kept = g_new0 (SyFormProblem, 1);
  kept->missing = problem->kind == SY_PROBLEM_MISSING;
  kept->path = g_strdup (outer);
  kept->words = sy_form_part_problem_words (form, outer, inside, problem);
  if (kept->words == NULL)
    kept->words = sy_form_problem_to_words (form, problem, outer, outer);
  g_ptr_array_add (form->problems, kept);
  return TRUE;
}

/* One problem a place: the first said there is the one to deal with first. @of: the path that the problem is about. */
static void
keep_problem (SyForm *form, const SyProblem *problem, const char *of, const char *path)
{
  SyFormProblem *kept;

  if (path[0] != '\0' && find_problem (form, path) != NULL)
    return;
  kept = g_new0 (SyFormProblem, 1);
  kept->missing = problem->kind == SY_PROBLEM_MISSING;
  kept->path = g_strdup (path);
  kept->words = sy_form_problem_to_words (form, problem, of, path);
  g_ptr_array_add (form->problems, kept);
}

typedef struct
{
  const SyProblem *problem;
  const char *of;     /* the path that it is about */
  const SyField *own; /* the field there */
  char *first;        /* path of the first fact */
  guint kept;
} Spread;

static void
keep_for_blank (SyForm *form, const SyField *field, const char *path, gpointer data)
{
  Spread *spread = data;
  gboolean needed = field->required || (field == spread->own && spread->problem->kind == SY_PROBLEM_MISSING);

  if (spread->first == NULL)
    spread->first = g_strdup (path);
  /* The third coordinate of a place whose height need not be known is never what is missing. */
  needed = needed && !(field->coordinates == SY_COORDINATES_EITHER && g_str_has_suffix (path, "[2]"));
  if (needed && sy_form_get (form, path)[0] == '\0')
    {
      keep_problem (form, spread->problem, spread->of, path);
      spread->kept++;
    }
}

/* Whether a text can be typed at a path itself. */
static gboolean
is_fact (SyForm *form, const char *path)
{
  SyFormPlace place;

  if (!sy_form_find_place (form, path, &place, NULL))
    return FALSE;
  switch (place.field->type)
    {
    case SY_MEMBER_GROUP:
    case SY_MEMBER_LIST:
      return FALSE;
    case SY_MEMBER_TEXTS:
      return place.n_items == 1;
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
      return sy_form_is_measure (form, path);
    case SY_MEMBER_NUMBER:
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_BOOL:
    case SY_MEMBER_SET:
    case SY_MEMBER_TEXT:
    case SY_MEMBER_DATE:
    case SY_MEMBER_FACTS:
      break;
    }
  return TRUE;
}

/* What is wrong inside a long list stays with the place that it names: there is nothing to type at. What is wrong with a
   whole group, vector or list is put where something can be typed: at each of its facts that are
   needed and blank, or else at its first. A list without items has no such place: there it stays with the list. */
static void
place_problem (SyForm *form, const SyProblem *problem)
{
  g_autofree char *path
      = sy_form_path_from_document (form, g_str_has_prefix (problem->path, "$.") ? problem->path + 2 : "");
  const SyField *field = sy_form_find_field (form, path);
  Spread spread = { problem, path, field, NULL, 0 };

  if (keep_inside (form, problem))
    return;
  if (field == NULL || is_fact (form, path) || sy_form_is_in_long (form, path))
    keep_problem (form, problem, path, field != NULL ? path : "");
  else
    {
      sy_form_walk_path (form, path, keep_for_blank, &spread);
      if (spread.kept == 0)
        keep_problem (form, problem, path, spread.first != NULL ? spread.first : path);
    }
  g_free (spread.first);
}

/* A coordinate that is blank beside others that are given is missing, whatever the reader calls its null. */
static gboolean
is_missing (SyForm *form, const SyProblem *problem)
{
  g_autofree char *path = NULL;

  if (problem->kind != SY_PROBLEM_TYPE || !g_str_has_prefix (problem->path, "$.")
      || !g_str_has_suffix (problem->path, "]") || strcmp (problem->given, "null") != 0)
    return problem->kind == SY_PROBLEM_MISSING;
  path = sy_form_path_from_document (form, problem->path + 2);
  return sy_form_is_measure (form, path) && sy_form_is_blank (form, path);
}

static void
add_problems (SyForm *form, const SyProblems *problems, gboolean missing)
{
  for (int i = 0; i < problems->count; i++)
    if (is_missing (form, &problems->items[i]) == missing)
      {
        SyProblem problem = problems->items[i];

        if (missing)
          problem.kind = SY_PROBLEM_MISSING;
        place_problem (form, &problem);
      }
}

/* Some text that a field would take. */
static char *
acceptable_text (SyForm *form, const SyField *field)
{
  SyUnits units = form->now.units;
  char number[SY_NUMBER_TEXT_MAX];
  double value = 1;

  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
      if (!sy_field_in_range (field, units, value))
        value = field->low.type == SY_BOUND_CLOSED    ? field->low.at[units]
                : field->high.type == SY_BOUND_CLOSED ? field->high.at[units]
                                                      : field->low.at[units] + 1;
      sy_number_print (value, number);
      return g_strdup (number);
    case SY_MEMBER_CHOICE:
      return g_strdup (field->n_choices > 0 ? field->choices[0].id : "");
    case SY_MEMBER_BOOL:
      return g_strdup ("true");
    case SY_MEMBER_SET:
      return g_strdup ("-");
    case SY_MEMBER_DATE:
      return g_strdup ("2000-01-01");
    case SY_MEMBER_FACTS:
      return g_strdup (""); /* none is better than some that are not whole */
    case SY_MEMBER_TEXT:
    case SY_MEMBER_GROUP:
    case SY_MEMBER_LIST:
    case SY_MEMBER_TEXTS:
      break;
    }
  return g_strdup ("x");
}

/* The reader looks for what is missing between facts (a way of giving the pace, a destination or a travel) only once
   each fact by itself is there. So that all that is missing is named at once, the blanks are filled with something
   acceptable on a copy, and what is missing even then is added. */
static void
add_missing_between (SyForm *form, SyProblems *problems)
{
  g_autoptr (GHashTable) filled = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  GHashTable *typed = form->now.texts;
  SyAssessment *assessment;
  g_autofree char *document = NULL;
  GHashTableIter iter;
  gpointer path, text;

  g_hash_table_iter_init (&iter, typed);
  while (g_hash_table_iter_next (&iter, &path, &text))
    g_hash_table_insert (filled, g_strdup (path), g_strdup (text));
  for (guint i = 0; i < form->problems->len; i++)
    {
      SyFormProblem *problem = g_ptr_array_index (form->problems, i);
      const SyField *field = sy_form_find_field (form, problem->path);

      if (field != NULL && is_fact (form, problem->path))
        g_hash_table_insert (filled, g_strdup (problem->path), acceptable_text (form, field));
    }
  form->now.texts = filled;
  document = sy_form_build_document (form);
  form->now.texts = typed;
  sy_problems_clear (problems);
  assessment = sy_desk_assess (form->desk, document, strlen (document), SY_JUDGE_PLAIN, problems);
  if (assessment != NULL)
    sy_assessment_unref (assessment);
  else
    add_problems (form, problems, TRUE);
}

void
sy_form_work_out (SyForm *form)
{
  g_autofree char *document = NULL;
  g_autofree SyProblems *problems = NULL;

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
      if (form->problems->len > 0 && sy_form_count_missing (form) == form->problems->len)
        add_missing_between (form, problems);
    }
}

void
sy_form_take_result (SyForm *form, SyForm *copy)
{
  g_clear_pointer (&form->assessment, sy_assessment_unref);
  form->assessment = g_steal_pointer (&copy->assessment);
  g_ptr_array_unref (form->problems);
  form->problems = g_steal_pointer (&copy->problems);
  copy->problems = g_ptr_array_new_with_free_func (sy_form_problem_free);
  form->stale = FALSE;
  form->only_result = TRUE;
  g_signal_emit_by_name (form, "changed");
  form->only_result = FALSE;
}

static void
refresh (SyForm *form)
{
  if (!form->stale)
    return;
  if (form->background && sy_form_is_large (form))
    sy_form_begin_work (form);
  else
    sy_form_work_out (form);
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

void
sy_form_set_ask_missing (SyForm *form, gboolean ask)
{
  g_return_if_fail (SY_IS_FORM (form));
  if (form->ask_missing == ask)
    return;
  form->ask_missing = ask;
  g_signal_emit_by_name (form, "changed");
}

gboolean
sy_form_get_ask_missing (SyForm *form)
{
  return form->ask_missing;
}
