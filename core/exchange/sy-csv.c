/* SPDX-License-Identifier: MIT */
#include "sy-csv.h"

#include <math.h>
#include <string.h>

#include "sy-number.h"

G_DEFINE_QUARK (sy-csv-error-quark, sy_csv_error)

#define BYTE_ORDER_MARK "\xef\xbb\xbf"

typedef struct
{
  const char *at, *end;
  char separator;
  guint64 line;
  GString *cell;
  GError **error;
} Reader;

static void
row_free (gpointer data)
{
  SyCsvRow *row = data;

  g_strfreev (row->cells);
  g_free (row);
}

void
sy_csv_free (SyCsv *csv)
{
  if (csv == NULL)
    return;
  g_ptr_array_unref (csv->rows);
  g_free (csv);
}

static guint64
count_lines (const char *from, const char *to)
{
  guint64 lines = 1;

  for (; from < to; from++)
    if (*from == '\n')
      lines++;
  return lines;
}

static gboolean
check_text (const char *text, gsize length, GError **error)
{
  const char *bad = NULL;

  /* With a length given, NUL bytes are refused as well. */
  if (g_utf8_validate (text, (gssize) length, &bad))
    return TRUE;
  g_set_error (error, SY_CSV_ERROR, SY_CSV_ERROR_TEXT,
               "line %" G_GUINT64_FORMAT ": given bytes that are no UTF-8 text; allowed: UTF-8 (save the table as “CSV UTF-8”)",
               count_lines (text, bad));
  return FALSE;
}

/* By the first line: its cells are names, in which neither occurs. */
static char
find_separator (const char *at, const char *end)
{
  gboolean is_quoted = FALSE;

  for (; at < end && (is_quoted || *at != '\n'); at++)
    if (*at == '"')
      is_quoted = !is_quoted;
    else if (!is_quoted && (*at == ',' || *at == ';'))
      return *at;
  return ',';
}

static gboolean
refuse (Reader *reader, guint64 line, const char *given, const char *allowed)
{
  g_set_error (reader->error, SY_CSV_ERROR, SY_CSV_ERROR_QUOTE, "line %" G_GUINT64_FORMAT ": given %s; allowed: %s", line,
               given, allowed);
  return FALSE;
}

static gboolean
at_line_end (const Reader *reader)
{
  return reader->at == reader->end || *reader->at == '\n'
         || (*reader->at == '\r' && reader->at + 1 < reader->end && reader->at[1] == '\n');
}

static gboolean
read_quoted (Reader *reader)
{
  const guint64 begun = reader->line;

  for (reader->at++; reader->at < reader->end; reader->at++)
    {
      if (*reader->at == '\n')
        reader->line++;
      if (*reader->at != '"')
        g_string_append_c (reader->cell, *reader->at);
      else if (reader->at + 1 < reader->end && reader->at[1] == '"')
        g_string_append_c (reader->cell, *reader->at++);
      else
        {
          reader->at++;
          return at_line_end (reader) || *reader->at == reader->separator
                 || refuse (reader, reader->line, "text behind a closing quote",
                            "a separator or the end of the line; a quote inside quotes is written twice");
        }
    }
  return refuse (reader, begun, "a quote that is not closed", "a closing quote");
}

static gboolean
read_plain (Reader *reader)
{
  for (; !at_line_end (reader) && *reader->at != reader->separator; reader->at++)
    {
      if (*reader->at == '"')
        return refuse (reader, reader->line, "a quote inside a cell", "a cell in quotes, with quotes in it written twice");
      if (*reader->at == '\r')
        return refuse (reader, reader->line, "a carriage return alone", "lines that end in CRLF or LF");
      g_string_append_c (reader->cell, *reader->at);
    }
  return TRUE;
}

