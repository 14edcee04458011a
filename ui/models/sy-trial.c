/* SPDX-License-Identifier: MIT */
#include "sy-trial.h"

#include <math.h>
#include <string.h>

#define DECIMALS_MAX 2

static double
index_of (SyForm *form)
{
  SyAssessment *assessment = sy_form_get_assessment (form);
  const SyQuantity *index
      = assessment != NULL
            ? sy_findings_quantity (assessment->findings, assessment->findings->sink.index_symbol)
            : NULL;

  return index != NULL && index->state != SY_STATE_ABSENT ? index->value : INFINITY;
}

/* Whether the copy is as good as the remedy says. The last bits of a sum may differ. */
static gboolean
keeps_promise (SyForm *copy, const SyRemedy *remedy, double goal)
{
  SyAssessment *assessment = sy_form_get_assessment (copy);
  double index = index_of (copy);

  if (assessment == NULL
      || sy_verdict_rank (assessment->findings->verdict) > sy_verdict_rank (remedy->verdict))
    return FALSE;
  if (remedy->reaches)
    return index <= fmax (goal, remedy->index * (1 + 1e-9));
  return index <= remedy->index * (1 + 1e-9);
}

/* @decimals < 0: every digit. */
static char *
number_text (double value, int decimals, gboolean up)
{
  double scale = decimals < 0 ? 1 : pow (10, decimals);
  char text[SY_NUMBER_TEXT_MAX];

  if (decimals >= 0)
    value = (up ? ceil (value * scale) : floor (value * scale)) / scale;
  sy_number_print (value, text);
  return g_strdup (text);
}

static void
add (SyTrial *trial, const char *path, char *text)
{
  g_ptr_array_add (trial->paths, g_strdup (path));
  g_ptr_array_add (trial->texts, text);
}

/* A second fact that must not stay over the first. */
static void
add_also (SyTrial *trial, SyForm *form, const SyChange *change, const char *text)
{
  const SyField *field = sy_form_find_field (form, change->also_path);
  const char *also = sy_form_get (form, change->also_path);
  double value, limit;
  SyUnits units = sy_form_get_units (form);

  if (field != NULL
      && sy_quantity_parse (also, strlen (also), field->kind, units, false, &value, NULL) == SY_TEXT_OK
      && sy_quantity_parse (text, strlen (text), field->kind, units, false, &limit, NULL) == SY_TEXT_OK
      && value > limit)
    add (trial, change->also_path, g_strdup (text));
}

/* The changes as texts; bit i of @ups rounds change i up. */
static void
write_changes (SyTrial *trial, SyForm *form, const SyRemedy *remedy, int decimals, guint ups)
{
  g_ptr_array_set_size (trial->paths, 0);
  g_ptr_array_set_size (trial->texts, 0);
  for (int i = 0; i < remedy->n_changes; i++)
    {
      const SyChange *change = &remedy->changes[i];
      const SyField *field = sy_form_find_field (form, change->path);

      switch (change->type)
        {
        case SY_CHANGE_NUMBER:
          add (trial, change->path, number_text (change->value, decimals, (ups >> i & 1u) != 0));
          if (change->also_path != NULL)
            add_also (trial, form, change, g_ptr_array_index (trial->texts, trial->texts->len - 1));
          break;
        case SY_CHANGE_CHOICE:
          if (field != NULL && change->value >= 0 && (gsize) change->value < field->n_choices)
            add (trial, change->path, g_strdup (field->choices[(gsize) change->value].id));
          break;
        case SY_CHANGE_BOOL:
          add (trial, change->path, g_strdup (change->value > 0 ? "true" : "false"));
          break;
        }
    }
}

static gboolean
try_out (SyTrial *trial, SyForm *form, const SyRemedy *remedy, double goal, int decimals, guint ups)
{
  write_changes (trial, form, remedy, decimals, ups);
  g_clear_object (&trial->form);
  trial->form = sy_form_copy (form);
  sy_trial_use (trial, trial->form);
  return keeps_promise (trial->form, remedy, goal);
}

SyTrial *
sy_trial_new (SyForm *form, const SyRemedy *remedy)
{
  SyTrial *trial = g_new0 (SyTrial, 1);
  const SyPolicy *policy = sy_desk_policy (sy_form_get_desk (form));
  double goal
      = sy_policy_goal (policy, sy_form_get_method (form), sy_form_get_units (form)).index;
  guint ways = 1u << remedy->n_changes;

  trial->paths = g_ptr_array_new_with_free_func (g_free);
  trial->texts = g_ptr_array_new_with_free_func (g_free);
  for (int decimals = 0; decimals <= DECIMALS_MAX; decimals++)
    for (guint ups = 0; ups < ways; ups++)
      if (try_out (trial, form, remedy, goal, decimals, ups))
        return trial;
  try_out (trial, form, remedy, goal, -1, 0);
  return trial;
}

void
sy_trial_free (SyTrial *trial)
{
  if (trial == NULL)
    return;
  g_clear_object (&trial->form);
  g_ptr_array_unref (trial->paths);
  g_ptr_array_unref (trial->texts);
  g_free (trial);
}

void
sy_trial_use (SyTrial *trial, SyForm *form)
{
  sy_form_set_many (form, (const char *const *) trial->paths->pdata,
                    (const char *const *) trial->texts->pdata, trial->paths->len);
}
