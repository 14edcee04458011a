/* SPDX-License-Identifier: MIT */
#ifndef TAMPER_ROWS_H
#define TAMPER_ROWS_H

#include "faults-help.h"

/* The journal's rows as they stand in a file, and what is wrong with them: worked out from docs/records.md alone, with
   hash and decoder of this test's own, by which the program's are judged. */

#define N_FIELDS 18 /* of an event without origin */

typedef struct
{
  int types[5]; /* of number, hash, kind, item, event, as SQLite says */
  gint64 number, kind;
  GBytes *hash, *item, *event;
} Row;

typedef struct
{
  GPtrArray *rows;  /* of Row                                          */
  gboolean whole;   /* FALSE: SQLite could not read on behind the last */
  gint64 lists_end; /* highest line that the lists know of             */
} Rows;

typedef struct
{
  guint8 bytes[32];
} Digest;

static inline void
row_free (gpointer data)
{
  Row *row = data;

  g_bytes_unref (row->hash);
  g_bytes_unref (row->item);
  g_bytes_unref (row->event);
  g_free (row);
}

static inline void
rows_clear (Rows *rows)
{
  g_clear_pointer (&rows->rows, g_ptr_array_unref);
}

static inline GBytes *
rows_take_bytes (sqlite3_stmt *statement, int column)
{
  gconstpointer data = sqlite3_column_blob (statement, column);

  return g_bytes_new (data != NULL ? data : "", (gsize) sqlite3_column_bytes (statement, column));
}

static inline Row *
rows_take (sqlite3_stmt *statement)
{
  Row *row = g_new0 (Row, 1);

  for (int i = 0; i < 5; i++)
    row->types[i] = sqlite3_column_type (statement, i);
  row->number = sqlite3_column_int64 (statement, 0);
  row->kind = sqlite3_column_int64 (statement, 2);
  row->hash = rows_take_bytes (statement, 1);
  row->item = rows_take_bytes (statement, 3);
  row->event = rows_take_bytes (statement, 4);
  return row;
}

static inline gint64
rows_ask (sqlite3 *db, const char *sql)
{
  sqlite3_stmt *statement = NULL;
  gint64 answer = 0;

  if (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK && sqlite3_step (statement) == SQLITE_ROW)
    answer = sqlite3_column_int64 (statement, 0);
  sqlite3_finalize (statement);
  return answer;
}

static inline Rows
rows_read (const char *path)
{
  Rows rows = { .rows = g_ptr_array_new_with_free_func (row_free) };
  sqlite3 *db = faults_open_bare (path);
  sqlite3_stmt *statement = NULL;
  int status = sqlite3_prepare_v2 (db, "SELECT number, hash, kind, item, event FROM journal ORDER BY number", -1,
                                   &statement, NULL);

  if (status == SQLITE_OK)
    while ((status = sqlite3_step (statement)) == SQLITE_ROW)
      g_ptr_array_add (rows.rows, rows_take (statement));
  rows.whole = status == SQLITE_DONE;
  sqlite3_finalize (statement);
  rows.lists_end = rows_ask (db, "SELECT max (line) FROM task");
  rows.lists_end = MAX (rows.lists_end, rows_ask (db, "SELECT max (number) FROM entry"));
  rows.lists_end = MAX (rows.lists_end, rows_ask (db, "SELECT max (line) FROM action"));
  sqlite3_close (db);
  return rows;
}

static inline gboolean
rows_same (const Rows *a, const Rows *b)
{
  if (a->rows->len != b->rows->len || a->whole != b->whole)
    return FALSE;
  for (guint i = 0; i < a->rows->len; i++)
    {
      const Row *one = a->rows->pdata[i], *other = b->rows->pdata[i];

      if (memcmp (one->types, other->types, sizeof one->types) != 0 || one->number != other->number
          || one->kind != other->kind || !g_bytes_equal (one->hash, other->hash)
          || !g_bytes_equal (one->item, other->item) || !g_bytes_equal (one->event, other->event))
        return FALSE;
    }
  return TRUE;
}

static inline void
put_be (guint8 *out, guint64 value)
{
  for (int i = 0; i < 8; i++)
    out[i] = (guint8) (value >> (56 - 8 * i));
}

static inline guint64
get_be (const guint8 *data)
{
  guint64 value = 0;

  for (int i = 0; i < 8; i++)
    value = value << 8 | data[i];
  return value;
}