/* One row and the end of its line. */
static gboolean
read_row (Reader *reader, SyCsvRow *row)
{
  GPtrArray *cells = g_ptr_array_new ();
  gboolean good;

  row->line = reader->line;
  for (;;)
    {
      g_string_truncate (reader->cell, 0);
      good = reader->at < reader->end && *reader->at == '"' ? read_quoted (reader) : read_plain (reader);
      g_ptr_array_add (cells, g_strndup (reader->cell->str, reader->cell->len));
      if (!good || at_line_end (reader))
        break;
      reader->at++;
    }
  if (reader->at < reader->end)
    {
      reader->at += *reader->at == '\r' ? 2 : 1;
      reader->line++;
    }
  row->n_cells = cells->len;
  g_ptr_array_add (cells, NULL);
  row->cells = (char **) g_ptr_array_free (cells, FALSE);
  return good;
}

static gboolean
is_nothing (const SyCsvRow *row)
{
  return row->n_cells == 1 && *row->cells[0] == '\0';
}

SyCsv *
sy_csv_read (const char *text, gsize length, GError **error)
{
  g_autoptr (SyCsv) csv = g_new0 (SyCsv, 1);
  g_autoptr (GString) cell = g_string_new (NULL);
  Reader reader = { .at = text, .end = text + length, .line = 1, .cell = cell, .error = error };
  gboolean good = TRUE;

  csv->rows = g_ptr_array_new_with_free_func (row_free);
  if (!check_text (text, length, error))
    return NULL;
  if (length >= strlen (BYTE_ORDER_MARK) && memcmp (text, BYTE_ORDER_MARK, strlen (BYTE_ORDER_MARK)) == 0)
    reader.at += strlen (BYTE_ORDER_MARK);
  reader.separator = csv->separator = find_separator (reader.at, reader.end);
  while (good && reader.at < reader.end)
    {
      SyCsvRow *row = g_new0 (SyCsvRow, 1);

      good = read_row (&reader, row);
      if (good && is_nothing (row))
        row_free (row);
      else
        g_ptr_array_add (csv->rows, row);
    }
  if (!good)
    return NULL;
  if (csv->rows->len == 0)
    {
      g_set_error_literal (error, SY_CSV_ERROR, SY_CSV_ERROR_EMPTY,
                           "line 1: given nothing; allowed: the names of the columns");
      return NULL;
    }
  return g_steal_pointer (&csv);
}

void
sy_csv_begin (GString *out)
{
  g_string_append (out, BYTE_ORDER_MARK);
}

/* Whether a spreadsheet might work it out: what begins a formula, in ASCII or full width, also behind blanks, quotes and what
   cannot be seen, which some take away first; a tab or a line end in front. */
static gboolean
may_be_formula (const char *text)
{
  static const gunichar signs[] = { '=', '+', '-', '@', 0xff1d, 0xff0b, 0xff0d, 0xff20, 0x2212 };
  gunichar letter = g_utf8_get_char (text);

  if (letter == '\t' || letter == '\r' || letter == '\n')
    return TRUE;
  while (*text != '\0' && (g_unichar_isspace (letter) || g_unichar_iszerowidth (letter) || g_unichar_iscntrl (letter) || letter == '"'))
    {
      text = g_utf8_next_char (text);
      letter = g_utf8_get_char (text);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (letter == signs[i])
      return TRUE;
  return FALSE;
}

void
sy_csv_add_text (GString *out, gboolean is_first, const char *text)
{
  gboolean is_formula = may_be_formula (text);
  gboolean is_quoted = strpbrk (text, "\",;\r\n") != NULL || g_str_has_prefix (text, " ") || g_str_has_suffix (text, " ");

  if (!is_first)
    g_string_append_c (out, ',');
  if (is_quoted)
    g_string_append_c (out, '"');
  if (is_formula)
    g_string_append_c (out, '\'');
  for (; *text != '\0'; text++)
    {
      if (*text == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *text);
    }
  if (is_quoted)
    g_string_append_c (out, '"');
}

void
sy_csv_add_number (GString *out, gboolean is_first, double value)
{
  char number[SY_NUMBER_TEXT_MAX];

  if (!is_first)
    g_string_append_c (out, ',');
  if (isinf (value))
    g_string_append (out, "unbounded");
  else if (!isnan (value))
    g_string_append_len (out, number, (gssize) sy_number_print (value, number));
}

void
sy_csv_end_row (GString *out)
{
  g_string_append (out, "\r\n");
}
