/* SPDX-License-Identifier: MIT */
/* Long lists: as many items as nobody types are kept as one text, and a form that has one is assessed beside the main
   loop. */
#include "sy-form-private.h"

#include <string.h>

/* A form that is so long takes longer to assess than a keystroke may. */
#define LARGE_BYTES (256 * 1024)

/* Keeping */

GHashTable *
sy_form_new_longs (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_bytes_unref);
}

GHashTable *
sy_form_copy_longs (GHashTable *longs)
{
  GHashTable *copy = sy_form_new_longs ();
  GHashTableIter iter;
  gpointer path, json;

  g_hash_table_iter_init (&iter, longs);
  while (g_hash_table_iter_next (&iter, &path, &json))
    g_hash_table_insert (copy, g_strdup (path), g_bytes_ref (json));
  return copy;
}

gboolean
sy_form_longs_equal (GHashTable *a, GHashTable *b)
{
  GHashTableIter iter;
  gpointer path, json;

  if (g_hash_table_size (a) != g_hash_table_size (b))
    return FALSE;
  g_hash_table_iter_init (&iter, a);
  while (g_hash_table_iter_next (&iter, &path, &json))
    {
      GBytes *other = g_hash_table_lookup (b, path);

      if (other == NULL || (other != json && !g_bytes_equal (other, json)))
        return FALSE;
    }
  return TRUE;
}

/* Items of a list inside an item would have to move with it. */
gboolean
sy_form_keeps_whole (const SyField *field, const char *path, guint n)
{
  return n > SY_FORM_ITEMS_TYPED && sy_form_is_long_field (field) && strpbrk (path, ".[") == NULL;
}

gboolean
sy_form_is_long_field (const SyField *list)
{
  return list->type == SY_MEMBER_LIST && list->max_items >= SY_FORM_LONG_FIELD;
}

const char *
sy_form_long_json (SyForm *form, const char *path, gsize *length)
{
  GBytes *json = g_hash_table_size (form->now.longs) > 0 ? g_hash_table_lookup (form->now.longs, path) : NULL;

  return json != NULL ? g_bytes_get_data (json, length) : NULL;
}

GBytes *
sy_form_list_get_long (SyForm *form, const char *path)
{
  g_return_val_if_fail (SY_IS_FORM (form), NULL);
  return g_hash_table_lookup (form->now.longs, path);
}

gboolean
sy_form_is_in_long (SyForm *form, const char *path)
{
  g_autofree char *list = NULL;

  if (g_hash_table_size (form->now.longs) == 0)
    return FALSE;
  list = g_strndup (path, strcspn (path, ".["));
  return g_hash_table_contains (form->now.longs, list);
}

/* Replacing */

static void
forget_items (SyForm *form, const char *path)
{
  g_autofree char *start = g_strconcat (path, "[", NULL);
  GHashTableIter iter;
  gpointer key;

  g_hash_table_iter_init (&iter, form->now.texts);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    if (g_str_has_prefix (key, start) || strcmp (key, path) == 0)
      g_hash_table_iter_remove (&iter);
  g_hash_table_remove (form->now.longs, path);
}

gboolean
sy_form_list_replace (SyForm *form, const char *path, const char *json, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyField *field = sy_form_find_field (form, path);
  const SyJson *array;

  g_return_val_if_fail (SY_IS_FORM (form) && field != NULL && field->type == SY_MEMBER_LIST, FALSE);
  array = sy_json_scan (json, strlen (json), SY_JSON_DOCUMENT_MAX, memory, problems);
  if (array == NULL)
    {
      g_set_error_literal (error, SY_FORM_ERROR, SY_FORM_ERROR_DOCUMENT, problems->items[0].given);
      return FALSE;
    }
  /* Read once beside what stands there, so that a refusal changes nothing. */
  {
    SyFormState trial = { g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free), sy_form_new_longs (),
                          form->now.units };
    gboolean can = sy_form_read_list (field, path, array, &trial, error);

    g_hash_table_unref (trial.texts);
    g_hash_table_unref (trial.longs);
    if (!can)
      return FALSE;
  }
  sy_form_begin_step (form, NULL);
  forget_items (form, path);
  sy_form_read_list (field, path, array, &form->now, NULL);
  sy_form_end_step (form);
  return TRUE;
}

void
sy_form_list_clear (SyForm *form, const char *path)
{
  g_return_if_fail (SY_IS_FORM (form));
  if (sy_form_list_count (form, path) == 0)
    return;
  sy_form_begin_step (form, NULL);
  forget_items (form, path);
  sy_form_end_step (form);
}

/* Units */

static void rewrite (GString *out, const SyField *field, const SyJson *value, SyUnits units);

static void
rewrite_members (GString *out, const SyField *group, const SyJson *object, SyUnits units)
{
  gboolean any = FALSE;

  g_string_append_c (out, '{');
  for (const SyJson *value = object->first; value != NULL; value = value->next)
    {
      const SyField *member = NULL;

      for (gsize i = 0; i < group->n_members && member == NULL; i++)
        if (strcmp (group->members[i].name, value->key) == 0)
          member = &group->members[i];
      if (any)
        g_string_append_c (out, ',');
      any = TRUE;
      sy_json_write_text (out, value->key);
      g_string_append_c (out, ':');
      rewrite (out, member, value, units);
    }
  g_string_append_c (out, '}');
}

