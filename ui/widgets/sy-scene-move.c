/* SPDX-License-Identifier: MIT */
#include "sy-scene-move.h"

#include <math.h>
#include <string.h>

#include "sy-i18n.h"

double
sy_scene_step (SyUnits units)
{
  return units == SY_UNITS_US ? 0.05 : 1;
}

static double
to_step (double value, SyUnits units)
{
  /* In whole steps first: 0.05 has no exact binary form, a twentieth has. */
  return units == SY_UNITS_US ? round (value * 20) / 20 : round (value);
}

/* "points[2].at" without what is in brackets: the table knows lists by their name only. */
static char *
bare_path (const char *path)
{
  GString *bare = g_string_new (NULL);
  gboolean inside = FALSE;

  for (const char *c = path; *c != '\0'; c++)
    {
      inside = inside || *c == '[';
      if (!inside)
        g_string_append_c (bare, *c);
      inside = inside && *c != ']';
    }
  return g_string_free (bare, FALSE);
}

static gboolean
allowed (const SyMethod *method, const char *path, SyUnits units, double value)
{
  const SyField *field = sy_method_field (method, path, NULL);

  return isfinite (value) && (field == NULL || sy_field_in_range (field, units, value));
}

gboolean
sy_scene_move_make (const SyMethod *method, const SyHandle *handle, SyUnits units, double dx, double dy,
                    SySceneMove *out)
{
  SySceneMove move = { .fact = handle->fact, .number = handle->number, .also = handle->also };
  int n = handle->number ? 1 : 3;

  for (int i = 0; i < 3; i++)
    {
      double by = dx * handle->right[i] + dy * handle->up[i];

      move.changes[i] = i < n && (handle->right[i] != 0 || handle->up[i] != 0);
      move.value[i] = handle->value[i];
      move.also_value[i] = handle->also_value[i];
      /* What is not moved keeps its own decimals. */
      if (!move.changes[i] || by == 0)
        continue;
      move.value[i] = to_step (handle->value[i] + by, units);
      if (i < 2)
        /* Without the last digits that a difference leaves behind. */
        move.also_value[i] = round ((handle->also_value[i] + move.value[i] - handle->value[i]) * 1e6) / 1e6;
      if (!allowed (method, handle->fact, units, move.value[i]))
        return FALSE;
    }
  *out = move;
  return TRUE;
}

char *
sy_scene_move_describe (const SyMethod *method, const SyMark *mark, SyUnits units)
{
  static const char *const axes[] = { "x", "y", "z" };
  const SyHandle *handle = &mark->handle;
  g_autofree char *bare = bare_path (handle->fact);
  g_autofree char *list = g_strndup (handle->fact, strcspn (handle->fact, "["));
  const SyField *field = sy_method_field (method, mark->text[0] != '\0' ? list : bare, NULL);
  GString *words = g_string_new (field != NULL ? sy_translate (field->label) : handle->fact);

  if (mark->text[0] != '\0')
    g_string_append_printf (words, " %s", mark->text);
  for (int i = 0; i < (handle->number ? 1 : 3); i++)
    {
      g_autofree char *value = sy_words_quantity (handle->value[i], SY_KIND_LENGTH, units);

      g_string_append_printf (words, "%s%s%s%s", i == 0 ? ": " : ", ", handle->number ? "" : axes[i],
                              handle->number ? "" : " ", value);
    }
  return g_string_free (words, FALSE);
}

static void
add_text (GPtrArray *paths, GPtrArray *texts, const char *fact, int coordinate, double value)
{
  char number[SY_NUMBER_TEXT_MAX];

  sy_number_print (value, number);
  g_ptr_array_add (paths, coordinate < 0 ? g_strdup (fact) : g_strdup_printf ("%s[%d]", fact, coordinate));
  g_ptr_array_add (texts, g_strdup (number));
}

gboolean
sy_scene_move_apply (const SySceneMove *move, SyForm *form, gboolean joins)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  for (int i = 0; i < (move->number ? 1 : 3); i++)
    {
      if (!move->changes[i])
        continue;
      add_text (paths, texts, move->fact, move->number ? -1 : i, move->value[i]);
      if (move->also != NULL && i < 2)
        add_text (paths, texts, move->also, i, move->also_value[i]);
    }
  return sy_form_set_on (form, (const char *const *) paths->pdata, (const char *const *) texts->pdata, paths->len, joins);
}
