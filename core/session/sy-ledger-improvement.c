/* SPDX-License-Identifier: MIT */
#include "sy-ledger-improvement.h"

#include <string.h>

#include "sy-date.h"
#include "sy-ledger-deeds-private.h"

/* Topics: reading */

typedef struct
{
  GPtrArray *order;   /* of SyImprovement, borrowed, as they were begun */
  GHashTable *by_id;  /* id → SyImprovement, owned                      */
} Log;

static void
log_clear (Log *log)
{
  g_clear_pointer (&log->order, g_ptr_array_unref);
  g_clear_pointer (&log->by_id, g_hash_table_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Log, log_clear)

static gboolean
take_line (const SyLine *line, gpointer user_data)
{
  Log *log = user_data;
  SyImprovement *improvement;
  SyDeed deed;

  if (line->event->kind != SY_EVENT_IMPROVEMENT || !sy_deed_read (line->event, &deed))
    return FALSE;
  improvement = g_hash_table_lookup (log->by_id, deed.improvement);
  if (improvement != NULL)
    sy_improvement_apply (improvement, line->event, line->number);
  else if ((improvement = sy_improvement_apply (NULL, line->event, line->number)) != NULL)
    {
      g_hash_table_insert (log->by_id, improvement->id, improvement);
      g_ptr_array_add (log->order, improvement);
    }
  sy_deed_clear (&deed);
  return FALSE;
}

static gboolean
read_log (SyStore *store, Log *log, GError **error)
{
  const SyJournalFilter filter = { .kind = SY_EVENT_IMPROVEMENT };
  g_autoptr (GArray) numbers = sy_store_journal_numbers (store, &filter, error);

  if (numbers == NULL)
    return FALSE;
  log->order = g_ptr_array_new ();
  log->by_id = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify) sy_improvement_free);
  for (guint i = numbers->len; i > 0; i--)
    if (!sy_store_scan (store, g_array_index (numbers, guint64, i - 1), take_line, log, error))
      return FALSE;
  return TRUE;
}

typedef struct
{
  const char *hash;   /* identity, 64 hex digits */
  GPtrArray *found;   /* of SyRevision           */
} Wanted;

static gboolean
keep_wanted (const SyLine *line, gpointer user_data)
{
  const Wanted *wanted = user_data;
  g_autofree char *text = NULL;
  SyHash identity;

  sy_event_identity (line->event, &identity);
  text = sy_hash_text (&identity);
  return strcmp (text, wanted->hash) != 0 || (sy_ledger_add_line (line, wanted->found) && FALSE);
}

/* The revision that has this identity, whatever its number here. NULL without an error where it is not here. */
static SyRevision *
find_revision (SyStore *store, const char *item, const char *hash, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_revision_free);
  Wanted wanted = { hash, found };

  if (!sy_store_scan_item (store, item, SY_EVENT_REVISION, keep_wanted, &wanted, error) || found->len == 0)
    return NULL;
  return g_ptr_array_steal_index (found, 0);
}

static int
compare_last_first (gconstpointer a, gconstpointer b)
{
  const SyImprovement *first = (*(SyImprovementView *const *) a)->improvement;
  const SyImprovement *second = (*(SyImprovementView *const *) b)->improvement;
  int order = strcmp (second->put_to_work, first->put_to_work);

  return order != 0 ? order : (first->line < second->line) - (first->line > second->line);
}

/* Takes the improvement. */
static SyImprovementView *
make_view (SyStore *store, SyImprovement *improvement, const SyPolicy *policy, SyTranslate translate, GError **error)
{
  g_autoptr (GError) failed = NULL;
  SyRevision *before = find_revision (store, improvement->from_item, improvement->from_hash, &failed);
  SyRevision *after = failed == NULL ? find_revision (store, improvement->item, improvement->to_hash, &failed) : NULL;
  SyImprovementView *view = NULL;

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      sy_improvement_free (improvement);
    }
  else
    {
      if (before != NULL)
        improvement->from_revision = before->event->revision;
      view = sy_improvement_view_new (improvement, before != NULL ? before->event : NULL,
                                      after != NULL ? after->event : NULL, policy, translate);
    }
  sy_revision_free (before);
  sy_revision_free (after);
  return view;
}

