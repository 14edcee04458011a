/* SPDX-License-Identifier: MIT */
#ifndef SY_CSV_H
#define SY_CSV_H

#include <glib.h>

/* Tables of a spreadsheet as text (RFC 4180). Pure: bytes in, bytes out; no locale. */

#define SY_CSV_ERROR (sy_csv_error_quark ())
GQuark sy_csv_error_quark (void);
typedef enum
{
  SY_CSV_ERROR_TEXT,  /* not UTF-8, or a character that no table has */
  SY_CSV_ERROR_QUOTE, /* quotes that do not fit                      */
  SY_CSV_ERROR_EMPTY, /* not even a first line                       */
} SyCsvError;

typedef struct
{
  guint64 line;  /* of the text, on which the row begins, from 1 */
  char **cells;  /* NULL-terminated                              */
  gsize n_cells;
} SyCsvRow;

typedef struct
{
  char separator;  /* ',' or ';'                                     */
  GPtrArray *rows; /* of SyCsvRow; the first is the first line's     */
} SyCsv;

void sy_csv_free (SyCsv *csv); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyCsv, sy_csv_free)

/**
 * sy_csv_read:
 * Cells separated by commas or, where the first line has a semicolon outside quotes before any comma, by semicolons;
 * lines end in CRLF or LF, the last one need not; a byte order mark is passed over; a line without anything is none. A
 * quoted cell may hold separators, line ends and, doubled, quotes. A row may have another number of cells than the first:
 * that is for the caller to say.
 * Return value: new; NULL with an SY_CSV_ERROR whose message names the line.
 */
SyCsv *sy_csv_read (const char *text, gsize length, GError **error);

/* Writing: comma and CRLF. begin writes the byte order mark, by which spreadsheets know UTF-8. */
void sy_csv_begin (GString *out);
/* One cell; @is_first: of its row. A text that a spreadsheet would take for a formula (= + - @ in front, full
   width and behind blanks or quotes too; a tab or line end in front) gets an
   apostrophe before it. */
void sy_csv_add_text (GString *out, gboolean is_first, const char *text);
/* "." as mark whatever the locale; nothing for NAN, "unbounded" for INFINITY. */
void sy_csv_add_number (GString *out, gboolean is_first, double value);
void sy_csv_end_row (GString *out);

#endif
