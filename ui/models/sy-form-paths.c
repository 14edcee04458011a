/* SPDX-License-Identifier: MIT */
/* Where a path leads in the table of fields, what it is called, and what its text says to a person. */
#include "sy-form-private.h"
#include "sy-i18n.h"

#include <string.h>

static const SyField *
find_member (const SyField *members, gsize n, const char *name, gsize length)
{
  for (gsize i = 0; i < n; i++)
    if (strlen (members[i].name) == length && strncmp (members[i].name, name, length) == 0)
      return &members[i];
  return NULL;
}

/* Reads the numbers behind a name, "[1][2]"; returns what follows them, NULL when they cannot stand there. */
static const char *
read_items (const char *part, SyFormPlace *place)
{
  static const guint most[] = {
    [SY_MEMBER_LIST] = 1, [SY_MEMBER_TEXTS] = 1, [SY_MEMBER_VECTOR] = 1, [SY_MEMBER_VECTORS] = 2,
  };
  SyMemberType type = place->field->type;
  guint allowed = type < G_N_ELEMENTS (most) ? most[type] : 0;
  gboolean vector = type == SY_MEMBER_VECTOR || type == SY_MEMBER_VECTORS;

  for (place->n_items = 0; *part == '['; place->n_items++)
    {
      char *end;
      guint64 item = g_ascii_strtoull (part + 1, &end, 10);
      int last = vector && place->n_items + 1 == allowed ? sy_field_most_coordinates (place->field) - 1 : G_MAXINT;

      if (place->n_items == allowed || !g_ascii_isdigit (part[1]) || *end != ']' || item > (guint64) last)
        return NULL;
      place->items[place->n_items] = (guint) item;
      part = end + 1;
    }
  return part;
}

gboolean
sy_form_find_place (SyForm *form, const char *path, SyFormPlace *place, GArray *outer)
{
  SyFormPlace at = { NULL, 0, { 0, 0 } };
  const char *part = path;

  for (;;)
    {
      gsize length = strcspn (part, ".[");
      const SyField *field = NULL;

      if (at.field == NULL)
        for (gsize i = 0; i < sy_form_n_fields (form) && field == NULL; i++)
          field = find_member (sy_form_field_at (form, i), 1, part, length);
      else
        field = find_member (at.field->members, at.field->n_members, part, length);
      if (field == NULL)
        return FALSE;
      at.field = field;
      part = read_items (part + length, &at);
      if (part == NULL)
        return FALSE;
      if (*part == '\0')
        {
          *place = at;
          return TRUE;
        }
      if (*part != '.' || field->n_members == 0)
        return FALSE;
      part++;
      if (outer != NULL)
        g_array_append_val (outer, at);
    }
}

gboolean
sy_form_place_is_list (const SyFormPlace *place)
{
  return place->n_items == 0
         && (place->field->type == SY_MEMBER_LIST || place->field->type == SY_MEMBER_TEXTS
             || place->field->type == SY_MEMBER_VECTORS);
}

const SyField *
sy_form_find_field (SyForm *form, const char *path)
{
  SyFormPlace place;

  g_return_val_if_fail (SY_IS_FORM (form), NULL);
  return sy_form_find_place (form, path, &place, NULL) ? place.field : NULL;
}

/* Whether the last number of a place is that of a coordinate. */
static gboolean
is_coordinate (const SyFormPlace *place)
{
  return (place->field->type == SY_MEMBER_VECTOR && place->n_items == 1)
         || (place->field->type == SY_MEMBER_VECTORS && place->n_items == 2);
}

gboolean
sy_form_is_measure (SyForm *form, const char *path)
{
  SyFormPlace place;

  return sy_form_find_place (form, path, &place, NULL)
         && (place.field->type == SY_MEMBER_NUMBER || is_coordinate (&place));
}

/* Names */

static char *
join_names (const char *outer, const char *inner)
{
  /* Translators: a fact and the group that it belongs to, e.g. "Origin: reach H". */
  return g_strdup_printf (_("%s: %s"), outer, inner);
}

/* What one step of a path is called: "Origin", "Leg 1", "Ties 2". @several: its list has more than one item. */
static char *
name_step (const SyFormPlace *place, gboolean several)
{
  const SyField *field = place->field;
  const char *label = sy_translate (field->label);

  if (field->type == SY_MEMBER_LIST && place->n_items > 0)
    return g_strdup_printf ("%s %u", field->item_label != NULL ? sy_translate (field->item_label) : label,
                            place->items[0] + 1);
  if ((field->type == SY_MEMBER_TEXTS || field->type == SY_MEMBER_VECTORS) && place->n_items > 0 && several)
    return g_strdup_printf ("%s %u", field->item_label != NULL ? sy_translate (field->item_label) : label,
                            place->items[0] + 1);
  if (field->symbol != NULL && !is_coordinate (place))
    return g_strdup_printf ("%s %s", label, field->symbol);
  return g_strdup (label);
}

