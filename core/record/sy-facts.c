/* SPDX-License-Identifier: MIT */
#include "sy-facts.h"

#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-json-place.h"

typedef struct
{
  SyUnits units;
  const SyMethod *method; /* of what is being read: its parts are of methods that come before it in the registry */
  SyMemory *memory;
  SyProblems *problems;
} Reading;

static void
report (const Reading *reading, SyProblemKind kind, const SyJsonPlace *place, int line, const char *given,
        const char *allowed, const char *unit)
{
  g_autoptr (GString) path = g_string_new (NULL);

  sy_json_place_write (path, place);
  sy_problems_add (reading->problems, kind, line, path->str, given, allowed,
                   strcmp (unit, "1") == 0 ? "" : unit);
}

static bool
has_unit (const SyField *field)
{
  return field->type == SY_MEMBER_NUMBER || field->type == SY_MEMBER_VECTOR || field->type == SY_MEMBER_VECTORS;
}

/* A value that is not what its field takes: says what was given and what is allowed. */
static void
refuse (const Reading *reading, SyProblemKind kind, const SyJsonPlace *place, const SyField *field,
        const SyJson *value, const char *before)
{
  char allowed[SY_PROBLEM_ALLOWED_MAX];
  g_autofree char *given = g_strndup (value->raw, MIN (value->raw_length, SY_PROBLEM_GIVEN_MAX));
  g_autofree char *valid = g_utf8_make_valid (given, -1);
  g_autofree char *text = NULL;

  sy_field_allowed (field, reading->units, allowed, sizeof allowed);
  text = g_strconcat (before, allowed, NULL);
  report (reading, kind, place, value->line, valid, text,
          has_unit (field) ? sy_unit_name (field->kind, reading->units) : "");
}

static bool
has_units (SyKind kind)
{
  return *sy_unit_list (kind) != '\0';
}

/* A number of the field's kind and in its range; false when it was refused. */
static bool
read_measure (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
              double *out)
{
  double number;

  if (value->type == SY_JSON_NUMBER)
    number = value->number;
  else if (value->type == SY_JSON_TEXT && has_units (field->kind))
    {
      SyTextStatus status = sy_quantity_parse (value->text, value->text_length, field->kind,
                                               reading->units, true, &number, NULL);
      const char *why = "";

      switch (status)
        {
        case SY_TEXT_OK:
          break;
        case SY_TEXT_AMBIGUOUS:
          why = "no comma before exactly three digits, which could mean thousands or thousandths; ";
          break;
        case SY_TEXT_NO_UNIT:
          why = "text needs a unit; ";
          break;
        case SY_TEXT_WRONG_UNIT:
          why = "a unit of this kind; ";
          break;
        case SY_TEXT_TOO_LARGE:
          why = "a finite number; ";
          break;
        case SY_TEXT_EMPTY:
        case SY_TEXT_NOT_NUMBER:
          why = "text that begins with a decimal number; ";
          break;
        }
      if (status != SY_TEXT_OK)
        {
          refuse (reading, SY_PROBLEM_NUMBER_TEXT, place, field, value, why);
          return false;
        }
    }
  else
    {
      refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
      return false;
    }
  if (!sy_field_in_range (field, reading->units, number))
    {
      refuse (reading, SY_PROBLEM_RANGE, place, field, value, "");
      return false;
    }
  *out = number;
  return true;
}

static void
read_number (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
             SyNumber *out)
{
  double number;

  if (read_measure (reading, place, field, value, &number))
    *out = (SyNumber) { number, true };
}

static bool
read_vector (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
             SyVector *out)
{
  SyVector vector = { { 0, 0, 0 }, true, false };
  const gsize most = (gsize) sy_field_most_coordinates (field);
  gsize n = 0;

  if (value->type != SY_JSON_ARRAY || value->n_children > most
      || value->n_children < (gsize) sy_field_least_coordinates (field))
    {
      refuse (reading, value->type == SY_JSON_ARRAY ? SY_PROBLEM_SIZE : SY_PROBLEM_TYPE, place, field, value, "");
      return false;
    }
  for (const SyJson *item = value->first; item != NULL; item = item->next, n++)
    {
      SyJsonPlace at = { place, NULL, n };
      vector.given = read_measure (reading, &at, field, item, &vector.at[n]) && vector.given;
    }
  vector.plan = n < G_N_ELEMENTS (vector.at);
  if (vector.given)
    *out = vector;
  return vector.given;
}

