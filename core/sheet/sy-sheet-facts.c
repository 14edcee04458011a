/* SPDX-License-Identifier: MIT */
/* What was given: every fact as typed, with its unit and how it was had. */
#include <string.h>

#include "sy-difference-words.h"
#include "sy-task-sheet-private.h"

static void
free_fact (gpointer data)
{
  SySheetFact *fact = data;

  g_free (fact->path);
  g_free (fact->name);
  g_free (fact->value);
  g_free (fact->had);
  g_free (fact);
}

/* The method by which facts inside the facts are assessed: of those whose path begins so. */
typedef struct
{
  const SyTaskSheet *sheet;
  char *prefix;           /* "steps[label=Draw].facts."; NULL: none yet */
  const SyMethod *method; /* NULL: not known                           */
} Reading;

/* A choice by its label, a set by theirs, yes and no; what was typed otherwise stays as typed. */
static char *
value_words (const Reading *reading, const SyDifference *difference)
{
  const SyTaskSheet *sheet = reading->sheet;
  const gboolean inside = reading->prefix != NULL && g_str_has_prefix (difference->path, reading->prefix);
  const SyMethod *method = inside ? reading->method : sheet->findings->method;
  const SyDifference own = { .path = inside ? difference->path + strlen (reading->prefix) : difference->path };
  const SyField *field = sy_difference_field (method, own.path);
  const char *value = difference->after;

  if (strcmp (value, "true") == 0)
    return g_strdup (sy_sheet_in (sheet, N_ ("yes")));
  if (strcmp (value, "false") == 0)
    return g_strdup (sy_sheet_in (sheet, N_ ("no")));
  if (strcmp (value, "[]") == 0)
    return g_strdup (field != NULL && field->type == SY_MEMBER_SET ? sy_sheet_in (sheet, N_ ("asked; none applies"))
                                                                   : sy_sheet_in (sheet, N_ ("none")));
  if (strcmp (difference->unit, "°") == 0)
    return g_strconcat (value, difference->unit, NULL);
  if (*difference->unit != '\0')
    return g_strconcat (value, " ", difference->unit, NULL);
  return sy_difference_fact_words (method, &own, value, sheet->translate);
}

static SySheetFact *
find_fact (GPtrArray *facts, const char *path, gsize length)
{
  for (guint i = 0; i < facts->len; i++)
    {
      SySheetFact *fact = facts->pdata[i];

      if (strlen (fact->path) == length && strncmp (fact->path, path, length) == 0)
        return fact;
    }
  return NULL;
}

/* "had.origin.H.how" is said beside origin.H; FALSE where there is no such fact. */
static gboolean
add_had (GPtrArray *facts, const Reading *reading, const SyDifference *difference)
{
  const char *path = difference->path + strlen ("had."), *last = strrchr (path, '.');
  g_autofree char *value = NULL, *whole = NULL, *old = NULL;
  SySheetFact *fact;

  if (last == NULL)
    return FALSE;
  fact = find_fact (facts, path, (gsize) (last - path));
  if (fact == NULL && strncmp (path, "load.", 5) == 0)
    fact = find_fact (facts, "load.heaviest", strlen ("load.heaviest"));
  if (fact == NULL)
    return FALSE;
  value = value_words (reading, difference);
  whole = strcmp (last, ".tolerance") == 0 ? g_strdup_printf ("± %s", value) : g_strdup (value);
  old = fact->had;
  fact->had = *old != '\0' ? g_strdup_printf ("%s, %s", old, whole) : g_strdup (whole);
  return TRUE;
}

/* Facts inside the facts begin with the method that they are for: it is told by its title. */
static gboolean
begins_part (Reading *reading, const SyDifference *difference)
{
  if (!g_str_has_suffix (difference->path, ".facts.method"))
    return FALSE;
  g_free (reading->prefix);
  reading->prefix = g_strndup (difference->path, strlen (difference->path) - strlen ("method"));
  reading->method = sy_method_find (difference->after);
  return reading->method != NULL;
}

static void
add_fact (GPtrArray *facts, Reading *reading, const SyDifference *difference, gboolean names)
{
  const SyTaskSheet *sheet = reading->sheet;
  SySheetFact *fact;

  if (g_str_has_prefix (difference->path, "had.") && add_had (facts, reading, difference))
    return;
  fact = g_new0 (SySheetFact, 1);
  fact->path = g_strdup (difference->path);
  fact->name = names ? sy_difference_name_words (difference, sheet->translate) : NULL;
  fact->value = begins_part (reading, difference) ? g_strdup (sy_sheet_in (sheet, reading->method->title))
                                                  : value_words (reading, difference);
  fact->had = g_strdup ("");
  g_ptr_array_add (facts, fact);
}