/* Whether the list of an item at the end of a path has others. */
static gboolean
has_several (SyForm *form, const char *path, const SyFormPlace *place)
{
  const char *bracket = path + strlen (path);

  for (guint n = 0; n < place->n_items; n++)
    while (*--bracket != '[')
      ;
  g_autofree char *list = g_strndup (path, (gsize) (bracket - path));
  return place->n_items > 0 && (place->items[0] > 0 || sy_form_count_items (form->now.texts, list) > 1);
}

char *
sy_form_dup_name (SyForm *form, const char *path, gboolean with_unit)
{
  static const char *const coordinates[SY_FORM_N_COORDINATES] = { "x", "y", "z" };
  g_autoptr (GArray) outer = g_array_new (FALSE, FALSE, sizeof (SyFormPlace));
  g_autofree char *name = NULL;
  SyFormPlace place;

  if (!sy_form_find_place (form, path, &place, outer))
    return g_strdup (path);
  name = name_step (&place, has_several (form, path, &place));
  if (is_coordinate (&place))
    {
      g_autofree char *vector = g_steal_pointer (&name);

      name = join_names (vector, coordinates[place.items[place.n_items - 1]]);
    }
  for (guint i = outer->len; i > 0; i--)
    {
      const SyFormPlace *step = &g_array_index (outer, SyFormPlace, i - 1);
      g_autofree char *inner = g_steal_pointer (&name);
      /* The symbol of a group does not stand with each of its facts. */
      g_autofree char *group = step->n_items > 0 ? name_step (step, TRUE) : g_strdup (sy_translate (step->field->label));

      name = join_names (group, inner);
    }
  if (with_unit && (place.field->type == SY_MEMBER_NUMBER || is_coordinate (&place)))
    {
      const char *unit = sy_unit_name (place.field->kind, form->now.units);

      if (strcmp (unit, "1") != 0)
        return g_strdup_printf ("%s, %s", name, unit);
    }
  return g_steal_pointer (&name);
}

/* Walking */

static void
walk_members (SyForm *form, const SyField *field, const char *path, SyLeafFunc visit, gpointer data)
{
  for (gsize i = 0; i < field->n_members; i++)
    {
      g_autofree char *at = g_strdup_printf ("%s.%s", path, field->members[i].name);

      sy_form_walk (form, &field->members[i], at, visit, data);
    }
}

static void
walk_vector (SyForm *form, const SyField *field, const char *path, SyLeafFunc visit, gpointer data)
{
  for (int i = 0; i < sy_field_most_coordinates (field); i++)
    {
      g_autofree char *at = g_strdup_printf ("%s[%d]", path, i);

      visit (form, field, at, data);
    }
}

static void
walk_item (SyForm *form, const SyField *field, const char *path, SyLeafFunc visit, gpointer data)
{
  if (field->type == SY_MEMBER_LIST)
    walk_members (form, field, path, visit, data);
  else if (field->type == SY_MEMBER_VECTORS)
    walk_vector (form, field, path, visit, data);
  else
    visit (form, field, path, data);
}

void
sy_form_walk (SyForm *form, const SyField *field, const char *path, SyLeafFunc visit, gpointer data)
{
  switch (field->type)
    {
    case SY_MEMBER_GROUP:
      walk_members (form, field, path, visit, data);
      return;
    case SY_MEMBER_VECTOR:
      walk_vector (form, field, path, visit, data);
      return;
    case SY_MEMBER_LIST:
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_TEXTS:
      if (sy_form_is_in_long (form, path))
        return; /* there are no texts of its items */
      for (guint i = 0; i < sy_form_list_count (form, path); i++)
        {
          g_autofree char *item = g_strdup_printf ("%s[%u]", path, i);

          walk_item (form, field, item, visit, data);
        }
      return;
    case SY_MEMBER_NUMBER:
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_BOOL:
    case SY_MEMBER_SET:
    case SY_MEMBER_TEXT:
    case SY_MEMBER_DATE:
    case SY_MEMBER_FACTS:
      break;
    }
  visit (form, field, path, data);
}

void
sy_form_walk_path (SyForm *form, const char *path, SyLeafFunc visit, gpointer data)
{
  SyFormPlace place;

  if (!sy_form_find_place (form, path, &place, NULL))
    return;
  if (is_coordinate (&place) || place.n_items == 0)
    {
      if (is_coordinate (&place))
        visit (form, place.field, path, data);
      else
        sy_form_walk (form, place.field, path, visit, data);
    }
  else
    walk_item (form, place.field, path, visit, data);
}

static void
note_text (SyForm *form, const SyField *field G_GNUC_UNUSED, const char *path, gpointer data)
{
  gboolean *blank = data;

  for (const char *p = sy_form_get (form, path); *p != '\0' && *blank; p++)
    *blank = g_ascii_isspace (*p);
}

gboolean
sy_form_is_blank (SyForm *form, const char *path)
{
  gboolean blank = !sy_form_is_in_long (form, path);

  sy_form_walk_path (form, path, note_text, &blank);
  return blank;
}

static void
collect_path (SyForm *form, const SyField *field G_GNUC_UNUSED, const char *path, gpointer data)
{
  if (sy_form_get (form, path)[0] != '\0')
    g_ptr_array_add (data, g_strdup (path));
}

