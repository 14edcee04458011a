/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-deed.h"
#include "sy-ledger-exchange-private.h"

/* Taking over what a bundle has. */

/* Reading the bundle, holding it against the record, writing: each is as much of the work to the person who waits. */
#define PARTS 3u
typedef struct
{
  const SyWatch *watch;
  guint part; /* from 0 */
} Part;

/* Steps of a part that are told apart: a bar has no more pixels that matter. */
#define PART_STEPS 1000u

static gboolean
watch_part (guint64 done, guint64 of, gpointer user_data)
{
  const Part *part = user_data;
  guint64 step = of > 0 ? (guint64) ((double) done / (double) of * PART_STEPS) : PART_STEPS;

  return part->watch->func == NULL
         || part->watch->func (part->part * PART_STEPS + step, PARTS * PART_STEPS, part->watch->user_data);
}

typedef struct
{
  const SyBundle *bundle;
  const SyImportRequest *request;
  const SyWatch *watch;
  SyImportReport *report;
} Import;

/* The line that goes before what it took over. */
static SyEvent *
make_import (const Import *import, gint64 lines)
{
  const SyImportRequest *request = import->request;
  const SyLedgerAuthor author = { request->by != NULL ? request->by : "import", request->role,
                                  request->why != NULL ? request->why : "taken over from another record", request->now,
                                  request->clock_set };
  SyEvent *event = sy_ledger_begin_event (SY_EVENT_IMPORT, &author);
  g_autofree char *head = sy_hash_text (&import->bundle->head_hash);
  const SyDeed deed = { .kind = SY_EVENT_IMPORT, .head = head, .lines = lines };

  sy_event_set (&event->item_kind, "import");
  g_free (event->facts);
  event->facts = sy_deed_write (&deed);
  return event;
}

static gboolean
write_import (SyStore *store, gpointer data, GError **error)
{
  const Import *import = data;
  Part part = { import->watch, 1 };
  Part writing = { import->watch, 2 };
  const SyWatch watch = { watch_part, &part };
  SyHead head;
  SyMerge merge;
  gboolean good = TRUE;
  guint added;

  if (!sy_store_head (store, &head, error) || !sy_merge_read (store, &head, import->bundle, &watch, &merge, error))
    return FALSE;
  added = merge.events->len;
  if (added > 0 && !import->request->dry_run)
    {
      SyEvent *first = make_import (import, added);

      g_ptr_array_add (merge.owned, first);
      g_ptr_array_insert (merge.events, 0, first);
      good = sy_store_append_many (store, &head, merge.events, watch_part, &writing, &head, error);
    }
  if (good)
    *import->report = (SyImportReport) {
      .added = added, .known = merge.known, .hashes_only = merge.hashes_only, .left = merge.left,
      .conflicts = g_steal_pointer (&merge.conflicts),
      .bundle_head = { import->bundle->head_number, import->bundle->head_hash }, .head = head };
  sy_merge_clear (&merge);
  return good;
}

void
sy_import_report_clear (SyImportReport *report)
{
  g_clear_pointer (&report->conflicts, g_ptr_array_unref);
}

gboolean
sy_ledger_import (SyLedger *ledger, GBytes *bytes, const SyImportRequest *request, SyProgressFunc progress,
                  gpointer user_data, SyImportReport *out, GError **error)
{
  const SyLedgerText texts[] = {
    { "by", request->by, request->by != NULL, TRUE },
    { "role", request->role, FALSE, TRUE },
    { "why", request->why, FALSE, FALSE },
  };
  const SyWatch watch = { progress, user_data };
  Part part = { &watch, 0 };
  g_autoptr (SyBundle) bundle = NULL;
  g_autoptr (GError) failed = NULL;
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);

  if (!sy_ledger_check_texts (texts, G_N_ELEMENTS (texts), error))
    return FALSE;
  if (length > SY_BUNDLE_MAX)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BUNDLE,
                   "The bundle is too large: expected at most %u MiB.", SY_BUNDLE_MAX / 1024u / 1024u);
      return FALSE;
    }
  bundle = sy_bundle_read (text, length, watch_part, &part, &failed);
  if (g_error_matches (failed, SY_BUNDLE_ERROR, SY_BUNDLE_ERROR_STOPPED))
    {
      g_set_error_literal (error, SY_STORE_ERROR, SY_STORE_ERROR_STOPPED, "Stopped; nothing was changed.");
      return FALSE;
    }
  if (bundle == NULL)
    {
      /* the doors know the ledger's errors, not those of the rooms below */
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BUNDLE, "Nothing was taken over. %s", failed->message);
      return FALSE;
    }

  Import import = { bundle, request, &watch, out };
  return sy_ledger_write (ledger, write_import, &import, error);
}