static gboolean
fits (const SyImprovement *improvement, const SyImprovementFilter *filter)
{
  return (filter->withdrawn || !improvement->withdrawn)
         && (filter->item == NULL || strcmp (filter->item, improvement->item) == 0
             || strcmp (filter->item, improvement->from_item) == 0);
}

GPtrArray *
sy_ledger_improvements (SyLedger *ledger, const SyImprovementFilter *filter, const SyPolicy *policy, SyTranslate translate,
                        GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (GPtrArray) views = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_improvement_view_free);
  g_auto (Log) log = { NULL };

  if (!read_log (store, &log, error))
    return NULL;
  for (guint i = 0; i < log.order->len; i++)
    {
      SyImprovement *improvement = log.order->pdata[i];
      SyImprovementView *view;

      if (!fits (improvement, filter))
        continue;
      g_hash_table_steal (log.by_id, improvement->id);
      view = make_view (store, improvement, policy, translate, error);
      if (view == NULL)
        return NULL;
      g_ptr_array_add (views, view);
    }
  g_ptr_array_sort (views, compare_last_first);
  return g_steal_pointer (&views);
}

/* Topics: writing */

G_GNUC_PRINTF (2, 3)
static gboolean
refuse (GError **error, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_clear_error (error);
  if (error != NULL)
    *error = g_error_new_valist (SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED, format, arguments);
  va_end (arguments);
  return FALSE;
}

static gboolean
check_kind (const char *field, const SyTask *item, GError **error)
{
  return strcmp (item->item_kind, SY_ITEM_TASK) == 0 || strcmp (item->item_kind, SY_ITEM_CHANGEOVER) == 0
         || refuse (error, "%s: given “%s”, a %s; allowed: a task or a changeover", field, item->name, item->item_kind);
}

static gboolean
check_day (const SyDeedRequest *request, const char *day, GError **error)
{
  g_autofree char *today = sy_ledger_day (request);
  double days;

  if (!sy_date_read (day, &days))
    return refuse (error, "put to work: given “%s”; allowed: a date such as %s", day, today);
  /* written so, the earlier day comes first in the alphabet */
  return strcmp (day, today) <= 0
         || refuse (error, "put to work: given %s, which is still to come; allowed: %s or before", day, today);
}

typedef struct
{
  const SyImprovementAsk *ask;
  char **new_id;   /* receives it, should it be recorded */
  const char *id;  /* WITHDRAW                           */
} Doing;

/* Where the ask says 0: the latest. */
static SyRevision *
need_revision (SyStore *store, const SyTask *item, gint64 revision, GError **error)
{
  return sy_ledger_need_revision (store, item, revision != 0 ? revision : item->revision, error);
}

static gboolean
check_order (const SyTask *from, gint64 from_revision, const SyTask *to, gint64 revision, GError **error)
{
  if (strcmp (from->id, to->id) != 0 || (from_revision > 0 && from_revision < revision))
    return TRUE;
  if (revision == 1)
    return refuse (error, "from: “%s” has no revision before 1; allowed: another task or changeover", to->name);
  return from_revision == 0
             ? refuse (error, "from revision: given nothing; allowed: a revision of “%s” before %" G_GINT64_FORMAT,
                       to->name, revision)
             : refuse (error, "from revision: given %" G_GINT64_FORMAT "; allowed: a revision of “%s” before %" G_GINT64_FORMAT,
                       from_revision, to->name, revision);
}

static gboolean
check_new (SyStore *store, const SyDeed *deed, GError **error)
{
  g_auto (Log) log = { NULL };

  if (!read_log (store, &log, error))
    return FALSE;
  for (guint i = 0; i < log.order->len; i++)
    {
      const SyImprovement *each = log.order->pdata[i];

      if (!each->withdrawn && strcmp (each->from_hash, deed->from_hash) == 0 && strcmp (each->to_hash, deed->to_hash) == 0)
        return refuse (error, "The step between these two is in the log already: %s, by %s on %.10s.", each->id,
                       each->entered_by, each->entered_when);
    }
  return TRUE;
}

static void
set_identity (char **text, const SyRevision *revision)
{
  SyHash identity;

  sy_event_identity (revision->event, &identity);
  g_free (*text);
  *text = sy_hash_text (&identity);
}