/* More than a list may hold; says so. */
static bool
too_many (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value)
{
  if (value->n_children <= field->max_items)
    return false;
  g_autofree char *given = g_strdup_printf ("%" G_GSIZE_FORMAT " items", value->n_children);
  g_autofree char *allowed = g_strdup_printf ("at most %" G_GSIZE_FORMAT " items", field->max_items);
  report (reading, SY_PROBLEM_SIZE, place, value->line, given, allowed, "");
  return true;
}

/* One [x, y, z], or a list of them. */
static void
read_vectors (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
              SyList *out)
{
  SyVector *items = sy_memory_take (reading->memory, MAX (value->n_children, 1) * sizeof *items);
  gsize n = 0;

  if (value->type != SY_JSON_ARRAY || value->first == NULL || value->first->type != SY_JSON_ARRAY)
    {
      if (read_vector (reading, place, field, value, &items[0]))
        *out = (SyList) { items, 1, true };
      return;
    }
  if (too_many (reading, place, field, value))
    return;
  for (const SyJson *item = value->first; item != NULL; item = item->next, n++)
    {
      SyJsonPlace at = { place, NULL, n };
      read_vector (reading, &at, field, item, &items[n]);
    }
  *out = (SyList) { items, n, true };
}

/* "1", "2" … as many as counted. */
static void
read_count (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value, SyList *out)
{
  if (value->number < 0 || value->number != floor (value->number) || value->number > (double) field->max_items)
    {
      refuse (reading, SY_PROBLEM_RANGE, place, field, value, "");
      return;
    }
  gsize n = (gsize) value->number;
  const char **items = sy_memory_take (reading->memory, MAX (n, 1) * sizeof *items);
  for (gsize i = 0; i < n; i++)
    {
      char *name = sy_memory_take (reading->memory, SY_NUMBER_TEXT_MAX);
      sy_number_print ((double) (i + 1), name);
      items[i] = name;
    }
  *out = (SyList) { items, n, true };
}

/* One text, or a list of texts. */
static void
read_texts (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
            SyList *out)
{
  const char **items = sy_memory_take (reading->memory, MAX (value->n_children, 1) * sizeof *items);
  gsize n = 0;

  if (value->type == SY_JSON_NUMBER && field->whole)
    {
      read_count (reading, place, field, value, out);
      return;
    }
  if (value->type == SY_JSON_TEXT)
    items[n++] = value->text;
  else if (value->type != SY_JSON_ARRAY)
    {
      refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
      return;
    }
  else if (too_many (reading, place, field, value))
    return;
  else
    for (const SyJson *item = value->first; item != NULL; item = item->next)
      {
        SyJsonPlace at = { place, NULL, n };
        if (item->type == SY_JSON_TEXT)
          items[n++] = item->text;
        else
          refuse (reading, SY_PROBLEM_TYPE, &at, field, item, "");
      }
  *out = (SyList) { items, n, true };
}

static int
find_choice (const SyField *field, const SyJson *value)
{
  if (value->type == SY_JSON_TEXT)
    for (size_t i = 0; i < field->n_choices; i++)
      if (strcmp (field->choices[i].id, value->text) == 0)
        return (int) i;
  return -1;
}

static void
read_set (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
          SySet *out)
{
  SySet set = { 0, true };
  gsize n = 0;

  if (value->type != SY_JSON_ARRAY)
    {
      refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
      return;
    }
  for (const SyJson *item = value->first; item != NULL; item = item->next, n++)
    {
      SyJsonPlace at = { place, NULL, n };
      int choice = find_choice (field, item);

      if (choice < 0)
        refuse (reading, item->type == SY_JSON_TEXT ? SY_PROBLEM_CHOICE : SY_PROBLEM_TYPE, &at, field, item, "");
      else if (set.bits & (1ul << choice))
        refuse (reading, SY_PROBLEM_DUPLICATE, &at, field, item, "each once; ");
      else
        set.bits |= 1ul << choice;
    }
  *out = set;
}

static void read_group (const Reading *reading, const SyJsonPlace *place, const SyField *members,
                        size_t n_members, const SyJson *object, void *into);

