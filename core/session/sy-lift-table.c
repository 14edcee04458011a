/* SPDX-License-Identifier: MIT */
#include "sy-lift-table.h"

#include <string.h>

#include "sy-json.h"
#include "sy-lift-facts.h"
#include "sy-method.h"

#define METHOD "lift"
#define SET_METHOD "lift-set"
#define MISSING_COLUMN (-1)

struct SyLiftTable
{
  const SyField *fields; /* that a row may have */
  gsize n_fields;
  gboolean of_set;       /* rows are lifts of one set: no facts of a document, and no need of a name */
  const SyCsvRow *first;
  GHashTable *columns; /* name → its place + 1 */
  char **names;        /* without blanks around */
};

void
sy_bad_cell_free (gpointer data)
{
  SyBadCell *cell = data;

  g_free (cell->column);
  g_free (cell->value);
  g_free (cell->allowed);
  g_free (cell->unit);
  g_free (cell);
}

void
sy_bad_cell_add (GPtrArray *bad, guint64 line, const char *column, const char *value, const char *allowed,
                 const char *unit)
{
  SyBadCell *cell = g_new0 (SyBadCell, 1);

  cell->line = line;
  cell->column = g_strdup (column != NULL ? column : "");
  cell->value = g_strdup (value);
  cell->allowed = g_strdup (allowed);
  cell->unit = g_strdup (unit);
  g_ptr_array_add (bad, cell);
}

static int
find_column (const SyLiftTable *table, const char *name)
{
  return GPOINTER_TO_INT (g_hash_table_lookup (table->columns, name)) - 1;
}

/* Without blanks around it; "" for a column that is not there. New string. */
static char *
take_cell (const SyLiftTable *table, const SyCsvRow *row, const char *name)
{
  int column = find_column (table, name);

  return column == MISSING_COLUMN ? g_strdup ("") : g_strstrip (g_strdup (row->cells[column]));
}

/* A field that one cell can hold: reached by groups only, and not a list of groups or vectors. */
static const SyField *
find_field (const SyField *fields, gsize n_fields, const char *path)
{
  for (gsize i = 0; i < n_fields; i++)
    {
      const SyField *field = &fields[i];
      gsize length = strlen (field->name);

      if (strncmp (path, field->name, length) != 0)
        continue;
      if (path[length] == '.' && field->type == SY_MEMBER_GROUP)
        return find_field (field->members, field->n_members, path + length + 1);
      if (path[length] == '\0')
        return field->type == SY_MEMBER_GROUP || field->type == SY_MEMBER_LIST ? NULL : field;
    }
  return NULL;
}

static gboolean
is_column (const SyLiftTable *table, const char *name)
{
  static const char *const own[] = { "task", "method", "units" };

  for (gsize i = 0; i < G_N_ELEMENTS (own); i++)
    if (strcmp (name, own[i]) == 0)
      return TRUE;
  return find_field (table->fields, table->n_fields, name) != NULL
         || (!table->of_set && find_field (sy_common_fields, sy_n_common_fields, name) != NULL);
}

static void
take_name (SyLiftTable *table, gsize i, GPtrArray *bad)
{
  const char *name = table->names[i];

  if (g_str_has_prefix (name, "sessions"))
    sy_bad_cell_add (bad, table->first->line, name, name,
                     "work_minutes and recovery_minutes, or duration; a day in several parts is entered as a document", "");
  else if (!is_column (table, name))
    sy_bad_cell_add (bad, table->first->line, name, name,
                     table->of_set
                       ? "“task” or a field of a lift in a set, as “steelyard-cli methods " SET_METHOD "” names them"
                       : "“task” or a field of the method “" METHOD "”, as “steelyard-cli methods " METHOD "” names them",
                     "");
  else if (find_column (table, name) != MISSING_COLUMN)
    sy_bad_cell_add (bad, table->first->line, name, name, "a name that no other column has", "");
  else
    g_hash_table_insert (table->columns, table->names[i], GINT_TO_POINTER ((int) i + 1));
}

static SyLiftTable *
new_table (const SyCsv *csv, gboolean of_set, GPtrArray *bad)
{
  SyLiftTable *table = g_new0 (SyLiftTable, 1);

  table->of_set = of_set;
  table->fields = of_set ? sy_lift_of_set_fields : sy_lift_fields;
  table->n_fields = of_set ? SY_N_LIFT_OF_SET_FIELDS : SY_N_LIFT_FIELDS;
  table->first = csv->rows->pdata[0];
  table->columns = g_hash_table_new (g_str_hash, g_str_equal);
  table->names = g_strdupv (table->first->cells);
  for (gsize i = 0; i < table->first->n_cells; i++)
    {
      g_strstrip (table->names[i]);
      take_name (table, i, bad);
    }
  if (!of_set && find_column (table, "task") == MISSING_COLUMN)
    sy_bad_cell_add (bad, table->first->line, "task", "", "a column “task” with the name of each lift", "");
  if (of_set && find_column (table, "task") != MISSING_COLUMN && find_column (table, "label") != MISSING_COLUMN)
    sy_bad_cell_add (bad, table->first->line, "label", "label", "“task” or “label”: one name of a lift", "");
  return table;
}

