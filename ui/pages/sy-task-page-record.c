/* SPDX-License-Identifier: MIT */
/* A task page and the record: opening, the draft, what others saved meanwhile. */
#include "sy-i18n.h"
#include "sy-task-kinds.h"
#include "sy-task-page-private.h"
#include "sy-stored-result.h"
#include "sy-task-standing.h"
#include "sy-variant.h"
#include "sy-worker-deeds.h"

#include <string.h>

/* Well within the 300 ms that may be lost in a crash. */
#define DRAFT_DELAY_MS 200
/* How soon what another program wrote is told (our choice): asking costs a read of the journal's end. */
#define WATCH_SECONDS 2

/* The draft */

static void
drop_draft (SyTaskPage *self)
{
  g_clear_handle_id (&self->draft_timer, g_source_remove);
  if (self->has_draft)
    sy_draft_remove (self->draft_id, sy_worker_get_store (self->worker));
  self->has_draft = FALSE;
}

static void
write_draft (SyTaskPage *self)
{
  g_autoptr (SyDraft) draft = sy_draft_new (self->draft_id);
  g_autoptr (GError) error = NULL;

  g_free (draft->task);
  draft->task = g_strdup (self->task_id != NULL ? self->task_id : "");
  g_free (draft->name);
  draft->name = g_strdup (sy_task_form_get_name (self->facts));
  draft->base = self->base;
  draft->saved_at = g_get_real_time () / G_USEC_PER_SEC;
  g_free (draft->method);
  draft->method = g_strdup (sy_form_get_method (self->form)->id);
  sy_form_fill_draft (self->form, draft);
  if (sy_draft_write (draft, sy_worker_get_store (self->worker), &error))
    {
      self->has_draft = TRUE;
      return;
    }
  g_free (self->trouble_words);
  self->trouble_words = g_strdup_printf (_("What is typed could not be kept as a draft: %s"), error->message);
  sy_task_page_refresh (self);
}

void
sy_task_page_flush_draft (SyTaskPage *self)
{
  if (self->draft_timer == 0 || self->draft_id == NULL)
    return;
  g_clear_handle_id (&self->draft_timer, g_source_remove);
  if (sy_task_page_get_dirty (self))
    write_draft (self);
  else
    drop_draft (self);
}

static gboolean
draft_timer_cb (gpointer data)
{
  sy_task_page_flush_draft (data);
  return G_SOURCE_REMOVE;
}

void
sy_task_page_schedule_draft (SyTaskPage *self)
{
  if (self->draft_timer == 0 && self->draft_id != NULL)
    self->draft_timer = g_timeout_add (DRAFT_DELAY_MS, draft_timer_cb, self);
}

/* Loading */

static void
set_name (SyTaskPage *self, const char *name)
{
  g_free (self->saved_name);
  self->saved_name = g_strdup (name);
  sy_task_form_set_name (self->facts, name);
}

void
sy_task_page_set_saved_words (SyTaskPage *self, char *words)
{
  g_free (self->saved_words);
  self->saved_words = words;
}

/* Takes @log, NULL: not saved yet. */
static void
set_log (SyTaskPage *self, SyItemLog *log)
{
  g_clear_pointer (&self->log, sy_item_log_unref);
  self->log = log;
  sy_task_history_set (self->history, log);
  sy_follow_up_set (self->follow, log);
  sy_task_standing_set (self->standing, log);
}

/* NULL with the error, or without one when there is no such item. */
static SyItemLog *
finish_log (SyWorker *worker, GAsyncResult *result, GError **error)
{
  GPtrArray *lines = sy_worker_events_finish (worker, result, error);

  return lines != NULL ? sy_item_log_new (lines) : NULL;
}

static void
take_draft (SyTaskPage *self, const SyDraft *draft)
{
  self->loading = TRUE;
  sy_form_load_draft (self->form, draft);
  sy_task_form_set_name (self->facts, draft->name != NULL ? draft->name : "");
  sy_task_form_settle (self->facts);
  self->loading = FALSE;
  self->base = draft->base;
  self->has_draft = TRUE;
}

