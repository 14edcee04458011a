/* SPDX-License-Identifier: MIT */
#include "sy-alert.h"

typedef struct
{
  GtkWindow *dialog;
  GCancellable *cancellable;
  gulong cancelled;
} Alert;

static void
free_alert (gpointer data)
{
  Alert *alert = data;

  g_clear_object (&alert->cancellable);
  g_free (alert);
}

static void
end_alert (GTask *task, int answer)
{
  Alert *alert = g_task_get_task_data (task);
  GtkWindow *dialog = g_steal_pointer (&alert->dialog);

  /* Whichever comes first, an answer or the end of the dialog, is the only one. */
  if (dialog == NULL)
    return;
  g_signal_handlers_disconnect_by_data (dialog, task);
  if (alert->cancellable != NULL)
    g_signal_handler_disconnect (alert->cancellable, alert->cancelled);
  gtk_window_destroy (dialog);
  g_task_return_int (task, answer);
  g_object_unref (task);
}

static void
response_cb (GtkDialog *dialog, int response, GTask *task)
{
  (void) dialog;
  end_alert (task, response >= 0 ? response : SY_ALERT_CLOSED);
}

static void
destroy_cb (GtkWidget *dialog, GTask *task)
{
  (void) dialog;
  end_alert (task, SY_ALERT_CLOSED);
}

static void
cancelled_cb (GCancellable *cancellable, GTask *task)
{
  (void) cancellable;
  end_alert (task, SY_ALERT_CLOSED);
}

void
sy_alert_async (GtkWindow *parent, const char *question, const char *detail,
                const char *const *answers, int safe, int harmful, GCancellable *cancellable,
                GAsyncReadyCallback callback, gpointer user_data)
{
  /* Without the parent as its source: a reference on it would keep it from ending, and the question open. */
  GTask *task = g_task_new (NULL, NULL, callback, user_data);
  Alert *alert = g_new0 (Alert, 1);
  GtkWidget *dialog;

  dialog = gtk_message_dialog_new (parent,
                                   GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                   GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s", question);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", detail);
  gtk_widget_add_css_class (dialog, "sy-alert");
  gtk_accessible_update_property (GTK_ACCESSIBLE (dialog), GTK_ACCESSIBLE_PROPERTY_LABEL, question, -1);
  for (int i = 0; answers[i] != NULL; i++)
    {
      GtkWidget *button = gtk_dialog_add_button (GTK_DIALOG (dialog), answers[i], i);

      if (i == harmful)
        gtk_widget_add_css_class (button, "destructive-action");
    }
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), safe);

  alert->dialog = GTK_WINDOW (dialog);
  g_task_set_task_data (task, alert, free_alert);
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), task);
  g_signal_connect (dialog, "destroy", G_CALLBACK (destroy_cb), task);
  gtk_window_present (GTK_WINDOW (dialog));
  if (cancellable != NULL)
    {
      alert->cancellable = g_object_ref (cancellable);
      alert->cancelled = g_signal_connect (cancellable, "cancelled", G_CALLBACK (cancelled_cb), task);
    }
}

int
sy_alert_finish (GAsyncResult *result)
{
  g_return_val_if_fail (G_IS_TASK (result), SY_ALERT_CLOSED);
  return (int) g_task_propagate_int (G_TASK (result), NULL);
}
