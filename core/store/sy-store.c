/* SPDX-License-Identifier: MIT */
#include "sy-store.h"

#include <string.h>

#include "sy-store-private.h"

G_DEFINE_QUARK (sy-store-error-quark, sy_store_error)

static void
entry_free (gpointer data)
{
  SyEntry *entry = data;

  sy_event_free (entry->event);
  g_bytes_unref (entry->bytes);
  g_free (entry);
}

/* Whatever could not be read back is refused before anything is written. */
static SyEntry *
make_entry (const SyEvent *event, GError **error)
{
  g_autoptr (GError) reason = NULL;
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  g_autoptr (SyEvent) copy = sy_event_decode (bytes, &reason);
  SyEntry *entry;

  if (copy == NULL)
    {
      g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_WRITE, "Nothing was recorded. %s",
                   reason->message);
      return NULL;
    }
  if (copy->kind != SY_EVENT_POLICY && copy->kind != SY_EVENT_IMPORT && *copy->item == '\0')
    {
      g_set_error_literal (error, SY_STORE_ERROR, SY_STORE_ERROR_WRITE,
                           "Nothing was recorded: what is done must name the item that it is about.");
      return NULL;
    }
  entry = g_new0 (SyEntry, 1);
  entry->event = g_steal_pointer (&copy);
  entry->bytes = g_steal_pointer (&bytes);
  return entry;
}

static GPtrArray *
make_entries (GPtrArray *events, GError **error)
{
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func (entry_free);

  for (guint i = 0; i < events->len; i++)
    {
      SyEntry *entry = make_entry (g_ptr_array_index (events, i), error);

      if (entry == NULL)
        return NULL;
      g_ptr_array_add (entries, entry);
    }
  return g_steal_pointer (&entries);
}

static void
check_thread (SyStore *store)
{
  g_assert (store->owner == g_thread_self ());
}

gboolean
sy_store_enter (SyStore *store, GError **error)
{
  check_thread (store);
  return store->scans > 0 || store->backend->renew == NULL || store->backend->renew (store, error);
}

/* What every call that needs the lists begins with, and every one that writes. */
static gboolean
enter (SyStore *store, GError **error)
{
  if (!sy_store_enter (store, error))
    return FALSE;
  if (!store->bare)
    return TRUE;
  g_set_error_literal (error, SY_STORE_ERROR, SY_STORE_ERROR_CORRUPT,
                       "The record was opened for its journal alone. Its lists are to be made anew from it first.");
  return FALSE;
}

gboolean
sy_head_equal (const SyHead *a, const SyHead *b)
{
  return a->number == b->number && memcmp (&a->hash, &b->hash, sizeof a->hash) == 0;
}

gboolean
sy_store_fail_stale (GError **error, const char *where, const SyHead *head)
{
  g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_STALE,
               "Somebody else has written to “%s” in the meantime (its journal now has "
               "%" G_GUINT64_FORMAT " lines). Nothing was recorded; read it again and retry.",
               where, head->number);
  return FALSE;
}

gboolean
sy_store_fail_not_found (GError **error, const char *id_or_name, const char *item_kind)
{
  g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND,
               "There is no %s with the name or id “%s”.",
               item_kind != NULL ? item_kind : "item", id_or_name);
  return FALSE;
}

gboolean
sy_store_fail_ambiguous (GError **error, const char *name, const char *kind, const char *other)
{
  g_set_error (error, SY_STORE_ERROR, SY_STORE_ERROR_AMBIGUOUS,
               "“%s” is the name of more than one item (%s and %s); say which kind is meant, or give its id.",
               name, kind, other);
  return FALSE;
}

static SyStore *
open_store (const char *uri, gboolean bare, GError **error)
{
  SyStore *store;

  if (*uri == '\0')
    {
      g_set_error_literal (error, SY_STORE_ERROR, SY_STORE_ERROR_OPEN,
                           "No file was named for the record.");
      return NULL;
    }
  store = strcmp (uri, "memory:") == 0 ? sy_store_memory_new () : sy_store_sqlite_open (uri, bare, error);
  if (store != NULL)
    store->owner = g_thread_self ();
  return store;
}

SyStore *
sy_store_open (const char *uri, GError **error)
{
  return open_store (uri, FALSE, error);
}

SyStore *
sy_store_open_damaged (const char *uri, GError **error)
{
  return open_store (uri, TRUE, error);
}

void
sy_store_close (SyStore *store)
{
  if (store == NULL)
    return;
  check_thread (store);
  store->backend->close (store);
}

gboolean
sy_store_head (SyStore *store, SyHead *head, GError **error)
{
  return sy_store_enter (store, error) && store->backend->head (store, head, error);
}

