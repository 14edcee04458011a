/* SPDX-License-Identifier: MIT */
#include "sy-ledger-private.h"

#include <string.h>

#include "sy-method.h"

/* How often a save is tried again when another program wrote in between (our choice). */
#define TRIES_MAX 16

G_DEFINE_QUARK (sy-ledger-error-quark, sy_ledger_error)

struct SyLedger
{
  SyStore *store;
  GThread *owner;
};

static SyLedger *
take_store (SyStore *store)
{
  SyLedger *ledger;

  if (store == NULL)
    return NULL;
  ledger = g_new0 (SyLedger, 1);
  ledger->store = store;
  ledger->owner = g_thread_self ();
  return ledger;
}

SyLedger *
sy_ledger_open (const char *uri, GError **error)
{
  return take_store (sy_store_open (uri, error));
}

SyLedger *
sy_ledger_open_damaged (const char *uri, GError **error)
{
  return take_store (sy_store_open_damaged (uri, error));
}

SyStore *
sy_ledger_store (SyLedger *ledger)
{
  g_assert (ledger->owner == g_thread_self ());
  return ledger->store;
}

void
sy_ledger_close (SyLedger *ledger)
{
  if (ledger == NULL)
    return;
  sy_store_close (sy_ledger_store (ledger));
  g_free (ledger);
}

gboolean
sy_ledger_write (SyLedger *ledger, SyLedgerWrite write, gpointer data, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);

  for (int i = 1;; i++)
    {
      g_autoptr (GError) failed = NULL;

      if (write (store, data, &failed))
        return TRUE;
      if (i == TRIES_MAX || !g_error_matches (failed, SY_STORE_ERROR, SY_STORE_ERROR_STALE))
        {
          g_propagate_error (error, g_steal_pointer (&failed));
          return FALSE;
        }
    }
}

void
sy_record_result_clear (SyRecordResult *result)
{
  g_clear_pointer (&result->task_id, g_free);
}

/* Whether it leaves something to be seen: no blank, no control, nothing without width, none of the letters that are drawn as
   nothing (Hangul fillers, the empty pattern of Braille). */
static gboolean
shows (gunichar letter)
{
  static const gunichar drawn_as_nothing[] = { 0x115f, 0x1160, 0x2800, 0x3164, 0xffa0 };

  for (gsize i = 0; i < G_N_ELEMENTS (drawn_as_nothing); i++)
    if (letter == drawn_as_nothing[i])
      return FALSE;
  return !g_unichar_isspace (letter) && !g_unichar_iscntrl (letter) && !g_unichar_iszerowidth (letter)
         && g_unichar_type (letter) != G_UNICODE_FORMAT;
}

/* @text may not be valid UTF-8: as far as it is. */
static gboolean
is_blank (const char *text)
{
  const char *end;

  /* what a document of the record calls blank is blank here too */
  if (!sy_text_says (text))
    return TRUE;
  if (!g_utf8_validate (text, -1, &end))
    return FALSE;
  for (; text < end; text = g_utf8_next_char (text))
    if (shows (g_utf8_get_char (text)))
      return FALSE;
  return TRUE;
}

/* Controls, line ends among them, what turns the letters around it about (Unicode, annex 9: explicit directions), and what only
   makes a name another one unseen: with these one name can be made to look like another. Joiners and the marks of direction
   stay: some scripts need them. */
static gboolean
is_plain_name (const char *text)
{
  static const gunichar unseen[] = { 0x00ad, 0x034f, 0x200b, 0x2060, 0x3164, 0xfeff, 0xffa0 };

  for (; *text != '\0'; text = g_utf8_next_char (text))
    {
      const gunichar letter = g_utf8_get_char (text);

      for (gsize i = 0; i < G_N_ELEMENTS (unseen); i++)
        if (letter == unseen[i])
          return FALSE;
      if (g_unichar_iscntrl (letter) || letter == 0x2028 || letter == 0x2029 || (letter >= 0x202a && letter <= 0x202e)
          || (letter >= 0x2066 && letter <= 0x2069))
        return FALSE;
    }
  return TRUE;
}

gboolean
sy_ledger_check_texts (const SyLedgerText *texts, gsize n_texts, GError **error)
{
  for (gsize i = 0; i < n_texts; i++)
    if (texts[i].is_needed && is_blank (texts[i].value))
      {
        g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_MISSING,
                     "%s: given nothing; allowed: a text that is not blank", texts[i].name);
        return FALSE;
      }
  for (gsize i = 0; i < n_texts; i++)
    if (texts[i].value != NULL && !g_utf8_validate (texts[i].value, -1, NULL))
      {
        g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_MISSING,
                     "%s: given bytes that are no UTF-8 text; allowed: UTF-8 text", texts[i].name);
        return FALSE;
      }
  for (gsize i = 0; i < n_texts; i++)
    if (texts[i].is_name && texts[i].value != NULL && !is_plain_name (texts[i].value))
      {
        g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_MISSING,
                     "%s: given a name with line ends or other signs that cannot be seen; allowed: a name in one line",
                     texts[i].name);
        return FALSE;
      }
  return TRUE;
}