static void
show_task (SyTaskPage *self)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "task");
  sy_task_page_refresh (self);
}

void
sy_task_page_begin_new (SyTaskPage *self, SyUnits units, const char *draft_id)
{
  g_autoptr (SyDraft) draft = NULL;
  g_autoptr (GError) error = NULL;

  g_return_if_fail (SY_IS_TASK_PAGE (self));
  sy_task_page_flush_draft (self);
  g_clear_pointer (&self->task_id, g_free);
  g_clear_pointer (&self->trouble_words, g_free);
  self->base = 0;
  self->seen = 0;
  self->judged = FALSE;
  self->has_draft = FALSE;
  sy_task_page_show_notice (self, SY_NOTICE_NONE, NULL, NULL, NULL);
  g_free (self->draft_id);
  if (draft_id != NULL)
    self->draft_id = g_strdup (draft_id);
  else
    {
      g_autofree char *id = g_uuid_string_random ();

      self->draft_id = g_strdup_printf ("new-%s", id);
    }
  self->loading = TRUE;
  sy_form_clear (self->form, units);
  set_name (self, "");
  self->loading = FALSE;
  sy_task_page_set_saved_words (self, NULL);
  set_log (self, NULL);
  if (draft_id != NULL)
    draft = sy_draft_read (draft_id, sy_worker_get_store (self->worker), &error);
  if (draft != NULL)
    take_draft (self, draft);
  if (error != NULL)
    self->trouble_words = g_strdup (error->message);
  show_task (self);
  sy_task_form_focus (self->facts, sy_task_kind (sy_form_get_method (self->form))->first);
}

static void
offer_draft (SyTaskPage *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) time = NULL;
  g_autofree char *when = NULL;
  g_autofree char *words = NULL;

  g_clear_pointer (&self->offered, sy_draft_free);
  self->offered = sy_draft_read (self->draft_id, sy_worker_get_store (self->worker), &error);
  if (error != NULL)
    {
      g_free (self->trouble_words);
      self->trouble_words = g_strdup (error->message);
    }
  if (self->offered == NULL)
    return;
  self->has_draft = TRUE;
  time = g_date_time_new_from_unix_local (self->offered->saved_at);
  when = g_date_time_format (time, "%Y-%m-%d %H:%M");
  words = g_strdup_printf (_("Changes typed on %s were never saved; they were kept."), when);
  sy_task_page_show_notice (self, SY_NOTICE_DRAFT, words, _("Take them up"), _("Throw them away"));
}

static gboolean
load_revision (SyTaskPage *self, const SyRevision *revision, GError **error)
{
  g_autofree char *when = sy_stored_time_text (revision->event->claimed);
  gboolean loaded;

  self->loading = TRUE;
  loaded = sy_form_load_document (self->form, revision->event->facts, error);
  if (loaded)
    {
      set_name (self, revision->event->name);
      sy_task_form_settle (self->facts);
    }
  self->loading = FALSE;
  if (!loaded)
    return FALSE;
  self->base = revision->event->revision;
  self->judged = FALSE;
  sy_task_page_set_saved_words (self, g_strdup_printf (_("Revision %ld, saved %s by %s."), (long) self->base, when,
                                                       revision->event->by));
  return TRUE;
}

static void
show_trouble (SyTaskPage *self, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->trouble), words);
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "trouble");
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyTaskPage) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (SyItemLog) log = finish_log (SY_WORKER (source), result, &error);
  const SyRevision *revision = sy_item_log_latest (log);

  if (self->form == NULL)
    return; /* the page was closed meanwhile */
  if (revision == NULL)
    {
      show_trouble (self, error != NULL ? error->message : _("There is no such task in this record."));
      return;
    }
  if (!sy_task_page_set_method (self, revision->event->method))
    {
      g_autofree char *words
          = g_strdup_printf (_("This was assessed by “%s”, a method that this edition does not have."),
                             revision->event->method);

      show_trouble (self, words);
      return;
    }
  self->seen = revision->event->revision;
  set_log (self, sy_item_log_ref (log));
  if (!load_revision (self, revision, &error))
    {
      show_trouble (self, error->message);
      return;
    }
  offer_draft (self);
  show_task (self);
}

