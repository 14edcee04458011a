/* SPDX-License-Identifier: MIT */
#include "sy-task-history.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-task-parts.h"
#include "sy-task-stored.h"
#include "sy-verdict-label.h"

struct _SyTaskHistory
{
  GtkBox parent_instance;

  SyDesk *desk;
  GPtrArray *revisions; /* of SyRevision, oldest first; NULL: none */
  gint64 shown;         /* revision that is shown, 0: the list */
};

enum
{
  REVISE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskHistory, sy_task_history, GTK_TYPE_BOX)

static gint64
revision_of (GtkWidget *button)
{
  return *(gint64 *) g_object_get_data (G_OBJECT (button), "sy-revision");
}

static void
tie_revision (GtkWidget *button, gint64 revision)
{
  g_object_set_data_full (G_OBJECT (button), "sy-revision", g_memdup2 (&revision, sizeof revision),
                          g_free);
}

static void
open_cb (GtkButton *button, SyTaskHistory *self)
{
  sy_task_history_show (self, revision_of (GTK_WIDGET (button)));
}

static void
back_cb (GtkButton *button G_GNUC_UNUSED, SyTaskHistory *self)
{
  sy_task_history_show (self, 0);
}

static void
revise_cb (GtkButton *button, SyTaskHistory *self)
{
  gint64 revision = revision_of (GTK_WIDGET (button));

  sy_task_history_show (self, 0);
  g_signal_emit (self, signals[REVISE], 0, revision);
}

static GtkWidget *
new_entry (SyTaskHistory *self, const SyRevision *revision)
{
  const SyEvent *event = revision->event;
  SyStoredResult result;
  GtkWidget *button = gtk_button_new ();
  GtkWidget *row;
  g_autofree char *when = sy_stored_time_text (event->claimed);
  g_autofree char *index = NULL;
  g_autofree char *words = NULL;
  g_autofree char *quiet = NULL;
  g_autofree char *name = NULL;
  const char *verdict;

  sy_stored_result_read (revision, &result);
  index = sy_stored_index_text (&result);
  verdict = result.has_verdict ? sy_translate (sy_verdict_title_for (sy_method_find (event->method), result.verdict)) : _("no verdict");
  words = g_strdup_printf (_("Revision %ld: %s"), (long) event->revision, verdict);
  if (index[0] != '\0')
    {
      g_autofree char *plain = g_steal_pointer (&words);

      words = g_strdup_printf ("%s · %s", plain, index);
    }
  /* Translators: when, by whom, why a revision was saved. */
  quiet = g_strdup_printf (_("%s, %s: %s"), when, event->by, event->why);
  row = sy_reason_row_new (result.has_verdict ? &result.verdict : NULL, words, quiet);
  gtk_button_set_child (GTK_BUTTON (button), row);
  name = g_strdup_printf (_("Open: %s, %s"), words, quiet);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_add_css_class (button, "sy-remedy");
  {
    g_autofree char *id = g_strdup_printf ("revision:%ld", (long) event->revision);

    gtk_widget_set_name (button, id);
  }
  tie_revision (button, event->revision);
  g_signal_connect (button, "clicked", G_CALLBACK (open_cb), self);
  sy_stored_result_clear (&result);
  return button;
}

static void
show_list (SyTaskHistory *self)
{
  gtk_box_append (GTK_BOX (self), sy_part_heading (_("Revisions")));
  if (self->revisions == NULL || self->revisions->len == 0)
    {
      gtk_box_append (GTK_BOX (self),
                      sy_part_label (_("Nothing has been saved yet. Every save adds a revision here and "
                                       "keeps the ones before it."),
                                     "sy-quiet"));
      return;
    }
  for (guint i = self->revisions->len; i > 0; i--)
    gtk_box_append (GTK_BOX (self), new_entry (self, g_ptr_array_index (self->revisions, i - 1)));
}

static void
show_revision (SyTaskHistory *self, const SyRevision *revision)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *back = sy_button_new (_("_Back to the revisions"), NULL);
  GtkWidget *revise = sy_button_new (_("_Make a new revision from this"), NULL);

  gtk_widget_set_name (back, "history-back");
  gtk_widget_set_name (revise, "history-revise");
  tie_revision (revise, revision->event->revision);
  g_signal_connect (back, "clicked", G_CALLBACK (back_cb), self);
  g_signal_connect (revise, "clicked", G_CALLBACK (revise_cb), self);
  gtk_box_append (GTK_BOX (buttons), back);
  gtk_box_append (GTK_BOX (buttons), revise);
  gtk_box_append (GTK_BOX (self), buttons);
  gtk_box_append (GTK_BOX (self),
                  sy_task_stored_new (self->desk, revision,
                                      sy_task_history_find (self, revision->event->base)));
  gtk_widget_grab_focus (back);
}

static void
rebuild (SyTaskHistory *self)
{
  const SyRevision *revision = sy_task_history_find (self, self->shown);
  gboolean had_focus = gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL;

  sy_part_empty (GTK_WIDGET (self));
  if (revision != NULL)
    show_revision (self, revision);
  else
    {
      show_list (self);
      if (had_focus)
        gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
    }
}

static void
sy_task_history_dispose (GObject *object)
{
  SyTaskHistory *self = SY_TASK_HISTORY (object);

  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  g_clear_pointer (&self->desk, sy_desk_unref);
  G_OBJECT_CLASS (sy_task_history_parent_class)->dispose (object);
}

static void
sy_task_history_class_init (SyTaskHistoryClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_task_history_dispose;
  signals[REVISE] = g_signal_new ("revise", SY_TYPE_TASK_HISTORY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
sy_task_history_init (SyTaskHistory *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
}

GtkWidget *
sy_task_history_new (SyDesk *desk)
{
  SyTaskHistory *self = g_object_new (SY_TYPE_TASK_HISTORY, NULL);

  self->desk = sy_desk_ref (desk);
  rebuild (self);
  return GTK_WIDGET (self);
}

void
sy_task_history_set (SyTaskHistory *self, GPtrArray *revisions)
{
  g_return_if_fail (SY_IS_TASK_HISTORY (self));
  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  self->revisions = revisions != NULL ? g_ptr_array_ref (revisions) : NULL;
  rebuild (self);
}

const SyRevision *
sy_task_history_find (SyTaskHistory *self, gint64 revision)
{
  for (guint i = 0; self->revisions != NULL && i < self->revisions->len; i++)
    {
      const SyRevision *at = g_ptr_array_index (self->revisions, i);

      if (at->event->revision == revision)
        return at;
    }
  return NULL;
}

void
sy_task_history_show (SyTaskHistory *self, gint64 revision)
{
  g_return_if_fail (SY_IS_TASK_HISTORY (self));
  self->shown = revision;
  rebuild (self);
}
