/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-store-private.h"

/* The chain computed anew and every row held against it, without making an event of any line. */

typedef struct
{
  SyVerification *out;
  SyHasher *hasher;
  const SyHash *known;
  SyProgressFunc progress;
  gpointer user_data;
  guint64 of;
  SyAstray sums;
  GError *error;
} Check;

static char *
hex_of (const guint8 *bytes, gsize size)
{
  GString *text;

  if (bytes == NULL)
    return g_strdup ("no hash");
  text = g_string_new (NULL);
  for (gsize i = 0; i < size; i++)
    g_string_append_printf (text, "%02x", bytes[i]);
  return g_string_free (text, FALSE);
}

/* FALSE, to end the scan. Takes both texts. */
static gboolean
find_fault (SyVerification *out, SyFault fault, guint64 line, char *expected, char *found)
{
  out->fault = fault;
  out->line = line;
  g_free (out->expected);
  g_free (out->found);
  out->expected = expected;
  out->found = found;
  return FALSE;
}

static char *
number_words (const char *before, gint64 number)
{
  return g_strdup_printf ("%s %" G_GINT64_FORMAT, before, number);
}

/* What its row says besides the line. */
static gboolean
check_columns (SyVerification *out, const SyRawLine *line, gint64 kind, const char *item, gsize item_length)
{
  const char *id = sy_event_kind_id ((SyEventKind) kind);

  if (id == NULL)
    return find_fault (out, SY_FAULT_EVENT, line->number, g_strdup ("an event of a kind that is known"),
                       number_words ("kind", kind));
  if (!line->kind_is_number || line->kind != kind)
    return find_fault (out, SY_FAULT_COLUMN, line->number, number_words ("kind", kind),
                       line->kind_is_number ? number_words ("kind", line->kind) : g_strdup ("a kind that is no number"));
  if (line->item == NULL || line->item_size != item_length || memcmp (line->item, item, item_length) != 0)
    return find_fault (out, SY_FAULT_COLUMN, line->number,
                       g_strdup_printf ("item “%.*s”", (int) item_length, item),
                       line->item == NULL ? g_strdup ("an item that is no text")
                                          : g_strdup_printf ("item “%.*s”", (int) line->item_size, line->item));
  return TRUE;
}

static gboolean
check_line_cb (const SyRawLine *line, gpointer user_data)
{
  Check *check = user_data;
  SyVerification *out = check->out;
  const guint64 number = out->head.number + 1;
  SyHash content, hash;
  gint64 kind = 0;
  const char *item = NULL;
  gsize item_length = 0;

  if (!sy_store_go_on (check->progress, out->head.number, check->of, check->user_data, &check->error))
    return FALSE;
  if (line->number != number)
    return find_fault (out, SY_FAULT_NUMBER, number, number_words ("line", (gint64) number),
                       number_words ("line", (gint64) line->number));
  if (line->event == NULL)
    return find_fault (out, SY_FAULT_EVENT, number, g_strdup ("the bytes of an event"), g_strdup ("none"));
  sy_hasher_run (check->hasher, line->event, line->event_size, &content);
  sy_hasher_link (check->hasher, &out->head.hash, number, &content, &hash);
  if (line->hash_size != SY_HASH_BYTES || memcmp (line->hash, hash.bytes, SY_HASH_BYTES) != 0)
    return find_fault (out, SY_FAULT_HASH, number, hex_of (hash.bytes, SY_HASH_BYTES), hex_of (line->hash, line->hash_size));
  if (!sy_event_peek (line->event, line->event_size, &kind, &item, &item_length))
    return find_fault (out, SY_FAULT_EVENT, number, g_strdup ("the bytes of an event"), g_strdup ("other bytes"));
  if (!check_columns (out, line, kind, item, item_length))
    return FALSE;
  out->head.number = out->lines = number;
  out->head.hash = hash;
  check->sums.lines_sum += sy_store_mix (check->sums.seed, item, item_length, number);
  if (kind == SY_EVENT_POLICY)
    check->sums.policies_sum += sy_store_mix (check->sums.seed, "", 0, number);
  if (check->known != NULL && memcmp (check->known, &hash, sizeof hash) == 0)
    out->known_at = number;
  return TRUE;
}