static void
read_list (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
           SyList *out)
{
  if (value->type != SY_JSON_ARRAY)
    {
      refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
      return;
    }
  if (too_many (reading, place, field, value))
    return;
  char *items = sy_memory_take (reading->memory, MAX (value->n_children, 1) * field->group_size);
  gsize n = 0;
  for (const SyJson *item = value->first; item != NULL; item = item->next, n++)
    {
      SyJsonPlace at = { place, NULL, n };
      void *into = items + n * field->group_size;

      sy_fields_clear (field->members, field->n_members, into);
      if (item->type != SY_JSON_OBJECT)
        refuse (reading, SY_PROBLEM_TYPE, &at, field, item, "");
      else
        read_group (reading, &at, field->members, field->n_members, item, into);
    }
  *out = (SyList) { items, n, true };
}

static void read_part (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
                       SyPartFacts *out);

static void
read_member (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value,
             void *group)
{
  void *at = (char *) group + field->offset;
  double days;
  int choice;

  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
      read_number (reading, place, field, value, at);
      break;
    case SY_MEMBER_CHOICE:
      choice = find_choice (field, value);
      if (choice < 0)
        refuse (reading, value->type == SY_JSON_TEXT ? SY_PROBLEM_CHOICE : SY_PROBLEM_TYPE, place, field,
                value, "");
      else
        *(int *) at = choice;
      break;
    case SY_MEMBER_BOOL:
      if (value->type != SY_JSON_TRUE && value->type != SY_JSON_FALSE)
        refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
      else
        *(int *) at = value->type == SY_JSON_TRUE;
      break;
    case SY_MEMBER_SET:
      read_set (reading, place, field, value, at);
      break;
    case SY_MEMBER_TEXT:
    case SY_MEMBER_DATE:
      if (value->type != SY_JSON_TEXT)
        refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
      else if (field->type == SY_MEMBER_DATE && !sy_date_read (value->text, &days))
        refuse (reading, SY_PROBLEM_RANGE, place, field, value, "");
      else
        *(const char **) at = value->text;
      break;
    case SY_MEMBER_GROUP:
      if (value->type != SY_JSON_OBJECT)
        {
          refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
          break;
        }
      *(int *) (void *) ((char *) group + field->present_offset) = 1;
      read_group (reading, place, field->members, field->n_members, value, at);
      break;
    case SY_MEMBER_LIST:
      read_list (reading, place, field, value, at);
      break;
    case SY_MEMBER_VECTOR:
      read_vector (reading, place, field, value, at);
      break;
    case SY_MEMBER_VECTORS:
      read_vectors (reading, place, field, value, at);
      break;
    case SY_MEMBER_TEXTS:
      read_texts (reading, place, field, value, at);
      break;
    case SY_MEMBER_FACTS:
      read_part (reading, place, field, value, at);
      break;
    }
}

static const SyField *
find_field (const SyField *fields, size_t n, const char *name)
{
  for (size_t i = 0; i < n; i++)
    if (strcmp (fields[i].name, name) == 0)
      return &fields[i];
  return NULL;
}

static void
append_names (GString *names, const SyField *fields, size_t n)
{
  for (size_t i = 0; i < n; i++)
    g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", fields[i].name);
}

static void
report_unknown (const Reading *reading, const SyJsonPlace *place, const SyJson *member, GString *names)
{
  report (reading, SY_PROBLEM_UNKNOWN_FIELD, place, member->line, member->key, names->str, "");
}

static void
report_missing (const Reading *reading, const SyJsonPlace *outer, const SyField *members, size_t n_members,
                const SyJson *object)
{
  for (size_t i = 0; i < n_members; i++)
    {
      SyJsonPlace at = { outer, members[i].name, 0 };
      char allowed[SY_PROBLEM_ALLOWED_MAX];

      if (!members[i].required || sy_json_member (object, members[i].name) != NULL)
        continue;
      sy_field_allowed (&members[i], reading->units, allowed, sizeof allowed);
      report (reading, SY_PROBLEM_MISSING, &at, object->line, "nothing", allowed,
              has_unit (&members[i]) ? sy_unit_name (members[i].kind, reading->units) : "");
    }
}

