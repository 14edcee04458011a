/* SPDX-License-Identifier: MIT */
#include "sy-difference-private.h"

#include <string.h>

static const SyJson nothing = { .type = SY_JSON_NULL };

void
sy_difference_free (SyDifference *difference)
{
  if (difference == NULL)
    return;
  g_free (difference->path);
  g_free (difference->name);
  g_free (difference->symbol);
  g_free (difference->unit);
  g_free (difference->before);
  g_free (difference->after);
  g_free (difference);
}

void
sy_difference_add (GPtrArray *out, SyDifferencePart part, const char *path, const char *name, const char *symbol,
                   const char *unit, char *before, char *after)
{
  SyDifference *difference = g_new0 (SyDifference, 1);

  difference->part = part;
  difference->path = g_strdup (path);
  difference->name = g_strdup (name);
  difference->symbol = g_strdup (symbol != NULL ? symbol : "");
  difference->unit = g_strdup (unit);
  difference->before = before;
  difference->after = after;
  g_ptr_array_add (out, difference);
}

/* Consumes the value. */
static char *
with_unit (char *value, const char *unit)
{
  char *whole = value != NULL && *unit != '\0' ? g_strconcat (value, " ", unit, NULL) : g_strdup (value);

  g_free (value);
  return whole;
}

void
sy_difference_add_measured (GPtrArray *out, SyDifferencePart part, const char *path, const char *name, const char *symbol,
                            const char *unit_before, const char *unit_after, char *before, char *after)
{
  const gboolean is_one = before == NULL || after == NULL || strcmp (unit_before, unit_after) == 0;
  const char *unit = after != NULL ? unit_after : unit_before;

  if (is_one)
    sy_difference_add (out, part, path, name, symbol, unit, before, after);
  else
    sy_difference_add (out, part, path, name, symbol, "", with_unit (before, unit_before), with_unit (after, unit_after));
}

static void
add_basis (GPtrArray *out, const char *path, const char *name, const char *before, const char *after)
{
  if (strcmp (before, after) != 0)
    sy_difference_add (out, SY_PART_BASIS, path, name, NULL, "", g_strdup (before), g_strdup (after));
}

static void
compare_basis (GPtrArray *out, const SyEvent *before, const SyEvent *after)
{
  g_autofree char *edition_before = g_strdup_printf ("%" G_GINT64_FORMAT, before->edition);
  g_autofree char *edition_after = g_strdup_printf ("%" G_GINT64_FORMAT, after->edition);

  add_basis (out, "method", N_ ("Method"), before->method, after->method);
  add_basis (out, "edition", N_ ("Edition of the method"), edition_before, edition_after);
  add_basis (out, "policy", N_ ("Policy"), before->policy, after->policy);
  add_basis (out, "program", N_ ("Program"), before->program, after->program);
  add_basis (out, "name", N_ ("Name"), before->name, after->name);
}

/* What can be read of one document of a revision. */
static gboolean
read_side (const SyEvent *event, const char *text, SyMemory *memory, SySide *side)
{
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *units = root != NULL ? sy_json_member_text (root, "units") : NULL;

  *side = (SySide) { root != NULL ? root : &nothing, sy_method_find (event->method), SY_UNITS_METRIC };
  if (side->method != NULL && event->edition > side->method->edition)
    side->method = NULL;
  if (units != NULL)
    sy_units_from_id (units, &side->units);
  return root != NULL;
}

static void
compare (GPtrArray *out, SyDifferencePart part, const SyEvent *before, const SyEvent *after)
{
  const gboolean is_facts = part == SY_PART_FACTS;
  const char *old = is_facts ? before->facts : before->findings;
  const char *new = is_facts ? after->facts : after->findings;
  g_autoptr (SyMemory) memory = sy_memory_new ();
  SyComparison comparison = { .out = out, .same_method = strcmp (before->method, after->method) == 0 };
  gboolean readable;

  if (strcmp (old, new) == 0)
    return;
  readable = read_side (before, old, memory, &comparison.before);
  readable = read_side (after, new, memory, &comparison.after) && readable;
  if (!readable) /* nothing can be told but that they are not the same */
    sy_difference_add (out, part, is_facts ? "facts" : "findings", is_facts ? N_ ("Facts") : N_ ("Findings"), NULL, "",
                       g_strdup (old), g_strdup (new));
  else if (is_facts)
    sy_difference_facts (&comparison);
  else
    sy_difference_findings (&comparison);
}

GPtrArray *
sy_difference_of (const SyEvent *before, const SyEvent *after)
{
  GPtrArray *out = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_difference_free);

  compare (out, SY_PART_FACTS, before, after);
  compare (out, SY_PART_RESULT, before, after);
  compare_basis (out, before, after);
  return out;
}

static void
write_text (GString *out, const char *key, const char *value)
{
  g_string_append_printf (out, ",\"%s\":", key);
  if (value != NULL)
    sy_json_write_text (out, value);
  else
    g_string_append (out, "null");
}

void
sy_difference_write_json (GString *out, const SyEvent *before, const SyEvent *after, GPtrArray *differences)
{
  static const char *const parts[]
    = { [SY_PART_FACTS] = "facts", [SY_PART_RESULT] = "result", [SY_PART_BASIS] = "basis" };

  g_string_append (out, "{\"task\":");
  sy_json_write_text (out, after->name);
  write_text (out, "id", after->item);
  g_string_append_printf (out, ",\"from\":%" G_GINT64_FORMAT ",\"to\":%" G_GINT64_FORMAT ",\"differences\":[",
                          before->revision, after->revision);
  for (guint i = 0; i < differences->len; i++)
    {
      const SyDifference *difference = g_ptr_array_index (differences, i);

      g_string_append_printf (out, "%s{\"part\":\"%s\"", i > 0 ? "," : "", parts[difference->part]);
      write_text (out, "path", difference->path);
      write_text (out, "name", difference->name);
      write_text (out, "symbol", difference->symbol);
      write_text (out, "unit", difference->unit);
      write_text (out, "old", difference->before);
      write_text (out, "new", difference->after);
      g_string_append_c (out, '}');
    }
  g_string_append (out, "]}");
}
