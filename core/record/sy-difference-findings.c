/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-difference-private.h"
#include "sy-words.h"

static const SyJson *
first_of (const SyJson *findings, const char *key)
{
  const SyJson *member = sy_json_member (findings, key);

  return member != NULL ? member->first : NULL;
}

static char *
raw_text (const SyJson *value)
{
  GString *out;

  if (value == NULL)
    return NULL;
  if (value->type == SY_JSON_TEXT)
    return g_strdup (value->text);
  out = g_string_new (NULL);
  sy_json_write_tree (out, value);
  return g_string_free (out, FALSE);
}

static void
compare_texts (const SyComparison *comparison, const char *key, const char *name)
{
  g_autofree char *before = raw_text (sy_json_member (comparison->before.root, key));
  g_autofree char *after = raw_text (sy_json_member (comparison->after.root, key));

  if (g_strcmp0 (before, after) != 0)
    sy_difference_add (comparison->out, SY_PART_RESULT, key, name, NULL, "", g_steal_pointer (&before),
                       g_steal_pointer (&after));
}

static const SySymbol *
find_symbol (const SyMethod *method, const char *symbol)
{
  for (gsize i = 0; method != NULL && i < method->n_symbols; i++)
    if (strcmp (method->symbols[i].symbol, symbol) == 0)
      return &method->symbols[i];
  return NULL;
}

/* As stored: the number, or that it has no bound; NULL for none. */
static char *
quantity_text (const SyJson *quantity)
{
  const SyJson *value = quantity != NULL ? sy_json_member (quantity, "value") : NULL;
  const char *state = quantity != NULL ? sy_json_member_text (quantity, "state") : NULL;

  if (quantity == NULL)
    return NULL;
  return state != NULL && (value == NULL || value->type == SY_JSON_NULL) ? g_strdup (state) : raw_text (value);
}

static const char *
quantity_unit (const SyJson *quantity, const SySymbol *symbol, SyUnits units)
{
  const char *stored = quantity != NULL ? sy_json_member_text (quantity, "unit") : NULL;

  if (stored == NULL || strcmp (stored, "1") == 0 || strcmp (stored, sy_unit_name (SY_KIND_DATE, units)) == 0)
    return "";
  /* as a reader sees it, where it is the one that the program would write */
  if (symbol != NULL && strcmp (stored, sy_unit_name (symbol->kind, units)) == 0)
    return sy_words_unit (symbol->kind, units);
  return stored;
}

static void
compare_quantity (const SyComparison *comparison, const char *key, const SyJson *before, const SyJson *after)
{
  const SySymbol *known = find_symbol (comparison->after.method, key);
  g_autofree char *path = g_strconcat ("quantities.", key, NULL);
  g_autofree char *old = quantity_text (before);
  g_autofree char *new = quantity_text (after);
  const char *unit_before, *unit_after;

  if (known == NULL)
    known = find_symbol (comparison->before.method, key);
  unit_before = quantity_unit (before, known, comparison->before.units);
  unit_after = quantity_unit (after, known, comparison->after.units);
  if (g_strcmp0 (old, new) != 0 || strcmp (unit_before, unit_after) != 0)
    sy_difference_add_measured (comparison->out, SY_PART_RESULT, path, known != NULL ? known->label : key, key, unit_before,
                                unit_after, g_steal_pointer (&old), g_steal_pointer (&new));
}

static void
compare_quantities (const SyComparison *comparison)
{
  const SyJson *before = sy_json_member (comparison->before.root, "quantities");
  const SyJson *after = sy_json_member (comparison->after.root, "quantities");

  for (const SyJson *each = after != NULL ? after->first : NULL; each != NULL && each->key != NULL; each = each->next)
    compare_quantity (comparison, each->key, before != NULL ? sy_json_member (before, each->key) : NULL, each);
  for (const SyJson *each = before != NULL ? before->first : NULL; each != NULL && each->key != NULL; each = each->next)
    if (after == NULL || sy_json_member (after, each->key) == NULL)
      compare_quantity (comparison, each->key, each, NULL);
}

/* Topics: reasons, remedies, cautions */

static gboolean
is_same_member (const SyJson *a, const SyJson *b, const char *key)
{
  return g_strcmp0 (sy_json_member_text (a, key), sy_json_member_text (b, key)) == 0;
}

/* The first that is not taken yet and says the same or, failing the text, is about the same. */
static const SyJson *
find_said (const SyJson *first, const SyJson *wanted, gboolean by_text, GHashTable *taken)
{
  for (const SyJson *each = first; each != NULL; each = each->next)
    if (!g_hash_table_contains (taken, each) && is_same_member (each, wanted, "id")
        && is_same_member (each, wanted, by_text ? "text" : "subject"))
      return each;
  return NULL;
}

static void
add_said (const SyComparison *comparison, const char *key, const char *name, const SyJson *before, const SyJson *after)
{
  const char *id = sy_json_member_text (after != NULL ? after : before, "id");
  g_autofree char *path = g_strdup_printf ("%s.%s", key, id != NULL ? id : "");

  sy_difference_add (comparison->out, SY_PART_RESULT, path, name, NULL, "",
                     before != NULL ? g_strdup (sy_json_member_text (before, "text")) : NULL,
                     after != NULL ? g_strdup (sy_json_member_text (after, "text")) : NULL);
}

static void
compare_said (const SyComparison *comparison, const char *key, const char *name)
{
  const SyJson *before = first_of (comparison->before.root, key), *after = first_of (comparison->after.root, key);
  g_autoptr (GHashTable) taken = g_hash_table_new (NULL, NULL);

  /* First what is said the same, so that nothing else takes its place. */
  for (const SyJson *each = after; each != NULL; each = each->next)
    {
      const SyJson *same = find_said (before, each, TRUE, taken);

      if (same != NULL)
        {
          g_hash_table_add (taken, (gpointer) same);
          g_hash_table_add (taken, (gpointer) each);
        }
    }
  for (const SyJson *each = after; each != NULL; each = each->next)
    if (!g_hash_table_contains (taken, each))
      {
        const SyJson *other = find_said (before, each, FALSE, taken);

        if (other != NULL)
          g_hash_table_add (taken, (gpointer) other);
        add_said (comparison, key, name, other, each);
      }
  for (const SyJson *each = before; each != NULL; each = each->next)
    if (!g_hash_table_contains (taken, each))
      add_said (comparison, key, name, each, NULL);
}

void
sy_difference_findings (const SyComparison *comparison)
{
  compare_texts (comparison, "verdict", N_ ("Verdict"));
  compare_texts (comparison, "governing", N_ ("What decides"));
  compare_quantities (comparison);
  compare_said (comparison, "reasons", N_ ("Reason"));
  compare_said (comparison, "remedies", N_ ("Remedy"));
  compare_said (comparison, "cautions", N_ ("Caution"));
}
