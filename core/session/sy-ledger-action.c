/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-ledger-deeds-private.h"

#define ID_DIGITS 16

typedef struct
{
  SyDeedStep step;
  const char *id;   /* ASSIGN, CLOSE */
  char **new_id;    /* OPEN: receives it, should it be recorded */
  const char *what, *about, *assigned, *due, *evidence;
} Doing;

char *
sy_ledger_make_id (const char *what, const SyDeedRequest *request, const SyTask *item, const char *text, const SyHead *head)
{
  g_autofree char *head_text = sy_hash_text (&head->hash);
  g_autofree char *seed = g_strjoin ("\n", what, item->id, text, request->by, request->now, head_text, NULL);
  SyHash hash;
  char *id;

  sy_hash_of (seed, strlen (seed), &hash);
  id = sy_hash_text (&hash);
  id[ID_DIGITS] = '\0';
  return id;
}

/* An open action of the item; NULL with the error. */
static SyAction *
find_open (SyStore *store, const SyTask *item, const char *id, GError **error)
{
  g_autoptr (SyAction) action = sy_store_find_action (store, id, error);

  if (action == NULL)
    return NULL;
  if (strcmp (action->item, item->id) != 0)
    g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED,
                 "action: given %s, which belongs to “%s”; allowed: an action of “%s”", id, action->item_name, item->name);
  else if (!action->open)
    g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_DEED,
                 "action: given %s, which was closed by %s on %.10s; allowed: one that is open", id, action->closed_by,
                 action->closed_when);
  else
    return g_steal_pointer (&action);
  return NULL;
}

static gboolean
prepare_action (SyStore *store, const SyDeedWork *work, const SyTask *item, const SyHead *head, SyEvent *event, SyDeed *deed,
                GError **error)
{
  const Doing *doing = work->data;
  g_autoptr (SyAction) action = NULL;

  (void) event;
  deed->step = doing->step;
  if (doing->step == SY_STEP_OPEN)
    {
      g_free (*doing->new_id);
      *doing->new_id = sy_ledger_make_id ("action", work->request, item, doing->what, head);
      sy_event_set (&deed->action, *doing->new_id);
      sy_event_set (&deed->what, doing->what);
      sy_event_set (&deed->about, doing->about);
      sy_event_set (&deed->assigned, doing->assigned);
      sy_event_set (&deed->due, doing->due);
      return TRUE;
    }
  action = find_open (store, item, doing->id, error);
  if (action == NULL)
    return FALSE;
  sy_event_set (&deed->action, action->id);
  if (doing->step == SY_STEP_CLOSE)
    {
      sy_event_set (&deed->evidence, doing->evidence);
      return TRUE;
    }
  sy_event_set (&deed->assigned, doing->assigned != NULL ? doing->assigned : action->assigned);
  sy_event_set (&deed->due, doing->due != NULL ? doing->due : action->due);
  return TRUE;
}

static gboolean
do_action (SyLedger *ledger, const SyDeedRequest *request, const Doing *doing, const SyLedgerText *texts, gsize n_texts,
           SyHead *head, GError **error)
{
  const SyDeedWork work = { .kind = SY_EVENT_ACTION, .request = request, .prepare = prepare_action, .data = doing,
                            .head = head };

  return sy_ledger_check_texts (texts, n_texts, error) && sy_ledger_check_due (request, doing->due, error)
         && sy_ledger_do (ledger, &work, NULL, 0, error);
}

gboolean
sy_ledger_open_action (SyLedger *ledger, const SyDeedRequest *request, const char *what, const char *about,
                       const char *assigned, const char *due, char **id, SyHead *head, GError **error)
{
  g_autofree char *new_id = NULL;
  const Doing doing = { .step = SY_STEP_OPEN, .new_id = &new_id, .what = what, .about = about, .assigned = assigned,
                        .due = due };
  const SyLedgerText texts[] = {
    { "what", what, TRUE, FALSE },        { "about", about, FALSE, FALSE },
    { "assigned", assigned, FALSE, TRUE }, { "due", due, FALSE, FALSE },
  };

  if (!do_action (ledger, request, &doing, texts, G_N_ELEMENTS (texts), head, error))
    return FALSE;
  *id = g_steal_pointer (&new_id);
  return TRUE;
}

gboolean
sy_ledger_assign_action (SyLedger *ledger, const SyDeedRequest *request, const char *id, const char *assigned,
                         const char *due, SyHead *head, GError **error)
{
  const Doing doing = { .step = SY_STEP_ASSIGN, .id = id, .assigned = assigned, .due = due };
  const SyLedgerText texts[]
    = { { "action", id, TRUE, FALSE }, { "assigned", assigned, FALSE, TRUE }, { "due", due, FALSE, FALSE } };

  return do_action (ledger, request, &doing, texts, G_N_ELEMENTS (texts), head, error);
}

gboolean
sy_ledger_close_action (SyLedger *ledger, const SyDeedRequest *request, const char *id, const char *evidence, SyHead *head,
                        GError **error)
{
  const Doing doing = { .step = SY_STEP_CLOSE, .id = id, .evidence = evidence };
  const SyLedgerText texts[] = { { "action", id, TRUE, FALSE }, { "evidence", evidence, TRUE, FALSE } };

  return do_action (ledger, request, &doing, texts, G_N_ELEMENTS (texts), head, error);
}