void
sy_task_page_open (SyTaskPage *self, const char *task_id)
{
  g_return_if_fail (SY_IS_TASK_PAGE (self) && task_id != NULL);
  sy_task_page_flush_draft (self);
  sy_task_page_show_notice (self, SY_NOTICE_NONE, NULL, NULL, NULL);
  g_clear_pointer (&self->trouble_words, g_free);
  g_free (self->task_id);
  self->task_id = g_strdup (task_id);
  g_free (self->draft_id);
  self->draft_id = g_strdup (task_id);
  self->has_draft = FALSE;
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "wait");
  sy_worker_events_async (self->worker, task_id, self->cancellable, opened_cb, g_object_ref (self));
}

/* What others saved */

static void
history_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyTaskPage) self = data;
  g_autoptr (SyItemLog) log = finish_log (SY_WORKER (source), result, NULL);
  const SyRevision *newest = sy_item_log_latest (log);
  g_autofree char *words = NULL;

  /* An error here shows itself with the next save or opening; what is on the page stays right. */
  if (self->form == NULL || newest == NULL || g_strcmp0 (newest->event->item, self->task_id) != 0)
    return;
  set_log (self, sy_item_log_ref (log));
  if (newest->event->revision <= MAX (self->base, self->seen) || self->notice_kind == SY_NOTICE_DRAFT)
    return;
  self->seen = newest->event->revision;
  words = g_strdup_printf (
    _("Revision %ld was saved meanwhile by %s (“%s”). Saving yours keeps both."),
    (long) newest->event->revision, newest->event->by, newest->event->why);
  sy_task_page_show_notice (self, SY_NOTICE_NEWER, words, _("Show that revision"), _("Go on with mine"));
}

void
sy_task_page_reload_history (SyTaskPage *self)
{
  if (self->task_id != NULL)
    sy_worker_events_async (self->worker, self->task_id, self->cancellable, history_cb, g_object_ref (self));
}

static void
watched_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyTaskPage) self = data;
  g_autoptr (GPtrArray) changed = sy_worker_changed_finish (SY_WORKER (source), result, NULL, NULL);

  for (guint i = 0; changed != NULL && i < changed->len && self->form != NULL; i++)
    if (g_strcmp0 (((SyTask *) changed->pdata[i])->id, self->task_id) == 0)
      sy_task_page_reload_history (self);
}

static gboolean
watch_cb (gpointer data)
{
  SyTaskPage *self = data;
  const GPtrArray *lines = self->log != NULL ? self->log->lines : NULL;

  if (lines != NULL)
    sy_worker_changed_async (self->worker, ((SyRevision *) lines->pdata[lines->len - 1])->number, self->cancellable, watched_cb,
                             g_object_ref (self));
  return G_SOURCE_CONTINUE;
}

void
sy_task_page_watch (SyTaskPage *self, gboolean watch)
{
  if (watch && self->poll == 0)
    self->poll = g_timeout_add_seconds (WATCH_SECONDS, watch_cb, self);
  else if (!watch)
    g_clear_handle_id (&self->poll, g_source_remove);
}

