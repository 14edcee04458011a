/* SPDX-License-Identifier: MIT */
/* A task page and the record: saving. */
#include "sy-i18n.h"
#include "sy-settings.h"
#include "sy-task-page-private.h"

#include <string.h>

typedef struct
{
  SyTaskPage *page;
  char *draft_id; /* what is in the record needs no draft any more, even when the page is closed by then */
  char *facts;
  char *name;
  char *store;
} SaveJob;

static void
save_job_free (SaveJob *job)
{
  g_object_unref (job->page);
  g_free (job->draft_id);
  g_free (job->facts);
  g_free (job->name);
  g_free (job->store);
  g_free (job);
}

static void
save_failed (SyTaskPage *self, const GError *error)
{
  g_free (self->trouble_words);
  if (g_error_matches (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NAME))
    {
      self->trouble_words = g_strdup (_("Another one has that name. Give this one a name of its own."));
      sy_task_form_mark_name (self->facts, _("Another one has that name."));
      sy_task_form_focus (self->facts, "name");
    }
  else
    self->trouble_words
      = g_strdup_printf (_("Not saved: %s. What is typed is kept as a draft."), error->message);
  sy_task_page_refresh (self);
}

static void
save_succeeded (SyTaskPage *self, SaveJob *job, const SyRecordResult *saved)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *time = g_date_time_format (now, "%H:%M");
  g_autofree char *facts = sy_form_document (self->form);
  char *words;

  g_free (self->task_id);
  self->task_id = g_strdup (saved->task_id);
  g_free (self->draft_id);
  self->draft_id = g_strdup (saved->task_id);
  self->has_draft = FALSE;
  self->base = saved->revision;
  self->seen = MAX (self->seen, saved->revision);
  self->judged = FALSE;
  g_free (self->saved_name);
  self->saved_name = g_strdup (job->name);
  /* What was typed while it was being saved is still to be saved. */
  if (strcmp (facts, job->facts) == 0)
    sy_form_mark_clean (self->form);
  else
    sy_task_page_schedule_draft (self);
  if (saved->clash != 0)
    words = g_strdup_printf (_("Saved as revision %ld, %s. Revision %ld was made from the same one: both are kept."),
                             (long) saved->revision, time, (long) saved->clash);
  else
    words = g_strdup_printf (_("Saved as revision %ld, %s"), (long) saved->revision, time);
  sy_task_page_set_saved_words (self, words);
  /* Only a convenience for the next time: the record is complete without it. */
  sy_settings_set (SY_SETTING_AUTHOR, sy_task_saver_get_by (self->saver), NULL);
  sy_settings_set (SY_SETTING_ROLE, sy_task_saver_get_role (self->saver), NULL);
  sy_form_set_ask_missing (self->form, FALSE);
  sy_task_saver_set_why (self->saver, "");
  sy_task_page_show_notice (self, SY_NOTICE_NONE, NULL, NULL, NULL);
  sy_task_page_reload_history (self);
  sy_task_page_refresh (self);
  g_signal_emit_by_name (self, "saved");
}

static void
saved_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  SaveJob *job = data;
  SyTaskPage *self = job->page;
  g_autoptr (GError) error = NULL;
  SyRecordResult saved = { 0 };
  gboolean done = sy_worker_save_finish (SY_WORKER (source), result, &saved, &error);

  if (done)
    sy_draft_remove (job->draft_id, job->store);
  if (self->form != NULL)
    {
      sy_task_saver_set_busy (self->saver, FALSE);
      if (done)
        save_succeeded (self, job, &saved);
      else
        save_failed (self, error);
    }
  if (done)
    sy_record_result_clear (&saved);
  save_job_free (job);
}

static void
begin_save (SyTaskPage *self)
{
  SySaveRequest *request = sy_save_request_new ();
  SaveJob *job = g_new0 (SaveJob, 1);

  job->page = g_object_ref (self);
  job->draft_id = g_strdup (self->draft_id);
  job->store = g_strdup (sy_worker_get_store (self->worker));
  job->facts = sy_form_document (self->form);
  job->name = g_strstrip (g_strdup (sy_task_form_get_name (self->facts)));
  request->is_new = self->task_id == NULL;
  request->task = g_strdup (self->task_id != NULL ? self->task_id : job->name);
  request->rename = self->task_id != NULL && strcmp (job->name, self->saved_name) != 0
                        ? g_strdup (job->name)
                        : NULL;
  request->by = g_strstrip (g_strdup (sy_task_saver_get_by (self->saver)));
  request->role = g_strstrip (g_strdup (sy_task_saver_get_role (self->saver)));
  request->why = g_strstrip (g_strdup (sy_task_saver_get_why (self->saver)));
  request->base = self->task_id != NULL ? self->base : -1;
  request->facts = g_strdup (job->facts);
  sy_task_saver_set_busy (self->saver, TRUE);
  sy_task_saver_say (self->saver, SY_SAVER_PLAIN, _("Saving…"), NULL);
  /* Not cancellable: what was sent to be saved is saved, whatever becomes of the page. */
  sy_worker_save_async (self->worker, request, NULL, saved_cb, job);
}

void
sy_task_page_save (SyTaskPage *self)
{
  g_return_if_fail (SY_IS_TASK_PAGE (self));
  sy_task_page_close_part (self);
  sy_task_page_flush_draft (self);
  g_clear_pointer (&self->trouble_words, g_free);
  sy_form_settle (self->form);
  if (sy_form_count_problems (self->form) > 0)
    {
      sy_form_set_ask_missing (self->form, TRUE);
      sy_task_page_refresh (self);
      sy_task_page_focus_fact (self, sy_form_problem_path (self->form, 0));
      return;
    }
  g_autofree char *name = g_strstrip (g_strdup (sy_task_form_get_name (self->facts)));
  if (name[0] == '\0')
    {
      sy_task_form_mark_name (self->facts, _("It needs a name."));
      sy_task_page_refresh (self);
      sy_task_page_focus_fact (self, "name");
      return;
    }
  if (!sy_task_page_get_dirty (self) && self->task_id != NULL)
    {
      sy_task_page_refresh (self);
      return;
    }
  if (!sy_task_saver_check (self->saver))
    {
      self->trouble_words = g_strdup (_("By whom and why belong to every revision: say both, then save."));
      sy_task_page_refresh (self);
      return;
    }
  sy_task_page_refresh (self);
  begin_save (self);
}