gboolean
sy_store_append (SyStore *store, const SyHead *expected, GPtrArray *events, SyHead *head, GError **error)
{
  return sy_store_append_many (store, expected, events, NULL, NULL, head, error);
}

gboolean
sy_store_append_many (SyStore *store, const SyHead *expected, GPtrArray *events, SyProgressFunc progress,
                      gpointer user_data, SyHead *head, GError **error)
{
  g_autoptr (GPtrArray) entries = NULL;
  SyHead end;

  g_assert (store->scans == 0);
  if (!enter (store, error))
    return FALSE;
  entries = make_entries (events, error);
  if (entries == NULL || !store->backend->append (store, expected, entries, progress, user_data, &end, error))
    return FALSE;
  if (head != NULL)
    *head = end;
  return TRUE;
}

gboolean
sy_store_scan (SyStore *store, guint64 from, SyScanFunc func, gpointer user_data, GError **error)
{
  gboolean done;

  if (!sy_store_enter (store, error))
    return FALSE;
  store->scans++;
  done = store->backend->scan (store, from, func, user_data, error);
  store->scans--;
  return done;
}

gboolean
sy_store_scan_item (SyStore *store, const char *item, SyEventKind kind, SyScanFunc func,
                    gpointer user_data, GError **error)
{
  gboolean done;

  if (!sy_store_enter (store, error))
    return FALSE;
  store->scans++;
  done = store->backend->scan_item (store, item, kind, func, user_data, error);
  store->scans--;
  return done;
}

GPtrArray *
sy_store_list (SyStore *store, const SyTaskFilter *filter, guint limit, GError **error)
{
  const SyTaskFilter any = { .order = SY_ORDER_RANK };
  g_autofree char *words = NULL;

  if (!enter (store, error))
    return NULL;
  if (filter == NULL)
    filter = &any;
  words = sy_store_fold (filter->search != NULL ? filter->search : "");
  return store->backend->list (store, filter, words, limit, error);
}

GPtrArray *
sy_store_changed_since (SyStore *store, guint64 number, GError **error)
{
  return enter (store, error) ? store->backend->changed_since (store, number, error) : NULL;
}

SyTask *
sy_store_find (SyStore *store, const char *id_or_name, const char *item_kind, GError **error)
{
  return enter (store, error) ? store->backend->find (store, id_or_name, item_kind, error) : NULL;
}

char *
sy_store_policy (SyStore *store, GError **error)
{
  return sy_store_enter (store, error) ? store->backend->policy (store, error) : NULL;
}

GArray *
sy_store_search (SyStore *store, const char *words, GError **error)
{
  g_autofree char *folded = NULL;

  if (!enter (store, error))
    return NULL;
  folded = sy_store_fold (words);
  return *folded != '\0' ? store->backend->search (store, folded, error) : NULL;
}

gboolean
sy_store_rebuild (SyStore *store, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error)
{
  *out = (SyRebuild) { 0 };
  g_assert (store->scans == 0);
  if (!sy_store_enter (store, error))
    return FALSE;
  out->differences = g_ptr_array_new_with_free_func (g_free);
  if (store->backend->rebuild (store, progress, user_data, out, error))
    return TRUE;
  sy_rebuild_clear (out);
  return FALSE;
}

GPtrArray *
sy_store_journal (SyStore *store, const SyJournalFilter *filter, guint64 before, guint limit, GError **error)
{
  return enter (store, error) ? store->backend->journal (store, filter, before, limit, error) : NULL;
}

gboolean
sy_store_journal_count (SyStore *store, const SyJournalFilter *filter, guint64 *count, GError **error)
{
  return enter (store, error) && store->backend->journal_count (store, filter, count, error);
}

GArray *
sy_store_journal_numbers (SyStore *store, const SyJournalFilter *filter, GError **error)
{
  return enter (store, error) ? store->backend->journal_numbers (store, filter, error) : NULL;
}

char **
sy_store_people (SyStore *store, GError **error)
{
  return enter (store, error) ? store->backend->people (store, error) : NULL;
}

GPtrArray *
sy_store_actions (SyStore *store, const SyActionFilter *filter, GError **error)
{
  return enter (store, error) ? store->backend->actions (store, filter, error) : NULL;
}

SyAction *
sy_store_find_action (SyStore *store, const char *id, GError **error)
{
  return enter (store, error) ? store->backend->find_action (store, id, error) : NULL;
}

GPtrArray *
sy_store_as_at (SyStore *store, const char *day, SyProgressFunc progress, gpointer user_data, GError **error)
{
  return enter (store, error) ? store->backend->as_at (store, day, progress, user_data, error) : NULL;
}

gboolean
sy_store_head_as_at (SyStore *store, const char *day, SyHead *head, GError **error)
{
  return enter (store, error) && store->backend->head_as_at (store, day, head, error);
}