/* hash(n) = SHA-256( "steelyard journal line 1" ‖ hash(n-1) ‖ n as 8 bytes, big-endian ‖ SHA-256(event) ) */
static inline Digest
chain_own (const Digest *previous, guint64 number, GBytes *event)
{
  g_autoptr (GChecksum) line = g_checksum_new (G_CHECKSUM_SHA256);
  g_autoptr (GChecksum) content = g_checksum_new (G_CHECKSUM_SHA256);
  gsize size, length = sizeof (Digest);
  const guint8 *data = g_bytes_get_data (event, &size);
  guint8 place[8];
  Digest inner, out;

  if (size > 0)
    g_checksum_update (content, data, (gssize) size);
  g_checksum_get_digest (content, inner.bytes, &length);
  put_be (place, number);
  g_checksum_update (line, (const guchar *) "steelyard journal line 1", 24);
  g_checksum_update (line, previous->bytes, sizeof previous->bytes);
  g_checksum_update (line, place, sizeof place);
  g_checksum_update (line, inner.bytes, sizeof inner.bytes);
  length = sizeof out.bytes;
  g_checksum_get_digest (line, out.bytes, &length);
  return out;
}

typedef struct
{
  const guint8 *data;
  gsize size;
} Field;

static inline gboolean
is_origin (const Field *field)
{
  for (gsize i = 0; i < field->size; i++)
    if (!g_ascii_isdigit (field->data[i]) && !(field->data[i] >= 'a' && field->data[i] <= 'f'))
      return FALSE;
  return field->size == 64;
}

/* Version, fields, each led by its length, and nothing behind them. */
static inline gboolean
split_event (GBytes *event, Field fields[N_FIELDS + 1], gsize *n_fields)
{
  gsize size, at = 8;
  const guint8 *data = g_bytes_get_data (event, &size);

  if (size < 8 || (get_be (data) != 1 && get_be (data) != 2))
    return FALSE;
  *n_fields = N_FIELDS + (get_be (data) == 2 ? 1 : 0);
  for (gsize i = 0; i < *n_fields; i++)
    {
      if (size - at < 8 || get_be (data + at) > size - at - 8)
        return FALSE;
      fields[i] = (Field) { data + at + 8, (gsize) get_be (data + at) };
      at += 8 + fields[i].size;
    }
  return at == size;
}

enum
{
  AT_KIND = 0,
  AT_ITEM = 1,
  AT_BY = 4,
  AT_CLAIMED = 7,
  AT_CLOCK_SET = 9,
  AT_EDITION = 12,
  AT_REVISION = 14,
  AT_BASE = 15,
  AT_FACTS = 16,
  AT_FINDINGS = 17,
  AT_ORIGIN = 18,
};

static inline gboolean
is_event (GBytes *event, gint64 *kind, Field *item)
{
  Field fields[N_FIELDS + 1];
  gsize n_fields;

  if (!split_event (event, fields, &n_fields))
    return FALSE;
  for (gsize i = 0; i < n_fields; i++)
    {
      if (i == AT_KIND || i == AT_EDITION || i == AT_REVISION || i == AT_BASE)
        {
          if (fields[i].size != 8)
            return FALSE;
        }
      else if (i == AT_CLOCK_SET)
        {
          if (fields[i].size != 1 || fields[i].data[0] > 1)
            return FALSE;
        }
      else if (!g_utf8_validate ((const char *) fields[i].data, (gssize) fields[i].size, NULL))
        return FALSE;
    }
  *kind = (gint64) get_be (fields[AT_KIND].data);
  *item = fields[AT_ITEM];
  return *kind >= 1 && *kind <= 9 && (n_fields == N_FIELDS || is_origin (&fields[AT_ORIGIN]));
}

static inline gboolean
row_is_right (const Row *row, const Digest *previous, guint64 number, Digest *hash)
{
  gsize size;
  gconstpointer data = g_bytes_get_data (row->hash, &size);
  gint64 kind;
  Field item;

  if (row->types[0] != SQLITE_INTEGER || row->number != (gint64) number || row->types[4] != SQLITE_BLOB)
    return FALSE;
  *hash = chain_own (previous, number, row->event);
  if (row->types[1] != SQLITE_BLOB || size != sizeof *hash || memcmp (data, hash, size) != 0
      || !is_event (row->event, &kind, &item))
    return FALSE;
  data = g_bytes_get_data (row->item, &size);
  return row->types[2] == SQLITE_INTEGER && row->kind == kind && row->types[3] == SQLITE_TEXT && size == item.size
         && (size == 0 || memcmp (data, item.data, size) == 0);
}

/* The first wrong line, as sy-store.h counts; 0: none. @known: a head that was kept, NULL for none. */
static inline guint64
rows_first_wrong (const Rows *rows, const Digest *known, gboolean *found_nothing)
{
  Digest hash = { { 0 } };
  gboolean met = known == NULL;

  *found_nothing = FALSE;
  for (guint i = 0; i < rows->rows->len; i++)
    {
      Digest next;

      if (!row_is_right (rows->rows->pdata[i], &hash, i + 1, &next))
        return i + 1;
      hash = next;
      met = met || memcmp (&hash, known, sizeof hash) == 0;
    }
  if (!rows->whole)
    return rows->rows->len + 1;
  /* of the end: the number of lines, which may be none */
  if (!met || rows->lists_end > (gint64) rows->rows->len)
    return rows->rows->len;
  *found_nothing = TRUE;
  return 0;
}

#endif
