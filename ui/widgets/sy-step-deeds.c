/* SPDX-License-Identifier: MIT */
#include "sy-step-deeds.h"

#include "sy-i18n.h"
#include "sy-step-words.h"

#include <string.h>

/* A part made, the machine released: it runs. All else is taken to need it stopped until somebody says otherwise. */
static const char *
when_of (const char *kind)
{
  return strcmp (kind, "first-off") == 0 || strcmp (kind, "release") == 0 ? "running" : "stopped";
}

gboolean
sy_step_insert (SyForm *form, const char *list, guint at, const char *kind)
{
  const SyField *members = sy_form_find_field (form, list), *field = sy_step_member (members, "kind");
  g_autofree char *of_kind = g_strdup_printf ("%s[%u].kind", list, at);
  g_autofree char *of_label = g_strdup_printf ("%s[%u].label", list, at);
  g_autofree char *of_when = g_strdup_printf ("%s[%u].when", list, at);
  g_autofree char *label = NULL;
  const char *const paths[] = { of_kind, of_label, of_when };
  const char *texts[G_N_ELEMENTS (paths)];
  gsize n = 0;

  for (gsize i = 0; field != NULL && i < field->n_choices; i++)
    if (strcmp (field->choices[i].id, kind) == 0)
      {
        label = sy_step_dup_unique (form, list, sy_translate (field->choices[i].label));
        texts[n++] = kind;
        texts[n++] = label;
        if (sy_step_member (members, "when") != NULL)
          texts[n++] = when_of (kind);
      }
  return sy_form_list_insert (form, list, at, FALSE, paths, texts, n);
}

gboolean
sy_step_duplicate (SyForm *form, const char *list, guint item)
{
  g_autofree char *own = g_strdup_printf ("%s[%u].label", list, item);
  g_autofree char *path = g_strdup_printf ("%s[%u].label", list, item + 1);
  g_autofree char *label = sy_step_dup_unique (form, list, sy_form_get (form, own));
  const char *const paths[] = { path };
  const char *const texts[] = { label };

  return sy_form_list_insert (form, list, item + 1, TRUE, paths, texts, label[0] != '\0' ? 1 : 0);
}

/* Topics: splitting */

static void
put (GPtrArray *paths, GPtrArray *texts, char *path, const char *text)
{
  g_ptr_array_add (paths, path);
  g_ptr_array_add (texts, g_strdup (text));
}

/* The item before @at is as it was; that at it is its copy, and those behind have moved up. */
static void
put_after (SyForm *form, const char *list, guint at, const char *old, const char *first, const char *second,
           GPtrArray *paths, GPtrArray *texts)
{
  for (guint i = 0; i < sy_form_list_count (form, list); i++)
    {
      g_autofree char *after = g_strdup_printf ("%s[%u].after", list, i);
      const guint n = sy_form_find_field (form, after) != NULL ? sy_form_list_count (form, after) : 0;
      const guint now = i < at ? i : i + 1;

      for (guint k = 0; k < n; k++)
        {
          g_autofree char *path = g_strdup_printf ("%s[%u]", after, k);
          const char *text = sy_form_get (form, path);

          if (text[0] != '\0' && strcmp (text, old) == 0)
            put (paths, texts, g_strdup_printf ("%s[%u].after[%u]", list, now, k), second);
          if (text[0] != '\0' && i + 1 == at)
            put (paths, texts, g_strdup_printf ("%s[%u].after[%u]", list, at, k), k == 0 ? first : "");
        }
    }
}

gboolean
sy_step_split (SyForm *form, const char *list, guint item)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *label = g_strdup_printf ("%s[%u].label", list, item);
  g_autofree char *minutes = g_strdup_printf ("%s[%u].minutes", list, item);
  g_autofree char *old = g_strdup (sy_form_get (form, label));
  g_autofree char *half = sy_step_dup_half (sy_form_get (form, minutes));
  g_autofree char *first_base = g_strdup_printf ("%s (1)", old), *second_base = g_strdup_printf ("%s (2)", old);
  g_autofree char *first = sy_step_dup_unique (form, list, first_base);
  g_autofree char *second = sy_step_dup_unique (form, list, second_base);

  if (old[0] != '\0')
    {
      put (paths, texts, g_strdup (label), first);
      put (paths, texts, g_strdup_printf ("%s[%u].label", list, item + 1), second);
      put_after (form, list, item + 1, old, first, second, paths, texts);
    }
  put (paths, texts, g_strdup (minutes), half);
  put (paths, texts, g_strdup_printf ("%s[%u].minutes", list, item + 1), half);
  return sy_form_list_insert (form, list, item + 1, TRUE, (const char *const *) paths->pdata,
                              (const char *const *) texts->pdata, paths->len);
}