void
sy_task_page_answer (SyTaskPage *self, gboolean yes)
{
  SyNotice kind = self->notice_kind;
  g_autoptr (SyDraft) draft = g_steal_pointer (&self->offered);

  sy_task_page_show_notice (self, SY_NOTICE_NONE, NULL, NULL, NULL);
  if (kind == SY_NOTICE_DRAFT && yes && draft != NULL)
    take_draft (self, draft);
  else if (kind == SY_NOTICE_DRAFT)
    drop_draft (self);
  else if (kind == SY_NOTICE_NEWER && yes)
    {
      sy_task_page_show_tab (self, "history");
      sy_task_history_show (self->history, sy_item_log_latest (self->log)->event->revision);
    }
  sy_task_page_refresh (self);
}

/* Takes the facts of a revision over what is typed; FALSE after saying why not. */
static gboolean
take_facts (SyTaskPage *self, gint64 revision)
{
  const SyRevision *old = sy_item_log_find (self->log, revision);
  g_autoptr (GError) error = NULL;

  if (old == NULL)
    return FALSE;
  if (!sy_form_take_document (self->form, old->event->facts, &error))
    {
      g_free (self->trouble_words);
      self->trouble_words = g_strdup (error->message);
      sy_task_page_refresh (self);
      return FALSE;
    }
  sy_task_form_settle (self->facts);
  return TRUE;
}

/* A reason to begin with, unless there is one. */
static void
propose_why (SyTaskPage *self, char *why)
{
  if (sy_task_saver_get_why (self->saver)[0] == '\0')
    sy_task_saver_set_why (self->saver, why);
  g_free (why);
}

const char *
sy_task_page_get_item (SyTaskPage *self)
{
  g_return_val_if_fail (SY_IS_TASK_PAGE (self), NULL);
  return self->task_id;
}

SyDraft *
sy_task_page_dup_variant (SyTaskPage *self)
{
  g_autofree char *name = NULL;

  g_return_val_if_fail (SY_IS_TASK_PAGE (self) && self->form != NULL, NULL);
  g_object_get (self, "title", &name, NULL);
  return sy_variant_new (self->form, name, self->base);
}

void
sy_task_page_begin_variant (SyTaskPage *self, const SyDraft *variant)
{
  const char *notes = g_hash_table_lookup (variant->texts, "notes");
  const char *last = notes != NULL ? strrchr (notes, '\n') : NULL;
  SyUnits units = SY_UNITS_METRIC;

  g_return_if_fail (SY_IS_TASK_PAGE (self));
  sy_units_from_id (variant->units, &units);
  sy_task_page_begin_new (self, units, NULL);
  take_draft (self, variant);
  /* It is in no file yet. */
  self->has_draft = FALSE;
  propose_why (self, g_strdup (last != NULL ? last + 1 : notes));
  sy_task_page_edited (self);
}

void
sy_task_page_revise (SyTaskPage *self, gint64 revision)
{
  if (!take_facts (self, revision))
    return;
  propose_why (self, g_strdup_printf (_("back to revision %ld"), (long) revision));
  if (gtk_stack_get_child_by_name (GTK_STACK (self->tabs), "pictures") != NULL)
    sy_task_page_show_tab (self, "pictures");
}

void
sy_task_page_save_judged (SyTaskPage *self, gint64 revision)
{
  if (!take_facts (self, revision))
    return;
  propose_why (self, g_strdup_printf (_("revision %ld judged again"), (long) revision));
  self->base = revision;
  self->judged = TRUE;
  sy_task_page_refresh (self);
  sy_task_saver_ask_why (self->saver);
}

void
sy_task_page_discard (SyTaskPage *self)
{
  const SyRevision *revision;

  g_return_if_fail (SY_IS_TASK_PAGE (self));
  if (self->task_id == NULL)
    {
      drop_draft (self);
      sy_task_page_begin_new (self, sy_form_get_units (self->form), NULL);
      return;
    }
  drop_draft (self);
  g_clear_pointer (&self->trouble_words, g_free);
  revision = self->judged ? sy_item_log_latest (self->log) : sy_item_log_find (self->log, self->base);
  if (revision != NULL)
    load_revision (self, revision, NULL);
  sy_task_page_refresh (self);
}