/* The lists may know of lines that were cut off the end. */
static void
check_end (SyStore *store, const SyHash *known, SyVerification *out)
{
  guint64 last;

  if (known != NULL && out->known_at == 0)
    find_fault (out, SY_FAULT_HEAD, out->lines, hex_of (known->bytes, SY_HASH_BYTES),
                out->lines > 0 ? hex_of (out->head.hash.bytes, SY_HASH_BYTES) : g_strdup ("an empty journal"));
  else if (store->backend->lists_end (store, &last) && last > out->lines)
    find_fault (out, SY_FAULT_END, out->lines, number_words ("line", (gint64) last),
                number_words ("the end after line", (gint64) out->lines));
}

/* What holds may still not be what is shown of it. */
static gboolean
check_parts (SyStore *store, SyAstray astray, SyVerification *out, GError **error)
{
  g_autoptr (GError) failed = NULL;

  if (store->backend->astray == NULL)
    return TRUE;
  if (!store->backend->astray (store, &astray, &failed))
    {
      g_free (astray.expected);
      g_free (astray.found);
      if (!g_error_matches (failed, SY_STORE_ERROR, SY_STORE_ERROR_CORRUPT))
        {
          g_propagate_error (error, g_steal_pointer (&failed));
          return FALSE;
        }
      find_fault (out, SY_FAULT_PARTS, out->lines, g_strdup ("indices that can be read"), g_strdup (failed->message));
    }
  else if (astray.expected != NULL)
    find_fault (out, SY_FAULT_PARTS, astray.line > 0 ? astray.line : out->lines, astray.expected, astray.found);
  return TRUE;
}

/* While the record is held. FALSE with the error when it could not be carried out. */
static gboolean
verify (SyStore *store, Check *check, GError **error)
{
  SyVerification *out = check->out;
  g_autoptr (GError) unreadable = NULL;
  SyHead end;

  check->of = store->backend->head (store, &end, NULL) ? end.number : 0;
  check->hasher = sy_hasher_new ();
  check->sums.seed = (guint64) g_random_int () << 32 | g_random_int ();
  store->scans++;
  store->backend->scan_raw (store, check_line_cb, check, &unreadable);
  store->scans--;
  sy_hasher_free (check->hasher);
  if (check->error != NULL)
    {
      g_propagate_error (error, check->error);
      return FALSE;
    }
  if (g_error_matches (unreadable, SY_STORE_ERROR, SY_STORE_ERROR_CORRUPT))
    find_fault (out, SY_FAULT_FILE, out->lines + 1, g_strdup ("a line that can be read"), g_strdup (unreadable->message));
  else if (unreadable != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&unreadable));
      return FALSE;
    }
  if (out->fault == SY_FAULT_NONE)
    check_end (store, check->known, out);
  return out->fault != SY_FAULT_NONE || check_parts (store, check->sums, out, error);
}

gboolean
sy_store_verify (SyStore *store, const SyHash *known, SyProgressFunc progress, gpointer user_data, SyVerification *out,
                 GError **error)
{
  Check check = { .out = out, .known = known, .progress = progress, .user_data = user_data };
  gboolean done;

  *out = (SyVerification) { 0 };
  /* Lines, lists and indices as they are at one time: another program may write meanwhile. */
  if (!sy_store_enter (store, error) || (store->backend->hold != NULL && !store->backend->hold (store, error)))
    return FALSE;
  done = verify (store, &check, error);
  if (store->backend->release != NULL)
    store->backend->release (store);
  if (!done)
    sy_verification_clear (out);
  return done;
}

void
sy_verification_clear (SyVerification *verification)
{
  g_clear_pointer (&verification->expected, g_free);
  g_clear_pointer (&verification->found, g_free);
}
