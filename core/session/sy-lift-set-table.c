/* SPDX-License-Identifier: MIT */
#include "sy-lift-set-table.h"

#include <math.h>
#include <string.h>

#include "sy-json.h"
#include "sy-lift-table.h"

#define LIFTS "$.lifts["

typedef struct
{
  SyLiftTable *table;
  GPtrArray *rows; /* of const SyCsvRow: those that have a lift, in its order */
  GPtrArray *bad;  /* of SyBadCell                                            */
} Reading;

static void
reading_clear (Reading *reading)
{
  sy_lift_table_free (reading->table);
  g_ptr_array_unref (reading->rows);
  if (reading->bad != NULL)
    g_ptr_array_unref (reading->bad);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Reading, reading_clear)

static void
read_rows (Reading *reading, const SyCsv *csv)
{
  for (guint i = 1; i < csv->rows->len; i++)
    if (sy_lift_table_has (reading->table, csv->rows->pdata[i], reading->bad))
      g_ptr_array_add (reading->rows, csv->rows->pdata[i]);
}

/* The units of the whole table: one for every line. */
static char *
find_units (const Reading *reading, SyUnits otherwise)
{
  g_autofree char *first = NULL;

  for (guint i = 0; i < reading->rows->len; i++)
    {
      const SyCsvRow *row = reading->rows->pdata[i];
      g_autofree char *units = sy_lift_table_units (reading->table, row);
      SyUnits known;

      if (i > 0 && strcmp (units, first) != 0)
        sy_bad_cell_add (reading->bad, row->line, "units", units, "the same on every line", "");
      else if (i == 0 && *units != '\0' && !sy_units_from_id (units, &known))
        sy_bad_cell_add (reading->bad, row->line, "units", units, "one of: metric, us", "");
      if (i == 0)
        first = g_steal_pointer (&units);
    }
  return g_strdup (first != NULL && *first != '\0' ? first : sy_units_id (otherwise));
}

static char *
make_document (const Reading *reading, const SyLiftSetRequest *request)
{
  g_autofree char *units = find_units (reading, request->units);
  GString *out = g_string_new ("{\"method\":\"lift-set\",\"units\":");

  sy_json_write_text (out, units);
  g_string_append (out, ",\"combine\":");
  sy_json_write_text (out, request->combine != NULL ? request->combine : "variable");
  if (request->duration != NULL)
    {
      g_string_append (out, ",\"duration\":");
      sy_json_write_text (out, request->duration);
    }
  if (!isnan (request->frequency))
    {
      g_string_append (out, ",\"frequency\":");
      sy_json_write_number (out, request->frequency);
    }
  g_string_append (out, ",\"lifts\":[");
  for (guint i = 0; i < reading->rows->len; i++)
    {
      g_autofree char *lift = sy_lift_table_lift (reading->table, reading->rows->pdata[i], reading->bad);

      g_string_append (out, i > 0 ? ",\n" : "\n");
      g_string_append (out, lift);
    }
  g_string_append (out, "\n]}");
  return g_string_free (out, FALSE);
}

/* What is wrong with single lifts, by line and column. */
static void
tell (const Reading *reading, const SyProblems *problems)
{
  for (int i = 0; i < problems->count; i++)
    {
      const SyProblem *problem = &problems->items[i];
      char *end;
      guint64 lift;

      if (!g_str_has_prefix (problem->path, LIFTS))
        continue;
      lift = g_ascii_strtoull (problem->path + strlen (LIFTS), &end, 10);
      if (lift < reading->rows->len && g_str_has_prefix (end, "]."))
        sy_lift_table_tell_one (reading->table, reading->rows->pdata[lift], problem, end + 2, reading->bad);
    }
}

static int
by_line (gconstpointer a, gconstpointer b)
{
  const SyBadCell *one = *(const SyBadCell *const *) a, *other = *(const SyBadCell *const *) b;

  return one->line < other->line ? -1 : one->line > other->line;
}

char *
sy_lift_table_set (SyDesk *desk, GBytes *bytes, const SyLiftSetRequest *request, GPtrArray **bad, GError **error)
{
  g_autoptr (SyCsv) csv = sy_lift_table_read (bytes, error);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree char *document = NULL;
  g_autoptr (SyAssessment) assessment = NULL;

  if (csv == NULL)
    return NULL;
  g_auto (Reading) reading = { .rows = g_ptr_array_new (), .bad = g_ptr_array_new_with_free_func (sy_bad_cell_free) };
  reading.table = sy_lift_table_new_of_set (csv, reading.bad);
  read_rows (&reading, csv);
  if (reading.rows->len == 0 && reading.bad->len == 0)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_PROBLEMS, "The table has no lift: only a first line.");
      return NULL;
    }
  document = make_document (&reading, request);
  if (reading.bad->len == 0)
    {
      assessment = sy_desk_assess (desk, document, strlen (document), SY_JUDGE_PLAIN, problems);
      if (assessment == NULL)
        tell (&reading, problems);
    }
  g_ptr_array_sort (reading.bad, by_line);
  gboolean sound = reading.bad->len == 0;
  *bad = g_steal_pointer (&reading.bad);
  return sound ? g_steal_pointer (&document) : NULL;
}
