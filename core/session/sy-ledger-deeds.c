/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-date.h"
#include "sy-ledger-deeds-private.h"

#define DAY_LENGTH 10

char *
sy_ledger_day (const SyDeedRequest *request)
{
  return g_strndup (request->now, DAY_LENGTH);
}

gboolean
sy_ledger_check_due (const SyDeedRequest *request, const char *due, GError **error)
{
  g_autofree char *today = sy_ledger_day (request);
  double days;

  if (due == NULL || *due == '\0')
    return TRUE;
  if (!sy_date_read (due, &days))
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED, "due: given “%s”; allowed: a date such as %s", due, today);
      return FALSE;
    }
  /* written so, the earlier day comes first in the alphabet */
  if (strcmp (due, today) >= 0)
    return TRUE;
  g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED, "due: given %s, which is past; allowed: %s or later", due,
               today);
  return FALSE;
}

static gboolean
check_texts (const SyDeedWork *work, const SyLedgerText *more, gsize n_more, GError **error)
{
  const SyDeedRequest *request = work->request;
  const SyLedgerText texts[] = {
    { "item", request->item, TRUE, FALSE },
    { "by", request->by, TRUE, TRUE },
    { "role", request->role, work->needs_role, TRUE },
    { "why", request->why, work->needs_why, FALSE },
  };

  return sy_ledger_check_texts (texts, G_N_ELEMENTS (texts), error) && sy_ledger_check_texts (more, n_more, error);
}

/* What could not be read back must not be written. */
static gboolean
check_readable (const SyEvent *event, GError **error)
{
  SyDeed again;

  if (sy_deed_read (event, &again))
    {
      sy_deed_clear (&again);
      return TRUE;
    }
  g_set_error_literal (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED,
                       "What was given could not be read back; allowed: texts of at most 16 MiB together.");
  return FALSE;
}

static gboolean
write_deed (SyStore *store, gpointer data, GError **error)
{
  const SyDeedWork *work = data;
  const SyDeedRequest *request = work->request;
  const SyLedgerAuthor author = { request->by, request->role, request->why, request->now, request->clock_set };
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  g_autoptr (SyTask) item = NULL;
  g_autofree char *facts = NULL;
  SyDeed deed = { .kind = work->kind };
  SyEvent *event;
  SyHead seen;
  gboolean prepared;

  if (!sy_store_head (store, &seen, error))
    return FALSE;
  item = sy_store_find (store, request->item, request->item_kind, error);
  if (item == NULL)
    return FALSE;
  event = sy_ledger_begin_event (work->kind, &author);
  g_ptr_array_add (events, event);
  sy_event_set (&event->item, item->id);
  sy_event_set (&event->item_kind, item->item_kind);
  sy_event_set (&event->name, item->name);
  prepared = work->prepare (store, work, item, &seen, event, &deed, error);
  if (prepared)
    {
      facts = sy_deed_write (&deed);
      sy_event_set (&event->facts, facts);
    }
  sy_deed_clear (&deed);
  return prepared && check_readable (event, error) && sy_store_append (store, &seen, events, work->head, error);
}

gboolean
sy_ledger_do (SyLedger *ledger, const SyDeedWork *work, const SyLedgerText *texts, gsize n_texts, GError **error)
{
  SyDeedWork own = *work;

  return check_texts (work, texts, n_texts, error) && sy_ledger_write (ledger, write_deed, &own, error);
}

static gboolean
check_revision (const SyTask *item, gint64 revision, GError **error)
{
  if (revision >= 1 && revision <= item->revision)
    return TRUE;
  g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED,
               "revision: given %" G_GINT64_FORMAT "; allowed: a revision of “%s”, from 1 to %" G_GINT64_FORMAT, revision,
               item->name, item->revision);
  return FALSE;
}

/* Which revision is looked for, and what was found. */
typedef struct
{
  gint64 revision;
  GPtrArray *found; /* of SyRevision: one, or none */
} Wanted;

static gboolean
keep_wanted (const SyLine *line, gpointer user_data)
{
  const Wanted *wanted = user_data;

  if (line->event->revision != wanted->revision)
    return TRUE;
  g_ptr_array_set_size (wanted->found, 0);
  return sy_ledger_add_line (line, wanted->found);
}

/* NULL without an error where there is none. */
static SyRevision *
find_revision (SyStore *store, const SyTask *item, gint64 revision, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_revision_free);
  Wanted wanted = { revision, found };

  if (!sy_store_scan_item (store, item->id, SY_EVENT_REVISION, keep_wanted, &wanted, error) || found->len == 0)
    return NULL;
  return g_ptr_array_steal_index (found, 0);
}

SyRevision *
sy_ledger_need_revision (SyStore *store, const SyTask *item, gint64 revision, GError **error)
{
  g_autoptr (GError) failed = NULL;
  SyRevision *found = find_revision (store, item, revision, &failed);

  if (found == NULL && failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  else if (found == NULL)
    g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BASE,
                 "revision: given %" G_GINT64_FORMAT "; allowed: a revision of “%s”, from 1 to %" G_GINT64_FORMAT,
                 revision, item->name, item->revision);
  return found;
}

/* Topics: sign-off */

typedef struct
{
  gint64 revision;
  const char *competence;
} Signing;

