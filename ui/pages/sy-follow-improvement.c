/* SPDX-License-Identifier: MIT */
#include "sy-follow-improvement.h"

#include "sy-i18n.h"
#include "sy-improvement-form.h"
#include "sy-name.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"

struct _SyFollowImprovement
{
  GtkBox parent_instance;

  SyItemLog *log;
  GtkWidget *words, *from;
  SyDeedForm *form;
};

G_DEFINE_FINAL_TYPE (SyFollowImprovement, sy_follow_improvement, GTK_TYPE_BOX)

static SyDeedAsk *
make (SyDeedForm *form, gpointer user_data)
{
  SyFollowImprovement *self = user_data;
  const guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->from));
  const GPtrArray *revisions = self->log->revisions;

  if (at + 1 >= revisions->len)
    return NULL;
  return sy_improvement_form_ask (form, self->log->task->id, sy_item_log_latest (self->log)->event->revision,
                                  self->log->task->id, ((SyRevision *) revisions->pdata[at])->event->revision);
}

static void
done_cb (SyDeedForm *form, gpointer user_data)
{
  (void) user_data;
  sy_deed_form_say (form, _("It is in the improvement log."), FALSE);
}

static void
show_latest (SyFollowImprovement *self)
{
  const SyEvent *latest = sy_item_log_latest (self->log)->event;
  g_autofree char *words = g_strdup_printf (_("To revision %ld, the latest: %s"), (long) latest->revision, latest->why);

  sy_deed_form_set_subject (self->form, words);
}

/* All but the latest; the one before it is chosen, unless one of them was already. */
static void
list_revisions (SyFollowImprovement *self, gboolean is_same)
{
  g_autoptr (GtkStringList) lines = gtk_string_list_new (NULL);
  const GPtrArray *revisions = self->log->revisions;
  const guint before = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->from));

  for (guint i = 0; i + 1 < revisions->len; i++)
    {
      const SyEvent *event = ((SyRevision *) revisions->pdata[i])->event;
      g_autofree char *when = sy_stored_time_text (event->claimed);
      g_autofree char *line = g_strdup_printf (_("Revision %ld · %s · %s"), (long) event->revision, when, event->by);

      gtk_string_list_append (lines, line);
    }
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->from), G_LIST_MODEL (lines));
  if (revisions->len > 1)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->from),
                                is_same && before + 1 < revisions->len ? before : revisions->len - 2);
}

void
sy_follow_improvement_set (SyFollowImprovement *self, SyItemLog *log)
{
  gboolean is_same, has_two;

  g_return_if_fail (SY_IS_FOLLOW_IMPROVEMENT (self));
  /* Somebody did something about the item; what is being typed stays, and so does what it is from. */
  is_same = self->log != NULL && g_str_equal (self->log->task->id, log->task->id)
            && self->log->revisions->len == log->revisions->len;
  has_two = log->revisions->len > 1;
  sy_item_log_ref (log);
  g_clear_pointer (&self->log, sy_item_log_unref);
  self->log = log;
  gtk_widget_set_visible (GTK_WIDGET (self), sy_improvement_form_takes (log->task->item_kind));
  list_revisions (self, is_same);
  show_latest (self);
  gtk_widget_set_visible (GTK_WIDGET (self->form), has_two);
  gtk_label_set_text (GTK_LABEL (self->words),
                      has_two ? _("What was changed for the better since an earlier revision, by whose idea and since when; "
                                  "what it bought is read from the two. Where the work before is another item, choose “Compare "
                                  "with…” in the main menu and put it in the log there.")
                              : _("There is one revision only. Where the work before is another item, choose “Compare with…” in "
                                  "the main menu, with that one first, and put it in the improvement log there."));
}

SyDeedForm *
sy_follow_improvement_get_form (SyFollowImprovement *self)
{
  g_return_val_if_fail (SY_IS_FOLLOW_IMPROVEMENT (self), NULL);
  return self->form;
}

/* Topics: building */

static void
sy_follow_improvement_dispose (GObject *object)
{
  g_clear_pointer (&SY_FOLLOW_IMPROVEMENT (object)->log, sy_item_log_unref);
  G_OBJECT_CLASS (sy_follow_improvement_parent_class)->dispose (object);
}

static void
sy_follow_improvement_class_init (SyFollowImprovementClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_follow_improvement_dispose;
}

static void
sy_follow_improvement_init (SyFollowImprovement *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
sy_follow_improvement_new (SyWorker *worker)
{
  SyFollowImprovement *self = g_object_new (SY_TYPE_FOLLOW_IMPROVEMENT, NULL);
  GtkWidget *heading = sy_part_heading (_("Improvement")), *form = sy_improvement_form_new (worker, "improvement");

  self->form = SY_DEED_FORM (form);
  self->words = sy_part_label (NULL, "sy-note");
  gtk_widget_set_name (self->words, "improvement-words");
  self->from = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_name (self->from, "improvement-from");
  sy_name (self->from, _("From which revision"));
  gtk_widget_set_margin_top (heading, 12);
  sy_deed_form_add_widget (self->form, _("From"), self->from);
  sy_deed_form_set_make (self->form, make, self);
  g_signal_connect (form, "done", G_CALLBACK (done_cb), NULL);
  gtk_box_append (GTK_BOX (self), heading);
  gtk_box_append (GTK_BOX (self), self->words);
  gtk_box_append (GTK_BOX (self), form);
  return GTK_WIDGET (self);
}
