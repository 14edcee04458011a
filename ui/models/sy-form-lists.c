/* SPDX-License-Identifier: MIT */
/* Items of lists: they come, go and change places with all that is inside them. */
#include "sy-form-private.h"

#include <string.h>

guint
sy_form_count_items (GHashTable *texts, const char *path)
{
  const char *count = g_hash_table_lookup (texts, path);

  return count != NULL ? (guint) g_ascii_strtoull (count, NULL, 10) : 0;
}

static void
set_count (SyForm *form, const char *path, guint n)
{
  if (n > 0)
    g_hash_table_insert (form->now.texts, g_strdup (path), g_strdup_printf ("%u", n));
  else
    g_hash_table_remove (form->now.texts, path);
}

void
sy_form_cover_items (SyForm *form, const char *path)
{
  for (const char *bracket = strchr (path, '['); bracket != NULL; bracket = strchr (bracket + 1, '['))
    {
      g_autofree char *list = g_strndup (path, (gsize) (bracket - path));
      guint item = (guint) g_ascii_strtoull (bracket + 1, NULL, 10);
      SyFormPlace place;

      if (sy_form_find_place (form, list, &place, NULL) && sy_form_place_is_list (&place)
          && sy_form_count_items (form->now.texts, list) <= item)
        set_count (form, list, item + 1);
    }
}

guint
sy_form_list_count (SyForm *form, const char *path)
{
  guint n = sy_form_count_items (form->now.texts, path);
  const SyField *field = n == 0 ? sy_form_find_field (form, path) : NULL;

  return field != NULL && (field->type == SY_MEMBER_TEXTS || field->type == SY_MEMBER_VECTORS) ? 1 : n;
}

/* Where an item of a list goes; negative: nowhere. */
typedef gint (*Renumber) (guint item, guint a, guint b);

/* Every text inside the list moves with its item; @keep: it stays where it was as well. */
static void
renumber (SyForm *form, const char *path, Renumber to, guint a, guint b, gboolean keep)
{
  g_autofree char *start = g_strconcat (path, "[", NULL);
  g_autoptr (GPtrArray) moved = g_ptr_array_new_with_free_func (g_free); /* path and text by turns */
  GHashTableIter iter;
  gpointer key, text;

  g_hash_table_iter_init (&iter, form->now.texts);
  while (g_hash_table_iter_next (&iter, &key, &text))
    {
      char *rest;
      guint item;
      gint place;

      if (!g_str_has_prefix (key, start))
        continue;
      item = (guint) g_ascii_strtoull ((const char *) key + strlen (start), &rest, 10);
      place = to (item, a, b);
      if (place >= 0)
        {
          g_ptr_array_add (moved, g_strdup_printf ("%s%d%s", start, place, rest));
          g_ptr_array_add (moved, g_strdup (text));
        }
      if (!keep)
        g_hash_table_iter_remove (&iter);
    }
  for (guint i = 0; i + 1 < moved->len; i += 2)
    g_hash_table_insert (form->now.texts, g_strdup (moved->pdata[i]), g_strdup (moved->pdata[i + 1]));
}

static gint
after_removal (guint item, guint removed, guint b G_GNUC_UNUSED)
{
  return item == removed ? -1 : (gint) (item > removed ? item - 1 : item);
}

static gint
after_insertion (guint item, guint at, guint b G_GNUC_UNUSED)
{
  return (gint) (item > at ? item + 1 : item);
}

static gint
make_room (guint item, guint at, guint b G_GNUC_UNUSED)
{
  return (gint) (item >= at ? item + 1 : item);
}

static gint
after_move (guint item, guint from, guint to)
{
  if (item == from)
    return (gint) to;
  if (from < to && item > from && item <= to)
    return (gint) item - 1;
  if (from > to && item >= to && item < from)
    return (gint) item + 1;
  return (gint) item;
}

static gint
only_copy (guint item, guint of, guint b G_GNUC_UNUSED)
{
  return item == of ? (gint) of + 1 : -1;
}

static gboolean
find_list (SyForm *form, const char *path, SyFormPlace *place)
{
  return sy_form_find_place (form, path, place, NULL) && sy_form_place_is_list (place);
}

void
sy_form_list_add (SyForm *form, const char *path)
{
  guint n = sy_form_list_count (form, path);
  SyFormPlace list;

  g_return_if_fail (find_list (form, path, &list));
  if (n >= list.field->max_items)
    return;
  sy_form_begin_step (form, NULL);
  set_count (form, path, n + 1);
  sy_form_cover_items (form, path);
  sy_form_end_step (form);
}

void
sy_form_list_remove (SyForm *form, const char *path, guint item)
{
  guint n = sy_form_list_count (form, path);
  SyFormPlace list;

  g_return_if_fail (find_list (form, path, &list) && item < n);
  sy_form_begin_step (form, NULL);
  renumber (form, path, after_removal, item, 0, FALSE);
  set_count (form, path, n - 1);
  sy_form_end_step (form);
}

void
sy_form_list_duplicate (SyForm *form, const char *path, guint item)
{
  guint n = sy_form_list_count (form, path);
  SyFormPlace list;

  g_return_if_fail (find_list (form, path, &list) && item < n);
  if (n >= list.field->max_items)
    return;
  sy_form_begin_step (form, NULL);
  renumber (form, path, after_insertion, item, 0, FALSE);
  renumber (form, path, only_copy, item, 0, TRUE);
  set_count (form, path, n + 1);
  sy_form_end_step (form);
}

gboolean
sy_form_list_insert (SyForm *form, const char *path, guint at, gboolean copies, const char *const *paths,
                     const char *const *texts, gsize n)
{
  guint count = sy_form_list_count (form, path);
  SyFormPlace list;

  g_return_val_if_fail (find_list (form, path, &list) && at <= count && (at > 0 || !copies), FALSE);
  if (count >= list.field->max_items)
    return FALSE;
  sy_form_begin_step (form, NULL);
  renumber (form, path, make_room, at, 0, FALSE);
  if (copies)
    renumber (form, path, only_copy, at - 1, 0, TRUE);
  set_count (form, path, count + 1);
  sy_form_cover_items (form, path);
  for (gsize i = 0; i < n; i++)
    sy_form_put (form, paths[i], texts[i]);
  sy_form_end_step (form);
  return TRUE;
}

void
sy_form_list_move (SyForm *form, const char *path, guint from, guint to)
{
  guint n = sy_form_list_count (form, path);
  SyFormPlace list;

  g_return_if_fail (find_list (form, path, &list) && from < n && to < n);
  if (from == to)
    return;
  sy_form_begin_step (form, NULL);
  renumber (form, path, after_move, from, to, FALSE);
  sy_form_end_step (form);
}