GPtrArray *
sy_sheet_facts (const SyTaskSheet *sheet, gboolean names)
{
  g_autoptr (SyEvent) nothing = sy_event_new (SY_EVENT_REVISION), given = sy_event_new (SY_EVENT_REVISION);
  g_autoptr (GPtrArray) differences = NULL;
  GPtrArray *facts = g_ptr_array_new_with_free_func (free_fact);
  Reading reading = { sheet, NULL, NULL };

  /* Against facts that say nothing, all that is said differs. */
  sy_event_set (&nothing->facts, "{}");
  sy_event_set (&nothing->findings, "{}");
  sy_event_set (&nothing->method, sheet->findings->method->id);
  nothing->edition = given->edition = sheet->findings->method->edition;
  sy_event_set (&given->facts, sheet->event->facts);
  sy_event_set (&given->findings, "{}");
  sy_event_set (&given->method, sheet->findings->method->id);
  differences = sy_difference_of (nothing, given);
  for (guint i = 0; i < differences->len; i++)
    {
      const SyDifference *each = differences->pdata[i];

      if (each->part == SY_PART_FACTS && each->after != NULL && strcmp (each->path, "method") != 0)
        add_fact (facts, &reading, each, names);
    }
  g_free (reading.prefix);
  return facts;
}

const char *
sy_sheet_fact (GPtrArray *facts, const char *path)
{
  const SySheetFact *fact = find_fact (facts, path, strlen (path));

  return fact != NULL ? fact->value : NULL;
}

/* ---- the table ---- */

/* How much of a path and of a name is of the member of a list that it belongs to; 0: of none. */
static gsize
member_length (const char *path)
{
  const char *close = strrchr (path, ']');

  return close != NULL && close[1] == '.' ? (gsize) (close + 1 - path) : 0;
}

/* "Leg P1: Element E-1" of "Leg P1: Element E-1: Kind". */
static char *
without_last (const char *name)
{
  g_auto (GStrv) parts = g_strsplit (name, ": ", -1);
  const guint n = g_strv_length (parts);

  if (n > 1)
    {
      g_free (parts[n - 1]);
      parts[n - 1] = NULL;
    }
  return g_strjoinv (": ", parts);
}

/* What a member of that name is called within it; of facts inside the facts without what they are the facts of. */
static const char *
name_within (const SySheetFact *fact, const char *name)
{
  const char *own = g_str_has_prefix (fact->name, name) ? fact->name + strlen (name) : fact->name;
  const char *rest;

  own += strspn (own, ": ");
  rest = strstr (fact->path, "].facts.") != NULL ? strstr (own, ": ") : NULL;
  return rest != NULL ? rest + 2 : own;
}

static void
add_row (SyFolio *folio, const char *name, const char *value, const char *had)
{
  const char *cells[] = { name, value, had };

  sy_folio_row (folio, cells);
}

/* All members of one member of a list in one row; returns how many. */
static guint
add_member (SyFolio *folio, GPtrArray *facts, guint at, gsize length)
{
  const SySheetFact *first = facts->pdata[at];
  g_autofree char *name = without_last (first->name);
  g_autoptr (GString) value = g_string_new (NULL);
  guint n = 0;

  for (; at + n < facts->len; n++)
    {
      const SySheetFact *fact = facts->pdata[at + n];

      if (member_length (fact->path) != length || strncmp (fact->path, first->path, length) != 0)
        break;
      /* the name says it already */
      if (g_str_has_suffix (fact->path, "].label") && g_str_has_suffix (name, fact->value))
        continue;
      g_string_append_printf (value, "%s%s: %s", value->len > 0 ? " · " : "", name_within (fact, name), fact->value);
    }
  add_row (folio, name, value->str, "");
  return n;
}

void
sy_sheet_add_facts (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Fact")), 0.3, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("As given")), 0.48, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("How it was had")), 0.22, SY_TYPE_NOTE },
  };
  const SyFolioColumn without[] = { columns[0], { columns[1].title, 0.7, SY_TYPE_NOTE } };
  g_autoptr (GPtrArray) facts = sy_sheet_facts (sheet, TRUE);
  gboolean any = FALSE;

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("What was given")));
  for (guint i = 0; i < facts->len; i++)
    any = any || *((SySheetFact *) facts->pdata[i])->had != '\0';
  if (any)
    sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  else
    sy_folio_table (folio, without, G_N_ELEMENTS (without));
  for (guint i = 0; i < facts->len;)
    {
      const SySheetFact *fact = facts->pdata[i];
      const gsize length = member_length (fact->path);

      if (length > 0)
        i += add_member (folio, facts, i, length);
      else
        {
          add_row (folio, fact->name, fact->value, fact->had);
          i++;
        }
    }
}
