/* SPDX-License-Identifier: MIT */
/* Facts that are asked for only beside others. */
#include "sy-form-private.h"

#include <string.h>

/* @path applies where @choice says @id, or anything where @id is NULL, and where the list @unless has no items. */
static const struct
{
  const char *method, *path; /* list items by the list's own name only: "lifts.share" */
  const char *choice, *id;   /* @choice NULL: whatever it says */
  const char *unless;        /* NULL: none                     */
} rules[] = {
  { "lift-set", "frequency", "combine", "variable", NULL },
  { "lift-set", "categories", "combine", "variable", NULL },
  { "lift-set", "rota", "combine", "sequence", NULL },
  { "lift-set", "lifts.share", "combine", "sequence", "rota" },
  { "lift-set", "lifts.duration", "combine", "sequence", "rota" },
  { "lift-set", "lifts.work_minutes", "combine", "sequence", "rota" },
  { "lift-set", "lifts.recovery_minutes", "combine", "sequence", "rota" },
  { "lift-set", "lifts.shift_minutes", "combine", "sequence", "rota" },
  { "lift-set", "lifts.sessions", "combine", "sequence", "rota" },
  { "lift-set", "duration", NULL, NULL, "rota" },
  { "lift-set", "work_minutes", NULL, NULL, "rota" },
  { "lift-set", "recovery_minutes", NULL, NULL, "rota" },
  { "lift-set", "shift_minutes", NULL, NULL, "rota" },
  { "lift-set", "sessions", NULL, NULL, "rota" },
  { "team-lift", "uphill", "slope", NULL, NULL },
};

/* Whether @path, which may number items, is @plain or below it. */
static gboolean
is_below (const char *path, const char *plain)
{
  for (;; path++)
    {
      if (*path == '[')
        path += strcspn (path, "]");
      else if (*plain == '\0')
        return *path == '\0' || *path == '.';
      else if (*path != *plain++)
        return FALSE;
    }
}

static gboolean
holds (SyForm *form, gsize rule)
{
  const char *said = rules[rule].choice != NULL ? sy_form_get (form, rules[rule].choice) : NULL;

  if (said != NULL && (rules[rule].id != NULL ? strcmp (said, rules[rule].id) != 0 : said[0] == '\0'))
    return FALSE;
  return rules[rule].unless == NULL || sy_form_list_count (form, rules[rule].unless) == 0;
}

gboolean
sy_form_may_not_apply (SyForm *form, const char *path)
{
  g_return_val_if_fail (SY_IS_FORM (form), FALSE);
  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    if (strcmp (rules[i].method, form->method->id) == 0 && is_below (path, rules[i].path))
      return TRUE;
  return FALSE;
}

gboolean
sy_form_applies (SyForm *form, const char *path)
{
  g_return_val_if_fail (SY_IS_FORM (form), TRUE);
  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    if (strcmp (rules[i].method, form->method->id) == 0 && is_below (path, rules[i].path) && !holds (form, i))
      /* What stands there is shown with what is wrong about it. */
      return !sy_form_is_blank (form, path) || sy_form_count_items (form->now.texts, path) > 0;
  return TRUE;
}