static gboolean
prepare_add (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event, SyDeed *deed,
             GError **error)
{
  const Doing *doing = work->data;
  const SyImprovementAsk *ask = doing->ask;
  const gboolean has_day = ask->put_to_work != NULL && *ask->put_to_work != '\0';
  g_autofree char *day = has_day ? g_strdup (ask->put_to_work) : sy_ledger_day (work->request);
  g_autoptr (SyTask) from = NULL;
  SyRevision *before, *after;

  from = ask->from_item != NULL ? sy_store_find (store, ask->from_item, ask->from_kind, error) : sy_task_copy (item);
  if (from == NULL || !check_kind ("item", item, error) || !check_kind ("from", from, error)
      || !check_day (work->request, day, error))
    return FALSE;
  after = need_revision (store, item, ask->revision, error);
  if (after == NULL)
    return FALSE;
  event->revision = after->event->revision;
  set_identity (&deed->to_hash, after);
  sy_revision_free (after);
  if (!check_order (from, ask->from_revision, item, event->revision, error))
    return FALSE;
  before = need_revision (store, from, ask->from_revision, error);
  if (before == NULL)
    return FALSE;
  deed->from_revision = before->event->revision;
  set_identity (&deed->from_hash, before);
  sy_event_set (&deed->from_name, before->event->name);
  sy_revision_free (before);

  deed->step = SY_STEP_ADD;
  sy_event_set (&deed->from_item, from->id);
  sy_event_set (&deed->from_kind, from->item_kind);
  sy_event_set (&deed->what, ask->what);
  sy_event_set (&deed->idea_by, ask->idea_by);
  sy_event_set (&deed->put_to_work, day);
  g_free (*doing->new_id);
  *doing->new_id = sy_ledger_make_id ("improvement", work->request, item, ask->what, head);
  sy_event_set (&deed->improvement, *doing->new_id);
  return check_new (store, deed, error);
}

gboolean
sy_ledger_add_improvement (SyLedger *ledger, const SyDeedRequest *request, const SyImprovementAsk *ask, char **id,
                           SyHead *head, GError **error)
{
  g_autofree char *new_id = NULL;
  const Doing doing = { .ask = ask, .new_id = &new_id };
  const SyLedgerText texts[] = {
    { "what", ask->what, TRUE, FALSE },
    { "idea by", ask->idea_by, TRUE, TRUE },
    { "from", ask->from_item, FALSE, FALSE },
    { "put to work", ask->put_to_work, FALSE, FALSE },
  };
  const SyDeedWork work = { .kind = SY_EVENT_IMPROVEMENT, .request = request, .prepare = prepare_add, .data = &doing,
                            .head = head };

  if (!sy_ledger_do (ledger, &work, texts, G_N_ELEMENTS (texts), error))
    return FALSE;
  if (id != NULL)
    *id = g_steal_pointer (&new_id);
  return TRUE;
}

static gboolean
prepare_withdrawal (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event,
                    SyDeed *deed, GError **error)
{
  const Doing *doing = work->data;
  const SyImprovement *found;
  g_auto (Log) log = { NULL };

  (void) head;
  (void) event;
  if (!read_log (store, &log, error))
    return FALSE;
  found = g_hash_table_lookup (log.by_id, doing->id);
  if (found == NULL)
    return refuse (error, "improvement: given %s; allowed: the id of an improvement of “%s”", doing->id, item->name);
  if (strcmp (found->item, item->id) != 0)
    return refuse (error, "improvement: given %s, which belongs to “%s”; allowed: an improvement of “%s”", doing->id,
                   found->item_name, item->name);
  if (found->withdrawn)
    return refuse (error, "improvement: given %s, which was withdrawn by %s on %.10s; allowed: one that counts", doing->id,
                   found->withdrawn_by, found->withdrawn_when);
  deed->step = SY_STEP_WITHDRAW;
  sy_event_set (&deed->improvement, found->id);
  return TRUE;
}

gboolean
sy_ledger_withdraw_improvement (SyLedger *ledger, const SyDeedRequest *request, const char *id, SyHead *head,
                                GError **error)
{
  const Doing doing = { .id = id };
  const SyDeedWork work = { .kind = SY_EVENT_IMPROVEMENT, .request = request, .needs_why = TRUE,
                            .prepare = prepare_withdrawal, .data = &doing, .head = head };

  return sy_ledger_do (ledger, &work, NULL, 0, error);
}