static void
read_group (const Reading *reading, const SyJsonPlace *place, const SyField *members, size_t n_members,
            const SyJson *object, void *into)
{
  for (const SyJson *member = object->first; member != NULL; member = member->next)
    {
      SyJsonPlace at = { place, member->key, 0 };
      const SyField *field = find_field (members, n_members, member->key);

      if (field != NULL)
        read_member (reading, &at, field, member, into);
      else
        {
          g_autoptr (GString) names = g_string_new (NULL);
          append_names (names, members, n_members);
          report_unknown (reading, &at, member, names);
        }
    }
  report_missing (reading, place, members, n_members, object);
}

/* "method" and "units" of the document: without them nothing else can be read. */
static const SyMethod *
read_head (Reading *reading, const SyJson *document)
{
  static const SyJsonPlace method_place = { NULL, "method", 0 }, units_place = { NULL, "units", 0 };
  const SyJson *method_value = sy_json_member (document, "method");
  const SyJson *units_value = sy_json_member (document, "units");
  const SyMethod *method = NULL;
  g_autoptr (GString) ids = g_string_new (NULL);
  bool have_units = false;

  for (size_t i = 0; i < sy_method_count (); i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "one of: ", sy_method_at (i)->id);
  if (method_value != NULL && method_value->type == SY_JSON_TEXT)
    method = sy_method_find (method_value->text);
  if (method == NULL)
    {
      g_autofree char *given = method_value ? g_strndup (method_value->raw, MIN (method_value->raw_length, 90))
                                            : g_strdup ("nothing");
      report (reading, method_value ? SY_PROBLEM_CHOICE : SY_PROBLEM_MISSING, &method_place,
              method_value ? method_value->line : document->line, given, ids->str, "");
    }
  if (units_value != NULL && units_value->type == SY_JSON_TEXT)
    have_units = sy_units_from_id (units_value->text, &reading->units);
  if (!have_units)
    {
      g_autofree char *given = units_value ? g_strndup (units_value->raw, MIN (units_value->raw_length, 90))
                                           : g_strdup ("nothing");
      report (reading, units_value ? SY_PROBLEM_CHOICE : SY_PROBLEM_MISSING, &units_place,
              units_value ? units_value->line : document->line, given, "one of: metric, us", "");
    }
  return have_units ? method : NULL;
}

/* "legs[0]": the member, and the item of the list; NULL where the document has none. */
static const SyJson *
follow_step (const SyJson *at, char *step)
{
  char *mark = strchr (step, '[');

  if (mark != NULL)
    *mark++ = '\0';
  at = sy_json_member (at, step);
  for (gint64 n = mark ? g_ascii_strtoll (mark, NULL, 10) : 0; at != NULL && mark != NULL && n >= 0; n--)
    at = n == g_ascii_strtoll (mark, NULL, 10) ? at->first : at->next;
  return at;
}

/* Lines of problems that a cross-field check found: the member itself, or the document. */
static void
give_lines (const SyJson *document, SyProblems *problems, int from)
{
  for (int i = from; i < problems->count; i++)
    {
      SyProblem *problem = &problems->items[i];
      g_auto (GStrv) keys = g_strsplit (problem->path, ".", -1);
      const SyJson *at = document;

      problem->line = document->line;
      for (int k = 1; keys[0] != NULL && keys[k] != NULL && at != NULL; k++)
        {
          at = follow_step (at, keys[k]);
          if (at != NULL)
            problem->line = at->line;
        }
    }
}

/* Paths of problems that the check of a part found, from the whole document's root. */
static void
give_places (const SyJsonPlace *place, SyProblems *problems, int from)
{
  g_autoptr (GString) root = g_string_new (NULL);

  sy_json_place_write (root, place);
  for (int i = from; i < problems->count; i++)
    {
      SyProblem *problem = &problems->items[i];
      g_autofree char *inner = g_strdup (problem->path);
      g_snprintf (problem->path, sizeof problem->path, "%s%s", root->str, *inner == '$' ? inner + 1 : inner);
    }
}

