/* SPDX-License-Identifier: MIT */
#include "sy-worker-deeds.h"

#include "sy-ledger-improvement.h"
#include "sy-worker-private.h"

SyDeedAsk *
sy_deed_ask_new (SyEventKind kind, const char *item, const char *by, const char *role, const char *why)
{
  SyDeedAsk *ask = g_new0 (SyDeedAsk, 1);

  ask->item = g_strdup (item);
  ask->by = g_strdup (by);
  ask->role = g_strdup (role);
  ask->why = g_strdup (why);
  ask->deed.kind = kind;
  return ask;
}

void
sy_deed_ask_free (SyDeedAsk *ask)
{
  if (ask == NULL)
    return;
  g_free (ask->item);
  g_free (ask->by);
  g_free (ask->role);
  g_free (ask->why);
  sy_deed_clear (&ask->deed);
  g_free (ask);
}

/* Topics: a deed */

typedef struct
{
  SyDeedAsk *ask;
  char *id;
} Doing;

static void
free_doing (gpointer data)
{
  Doing *doing = data;

  sy_deed_ask_free (doing->ask);
  g_free (doing->id);
  g_free (doing);
}

static const char *
said (const char *text)
{
  return text != NULL && *text != '\0' ? text : NULL;
}

static gboolean
do_action (SyLedger *ledger, const SyDeedRequest *request, Doing *doing, GError **error)
{
  const SyDeed *deed = &doing->ask->deed;

  switch (deed->step)
    {
    case SY_STEP_OPEN:
      return sy_ledger_open_action (ledger, request, deed->what, said (deed->about), said (deed->assigned),
                                    said (deed->due), &doing->id, NULL, error);
    case SY_STEP_ASSIGN:
      return sy_ledger_assign_action (ledger, request, deed->action, said (deed->assigned), said (deed->due), NULL, error);
    case SY_STEP_CLOSE:
      return sy_ledger_close_action (ledger, request, deed->action, deed->evidence, NULL, error);
    case SY_STEP_ADD:
    case SY_STEP_WITHDRAW:
      break;
    }
  g_return_val_if_reached (FALSE);
}

static gboolean
do_improvement (SyLedger *ledger, const SyDeedRequest *request, Doing *doing, GError **error)
{
  const SyDeed *deed = &doing->ask->deed;
  const SyImprovementAsk ask = {
    .revision = doing->ask->revision,
    .from_item = said (deed->from_item),
    .from_kind = said (deed->from_kind),
    .from_revision = deed->from_revision,
    .what = deed->what,
    .idea_by = deed->idea_by,
    .put_to_work = said (deed->put_to_work),
  };

  return deed->step == SY_STEP_WITHDRAW
             ? sy_ledger_withdraw_improvement (ledger, request, deed->improvement, NULL, error)
             : sy_ledger_add_improvement (ledger, request, &ask, &doing->id, NULL, error);
}

static gboolean
run_deed (SyLedger *ledger, gpointer data, GError **error)
{
  Doing *doing = data;
  const SyDeedAsk *ask = doing->ask;
  const SyDeed *deed = &ask->deed;
  gboolean clock_set = FALSE;
  g_autofree char *now = sy_clock_now (&clock_set, error);
  const SyDeedRequest request = {
    .item = ask->item,
    .by = ask->by,
    .role = ask->role,
    .why = ask->why,
    .now = now,
    .clock_set = clock_set,
  };

  if (now == NULL)
    return FALSE;
  switch (deed->kind)
    {
    case SY_EVENT_SIGNATURE:
      return sy_ledger_sign (ledger, &request, ask->revision, deed->competence, NULL, error);
    case SY_EVENT_ACTION:
      return do_action (ledger, &request, doing, error);
    case SY_EVENT_IMPROVEMENT:
      return do_improvement (ledger, &request, doing, error);
    case SY_EVENT_REVIEW:
      return sy_ledger_set_review (ledger, &request, deed->trigger, said (deed->due), NULL, error);
    case SY_EVENT_RETIREMENT:
      return sy_ledger_retire (ledger, &request, deed->retired, NULL, error);
    case SY_EVENT_TOLD:
      return sy_ledger_tell (ledger, &request, ask->revision, deed->who, deed->mass, deed->heaviest_side, NULL, error);
    case SY_EVENT_POLICY:
    case SY_EVENT_REVISION:
    case SY_EVENT_ATTACHMENT:
    case SY_EVENT_IMPORT:
      break;
    }
  g_return_val_if_reached (FALSE);
}

static const SyWorkerCall call_deed = { run_deed, free_doing, TRUE };

void
sy_worker_deed_async (SyWorker *self, SyDeedAsk *ask, GCancellable *cancellable, GAsyncReadyCallback callback,
                      gpointer user_data)
{
  Doing *doing;

  g_return_if_fail (SY_IS_WORKER (self) && ask != NULL);
  doing = g_new0 (Doing, 1);
  doing->ask = ask;
  sy_worker_call_async (self, &call_deed, doing, cancellable, callback, user_data);
}

gboolean
sy_worker_deed_finish (SyWorker *self, GAsyncResult *result, char **id, GError **error)
{
  Doing *doing = sy_worker_call_finish (self, result, &call_deed, error);

  if (doing == NULL)
    return FALSE;
  if (id != NULL)
    *id = g_steal_pointer (&doing->id);
  return TRUE;
}

/* Topics: what stands in the journal about an item */

typedef struct
{
  char *item;
  GPtrArray *found;
} Reading;

static void
free_reading (gpointer data)
{
  Reading *reading = data;

  g_free (reading->item);
  g_clear_pointer (&reading->found, g_ptr_array_unref);
  g_free (reading);
}

static gboolean
run_events (SyLedger *ledger, gpointer data, GError **error)
{
  Reading *reading = data;

  reading->found = sy_ledger_events (ledger, reading->item, NULL, error);
  /* The bytes of files would be held as long as a page is open. */
  for (guint i = 0; reading->found != NULL && i < reading->found->len; i++)
    {
      SyEvent *event = ((SyRevision *) reading->found->pdata[i])->event;

      if (event->kind == SY_EVENT_ATTACHMENT)
        sy_event_set (&event->facts, "");
    }
  return reading->found != NULL;
}

static const SyWorkerCall call_events = { run_events, free_reading, FALSE };

void
sy_worker_events_async (SyWorker *self, const char *item, GCancellable *cancellable, GAsyncReadyCallback callback,
                        gpointer user_data)
{
  Reading *reading;

  g_return_if_fail (SY_IS_WORKER (self));
  reading = g_new0 (Reading, 1);
  reading->item = g_strdup (item);
  sy_worker_call_async (self, &call_events, reading, cancellable, callback, user_data);
}

GPtrArray *
sy_worker_events_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Reading *reading = sy_worker_call_finish (self, result, &call_events, error);

  return reading != NULL ? g_steal_pointer (&reading->found) : NULL;
}
