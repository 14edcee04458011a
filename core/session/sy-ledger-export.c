/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-json.h"
#include "sy-ledger-exchange-private.h"

/* A bundle of the journal. */

/* How many lines are read between two calls of the progress function. */
#define PROGRESS_LINES 64

gboolean
sy_watch (const SyWatch *watch, guint64 done, guint64 of, GError **error)
{
  if (watch->func == NULL || watch->func (done, of, watch->user_data))
    return TRUE;
  g_set_error_literal (error, SY_STORE_ERROR, SY_STORE_ERROR_STOPPED, "Stopped; nothing was changed.");
  return FALSE;
}

char *
sy_policy_key (const char *text)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *id = root != NULL ? sy_json_member_text (root, "id") : NULL;
  double version = root != NULL ? sy_json_member_number (root, "version", 0) : 0;

  return id != NULL ? g_strdup_printf ("%s %.0f", id, version) : NULL;
}

typedef struct
{
  SyHead head;
  GHashTable *items;    /* ids whose contents are wanted; NULL: every line's  */
  GHashTable *policies; /* that these were judged under                       */
  const SyWatch *watch;
  GString *out;
  GError *failed;
} Export;

static gboolean
add_policy_name (const SyLine *line, gpointer user_data)
{
  g_hash_table_add (user_data, g_strdup (line->event->policy));
  return TRUE;
}

static gboolean
choose_items (SyStore *store, const char *const *items, Export *export, GError **error)
{
  for (; *items != NULL; items++)
    {
      g_autoptr (SyTask) item = sy_store_find (store, *items, NULL, error);

      if (item == NULL
          || !sy_store_scan_item (store, item->id, SY_EVENT_REVISION, add_policy_name, export->policies, error))
        return FALSE;
      g_hash_table_add (export->items, g_strdup (item->id));
    }
  return TRUE;
}

static gboolean
is_wanted (const Export *export, const SyEvent *event)
{
  g_autofree char *policy = NULL;

  if (export->items == NULL)
    return TRUE;
  if (event->kind != SY_EVENT_POLICY)
    return g_hash_table_contains (export->items, event->item);
  policy = sy_policy_key (event->facts);
  return policy != NULL && g_hash_table_contains (export->policies, policy);
}

static gboolean
add_line (const SyLine *line, gpointer user_data)
{
  Export *export = user_data;
  g_autoptr (GBytes) bytes = NULL;
  SyHash event_hash;
  gconstpointer data;
  gsize size;

  /* What another program adds meanwhile is not of this bundle. */
  if (line->number > export->head.number)
    return FALSE;
  bytes = sy_event_encode (line->event);
  data = g_bytes_get_data (bytes, &size);
  sy_hash_of (data, size, &event_hash);
  sy_bundle_add (export->out, line->number, &line->hash, &event_hash,
                 is_wanted (export, line->event) ? line->event : NULL);
  if (export->out->len > SY_BUNDLE_MAX)
    {
      g_set_error (&export->failed, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BUNDLE,
                   "The record is too large for one bundle: line %" G_GUINT64_FORMAT " of %" G_GUINT64_FORMAT
                   " goes beyond %u MiB. Name the items that are wanted.",
                   line->number, export->head.number, SY_BUNDLE_MAX / 1024u / 1024u);
      return FALSE;
    }
  return line->number % PROGRESS_LINES != 0
         || sy_watch (export->watch, line->number, export->head.number, &export->failed);
}

GBytes *
sy_ledger_export (SyLedger *ledger, const char *const *items, SyProgressFunc progress, gpointer user_data,
                  GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) policies = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *now = NULL;
  const SyWatch watch = { progress, user_data };
  Export export = { .items = items != NULL ? ids : NULL, .policies = policies, .watch = &watch, .out = out };
  gboolean clock_set;

  now = sy_clock_now (&clock_set, error);
  if (now == NULL || !sy_store_head (store, &export.head, error)
      || (items != NULL && !choose_items (store, items, &export, error)))
    return NULL;
  sy_bundle_begin (out, now, "steelyard " SY_VERSION, export.head.number, &export.head.hash);
  if (!sy_store_scan (store, 1, add_line, &export, error))
    return NULL;
  if (export.failed != NULL)
    {
      g_propagate_error (error, export.failed);
      return NULL;
    }
  sy_bundle_end (out);
  return g_string_free_to_bytes (g_steal_pointer (&out));
}