/* The facts of a method from the members of an object, checked; what is found wrong is reported. */
static void *
read_values (const Reading *reading, const SyJsonPlace *place, const SyMethod *method, const SyJson *object)
{
  SyProblems *problems = reading->problems;
  const bool is_part = place != NULL;
  void *values = sy_memory_take (reading->memory, method->facts_size);
  int first = is_part ? problems->count : 0;

  sy_method_clear (method, values);
  for (const SyJson *member = object->first; member != NULL; member = member->next)
    {
      SyJsonPlace at = { place, member->key, 0 };
      const SyField *field;

      if (strcmp (member->key, "method") == 0 || (!is_part && strcmp (member->key, "units") == 0))
        continue;
      field = find_field (method->fields, method->n_fields, member->key);
      if (field == NULL)
        field = find_field (sy_common_fields, sy_n_common_fields, member->key);
      if (field != NULL)
        read_member (reading, &at, field, member, values);
      else
        {
          g_autoptr (GString) names = g_string_new (is_part ? "method" : "method, units");
          append_names (names, method->fields, method->n_fields);
          append_names (names, sy_common_fields, sy_n_common_fields);
          report_unknown (reading, &at, member, names);
        }
    }
  report_missing (reading, place, method->fields, method->n_fields, object);

  /* A fact that was refused stands as "not given", so that what the cross-field check then finds missing may only
     repeat the refusal in other words; what it finds in conflict was given and sound. */
  int from = problems->count;
  bool refused = problems->dropped > 0;
  for (int i = first; i < from; i++)
    refused = refused || problems->items[i].kind != SY_PROBLEM_UNKNOWN_FIELD;
  method->check (values, reading->units, problems);
  if (refused)
    {
      int kept = from;
      for (int i = from; i < problems->count; i++)
        if (problems->items[i].kind == SY_PROBLEM_CONFLICT)
          problems->items[kept++] = problems->items[i];
      problems->count = kept;
    }
  give_lines (object, problems, from);
  if (is_part)
    give_places (place, problems, from);
  return values;
}

static bool
comes_before (const SyMethod *method, const SyMethod *other)
{
  for (size_t i = 0; i < sy_method_count () && sy_method_at (i) != other; i++)
    if (sy_method_at (i) == method)
      return true;
  return false;
}

/* Facts inside facts, in the units of the whole document. Of a method that comes before the outer one: none holds itself. */
static void
read_part (const Reading *reading, const SyJsonPlace *place, const SyField *field, const SyJson *value, SyPartFacts *out)
{
  SyJsonPlace method_place = { place, "method", 0 };
  const SyMethod *method = NULL;

  if (value->type != SY_JSON_OBJECT)
    {
      refuse (reading, SY_PROBLEM_TYPE, place, field, value, "");
      return;
    }
  const SyJson *named = sy_json_member (value, "method");
  if (named != NULL && named->type == SY_JSON_TEXT)
    method = sy_method_find (named->text);
  if (method == NULL || !comes_before (method, reading->method))
    {
      g_autoptr (GString) ids = g_string_new ("one of: ");
      g_autofree char *given = named ? g_strndup (named->raw, MIN (named->raw_length, 90)) : g_strdup ("nothing");
      for (size_t i = 0; i < sy_method_count (); i++)
        if (comes_before (sy_method_at (i), reading->method))
          g_string_append_printf (ids, "%s%s", ids->len > strlen ("one of: ") ? ", " : "", sy_method_at (i)->id);
      report (reading, named ? SY_PROBLEM_CHOICE : SY_PROBLEM_MISSING, &method_place, named ? named->line : value->line,
              given, ids->str, "");
      return;
    }
  Reading inner = *reading;
  inner.method = method;
  *out = (SyPartFacts) { method, read_values (&inner, place, method, value) };
}

bool
sy_facts_read (const SyJson *document, SyMemory *memory, SyFacts *out, SyProblems *problems)
{
  Reading reading = { SY_UNITS_METRIC, NULL, memory, problems };
  int before = problems->count + problems->dropped;

  if (document->type != SY_JSON_OBJECT)
    {
      g_autofree char *given = g_strndup (document->raw, MIN (document->raw_length, 40));
      report (&reading, SY_PROBLEM_TYPE, NULL, document->line, given, "an object with the facts of one task", "");
      return false;
    }
  const SyMethod *method = read_head (&reading, document);
  if (method == NULL)
    return false;

  reading.method = method;
  void *values = read_values (&reading, NULL, method, document);
  if (problems->count + problems->dropped != before)
    {
      sy_problems_sort (problems);
      return false;
    }
  *out = (SyFacts) { method, reading.units, values };
  return true;
}