static gboolean
prepare_signature (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event,
                   SyDeed *deed, GError **error)
{
  const Signing *signing = work->data;
  SyRevision *revision;

  (void) head;
  if (!check_revision (item, signing->revision, error))
    return FALSE;
  revision = sy_ledger_need_revision (store, item, signing->revision, error);
  if (revision == NULL)
    return FALSE;
  event->revision = signing->revision;
  deed->line_hash = sy_hash_text (&revision->hash);
  sy_event_set (&deed->competence, signing->competence);
  sy_revision_free (revision);
  return TRUE;
}

gboolean
sy_ledger_sign (SyLedger *ledger, const SyDeedRequest *request, gint64 revision, const char *competence, SyHead *head,
                GError **error)
{
  const Signing signing = { revision, competence };
  const SyLedgerText texts[] = { { "competence", competence, FALSE, FALSE } };
  const SyDeedWork work = { .kind = SY_EVENT_SIGNATURE, .request = request, .needs_role = TRUE,
                            .prepare = prepare_signature, .data = &signing, .head = head };

  return sy_ledger_do (ledger, &work, texts, G_N_ELEMENTS (texts), error);
}

/* Topics: reviews */

typedef struct
{
  SyTrigger trigger;
  const char *due;
} Review;

static gboolean
prepare_review (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event,
                SyDeed *deed, GError **error)
{
  const Review *review = work->data;

  (void) store;
  (void) item;
  (void) head;
  (void) event;
  (void) error;
  deed->trigger = review->trigger;
  sy_event_set (&deed->due, review->due);
  return TRUE;
}

gboolean
sy_ledger_set_review (SyLedger *ledger, const SyDeedRequest *request, SyTrigger trigger, const char *due, SyHead *head,
                      GError **error)
{
  g_autofree char *today = sy_ledger_day (request);
  const gboolean is_given = due != NULL && *due != '\0';
  const Review review = { trigger, is_given ? due : today };
  const SyLedgerText texts[] = { { "due", due, FALSE, FALSE } };
  const SyDeedWork work = { .kind = SY_EVENT_REVIEW, .request = request, .needs_why = TRUE, .prepare = prepare_review,
                            .data = &review, .head = head };

  if (!sy_ledger_check_texts (texts, G_N_ELEMENTS (texts), error))
    return FALSE;
  if (trigger == SY_TRIGGER_DATE && !is_given)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED, "due: given nothing; allowed: a date such as %s", today);
      return FALSE;
    }
  return sy_ledger_check_due (request, due, error) && sy_ledger_do (ledger, &work, NULL, 0, error);
}

/* Topics: out of use, and back */

static gboolean
prepare_retirement (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event,
                    SyDeed *deed, GError **error)
{
  const gboolean *retired = work->data;

  (void) store;
  (void) head;
  (void) event;
  if (!item->retired == !*retired)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED,
                   *retired ? "“%s” is out of use already." : "“%s” is in use already.", item->name);
      return FALSE;
    }
  deed->retired = *retired;
  return TRUE;
}

gboolean
sy_ledger_retire (SyLedger *ledger, const SyDeedRequest *request, gboolean retired, SyHead *head, GError **error)
{
  const SyDeedWork work = { .kind = SY_EVENT_RETIREMENT, .request = request, .needs_why = TRUE,
                            .prepare = prepare_retirement, .data = &retired, .head = head };

  return sy_ledger_do (ledger, &work, NULL, 0, error);
}

/* Topics: who was told */

typedef struct
{
  gint64 revision;
  const char *who, *mass, *heaviest_side;
} Telling;

static gboolean
prepare_told (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event, SyDeed *deed,
              GError **error)
{
  const Telling *telling = work->data;

  (void) store;
  (void) head;
  if (!check_revision (item, telling->revision, error))
    return FALSE;
  event->revision = telling->revision;
  sy_event_set (&deed->who, telling->who);
  sy_event_set (&deed->mass, telling->mass);
  sy_event_set (&deed->heaviest_side, telling->heaviest_side);
  return TRUE;
}

gboolean
sy_ledger_tell (SyLedger *ledger, const SyDeedRequest *request, gint64 revision, const char *who, const char *mass,
                const char *heaviest_side, SyHead *head, GError **error)
{
  const Telling telling = { revision, who, mass, heaviest_side };
  const SyLedgerText texts[]
    = { { "who", who, TRUE, FALSE }, { "mass", mass, TRUE, FALSE }, { "heaviest side", heaviest_side, TRUE, FALSE } };
  const SyDeedWork work = { .kind = SY_EVENT_TOLD, .request = request, .prepare = prepare_told, .data = &telling,
                            .head = head };

  return sy_ledger_do (ledger, &work, texts, G_N_ELEMENTS (texts), error);
}

/* Topics: looking */

GPtrArray *
sy_ledger_events (SyLedger *ledger, const char *item, const char *item_kind, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_revision_free);
  g_autoptr (SyTask) found = sy_store_find (store, item, item_kind, error);

  if (found == NULL || !sy_store_scan_item (store, found->id, 0, sy_ledger_add_line, lines, error))
    return NULL;
  return g_steal_pointer (&lines);
}

SyRevision *
sy_ledger_revision (SyLedger *ledger, const char *item, const char *item_kind, gint64 revision, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (SyTask) found = sy_store_find (store, item, item_kind, error);

  return found != NULL ? sy_ledger_need_revision (store, found, revision, error) : NULL;
}