SyLiftTable *
sy_lift_table_new (const SyCsv *csv, GPtrArray *bad)
{
  return new_table (csv, FALSE, bad);
}

SyLiftTable *
sy_lift_table_new_of_set (const SyCsv *csv, GPtrArray *bad)
{
  return new_table (csv, TRUE, bad);
}

void
sy_lift_table_free (SyLiftTable *table)
{
  if (table == NULL)
    return;
  g_hash_table_unref (table->columns);
  g_strfreev (table->names);
  g_free (table);
}

gboolean
sy_lift_table_has (const SyLiftTable *table, const SyCsvRow *row, GPtrArray *bad)
{
  g_autofree char *given = NULL, *allowed = NULL;
  gboolean is_blank = TRUE;

  for (gsize i = 0; i < row->n_cells; i++)
    is_blank = is_blank && !sy_text_says (row->cells[i]);
  if (is_blank || row->n_cells == table->first->n_cells)
    return !is_blank;
  given = g_strdup_printf ("%" G_GSIZE_FORMAT " cells", row->n_cells);
  allowed = g_strdup_printf ("%" G_GSIZE_FORMAT " cells, as in the first line", table->first->n_cells);
  sy_bad_cell_add (bad, row->line, NULL, given, allowed, "");
  return FALSE;
}

char *
sy_lift_table_task (const SyLiftTable *table, const SyCsvRow *row)
{
  return take_cell (table, row, "task");
}

static gsize
count_digits (const char *text)
{
  return strspn (text, "0123456789");
}

/* RFC 8259, section 6. */
static gboolean
is_json_number (const char *text)
{
  if (*text == '-')
    text++;
  if (count_digits (text) == 0 || (*text == '0' && count_digits (text) > 1))
    return FALSE;
  text += count_digits (text);
  if (*text == '.')
    {
      text++;
      if (count_digits (text) == 0)
        return FALSE;
      text += count_digits (text);
    }
  if (*text == 'e' || *text == 'E')
    {
      text += text[1] == '+' || text[1] == '-' ? 2 : 1;
      if (count_digits (text) == 0)
        return FALSE;
      text += count_digits (text);
    }
  return *text == '\0';
}

/* A bare number is one in the row's units, a decimal comma or not; anything else is a text that the reader of documents
   makes a quantity of, or refuses. */
static void
write_number (GString *out, const char *cell)
{
  double value;
  gsize used = 0;

  if (is_json_number (cell))
    g_string_append (out, cell);
  else if (sy_number_parse (cell, strlen (cell), &value, &used) == SY_TEXT_OK && used == strlen (cell))
    sy_json_write_number (out, value);
  else
    sy_json_write_text (out, cell);
}

/* Spreadsheets write these in capitals. */
static void
write_flag (GString *out, const char *cell)
{
  if (g_ascii_strcasecmp (cell, "true") == 0)
    g_string_append (out, "true");
  else if (g_ascii_strcasecmp (cell, "false") == 0)
    g_string_append (out, "false");
  else
    sy_json_write_text (out, cell);
}

/* Ids with blanks or "|" between; "none": asked, and none applies. */
static void
write_set (GString *out, const char *cell)
{
  g_auto (GStrv) ids = g_strsplit_set (cell, " \t\r\n|", -1);
  gboolean any = FALSE;

  g_string_append_c (out, '[');
  for (char **id = ids; *id != NULL && strcmp (cell, "none") != 0; id++)
    {
      if (**id == '\0')
        continue;
      if (any)
        g_string_append_c (out, ',');
      sy_json_write_text (out, *id);
      any = TRUE;
    }
  g_string_append_c (out, ']');
}

static void
write_value (GString *out, const SyField *field, const char *cell)
{
  switch (field->type)
    {
    case SY_MEMBER_NUMBER:
      write_number (out, cell);
      break;
    case SY_MEMBER_BOOL:
      write_flag (out, cell);
      break;
    case SY_MEMBER_SET:
      write_set (out, cell);
      break;
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_TEXT:
    case SY_MEMBER_DATE:
    case SY_MEMBER_GROUP:
    case SY_MEMBER_LIST:
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_TEXTS:
    case SY_MEMBER_FACTS:
      sy_json_write_text (out, cell);
      break;
    }
}

