/* SPDX-License-Identifier: MIT */
/* A problem of a fact in words: what was given and what would be right. */
#include "sy-form-private.h"
#include "sy-i18n.h"

#include <math.h>
#include <string.h>

static char *
bound_text (const SyField *field, const SyBound *bound, SyUnits units)
{
  return sy_words_quantity (bound->at[units], field->kind, units);
}

/* Each pair of bounds has a sentence of its own: sentences are never put together from parts. */
static char *
range_words (SyForm *form, const SyField *field, const char *name, const char *given)
{
  SyUnits units = form->now.units;
  g_autofree char *low = bound_text (field, &field->low, units);
  g_autofree char *high = bound_text (field, &field->high, units);
  gboolean low_open = field->low.type == SY_BOUND_OPEN;
  gboolean high_open = field->high.type == SY_BOUND_OPEN;

  if (field->low.type == SY_BOUND_NONE && field->high.type == SY_BOUND_NONE)
    return g_strdup_printf (_("%s cannot be %s."), name, given);
  if (field->high.type == SY_BOUND_NONE)
    return low_open ? g_strdup_printf (_("%s must be over %s; you gave %s."), name, low, given)
                    : g_strdup_printf (_("%s must be at least %s; you gave %s."), name, low, given);
  if (field->low.type == SY_BOUND_NONE)
    return high_open ? g_strdup_printf (_("%s must be under %s; you gave %s."), name, high, given)
                     : g_strdup_printf (_("%s must be at most %s; you gave %s."), name, high, given);
  if (low_open && high_open)
    return g_strdup_printf (_("%s must be over %s and under %s; you gave %s."), name, low, high, given);
  if (low_open)
    return g_strdup_printf (_("%s must be over %s and at most %s; you gave %s."), name, low, high,
                            given);
  if (high_open)
    return g_strdup_printf (_("%s must be at least %s and under %s; you gave %s."), name, low, high,
                            given);
  return g_strdup_printf (_("%s must be from %s to %s; you gave %s."), name, low, high, given);
}

static char *
number_words (SyForm *form, const SyField *field, const char *name, const char *given)
{
  double value;

  switch (sy_quantity_parse (given, strlen (given), field->kind, form->now.units, false, &value, NULL))
    {
    case SY_TEXT_OK:
      if (field->whole && value != floor (value))
        return g_strdup_printf (_("%s must be a whole number; you gave %s."), name, given);
      return range_words (form, field, name, given);
    case SY_TEXT_AMBIGUOUS:
      return g_strdup_printf (
        _("“%s” can be read in two ways. Write the number without a mark between the thousands."), given);
    case SY_TEXT_TOO_LARGE:
      return g_strdup_printf (_("“%s” is larger than any measure can be."), given);
    case SY_TEXT_WRONG_UNIT:
    case SY_TEXT_NO_UNIT:
      if (sy_unit_list (field->kind)[0] == '\0')
        return g_strdup_printf (_("%s has no unit; you gave “%s”. Write the number alone."), name, given);
      return g_strdup_printf (_("“%s” has a unit that does not fit here. Units that do: %s."), given,
                              sy_unit_list (field->kind));
    case SY_TEXT_EMPTY:
    case SY_TEXT_NOT_NUMBER:
      break;
    }
  return g_strdup_printf (_("“%s” is not a number."), given);
}

/* Facts that the sentence names by path are named as the form names them. */
static char *
name_facts (SyForm *form, const char *allowed)
{
  g_auto (GStrv) words = g_strsplit (sy_translate (allowed), " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    {
      const SyField *field = strchr (words[i], '.') != NULL || strchr (words[i], '_') != NULL
                                 ? sy_form_find_field (form, words[i])
                                 : NULL;

      if (field != NULL)
        {
          g_free (words[i]);
          words[i] = g_strdup_printf ("“%s”", sy_translate (field->label));
        }
    }
  return g_strjoinv (" ", words);
}

/* A coordinate is named with its vector: "Centre of gravity: x". */
static char *
short_name (const SyFormPlace *place, gboolean coordinate)
{
  static const char *const coordinates[SY_FORM_N_COORDINATES] = { "x", "y", "z" };
  const char *label = sy_translate (place->field->label);

  if (coordinate)
    return g_strdup_printf (_("%s: %s"), label, coordinates[place->items[place->n_items - 1]]);
  if (place->field->symbol == NULL)
    return g_strdup (label);
  return g_strdup_printf ("%s %s", label, place->field->symbol);
}

char *
sy_form_problem_to_words (SyForm *form, const SyProblem *problem, const char *of, const char *path)
{
  SyFormPlace place = { NULL, 0, { 0, 0 } };
  const SyField *field = sy_form_find_place (form, path, &place, NULL) ? place.field : NULL;
  gboolean measure = sy_form_is_measure (form, path);
  /* What is wrong with a whole vector is not said of one coordinate. */
  gboolean whole = measure && field->type != SY_MEMBER_NUMBER && strcmp (of, path) != 0
                   && problem->kind != SY_PROBLEM_MISSING;
  g_autofree char *name = field == NULL ? g_strdup (problem->path)
                                        : short_name (&place, measure && field->type != SY_MEMBER_NUMBER && !whole);
  g_autofree char *typed = g_strstrip (g_strdup (sy_form_get (form, path)));
  const char *given = typed[0] != '\0' && !whole ? typed : problem->given;
  g_autofree char *allowed = name_facts (form, problem->allowed);

  switch (problem->kind)
    {
    case SY_PROBLEM_MISSING:
      if (field != NULL && field->type == SY_MEMBER_LIST)
        return g_strdup_printf (_("%s: none is given yet."), name);
      return g_strdup_printf (_("%s is not given yet."), name);
    case SY_PROBLEM_RANGE:
    case SY_PROBLEM_NUMBER_TEXT:
    case SY_PROBLEM_TYPE:
      if (measure && !whole)
        return number_words (form, field, name, given);
      if (field != NULL && field->type == SY_MEMBER_DATE)
        return g_strdup_printf (_("“%s” is not a date. Write it as 2026-11-25."), given);
      break;
    case SY_PROBLEM_CHOICE:
    case SY_PROBLEM_CONFLICT:
    case SY_PROBLEM_UNKNOWN_FIELD:
    case SY_PROBLEM_SYNTAX:
    case SY_PROBLEM_DUPLICATE:
    case SY_PROBLEM_SIZE:
      break;
    }
  if (problem->kind == SY_PROBLEM_CONFLICT)
    return g_strdup_printf (_("%s does not go with what else is given. Possible: %s."), name, allowed);
  return g_strdup_printf (_("%s: “%s” cannot be taken. Possible: %s."), name, given, allowed);
}
