/* SPDX-License-Identifier: MIT */
#include "sy-form.h"

#include "sy-form-private.h"

#include <string.h>

/* Typing on in one field is one step of undo as long as no pause is longer than this. */
#define TYPING_PAUSE_US (G_USEC_PER_SEC)
#define UNDO_MAX 500

G_DEFINE_QUARK (sy-form-error-quark, sy_form_error)

G_DEFINE_FINAL_TYPE (SyForm, sy_form, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* States */

static GHashTable *
new_texts (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
}

static GHashTable *
copy_texts (GHashTable *texts)
{
  GHashTable *copy = new_texts ();
  GHashTableIter iter;
  gpointer path, text;

  g_hash_table_iter_init (&iter, texts);
  while (g_hash_table_iter_next (&iter, &path, &text))
    g_hash_table_insert (copy, g_strdup (path), g_strdup (text));
  return copy;
}

static SyFormState *
state_copy (const SyFormState *state)
{
  SyFormState *copy = g_new (SyFormState, 1);

  copy->texts = copy_texts (state->texts);
  copy->longs = sy_form_copy_longs (state->longs);
  copy->units = state->units;
  return copy;
}

static void
state_free (gpointer data)
{
  SyFormState *state = data;

  g_hash_table_unref (state->texts);
  g_hash_table_unref (state->longs);
  g_free (state);
}

/* How many texts or vectors a list has follows from those that are not blank. */
static gboolean
says_nothing (SyForm *form, const char *path)
{
  SyFormPlace place;

  return sy_form_find_place (form, path, &place, NULL) && sy_form_place_is_list (&place)
         && place.field->type != SY_MEMBER_LIST;
}

/* Whether @b has every text that @a has. */
static gboolean
holds (SyForm *form, const SyFormState *a, const SyFormState *b)
{
  GHashTableIter iter;
  gpointer path, text;

  g_hash_table_iter_init (&iter, a->texts);
  while (g_hash_table_iter_next (&iter, &path, &text))
    if (g_strcmp0 (g_hash_table_lookup (b->texts, path), text) != 0 && !says_nothing (form, path))
      return FALSE;
  return TRUE;
}

void
sy_form_end_step (SyForm *form)
{
  form->stale = TRUE;
  form->serial++;
  g_signal_emit (form, signals[CHANGED], 0);
}

void
sy_form_begin_step (SyForm *form, const char *typing)
{
  gint64 now = g_get_monotonic_time ();
  gboolean joins = typing != NULL && g_strcmp0 (typing, form->typing) == 0
                   && now - form->typed_at < TYPING_PAUSE_US;

  if (!joins)
    {
      g_ptr_array_add (form->undo, state_copy (&form->now));
      if (form->undo->len > UNDO_MAX)
        g_ptr_array_remove_index (form->undo, 0);
    }
  g_ptr_array_set_size (form->redo, 0);
  g_free (form->typing);
  form->typing = g_strdup (typing);
  form->typed_at = now;
}

void
sy_form_put (SyForm *form, const char *path, const char *text)
{
  if (text == NULL || text[0] == '\0')
    {
      g_hash_table_remove (form->now.texts, path);
      return;
    }
  g_hash_table_insert (form->now.texts, g_strdup (path), g_strdup (text));
  sy_form_cover_items (form, path);
}

/* Class */

static void
sy_form_finalize (GObject *object)
{
  SyForm *form = SY_FORM (object);

  g_clear_pointer (&form->assessment, sy_assessment_unref);
  g_clear_pointer (&form->desk, sy_desk_unref);
  g_hash_table_unref (form->now.texts);
  g_hash_table_unref (form->now.longs);
  g_hash_table_unref (form->clean.texts);
  g_hash_table_unref (form->clean.longs);
  g_ptr_array_unref (form->undo);
  g_ptr_array_unref (form->redo);
  g_ptr_array_unref (form->problems);
  g_free (form->typing);
  G_OBJECT_CLASS (sy_form_parent_class)->finalize (object);
}

static void
sy_form_class_init (SyFormClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_form_finalize;
  signals[CHANGED] = g_signal_new ("changed", SY_TYPE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
sy_form_init (SyForm *form)
{
  form->now.texts = new_texts ();
  form->now.longs = sy_form_new_longs ();
  form->clean.texts = new_texts ();
  form->clean.longs = sy_form_new_longs ();
  form->undo = g_ptr_array_new_with_free_func (state_free);
  form->redo = g_ptr_array_new_with_free_func (state_free);
  form->problems = g_ptr_array_new_with_free_func (sy_form_problem_free);
  form->stale = TRUE;
}

SyForm *
sy_form_new (SyDesk *desk, const char *method, SyUnits units)
{
  const SyMethod *found = sy_method_find (method);
  SyForm *form;

  g_return_val_if_fail (found != NULL, NULL);
  form = g_object_new (SY_TYPE_FORM, NULL);
  form->desk = sy_desk_ref (desk);
  form->method = found;
  form->now.units = form->clean.units = units;
  return form;
}

const SyMethod *
sy_form_get_method (SyForm *form)
{
  return form->method;
}

SyDesk *
sy_form_get_desk (SyForm *form)
{
  return form->desk;
}

SyUnits
sy_form_get_units (SyForm *form)
{
  return form->now.units;
}

static void
write_unit (SyForm *form, const SyField *field, const char *path, gpointer data)
{
  const char *text = sy_form_get (form, path);
  double value;
  bool had_unit = true;

  if (field->type == SY_MEMBER_FACTS)
    sy_form_part_write_units (form, path, *(const SyUnits *) data);
  if (!sy_form_is_measure (form, path)
      || strcmp (sy_unit_name (field->kind, SY_UNITS_METRIC), sy_unit_name (field->kind, SY_UNITS_US)) == 0
      || sy_quantity_parse (text, strlen (text), field->kind, form->now.units, false, &value,
                            &had_unit) != SY_TEXT_OK
      || had_unit)
    return;
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  g_autofree char *with_unit
      = g_strdup_printf ("%s %s", stripped, sy_unit_name (field->kind, form->now.units));
  sy_form_put (form, path, with_unit);
}

void
sy_form_set_units (SyForm *form, SyUnits units)
{
  g_return_if_fail (SY_IS_FORM (form));
  if (units == form->now.units)
    return;
  sy_form_begin_step (form, NULL);
  for (gsize i = 0; i < sy_form_n_fields (form); i++)
    sy_form_walk (form, sy_form_field_at (form, i), sy_form_field_at (form, i)->name, write_unit, &units);
  sy_form_long_write_units (form, form->now.units);
  form->now.units = units;
  sy_form_end_step (form);
}

const char *
sy_form_get (SyForm *form, const char *path)
{
  const char *text = g_hash_table_lookup (form->now.texts, path);

  return text != NULL ? text : "";
}

void
sy_form_set (SyForm *form, const char *path, const char *text)
{
  g_return_if_fail (SY_IS_FORM (form));
  if (strcmp (sy_form_get (form, path), text != NULL ? text : "") == 0)
    return;
  sy_form_begin_step (form, path);
  sy_form_put (form, path, text);
  sy_form_end_step (form);
}

void
sy_form_set_many (SyForm *form, const char *const *paths, const char *const *texts, gsize n)
{
  sy_form_set_on (form, paths, texts, n, FALSE);
}

gboolean
sy_form_set_on (SyForm *form, const char *const *paths, const char *const *texts, gsize n, gboolean joins)
{
  gboolean differs = FALSE;

  g_return_val_if_fail (SY_IS_FORM (form), FALSE);
  for (gsize i = 0; i < n; i++)
    differs |= strcmp (sy_form_get (form, paths[i]), texts[i]) != 0;
  if (!differs)
    return FALSE;
  if (!joins)
    sy_form_begin_step (form, NULL);
  for (gsize i = 0; i < n; i++)
    sy_form_put (form, paths[i], texts[i]);
  sy_form_end_step (form);
  return TRUE;
}

/* Loading, copying */

static SyFormState
new_state (SyUnits units)
{
  return (SyFormState) { .texts = new_texts (), .longs = sy_form_new_longs (), .units = units };
}

static void
clear_state (SyFormState *state)
{
  g_hash_table_unref (state->texts);
  g_hash_table_unref (state->longs);
}

/* @state, which is used up, becomes the state; nothing to undo. What was worked out of what stood there is of another
   task. */
static void
take_state (SyForm *form, const SyFormState *state)
{
  clear_state (&form->now);
  form->now = *state;
  g_clear_pointer (&form->assessment, sy_assessment_unref);
  g_ptr_array_set_size (form->problems, 0);
  g_ptr_array_set_size (form->undo, 0);
  g_ptr_array_set_size (form->redo, 0);
  g_clear_pointer (&form->typing, g_free);
}

gboolean
sy_form_load_document (SyForm *form, const char *facts, GError **error)
{
  SyFormState state = new_state (form->now.units);

  g_return_val_if_fail (SY_IS_FORM (form), FALSE);
  if (!sy_form_read_document (form, facts, &state, error))
    {
      clear_state (&state);
      return FALSE;
    }
  take_state (form, &state);
  sy_form_mark_clean (form);
  sy_form_end_step (form);
  return TRUE;
}

gboolean
sy_form_take_document (SyForm *form, const char *facts, GError **error)
{
  SyFormState state = new_state (form->now.units);

  g_return_val_if_fail (SY_IS_FORM (form), FALSE);
  if (!sy_form_read_document (form, facts, &state, error))
    {
      clear_state (&state);
      return FALSE;
    }
  sy_form_begin_step (form, NULL);
  clear_state (&form->now);
  form->now = state;
  sy_form_end_step (form);
  return TRUE;
}

void
sy_form_clear (SyForm *form, SyUnits units)
{
  SyFormState state = new_state (units);

  g_return_if_fail (SY_IS_FORM (form));
  take_state (form, &state);
  sy_form_mark_clean (form);
  form->ask_missing = FALSE;
  sy_form_end_step (form);
}

/* The draft is what was not saved: it does not become the clean state. */
gboolean
sy_form_load_draft (SyForm *form, const SyDraft *draft)
{
  SyFormState state;
  GHashTableIter iter;
  gpointer path, json;

  g_return_val_if_fail (SY_IS_FORM (form), FALSE);
  if (strcmp (draft->method, form->method->id) != 0)
    return FALSE;
  state = (SyFormState) { copy_texts (draft->texts), sy_form_new_longs (), form->now.units };
  if (draft->units != NULL)
    sy_units_from_id (draft->units, &state.units);
  g_hash_table_iter_init (&iter, draft->longs);
  while (g_hash_table_iter_next (&iter, &path, &json))
    g_hash_table_insert (state.longs, g_strdup (path), g_bytes_ref (json));
  take_state (form, &state);
  sy_form_end_step (form);
  return TRUE;
}

void
sy_form_fill_draft (SyForm *form, SyDraft *draft)
{
  GHashTableIter iter;
  gpointer path, text;

  g_free (draft->method);
  draft->method = g_strdup (form->method->id);
  g_free (draft->units);
  draft->units = g_strdup (sy_units_id (form->now.units));
  g_hash_table_remove_all (draft->texts);
  g_hash_table_iter_init (&iter, form->now.texts);
  while (g_hash_table_iter_next (&iter, &path, &text))
    g_hash_table_insert (draft->texts, g_strdup (path), g_strdup (text));
  g_hash_table_remove_all (draft->longs);
  g_hash_table_iter_init (&iter, form->now.longs);
  while (g_hash_table_iter_next (&iter, &path, &text))
    g_hash_table_insert (draft->longs, g_strdup (path), g_bytes_ref (text));
}

SyForm *
sy_form_copy (SyForm *form)
{
  SyForm *copy = sy_form_new (form->desk, form->method->id, form->now.units);
  const SyFormState state
      = { copy_texts (form->now.texts), sy_form_copy_longs (form->now.longs), form->now.units };

  take_state (copy, &state);
  sy_form_mark_clean (copy);
  return copy;
}

char *
sy_form_document (SyForm *form)
{
  return sy_form_build_document (form);
}

/* Undo */

gboolean
sy_form_can_undo (SyForm *form)
{
  return form->undo->len > 0;
}

gboolean
sy_form_can_redo (SyForm *form)
{
  return form->redo->len > 0;
}

static void
go_back (SyForm *form, GPtrArray *from, GPtrArray *to)
{
  SyFormState *state;

  if (from->len == 0)
    return;
  g_ptr_array_add (to, state_copy (&form->now));
  state = g_ptr_array_steal_index (from, from->len - 1);
  clear_state (&form->now);
  form->now = *state;
  g_free (state);
  g_clear_pointer (&form->typing, g_free);
  sy_form_end_step (form);
}

void
sy_form_undo (SyForm *form)
{
  g_return_if_fail (SY_IS_FORM (form));
  go_back (form, form->undo, form->redo);
}

void
sy_form_redo (SyForm *form)
{
  g_return_if_fail (SY_IS_FORM (form));
  go_back (form, form->redo, form->undo);
}

gboolean
sy_form_is_dirty (SyForm *form)
{
  return form->now.units != form->clean.units || !holds (form, &form->now, &form->clean)
         || !holds (form, &form->clean, &form->now) || !sy_form_longs_equal (form->now.longs, form->clean.longs);
}

void
sy_form_mark_clean (SyForm *form)
{
  SyFormState clean
      = { copy_texts (form->now.texts), sy_form_copy_longs (form->now.longs), form->now.units };

  clear_state (&form->clean);
  form->clean = clean;
}