char **
sy_form_list_paths (SyForm *form)
{
  GPtrArray *paths = g_ptr_array_new ();

  for (gsize i = 0; i < sy_form_n_fields (form); i++)
    sy_form_walk (form, sy_form_field_at (form, i), sy_form_field_at (form, i)->name, collect_path, paths);
  g_ptr_array_add (paths, NULL);
  return (char **) g_ptr_array_free (paths, FALSE);
}

static int
compare_paths (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

char **
sy_form_list_paths_below (SyForm *form, const char *path)
{
  GPtrArray *paths = g_ptr_array_new ();
  gsize length = strlen (path);
  GHashTableIter iter;
  gpointer key;

  g_hash_table_iter_init (&iter, form->now.texts);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    if (g_str_has_prefix (key, path) && strchr (".[", ((const char *) key)[length]) != NULL)
      g_ptr_array_add (paths, g_strdup (key));
  g_ptr_array_sort (paths, compare_paths);
  g_ptr_array_add (paths, NULL);
  return (char **) g_ptr_array_free (paths, FALSE);
}

/* Numbers in another unit */

/* The quantity in words, "= 40.6 cm"; sets @written_in to the system whose unit was typed. */
static gboolean
parse_path (SyForm *form, const char *path, double *value, SyKind *kind, SyUnits *written_in)
{
  const SyField *field = sy_form_find_field (form, path);
  g_autofree char *text = g_strstrip (g_strdup (sy_form_get (form, path)));
  SyUnits other = form->now.units == SY_UNITS_METRIC ? SY_UNITS_US : SY_UNITS_METRIC;
  gsize used = 0;
  double bare;

  if (field == NULL || !sy_form_is_measure (form, path)
      || strcmp (sy_unit_name (field->kind, SY_UNITS_METRIC), sy_unit_name (field->kind, SY_UNITS_US)) == 0
      || sy_quantity_parse (text, strlen (text), field->kind, form->now.units, false, value, NULL)
             != SY_TEXT_OK)
    return FALSE;
  *kind = field->kind;
  *written_in = form->now.units;
  if (sy_number_parse (text, strlen (text), &bare, &used) == SY_TEXT_OK)
    {
      const char *unit = text + used;

      while (*unit == ' ')
        unit++;
      if (*unit != '\0' && strcmp (unit, sy_unit_name (field->kind, form->now.units)) != 0)
        *written_in = other;
    }
  return TRUE;
}

static char *
aid_in (SyForm *form, double value, SyKind kind, SyUnits units)
{
  g_autofree char *words
      = sy_words_quantity (sy_unit_convert (kind, value, form->now.units, units), kind, units);

  return g_strdup_printf ("= %s", words);
}

char *
sy_form_get_number_as (SyForm *form, const char *path, SyUnits units)
{
  double value;
  SyKind kind;
  SyUnits written_in;

  if (!parse_path (form, path, &value, &kind, &written_in))
    return NULL;
  return aid_in (form, value, kind, units);
}

char *
sy_form_dup_aid (SyForm *form, const char *path)
{
  double value;
  SyKind kind;
  SyUnits written_in;

  if (!parse_path (form, path, &value, &kind, &written_in))
    return NULL;
  if (written_in != form->now.units)
    return aid_in (form, value, kind, form->now.units);
  return aid_in (form, value, kind,
                 form->now.units == SY_UNITS_METRIC ? SY_UNITS_US : SY_UNITS_METRIC);
}

/* As a person reads it */

static const SyChoice *
find_choice (const SyField *field, const char *id)
{
  for (gsize i = 0; i < field->n_choices; i++)
    if (strcmp (field->choices[i].id, id) == 0)
      return &field->choices[i];
  return NULL;
}

char *
sy_form_dup_shown (SyForm *form, const char *path)
{
  const SyField *field = sy_form_find_field (form, path);
  const char *text = sy_form_get (form, path);
  g_autoptr (GString) shown = g_string_new (NULL);

  if (field == NULL || text[0] == '\0')
    return g_strdup (text);
  if (field->type == SY_MEMBER_BOOL)
    return g_strdup (strcmp (text, "true") == 0 ? _("yes") : strcmp (text, "false") == 0 ? _("no") : text);
  if (sy_form_is_measure (form, path) && sy_form_is_json_number (text)
      && strcmp (sy_unit_name (field->kind, form->now.units), "1") != 0)
    return g_strdup_printf ("%s %s", text, sy_unit_name (field->kind, form->now.units));
  if (field->type != SY_MEMBER_CHOICE && field->type != SY_MEMBER_SET)
    return g_strdup (text);
  if (strcmp (text, "-") == 0)
    return g_strdup (_("asked, none applies"));
  g_auto (GStrv) ids = g_strsplit (text, " ", -1);
  for (guint i = 0; ids[i] != NULL; i++)
    {
      const SyChoice *choice = find_choice (field, ids[i]);

      if (shown->len > 0)
        g_string_append (shown, "; ");
      g_string_append (shown, choice != NULL ? sy_translate (choice->label) : ids[i]);
    }
  return g_strdup (shown->str);
}