static gboolean
has_units (const SyField *field)
{
  return strcmp (sy_unit_name (field->kind, SY_UNITS_METRIC), sy_unit_name (field->kind, SY_UNITS_US)) != 0;
}

static gboolean
is_measure (const SyField *field)
{
  return field->type == SY_MEMBER_NUMBER || field->type == SY_MEMBER_VECTOR || field->type == SY_MEMBER_VECTORS;
}

/* A bare number gets the unit behind it; all else stays as it is. @field NULL: no field of the table. */
static void
rewrite (GString *out, const SyField *field, const SyJson *value, SyUnits units)
{
  if (field != NULL && value->type == SY_JSON_NUMBER && is_measure (field) && has_units (field))
    g_string_append_printf (out, "\"%.*s %s\"", (int) value->raw_length, value->raw, sy_unit_name (field->kind, units));
  else if (field != NULL && value->type == SY_JSON_ARRAY)
    {
      g_string_append_c (out, '[');
      for (const SyJson *item = value->first; item != NULL; item = item->next)
        {
          rewrite (out, field, item, units);
          if (item->next != NULL)
            g_string_append_c (out, ',');
        }
      g_string_append_c (out, ']');
    }
  else if (field != NULL && value->type == SY_JSON_OBJECT && field->n_members > 0)
    rewrite_members (out, field, value, units);
  else
    g_string_append_len (out, value->raw, (gssize) value->raw_length);
}

void
sy_form_long_write_units (SyForm *form, SyUnits units)
{
  GHashTableIter iter;
  gpointer path, json;

  g_hash_table_iter_init (&iter, form->now.longs);
  while (g_hash_table_iter_next (&iter, &path, &json))
    {
      g_autoptr (SyMemory) memory = sy_memory_new ();
      g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
      gsize length;
      const char *text = g_bytes_get_data (json, &length);
      const SyJson *array = sy_json_scan (text, length, SY_JSON_DOCUMENT_MAX, memory, problems);
      GString *out = g_string_sized_new (length + length / 4);

      if (array != NULL)
        rewrite (out, sy_form_find_field (form, path), array, units);
      else
        g_string_append_len (out, text, (gssize) length);
      g_hash_table_iter_replace (&iter, g_string_free_to_bytes (out));
    }
}

/* Working beside the main loop */

gboolean
sy_form_is_large (SyForm *form)
{
  GHashTableIter iter;
  gpointer json;
  gsize length = 0;

  g_hash_table_iter_init (&iter, form->now.longs);
  while (g_hash_table_iter_next (&iter, NULL, &json))
    length += g_bytes_get_size (json);
  return length > LARGE_BYTES;
}

typedef struct
{
  SyForm *form, *copy; /* NULL once it is done: the thread may be the last to let go of the task, and no form is to end there */
  guint serial;
} Work;

static void
work_free (gpointer data)
{
  Work *work = data;

  g_clear_object (&work->form);
  g_clear_object (&work->copy);
  g_free (work);
}

static void
work_thread (GTask *task, gpointer source G_GNUC_UNUSED, gpointer data, GCancellable *cancellable G_GNUC_UNUSED)
{
  sy_form_work_out (((Work *) data)->copy);
  g_task_return_boolean (task, TRUE);
}

static void
worked_cb (GObject *source G_GNUC_UNUSED, GAsyncResult *result, gpointer data G_GNUC_UNUSED)
{
  Work *work = g_task_get_task_data (G_TASK (result));
  g_autoptr (SyForm) form = g_steal_pointer (&work->form);
  g_autoptr (SyForm) copy = g_steal_pointer (&work->copy);

  form->working = FALSE;
  if (form->serial != work->serial)
    {
      /* What was typed meanwhile: once more, with all of it. */
      if (form->stale)
        sy_form_begin_work (form);
      return;
    }
  sy_form_take_result (form, copy);
}

void
sy_form_begin_work (SyForm *form)
{
  g_autoptr (GTask) task = NULL;
  Work *work;

  if (form->working)
    return;
  form->working = TRUE;
  work = g_new0 (Work, 1);
  work->form = g_object_ref (form);
  work->copy = sy_form_copy (form);
  work->serial = form->serial;
  task = g_task_new (NULL, NULL, worked_cb, NULL);
  g_task_set_task_data (task, work, work_free);
  g_task_run_in_thread (task, work_thread);
}

void
sy_form_set_background (SyForm *form, gboolean background)
{
  g_return_if_fail (SY_IS_FORM (form));
  form->background = background;
}

gboolean
sy_form_is_working (SyForm *form)
{
  g_return_val_if_fail (SY_IS_FORM (form), FALSE);
  return form->stale && form->working;
}

gboolean
sy_form_tells_only_result (SyForm *form)
{
  return form->only_result;
}

void
sy_form_settle (SyForm *form)
{
  g_return_if_fail (SY_IS_FORM (form));
  if (form->stale)
    sy_form_work_out (form);
}
