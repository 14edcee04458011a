/* SPDX-License-Identifier: MIT */
#include "sy-seal.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"
#include "sy-worker-journal.h"

struct _SySeal
{
  GtkBox parent_instance;

  SyWorker *worker;
  GCancellable *cancellable; /* of what is running, NULL: nothing is */
  GtkWidget *words, *when, *verify, *stop;
};

G_DEFINE_FINAL_TYPE (SySeal, sy_seal, GTK_TYPE_BOX)

static void
say (SySeal *self, const char *words, const char *when, gboolean wrong)
{
  if (wrong)
    gtk_widget_add_css_class (self->words, "sy-trouble");
  else
    gtk_widget_remove_css_class (self->words, "sy-trouble");
  if (wrong)
    gtk_widget_add_css_class (self->words, "sy-problem");
  else
    gtk_widget_remove_css_class (self->words, "sy-problem");
  gtk_label_set_text (GTK_LABEL (self->words), words);
  gtk_label_set_text (GTK_LABEL (self->when), when);
  gtk_widget_set_visible (self->when, *when != '\0');
}

static void
set_running (SySeal *self, gboolean running)
{
  GtkWidget *shown = running ? self->stop : self->verify, *hidden = running ? self->verify : self->stop;
  gboolean had_focus = gtk_widget_is_focus (hidden);

  gtk_widget_set_visible (shown, TRUE);
  if (had_focus)
    gtk_widget_grab_focus (shown);
  gtk_widget_set_visible (hidden, FALSE);
}

static void
progress_cb (guint64 done, guint64 of, gpointer data)
{
  SySeal *self = data;
  g_autofree char *words
      = of > 0 ? g_strdup_printf (_("Verifying: line %lu of %lu …"), (unsigned long) done, (unsigned long) of)
               : g_strdup (_("Verifying…"));

  if (self->worker != NULL && self->cancellable != NULL)
    gtk_label_set_text (GTK_LABEL (self->when), words);
}

static void
verified_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SySeal) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL, *now = NULL, *time = NULL, *when = NULL;
  SyVerification found = { 0 };
  gboolean clock_set;
  gboolean done = sy_worker_verify_finish (SY_WORKER (source), result, &found, &error);

  if (self->worker == NULL)
    {
      if (done)
        sy_verification_clear (&found);
      return; /* the page was closed meanwhile */
    }
  g_clear_object (&self->cancellable);
  set_running (self, FALSE);
  if (!done)
    {
      if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        say (self, _("Verifying was stopped: nothing is known."), "", FALSE);
      else
        say (self, error->message, "", TRUE);
      return;
    }
  words = sy_verification_words (&found, sy_translate);
  now = sy_clock_now (&clock_set, NULL);
  time = now != NULL ? sy_stored_time_text (now) : g_strdup ("");
  when = g_strdup_printf (_("Verified on %s."), time);
  say (self, words, when, found.fault != SY_FAULT_NONE);
  sy_verification_clear (&found);
}

static void
verify_cb (GtkButton *button G_GNUC_UNUSED, SySeal *self)
{
  if (self->cancellable != NULL)
    return;
  self->cancellable = g_cancellable_new ();
  say (self, "", _("Verifying…"), FALSE);
  set_running (self, TRUE);
  sy_worker_verify_async (self->worker, NULL, self->cancellable, progress_cb, self, verified_cb, g_object_ref (self));
}

static void
stop_cb (GtkButton *button G_GNUC_UNUSED, SySeal *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
}

static void
say_unknown (SySeal *self, const char *words)
{
  if (self->cancellable == NULL)
    say (self, words, "", FALSE);
}

static void
changed_cb (SyWorker *worker G_GNUC_UNUSED, SySeal *self)
{
  if (gtk_widget_get_visible (self->when))
    say_unknown (self, _("The journal has moved on since it was verified."));
}

static void
sy_seal_dispose (GObject *object)
{
  SySeal *self = SY_SEAL (object);

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_seal_parent_class)->dispose (object);
}

static void
sy_seal_class_init (SySealClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_seal_dispose;
}

static void
sy_seal_init (SySeal *self)
{
  GtkBox *box = GTK_BOX (self);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (box, 6);
  self->words = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0, "wrap", TRUE,
                              "wrap-mode", PANGO_WRAP_WORD_CHAR, "selectable", TRUE, NULL);
  gtk_widget_set_name (self->words, "seal-words");
  self->when = sy_part_label (NULL, "sy-note");
  gtk_widget_set_name (self->when, "seal-when");
  self->verify = sy_button_new (_("_Verify the journal"), NULL);
  self->stop = sy_button_new (_("_Stop verifying"), NULL);
  gtk_widget_set_name (self->verify, "seal-verify");
  gtk_widget_set_name (self->stop, "seal-stop");
  gtk_widget_set_halign (self->verify, GTK_ALIGN_START);
  gtk_widget_set_halign (self->stop, GTK_ALIGN_START);
  g_signal_connect (self->verify, "clicked", G_CALLBACK (verify_cb), self);
  g_signal_connect (self->stop, "clicked", G_CALLBACK (stop_cb), self);
  gtk_box_append (box, sy_part_heading (_("Whether the journal holds")));
  gtk_box_append (box, self->words);
  gtk_box_append (box, self->when);
  gtk_box_append (box, self->verify);
  gtk_box_append (box, self->stop);
  set_running (self, FALSE);
  say (self, _("Not verified in this window. Verifying computes the chain of all lines anew, not only of this item."), "", FALSE);
}

GtkWidget *
sy_seal_new (SyWorker *worker)
{
  SySeal *self = g_object_new (SY_TYPE_SEAL, NULL);

  self->worker = g_object_ref (worker);
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  return GTK_WIDGET (self);
}