static gboolean
check_request (const SyRecordRequest *request, GError **error)
{
  const SyLedgerText texts[] = {
    { "task", request->task, TRUE, TRUE },  { "by", request->by, TRUE, TRUE },         { "why", request->why, TRUE, FALSE },
    { "role", request->role, FALSE, TRUE }, { "name", request->rename, FALSE, TRUE },
  };

  return sy_ledger_check_texts (texts, G_N_ELEMENTS (texts), error);
}

/* As the middle of a sentence. */
static const char *
item_words (const char *item_kind)
{
  int place = sy_item_kind_place (item_kind);

  return place >= 0 ? sy_item_kinds[place].words : item_kind;
}

/* The same for the same name, time and head, and as good as never the same otherwise. */
static char *
new_item_id (const SyRecordRequest *request, const SyHead *head)
{
  g_autofree char *head_text = sy_hash_text (&head->hash);
  g_autofree char *seed = g_strjoin ("\n", request->task, request->by, request->now, head_text, NULL);
  SyHash hash;
  char *id;

  sy_hash_of (seed, strlen (seed), &hash);
  id = sy_hash_text (&hash);
  id[16] = '\0';
  return id;
}

SyEvent *
sy_ledger_begin_event (SyEventKind kind, const SyLedgerAuthor *author)
{
  SyEvent *event = sy_event_new (kind);

  sy_event_set (&event->by, author->by);
  sy_event_set (&event->role, author->role);
  sy_event_set (&event->why, author->why);
  sy_event_set (&event->claimed, author->now);
  sy_event_set (&event->written, author->now);
  event->clock_set = author->clock_set;
  sy_event_set (&event->program, "steelyard " SY_VERSION);
  return event;
}

static SyEvent *
begin_event (SyEventKind kind, const SyRecordRequest *request)
{
  const SyLedgerAuthor author = { request->by, request->role, request->why, request->now, request->clock_set };

  return sy_ledger_begin_event (kind, &author);
}

gboolean
sy_ledger_add_policy (SyStore *store, SyDesk *desk, const SyRecordRequest *request, GPtrArray *events, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autofree char *adopted = sy_store_policy (store, &failed);
  gsize length;
  const char *text = sy_desk_policy_text (desk, &length);
  g_autofree char *own = g_strndup (text, length);
  SyEvent *event;

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (g_strcmp0 (adopted, own) == 0)
    return TRUE;
  event = begin_event (SY_EVENT_POLICY, request);
  sy_event_set (&event->item_kind, "policy");
  sy_event_set (&event->name, sy_desk_policy (desk)->id);
  sy_event_set (&event->why, "policy in force for the revisions that follow");
  sy_event_set (&event->facts, own);
  g_ptr_array_add (events, event);
  return TRUE;
}

static gboolean
fail_kind (const SyTask *task, const SyMethod *method, GError **error)
{
  g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_KIND,
               "method: given “%s”, which is for %s; allowed: a method for %s, as “%s” is one", method->id,
               item_words (method->item_kind), item_words (task->item_kind), task->name);
  return FALSE;
}

/* A new name must not be blank, nor that of another item of the kind. */
static gboolean
check_rename (SyStore *store, const SyRecordRequest *request, const SyTask *task, GError **error)
{
  g_autoptr (SyTask) other = NULL;

  if (request->rename == NULL || strcmp (request->rename, task->name) == 0)
    return TRUE;
  if (is_blank (request->rename))
    {
      g_set_error_literal (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NAME, "The name must not be blank.");
      return FALSE;
    }
  other = sy_store_find (store, request->rename, task->item_kind, NULL);
  if (other == NULL || strcmp (other->id, task->id) == 0)
    return TRUE;
  g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NAME,
               "Another %s has that name already; choose another name.", task->item_kind);
  return FALSE;
}

gboolean
sy_ledger_find_item (SyStore *store, const SyRecordRequest *request, const SyMethod *method, SyTask **out,
                     GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (SyTask) task = sy_store_find (store, request->task, method->item_kind, &failed);

  if (task == NULL && !g_error_matches (failed, SY_STORE_ERROR, SY_STORE_ERROR_NOT_FOUND))
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (task != NULL && request->is_new)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NAME,
                   "There is %s named “%s” already; choose another name or revise that one.",
                   item_words (task->item_kind), request->task);
      return FALSE;
    }
  if (task != NULL && strcmp (task->item_kind, method->item_kind) != 0)
    return fail_kind (task, method, error);
  if (task != NULL && !check_rename (store, request, task, error))
    return FALSE;
  *out = g_steal_pointer (&task);
  return TRUE;
}