static void
begin_member (GString *out, const char *name)
{
  if (out->len > 0 && out->str[out->len - 1] != '{')
    g_string_append_c (out, ',');
  sy_json_write_text (out, name);
  g_string_append_c (out, ':');
}

/* The members that the row has a value for, in the order of the table of fields; an empty group is left out. */
static void
write_fields (const SyLiftTable *table, const SyCsvRow *row, const SyField *fields, gsize n_fields, const char *prefix,
              GString *out)
{
  for (gsize i = 0; i < n_fields; i++)
    {
      const SyField *field = &fields[i];
      g_autofree char *path = g_strconcat (prefix, field->name, NULL);

      if (field->type == SY_MEMBER_GROUP)
        {
          g_autofree char *inner_prefix = g_strconcat (path, ".", NULL);
          g_autoptr (GString) inner = g_string_new ("{");

          write_fields (table, row, field->members, field->n_members, inner_prefix, inner);
          if (inner->len == 1)
            continue;
          begin_member (out, field->name);
          g_string_append_printf (out, "%s}", inner->str);
        }
      else
        {
          g_autofree char *cell = take_cell (table, row, path);

          if (*cell == '\0')
            continue;
          begin_member (out, field->name);
          write_value (out, field, cell);
        }
    }
}

static void
check_method (const SyLiftTable *table, const SyCsvRow *row, GPtrArray *bad)
{
  g_autofree char *method = take_cell (table, row, "method");

  if (*method != '\0' && strcmp (method, METHOD) != 0)
    sy_bad_cell_add (bad, row->line, "method", method, METHOD ", or nothing: a table has lifts by hand only", "");
}

char *
sy_lift_table_units (const SyLiftTable *table, const SyCsvRow *row)
{
  return take_cell (table, row, "units");
}

char *
sy_lift_table_lift (const SyLiftTable *table, const SyCsvRow *row, GPtrArray *bad)
{
  GString *out = g_string_new ("{");
  g_autofree char *task = take_cell (table, row, "task");

  check_method (table, row, bad);
  if (*task != '\0')
    {
      begin_member (out, "label");
      sy_json_write_text (out, task);
    }
  write_fields (table, row, table->fields, table->n_fields, "", out);
  g_string_append_c (out, '}');
  return g_string_free (out, FALSE);
}

char *
sy_lift_table_document (const SyLiftTable *table, const SyCsvRow *row, GPtrArray *bad)
{
  GString *out = g_string_new ("{\"method\":\"" METHOD "\"");
  g_autofree char *units = take_cell (table, row, "units");

  check_method (table, row, bad);
  if (*units != '\0')
    {
      begin_member (out, "units");
      sy_json_write_text (out, units);
    }
  write_fields (table, row, sy_common_fields, sy_n_common_fields, "", out);
  write_fields (table, row, table->fields, table->n_fields, "", out);
  g_string_append_c (out, '}');
  return g_string_free (out, FALSE);
}

void
sy_lift_table_tell_one (const SyLiftTable *table, const SyCsvRow *row, const SyProblem *problem, const char *path,
                        GPtrArray *bad)
{
  g_autofree char *column = g_strndup (path, strcspn (path, "["));
  g_autofree char *cell = take_cell (table, row, column);

  /* what a whole row lacks has no column of its own */
  sy_bad_cell_add (bad, row->line, column, *cell != '\0' || problem->kind == SY_PROBLEM_MISSING ? cell : problem->given,
                   problem->allowed, problem->unit);
}

void
sy_lift_table_tell (const SyLiftTable *table, const SyCsvRow *row, const SyProblems *problems, GPtrArray *bad)
{
  for (int i = 0; i < problems->count; i++)
    {
      const SyProblem *problem = &problems->items[i];

      sy_lift_table_tell_one (table, row, problem,
                              g_str_has_prefix (problem->path, "$.") ? problem->path + 2 : problem->path, bad);
    }
}

SyCsv *
sy_lift_table_read (GBytes *bytes, GError **error)
{
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);
  g_autoptr (GError) failed = NULL;
  SyCsv *csv;

  if (length > SY_CSV_MAX)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_PROBLEMS, "The table is too large; allowed: at most %u MiB.",
                   SY_CSV_MAX / 1024u / 1024u);
      return NULL;
    }
  csv = sy_csv_read (length > 0 ? text : "", length, &failed);
  if (csv == NULL)
    g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_PROBLEMS, "This is no table: %s", failed->message);
  return csv;
}