SyEvent *
sy_ledger_make_revision (SyDesk *desk, const SyRecordRequest *request, const SyLedgerContent *content,
                         const SyTask *task, const SyHead *head, GError **error)
{
  g_autoptr (SyEvent) event = begin_event (SY_EVENT_REVISION, request);
  g_autofree char *id = task ? g_strdup (task->id) : new_item_id (request, head);
  g_autofree char *policy = g_strdup_printf ("%s %d", sy_desk_policy (desk)->id, sy_desk_policy (desk)->version);
  gint64 latest = task ? task->revision : 0;

  event->base = request->base < 0 ? latest : request->base;
  if (event->base > latest || (event->base == 0 && latest > 0))
    {
      if (latest > 0)
        g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BASE,
                     "base: given %" G_GINT64_FORMAT "; allowed: a revision from 1 to %" G_GINT64_FORMAT, event->base,
                     latest);
      else
        g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BASE,
                     "base: given %" G_GINT64_FORMAT "; allowed: none, the task is new", event->base);
      return NULL;
    }
  event->revision = latest + 1;
  sy_event_set (&event->item, id);
  sy_event_set (&event->item_kind, content->method->item_kind);
  sy_event_set (&event->name, task == NULL ? request->task : request->rename ? request->rename : task->name);
  sy_event_set (&event->method, content->method->id);
  event->edition = content->method->edition;
  sy_event_set (&event->policy, policy);
  sy_event_set (&event->facts, content->facts);
  sy_event_set (&event->findings, content->findings);
  return g_steal_pointer (&event);
}

/* A revision on its way into the record. */
typedef struct
{
  SyDesk *desk;
  const SyRecordRequest *request;
  SyLedgerContent content;
  SyRecordResult *result;
} Recording;

static gboolean
write_revision (SyStore *store, gpointer data, GError **error)
{
  const Recording *recording = data;
  const SyRecordRequest *request = recording->request;
  SyDesk *desk = recording->desk;
  SyRecordResult *result = recording->result;
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  g_autoptr (SyTask) task = NULL;
  SyHead head;
  SyEvent *event;

  if (!sy_store_head (store, &head, error) || !sy_ledger_find_item (store, request, recording->content.method, &task, error)
      || !sy_ledger_add_policy (store, desk, request, events, error))
    return FALSE;
  event = sy_ledger_make_revision (desk, request, &recording->content, task, &head, error);
  if (event == NULL)
    return FALSE;
  g_ptr_array_add (events, event);
  if (!sy_store_append (store, &head, events, &result->head, error))
    return FALSE;
  result->task_id = g_strdup (event->item);
  result->revision = event->revision;

  /* The revision is in the journal whatever becomes of this look at it. */
  g_autoptr (SyTask) now = sy_store_find (store, event->item, NULL, NULL);
  result->clash = now ? now->clash : 0;
  return TRUE;
}

gboolean
sy_ledger_record (SyLedger *ledger, SyDesk *desk, const SyRecordRequest *request, const char *facts, gsize length,
                  SyProblems *problems, SyRecordResult *result, GError **error)
{
  g_autoptr (SyAssessment) assessment = NULL;
  g_autofree char *findings = NULL;

  sy_problems_clear (problems);
  if (!check_request (request, error))
    return FALSE;
  assessment = sy_desk_assess (desk, facts, length, SY_JUDGE_RECORD | SY_JUDGE_REMEDIES | SY_JUDGE_SPREAD, problems);
  if (assessment == NULL)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_PROBLEMS, "the facts have problems; nothing was recorded");
      return FALSE;
    }
  findings = sy_assessment_json (assessment, false);
  *result = (SyRecordResult) { .verdict = assessment->findings->verdict };

  Recording recording = { desk, request, { assessment->facts.method, assessment->text, findings }, result };
  return sy_ledger_write (ledger, write_revision, &recording, error);
}

void
sy_revision_free (SyRevision *revision)
{
  if (revision == NULL)
    return;
  sy_event_free (revision->event);
  g_free (revision);
}

gboolean
sy_ledger_add_line (const SyLine *line, gpointer revisions)
{
  g_autoptr (GBytes) bytes = sy_event_encode (line->event);
  SyRevision *revision = g_new0 (SyRevision, 1);

  /* A copy by way of the canonical bytes: what is shown is what is chained. */
  revision->event = sy_event_decode (bytes, NULL);
  revision->number = line->number;
  revision->hash = line->hash;
  g_ptr_array_add (revisions, revision);
  return TRUE;
}

GPtrArray *
sy_ledger_history (SyLedger *ledger, const char *task_name, const char *item_kind, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (GPtrArray) revisions = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_revision_free);
  g_autoptr (SyTask) task = sy_store_find (store, task_name, item_kind, error);

  if (task == NULL
      || !sy_store_scan_item (store, task->id, SY_EVENT_REVISION, sy_ledger_add_line, revisions, error))
    return NULL;
  return g_steal_pointer (&revisions);
}

GPtrArray *
sy_ledger_tasks (SyLedger *ledger, const SyTaskFilter *filter, GError **error)
{
  return sy_store_list (sy_ledger_store (ledger), filter, 0, error);
}

GPtrArray *
sy_ledger_changed_since (SyLedger *ledger, guint64 number, GError **error)
{
  return sy_store_changed_since (sy_ledger_store (ledger), number, error);
}

gboolean
sy_ledger_head (SyLedger *ledger, SyHead *head, GError **error)
{
  return sy_store_head (sy_ledger_store (ledger), head, error);
}
